/**
 * Closed set of error codes. Programs branch on these; people read the message.
 *
 * - `missing`: a required argument, field or reading is absent or blank
 * - `not-a-number`: not a finite number (NaN, ±Infinity, text, boolean, object)
 * - `out-of-range`: a finite number outside what physics or the argument allows
 * - `unknown-name`: a name that is not one of the listed ones
 * - `unknown-field`: a field that the record does not have
 * - `wrong-type`: another kind of value than the argument takes
 * - `malformed-text`: text that cannot be read as the quantity asked for
 * - `ambiguous`: more than one reading is possible and none is assumed
 * - `duplicate`: the same name or reading given twice
 * - `inconsistent`: arguments that contradict each other
 * - `floating`: part of a network with no path to the supply in any state
 * - `short-circuit`: a 0 Ω path between supply nodes of different voltage
 * - `not-identifiable`: the readings do not determine what was asked
 * - `outside-table`: outside the validity of the source, and extrapolation was not asked for by name
 * - `no-convergence`: an iteration that did not reach its tolerance; carries the bracket and residual
 * @since 0.1.0
 */
export type ErrorCode =
  | "missing"
  | "not-a-number"
  | "out-of-range"
  | "unknown-name"
  | "unknown-field"
  | "wrong-type"
  | "malformed-text"
  | "ambiguous"
  | "duplicate"
  | "inconsistent"
  | "floating"
  | "short-circuit"
  | "not-identifiable"
  | "outside-table"
  | "no-convergence";

/**
 * One thing wrong with the input, as data.
 * @since 0.1.0
 */
export interface Issue {
  /** What is wrong. */
  readonly code: ErrorCode;
  /** Where: the argument's name, dotted into records (`readings.2.ohms`); of one above 80 characters the head and the length. */
  readonly path: string;
  /** What is allowed, in words. */
  readonly expected: string;
  /** The value seen, shown as short text. */
  readonly received: string;
  /** Unit the value is taken in, where there is one. */
  readonly unit?: string;
  /** The whole sentence for a person. */
  readonly message: string;
}

/** Longest text from outside that a message repeats whole: a received value, or a path that a name made long. No path of ours is. */
const MOST = 80;

/** The text; or its head, "…" and how long it is, which keeps a megabyte out of logs. */
const shortened = (text: string): string =>
  text[MOST] ? `${text.slice(0, MOST)} … (${text.length} characters)` : text;

/**
 * Shows any received value as short text for a message, without calling code of the value's own.
 * @param value - anything
 * @returns text of at most about 100 characters
 * @example
 * ```ts
 * showReceived(Number.NaN) // => "NaN"
 * ```
 * @since 0.1.0
 */
export function showReceived(value: unknown): string {
  if (typeof value === "string") return JSON.stringify(shortened(value));
  if (typeof value === "object" && value !== null) return Array.isArray(value) ? "an array" : "an object";
  if (typeof value === "function") return "a function";
  if (typeof value === "bigint") return "a BigInt";
  return String(value);
}

/**
 * Makes an issue with its sentence. Names and values from outside are repeated up to a length: no megabyte reaches a log.
 * @param input.code - what is wrong
 * @param input.path - the argument's name
 * @param input.expected - what is allowed, in words; with its own unit where it goes on behind a number
 * @param input.received - the value seen, any type
 * @param input.unit - unit the value is taken in; said again behind an `expected` that ends with a number
 * @returns the issue, ready to be thrown or listed
 * @example
 * ```ts
 * issue({ code: "out-of-range", path: "power", expected: "more than 0", received: -5, unit: "W" }).message
 * // => "power: -5 W is not allowed; expected more than 0 W"
 * ```
 * @since 0.1.0
 */
export function issue(input: {
  readonly code: ErrorCode;
  readonly path: string;
  readonly expected: string;
  readonly received: unknown;
  readonly unit?: string | undefined;
}): Issue {
  const { code, expected, unit } = input;
  const path = shortened(input.path);
  const received = showReceived(input.received);
  const inUnit = unit ? ` ${unit}` : "";
  const seen = typeof input.received === "number" ? received + inUnit : received;
  const wrong = code === "missing" ? "missing" : `${seen} is not allowed`;
  // Behind words a unit would belong to nothing.
  const message = `${path}: ${wrong}; expected ${expected}${/(\d|more|number)$/.test(expected) ? inUnit : ""}`;
  return { code, path, expected, received, ...(unit === undefined ? {} : { unit }), message };
}

/**
 * The one error class of the library. Tell it by `name` and `code`, not by `instanceof`: a program may hold
 * two copies of the package, or its ESM and CJS forms side by side.
 * @example
 * ```ts
 * new ElectroheatError([issue({ code: "missing", path: "power", expected: "a power", received: undefined })]).code
 * // => "missing"
 * ```
 * @since 0.1.0
 */
export class ElectroheatError extends Error {
  /** Always `"ElectroheatError"`. */
  override readonly name: string = "ElectroheatError";
  /** Code of the first issue. */
  readonly code: ErrorCode;
  /** Path of the first issue: the argument's name. */
  readonly argument: string;
  /** Everything found wrong, at least one issue. */
  readonly issues: readonly Issue[];

  /**
   * @param issues - at least one issue; the first gives the error its code and argument
   * @param told - what the message says, a line each; the issues' own sentences if left out
   */
  constructor(issues: readonly [Issue, ...Issue[]], told: readonly { readonly message: string }[] = issues) {
    super(told.map((one) => one.message).join("\n"));
    this.code = issues[0].code;
    this.argument = issues[0].path;
    this.issues = issues;
  }
}

/**
 * Throws one issue as an {@link ElectroheatError}.
 * @param input - as for {@link issue}
 * @throws ElectroheatError always
 * @example
 * ```ts
 * fail({ code: "missing", path: "power", expected: "a power", received: undefined }) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function fail(input: Parameters<typeof issue>[0]): never {
  throw new ElectroheatError([issue(input)]);
}

/** Most issues that one message tells; whatever has more of them has one cause for most. */
const MOST_TOLD = 20;

/**
 * Throws all that several checks found as one {@link ElectroheatError}, if they found anything. Its message tells the first twenty and
 * counts the rest; its `issues` hold all.
 * @param found - issues, in the order they are to be told
 * @throws ElectroheatError with the code of the first
 * @example
 * ```ts
 * failAll([issue({ code: "missing", path: "power", expected: "a power", received: undefined })]) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function failAll(found: readonly Issue[]): void {
  const [first, ...rest] = found;
  if (first === undefined) return;
  const more = found.length - MOST_TOLD;
  const told = more > 0 ? [...found.slice(0, MOST_TOLD), { message: `and ${more} more` }] : found;
  throw new ElectroheatError([first, ...rest], told);
}

/**
 * Whether a caught value is an error of this library (any copy, ESM or CJS).
 * @param error - a caught value
 * @returns true for an {@link ElectroheatError}
 * @example
 * ```ts
 * isElectroheatError(new Error("other")) // => false
 * ```
 * @since 0.1.0
 */
export function isElectroheatError(error: unknown): error is ElectroheatError {
  return error instanceof Error && error.name === "ElectroheatError" && "code" in error && "issues" in error;
}

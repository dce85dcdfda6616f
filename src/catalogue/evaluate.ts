/** Safe evaluation: plain inputs of unknown make in, an answer or an error out, both as data. Never throws. */
import {
  type ElectroheatError,
  type ErrorCode,
  isElectroheatError,
  showReceived,
  type Warning,
} from "../quantity/index.ts";
import type { Entry } from "./describe.ts";
import { allEntries, entryOf } from "./entries/index.ts";
import { inside, numberIn } from "./facts.ts";
import type { ValueNote } from "./note.ts";
import { MOST_VALUES } from "./plain.ts";
import { noteOn, readFields, unitOf } from "./read.ts";
import type { Shape } from "./shape.ts";

/**
 * Why there is no answer.
 * @since 0.1.0
 */
export interface EvaluationError {
  /** What is wrong; `"unexpected"` is a fault of this library, to be reported. */
  readonly code: ErrorCode | "unexpected";
  /** The argument, dotted into records and lists. */
  readonly argument: string;
  /** The whole sentence for a person. */
  readonly message: string;
  /** What is allowed, in words. */
  readonly expected: string;
  /** The value seen, as short text. */
  readonly received: string;
}

/**
 * An answer as data.
 * @since 0.1.0
 */
export interface Evaluated {
  /** There is an answer. */
  readonly ok: true;
  /** What the function returned. */
  readonly value: unknown;
  /** Unit of a number; empty for a number without one, and for anything else. */
  readonly unit: string;
  /** Of a record: its numbers' units, by field. */
  readonly fields: Readonly<Record<string, string>> | null;
  /** Doubts about the inputs or the source. */
  readonly warnings: readonly Warning[];
  /** Of a lookup: source, edition, table and the like; otherwise null. */
  readonly basis: Readonly<Record<string, unknown>> | null;
  /** What the reader must know before acting on it, and who decides. */
  readonly cautions: readonly string[];
}

/**
 * No answer, and why.
 * @since 0.1.0
 */
export interface Refused {
  /** There is no answer. */
  readonly ok: false;
  /** Why. */
  readonly error: EvaluationError;
}

/**
 * An answer, or why there is none.
 * @since 0.1.0
 */
export type Evaluation = Evaluated | Refused;

/** Fields of a result that say where it stands in print. */
const BASIS_FIELDS = ["source", "system", "edition", "table", "row", "column", "kind", "provenance"];

type Plain = Readonly<Record<string, unknown>>;

function isRecord(value: unknown): value is Plain {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function basisOf(value: unknown): Plain | null {
  if (!isRecord(value)) return null;
  if (isRecord(value["basis"])) return value["basis"];
  if (!("source" in value || ("edition" in value && "table" in value))) return null;
  return Object.fromEntries(BASIS_FIELDS.filter((key) => key in value).map((key) => [key, value[key]]));
}

const listIn = (value: unknown, key: string): readonly unknown[] => {
  const list = isRecord(value) ? value[key] : undefined;
  return Array.isArray(list) ? list : [];
};

/** Who decides, in words: the deferral of a result, or the note of one that names its standard too. */
function whoDecides(value: unknown): readonly string[] {
  const deferral = isRecord(value) ? value["deferral"] : undefined;
  const words = isRecord(deferral) ? deferral["note"] : deferral;
  return typeof words === "string" ? [words] : [];
}

/** Unit of a number, also of one that a name or null may stand in for. */
export function outputUnit(shape: Shape, note: ValueNote | undefined): string {
  const number = numberIn(shape);
  return number === undefined ? "" : unitOf(number, note ?? {});
}

/** Units of a record's own numbers; null where the result is no record. */
export function fieldUnits(
  shape: Shape,
  given: ValueNote | undefined,
): Readonly<Record<string, string>> | null {
  const note = noteOn(shape, given);
  const parts = inside(shape, "either")
    ?.map((one) => fieldUnits(one, note))
    .filter((one) => one !== null);
  if (parts !== undefined) return parts.length === 0 ? null : Object.assign({}, ...parts);
  const fields = inside(shape, "record");
  if (fields === undefined) return null;
  const units: Record<string, string> = {};
  for (const [key, field] of Object.entries(fields)) {
    const name = key.replace("?", "");
    if (numberIn(field) !== undefined) units[name] = outputUnit(field, note.fields?.[name]);
  }
  return units;
}

type Told = ElectroheatError["issues"][number];

function refusal(error: unknown, code: "wrong-type" | "unexpected"): Refused {
  if (isElectroheatError(error)) {
    const [{ expected, received }] = error.issues as readonly [Told, ...Told[]];
    const { argument, code: found, message } = error;
    return { ok: false, error: { code: found, argument, message, expected, received } };
  }
  const [expected, received] =
    code === "wrong-type" ? ["plain data", "a value that refuses to be read"] : ["an answer", "a fault"];
  return {
    ok: false,
    error: { code, argument: "inputs", message: `inputs: ${received}`, expected, received },
  };
}

/** Units of what comes out, worked out once for each entry. */
const KNOWN_UNITS = new WeakMap<Entry, Pick<Evaluated, "unit" | "fields">>();

function unitsOf(entry: Entry): Pick<Evaluated, "unit" | "fields"> {
  const known = KNOWN_UNITS.get(entry);
  if (known !== undefined) return known;
  const { output, note } = entry;
  const fields = fieldUnits(output, note.output);
  const units = { unit: outputUnit(output, note.output), fields: fields && Object.freeze(fields) };
  KNOWN_UNITS.set(entry, units);
  return units;
}

/** Checks the inputs, calls the function, and tells of the result. */
export function evaluateEntry(entry: Entry, inputs: unknown): Evaluation {
  let checked: Record<string, unknown>;
  try {
    checked = readFields(entry.shapes, entry.notes, inputs, "", { left: MOST_VALUES });
  } catch (error) {
    return refusal(error, "wrong-type");
  }
  try {
    const value =
      entry.takes === "fields"
        ? entry.call(checked)
        : entry.call(...entry.declared.map((name) => checked[name]));
    return {
      ok: true,
      value,
      ...unitsOf(entry),
      warnings: listIn(value, "warnings") as readonly Warning[],
      basis: basisOf(value),
      cautions: [
        ...(entry.note.cautions ?? []),
        ...(listIn(value, "cautions") as string[]),
        ...whoDecides(value),
      ],
    };
  } catch (error) {
    return refusal(error, "unexpected");
  }
}

/**
 * Evaluates any public calculation on plain data: numbers in canonical units, or text with a unit ("36 kW", "132 lbf·in",
 * "2/0 AWG"); records, lists and names as JSON has them. A blank is missing, never 0. Never throws on what a user gives.
 * @param id - `room.functionName`, such as `"circuit.lineCurrent"`
 * @param inputs - the inputs by name, of any make
 * @returns the answer with unit, warnings, basis and cautions; or the error with code, argument and message
 * @example
 * ```ts
 * const answer = evaluate("circuit.lineCurrent", { power: "36 kW", lineVoltage: 480 });
 * answer.ok && [answer.value, answer.unit] // => [43.3013, "A"]
 * ```
 * @since 0.1.0
 */
export function evaluate(id: string, inputs: unknown): Evaluation {
  const entry = typeof id === "string" ? entryOf(id) : undefined;
  if (entry !== undefined) return evaluateEntry(entry, inputs);
  const received = typeof id === "string" ? showReceived(id) : "no text";
  const asked = typeof id === "string" ? id.toLowerCase() : "";
  const meant = allEntries().filter((one) =>
    [one.name, one.note.sheetName, one.id].some((name) => name?.toLowerCase() === asked),
  );
  const hint = meant.length === 0 ? "" : `; did you mean ${meant.map((one) => one.id).join(" or ")}?`;
  const expected = `the id of an entry, room.functionName${hint}`;
  const message = `id: ${received} is not allowed; expected ${expected}`;
  return { ok: false, error: { code: "unknown-name", argument: "id", message, expected, received } };
}

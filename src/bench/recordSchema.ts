/** The boundary: a record of unknown shape becomes checked quantities, or one error that lists everything wrong with it. */
import * as z from "zod/mini";
import {
  type Amperes,
  ElectroheatError,
  type ErrorCode,
  type Issue,
  isElectroheatError,
  issue,
  type LineVolts,
  type Ohms,
  type Open,
  parseQuantity,
  type Volts,
  type Watts,
} from "../quantity/index.ts";

/** A quantity that has been read: its value and one unit of its last quoted digit. */
export interface Read<Q> {
  readonly value: Q;
  readonly resolution: number | null;
}

/** A record with every quantity read. */
export interface ParsedRecord {
  readonly title: string;
  readonly nameplate: { readonly power: Read<Watts>; readonly voltage: Read<LineVolts> };
  readonly wiring: {
    readonly banks: readonly {
      readonly id: string;
      readonly connection: "star" | "delta";
      readonly elementsInParallel?: number | undefined;
      readonly elementsInSeries?: number | undefined;
    }[];
    readonly starPoints?: "tied" | "separate" | undefined;
    readonly neutral?: "connected" | "floating" | undefined;
  };
  readonly supply?:
    | { readonly v12: Read<LineVolts>; readonly v23: Read<LineVolts>; readonly v31: Read<LineVolts> }
    | undefined;
  readonly temperatureFactor?: number | undefined;
  readonly tolerance?: { readonly low: number; readonly high: number } | undefined;
  readonly meter?:
    | {
        readonly ofReading: number;
        readonly digits: number;
        readonly resolution?: Read<Ohms> | undefined;
        readonly leads: "unknown" | "taken off" | { readonly shorted: Read<Ohms> };
      }
    | undefined;
  readonly readings?:
    | readonly {
        readonly from: string;
        readonly to: string;
        readonly reads: Read<Ohms | Open>;
        readonly alone?: string | undefined;
      }[]
    | undefined;
  readonly joints?:
    | readonly { readonly id: string; readonly drop: Read<Volts>; readonly current: Read<Amperes> }[]
    | undefined;
}

type Symbols = "Ω" | "V" | "A" | "W";

/** Carries one of our issues through zod, which would otherwise put words of its own to it. */
function push(ctx: { issues: unknown[] }, input: unknown, found: Issue): void {
  ctx.issues.push({ code: "custom", input, params: { found }, message: found.message });
}

/** No module has a quantity outside these, in Ω, V, A or W; inside them no formula overflows. */
const SMALLEST = 1e-9;
const LARGEST = 1e12;

/** Text with unit, or a plain number in the canonical unit; `open` admits OL. */
function quantity<Q>(unit: Symbols, options: { readonly open?: boolean; readonly zero?: boolean } = {}) {
  const allowed = `${options.zero ? "0 or more" : "more than 0"} (${options.zero ? "0, or " : ""}${SMALLEST} to ${LARGEST}), as a number in ${unit} or text with its unit`;
  const outside = (value: number): boolean =>
    !((value >= SMALLEST && value <= LARGEST) || (options.zero === true && value === 0));
  return z.pipe(
    z.unknown(),
    z.transform((input, ctx): Read<Q> => {
      const wrong = (code: ErrorCode, expected = allowed): Read<Q> => {
        push(ctx, input, issue({ code, path: "", expected, received: input }));
        return z.NEVER;
      };
      if (input === undefined || input === null || input === "") return wrong("missing");
      if (typeof input === "number") {
        if (!Number.isFinite(input))
          return wrong("not-a-number", options.open ? `${allowed}; write "OL" for open` : allowed);
        if (outside(input)) return wrong("out-of-range");
        return { value: (input + 0) as Q, resolution: null };
      }
      if (typeof input !== "string") return wrong("wrong-type");
      try {
        const { value, resolution } = parseQuantity(input, { unit, path: "" });
        if (value === "open")
          return options.open ? { value: "open" as Q, resolution: null } : wrong("out-of-range");
        const number = value as number;
        if (outside(number)) return wrong("out-of-range");
        return { value: number as Q, resolution: resolution as number | null };
      } catch (error) {
        if (!isElectroheatError(error)) throw error;
        for (const one of error.issues) push(ctx, input, one);
        return z.NEVER;
      }
    }),
  );
}

const text = () =>
  z.string().check(
    z.minLength(1),
    z.maxLength(200),
    z.check((ctx) => {
      // Blank is missing; an empty one has been refused by its length already.
      if (ctx.value === "" || ctx.value.trim() !== "") return;
      push(ctx, ctx.value, issue({ code: "missing", path: "", expected: "text", received: "" }));
    }),
  );
const ratio = (low: number, high: number) => z.number().check(z.gte(low), z.lte(high));
const count = () => z.number().check(z.int(), z.gte(1), z.lte(10_000));

/** Built on first use: a schema made at import would cost everyone who imports the room. */
function makeSchema() {
  const bank = z.strictObject({
    id: text(),
    connection: z.pipe(
      z.enum(["star", "delta", "wye"]),
      z.transform((name): "star" | "delta" => (name === "delta" ? "delta" : "star")),
    ),
    elementsInParallel: z.optional(count()),
    elementsInSeries: z.optional(count()),
  });
  const shorted = z.strictObject({ shorted: quantity<Ohms>("Ω", { zero: true }) });
  return z.strictObject({
    title: text(),
    nameplate: z.strictObject({ power: quantity<Watts>("W"), voltage: quantity<LineVolts>("V") }),
    wiring: z.strictObject({
      banks: z.array(bank).check(z.minLength(1), z.maxLength(1000)),
      starPoints: z.optional(z.enum(["tied", "separate"])),
      neutral: z.optional(z.enum(["connected", "floating"])),
    }),
    supply: z.optional(
      z.strictObject({
        v12: quantity<LineVolts>("V"),
        v23: quantity<LineVolts>("V"),
        v31: quantity<LineVolts>("V"),
      }),
    ),
    temperatureFactor: z.optional(ratio(0.5, 10)),
    tolerance: z.optional(z.strictObject({ low: ratio(-1, 0), high: ratio(0, 10) })),
    meter: z.optional(
      z.strictObject({
        ofReading: ratio(0, 0.5),
        digits: ratio(0, 1000),
        resolution: z.optional(quantity<Ohms>("Ω")),
        leads: z.union([z.enum(["unknown", "taken off"]), shorted]),
      }),
    ),
    readings: z.optional(
      z
        .array(
          z.strictObject({
            from: text(),
            to: text(),
            reads: quantity<Ohms | Open>("Ω", { open: true, zero: true }),
            alone: z.optional(text()),
          }),
        )
        .check(z.maxLength(10_000)),
    ),
    joints: z.optional(
      z
        .array(
          z.strictObject({
            id: text(),
            drop: quantity<Volts>("V", { zero: true }),
            current: quantity<Amperes>("A"),
          }),
        )
        .check(z.maxLength(10_000)),
    ),
  });
}

let schema: ReturnType<typeof makeSchema> | undefined;

const TYPE_NAMES: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  object: "a record with fields",
  array: "a list",
};

type RawIssue = {
  readonly code?: string | undefined;
  readonly path: readonly PropertyKey[];
  readonly input?: unknown;
  readonly [key: string]: unknown;
};

function limitWords(raw: RawIssue): string {
  const counted = raw["origin"] === "string" ? " characters" : raw["origin"] === "array" ? " entries" : "";
  return raw.code === "too_small"
    ? `at least ${raw["minimum"]}${counted}`
    : `at most ${raw["maximum"]}${counted}`;
}

/** One zod issue in our words; an unknown-keys issue names several fields. */
function ourIssues(raw: RawIssue, prefix: readonly PropertyKey[] = []): Issue[] {
  const parts = [...prefix, ...raw.path].map(String);
  const path = parts.join(".") || "record";
  const received = raw.input;
  const make = (code: ErrorCode, expected: string, at = path, seen = received): Issue =>
    issue({ code, path: at, expected, received: seen });
  const found = (raw["params"] as { found?: Issue } | undefined)?.found;
  if (found !== undefined) {
    const { code, expected, unit } = found;
    return [issue({ code, path, expected, received, ...(unit === undefined ? {} : { unit }) })];
  }
  switch (raw.code) {
    case "invalid_type": {
      const expected = TYPE_NAMES[String(raw["expected"])] ?? String(raw["expected"]);
      return [
        make(
          received === undefined
            ? "missing"
            : typeof received !== "number"
              ? "wrong-type"
              : Number.isFinite(received)
                ? "out-of-range"
                : "not-a-number",
          expected,
        ),
      ];
    }
    case "unrecognized_keys":
      return (raw["keys"] as string[]).map((key) =>
        make("unknown-field", "no such field", [...parts, key || '""'].join("."), key),
      );
    case "invalid_value":
      return [
        make(
          received === undefined ? "missing" : "unknown-name",
          `one of ${(raw["values"] as unknown[]).join(", ")}`,
        ),
      ];
    case "too_small":
    case "too_big": {
      // An empty text or list is one that was left out; a list of the wrong length is another slip.
      const empty = received === "" || (Array.isArray(received) && received.length === 0);
      return [make(empty ? "missing" : "out-of-range", limitWords(raw))];
    }
    case "invalid_union": {
      // The alternative that got furthest in says most.
      const inner = (raw["errors"] as RawIssue[][])
        .flat()
        .filter((one) => one.path.length > 0 || one.code === "unrecognized_keys");
      if (inner.length > 0) return inner.flatMap((one) => ourIssues(one, parts));
      return [
        make(
          received === undefined ? "missing" : "wrong-type",
          `"unknown", "taken off" or a record { shorted: … }`,
        ),
      ];
    }
    default:
      return [make("wrong-type", "a value of another kind")];
  }
}

/** Reads a record, or throws one error that lists every offending path. */
export function parseRecord(record: unknown): ParsedRecord {
  schema ??= makeSchema();
  const parsed = z.safeParse(schema, record, { reportInput: true });
  if (parsed.success) return parsed.data;
  const issues = parsed.error.issues.flatMap((raw) => ourIssues(raw as unknown as RawIssue));
  throw new ElectroheatError(issues as [Issue, ...Issue[]]);
}

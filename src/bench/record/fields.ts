/** The kinds of field that a record is made of: quantities, text, ratios, counts. */
import * as z from "zod/mini";
import {
  type CanonicalUnit,
  type ErrorCode,
  type Issue,
  isElectroheatError,
  issue,
  type Ohms,
  type Open,
  oneOf,
  parseQuantity,
} from "../../quantity/index.ts";
import type { Read, ReadOrAbove } from "./parsed.ts";

/** A schema by what comes out of it. */
export type Schema<T> = z.ZodMiniType<T>;

/** A record of these fields and no others: one that it does not have is refused with those that it has, for the slip is most often a letter. */
export const exactly = <S extends z.core.$ZodLooseShape>(shape: S): z.ZodMiniObject<S, z.core.$strict> =>
  z.strictObject(shape, {
    error: ({ code }) => (code === "unrecognized_keys" ? oneOf(Object.keys(shape)) : undefined),
  });
type Context = { issues: unknown[] };

/** Carries one of our issues through zod, which would otherwise put words of its own to it. */
function push(ctx: Context, input: unknown, found: Issue): void {
  ctx.issues.push({ code: "custom", input, params: { found }, message: found.message });
}

/** No module has a quantity outside these, in its canonical unit; inside them no formula overflows. */
const SMALLEST = 1e-9;
const LARGEST = 1e12;
/** Temperatures between which something may stand or be heated, °C: absolute zero, and beyond every heating alloy. */
const TEMPERATURES = { low: -273.15, high: 3000 } as const;

interface Allowed {
  readonly words: string;
  readonly holds: (value: number) => boolean;
}

/** Voltages between lines that a supply may have, V: beyond them a unit has gone wrong by more than any slip. */
export const LINE_VOLTAGES = { low: 0.1, high: 1e6 } as const;

interface Options {
  /** Admits OL. */
  readonly open?: boolean;
  /** Admits 0. */
  readonly zero?: boolean;
  readonly low?: number;
  readonly high?: number;
}

function allowed(unit: CanonicalUnit, { zero = false, low = SMALLEST, high = LARGEST }: Options): Allowed {
  const how = `as a number in ${unit} or text with its unit`;
  if (unit === "°C") {
    const { low: coldest, high: hottest } = TEMPERATURES;
    return {
      words: `${coldest} to ${hottest} °C, ${how}`,
      holds: (value) => value >= coldest && value <= hottest,
    };
  }
  return {
    words: `${zero ? "0 or more" : "more than 0"} (${zero ? "0, or " : ""}${low} to ${high}), ${how}`,
    holds: (value) => (value >= low && value <= high) || (zero && value === 0),
  };
}

/** Reads what stands in a record; what is wrong goes to the context. */
function reader<Q>(unit: CanonicalUnit, options: Options): (input: unknown, ctx: Context) => Read<Q> {
  const { words, holds } = allowed(unit, options);
  return (input, ctx) => {
    const wrong = (code: ErrorCode, expected = words): Read<Q> => {
      push(ctx, input, issue({ code, path: "", expected, received: input }));
      return z.NEVER;
    };
    if (input === undefined || input === null || input === "") return wrong("missing");
    if (typeof input === "number") {
      if (!Number.isFinite(input))
        return wrong("not-a-number", options.open ? `${words}; write "OL" for open` : words);
      if (!holds(input)) return wrong("out-of-range");
      return { value: (input + 0) as Q, resolution: null };
    }
    if (typeof input !== "string") return wrong("wrong-type");
    try {
      const { value, resolution } = parseQuantity(input, { unit, path: "" });
      if ((value as unknown) === "open")
        return options.open ? { value: "open" as Q, resolution: null } : wrong("out-of-range");
      const number = value as number;
      if (!holds(number)) return wrong("out-of-range");
      return { value: number as Q, resolution: resolution as number | null };
    } catch (error) {
      if (!isElectroheatError(error)) throw error;
      for (const one of error.issues) push(ctx, input, one);
      return z.NEVER;
    }
  };
}

/** Text with unit, or a plain number in the canonical unit; `open` admits OL. */
export function quantity<Q>(unit: CanonicalUnit, options: Options = {}): Schema<Read<Q>> {
  return z.pipe(z.unknown(), z.transform(reader<Q>(unit, options)));
}

/** A resistance, OL, or what a tester shows above its range: ">550 MΩ" is open from there on. */
export function resistanceOrAbove(): Schema<ReadOrAbove> {
  const plain = reader<Ohms | Open>("Ω", { open: true, zero: true });
  const edge = reader<Ohms>("Ω", {});
  return z.pipe(
    z.unknown(),
    z.transform((input, ctx): ReadOrAbove => {
      const least = typeof input === "string" ? /^\s*[>≥](.*)$/.exec(input)?.[1] : undefined;
      if (least === undefined) return plain(input, ctx);
      return { value: "open", resolution: null, above: edge(least, ctx) };
    }),
  );
}

/** Text that is not blank. */
export const text = (): Schema<string> =>
  z.string().check(
    z.minLength(1),
    z.maxLength(200),
    z.check((ctx) => {
      // Blank is missing; an empty one has been refused by its length already.
      if (ctx.value === "" || ctx.value.trim() !== "") return;
      push(ctx, ctx.value, issue({ code: "missing", path: "", expected: "text", received: "" }));
    }),
  );

/** A plain number between two bounds. */
export const ratio = (low: number, high: number): Schema<number> => z.number().check(z.gte(low), z.lte(high));

/** A whole number of things. */
export const count = (least = 1, most = 10_000): Schema<number> =>
  z.number().check(z.int(), z.gte(least), z.lte(most));

/** A list of at most as many entries. */
export const list = <T>(entry: Schema<T>, most = 10_000): Schema<T[]> =>
  z.array(entry).check(z.maxLength(most));

/**
 * How one unit converts. Value in canonical unit = value × times / per, and one of the two is 1 wherever it can
 * be, so a conversion rounds once. Decimal submultiples divide by an exact power of ten: 4.7 mΩ is 4.7 / 1000,
 * not 4.7 × 0.001, which is another double.
 */
import { fail } from "./errors.ts";
import type { CanonicalUnit, Quantity } from "./tags.ts";

/** A unit of measure: value in the canonical unit = value × times / per. */
export interface Scale<U extends CanonicalUnit> {
  /** Name of the constructor; the error message starts with it. */
  readonly name: string;
  /** Symbol as printed. */
  readonly symbol: string;
  /** Canonical unit it converts to. */
  readonly unit: U;
  readonly times: number;
  readonly per: number;
}

type Factor = number | (() => number);

/** Makes a scale; a factor that is a product comes as a function, so that an unused scale drops out of a bundle. */
export function scale<U extends CanonicalUnit>(
  name: string,
  symbol: string,
  unit: U,
  times: Factor = 1,
  per: Factor = 1,
): Scale<U> {
  return {
    name,
    symbol,
    unit,
    times: typeof times === "number" ? times : times(),
    per: typeof per === "number" ? per : per(),
  };
}

/** One check for both ends: NaN, ±Infinity, text and blanks in; overflow out. */
function convert(path: string, unit: string, value: number, times: number, per: number): number {
  // typeof first: arithmetic on a BigInt or an object would throw an error that is not ours.
  const result = typeof value === "number" ? (value * times) / per : Number.NaN;
  if (result - result === 0) return result;
  const received: unknown = value;
  const code =
    received === undefined || received === null || received === ""
      ? "missing"
      : typeof received === "number" && received - received === 0
        ? "out-of-range"
        : "not-a-number";
  const expected = code === "out-of-range" ? "a number that stays finite when converted" : "a finite number";
  return fail({ code, path, expected, received, unit });
}

/** Converts a plain number in the scale's unit into the canonical unit. */
export function into<U extends CanonicalUnit>(to: Scale<U>, value: number): Quantity<U> {
  return convert(to.name, to.symbol, value, to.times, to.per) as Quantity<U>;
}

/** Converts a quantity into a plain number in the scale's unit. */
export function outOf<U extends CanonicalUnit>(from: Scale<U>, value: Quantity<U>): number {
  return convert(from.name, from.unit, value, from.per, from.times);
}

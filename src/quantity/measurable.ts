/**
 * How large and small a quantity may be. Between these bounds every product and quotient that the library takes stays within
 * float64, so that no result is NaN or infinite; nothing that anyone measures lies beyond them.
 */
import { checkBetween, checkFinite, checkNonNegative, checkPositive } from "./check.ts";
import { fail, issue } from "./errors.ts";
import { inItsUnit, retold } from "./retold.ts";
import type { Ohms, Open } from "./tags.ts";

/**
 * A `const enum`, because it is compiled into literals: a constant of a module is loaded and looked at in each call (of preload and
 * joint power two fifths of the time, docs/benchmarks.md).
 */
// biome-ignore lint/suspicious/noConstEnum: see above; it stays in this file
const enum Size {
  smallest = 1e-30,
  largest = 1e30,
}

function rejectResult(value: number, unit: string): never {
  return fail({
    code: "out-of-range",
    path: "result",
    expected: "inputs whose result is within the range of a double",
    received: value,
    unit,
  });
}

/**
 * Largest size, in its canonical unit, that a quantity may have.
 * @source choice of this library
 * @since 0.1.0
 */
export const LARGEST_MEASURABLE = Size.largest as number;

/**
 * Requires more than 0 of a size that anyone can measure: 1e-30 to 1e30 of its canonical unit, or a narrower span.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param unit - unit it is taken in
 * @param smallest - smallest allowed; 1e-30 if left out
 * @param largest - largest allowed; 1e30 if left out
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkMeasurable("power", 1e300, "W") // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkMeasurable(
  path: string,
  value: number,
  unit?: string,
  smallest: number = Size.smallest,
  largest: number = Size.largest,
): void {
  // Two comparisons where nothing is wrong: an engine knows the bounds when it compiles the call. What is wrong is told apart.
  if (
    typeof value === "number" &&
    value >= smallest &&
    value <= largest &&
    smallest > 0 &&
    largest < Infinity
  )
    return;
  checkPositive(path, value, unit);
  checkBetween(path, value, smallest, largest, unit);
}

/**
 * Requires 0, or more of a size that anyone can measure; see {@link checkMeasurable}.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param unit - unit it is taken in
 * @param smallest - smallest allowed above 0; 1e-30 if left out
 * @param largest - largest allowed; 1e30 if left out
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkMeasurableOrZero("resistance", -7.68, "Ω") // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkMeasurableOrZero(
  path: string,
  value: number,
  unit?: string,
  smallest: number = Size.smallest,
  largest: number = Size.largest,
): void {
  if (
    typeof value === "number" &&
    value >= smallest &&
    value <= largest &&
    smallest > 0 &&
    largest < Infinity
  )
    return;
  if (value === 0) return;
  checkNonNegative(path, value, unit);
  checkBetween(path, value, smallest, largest, unit);
}

/**
 * Requires `"open"`, 0, or a resistance that anyone can measure: what a branch may have.
 * @param path - the argument's name, for the message
 * @param resistance - the value seen, Ω or `"open"`
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkOhmsOrOpen("resistance", Number.POSITIVE_INFINITY as Ohms) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkOhmsOrOpen(path: string, resistance: Ohms | Open): void {
  if (resistance === "open" || resistance === 0) return;
  checkNonNegative(path, resistance, "Ω", '0 or more Ω or "open"');
  if (!(resistance >= Size.smallest && resistance <= Size.largest)) {
    const expected = `${Size.smallest} to ${Size.largest} Ω or "open"`;
    fail({ code: "out-of-range", path, expected, received: resistance, unit: "Ω" });
  }
}

/**
 * Requires `"open"`, or a resistance that passes a check; what the check refuses is told with both.
 * @param path - the argument's name, for the message
 * @param resistance - the value seen, Ω or `"open"`
 * @param check - check of a resistance that is not open
 * @throws ElectroheatError as the check
 * @example
 * ```ts
 * checkOpenOr("resistance", Number.POSITIVE_INFINITY as Ohms, checkPositive) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkOpenOr(
  path: string,
  resistance: Ohms | Open,
  check: (path: string, value: number, unit?: string) => void,
): void {
  if (resistance === "open") return;
  retold(
    () => check(path, resistance, "Ω"),
    (one) => issue({ ...one, expected: `${inItsUnit(one)} or "open"`, received: resistance }),
  );
}

/**
 * Requires a number of either sign whose size anyone can measure, or 0; see {@link checkMeasurable}.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param unit - unit it is taken in
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkMeasurableSigned("rise", -1e300, "K") // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkMeasurableSigned(path: string, value: number, unit?: string): void {
  checkFinite(path, value, unit);
  const size = Math.abs(value);
  if (size > Size.largest || (size < Size.smallest && size > 0)) {
    fail({
      code: "out-of-range",
      path,
      expected: `0 or a size from ${Size.smallest} to ${Size.largest}`,
      received: value,
      unit,
    });
  }
}

/**
 * Tags a result after making sure that a double could hold it: Infinity and NaN leave no function of the library.
 * @param value - the result as computed
 * @param unit - its unit
 * @returns the result, with −0 turned into 0
 * @throws ElectroheatError `out-of-range` at `result`
 * @example
 * ```ts
 * finiteResult(1e200 * 1e200, "W") // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function finiteResult<Q extends number>(value: number, unit: string): Q {
  // Adding 0 turns −0 into 0: nobody wants to read a negative nothing.
  if (typeof value === "number" && value - value === 0) return (value + 0) as Q;
  return rejectResult(value, unit);
}

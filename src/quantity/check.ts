/**
 * Domain checks. Every guard is written `!(x >= low && x <= high)` so that NaN fails too; each costs a few
 * nanoseconds, so there is no unchecked path through the library.
 *
 * What throws stands in a function of its own that takes plain arguments. An object written where the check fails would be
 * compiled into the caller's loop as a call, and a loop that may call keeps its running values in memory: measured, half as slow
 * again (docs/benchmarks.md).
 */
import { type ErrorCode, fail } from "./errors.ts";

function reject(path: string, received: unknown, expected: string, unit?: string): never {
  const code: ErrorCode =
    (received ?? "") === "" ? "missing" : isFiniteNumber(received) ? "out-of-range" : "not-a-number";
  return fail({ code, path, expected, received, unit });
}

/** `typeof` first: a string such as "5" compares like a number and would slip through a bare `>=`. */
function isFiniteNumber(value: unknown): value is number {
  return typeof value === "number" && value - value === 0;
}

/**
 * Requires a finite number.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param unit - unit it is taken in
 * @throws ElectroheatError `missing`, `not-a-number`
 * @example
 * ```ts
 * checkFinite("power", Number.NaN, "W") // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkFinite(path: string, value: number, unit?: string): void {
  if (!isFiniteNumber(value)) reject(path, value, "a finite number", unit);
}

/**
 * Requires a finite number above zero.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param unit - unit it is taken in
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkPositive("power", -36, "W") // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkPositive(path: string, value: number, unit?: string): void {
  if (!(typeof value === "number" && value > 0 && value < Infinity)) reject(path, value, "more than 0", unit);
}

/**
 * Requires a finite number of zero or more.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param unit - unit it is taken in
 * @param expected - what is allowed, in words, where it is more than that
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkNonNegative("resistance", -7.68, "Ω") // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkNonNegative(path: string, value: number, unit?: string, expected = "0 or more"): void {
  if (!(typeof value === "number" && value >= 0 && value < Infinity)) reject(path, value, expected, unit);
}

/** A limit without the noise that a product of doubles leaves behind its twelfth digit. */
const told = (limit: number): number => +limit.toPrecision(12);

/**
 * Requires a number between two limits, both allowed.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param low - lowest allowed
 * @param high - highest allowed
 * @param unit - unit it is taken in
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkBetween("duty", 1.4, 0, 1) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkBetween(path: string, value: number, low: number, high: number, unit?: string): void {
  // The limits, which an engine knows when it compiles the call, say whether a number between them is finite.
  if (typeof value === "number" && value >= low && value <= high && low > -Infinity && high < Infinity)
    return;
  if (!(isFiniteNumber(value) && value >= low && value <= high))
    reject(path, value, `${told(low)} to ${told(high)}`, unit);
}

/**
 * Requires a whole number between two limits, both allowed.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param low - lowest allowed
 * @param high - highest allowed
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * checkWhole("elementsInParallel", 2.5, 1, 1000) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkWhole(path: string, value: number, low: number, high: number): void {
  if (!(Number.isInteger(value) && value >= low && value <= high)) {
    reject(path, value, `a whole number from ${low} to ${high}`);
  }
}

/**
 * Names as a message lists them: one with a comma of its own in quotes.
 * @param names - the allowed names
 * @returns `one of`, and the names
 * @example
 * ```ts
 * oneOf(["star", "delta"]) // => "one of star, delta"
 * ```
 * @since 0.1.0
 */
export function oneOf(names: readonly unknown[]): string {
  return `one of ${names.map((name) => (`${name}`.includes(",") ? `"${name}"` : name)).join(", ")}`;
}

/**
 * Requires one of a list of names, and lists them when it is not.
 * @param path - the argument's name, for the message
 * @param value - the value seen
 * @param names - the allowed names
 * @returns the value, typed as one of the names
 * @throws ElectroheatError `missing`, `unknown-name`
 * @example
 * ```ts
 * checkOneOf("connection", "zigzag", ["star", "delta"]) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkOneOf<const N extends string>(path: string, value: unknown, names: readonly N[]): N {
  for (const name of names) if (name === value) return name;
  const code = (value ?? "") === "" ? "missing" : "unknown-name";
  return fail({ code, path, expected: oneOf(names), received: value });
}

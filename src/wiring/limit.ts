/** Limits compared in decimal, and the bounds of what can be measured: every decision of this room goes through here. */
import { compareQuoted, DECISION_DIGITS } from "../decision/index.ts";
import { checkBetween, checkNonNegative, checkPositive, checkWhole } from "../quantity/index.ts";

/**
 * Whether a value is at most a limit, on 12 significant digits: 57.75 A is not at most 57.7 A, 48.00000000000001 A is 48 A.
 * Twelve, because float noise stays in the fourteenth and beyond while readings and published limits end by the sixth: see
 * DECISION_DIGITS.
 */
export function atMost(value: number, limit: number): boolean {
  return compareQuoted({ left: value, right: limit }) <= 0;
}

/** Whether two figures are the same on 12 significant digits; what is not a number is the same as nothing. */
export function same(left: number | undefined, right: number): boolean {
  return Number.isFinite(left) && compareQuoted({ left: left as number, right }) === 0;
}

/** A figure that names a column, free of float noise: 90 °C that came through kelvins is the column of 90. */
export function columnFigure(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(DECISION_DIGITS)) : value;
}

/** Smallest whole number of equal parts of which none exceeds the limit. */
export function partsNeeded(total: number, limit: number): number {
  let parts = Math.max(1, Math.floor(total / limit));
  while (!atMost(total, parts * limit)) parts++;
  return parts;
}

/** Between these no product or quotient of this room leaves float64; nothing measured lies beyond them. */
const SMALLEST = 1e-30;
const LARGEST = 1e30;

/** Requires more than 0, within the bounds. */
export function checkMeasured(path: string, value: number, unit: string): void {
  checkPositive(path, value, unit);
  checkBetween(path, value, SMALLEST, LARGEST, unit);
}

/** Requires 0, or more within the bounds. */
export function checkMeasuredOrZero(path: string, value: number, unit: string): void {
  checkNonNegative(path, value, unit);
  if (value !== 0) checkBetween(path, value, SMALLEST, LARGEST, unit);
}

/** Requires a temperature that matter can have and wiring can meet. */
export function checkTemperature(path: string, value: number): void {
  checkBetween(path, value, -273.15, 3000, "°C");
}

/** More conductors side by side than any terminal takes: beyond it a slip of the pen. */
const MOST_PARALLEL = 100;

/** How many conductors in parallel make a line; one if left out. */
export function parallelCount(count: number | undefined, path = "conductorsPerLine"): number {
  if (count === undefined) return 1;
  checkWhole(path, count, 1, MOST_PARALLEL);
  return count;
}

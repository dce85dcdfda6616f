/**
 * How large and small electrical quantities may be. Between these bounds every product and quotient taken in this room
 * stays within float64, so that no result is ever NaN or infinite; nothing that is measured in volts, amperes, ohms or
 * watts lies beyond them.
 */
import { checkBetween, checkNonNegative, checkPositive, type Ohms, type Open } from "../quantity/index.ts";

const SMALLEST = 1e-30;
const LARGEST = 1e30;

/** Requires more than 0, within the bounds. */
export function checkScale(path: string, value: number, unit?: string): void {
  if (typeof value === "number" && value >= SMALLEST && value <= LARGEST) return;
  checkPositive(path, value, unit);
  checkBetween(path, value, SMALLEST, LARGEST, unit);
}

/** Requires 0, or more within the bounds. */
export function checkScaleOrZero(path: string, value: number, unit?: string): void {
  if (value === 0) return;
  if (typeof value === "number" && value >= SMALLEST && value <= LARGEST) return;
  checkNonNegative(path, value, unit);
  checkBetween(path, value, SMALLEST, LARGEST, unit);
}

/** Requires a resistance that a branch may have: `"open"`, 0, or more within the bounds. */
export function checkResistance(path: string, resistance: Ohms | Open): void {
  if (resistance !== "open") checkScaleOrZero(path, resistance, "Ω");
}

/** Whether both parts of a phasor or impedance are finite and within the upper bound. */
export function isBounded(z: { readonly re: number; readonly im: number } | null | undefined): boolean {
  return (
    typeof z?.re === "number" &&
    typeof z.im === "number" &&
    Math.abs(z.re) <= LARGEST &&
    Math.abs(z.im) <= LARGEST
  );
}

/** What a branch may have for a resistance, and a phasor for a size. */
import { checkMeasurableOrZero, LARGEST_MEASURABLE, type Ohms, type Open } from "../quantity/index.ts";

/** Requires a resistance that a branch may have: `"open"`, 0, or more within what anyone can measure. */
export function checkResistance(path: string, resistance: Ohms | Open): void {
  if (resistance !== "open") checkMeasurableOrZero(path, resistance, "Ω");
}

/** Whether both parts of a phasor or impedance are finite and within what anyone can measure. */
export function isBounded(z: { readonly re: number; readonly im: number } | null | undefined): boolean {
  return (
    typeof z?.re === "number" &&
    typeof z.im === "number" &&
    Math.abs(z.re) <= LARGEST_MEASURABLE &&
    Math.abs(z.im) <= LARGEST_MEASURABLE
  );
}

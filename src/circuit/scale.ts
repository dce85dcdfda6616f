/** What a phasor may have for a size. */
import { LARGEST_MEASURABLE } from "../quantity/index.ts";

/** Whether both parts of a phasor or impedance are finite and within what anyone can measure. */
export function isBounded(z: { readonly re: number; readonly im: number } | null | undefined): boolean {
  return (
    typeof z?.re === "number" &&
    typeof z.im === "number" &&
    Math.abs(z.re) <= LARGEST_MEASURABLE &&
    Math.abs(z.im) <= LARGEST_MEASURABLE
  );
}

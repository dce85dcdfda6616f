/** Pressure as a head of liquid, conventional values. */

import { into, outOf } from "../scale.ts";
import { INCH_OF_MERCURY, INCH_OF_WATER } from "../scales/force.ts";
import type { Pascals } from "../tags.ts";

/**
 * Pressure given in inches of water conventional (inH₂O), held in pascals: value × 1000 × GRAVITY × INCH.
 * @param value - pressure in inches of water conventional (inH₂O), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B (conventional): 1000 kg/m³ × 9.80665 m/s² × 1 in
 * @example
 * ```ts
 * inchesOfWaterConventional(2.5) // => 622.722275
 * ```
 * @since 0.1.0
 */
export function inchesOfWaterConventional(value: number): Pascals {
  return into(INCH_OF_WATER, value);
}

/**
 * Pressure read in inches of water conventional (inH₂O): value / (1000 × GRAVITY × INCH).
 * @param value - pressure in pascals (Pa)
 * @returns the number of inches of water conventional (inH₂O)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link inchesOfWaterConventional}
 * @example
 * ```ts
 * toInchesOfWaterConventional(inchesOfWaterConventional(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toInchesOfWaterConventional(value: Pascals): number {
  return outOf(INCH_OF_WATER, value);
}

/**
 * Pressure given in inches of mercury conventional (inHg), held in pascals: value × 13595.1 × GRAVITY × INCH.
 * @param value - pressure in inches of mercury conventional (inHg), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B (conventional): 13 595.1 kg/m³ × 9.80665 m/s² × 1 in
 * @example
 * ```ts
 * inchesOfMercuryConventional(24.9) // => 84321.0771444909
 * ```
 * @since 0.1.0
 */
export function inchesOfMercuryConventional(value: number): Pascals {
  return into(INCH_OF_MERCURY, value);
}

/**
 * Pressure read in inches of mercury conventional (inHg): value / (13595.1 × GRAVITY × INCH).
 * @param value - pressure in pascals (Pa)
 * @returns the number of inches of mercury conventional (inHg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link inchesOfMercuryConventional}
 * @example
 * ```ts
 * toInchesOfMercuryConventional(inchesOfMercuryConventional(24.9)) // => 24.9
 * ```
 * @since 0.1.0
 */
export function toInchesOfMercuryConventional(value: Pascals): number {
  return outOf(INCH_OF_MERCURY, value);
}

/** Temperature coefficient. */

import { into, outOf } from "../scale.ts";
import { MILLIONTH_PER_KELVIN, PER_KELVIN } from "../scales/electric.ts";
import type { PerKelvin } from "../tags.ts";

/**
 * Relative change per kelvin given in per kelvin (1/K), the unit it is held in.
 * @param value - relative change per kelvin in per kelvin (1/K), any finite number
 * @returns the relative change per kelvin in per kelvin (1/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * perKelvin(0.00393) // => 0.00393
 * ```
 * @since 0.1.0
 */
export function perKelvin(value: number): PerKelvin {
  return into(PER_KELVIN, value);
}

/**
 * Relative change per kelvin read in per kelvin (1/K), the unit it is held in.
 * @param value - relative change per kelvin in per kelvin (1/K)
 * @returns the number of per kelvin (1/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link perKelvin}
 * @example
 * ```ts
 * toPerKelvin(perKelvin(0.00393)) // => 0.00393
 * ```
 * @since 0.1.0
 */
export function toPerKelvin(value: PerKelvin): number {
  return outOf(PER_KELVIN, value);
}

/**
 * Relative change per kelvin given in millionths per kelvin (ppm/K), held in per kelvin: value / 1e6.
 * @param value - relative change per kelvin in millionths per kelvin (ppm/K), any finite number
 * @returns the relative change per kelvin in per kelvin (1/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * millionthsPerKelvin(17) // => 0.000017
 * ```
 * @since 0.1.0
 */
export function millionthsPerKelvin(value: number): PerKelvin {
  return into(MILLIONTH_PER_KELVIN, value);
}

/**
 * Relative change per kelvin read in millionths per kelvin (ppm/K): value × 1e6.
 * @param value - relative change per kelvin in per kelvin (1/K)
 * @returns the number of millionths per kelvin (ppm/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link millionthsPerKelvin}
 * @example
 * ```ts
 * toMillionthsPerKelvin(millionthsPerKelvin(17)) // => 17
 * ```
 * @since 0.1.0
 */
export function toMillionthsPerKelvin(value: PerKelvin): number {
  return outOf(MILLIONTH_PER_KELVIN, value);
}

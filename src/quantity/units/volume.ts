/** Volume. */

import { into, outOf } from "../scale.ts";
import {
  CUBIC_CENTIMETER,
  CUBIC_FOOT_VOLUME,
  CUBIC_INCH,
  CUBIC_METER,
  LITER,
  US_GALLON,
} from "../scales/mechanic.ts";
import type { CubicMeters } from "../tags.ts";

/**
 * Volume given in cubic meters (m³), the unit it is held in.
 * @param value - volume in cubic meters (m³), any finite number
 * @returns the volume in cubic meters (m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * cubicMeters(2.5) // => 2.5
 * ```
 * @since 0.1.0
 */
export function cubicMeters(value: number): CubicMeters {
  return into(CUBIC_METER, value);
}

/**
 * Volume read in cubic meters (m³), the unit it is held in.
 * @param value - volume in cubic meters (m³)
 * @returns the number of cubic meters (m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicMeters}
 * @example
 * ```ts
 * toCubicMeters(cubicMeters(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toCubicMeters(value: CubicMeters): number {
  return outOf(CUBIC_METER, value);
}

/**
 * Volume given in cubic centimeters (cm³), held in cubic meters: value / 1e6.
 * @param value - volume in cubic centimeters (cm³), any finite number
 * @returns the volume in cubic meters (m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * cubicCentimeters(12.5) // => 0.0000125
 * ```
 * @since 0.1.0
 */
export function cubicCentimeters(value: number): CubicMeters {
  return into(CUBIC_CENTIMETER, value);
}

/**
 * Volume read in cubic centimeters (cm³): value × 1e6.
 * @param value - volume in cubic meters (m³)
 * @returns the number of cubic centimeters (cm³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicCentimeters}
 * @example
 * ```ts
 * toCubicCentimeters(cubicCentimeters(12.5)) // => 12.5
 * ```
 * @since 0.1.0
 */
export function toCubicCentimeters(value: CubicMeters): number {
  return outOf(CUBIC_CENTIMETER, value);
}

/**
 * Volume given in liters (L), held in cubic meters: value / 1e3.
 * @param value - volume in liters (L), any finite number
 * @returns the volume in cubic meters (m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * liters(450) // => 0.45
 * ```
 * @since 0.1.0
 */
export function liters(value: number): CubicMeters {
  return into(LITER, value);
}

/**
 * Volume read in liters (L): value × 1e3.
 * @param value - volume in cubic meters (m³)
 * @returns the number of liters (L)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link liters}
 * @example
 * ```ts
 * toLiters(liters(450)) // => 450
 * ```
 * @since 0.1.0
 */
export function toLiters(value: CubicMeters): number {
  return outOf(LITER, value);
}

/**
 * Volume given in cubic inches (in³), held in cubic meters: value × INCH × INCH × INCH.
 * @param value - volume in cubic inches (in³), any finite number
 * @returns the volume in cubic meters (m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * cubicInches(3.5) // => 0.000057354724
 * ```
 * @since 0.1.0
 */
export function cubicInches(value: number): CubicMeters {
  return into(CUBIC_INCH, value);
}

/**
 * Volume read in cubic inches (in³): value / (INCH × INCH × INCH).
 * @param value - volume in cubic meters (m³)
 * @returns the number of cubic inches (in³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicInches}
 * @example
 * ```ts
 * toCubicInches(cubicInches(3.5)) // => 3.5
 * ```
 * @since 0.1.0
 */
export function toCubicInches(value: CubicMeters): number {
  return outOf(CUBIC_INCH, value);
}

/**
 * Volume given in cubic feet (ft³), held in cubic meters: value × CUBIC_FOOT.
 * @param value - volume in cubic feet (ft³), any finite number
 * @returns the volume in cubic meters (m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * cubicFeet(35) // => 0.99108963072
 * ```
 * @since 0.1.0
 */
export function cubicFeet(value: number): CubicMeters {
  return into(CUBIC_FOOT_VOLUME, value);
}

/**
 * Volume read in cubic feet (ft³): value / CUBIC_FOOT.
 * @param value - volume in cubic meters (m³)
 * @returns the number of cubic feet (ft³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicFeet}
 * @example
 * ```ts
 * toCubicFeet(cubicFeet(35)) // => 35
 * ```
 * @since 0.1.0
 */
export function toCubicFeet(value: CubicMeters): number {
  return outOf(CUBIC_FOOT_VOLUME, value);
}

/**
 * Volume given in US gallons (US gal), held in cubic meters: value × 231 × INCH × INCH × INCH.
 * @param value - volume in US gallons (US gal), any finite number
 * @returns the volume in cubic meters (m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; US liquid gallon = 231 in³, exact definition
 * @example
 * ```ts
 * usGallons(2.5) // => 0.00946352946
 * ```
 * @since 0.1.0
 */
export function usGallons(value: number): CubicMeters {
  return into(US_GALLON, value);
}

/**
 * Volume read in US gallons (US gal): value / (231 × INCH × INCH × INCH).
 * @param value - volume in cubic meters (m³)
 * @returns the number of US gallons (US gal)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link usGallons}
 * @example
 * ```ts
 * toUsGallons(usGallons(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toUsGallons(value: CubicMeters): number {
  return outOf(US_GALLON, value);
}

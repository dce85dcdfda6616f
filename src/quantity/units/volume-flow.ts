/** Volume flow. A volume flow carries no reference condition: say it beside the number. */

import { into, outOf } from "../scale.ts";
import {
  CUBIC_FOOT_PER_MINUTE,
  CUBIC_METER_PER_HOUR,
  CUBIC_METER_PER_MINUTE,
  CUBIC_METER_PER_SECOND,
  LITER_PER_MINUTE,
  LITER_PER_SECOND,
  US_GALLON_PER_HOUR,
  US_GALLON_PER_MINUTE,
} from "../scales/force.ts";
import type { CubicMetersPerSecond } from "../tags.ts";

/**
 * Volume flow given in cubic meters per second (m³/s), the unit it is held in.
 * @param value - volume flow in cubic meters per second (m³/s), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * cubicMetersPerSecond(0.94) // => 0.94
 * ```
 * @since 0.1.0
 */
export function cubicMetersPerSecond(value: number): CubicMetersPerSecond {
  return into(CUBIC_METER_PER_SECOND, value);
}

/**
 * Volume flow read in cubic meters per second (m³/s), the unit it is held in.
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicMetersPerSecond}
 * @example
 * ```ts
 * toCubicMetersPerSecond(cubicMetersPerSecond(0.94)) // => 0.94
 * ```
 * @since 0.1.0
 */
export function toCubicMetersPerSecond(value: CubicMetersPerSecond): number {
  return outOf(CUBIC_METER_PER_SECOND, value);
}

/**
 * Volume flow given in cubic meters per minute (m³/min), held in cubic meters per second: value / MINUTE.
 * @param value - volume flow in cubic meters per minute (m³/min), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * cubicMetersPerMinute(57) // => 0.95
 * ```
 * @since 0.1.0
 */
export function cubicMetersPerMinute(value: number): CubicMetersPerSecond {
  return into(CUBIC_METER_PER_MINUTE, value);
}

/**
 * Volume flow read in cubic meters per minute (m³/min): value × MINUTE.
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of cubic meters per minute (m³/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicMetersPerMinute}
 * @example
 * ```ts
 * toCubicMetersPerMinute(cubicMetersPerMinute(57)) // => 57
 * ```
 * @since 0.1.0
 */
export function toCubicMetersPerMinute(value: CubicMetersPerSecond): number {
  return outOf(CUBIC_METER_PER_MINUTE, value);
}

/**
 * Volume flow given in cubic meters per hour (m³/h), held in cubic meters per second: value / HOUR.
 * @param value - volume flow in cubic meters per hour (m³/h), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * cubicMetersPerHour(3400) // => 0.9444444444444444
 * ```
 * @since 0.1.0
 */
export function cubicMetersPerHour(value: number): CubicMetersPerSecond {
  return into(CUBIC_METER_PER_HOUR, value);
}

/**
 * Volume flow read in cubic meters per hour (m³/h): value × HOUR.
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of cubic meters per hour (m³/h)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicMetersPerHour}
 * @example
 * ```ts
 * toCubicMetersPerHour(cubicMetersPerHour(3400)) // => 3400
 * ```
 * @since 0.1.0
 */
export function toCubicMetersPerHour(value: CubicMetersPerSecond): number {
  return outOf(CUBIC_METER_PER_HOUR, value);
}

/**
 * Volume flow given in liters per second (L/s), held in cubic meters per second: value / 1e3.
 * @param value - volume flow in liters per second (L/s), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * litersPerSecond(944) // => 0.944
 * ```
 * @since 0.1.0
 */
export function litersPerSecond(value: number): CubicMetersPerSecond {
  return into(LITER_PER_SECOND, value);
}

/**
 * Volume flow read in liters per second (L/s): value × 1e3.
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of liters per second (L/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link litersPerSecond}
 * @example
 * ```ts
 * toLitersPerSecond(litersPerSecond(944)) // => 944
 * ```
 * @since 0.1.0
 */
export function toLitersPerSecond(value: CubicMetersPerSecond): number {
  return outOf(LITER_PER_SECOND, value);
}

/**
 * Volume flow given in liters per minute (L/min), held in cubic meters per second: value / (1e3 × MINUTE).
 * @param value - volume flow in liters per minute (L/min), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * litersPerMinute(12) // => 0.0002
 * ```
 * @since 0.1.0
 */
export function litersPerMinute(value: number): CubicMetersPerSecond {
  return into(LITER_PER_MINUTE, value);
}

/**
 * Volume flow read in liters per minute (L/min): value × 1e3 × MINUTE.
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of liters per minute (L/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link litersPerMinute}
 * @example
 * ```ts
 * toLitersPerMinute(litersPerMinute(12)) // => 12
 * ```
 * @since 0.1.0
 */
export function toLitersPerMinute(value: CubicMetersPerSecond): number {
  return outOf(LITER_PER_MINUTE, value);
}

/**
 * Volume flow given in cubic feet per minute (ft³/min), held in cubic meters per second: value × CUBIC_FOOT / MINUTE.
 * @param value - volume flow in cubic feet per minute (ft³/min), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * cubicFeetPerMinute(2000) // => 0.9438948864
 * ```
 * @since 0.1.0
 */
export function cubicFeetPerMinute(value: number): CubicMetersPerSecond {
  return into(CUBIC_FOOT_PER_MINUTE, value);
}

/**
 * Volume flow read in cubic feet per minute (ft³/min): value / (CUBIC_FOOT / MINUTE).
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of cubic feet per minute (ft³/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link cubicFeetPerMinute}
 * @example
 * ```ts
 * toCubicFeetPerMinute(cubicFeetPerMinute(2000)) // => 2000
 * ```
 * @since 0.1.0
 */
export function toCubicFeetPerMinute(value: CubicMetersPerSecond): number {
  return outOf(CUBIC_FOOT_PER_MINUTE, value);
}

/**
 * Volume flow given in US gallons per minute (US gal/min), held in cubic meters per second: value × 231 × INCH × INCH × INCH / MINUTE.
 * @param value - volume flow in US gallons per minute (US gal/min), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; US liquid gallon = 231 in³, exact definition
 * @example
 * ```ts
 * usGallonsPerMinute(5) // => 0.000315450982
 * ```
 * @since 0.1.0
 */
export function usGallonsPerMinute(value: number): CubicMetersPerSecond {
  return into(US_GALLON_PER_MINUTE, value);
}

/**
 * Volume flow read in US gallons per minute (US gal/min): value / (231 × INCH × INCH × INCH / MINUTE).
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of US gallons per minute (US gal/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link usGallonsPerMinute}
 * @example
 * ```ts
 * toUsGallonsPerMinute(usGallonsPerMinute(5)) // => 5
 * ```
 * @since 0.1.0
 */
export function toUsGallonsPerMinute(value: CubicMetersPerSecond): number {
  return outOf(US_GALLON_PER_MINUTE, value);
}

/**
 * Volume flow given in US gallons per hour (US gal/h), held in cubic meters per second: value × 231 × INCH × INCH × INCH / HOUR.
 * @param value - volume flow in US gallons per hour (US gal/h), any finite number
 * @returns the volume flow in cubic meters per second (m³/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; US liquid gallon = 231 in³, exact definition
 * @example
 * ```ts
 * usGallonsPerHour(9) // => 0.00000946352946
 * ```
 * @since 0.1.0
 */
export function usGallonsPerHour(value: number): CubicMetersPerSecond {
  return into(US_GALLON_PER_HOUR, value);
}

/**
 * Volume flow read in US gallons per hour (US gal/h): value / (231 × INCH × INCH × INCH / HOUR).
 * @param value - volume flow in cubic meters per second (m³/s)
 * @returns the number of US gallons per hour (US gal/h)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link usGallonsPerHour}
 * @example
 * ```ts
 * toUsGallonsPerHour(usGallonsPerHour(9)) // => 9
 * ```
 * @since 0.1.0
 */
export function toUsGallonsPerHour(value: CubicMetersPerSecond): number {
  return outOf(US_GALLON_PER_HOUR, value);
}

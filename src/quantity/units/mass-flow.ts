/** Mass flow. */

import { into, outOf } from "../scale.ts";
import {
  KILOGRAM_PER_HOUR,
  KILOGRAM_PER_SECOND,
  POUND_PER_HOUR,
  POUND_PER_MINUTE,
} from "../scales/mechanic.ts";
import type { KilogramsPerSecond } from "../tags.ts";

/**
 * Mass flow given in kilograms per second (kg/s), the unit it is held in.
 * @param value - mass flow in kilograms per second (kg/s), any finite number
 * @returns the mass flow in kilograms per second (kg/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * kilogramsPerSecond(1.13) // => 1.13
 * ```
 * @since 0.1.0
 */
export function kilogramsPerSecond(value: number): KilogramsPerSecond {
  return into(KILOGRAM_PER_SECOND, value);
}

/**
 * Mass flow read in kilograms per second (kg/s), the unit it is held in.
 * @param value - mass flow in kilograms per second (kg/s)
 * @returns the number of kilograms per second (kg/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramsPerSecond}
 * @example
 * ```ts
 * toKilogramsPerSecond(kilogramsPerSecond(1.13)) // => 1.13
 * ```
 * @since 0.1.0
 */
export function toKilogramsPerSecond(value: KilogramsPerSecond): number {
  return outOf(KILOGRAM_PER_SECOND, value);
}

/**
 * Mass flow given in kilograms per hour (kg/h), held in kilograms per second: value / HOUR.
 * @param value - mass flow in kilograms per hour (kg/h), any finite number
 * @returns the mass flow in kilograms per second (kg/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * kilogramsPerHour(450) // => 0.125
 * ```
 * @since 0.1.0
 */
export function kilogramsPerHour(value: number): KilogramsPerSecond {
  return into(KILOGRAM_PER_HOUR, value);
}

/**
 * Mass flow read in kilograms per hour (kg/h): value × HOUR.
 * @param value - mass flow in kilograms per second (kg/s)
 * @returns the number of kilograms per hour (kg/h)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramsPerHour}
 * @example
 * ```ts
 * toKilogramsPerHour(kilogramsPerHour(450)) // => 450
 * ```
 * @since 0.1.0
 */
export function toKilogramsPerHour(value: KilogramsPerSecond): number {
  return outOf(KILOGRAM_PER_HOUR, value);
}

/**
 * Mass flow given in pounds per minute (lb/min), held in kilograms per second: value × POUND / MINUTE.
 * @param value - mass flow in pounds per minute (lb/min), any finite number
 * @returns the mass flow in kilograms per second (kg/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * poundsPerMinute(150) // => 1.133980925
 * ```
 * @since 0.1.0
 */
export function poundsPerMinute(value: number): KilogramsPerSecond {
  return into(POUND_PER_MINUTE, value);
}

/**
 * Mass flow read in pounds per minute (lb/min): value / (POUND / MINUTE).
 * @param value - mass flow in kilograms per second (kg/s)
 * @returns the number of pounds per minute (lb/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsPerMinute}
 * @example
 * ```ts
 * toPoundsPerMinute(poundsPerMinute(150)) // => 150
 * ```
 * @since 0.1.0
 */
export function toPoundsPerMinute(value: KilogramsPerSecond): number {
  return outOf(POUND_PER_MINUTE, value);
}

/**
 * Mass flow given in pounds per hour (lb/h), held in kilograms per second: value × POUND / HOUR.
 * @param value - mass flow in pounds per hour (lb/h), any finite number
 * @returns the mass flow in kilograms per second (kg/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * poundsPerHour(2500) // => 0.3149947013888889
 * ```
 * @since 0.1.0
 */
export function poundsPerHour(value: number): KilogramsPerSecond {
  return into(POUND_PER_HOUR, value);
}

/**
 * Mass flow read in pounds per hour (lb/h): value / (POUND / HOUR).
 * @param value - mass flow in kilograms per second (kg/s)
 * @returns the number of pounds per hour (lb/h)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsPerHour}
 * @example
 * ```ts
 * toPoundsPerHour(poundsPerHour(2500)) // => 2500
 * ```
 * @since 0.1.0
 */
export function toPoundsPerHour(value: KilogramsPerSecond): number {
  return outOf(POUND_PER_HOUR, value);
}

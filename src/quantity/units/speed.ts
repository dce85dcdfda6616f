/** Speed and dynamic viscosity. */

import { into, outOf } from "../scale.ts";
import {
  FOOT_PER_MINUTE,
  FOOT_PER_SECOND,
  METER_PER_MINUTE,
  METER_PER_SECOND,
  PASCAL_SECOND,
} from "../scales/force.ts";
import type { MetersPerSecond, PascalSeconds } from "../tags.ts";

/**
 * Dynamic viscosity given in pascal seconds (Pa·s), the unit it is held in.
 * @param value - dynamic viscosity in pascal seconds (Pa·s), any finite number
 * @returns the dynamic viscosity in pascal seconds (Pa·s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * pascalSeconds(1.8e-5) // => 0.000018
 * ```
 * @since 0.1.0
 */
export function pascalSeconds(value: number): PascalSeconds {
  return into(PASCAL_SECOND, value);
}

/**
 * Dynamic viscosity read in pascal seconds (Pa·s), the unit it is held in.
 * @param value - dynamic viscosity in pascal seconds (Pa·s)
 * @returns the number of pascal seconds (Pa·s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link pascalSeconds}
 * @example
 * ```ts
 * toPascalSeconds(pascalSeconds(1.8e-5)) // => 0.000018
 * ```
 * @since 0.1.0
 */
export function toPascalSeconds(value: PascalSeconds): number {
  return outOf(PASCAL_SECOND, value);
}

/**
 * Speed given in meters per second (m/s), the unit it is held in.
 * @param value - speed in meters per second (m/s), any finite number
 * @returns the speed in meters per second (m/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * metersPerSecond(2.5) // => 2.5
 * ```
 * @since 0.1.0
 */
export function metersPerSecond(value: number): MetersPerSecond {
  return into(METER_PER_SECOND, value);
}

/**
 * Speed read in meters per second (m/s), the unit it is held in.
 * @param value - speed in meters per second (m/s)
 * @returns the number of meters per second (m/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link metersPerSecond}
 * @example
 * ```ts
 * toMetersPerSecond(metersPerSecond(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toMetersPerSecond(value: MetersPerSecond): number {
  return outOf(METER_PER_SECOND, value);
}

/**
 * Speed given in meters per minute (m/min), held in meters per second: value / MINUTE.
 * @param value - speed in meters per minute (m/min), any finite number
 * @returns the speed in meters per second (m/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * metersPerMinute(150) // => 2.5
 * ```
 * @since 0.1.0
 */
export function metersPerMinute(value: number): MetersPerSecond {
  return into(METER_PER_MINUTE, value);
}

/**
 * Speed read in meters per minute (m/min): value × MINUTE.
 * @param value - speed in meters per second (m/s)
 * @returns the number of meters per minute (m/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link metersPerMinute}
 * @example
 * ```ts
 * toMetersPerMinute(metersPerMinute(150)) // => 150
 * ```
 * @since 0.1.0
 */
export function toMetersPerMinute(value: MetersPerSecond): number {
  return outOf(METER_PER_MINUTE, value);
}

/**
 * Speed given in feet per second (ft/s), held in meters per second: value × FOOT.
 * @param value - speed in feet per second (ft/s), any finite number
 * @returns the speed in meters per second (m/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * feetPerSecond(8) // => 2.4384
 * ```
 * @since 0.1.0
 */
export function feetPerSecond(value: number): MetersPerSecond {
  return into(FOOT_PER_SECOND, value);
}

/**
 * Speed read in feet per second (ft/s): value / FOOT.
 * @param value - speed in meters per second (m/s)
 * @returns the number of feet per second (ft/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link feetPerSecond}
 * @example
 * ```ts
 * toFeetPerSecond(feetPerSecond(8)) // => 8
 * ```
 * @since 0.1.0
 */
export function toFeetPerSecond(value: MetersPerSecond): number {
  return outOf(FOOT_PER_SECOND, value);
}

/**
 * Speed given in feet per minute (ft/min), held in meters per second: value × FOOT / MINUTE.
 * @param value - speed in feet per minute (ft/min), any finite number
 * @returns the speed in meters per second (m/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * feetPerMinute(500) // => 2.54
 * ```
 * @since 0.1.0
 */
export function feetPerMinute(value: number): MetersPerSecond {
  return into(FOOT_PER_MINUTE, value);
}

/**
 * Speed read in feet per minute (ft/min): value / (FOOT / MINUTE).
 * @param value - speed in meters per second (m/s)
 * @returns the number of feet per minute (ft/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link feetPerMinute}
 * @example
 * ```ts
 * toFeetPerMinute(feetPerMinute(500)) // => 500
 * ```
 * @since 0.1.0
 */
export function toFeetPerMinute(value: MetersPerSecond): number {
  return outOf(FOOT_PER_MINUTE, value);
}

/** Time and frequency. */

import { into, outOf } from "../scale.ts";
import {
  DEGREE,
  HERTZ,
  HOUR_TIME,
  KILOHERTZ,
  MILLISECOND,
  MINUTE_TIME,
  RADIAN,
  SECOND,
} from "../scales/electric.ts";
import type { Hertz, Radians, Seconds } from "../tags.ts";

/**
 * Time given in seconds (s), the unit it is held in.
 * @param value - time in seconds (s), any finite number
 * @returns the time in seconds (s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 2; definition
 * @example
 * ```ts
 * seconds(90) // => 90
 * ```
 * @since 0.1.0
 */
export function seconds(value: number): Seconds {
  return into(SECOND, value);
}

/**
 * Time read in seconds (s), the unit it is held in.
 * @param value - time in seconds (s)
 * @returns the number of seconds (s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link seconds}
 * @example
 * ```ts
 * toSeconds(seconds(90)) // => 90
 * ```
 * @since 0.1.0
 */
export function toSeconds(value: Seconds): number {
  return outOf(SECOND, value);
}

/**
 * Time given in milliseconds (ms), held in seconds: value / 1e3.
 * @param value - time in milliseconds (ms), any finite number
 * @returns the time in seconds (s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * milliseconds(16.7) // => 0.0167
 * ```
 * @since 0.1.0
 */
export function milliseconds(value: number): Seconds {
  return into(MILLISECOND, value);
}

/**
 * Time read in milliseconds (ms): value × 1e3.
 * @param value - time in seconds (s)
 * @returns the number of milliseconds (ms)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link milliseconds}
 * @example
 * ```ts
 * toMilliseconds(milliseconds(16.7)) // => 16.7
 * ```
 * @since 0.1.0
 */
export function toMilliseconds(value: Seconds): number {
  return outOf(MILLISECOND, value);
}

/**
 * Time given in minutes (min), held in seconds: value × MINUTE.
 * @param value - time in minutes (min), any finite number
 * @returns the time in seconds (s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * minutes(45) // => 2700
 * ```
 * @since 0.1.0
 */
export function minutes(value: number): Seconds {
  return into(MINUTE_TIME, value);
}

/**
 * Time read in minutes (min): value / MINUTE.
 * @param value - time in seconds (s)
 * @returns the number of minutes (min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link minutes}
 * @example
 * ```ts
 * toMinutes(minutes(45)) // => 45
 * ```
 * @since 0.1.0
 */
export function toMinutes(value: Seconds): number {
  return outOf(MINUTE_TIME, value);
}

/**
 * Time given in hours (h), held in seconds: value × HOUR.
 * @param value - time in hours (h), any finite number
 * @returns the time in seconds (s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * hours(1.5) // => 5400
 * ```
 * @since 0.1.0
 */
export function hours(value: number): Seconds {
  return into(HOUR_TIME, value);
}

/**
 * Time read in hours (h): value / HOUR.
 * @param value - time in seconds (s)
 * @returns the number of hours (h)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link hours}
 * @example
 * ```ts
 * toHours(hours(1.5)) // => 1.5
 * ```
 * @since 0.1.0
 */
export function toHours(value: Seconds): number {
  return outOf(HOUR_TIME, value);
}

/**
 * Frequency given in hertz (Hz), the unit it is held in.
 * @param value - frequency in hertz (Hz), any finite number
 * @returns the frequency in hertz (Hz)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * hertz(60) // => 60
 * ```
 * @since 0.1.0
 */
export function hertz(value: number): Hertz {
  return into(HERTZ, value);
}

/**
 * Frequency read in hertz (Hz), the unit it is held in.
 * @param value - frequency in hertz (Hz)
 * @returns the number of hertz (Hz)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link hertz}
 * @example
 * ```ts
 * toHertz(hertz(60)) // => 60
 * ```
 * @since 0.1.0
 */
export function toHertz(value: Hertz): number {
  return outOf(HERTZ, value);
}

/**
 * Frequency given in kilohertz (kHz), held in hertz: value × 1e3.
 * @param value - frequency in kilohertz (kHz), any finite number
 * @returns the frequency in hertz (Hz)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilohertz(2.5) // => 2500
 * ```
 * @since 0.1.0
 */
export function kilohertz(value: number): Hertz {
  return into(KILOHERTZ, value);
}

/**
 * Frequency read in kilohertz (kHz): value / 1e3.
 * @param value - frequency in hertz (Hz)
 * @returns the number of kilohertz (kHz)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilohertz}
 * @example
 * ```ts
 * toKilohertz(kilohertz(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toKilohertz(value: Hertz): number {
  return outOf(KILOHERTZ, value);
}

/**
 * Angle given in radians (rad), the unit it is held in.
 * @param value - angle in radians (rad), any finite number
 * @returns the angle in radians (rad)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * radians(0.5) // => 0.5
 * ```
 * @since 0.1.0
 */
export function radians(value: number): Radians {
  return into(RADIAN, value);
}

/**
 * Angle read in radians (rad), the unit it is held in.
 * @param value - angle in radians (rad)
 * @returns the number of radians (rad)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link radians}
 * @example
 * ```ts
 * toRadians(radians(0.5)) // => 0.5
 * ```
 * @since 0.1.0
 */
export function toRadians(value: Radians): number {
  return outOf(RADIAN, value);
}

/**
 * Angle given in degrees (°), held in radians: value × PI / 180.
 * @param value - angle in degrees (°), any finite number
 * @returns the angle in radians (rad)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * degrees(25) // => 0.4363323129985824
 * ```
 * @since 0.1.0
 */
export function degrees(value: number): Radians {
  return into(DEGREE, value);
}

/**
 * Angle read in degrees (°): value / (PI / 180).
 * @param value - angle in radians (rad)
 * @returns the number of degrees (°)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link degrees}
 * @example
 * ```ts
 * toDegrees(degrees(25)) // => 25
 * ```
 * @since 0.1.0
 */
export function toDegrees(value: Radians): number {
  return outOf(DEGREE, value);
}

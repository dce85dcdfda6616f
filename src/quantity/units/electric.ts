/** Voltage, current, frequency, angle. */

import { into, outOf } from "../scale.ts";
import {
  AMPERE,
  KILOAMPERE,
  KILOVOLT,
  MICROAMPERE,
  MICROVOLT,
  MILLIAMPERE,
  MILLIVOLT,
  VOLT,
} from "../scales/electric.ts";
import type { Amperes, Volts } from "../tags.ts";

/**
 * Voltage given in volts (V), the unit it is held in.
 * @param value - voltage in volts (V), any finite number
 * @returns the voltage in volts (V)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * volts(480) // => 480
 * ```
 * @since 0.1.0
 */
export function volts(value: number): Volts {
  return into(VOLT, value);
}

/**
 * Voltage read in volts (V), the unit it is held in.
 * @param value - voltage in volts (V)
 * @returns the number of volts (V)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link volts}
 * @example
 * ```ts
 * toVolts(volts(480)) // => 480
 * ```
 * @since 0.1.0
 */
export function toVolts(value: Volts): number {
  return outOf(VOLT, value);
}

/**
 * Voltage given in microvolts (µV), held in volts: value / 1e6.
 * @param value - voltage in microvolts (µV), any finite number
 * @returns the voltage in volts (V)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * microvolts(250) // => 0.00025
 * ```
 * @since 0.1.0
 */
export function microvolts(value: number): Volts {
  return into(MICROVOLT, value);
}

/**
 * Voltage read in microvolts (µV): value × 1e6.
 * @param value - voltage in volts (V)
 * @returns the number of microvolts (µV)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microvolts}
 * @example
 * ```ts
 * toMicrovolts(microvolts(250)) // => 250
 * ```
 * @since 0.1.0
 */
export function toMicrovolts(value: Volts): number {
  return outOf(MICROVOLT, value);
}

/**
 * Voltage given in millivolts (mV), held in volts: value / 1e3.
 * @param value - voltage in millivolts (mV), any finite number
 * @returns the voltage in volts (V)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * millivolts(12.5) // => 0.0125
 * ```
 * @since 0.1.0
 */
export function millivolts(value: number): Volts {
  return into(MILLIVOLT, value);
}

/**
 * Voltage read in millivolts (mV): value × 1e3.
 * @param value - voltage in volts (V)
 * @returns the number of millivolts (mV)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link millivolts}
 * @example
 * ```ts
 * toMillivolts(millivolts(12.5)) // => 12.5
 * ```
 * @since 0.1.0
 */
export function toMillivolts(value: Volts): number {
  return outOf(MILLIVOLT, value);
}

/**
 * Voltage given in kilovolts (kV), held in volts: value × 1e3.
 * @param value - voltage in kilovolts (kV), any finite number
 * @returns the voltage in volts (V)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilovolts(0.48) // => 480
 * ```
 * @since 0.1.0
 */
export function kilovolts(value: number): Volts {
  return into(KILOVOLT, value);
}

/**
 * Voltage read in kilovolts (kV): value / 1e3.
 * @param value - voltage in volts (V)
 * @returns the number of kilovolts (kV)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilovolts}
 * @example
 * ```ts
 * toKilovolts(kilovolts(0.48)) // => 0.48
 * ```
 * @since 0.1.0
 */
export function toKilovolts(value: Volts): number {
  return outOf(KILOVOLT, value);
}

/**
 * Current given in amperes (A), the unit it is held in.
 * @param value - current in amperes (A), any finite number
 * @returns the current in amperes (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 2; definition
 * @example
 * ```ts
 * amperes(72.2) // => 72.2
 * ```
 * @since 0.1.0
 */
export function amperes(value: number): Amperes {
  return into(AMPERE, value);
}

/**
 * Current read in amperes (A), the unit it is held in.
 * @param value - current in amperes (A)
 * @returns the number of amperes (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link amperes}
 * @example
 * ```ts
 * toAmperes(amperes(72.2)) // => 72.2
 * ```
 * @since 0.1.0
 */
export function toAmperes(value: Amperes): number {
  return outOf(AMPERE, value);
}

/**
 * Current given in microamperes (µA), held in amperes: value / 1e6.
 * @param value - current in microamperes (µA), any finite number
 * @returns the current in amperes (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * microamperes(500) // => 0.0005
 * ```
 * @since 0.1.0
 */
export function microamperes(value: number): Amperes {
  return into(MICROAMPERE, value);
}

/**
 * Current read in microamperes (µA): value × 1e6.
 * @param value - current in amperes (A)
 * @returns the number of microamperes (µA)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microamperes}
 * @example
 * ```ts
 * toMicroamperes(microamperes(500)) // => 500
 * ```
 * @since 0.1.0
 */
export function toMicroamperes(value: Amperes): number {
  return outOf(MICROAMPERE, value);
}

/**
 * Current given in milliamperes (mA), held in amperes: value / 1e3.
 * @param value - current in milliamperes (mA), any finite number
 * @returns the current in amperes (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * milliamperes(0.75) // => 0.00075
 * ```
 * @since 0.1.0
 */
export function milliamperes(value: number): Amperes {
  return into(MILLIAMPERE, value);
}

/**
 * Current read in milliamperes (mA): value × 1e3.
 * @param value - current in amperes (A)
 * @returns the number of milliamperes (mA)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link milliamperes}
 * @example
 * ```ts
 * toMilliamperes(milliamperes(0.75)) // => 0.75
 * ```
 * @since 0.1.0
 */
export function toMilliamperes(value: Amperes): number {
  return outOf(MILLIAMPERE, value);
}

/**
 * Current given in kiloamperes (kA), held in amperes: value × 1e3.
 * @param value - current in kiloamperes (kA), any finite number
 * @returns the current in amperes (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kiloamperes(10) // => 10000
 * ```
 * @since 0.1.0
 */
export function kiloamperes(value: number): Amperes {
  return into(KILOAMPERE, value);
}

/**
 * Current read in kiloamperes (kA): value / 1e3.
 * @param value - current in amperes (A)
 * @returns the number of kiloamperes (kA)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kiloamperes}
 * @example
 * ```ts
 * toKiloamperes(kiloamperes(10)) // => 10
 * ```
 * @since 0.1.0
 */
export function toKiloamperes(value: Amperes): number {
  return outOf(KILOAMPERE, value);
}

/** Temperature difference and rate. For the temperature itself see temperature.ts. */

import { into, outOf } from "../scale.ts";
import {
  BTU_IT_PER_HOUR_FAHRENHEIT,
  FAHRENHEIT_DEGREE,
  KELVIN,
  KELVIN_PER_MINUTE,
  KELVIN_PER_SECOND,
  KELVIN_PER_WATT,
  WATT_PER_KELVIN,
} from "../scales/heat.ts";
import type { Kelvins, KelvinsPerSecond, KelvinsPerWatt, WattsPerKelvin } from "../tags.ts";

/**
 * Temperature difference given in kelvins (K), the unit it is held in.
 * @param value - temperature difference in kelvins (K), any finite number
 * @returns the temperature difference in kelvins (K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 2; definition
 * @example
 * ```ts
 * kelvins(22) // => 22
 * ```
 * @since 0.1.0
 */
export function kelvins(value: number): Kelvins {
  return into(KELVIN, value);
}

/**
 * Temperature difference read in kelvins (K), the unit it is held in.
 * @param value - temperature difference in kelvins (K)
 * @returns the number of kelvins (K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kelvins}
 * @example
 * ```ts
 * toKelvins(kelvins(22)) // => 22
 * ```
 * @since 0.1.0
 */
export function toKelvins(value: Kelvins): number {
  return outOf(KELVIN, value);
}

/**
 * Temperature difference given in Fahrenheit degrees (Δ°F), held in kelvins: value / 1.8.
 * @param value - temperature difference in Fahrenheit degrees (Δ°F), any finite number
 * @returns the temperature difference in kelvins (K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, SI Brochure, 9th edition (2019), 2.3.1 for the kelvin; NIST SP 811, 2008 edition, B.8: 1 °F difference = 5/9 K
 * @example
 * ```ts
 * fahrenheitDegrees(40) // => 22.22222222222222
 * ```
 * @since 0.1.0
 */
export function fahrenheitDegrees(value: number): Kelvins {
  return into(FAHRENHEIT_DEGREE, value);
}

/**
 * Temperature difference read in Fahrenheit degrees (Δ°F): value × 1.8.
 * @param value - temperature difference in kelvins (K)
 * @returns the number of Fahrenheit degrees (Δ°F)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link fahrenheitDegrees}
 * @example
 * ```ts
 * toFahrenheitDegrees(fahrenheitDegrees(40)) // => 40
 * ```
 * @since 0.1.0
 */
export function toFahrenheitDegrees(value: Kelvins): number {
  return outOf(FAHRENHEIT_DEGREE, value);
}

/**
 * Rate of temperature change given in kelvins per second (K/s), the unit it is held in.
 * @param value - rate of temperature change in kelvins per second (K/s), any finite number
 * @returns the rate of temperature change in kelvins per second (K/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * kelvinsPerSecond(0.5) // => 0.5
 * ```
 * @since 0.1.0
 */
export function kelvinsPerSecond(value: number): KelvinsPerSecond {
  return into(KELVIN_PER_SECOND, value);
}

/**
 * Rate of temperature change read in kelvins per second (K/s), the unit it is held in.
 * @param value - rate of temperature change in kelvins per second (K/s)
 * @returns the number of kelvins per second (K/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kelvinsPerSecond}
 * @example
 * ```ts
 * toKelvinsPerSecond(kelvinsPerSecond(0.5)) // => 0.5
 * ```
 * @since 0.1.0
 */
export function toKelvinsPerSecond(value: KelvinsPerSecond): number {
  return outOf(KELVIN_PER_SECOND, value);
}

/**
 * Rate of temperature change given in kelvins per minute (K/min), held in kelvins per second: value / MINUTE.
 * @param value - rate of temperature change in kelvins per minute (K/min), any finite number
 * @returns the rate of temperature change in kelvins per second (K/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * kelvinsPerMinute(5) // => 0.08333333333333333
 * ```
 * @since 0.1.0
 */
export function kelvinsPerMinute(value: number): KelvinsPerSecond {
  return into(KELVIN_PER_MINUTE, value);
}

/**
 * Rate of temperature change read in kelvins per minute (K/min): value × MINUTE.
 * @param value - rate of temperature change in kelvins per second (K/s)
 * @returns the number of kelvins per minute (K/min)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kelvinsPerMinute}
 * @example
 * ```ts
 * toKelvinsPerMinute(kelvinsPerMinute(5)) // => 5
 * ```
 * @since 0.1.0
 */
export function toKelvinsPerMinute(value: KelvinsPerSecond): number {
  return outOf(KELVIN_PER_MINUTE, value);
}

/**
 * Thermal resistance given in kelvins per watt (K/W), the unit it is held in.
 * @param value - thermal resistance in kelvins per watt (K/W), any finite number
 * @returns the thermal resistance in kelvins per watt (K/W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * kelvinsPerWatt(1.25) // => 1.25
 * ```
 * @since 0.1.0
 */
export function kelvinsPerWatt(value: number): KelvinsPerWatt {
  return into(KELVIN_PER_WATT, value);
}

/**
 * Thermal resistance read in kelvins per watt (K/W), the unit it is held in.
 * @param value - thermal resistance in kelvins per watt (K/W)
 * @returns the number of kelvins per watt (K/W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kelvinsPerWatt}
 * @example
 * ```ts
 * toKelvinsPerWatt(kelvinsPerWatt(1.25)) // => 1.25
 * ```
 * @since 0.1.0
 */
export function toKelvinsPerWatt(value: KelvinsPerWatt): number {
  return outOf(KELVIN_PER_WATT, value);
}

/**
 * Thermal conductance given in watts per kelvin (W/K), the unit it is held in.
 * @param value - thermal conductance in watts per kelvin (W/K), any finite number
 * @returns the thermal conductance in watts per kelvin (W/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * wattsPerKelvin(0.8) // => 0.8
 * ```
 * @since 0.1.0
 */
export function wattsPerKelvin(value: number): WattsPerKelvin {
  return into(WATT_PER_KELVIN, value);
}

/**
 * Thermal conductance read in watts per kelvin (W/K), the unit it is held in.
 * @param value - thermal conductance in watts per kelvin (W/K)
 * @returns the number of watts per kelvin (W/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerKelvin}
 * @example
 * ```ts
 * toWattsPerKelvin(wattsPerKelvin(0.8)) // => 0.8
 * ```
 * @since 0.1.0
 */
export function toWattsPerKelvin(value: WattsPerKelvin): number {
  return outOf(WATT_PER_KELVIN, value);
}

/**
 * Thermal conductance given in Btu (IT) per hour and Fahrenheit (Btu/(h·°F)), held in watts per kelvin: value × BTU_IT × 1.8 / HOUR.
 * @param value - thermal conductance in Btu (IT) per hour and Fahrenheit (Btu/(h·°F)), any finite number
 * @returns the thermal conductance in watts per kelvin (W/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItPerHourFahrenheit(200) // => 105.505585262
 * ```
 * @since 0.1.0
 */
export function btuItPerHourFahrenheit(value: number): WattsPerKelvin {
  return into(BTU_IT_PER_HOUR_FAHRENHEIT, value);
}

/**
 * Thermal conductance read in Btu (IT) per hour and Fahrenheit (Btu/(h·°F)): value / (BTU_IT × 1.8 / HOUR).
 * @param value - thermal conductance in watts per kelvin (W/K)
 * @returns the number of Btu (IT) per hour and Fahrenheit (Btu/(h·°F))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItPerHourFahrenheit}
 * @example
 * ```ts
 * toBtuItPerHourFahrenheit(btuItPerHourFahrenheit(200)) // => 200
 * ```
 * @since 0.1.0
 */
export function toBtuItPerHourFahrenheit(value: WattsPerKelvin): number {
  return outOf(BTU_IT_PER_HOUR_FAHRENHEIT, value);
}

/** Film coefficient and thermal conductivity. */

import { into, outOf } from "../scale.ts";
import {
  BTU_IT_INCH_PER_HOUR_SQUARE_FOOT_FAHRENHEIT,
  BTU_IT_PER_HOUR_FOOT_FAHRENHEIT,
  BTU_IT_PER_HOUR_SQUARE_FOOT_FAHRENHEIT,
  SQUARE_METER_PER_SECOND,
  WATT_PER_CUBIC_CENTIMETER,
  WATT_PER_CUBIC_METER,
  WATT_PER_METER_KELVIN,
  WATT_PER_SQUARE_METER_KELVIN,
} from "../scales/heat.ts";
import type {
  SquareMetersPerSecond,
  WattsPerCubicMeter,
  WattsPerMeterKelvin,
  WattsPerSquareMeterKelvin,
} from "../tags.ts";

/**
 * Film coefficient given in watts per square meter kelvin (W/(m²·K)), the unit it is held in.
 * @param value - film coefficient in watts per square meter kelvin (W/(m²·K)), any finite number
 * @returns the film coefficient in watts per square meter kelvin (W/(m²·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * wattsPerSquareMeterKelvin(25) // => 25
 * ```
 * @since 0.1.0
 */
export function wattsPerSquareMeterKelvin(value: number): WattsPerSquareMeterKelvin {
  return into(WATT_PER_SQUARE_METER_KELVIN, value);
}

/**
 * Film coefficient read in watts per square meter kelvin (W/(m²·K)), the unit it is held in.
 * @param value - film coefficient in watts per square meter kelvin (W/(m²·K))
 * @returns the number of watts per square meter kelvin (W/(m²·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerSquareMeterKelvin}
 * @example
 * ```ts
 * toWattsPerSquareMeterKelvin(wattsPerSquareMeterKelvin(25)) // => 25
 * ```
 * @since 0.1.0
 */
export function toWattsPerSquareMeterKelvin(value: WattsPerSquareMeterKelvin): number {
  return outOf(WATT_PER_SQUARE_METER_KELVIN, value);
}

/**
 * Film coefficient given in Btu (IT) per hour square foot Fahrenheit (Btu/(h·ft²·°F)), held in watts per square meter kelvin: value × BTU_IT × 1.8 / (HOUR × FOOT × FOOT).
 * @param value - film coefficient in Btu (IT) per hour square foot Fahrenheit (Btu/(h·ft²·°F)), any finite number
 * @returns the film coefficient in watts per square meter kelvin (W/(m²·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItPerHourSquareFootFahrenheit(1.46) // => 8.290264478025692
 * ```
 * @since 0.1.0
 */
export function btuItPerHourSquareFootFahrenheit(value: number): WattsPerSquareMeterKelvin {
  return into(BTU_IT_PER_HOUR_SQUARE_FOOT_FAHRENHEIT, value);
}

/**
 * Film coefficient read in Btu (IT) per hour square foot Fahrenheit (Btu/(h·ft²·°F)): value / (BTU_IT × 1.8 / (HOUR × FOOT × FOOT)).
 * @param value - film coefficient in watts per square meter kelvin (W/(m²·K))
 * @returns the number of Btu (IT) per hour square foot Fahrenheit (Btu/(h·ft²·°F))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItPerHourSquareFootFahrenheit}
 * @example
 * ```ts
 * toBtuItPerHourSquareFootFahrenheit(btuItPerHourSquareFootFahrenheit(1.46)) // => 1.46
 * ```
 * @since 0.1.0
 */
export function toBtuItPerHourSquareFootFahrenheit(value: WattsPerSquareMeterKelvin): number {
  return outOf(BTU_IT_PER_HOUR_SQUARE_FOOT_FAHRENHEIT, value);
}

/**
 * Thermal conductivity given in watts per meter kelvin (W/(m·K)), the unit it is held in.
 * @param value - thermal conductivity in watts per meter kelvin (W/(m·K)), any finite number
 * @returns the thermal conductivity in watts per meter kelvin (W/(m·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * wattsPerMeterKelvin(390) // => 390
 * ```
 * @since 0.1.0
 */
export function wattsPerMeterKelvin(value: number): WattsPerMeterKelvin {
  return into(WATT_PER_METER_KELVIN, value);
}

/**
 * Thermal conductivity read in watts per meter kelvin (W/(m·K)), the unit it is held in.
 * @param value - thermal conductivity in watts per meter kelvin (W/(m·K))
 * @returns the number of watts per meter kelvin (W/(m·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerMeterKelvin}
 * @example
 * ```ts
 * toWattsPerMeterKelvin(wattsPerMeterKelvin(390)) // => 390
 * ```
 * @since 0.1.0
 */
export function toWattsPerMeterKelvin(value: WattsPerMeterKelvin): number {
  return outOf(WATT_PER_METER_KELVIN, value);
}

/**
 * Thermal conductivity given in Btu (IT) per hour foot Fahrenheit (Btu/(h·ft·°F)), held in watts per meter kelvin: value × BTU_IT × 1.8 / (HOUR × FOOT).
 * @param value - thermal conductivity in Btu (IT) per hour foot Fahrenheit (Btu/(h·ft·°F)), any finite number
 * @returns the thermal conductivity in watts per meter kelvin (W/(m·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItPerHourFootFahrenheit(226) // => 391.1460345999344
 * ```
 * @since 0.1.0
 */
export function btuItPerHourFootFahrenheit(value: number): WattsPerMeterKelvin {
  return into(BTU_IT_PER_HOUR_FOOT_FAHRENHEIT, value);
}

/**
 * Thermal conductivity read in Btu (IT) per hour foot Fahrenheit (Btu/(h·ft·°F)): value / (BTU_IT × 1.8 / (HOUR × FOOT)).
 * @param value - thermal conductivity in watts per meter kelvin (W/(m·K))
 * @returns the number of Btu (IT) per hour foot Fahrenheit (Btu/(h·ft·°F))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItPerHourFootFahrenheit}
 * @example
 * ```ts
 * toBtuItPerHourFootFahrenheit(btuItPerHourFootFahrenheit(226)) // => 226
 * ```
 * @since 0.1.0
 */
export function toBtuItPerHourFootFahrenheit(value: WattsPerMeterKelvin): number {
  return outOf(BTU_IT_PER_HOUR_FOOT_FAHRENHEIT, value);
}

/**
 * Thermal conductivity given in Btu (IT) inches per hour square foot Fahrenheit (Btu·in/(h·ft²·°F)), held in watts per meter kelvin: value × BTU_IT × 1.8 × INCH / (HOUR × FOOT × FOOT).
 * @param value - thermal conductivity in Btu (IT) inches per hour square foot Fahrenheit (Btu·in/(h·ft²·°F)), any finite number
 * @returns the thermal conductivity in watts per meter kelvin (W/(m·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItInchesPerHourSquareFootFahrenheit(0.27) // => 0.0389415299933563
 * ```
 * @since 0.1.0
 */
export function btuItInchesPerHourSquareFootFahrenheit(value: number): WattsPerMeterKelvin {
  return into(BTU_IT_INCH_PER_HOUR_SQUARE_FOOT_FAHRENHEIT, value);
}

/**
 * Thermal conductivity read in Btu (IT) inches per hour square foot Fahrenheit (Btu·in/(h·ft²·°F)): value / (BTU_IT × 1.8 × INCH / (HOUR × FOOT × FOOT)).
 * @param value - thermal conductivity in watts per meter kelvin (W/(m·K))
 * @returns the number of Btu (IT) inches per hour square foot Fahrenheit (Btu·in/(h·ft²·°F))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItInchesPerHourSquareFootFahrenheit}
 * @example
 * ```ts
 * toBtuItInchesPerHourSquareFootFahrenheit(btuItInchesPerHourSquareFootFahrenheit(0.27)) // => 0.27
 * ```
 * @since 0.1.0
 */
export function toBtuItInchesPerHourSquareFootFahrenheit(value: WattsPerMeterKelvin): number {
  return outOf(BTU_IT_INCH_PER_HOUR_SQUARE_FOOT_FAHRENHEIT, value);
}

/**
 * Volumetric power given in watts per cubic meter (W/m³), the unit it is held in.
 * @param value - volumetric power in watts per cubic meter (W/m³), any finite number
 * @returns the volumetric power in watts per cubic meter (W/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * wattsPerCubicMeter(2e6) // => 2000000
 * ```
 * @since 0.1.0
 */
export function wattsPerCubicMeter(value: number): WattsPerCubicMeter {
  return into(WATT_PER_CUBIC_METER, value);
}

/**
 * Volumetric power read in watts per cubic meter (W/m³), the unit it is held in.
 * @param value - volumetric power in watts per cubic meter (W/m³)
 * @returns the number of watts per cubic meter (W/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerCubicMeter}
 * @example
 * ```ts
 * toWattsPerCubicMeter(wattsPerCubicMeter(2e6)) // => 2000000
 * ```
 * @since 0.1.0
 */
export function toWattsPerCubicMeter(value: WattsPerCubicMeter): number {
  return outOf(WATT_PER_CUBIC_METER, value);
}

/**
 * Volumetric power given in watts per cubic centimeter (W/cm³), held in watts per cubic meter: value × 1e6.
 * @param value - volumetric power in watts per cubic centimeter (W/cm³), any finite number
 * @returns the volumetric power in watts per cubic meter (W/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * wattsPerCubicCentimeter(2) // => 2000000
 * ```
 * @since 0.1.0
 */
export function wattsPerCubicCentimeter(value: number): WattsPerCubicMeter {
  return into(WATT_PER_CUBIC_CENTIMETER, value);
}

/**
 * Volumetric power read in watts per cubic centimeter (W/cm³): value / 1e6.
 * @param value - volumetric power in watts per cubic meter (W/m³)
 * @returns the number of watts per cubic centimeter (W/cm³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerCubicCentimeter}
 * @example
 * ```ts
 * toWattsPerCubicCentimeter(wattsPerCubicCentimeter(2)) // => 2
 * ```
 * @since 0.1.0
 */
export function toWattsPerCubicCentimeter(value: WattsPerCubicMeter): number {
  return outOf(WATT_PER_CUBIC_CENTIMETER, value);
}

/**
 * Diffusivity or kinematic viscosity given in square meters per second (m²/s), the unit it is held in.
 * @param value - diffusivity or kinematic viscosity in square meters per second (m²/s), any finite number
 * @returns the diffusivity or kinematic viscosity in square meters per second (m²/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * squareMetersPerSecond(1.5e-5) // => 0.000015
 * ```
 * @since 0.1.0
 */
export function squareMetersPerSecond(value: number): SquareMetersPerSecond {
  return into(SQUARE_METER_PER_SECOND, value);
}

/**
 * Diffusivity or kinematic viscosity read in square meters per second (m²/s), the unit it is held in.
 * @param value - diffusivity or kinematic viscosity in square meters per second (m²/s)
 * @returns the number of square meters per second (m²/s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link squareMetersPerSecond}
 * @example
 * ```ts
 * toSquareMetersPerSecond(squareMetersPerSecond(1.5e-5)) // => 0.000015
 * ```
 * @since 0.1.0
 */
export function toSquareMetersPerSecond(value: SquareMetersPerSecond): number {
  return outOf(SQUARE_METER_PER_SECOND, value);
}

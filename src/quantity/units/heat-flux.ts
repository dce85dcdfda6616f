/** Heat flux and surface load. */

import { into, outOf } from "../scale.ts";
import {
  BTU_IT_PER_HOUR_SQUARE_FOOT,
  KILOWATT_PER_METER,
  KILOWATT_PER_SQUARE_FOOT,
  KILOWATT_PER_SQUARE_METER,
  WATT_PER_METER,
  WATT_PER_SQUARE_CENTIMETER,
  WATT_PER_SQUARE_INCH,
  WATT_PER_SQUARE_METER,
} from "../scales/heat.ts";
import type { WattsPerMeter, WattsPerSquareMeter } from "../tags.ts";

/**
 * Heat flux given in watts per square meter (W/m²), the unit it is held in.
 * @param value - heat flux in watts per square meter (W/m²), any finite number
 * @returns the heat flux in watts per square meter (W/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * wattsPerSquareMeter(20000) // => 20000
 * ```
 * @since 0.1.0
 */
export function wattsPerSquareMeter(value: number): WattsPerSquareMeter {
  return into(WATT_PER_SQUARE_METER, value);
}

/**
 * Heat flux read in watts per square meter (W/m²), the unit it is held in.
 * @param value - heat flux in watts per square meter (W/m²)
 * @returns the number of watts per square meter (W/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerSquareMeter}
 * @example
 * ```ts
 * toWattsPerSquareMeter(wattsPerSquareMeter(20000)) // => 20000
 * ```
 * @since 0.1.0
 */
export function toWattsPerSquareMeter(value: WattsPerSquareMeter): number {
  return outOf(WATT_PER_SQUARE_METER, value);
}

/**
 * Heat flux given in watts per square centimeter (W/cm²), held in watts per square meter: value × 1e4.
 * @param value - heat flux in watts per square centimeter (W/cm²), any finite number
 * @returns the heat flux in watts per square meter (W/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * wattsPerSquareCentimeter(2) // => 20000
 * ```
 * @since 0.1.0
 */
export function wattsPerSquareCentimeter(value: number): WattsPerSquareMeter {
  return into(WATT_PER_SQUARE_CENTIMETER, value);
}

/**
 * Heat flux read in watts per square centimeter (W/cm²): value / 1e4.
 * @param value - heat flux in watts per square meter (W/m²)
 * @returns the number of watts per square centimeter (W/cm²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerSquareCentimeter}
 * @example
 * ```ts
 * toWattsPerSquareCentimeter(wattsPerSquareCentimeter(2)) // => 2
 * ```
 * @since 0.1.0
 */
export function toWattsPerSquareCentimeter(value: WattsPerSquareMeter): number {
  return outOf(WATT_PER_SQUARE_CENTIMETER, value);
}

/**
 * Heat flux given in kilowatts per square meter (kW/m²), held in watts per square meter: value × 1e3.
 * @param value - heat flux in kilowatts per square meter (kW/m²), any finite number
 * @returns the heat flux in watts per square meter (W/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilowattsPerSquareMeter(20) // => 20000
 * ```
 * @since 0.1.0
 */
export function kilowattsPerSquareMeter(value: number): WattsPerSquareMeter {
  return into(KILOWATT_PER_SQUARE_METER, value);
}

/**
 * Heat flux read in kilowatts per square meter (kW/m²): value / 1e3.
 * @param value - heat flux in watts per square meter (W/m²)
 * @returns the number of kilowatts per square meter (kW/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilowattsPerSquareMeter}
 * @example
 * ```ts
 * toKilowattsPerSquareMeter(kilowattsPerSquareMeter(20)) // => 20
 * ```
 * @since 0.1.0
 */
export function toKilowattsPerSquareMeter(value: WattsPerSquareMeter): number {
  return outOf(KILOWATT_PER_SQUARE_METER, value);
}

/**
 * Heat flux given in watts per square inch (W/in²), held in watts per square meter: value × 1 / (INCH × INCH).
 * @param value - heat flux in watts per square inch (W/in²), any finite number
 * @returns the heat flux in watts per square meter (W/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * wattsPerSquareInch(7.5) // => 11625.0232500465
 * ```
 * @since 0.1.0
 */
export function wattsPerSquareInch(value: number): WattsPerSquareMeter {
  return into(WATT_PER_SQUARE_INCH, value);
}

/**
 * Heat flux read in watts per square inch (W/in²): value / (1 / (INCH × INCH)).
 * @param value - heat flux in watts per square meter (W/m²)
 * @returns the number of watts per square inch (W/in²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerSquareInch}
 * @example
 * ```ts
 * toWattsPerSquareInch(wattsPerSquareInch(7.5)) // => 7.5
 * ```
 * @since 0.1.0
 */
export function toWattsPerSquareInch(value: WattsPerSquareMeter): number {
  return outOf(WATT_PER_SQUARE_INCH, value);
}

/**
 * Heat flux given in kilowatts per square foot (kW/ft²), held in watts per square meter: value × 1000 / (FOOT × FOOT).
 * @param value - heat flux in kilowatts per square foot (kW/ft²), any finite number
 * @returns the heat flux in watts per square meter (W/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * kilowattsPerSquareFoot(2.5) // => 26909.776041774305
 * ```
 * @since 0.1.0
 */
export function kilowattsPerSquareFoot(value: number): WattsPerSquareMeter {
  return into(KILOWATT_PER_SQUARE_FOOT, value);
}

/**
 * Heat flux read in kilowatts per square foot (kW/ft²): value / (1000 / (FOOT × FOOT)).
 * @param value - heat flux in watts per square meter (W/m²)
 * @returns the number of kilowatts per square foot (kW/ft²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilowattsPerSquareFoot}
 * @example
 * ```ts
 * toKilowattsPerSquareFoot(kilowattsPerSquareFoot(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toKilowattsPerSquareFoot(value: WattsPerSquareMeter): number {
  return outOf(KILOWATT_PER_SQUARE_FOOT, value);
}

/**
 * Heat flux given in Btu (IT) per hour square foot (Btu/(h·ft²)), held in watts per square meter: value × BTU_IT / (HOUR × FOOT × FOOT).
 * @param value - heat flux in Btu (IT) per hour square foot (Btu/(h·ft²)), any finite number
 * @returns the heat flux in watts per square meter (W/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItPerHourSquareFoot(300) // => 946.3772235189147
 * ```
 * @since 0.1.0
 */
export function btuItPerHourSquareFoot(value: number): WattsPerSquareMeter {
  return into(BTU_IT_PER_HOUR_SQUARE_FOOT, value);
}

/**
 * Heat flux read in Btu (IT) per hour square foot (Btu/(h·ft²)): value / (BTU_IT / (HOUR × FOOT × FOOT)).
 * @param value - heat flux in watts per square meter (W/m²)
 * @returns the number of Btu (IT) per hour square foot (Btu/(h·ft²))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItPerHourSquareFoot}
 * @example
 * ```ts
 * toBtuItPerHourSquareFoot(btuItPerHourSquareFoot(300)) // => 300
 * ```
 * @since 0.1.0
 */
export function toBtuItPerHourSquareFoot(value: WattsPerSquareMeter): number {
  return outOf(BTU_IT_PER_HOUR_SQUARE_FOOT, value);
}

/**
 * Power per length given in watts per meter (W/m), the unit it is held in.
 * @param value - power per length in watts per meter (W/m), any finite number
 * @returns the power per length in watts per meter (W/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * wattsPerMeter(500) // => 500
 * ```
 * @since 0.1.0
 */
export function wattsPerMeter(value: number): WattsPerMeter {
  return into(WATT_PER_METER, value);
}

/**
 * Power per length read in watts per meter (W/m), the unit it is held in.
 * @param value - power per length in watts per meter (W/m)
 * @returns the number of watts per meter (W/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattsPerMeter}
 * @example
 * ```ts
 * toWattsPerMeter(wattsPerMeter(500)) // => 500
 * ```
 * @since 0.1.0
 */
export function toWattsPerMeter(value: WattsPerMeter): number {
  return outOf(WATT_PER_METER, value);
}

/**
 * Power per length given in kilowatts per meter (kW/m), held in watts per meter: value × 1e3.
 * @param value - power per length in kilowatts per meter (kW/m), any finite number
 * @returns the power per length in watts per meter (W/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilowattsPerMeter(1.5) // => 1500
 * ```
 * @since 0.1.0
 */
export function kilowattsPerMeter(value: number): WattsPerMeter {
  return into(KILOWATT_PER_METER, value);
}

/**
 * Power per length read in kilowatts per meter (kW/m): value / 1e3.
 * @param value - power per length in watts per meter (W/m)
 * @returns the number of kilowatts per meter (kW/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilowattsPerMeter}
 * @example
 * ```ts
 * toKilowattsPerMeter(kilowattsPerMeter(1.5)) // => 1.5
 * ```
 * @since 0.1.0
 */
export function toKilowattsPerMeter(value: WattsPerMeter): number {
  return outOf(KILOWATT_PER_METER, value);
}

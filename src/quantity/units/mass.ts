/** Mass, density, mass per length. */

import { into, outOf } from "../scale.ts";
import {
  GRAM,
  GRAM_PER_CUBIC_CENTIMETER,
  KILOGRAM,
  KILOGRAM_PER_CUBIC_METER,
  POUND_MASS,
  POUND_PER_CUBIC_FOOT,
  POUND_PER_CUBIC_INCH,
} from "../scales/mechanic.ts";
import type { Kilograms, KilogramsPerCubicMeter } from "../tags.ts";

/**
 * Mass given in kilograms (kg), the unit it is held in.
 * @param value - mass in kilograms (kg), any finite number
 * @returns the mass in kilograms (kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 2; definition
 * @example
 * ```ts
 * kilograms(1.4) // => 1.4
 * ```
 * @since 0.1.0
 */
export function kilograms(value: number): Kilograms {
  return into(KILOGRAM, value);
}

/**
 * Mass read in kilograms (kg), the unit it is held in.
 * @param value - mass in kilograms (kg)
 * @returns the number of kilograms (kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilograms}
 * @example
 * ```ts
 * toKilograms(kilograms(1.4)) // => 1.4
 * ```
 * @since 0.1.0
 */
export function toKilograms(value: Kilograms): number {
  return outOf(KILOGRAM, value);
}

/**
 * Mass given in grams (g), held in kilograms: value / 1e3.
 * @param value - mass in grams (g), any finite number
 * @returns the mass in kilograms (kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * grams(85) // => 0.085
 * ```
 * @since 0.1.0
 */
export function grams(value: number): Kilograms {
  return into(GRAM, value);
}

/**
 * Mass read in grams (g): value × 1e3.
 * @param value - mass in kilograms (kg)
 * @returns the number of grams (g)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link grams}
 * @example
 * ```ts
 * toGrams(grams(85)) // => 85
 * ```
 * @since 0.1.0
 */
export function toGrams(value: Kilograms): number {
  return outOf(GRAM, value);
}

/**
 * Mass given in pounds (lb), held in kilograms: value × POUND.
 * @param value - mass in pounds (lb), any finite number
 * @returns the mass in kilograms (kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * pounds(2) // => 0.90718474
 * ```
 * @since 0.1.0
 */
export function pounds(value: number): Kilograms {
  return into(POUND_MASS, value);
}

/**
 * Mass read in pounds (lb): value / POUND.
 * @param value - mass in kilograms (kg)
 * @returns the number of pounds (lb)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link pounds}
 * @example
 * ```ts
 * toPounds(pounds(2)) // => 2
 * ```
 * @since 0.1.0
 */
export function toPounds(value: Kilograms): number {
  return outOf(POUND_MASS, value);
}

/**
 * Density given in kilograms per cubic meter (kg/m³), the unit it is held in.
 * @param value - density in kilograms per cubic meter (kg/m³), any finite number
 * @returns the density in kilograms per cubic meter (kg/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * kilogramsPerCubicMeter(8400) // => 8400
 * ```
 * @since 0.1.0
 */
export function kilogramsPerCubicMeter(value: number): KilogramsPerCubicMeter {
  return into(KILOGRAM_PER_CUBIC_METER, value);
}

/**
 * Density read in kilograms per cubic meter (kg/m³), the unit it is held in.
 * @param value - density in kilograms per cubic meter (kg/m³)
 * @returns the number of kilograms per cubic meter (kg/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramsPerCubicMeter}
 * @example
 * ```ts
 * toKilogramsPerCubicMeter(kilogramsPerCubicMeter(8400)) // => 8400
 * ```
 * @since 0.1.0
 */
export function toKilogramsPerCubicMeter(value: KilogramsPerCubicMeter): number {
  return outOf(KILOGRAM_PER_CUBIC_METER, value);
}

/**
 * Density given in grams per cubic centimeter (g/cm³), held in kilograms per cubic meter: value × 1e3.
 * @param value - density in grams per cubic centimeter (g/cm³), any finite number
 * @returns the density in kilograms per cubic meter (kg/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * gramsPerCubicCentimeter(8.4) // => 8400
 * ```
 * @since 0.1.0
 */
export function gramsPerCubicCentimeter(value: number): KilogramsPerCubicMeter {
  return into(GRAM_PER_CUBIC_CENTIMETER, value);
}

/**
 * Density read in grams per cubic centimeter (g/cm³): value / 1e3.
 * @param value - density in kilograms per cubic meter (kg/m³)
 * @returns the number of grams per cubic centimeter (g/cm³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link gramsPerCubicCentimeter}
 * @example
 * ```ts
 * toGramsPerCubicCentimeter(gramsPerCubicCentimeter(8.4)) // => 8.4
 * ```
 * @since 0.1.0
 */
export function toGramsPerCubicCentimeter(value: KilogramsPerCubicMeter): number {
  return outOf(GRAM_PER_CUBIC_CENTIMETER, value);
}

/**
 * Density given in pounds per cubic foot (lb/ft³), held in kilograms per cubic meter: value × POUND / CUBIC_FOOT.
 * @param value - density in pounds per cubic foot (lb/ft³), any finite number
 * @returns the density in kilograms per cubic meter (kg/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * poundsPerCubicFoot(0.075) // => 1.2013847530470105
 * ```
 * @since 0.1.0
 */
export function poundsPerCubicFoot(value: number): KilogramsPerCubicMeter {
  return into(POUND_PER_CUBIC_FOOT, value);
}

/**
 * Density read in pounds per cubic foot (lb/ft³): value / (POUND / CUBIC_FOOT).
 * @param value - density in kilograms per cubic meter (kg/m³)
 * @returns the number of pounds per cubic foot (lb/ft³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsPerCubicFoot}
 * @example
 * ```ts
 * toPoundsPerCubicFoot(poundsPerCubicFoot(0.075)) // => 0.075
 * ```
 * @since 0.1.0
 */
export function toPoundsPerCubicFoot(value: KilogramsPerCubicMeter): number {
  return outOf(POUND_PER_CUBIC_FOOT, value);
}

/**
 * Density given in pounds per cubic inch (lb/in³), held in kilograms per cubic meter: value × POUND / (INCH × INCH × INCH).
 * @param value - density in pounds per cubic inch (lb/in³), any finite number
 * @returns the density in kilograms per cubic meter (kg/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * poundsPerCubicInch(0.304) // => 8414.69103190175
 * ```
 * @since 0.1.0
 */
export function poundsPerCubicInch(value: number): KilogramsPerCubicMeter {
  return into(POUND_PER_CUBIC_INCH, value);
}

/**
 * Density read in pounds per cubic inch (lb/in³): value / (POUND / (INCH × INCH × INCH)).
 * @param value - density in kilograms per cubic meter (kg/m³)
 * @returns the number of pounds per cubic inch (lb/in³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsPerCubicInch}
 * @example
 * ```ts
 * toPoundsPerCubicInch(poundsPerCubicInch(0.304)) // => 0.304
 * ```
 * @since 0.1.0
 */
export function toPoundsPerCubicInch(value: KilogramsPerCubicMeter): number {
  return outOf(POUND_PER_CUBIC_INCH, value);
}

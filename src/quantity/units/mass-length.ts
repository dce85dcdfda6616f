/** Mass per length. */

import { into, outOf } from "../scale.ts";
import {
  GRAM_PER_METER,
  KILOGRAM_PER_KILOMETER,
  KILOGRAM_PER_METER,
  POUND_PER_FOOT,
  POUND_PER_THOUSAND_FEET,
} from "../scales/mechanic.ts";
import type { KilogramsPerMeter } from "../tags.ts";

/**
 * Mass per length given in kilograms per meter (kg/m), the unit it is held in.
 * @param value - mass per length in kilograms per meter (kg/m), any finite number
 * @returns the mass per length in kilograms per meter (kg/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * kilogramsPerMeter(0.6) // => 0.6
 * ```
 * @since 0.1.0
 */
export function kilogramsPerMeter(value: number): KilogramsPerMeter {
  return into(KILOGRAM_PER_METER, value);
}

/**
 * Mass per length read in kilograms per meter (kg/m), the unit it is held in.
 * @param value - mass per length in kilograms per meter (kg/m)
 * @returns the number of kilograms per meter (kg/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramsPerMeter}
 * @example
 * ```ts
 * toKilogramsPerMeter(kilogramsPerMeter(0.6)) // => 0.6
 * ```
 * @since 0.1.0
 */
export function toKilogramsPerMeter(value: KilogramsPerMeter): number {
  return outOf(KILOGRAM_PER_METER, value);
}

/**
 * Mass per length given in grams per meter (g/m), held in kilograms per meter: value / 1e3.
 * @param value - mass per length in grams per meter (g/m), any finite number
 * @returns the mass per length in kilograms per meter (kg/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * gramsPerMeter(17.3) // => 0.0173
 * ```
 * @since 0.1.0
 */
export function gramsPerMeter(value: number): KilogramsPerMeter {
  return into(GRAM_PER_METER, value);
}

/**
 * Mass per length read in grams per meter (g/m): value × 1e3.
 * @param value - mass per length in kilograms per meter (kg/m)
 * @returns the number of grams per meter (g/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link gramsPerMeter}
 * @example
 * ```ts
 * toGramsPerMeter(gramsPerMeter(17.3)) // => 17.3
 * ```
 * @since 0.1.0
 */
export function toGramsPerMeter(value: KilogramsPerMeter): number {
  return outOf(GRAM_PER_METER, value);
}

/**
 * Mass per length given in kilograms per kilometer (kg/km), held in kilograms per meter: value / 1e3.
 * @param value - mass per length in kilograms per kilometer (kg/km), any finite number
 * @returns the mass per length in kilograms per meter (kg/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilogramsPerKilometer(10) // => 0.01
 * ```
 * @since 0.1.0
 */
export function kilogramsPerKilometer(value: number): KilogramsPerMeter {
  return into(KILOGRAM_PER_KILOMETER, value);
}

/**
 * Mass per length read in kilograms per kilometer (kg/km): value × 1e3.
 * @param value - mass per length in kilograms per meter (kg/m)
 * @returns the number of kilograms per kilometer (kg/km)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramsPerKilometer}
 * @example
 * ```ts
 * toKilogramsPerKilometer(kilogramsPerKilometer(10)) // => 10
 * ```
 * @since 0.1.0
 */
export function toKilogramsPerKilometer(value: KilogramsPerMeter): number {
  return outOf(KILOGRAM_PER_KILOMETER, value);
}

/**
 * Mass per length given in pounds per foot (lb/ft), held in kilograms per meter: value × POUND / FOOT.
 * @param value - mass per length in pounds per foot (lb/ft), any finite number
 * @returns the mass per length in kilograms per meter (kg/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * poundsPerFoot(0.25) // => 0.37204098589238843
 * ```
 * @since 0.1.0
 */
export function poundsPerFoot(value: number): KilogramsPerMeter {
  return into(POUND_PER_FOOT, value);
}

/**
 * Mass per length read in pounds per foot (lb/ft): value / (POUND / FOOT).
 * @param value - mass per length in kilograms per meter (kg/m)
 * @returns the number of pounds per foot (lb/ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsPerFoot}
 * @example
 * ```ts
 * toPoundsPerFoot(poundsPerFoot(0.25)) // => 0.25
 * ```
 * @since 0.1.0
 */
export function toPoundsPerFoot(value: KilogramsPerMeter): number {
  return outOf(POUND_PER_FOOT, value);
}

/**
 * Mass per length given in pounds per thousand feet (lb/1000 ft), held in kilograms per meter: value × POUND / (1000 × FOOT).
 * @param value - mass per length in pounds per thousand feet (lb/1000 ft), any finite number
 * @returns the mass per length in kilograms per meter (kg/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * poundsPerThousandFeet(8) // => 0.011905311548556431
 * ```
 * @since 0.1.0
 */
export function poundsPerThousandFeet(value: number): KilogramsPerMeter {
  return into(POUND_PER_THOUSAND_FEET, value);
}

/**
 * Mass per length read in pounds per thousand feet (lb/1000 ft): value / (POUND / (1000 × FOOT)).
 * @param value - mass per length in kilograms per meter (kg/m)
 * @returns the number of pounds per thousand feet (lb/1000 ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsPerThousandFeet}
 * @example
 * ```ts
 * toPoundsPerThousandFeet(poundsPerThousandFeet(8)) // => 8
 * ```
 * @since 0.1.0
 */
export function toPoundsPerThousandFeet(value: KilogramsPerMeter): number {
  return outOf(POUND_PER_THOUSAND_FEET, value);
}

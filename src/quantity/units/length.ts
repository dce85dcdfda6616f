/** Length. */

import { into, outOf } from "../scale.ts";
import {
  CENTIMETER,
  FOOT_LENGTH,
  INCH_LENGTH,
  METER,
  MICROMETER,
  MIL_LENGTH,
  MILLIMETER,
  NANOMETER,
} from "../scales/mechanic.ts";
import type { Meters } from "../tags.ts";

/**
 * Length given in meters (m), the unit it is held in.
 * @param value - length in meters (m), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 2; definition
 * @example
 * ```ts
 * meters(1.2) // => 1.2
 * ```
 * @since 0.1.0
 */
export function meters(value: number): Meters {
  return into(METER, value);
}

/**
 * Length read in meters (m), the unit it is held in.
 * @param value - length in meters (m)
 * @returns the number of meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link meters}
 * @example
 * ```ts
 * toMeters(meters(1.2)) // => 1.2
 * ```
 * @since 0.1.0
 */
export function toMeters(value: Meters): number {
  return outOf(METER, value);
}

/**
 * Length given in nanometers (nm), held in meters: value / 1e9.
 * @param value - length in nanometers (nm), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * nanometers(40) // => 4e-8
 * ```
 * @since 0.1.0
 */
export function nanometers(value: number): Meters {
  return into(NANOMETER, value);
}

/**
 * Length read in nanometers (nm): value × 1e9.
 * @param value - length in meters (m)
 * @returns the number of nanometers (nm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link nanometers}
 * @example
 * ```ts
 * toNanometers(nanometers(40)) // => 40
 * ```
 * @since 0.1.0
 */
export function toNanometers(value: Meters): number {
  return outOf(NANOMETER, value);
}

/**
 * Length given in micrometers (µm), held in meters: value / 1e6.
 * @param value - length in micrometers (µm), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * micrometers(12.5) // => 0.0000125
 * ```
 * @since 0.1.0
 */
export function micrometers(value: number): Meters {
  return into(MICROMETER, value);
}

/**
 * Length read in micrometers (µm): value × 1e6.
 * @param value - length in meters (m)
 * @returns the number of micrometers (µm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link micrometers}
 * @example
 * ```ts
 * toMicrometers(micrometers(12.5)) // => 12.5
 * ```
 * @since 0.1.0
 */
export function toMicrometers(value: Meters): number {
  return outOf(MICROMETER, value);
}

/**
 * Length given in millimeters (mm), held in meters: value / 1e3.
 * @param value - length in millimeters (mm), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * millimeters(6.35) // => 0.00635
 * ```
 * @since 0.1.0
 */
export function millimeters(value: number): Meters {
  return into(MILLIMETER, value);
}

/**
 * Length read in millimeters (mm): value × 1e3.
 * @param value - length in meters (m)
 * @returns the number of millimeters (mm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link millimeters}
 * @example
 * ```ts
 * toMillimeters(millimeters(6.35)) // => 6.35
 * ```
 * @since 0.1.0
 */
export function toMillimeters(value: Meters): number {
  return outOf(MILLIMETER, value);
}

/**
 * Length given in centimeters (cm), held in meters: value / 1e2.
 * @param value - length in centimeters (cm), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * centimeters(2.5) // => 0.025
 * ```
 * @since 0.1.0
 */
export function centimeters(value: number): Meters {
  return into(CENTIMETER, value);
}

/**
 * Length read in centimeters (cm): value × 1e2.
 * @param value - length in meters (m)
 * @returns the number of centimeters (cm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link centimeters}
 * @example
 * ```ts
 * toCentimeters(centimeters(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toCentimeters(value: Meters): number {
  return outOf(CENTIMETER, value);
}

/**
 * Length given in inches (in), held in meters: value × INCH.
 * @param value - length in inches (in), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * inches(0.25) // => 0.00635
 * ```
 * @since 0.1.0
 */
export function inches(value: number): Meters {
  return into(INCH_LENGTH, value);
}

/**
 * Length read in inches (in): value / INCH.
 * @param value - length in meters (m)
 * @returns the number of inches (in)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link inches}
 * @example
 * ```ts
 * toInches(inches(0.25)) // => 0.25
 * ```
 * @since 0.1.0
 */
export function toInches(value: Meters): number {
  return outOf(INCH_LENGTH, value);
}

/**
 * Length given in feet (ft), held in meters: value × FOOT.
 * @param value - length in feet (ft), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * feet(100) // => 30.48
 * ```
 * @since 0.1.0
 */
export function feet(value: number): Meters {
  return into(FOOT_LENGTH, value);
}

/**
 * Length read in feet (ft): value / FOOT.
 * @param value - length in meters (m)
 * @returns the number of feet (ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link feet}
 * @example
 * ```ts
 * toFeet(feet(100)) // => 100
 * ```
 * @since 0.1.0
 */
export function toFeet(value: Meters): number {
  return outOf(FOOT_LENGTH, value);
}

/**
 * Length given in mils (mil), held in meters: value × MIL.
 * @param value - length in mils (mil), any finite number
 * @returns the length in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * mils(40.3) // => 0.00102362
 * ```
 * @since 0.1.0
 */
export function mils(value: number): Meters {
  return into(MIL_LENGTH, value);
}

/**
 * Length read in mils (mil): value / MIL.
 * @param value - length in meters (m)
 * @returns the number of mils (mil)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link mils}
 * @example
 * ```ts
 * toMils(mils(40.3)) // => 40.3
 * ```
 * @since 0.1.0
 */
export function toMils(value: Meters): number {
  return outOf(MIL_LENGTH, value);
}

/** Area. Wire areas in circular mils; gauges by number are in gauge.ts. */

import { into, outOf } from "../scale.ts";
import {
  CIRCULAR_MIL,
  SQUARE_CENTIMETER,
  SQUARE_FOOT,
  SQUARE_INCH,
  SQUARE_METER,
  SQUARE_MILLIMETER,
  THOUSAND_CIRCULAR_MILS,
} from "../scales/mechanic.ts";
import type { SquareMeters } from "../tags.ts";

/**
 * Area given in square meters (m²), the unit it is held in.
 * @param value - area in square meters (m²), any finite number
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * squareMeters(0.05) // => 0.05
 * ```
 * @since 0.1.0
 */
export function squareMeters(value: number): SquareMeters {
  return into(SQUARE_METER, value);
}

/**
 * Area read in square meters (m²), the unit it is held in.
 * @param value - area in square meters (m²)
 * @returns the number of square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link squareMeters}
 * @example
 * ```ts
 * toSquareMeters(squareMeters(0.05)) // => 0.05
 * ```
 * @since 0.1.0
 */
export function toSquareMeters(value: SquareMeters): number {
  return outOf(SQUARE_METER, value);
}

/**
 * Area given in square millimeters (mm²), held in square meters: value / 1e6.
 * @param value - area in square millimeters (mm²), any finite number
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * squareMillimeters(25) // => 0.000025
 * ```
 * @since 0.1.0
 */
export function squareMillimeters(value: number): SquareMeters {
  return into(SQUARE_MILLIMETER, value);
}

/**
 * Area read in square millimeters (mm²): value × 1e6.
 * @param value - area in square meters (m²)
 * @returns the number of square millimeters (mm²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link squareMillimeters}
 * @example
 * ```ts
 * toSquareMillimeters(squareMillimeters(25)) // => 25
 * ```
 * @since 0.1.0
 */
export function toSquareMillimeters(value: SquareMeters): number {
  return outOf(SQUARE_MILLIMETER, value);
}

/**
 * Area given in square centimeters (cm²), held in square meters: value / 1e4.
 * @param value - area in square centimeters (cm²), any finite number
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * squareCentimeters(120) // => 0.012
 * ```
 * @since 0.1.0
 */
export function squareCentimeters(value: number): SquareMeters {
  return into(SQUARE_CENTIMETER, value);
}

/**
 * Area read in square centimeters (cm²): value × 1e4.
 * @param value - area in square meters (m²)
 * @returns the number of square centimeters (cm²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link squareCentimeters}
 * @example
 * ```ts
 * toSquareCentimeters(squareCentimeters(120)) // => 120
 * ```
 * @since 0.1.0
 */
export function toSquareCentimeters(value: SquareMeters): number {
  return outOf(SQUARE_CENTIMETER, value);
}

/**
 * Area given in square inches (in²), held in square meters: value × INCH × INCH.
 * @param value - area in square inches (in²), any finite number
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * squareInches(0.5) // => 0.00032258
 * ```
 * @since 0.1.0
 */
export function squareInches(value: number): SquareMeters {
  return into(SQUARE_INCH, value);
}

/**
 * Area read in square inches (in²): value / (INCH × INCH).
 * @param value - area in square meters (m²)
 * @returns the number of square inches (in²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link squareInches}
 * @example
 * ```ts
 * toSquareInches(squareInches(0.5)) // => 0.5
 * ```
 * @since 0.1.0
 */
export function toSquareInches(value: SquareMeters): number {
  return outOf(SQUARE_INCH, value);
}

/**
 * Area given in square feet (ft²), held in square meters: value × FOOT × FOOT.
 * @param value - area in square feet (ft²), any finite number
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * squareFeet(2.5) // => 0.2322576
 * ```
 * @since 0.1.0
 */
export function squareFeet(value: number): SquareMeters {
  return into(SQUARE_FOOT, value);
}

/**
 * Area read in square feet (ft²): value / (FOOT × FOOT).
 * @param value - area in square meters (m²)
 * @returns the number of square feet (ft²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link squareFeet}
 * @example
 * ```ts
 * toSquareFeet(squareFeet(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toSquareFeet(value: SquareMeters): number {
  return outOf(SQUARE_FOOT, value);
}

/**
 * Area given in circular mils (cmil), held in square meters: value × (PI / 4) × MIL × MIL.
 * @param value - area in circular mils (cmil), any finite number
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * circularMils(10380) // => 0.000005259623633032026
 * ```
 * @since 0.1.0
 */
export function circularMils(value: number): SquareMeters {
  return into(CIRCULAR_MIL, value);
}

/**
 * Area read in circular mils (cmil): value / ((PI / 4) × MIL × MIL).
 * @param value - area in square meters (m²)
 * @returns the number of circular mils (cmil)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link circularMils}
 * @example
 * ```ts
 * toCircularMils(circularMils(10380)) // => 10380
 * ```
 * @since 0.1.0
 */
export function toCircularMils(value: SquareMeters): number {
  return outOf(CIRCULAR_MIL, value);
}

/**
 * Area given in thousand circular mils (kcmil), held in square meters: value × 1000 × (PI / 4) × MIL × MIL.
 * @param value - area in thousand circular mils (kcmil), any finite number
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * thousandCircularMils(64) // => 0.00003242927866223985
 * ```
 * @since 0.1.0
 */
export function thousandCircularMils(value: number): SquareMeters {
  return into(THOUSAND_CIRCULAR_MILS, value);
}

/**
 * Area read in thousand circular mils (kcmil): value / (1000 × (PI / 4) × MIL × MIL).
 * @param value - area in square meters (m²)
 * @returns the number of thousand circular mils (kcmil)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link thousandCircularMils}
 * @example
 * ```ts
 * toThousandCircularMils(thousandCircularMils(64)) // => 64
 * ```
 * @since 0.1.0
 */
export function toThousandCircularMils(value: SquareMeters): number {
  return outOf(THOUSAND_CIRCULAR_MILS, value);
}

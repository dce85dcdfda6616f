/** Pressure and stress. */

import { into, outOf } from "../scale.ts";
import {
  GIGAPASCAL,
  KILOPASCAL,
  KIP_PER_SQUARE_INCH,
  MEGAPASCAL,
  MEGAPOUND_PER_SQUARE_INCH,
  PASCAL,
  POUND_PER_SQUARE_INCH,
} from "../scales/force.ts";
import type { Pascals } from "../tags.ts";

/**
 * Pressure given in pascals (Pa), the unit it is held in.
 * @param value - pressure in pascals (Pa), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * pascals(101325) // => 101325
 * ```
 * @since 0.1.0
 */
export function pascals(value: number): Pascals {
  return into(PASCAL, value);
}

/**
 * Pressure read in pascals (Pa), the unit it is held in.
 * @param value - pressure in pascals (Pa)
 * @returns the number of pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link pascals}
 * @example
 * ```ts
 * toPascals(pascals(101325)) // => 101325
 * ```
 * @since 0.1.0
 */
export function toPascals(value: Pascals): number {
  return outOf(PASCAL, value);
}

/**
 * Pressure given in kilopascals (kPa), held in pascals: value × 1e3.
 * @param value - pressure in kilopascals (kPa), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilopascals(98.5) // => 98500
 * ```
 * @since 0.1.0
 */
export function kilopascals(value: number): Pascals {
  return into(KILOPASCAL, value);
}

/**
 * Pressure read in kilopascals (kPa): value / 1e3.
 * @param value - pressure in pascals (Pa)
 * @returns the number of kilopascals (kPa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilopascals}
 * @example
 * ```ts
 * toKilopascals(kilopascals(98.5)) // => 98.5
 * ```
 * @since 0.1.0
 */
export function toKilopascals(value: Pascals): number {
  return outOf(KILOPASCAL, value);
}

/**
 * Pressure given in megapascals (MPa), held in pascals: value × 1e6.
 * @param value - pressure in megapascals (MPa), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * megapascals(205) // => 205000000
 * ```
 * @since 0.1.0
 */
export function megapascals(value: number): Pascals {
  return into(MEGAPASCAL, value);
}

/**
 * Pressure read in megapascals (MPa): value / 1e6.
 * @param value - pressure in pascals (Pa)
 * @returns the number of megapascals (MPa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link megapascals}
 * @example
 * ```ts
 * toMegapascals(megapascals(205)) // => 205
 * ```
 * @since 0.1.0
 */
export function toMegapascals(value: Pascals): number {
  return outOf(MEGAPASCAL, value);
}

/**
 * Pressure given in gigapascals (GPa), held in pascals: value × 1e9.
 * @param value - pressure in gigapascals (GPa), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * gigapascals(117) // => 117000000000
 * ```
 * @since 0.1.0
 */
export function gigapascals(value: number): Pascals {
  return into(GIGAPASCAL, value);
}

/**
 * Pressure read in gigapascals (GPa): value / 1e9.
 * @param value - pressure in pascals (Pa)
 * @returns the number of gigapascals (GPa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link gigapascals}
 * @example
 * ```ts
 * toGigapascals(gigapascals(117)) // => 117
 * ```
 * @since 0.1.0
 */
export function toGigapascals(value: Pascals): number {
  return outOf(GIGAPASCAL, value);
}

/**
 * Pressure given in pounds force per square inch (psi), held in pascals: value × POUND × GRAVITY / (INCH × INCH).
 * @param value - pressure in pounds force per square inch (psi), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * poundsForcePerSquareInch(3000) // => 20684271.879505083
 * ```
 * @since 0.1.0
 */
export function poundsForcePerSquareInch(value: number): Pascals {
  return into(POUND_PER_SQUARE_INCH, value);
}

/**
 * Pressure read in pounds force per square inch (psi): value / (POUND × GRAVITY / (INCH × INCH)).
 * @param value - pressure in pascals (Pa)
 * @returns the number of pounds force per square inch (psi)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsForcePerSquareInch}
 * @example
 * ```ts
 * toPoundsForcePerSquareInch(poundsForcePerSquareInch(3000)) // => 3000
 * ```
 * @since 0.1.0
 */
export function toPoundsForcePerSquareInch(value: Pascals): number {
  return outOf(POUND_PER_SQUARE_INCH, value);
}

/**
 * Pressure given in kips per square inch (ksi), held in pascals: value × 1000 × POUND × GRAVITY / (INCH × INCH).
 * @param value - pressure in kips per square inch (ksi), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * kipsPerSquareInch(33) // => 227526990.67455593
 * ```
 * @since 0.1.0
 */
export function kipsPerSquareInch(value: number): Pascals {
  return into(KIP_PER_SQUARE_INCH, value);
}

/**
 * Pressure read in kips per square inch (ksi): value / (1000 × POUND × GRAVITY / (INCH × INCH)).
 * @param value - pressure in pascals (Pa)
 * @returns the number of kips per square inch (ksi)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kipsPerSquareInch}
 * @example
 * ```ts
 * toKipsPerSquareInch(kipsPerSquareInch(33)) // => 33
 * ```
 * @since 0.1.0
 */
export function toKipsPerSquareInch(value: Pascals): number {
  return outOf(KIP_PER_SQUARE_INCH, value);
}

/**
 * Pressure given in megapounds force per square inch (Mpsi), held in pascals: value × 1e6 × POUND × GRAVITY / (INCH × INCH).
 * @param value - pressure in megapounds force per square inch (Mpsi), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * megapoundsForcePerSquareInch(17) // => 117210873983.86214
 * ```
 * @since 0.1.0
 */
export function megapoundsForcePerSquareInch(value: number): Pascals {
  return into(MEGAPOUND_PER_SQUARE_INCH, value);
}

/**
 * Pressure read in megapounds force per square inch (Mpsi): value / (1e6 × POUND × GRAVITY / (INCH × INCH)).
 * @param value - pressure in pascals (Pa)
 * @returns the number of megapounds force per square inch (Mpsi)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link megapoundsForcePerSquareInch}
 * @example
 * ```ts
 * toMegapoundsForcePerSquareInch(megapoundsForcePerSquareInch(17)) // => 17
 * ```
 * @since 0.1.0
 */
export function toMegapoundsForcePerSquareInch(value: Pascals): number {
  return outOf(MEGAPOUND_PER_SQUARE_INCH, value);
}

/** Pressure of the air, as weather stations and tables state it. */

import { into, outOf } from "../scale.ts";
import { BAR, HECTOPASCAL, STANDARD_ATMOSPHERE } from "../scales/force.ts";
import type { Pascals } from "../tags.ts";

/**
 * Pressure given in hectopascals (hPa), held in pascals: value × 1e2.
 * @param value - pressure in hectopascals (hPa), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; a millibar is the same
 * @example
 * ```ts
 * hectopascals(1013.25) // => 101325
 * ```
 * @since 0.1.0
 */
export function hectopascals(value: number): Pascals {
  return into(HECTOPASCAL, value);
}

/**
 * Pressure read in hectopascals (hPa): value / 1e2.
 * @param value - pressure in pascals (Pa)
 * @returns the number of hectopascals (hPa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link hectopascals}
 * @example
 * ```ts
 * toHectopascals(hectopascals(1013.25)) // => 1013.25
 * ```
 * @since 0.1.0
 */
export function toHectopascals(value: Pascals): number {
  return outOf(HECTOPASCAL, value);
}

/**
 * Pressure given in bars (bar), held in pascals: value × 1e5.
 * @param value - pressure in bars (bar), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Table 9: 1 bar = 100 kPa, exact definition
 * @example
 * ```ts
 * bars(1.5) // => 150000
 * ```
 * @since 0.1.0
 */
export function bars(value: number): Pascals {
  return into(BAR, value);
}

/**
 * Pressure read in bars (bar): value / 1e5.
 * @param value - pressure in pascals (Pa)
 * @returns the number of bars (bar)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link bars}
 * @example
 * ```ts
 * toBars(bars(1.5)) // => 1.5
 * ```
 * @since 0.1.0
 */
export function toBars(value: Pascals): number {
  return outOf(BAR, value);
}

/**
 * Pressure given in standard atmospheres (atm), held in pascals: value × 101325.
 * @param value - pressure in standard atmospheres (atm), any finite number
 * @returns the pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B: 101 325 Pa, exact definition
 * @example
 * ```ts
 * standardAtmospheres(2) // => 202650
 * ```
 * @since 0.1.0
 */
export function standardAtmospheres(value: number): Pascals {
  return into(STANDARD_ATMOSPHERE, value);
}

/**
 * Pressure read in standard atmospheres (atm): value / 101325.
 * @param value - pressure in pascals (Pa)
 * @returns the number of standard atmospheres (atm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link standardAtmospheres}
 * @example
 * ```ts
 * toStandardAtmospheres(standardAtmospheres(2)) // => 2
 * ```
 * @since 0.1.0
 */
export function toStandardAtmospheres(value: Pascals): number {
  return outOf(STANDARD_ATMOSPHERE, value);
}

/** Heat capacity. */

import { into, outOf } from "../scale.ts";
import { BTU_IT_PER_FAHRENHEIT, JOULE_PER_KELVIN, KILOJOULE_PER_KELVIN } from "../scales/heat.ts";
import type { JoulesPerKelvin } from "../tags.ts";

/**
 * Heat capacity given in joules per kelvin (J/K), the unit it is held in.
 * @param value - heat capacity in joules per kelvin (J/K), any finite number
 * @returns the heat capacity in joules per kelvin (J/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * joulesPerKelvin(4500) // => 4500
 * ```
 * @since 0.1.0
 */
export function joulesPerKelvin(value: number): JoulesPerKelvin {
  return into(JOULE_PER_KELVIN, value);
}

/**
 * Heat capacity read in joules per kelvin (J/K), the unit it is held in.
 * @param value - heat capacity in joules per kelvin (J/K)
 * @returns the number of joules per kelvin (J/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link joulesPerKelvin}
 * @example
 * ```ts
 * toJoulesPerKelvin(joulesPerKelvin(4500)) // => 4500
 * ```
 * @since 0.1.0
 */
export function toJoulesPerKelvin(value: JoulesPerKelvin): number {
  return outOf(JOULE_PER_KELVIN, value);
}

/**
 * Heat capacity given in kilojoules per kelvin (kJ/K), held in joules per kelvin: value × 1e3.
 * @param value - heat capacity in kilojoules per kelvin (kJ/K), any finite number
 * @returns the heat capacity in joules per kelvin (J/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilojoulesPerKelvin(4.5) // => 4500
 * ```
 * @since 0.1.0
 */
export function kilojoulesPerKelvin(value: number): JoulesPerKelvin {
  return into(KILOJOULE_PER_KELVIN, value);
}

/**
 * Heat capacity read in kilojoules per kelvin (kJ/K): value / 1e3.
 * @param value - heat capacity in joules per kelvin (J/K)
 * @returns the number of kilojoules per kelvin (kJ/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilojoulesPerKelvin}
 * @example
 * ```ts
 * toKilojoulesPerKelvin(kilojoulesPerKelvin(4.5)) // => 4.5
 * ```
 * @since 0.1.0
 */
export function toKilojoulesPerKelvin(value: JoulesPerKelvin): number {
  return outOf(KILOJOULE_PER_KELVIN, value);
}

/**
 * Heat capacity given in Btu (IT) per Fahrenheit (Btu/°F), held in joules per kelvin: value × BTU_IT × 1.8.
 * @param value - heat capacity in Btu (IT) per Fahrenheit (Btu/°F), any finite number
 * @returns the heat capacity in joules per kelvin (J/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItPerFahrenheit(2.5) // => 4747.75133679
 * ```
 * @since 0.1.0
 */
export function btuItPerFahrenheit(value: number): JoulesPerKelvin {
  return into(BTU_IT_PER_FAHRENHEIT, value);
}

/**
 * Heat capacity read in Btu (IT) per Fahrenheit (Btu/°F): value / (BTU_IT × 1.8).
 * @param value - heat capacity in joules per kelvin (J/K)
 * @returns the number of Btu (IT) per Fahrenheit (Btu/°F)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItPerFahrenheit}
 * @example
 * ```ts
 * toBtuItPerFahrenheit(btuItPerFahrenheit(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toBtuItPerFahrenheit(value: JoulesPerKelvin): number {
  return outOf(BTU_IT_PER_FAHRENHEIT, value);
}

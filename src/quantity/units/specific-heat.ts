/** Specific heat and specific energy. */

import { into, outOf } from "../scale.ts";
import {
  BTU_IT_PER_POUND_FAHRENHEIT,
  JOULE_PER_GRAM_KELVIN,
  JOULE_PER_KILOGRAM,
  JOULE_PER_KILOGRAM_KELVIN,
  KILOJOULE_PER_KILOGRAM,
  KILOJOULE_PER_KILOGRAM_KELVIN,
} from "../scales/heat.ts";
import type { JoulesPerKilogram, JoulesPerKilogramKelvin } from "../tags.ts";

/**
 * Specific heat given in joules per kilogram kelvin (J/(kg·K)), the unit it is held in.
 * @param value - specific heat in joules per kilogram kelvin (J/(kg·K)), any finite number
 * @returns the specific heat in joules per kilogram kelvin (J/(kg·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * joulesPerKilogramKelvin(460) // => 460
 * ```
 * @since 0.1.0
 */
export function joulesPerKilogramKelvin(value: number): JoulesPerKilogramKelvin {
  return into(JOULE_PER_KILOGRAM_KELVIN, value);
}

/**
 * Specific heat read in joules per kilogram kelvin (J/(kg·K)), the unit it is held in.
 * @param value - specific heat in joules per kilogram kelvin (J/(kg·K))
 * @returns the number of joules per kilogram kelvin (J/(kg·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link joulesPerKilogramKelvin}
 * @example
 * ```ts
 * toJoulesPerKilogramKelvin(joulesPerKilogramKelvin(460)) // => 460
 * ```
 * @since 0.1.0
 */
export function toJoulesPerKilogramKelvin(value: JoulesPerKilogramKelvin): number {
  return outOf(JOULE_PER_KILOGRAM_KELVIN, value);
}

/**
 * Specific heat given in kilojoules per kilogram kelvin (kJ/(kg·K)), held in joules per kilogram kelvin: value × 1e3.
 * @param value - specific heat in kilojoules per kilogram kelvin (kJ/(kg·K)), any finite number
 * @returns the specific heat in joules per kilogram kelvin (J/(kg·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilojoulesPerKilogramKelvin(1.006) // => 1006
 * ```
 * @since 0.1.0
 */
export function kilojoulesPerKilogramKelvin(value: number): JoulesPerKilogramKelvin {
  return into(KILOJOULE_PER_KILOGRAM_KELVIN, value);
}

/**
 * Specific heat read in kilojoules per kilogram kelvin (kJ/(kg·K)): value / 1e3.
 * @param value - specific heat in joules per kilogram kelvin (J/(kg·K))
 * @returns the number of kilojoules per kilogram kelvin (kJ/(kg·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilojoulesPerKilogramKelvin}
 * @example
 * ```ts
 * toKilojoulesPerKilogramKelvin(kilojoulesPerKilogramKelvin(1.006)) // => 1.006
 * ```
 * @since 0.1.0
 */
export function toKilojoulesPerKilogramKelvin(value: JoulesPerKilogramKelvin): number {
  return outOf(KILOJOULE_PER_KILOGRAM_KELVIN, value);
}

/**
 * Specific heat given in joules per gram kelvin (J/(g·K)), held in joules per kilogram kelvin: value × 1e3.
 * @param value - specific heat in joules per gram kelvin (J/(g·K)), any finite number
 * @returns the specific heat in joules per kilogram kelvin (J/(kg·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * joulesPerGramKelvin(0.46) // => 460
 * ```
 * @since 0.1.0
 */
export function joulesPerGramKelvin(value: number): JoulesPerKilogramKelvin {
  return into(JOULE_PER_GRAM_KELVIN, value);
}

/**
 * Specific heat read in joules per gram kelvin (J/(g·K)): value / 1e3.
 * @param value - specific heat in joules per kilogram kelvin (J/(kg·K))
 * @returns the number of joules per gram kelvin (J/(g·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link joulesPerGramKelvin}
 * @example
 * ```ts
 * toJoulesPerGramKelvin(joulesPerGramKelvin(0.46)) // => 0.46
 * ```
 * @since 0.1.0
 */
export function toJoulesPerGramKelvin(value: JoulesPerKilogramKelvin): number {
  return outOf(JOULE_PER_GRAM_KELVIN, value);
}

/**
 * Specific heat given in Btu (IT) per pound Fahrenheit (Btu/(lb·°F)), held in joules per kilogram kelvin: value × 4186.8.
 * @param value - specific heat in Btu (IT) per pound Fahrenheit (Btu/(lb·°F)), any finite number
 * @returns the specific heat in joules per kilogram kelvin (J/(kg·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItPerPoundFahrenheit(0.24) // => 1004.832
 * ```
 * @since 0.1.0
 */
export function btuItPerPoundFahrenheit(value: number): JoulesPerKilogramKelvin {
  return into(BTU_IT_PER_POUND_FAHRENHEIT, value);
}

/**
 * Specific heat read in Btu (IT) per pound Fahrenheit (Btu/(lb·°F)): value / 4186.8.
 * @param value - specific heat in joules per kilogram kelvin (J/(kg·K))
 * @returns the number of Btu (IT) per pound Fahrenheit (Btu/(lb·°F))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItPerPoundFahrenheit}
 * @example
 * ```ts
 * toBtuItPerPoundFahrenheit(btuItPerPoundFahrenheit(0.24)) // => 0.24
 * ```
 * @since 0.1.0
 */
export function toBtuItPerPoundFahrenheit(value: JoulesPerKilogramKelvin): number {
  return outOf(BTU_IT_PER_POUND_FAHRENHEIT, value);
}

/**
 * Specific energy given in joules per kilogram (J/kg), the unit it is held in.
 * @param value - specific energy in joules per kilogram (J/kg), any finite number
 * @returns the specific energy in joules per kilogram (J/kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * joulesPerKilogram(2.5e6) // => 2500000
 * ```
 * @since 0.1.0
 */
export function joulesPerKilogram(value: number): JoulesPerKilogram {
  return into(JOULE_PER_KILOGRAM, value);
}

/**
 * Specific energy read in joules per kilogram (J/kg), the unit it is held in.
 * @param value - specific energy in joules per kilogram (J/kg)
 * @returns the number of joules per kilogram (J/kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link joulesPerKilogram}
 * @example
 * ```ts
 * toJoulesPerKilogram(joulesPerKilogram(2.5e6)) // => 2500000
 * ```
 * @since 0.1.0
 */
export function toJoulesPerKilogram(value: JoulesPerKilogram): number {
  return outOf(JOULE_PER_KILOGRAM, value);
}

/**
 * Specific energy given in kilojoules per kilogram (kJ/kg), held in joules per kilogram: value × 1e3.
 * @param value - specific energy in kilojoules per kilogram (kJ/kg), any finite number
 * @returns the specific energy in joules per kilogram (J/kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilojoulesPerKilogram(2257) // => 2257000
 * ```
 * @since 0.1.0
 */
export function kilojoulesPerKilogram(value: number): JoulesPerKilogram {
  return into(KILOJOULE_PER_KILOGRAM, value);
}

/**
 * Specific energy read in kilojoules per kilogram (kJ/kg): value / 1e3.
 * @param value - specific energy in joules per kilogram (J/kg)
 * @returns the number of kilojoules per kilogram (kJ/kg)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilojoulesPerKilogram}
 * @example
 * ```ts
 * toKilojoulesPerKilogram(kilojoulesPerKilogram(2257)) // => 2257
 * ```
 * @since 0.1.0
 */
export function toKilojoulesPerKilogram(value: JoulesPerKilogram): number {
  return outOf(KILOJOULE_PER_KILOGRAM, value);
}

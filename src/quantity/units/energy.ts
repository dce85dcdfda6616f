/** Energy. Torque has the same dimension and is another tag. */

import { into, outOf } from "../scale.ts";
import {
  BTU_IT_ENERGY,
  JOULE,
  KILOJOULE,
  KILOWATT_HOUR,
  MEGAJOULE,
  THERM_IT,
  WATT_HOUR,
} from "../scales/heat.ts";
import type { Joules } from "../tags.ts";

/**
 * Energy given in joules (J), the unit it is held in.
 * @param value - energy in joules (J), any finite number
 * @returns the energy in joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * joules(3600) // => 3600
 * ```
 * @since 0.1.0
 */
export function joules(value: number): Joules {
  return into(JOULE, value);
}

/**
 * Energy read in joules (J), the unit it is held in.
 * @param value - energy in joules (J)
 * @returns the number of joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link joules}
 * @example
 * ```ts
 * toJoules(joules(3600)) // => 3600
 * ```
 * @since 0.1.0
 */
export function toJoules(value: Joules): number {
  return outOf(JOULE, value);
}

/**
 * Energy given in kilojoules (kJ), held in joules: value × 1e3.
 * @param value - energy in kilojoules (kJ), any finite number
 * @returns the energy in joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilojoules(1.2) // => 1200
 * ```
 * @since 0.1.0
 */
export function kilojoules(value: number): Joules {
  return into(KILOJOULE, value);
}

/**
 * Energy read in kilojoules (kJ): value / 1e3.
 * @param value - energy in joules (J)
 * @returns the number of kilojoules (kJ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilojoules}
 * @example
 * ```ts
 * toKilojoules(kilojoules(1.2)) // => 1.2
 * ```
 * @since 0.1.0
 */
export function toKilojoules(value: Joules): number {
  return outOf(KILOJOULE, value);
}

/**
 * Energy given in megajoules (MJ), held in joules: value × 1e6.
 * @param value - energy in megajoules (MJ), any finite number
 * @returns the energy in joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * megajoules(3.6) // => 3600000
 * ```
 * @since 0.1.0
 */
export function megajoules(value: number): Joules {
  return into(MEGAJOULE, value);
}

/**
 * Energy read in megajoules (MJ): value / 1e6.
 * @param value - energy in joules (J)
 * @returns the number of megajoules (MJ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link megajoules}
 * @example
 * ```ts
 * toMegajoules(megajoules(3.6)) // => 3.6
 * ```
 * @since 0.1.0
 */
export function toMegajoules(value: Joules): number {
  return outOf(MEGAJOULE, value);
}

/**
 * Energy given in watt hours (Wh), held in joules: value × HOUR.
 * @param value - energy in watt hours (Wh), any finite number
 * @returns the energy in joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * wattHours(2.5) // => 9000
 * ```
 * @since 0.1.0
 */
export function wattHours(value: number): Joules {
  return into(WATT_HOUR, value);
}

/**
 * Energy read in watt hours (Wh): value / HOUR.
 * @param value - energy in joules (J)
 * @returns the number of watt hours (Wh)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link wattHours}
 * @example
 * ```ts
 * toWattHours(wattHours(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toWattHours(value: Joules): number {
  return outOf(WATT_HOUR, value);
}

/**
 * Energy given in kilowatt hours (kWh), held in joules: value × 1000 × HOUR.
 * @param value - energy in kilowatt hours (kWh), any finite number
 * @returns the energy in joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 8; definition
 * @example
 * ```ts
 * kilowattHours(60) // => 216000000
 * ```
 * @since 0.1.0
 */
export function kilowattHours(value: number): Joules {
  return into(KILOWATT_HOUR, value);
}

/**
 * Energy read in kilowatt hours (kWh): value / (1000 × HOUR).
 * @param value - energy in joules (J)
 * @returns the number of kilowatt hours (kWh)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilowattHours}
 * @example
 * ```ts
 * toKilowattHours(kilowattHours(60)) // => 60
 * ```
 * @since 0.1.0
 */
export function toKilowattHours(value: Joules): number {
  return outOf(KILOWATT_HOUR, value);
}

/**
 * Energy given in Btu (IT) (Btu), held in joules: value × BTU_IT.
 * @param value - energy in Btu (IT) (Btu), any finite number
 * @returns the energy in joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuIt(1000) // => 1055055.85262
 * ```
 * @since 0.1.0
 */
export function btuIt(value: number): Joules {
  return into(BTU_IT_ENERGY, value);
}

/**
 * Energy read in Btu (IT) (Btu): value / BTU_IT.
 * @param value - energy in joules (J)
 * @returns the number of Btu (IT) (Btu)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuIt}
 * @example
 * ```ts
 * toBtuIt(btuIt(1000)) // => 1000
 * ```
 * @since 0.1.0
 */
export function toBtuIt(value: Joules): number {
  return outOf(BTU_IT_ENERGY, value);
}

/**
 * Energy given in therms (IT) (therm), held in joules: value × 1e5 × BTU_IT.
 * @param value - energy in therms (IT) (therm), any finite number
 * @returns the energy in joules (J)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * thermsIt(2) // => 211011170.524
 * ```
 * @since 0.1.0
 */
export function thermsIt(value: number): Joules {
  return into(THERM_IT, value);
}

/**
 * Energy read in therms (IT) (therm): value / (1e5 × BTU_IT).
 * @param value - energy in joules (J)
 * @returns the number of therms (IT) (therm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link thermsIt}
 * @example
 * ```ts
 * toThermsIt(thermsIt(2)) // => 2
 * ```
 * @since 0.1.0
 */
export function toThermsIt(value: Joules): number {
  return outOf(THERM_IT, value);
}

/** Power and heat flow. */

import { into, outOf } from "../scale.ts";
import {
  BTU_IT_PER_HOUR,
  HORSEPOWER,
  KILOWATT,
  MEGAWATT,
  MICROWATT,
  MILLIWATT,
  WATT,
} from "../scales/heat.ts";
import type { Watts } from "../tags.ts";

/**
 * Power given in watts (W), the unit it is held in.
 * @param value - power in watts (W), any finite number
 * @returns the power in watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * watts(5000) // => 5000
 * ```
 * @since 0.1.0
 */
export function watts(value: number): Watts {
  return into(WATT, value);
}

/**
 * Power read in watts (W), the unit it is held in.
 * @param value - power in watts (W)
 * @returns the number of watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link watts}
 * @example
 * ```ts
 * toWatts(watts(5000)) // => 5000
 * ```
 * @since 0.1.0
 */
export function toWatts(value: Watts): number {
  return outOf(WATT, value);
}

/**
 * Power given in microwatts (µW), held in watts: value / 1e6.
 * @param value - power in microwatts (µW), any finite number
 * @returns the power in watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * microwatts(250) // => 0.00025
 * ```
 * @since 0.1.0
 */
export function microwatts(value: number): Watts {
  return into(MICROWATT, value);
}

/**
 * Power read in microwatts (µW): value × 1e6.
 * @param value - power in watts (W)
 * @returns the number of microwatts (µW)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microwatts}
 * @example
 * ```ts
 * toMicrowatts(microwatts(250)) // => 250
 * ```
 * @since 0.1.0
 */
export function toMicrowatts(value: Watts): number {
  return outOf(MICROWATT, value);
}

/**
 * Power given in milliwatts (mW), held in watts: value / 1e3.
 * @param value - power in milliwatts (mW), any finite number
 * @returns the power in watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * milliwatts(36) // => 0.036
 * ```
 * @since 0.1.0
 */
export function milliwatts(value: number): Watts {
  return into(MILLIWATT, value);
}

/**
 * Power read in milliwatts (mW): value × 1e3.
 * @param value - power in watts (W)
 * @returns the number of milliwatts (mW)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link milliwatts}
 * @example
 * ```ts
 * toMilliwatts(milliwatts(36)) // => 36
 * ```
 * @since 0.1.0
 */
export function toMilliwatts(value: Watts): number {
  return outOf(MILLIWATT, value);
}

/**
 * Power given in kilowatts (kW), held in watts: value × 1e3.
 * @param value - power in kilowatts (kW), any finite number
 * @returns the power in watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilowatts(60) // => 60000
 * ```
 * @since 0.1.0
 */
export function kilowatts(value: number): Watts {
  return into(KILOWATT, value);
}

/**
 * Power read in kilowatts (kW): value / 1e3.
 * @param value - power in watts (W)
 * @returns the number of kilowatts (kW)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilowatts}
 * @example
 * ```ts
 * toKilowatts(kilowatts(60)) // => 60
 * ```
 * @since 0.1.0
 */
export function toKilowatts(value: Watts): number {
  return outOf(KILOWATT, value);
}

/**
 * Power given in megawatts (MW), held in watts: value × 1e6.
 * @param value - power in megawatts (MW), any finite number
 * @returns the power in watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * megawatts(1.2) // => 1200000
 * ```
 * @since 0.1.0
 */
export function megawatts(value: number): Watts {
  return into(MEGAWATT, value);
}

/**
 * Power read in megawatts (MW): value / 1e6.
 * @param value - power in watts (W)
 * @returns the number of megawatts (MW)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link megawatts}
 * @example
 * ```ts
 * toMegawatts(megawatts(1.2)) // => 1.2
 * ```
 * @since 0.1.0
 */
export function toMegawatts(value: Watts): number {
  return outOf(MEGAWATT, value);
}

/**
 * Power given in Btu (IT) per hour (Btu/h), held in watts: value × BTU_IT / HOUR.
 * @param value - power in Btu (IT) per hour (Btu/h), any finite number
 * @returns the power in watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; International Table Btu = 1055.05585262 J, exact definition
 * @example
 * ```ts
 * btuItPerHour(3412) // => 999.9584914276222
 * ```
 * @since 0.1.0
 */
export function btuItPerHour(value: number): Watts {
  return into(BTU_IT_PER_HOUR, value);
}

/**
 * Power read in Btu (IT) per hour (Btu/h): value / (BTU_IT / HOUR).
 * @param value - power in watts (W)
 * @returns the number of Btu (IT) per hour (Btu/h)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link btuItPerHour}
 * @example
 * ```ts
 * toBtuItPerHour(btuItPerHour(3412)) // => 3412
 * ```
 * @since 0.1.0
 */
export function toBtuItPerHour(value: Watts): number {
  return outOf(BTU_IT_PER_HOUR, value);
}

/**
 * Power given in mechanical horsepower (hp), held in watts: value × 550 × FOOT × POUND × GRAVITY.
 * @param value - power in mechanical horsepower (hp), any finite number
 * @returns the power in watts (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; 550 ft·lbf/s, exact definition
 * @example
 * ```ts
 * mechanicalHorsepower(7.5) // => 5592.749036867027
 * ```
 * @since 0.1.0
 */
export function mechanicalHorsepower(value: number): Watts {
  return into(HORSEPOWER, value);
}

/**
 * Power read in mechanical horsepower (hp): value / (550 × FOOT × POUND × GRAVITY).
 * @param value - power in watts (W)
 * @returns the number of mechanical horsepower (hp)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link mechanicalHorsepower}
 * @example
 * ```ts
 * toMechanicalHorsepower(mechanicalHorsepower(7.5)) // => 7.5
 * ```
 * @since 0.1.0
 */
export function toMechanicalHorsepower(value: Watts): number {
  return outOf(HORSEPOWER, value);
}

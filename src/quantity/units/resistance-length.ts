/** Resistance per length. */

import { into, outOf } from "../scale.ts";
import {
  MICROOHM_PER_FOOT,
  MILLIOHM_PER_METER,
  OHM_PER_FOOT,
  OHM_PER_KILOMETER,
  OHM_PER_METER,
  OHM_PER_THOUSAND_FEET,
} from "../scales/electric.ts";
import type { OhmsPerMeter } from "../tags.ts";

/**
 * Resistance per length given in ohms per meter (Ω/m), the unit it is held in.
 * @param value - resistance per length in ohms per meter (Ω/m), any finite number
 * @returns the resistance per length in ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * ohmsPerMeter(1.375) // => 1.375
 * ```
 * @since 0.1.0
 */
export function ohmsPerMeter(value: number): OhmsPerMeter {
  return into(OHM_PER_METER, value);
}

/**
 * Resistance per length read in ohms per meter (Ω/m), the unit it is held in.
 * @param value - resistance per length in ohms per meter (Ω/m)
 * @returns the number of ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmsPerMeter}
 * @example
 * ```ts
 * toOhmsPerMeter(ohmsPerMeter(1.375)) // => 1.375
 * ```
 * @since 0.1.0
 */
export function toOhmsPerMeter(value: OhmsPerMeter): number {
  return outOf(OHM_PER_METER, value);
}

/**
 * Resistance per length given in milliohms per meter (mΩ/m), held in ohms per meter: value / 1e3.
 * @param value - resistance per length in milliohms per meter (mΩ/m), any finite number
 * @returns the resistance per length in ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * milliohmsPerMeter(3.28) // => 0.00328
 * ```
 * @since 0.1.0
 */
export function milliohmsPerMeter(value: number): OhmsPerMeter {
  return into(MILLIOHM_PER_METER, value);
}

/**
 * Resistance per length read in milliohms per meter (mΩ/m): value × 1e3.
 * @param value - resistance per length in ohms per meter (Ω/m)
 * @returns the number of milliohms per meter (mΩ/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link milliohmsPerMeter}
 * @example
 * ```ts
 * toMilliohmsPerMeter(milliohmsPerMeter(3.28)) // => 3.28
 * ```
 * @since 0.1.0
 */
export function toMilliohmsPerMeter(value: OhmsPerMeter): number {
  return outOf(MILLIOHM_PER_METER, value);
}

/**
 * Resistance per length given in ohms per kilometer (Ω/km), held in ohms per meter: value / 1e3.
 * @param value - resistance per length in ohms per kilometer (Ω/km), any finite number
 * @returns the resistance per length in ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * ohmsPerKilometer(3.28) // => 0.00328
 * ```
 * @since 0.1.0
 */
export function ohmsPerKilometer(value: number): OhmsPerMeter {
  return into(OHM_PER_KILOMETER, value);
}

/**
 * Resistance per length read in ohms per kilometer (Ω/km): value × 1e3.
 * @param value - resistance per length in ohms per meter (Ω/m)
 * @returns the number of ohms per kilometer (Ω/km)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmsPerKilometer}
 * @example
 * ```ts
 * toOhmsPerKilometer(ohmsPerKilometer(3.28)) // => 3.28
 * ```
 * @since 0.1.0
 */
export function toOhmsPerKilometer(value: OhmsPerMeter): number {
  return outOf(OHM_PER_KILOMETER, value);
}

/**
 * Resistance per length given in ohms per foot (Ω/ft), held in ohms per meter: value / FOOT.
 * @param value - resistance per length in ohms per foot (Ω/ft), any finite number
 * @returns the resistance per length in ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * ohmsPerFoot(0.1) // => 0.32808398950131235
 * ```
 * @since 0.1.0
 */
export function ohmsPerFoot(value: number): OhmsPerMeter {
  return into(OHM_PER_FOOT, value);
}

/**
 * Resistance per length read in ohms per foot (Ω/ft): value × FOOT.
 * @param value - resistance per length in ohms per meter (Ω/m)
 * @returns the number of ohms per foot (Ω/ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmsPerFoot}
 * @example
 * ```ts
 * toOhmsPerFoot(ohmsPerFoot(0.1)) // => 0.1
 * ```
 * @since 0.1.0
 */
export function toOhmsPerFoot(value: OhmsPerMeter): number {
  return outOf(OHM_PER_FOOT, value);
}

/**
 * Resistance per length given in ohms per thousand feet (Ω/1000 ft), held in ohms per meter: value / (1000 × FOOT).
 * @param value - resistance per length in ohms per thousand feet (Ω/1000 ft), any finite number
 * @returns the resistance per length in ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * ohmsPerThousandFeet(0.9989) // => 0.003277230971128609
 * ```
 * @since 0.1.0
 */
export function ohmsPerThousandFeet(value: number): OhmsPerMeter {
  return into(OHM_PER_THOUSAND_FEET, value);
}

/**
 * Resistance per length read in ohms per thousand feet (Ω/1000 ft): value × 1000 × FOOT.
 * @param value - resistance per length in ohms per meter (Ω/m)
 * @returns the number of ohms per thousand feet (Ω/1000 ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmsPerThousandFeet}
 * @example
 * ```ts
 * toOhmsPerThousandFeet(ohmsPerThousandFeet(0.9989)) // => 0.9989
 * ```
 * @since 0.1.0
 */
export function toOhmsPerThousandFeet(value: OhmsPerMeter): number {
  return outOf(OHM_PER_THOUSAND_FEET, value);
}

/**
 * Resistance per length given in microohms per foot (µΩ/ft), held in ohms per meter: value / (1e6 × FOOT).
 * @param value - resistance per length in microohms per foot (µΩ/ft), any finite number
 * @returns the resistance per length in ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * microohmsPerFoot(12.5) // => 0.00004101049868766404
 * ```
 * @since 0.1.0
 */
export function microohmsPerFoot(value: number): OhmsPerMeter {
  return into(MICROOHM_PER_FOOT, value);
}

/**
 * Resistance per length read in microohms per foot (µΩ/ft): value × 1e6 × FOOT.
 * @param value - resistance per length in ohms per meter (Ω/m)
 * @returns the number of microohms per foot (µΩ/ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microohmsPerFoot}
 * @example
 * ```ts
 * toMicroohmsPerFoot(microohmsPerFoot(12.5)) // => 12.5
 * ```
 * @since 0.1.0
 */
export function toMicroohmsPerFoot(value: OhmsPerMeter): number {
  return outOf(MICROOHM_PER_FOOT, value);
}

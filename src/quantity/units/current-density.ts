/** Current density. */

import { into, outOf } from "../scale.ts";
import {
  AMPERE_PER_SQUARE_INCH,
  AMPERE_PER_SQUARE_METER,
  AMPERE_PER_SQUARE_MILLIMETER,
} from "../scales/electric.ts";
import type { AmperesPerSquareMeter } from "../tags.ts";

/**
 * Current density given in amperes per square meter (A/m²), the unit it is held in.
 * @param value - current density in amperes per square meter (A/m²), any finite number
 * @returns the current density in amperes per square meter (A/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * amperesPerSquareMeter(1.5e6) // => 1500000
 * ```
 * @since 0.1.0
 */
export function amperesPerSquareMeter(value: number): AmperesPerSquareMeter {
  return into(AMPERE_PER_SQUARE_METER, value);
}

/**
 * Current density read in amperes per square meter (A/m²), the unit it is held in.
 * @param value - current density in amperes per square meter (A/m²)
 * @returns the number of amperes per square meter (A/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link amperesPerSquareMeter}
 * @example
 * ```ts
 * toAmperesPerSquareMeter(amperesPerSquareMeter(1.5e6)) // => 1500000
 * ```
 * @since 0.1.0
 */
export function toAmperesPerSquareMeter(value: AmperesPerSquareMeter): number {
  return outOf(AMPERE_PER_SQUARE_METER, value);
}

/**
 * Current density given in amperes per square millimeter (A/mm²), held in amperes per square meter: value × 1e6.
 * @param value - current density in amperes per square millimeter (A/mm²), any finite number
 * @returns the current density in amperes per square meter (A/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * amperesPerSquareMillimeter(1.5) // => 1500000
 * ```
 * @since 0.1.0
 */
export function amperesPerSquareMillimeter(value: number): AmperesPerSquareMeter {
  return into(AMPERE_PER_SQUARE_MILLIMETER, value);
}

/**
 * Current density read in amperes per square millimeter (A/mm²): value / 1e6.
 * @param value - current density in amperes per square meter (A/m²)
 * @returns the number of amperes per square millimeter (A/mm²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link amperesPerSquareMillimeter}
 * @example
 * ```ts
 * toAmperesPerSquareMillimeter(amperesPerSquareMillimeter(1.5)) // => 1.5
 * ```
 * @since 0.1.0
 */
export function toAmperesPerSquareMillimeter(value: AmperesPerSquareMeter): number {
  return outOf(AMPERE_PER_SQUARE_MILLIMETER, value);
}

/**
 * Current density given in amperes per square inch (A/in²), held in amperes per square meter: value × 1 / (INCH × INCH).
 * @param value - current density in amperes per square inch (A/in²), any finite number
 * @returns the current density in amperes per square meter (A/m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * amperesPerSquareInch(240) // => 372000.744001488
 * ```
 * @since 0.1.0
 */
export function amperesPerSquareInch(value: number): AmperesPerSquareMeter {
  return into(AMPERE_PER_SQUARE_INCH, value);
}

/**
 * Current density read in amperes per square inch (A/in²): value / (1 / (INCH × INCH)).
 * @param value - current density in amperes per square meter (A/m²)
 * @returns the number of amperes per square inch (A/in²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link amperesPerSquareInch}
 * @example
 * ```ts
 * toAmperesPerSquareInch(amperesPerSquareInch(240)) // => 240
 * ```
 * @since 0.1.0
 */
export function toAmperesPerSquareInch(value: AmperesPerSquareMeter): number {
  return outOf(AMPERE_PER_SQUARE_INCH, value);
}

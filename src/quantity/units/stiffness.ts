/** Stiffness. */

import { into, outOf } from "../scale.ts";
import {
  MEGANEWTON_PER_METER,
  MEGAPOUND_FORCE_PER_INCH,
  NEWTON_PER_METER,
  NEWTON_PER_MILLIMETER,
  POUND_FORCE_PER_INCH,
} from "../scales/force.ts";
import type { NewtonsPerMeter } from "../tags.ts";

/**
 * Stiffness given in newtons per meter (N/m), the unit it is held in.
 * @param value - stiffness in newtons per meter (N/m), any finite number
 * @returns the stiffness in newtons per meter (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * newtonsPerMeter(2e8) // => 200000000
 * ```
 * @since 0.1.0
 */
export function newtonsPerMeter(value: number): NewtonsPerMeter {
  return into(NEWTON_PER_METER, value);
}

/**
 * Stiffness read in newtons per meter (N/m), the unit it is held in.
 * @param value - stiffness in newtons per meter (N/m)
 * @returns the number of newtons per meter (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link newtonsPerMeter}
 * @example
 * ```ts
 * toNewtonsPerMeter(newtonsPerMeter(2e8)) // => 200000000
 * ```
 * @since 0.1.0
 */
export function toNewtonsPerMeter(value: NewtonsPerMeter): number {
  return outOf(NEWTON_PER_METER, value);
}

/**
 * Stiffness given in newtons per millimeter (N/mm), held in newtons per meter: value × 1e3.
 * @param value - stiffness in newtons per millimeter (N/mm), any finite number
 * @returns the stiffness in newtons per meter (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * newtonsPerMillimeter(1500) // => 1500000
 * ```
 * @since 0.1.0
 */
export function newtonsPerMillimeter(value: number): NewtonsPerMeter {
  return into(NEWTON_PER_MILLIMETER, value);
}

/**
 * Stiffness read in newtons per millimeter (N/mm): value / 1e3.
 * @param value - stiffness in newtons per meter (N/m)
 * @returns the number of newtons per millimeter (N/mm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link newtonsPerMillimeter}
 * @example
 * ```ts
 * toNewtonsPerMillimeter(newtonsPerMillimeter(1500)) // => 1500
 * ```
 * @since 0.1.0
 */
export function toNewtonsPerMillimeter(value: NewtonsPerMeter): number {
  return outOf(NEWTON_PER_MILLIMETER, value);
}

/**
 * Stiffness given in meganewtons per meter (MN/m), held in newtons per meter: value × 1e6.
 * @param value - stiffness in meganewtons per meter (MN/m), any finite number
 * @returns the stiffness in newtons per meter (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * meganewtonsPerMeter(350) // => 350000000
 * ```
 * @since 0.1.0
 */
export function meganewtonsPerMeter(value: number): NewtonsPerMeter {
  return into(MEGANEWTON_PER_METER, value);
}

/**
 * Stiffness read in meganewtons per meter (MN/m): value / 1e6.
 * @param value - stiffness in newtons per meter (N/m)
 * @returns the number of meganewtons per meter (MN/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link meganewtonsPerMeter}
 * @example
 * ```ts
 * toMeganewtonsPerMeter(meganewtonsPerMeter(350)) // => 350
 * ```
 * @since 0.1.0
 */
export function toMeganewtonsPerMeter(value: NewtonsPerMeter): number {
  return outOf(MEGANEWTON_PER_METER, value);
}

/**
 * Stiffness given in pounds force per inch (lbf/in), held in newtons per meter: value × POUND × GRAVITY / INCH.
 * @param value - stiffness in pounds force per inch (lbf/in), any finite number
 * @returns the stiffness in newtons per meter (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * poundsForcePerInch(440000) // => 77055807.5084496
 * ```
 * @since 0.1.0
 */
export function poundsForcePerInch(value: number): NewtonsPerMeter {
  return into(POUND_FORCE_PER_INCH, value);
}

/**
 * Stiffness read in pounds force per inch (lbf/in): value / (POUND × GRAVITY / INCH).
 * @param value - stiffness in newtons per meter (N/m)
 * @returns the number of pounds force per inch (lbf/in)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsForcePerInch}
 * @example
 * ```ts
 * toPoundsForcePerInch(poundsForcePerInch(440000)) // => 440000
 * ```
 * @since 0.1.0
 */
export function toPoundsForcePerInch(value: NewtonsPerMeter): number {
  return outOf(POUND_FORCE_PER_INCH, value);
}

/**
 * Stiffness given in megapounds force per inch (Mlbf/in), held in newtons per meter: value × 1e6 × POUND × GRAVITY / INCH.
 * @param value - stiffness in megapounds force per inch (Mlbf/in), any finite number
 * @returns the stiffness in newtons per meter (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * megapoundsForcePerInch(0.9) // => 157614151.72182873
 * ```
 * @since 0.1.0
 */
export function megapoundsForcePerInch(value: number): NewtonsPerMeter {
  return into(MEGAPOUND_FORCE_PER_INCH, value);
}

/**
 * Stiffness read in megapounds force per inch (Mlbf/in): value / (1e6 × POUND × GRAVITY / INCH).
 * @param value - stiffness in newtons per meter (N/m)
 * @returns the number of megapounds force per inch (Mlbf/in)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link megapoundsForcePerInch}
 * @example
 * ```ts
 * toMegapoundsForcePerInch(megapoundsForcePerInch(0.9)) // => 0.9
 * ```
 * @since 0.1.0
 */
export function toMegapoundsForcePerInch(value: NewtonsPerMeter): number {
  return outOf(MEGAPOUND_FORCE_PER_INCH, value);
}

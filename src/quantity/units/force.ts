/** Force. */

import { into, outOf } from "../scale.ts";
import { KILOGRAM_FORCE, KILONEWTON, KIP, NEWTON, POUND_FORCE } from "../scales/force.ts";
import type { Newtons } from "../tags.ts";

/**
 * Force given in newtons (N), the unit it is held in.
 * @param value - force in newtons (N), any finite number
 * @returns the force in newtons (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * newtons(1500) // => 1500
 * ```
 * @since 0.1.0
 */
export function newtons(value: number): Newtons {
  return into(NEWTON, value);
}

/**
 * Force read in newtons (N), the unit it is held in.
 * @param value - force in newtons (N)
 * @returns the number of newtons (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link newtons}
 * @example
 * ```ts
 * toNewtons(newtons(1500)) // => 1500
 * ```
 * @since 0.1.0
 */
export function toNewtons(value: Newtons): number {
  return outOf(NEWTON, value);
}

/**
 * Force given in kilonewtons (kN), held in newtons: value × 1e3.
 * @param value - force in kilonewtons (kN), any finite number
 * @returns the force in newtons (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kilonewtons(12.5) // => 12500
 * ```
 * @since 0.1.0
 */
export function kilonewtons(value: number): Newtons {
  return into(KILONEWTON, value);
}

/**
 * Force read in kilonewtons (kN): value / 1e3.
 * @param value - force in newtons (N)
 * @returns the number of kilonewtons (kN)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilonewtons}
 * @example
 * ```ts
 * toKilonewtons(kilonewtons(12.5)) // => 12.5
 * ```
 * @since 0.1.0
 */
export function toKilonewtons(value: Newtons): number {
  return outOf(KILONEWTON, value);
}

/**
 * Force given in pounds force (lbf), held in newtons: value × POUND × GRAVITY.
 * @param value - force in pounds force (lbf), any finite number
 * @returns the force in newtons (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * poundsForce(2500) // => 11120.55403815125
 * ```
 * @since 0.1.0
 */
export function poundsForce(value: number): Newtons {
  return into(POUND_FORCE, value);
}

/**
 * Force read in pounds force (lbf): value / (POUND × GRAVITY).
 * @param value - force in newtons (N)
 * @returns the number of pounds force (lbf)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundsForce}
 * @example
 * ```ts
 * toPoundsForce(poundsForce(2500)) // => 2500
 * ```
 * @since 0.1.0
 */
export function toPoundsForce(value: Newtons): number {
  return outOf(POUND_FORCE, value);
}

/**
 * Force given in kips (kip), held in newtons: value × 1000 × POUND × GRAVITY.
 * @param value - force in kips (kip), any finite number
 * @returns the force in newtons (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * kips(2.5) // => 11120.55403815125
 * ```
 * @since 0.1.0
 */
export function kips(value: number): Newtons {
  return into(KIP, value);
}

/**
 * Force read in kips (kip): value / (1000 × POUND × GRAVITY).
 * @param value - force in newtons (N)
 * @returns the number of kips (kip)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kips}
 * @example
 * ```ts
 * toKips(kips(2.5)) // => 2.5
 * ```
 * @since 0.1.0
 */
export function toKips(value: Newtons): number {
  return outOf(KIP, value);
}

/**
 * Force given in kilograms force (kgf), held in newtons: value × GRAVITY.
 * @param value - force in kilograms force (kgf), any finite number
 * @returns the force in newtons (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; standard gravity 9.80665 m/s², exact definition
 * @example
 * ```ts
 * kilogramsForce(6) // => 58.8399
 * ```
 * @since 0.1.0
 */
export function kilogramsForce(value: number): Newtons {
  return into(KILOGRAM_FORCE, value);
}

/**
 * Force read in kilograms force (kgf): value / GRAVITY.
 * @param value - force in newtons (N)
 * @returns the number of kilograms force (kgf)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramsForce}
 * @example
 * ```ts
 * toKilogramsForce(kilogramsForce(6)) // => 6
 * ```
 * @since 0.1.0
 */
export function toKilogramsForce(value: Newtons): number {
  return outOf(KILOGRAM_FORCE, value);
}

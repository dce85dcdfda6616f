/** Torque. Energy has the same dimension and is another tag. */

import { into, outOf } from "../scale.ts";
import {
  KILOGRAM_FORCE_CENTIMETER,
  KILOGRAM_FORCE_METER,
  NEWTON_CENTIMETER,
  NEWTON_METER,
  POUND_FORCE_FOOT,
  POUND_FORCE_INCH,
} from "../scales/force.ts";
import type { NewtonMeters } from "../tags.ts";

/**
 * Torque given in newton meters (N·m), the unit it is held in.
 * @param value - torque in newton meters (N·m), any finite number
 * @returns the torque in newton meters (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * newtonMeters(15) // => 15
 * ```
 * @since 0.1.0
 */
export function newtonMeters(value: number): NewtonMeters {
  return into(NEWTON_METER, value);
}

/**
 * Torque read in newton meters (N·m), the unit it is held in.
 * @param value - torque in newton meters (N·m)
 * @returns the number of newton meters (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link newtonMeters}
 * @example
 * ```ts
 * toNewtonMeters(newtonMeters(15)) // => 15
 * ```
 * @since 0.1.0
 */
export function toNewtonMeters(value: NewtonMeters): number {
  return outOf(NEWTON_METER, value);
}

/**
 * Torque given in newton centimeters (N·cm), held in newton meters: value / 1e2.
 * @param value - torque in newton centimeters (N·cm), any finite number
 * @returns the torque in newton meters (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * newtonCentimeters(120) // => 1.2
 * ```
 * @since 0.1.0
 */
export function newtonCentimeters(value: number): NewtonMeters {
  return into(NEWTON_CENTIMETER, value);
}

/**
 * Torque read in newton centimeters (N·cm): value × 1e2.
 * @param value - torque in newton meters (N·m)
 * @returns the number of newton centimeters (N·cm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link newtonCentimeters}
 * @example
 * ```ts
 * toNewtonCentimeters(newtonCentimeters(120)) // => 120
 * ```
 * @since 0.1.0
 */
export function toNewtonCentimeters(value: NewtonMeters): number {
  return outOf(NEWTON_CENTIMETER, value);
}

/**
 * Torque given in pound force inches (lbf·in), held in newton meters: value × POUND × GRAVITY × INCH.
 * @param value - torque in pound force inches (lbf·in), any finite number
 * @returns the torque in newton meters (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * poundForceInches(37) // => 4.180438674021818
 * ```
 * @since 0.1.0
 */
export function poundForceInches(value: number): NewtonMeters {
  return into(POUND_FORCE_INCH, value);
}

/**
 * Torque read in pound force inches (lbf·in): value / (POUND × GRAVITY × INCH).
 * @param value - torque in newton meters (N·m)
 * @returns the number of pound force inches (lbf·in)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundForceInches}
 * @example
 * ```ts
 * toPoundForceInches(poundForceInches(37)) // => 37
 * ```
 * @since 0.1.0
 */
export function toPoundForceInches(value: NewtonMeters): number {
  return outOf(POUND_FORCE_INCH, value);
}

/**
 * Torque given in pound force feet (lbf·ft), held in newton meters: value × POUND × GRAVITY × FOOT.
 * @param value - torque in pound force feet (lbf·ft), any finite number
 * @returns the torque in newton meters (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; pound × standard gravity, both exact definitions
 * @example
 * ```ts
 * poundForceFeet(11) // => 14.913997431645404
 * ```
 * @since 0.1.0
 */
export function poundForceFeet(value: number): NewtonMeters {
  return into(POUND_FORCE_FOOT, value);
}

/**
 * Torque read in pound force feet (lbf·ft): value / (POUND × GRAVITY × FOOT).
 * @param value - torque in newton meters (N·m)
 * @returns the number of pound force feet (lbf·ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link poundForceFeet}
 * @example
 * ```ts
 * toPoundForceFeet(poundForceFeet(11)) // => 11
 * ```
 * @since 0.1.0
 */
export function toPoundForceFeet(value: NewtonMeters): number {
  return outOf(POUND_FORCE_FOOT, value);
}

/**
 * Torque given in kilogram force meters (kgf·m), held in newton meters: value × GRAVITY.
 * @param value - torque in kilogram force meters (kgf·m), any finite number
 * @returns the torque in newton meters (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; standard gravity 9.80665 m/s², exact definition
 * @example
 * ```ts
 * kilogramForceMeters(1.5) // => 14.709975
 * ```
 * @since 0.1.0
 */
export function kilogramForceMeters(value: number): NewtonMeters {
  return into(KILOGRAM_FORCE_METER, value);
}

/**
 * Torque read in kilogram force meters (kgf·m): value / GRAVITY.
 * @param value - torque in newton meters (N·m)
 * @returns the number of kilogram force meters (kgf·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramForceMeters}
 * @example
 * ```ts
 * toKilogramForceMeters(kilogramForceMeters(1.5)) // => 1.5
 * ```
 * @since 0.1.0
 */
export function toKilogramForceMeters(value: NewtonMeters): number {
  return outOf(KILOGRAM_FORCE_METER, value);
}

/**
 * Torque given in kilogram force centimeters (kgf·cm), held in newton meters: value × GRAVITY / 100.
 * @param value - torque in kilogram force centimeters (kgf·cm), any finite number
 * @returns the torque in newton meters (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; standard gravity 9.80665 m/s², exact definition
 * @example
 * ```ts
 * kilogramForceCentimeters(45) // => 4.4129925
 * ```
 * @since 0.1.0
 */
export function kilogramForceCentimeters(value: number): NewtonMeters {
  return into(KILOGRAM_FORCE_CENTIMETER, value);
}

/**
 * Torque read in kilogram force centimeters (kgf·cm): 100 × value / GRAVITY.
 * @param value - torque in newton meters (N·m)
 * @returns the number of kilogram force centimeters (kgf·cm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kilogramForceCentimeters}
 * @example
 * ```ts
 * toKilogramForceCentimeters(kilogramForceCentimeters(45)) // => 45
 * ```
 * @since 0.1.0
 */
export function toKilogramForceCentimeters(value: NewtonMeters): number {
  return outOf(KILOGRAM_FORCE_CENTIMETER, value);
}

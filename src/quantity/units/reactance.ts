/** Inductance and capacitance. */

import { into, outOf } from "../scale.ts";
import { FARAD, HENRY, MICROFARAD, MILLIHENRY } from "../scales/electric.ts";
import type { Farads, Henries } from "../tags.ts";

/**
 * Inductance given in henries (H), the unit it is held in.
 * @param value - inductance in henries (H), any finite number
 * @returns the inductance in henries (H)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * henries(0.5) // => 0.5
 * ```
 * @since 0.1.0
 */
export function henries(value: number): Henries {
  return into(HENRY, value);
}

/**
 * Inductance read in henries (H), the unit it is held in.
 * @param value - inductance in henries (H)
 * @returns the number of henries (H)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link henries}
 * @example
 * ```ts
 * toHenries(henries(0.5)) // => 0.5
 * ```
 * @since 0.1.0
 */
export function toHenries(value: Henries): number {
  return outOf(HENRY, value);
}

/**
 * Inductance given in millihenries (mH), held in henries: value / 1e3.
 * @param value - inductance in millihenries (mH), any finite number
 * @returns the inductance in henries (H)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * millihenries(1.2) // => 0.0012
 * ```
 * @since 0.1.0
 */
export function millihenries(value: number): Henries {
  return into(MILLIHENRY, value);
}

/**
 * Inductance read in millihenries (mH): value × 1e3.
 * @param value - inductance in henries (H)
 * @returns the number of millihenries (mH)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link millihenries}
 * @example
 * ```ts
 * toMillihenries(millihenries(1.2)) // => 1.2
 * ```
 * @since 0.1.0
 */
export function toMillihenries(value: Henries): number {
  return outOf(MILLIHENRY, value);
}

/**
 * Capacitance given in farads (F), the unit it is held in.
 * @param value - capacitance in farads (F), any finite number
 * @returns the capacitance in farads (F)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * farads(2e-6) // => 0.000002
 * ```
 * @since 0.1.0
 */
export function farads(value: number): Farads {
  return into(FARAD, value);
}

/**
 * Capacitance read in farads (F), the unit it is held in.
 * @param value - capacitance in farads (F)
 * @returns the number of farads (F)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link farads}
 * @example
 * ```ts
 * toFarads(farads(2e-6)) // => 0.000002
 * ```
 * @since 0.1.0
 */
export function toFarads(value: Farads): number {
  return outOf(FARAD, value);
}

/**
 * Capacitance given in microfarads (µF), held in farads: value / 1e6.
 * @param value - capacitance in microfarads (µF), any finite number
 * @returns the capacitance in farads (F)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * microfarads(2) // => 0.000002
 * ```
 * @since 0.1.0
 */
export function microfarads(value: number): Farads {
  return into(MICROFARAD, value);
}

/**
 * Capacitance read in microfarads (µF): value × 1e6.
 * @param value - capacitance in farads (F)
 * @returns the number of microfarads (µF)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microfarads}
 * @example
 * ```ts
 * toMicrofarads(microfarads(2)) // => 2
 * ```
 * @since 0.1.0
 */
export function toMicrofarads(value: Farads): number {
  return outOf(MICROFARAD, value);
}

/** Resistance. */

import { into, outOf } from "../scale.ts";
import { GIGAOHM, KILOOHM, MEGAOHM, MICROOHM, MILLIOHM, NANOOHM, OHM } from "../scales/electric.ts";
import type { Ohms } from "../tags.ts";

/**
 * Resistance given in ohms (Ω), the unit it is held in.
 * @param value - resistance in ohms (Ω), any finite number
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * ohms(7.65) // => 7.65
 * ```
 * @since 0.1.0
 */
export function ohms(value: number): Ohms {
  return into(OHM, value);
}

/**
 * Resistance read in ohms (Ω), the unit it is held in.
 * @param value - resistance in ohms (Ω)
 * @returns the number of ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohms}
 * @example
 * ```ts
 * toOhms(ohms(7.65)) // => 7.65
 * ```
 * @since 0.1.0
 */
export function toOhms(value: Ohms): number {
  return outOf(OHM, value);
}

/**
 * Resistance given in nanoohms (nΩ), held in ohms: value / 1e9.
 * @param value - resistance in nanoohms (nΩ), any finite number
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * nanoohms(250) // => 2.5e-7
 * ```
 * @since 0.1.0
 */
export function nanoohms(value: number): Ohms {
  return into(NANOOHM, value);
}

/**
 * Resistance read in nanoohms (nΩ): value × 1e9.
 * @param value - resistance in ohms (Ω)
 * @returns the number of nanoohms (nΩ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link nanoohms}
 * @example
 * ```ts
 * toNanoohms(nanoohms(250)) // => 250
 * ```
 * @since 0.1.0
 */
export function toNanoohms(value: Ohms): number {
  return outOf(NANOOHM, value);
}

/**
 * Resistance given in microohms (µΩ), held in ohms: value / 1e6.
 * @param value - resistance in microohms (µΩ), any finite number
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * microohms(35) // => 0.000035
 * ```
 * @since 0.1.0
 */
export function microohms(value: number): Ohms {
  return into(MICROOHM, value);
}

/**
 * Resistance read in microohms (µΩ): value × 1e6.
 * @param value - resistance in ohms (Ω)
 * @returns the number of microohms (µΩ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microohms}
 * @example
 * ```ts
 * toMicroohms(microohms(35)) // => 35
 * ```
 * @since 0.1.0
 */
export function toMicroohms(value: Ohms): number {
  return outOf(MICROOHM, value);
}

/**
 * Resistance given in milliohms (mΩ), held in ohms: value / 1e3.
 * @param value - resistance in milliohms (mΩ), any finite number
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * milliohms(4.7) // => 0.0047
 * ```
 * @since 0.1.0
 */
export function milliohms(value: number): Ohms {
  return into(MILLIOHM, value);
}

/**
 * Resistance read in milliohms (mΩ): value × 1e3.
 * @param value - resistance in ohms (Ω)
 * @returns the number of milliohms (mΩ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link milliohms}
 * @example
 * ```ts
 * toMilliohms(milliohms(4.7)) // => 4.7
 * ```
 * @since 0.1.0
 */
export function toMilliohms(value: Ohms): number {
  return outOf(MILLIOHM, value);
}

/**
 * Resistance given in kiloohms (kΩ), held in ohms: value × 1e3.
 * @param value - resistance in kiloohms (kΩ), any finite number
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * kiloohms(2.2) // => 2200
 * ```
 * @since 0.1.0
 */
export function kiloohms(value: number): Ohms {
  return into(KILOOHM, value);
}

/**
 * Resistance read in kiloohms (kΩ): value / 1e3.
 * @param value - resistance in ohms (Ω)
 * @returns the number of kiloohms (kΩ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link kiloohms}
 * @example
 * ```ts
 * toKiloohms(kiloohms(2.2)) // => 2.2
 * ```
 * @since 0.1.0
 */
export function toKiloohms(value: Ohms): number {
  return outOf(KILOOHM, value);
}

/**
 * Resistance given in megaohms (MΩ), held in ohms: value × 1e6.
 * @param value - resistance in megaohms (MΩ), any finite number
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * megaohms(50) // => 50000000
 * ```
 * @since 0.1.0
 */
export function megaohms(value: number): Ohms {
  return into(MEGAOHM, value);
}

/**
 * Resistance read in megaohms (MΩ): value / 1e6.
 * @param value - resistance in ohms (Ω)
 * @returns the number of megaohms (MΩ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link megaohms}
 * @example
 * ```ts
 * toMegaohms(megaohms(50)) // => 50
 * ```
 * @since 0.1.0
 */
export function toMegaohms(value: Ohms): number {
  return outOf(MEGAOHM, value);
}

/**
 * Resistance given in gigaohms (GΩ), held in ohms: value × 1e9.
 * @param value - resistance in gigaohms (GΩ), any finite number
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * gigaohms(2) // => 2000000000
 * ```
 * @since 0.1.0
 */
export function gigaohms(value: number): Ohms {
  return into(GIGAOHM, value);
}

/**
 * Resistance read in gigaohms (GΩ): value / 1e9.
 * @param value - resistance in ohms (Ω)
 * @returns the number of gigaohms (GΩ)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link gigaohms}
 * @example
 * ```ts
 * toGigaohms(gigaohms(2)) // => 2
 * ```
 * @since 0.1.0
 */
export function toGigaohms(value: Ohms): number {
  return outOf(GIGAOHM, value);
}

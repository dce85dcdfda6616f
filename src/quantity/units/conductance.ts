/** Conductance and electric conductivity. */

import { into, outOf } from "../scale.ts";
import { MEGASIEMENS_PER_METER, MILLISIEMENS, SIEMENS, SIEMENS_PER_METER } from "../scales/electric.ts";
import type { Siemens, SiemensPerMeter } from "../tags.ts";

/**
 * Conductance given in siemens (S), the unit it is held in.
 * @param value - conductance in siemens (S), any finite number
 * @returns the conductance in siemens (S)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 4; definition
 * @example
 * ```ts
 * siemens(0.125) // => 0.125
 * ```
 * @since 0.1.0
 */
export function siemens(value: number): Siemens {
  return into(SIEMENS, value);
}

/**
 * Conductance read in siemens (S), the unit it is held in.
 * @param value - conductance in siemens (S)
 * @returns the number of siemens (S)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link siemens}
 * @example
 * ```ts
 * toSiemens(siemens(0.125)) // => 0.125
 * ```
 * @since 0.1.0
 */
export function toSiemens(value: Siemens): number {
  return outOf(SIEMENS, value);
}

/**
 * Conductance given in millisiemens (mS), held in siemens: value / 1e3.
 * @param value - conductance in millisiemens (mS), any finite number
 * @returns the conductance in siemens (S)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * millisiemens(125) // => 0.125
 * ```
 * @since 0.1.0
 */
export function millisiemens(value: number): Siemens {
  return into(MILLISIEMENS, value);
}

/**
 * Conductance read in millisiemens (mS): value × 1e3.
 * @param value - conductance in siemens (S)
 * @returns the number of millisiemens (mS)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link millisiemens}
 * @example
 * ```ts
 * toMillisiemens(millisiemens(125)) // => 125
 * ```
 * @since 0.1.0
 */
export function toMillisiemens(value: Siemens): number {
  return outOf(MILLISIEMENS, value);
}

/**
 * Conductivity given in siemens per meter (S/m), the unit it is held in.
 * @param value - conductivity in siemens per meter (S/m), any finite number
 * @returns the conductivity in siemens per meter (S/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * siemensPerMeter(58e6) // => 58000000
 * ```
 * @since 0.1.0
 */
export function siemensPerMeter(value: number): SiemensPerMeter {
  return into(SIEMENS_PER_METER, value);
}

/**
 * Conductivity read in siemens per meter (S/m), the unit it is held in.
 * @param value - conductivity in siemens per meter (S/m)
 * @returns the number of siemens per meter (S/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link siemensPerMeter}
 * @example
 * ```ts
 * toSiemensPerMeter(siemensPerMeter(58e6)) // => 58000000
 * ```
 * @since 0.1.0
 */
export function toSiemensPerMeter(value: SiemensPerMeter): number {
  return outOf(SIEMENS_PER_METER, value);
}

/**
 * Conductivity given in megasiemens per meter (MS/m), held in siemens per meter: value × 1e6.
 * @param value - conductivity in megasiemens per meter (MS/m), any finite number
 * @returns the conductivity in siemens per meter (S/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * megasiemensPerMeter(58) // => 58000000
 * ```
 * @since 0.1.0
 */
export function megasiemensPerMeter(value: number): SiemensPerMeter {
  return into(MEGASIEMENS_PER_METER, value);
}

/**
 * Conductivity read in megasiemens per meter (MS/m): value / 1e6.
 * @param value - conductivity in siemens per meter (S/m)
 * @returns the number of megasiemens per meter (MS/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link megasiemensPerMeter}
 * @example
 * ```ts
 * toMegasiemensPerMeter(megasiemensPerMeter(58)) // => 58
 * ```
 * @since 0.1.0
 */
export function toMegasiemensPerMeter(value: SiemensPerMeter): number {
  return outOf(MEGASIEMENS_PER_METER, value);
}

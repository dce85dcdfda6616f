/** Resistivity, specific contact resistance. */

import { into, outOf } from "../scale.ts";
import {
  MICROOHM_CENTIMETER,
  MICROOHM_METER,
  NANOOHM_METER,
  OHM_CIRCULAR_MIL_PER_FOOT,
  OHM_METER,
  OHM_SQUARE_METER,
  OHM_SQUARE_MILLIMETER_PER_METER,
} from "../scales/electric.ts";
import type { OhmMeters, OhmSquareMeters } from "../tags.ts";

/**
 * Resistivity given in ohm meters (Ω·m), the unit it is held in.
 * @param value - resistivity in ohm meters (Ω·m), any finite number
 * @returns the resistivity in ohm meters (Ω·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * ohmMeters(1.08e-6) // => 0.00000108
 * ```
 * @since 0.1.0
 */
export function ohmMeters(value: number): OhmMeters {
  return into(OHM_METER, value);
}

/**
 * Resistivity read in ohm meters (Ω·m), the unit it is held in.
 * @param value - resistivity in ohm meters (Ω·m)
 * @returns the number of ohm meters (Ω·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmMeters}
 * @example
 * ```ts
 * toOhmMeters(ohmMeters(1.08e-6)) // => 0.00000108
 * ```
 * @since 0.1.0
 */
export function toOhmMeters(value: OhmMeters): number {
  return outOf(OHM_METER, value);
}

/**
 * Resistivity given in nanoohm meters (nΩ·m), held in ohm meters: value / 1e9.
 * @param value - resistivity in nanoohm meters (nΩ·m), any finite number
 * @returns the resistivity in ohm meters (Ω·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * nanoohmMeters(17.241) // => 1.7241e-8
 * ```
 * @since 0.1.0
 */
export function nanoohmMeters(value: number): OhmMeters {
  return into(NANOOHM_METER, value);
}

/**
 * Resistivity read in nanoohm meters (nΩ·m): value × 1e9.
 * @param value - resistivity in ohm meters (Ω·m)
 * @returns the number of nanoohm meters (nΩ·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link nanoohmMeters}
 * @example
 * ```ts
 * toNanoohmMeters(nanoohmMeters(17.241)) // => 17.241
 * ```
 * @since 0.1.0
 */
export function toNanoohmMeters(value: OhmMeters): number {
  return outOf(NANOOHM_METER, value);
}

/**
 * Resistivity given in microohm meters (µΩ·m), held in ohm meters: value / 1e6.
 * @param value - resistivity in microohm meters (µΩ·m), any finite number
 * @returns the resistivity in ohm meters (Ω·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * microohmMeters(1.08) // => 0.00000108
 * ```
 * @since 0.1.0
 */
export function microohmMeters(value: number): OhmMeters {
  return into(MICROOHM_METER, value);
}

/**
 * Resistivity read in microohm meters (µΩ·m): value × 1e6.
 * @param value - resistivity in ohm meters (Ω·m)
 * @returns the number of microohm meters (µΩ·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microohmMeters}
 * @example
 * ```ts
 * toMicroohmMeters(microohmMeters(1.08)) // => 1.08
 * ```
 * @since 0.1.0
 */
export function toMicroohmMeters(value: OhmMeters): number {
  return outOf(MICROOHM_METER, value);
}

/**
 * Resistivity given in microohm centimeters (µΩ·cm), held in ohm meters: value / 1e8.
 * @param value - resistivity in microohm centimeters (µΩ·cm), any finite number
 * @returns the resistivity in ohm meters (Ω·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * microohmCentimeters(108) // => 0.00000108
 * ```
 * @since 0.1.0
 */
export function microohmCentimeters(value: number): OhmMeters {
  return into(MICROOHM_CENTIMETER, value);
}

/**
 * Resistivity read in microohm centimeters (µΩ·cm): value × 1e8.
 * @param value - resistivity in ohm meters (Ω·m)
 * @returns the number of microohm centimeters (µΩ·cm)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link microohmCentimeters}
 * @example
 * ```ts
 * toMicroohmCentimeters(microohmCentimeters(108)) // => 108
 * ```
 * @since 0.1.0
 */
export function toMicroohmCentimeters(value: OhmMeters): number {
  return outOf(MICROOHM_CENTIMETER, value);
}

/**
 * Resistivity given in ohm square millimeters per meter (Ω·mm²/m), held in ohm meters: value / 1e6.
 * @param value - resistivity in ohm square millimeters per meter (Ω·mm²/m), any finite number
 * @returns the resistivity in ohm meters (Ω·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), Table 7; definition
 * @example
 * ```ts
 * ohmSquareMillimetersPerMeter(0.5) // => 5e-7
 * ```
 * @since 0.1.0
 */
export function ohmSquareMillimetersPerMeter(value: number): OhmMeters {
  return into(OHM_SQUARE_MILLIMETER_PER_METER, value);
}

/**
 * Resistivity read in ohm square millimeters per meter (Ω·mm²/m): value × 1e6.
 * @param value - resistivity in ohm meters (Ω·m)
 * @returns the number of ohm square millimeters per meter (Ω·mm²/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmSquareMillimetersPerMeter}
 * @example
 * ```ts
 * toOhmSquareMillimetersPerMeter(ohmSquareMillimetersPerMeter(0.5)) // => 0.5
 * ```
 * @since 0.1.0
 */
export function toOhmSquareMillimetersPerMeter(value: OhmMeters): number {
  return outOf(OHM_SQUARE_MILLIMETER_PER_METER, value);
}

/**
 * Resistivity given in ohm circular mils per foot (Ω·cmil/ft), held in ohm meters: value × (PI / 4) × MIL × MIL / FOOT.
 * @param value - resistivity in ohm circular mils per foot (Ω·cmil/ft), any finite number
 * @returns the resistivity in ohm meters (Ω·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source NIST SP 811, 2008 edition, Appendix B; exact definition of the inch (25.4 mm) and the pound (0.45359237 kg)
 * @example
 * ```ts
 * ohmCircularMilsPerFoot(150) // => 2.493639168786898e-7
 * ```
 * @since 0.1.0
 */
export function ohmCircularMilsPerFoot(value: number): OhmMeters {
  return into(OHM_CIRCULAR_MIL_PER_FOOT, value);
}

/**
 * Resistivity read in ohm circular mils per foot (Ω·cmil/ft): value / ((PI / 4) × MIL × MIL / FOOT).
 * @param value - resistivity in ohm meters (Ω·m)
 * @returns the number of ohm circular mils per foot (Ω·cmil/ft)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmCircularMilsPerFoot}
 * @example
 * ```ts
 * toOhmCircularMilsPerFoot(ohmCircularMilsPerFoot(150)) // => 150
 * ```
 * @since 0.1.0
 */
export function toOhmCircularMilsPerFoot(value: OhmMeters): number {
  return outOf(OHM_CIRCULAR_MIL_PER_FOOT, value);
}

/**
 * Specific contact resistance given in ohm square meters (Ω·m²), the unit it is held in.
 * @param value - specific contact resistance in ohm square meters (Ω·m²), any finite number
 * @returns the specific contact resistance in ohm square meters (Ω·m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.4; definition
 * @example
 * ```ts
 * ohmSquareMeters(2e-9) // => 2e-9
 * ```
 * @since 0.1.0
 */
export function ohmSquareMeters(value: number): OhmSquareMeters {
  return into(OHM_SQUARE_METER, value);
}

/**
 * Specific contact resistance read in ohm square meters (Ω·m²), the unit it is held in.
 * @param value - specific contact resistance in ohm square meters (Ω·m²)
 * @returns the number of ohm square meters (Ω·m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` when the result exceeds a double
 * @source as for {@link ohmSquareMeters}
 * @example
 * ```ts
 * toOhmSquareMeters(ohmSquareMeters(2e-9)) // => 2e-9
 * ```
 * @since 0.1.0
 */
export function toOhmSquareMeters(value: OhmSquareMeters): number {
  return outOf(OHM_SQUARE_METER, value);
}

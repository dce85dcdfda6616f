/** Resistance of a uniform wire: the one home of ρ/A and of what follows from it. */
import {
  checkNonNegative,
  checkPositive,
  finiteResult,
  given,
  type Meters,
  type OhmMeters,
  type Ohms,
  type OhmsPerMeter,
  type SquareMeters,
} from "../quantity/index.ts";

/**
 * Resistance per length of a uniform conductor: resistivity / area.
 * @param input - what the wire is
 * @param input.resistivity - resistivity at the temperature meant, Ω·m, more than 0
 * @param input.area - metal area, by {@link roundWireArea} or {@link wireSize}, m², more than 0
 * @returns the resistance per length in ohms per meter (Ω/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * const area = roundWireArea(millimeters(0.4));
 * resistancePerLength({ resistivity: microohmMeters(1.45), area }).toFixed(2) // => "11.54"
 * ```
 * @since 0.1.0
 */
export function resistancePerLength(input: {
  readonly resistivity: OhmMeters;
  readonly area: SquareMeters;
}): OhmsPerMeter {
  given(input);
  checkPositive("resistivity", input.resistivity, "Ω·m");
  checkPositive("area", input.area, "m²");
  return finiteResult(input.resistivity / input.area, "Ω/m");
}

/**
 * Resistance of a length of wire: resistancePerLength × length.
 * @param input - what the wire is
 * @param input.resistancePerLength - by {@link resistancePerLength} or from a wire table, Ω/m, more than 0
 * @param input.length - wire length, uncoiled, m, 0 or more
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * resistanceOfLength({ resistancePerLength: ohmsPerMeter(0.92), length: meters(28.7) }).toFixed(1) // => "26.4"
 * ```
 * @since 0.1.0
 */
export function resistanceOfLength(input: {
  readonly resistancePerLength: OhmsPerMeter;
  readonly length: Meters;
}): Ohms {
  given(input);
  checkPositive("resistancePerLength", input.resistancePerLength, "Ω/m");
  checkNonNegative("length", input.length, "m");
  return finiteResult(input.resistancePerLength * input.length, "Ω");
}

/**
 * Length of wire that has a resistance: resistance / resistancePerLength. It is a division: a published wire sheet
 * multiplies here and finds 12.82 m where 45.66 m are needed.
 * @param input - what is wanted of which wire
 * @param input.resistance - resistance wanted at the temperature of the resistance per length, Ω, 0 or more
 * @param input.resistancePerLength - by {@link resistancePerLength} or from a wire table, Ω/m, more than 0
 * @returns the wire length, uncoiled, in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * lengthOfResistance({ resistance: ohms(24.2), resistancePerLength: ohmsPerMeter(0.53) }).toFixed(2) // => "45.66"
 * ```
 * @since 0.1.0
 */
export function lengthOfResistance(input: {
  readonly resistance: Ohms;
  readonly resistancePerLength: OhmsPerMeter;
}): Meters {
  given(input);
  checkNonNegative("resistance", input.resistance, "Ω");
  checkPositive("resistancePerLength", input.resistancePerLength, "Ω/m");
  return finiteResult(input.resistance / input.resistancePerLength, "m");
}

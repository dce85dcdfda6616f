/** Straight-line resistance against temperature, whatever temperature the coefficient is quoted at. */
import {
  type Celsius,
  checkFinite,
  checkNonNegative,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Ohms,
  type PerKelvin,
} from "../quantity/index.ts";

/** 1 + coefficient × (temperature − reference), which must stay above 0. */
function lineAt(coefficient: PerKelvin, reference: Celsius, path: string, temperature: Celsius): number {
  checkFinite("coefficient", coefficient, "1/K");
  checkFinite("reference", reference, "°C");
  checkFinite(path, temperature, "°C");
  const line = 1 + coefficient * (temperature - reference);
  if (line > 0) return line;
  const expected = "a temperature at which the straight line is still above 0";
  return fail({ code: "out-of-range", path, expected, received: temperature, unit: "°C" });
}

/**
 * Temperature coefficient referred to another temperature: coefficient / (1 + coefficient × (at − reference)).
 * Copper has 0.00427 at 0 °C and 0.00393 at 20 °C: using one in place of the other is 1.5 % off at 75 °C.
 * @param input - what is referred
 * @param input.coefficient - coefficient as quoted, 1/K
 * @param input.reference - temperature it is quoted at, °C
 * @param input.at - temperature it is wanted at, °C
 * @returns the coefficient at the other temperature in per kelvin (1/K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` where the straight line has no resistance left
 * @source definition (straight line through zero resistance)
 * @example
 * ```ts
 * temperatureCoefficientAt({ coefficient: perKelvin(0.00393), reference: celsius(20), at: celsius(0) }).toFixed(6)
 * // => "0.004265"
 * ```
 * @since 0.1.0
 */
export function temperatureCoefficientAt(input: {
  readonly coefficient: PerKelvin;
  readonly reference: Celsius;
  readonly at: Celsius;
}): PerKelvin {
  given(input);
  return finiteResult(input.coefficient / lineAt(input.coefficient, input.reference, "at", input.at), "1/K");
}

/**
 * Temperature at which the straight line reaches zero resistance: reference − 1 / coefficient. A figure for
 * computing, no property of the metal: −234.45 °C for copper.
 * @param input - what the line is
 * @param input.coefficient - temperature coefficient, 1/K, more than 0
 * @param input.reference - temperature it is quoted at, °C
 * @returns the temperature in degrees Celsius (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * zeroResistanceTemperature({ coefficient: perKelvin(0.00393), reference: celsius(20) }).toFixed(2) // => "-234.45"
 * ```
 * @since 0.1.0
 */
export function zeroResistanceTemperature(input: {
  readonly coefficient: PerKelvin;
  readonly reference: Celsius;
}): Celsius {
  given(input);
  checkPositive("coefficient", input.coefficient, "1/K");
  checkFinite("reference", input.reference, "°C");
  return finiteResult(input.reference - 1 / input.coefficient, "°C");
}

/**
 * Resistance of a conductor at another temperature: resistance × (1 + coefficient × (to − reference)) /
 * (1 + coefficient × (from − reference)). For copper, aluminum and the like between about −50 and 200 °C; not for
 * heating alloys and nickel, whose resistance is no straight line.
 * @param input - what was measured and where it goes
 * @param input.resistance - resistance measured, by ohmmeter with the lead resistance taken off, Ω, 0 or more
 * @param input.from - temperature it was measured at, °C
 * @param input.to - temperature it is wanted at, °C
 * @param input.coefficient - temperature coefficient of the metal, 1/K
 * @param input.reference - temperature the coefficient is quoted at, °C
 * @returns the resistance in ohms (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * const metal = { coefficient: perKelvin(0.004), reference: celsius(20) };
 * resistanceAtTemperature({ resistance: ohms(10), from: celsius(20), to: celsius(100), ...metal }).toFixed(1)
 * // => "13.2"
 * ```
 * @since 0.1.0
 */
export function resistanceAtTemperature(input: {
  readonly resistance: Ohms;
  readonly from: Celsius;
  readonly to: Celsius;
  readonly coefficient: PerKelvin;
  readonly reference: Celsius;
}): Ohms {
  given(input);
  const { resistance, from, to, coefficient, reference } = input;
  checkNonNegative("resistance", resistance, "Ω");
  const ratio = lineAt(coefficient, reference, "to", to) / lineAt(coefficient, reference, "from", from);
  return finiteResult(resistance * ratio, "Ω");
}

/**
 * Temperature of a conductor from two resistances: the temperature at which the straight line through the first
 * gives the second. For copper windings and leads; not for heating alloys and nickel
 * ({@link temperatureFromFactor} says where it is possible for those).
 * @param input - what was measured
 * @param input.resistance - resistance at the known temperature, Ω, more than 0
 * @param input.from - the known temperature, °C
 * @param input.hotResistance - resistance at the temperature sought, Ω, more than 0
 * @param input.coefficient - temperature coefficient of the metal, 1/K, not 0
 * @param input.reference - temperature the coefficient is quoted at, °C
 * @returns the temperature in degrees Celsius (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `not-identifiable` when the coefficient is 0
 * @source definition
 * @example
 * ```ts
 * const metal = { coefficient: perKelvin(0.0039), reference: celsius(18) };
 * const found = temperatureFromResistance({
 *   resistance: ohms(200), from: celsius(18), hotResistance: ohms(240), ...metal,
 * });
 * found.toFixed(2) // => "69.28"
 * ```
 * @since 0.1.0
 */
export function temperatureFromResistance(input: {
  readonly resistance: Ohms;
  readonly from: Celsius;
  readonly hotResistance: Ohms;
  readonly coefficient: PerKelvin;
  readonly reference: Celsius;
}): Celsius {
  given(input);
  const { resistance, from, hotResistance, coefficient, reference } = input;
  checkPositive("resistance", resistance, "Ω");
  checkPositive("hotResistance", hotResistance, "Ω");
  const line = lineAt(coefficient, reference, "from", from);
  if (coefficient === 0) {
    const expected = "a coefficient other than 0: the resistance does not tell the temperature";
    return fail({
      code: "not-identifiable",
      path: "coefficient",
      expected,
      received: coefficient,
      unit: "1/K",
    });
  }
  return finiteResult(reference + (line * (hotResistance / resistance) - 1) / coefficient, "°C");
}

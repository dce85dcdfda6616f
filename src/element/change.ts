/** What an old, shorted or wrongly replaced element does: resistance, power and surface load against new. */
import {
  type BranchVolts,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Meters,
  type OhmMeters,
  type Ohms,
  type Warning,
  type Watts,
} from "../quantity/index.ts";

/**
 * Resistance after swapping the alloy at equal wire size and length: R·(newResistivity·newFactor)/(oldResistivity·oldFactor).
 *
 * Gives the one resistance; what the unequal branch does to powers and currents is a question for `electroheat/circuit`.
 * @param input.resistance - resistance before the swap, Ω, more than 0
 * @param input.oldResistivity - resistivity of the old alloy at 20 °C, Ω·m, more than 0
 * @param input.newResistivity - resistivity of the new alloy at 20 °C, Ω·m, more than 0
 * @param input.oldTemperatureFactor - Ct of the old alloy at the temperature asked about; 1 for a cold reading, more than 0
 * @param input.newTemperatureFactor - Ct of the new alloy at the temperature asked about, more than 0
 * @returns resistance after the swap, Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R = ρ·L/A; definition
 * @example
 * ```ts
 * swappedAlloyResistance({
 *   resistance: ohms(7.68),
 *   oldResistivity: microohmMeters(1.09),
 *   newResistivity: microohmMeters(1.12),
 *   oldTemperatureFactor: 1,
 *   newTemperatureFactor: 1,
 * }) // => 7.89138
 * ```
 * @since 0.1.0
 */
export function swappedAlloyResistance(input: {
  readonly resistance: Ohms;
  readonly oldResistivity: OhmMeters;
  readonly newResistivity: OhmMeters;
  readonly oldTemperatureFactor: number;
  readonly newTemperatureFactor: number;
}): Ohms {
  given(input);
  checkPositive("resistance", input.resistance, "Ω");
  checkPositive("oldResistivity", input.oldResistivity, "Ω·m");
  checkPositive("newResistivity", input.newResistivity, "Ω·m");
  checkPositive("oldTemperatureFactor", input.oldTemperatureFactor);
  checkPositive("newTemperatureFactor", input.newTemperatureFactor);
  const resistivityRatio = input.newResistivity / input.oldResistivity;
  const factorRatio = input.newTemperatureFactor / input.oldTemperatureFactor;
  return finiteResult(input.resistance * resistivityRatio * factorRatio, "Ω");
}

/**
 * What shorted turns do to an element on an unchanged voltage.
 * @since 0.1.0
 */
export interface ShortedTurns {
  /** Part of the wire that carries no current, 0 to 1. */
  readonly shortedFraction: number;
  /** Heat now, W. */
  readonly power: Watts;
  /** Heat now over heat when sound. */
  readonly powerRatio: number;
  /** Surface load of the live part over the load when sound. */
  readonly surfaceLoadRatio: number;
}

/**
 * Reads shorted turns from a low resistance: x = resistance/soundResistance is left live, power rises by 1/x, its
 * surface load by 1/x².
 *
 * Assumes uniform wire, nothing but shorted turns as the cause, and the voltage of the element unchanged (delta, or
 * star with its star point held). A reading within meter resolution and element tolerance of the sound value proves nothing.
 * @param input.soundResistance - resistance of the sound element at the same temperature, Ω, more than 0
 * @param input.resistance - resistance now, element disconnected and lead resistance taken off, Ω, more than 0,
 *   not above `soundResistance`
 * @param input.voltage - voltage across the element, V, more than 0
 * @returns part shorted, power, and ratios against sound
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the reading is above sound
 * @source R ∝ length, P = V²/R; definition
 * @example
 * ```ts
 * shortedTurns({ soundResistance: ohms(12.8), resistance: ohms(11.776), voltage: volts(480) })
 * // => { shortedFraction: 0.08, power: 19565.2, powerRatio: 1.08696, surfaceLoadRatio: 1.18147 }
 * ```
 * @since 0.1.0
 */
export function shortedTurns(input: {
  readonly soundResistance: Ohms;
  readonly resistance: Ohms;
  readonly voltage: BranchVolts;
}): ShortedTurns {
  given(input);
  const { soundResistance, resistance, voltage } = input;
  checkPositive("soundResistance", soundResistance, "Ω");
  checkPositive("resistance", resistance, "Ω");
  checkPositive("voltage", voltage, "V");
  if (resistance > soundResistance) {
    fail({
      code: "inconsistent",
      path: "resistance",
      expected: `at most the sound resistance, ${soundResistance}`,
      received: resistance,
      unit: "Ω",
    });
  }
  const powerRatio = soundResistance / resistance;
  return {
    shortedFraction: (soundResistance - resistance) / soundResistance,
    power: finiteResult((voltage / resistance) * voltage, "W"),
    powerRatio,
    surfaceLoadRatio: finiteResult(powerRatio * powerRatio, "1"),
  };
}

/**
 * What loss of metal or a risen resistance does to an element on an unchanged voltage.
 * @since 0.1.0
 */
export interface Ageing {
  /** Loss of diameter over the diameter when new, 0 to 1. */
  readonly diameterLoss: number;
  /** Loss of cross-section over the cross-section when new, 0 to 1. */
  readonly sectionLoss: number;
  /** Resistance over resistance when new. */
  readonly resistanceRatio: number;
  /** Power over power when new, at the same voltage. */
  readonly powerRatio: number;
  /** Surface load over surface load when new, at the same voltage. */
  readonly surfaceLoadRatio: number;
  /** Set when the resistance has passed what the trade replaces at. */
  readonly warnings: readonly Warning[];
}

/** Rise of resistance at which the trade looks at renewing a set. */
const REPLACEMENT_RISE = 0.1;

function aged(loss: number): Ageing {
  const left = 1 - loss;
  const resistanceRatio = finiteResult<number>(1 / (left * left), "1");
  const warnings: Warning[] = [];
  if (resistanceRatio > 1 + REPLACEMENT_RISE) {
    const message = `resistance is ${Number(resistanceRatio.toPrecision(4))} times new; the trade looks at renewing the whole set at about 1.1`;
    const limit = 1 + REPLACEMENT_RISE;
    warnings.push({
      code: "caution",
      path: "resistanceRatio",
      message,
      limit,
      unit: "1",
      source: "common practice",
    });
  }
  return {
    diameterLoss: loss,
    sectionLoss: 1 - left * left,
    resistanceRatio,
    powerRatio: left * left,
    surfaceLoadRatio: left,
    warnings,
  };
}

/**
 * Effect of an even loss of metal: R/R_new = 1/(1 − diameterLoss)², power the inverse, surface load 1 − diameterLoss.
 *
 * Even loss all along is assumed; a real element thins in places and runs hottest there. Life cannot be scaled from
 * accelerated tests.
 * @param input.newDiameter - diameter of the wire when new, m, more than 0
 * @param input.diameter - diameter of sound metal now, scale removed, by micrometer at several places, m, more than 0,
 *   not above `newDiameter`
 * @returns losses, ratios against new, and a caution (common practice, no published source) past a 10 % rise of resistance
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the wire has grown
 * @source R ∝ 1/d², P = V²/R, surface ∝ d; definition
 * @example
 * ```ts
 * ageingFromDiameter({ newDiameter: millimeters(2), diameter: millimeters(1.95) })
 * // => { diameterLoss: 0.025, sectionLoss: 0.049375, resistanceRatio: 1.05194, powerRatio: 0.95063, … }
 * ```
 * @since 0.1.0
 */
export function ageingFromDiameter(input: {
  readonly newDiameter: Meters;
  readonly diameter: Meters;
}): Ageing {
  given(input);
  const { newDiameter, diameter } = input;
  checkPositive("newDiameter", newDiameter, "m");
  checkPositive("diameter", diameter, "m");
  if (diameter > newDiameter) {
    fail({
      code: "inconsistent",
      path: "diameter",
      expected: `at most the diameter when new, ${newDiameter}`,
      received: diameter,
      unit: "m",
    });
  }
  return aged((newDiameter - diameter) / newDiameter);
}

/**
 * Even loss of metal that a rise of resistance stands for: diameterLoss = 1 − √(newResistance/resistance).
 *
 * Both at the same temperature. A change of the alloy's own resistivity (heat treatment, loss of chromium) reads the
 * same and is not told apart.
 * @param input.newResistance - resistance when new at the same temperature, Ω, more than 0
 * @param input.resistance - resistance now, element disconnected and lead resistance taken off, Ω, not below `newResistance`
 * @returns losses, ratios against new, and a caution (common practice, no published source) past a 10 % rise of resistance
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the resistance has fallen
 * @source R ∝ 1/d², P = V²/R, surface ∝ d; definition
 * @example
 * ```ts
 * ageingFromResistance({ newResistance: ohms(8), resistance: ohms(8.64) })
 * // => { diameterLoss: 0.03775, sectionLoss: 0.07407, resistanceRatio: 1.08, powerRatio: 0.92593, … }
 * ```
 * @since 0.1.0
 */
export function ageingFromResistance(input: {
  readonly newResistance: Ohms;
  readonly resistance: Ohms;
}): Ageing {
  given(input);
  const { newResistance, resistance } = input;
  checkPositive("newResistance", newResistance, "Ω");
  checkPositive("resistance", resistance, "Ω");
  if (resistance < newResistance) {
    fail({
      code: "inconsistent",
      path: "resistance",
      expected: `at least the resistance when new, ${newResistance}`,
      received: resistance,
      unit: "Ω",
    });
  }
  return aged(1 - Math.sqrt(newResistance / resistance));
}

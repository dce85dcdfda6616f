/** A hot joint in a bar as a fin: how far the heat spreads, kelvins per watt, and resistance from a rise. */
import {
  type Amperes,
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  given,
  inField,
  type Kelvins,
  type KelvinsPerWatt,
  type Meters,
  type Ohms,
  type SquareMeters,
  type WattsPerMeterKelvin,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";

/**
 * A bar as a fin.
 * @since 0.1.0
 */
export interface FinBar {
  /** Section (m²). */
  readonly section: SquareMeters;
  /** Perimeter that gives off heat (m). */
  readonly perimeter: Meters;
  /** Thermal conductivity (W/(m·K)); copper about 390. */
  readonly conductivity: WattsPerMeterKelvin;
  /**
   * Film coefficient, convection and radiation together (W/(m²·K)); about 10 for a warm bar in still air, known to
   * ±30 % at best.
   */
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
}

/** Checks a fin bar. @param inside - where its fields stand: `"bar."`, or nothing where it is the argument itself */
export function checkFin(bar: FinBar, inside: "bar." | ""): void {
  given(bar, "bar");
  checkMeasurable(`${inside}section`, bar.section, "m²");
  checkMeasurable(`${inside}perimeter`, bar.perimeter, "m");
  checkMeasurable(`${inside}conductivity`, bar.conductivity, "W/(m·K)");
  checkMeasurable(`${inside}filmCoefficient`, bar.filmCoefficient, "W/(m²·K)");
}

/**
 * Length over which an excess temperature falls to 37 % along a bar: 1/m =
 * √(conductivity·section/(filmCoefficient·perimeter)).
 * @param bar - section, perimeter, conductivity, film coefficient
 * @returns spread length (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source fin theory; Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.6
 * @example
 * ```ts
 * const bar = {
 *   section: squareMillimeters(75), perimeter: millimeters(56),
 *   conductivity: wattsPerMeterKelvin(390), filmCoefficient: wattsPerSquareMeterKelvin(10),
 * };
 * finSpreadLength(bar) // => 0.228544
 * ```
 * @since 0.1.0
 */
export function finSpreadLength(bar: FinBar): Meters {
  checkFin(bar, "");
  return Math.sqrt((bar.conductivity * bar.section) / (bar.filmCoefficient * bar.perimeter)) as Meters;
}

/**
 * Kelvins per watt of a joint in the middle of a bar: R = 1/(2·√(h·P·k·A)·tanh(arm/spread)); without `arm` the bar is
 * endless.
 *
 * Ends give off nothing. A short jumper is nearly isothermal and several times hotter than an endless bar with the
 * same joint: never use the endless form for one. Studs and cables at the ends: see `jumperProfile`.
 * @param input.bar - section, perimeter, conductivity, film coefficient
 * @param input.arm - length of bar on each side of the joint (m), more than 0; endless if left out
 * @returns thermal resistance (K/W), to the air
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source as {@link finSpreadLength}
 * @example
 * ```ts
 * const bar = {
 *   section: squareMillimeters(75), perimeter: millimeters(56),
 *   conductivity: wattsPerMeterKelvin(390), filmCoefficient: wattsPerSquareMeterKelvin(10),
 * };
 * [jointThermalResistance({ bar }), jointThermalResistance({ bar, arm: millimeters(60) })] // => [3.90673, 15.22127]
 * ```
 * @since 0.1.0
 */
export function jointThermalResistance(input: {
  readonly bar: FinBar;
  readonly arm?: Meters;
}): KelvinsPerWatt {
  given(input);
  const { bar, arm } = input;
  given(bar, "bar");
  const spread = inField("bar", () => finSpreadLength(bar));
  const endless = spread / (2 * bar.conductivity * bar.section);
  if (arm === undefined) return endless as KelvinsPerWatt;
  checkMeasurable("arm", arm, "m");
  return (endless / Math.tanh(arm / spread)) as KelvinsPerWatt;
}

/**
 * A joint resistance estimated from a rise.
 * @since 0.1.0
 */
export interface ResistanceFromRise {
  /** Central estimate (Ω). */
  readonly resistance: Ohms;
  /** Lower end of the band (Ω). */
  readonly low: Ohms;
  /** Upper end of the band (Ω). */
  readonly high: Ohms;
}

/**
 * Joint resistance from the excess temperature a camera shows: R = rise/(thermalResistance·current²), with a band for
 * the film coefficient.
 *
 * low = resistance/(1 + uncertainty), high = resistance/(1 − uncertainty). `rise` is the excess over what the bar
 * would have without the joint, not over the air. For ranking; confirm with millivolts. The thermal resistance to
 * still air is known to ±30 % at best, which is 0.77 to 1.43 of the estimate.
 * @param input.rise - excess of the joint over its bar (K), 0 or more
 * @param input.thermalResistance - thermal resistance of the joint (K/W), more than 0; from {@link
 *   jointThermalResistance}
 * @param input.current - current through the joint (A), more than 0
 * @param input.uncertainty - relative uncertainty of the thermal resistance, 0 to 0.9; 0.3 if left out, less only
 *   where it was measured
 * @returns estimate with its band
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source as {@link finSpreadLength}; ±30 %: spread of natural-convection film coefficients, common practice
 * @example
 * ```ts
 * const thermalResistance = kelvinsPerWatt(3.90673);
 * resistanceFromRise({ rise: kelvins(12), thermalResistance, current: amperes(100) }).resistance // => 0.000307162
 * ```
 * @since 0.1.0
 */
export function resistanceFromRise(input: {
  readonly rise: Kelvins;
  readonly thermalResistance: KelvinsPerWatt;
  readonly current: Amperes;
  readonly uncertainty?: number;
}): ResistanceFromRise {
  given(input);
  const { rise, thermalResistance, current, uncertainty = 0.3 } = input;
  checkMeasurableOrZero("rise", rise, "K");
  checkMeasurable("thermalResistance", thermalResistance, "K/W");
  checkMeasurable("current", current, "A");
  checkBetween("uncertainty", uncertainty, 0, 0.9);
  const resistance = rise / (thermalResistance * current * current);
  return {
    resistance: resistance as Ohms,
    low: (resistance / (1 + uncertainty)) as Ohms,
    high: (resistance / (1 - uncertainty)) as Ohms,
  };
}

/** One piece of work in hot air between hot walls: whether it is at one temperature, and how long it takes. */
import { bracketedRoot, integrateOde } from "../numeric/index.ts";
import {
  type Celsius,
  checkBetween,
  checkPositive,
  given,
  type JoulesPerKilogramKelvin,
  type KilogramsPerCubicMeter,
  type Meters,
  type Seconds,
  STEFAN_BOLTZMANN,
  type Warning,
  type WattsPerMeterKelvin,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";
import { checkScale, checkScaleOrZero, checkTemperature } from "./scale.ts";

/** Up to this Biot number the inside follows the surface within a few percent. */
const LUMPED_LIMIT = 0.1;

/**
 * Biot number of a piece, and whether one temperature describes it.
 * @since 0.1.0
 */
export interface BiotNumber {
  /** filmCoefficient × characteristicLength / thermalConductivity. */
  readonly biot: number;
  /** Below 0.1: the inside follows the surface. */
  readonly lumped: boolean;
  /** Says when it does not. */
  readonly warnings: readonly Warning[];
}

/**
 * Biot number: filmCoefficient × characteristicLength / thermalConductivity. Below 0.1 the inside of a piece follows its
 * surface within a few percent.
 * @param input.filmCoefficient - convection and radiation together, W/(m²·K), more than 0
 * @param input.characteristicLength - volume over heated surface, m, more than 0: half the thickness of a plate heated on both sides
 * @param input.thermalConductivity - of the piece, W/(m·K), more than 0
 * @returns the number and the verdict
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, chapter 5 (criterion 0.1)
 * @example
 * ```ts
 * biotNumber({
 *   filmCoefficient: wattsPerSquareMeterKelvin(30),
 *   characteristicLength: millimeters(12.5),
 *   thermalConductivity: wattsPerMeterKelvin(45),
 * }).biot // => 0.00833333
 * ```
 * @since 0.1.0
 */
export function biotNumber(input: {
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
  readonly characteristicLength: Meters;
  readonly thermalConductivity: WattsPerMeterKelvin;
}): BiotNumber {
  given(input);
  checkScale("filmCoefficient", input.filmCoefficient, "W/(m²·K)");
  checkScale("characteristicLength", input.characteristicLength, "m");
  checkScale("thermalConductivity", input.thermalConductivity, "W/(m·K)");
  const biot = (input.filmCoefficient * input.characteristicLength) / input.thermalConductivity;
  const lumped = biot < LUMPED_LIMIT;
  const warnings: readonly Warning[] = lumped
    ? []
    : [
        {
          code: "outside-validity",
          path: "biot",
          message: `Biot number ${biot.toPrecision(3)}: the inside lags the surface, one temperature does not describe the piece.`,
          limit: LUMPED_LIMIT,
          unit: "",
          source: "incropera-heat",
        },
      ];
  return { biot, lumped, warnings };
}

/**
 * How a piece takes the temperature of its surroundings.
 * @since 0.1.0
 */
export interface PieceHeating {
  /** Whether the temperature asked for is ever reached. */
  readonly reached: boolean;
  /** Time to it, s, or `"never"`. */
  readonly time: Seconds | "never";
  /** Temperature at which the piece would stay, °C. */
  readonly steady: Celsius;
}

/**
 * Time for a piece in air between walls to reach a temperature, warming or cooling: density × specificHeat ×
 * characteristicLength × dT/dt = filmCoefficient × (air − T) + emissivity × σ × (walls⁴ − T⁴), fourth powers in kelvins.
 *
 * The piece is at one temperature ({@link biotNumber} below 0.1) and small beside the walls; film coefficient and emissivity
 * stay the same all the way.
 * @param input.characteristicLength - volume over heated surface, m, more than 0: half the thickness of a plate heated on both sides
 * @param input.density - of the piece, kg/m³, more than 0
 * @param input.specificHeat - of the piece, J/(kg·K), more than 0
 * @param input.filmCoefficient - convection alone, W/(m²·K), 0 or more
 * @param input.air - air temperature, °C
 * @param input.emissivity - of the piece, 0 to 1; 0 leaves radiation out, and then the film coefficient must be more than 0
 * @param input.walls - temperature of the walls that it sees, °C
 * @param input.start - temperature at the start, °C
 * @param input.target - temperature asked for, °C; the start itself takes no time
 * @returns the time, or `"never"` with the temperature at which it would stay
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 5.3 (general lumped capacitance analysis)
 * @example
 * ```ts
 * const panel = {
 *   characteristicLength: millimeters(1.5), density: kilogramsPerCubicMeter(2770), specificHeat: joulesPerKilogramKelvin(875),
 * };
 * pieceHeatingTime({
 *   ...panel, filmCoefficient: wattsPerSquareMeterKelvin(40), air: celsius(175), emissivity: 0.8, walls: celsius(175),
 *   start: celsius(25), target: celsius(150),
 * }).time // => 123.0407
 * ```
 * @since 0.1.0
 */
export function pieceHeatingTime(input: {
  readonly characteristicLength: Meters;
  readonly density: KilogramsPerCubicMeter;
  readonly specificHeat: JoulesPerKilogramKelvin;
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
  readonly air: Celsius;
  readonly emissivity: number;
  readonly walls: Celsius;
  readonly start: Celsius;
  readonly target: Celsius;
}): PieceHeating {
  given(input);
  const { characteristicLength, density, specificHeat, filmCoefficient, air, emissivity, walls } = input;
  const { start, target } = input;
  checkScale("characteristicLength", characteristicLength, "m");
  checkScale("density", density, "kg/m³");
  checkScale("specificHeat", specificHeat, "J/(kg·K)");
  checkScaleOrZero("filmCoefficient", filmCoefficient, "W/(m²·K)");
  checkBetween("emissivity", emissivity, 0, 1);
  // Without any exchange the piece would keep its temperature, and there would be no steady one to name.
  if (filmCoefficient === 0) checkPositive("emissivity", emissivity);
  checkTemperature("air", air);
  checkTemperature("walls", walls);
  checkTemperature("start", start);
  checkTemperature("target", target);
  // No check here: a trial step may overshoot absolute zero before it is shortened.
  const fourth = (t: number): number => (t + 273.15) ** 4;
  const wallsFourth = fourth(walls);
  const flux = (t: number): number =>
    filmCoefficient * (air - t) + emissivity * STEFAN_BOLTZMANN * (wallsFourth - fourth(t));
  const [low, high] = [Math.min(air, walls), Math.max(air, walls)];
  const steady = low === high ? low : bracketedRoot({ evaluate: flux, low, high, tolerance: 1e-12 }).root;
  if (target === start) return { reached: true, time: 0 as Seconds, steady: steady as Celsius };
  const warming = target > start;
  const reached = warming ? target < steady : target > steady;
  if (!reached) return { reached, time: "never", steady: steady as Celsius };
  const capacity = density * specificHeat * characteristicLength;
  // The flux only weakens on the way, so the flux at the target gives an upper bound of the time.
  const longest = Math.abs((capacity * (target - start)) / flux(target));
  const { at } = integrateOde({
    derivative: (_, [t]) => [flux(t as number) / capacity],
    start: 0,
    end: longest * 1.001,
    initial: [start],
    relativeTolerance: 1e-12,
    absoluteTolerance: 1e-10,
    event: (_, [t]) => (t as number) - target,
  });
  return { reached, time: at as Seconds, steady: steady as Celsius };
}

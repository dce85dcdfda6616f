/** A wire on a voltage or a current, with its resistance following its temperature. */
import { type AlloyDataset, temperatureFactor } from "../material/index.ts";
import {
  type Amperes,
  type BranchVolts,
  type Celsius,
  type ColdOhms,
  checkPositive,
  fail,
  type HotOhms,
  type Meters,
  type MetersPerSecond,
  type OhmMeters,
  type Pascals,
  type Watts,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";
import { held } from "./domain.ts";
import type { ElementShape } from "./heatBalance.ts";
import type { ForcedCorrelation, FreeCorrelation } from "./nusselt.ts";
import { type SurfaceTemperature, solvedBalance } from "./surfaceTemperature.ts";

/**
 * Current that gives a round wire a surface load: I = √(π²·diameter³·surfaceLoad/(4·resistivity)).
 *
 * With {@link heatBalance} at a wanted temperature it gives the current that holds the wire there. A close coil reaches the
 * same temperature at 0.4 to 0.7 of it (common practice).
 * @param input.surfaceLoad - heat per area of wire surface, W/m², more than 0
 * @param input.diameter - diameter of the wire, m, more than 0
 * @param input.resistivity - resistivity at that temperature, from the dataset by `alloyResistivity`, Ω·m, more than 0
 * @returns RMS current, A
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source P = I²·R over the surface of a cylinder; definition
 * @example
 * ```ts
 * currentFromSurfaceLoad({
 *   surfaceLoad: wattsPerSquareCentimeter(6.92937),
 *   diameter: millimeters(2.05),
 *   resistivity: microohmMeters(1.09),
 * }) // => 36.761
 * ```
 * @since 0.1.0
 */
export function currentFromSurfaceLoad(input: {
  readonly surfaceLoad: WattsPerSquareMeter;
  readonly diameter: Meters;
  readonly resistivity: OhmMeters;
}): Amperes {
  const { surfaceLoad, diameter, resistivity } = input;
  checkPositive("surfaceLoad", surfaceLoad, "W/m²");
  checkPositive("diameter", diameter, "m");
  checkPositive("resistivity", resistivity, "Ω·m");
  return held((Math.PI / 2) * diameter * Math.sqrt((diameter * surfaceLoad) / resistivity), "A");
}

/**
 * A wire on a voltage, hot and in balance.
 * @since 0.1.0
 */
export interface ElementOnVoltage {
  /** Heat, W. */
  readonly power: Watts;
  /** Current, A. */
  readonly current: Amperes;
  /** Resistance at the temperature it reaches, Ω. */
  readonly hotResistance: HotOhms;
  /** Ct at that temperature. */
  readonly temperatureFactor: number;
  /** Power over that of the cold resistance on the same voltage: 1/Ct. */
  readonly powerRatio: number;
  /** Temperature and where the heat goes. */
  readonly balance: SurfaceTemperature;
}

/**
 * What a wire of known cold resistance does on a voltage: P = voltage²/(coldResistance·Ct(T)) solved together with the heat balance
 * of {@link surfaceTemperature}.
 *
 * Use it for power at another voltage where the change of resistance counts; with constant resistance the power goes with the
 * square of the voltage. Ct is the dataset's, and datasets of one alloy differ by up to 5 %.
 * @param input.voltage - voltage across the element, V, more than 0
 * @param input.coldResistance - resistance at 20 °C, by ohmmeter with the lead resistance taken off, Ω, more than 0
 * @param input.dataset - alloy dataset with a Ct table, as `alloyDataset` returns it
 * @param input.length - length of the wire, m, more than 0
 * @param input.shape - `wire`, `coil` or `tube`; a coil adds a caution
 * @param input.diameter - diameter of the wire, m, more than 0
 * @param input.airTemperature - temperature of the air that reaches the element, °C, within the air table
 * @param input.airSpeed - speed of the air across the element, m/s, 0 in still air
 * @param input.pressure - absolute pressure, by barometer or `pressureAtAltitude`, Pa, more than 0
 * @param input.surroundingsTemperature - temperature of the walls the element sees, °C
 * @param input.emissivity - of the surface, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely, more than 0 to 1
 * @param input.forcedCorrelation - for moving air; left out, `churchill-bernstein`
 * @param input.freeCorrelation - for still air; left out, `morgan`
 * @returns power, current, hot resistance and the heat balance
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` when the temperature leaves
 *   the Ct or the air table, `no-convergence` with the bracket
 * @source P = V²/R with R = R20·Ct(T); heat balance; the dataset's own table
 * @example
 * ```ts
 * elementOnVoltage({
 *   voltage: volts(277.13),
 *   coldResistance: ohms(7.4),
 *   dataset: alloyDataset("nicr-80-20-gb"),
 *   length: meters(22.408),
 *   shape: "coil",
 *   diameter: millimeters(2.05),
 *   airTemperature: celsius(20),
 *   airSpeed: metersPerSecond(3),
 *   pressure: pascals(101_325),
 *   surroundingsTemperature: celsius(20),
 *   emissivity: 0.88,
 *   radiatingEfficiency: 0.6,
 * }) // => { power: 10116.3, current: 36.504, temperatureFactor: 1.0259, … }
 * ```
 * @since 0.1.0
 */
export function elementOnVoltage(input: {
  readonly voltage: BranchVolts;
  readonly coldResistance: ColdOhms;
  readonly dataset: AlloyDataset;
  readonly length: Meters;
  readonly shape: ElementShape;
  readonly diameter: Meters;
  readonly airTemperature: Celsius;
  readonly airSpeed: MetersPerSecond;
  readonly pressure: Pascals;
  readonly surroundingsTemperature: Celsius;
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly forcedCorrelation?: ForcedCorrelation;
  readonly freeCorrelation?: FreeCorrelation;
}): ElementOnVoltage {
  const { voltage, coldResistance, dataset, length, diameter } = input;
  checkPositive("voltage", voltage, "V");
  checkPositive("coldResistance", coldResistance, "Ω");
  checkPositive("length", length, "m");
  checkPositive("diameter", diameter, "m");
  const temperatures = dataset?.temperatureFactor?.temperatures;
  const ends = [temperatures?.[0], temperatures?.at(-1)] as const;
  if (ends[0] === undefined || ends[1] === undefined) {
    return fail({
      code: "missing",
      path: "dataset.temperatureFactor",
      expected: "a dataset with a Ct table",
      received: undefined,
    });
  }
  const coldPower = held<Watts>((voltage / coldResistance) * voltage, "W");
  const surface = Math.PI * diameter * length;
  const factorAt = (temperature: Celsius): number => temperatureFactor({ dataset, temperature }).value;
  const balance = solvedBalance(input, (t) => coldPower / factorAt(t) / surface, [ends[0], ends[1]]);
  const factor = factorAt(balance.surfaceTemperature);
  const hotResistance = held<HotOhms>(coldResistance * factor, "Ω");
  return {
    power: held(coldPower / factor, "W"),
    current: held(voltage / hotResistance, "A"),
    hotResistance,
    temperatureFactor: factor,
    powerRatio: 1 / factor,
    balance,
  };
}

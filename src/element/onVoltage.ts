/** A wire on a voltage or a current, with its resistance following its temperature. */
import { type AlloyDataset, type Basis, temperatureFactor } from "../material/index.ts";
import {
  type Amperes,
  type BranchVolts,
  type Celsius,
  type ColdOhms,
  checkNonNegative,
  checkOneOf,
  checkPositive,
  fail,
  finiteResult,
  given,
  type HotOhms,
  type Kelvins,
  type Meters,
  type OhmMeters,
  type Warning,
  type Watts,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";
import type { Cooling, ElementShape } from "./heatBalance.ts";
import { HOT_DEFERRAL, type SurfaceTemperature, solvedBalance } from "./surfaceTemperature.ts";

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
  given(input);
  const { surfaceLoad, diameter, resistivity } = input;
  checkPositive("surfaceLoad", surfaceLoad, "W/m²");
  checkPositive("diameter", diameter, "m");
  checkPositive("resistivity", resistivity, "Ω·m");
  return finiteResult((Math.PI / 2) * diameter * Math.sqrt((diameter * surfaceLoad) / resistivity), "A");
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
  /** Ct at `wireTemperature`. */
  readonly temperatureFactor: number;
  /** Where that Ct comes from. */
  readonly temperatureFactorBasis: Basis;
  /** Temperature of the wire, °C: the surface of a wire or coil; in a tube the sheath plus `wireExcess`. */
  readonly wireTemperature: Celsius;
  /** Power over that of the cold resistance on the same voltage: 1/Ct. */
  readonly powerRatio: number;
  /** Temperature and where the heat goes. */
  readonly balance: SurfaceTemperature;
  /** What the alloy says to that temperature; the balance carries its own. */
  readonly warnings: readonly Warning[];
  /** Who decides in the end. */
  readonly deferral: string;
}

/** Compares the wire with what its own dataset allows; the hot end of the band counts too. */
function limitWarnings(dataset: AlloyDataset, wire: Celsius, hottest: Celsius | null): readonly Warning[] {
  const path = "wireTemperature";
  const limit = dataset.maximumElementTemperature;
  if (limit === undefined) {
    const message = `dataset ${dataset.id} gives no highest element temperature: compare with another source of the alloy`;
    return [{ code: "caution", path, message }];
  }
  const { value, basis } = limit;
  if (hottest !== null && hottest <= value) return [];
  const reached =
    wire > value
      ? `the wire reaches ${Math.round(wire)} °C`
      : `the hot end of the band ${hottest === null ? "is not known and may lie" : `reaches ${Math.round(hottest)} °C,`}`;
  const message = `${reached} above ${value} °C, the highest element temperature of dataset ${dataset.id}`;
  return [{ code: "caution", path, message, limit: value, unit: "°C", source: basis.source }];
}

/** How much hotter the wire is than the surface: nothing for bare wire; a sheathed one must be told. */
function excessOf(input: { readonly shape: ElementShape; readonly wireExcess?: Kelvins }): Kelvins {
  const { shape, wireExcess } = input;
  const path = "wireExcess";
  if (wireExcess === undefined && shape === "tube") {
    const expected = "how much hotter the wire is than its sheath, as sheathedWireTemperatures gives it";
    return fail({ code: "missing", path, expected, received: wireExcess, unit: "K" });
  }
  if (wireExcess === undefined) return 0 as Kelvins;
  checkNonNegative(path, wireExcess, "K");
  if (wireExcess > 0 && shape !== "tube") {
    const expected = "0 K for bare wire, whose surface is the wire itself";
    return fail({ code: "inconsistent", path, expected, received: wireExcess, unit: "K" });
  }
  return wireExcess;
}

/**
 * What a wire of known cold resistance does on a voltage: P = voltage²/(coldResistance·Ct(T)) solved together with the heat balance
 * of {@link surfaceTemperature}, on the surface π·diameter·heatedLength.
 *
 * In a tube the surface is that of the sheath while Ct is that of the wire inside, which is hotter by `wireExcess`: give both
 * apart. Wire and sheath are never worked out from each other here. Use it for power at
 * another voltage where the change of resistance counts; at constant resistance the power goes with the square of the voltage,
 * which `powerAtVoltage` of `electroheat/circuit` does. Ct is the dataset's, and datasets of one alloy differ by up to 5 %.
 * @param input.voltage - voltage across the element, V, more than 0
 * @param input.coldResistance - resistance at 20 °C, by ohmmeter with the lead resistance taken off, Ω, more than 0
 * @param input.dataset - alloy dataset with a Ct table, as `alloyDataset` returns it
 * @param input.heatedLength - length of the surface that gives off the heat, m, more than 0: of a wire or coil the length of the
 *   wire, uncoiled; of a tube the heated length of the sheath, never that of the wire inside
 * @param input.shape - `wire`, `coil` or `tube`; a coil adds a caution
 * @param input.diameter - diameter of that surface: of the wire, or outside diameter of the sheath, m, more than 0
 * @param input.wireExcess - for a tube: how much hotter the wire is than the sheath at this load, by
 *   {@link sheathedWireTemperatures}, K, 0 or more; left out for bare wire
 * @param input.airTemperature - temperature of the air that reaches the element, °C, within the air table
 * @param input.airSpeed - speed of the air across the element, m/s, 0 in still air
 * @param input.pressure - absolute pressure, by barometer or `pressureAtAltitude`, Pa, more than 0
 * @param input.surroundingsTemperature - temperature of the walls the element sees, °C
 * @param input.emissivity - of the surface, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely, more than 0 to 1
 * @param input.forcedCorrelation - for moving air; left out, `churchill-bernstein`
 * @param input.freeCorrelation - for still air; left out, `morgan`
 * @returns power, current, hot resistance, temperature of the wire, the heat balance, and a caution when the wire or the hot end
 *   of the band passes the highest element temperature of the dataset
 * @throws ElectroheatError `missing` also for a tube without `wireExcess`, `inconsistent` for bare wire with one, `not-a-number`,
 *   `out-of-range`, `unknown-name`, `outside-table` when the temperature leaves the Ct or the air table, `no-convergence` with the bracket
 * @source P = V²/R with R = R20·Ct(T); heat balance; the dataset's own table
 * @example
 * ```ts
 * elementOnVoltage({
 *   voltage: volts(277.13),
 *   coldResistance: ohms(7.4),
 *   dataset: alloyDataset("nicr-80-20-gb"),
 *   heatedLength: meters(22.408),
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
export function elementOnVoltage(
  input: Cooling & {
    readonly voltage: BranchVolts;
    readonly coldResistance: ColdOhms;
    readonly dataset: AlloyDataset;
    readonly heatedLength: Meters;
    readonly wireExcess?: Kelvins;
  },
): ElementOnVoltage {
  given(input);
  const { voltage, coldResistance, dataset, heatedLength, diameter } = input;
  checkPositive("voltage", voltage, "V");
  checkPositive("coldResistance", coldResistance, "Ω");
  checkPositive("heatedLength", heatedLength, "m");
  checkPositive("diameter", diameter, "m");
  checkOneOf("shape", input.shape, ["wire", "coil", "tube"]);
  const excess = excessOf(input);
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
  const coldPower = finiteResult<Watts>((voltage / coldResistance) * voltage, "W");
  const surface = Math.PI * diameter * heatedLength;
  // Adding and taking off the excess must not leave the table by a rounding.
  const wireAt = (sheath: Celsius): Celsius =>
    Math.min(Math.max(sheath + excess, ends[0] as number), ends[1] as number) as Celsius;
  const factorAt = (sheath: Celsius): number =>
    temperatureFactor({ dataset, temperature: wireAt(sheath) }).value;
  const limits = [ends[0] - excess, ends[1] - excess] as const;
  const balance = solvedBalance(input, (t) => coldPower / factorAt(t) / surface, limits);
  const wireTemperature = wireAt(balance.surfaceTemperature);
  const { value: factor, basis } = temperatureFactor({ dataset, temperature: wireTemperature });
  const { high } = balance.band;
  const hotResistance = finiteResult<HotOhms>(coldResistance * factor, "Ω");
  return {
    power: finiteResult(coldPower / factor, "W"),
    current: finiteResult(voltage / hotResistance, "A"),
    hotResistance,
    temperatureFactor: factor,
    temperatureFactorBasis: basis,
    wireTemperature,
    powerRatio: 1 / factor,
    balance,
    warnings: limitWarnings(dataset, wireTemperature, high === null ? null : wireAt(high)),
    deferral: HOT_DEFERRAL,
  };
}

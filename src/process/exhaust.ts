/** Heat that leaves with air: exhaust, air changes, and the air that solvents need. */
import { airDensity } from "../material/index.ts";
import {
  type Celsius,
  type CubicMeters,
  type CubicMetersPerSecond,
  checkOneOf,
  fail,
  given,
  hours,
  type JoulesPerKilogramKelvin,
  type KilogramsPerSecond,
  type Pascals,
  type Watts,
  type WattsPerKelvin,
} from "../quantity/index.ts";
import { type AirFlow, airMassFlow, standardAirFlow } from "./airFlow.ts";
import { airMeanSpecificHeat, checkInside } from "./airHeat.ts";
import { checkScale, checkTemperature } from "./scale.ts";

/**
 * Heat carried away by an air stream.
 * @since 0.1.0
 */
export interface ExhaustHeat {
  /** Heat to warm the make-up air to oven temperature, W. */
  readonly power: Watts;
  /** The same for each kelvin between them, to be added to the loss of the walls, W/K. */
  readonly lossConductance: WattsPerKelvin;
  /** Mass flow, kg/s. */
  readonly massFlow: KilogramsPerSecond;
  /** Volume flow at 0.075 lb/ft³, m³/s. */
  readonly standardFlow: CubicMetersPerSecond;
  /** Mean specific heat used, J/(kg·K). */
  readonly specificHeat: JoulesPerKilogramKelvin;
}

function carried(
  massFlow: KilogramsPerSecond,
  makeUp: Celsius,
  oven: Celsius,
  given: JoulesPerKilogramKelvin | undefined,
): ExhaustHeat {
  if (given !== undefined) checkScale("specificHeat", given, "J/(kg·K)");
  else
    for (const [path, t] of [
      ["makeUp", makeUp],
      ["oven", oven],
    ] as const)
      checkInside(path, t);
  const specificHeat = given ?? airMeanSpecificHeat({ from: makeUp, to: oven });
  const lossConductance = massFlow * specificHeat;
  return {
    power: (lossConductance * (oven - makeUp)) as Watts,
    lossConductance: lossConductance as WattsPerKelvin,
    massFlow,
    standardFlow: standardAirFlow({ flow: { basis: "mass", massFlow }, standard: "0.075 lb/ft3" }),
    specificHeat,
  };
}

function checkWarmer(makeUp: Celsius, oven: Celsius): void {
  checkTemperature("makeUp", makeUp);
  checkTemperature("oven", oven);
  if (!(oven > makeUp))
    fail({
      code: "out-of-range",
      path: "oven",
      expected: `more than the make-up air, ${makeUp}`,
      received: oven,
      unit: "°C",
    });
}

/**
 * Heat that an exhaust carries away: massFlow × specificHeat × (oven − makeUp). A flow measured hot is less air than its
 * cubic meters say: taken as standard air at 400 °F it would be overstated by 62 %.
 * @param input.flow - exhaust flow with its basis: actual, at the temperature where it was measured, or standard
 * @param input.makeUp - temperature of the air that replaces it, °C
 * @param input.oven - temperature at which it leaves, °C, above the make-up air
 * @param input.specificHeat - a fixed specific heat, J/(kg·K); left out, the mean of the table
 * @returns the heat, and the figures behind it
 * @throws ElectroheatError `missing`, `wrong-type` for a flow without basis, `not-a-number`, `out-of-range`, `outside-table`
 * @source First law for a steady stream at constant pressure; air: Incropera, Table A.4
 * @example
 * ```ts
 * const flow: AirFlow = {
 *   basis: "actual", volumeFlow: cubicFeetPerMinute(1000), temperature: fahrenheit(400), pressure: pascals(101325),
 * };
 * toKilowatts(exhaustHeat({ flow, makeUp: fahrenheit(70), oven: fahrenheit(400) }).power) // => 64.8333
 * ```
 * @since 0.1.0
 */
export function exhaustHeat(input: {
  readonly flow: AirFlow;
  readonly makeUp: Celsius;
  readonly oven: Celsius;
  readonly specificHeat?: JoulesPerKilogramKelvin;
}): ExhaustHeat {
  given(input);
  const massFlow = airMassFlow(input.flow);
  checkWarmer(input.makeUp, input.oven);
  return carried(massFlow, input.makeUp, input.oven, input.specificHeat);
}

/**
 * Heat of air changes: changesPerHour × volume × density × specificHeat × (oven − makeUp). Whether a change is counted
 * as make-up air or as oven air must be said: at 200 °C the two are 61 % apart.
 * @param input.changesPerHour - air changes per hour, more than 0
 * @param input.volume - of the oven, m³, more than 0
 * @param input.countedAs - `make-up air` at its temperature, or `oven air` at oven temperature
 * @param input.makeUp - temperature of the make-up air, °C
 * @param input.oven - oven temperature, °C, above the make-up air
 * @param input.pressure - absolute pressure, Pa, more than 0
 * @param input.specificHeat - a fixed specific heat, J/(kg·K); left out, the mean of the table
 * @returns the heat, and the figures behind it
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `out-of-range`, `outside-table`
 * @source First law for a steady stream at constant pressure; gas law
 * @example
 * ```ts
 * airChangeHeat({
 *   changesPerHour: 10, volume: cubicMeters(10), countedAs: "oven air",
 *   makeUp: celsius(20), oven: celsius(200), pressure: pascals(101325), specificHeat: btuItPerPoundFahrenheit(0.24),
 * }).power // => 3748.14
 * ```
 * @since 0.1.0
 */
export function airChangeHeat(input: {
  readonly changesPerHour: number;
  readonly volume: CubicMeters;
  readonly countedAs: "make-up air" | "oven air";
  readonly makeUp: Celsius;
  readonly oven: Celsius;
  readonly pressure: Pascals;
  readonly specificHeat?: JoulesPerKilogramKelvin;
}): ExhaustHeat {
  given(input);
  const { changesPerHour, volume, makeUp, oven, pressure } = input;
  checkScale("changesPerHour", changesPerHour);
  checkScale("volume", volume, "m³");
  const counted = checkOneOf("countedAs", input.countedAs, ["make-up air", "oven air"]);
  checkWarmer(makeUp, oven);
  const density = airDensity({ temperature: counted === "oven air" ? oven : makeUp, pressure });
  const massFlow = ((changesPerHour * volume) / hours(1)) * density;
  return carried(massFlow as KilogramsPerSecond, makeUp, oven, input.specificHeat);
}

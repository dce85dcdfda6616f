/** Heating an air stream: power, temperatures and flow from one another, and what a change does. */
import {
  type Celsius,
  fail,
  finiteResult,
  given,
  type JoulesPerKilogramKelvin,
  type Kelvins,
  type KilogramsPerSecond,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import { type AirFlow, airMassFlow } from "./airFlow.ts";
import { airHeatContent, airKinks, airMeanSpecificHeat, airTemperatureAfter } from "./airHeat.ts";
import { checkScale, checkTemperature } from "./scale.ts";

/**
 * An air stream being heated.
 * @since 0.1.0
 */
export interface AirHeating {
  /** Heat into the air, W. */
  readonly power: Watts;
  /** Mass flow, kg/s. */
  readonly massFlow: KilogramsPerSecond;
  /** Air temperature before the heater, °C. */
  readonly inlet: Celsius;
  /** Mean air temperature after it, °C. */
  readonly outlet: Celsius;
  /** Rise, K. */
  readonly rise: Kelvins;
  /** Mean specific heat used, J/(kg·K). */
  readonly specificHeat: JoulesPerKilogramKelvin;
  /** Empty when nothing is to be said. */
  readonly warnings: readonly Warning[];
}

/** Above this the table of air bends as if spliced from another source. */
const DOUBTFUL = 926.85;

function warningsOf(outlet: number, specificHeat: number | undefined): Warning[] {
  const end = airKinks().at(-1) as number;
  // A fixed specific heat carries the arithmetic to any temperature; no air and no heater follows it there.
  if (outlet > end)
    return [
      {
        code: "outside-validity",
        path: "outlet",
        message: `The table of air ends at ${end} °C: no source backs a fixed specific heat at this outlet. Check power and flow.`,
        limit: end,
        unit: "°C",
        source: "incropera-table-a4",
      },
    ];
  if (specificHeat !== undefined || outlet <= DOUBTFUL) return [];
  return [
    {
      code: "approximate",
      path: "outlet",
      message: `Above ${DOUBTFUL} °C the table of air looks spliced from another source.`,
      limit: DOUBTFUL,
      unit: "°C",
      source: "incropera-table-a4",
    },
  ];
}

function checkOutlet(inlet: Celsius, outlet: Celsius): void {
  checkTemperature("inlet", inlet);
  checkTemperature("outlet", outlet);
  if (!(outlet > inlet)) {
    fail({
      code: "out-of-range",
      path: "outlet",
      expected: `more than the inlet, ${inlet}`,
      received: outlet,
      unit: "°C",
    });
  }
}

function meanHeat(from: Celsius, to: Celsius, given: number | undefined): JoulesPerKilogramKelvin {
  if (given === undefined) return airMeanSpecificHeat({ from, to });
  checkScale("specificHeat", given, "J/(kg·K)");
  return given as JoulesPerKilogramKelvin;
}

/**
 * Outlet temperature and rise of heated air: power = massFlow × specificHeat × rise.
 *
 * All of `power` goes into the air; take off what the casing loses. The outlet is the mean: close to the elements the
 * stream is hotter.
 * @param input.power - heat into the air, from volts and amps at full conduction, W, more than 0
 * @param input.flow - the flow with its basis
 * @param input.inlet - air temperature before the heater, shielded from its radiation, °C
 * @param input.specificHeat - a fixed specific heat, J/(kg·K), such as 0.24 Btu/(lb·°F); left out, the mean of the table
 * @returns outlet, rise, and the figures behind them
 * @throws ElectroheatError `missing`, `wrong-type` for a flow without basis, `not-a-number`, `out-of-range`, `outside-table`
 *   above 1226.85 °C
 * @source First law for a steady stream at constant pressure; air: Incropera, Table A.4
 * @example
 * ```ts
 * const { rise } = airOutlet({
 *   power: kilowatts(36),
 *   flow: { basis: "standard", standard: "0.075 lb/ft3", volumeFlow: cubicFeetPerMinute(2000) },
 *   inlet: celsius(20),
 *   specificHeat: btuItPerPoundFahrenheit(0.24),
 * });
 * toFahrenheitDegrees(rise) // => 56.869
 * ```
 * @since 0.1.0
 */
export function airOutlet(input: {
  readonly power: Watts;
  readonly flow: AirFlow;
  readonly inlet: Celsius;
  readonly specificHeat?: JoulesPerKilogramKelvin;
}): AirHeating {
  given(input);
  const { power, flow, inlet, specificHeat } = input;
  checkScale("power", power, "W");
  const massFlow = airMassFlow(flow);
  checkTemperature("inlet", inlet);
  let outlet: Celsius;
  let used: JoulesPerKilogramKelvin;
  if (specificHeat === undefined) {
    outlet = airTemperatureAfter(inlet, power / massFlow);
    used = airMeanSpecificHeat({ from: inlet, to: outlet });
  } else {
    checkScale("specificHeat", specificHeat, "J/(kg·K)");
    used = specificHeat;
    outlet = finiteResult(inlet + power / (massFlow * used), "°C");
  }
  return {
    power,
    massFlow,
    inlet,
    outlet,
    rise: (power / (massFlow * used)) as Kelvins,
    specificHeat: used,
    warnings: warningsOf(outlet, specificHeat),
  };
}

/**
 * Power to heat an air stream: massFlow × specificHeat × (outlet − inlet).
 * @param input.flow - the flow with its basis
 * @param input.inlet - air temperature before the heater, °C
 * @param input.outlet - wanted mean temperature after it, °C, above the inlet
 * @param input.specificHeat - a fixed specific heat, J/(kg·K); left out, the mean of the table
 * @returns power into the air, and the figures behind it; losses of the casing come on top
 * @throws ElectroheatError `missing`, `wrong-type` for a flow without basis, `not-a-number`, `out-of-range`, `outside-table`
 * @source First law for a steady stream at constant pressure; air: Incropera, Table A.4
 * @example
 * ```ts
 * const { power } = airHeatingPower({
 *   flow: { basis: "mass", massFlow: kilogramsPerSecond(68) },
 *   inlet: celsius(16),
 *   outlet: celsius(34),
 *   specificHeat: joulesPerKilogramKelvin(1020),
 * });
 * toKilowatts(power) // => 1248.48
 * ```
 * @since 0.1.0
 */
export function airHeatingPower(input: {
  readonly flow: AirFlow;
  readonly inlet: Celsius;
  readonly outlet: Celsius;
  readonly specificHeat?: JoulesPerKilogramKelvin;
}): AirHeating {
  given(input);
  const { flow, inlet, outlet, specificHeat } = input;
  const massFlow = airMassFlow(flow);
  checkOutlet(inlet, outlet);
  const used = meanHeat(inlet, outlet, specificHeat);
  const rise = (outlet - inlet) as Kelvins;
  const perMass = specificHeat === undefined ? airHeatContent({ from: inlet, to: outlet }) : used * rise;
  const power = (massFlow * perMass) as Watts;
  return {
    power,
    massFlow,
    inlet,
    outlet,
    rise,
    specificHeat: used,
    warnings: warningsOf(outlet, specificHeat),
  };
}

/**
 * Air flow that a power heats from inlet to outlet: massFlow = power / (specificHeat × (outlet − inlet)). With the
 * temperatures measured on a running heater this is a check of the fan.
 * @param input.power - heat into the air, W, more than 0
 * @param input.inlet - air temperature before the heater, °C
 * @param input.outlet - mean temperature after it, °C, above the inlet
 * @param input.specificHeat - a fixed specific heat, J/(kg·K); left out, the mean of the table
 * @returns mass flow, and the figures behind it; {@link actualAirFlow} and {@link standardAirFlow} turn it into volumes
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table`
 * @source First law for a steady stream at constant pressure; air: Incropera, Table A.4
 * @example
 * ```ts
 * airFlowForRise({ power: kilowatts(30), inlet: celsius(20), outlet: celsius(45) }).massFlow // => 1.191369
 * ```
 * @since 0.1.0
 */
export function airFlowForRise(input: {
  readonly power: Watts;
  readonly inlet: Celsius;
  readonly outlet: Celsius;
  readonly specificHeat?: JoulesPerKilogramKelvin;
}): AirHeating {
  given(input);
  const { power, inlet, outlet, specificHeat } = input;
  checkScale("power", power, "W");
  checkOutlet(inlet, outlet);
  const used = meanHeat(inlet, outlet, specificHeat);
  const rise = (outlet - inlet) as Kelvins;
  return {
    power,
    massFlow: (power / (used * rise)) as KilogramsPerSecond,
    inlet,
    outlet,
    rise,
    specificHeat: used,
    warnings: warningsOf(outlet, specificHeat),
  };
}

/** Air flow with its basis: a volume flow means nothing until it is said at what temperature and pressure. */
import { airDensity } from "../material/index.ts";
import {
  type Celsius,
  type CubicMetersPerSecond,
  checkOneOf,
  finiteResult,
  given,
  inField,
  type KilogramsPerCubicMeter,
  type KilogramsPerSecond,
  type Pascals,
  poundsPerCubicFoot,
} from "../quantity/index.ts";
import { checkScale } from "./scale.ts";

/**
 * What "standard" means in a flow: the trade has several, 7 % apart.
 *
 * - `0.075 lb/ft3`: heating and ventilating practice in the United States, 70 °F at sea level
 * - `0 °C`: normal cubic meter, 0 °C and 101325 Pa
 * - `20 °C`: 20 °C and 101325 Pa
 * @since 0.1.0
 */
export type StandardAir = "0.075 lb/ft3" | "0 °C" | "20 °C";

/**
 * Air flow with its basis. A bare number is not a flow.
 *
 * - `actual`: cubic meters as they pass the place where they were measured, with the temperature and pressure there
 * - `standard`: cubic meters the same mass would have at a named standard condition
 * - `mass`: kilograms per second
 * @since 0.1.0
 */
export type AirFlow =
  | {
      /** Measured as it passes. */
      readonly basis: "actual";
      /** Volume flow at that place, by traverse or flow hood, m³/s, more than 0. */
      readonly volumeFlow: CubicMetersPerSecond;
      /** Air temperature at that place, °C. */
      readonly temperature: Celsius;
      /** Absolute pressure at that place, Pa; by altitude where there is no barometer. */
      readonly pressure: Pascals;
    }
  | {
      /** Referred to a standard condition. */
      readonly basis: "standard";
      /** Volume flow at the standard condition, m³/s, more than 0. */
      readonly volumeFlow: CubicMetersPerSecond;
      /** Which standard condition. */
      readonly standard: StandardAir;
    }
  | {
      /** By mass. */
      readonly basis: "mass";
      /** Mass flow, kg/s, more than 0. */
      readonly massFlow: KilogramsPerSecond;
    };

const ONE_ATMOSPHERE = 101325 as Pascals;

/**
 * Density behind a standard condition: 0.075 lb/ft³ as it stands, the others by the gas law at 101325 Pa.
 * @param standard - the standard condition
 * @returns the density, kg/m³
 * @throws ElectroheatError `missing`, `unknown-name`
 * @source 0.075 lb/ft³: HVAC system design guide (United States); the others: definition (gas law)
 * @example
 * ```ts
 * [standardAirDensity("0.075 lb/ft3"), standardAirDensity("0 °C")] // => [1.201385, 1.292261]
 * ```
 * @since 0.1.0
 */
export function standardAirDensity(standard: StandardAir): KilogramsPerCubicMeter {
  checkOneOf("standard", standard, ["0.075 lb/ft3", "0 °C", "20 °C"]);
  if (standard === "0.075 lb/ft3") return poundsPerCubicFoot(0.075);
  const temperature = (standard === "0 °C" ? 0 : 20) as Celsius;
  return airDensity({ temperature, pressure: ONE_ATMOSPHERE });
}

/**
 * Mass flow behind an air flow: volume flow × density at the place and condition where the volume was counted.
 *
 * The basis must be said: 2000 cfm of oven exhaust at 400 °F is 38 % less air than 2000 cfm at 70 °F.
 * @param flow - the flow with its basis
 * @returns mass flow, kg/s
 * @throws ElectroheatError `wrong-type` for a bare number, `missing`, `unknown-name`, `not-a-number`, `out-of-range`
 * @source definition (conservation of mass)
 * @example
 * ```ts
 * airMassFlow({
 *   basis: "actual",
 *   volumeFlow: cubicFeetPerMinute(1000),
 *   temperature: fahrenheit(400),
 *   pressure: pascals(101325),
 * }) // => 0.348808
 * ```
 * @since 0.1.0
 */
export function airMassFlow(flow: AirFlow): KilogramsPerSecond {
  given(flow, "flow", "a flow with its basis: actual (with temperature and pressure), standard, or mass");
  checkOneOf("flow.basis", flow.basis, ["actual", "standard", "mass"]);
  if (flow.basis === "mass") {
    checkScale("flow.massFlow", flow.massFlow, "kg/s");
    return flow.massFlow;
  }
  checkScale("flow.volumeFlow", flow.volumeFlow, "m³/s");
  const density = inField("flow", () =>
    flow.basis === "actual" ? airDensity(flow) : standardAirDensity(flow.standard),
  );
  return (flow.volumeFlow * density) as KilogramsPerSecond;
}

/**
 * The same air as a volume flow at another place: mass flow / density there.
 * @param input.flow - the flow with its basis
 * @param input.temperature - air temperature at the other place, °C, above −273.15
 * @param input.pressure - absolute pressure there, Pa, more than 0
 * @returns actual volume flow at that place, m³/s
 * @throws ElectroheatError as for {@link airMassFlow}
 * @source definition (conservation of mass, gas law)
 * @example
 * ```ts
 * const flow: AirFlow = { basis: "standard", standard: "0.075 lb/ft3", volumeFlow: cubicFeetPerMinute(2000) };
 * const hot = actualAirFlow({ flow, temperature: fahrenheit(400), pressure: pascals(101325) });
 * toCubicFeetPerMinute(hot) // => 3251.02
 * ```
 * @since 0.1.0
 */
export function actualAirFlow(input: {
  readonly flow: AirFlow;
  readonly temperature: Celsius;
  readonly pressure: Pascals;
}): CubicMetersPerSecond {
  given(input);
  return finiteResult(airMassFlow(input.flow) / airDensity(input), "m³/s");
}

/**
 * The same air referred to a standard condition: mass flow / density of the standard.
 * @param input.flow - the flow with its basis
 * @param input.standard - the standard condition
 * @returns standard volume flow, m³/s
 * @throws ElectroheatError as for {@link airMassFlow}
 * @source definition (conservation of mass)
 * @example
 * ```ts
 * const exhaust: AirFlow = {
 *   basis: "actual", volumeFlow: cubicFeetPerMinute(1000), temperature: fahrenheit(400), pressure: pascals(101325),
 * };
 * toCubicFeetPerMinute(standardAirFlow({ flow: exhaust, standard: "0.075 lb/ft3" })) // => 615.191
 * ```
 * @since 0.1.0
 */
export function standardAirFlow(input: {
  readonly flow: AirFlow;
  readonly standard: StandardAir;
}): CubicMetersPerSecond {
  given(input);
  return finiteResult(airMassFlow(input.flow) / standardAirDensity(input.standard), "m³/s");
}

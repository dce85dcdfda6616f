/** What a change of air, volts or elements does to a heated air stream. */
import {
  type Celsius,
  given,
  type JoulesPerKilogramKelvin,
  type KilogramsPerSecond,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import type { AirFlow } from "./airFlow.ts";
import { type AirHeating, airOutlet } from "./airHeating.ts";
import { checkScale } from "./scale.ts";

/**
 * An air stream before and after a change.
 * @since 0.1.0
 */
export interface AirHeatingChange {
  /** As it runs now. */
  readonly before: AirHeating;
  /** As it would run. */
  readonly after: AirHeating;
  /** Rise after over rise before. */
  readonly riseRatio: number;
  /** What must be looked at before such a change. */
  readonly warnings: readonly Warning[];
}

/**
 * What less air, other volts or a bank out do to the outlet: rise ∝ power / flow, power ∝ volts². 20 % less air and
 * 20 % more volts together raise it by 1.8.
 *
 * The surface of the elements is another question: it does not rise in the same ratio. Nor does `powerRatio` say how the
 * power is shared: with a bank out, elements that are left may carry more than before.
 * @param input.power - heat into the air now, W, more than 0
 * @param input.flow - the flow now, with its basis
 * @param input.inlet - air temperature before the heater, °C
 * @param input.specificHeat - a fixed specific heat, J/(kg·K); left out, the mean of the table
 * @param input.flowRatio - mass flow after over before, more than 0; 1 if left out
 * @param input.voltageRatio - volts after over before, more than 0; 1 if left out
 * @param input.powerRatio - share of the elements' power that is left at equal volts, from the faulted network (2/3 with
 *   one of three equal banks out), more than 0; above 1 where elements are shorted or exchanged; 1 if left out
 * @returns both states; a caution where elements get hotter or may do so
 * @throws ElectroheatError `missing`, `wrong-type` for a flow without basis, `not-a-number`, `out-of-range`, `outside-table`
 * @source First law for a steady stream; Ohm's law for the square of the volts
 * @example
 * ```ts
 * const flow: AirFlow = { basis: "standard", standard: "0.075 lb/ft3", volumeFlow: cubicMetersPerSecond(1) };
 * const { after } = airWhatIf({
 *   power: kilowatts(30), flow, inlet: celsius(20), flowRatio: 0.8, specificHeat: btuItPerPoundFahrenheit(0.24),
 * });
 * after.outlet // => 51.0639
 * ```
 * @since 0.1.0
 */
export function airWhatIf(input: {
  readonly power: Watts;
  readonly flow: AirFlow;
  readonly inlet: Celsius;
  readonly specificHeat?: JoulesPerKilogramKelvin;
  readonly flowRatio?: number;
  readonly voltageRatio?: number;
  readonly powerRatio?: number;
}): AirHeatingChange {
  given(input);
  const { flowRatio = 1, voltageRatio = 1, powerRatio = 1, power, inlet } = input;
  checkScale("flowRatio", flowRatio);
  checkScale("voltageRatio", voltageRatio);
  checkScale("powerRatio", powerRatio);
  const fixed = input.specificHeat === undefined ? {} : { specificHeat: input.specificHeat };
  const before = airOutlet({ power, flow: input.flow, inlet, ...fixed });
  const massFlow = (before.massFlow * flowRatio) as KilogramsPerSecond;
  const changed = (power * powerRatio * voltageRatio ** 2) as Watts;
  const after = airOutlet({ power: changed, flow: { basis: "mass", massFlow }, inlet, ...fixed });
  const warnings: Warning[] = [];
  const caution = (path: string, message: string): void => {
    warnings.push({ code: "caution", path, message, source: "common practice" });
  };
  if (flowRatio < 1 || voltageRatio > 1) {
    caution(
      flowRatio < 1 ? "flowRatio" : "voltageRatio",
      "Less air or more volts make the element surfaces hotter than the outlet shows; check the minimum velocity, the overtemperature cut-out and the airflow interlock first.",
    );
  }
  if (powerRatio > 1) {
    caution(
      "powerRatio",
      "More power at equal volts: elements run hotter than the outlet shows. Find which of them carry it in the network before energizing.",
    );
  } else if (powerRatio < 1) {
    caution(
      "powerRatio",
      "Less power in all does not mean less on each element: survivors may run harder than before. Solve the faulted network for each of them.",
    );
  }
  return { before, after, riseRatio: after.rise / before.rise, warnings };
}

/** Energy and what it costs; the tariff is the user's. */
import {
  checkBetween,
  given,
  type Joules,
  type Seconds,
  toKilowattHours,
  type Watts,
} from "../quantity/index.ts";
import { checkScale, checkScaleOrZero } from "./scale.ts";

/**
 * Electric energy and its cost.
 * @since 0.1.0
 */
export interface EnergyCost {
  /** Electric energy, J. */
  readonly energy: Joules;
  /** Cost in the currency of the tariff. */
  readonly cost: number;
}

/**
 * Cost of an energy: energy in kWh × tariff.
 * @param input.energy - electric energy, J, 0 or more
 * @param input.tariff - price of one kilowatt-hour in any currency, 0 or more
 * @returns energy and cost
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * energyCost({ energy: kilojoules(4499.72), tariff: 0.075 }).cost.toFixed(4) // => "0.0937"
 * ```
 * @since 0.1.0
 */
export function energyCost(input: { readonly energy: Joules; readonly tariff: number }): EnergyCost {
  given(input);
  checkScaleOrZero("energy", input.energy, "J");
  checkScaleOrZero("tariff", input.tariff);
  return { energy: input.energy, cost: toKilowattHours(input.energy) * input.tariff };
}

/**
 * Energy and cost of running: power × time × duty / efficiency.
 * @param input.power - heat when on, W, 0 or more
 * @param input.time - running time, s, 0 or more
 * @param input.tariff - price of one kilowatt-hour in any currency, 0 or more
 * @param input.duty - mean share of the time on, 0 to 1; 1 if left out
 * @param input.efficiency - heat over electric energy, more than 0, up to 1; 1 if left out, as for resistance heating
 * @returns energy and cost
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * runningCost({ power: kilowatts(40), time: hours(8), duty: 0.5, tariff: 0.25 }).cost // => 40
 * ```
 * @since 0.1.0
 */
export function runningCost(input: {
  readonly power: Watts;
  readonly time: Seconds;
  readonly tariff: number;
  readonly duty?: number;
  readonly efficiency?: number;
}): EnergyCost {
  given(input);
  const { power, time, tariff, duty = 1, efficiency = 1 } = input;
  checkScaleOrZero("power", power, "W");
  checkScaleOrZero("time", time, "s");
  checkBetween("duty", duty, 0, 1);
  checkScale("efficiency", efficiency);
  checkBetween("efficiency", efficiency, 0, 1);
  return energyCost({ energy: ((power * time * duty) / efficiency) as Joules, tariff });
}

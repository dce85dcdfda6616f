/** Heat-up of one oven by several powers side by side. */
import { type Celsius, fail, given, givenList, type Watts } from "../quantity/index.ts";
import type { OvenPlan } from "./oven.ts";
import { type OvenHeatUp, ovenHeatUp } from "./ovenHeatUp.ts";
import { checkScale, checkScaleOrZero } from "./scale.ts";

/**
 * One way of running, among others.
 * @since 0.1.0
 */
export interface HeatUpOption extends OvenHeatUp {
  /** Name of the way of running. */
  readonly name: string;
  /** Heat into the oven, W. */
  readonly power: Watts;
  /** Power over that of the first way. */
  readonly powerRatio: number;
  /** Time over that of the first way; `null` if either never arrives. */
  readonly timeRatio: number | null;
}

/**
 * Heat-up of one oven by several powers side by side: as it was, and each way of running on with a fault. The powers come
 * from the network (`energise` of `circuit`, or a measured one); time grows faster than 1/power.
 * @param input.oven - the oven
 * @param input.powers - name and power of each way, the healthy one first, at least one
 * @param input.target - set point, °C, above ambient and start
 * @param input.start - temperature of everything at the start, °C; ambient if left out
 * @returns one entry for each power, in the order given
 * @throws ElectroheatError as for {@link ovenHeatUp}, and `missing` without powers
 * @source First law; see {@link ovenHeatUp}
 * @example
 * ```ts
 * const oven: OvenPlan = {
 *   ambient: celsius(20), lossConductance: wattsPerKelvin(40), structure: kilojoulesPerKelvin(200),
 * };
 * const powers = [{ name: "healthy", power: kilowatts(12) }, { name: "one element open", power: kilowatts(8) }];
 * heatUpOptions({ oven, powers, target: celsius(200) })[1]?.timeRatio // => 2.51294
 * ```
 * @since 0.1.0
 */
export function heatUpOptions(input: {
  readonly oven: OvenPlan;
  readonly powers: readonly { readonly name: string; readonly power: Watts }[];
  readonly target: Celsius;
  readonly start?: Celsius;
}): readonly HeatUpOption[] {
  given(input, "input", "an oven, its powers and a target");
  given(input.oven, "oven", "an oven");
  givenList(input.powers, "powers", 1);
  input.powers.forEach((one, i) => {
    given(one, `powers.${i}`, "a name and a power");
    if (typeof one.name !== "string" || one.name === "")
      fail({
        code: one.name === undefined || one.name === "" ? "missing" : "wrong-type",
        path: `powers.${i}.name`,
        expected: "a name",
        received: one.name,
      });
  });
  const { oven, powers, target, start = oven.ambient } = input;
  const first = powers[0] as (typeof powers)[0];
  checkScale("powers.0.power", first.power, "W");
  powers.forEach(({ power }, i) => {
    checkScaleOrZero(`powers.${i}.power`, power, "W");
  });
  const healthy = ovenHeatUp({ oven, power: first.power, target, start });
  return powers.map(({ name, power }) => {
    const one = ovenHeatUp({ oven, power, target, start });
    const timeRatio = one.time === "never" || healthy.time === "never" ? null : one.time / healthy.time;
    return { name, power, powerRatio: power / first.power, timeRatio, ...one };
  });
}

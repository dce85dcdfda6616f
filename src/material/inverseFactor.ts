/** From Ct back to a temperature, where that is possible at all. */
import { type Celsius, checkPositive, fail, given } from "../quantity/index.ts";
import type { AlloyDataset } from "./alloy.ts";
import type { Basis } from "./basis.ts";
import { factorTable } from "./temperatureFactor.ts";

/**
 * One stretch of temperature at which a table has the Ct asked for.
 * @since 0.1.0
 */
export interface FactorSolution {
  /** Lower end, °C; equal to `to` unless the table is level there. */
  readonly from: Celsius;
  /** Upper end, °C. */
  readonly to: Celsius;
  /** What Ct does there with rising temperature. */
  readonly slope: "rising" | "falling" | "peak" | "dip" | "level";
}

/**
 * Every temperature that a table gives for a Ct.
 *
 * - `unique`: the table is monotonic, so the one solution is the temperature
 * - `one-crossing`: one solution, but on a table that is not monotonic: another specimen may have more
 * - `several`: several solutions, or a level stretch
 * - `none`: the table never has this Ct
 * @since 0.1.0
 */
export interface FactorSolutions {
  /** How far the temperature is determined. */
  readonly outcome: "unique" | "one-crossing" | "several" | "none";
  /** From the coldest to the hottest. */
  readonly solutions: readonly FactorSolution[];
  /** Lowest Ct of the table. */
  readonly lowest: number;
  /** Highest Ct of the table. */
  readonly highest: number;
  /** Source of the table. */
  readonly basis: Basis;
}

type Slope = FactorSolution["slope"];

/** Whether values only rise or only fall. */
function isMonotonic(values: readonly number[]): boolean {
  const sign = Math.sign((values[1] ?? 0) - (values[0] as number));
  return (
    sign !== 0 && values.every((value, i) => i === 0 || Math.sign(value - (values[i - 1] as number)) === sign)
  );
}

/** What the table does on both sides of row i; at an end the only side counts. */
function slopeAt(values: readonly number[], i: number): Slope {
  const here = values[i] as number;
  const before = i > 0 ? Math.sign(here - (values[i - 1] as number)) : undefined;
  const after = i < values.length - 1 ? Math.sign((values[i + 1] as number) - here) : undefined;
  const [left, right] = [before ?? after ?? 0, after ?? before ?? 0];
  if (left >= 0 && right >= 0) return left + right === 0 ? "level" : "rising";
  if (left <= 0 && right <= 0) return "falling";
  return left > 0 ? "peak" : "dip";
}

/** All stretches at which straight lines between the rows have the value, rows that repeat it joined. */
function crossings(xs: readonly Celsius[], ys: readonly number[], value: number): FactorSolution[] {
  const found: FactorSolution[] = [];
  for (let i = 0; i < xs.length; i += 1) {
    const [x, y] = [xs[i] as Celsius, ys[i] as number];
    const last = found.at(-1);
    if (y === value) {
      if (i > 0 && ys[i - 1] === value && last !== undefined) {
        found[found.length - 1] = { from: last.from, to: x, slope: "level" };
      } else {
        found.push({ from: x, to: x, slope: slopeAt(ys, i) });
      }
    }
    const next = ys[i + 1];
    if (next !== undefined && (y - value) * (next - value) < 0) {
      const at = (x + (((xs[i + 1] as number) - x) * (value - y)) / (next - y)) as Celsius;
      found.push({ from: at, to: at, slope: next > y ? "rising" : "falling" });
    }
  }
  return found;
}

/**
 * Every temperature at which a dataset's table has the given Ct, labelled. The Ct of NiCr 80/20 and 70/30 rises to
 * a peak near 500 °C, dips and rises again, so a resistance does not tell the temperature there.
 * @param input - what is looked up
 * @param input.dataset - the alloy as one source describes it; it needs a Ct table
 * @param input.factor - hot resistance / cold resistance at 20 °C, from two ohm readings with the lead resistance
 *   taken off, 1, more than 0
 * @returns all solutions, none when the table never has this Ct
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * const found = temperaturesFromFactor({ dataset: NICR_80_20_GB, factor: 1.018 });
 * found.solutions.map((one) => `${one.from.toFixed(0)} ${one.slope}`)
 * // => ["300 rising", "600 falling", "1057 rising"]
 * ```
 * @since 0.1.0
 */
export function temperaturesFromFactor(input: {
  readonly dataset: AlloyDataset;
  readonly factor: number;
}): FactorSolutions {
  given(input);
  const { temperatures, values, basis } = factorTable(input.dataset);
  checkPositive("factor", input.factor);
  const solutions = crossings(temperatures, values, input.factor);
  const single = solutions.length === 1 && solutions[0]?.slope !== "level";
  const several = single ? (isMonotonic(values) ? "unique" : "one-crossing") : "several";
  return {
    outcome: solutions.length === 0 ? "none" : several,
    solutions,
    lowest: Math.min(...values),
    highest: Math.max(...values),
    basis,
  };
}

/**
 * The temperature of a heating wire from its Ct, for datasets whose table only rises or only falls; any other is
 * refused with what {@link temperaturesFromFactor} finds. Mind the tolerance: ±1 % in Ct of NiCr 30/20 is ±35 K
 * to ±100 K.
 * @param input - what is looked up
 * @param input.dataset - the alloy as one source describes it, with a monotonic Ct table
 * @param input.factor - hot resistance / cold resistance at 20 °C, 1, within the table
 * @returns the wire temperature in degrees Celsius (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `not-identifiable` when the table is not
 *   monotonic, `outside-table`
 * @source the dataset's own
 * @example
 * ```ts
 * temperatureFromFactor({ dataset: NICR_30_20_GB, factor: 1.125 }) // => 500
 * ```
 * @since 0.1.0
 */
export function temperatureFromFactor(input: {
  readonly dataset: AlloyDataset;
  readonly factor: number;
}): Celsius {
  given(input);
  const found = temperaturesFromFactor(input);
  const { values } = factorTable(input.dataset);
  if (!isMonotonic(values)) {
    const at = found.solutions.map(({ from, to }) => (from === to ? `${from} °C` : `${from} to ${to} °C`));
    return fail({
      code: "not-identifiable",
      path: "dataset",
      expected: `a dataset whose Ct only rises or only falls; ${input.dataset.id} has this Ct at ${at.join(", ") || "no temperature"}`,
      received: input.dataset.id,
    });
  }
  const [only] = found.solutions;
  if (only !== undefined) return only.from;
  return fail({
    code: "outside-table",
    path: "factor",
    expected: `${found.lowest} to ${found.highest} (table ${found.basis.table})`,
    received: input.factor,
  });
}

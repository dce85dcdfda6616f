/** The value of any input that gives a wanted output. */
import { checkFinite, checkOneOf, checkWhole, fail, given } from "../quantity/index.ts";
import {
  argumentFrom,
  type Calculation,
  checkCalculation,
  type NumericField,
  outputReader,
  refusalOf,
} from "./calculation.ts";
import { type Findings, findings, narrowed, type Sample, type Sampler } from "./scan.ts";

/**
 * A value of the input, with what the calculation gives there.
 * @since 0.1.0
 */
export interface SolvedValue {
  /** Value of the input. */
  readonly value: number;
  /** The output there. */
  readonly output: number;
}

/**
 * A stretch of the bracket in which the calculation gives no number.
 * @since 0.1.0
 */
export interface DomainGap {
  /** Low end, found by halving. */
  readonly low: number;
  /** High end. */
  readonly high: number;
  /** What the calculation said at one of its ends. */
  readonly reason: string;
}

/**
 * What every answer of {@link solveFor} carries.
 * @since 0.1.0
 */
export interface SolveSearch {
  /** Places where the output jumps over the wanted value without taking it; not roots. */
  readonly jumps: readonly SolvedValue[];
  /** Stretches where the calculation refuses, or gives no number. */
  readonly gaps: readonly DomainGap[];
  /** Cells the bracket was scanned in; 0 where a sign change between its ends was enough. */
  readonly cells: number;
}

/**
 * Answer of {@link solveFor}.
 * @since 0.1.0
 */
export type Solved =
  | (SolveSearch & {
      /** Roots were found. */
      readonly outcome: "found";
      /** One root, or all that were found, in rising order. */
      readonly roots: readonly [SolvedValue, ...SolvedValue[]];
    })
  | (SolveSearch & {
      /** The output is never reached in the bracket. */
      readonly outcome: "no root";
      /** The output at the low end of the bracket; `null` where there is none. */
      readonly atLow: number | null;
      /** The output at the high end. */
      readonly atHigh: number | null;
      /** The sample that came closest to the wanted value. */
      readonly closest: SolvedValue;
    })
  | (SolveSearch & {
      /** The function has no value anywhere in the bracket. */
      readonly outcome: "no value";
    });

function places(low: number, high: number, cells: number, logarithmic: boolean): readonly number[] {
  return Array.from({ length: cells + 1 }, (_, i) => {
    if (i === 0) return low;
    if (i === cells) return high;
    // By logarithms: the quotient of the ends may be beyond float64.
    if (logarithmic) return Math.exp(Math.log(low) + (Math.log(high) - Math.log(low)) * (i / cells));
    return low + (high - low) * (i / cells);
  });
}

/**
 * Solves any calculation for one of its numeric inputs: the value between `low` and `high` at which the output is `target`.
 *
 * For one root the ends are tried first: if the output passes the target between them, the place is narrowed to the last digits
 * of the double. Otherwise, and whenever `all` is asked for, the bracket is scanned in equal cells; a cell in which the output
 * passes the target holds a root, and a dip towards the target is followed to its bottom, so that a root that only touches is
 * found too. Two roots closer together than a cell may be missed: choose more `cells`. A jump over the target or a pole is not a
 * root; stretches where the calculation refuses are reported, their edges found by halving.
 * @param input.calculation - the calculation; its result a number, or an object with the output in it
 * @param input.input - name of the field to solve for
 * @param input.fixed - the other fields of the argument
 * @param input.target - the output wanted, in its unit
 * @param input.output - name of the output, dots leading into records; left out, the result itself
 * @param input.low - low end of the bracket, in the unit of the input
 * @param input.high - high end, above `low`
 * @param input.all - every root in the bracket; false if left out
 * @param input.cells - cells of the scan, 1 to 100 000; 256 if left out
 * @param input.spacing - `"linear"` (the default), or `"logarithmic"` for a bracket over several powers of ten, `low` above 0
 * @returns `found` with the roots, `no root` with the output at both ends and the closest sample, or `no value` when the
 *   calculation gives no number anywhere; each with jumps and gaps
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`, `unknown-name`, `unknown-field`,
 *   `duplicate`, `wrong-type` for the question itself; never for what the calculation throws
 * @source numeric.bracketedRoot on each cell
 * @example
 * ```ts
 * solveFor({
 *   calculation: powerFromVoltageAndResistance,
 *   input: "resistance",
 *   fixed: { voltage: volts(480) },
 *   target: 18_000,
 *   low: 1,
 *   high: 100,
 * }) // => { outcome: "found", roots: [{ value: 12.8, output: 18000 }], jumps: [], gaps: [], cells: 0 }
 * ```
 * @since 0.1.0
 */
export function solveFor<I extends object>(input: {
  readonly calculation: Calculation<I>;
  readonly input: NumericField<NoInfer<I>>;
  readonly fixed?: Partial<NoInfer<I>>;
  readonly target: number;
  readonly output?: string;
  readonly low: number;
  readonly high: number;
  readonly all?: boolean;
  readonly cells?: number;
  readonly spacing?: "linear" | "logarithmic";
}): Solved {
  const { calculation, input: name, target, output, low, high, all = false, cells = 256 } = given(input);
  const { spacing = "linear" } = input;
  checkCalculation(calculation);
  if (typeof name !== "string" || name === "") {
    fail({ code: "missing", path: "input", expected: "the name of a field", received: name });
  }
  checkFinite("target", target);
  checkFinite("low", low);
  checkFinite("high", high);
  if (!(low < high && high - low < Number.POSITIVE_INFINITY)) {
    fail({ code: "inconsistent", path: "high", expected: `more than low, ${low}`, received: high });
  }
  if (typeof all !== "boolean") {
    fail({ code: "wrong-type", path: "all", expected: "true or false", received: all });
  }
  checkWhole("cells", cells, 1, 100_000);
  checkOneOf("spacing", spacing, ["linear", "logarithmic"]);
  if (spacing === "logarithmic" && !(low > 0)) {
    fail({
      code: "inconsistent",
      path: "low",
      expected: "more than 0 for logarithmic spacing",
      received: low,
    });
  }
  const base = argumentFrom(input.fixed, [name], "input");
  const read = outputReader(output ?? "result");
  const sample: Sampler = (x): Sample => {
    try {
      const value = read(calculation({ ...base, [name]: x } as I));
      if (typeof value === "number" && Number.isFinite(value)) {
        return { x, y: value - target, reason: undefined };
      }
      const what = typeof value === "string" ? JSON.stringify(value) : String(value);
      return { x, y: undefined, reason: `${output ?? "the result"} is ${what}, not a number` };
    } catch (error) {
      return { x, y: undefined, reason: refusalOf(error) };
    }
  };
  const solved = ({ x, y }: { readonly x: number; readonly y: number }): SolvedValue => ({
    value: x,
    output: y + target + 0,
  });
  const first = sample(low);
  const last = sample(high);
  if (!all && first.y !== undefined && last.y !== undefined) {
    const none = { jumps: [], gaps: [], cells: 0 };
    for (const { x, y } of [first, last]) {
      if (y === 0) return { outcome: "found", roots: [solved({ x, y })], ...none };
    }
    if (first.y > 0 !== last.y > 0) {
      const found = narrowed(sample, { x: low, y: first.y }, { x: high, y: last.y });
      if ("kind" in found && found.kind === "root") {
        return { outcome: "found", roots: [solved(found.at)], ...none };
      }
    }
  }
  const xs = places(low, high, cells, spacing === "logarithmic");
  const samples = xs.map((x, i) => (i === 0 ? first : i === cells ? last : sample(x)));
  return answer(findings(sample, samples), samples, all, cells, solved);
}

function answer(
  found: Findings,
  samples: readonly Sample[],
  all: boolean,
  cells: number,
  solved: (point: { readonly x: number; readonly y: number }) => SolvedValue,
): Solved {
  const search: SolveSearch = { jumps: found.jumps.map(solved), gaps: found.holes, cells };
  const roots = (all ? found.roots : found.roots.slice(0, 1)).map(solved);
  const [root, ...others] = roots;
  if (root !== undefined) return { outcome: "found", roots: [root, ...others], ...search };
  const points = samples.flatMap(({ x, y }) => (y === undefined ? [] : [{ x, y }]));
  const [start] = points;
  if (start === undefined) return { outcome: "no value", ...search };
  const closest = points.reduce(
    (best, point) => (Math.abs(point.y) < Math.abs(best.y) ? point : best),
    start,
  );
  const end = (sample: Sample | undefined): number | null =>
    sample?.y === undefined ? null : solved({ x: sample.x, y: sample.y }).output;
  return {
    outcome: "no root",
    atLow: end(samples[0]),
    atHigh: end(samples.at(-1)),
    closest: solved(closest),
    ...search,
  };
}

/** Propagation of distributions through any calculation by the Monte Carlo method (JCGM 101). */
import { checkWhole, fail, given } from "../quantity/index.ts";
import {
  argumentFrom,
  type Calculation,
  checkCalculation,
  type NumericField,
  outputNames,
  outputReader,
  refusalOf,
} from "./calculation.ts";
import { type Correlation, fullCorrelation } from "./correlation.ts";
import { checkCoverage } from "./coverage.ts";
import { drawOf } from "./draw.ts";
import { prepareInputs, type UncertainInput } from "./inputs.ts";
import { type MonteCarloOutput, numericalTolerance, summary } from "./interval.ts";
import { seededGenerator } from "./random.ts";

/**
 * Result of {@link monteCarlo}.
 * @since 0.1.0
 */
export interface MonteCarloResult {
  /** One summary for each output. */
  readonly outputs: readonly MonteCarloOutput[];
  /** Trials made. */
  readonly trials: number;
  /** Seed they were made with. */
  readonly seed: number;
  /** `fixed`: as many trials as asked for; `stabilized`: stopped by the adaptive rule; `trial limit`: that rule was not met. */
  readonly stopped: "fixed" | "stabilized" | "trial limit";
}

const MOST_TRIALS = 20_000_000;

/** Trials of which so many lie outside the interval; a hair less, because 10/(1 − 0.9) in float64 is above the 100 it is. */
const trialsFor = (outside: number, coverageProbability: number): number =>
  Math.ceil((outside / (1 - coverageProbability)) * (1 - 1e-12));

/** Standard deviation of the mean of block results. */
function scatter(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
}

/** Whether every result of every output has settled to the digits asked for. */
function hasSettled(
  blocks: readonly (readonly MonteCarloOutput[])[],
  uncertainties: readonly number[],
  digits: number,
): boolean {
  return uncertainties.every((u, k) => {
    const rows = blocks.map((block) => block[k] as MonteCarloOutput);
    const tolerance = numericalTolerance(u, digits);
    return [
      rows.map(({ estimate }) => estimate),
      rows.map(({ standardUncertainty }) => standardUncertainty),
      rows.map(({ symmetric }) => symmetric.low),
      rows.map(({ symmetric }) => symmetric.high),
      rows.map(({ shortest }) => shortest.low),
      rows.map(({ shortest }) => shortest.high),
    ].every((values) => 2 * scatter(values) <= tolerance);
  });
}

/** All blocks of one output in one array. */
function joined(blocks: readonly (readonly Float64Array[])[], k: number): Float64Array {
  const parts = blocks.map((block) => block[k] as Float64Array);
  const all = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/**
 * Propagation of distributions by the Monte Carlo method: draws every input from its distribution, calculates, and reads
 * estimate, standard uncertainty and coverage intervals from the model values.
 *
 * Needs no linear model and no normal result. Random numbers are the library's own (xoshiro128** filled by SplitMix64), so
 * one seed gives one result. Correlated inputs are drawn jointly normal; a `t` is drawn with its own width, wider than its
 * standard uncertainty. The calculation is handed one object that is written anew for each trial and must not keep it. A
 * draw that the calculation refuses stops the run: leaving it out would narrow the result unseen.
 * @param input.calculation - the measurement model
 * @param input.inputs - the uncertain inputs, by the name of their field
 * @param input.fixed - the other fields of the argument, taken as exact
 * @param input.outputs - names of outputs, dots leading into records; left out, the bare number or every field that is one
 * @param input.correlation - correlation coefficients of normal inputs; left out, independent
 * @param input.seed - whole number of 0 or more that the random numbers start from
 * @param input.trials - number of trials, 100 to 20 000 000, and such that ten of them lie outside the interval; 1 000 000 if
 *   left out
 * @param input.coverageProbability - of both intervals, above 0 and below 1; 0.95 if left out
 * @param input.significantDigits - 1 or 2: go on in blocks until estimate, uncertainty and all four ends are settled to so many
 *   digits of the uncertainty, at most `trials`; left out, exactly `trials`
 * @returns a summary of each output, the trials made and why they stopped
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` (also for draws outside the domain of the calculation),
 *   `unknown-name`, `unknown-field`, `duplicate`, `inconsistent`, `wrong-type`
 * @source JCGM 101:2008, 5.9, 6.4, 7.2 to 7.7; 7.9 (adaptive)
 * @example
 * ```ts
 * monteCarlo({
 *   calculation: ({ voltage, current }: { voltage: number; current: number }) => voltage * current,
 *   inputs: {
 *     voltage: { distribution: "rectangular", estimate: 480, halfWidth: 2.4 },
 *     current: { distribution: "rectangular", estimate: 37.5, halfWidth: 0.75 },
 *   },
 *   seed: 1,
 *   trials: 100_000,
 * }).outputs[0]?.standardUncertainty // => 214
 * ```
 * @since 0.1.0
 */
export function monteCarlo<I extends object>(input: {
  readonly calculation: Calculation<I>;
  readonly inputs: { readonly [K in NumericField<NoInfer<I>>]?: UncertainInput };
  readonly fixed?: Partial<NoInfer<I>>;
  readonly outputs?: readonly string[];
  readonly correlation?: Correlation;
  readonly seed: number;
  readonly trials?: number;
  readonly coverageProbability?: number;
  readonly significantDigits?: 1 | 2;
}): MonteCarloResult {
  const {
    calculation,
    seed,
    trials = 1_000_000,
    coverageProbability = 0.95,
    significantDigits,
  } = given(input);
  checkCalculation(calculation);
  checkCoverage(coverageProbability);
  const random = seededGenerator(seed);
  checkWhole("trials", trials, 100, MOST_TRIALS);
  const least = trialsFor(10, coverageProbability);
  if (trials < least) {
    const expected = `at least ${least} for a coverage probability of ${coverageProbability}`;
    fail({ code: "inconsistent", path: "trials", expected, received: trials });
  }
  if (significantDigits !== undefined) checkWhole("significantDigits", significantDigits, 1, 2);
  const inputs = prepareInputs(input.inputs);
  const inputNames = inputs.map(({ name }) => name);
  const full = fullCorrelation(input.correlation, inputNames);
  const draw = drawOf(inputs, full);
  const argument = argumentFrom(input.fixed, inputNames, "inputs");
  const values = new Float64Array(inputs.length);
  let names: readonly string[] | undefined;
  let readers: readonly ((result: unknown) => unknown)[] = [];

  const refuse = (trial: number, reason: string): never =>
    fail({
      code: "out-of-range",
      path: "inputs",
      expected: `distributions inside the domain of the calculation; trial ${trial} drew ${inputNames.map((name, i) => `${name} = ${values[i]}`).join(", ")}: ${reason}`,
      received: values[0],
    });
  const block = (count: number, done: number): Float64Array[] => {
    let columns: Float64Array[] | undefined;
    for (let trial = 0; trial < count; trial += 1) {
      draw(random, values);
      for (let i = 0; i < values.length; i += 1) argument[inputNames[i] as string] = values[i];
      let result: unknown;
      try {
        result = calculation(argument as I);
      } catch (error) {
        return refuse(done + trial + 1, refusalOf(error));
      }
      if (columns === undefined) {
        if (names === undefined) {
          names = outputNames(result, input.outputs);
          readers = names.map(outputReader);
        }
        columns = names.map(() => new Float64Array(count));
      }
      for (let k = 0; k < readers.length; k += 1) {
        const value = readers[k]?.(result);
        if (typeof value !== "number" || !Number.isFinite(value)) {
          refuse(done + trial + 1, `${names?.[k]} is ${String(value)}, not a finite number`);
        }
        (columns[k] as Float64Array)[trial] = value as number;
      }
    }
    return columns as Float64Array[];
  };
  const summaries = (columns: readonly Float64Array[]): readonly MonteCarloOutput[] =>
    columns.map((column, k) => summary(names?.[k] as string, column, coverageProbability));

  if (significantDigits === undefined) {
    return { outputs: summaries(block(trials, 0)), trials, seed, stopped: "fixed" };
  }
  const size = Math.min(trials, Math.max(10_000, trialsFor(100, coverageProbability)));
  const blocks: Float64Array[][] = [];
  const found: (readonly MonteCarloOutput[])[] = [];
  let done = 0;
  let settled = false;
  while (!settled && done + size <= trials) {
    const columns = block(size, done);
    done += size;
    blocks.push(columns);
    found.push(summaries(columns));
    if (found.length >= 2) {
      const last = found.at(-1) as readonly MonteCarloOutput[];
      // The uncertainty of all trials so far: the mean of equal blocks, as far as the tolerance needs it.
      const spread = last.map((_, k) =>
        Math.sqrt(
          found.reduce((sum, one) => sum + (one[k] as MonteCarloOutput).standardUncertainty ** 2, 0) /
            found.length,
        ),
      );
      settled = hasSettled(found, spread, significantDigits);
    }
  }
  const all = (blocks[0] as Float64Array[]).map((_, k) => joined(blocks, k));
  return { outputs: summaries(all), trials: done, seed, stopped: settled ? "stabilized" : "trial limit" };
}

/** Input quantities of a measurement: estimate, distribution and standard uncertainty, by readings or by judgement. */

import type { DegreesOfFreedom } from "../numeric/index.ts";
import {
  checkBetween,
  checkFinite,
  checkNonNegative,
  checkOneOf,
  checkPositive,
  fail,
  given,
} from "../quantity/index.ts";
import type { Correlation } from "./correlation.ts";
import { coverageFactor } from "./coverage.ts";

/**
 * An input known to a standard uncertainty: normal, or Student's t about a mean of few readings.
 * @since 0.1.0
 */
export interface SpreadInput {
  /** `"normal"`, or `"t"` for the mean of n readings (then `degreesOfFreedom` is n − 1). */
  readonly distribution: "normal" | "t";
  /** Input estimate, in the unit of the field. */
  readonly estimate: number;
  /** Standard uncertainty of the estimate, same unit (K for a temperature), 0 or more. For `t`, s/√n. */
  readonly standardUncertainty: number;
  /** Degrees of freedom of the standard uncertainty, 1 or more; `"infinite"` if left out. A `t` needs it. */
  readonly degreesOfFreedom?: DegreesOfFreedom;
}

/**
 * An input known to lie within limits: what a ± figure, a resolution or a cycling temperature says.
 * @since 0.1.0
 */
export interface BoundedInput {
  /** `"rectangular"` (anything within equally likely), `"triangular"` (the middle likelier), `"U-shaped"` (the ends). */
  readonly distribution: "rectangular" | "triangular" | "U-shaped";
  /** Input estimate: the middle of the limits, in the unit of the field. */
  readonly estimate: number;
  /** Half of the distance of the limits, same unit (K for a temperature), 0 or more. */
  readonly halfWidth: number;
  /** Degrees of freedom, where the limits themselves are doubted; `"infinite"` if left out. */
  readonly degreesOfFreedom?: DegreesOfFreedom;
}

/**
 * An input quantity of a measurement model.
 * @since 0.1.0
 */
export type UncertainInput = SpreadInput | BoundedInput;

const DISTRIBUTIONS = ["normal", "t", "rectangular", "triangular", "U-shaped"] as const;

/** An input, checked, with its standard uncertainty worked out. */
export interface PreparedInput {
  readonly name: string;
  readonly distribution: UncertainInput["distribution"];
  readonly estimate: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
}

/** Half-width over standard uncertainty. */
export const BOUNDED_DIVISORS: Readonly<Record<BoundedInput["distribution"], number>> = {
  rectangular: 1.7320508075688772,
  triangular: 2.449489742783178,
  "U-shaped": Math.SQRT2,
};

function checkDegrees(path: string, value: DegreesOfFreedom): void {
  if (value === "infinite") return;
  if (typeof value === "string") {
    fail({ code: "wrong-type", path, expected: 'a number of 1 or more, or "infinite"', received: value });
  }
  checkFinite(path, value);
  if (!(value >= 1)) {
    fail({ code: "out-of-range", path, expected: '1 or more, or "infinite"', received: value });
  }
}

function prepare(name: string, input: UncertainInput): PreparedInput {
  const path = `inputs.${name}`;
  given(input, path);
  const distribution = checkOneOf(`${path}.distribution`, input.distribution, DISTRIBUTIONS);
  const { estimate, degreesOfFreedom } = input;
  checkFinite(`${path}.estimate`, estimate);
  if (degreesOfFreedom !== undefined) checkDegrees(`${path}.degreesOfFreedom`, degreesOfFreedom);
  const common = { name, distribution, estimate, degreesOfFreedom: degreesOfFreedom ?? "infinite" } as const;
  if ("halfWidth" in input) {
    if (distribution === "normal" || distribution === "t") {
      const expected = `standardUncertainty: a ${distribution} distribution has no limits`;
      fail({ code: "unknown-field", path: `${path}.halfWidth`, expected, received: input.halfWidth });
    }
    checkNonNegative(`${path}.halfWidth`, input.halfWidth);
    return { ...common, standardUncertainty: input.halfWidth / BOUNDED_DIVISORS[input.distribution] };
  }
  if (distribution !== "normal" && distribution !== "t") {
    fail({ code: "missing", path: `${path}.halfWidth`, expected: "half of the width", received: undefined });
  }
  checkNonNegative(`${path}.standardUncertainty`, input.standardUncertainty);
  if (distribution === "t" && (degreesOfFreedom === undefined || degreesOfFreedom === "infinite")) {
    fail({
      code: "missing",
      path: `${path}.degreesOfFreedom`,
      expected: "a number: readings less 1",
      received: degreesOfFreedom,
    });
  }
  return { ...common, standardUncertainty: input.standardUncertainty };
}

/** Checks every input of a model; at least one. */
export function prepareInputs(inputs: unknown): readonly PreparedInput[] {
  const found = Object.entries(given(inputs as Record<string, UncertainInput>, "inputs")).flatMap(
    // A field left undefined is left out.
    ([name, input]) => (input === undefined ? [] : [prepare(name, input)]),
  );
  if (found.length > 0) return found;
  return fail({
    code: "missing",
    path: "inputs",
    expected: "at least one uncertain input",
    received: undefined,
  });
}

function meanOf(path: string, readings: readonly number[]): number {
  if (!Array.isArray(readings)) {
    fail({ code: "missing", path, expected: "a list of readings", received: readings });
  }
  if (readings.length < 2) {
    fail({ code: "out-of-range", path, expected: "two readings or more", received: readings.length });
  }
  readings.forEach((reading, i) => {
    checkFinite(`${path}.${i}`, reading);
  });
  // About the first reading, so that digits common to all do not eat those that differ.
  const first = readings[0] as number;
  return first + readings.reduce((sum, reading) => sum + (reading - first), 0) / readings.length;
}

/**
 * Repeated readings of one quantity as an input (Type A evaluation): mean, s/√n and n − 1 degrees of freedom.
 * @param readings - independent readings under the same conditions, in one unit, two or more
 * @returns the input, with distribution `t`
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source JCGM 100:2008 (GUM), 4.2; JCGM 101:2008, 6.4.9
 * @example
 * ```ts
 * inputFromReadings([7.62, 7.65, 7.68])
 * // => { distribution: "t", estimate: 7.65, standardUncertainty: 0.01732, degreesOfFreedom: 2 }
 * ```
 * @since 0.1.0
 */
export function inputFromReadings(readings: readonly number[]): SpreadInput {
  const estimate = meanOf("readings", readings);
  const squares = readings.reduce((sum, reading) => sum + (reading - estimate) ** 2, 0);
  const n = readings.length;
  return {
    distribution: "t",
    estimate,
    standardUncertainty: Math.sqrt(squares / (n - 1) / n),
    degreesOfFreedom: n - 1,
  };
}

/**
 * Inputs read together, with the correlations that their readings show.
 * @since 0.1.0
 */
export interface SimultaneousInputs {
  /** One input for each quantity, by its name. */
  readonly inputs: Readonly<Record<string, SpreadInput>>;
  /** Correlation coefficients of the means. */
  readonly correlation: Correlation;
}

/**
 * Readings taken together in n sets, as inputs with their correlation (Type A evaluation).
 *
 * u(x) = s/√n; r(x, y) = Σ(x − x̄)(y − ȳ)/√(Σ(x − x̄)²·Σ(y − ȳ)²). A quantity that never changed is correlated with nothing.
 * @param readings - lists of readings by the name of the field they belong to, all of one length, two or more; the i-th of
 *   each list were taken together
 * @returns inputs and correlation, as `uncertaintyBudget` takes them
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source JCGM 100:2008 (GUM), 5.2.3 equation (17), and H.2
 * @example
 * ```ts
 * inputsFromSimultaneousReadings({ V: [5.007, 4.994, 5.005], I: [19.663, 19.639, 19.64] }).correlation
 * // => { inputs: ["V", "I"], coefficients: [[1, 0.647], [0.647, 1]] }
 * ```
 * @since 0.1.0
 */
export function inputsFromSimultaneousReadings(
  readings: Readonly<Record<string, readonly number[]>>,
): SimultaneousInputs {
  const names = Object.keys(given(readings, "readings"));
  if (names.length === 0) {
    fail({
      code: "missing",
      path: "readings",
      expected: "at least one list of readings",
      received: undefined,
    });
  }
  const rows = names.map((name) => {
    const mean = meanOf(`readings.${name}`, readings[name] as readonly number[]);
    return (readings[name] as readonly number[]).map((reading) => reading - mean);
  });
  const n = (rows[0] as readonly number[]).length;
  const odd = names.findIndex((_, i) => rows[i]?.length !== n);
  if (odd >= 0) {
    const path = `readings.${names[odd]}`;
    fail({
      code: "inconsistent",
      path,
      expected: `${n} readings, like ${names[0]}`,
      received: rows[odd]?.length,
    });
  }
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);
  const lengths = rows.map((row) => Math.sqrt(dot(row, row)));
  const coefficients = rows.map((a, i) =>
    rows.map((b, j) => {
      if (i === j) return 1;
      const scale = (lengths[i] as number) * (lengths[j] as number);
      return scale === 0 ? 0 : Math.min(1, Math.max(-1, dot(a, b) / scale)) + 0;
    }),
  );
  const inputs = Object.fromEntries(
    names.map((name) => [name, inputFromReadings(readings[name] as readonly number[])]),
  );
  return { inputs, correlation: { inputs: names, coefficients } };
}

/**
 * A calibration certificate's expanded uncertainty as an input (Type B evaluation): u = expandedUncertainty/k.
 *
 * k is `coverageFactor`, or Student's t of `coverageProbability` and `degreesOfFreedom`.
 * @param input.estimate - value stated, in the unit of the field
 * @param input.expandedUncertainty - the ± figure stated, same unit, 0 or more
 * @param input.coverageFactor - k as stated, more than 0
 * @param input.coverageProbability - level of confidence as stated, in place of k, above 0 and below 1
 * @param input.degreesOfFreedom - as stated; `"infinite"` if left out
 * @returns the input, with a normal distribution
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` for both or neither of k and level
 * @source JCGM 100:2008 (GUM), 4.3.3, 4.3.4 and G.3.2
 * @example
 * ```ts
 * inputFromCertificate({ estimate: 10, expandedUncertainty: 0.02, coverageFactor: 2 }).standardUncertainty // => 0.01
 * ```
 * @since 0.1.0
 */
export function inputFromCertificate(input: {
  readonly estimate: number;
  readonly expandedUncertainty: number;
  readonly coverageFactor?: number;
  readonly coverageProbability?: number;
  readonly degreesOfFreedom?: DegreesOfFreedom;
}): SpreadInput {
  const { estimate, expandedUncertainty, coverageFactor: stated, coverageProbability } = given(input);
  const degreesOfFreedom = input.degreesOfFreedom ?? "infinite";
  checkFinite("estimate", estimate);
  checkNonNegative("expandedUncertainty", expandedUncertainty);
  checkDegrees("degreesOfFreedom", degreesOfFreedom);
  if ((stated === undefined) === (coverageProbability === undefined)) {
    fail({
      code: stated === undefined ? "missing" : "inconsistent",
      path: "coverageFactor",
      expected: "either coverageFactor or coverageProbability",
      received: stated,
    });
  }
  if (stated !== undefined) {
    checkPositive("coverageFactor", stated);
    checkBetween("coverageFactor", stated, 0, 1e6);
  }
  const k =
    stated ?? coverageFactor({ coverageProbability: coverageProbability as number, degreesOfFreedom });
  return { distribution: "normal", estimate, standardUncertainty: expandedUncertainty / k, degreesOfFreedom };
}

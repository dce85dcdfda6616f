/** Whether first order was good enough, judged by Monte Carlo (JCGM 101, clause 8). */
import { checkFinite, checkNonNegative, checkWhole, fail, given } from "../quantity/index.ts";
import { numericalTolerance } from "./interval.ts";

/**
 * Result of {@link validateFirstOrder}.
 * @since 0.1.0
 */
export interface FirstOrderValidation {
  /** Both ends agree within the tolerance. */
  readonly validated: boolean;
  /** Numerical tolerance of the standard uncertainty of first order, in the unit of the output. */
  readonly tolerance: number;
  /** Distance of the low ends. */
  readonly lowDifference: number;
  /** Distance of the high ends. */
  readonly highDifference: number;
}

/**
 * Compares the coverage interval of first order with that of a Monte Carlo run: d = |end − end| ≤ ½·10^l at both ends, where the
 * standard uncertainty is c·10^l with c of `significantDigits` digits.
 *
 * The Monte Carlo run should itself be settled to a fifth of that: use a million trials, or two significant digits there and one
 * here.
 * @param input.firstOrder - an output of `uncertaintyBudget`
 * @param input.monteCarlo - the same output of `monteCarlo`, at the same coverage probability
 * @param input.significantDigits - digits of the standard uncertainty that count, 1 or 2; 2 if left out
 * @param input.interval - which interval of the run to compare with, `symmetric` (the default) or `shortest`
 * @returns the verdict, the tolerance and both distances
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` for different coverage probabilities or
 *   outputs
 * @source JCGM 101:2008, 8.1 and 7.9.2
 * @example
 * ```ts
 * validateFirstOrder({
 *   firstOrder: { output: "result", standardUncertainty: 2, coverageProbability: 0.95, low: -3.92, high: 3.92 },
 *   monteCarlo: { output: "result", coverageProbability: 0.95, symmetric: { low: -3.88, high: 3.88 } },
 * })
 * // => { validated: true, tolerance: 0.05, lowDifference: 0.04, highDifference: 0.04 }
 * ```
 * @since 0.1.0
 */
export function validateFirstOrder(input: {
  readonly firstOrder: {
    readonly output: string;
    readonly standardUncertainty: number;
    readonly coverageProbability: number;
    readonly low: number;
    readonly high: number;
  };
  readonly monteCarlo: {
    readonly output: string;
    readonly coverageProbability: number;
    readonly symmetric?: { readonly low: number; readonly high: number };
    readonly shortest?: { readonly low: number; readonly high: number };
  };
  readonly significantDigits?: 1 | 2;
  readonly interval?: "symmetric" | "shortest";
}): FirstOrderValidation {
  const { significantDigits = 2, interval = "symmetric" } = given(input);
  const firstOrder = given(input.firstOrder, "firstOrder");
  const monteCarlo = given(input.monteCarlo, "monteCarlo");
  checkWhole("significantDigits", significantDigits, 1, 2);
  if (interval !== "symmetric" && interval !== "shortest") {
    fail({ code: "unknown-name", path: "interval", expected: "symmetric or shortest", received: interval });
  }
  for (const field of ["output", "coverageProbability"] as const) {
    if (firstOrder[field] !== monteCarlo[field]) {
      const expected = `the same as firstOrder, ${firstOrder[field]}`;
      fail({ code: "inconsistent", path: `monteCarlo.${field}`, expected, received: monteCarlo[field] });
    }
  }
  checkNonNegative("firstOrder.standardUncertainty", firstOrder.standardUncertainty);
  checkFinite("firstOrder.low", firstOrder.low);
  checkFinite("firstOrder.high", firstOrder.high);
  const ends = given(monteCarlo[interval] as { low: number; high: number }, `monteCarlo.${interval}`);
  checkFinite(`monteCarlo.${interval}.low`, ends.low);
  checkFinite(`monteCarlo.${interval}.high`, ends.high);
  const tolerance = numericalTolerance(firstOrder.standardUncertainty, significantDigits);
  const lowDifference = Math.abs(firstOrder.low - ends.low);
  const highDifference = Math.abs(firstOrder.high - ends.high);
  return {
    validated: lowDifference <= tolerance && highDifference <= tolerance,
    tolerance,
    lowDifference,
    highDifference,
  };
}

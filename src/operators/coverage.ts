/** From a combined standard uncertainty to an interval: effective degrees of freedom and coverage factor. */
import { type DegreesOfFreedom, studentQuantile } from "../numeric/index.ts";
import { checkFinite, checkNonNegative, fail, given } from "../quantity/index.ts";

/** Refuses a coverage probability that no finite interval has. */
export function checkCoverage(coverageProbability: number): void {
  checkFinite("coverageProbability", coverageProbability);
  if (coverageProbability > 0 && coverageProbability < 1) return;
  fail({
    code: "out-of-range",
    path: "coverageProbability",
    expected: "above 0, below 1",
    received: coverageProbability,
  });
}

/**
 * Coverage factor for an interval y ± k·u: Student's t that holds `coverageProbability` between −t and +t.
 * @param input.coverageProbability - level of confidence, above 0 and below 1 (0.95)
 * @param input.degreesOfFreedom - effective degrees of freedom, 0.1 or more, or `"infinite"` for the normal distribution
 * @returns k
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source JCGM 100:2008 (GUM), G.3.2 and Table G.2
 * @example
 * ```ts
 * coverageFactor({ coverageProbability: 0.99, degreesOfFreedom: 16 }) // => 2.92
 * ```
 * @since 0.1.0
 */
export function coverageFactor(input: {
  readonly coverageProbability: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
}): number {
  const { coverageProbability, degreesOfFreedom } = given(input);
  checkCoverage(coverageProbability);
  // From the lower tail, which keeps its digits near a probability of 1.
  return -studentQuantile({ probability: (1 - coverageProbability) / 2, degreesOfFreedom });
}

/**
 * One part of a combined standard uncertainty.
 * @since 0.1.0
 */
export interface UncertaintyPart {
  /** |c|·u(x): the part it has in the standard uncertainty of the result, 0 or more. */
  readonly contribution: number;
  /** Degrees of freedom of that standard uncertainty, more than 0. */
  readonly degreesOfFreedom: DegreesOfFreedom;
}

/**
 * Effective degrees of freedom of a combined standard uncertainty: ν = u⁴/Σ(contribution⁴/degreesOfFreedom), u² = Σ contribution²
 * (Welch-Satterthwaite).
 *
 * For independent parts. Inputs read together count as one part with the degrees of freedom of the readings.
 * @param input.parts - contributions and their degrees of freedom, at least one
 * @returns ν, not rounded, or `"infinite"`
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source JCGM 100:2008 (GUM), G.4.1 equation (G.2b)
 * @example
 * ```ts
 * effectiveDegreesOfFreedom({ parts: [
 *   { contribution: 0.57, degreesOfFreedom: 9 },
 *   { contribution: 0.25, degreesOfFreedom: "infinite" },
 * ] }) // => 12.8
 * ```
 * @since 0.1.0
 */
export function effectiveDegreesOfFreedom(input: {
  readonly parts: readonly UncertaintyPart[];
}): DegreesOfFreedom {
  const { parts } = given(input);
  if (!Array.isArray(parts) || parts.length === 0) {
    fail({ code: "missing", path: "parts", expected: "a list of at least one part", received: parts });
  }
  let largest = 0;
  parts.forEach((part: UncertaintyPart, i) => {
    const { contribution, degreesOfFreedom } = given(part, `parts.${i}`);
    checkNonNegative(`parts.${i}.contribution`, contribution);
    if (degreesOfFreedom !== "infinite") {
      checkFinite(`parts.${i}.degreesOfFreedom`, degreesOfFreedom);
      if (!(degreesOfFreedom > 0)) {
        const path = `parts.${i}.degreesOfFreedom`;
        fail({ code: "out-of-range", path, expected: "more than 0", received: degreesOfFreedom });
      }
    }
    largest = Math.max(largest, contribution);
  });
  if (largest === 0) return "infinite";
  // Over the largest: fourth powers leave float64 early.
  let squares = 0;
  let fourths = 0;
  for (const { contribution, degreesOfFreedom } of parts) {
    const square = (contribution / largest) ** 2;
    squares += square;
    if (degreesOfFreedom !== "infinite") fourths += (square * square) / degreesOfFreedom;
  }
  const nu = (squares * squares) / fourths;
  return Number.isFinite(nu) ? nu : "infinite";
}

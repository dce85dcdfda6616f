/** Student's t-distribution, with any number of degrees of freedom: whole, fractional or without limit. */
import { checkFinite, fail, given } from "../quantity/index.ts";
import { bracketedRoot } from "./bracketedRoot.ts";
import { incompleteBetaRatio } from "./incompleteBeta.ts";
import { normalCumulative, normalQuantile } from "./normal.ts";

/**
 * Degrees of freedom of a standard uncertainty: a number, or `"infinite"` where the uncertainty itself is taken as
 * exactly known. The word, because JSON has no infinity.
 * @since 0.1.0
 */
export type DegreesOfFreedom = number | "infinite";

/** From here on the series in 1/ν is good to the last digits, for deviates below 10. */
const SERIES_FROM = 1e5;

/** ln of the largest t whose square float64 holds with room to spare. */
const MOST_LOG = 345;

function checkDegrees(degreesOfFreedom: DegreesOfFreedom): void {
  if (degreesOfFreedom === "infinite") return;
  checkFinite("degreesOfFreedom", degreesOfFreedom);
  if (!(degreesOfFreedom >= 0.1)) {
    fail({
      code: "out-of-range",
      path: "degreesOfFreedom",
      expected: 'at least 0.1, or "infinite"',
      received: degreesOfFreedom,
    });
  }
}

/** P(T > t) for t of 0 or more: ½·I_x(ν/2, ½) with x = ν/(ν + t²). */
function upperTail(t: number, nu: number): number {
  // As ratios: t² may be beyond float64.
  const x = 1 / (1 + (t / nu) * t);
  const y = 1 / (1 + nu / t / t);
  return incompleteBetaRatio(x, y, nu / 2, 0.5) / 2;
}

/** t from the normal deviate z, as a series in 1/ν. */
function fromNormal(z: number, nu: number): number {
  const s = z * z;
  const first = (z * (s + 1)) / 4;
  const second = (z * ((5 * s + 16) * s + 3)) / 96;
  const third = (z * (((3 * s + 19) * s + 17) * s - 15)) / 384;
  return z + (first + (second + third / nu) / nu) / nu;
}

/** Φ^−1 of the same probability, as a series in 1/ν: what turns a t of many degrees of freedom into a deviate. */
function toNormal(t: number, nu: number): number {
  const s = t * t;
  const first = (t * (s + 1)) / 4;
  const second = (t * ((13 * s + 8) * s + 3)) / 96;
  const third = (t * (((35 * s + 19) * s + 1) * s - 15)) / 384;
  return t - (first - (second - third / nu) / nu) / nu;
}

/**
 * Probability that Student's t is at most t.
 * @param input.t - deviate
 * @param input.degreesOfFreedom - 0.1 or more, not only whole numbers, or `"infinite"` for the normal distribution
 * @returns probability, 0..1
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.5.27 (by the incomplete beta function);
 *   from a hundred thousand degrees of freedom on the inverse of the series 26.7.5, to the same power of 1/ν
 * @example
 * ```ts
 * studentCumulative({ t: 2.920782, degreesOfFreedom: 16 }) // => 0.995
 * ```
 * @since 0.1.0
 */
export function studentCumulative(input: {
  readonly t: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
}): number {
  const { t, degreesOfFreedom } = given(input);
  checkFinite("t", t);
  checkDegrees(degreesOfFreedom);
  if (degreesOfFreedom === "infinite") return normalCumulative(t);
  if (degreesOfFreedom > SERIES_FROM && Math.abs(t) < 10) {
    return normalCumulative(toNormal(t, degreesOfFreedom));
  }
  // The continued fraction takes longer the more degrees of freedom; past ten million they no longer count.
  const tail = upperTail(Math.abs(t), Math.min(degreesOfFreedom, 1e7));
  return t > 0 ? 1 - tail : tail;
}

/**
 * Student's t that a probability stays below; negative below one half.
 *
 * The two-sided factor t_p of a coverage probability p is this at (1 + p)/2.
 * @param input.probability - more than 0, less than 1
 * @param input.degreesOfFreedom - 0.1 or more, not only whole numbers, or `"infinite"` for the normal distribution
 * @returns t, to about 12 digits
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `out-of-range` too for a t beyond 1e150
 * @source definition; Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.5 from a hundred
 *   thousand degrees of freedom on
 * @example
 * ```ts
 * studentQuantile({ probability: 0.995, degreesOfFreedom: 16 }) // => 2.920782
 * ```
 * @since 0.1.0
 */
export function studentQuantile(input: {
  readonly probability: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
}): number {
  const { probability, degreesOfFreedom } = given(input);
  checkDegrees(degreesOfFreedom);
  const z = normalQuantile(probability);
  if (degreesOfFreedom === "infinite" || z === 0) return z;
  if (degreesOfFreedom > SERIES_FROM && Math.abs(z) < 10) return fromNormal(z, degreesOfFreedom);
  const nu = Math.min(degreesOfFreedom, 1e7);
  const wanted = Math.log(probability < 0.5 ? probability : 1 - probability);
  // By logarithms on both sides: nearly a straight line in the tail, where t can be anything.
  const evaluate = (logT: number): number =>
    Math.log(Math.max(upperTail(Math.exp(logT), nu), Number.MIN_VALUE)) - wanted;
  let low = -1;
  let high = 1;
  while (evaluate(low) < 0 && low > -80) [low, high] = [2 * low, low];
  while (!(evaluate(high) <= 0)) {
    if (high >= MOST_LOG) {
      fail({ code: "out-of-range", path: "probability", expected: "a t below 1e150", received: probability });
    }
    [low, high] = [high, Math.min(2 * high, MOST_LOG)];
  }
  const size = Math.exp(bracketedRoot({ evaluate, low, high, tolerance: 1e-15 }).root);
  return probability < 0.5 ? -size : size;
}

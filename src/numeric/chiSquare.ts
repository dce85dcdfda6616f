/** The χ² distribution with a whole number of degrees of freedom: how surprising a sum of squared residuals is. */
import { checkNonNegative, checkWhole } from "../quantity/index.ts";

/** Below this argument the power series of erf converges faster than the continued fraction of erfc. */
const SERIES_LIMIT = 2;

/**
 * Complementary error function for arguments of zero or more: erfc(x) = 1 − (2/√π)∫₀ˣ e^(−t²) dt.
 * @param x - argument, 0 or more
 * @returns erfc(x), 0..1
 * @throws ElectroheatError `not-a-number`, `out-of-range`
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 7.1.6 and 7.1.14
 * @example
 * ```ts
 * complementaryErrorFunction(1) // => 0.157299207050285
 * ```
 * @since 0.1.0
 */
export function complementaryErrorFunction(x: number): number {
  checkNonNegative("x", x);
  if (x < SERIES_LIMIT) {
    // erf(x) = (2/√π) e^(−x²) Σ 2ⁿ x^(2n+1) / (1·3·5…(2n+1)): all terms positive, nothing cancels.
    let term = x;
    let sum = x;
    for (let n = 1; term > sum * 1e-17; n += 1) {
      term *= (2 * x * x) / (2 * n + 1);
      sum += term;
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
  }
  // Continued fraction 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + …)))), evaluated from a depth that suffices from 2 up.
  let tail = x;
  for (let k = 80; k >= 1; k -= 1) tail = x + k / 2 / tail;
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail);
}

/**
 * Probability that χ² with `degreesOfFreedom` exceeds `chiSquare` by chance alone.
 *
 * Q(χ²|ν) = Q(χ²|ν−2) + (χ²/2)^(ν/2−1)·e^(−χ²/2)/Γ(ν/2), started at Q(χ²|2) = e^(−χ²/2) or
 * Q(χ²|1) = erfc(√(χ²/2)).
 * @param input.chiSquare - sum of squared normalised residuals, 0 or more
 * @param input.degreesOfFreedom - whole number, 1 to 10 000
 * @returns probability, 0..1
 * @throws ElectroheatError `not-a-number`, `out-of-range`
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.4.4, 26.4.5 and 26.4.8
 * @example
 * ```ts
 * chiSquareSurvival({ chiSquare: 9.21034, degreesOfFreedom: 2 }) // => 0.0100000
 * ```
 * @since 0.1.0
 */
export function chiSquareSurvival(input: {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
}): number {
  const { chiSquare, degreesOfFreedom } = input ?? {};
  checkNonNegative("chiSquare", chiSquare);
  checkWhole("degreesOfFreedom", degreesOfFreedom, 1, 10_000);
  if (chiSquare === 0) return 1;
  const half = chiSquare / 2;
  // Not log(half): half of the smallest float64 is 0.
  const logHalf = Math.log(chiSquare) - Math.LN2;
  const odd = degreesOfFreedom % 2 === 1;
  let probability = odd ? complementaryErrorFunction(Math.sqrt(half)) : Math.exp(-half);
  // Terms as logarithms: half^(ν/2) overflows long before the probability stops mattering.
  let logTerm = odd ? -half - logHalf / 2 - Math.log(Math.PI) / 2 : -half;
  for (let nu = odd ? 1 : 2; nu + 2 <= degreesOfFreedom; nu += 2) {
    logTerm += logHalf - Math.log(nu / 2);
    probability += Math.exp(logTerm);
  }
  return Math.min(1, probability);
}

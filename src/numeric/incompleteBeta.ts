/** The regularised incomplete beta function, for the distributions that are made of it (Student's t). */
import { checkBetween, checkPositive, fail, given } from "../quantity/index.ts";

/** ln Γ(x) less Stirling's formula (x − ½)·ln x − x + ½·ln 2π: small, and smooth down to 0. */
function stirlingRemainder(x: number): number {
  // The series is good to the last digit from 10 up; below, the recurrence Γ(x+1) = x·Γ(x) leads there.
  let shift = 0;
  let at = x;
  for (; at < 10; at += 1) shift += (at + 0.5) * Math.log1p(1 / at) - 1;
  const square = 1 / (at * at);
  const series =
    (((((-691 / 360_360) * square + 1 / 1188) * square - 1 / 1680) * square + 1 / 1260) * square - 1 / 360) *
      square +
    1 / 12;
  return shift + series / at;
}

/** ln B(a, b), with the large terms cancelled by hand: B of a million and a half keeps its digits. */
function logBeta(a: number, b: number): number {
  const [small, large] = a < b ? [a, b] : [b, a];
  return (
    Math.log(2 * Math.PI) / 2 +
    (small - 0.5) * Math.log(small) -
    small * Math.log(large) -
    (large + small - 0.5) * Math.log1p(small / large) +
    stirlingRemainder(small) +
    stirlingRemainder(large) -
    stirlingRemainder(small + large)
  );
}

/** Below this a denominator of the continued fraction counts as 0 and is moved off it. */
const TINY = 1e-300;

/** Continued fraction of I, evaluated from the front; quick where x is below (a + 1)/(a + b + 2). */
function fraction(x: number, a: number, b: number): number {
  const most = 200 + 20 * Math.ceil(Math.sqrt(Math.max(a, b)));
  const off = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
  let c = 1;
  let d = 1 / off(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m <= most; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / off(1 + even * d);
    c = off(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / off(1 + odd * d);
    c = off(1 + odd / c);
    const step = d * c;
    value *= step;
    if (Math.abs(step - 1) < 2 ** -52) return value;
  }
  return fail({
    code: "no-convergence",
    path: "a",
    expected: `the continued fraction to settle within ${most} terms`,
    received: value,
  });
}

/**
 * I for callers that know x and its complement apart, so that neither loses digits near 1.
 * @param x - argument
 * @param y - 1 − x
 */
export function incompleteBetaRatio(x: number, y: number, a: number, b: number): number {
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBetaRatio(y, x, b, a);
  const logX = y < 0.5 ? Math.log1p(-y) : Math.log(x);
  const logY = x < 0.5 ? Math.log1p(-x) : Math.log(y);
  return Math.exp(a * logX + b * logY - logBeta(a, b)) * (fraction(x, a, b) / a);
}

/**
 * Regularised incomplete beta function: I_x(a, b) = ∫₀ˣ t^(a−1)·(1−t)^(b−1) dt / B(a, b).
 * @param input.x - argument, 0..1
 * @param input.a - first parameter, more than 0, at most 1e7
 * @param input.b - second parameter, more than 0, at most 1e7
 * @returns I_x(a, b), 0..1
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `no-convergence`
 * @source NIST Digital Library of Mathematical Functions, 8.17.2 (definition), 8.17.4 (symmetry), 8.17.22
 *   (continued fraction); 5.11.1 (Stirling's series)
 * @example
 * ```ts
 * regularizedIncompleteBeta({ x: 0.5, a: 2, b: 3 }) // => 0.6875
 * ```
 * @since 0.1.0
 */
export function regularizedIncompleteBeta(input: {
  readonly x: number;
  readonly a: number;
  readonly b: number;
}): number {
  const { x, a, b } = given(input);
  checkBetween("x", x, 0, 1);
  for (const [path, value] of [["a", a] as const, ["b", b] as const]) {
    checkPositive(path, value);
    checkBetween(path, value, 0, 1e7);
  }
  return Math.min(1, Math.max(0, incompleteBetaRatio(x, 1 - x, a, b)));
}

/**
 * Root of a function of one variable between two ends of opposite sign: inverse quadratic or linear steps while
 * they shrink the bracket fast enough, halving when they do not. Only the signs decide what is kept, so it needs
 * no derivative, stands steps and kinks, and cannot leave the bracket.
 */
import { checkBetween, checkFinite, checkPositive, checkWhole, fail } from "../quantity/index.ts";

/**
 * Result of {@link bracketedRoot}.
 * @since 0.1.0
 */
export interface BracketedRoot {
  /** Where the function changes sign, within the tolerance asked for. */
  readonly root: number;
  /** Value of the function there. */
  readonly residual: number;
  /** Low end of the last bracket. */
  readonly low: number;
  /** High end of the last bracket. */
  readonly high: number;
  /** How often the function was evaluated between the two ends. */
  readonly iterations: number;
}

const MOST_ITERATIONS = 2000;

function valueAt(evaluate: (x: number) => number, x: number): number {
  const y = evaluate(x);
  if (Number.isFinite(y)) return y;
  return fail({ code: "not-a-number", path: "evaluate", expected: `a finite number at ${x}`, received: y });
}

/** A place and the value of the function there. */
interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The step that interpolation proposes from the best point b, or undefined when halving is the better step.
 * @param a - the best point before b
 * @param b - the best point
 * @param c - the other end of the bracket
 * @param before - size of the step before last
 */
function interpolatedStep(a: Point, b: Point, c: Point, before: number, close: number): number | undefined {
  if (!(Math.abs(before) >= close && Math.abs(a.y) > Math.abs(b.y))) return undefined;
  const half = (c.x - b.x) / 2;
  const s = b.y / a.y;
  let p = 2 * half * s;
  let q = 1 - s;
  if (a.x !== c.x) {
    const [u, v] = [a.y / c.y, b.y / c.y];
    p = s * (2 * half * u * (u - v) - (b.x - a.x) * (v - 1));
    q = (u - 1) * (v - 1) * (s - 1);
  }
  const step = p / -q;
  // Accept what stays well inside the bracket and halves the step before last; NaN fails both.
  const inside = step * half > 0 && Math.abs(step) < 1.5 * Math.abs(half) - close / 2;
  return inside && Math.abs(step) < Math.abs(before) / 2 ? step : undefined;
}

/**
 * Finds where a function changes sign between two ends: f(low) and f(high) must differ in sign.
 *
 * About ten evaluations for a smooth function, at worst the square of what halving takes. The function need not be
 * smooth; where it jumps across zero the place of the jump is returned, unless `residualTolerance` forbids it.
 * Does not look for a bracket and does not count roots: with several inside, one of them is found.
 * @param input.evaluate - the function, finite everywhere between the ends
 * @param input.low - low end
 * @param input.high - high end, above `low`
 * @param input.tolerance - the root is wanted to plus or minus this, in the unit of the ends, more than 0; the
 *   spacing of doubles is added to it
 * @param input.residualTolerance - largest |f| accepted at the root; left out, the sign change alone decides
 * @param input.maximumIterations - most evaluations inside the bracket, 1 to 2000; left out, 2000
 * @returns the root, the residual and the last bracket
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the ends are not in order,
 *   `not-identifiable` when the ends have the same sign, `no-convergence` with the bracket and residual left
 * @source R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4
 * @example
 * ```ts
 * bracketedRoot({ evaluate: (x) => x * x - 2, low: 0, high: 2, tolerance: 1e-9 }).root // => 1.41421356
 * ```
 * @since 0.1.0
 */
export function bracketedRoot(input: {
  readonly evaluate: (x: number) => number;
  readonly low: number;
  readonly high: number;
  readonly tolerance: number;
  readonly residualTolerance?: number;
  readonly maximumIterations?: number;
}): BracketedRoot {
  const { evaluate, low, high, tolerance, residualTolerance, maximumIterations = MOST_ITERATIONS } = input;
  checkFinite("low", low);
  checkFinite("high", high);
  checkPositive("tolerance", tolerance);
  checkWhole("maximumIterations", maximumIterations, 1, MOST_ITERATIONS);
  if (residualTolerance !== undefined)
    checkBetween("residualTolerance", residualTolerance, 0, Number.MAX_VALUE);
  if (!(low < high))
    fail({ code: "inconsistent", path: "high", expected: `more than low, ${low}`, received: high });
  let a: Point = { x: low, y: valueAt(evaluate, low) };
  let b: Point = { x: high, y: valueAt(evaluate, high) };
  if (a.y !== 0 && b.y !== 0 && a.y > 0 === b.y > 0) {
    fail({
      code: "not-identifiable",
      path: "evaluate",
      expected: `opposite signs at ${low} and ${high}`,
      received: `${a.y} and ${b.y}`,
    });
  }
  let c = a;
  let step = b.x - a.x;
  let before = step;
  for (let iterations = 0; ; iterations += 1) {
    if (Math.abs(c.y) < Math.abs(b.y)) [a, b, c] = [b, c, b];
    const close = 2 * Number.EPSILON * Math.abs(b.x) + tolerance / 2;
    const half = (c.x - b.x) / 2;
    if (Math.abs(half) <= close || b.y === 0) {
      if (residualTolerance !== undefined && Math.abs(b.y) > residualTolerance) {
        return stopped(b, c, iterations, residualTolerance);
      }
      const other = b.y === 0 ? b.x : c.x;
      const [first, last] = [Math.min(b.x, other), Math.max(b.x, other)];
      return { root: b.x, residual: b.y, low: first, high: last, iterations };
    }
    if (iterations >= maximumIterations) return stopped(b, c, iterations, tolerance);
    const wanted = interpolatedStep(a, b, c, before, close);
    before = wanted === undefined ? half : step;
    step = wanted ?? half;
    a = b;
    // Never less than the tolerance; a step that is taken has the sign of the half.
    const x = b.x + Math.sign(half) * Math.max(Math.abs(step), close);
    b = { x, y: valueAt(evaluate, x) };
    if (b.y > 0 === c.y > 0) {
      c = a;
      step = b.x - a.x;
      before = step;
    }
  }
}

function stopped(b: Point, c: Point, iterations: number, wanted: number): never {
  return fail({
    code: "no-convergence",
    path: "evaluate",
    expected: `a root within ${wanted}; after ${iterations} iterations the bracket is ${Math.min(b.x, c.x)} to ${Math.max(b.x, c.x)} and the residual ${b.y}`,
    received: b.y,
  });
}

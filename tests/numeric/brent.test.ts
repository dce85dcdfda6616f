/**
 * The root finder goes where the published procedure goes: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4,
 * procedure `zero`, written down here from memory in its own letters (a, b, c, d, e, m, p, q, r, s). That it is the published one shows in
 * its worst case and its roots, which `bracketedRoot.test.ts` holds; here each place it tries is held, and so how soon it is done.
 */
import { bracketedRoot } from "electroheat/numeric";
import { describe, expect, it } from "vitest";

/** Every place between the ends at which the procedure asks for the function. */
function places(f: (x: number) => number, low: number, high: number, t: number): number[] {
  const tried: number[] = [];
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  let [c, fc] = [a, fa];
  let d = b - a;
  let e = d;
  for (;;) {
    if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb];
    const tol = 2 * Number.EPSILON * Math.abs(b) + t;
    const m = (c - b) / 2;
    if (Math.abs(m) <= tol || fb === 0) return tried;
    if (Math.abs(e) < tol || Math.abs(fa) <= Math.abs(fb)) {
      d = m;
      e = m;
    } else {
      let s = fb / fa;
      let [p, q] = [2 * m * s, 1 - s];
      if (a !== c) {
        const [u, r] = [fa / fc, fb / fc];
        p = s * (2 * m * u * (u - r) - (b - a) * (r - 1));
        q = (u - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      s = e;
      e = d;
      if (2 * p < 3 * m * q - Math.abs(tol * q) && p < Math.abs((s * q) / 2)) d = p / q;
      else {
        d = m;
        e = m;
      }
    }
    [a, fa] = [b, fb];
    b += Math.abs(d) > tol ? d : m > 0 ? tol : -tol;
    fb = f(b);
    tried.push(b);
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      d = b - a;
      e = d;
    }
  }
}

const FUNCTIONS: readonly (readonly [string, (x: number) => number, number, number])[] = [
  ["a parabola", (x) => x * x - 2, 0, 2],
  ["a fourth power", (x) => x ** 4 - 1000, 0, 100],
  ["a falling cube", (x) => 8 - x ** 3, -5, 9],
  ["a ninth power", (x) => (x - 0.3) ** 9, -1, 4],
  ["a steep exponential", (x) => Math.expm1(40 * (x - 0.9)), 0, 1],
  ["a cosine", (x) => Math.cos(x) - x, 0, 1],
  ["a root with an upright tangent", (x) => Math.cbrt(x - 0.7), -2, 3],
  ["a step", (x) => (x < 0.7 ? -1 : 2), 0, 1],
  ["a hyperbola's branch", (x) => 1 / (x - 5) + 0.3, -40, 4.9],
  ["Wilkinson's pole and its root", (x) => x / (1 + x * x) - 0.01, -3, 1],
  ["a logarithm", (x) => Math.log(x) - 3, 1, 1e6],
  ["a straight line", (x) => 3 * x - 1, -7, 5],
  ["a wave", (x) => Math.sin(x) + x / 10 - 0.5, -1, 2],
];

describe("the places tried", () => {
  it.each(FUNCTIONS)("of %s are those of the published procedure", (_, f, low, high) => {
    for (const tolerance of [1e-3, 1e-9, 1e-14]) {
      const tried: number[] = [];
      const evaluate = (x: number) => {
        tried.push(x);
        return f(x);
      };
      const found = bracketedRoot({ evaluate, low, high, tolerance });
      // The tolerance asked for is the whole bracket's, the procedure's is half of it.
      const published = places(f, low, high, tolerance / 2);
      expect(tried.slice(0, 2)).toEqual([low, high]);
      expect(tried).toHaveLength(published.length + 2);
      expect(found.iterations).toBe(published.length);
      published.forEach((x, i) => {
        expect(Math.abs((tried[i + 2] as number) - x)).toBeLessThan(1e-9 * (high - low));
      });
    }
  });
});

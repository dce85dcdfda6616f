/**
 * The regularised incomplete beta function I_x(a, b) against what its integral ∫₀ˣ t^(a−1)·(1 − t)^(b−1) dt over the whole one is by hand:
 * a power where one of the parameters is 1, an angle where both are ½, and for whole parameters the probability of at least `a` heads in
 * a + b − 1 tosses (integration by parts). Limits and names from the docstring.
 */
import { regularizedIncompleteBeta, studentCumulative } from "electroheat/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const share = (x: number, a: number, b: number) => regularizedIncompleteBeta({ x, a, b });
const inside = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const size = fc.double({ min: 0.05, max: 200, noNaN: true });
const near = (found: number, wanted: number): void => {
  expect(Math.abs(found - wanted), `${found}, not ${wanted}`).toBeLessThan(1e-11);
};

describe("the incomplete beta function", () => {
  it("is all of nothing and nothing of all at its ends, whatever the parameters", () => {
    for (const [a, b] of [
      [0.1, 0.1],
      [0.5, 30],
      [1e7, 0.5],
      [3, 1e7],
    ] as const) {
      expect(Object.is(share(0, a, b), 0)).toBe(true);
      expect(share(1, a, b)).toBe(1);
    }
    for (const degreesOfFreedom of [0.1, 1, 7.5, 1e4, 2e5, 1e9, "infinite"] as const)
      for (const t of [0, -0]) expect(studentCumulative({ t, degreesOfFreedom })).toBe(0.5);
  });

  it("is a power where a parameter is 1, on either side of the middle", () => {
    fc.assert(
      fc.property(inside, size, (x, a) => {
        near(share(x, a, 1), x ** a);
        near(share(x, 1, a), -Math.expm1(a * Math.log1p(-x)));
      }),
    );
  });

  it("is an angle where both are a half", () => {
    fc.assert(fc.property(inside, (x) => near(share(x, 0.5, 0.5), (2 / Math.PI) * Math.asin(Math.sqrt(x)))));
  });

  it("is the chance of at least a heads of a + b − 1", () => {
    const whole = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(inside, whole, whole, (x, a, b) => {
        const tosses = a + b - 1;
        let [ways, sum] = [1, 0];
        for (let heads = 0; heads <= tosses; heads += 1) {
          if (heads >= a) sum += ways * x ** heads * (1 - x) ** (tosses - heads);
          ways = (ways * (tosses - heads)) / (heads + 1);
        }
        near(share(x, a, b), sum);
      }),
    );
  });

  it("and its complement are one", () => {
    fc.assert(fc.property(inside, size, size, (x, a, b) => near(share(x, a, b) + share(1 - x, b, a), 1)));
  });

  it("refuses what is not between, by name", () => {
    const said = (change: object) => {
      const [issue] = caught(() => regularizedIncompleteBeta({ x: 0.5, a: 1, b: 1, ...change })).issues;
      return [issue?.path, issue?.code];
    };
    for (const name of ["a", "b"]) {
      expect(said({ [name]: 0 })).toEqual([name, "out-of-range"]);
      expect(said({ [name]: 1.01e7 })).toEqual([name, "out-of-range"]);
      expect(said({ [name]: Number.NaN })).toEqual([name, "not-a-number"]);
      expect(share(0.5, 1e7, 1e7)).toBeCloseTo(0.5, 6);
    }
    expect(said({ x: -1e-9 })).toEqual(["x", "out-of-range"]);
    expect(said({ x: undefined })).toEqual(["x", "missing"]);
  });
});

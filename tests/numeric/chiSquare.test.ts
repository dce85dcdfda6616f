/**
 * The upper tail of χ² against 40-digit arithmetic written here (decimal.js), apart from the library's recurrence in
 * float64. Published critical values are run as vectors. Source of the formulas: Abramowitz and Stegun, Handbook of
 * Mathematical Functions (1964), 6.5.29 (series of the incomplete gamma function) and 7.1.5 (series of erf).
 */

import { Decimal as Library } from "decimal.js";
import { chiSquareSurvival, complementaryErrorFunction } from "electroheat/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectRefusal, negative, notQuantities } from "../support/spoil.ts";

const Decimal = Library.clone({ precision: 60 });
type Decimal = Library;
const PI = new Decimal("3.1415926535897932384626433832795028841971693993751058209749446");

/** Γ(ν/2) for a whole ν, exactly but for √π. */
function gammaOfHalf(nu: number): Decimal {
  let value = nu % 2 === 0 ? new Decimal(1) : PI.sqrt();
  for (let k = nu % 2 === 0 ? 2 : 1; k < nu; k += 2) value = value.times(new Decimal(k).div(2));
  return value;
}

/** Q(χ²|ν) = 1 − γ(a, x)/Γ(a), a = ν/2, x = χ²/2, with γ(a, x) = x^a e^(−x) Σ x^n/(a(a+1)…(a+n)). */
function reference(chiSquare: number, nu: number): Decimal {
  const x = new Decimal(chiSquare).div(2);
  const a = new Decimal(nu).div(2);
  let term = new Decimal(1).div(a);
  let sum = term;
  for (let n = 1; n < 20_000 && term.greaterThan(sum.times("1e-58")); n += 1) {
    term = term.times(x).div(a.plus(n));
    sum = sum.plus(term);
  }
  return new Decimal(1).minus(sum.times(x.pow(a)).times(x.neg().exp()).div(gammaOfHalf(nu)));
}

/** Relative difference; the reference keeps 60 digits less those that 1 − … loses. */
const apart = (got: number, exact: Decimal): number =>
  exact.isZero() ? Math.abs(got) : new Decimal(got).minus(exact).div(exact).abs().toNumber();

describe("chiSquareSurvival", () => {
  it("is the incomplete gamma function to 1e-12 wherever the probability is above 1e-12", () => {
    let worst = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 120 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (nu, part) => {
          const chiSquare = part * (nu + 10 * Math.sqrt(2 * nu));
          const exact = reference(chiSquare, nu);
          if (exact.lessThan("1e-12")) return;
          const difference = apart(chiSquareSurvival({ chiSquare, degreesOfFreedom: nu }), exact);
          worst = Math.max(worst, difference);
          expect(difference).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 1000 },
    );
    console.info(`chiSquareSurvival against 60-digit decimals: ${worst.toExponential(1)}`);
  });

  it("keeps its digits far out in the tail", () => {
    for (const [chiSquare, nu] of [
      [100, 1],
      [100, 2],
      [90, 3],
      [120, 10],
      [80, 5],
    ] as const) {
      expect(
        apart(chiSquareSurvival({ chiSquare, degreesOfFreedom: nu }), reference(chiSquare, nu)),
      ).toBeLessThan(1e-12);
    }
  });

  it("is at its ends: 1 at 0, 0 far away, e^(−χ²/2) for two degrees of freedom", () => {
    for (const degreesOfFreedom of [1, 2, 3, 10, 9_999, 10_000]) {
      expect(chiSquareSurvival({ chiSquare: 0, degreesOfFreedom })).toBe(1);
      expect(chiSquareSurvival({ chiSquare: 5e-324, degreesOfFreedom })).toBe(1);
      expect(chiSquareSurvival({ chiSquare: 1e300, degreesOfFreedom })).toBe(0);
      expect(chiSquareSurvival({ chiSquare: Number.MAX_VALUE, degreesOfFreedom })).toBe(0);
    }
    for (const chiSquare of [1e-9, 0.1, 1, 9.21034037197618, 50, 1400]) {
      expect(chiSquareSurvival({ chiSquare, degreesOfFreedom: 2 }) / Math.exp(-chiSquare / 2)).toBe(1);
    }
  });

  it("falls with χ² and rises with the degrees of freedom", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2000 }),
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (nu, chiSquare, more) => {
          const here = chiSquareSurvival({ chiSquare, degreesOfFreedom: nu });
          expect(here).toBeGreaterThanOrEqual(0);
          expect(here).toBeLessThanOrEqual(1);
          // The sum of up to a thousand terms rounds in its last digits.
          const further = chiSquareSurvival({ chiSquare: chiSquare + more, degreesOfFreedom: nu });
          expect(further).toBeLessThanOrEqual(here * (1 + 1e-11));
          const looser = chiSquareSurvival({ chiSquare, degreesOfFreedom: nu + 1 });
          expect(looser).toBeGreaterThanOrEqual(here * (1 - 1e-11));
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("is near a half at the median for many degrees of freedom (Wilson and Hilferty 1931: ν(1 − 2/(9ν))³)", () => {
    for (const nu of [100, 1000, 9_999, 10_000]) {
      const median = nu * (1 - 2 / (9 * nu)) ** 3;
      expect(chiSquareSurvival({ chiSquare: median, degreesOfFreedom: nu })).toBeCloseTo(0.5, 4);
    }
  });

  it("refuses what is no χ² and no number of degrees of freedom", () => {
    expectRefusal(() => chiSquareSurvival(undefined as never), "missing", "chiSquare", "no argument");
    const call = (chiSquare: unknown, degreesOfFreedom: unknown) => () =>
      chiSquareSurvival({ chiSquare, degreesOfFreedom } as never);
    for (const [value, code] of [...notQuantities, ...negative])
      expectRefusal(call(value, 3), code, "chiSquare", String(value));
    for (const [value, code] of [
      ...notQuantities,
      [0, "out-of-range"],
      [1.5, "out-of-range"],
      [10_001, "out-of-range"],
    ] as const) {
      expectRefusal(call(3, value), code, "degreesOfFreedom", String(value));
    }
  });
});

describe("complementaryErrorFunction", () => {
  function exact(x: number): Decimal {
    const big = new Decimal(x);
    let term = big;
    let sum = big;
    // 7.1.5: erf x = (2/√π) Σ (−1)ⁿ x^(2n+1)/(n!(2n+1)); 60 digits leave room for the alternation up to x = 6.
    for (let n = 1; n < 2000; n += 1) {
      term = term.times(big).times(big).div(-n);
      const part = term.div(2 * n + 1);
      sum = sum.plus(part);
      if (part.abs().lessThan("1e-58")) break;
    }
    return new Decimal(1).minus(sum.times(2).div(PI.sqrt()));
  }

  it("is the alternating series in 60 digits, below, at and above where the method changes (x = 2)", () => {
    // 1 − erf(2) leaves 0.0047 of 1, so a rounding of 1e-16 becomes 5e-14 there.
    let worst = 0;
    const points = [0, 1e-300, 1e-8, 0.1, 0.5, 1, 1.5, 1.999999999999, 2, 2.000000000001, 2.5, 3, 4, 5];
    for (const x of points) {
      const difference = apart(complementaryErrorFunction(x), exact(x));
      worst = Math.max(worst, difference);
      expect(difference, `x = ${x}`).toBeLessThan(2e-13);
    }
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), (x) => {
        const difference = apart(complementaryErrorFunction(x), exact(x));
        worst = Math.max(worst, difference);
        expect(difference).toBeLessThan(2e-13);
      }),
      { numRuns: 1000 },
    );
    console.info(`complementaryErrorFunction against 60-digit decimals: ${worst.toExponential(1)}`);
  });

  it("has the values of the table (Abramowitz and Stegun table 7.1, from memory; checked by the series above)", () => {
    // erf 0.5, 1, 1.5, 2 printed to ten decimals.
    for (const [x, erf] of [
      [0.5, 0.5204998778],
      [1, 0.8427007929],
      [1.5, 0.9661051465],
      [2, 0.995322265],
    ] as const) {
      expect(Math.abs(1 - erf - complementaryErrorFunction(x))).toBeLessThan(6e-11);
    }
  });

  it("dies out without ever turning negative", () => {
    expect(complementaryErrorFunction(27)).toBeGreaterThanOrEqual(0);
    expect(complementaryErrorFunction(40)).toBe(0);
    expect(complementaryErrorFunction(1e200)).toBe(0);
    expect(complementaryErrorFunction(Number.MAX_VALUE)).toBe(0);
  });
});

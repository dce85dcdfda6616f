/** The root finder against roots known in closed form, its own worst-case bound, and functions made to mislead. */
import { bracketedRoot } from "electroheat/numeric";
import type { ElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const caught = (body: () => unknown): ElectroheatError => {
  try {
    body();
  } catch (error) {
    return error as ElectroheatError;
  }
  throw new Error("nothing was thrown");
};

describe("bracketedRoot", () => {
  // Roots in closed form or to the digits printed in tables of constants.
  it.each([
    ["√2", (x: number) => x * x - 2, 0, 2, Math.SQRT2],
    [
      "fixed point of cos, 0.739085133215160641655… (OEIS A003957)",
      (x: number) => Math.cos(x) - x,
      0,
      1,
      0.7390851332151607,
    ],
    [
      "omega constant, 0.567143290409783872999… (OEIS A030178)",
      (x: number) => x * Math.exp(x) - 1,
      0,
      1,
      0.5671432904097838,
    ],
    ["falling", (x: number) => 8 - x ** 3, -5, 9, 2],
    ["high order", (x: number) => (x - 0.3) ** 9, -1, 4, 0.3],
    ["steep", (x: number) => Math.expm1(40 * (x - 0.9)), 0, 1, 0.9],
  ])("%s", (_, evaluate, low, high, root) => {
    const found = bracketedRoot({ evaluate, low, high, tolerance: 1e-10 });
    expect(Math.abs(found.root - root)).toBeLessThanOrEqual(1e-10);
    expect(found.low <= found.root && found.root <= found.high).toBe(true);
    expect(found.residual).toBe(evaluate(found.root));
  });

  it("keeps to the worst case of its source, wherever the root of whatever shape lies", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.constantFrom(1, 3, 9, 1 / 3),
        fc.integer({ min: -9, max: -1 }),
        fc.boolean(),
        (root, below, above, power, digits, falling) => {
          const sign = falling ? -1 : 1;
          const evaluate = (x: number) => sign * Math.sign(x - root) * Math.abs(x - root) ** power;
          const tolerance = 10 ** digits;
          const [low, high] = [root - below, root + above];
          const found = bracketedRoot({ evaluate, low, high, tolerance });
          expect(Math.abs(found.root - root)).toBeLessThanOrEqual(tolerance + 1e-13);
          const halvings = Math.max(Math.ceil(Math.log2((high - low) / tolerance)), 0) + 1;
          expect(found.iterations).toBeLessThanOrEqual(halvings ** 2);
          expect(found.low <= found.root && found.root <= found.high).toBe(true);
          expect(found.low <= root + 1e-13 && root - 1e-13 <= found.high).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("beats bisection on a smooth function", () => {
    const found = bracketedRoot({ evaluate: (x) => x ** 4 - 1000, low: 0, high: 100, tolerance: 1e-9 });
    expect(found.iterations).toBeLessThan(20); // bisection: log₂(100/2e-9) = 36
  });

  it("finds a step, and refuses it when a residual is demanded", () => {
    const evaluate = (x: number) => (x < 0.7 ? -1 : 2);
    expect(bracketedRoot({ evaluate, low: 0, high: 1, tolerance: 1e-6 }).root).toBeCloseTo(0.7, 5);
    const error = caught(() =>
      bracketedRoot({ evaluate, low: 0, high: 1, tolerance: 1e-6, residualTolerance: 0.1 }),
    );
    expect(error.code).toBe("no-convergence");
    expect(error.message).toMatch(/bracket is 0\.69\d+ to 0\.70?\d* and the residual -1/);
    // A residual as large as allowed is allowed.
    expect(bracketedRoot({ evaluate, low: 0, high: 1, tolerance: 1e-6, residualTolerance: 1 }).residual).toBe(
      -1,
    );
  });

  it("ends between neighboring doubles when the tolerance is finer than they are", () => {
    const found = bracketedRoot({ evaluate: (x) => x - 1e6 / 3, low: 0, high: 1e6, tolerance: 1e-30 });
    expect(found.root).toBeCloseTo(1e6 / 3, 9);
  });

  it("takes an end that is the root", () => {
    expect(bracketedRoot({ evaluate: (x) => x, low: 0, high: 1, tolerance: 1e-9 })).toEqual({
      root: 0,
      residual: 0,
      low: 0,
      high: 0,
      iterations: 0,
    });
    expect(bracketedRoot({ evaluate: (x) => x, low: -1, high: 0, tolerance: 1e-9 }).root).toBe(0);
  });

  it("carries the bracket and the residual when it must stop early", () => {
    const error = caught(() =>
      bracketedRoot({
        evaluate: (x) => x ** 3 - 0.3,
        low: 0,
        high: 1,
        tolerance: 1e-12,
        maximumIterations: 1,
      }),
    );
    expect(error.code).toBe("no-convergence");
    expect(error.message).toMatch(
      /after 1 iterations the bracket is 0[.\d]* to [\d.]+ and the residual -?[\d.e-]+/,
    );
  });

  it.each([
    [
      "no sign change",
      { evaluate: (x: number) => x * x + 1, low: -1, high: 1, tolerance: 1e-9 },
      "not-identifiable",
    ],
    [
      "not a number inside",
      {
        evaluate: (x: number) => (x === 0 || x === 1 ? x - 0.5 : Number.NaN),
        low: 0,
        high: 1,
        tolerance: 1e-9,
      },
      "not-a-number",
    ],
    [
      "infinite at an end",
      { evaluate: (x: number) => 1 / x, low: 0, high: 1, tolerance: 1e-9 },
      "not-a-number",
    ],
    [
      "ends that are one",
      { evaluate: (x: number) => x - 1, low: 1, high: 1, tolerance: 1e-9 },
      "inconsistent",
    ],
    ["ends reversed", { evaluate: (x: number) => x, low: 1, high: -1, tolerance: 1e-9 }, "inconsistent"],
    ["no tolerance", { evaluate: (x: number) => x, low: -1, high: 1, tolerance: 0 }, "out-of-range"],
    [
      "end not a number",
      { evaluate: (x: number) => x, low: Number.NaN, high: 1, tolerance: 1e-9 },
      "not-a-number",
    ],
    [
      "half an iteration",
      { evaluate: (x: number) => x, low: -1, high: 2, tolerance: 1e-9, maximumIterations: 1.5 },
      "out-of-range",
    ],
    [
      "negative residual",
      { evaluate: (x: number) => x, low: -1, high: 2, tolerance: 1e-9, residualTolerance: -1 },
      "out-of-range",
    ],
  ])("refuses: %s", (_, input, code) => {
    expect(caught(() => bracketedRoot(input)).code).toBe(code);
  });

  it("names the place, the ends and the argument it refuses", () => {
    const refused = (change: object) =>
      caught(() => bracketedRoot({ evaluate: (x) => x, low: -3, high: 8, tolerance: 1e-9, ...change }));
    expect(refused({ evaluate: (x: number) => (x === 8 ? Number.NaN : x) }).message).toContain("at 8");
    expect(refused({ evaluate: () => 5 }).message).toContain("opposite signs at -3 and 8");
    expect(refused({ maximumIterations: 0 }).argument).toBe("maximumIterations");
    expect(refused({ residualTolerance: -1 }).argument).toBe("residualTolerance");
    expect(refused({ tolerance: 0 }).argument).toBe("tolerance");
  });
});

/**
 * Weighted least squares: certified reference data as vectors; here the digits reached on them, laws that any fit obeys,
 * and the normal equations in 50-digit arithmetic (decimal.js, elimination written here).
 */
import { Decimal as Library } from "decimal.js";
import { leastSquares } from "electroheat/numeric";
import { isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";
import { Chance } from "../support/networks.ts";
import { vectorFiles } from "../support/shared.ts";
import { expectRefusal, negative, notQuantities, zero } from "../support/spoil.ts";
import { valueAt } from "../support/vectors.ts";

interface Fit {
  design: number[][];
  observed: number[];
  uncertainty: number[];
}

const anySeed = fc.integer({ min: 1, max: 2 ** 31 - 1 });

/** A random overdetermined problem with uncertainties spread over two decades. */
function problem(seed: number): Fit & { truth: number[] } {
  const chance = new Chance(seed);
  const n = chance.whole(1, 6);
  const m = n + chance.whole(0, 10);
  const truth = Array.from({ length: n }, () => chance.between(-10, 10));
  const design = Array.from({ length: m }, () => truth.map(() => chance.between(-1, 1)));
  const uncertainty = design.map(() => chance.spread(0.01, 1));
  const observed = design.map(
    (row, i) => row.reduce((sum, x, j) => sum + x * truth[j]!, 0) + chance.between(-1, 1) * uncertainty[i]!,
  );
  return { design, observed, uncertainty, truth };
}

const Decimal = Library.clone({ precision: 50 });

/** Estimates and covariance by the normal equations, in 50 digits; `condition` is that of the weighted design, roughly. */
function exactFit({ design, observed, uncertainty }: Fit) {
  const n = design[0]!.length;
  const weights = uncertainty.map((u) => new Decimal(1).div(new Decimal(u).times(u)));
  const total = (term: (i: number) => Library): Library =>
    design.reduce((sum, _, i) => sum.plus(term(i).times(weights[i]!)), new Decimal(0));
  const normal = Array.from({ length: n }, (_, p) =>
    Array.from({ length: n }, (_unused, q) =>
      total((i) => new Decimal(design[i]![p]!).times(design[i]![q]!)),
    ),
  );
  const right = normal.map((_, p) => total((i) => new Decimal(design[i]![p]!).times(observed[i]!)));
  // Gauss–Jordan on [normal | identity]; positive definite, so no pivoting is needed.
  const rows = normal.map((row, p) => [...row, ...row.map((_, q) => new Decimal(p === q ? 1 : 0))]);
  for (let p = 0; p < n; p += 1) {
    const pivot = rows[p]![p]!;
    rows[p] = rows[p]!.map((x) => x.div(pivot));
    for (let q = 0; q < n; q += 1) {
      const factor = rows[q]![p]!;
      if (q !== p) rows[q] = rows[q]!.map((x, k) => x.minus(factor.times(rows[p]![k]!)));
    }
  }
  const covariance = rows.map((row) => row.slice(n));
  const largest = (matrix: Library[][]): number => Math.max(...matrix.flat().map((x) => x.abs().toNumber()));
  return {
    estimates: covariance.map((row) =>
      row.reduce((sum, x, q) => sum.plus(x.times(right[q]!)), new Decimal(0)).toNumber(),
    ),
    covariance: covariance.map((row) => row.map((x) => x.toNumber())),
    condition: Math.sqrt(largest(normal) * largest(covariance)),
  };
}
const condition = (given: Fit): number => exactFit(given).condition;

describe("certified reference data (NIST StRD)", () => {
  // Digits after which the difference to the certificate begins: −log₁₀ of the relative difference.
  const digits: Record<string, number> = {
    "strd-norris": 12,
    "strd-noint1": 14,
    "strd-noint2": 14,
    "strd-wampler5": 6,
  };
  const file = vectorFiles().find(({ path }) => path === "shared/vectors/numeric/least-squares.json")!;

  it.each(Object.entries(digits))("%s: at least %i certified digits of every coefficient", (id, least) => {
    const vector = file.vectors.find((one) => one.id === id)!;
    const fit = leastSquares(vector.input as never);
    const reached = Object.entries(vector.expected!)
      .filter(([path]) => path.startsWith("estimates"))
      .map(([path, value]) => {
        const difference = Math.abs((valueAt(fit, path) as number) / (value as number) - 1);
        return -Math.log10(Math.max(difference, 1e-16));
      });
    console.info(`${id}: ${reached.map((one) => one.toFixed(1)).join(", ")} digits`);
    expect(Math.min(...reached)).toBeGreaterThan(least);
  });

  it("exact polynomials of degree 5 (the construction of Wampler 1 and 2): all coefficients, no residual", () => {
    // y = Σ x^i and y = Σ (x/10)^i on x = 0 … 20: the coefficients are exact by construction.
    for (const base of [1, 0.1]) {
      const xs = Array.from({ length: 21 }, (_, x) => x);
      const observed = xs.map((x) => [0, 1, 2, 3, 4, 5].reduce((sum, i) => sum + (base * x) ** i, 0));
      const design = xs.map((x) => [0, 1, 2, 3, 4, 5].map((i) => x ** i));
      const fit = leastSquares({ design, observed, uncertainty: xs.map(() => 1) });
      fit.estimates.forEach((estimate, i) => {
        expect(Math.abs(estimate! / base ** i - 1)).toBeLessThan(1e-8);
      });
      expect(Math.sqrt(fit.chiSquare)).toBeLessThan(1e-9 * Math.max(...observed));
    }
  });
});

describe("a fit", () => {
  it("is the normal equations solved in 50 digits", () => {
    let worst = 0;
    fc.assert(
      fc.property(anySeed, (seed) => {
        const given = problem(seed);
        const exact = exactFit(given);
        // Beyond this even the readings' own last digit moves the answer by more than the limit below.
        if (exact.condition > 1e4) return;
        const fit = leastSquares(given);
        const size = Math.max(...exact.estimates.map(Math.abs));
        const spread = Math.max(...exact.covariance.flat().map(Math.abs));
        exact.estimates.forEach((value, j) => {
          worst = Math.max(worst, Math.abs(fit.estimates[j]! - value) / size);
          exact.covariance[j]!.forEach((expected, k) => {
            expect(Math.abs(fit.covariance[j]![k]! - expected)).toBeLessThan(1e-10 * spread);
          });
        });
        expect(worst).toBeLessThan(1e-10);
        expect(fit.rank).toBe(given.design[0]!.length);
        expect(fit.degreesOfFreedom).toBe(given.design.length - given.design[0]!.length);
      }),
      { numRuns: 1000 },
    );
    console.info(`leastSquares against 50-digit normal equations: ${worst.toExponential(1)}`);
  });

  it("leaves residuals at right angles to every column, and χ² as their weighted squares", () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const given = problem(seed);
        const { design, observed, uncertainty } = given;
        const fit = leastSquares(given);
        expectFinite(fit, `seed ${seed}`);
        const scale = Math.max(...observed.map((y, i) => Math.abs(y) / uncertainty[i]! ** 2));
        design[0]!.forEach((_, j) => {
          const product = fit.residuals.reduce(
            (sum, r, i) => sum + (r * design[i]![j]!) / uncertainty[i]! ** 2,
            0,
          );
          expect(Math.abs(product)).toBeLessThan(1e-9 * scale);
        });
        const sum = fit.residuals.reduce((total, r, i) => total + (r / uncertainty[i]!) ** 2, 0);
        expect(Math.abs(fit.chiSquare - sum)).toBeLessThan(1e-12 * sum + 1e-15);
      }),
      { numRuns: 1000 },
    );
  });

  it("is no worse than any other choice of the unknowns", () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const given = problem(seed);
        const fit = leastSquares(given);
        const chance = new Chance(seed);
        for (let trial = 0; trial < 5; trial += 1) {
          const moved = fit.estimates.map(
            (value) => value! + chance.between(-1, 1) * 10 ** chance.between(-6, 0),
          );
          const chi = given.observed.reduce((sum, y, i) => {
            const fitted = given.design[i]!.reduce((total, x, j) => total + x * moved[j]!, 0);
            return sum + ((y - fitted) / given.uncertainty[i]!) ** 2;
          }, 0);
          expect(chi).toBeGreaterThanOrEqual(fit.chiSquare * (1 - 1e-9) - 1e-12);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("takes an observation repeated k times for one k^½ times as certain", () => {
    fc.assert(
      fc.property(anySeed, fc.integer({ min: 2, max: 5 }), (seed, k) => {
        const given = problem(seed);
        if (condition(given) > 1e4) return;
        const again = Array.from({ length: k - 1 }, () => 0);
        const repeated = leastSquares({
          design: [...given.design, ...again.map(() => given.design[0]!)],
          observed: [...given.observed, ...again.map(() => given.observed[0]!)],
          uncertainty: [...given.uncertainty, ...again.map(() => given.uncertainty[0]!)],
        });
        const sharper = leastSquares({
          ...given,
          uncertainty: given.uncertainty.map((u, i) => (i === 0 ? u / Math.sqrt(k) : u)),
        });
        const size = Math.max(...sharper.estimates.map((value) => Math.abs(value!)));
        repeated.estimates.forEach((value, j) => {
          expect(Math.abs(value! - sharper.estimates[j]!)).toBeLessThan(1e-9 * size);
        });
        expect(repeated.chiSquare).toBeCloseTo(sharper.chiSquare, 6);
      }),
      { numRuns: 1000 },
    );
  });

  it("does not care for units: scaled columns, scaled observations, from micro-ohms to megohms", () => {
    fc.assert(
      fc.property(
        anySeed,
        fc.integer({ min: -12, max: 12 }),
        fc.integer({ min: -12, max: 12 }),
        (seed, c, y) => {
          const given = problem(seed);
          if (condition(given) > 1e4) return;
          const [column, unit] = [10 ** c, 10 ** y];
          const fit = leastSquares(given);
          const scaled = leastSquares({
            design: given.design.map((row) => row.map((x, j) => (j === 0 ? x * column : x))),
            observed: given.observed.map((value) => value * unit),
            uncertainty: given.uncertainty.map((value) => value * unit),
          });
          expect(scaled.rank).toBe(fit.rank);
          const size = Math.max(...fit.estimates.map((value) => Math.abs(value!)));
          fit.estimates.forEach((value, j) => {
            const back = (scaled.estimates[j]! / unit) * (j === 0 ? column : 1);
            expect(Math.abs(back - value!)).toBeLessThan(1e-9 * size);
          });
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe("what the observations do not determine", () => {
  it("is null, by name, and what they do determine is not", () => {
    // b and c only ever appear as a sum; a stands alone.
    const fit = leastSquares({
      design: [
        [1, 0, 0],
        [1, 1, 1],
        [0, 1, 1],
        [2, 3, 3],
      ],
      observed: [2, 7, 5, 19],
      uncertainty: [1, 1, 1, 1],
    });
    expect(fit.estimates[0]).toBeCloseTo(2, 12);
    expect(fit.estimates.slice(1)).toEqual([null, null]);
    expect(fit.rank).toBe(2);
    expect(fit.degreesOfFreedom).toBe(2);
    expect(fit.chiSquare).toBeLessThan(1e-20);
    expect(fit.covariance[1]).toEqual([null, null, null]);
    expect(fit.covariance[0]![0]).not.toBe(null);
  });

  it("is found for any hidden combination, whatever the mixing", () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const chance = new Chance(seed);
        const n = chance.whole(2, 6);
        const m = n + chance.whole(3, 8);
        // A direction in the unknowns that no row sees; some unknowns may take no part in it.
        const hidden = Array.from({ length: n }, () => (chance.happens(0.5) ? chance.between(0.2, 1) : 0));
        if (hidden.filter((part) => part !== 0).length < 2) return;
        const length = Math.hypot(...hidden);
        const direction = hidden.map((part) => part / length);
        const design = Array.from({ length: m }, () => {
          const row = direction.map(() => chance.between(-1, 1));
          const along = row.reduce((sum, x, j) => sum + x * direction[j]!, 0);
          return row.map((x, j) => x - along * direction[j]!);
        });
        const observed = design.map((row) => row.reduce((sum, x) => sum + x, 0));
        const fit = leastSquares({ design, observed, uncertainty: design.map(() => 0.1) });
        expect(fit.rank).toBe(n - 1);
        fit.estimates.forEach((value, j) => {
          if (direction[j] !== 0) expect(value).toBe(null);
          else expect(value).toBeCloseTo(1, 7);
        });
        expect(fit.chiSquare).toBeLessThan(1e-15);
      }),
      { numRuns: 1000 },
    );
  });

  it("is not what stands clear of rounding: columns that differ by 1e-8 of their length are two, by 1e-12 one", () => {
    const xs = [1, 2, 3, 4, 5, 6];
    const nearly = (part: number) =>
      leastSquares({
        design: xs.map((x) => [1, 1 + part * x]),
        observed: xs.map((x) => 2 + 3 * part * x),
        uncertainty: xs.map(() => 1),
      });
    const clear = nearly(1e-8);
    expect(clear.rank).toBe(2);
    // Variance of a slope (definition): u²/Σ(x − mean)², with Σ(x − 3.5)² = 17.5 in units of 1e-8.
    expect((clear.covariance[1]![1]! * 17.5) / 1e16).toBeCloseTo(1, 6);
    expect(clear.estimates[1]).toBeCloseTo(3, 5);
    const lost = nearly(1e-12);
    expect(lost.rank).toBe(1);
    expect(lost.estimates).toEqual([null, null]);
  });

  it("takes along an unknown that hangs on it by a ten-thousandth, and not one that hangs on it by a ten-millionth", () => {
    // The third column is the second plus a part of the first: raising b3 and lowering b2 by 1 lowers b1 by that part.
    const hanging = (part: number) =>
      leastSquares({
        design: [
          [1, 0],
          [0, 1],
          [1, 1],
          [1, -1],
        ].map(([a, b]) => [a!, b!, b! + part * a!]),
        observed: [1, 2, 3, -1],
        uncertainty: [1, 1, 1, 1],
      });
    expect(hanging(1e-4).estimates).toEqual([null, null, null]);
    const free = hanging(1e-7).estimates;
    expect(free[0]).toBeCloseTo(1, 5);
    expect(free.slice(1)).toEqual([null, null]);
  });

  it("is everything when a column is empty, and only that unknown", () => {
    const fit = leastSquares({
      design: [
        [1, 0],
        [2, 0],
      ],
      observed: [3, 6],
      uncertainty: [1, 1],
    });
    expect(fit.estimates[0]).toBeCloseTo(3, 13);
    expect(fit.estimates[1]).toBe(null);
  });

  it("includes all but the seen combination when there are fewer observations than unknowns", () => {
    const fit = leastSquares({ design: [[1, 1, 0]], observed: [5], uncertainty: [0.1] });
    expect(fit).toMatchObject({ estimates: [null, null, null], rank: 1, degreesOfFreedom: 0 });
    expect(Math.abs(fit.residuals[0]!)).toBeLessThan(1e-14);
  });
});

describe("refusals", () => {
  const valid: Fit = {
    design: [
      [1, 0],
      [1, 1],
    ],
    observed: [1, 2],
    uncertainty: [0.1, 0.1],
  };
  const call = (change: object) => () => leastSquares({ ...valid, ...change });

  it("name the observation, the uncertainty or the design entry", () => {
    for (const [value, code] of notQuantities) {
      expectRefusal(call({ observed: [1, value] }), code, "observed.1", String(value));
      expectRefusal(
        call({
          design: [
            [1, 0],
            [1, value],
          ],
        }),
        code,
        "design.1.1",
        String(value),
      );
    }
    for (const [value, code] of [...notQuantities, ...negative, ...zero])
      expectRefusal(call({ uncertainty: [value, 1] }), code, "uncertainty.0", String(value));
  });

  it("name the shape", () => {
    expectRefusal(call({ design: [] }), "missing", "design", "no rows");
    expectRefusal(call({ design: [[]] }), "missing", "design", "no columns");
    expectRefusal(call({ design: undefined }), "missing", "design", "no design");
    expectRefusal(call({ observed: undefined }), "missing", "observed", "no observations");
    expectRefusal(call({ uncertainty: null }), "missing", "uncertainty", "no uncertainties");
    expectRefusal(call({ design: [[1, 0], undefined] }), "inconsistent", "design.1", "a row missing");
    expectRefusal(() => leastSquares(undefined as never), "missing", "design", "no argument");
    expectRefusal(call({ observed: [1] }), "inconsistent", "design", "too few observations");
    expectRefusal(call({ uncertainty: [1] }), "inconsistent", "design", "too few uncertainties");
    expectRefusal(call({ design: [[1, 0], [1]] }), "inconsistent", "design.1", "ragged");
  });

  it("take the place of NaN and infinity for numbers no float64 can square", () => {
    const extreme = fc.constantFrom(
      5e-324,
      1e-300,
      1e-160,
      1e-30,
      1,
      -1,
      1e30,
      1e155,
      -1e200,
      Number.MAX_VALUE,
    );
    fc.assert(
      fc.property(
        fc.array(extreme, { minLength: 6, maxLength: 6 }),
        fc.array(extreme.map(Math.abs), { minLength: 3, maxLength: 3 }),
        (x, uncertainty) => {
          let fit: unknown;
          try {
            fit = leastSquares({
              design: [
                [1, x[0]!],
                [x[1]!, 1],
                [x[2]!, x[2]!],
              ],
              observed: x.slice(3),
              uncertainty,
            });
          } catch (error) {
            expect(isElectroheatError(error), String(error)).toBe(true);
            return;
          }
          expectFinite(fit, JSON.stringify([x, uncertainty]));
        },
      ),
      { numRuns: 1000 },
    );
  });
});

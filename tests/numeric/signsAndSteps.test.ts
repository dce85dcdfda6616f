/** Signs of nothing, lists that do not fit, the steps of the integrator and the density of Student's t: by definition or by hand. */
import {
  angleDegrees,
  bracketedRoot,
  complexQuotient,
  integrateOde,
  leastSquares,
  phasor,
  studentCumulative,
  studentQuantile,
} from "electroheat/numeric";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

describe("a quotient", () => {
  it("by nothing is refused as such", () => {
    for (const zero of [
      { re: 0, im: 0 },
      { re: -0, im: 0 },
    ]) {
      const [issue] = caught(() => complexQuotient({ re: 1, im: 1 }, zero)).issues;
      expect([issue?.code, issue?.path, issue?.expected, issue?.received]).toEqual([
        "out-of-range",
        "b",
        "a complex number other than 0",
        "0",
      ]);
    }
  });
});

describe("a quotient, slopes and names", () => {
  it("a purely imaginary divisor is one", () => {
    // (1 + j)/(2j) = ½ − ½j.
    expect(complexQuotient({ re: 1, im: 1 }, { re: 0, im: 2 })).toEqual({ re: 0.5, im: -0.5 });
    expect(complexQuotient({ re: 1, im: 1 }, { re: 2, im: 0 })).toEqual({ re: 0.5, im: 0.5 });
  });

  it("one slope of several that is no number is refused, and ends are refused by name", () => {
    const run = (change: object) => () =>
      integrateOde({ derivative: () => [1, 1], start: 0, end: 1, initial: [0, 0], ...change });
    expect(caught(run({ derivative: () => [1, Number.NaN] })).argument).toBe("derivative");
    for (const name of ["start", "end"]) expect(caught(run({ [name]: Number.NaN })).argument).toBe(name);
    for (const name of ["low", "high"]) {
      const bracket = { evaluate: (x: number) => x, low: -1, high: 1, tolerance: 1e-9, [name]: Number.NaN };
      expect(caught(() => bracketedRoot(bracket)).argument).toBe(name);
    }
    const stopped = run({ event: (at: number) => 0.25 - at })();
    expect([stopped.stopped, stopped.at]).toEqual(["event", expect.closeTo(0.25, 12)]);
  });
});

describe("signs of nothing", () => {
  it("no negative zero comes out of a phasor or an angle, whichever way it is turned", () => {
    for (const magnitude of [0, -0, 5, -5])
      for (let quarter = -8; quarter <= 8; quarter += 1) {
        const { re, im } = phasor({ magnitude, degrees: quarter === 0 ? -0 : 90 * quarter });
        const [cos, sin] = [
          [1, 0, -1, 0],
          [0, 1, 0, -1],
        ].map((of) => of[(quarter + 8) % 4] as number) as [number, number];
        expect([re, im]).toEqual([magnitude * cos + 0, magnitude * sin + 0]);
      }
    for (const z of [
      { re: 1, im: -0 },
      { re: 0, im: -0 },
      { re: 0, im: 0 },
    ])
      expect(Object.is(angleDegrees(z), 0)).toBe(true);
    for (const im of [0, -0]) expect(angleDegrees({ re: -1, im })).toBe(180);
  });
});

describe("a fit of lists that do not fit", () => {
  it("is refused with how many there are of each", () => {
    const fit = { design: [[1], [1], [1]], observed: [1, 2, 3], uncertainty: [1, 1, 1] };
    const refused = (change: object) => {
      const [issue] = caught(() => leastSquares({ ...fit, ...change } as typeof fit)).issues;
      return [issue?.code, issue?.path, issue?.expected, issue?.received];
    };
    const each = "one row and one uncertainty for each observation";
    for (const [change, counts] of [
      [{ design: [[1], [1]] }, "2 rows, 3 observations, 3 uncertainties"],
      [{ design: [[1], [1], [1], [1]] }, "4 rows, 3 observations, 3 uncertainties"],
      [{ uncertainty: [1, 1] }, "3 rows, 3 observations, 2 uncertainties"],
      [{ uncertainty: [1, 1, 1, 1] }, "3 rows, 3 observations, 4 uncertainties"],
      [{ observed: [1, 2] }, "3 rows, 2 observations, 3 uncertainties"],
    ] as const)
      expect(refused(change)).toEqual(["inconsistent", "design", each, `"${counts}"`]);
    expect(refused({ design: [[1], [1, 2], [1]] })).toEqual(["inconsistent", "design.1", "1 columns", "2"]);
    expect(refused({ design: [[1], undefined, [1]] })).toEqual([
      "inconsistent",
      "design.1",
      "1 columns",
      "undefined",
    ]);
    expect(refused({ design: [[1], [Number.NaN], [1]] }).slice(0, 2)).toEqual(["not-a-number", "design.1.0"]);
    for (const design of [undefined, [], [[]]])
      expect(refused({ design }).slice(0, 3)).toEqual([
        "missing",
        "design",
        "at least one row and one column",
      ]);
    for (const list of ["observed", "uncertainty"])
      expect(refused({ [list]: 5 }).slice(0, 3)).toEqual(["missing", list, "a list of numbers"]);
    expect(refused({ observed: [1e200, 2, 3] }).slice(0, 2)).toEqual(["out-of-range", "observed"]);
    // By hand: the mean of 1, 2, 3 is 2 with u = 1/√3, χ² = 2 on two degrees of freedom.
    expect(leastSquares(fit)).toMatchObject({
      estimates: [expect.closeTo(2, 14)],
      covariance: [[expect.closeTo(1 / 3, 14)]],
      chiSquare: expect.closeTo(2, 13),
      degreesOfFreedom: 2,
      rank: 1,
    });
  });
});

describe("the integrator", () => {
  const refused = (change: object) => {
    const [issue] = caught(() =>
      integrateOde({ derivative: () => [1], start: 0, end: 1, initial: [0], ...change }),
    ).issues;
    return [issue?.path, issue?.expected, issue?.received];
  };

  it("says what slope it was given, and where", () => {
    expect(refused({ derivative: () => [Number.NaN] })).toEqual([
      "derivative",
      "1 finite numbers at 0",
      '"NaN"',
    ]);
    expect(refused({ derivative: () => [1, 2] })).toEqual(["derivative", "1 finite numbers at 0", "2"]);
    expect(refused({ end: -1 }).slice(0, 2)).toEqual(["end", "more than start, 0"]);
    for (const relativeTolerance of [9e-15, 0.11])
      expect(refused({ relativeTolerance })[1]).toBe("1e-14 to 0.1");
    for (const relativeTolerance of [1e-14, 0.1])
      expect(
        integrateOde({ derivative: () => [1], start: 0, end: 1, initial: [0], relativeTolerance }).state[0],
      ).toBeCloseTo(1, 14);
  });

  it("needs as few steps as the published pair: decay over ten time constants", () => {
    // The same system by an independent package at the same tolerance takes steps of the same order; a wrong weight of the error
    // estimate multiplies them.
    const steps = [1e-6, 1e-9].map(
      (tolerance) =>
        integrateOde({
          derivative: (_, [y]) => [-(y as number)],
          start: 0,
          end: 10,
          initial: [1],
          relativeTolerance: tolerance,
          absoluteTolerance: tolerance,
        }).steps,
    ) as [number, number];
    // Order 5: a thousandth of the tolerance is 1000^(1/5) = 4 times the steps.
    expect(steps[1] / steps[0]).toBeGreaterThan(2.5);
    expect(steps[1] / steps[0]).toBeLessThan(5);
    expect(steps[0]).toBeLessThan(60);
  });

  it("measures an error by the larger end of its step, so that a passage through 0 costs no more steps", () => {
    const steps = (relativeTolerance: number, absoluteTolerance: number) =>
      integrateOde({
        derivative: (_, [y, v]) => [v as number, -(y as number)],
        start: 0,
        end: 40,
        initial: [1, 0],
        relativeTolerance,
        absoluteTolerance,
      }).steps;
    // Where the amplitude is 1, an absolute allowance alone is the whole of it at every place.
    expect(steps(1e-5, 1e-12)).toBeLessThan(1.5 * steps(1e-14, 1e-5));
  });

  it("begins with a hundredth of the time in which the state changes by its own size, or of the whole way", () => {
    const places: number[] = [];
    const first = (rate: number, initial: number, end: number) => {
      places.length = 0;
      integrateOde({
        derivative: (at) => {
          places.push(at);
          return [rate];
        },
        start: 0,
        end,
        initial: [initial],
      });
      // Second stage of the pair: a fifth of the first step.
      return 5 * (places[1] as number);
    };
    expect(first(4, 2, 100)).toBeCloseTo(0.01 * (2 / 4), 12);
    expect(first(0.001, 2, 100)).toBeCloseTo(1, 12);
    expect(first(4, 0, 100)).toBeCloseTo(1, 12);
    expect(first(0, 2, 100)).toBeCloseTo(1, 12);
    expect(first(1e12, 2, 100)).toBeCloseTo(1e-7, 15);
  });
});

describe("Student's t by its series in 1/ν", () => {
  /** ln Γ((ν + 1)/2) − ln Γ(ν/2) − ½·ln(ν/2), by Stirling's series (Abramowitz and Stegun, 6.1.41): ratio to the normal density. */
  const shift = (nu: number) => -1 / (4 * nu) + 1 / (24 * nu ** 3);
  /** Density of t by its definition (26.7.1), from log1p so that no digits go. */
  const density = (t: number, nu: number) =>
    Math.exp(shift(nu) - ((nu + 1) / 2) * Math.log1p((t * t) / nu)) / Math.sqrt(2 * Math.PI);
  /** Integral of the density from 0, by Simpson's rule. */
  const fromZero = (t: number, nu: number) => {
    const n = 2000;
    let sum = density(0, nu) + density(t, nu);
    for (let k = 1; k < n; k += 1) sum += (k % 2 === 1 ? 4 : 2) * density((k * t) / n, nu);
    return (sum * t) / (3 * n);
  };

  it.each([
    [200_000, 1],
    [200_000, 3],
    [150_000, 5],
    [1e6, 2],
    [1e8, 4],
  ])("of %d degrees of freedom at %d is the integral of its density, and back", (degreesOfFreedom, t) => {
    const probability = 0.5 + fromZero(t, degreesOfFreedom);
    expect(studentCumulative({ t, degreesOfFreedom })).toBeCloseTo(probability, 13);
    expect(studentCumulative({ t: -t, degreesOfFreedom })).toBeCloseTo(1 - probability, 13);
    const tail = 0.5 - fromZero(t, degreesOfFreedom);
    if (t > 4) return;
    expect(studentQuantile({ probability: tail, degreesOfFreedom }) / -t).toBeCloseTo(1, 9);
  });
});

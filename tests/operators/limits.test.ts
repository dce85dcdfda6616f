/**
 * Where the operators change their mind: narrow domains, slopes drowned by rounding, bends at the limit, jumps beside steep slopes.
 * Slopes and roots by closed forms; limits from the docstrings; factors of Student's t from JCGM 100:2008, Table G.2.
 */
import { solveFor, uncertaintyBudget } from "electroheat/operators";
import { describe, expect, it } from "vitest";
import { slopesAt } from "../../src/operators/partials.ts";
import { caught } from "../support/caught.ts";

const at = (estimate: number, standardUncertainty: number) =>
  ({ distribution: "normal", estimate, standardUncertainty }) as const;
const budget = (calculation: (input: { x: number }) => number, x: number, u: number) =>
  uncertaintyBudget({ calculation, inputs: { x: at(x, u) } });
const slope = (calculation: (input: { x: number }) => number, x: number, u = 0) => {
  const [line] = budget(calculation, x, u).outputs[0]?.lines ?? [];
  return { value: line?.sensitivity as number, error: line?.sensitivityError as number };
};

describe("sensitivities", () => {
  const within =
    (low: number, high: number) =>
    ({ x }: { x: number }) => {
      if (x < low || x > high) throw new RangeError("outside");
      return Math.sin(x);
    };

  it.each([
    ["central in a domain of a thousandth", 1 - 1e-3, 1 + 1e-3, 1e-9],
    ["central in one of a thousand-millionth", 1 - 1e-9, 1 + 1e-9, 1e-5],
    ["ahead at its low end", 1, 1 + 1e-3, 1e-7],
    ["back at its high end", 1 - 1e-3, 1, 1e-7],
    ["ahead where only the high side is wide", 1 - 1e-18, 2, 1e-7],
  ])("are %s", (_what, low, high, tolerance) => {
    const { value, error } = slope(within(low, high), 1);
    const off = Math.abs(value - Math.cos(1));
    expect(off).toBeLessThan(tolerance);
    expect(off).toBeLessThanOrEqual(2 * error + 1e-15);
    expect(error).toBeLessThan(10 * tolerance);
  });

  it.each([
    ["one thirty-second of the estimate", 1, 2 ** -10, 2 ** -5],
    ["the uncertainty where it is larger", 1, 0.5, 0.5],
    ["the uncertainty where it is larger, below nothing", -1, 0.5, 0.5],
    ["the uncertainty of nothing", 0, 0.25, 0.25],
  ])("begin with a step of %s", (_what, x, u, step) => {
    // A straight line has its slope with the first steps; the docstring names the first, which is then halved twelve times.
    const seen: number[] = [];
    const probe = (at: number) => {
      seen.push(at);
      return [3 * at];
    };
    expect(slopesAt(probe, x, u, "x").slopes).toEqual([3]);
    const steps = seen.map((one) => Math.abs(one - x));
    expect(Math.max(...steps)).toBe(step);
    expect(Math.min(...steps)).toBe(step / 2 ** 12);
    // Either side alike.
    expect(seen.reduce((sum, one) => sum + (one - x), 0)).toBe(0);
  });

  it("need a domain that holds more than the estimate", () => {
    expect(caught(() => slope(within(1 - 1e-14, 1 + 1e-14), 1))).toMatchObject({
      code: "out-of-range",
      argument: "inputs.x",
    });
  });

  it("at zero, without an uncertainty, with one, and of either sign", () => {
    for (const u of [0, 1e-3, 2]) expect(slope(({ x }) => Math.sin(x), 0, u).value).toBeCloseTo(1, 9);
    expect(slope(({ x }) => x * x, 0, 1)).toEqual({ value: 0, error: expect.closeTo(0, 15) });
    expect(slope(({ x }) => x ** 3, -4).value).toBeCloseTo(48, 7);
    expect(slope(() => 5, 3)).toMatchObject({ value: 0 });
  });

  it("drowned by rounding are taken over longer steps, and the error owns up to what is left", () => {
    // A step of 3e-8 in a result of 5e7 is less than its last digit (7e-9 for each of the two values).
    const { value, error } = slope(({ x }) => 5e7 + x, 1e-6);
    expect(Math.abs(value - 1)).toBeLessThan(1e-4);
    expect(Math.abs(value - 1)).toBeLessThanOrEqual(2 * error);
    expect(error).toBeLessThan(1e-3);
    // Beside an output that is drowned another keeps its own best steps.
    const { outputs } = uncertaintyBudget({
      calculation: ({ x }: { x: number }) => ({ large: 5e7 + x, sharp: Math.exp(1e6 * x) }),
      inputs: { x: at(1e-6, 0) },
    });
    const [large, sharp] = outputs.map(({ lines }) => lines[0]?.sensitivity as number);
    expect(Math.abs((large as number) - 1)).toBeLessThan(1e-4);
    expect((sharp as number) / (1e6 * Math.E)).toBeCloseTo(1, 8);
  });
});

describe("the budget", () => {
  it("calls first order rough from a tenth of the combined uncertainty on, and says which outputs", () => {
    // x + k·x² at 0 with u = 1: slope 1, combined 1, bend k.
    const calculation = ({ x, k }: { x: number; k: number }) => ({
      bent: x + k * x * x,
      straight: 2 * x,
      down: x - k * x * x,
    });
    const warned = (k: number) =>
      uncertaintyBudget({ calculation, inputs: { x: at(0, 1) }, fixed: { k } }).warnings;
    expect(warned(0.0999)).toEqual([]);
    expect(warned(0.1001)).toEqual([
      {
        code: "approximate",
        path: "inputs.x",
        message:
          "bent, down bends over the uncertainty of x by more than a tenth of the combined standard uncertainty: first order is rough; use monteCarlo",
      },
    ]);
    // A slope of nothing, bent all the same; and what float64 cannot tell from rounding.
    expect(budget(({ x }) => 1000 + x * x, 0, 1).warnings).toHaveLength(1);
    expect(budget(({ x }) => 1e15 + x * x, 0, 1).warnings).toEqual([]);
    expect(budget(({ x }) => x * x, 3, 0).warnings).toEqual([]);
  });

  it("says that one standard uncertainty leaves the domain, on either side", () => {
    for (const [low, high] of [
      [1.95, 3],
      [1, 2.05],
    ] as const) {
      const { warnings } = budget(({ x }) => (x < low || x > high ? Number.NaN : x), 2, 0.1);
      expect(warnings).toEqual([
        {
          code: "approximate",
          path: "inputs.x",
          message:
            "the calculation refuses x one standard uncertainty from its estimate: first order is rough; use monteCarlo",
        },
      ]);
    }
  });

  const sum = (input: object) => Object.values(input).reduce((total: number, x) => total + x, 0);
  const parts = (degrees: readonly (number | "infinite")[]) =>
    Object.fromEntries(degrees.map((degreesOfFreedom, i) => [`x${i}`, { ...at(1, 1), degreesOfFreedom }]));

  it("takes correlated inputs as one part with the fewest degrees of freedom, and says which", () => {
    const of = (degrees: readonly (number | "infinite")[], correlated: readonly string[]) => {
      const coefficients = correlated.map((_, i) => correlated.map((_one, j) => (i === j ? 1 : 0.5)));
      const found = uncertaintyBudget({
        calculation: sum,
        inputs: parts(degrees),
        correlation: { inputs: correlated, coefficients },
      });
      return [found.outputs[0]?.effectiveDegreesOfFreedom, found.warnings.map(({ message }) => message)];
    };
    expect(of([9, 9], ["x0", "x1"])).toEqual([
      expect.closeTo(9, 9),
      ["x0, x1 are correlated and taken as read together: one part with 9 degrees of freedom"],
    ]);
    expect(of(["infinite", 9], ["x0", "x1"])).toEqual([
      expect.closeTo(9, 9),
      ["x0, x1 are correlated and their degrees of freedom differ; the fewest, 9, are taken for all of them"],
    ]);
    expect(of(["infinite", "infinite"], ["x0", "x1"])).toEqual(["infinite", []]);
    // The third stands alone: u² = 3 and 1; ν = (3 + 1)²/(3²/4 + 1²/8) (GUM, G.4.1).
    expect(of([5, 8, 4], ["x2", "x0"])).toEqual([
      expect.closeTo(16 / (9 / 4 + 1 / 8), 9),
      ["x0, x2 are correlated and their degrees of freedom differ; the fewest, 4, are taken for all of them"],
    ]);
  });

  it("counts degrees of freedom down to whole ones, rounding aside, or takes them exactly", () => {
    const factor = (degrees: readonly number[], degreesOfFreedom: "truncated" | "exact") =>
      uncertaintyBudget({
        calculation: sum,
        inputs: parts(degrees),
        degreesOfFreedom,
        coverageProbability: 0.95,
      }).outputs[0]?.coverageFactor as number;
    // n equal parts of ν each: n·ν. Table G.2 at 95 %: 2.57 for 5, 2.45 for 6, 4.30 for 2.
    expect(factor([1, 1, 1, 1, 1], "truncated")).toBeCloseTo(2.57, 2);
    expect(factor([1, 1, 1, 1, 1], "exact")).toBeCloseTo(2.57, 2);
    // 5.5 lies between.
    expect(factor([2.75, 2.75], "truncated")).toBeCloseTo(2.57, 2);
    expect(factor([2.75, 2.75], "exact")).toBeLessThan(2.52);
    expect(factor([2.75, 2.75], "exact")).toBeGreaterThan(2.48);
    expect(factor([2], "truncated")).toBeCloseTo(4.3, 2);
  });

  it("has no share of nothing, and shares of squares", () => {
    const shares = (u: number) =>
      uncertaintyBudget({
        calculation: ({ a, b }: { a: number; b: number }) => 3 * a - 4 * b,
        inputs: { a: at(1, u), b: at(1, u) },
        sensitivities: { result: { a: 3, b: -4 } },
      }).outputs[0];
    expect(shares(0)).toMatchObject({
      standardUncertainty: 0,
      expandedUncertainty: 0,
      low: -1,
      high: -1,
      lines: [
        { input: "a", share: 0, contribution: 0, sensitivity: 3, sensitivityError: 0 },
        { input: "b", share: 0, contribution: 0, sensitivity: -4, sensitivityError: 0 },
      ],
    });
    // 3-4-5: parts 6 and 8 of 10, 36 % and 64 %; normal: 1.959964·10.
    expect(shares(2)?.lines).toMatchObject([
      { contribution: 6, share: expect.closeTo(0.36, 12) },
      { contribution: 8, share: expect.closeTo(0.64, 12) },
    ]);
    expect(shares(2)?.low).toBeCloseTo(-1 - 19.59964, 4);
    expect(shares(2)?.high).toBeCloseTo(-1 + 19.59964, 4);
  });
});

describe("solveFor", () => {
  const solve = (f: (x: number) => number, more: object = {}) =>
    solveFor({
      calculation: ({ x }: { x: number }) => f(x),
      input: "x",
      low: 0,
      high: 1,
      target: 0,
      all: true,
      cells: 16,
      ...more,
    });
  const found = (solved: ReturnType<typeof solve>) =>
    solved.outcome === "found" ? solved.roots.map(({ value }) => value) : solved.outcome;

  it("takes samples at equal distances, or equal ratios, the ends as they are given", () => {
    const places = (more: object) => {
      const xs: number[] = [];
      solve(
        (x) => {
          xs.push(x);
          return 1;
        },
        { cells: 4, ...more },
      );
      return xs.sort((a, b) => a - b);
    };
    expect(places({ low: -1, high: 3 })).toEqual([-1, 0, 1, 2, 3]);
    const ratios = places({ low: 0.1, high: 1e3, spacing: "logarithmic" });
    expect([ratios[0], ratios.at(-1), ratios.length]).toEqual([0.1, 1000, 5]);
    for (const [i, x] of ratios.entries()) expect(x / 10 ** (i - 1)).toBeCloseTo(1, 12);
    expect(places({ cells: 1 })).toEqual([0, 1]);
  });

  it("needs no scan where the ends are on either side of the target and one root is asked for", () => {
    let calls = 0;
    const line = (x: number) => {
      calls += 1;
      return x - 0.3;
    };
    expect(solve(line, { all: false, cells: 4096 })).toEqual({
      outcome: "found",
      roots: [{ value: expect.closeTo(0.3, 12), output: expect.closeTo(0, 12) }],
      jumps: [],
      gaps: [],
      cells: 0,
    });
    expect(calls).toBeLessThan(100);
    // Nor where an end is a root.
    for (const root of [0, 1]) expect(solve((x) => x - root, { all: false })).toMatchObject({ cells: 0 });
    // A jump between the ends is no root: then it is scanned.
    expect(solve((x) => (x < 0.3 ? -1 : 1), { all: false })).toMatchObject({ outcome: "no root", cells: 16 });
  });

  it("tells a small jump on a steep slope from a root, and a steep root from a jump", () => {
    const jump = solve((x) => (x < 0.3 ? 1e6 * (x - 0.3) - 1 : 1e6 * (x - 0.3) + 1));
    expect(jump.outcome).toBe("no root");
    expect(jump.jumps).toEqual([{ value: expect.closeTo(0.3, 9), output: expect.any(Number) }]);
    expect(found(solve((x) => 1e6 * (x - 0.3)))).toEqual([expect.closeTo(0.3, 9)]);
    expect(found(solve((x) => Math.tanh(1e7 * (x - 0.3))))).toEqual([expect.closeTo(0.3, 9)]);
  });

  it("takes a figure rounded to its twelfth digit for a root, and one rounded to its third for a jump", () => {
    // Stairs that pass from −½ to +½ of a step at 0.3: a thousand spacings of doubles on, they are where they were.
    const stairs = (step: number) => (x: number) => (Math.floor((x - 0.3) / step) + 0.5) * step;
    expect(found(solve(stairs(1e-12)))).toEqual([expect.closeTo(0.3, 9)]);
    expect(solve(stairs(1e-3)).jumps).toEqual([
      { value: expect.closeTo(0.3, 9), output: expect.any(Number) },
    ]);
  });

  it.each([1e-200, 1e200])("finds pairs and touches of functions of size %d", (size) => {
    expect(found(solve((x) => size * ((x - 0.333) ** 2 - 1e-8)))).toEqual([
      expect.closeTo(0.3329, 9),
      expect.closeTo(0.3331, 9),
    ]);
    expect(found(solve((x) => -size * (x - 0.333) ** 2))).toEqual([expect.closeTo(0.333, 6)]);
    expect(found(solve((x) => size * ((x - 0.333) ** 2 + 1e-3)))).toBe("no root");
    expect(found(solve((x) => (x < 0.3 ? -size : size)))).toBe("no root");
    // A pair midway between two samples that are alike.
    expect(found(solve((x) => size * ((x - 1 / 32) ** 2 - 1e-6)))).toEqual([
      expect.closeTo(1 / 32 - 1e-3, 9),
      expect.closeTo(1 / 32 + 1e-3, 9),
    ]);
  });

  it("gives the first root unless all are asked for, in rising order, each once", () => {
    const twice = (x: number) => (x - 0.2) * (x - 0.7);
    expect(found(solve(twice))).toEqual([expect.closeTo(0.2, 9), expect.closeTo(0.7, 9)]);
    expect(found(solve(twice, { all: false }))).toEqual([expect.closeTo(0.2, 9)]);
    // Roots at samples, of either crossing and of none.
    expect(found(solve((x) => (x - 0.25) * (x - 0.5) * (0.75 - x)))).toEqual([0.25, 0.5, 0.75]);
    expect(found(solve((x) => (x - 0.25) ** 2 * (x - 0.75) ** 2))).toEqual([0.25, 0.75]);
    expect(found(solve((x) => -Math.abs(x - 0.5)))).toEqual([0.5]);
  });

  it("names the sample that came closest, the first of equals, and what the ends give above the target", () => {
    expect(solve((x) => Math.abs(x - 0.5) + 2, { target: 1 })).toMatchObject({
      outcome: "no root",
      atLow: 2.5,
      atHigh: 2.5,
      closest: { value: 0.5, output: 2 },
      cells: 16,
    });
    expect(solve(() => -3)).toMatchObject({ closest: { value: 0, output: -3 } });
  });

  it("says what stood in place of a number, by the name of the output", () => {
    const reason = (answer: unknown, output?: string) =>
      solveFor({
        calculation: (_: { x: number }) => answer,
        input: "x",
        low: 0,
        high: 1,
        target: 0,
        ...(output === undefined ? {} : { output }),
      }).gaps[0]?.reason;
    expect(reason("open")).toBe('the result is "open", not a number');
    expect(reason({ y: null }, "y")).toBe("y is null, not a number");
    expect(reason({ y: [1] }, "y.1")).toBe("y.1 is undefined, not a number");
    expect(reason(Number.NaN)).toBe("the result is NaN, not a number");
  });

  it("joins gaps that meet and keeps those apart that do not, each with its edges and its reason", () => {
    const gaps = solve((x) => {
      if (x > 0.1 && x < 0.3) throw new RangeError("first");
      if (x > 0.6) throw new RangeError("second");
      return 1;
    }).gaps;
    expect(gaps).toEqual([
      { low: expect.closeTo(0.1, 12), high: expect.closeTo(0.3, 12), reason: "RangeError: first" },
      { low: expect.closeTo(0.6, 12), high: 1, reason: "RangeError: second" },
    ]);
    // A hole within a cell, met while a sign change is narrowed.
    const inner = solve((x) => (Math.abs(x - 0.34) < 1e-3 ? Number.NaN : x - 0.34));
    expect(inner.outcome).toBe("no root");
    expect(inner.gaps).toHaveLength(1);
    expect(Math.abs((inner.gaps[0]?.low as number) - 0.34)).toBeLessThan(1e-3);
    expect(inner.gaps[0]?.reason).toBe("the result is NaN, not a number");
  });
});

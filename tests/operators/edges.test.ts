/**
 * What the operators refuse, and where a result is plain. Figures by definition (GUM, JCGM 100:2008, 5.1.2: independent parts add as
 * squares; 5.2.2: with r = ±1 they add as numbers), names from the docstrings.
 */
import {
  type Correlation,
  evaluateColumns,
  inputsFromSimultaneousReadings,
  monteCarlo,
  propagateUncertainty,
  solveFor,
  uncertaintyBudget,
  validateFirstOrder,
} from "electroheat/operators";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { expectRefusal } from "../support/spoil.ts";

describe("propagateUncertainty", () => {
  const parts = { sensitivities: [[3, 4]], standardUncertainties: [1, 1] };

  it("adds independent parts as squares, wholly correlated ones as numbers", () => {
    expect(propagateUncertainty(parts)).toMatchObject({ standardUncertainties: [5], covariance: [[25]] });
    for (const [r, sum] of [
      [1, 7],
      [-1, 1],
      [0, 5],
    ] as const) {
      const correlation = [
        [1, r],
        [r, 1],
      ];
      expect(propagateUncertainty({ ...parts, correlation }).standardUncertainties[0]).toBeCloseTo(sum, 12);
    }
  });

  it.each([
    [{ sensitivities: [] }, "missing", "sensitivities"],
    [{ sensitivities: undefined }, "missing", "sensitivities"],
    [{ standardUncertainties: [] }, "missing", "standardUncertainties"],
    [{ standardUncertainties: [1, -1] }, "out-of-range", "standardUncertainties.1"],
    [{ sensitivities: [[3]] }, "inconsistent", "sensitivities.0"],
    [{ sensitivities: [[3, Number.NaN]] }, "not-a-number", "sensitivities.0.1"],
    [{ sensitivities: [[1e200, 0]] }, "out-of-range", "sensitivities"],
    [{ correlation: null }, "missing", "correlation"],
    [{ correlation: [[1]] }, "inconsistent", "correlation"],
    [
      {
        correlation: [
          [1, 0.5],
          [0.4, 1],
        ],
      },
      "inconsistent",
      "correlation",
    ],
  ] as const)("refuses %j", (change, code, argument) => {
    const error = caught(() => propagateUncertainty({ ...parts, ...change } as typeof parts));
    expect([error.code, error.argument?.split(".")[0]]).toEqual([code, argument.split(".")[0]]);
    if (code !== "inconsistent") expect(error.argument).toBe(argument);
  });
});

describe("correlated inputs", () => {
  const input = { distribution: "normal", estimate: 2, standardUncertainty: 0.1 } as const;
  const budget = (correlation: object) => () =>
    uncertaintyBudget({
      calculation: ({ a, b }: { a: number; b: number }) => a + b,
      inputs: { a: input, b: input },
      correlation: correlation as Correlation,
    });

  it("are named, each once", () => {
    const coefficients = [
      [1, 0.3],
      [0.3, 1],
    ];
    expectRefusal(budget({ inputs: "ab", coefficients }), "missing", "correlation.inputs", "no list");
    expectRefusal(budget({ inputs: ["a", "c"], coefficients }), "unknown-name", "correlation.inputs.1", "c");
    expectRefusal(budget({ inputs: ["a", "a"], coefficients }), "duplicate", "correlation.inputs.1", "twice");
    // u² = 0.1² + 0.1² + 2·0.3·0.1².
    const u = budget({ inputs: ["b", "a"], coefficients })().outputs[0]?.standardUncertainty;
    expect(u).toBeCloseTo(Math.sqrt(0.026), 9);
  });

  it("that never moved have no correlation, and a list of readings there must be", () => {
    const still = inputsFromSimultaneousReadings({ a: [5, 5, 5], b: [1, 2, 3] });
    expect(still.correlation.coefficients).toEqual([
      [1, 0],
      [0, 1],
    ]);
    expectRefusal(() => inputsFromSimultaneousReadings({}), "missing", "readings", "none");
    const wrong = { a: "5, 5" } as unknown as { a: number[] };
    expectRefusal(() => inputsFromSimultaneousReadings(wrong), "missing", "readings.a", "a text");
    expectRefusal(
      () => inputsFromSimultaneousReadings({ a: [1, 2], b: [1, 2, 3] }),
      "inconsistent",
      "readings.b",
      "one more",
    );
  });

  it("are at least one, and a text of degrees of freedom is only the one word", () => {
    const calculation = ({ a }: { a: number }) => a;
    expectRefusal(
      () => uncertaintyBudget({ calculation, inputs: {} as { a: typeof input } }),
      "missing",
      "inputs",
      "none",
    );
    const many = { ...input, degreesOfFreedom: "many" as "infinite" };
    expectRefusal(
      () => uncertaintyBudget({ calculation, inputs: { a: many } }),
      "wrong-type",
      "inputs.a.degreesOfFreedom",
      "many",
    );
  });
});

describe("a calculation that answers with no number", () => {
  const inputs = { a: { distribution: "rectangular", estimate: 1, halfWidth: 0.5 } } as const;

  it("stops the Monte Carlo run with the draw and the answer", () => {
    const error = caught(() =>
      monteCarlo({ calculation: () => ({ y: "hot" }), inputs, outputs: ["y"], trials: 1000, seed: 1 }),
    );
    expect(error.message).toMatch(/y is hot, not a finite number/);
  });

  it("gives columns a status that keeps the answer out", () => {
    const { rows, status } = evaluateRowsOf([1, 2, 3], (x) => (x === 2 ? "hot" : x));
    expect(rows).toEqual([1, Number.NaN, 3]);
    expect([...status].filter((one) => one !== 0)).toHaveLength(1);
  });
});

/** One output for each value, with the status of each row. */
function evaluateRowsOf(values: readonly number[], answer: (x: number) => unknown) {
  const result = evaluateColumns({
    calculation: ({ x }: { x: number }) => answer(x) as number,
    columns: { x: Float64Array.from(values) },
  });
  return { rows: [...(Object.values(result.columns)[0] as Float64Array)], status: result.status };
}

describe("validateFirstOrder", () => {
  const first = { output: "y", coverageProbability: 0.95, standardUncertainty: 1, low: -2, high: 2 };
  const sampled = { output: "y", coverageProbability: 0.95, symmetric: { low: -2, high: 2 } };

  it("compares one kind of interval of one output", () => {
    const call = (change: object) => () =>
      validateFirstOrder({ firstOrder: first, monteCarlo: sampled, ...change } as Parameters<
        typeof validateFirstOrder
      >[0]);
    expect(call({})().validated).toBe(true);
    expectRefusal(call({ interval: "widest" }), "unknown-name", "interval", "widest");
    expectRefusal(
      call({ monteCarlo: { ...sampled, output: "z" } }),
      "inconsistent",
      "monteCarlo.output",
      "another output",
    );
    // One digit of u = 1 is a tolerance of 0.5, of two digits 0.05 (JCGM 101, 7.9.2).
    const off = { ...sampled, symmetric: { low: -2.3, high: 2 } };
    expect(call({ monteCarlo: off, significantDigits: 1 })().validated).toBe(true);
    expect(call({ monteCarlo: off, significantDigits: 2 })().validated).toBe(false);
  });
});

describe("solveFor", () => {
  const solve = (calculation: (input: { x: number }) => number, low = -1, high = 1, target = 0) =>
    solveFor({ calculation, input: "x", low, high, target, all: true });

  it("finds a root at a sample, at a touch and beside a hole", () => {
    // x² − 2x + 1 touches 0 at 1; 1/x has a hole at 0 and no root; (x² − 1)/(x − 3) has both.
    expect(solve(({ x }) => (x - 0.3) ** 2)).toMatchObject({ outcome: "found" });
    const holed = solve(({ x }) => (x * x - 1) / (x - 3), -2, 5);
    expect(holed.outcome === "found" && holed.roots.map(({ value }) => Number(value.toFixed(9)))).toEqual([
      -1, 1,
    ]);
    // Both ends of a parabola, and a line whose root is an end.
    const ends = solve(({ x }) => x * x - 1);
    expect(ends.outcome === "found" && ends.roots.map(({ value }) => Math.round(value))).toEqual([-1, 1]);
    expect(solve(({ x }) => x * x + 1)).toMatchObject({ outcome: "no root", atLow: 2, atHigh: 2 });
  });
});

describe("an output", () => {
  it("asked for twice is refused as a duplicate", () => {
    const columns = { x: [1, 2] };
    const [issue] = caught(() =>
      evaluateColumns({ calculation: ({ x }: { x: number }) => ({ y: x }), columns, outputs: ["y", "y"] }),
    ).issues;
    expect([issue?.code, issue?.path, issue?.expected]).toEqual(["duplicate", "outputs", "each output once"]);
  });

  it("without uncertainty goes with no other, and one too large spoils all", () => {
    // GUM 5.2.2: r = u(a, b)/(u(a)·u(b)), which 0 in the denominator leaves open.
    const parts = { sensitivities: [[1], [0]], standardUncertainties: [2] };
    expect(propagateUncertainty(parts).correlation).toEqual([
      [1, null],
      [null, null],
    ]);
    expectRefusal(
      () => propagateUncertainty({ sensitivities: [[1], [1e160]], standardUncertainties: [1] }),
      "out-of-range",
      "sensitivities",
      "the square of 1e160",
    );
  });
});

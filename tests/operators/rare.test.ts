/**
 * What seldom happens: refusals of every kind at once, holes beside a sample, answers that are no numbers. Expected figures by
 * definition (ranks of a coverage interval: JCGM 101:2008, 7.7; a set of correlated inputs: GUM, JCGM 100:2008, G.4.1 and 5.2.2), by
 * hand, or as the input says.
 */
import {
  evaluateColumns,
  evaluateRows,
  monteCarlo,
  propagateUncertainty,
  solveFor,
  uncertaintyBudget,
  validateFirstOrder,
} from "electroheat/operators";
import { parseQuantity } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { expectRefusal } from "../support/spoil.ts";

describe("the budget", () => {
  const input = { distribution: "normal", estimate: 2, standardUncertainty: 0.1 } as const;
  const sum = ({ a, b }: { a: number; b: number }) => a + b;

  it("works out a sensitivity that is left undefined", () => {
    const { outputs } = uncertaintyBudget({
      calculation: sum,
      inputs: { a: input, b: input },
      sensitivities: { result: { a: undefined as unknown as number, b: 1 } },
    });
    // u² = 0.1² + 0.1².
    expect(outputs[0]?.standardUncertainty).toBeCloseTo(Math.sqrt(0.02), 9);
  });

  it("leaves out an input that is left undefined", () => {
    const { outputs } = uncertaintyBudget({
      calculation: ({ a }: { a: number; b?: number }) => a,
      inputs: { a: input, b: undefined as unknown as typeof input },
    });
    expect(outputs[0]?.standardUncertainty).toBeCloseTo(0.1, 9);
  });

  it("takes the fewest degrees of freedom of correlated inputs, and says so where they differ", () => {
    const coefficients = [
      [1, 0.5],
      [0.5, 1],
    ];
    const degrees = (a: number, b: number) =>
      uncertaintyBudget({
        calculation: sum,
        inputs: {
          a: { ...input, distribution: "t", degreesOfFreedom: a },
          b: { ...input, distribution: "t", degreesOfFreedom: b },
        },
        correlation: { inputs: ["a", "b"], coefficients },
      });
    for (const [a, b, code] of [
      [9, 9, "assumed"],
      [9, 4, "approximate"],
    ] as const) {
      const found = degrees(a, b);
      expect(found.outputs[0]?.effectiveDegreesOfFreedom).toBeCloseTo(Math.min(a, b), 9);
      expect(found.warnings).toContainEqual(expect.objectContaining({ code, path: "correlation" }));
    }
  });

  it("takes the slope from the one side that has numbers", () => {
    // 3·x from 2 up, no number below.
    const { outputs } = uncertaintyBudget({
      calculation: ({ a }: { a: number }) => (a < 2 ? Number.NaN : 3 * a),
      inputs: { a: input },
    });
    expect(outputs[0]?.standardUncertainty).toBeCloseTo(0.3, 9);
  });

  it("has no infinite uncertainty of a step that float64 cannot hold", () => {
    const call = () =>
      uncertaintyBudget({
        calculation: ({ a }: { a: number }) => (a < 2 ? -1e308 : 1e308),
        inputs: { a: input },
      });
    expect(caught(call)).toMatchObject({ code: "not-a-number" });
    expect(call).toThrow(/Infinity is not allowed/);
  });

  it("names an output that is not there, or no number, and asks for names where no field is a number", () => {
    const call = (answer: unknown, outputs?: readonly string[]) => () =>
      uncertaintyBudget({
        calculation: () => answer as { y: number },
        inputs: { a: input },
        ...(outputs === undefined ? {} : { outputs }),
      });
    expectRefusal(
      call({ lines: [{ current: 1 }] }, ["lines.1.current"]),
      "unknown-name",
      "lines.1.current",
      "",
    );
    expectRefusal(call({ lines: null }, ["lines.0.current"]), "unknown-name", "lines.0.current", "");
    expectRefusal(call({ y: "open" }, ["y"]), "not-a-number", "y", "open");
    expectRefusal(call({ lines: [1, 2] }), "missing", "outputs", "no number");
  });
});

describe("propagateUncertainty", () => {
  it("refuses coefficients that cannot hold together", () => {
    const of = (correlation: number[][]) => () =>
      propagateUncertainty({ sensitivities: [[1, 1, 1]], standardUncertainties: [1, 1, 1], correlation });
    // Two inputs that are one, and a third that goes with only one of them; three that all oppose each other (1 + 2·(−0.6) < 0).
    const one = [
      [1, 1, 0.5],
      [1, 1, 0],
      [0.5, 0, 1],
    ];
    const opposed = [
      [1, -0.6, -0.6],
      [-0.6, 1, -0.6],
      [-0.6, -0.6, 1],
    ];
    for (const matrix of [one, opposed]) expect(caught(of(matrix))).toMatchObject({ code: "inconsistent" });
    const twice = [
      [1, 1, 0.5],
      [1, 1, 0.5],
      [0.5, 0.5, 1],
    ];
    // u² = 3 + 2·(1 + 0.5 + 0.5).
    expect(of(twice)().standardUncertainties[0]).toBeCloseTo(Math.sqrt(7), 12);
  });
});

describe("monteCarlo", () => {
  const inputs = { x: { distribution: "normal", estimate: 0, standardUncertainty: 1 } } as const;

  // q = pM where that is a whole number, else the whole part of pM + 1/2; r = (M − q)/2, or the whole part of (M − q + 1)/2.
  it.each([
    [1000, 0.95, 950, 25],
    [1001, 0.95, 951, 25],
    [1002, 0.95, 952, 25],
    [1007, 0.9, 906, 51],
  ])("%d trials at %d: %d values apart, from the %dth", (trials, coverageProbability, q, r) => {
    const drawn: number[] = [];
    const { outputs } = monteCarlo({
      calculation: ({ x }: { x: number }) => {
        drawn.push(x);
        return x;
      },
      inputs,
      trials,
      seed: 3,
      coverageProbability,
    });
    const sorted = drawn.slice(-trials).sort((a, b) => a - b);
    expect(outputs[0]?.symmetric).toEqual({ low: sorted[r - 1], high: sorted[r + q - 1] });
  });

  it("settles at once on what never varies, and compares it to the digit", () => {
    const found = monteCarlo({
      calculation: ({ x }: { x: number }) => x - x + 5,
      inputs,
      trials: 100_000,
      seed: 1,
      significantDigits: 2,
    });
    expect(found).toMatchObject({
      stopped: "stabilized",
      outputs: [{ estimate: 5, standardUncertainty: 0 }],
    });
    const [output] = found.outputs;
    const still = { output: "result", coverageProbability: 0.95, standardUncertainty: 0, low: 5, high: 5 };
    const compared = (low: number) =>
      validateFirstOrder({ firstOrder: { ...still, low }, monteCarlo: output as NonNullable<typeof output> });
    expect([compared(5).validated, compared(5 - 1e-9).validated]).toEqual([true, false]);
  });

  it.each([
    [new RangeError("too hot"), /RangeError: too hot/],
    ["too hot", /too hot/],
  ])("passes on what a calculation of another hand throws: %s", (thrown, words) => {
    const calculation = (): number => {
      throw thrown;
    };
    expect(caught(() => monteCarlo({ calculation, inputs, trials: 1000, seed: 1 })).message).toMatch(words);
    const { statuses } = evaluateRows({ rows: 2, evaluate: calculation });
    expect(statuses).toMatchObject([{ code: "other", path: "", rows: 2 }]);
    expect(statuses[0]?.message).toMatch(words);
  });
});

describe("columns", () => {
  const values = { a: [1, 2], b: [10, 20], c: [100, 200], d: [1000, 2000] };
  const total = (row: object): number => Object.values(row).reduce((sum: number, one) => sum + one, 0);

  it.each([
    [["a"], [1, 2]],
    [
      ["a", "b"],
      [11, 22],
    ],
    [
      ["a", "b", "c"],
      [111, 222],
    ],
    [
      ["a", "b", "c", "d"],
      [1111, 2222],
    ],
  ] as const)("%j give numbers and records alike", (names, wanted) => {
    const columns = Object.fromEntries(names.map((name) => [name, values[name]]));
    const bare = evaluateColumns({ calculation: total, columns });
    expect([...(bare.columns["result"] as Float64Array)]).toEqual(wanted);
    const calculation = (row: object) => ({ sum: total(row), twice: 2 * total(row) });
    const records = evaluateColumns({ calculation, columns });
    expect([...(records.columns["sum"] as Float64Array)]).toEqual(wanted);
    expect([...(records.columns["twice"] as Float64Array)]).toEqual(wanted.map((one) => 2 * one));
  });

  it("rows that are no numbers have their status and what was there in words", () => {
    const answers: unknown[] = [1, { y: 1 }, "hot"];
    const bare = evaluateRows({ rows: 3, evaluate: (row) => answers[row] as number, outputs: ["result"] });
    expect([...(bare.columns["result"] as Float64Array)]).toEqual([1, Number.NaN, Number.NaN]);
    const field = evaluateRows({ rows: 2, evaluate: (row) => ({ y: row === 0 ? {} : 2 }), outputs: ["y"] });
    expect([...(field.columns["y"] as Float64Array)]).toEqual([Number.NaN, 2]);
    expect(field.statuses[0]).toMatchObject({ code: "not-a-number", path: "y", rows: 1 });
    expect(field.statuses[0]?.message).toContain("an object");
  });

  it("have a status for each of 254 kinds of refusal, and one for all beyond", () => {
    const { status, statuses, failed } = evaluateRows({
      rows: 300,
      evaluate: (row) => parseQuantity("cold", { unit: "V", path: `reading ${row}` }).value as number,
    });
    expect([failed, statuses.length]).toEqual([300, 255]);
    expect(statuses[253]).toMatchObject({ status: 254, path: "reading 253", rows: 1 });
    expect(statuses[254]).toMatchObject({ status: 255, code: "other", path: "", firstRow: 254, rows: 46 });
    expect([...status.slice(252)]).toEqual([253, 254, ...Array.from({ length: 46 }, () => 255)]);
  });
});

describe("solveFor", () => {
  const solve = (calculation: (input: { x: number }) => number, more: object = {}) =>
    solveFor({ calculation, input: "x", low: -1, high: 1, target: 0, all: true, cells: 16, ...more });
  const roots = (found: ReturnType<typeof solve>) =>
    found.outcome === "found" ? found.roots.map(({ value }) => value) : found.outcome;

  it("looks at the ends first where one root will do", () => {
    expect(roots(solve(({ x }) => x + 1, { all: false }))).toEqual([-1]);
    expect(roots(solve(({ x }) => x - 1, { all: false }))).toEqual([1]);
  });

  it("finds no root in what is flat, nor in a dip that stays above", () => {
    expect(solve(() => 3)).toMatchObject({ outcome: "no root", atLow: 3, atHigh: 3, jumps: [], gaps: [] });
    expect(roots(solve(({ x }) => Math.abs(x - 0.01) + 0.5))).toBe("no root");
  });

  it("finds a touch exactly, and says no root where the dip ends in a hole", () => {
    expect(roots(solve(({ x }) => (Math.abs(x - 0.01) < 0.02 ? 0 : 1)))).not.toBe("no root");
    const holed = solve(({ x }) => (Math.abs(x - 0.05) < 0.03 ? Number.NaN : Math.abs(x - 0.05) + 0.1));
    expect(roots(holed)).toBe("no root");
  });

  it("finds a stretch of zeros that no sample met", () => {
    const found = roots(solve(({ x }) => Math.max(0, Math.abs(x - 0.01) - 0.005)));
    expect(found).toEqual([expect.closeTo(0.01, 2)]);
    const [at] = found as number[];
    expect(Math.abs((at as number) - 0.01)).toBeLessThanOrEqual(0.005);
  });

  it("gives the gaps, the ends without a value and a number alone between two gaps", () => {
    const only = solve(({ x }) => (x === 0 ? 2 : Number.NaN));
    expect(only).toMatchObject({
      outcome: "no root",
      atLow: null,
      atHigh: null,
      closest: { value: 0, output: 2 },
    });
    expect(
      only.gaps.map(({ low, high }) => [low, high].map((end) => Math.round(1e9 * end) / 1e9 + 0)),
    ).toEqual([
      [-1, 0],
      [0, 1],
    ]);
    const inner = solve(({ x }) => (x < -0.5 || x > 0.5 ? Number.NaN : x + 2));
    expect(inner.gaps.map(({ low, high }) => [low, high])).toEqual([
      [-1, expect.closeTo(-0.5, 9)],
      [expect.closeTo(0.5, 9), 1],
    ]);
  });

  it("tells a step from a root", () => {
    const step = solve(({ x }) => (x < 0.3 ? -1 : 1));
    expect(step.outcome).toBe("no root");
    expect(step.jumps.map(({ value }) => value)).toEqual([expect.closeTo(0.3, 9)]);
  });
});

/**
 * What a refusal says: the place, what is allowed and what was seen. Each is held to the figures of the very call that is refused; the
 * codes are those of the docstrings.
 */
import { powerFromVoltageAndResistance } from "electroheat/element";
import {
  coverageFactor,
  effectiveDegreesOfFreedom,
  evaluateColumns,
  evaluateRows,
  inputFromCertificate,
  inputFromReadings,
  inputsFromSimultaneousReadings,
  monteCarlo,
  propagateUncertainty,
  showWorking,
  solveFor,
  uncertaintyBudget,
  validateFirstOrder,
} from "electroheat/operators";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

/** Change of a valid argument, and the whole message. */
type Case = readonly [change: object, message: string];

/** Refusals of a function, each from a change of one valid argument that is answered as it stands. */
function refusals(call: (input: never) => unknown, valid: object, cases: readonly Case[]) {
  it("answers the argument as it stands", () => {
    expect(() => call(valid as never)).not.toThrow();
  });
  it.each(cases)("%j", (change, message) => {
    expect(caught(() => call({ ...valid, ...change } as never)).message).toBe(message);
  });
}

const normal = { distribution: "normal", estimate: 2, standardUncertainty: 0.1 } as const;
const rectangular = { distribution: "rectangular", estimate: 2, halfWidth: 0.1 } as const;
const sum = ({ a, b }: { a: number; b: number }) => a + b;
const both = { a: normal, b: normal };
const related = (coefficients: unknown, inputs: unknown = ["a", "b"]) => ({
  correlation: { inputs, coefficients },
});
const calculation = "a function of one object with named fields";

const correlations: readonly Case[] = [
  [related(undefined), "correlation.coefficients: missing; expected 2 rows of 2 numbers"],
  [related(null), "correlation.coefficients: missing; expected 2 rows of 2 numbers"],
  [related(5), "correlation.coefficients: 5 is not allowed; expected 2 rows of 2 numbers"],
  [related([[1]]), "correlation.coefficients: an array is not allowed; expected 2 rows of 2 numbers"],
  [related([[1, 0], [0]]), "correlation.coefficients: an array is not allowed; expected 2 rows of 2 numbers"],
  [related(["10", "01"]), "correlation.coefficients: an array is not allowed; expected 2 rows of 2 numbers"],
  [
    related([
      [1, 0],
      [0, Number.NaN],
    ]),
    "correlation.coefficients.1.1: NaN is not allowed; expected a finite number",
  ],
  [
    related([
      [1, 0],
      [0, 0.9],
    ]),
    "correlation.coefficients.1.1: 0.9 is not allowed; expected 1 on the diagonal",
  ],
  [
    related([
      [1, -1.5],
      [-1.5, 1],
    ]),
    "correlation.coefficients.0.1: -1.5 is not allowed; expected -1 to 1",
  ],
  [
    related([
      [1, 0.5],
      [0.25, 1],
    ]),
    "correlation.coefficients.0.1: 0.5 is not allowed; expected the same as correlation.coefficients.1.0, 0.25",
  ],
  [related([], "ab"), "correlation.inputs: missing; expected a list of inputs"],
  [related([], ["a", "c"]), 'correlation.inputs.1: "c" is not allowed; expected one of a, b'],
  [related([], ["b", "b"]), 'correlation.inputs.1: "b" is not allowed; expected each input once'],
  [{ correlation: null }, "correlation: missing; expected an object with named fields"],
];

describe("uncertaintyBudget", () => {
  const one = (change: object) => ({ inputs: { ...both, b: { ...normal, ...change } } });
  const half = (change: object) => ({ inputs: { ...both, b: { ...rectangular, ...change } } });
  refusals(uncertaintyBudget, { calculation: sum, inputs: both }, [
    ...correlations,
    [{ calculation: null }, `calculation: missing; expected ${calculation}`],
    [{ calculation: "sum" }, `calculation: "sum" is not allowed; expected ${calculation}`],
    [{ inputs: { a: undefined } }, "inputs: missing; expected at least one uncertain input"],
    [{ inputs: undefined }, "inputs: missing; expected an object with named fields"],
    [{ inputs: { a: null } }, "inputs.a: missing; expected an object with named fields"],
    [
      one({ distribution: "gauss" }),
      'inputs.b.distribution: "gauss" is not allowed; expected one of normal, t, rectangular, triangular, U-shaped',
    ],
    [one({ estimate: undefined }), "inputs.b.estimate: missing; expected a finite number"],
    [one({ standardUncertainty: -1 }), "inputs.b.standardUncertainty: -1 is not allowed; expected 0 or more"],
    [
      one({ degreesOfFreedom: 0.99 }),
      'inputs.b.degreesOfFreedom: 0.99 is not allowed; expected 1 or more, or "infinite"',
    ],
    [
      one({ degreesOfFreedom: "9" }),
      'inputs.b.degreesOfFreedom: "9" is not allowed; expected a number of 1 or more, or "infinite"',
    ],
    [
      one({ degreesOfFreedom: Number.POSITIVE_INFINITY }),
      "inputs.b.degreesOfFreedom: Infinity is not allowed; expected a finite number",
    ],
    [one({ distribution: "t" }), "inputs.b.degreesOfFreedom: missing; expected a number: readings less 1"],
    [
      one({ distribution: "t", degreesOfFreedom: "infinite" }),
      "inputs.b.degreesOfFreedom: missing; expected a number: readings less 1",
    ],
    ...(["normal", "t"] as const).map(
      (distribution): Case => [
        half({ distribution }),
        `inputs.b.halfWidth: 0.1 is not allowed; expected standardUncertainty: a ${distribution} distribution has no limits`,
      ],
    ),
    [half({ halfWidth: -1 }), "inputs.b.halfWidth: -1 is not allowed; expected 0 or more"],
    ...(["rectangular", "triangular", "U-shaped"] as const).map(
      (distribution): Case => [
        one({ distribution }),
        "inputs.b.halfWidth: missing; expected half of the width",
      ],
    ),
    [{ fixed: { a: 1 } }, 'fixed.a: "a" is not allowed; expected only in inputs'],
    [{ fixed: 5 }, "fixed: 5 is not allowed; expected an object with named fields"],
    [{ outputs: [] }, "outputs: an array is not allowed; expected a list of names of outputs"],
    [{ outputs: "result" }, 'outputs: "result" is not allowed; expected a list of names of outputs'],
    [{ outputs: ["result", 5] }, "outputs: an array is not allowed; expected a list of names of outputs"],
    [{ outputs: ["result", "result"] }, 'outputs: "result" is not allowed; expected each output once'],
    [{ outputs: ["y"] }, "y: undefined is not allowed; expected a finite number from the calculation"],
    [{ coverageProbability: 0 }, "coverageProbability: 0 is not allowed; expected above 0, below 1"],
    [{ coverageProbability: 1 }, "coverageProbability: 1 is not allowed; expected above 0, below 1"],
    [
      { coverageProbability: Number.NaN },
      "coverageProbability: NaN is not allowed; expected a finite number",
    ],
    [
      { degreesOfFreedom: "rounded" },
      'degreesOfFreedom: "rounded" is not allowed; expected one of truncated, exact',
    ],
    [{ sensitivities: { y: { a: 1 } } }, 'sensitivities: "y" is not allowed; expected one of result'],
    [
      { sensitivities: { result: { c: 1 } } },
      'sensitivities.result: "c" is not allowed; expected one of a, b',
    ],
    [
      { sensitivities: { result: { b: Number.NaN } } },
      "sensitivities.result.b: NaN is not allowed; expected a finite number",
    ],
    [
      { sensitivities: { result: null } },
      "sensitivities.result: missing; expected an object with named fields",
    ],
    ...["__proto__", "constructor", "prototype"].map(
      (name): Case => [
        { inputs: Object.fromEntries([[name, normal]]) },
        `inputs: "${name}" is not allowed; expected the name of a field of the argument`,
      ],
    ),
    [
      { calculation: ({ a, b }: { a: number; b: number }) => (a === 2 && b === 2 ? 1 : Number.NaN) },
      "inputs.a: 2 is not allowed; expected an estimate that the calculation takes together with values beside it",
    ],
    [
      { calculation: () => ({ lines: [1] }) },
      "outputs: missing; expected names of outputs, such as `lines.0.current`: no field of the result is a number",
    ],
  ]);
});

describe("monteCarlo", () => {
  refusals(monteCarlo, { calculation: sum, inputs: both, seed: 1, trials: 200 }, [
    ...correlations,
    [{ seed: -1 }, "seed: -1 is not allowed; expected a whole number from 0 to 9007199254740991"],
    [{ significantDigits: 0 }, "significantDigits: 0 is not allowed; expected a whole number from 1 to 2"],
    [{ trials: 20_000_001 }, "trials: 20000001 is not allowed; expected a whole number from 100 to 20000000"],
    [{ coverageProbability: 1 }, "coverageProbability: 1 is not allowed; expected above 0, below 1"],
    [{ calculation: undefined }, `calculation: missing; expected ${calculation}`],
    [
      {
        inputs: { a: normal, b: rectangular },
        ...related([
          [1, 0.5],
          [0.5, 1],
        ]),
      },
      'inputs.b.distribution: "rectangular" is not allowed; expected normal: correlated inputs are drawn from a joint normal distribution',
    ],
  ]);

  it("tells the trial, what it drew and what the calculation said, in a run of blocks too", () => {
    for (const [more, wanted] of [
      [{}, 7],
      [{ significantDigits: 2, trials: 30_000 }, 10_003],
    ] as const) {
      let calls = 0;
      let last = { a: 0, b: 0 };
      const stopped = (answer: () => number) => {
        calls = 0;
        return caught(() =>
          monteCarlo({
            calculation: (input: { a: number; b: number }) => {
              calls += 1;
              last = { ...input };
              return calls === wanted ? answer() : input.a;
            },
            inputs: both,
            seed: 1,
            trials: 200,
            ...more,
          }),
        );
      };
      const said = (reason: string) =>
        `inputs: ${last.a} is not allowed; expected distributions inside the domain of the calculation; ` +
        `trial ${wanted} drew a = ${last.a}, b = ${last.b}: ${reason}`;
      const thrown = stopped(() => {
        throw new RangeError("too hot");
      });
      expect(thrown.message).toBe(said("RangeError: too hot"));
      expect(thrown.code).toBe("out-of-range");
      expect(stopped(() => Number.POSITIVE_INFINITY).message).toBe(
        said("result is Infinity, not a finite number"),
      );
    }
  });
});

describe("propagateUncertainty", () => {
  refusals(propagateUncertainty, { sensitivities: [[3, 4]], standardUncertainties: [1, 1] }, [
    [{ sensitivities: 5 }, "sensitivities: missing; expected a list of numbers"],
    [{ standardUncertainties: [] }, "standardUncertainties: missing; expected a list of numbers"],
    [{ standardUncertainties: [1, -2] }, "standardUncertainties.1: -2 is not allowed; expected 0 or more"],
    [{ sensitivities: [[3, 4], [3]] }, "sensitivities.1: an array is not allowed; expected 2 numbers"],
    [{ sensitivities: [[3, 4], "34"] }, 'sensitivities.1: "34" is not allowed; expected 2 numbers'],
    [{ sensitivities: [[3, Number.NaN]] }, "sensitivities.0.1: NaN is not allowed; expected a finite number"],
    [
      { sensitivities: [[1e160, 1]] },
      'sensitivities: "larger" is not allowed; expected products c·u small enough to be squared in float64 (below about 1e150)',
    ],
    [{ correlation: [[1, 0]] }, "correlation: an array is not allowed; expected 2 rows of 2 numbers"],
    [
      {
        sensitivities: [[1, 1, 1]],
        standardUncertainties: [1, 1, 1],
        correlation: [
          [1, -0.6, -0.6],
          [-0.6, 1, -0.6],
          [-0.6, -0.6, 1],
        ],
      },
      'correlation: "a matrix that input 2 makes impossible" is not allowed; expected coefficients that can hold together (no negative eigenvalue)',
    ],
  ]);
});

describe("validateFirstOrder", () => {
  const first = { output: "y", coverageProbability: 0.95, standardUncertainty: 1, low: -2, high: 2 };
  const sampled = { output: "y", coverageProbability: 0.95, symmetric: { low: -2, high: 2 } };
  const bad = (change: object) => ({ firstOrder: { ...first, ...change } });
  refusals(validateFirstOrder, { firstOrder: first, monteCarlo: sampled }, [
    [{ firstOrder: undefined }, "firstOrder: missing; expected an object with named fields"],
    [{ monteCarlo: null }, "monteCarlo: missing; expected an object with named fields"],
    [{ significantDigits: 3 }, "significantDigits: 3 is not allowed; expected a whole number from 1 to 2"],
    [{ interval: "widest" }, 'interval: "widest" is not allowed; expected symmetric or shortest'],
    [{ interval: "shortest" }, "monteCarlo.shortest: missing; expected an object with named fields"],
    [
      { monteCarlo: { ...sampled, coverageProbability: 0.9 } },
      "monteCarlo.coverageProbability: 0.9 is not allowed; expected the same as firstOrder, 0.95",
    ],
    [
      { monteCarlo: { ...sampled, output: "z" } },
      'monteCarlo.output: "z" is not allowed; expected the same as firstOrder, y',
    ],
    [
      bad({ standardUncertainty: -1 }),
      "firstOrder.standardUncertainty: -1 is not allowed; expected 0 or more",
    ],
    [bad({ low: Number.NaN }), "firstOrder.low: NaN is not allowed; expected a finite number"],
    [bad({ high: undefined }), "firstOrder.high: missing; expected a finite number"],
    [
      { monteCarlo: { ...sampled, symmetric: { low: "2", high: 2 } } },
      'monteCarlo.symmetric.low: "2" is not allowed; expected a finite number',
    ],
    [
      { monteCarlo: { ...sampled, symmetric: { low: 2 } } },
      "monteCarlo.symmetric.high: missing; expected a finite number",
    ],
  ]);

  it("takes ends exactly as far apart as the tolerance, on either side and in either interval", () => {
    // u = 1 = 10·10⁻¹: of two digits the tolerance is 0.05 (JCGM 101, 7.9.2); quarters are exact: u = 25 has 0.5.
    const ask = (low: number, high: number, interval: "symmetric" | "shortest") =>
      validateFirstOrder({
        firstOrder: { ...first, standardUncertainty: 25 },
        monteCarlo: { output: "y", coverageProbability: 0.95, [interval]: { low: low - 2, high: high + 2 } },
        interval,
      });
    for (const interval of ["symmetric", "shortest"] as const) {
      expect(ask(0.5, -0.5, interval)).toEqual({
        validated: true,
        tolerance: 0.5,
        lowDifference: 0.5,
        highDifference: 0.5,
      });
      expect(ask(-0.75, 0, interval)).toMatchObject({ validated: false, lowDifference: 0.75 });
      expect(ask(0, 0.75, interval)).toMatchObject({ validated: false, highDifference: 0.75 });
    }
  });
});

describe("coverage", () => {
  refusals(coverageFactor, { coverageProbability: 0.95, degreesOfFreedom: 4 }, [
    [{ coverageProbability: -0.5 }, "coverageProbability: -0.5 is not allowed; expected above 0, below 1"],
  ]);
  const part = { contribution: 1, degreesOfFreedom: 4 };
  refusals(effectiveDegreesOfFreedom, { parts: [part] }, [
    [{ parts: [] }, "parts: missing; expected a list of at least one part"],
    [{ parts: part }, "parts: missing; expected a list of at least one part"],
    [{ parts: [part, null] }, "parts.1: missing; expected an object with named fields"],
    [
      { parts: [part, { ...part, contribution: -1 }] },
      "parts.1.contribution: -1 is not allowed; expected 0 or more",
    ],
    [
      { parts: [part, { ...part, degreesOfFreedom: 0 }] },
      "parts.1.degreesOfFreedom: 0 is not allowed; expected more than 0",
    ],
    [
      { parts: [part, { ...part, degreesOfFreedom: "many" }] },
      'parts.1.degreesOfFreedom: "many" is not allowed; expected a finite number',
    ],
  ]);
});

describe("effective degrees of freedom", () => {
  it("are those of the parts that have some", () => {
    const of = (...parts: readonly (readonly [number, number | "infinite"])[]) =>
      effectiveDegreesOfFreedom({
        parts: parts.map(([contribution, degreesOfFreedom]) => ({ contribution, degreesOfFreedom })),
      });
    // (1² + 1²)²/(1⁴/9) = 36 (GUM, G.4.1); the largest part stands anywhere in the list.
    expect(of([1, 9], [1, "infinite"])).toBeCloseTo(36, 12);
    expect(of([1e-80, "infinite"], [3e-80, 9], [1e-80, "infinite"])).toBeCloseTo((121 * 9) / 81, 9);
    expect(of([1, "infinite"], [2, "infinite"])).toBe("infinite");
    expect(of([0, 5], [0, "infinite"])).toBe("infinite");
    expect(of([0, 5], [1, 7])).toBeCloseTo(7, 12);
  });
});

describe("inputs from readings and certificates", () => {
  it.each([
    [() => inputFromReadings("5, 6" as never), "readings: missing; expected a list of readings"],
    [() => inputFromReadings([5]), "readings: 1 is not allowed; expected two readings or more"],
    [() => inputFromReadings([5, Number.NaN]), "readings.1: NaN is not allowed; expected a finite number"],
    [() => inputsFromSimultaneousReadings({}), "readings: missing; expected at least one list of readings"],
    [
      () => inputsFromSimultaneousReadings({ a: [1, 2], b: [3] }),
      "readings.b: 1 is not allowed; expected two readings or more",
    ],
    [
      () => inputsFromSimultaneousReadings({ a: [1, 2], b: [1, 2], c: [1, 2, 3] }),
      "readings.c: 3 is not allowed; expected 2 readings, like a",
    ],
  ] as const)("%s", (call, message) => {
    expect(caught(call).message).toBe(message);
  });

  refusals(inputFromCertificate, { estimate: 10, expandedUncertainty: 0.02, coverageFactor: 2 }, [
    [{ estimate: Number.NaN }, "estimate: NaN is not allowed; expected a finite number"],
    [{ expandedUncertainty: -1 }, "expandedUncertainty: -1 is not allowed; expected 0 or more"],
    [
      { coverageFactor: undefined },
      "coverageFactor: missing; expected either coverageFactor or coverageProbability",
    ],
    [
      { coverageProbability: 0.95 },
      "coverageFactor: 2 is not allowed; expected either coverageFactor or coverageProbability",
    ],
    [{ coverageFactor: 0 }, "coverageFactor: 0 is not allowed; expected more than 0"],
    [{ coverageFactor: 1.5e6 }, "coverageFactor: 1500000 is not allowed; expected 0 to 1000000"],
    [{ degreesOfFreedom: 0.5 }, 'degreesOfFreedom: 0.5 is not allowed; expected 1 or more, or "infinite"'],
  ]);

  it("takes a single degree of freedom, and what never moved", () => {
    // t of one degree of freedom at 50 % is tan(π/4) = 1.
    const input = { estimate: 10, expandedUncertainty: 3, coverageProbability: 0.5, degreesOfFreedom: 1 };
    expect(inputFromCertificate(input).standardUncertainty).toBeCloseTo(3, 12);
    expect(inputFromReadings([5, 5])).toEqual({
      distribution: "t",
      estimate: 5,
      standardUncertainty: 0,
      degreesOfFreedom: 1,
    });
  });
});

describe("evaluateColumns and evaluateRows", () => {
  refusals(evaluateColumns, { calculation: ({ x }: { x: number }) => x, columns: { x: [1] } }, [
    [{ columns: {} }, "columns: missing; expected at least one column"],
    [{ columns: { x: undefined } }, "columns: missing; expected at least one column"],
    [{ columns: { x: 5 } }, "columns.x: 5 is not allowed; expected an array or a typed array"],
    [
      { columns: { x: { length: 1 } } },
      "columns.x: an object is not allowed; expected an array or a typed array",
    ],
    [
      { columns: { x: new DataView(new ArrayBuffer(8)) } },
      "columns.x: an object is not allowed; expected an array or a typed array",
    ],
    [{ columns: { x: [1], y: [1], z: [1, 2] } }, "columns.z: 2 is not allowed; expected 1 rows, like x"],
    [{ fixed: { x: 1 } }, 'fixed.x: "x" is not allowed; expected only in columns'],
  ]);
  refusals(evaluateRows, { rows: 2, evaluate: (row: number) => row }, [
    [{ rows: 2 ** 31 }, "rows: 2147483648 is not allowed; expected a whole number from 0 to 2147483647"],
    [{ evaluate: null }, `evaluate: missing; expected ${calculation}`],
    [{ evaluate: 5 }, `evaluate: 5 is not allowed; expected ${calculation}`],
  ]);

  it("gives one to five outputs of a record, by rows and by one to six columns", () => {
    const names = ["a", "b", "c", "d", "e", "f"];
    for (let count = 1; count <= 5; count += 1) {
      const outputs = Array.from({ length: count }, (_, k) => `y${k}`);
      const answer = (row: number) => Object.fromEntries(outputs.map((name, k) => [name, 10 * row + k]));
      const wanted = outputs.map((_, k) => [k, 10 + k, 20 + k]);
      const columnsOf = (found: ReturnType<typeof evaluateRows>) =>
        outputs.map((name) => [...(found.columns[name] as Float64Array)]);
      expect(columnsOf(evaluateRows({ rows: 3, evaluate: answer, outputs }))).toEqual(wanted);
      for (let width = 1; width <= 6; width += 1) {
        const columns = Object.fromEntries(names.slice(0, width).map((name) => [name, [0, 1, 2]]));
        const calculation = (row: object) => answer((row as { a: number }).a);
        expect(columnsOf(evaluateColumns({ calculation, columns, outputs }))).toEqual(wanted);
      }
      // A field that is none shows in its own column alone.
      const odd = (row: number) => ({ ...answer(row), [`y${count - 1}`]: row === 1 ? "open" : 5 });
      const found = evaluateRows({ rows: 3, evaluate: odd, outputs });
      expect(columnsOf(found).at(-1)).toEqual([5, Number.NaN, 5]);
      expect([...found.status]).toEqual([0, 1, 0]);
      expect(columnsOf(found).slice(0, -1)).toEqual(wanted.slice(0, -1));
    }
  });

  it("takes any typed array and no rows at all", () => {
    for (const x of [Int8Array.of(1), Float32Array.of(1), BigInt64Array.of(1n), [1]]) {
      const found = evaluateColumns({
        calculation: ({ x: one }: { x: number }) => Number(one),
        columns: { x },
      });
      expect([found.rows, found.columns["result"]?.[0]]).toEqual([1, 1]);
    }
    const none = evaluateRows({ rows: 0, evaluate: () => 1 });
    expect(none).toEqual({ rows: 0, columns: {}, status: new Uint8Array(0), statuses: [], failed: 0 });
  });

  it("says in a status what stood where a number was asked for", () => {
    const answers: unknown[] = ["open", "hot", null, { y: 1 }, undefined, true, Number.NaN];
    const { statuses } = evaluateRows({
      rows: answers.length,
      evaluate: (row) => ({ [`y${row}`]: answers[row] }),
      outputs: answers.map((_, i) => `y${i}`).slice(0, 1),
    });
    expect(statuses.map(({ message }) => message)).toEqual([
      "y0 is open: no number holds it",
      "y0: undefined is not a finite number",
    ]);
    const said = (answer: unknown) =>
      evaluateRows({ rows: 1, evaluate: () => ({ y: answer }), outputs: ["y"] }).statuses[0]?.message;
    expect(answers.map(said)).toEqual([
      "y is open: no number holds it",
      "y: hot is not a finite number",
      "y: an object is not a finite number",
      "y: an object is not a finite number",
      "y: undefined is not a finite number",
      "y: true is not a finite number",
      "y: NaN is not a finite number",
    ]);
  });
});

describe("solveFor", () => {
  refusals(solveFor, { calculation: ({ x }: { x: number }) => x, input: "x", target: 0.5, low: 0, high: 1 }, [
    [{ calculation: 5 }, `calculation: 5 is not allowed; expected ${calculation}`],
    [{ input: "" }, "input: missing; expected the name of a field"],
    [{ input: 5 }, "input: missing; expected the name of a field"],
    [
      { input: "constructor" },
      'input: "constructor" is not allowed; expected the name of a field of the argument',
    ],
    [{ target: "5" }, 'target: "5" is not allowed; expected a finite number'],
    [{ low: undefined }, "low: missing; expected a finite number"],
    [{ high: Number.NaN }, "high: NaN is not allowed; expected a finite number"],
    [{ low: 2.5 }, "high: 1 is not allowed; expected more than low, 2.5"],
    [{ low: -1.5e308, high: 1.5e308 }, "high: 1.5e+308 is not allowed; expected more than low, -1.5e+308"],
    [{ all: 1 }, "all: 1 is not allowed; expected true or false"],
    [{ cells: 100_001 }, "cells: 100001 is not allowed; expected a whole number from 1 to 100000"],
    [{ spacing: "equal" }, 'spacing: "equal" is not allowed; expected one of linear, logarithmic'],
    [{ spacing: "logarithmic" }, "low: 0 is not allowed; expected more than 0 for logarithmic spacing"],
    [{ fixed: { x: 1 } }, 'fixed.x: "x" is not allowed; expected only in input'],
  ]);
});

describe("showWorking", () => {
  const description = {
    id: "heat",
    formula: { text: "P = V²/R", tex: "P = \\frac{V^2}{R}" },
    inputs: [
      { name: "voltage", symbol: "V", unit: "V" },
      { name: "resistance", symbol: "R", unit: "Ω" },
    ],
    outputs: [{ symbol: "P", unit: "W" }],
    sources: ["joules-law"],
  };
  const other = (change: object) => ({ description: { ...description, ...change } });
  const formula = (text: unknown, tex: unknown) => other({ formula: { text, tex } });
  refusals(
    showWorking,
    {
      description,
      calculation: powerFromVoltageAndResistance,
      input: { voltage: volts(480), resistance: ohms(12.8) },
    },
    [
      [{ description: undefined }, "description: missing; expected an object with named fields"],
      [{ calculation: undefined }, `calculation: missing; expected ${calculation}`],
      [{ input: undefined }, "input: missing; expected an object with named fields"],
      [{ units: 5 }, "units: 5 is not allowed; expected an object with named fields"],
      [
        { significantDigits: 18 },
        "significantDigits: 18 is not allowed; expected a whole number from 1 to 17",
      ],
      [{ significantDigits: 0 }, "significantDigits: 0 is not allowed; expected a whole number from 1 to 17"],
      ...["inputs", "outputs", "sources"].map(
        (list): Case => [other({ [list]: undefined }), `description.${list}: missing; expected a list`],
      ),
      [other({ outputs: [] }), "description.outputs: missing; expected a list"],
      [
        other({ inputs: [description.inputs[0], { name: "resistance", symbol: "R" }] }),
        "description: unit of resistance: missing; expected a unit, or 1",
      ],
      [
        other({
          outputs: [
            { symbol: "P", unit: "W" },
            { name: "y", symbol: "y", unit: "W" },
          ],
        }),
        'description.outputs.1.name: "y" is not allowed; expected a field of the result',
      ],
      [
        formula("V²/R", "x = 1"),
        'description.formula.text: "V²/R" is not allowed; expected a left side, = and a right side',
      ],
      [
        formula("= V²/R", "x = 1"),
        'description.formula.text: "= V²/R" is not allowed; expected a left side, = and a right side',
      ],
      [
        formula("P = V²/R", "P"),
        'description.formula.tex: "P" is not allowed; expected a left side, = and a right side',
      ],
      [formula("P = V²/R", undefined), "description.formula.tex: missing; expected a formula"],
      [
        formula("P = V²/Q", "P = V^2/Q"),
        'description.formula.text: "Q" is not allowed; expected only symbols of V, R',
      ],
      [
        formula("P = V²/R", "P = V^2"),
        'description.formula.tex: "P = V^2" is not allowed; expected resistance, as in the text',
      ],
      [
        formula("P = V²", "P = V^2/R"),
        'description.formula.text: "P = V²" is not allowed; expected resistance, as in the tex',
      ],
      [
        other({
          constants: [{ name: "reference", symbol: "T0", unit: "°C", value: 20 }],
          steps: [
            {
              name: "square",
              symbol: "S",
              unit: "1",
              formula: { text: "S = Q", tex: "S = Q" },
              value: () => 1,
            },
          ],
        }),
        'description.steps.0.formula.text: "Q" is not allowed; expected only symbols of V, R, T0',
      ],
      [
        other({
          outputs: [{ symbol: "P", unit: "W", formula: { text: "P = Q", tex: "P = Q" } }],
          constants: [{ name: "reference", symbol: "T0", unit: "°C", value: 20 }],
        }),
        'description.outputs.0.formula.text: "Q" is not allowed; expected only symbols of V, R, T0',
      ],
    ],
  );
});

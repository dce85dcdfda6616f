/**
 * What a refusal of budgets and of what goes into them says: the place, what is allowed and what was seen. Each is held to the figures of the very call that is
 * refused; the codes are those of the docstrings.
 */
import {
  coverageFactor,
  effectiveDegreesOfFreedom,
  inputFromCertificate,
  inputFromReadings,
  inputsFromSimultaneousReadings,
  uncertaintyBudget,
} from "electroheat/operators";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { both, type Case, calculation, correlations, normal, rectangular, refusals, sum } from "./refused.ts";

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

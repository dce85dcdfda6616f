/**
 * What a refusal of Monte Carlo, propagation and the check of first order says: the place, what is allowed and what was seen. Each is held to the figures of the very call that is
 * refused; the codes are those of the docstrings.
 */
import { monteCarlo, propagateUncertainty, validateFirstOrder } from "electroheat/operators";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { both, calculation, correlations, normal, rectangular, refusals, related, sum } from "./refused.ts";

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

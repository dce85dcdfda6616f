/**
 * Uncertainty of the room operators against the worked examples of the GUM and its first supplement. Figures as printed, or from
 * closed forms, with the source beside each.
 */
import { powerFromVoltageAndCurrent } from "electroheat/element";
import { measuredJoint } from "electroheat/joint";
import {
  inputFromCertificate,
  inputFromReadings,
  inputsFromSimultaneousReadings,
  monteCarlo,
  type UncertainInput,
  uncertaintyBudget,
  validateFirstOrder,
} from "electroheat/operators";
import { amperes, ohms, volts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { expectFinite } from "../support/close.ts";

const near = (got: number | undefined, wanted: number, tolerance: number): void =>
  expect(Math.abs((got ?? Number.NaN) - wanted)).toBeLessThanOrEqual(tolerance);

describe("JCGM 100 H.2, resistance, reactance and impedance read together", () => {
  const readings = {
    V: [5.007, 4.994, 5.005, 4.99, 4.999],
    I: [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3],
    phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
  };
  const model = ({ V, I, phi }: { V: number; I: number; phi: number }) => ({
    R: (V / I) * Math.cos(phi),
    X: (V / I) * Math.sin(phi),
    Z: V / I,
  });
  const budgeted = () =>
    uncertaintyBudget({ calculation: model, ...inputsFromSimultaneousReadings(readings) });

  it("gives the printed digits by the means and their correlations (Table H.4)", () => {
    const budget = budgeted();
    const [R, X, Z] = budget.outputs;
    near(R?.estimate, 127.732, 5e-4);
    near(X?.estimate, 219.847, 5e-4);
    near(Z?.estimate, 254.26, 5e-4);
    near(R?.standardUncertainty, 0.071, 5e-4);
    // Printed 0.295; 0.29558 by this approach, 0.29549 by the other.
    near(X?.standardUncertainty, 0.295, 6e-4);
    near(Z?.standardUncertainty, 0.236, 5e-4);
    near(budget.correlation[0]?.[1] ?? undefined, -0.588, 5e-4);
    near(budget.correlation[0]?.[2] ?? undefined, -0.485, 5e-4);
    near(budget.correlation[1]?.[2] ?? undefined, 0.993, 5e-4);
  });

  it("gives the figures of full precision, worked out in 40-digit arithmetic from the data, to 1e-9", () => {
    const [R, X, Z] = budgeted().outputs;
    near(R?.standardUncertainty, 0.07107140739699594, 1e-10);
    near(X?.standardUncertainty, 0.2955816773586437, 3e-10);
    near(Z?.standardUncertainty, 0.2363361300823795, 3e-10);
  });

  it("gives the printed digits by R, X and Z of each set (Table H.5)", () => {
    const sets = readings.V.map((V, i) =>
      model({ V, I: readings.I[i] as number, phi: readings.phi[i] as number }),
    );
    const { inputs, correlation } = inputsFromSimultaneousReadings({
      R: sets.map((one) => one.R),
      X: sets.map((one) => one.X),
      Z: sets.map((one) => one.Z),
    });
    near(inputs["R"]?.standardUncertainty, 0.071, 5e-4);
    near(inputs["X"]?.standardUncertainty, 0.295, 5e-4);
    near(inputs["Z"]?.standardUncertainty, 0.236, 5e-4);
    near(correlation.coefficients[0]?.[1], -0.588, 1e-3);
    near(correlation.coefficients[0]?.[2], -0.485, 1e-3);
    near(correlation.coefficients[1]?.[2], 0.993, 1e-3);
  });

  it("takes readings made together as one part: four degrees of freedom, and says so", () => {
    const budget = budgeted();
    const [R] = budget.outputs;
    expect(R?.effectiveDegreesOfFreedom).toBeCloseTo(4, 12);
    // t of 4 degrees of freedom at 95 %: NIST TN 1297 Table B.1.
    near(R?.coverageFactor, 2.78, 5e-3);
    expect(budget.warnings.map(({ code }) => code)).toEqual(["assumed"]);
  });

  it("does not depend on the order of the inputs, and takes exact sensitivities", () => {
    const [, , Z] = budgeted().outputs;
    const { inputs, correlation } = inputsFromSimultaneousReadings({
      phi: readings.phi,
      V: readings.V,
      I: readings.I,
    });
    const other = uncertaintyBudget({ calculation: model, inputs, correlation, outputs: ["Z"] });
    near(other.outputs[0]?.standardUncertainty, Z?.standardUncertainty as number, 1e-11);
    const means = inputsFromSimultaneousReadings(readings).inputs;
    const [V, I] = [means["V"]?.estimate ?? 0, means["I"]?.estimate ?? 0];
    const exact = uncertaintyBudget({
      calculation: model,
      ...inputsFromSimultaneousReadings(readings),
      outputs: ["Z"],
      sensitivities: { Z: { V: 1 / I, I: -V / I ** 2, phi: 0 } },
    });
    near(exact.outputs[0]?.standardUncertainty, 0.2363361300823795, 1e-13);
    expect(exact.outputs[0]?.lines.every(({ sensitivityError }) => sensitivityError === 0)).toBe(true);
  });
});

describe("JCGM 100 H.1, end gauge", () => {
  const budgeted = () =>
    uncertaintyBudget({
      calculation: ({
        standard,
        difference,
        deltaAlpha,
        theta,
        alpha,
        deltaTheta,
      }: Record<"standard" | "difference" | "deltaAlpha" | "theta" | "alpha" | "deltaTheta", number>) =>
        standard + difference - standard * (deltaAlpha * theta + alpha * deltaTheta),
      inputs: {
        standard: inputFromCertificate({
          estimate: 50_000_623,
          expandedUncertainty: 75,
          coverageFactor: 3,
          degreesOfFreedom: 18,
        }),
        difference: {
          distribution: "normal",
          estimate: 215,
          standardUncertainty: 9.7,
          degreesOfFreedom: 25.6,
        },
        deltaAlpha: { distribution: "rectangular", estimate: 0, halfWidth: 1e-6, degreesOfFreedom: 50 },
        deltaTheta: { distribution: "rectangular", estimate: 0, halfWidth: 0.05, degreesOfFreedom: 2 },
        alpha: { distribution: "rectangular", estimate: 11.5e-6, halfWidth: 2e-6 },
      },
      fixed: { theta: -0.1 },
      coverageProbability: 0.99,
    });

  it("gives the printed contributions, degrees of freedom, factor and interval (H.1.4 to H.1.6)", () => {
    const [length] = budgeted().outputs;
    const line = (name: string) => length?.lines.find(({ input }) => input === name);
    near(length?.estimate, 50_000_838, 0.5);
    near(line("standard")?.contribution, 25, 0.5);
    near(line("difference")?.contribution, 9.7, 0.05);
    near(line("deltaAlpha")?.contribution, 2.9, 0.05);
    near(line("deltaTheta")?.contribution, 16.6, 0.05);
    near(line("alpha")?.contribution, 0, 1e-9);
    near(length?.standardUncertainty, 32, 0.5);
    near(length?.effectiveDegreesOfFreedom as number, 16.7, 0.07);
    near(length?.coverageFactor, 2.92, 0.005);
    near(length?.expandedUncertainty, 93, 0.6);
  });

  it("says how far a slope may be off where rounding of a large result limits it", () => {
    const [length] = budgeted().outputs;
    for (const { sensitivity, sensitivityError, input } of length?.lines ?? []) {
      const exact = {
        standard: 1,
        difference: 1,
        deltaAlpha: 5_000_062.3,
        deltaTheta: -575.0071645,
        alpha: 0,
      }[input];
      expect(Math.abs(sensitivity - (exact as number)), input).toBeLessThanOrEqual(2 * sensitivityError);
    }
  });
});

describe("the published examples of effective degrees of freedom", () => {
  it("quotient of two readings and a standard: metrology course notes, as quoted in a public test suite", () => {
    const { outputs } = uncertaintyBudget({
      calculation: ({ X1, X2, Yu }: { X1: number; X2: number; Yu: number }) => (X1 / X2) * Yu,
      inputs: {
        X1: { distribution: "normal", estimate: 0.182, standardUncertainty: 0.00093, degreesOfFreedom: 9 },
        X2: { distribution: "normal", estimate: 0.1823, standardUncertainty: 0.00058, degreesOfFreedom: 19 },
        Yu: { distribution: "normal", estimate: 0.6978, standardUncertainty: 0.0026, degreesOfFreedom: 19 },
      },
    });
    near(outputs[0]?.estimate, 0.6967, 5e-5);
    near(outputs[0]?.standardUncertainty, 0.00494, 1e-5);
    // Printed 27.7 with round-off of its own; 27.513 from the data.
    near(outputs[0]?.effectiveDegreesOfFreedom as number, 27.513, 5e-4);
    near(outputs[0]?.expandedUncertainty, 0.0101, 5e-5);
  });
});

const sum4 = ({ a, b, c, d }: { a: number; b: number; c: number; d: number }): number => a + b + c + d;
const rectangular = (deviation: number) =>
  ({ distribution: "rectangular", estimate: 0, halfWidth: deviation * Math.sqrt(3) }) as const;
const normal = { distribution: "normal", estimate: 0, standardUncertainty: 1 } as const;

describe("JCGM 101, 9.2, additive model", () => {
  const trials = 1_000_000;

  it("four normal inputs: u = 2.0, ±3.92 (Table 2), by both ways", () => {
    const inputs = { a: normal, b: normal, c: normal, d: normal };
    const [first] = uncertaintyBudget({ calculation: sum4, inputs }).outputs;
    near(first?.standardUncertainty, 2, 1e-12);
    near(first?.high, 3.92, 5e-3);
    const [drawn] = monteCarlo({ calculation: sum4, inputs, seed: 20_260_728, trials }).outputs;
    // Four standard deviations of a quantile of a million draws: 4·√(0.025·0.975/10⁶)/(density 0.0292).
    const wide = 0.022;
    near(drawn?.standardUncertainty, 2, 0.006);
    near(drawn?.symmetric.low, -3.92, wide);
    near(drawn?.symmetric.high, 3.92, wide);
    expect(
      validateFirstOrder({ firstOrder: first as never, monteCarlo: drawn as never, significantDigits: 1 })
        .validated,
    ).toBe(true);
  });

  it("four rectangular inputs: u = 2.0, ±3.88 (Table 3)", () => {
    const r = rectangular(1);
    const inputs = { a: r, b: r, c: r, d: r };
    const [first] = uncertaintyBudget({ calculation: sum4, inputs }).outputs;
    near(first?.standardUncertainty, 2, 1e-12);
    near(first?.high, 3.92, 5e-3);
    const [drawn] = monteCarlo({ calculation: sum4, inputs, seed: 3, trials }).outputs;
    near(drawn?.standardUncertainty, 2, 0.006);
    // Exact Irwin-Hall convolution: 3.879407.
    near(drawn?.symmetric.low, -3.879407, 0.02);
    near(drawn?.symmetric.high, 3.879407, 0.02);
    near(((drawn?.shortest.high ?? 0) - (drawn?.shortest.low ?? 0)) / 2, 3.879407, 0.01);
  });

  it("one rectangular input of ten times the deviation: u = 10.15, first order ±19.9, exact ±17.0 (Table 4)", () => {
    const r = rectangular(1);
    const inputs = { a: r, b: r, c: r, d: rectangular(10) };
    const [first] = uncertaintyBudget({ calculation: sum4, inputs }).outputs;
    near(first?.standardUncertainty, 10.14889, 1e-5);
    near(first?.high, 19.8915, 1e-3);
    const [drawn] = monteCarlo({ calculation: sum4, inputs, seed: 4, trials }).outputs;
    near(drawn?.symmetric.high, 17.0158, 0.05);
    near(drawn?.symmetric.low, -17.0158, 0.05);
    const { validated } = validateFirstOrder({ firstOrder: first as never, monteCarlo: drawn as never });
    expect(validated).toBe(false);
  });

  it("stops by itself once two digits have settled (7.9), and says so when it may not go on", () => {
    const inputs = { a: normal, b: normal, c: normal, d: normal };
    const run = monteCarlo({ calculation: sum4, inputs, seed: 5, significantDigits: 1, trials: 5_000_000 });
    expect(run.stopped).toBe("stabilized");
    expect(run.trials).toBeLessThan(trials);
    expect(run.trials % 10_000).toBe(0);
    near(run.outputs[0]?.standardUncertainty, 2, 0.1);
    const cut = monteCarlo({ calculation: sum4, inputs, seed: 5, significantDigits: 2, trials: 25_000 });
    expect([cut.stopped, cut.trials]).toEqual(["trial limit", 20_000]);
  });
});

describe("NPL report DEM-ES-011, 9.2: logarithm of a wide rectangular input", () => {
  const calculation = ({ x }: { x: number }): number => Math.log(x);
  const inputs = { x: { distribution: "rectangular", estimate: 0.6, halfWidth: 0.5 } } as const;

  it("first order gives −0.511 and 0.481, and says that it is rough", () => {
    const { outputs, warnings } = uncertaintyBudget({ calculation, inputs });
    near(outputs[0]?.estimate, -0.511, 5e-4);
    near(outputs[0]?.standardUncertainty, 0.481, 5e-4);
    expect(warnings.map(({ code, path }) => [code, path])).toEqual([["approximate", "inputs.x"]]);
  });

  it("the Monte Carlo method gives the exact mean, deviation and shortest interval", () => {
    const [drawn] = monteCarlo({ calculation, inputs, seed: 6, trials: 500_000 }).outputs;
    // Closed forms: mean −0.664900, deviation 0.606227, shortest interval [−1.89712, 0.09531].
    near(drawn?.estimate, -0.6649, 0.0035);
    near(drawn?.standardUncertainty, 0.606227, 0.003);
    near(drawn?.shortest.low, -1.89712, 0.012);
    near(drawn?.shortest.high, 0.09531, 2e-4);
  });
});

describe("sampling", () => {
  it("has the deviation of each distribution, and joint normal inputs their correlation", () => {
    const trials = 400_000;
    const calculation = ({ x, y }: { x: number; y: number }) => ({ x, y, both: x + y });
    const draw = (x: UncertainInput) =>
      monteCarlo({ calculation, inputs: { x }, fixed: { y: 0 }, seed: 7, trials }).outputs[0];
    near(
      draw({ distribution: "triangular", estimate: 1, halfWidth: 2 })?.standardUncertainty,
      2 / Math.sqrt(6),
      0.004,
    );
    near(
      draw({ distribution: "U-shaped", estimate: 1, halfWidth: 2 })?.standardUncertainty,
      Math.SQRT2,
      0.004,
    );
    near(
      draw({ distribution: "rectangular", estimate: 1, halfWidth: 2 })?.standardUncertainty,
      2 / Math.sqrt(3),
      0.004,
    );
    // Student's t of ν = 9 is √(9/7) as wide as its scale; 95 % within ±2.262 scales (NIST TN 1297 Table B.1: 2.26).
    const t = draw({ distribution: "t", estimate: 1, standardUncertainty: 2, degreesOfFreedom: 9 });
    near(t?.standardUncertainty, 2 * Math.sqrt(9 / 7), 0.015);
    near(t?.symmetric.high, 1 + 2 * 2.262157, 0.05);
    // u²(x + y) = 1 + 4 + 2·0.6·1·2.
    const { outputs } = monteCarlo({
      calculation,
      inputs: { x: normal, y: { ...normal, standardUncertainty: 2 } },
      correlation: {
        inputs: ["x", "y"],
        coefficients: [
          [1, 0.6],
          [0.6, 1],
        ],
      },
      seed: 8,
      trials,
    });
    near(outputs[2]?.standardUncertainty, Math.sqrt(7.4), 0.013);
    near(outputs[0]?.standardUncertainty, 1, 0.005);
  });

  it("is the same for the same seed, different for another, and leaves its input alone", () => {
    const inputs = Object.freeze({ a: normal, b: normal, c: normal });
    const fixed = Object.freeze({ d: 1 });
    const run = (seed: number) => monteCarlo({ calculation: sum4, inputs, fixed, seed, trials: 2000 });
    expect(run(11)).toEqual(run(11));
    expect(run(11).outputs).not.toEqual(run(12).outputs);
    expectFinite(run(11), "a run");
  });
});

describe("an invented check of measured power: voltmeter ±0.5 %, clamp ±2 %", () => {
  // Closed form of the question: worst case 2.5 %, root sum of squares 2.06155 % of the power.
  const inputs = {
    voltage: { distribution: "rectangular", estimate: 480, halfWidth: 0.005 * 480 },
    current: { distribution: "rectangular", estimate: 37.5, halfWidth: 0.02 * 37.5 },
  } as const;
  const power = 18_000;

  it("combines to 2.06 % over √3, never leaves the worst case, and finds a shortfall of 3 % outside of both", () => {
    const budget = uncertaintyBudget({ calculation: powerFromVoltageAndCurrent, inputs });
    const run = monteCarlo({ calculation: powerFromVoltageAndCurrent, inputs, seed: 2, trials: 1_000_000 });
    const [first] = budget.outputs;
    near(((first?.standardUncertainty ?? 0) / power) * Math.sqrt(3), 0.0206155, 1e-6);
    const [drawn] = run.outputs;
    near((drawn?.standardUncertainty ?? 0) / power, 0.0206155 / Math.sqrt(3), 2e-5);
    expect(drawn?.symmetric.high).toBeLessThan(power * 1.0251);
    // The clamp dominates, so the interval is narrower than 1.96·u: the trapezium of two rectangles, 2.0 % and 0.5 % wide.
    near((drawn?.symmetric.high ?? 0) / power - 1, 0.0205 - 0.0005, 6e-4);
    expect(first?.expandedUncertainty).toBeGreaterThan((drawn?.symmetric.high ?? 0) - power);
    expect(validateFirstOrder({ firstOrder: first as never, monteCarlo: drawn as never }).validated).toBe(
      false,
    );
    expect(0.97 * power).toBeLessThan(budget.outputs[0]?.low as number);
    expect(0.97 * power).toBeLessThan(run.outputs[0]?.symmetric.low as number);
  });

  it("of a joint by millivolts over amperes: both ways agree to a hundredth, and R and P are correlated as they must be", () => {
    const inputs = {
      drop: { distribution: "rectangular", estimate: 1.5e-3, halfWidth: 0.05e-3 },
      current: { distribution: "normal", estimate: 30, standardUncertainty: 0.3 },
    } as const;
    const joint = {
      calculation: measuredJoint,
      inputs,
      fixed: { barResistance: ohms(0), dropHalfWidth: volts(0), currentHalfWidth: amperes(0) },
      outputs: ["resistance", "power"],
    };
    const { outputs, correlation } = uncertaintyBudget(joint);
    // u(V)/V = 0.05/1.5/√3, u(I)/I = 0.01: R = V/I and P = V·I have the same relative uncertainty.
    const [uv, ui] = [0.05 / 1.5 / Math.sqrt(3), 0.01];
    near((outputs[0]?.standardUncertainty ?? 0) / 50e-6, Math.hypot(uv, ui), 1e-10);
    near((outputs[1]?.standardUncertainty ?? 0) / 45e-3, Math.hypot(uv, ui), 1e-10);
    near(correlation[0]?.[1] ?? undefined, (uv * uv - ui * ui) / (uv * uv + ui * ui), 1e-9);
    const drawn = monteCarlo({ ...joint, seed: 9, trials: 400_000 }).outputs;
    for (const k of [0, 1]) {
      near((drawn[k]?.standardUncertainty ?? 0) / (outputs[k]?.standardUncertainty ?? 1), 1, 0.01);
    }
  });
});

describe("laws", () => {
  const number = fc.double({ min: -100, max: 100, noNaN: true });
  const spread = fc.double({ min: 1e-6, max: 10, noNaN: true });

  it("first order is exact for linear models, correlated or not", () => {
    fc.assert(
      fc.property(
        fc.tuple(number, number, number),
        fc.tuple(number, number),
        fc.tuple(spread, spread),
        fc.double({ min: -1, max: 1, noNaN: true }),
        ([p, q, c], [x, y], [u, v], r) => {
          const { outputs } = uncertaintyBudget({
            calculation: (input: { x: number; y: number }) => p * input.x + q * input.y + c,
            inputs: {
              x: { distribution: "normal", estimate: x, standardUncertainty: u },
              y: { distribution: "normal", estimate: y, standardUncertainty: v },
            },
            correlation: {
              inputs: ["y", "x"],
              coefficients: [
                [1, r],
                [r, 1],
              ],
            },
          });
          const exact = Math.sqrt(Math.max(0, (p * u) ** 2 + (q * v) ** 2 + 2 * p * q * u * v * r));
          // Differences of a result of ten thousand leave 1e-12 of it at a step as small as the uncertainty.
          expect(Math.abs((outputs[0]?.standardUncertainty ?? 0) - exact)).toBeLessThan(
            1e-6 * (Math.abs(p * u) + Math.abs(q * v)) + 1e-9,
          );
        },
      ),
    );
  });

  it("slopes of smooth functions come out to 1e-9, and within twice the error stated", () => {
    const functions: readonly [(x: number) => number, (x: number) => number, fc.Arbitrary<number>][] = [
      [(x) => x ** 3, (x) => 3 * x * x, fc.double({ min: 0.5, max: 50, noNaN: true })],
      [Math.exp, Math.exp, fc.double({ min: -5, max: 5, noNaN: true })],
      [Math.log, (x) => 1 / x, fc.double({ min: 0.1, max: 50, noNaN: true })],
      [(x) => 1 / x, (x) => -1 / (x * x), fc.double({ min: 0.1, max: 50, noNaN: true })],
      [Math.sqrt, (x) => 0.5 / Math.sqrt(x), fc.double({ min: 0.1, max: 50, noNaN: true })],
    ];
    for (const [f, slope, arbitrary] of functions) {
      fc.assert(
        fc.property(arbitrary, fc.double({ min: 0, max: 0.05, noNaN: true }), (x, u) => {
          const { outputs } = uncertaintyBudget({
            calculation: (input: { x: number }) => f(input.x),
            inputs: { x: { distribution: "normal", estimate: x, standardUncertainty: u * Math.abs(x) } },
          });
          const line = outputs[0]?.lines[0];
          const off = Math.abs((line?.sensitivity ?? 0) - slope(x));
          expect(off).toBeLessThan(1e-9 * Math.max(Math.abs(slope(x)), Math.abs(f(x))));
          expect(off).toBeLessThanOrEqual(2 * (line?.sensitivityError ?? 0) + 1e-13 * Math.abs(slope(x)));
        }),
      );
    }
  });

  it("takes one side at the edge of the domain, and says that the calculation refuses the other", () => {
    const calculation = ({ x }: { x: number }): number => {
      if (x > 1) throw new RangeError("a ratio above 1");
      return x * x;
    };
    const { outputs, warnings } = uncertaintyBudget({
      calculation,
      inputs: { x: { distribution: "rectangular", estimate: 1, halfWidth: 0.01 } },
    });
    near(outputs[0]?.lines[0]?.sensitivity, 2, 1e-9);
    expect(warnings[0]?.code).toBe("approximate");
  });
});

describe("refusals", () => {
  const calculation = ({ x, y }: { x: number; y: number }): number => x + y;
  const good = { x: normal, y: normal };
  const budget = (change: object) =>
    caught(() => uncertaintyBudget({ calculation, inputs: good, ...change } as never));
  const run = (change: object) =>
    caught(() => monteCarlo({ calculation, inputs: good, seed: 1, trials: 1000, ...change } as never));

  it.each([
    [{ calculation: undefined }, "missing", "calculation"],
    [{ calculation: 5 }, "wrong-type", "calculation"],
    [{ inputs: {} }, "missing", "inputs"],
    [{ inputs: { x: { ...normal, distribution: "gauss" } } }, "unknown-name", "inputs.x.distribution"],
    [
      { inputs: { x: { ...normal, standardUncertainty: -1 } } },
      "out-of-range",
      "inputs.x.standardUncertainty",
    ],
    [{ inputs: { x: { ...normal, estimate: Number.NaN } } }, "not-a-number", "inputs.x.estimate"],
    [{ inputs: { x: { ...normal, halfWidth: 1 } } }, "unknown-field", "inputs.x.halfWidth"],
    [{ inputs: { x: { distribution: "rectangular", estimate: 1 } } }, "missing", "inputs.x.halfWidth"],
    [{ inputs: { x: { ...normal, distribution: "t" } } }, "missing", "inputs.x.degreesOfFreedom"],
    [{ inputs: { x: { ...normal, degreesOfFreedom: 0.5 } } }, "out-of-range", "inputs.x.degreesOfFreedom"],
    [{ fixed: { x: 1 } }, "duplicate", "fixed.x"],
    [{ outputs: ["nothing"] }, "unknown-name", "nothing"],
    [{ outputs: ["result", "result"] }, "duplicate", "outputs"],
    [{ coverageProbability: 95 }, "out-of-range", "coverageProbability"],
    [
      {
        correlation: {
          inputs: ["x", "z"],
          coefficients: [
            [1, 0],
            [0, 1],
          ],
        },
      },
      "unknown-name",
      "correlation.inputs.1",
    ],
    [
      {
        correlation: {
          inputs: ["x", "y"],
          coefficients: [
            [1, 2],
            [2, 1],
          ],
        },
      },
      "out-of-range",
      "correlation.coefficients.0.1",
    ],
    [{ sensitivities: { z: { x: 1 } } }, "unknown-name", "sensitivities"],
    [
      {
        inputs: JSON.parse(
          '{"__proto__": {"distribution": "normal", "estimate": 0, "standardUncertainty": 1}}',
        ),
      },
      "unknown-field",
      "inputs",
    ],
  ])("%j", (change, code, argument) => {
    const error = budget(change);
    expect([error.code, error.argument]).toEqual([code, argument]);
    expect(({} as Record<string, unknown>)["distribution"]).toBeUndefined();
  });

  it.each([
    [{ seed: undefined }, "missing", "seed"],
    [{ seed: 1.5 }, "out-of-range", "seed"],
    [{ trials: 10 }, "out-of-range", "trials"],
    [{ coverageProbability: 0.999 }, "inconsistent", "trials"],
    [{ significantDigits: 3 }, "out-of-range", "significantDigits"],
    [
      {
        inputs: { x: normal, y: inputFromReadings([1, 2]) },
        correlation: {
          inputs: ["x", "y"],
          coefficients: [
            [1, 0.1],
            [0.1, 1],
          ],
        },
      },
      "inconsistent",
      "inputs.y.distribution",
    ],
  ])("Monte Carlo %j", (change, code, argument) => {
    const error = run(change);
    expect([error.code, error.argument]).toEqual([code, argument]);
  });

  it("stops a run at a draw that the calculation refuses, with the draw and the reason", () => {
    const error = run({
      calculation: ({ x }: { x: number }) => {
        if (x < -1) throw new RangeError("below the domain");
        return x;
      },
    });
    expect(error.code).toBe("out-of-range");
    expect(error.message).toMatch(/trial \d+ drew x = -1\.\d+.*below the domain/);
  });
});

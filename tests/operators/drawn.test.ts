/**
 * What the Monte Carlo run draws and how it sums up, on few trials. Distributions against their closed forms by the distance of
 * Kolmogorov and Smirnov; the summary against one worked out here from the very values that were drawn, by the definitions of
 * JCGM 101:2008, 7.5 to 7.7 and 7.9.4. Distribution functions of Student's t for ν of 1, 2 and 4: closed forms of its integral.
 */
import { monteCarlo, type UncertainInput } from "electroheat/operators";
import { describe, expect, it } from "vitest";
import { seededGenerator } from "../../src/operators/random.ts";

const TRIALS = 4000;
/** The distance is above 2.7/√n in fewer than one sample of a million (limit law of Kolmogorov, 2·exp(−2·2.7²)). */
const FARTHEST = 2.7 / Math.sqrt(TRIALS);

function drawn(input: UncertainInput, trials = TRIALS): number[] {
  const values: number[] = [];
  const calculation = ({ x }: { x: number }) => {
    values.push(x);
    return x;
  };
  monteCarlo({ calculation, inputs: { x: input }, trials, seed: 20, coverageProbability: 0.9 });
  return values;
}

/** erf by its own power series: an arithmetic of its own beside that of the room. */
function normal(x: number): number {
  let [term, sum] = [x, x];
  for (let n = 1; Math.abs(term) > 1e-17; n += 1) {
    term *= -(x * x) / (2 * n);
    sum += term / (2 * n + 1);
  }
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
}

const clamp = (x: number) => Math.min(1, Math.max(0, x));
const rising = (x: number) => (x < 0 ? (1 + x) ** 2 / 2 : 1 - (1 - x) ** 2 / 2);
const spread = { estimate: 3, standardUncertainty: 2 } as const;
const limits = { estimate: 3, halfWidth: 2 } as const;

describe("the draws", () => {
  const cases: readonly (readonly [UncertainInput, (z: number) => number])[] = [
    [{ distribution: "rectangular", ...limits }, (z) => clamp((z + 1) / 2)],
    [{ distribution: "triangular", ...limits }, (z) => clamp(rising(z))],
    [{ distribution: "U-shaped", ...limits }, (z) => 0.5 + Math.asin(z) / Math.PI],
    [{ distribution: "normal", ...spread }, normal],
    [{ distribution: "t", degreesOfFreedom: 1, ...spread }, (z) => 0.5 + Math.atan(z) / Math.PI],
    [{ distribution: "t", degreesOfFreedom: 2, ...spread }, (z) => 0.5 + z / (2 * Math.sqrt(2 + z * z))],
    [
      { distribution: "t", degreesOfFreedom: 4, ...spread },
      (z) => 0.5 + (0.375 * z * (1 + (z * z) / 4 - (z * z) / 12)) / (1 + (z * z) / 4) ** 1.5,
    ],
  ];
  it.each(cases)("follow their distribution: %j", (input, below) => {
    const sorted = drawn(input).sort((a, b) => a - b);
    expect(sorted).toHaveLength(TRIALS);
    const distances = sorted.map((x, i) => Math.abs(below((x - 3) / 2) - (i + 0.5) / TRIALS));
    expect(Math.max(...distances)).toBeLessThan(FARTHEST);
    if ("halfWidth" in input) {
      expect(sorted[0]).toBeGreaterThanOrEqual(1);
      expect(sorted.at(-1)).toBeLessThanOrEqual(5);
    }
  });

  it("take one number of the generator each, in the order of the inputs", () => {
    const random = seededGenerator(20);
    const wanted = Array.from({ length: 100 }, () => [1 + 4 * random.uniform(), 2 + 6 * random.uniform()]);
    const got: number[][] = [];
    monteCarlo({
      calculation: ({ a, b }: { a: number; b: number }) => got.push([a, b]),
      inputs: {
        a: { distribution: "rectangular", ...limits },
        b: { distribution: "rectangular", estimate: 5, halfWidth: 3 },
      },
      trials: 100,
      seed: 20,
      coverageProbability: 0.9,
    });
    const off = got.flat().map((value, i) => Math.abs(value - (wanted.flat()[i] as number)));
    expect(Math.max(...off)).toBeLessThan(1e-12);
  });

  /** Deviates of correlated inputs a, b, c with an independent d between them. */
  const together = (coefficients: readonly (readonly number[])[]) => {
    const rows: number[][] = [];
    const one = { distribution: "normal", estimate: 10, standardUncertainty: 2 } as const;
    monteCarlo({
      calculation: ({ a, b, c, d }: Record<"a" | "b" | "c" | "d", number>) =>
        rows.push([(a - 10) / 2, (b - 10) / 4, (c - 10) / 2, d - 10]),
      inputs: {
        a: one,
        d: { ...one, standardUncertainty: 1 },
        b: { ...one, standardUncertainty: 4 },
        c: one,
      },
      correlation: { inputs: ["a", "b", "c"], coefficients },
      trials: TRIALS,
      seed: 4,
    });
    return rows;
  };
  const product = (rows: readonly (readonly number[])[], i: number, j: number) =>
    rows.reduce((sum, row) => sum + (row[i] as number) * (row[j] as number), 0) / rows.length;

  it("of correlated inputs have their correlation and nobody else's", () => {
    const coefficients = [
      [1, 0.8, -0.5],
      [0.8, 1, -0.2],
      [-0.5, -0.2, 1],
    ];
    const rows = together(coefficients);
    // A mean of n products of normal deviates is within √(1 + r²)/√n of r; 4.5 of these.
    const near = (4.5 * Math.SQRT2) / Math.sqrt(TRIALS);
    for (let i = 0; i < 4; i += 1) {
      for (let j = 0; j < 4; j += 1) {
        const r = coefficients[i]?.[j] ?? (i === j ? 1 : 0);
        expect(Math.abs(product(rows, i, j) - r), `${i} ${j}`).toBeLessThan(near);
      }
    }
  });

  it("of inputs that are one, or opposites, are the same number", () => {
    const rows = together([
      [1, 1, -1],
      [1, 1, -1],
      [-1, -1, 1],
    ]);
    const off = rows.map(([a = 0, b = 0, c = 0]) => Math.max(Math.abs(b - a), Math.abs(c + a)));
    expect(Math.max(...off)).toBeLessThan(1e-12);
  });
});

/** Mean, deviation and both intervals of values, as the standard writes them. */
function summed(values: readonly number[], probability: number) {
  const sorted = [...values].sort((a, b) => a - b);
  const n = sorted.length;
  const mean = sorted.reduce((sum, x) => sum + x / n, 0);
  const deviation = Math.sqrt(sorted.reduce((sum, x) => sum + (x - mean) ** 2 / (n - 1), 0));
  const product = Number((probability * n).toPrecision(12));
  const q = Number.isInteger(product) ? product : Math.trunc(product + 0.5);
  const half = (n - q) / 2;
  const r = Number.isInteger(half) ? half : Math.trunc((n - q + 1) / 2);
  const from = (rank: number) => ({ low: sorted[rank - 1] as number, high: sorted[rank + q - 1] as number });
  const all = Array.from({ length: n - q }, (_, i) => from(i + 1));
  const shortest = all.reduce((best, one) => (one.high - one.low < best.high - best.low ? one : best));
  return { mean, deviation, symmetric: from(r), shortest };
}

describe("the summary", () => {
  // An exponential: lopsided, so that the shortest interval is not the symmetric one and begins at the least value.
  it.each([
    [100, 0.5],
    [101, 0.5],
    [1001, 0.95],
    [777, 0.683],
    [1000, 0.99],
  ])("of %d values at %d", (trials, coverageProbability) => {
    for (const sign of [1, -1]) {
      const values: number[] = [];
      const { outputs } = monteCarlo({
        calculation: ({ x }: { x: number }) => {
          const value = -sign * Math.log(x) + 1e6;
          values.push(value);
          return value;
        },
        inputs: { x: { distribution: "rectangular", estimate: 0.5, halfWidth: 0.5 } },
        trials,
        seed: 5,
        coverageProbability,
      });
      const wanted = summed(values, coverageProbability);
      const [got] = outputs;
      expect(got).toMatchObject({ output: "result", coverageProbability });
      expect(got?.symmetric).toEqual(wanted.symmetric);
      expect(got?.shortest).toEqual(wanted.shortest);
      expect(got?.estimate).toBeCloseTo(wanted.mean, 7);
      expect(got?.standardUncertainty).toBeCloseTo(wanted.deviation, 7);
    }
  });

  it("keeps the digits that differ where a thousand million is common to all", () => {
    const run = (offset: number) =>
      monteCarlo({
        calculation: ({ x }: { x: number }) => x + offset,
        inputs: { x: { distribution: "normal", estimate: 0, standardUncertainty: 1 } },
        trials: 1000,
        seed: 6,
      }).outputs[0];
    const [plain, shifted] = [run(0), run(2 ** 30)];
    expect(shifted?.standardUncertainty).toBeCloseTo(plain?.standardUncertainty as number, 6);
    expect((shifted?.estimate as number) - 2 ** 30).toBeCloseTo(plain?.estimate as number, 6);
  });

  it("takes as many trials as the interval needs, and no fewer", () => {
    const run = (trials: number, coverageProbability: number) => () =>
      monteCarlo({
        calculation: ({ x }: { x: number }) => x,
        inputs: { x: { distribution: "normal", estimate: 0, standardUncertainty: 1 } },
        trials,
        seed: 6,
        coverageProbability,
      });
    // Ten values outside: 10/(1 − 0.75) = 40 is below the least number of trials, 10/(1 − 0.9375) = 160 is not.
    expect(run(100, 0.75)().trials).toBe(100);
    expect(run(160, 0.9375)().trials).toBe(160);
    // 1 − 0.9 and the like are a hair beside a tenth in float64.
    for (const [trials, probability] of [
      [100, 0.9],
      [200, 0.95],
      [1000, 0.99],
      [10_000, 0.999],
    ] as const) {
      expect(run(trials, probability)().trials).toBe(trials);
      if (trials > 100) expect(run(trials - 1, probability)).toThrow(`expected at least ${trials}`);
    }
    expect(run(159, 0.9375)).toThrow(/trials: 159 is not allowed; expected at least 160 .* 0\.9375/);
    expect(run(99, 0.75)).toThrow(/trials: 99 is not allowed; expected a whole number from 100 to 20000000/);
  });
});

describe("the adaptive run", () => {
  /** When blocks of results have settled (7.9.4), worked out from the drawn values; undefined within those there are. */
  function settlesAfter(values: readonly number[], size: number, digits: number, probability: number) {
    const blocks: ReturnType<typeof summed>[] = [];
    for (let at = 0; at + size <= values.length; at += size) {
      blocks.push(summed(values.slice(at, at + size), probability));
      const h = blocks.length;
      if (h < 2) continue;
      const u = Math.sqrt(blocks.reduce((sum, one) => sum + one.deviation ** 2 / h, 0));
      const power = Number(u.toExponential(digits - 1).split("e")[1]) - digits + 1;
      const settled = [
        blocks.map(({ mean }) => mean),
        blocks.map(({ deviation }) => deviation),
        blocks.map(({ symmetric }) => symmetric.low),
        blocks.map(({ symmetric }) => symmetric.high),
        blocks.map(({ shortest }) => shortest.low),
        blocks.map(({ shortest }) => shortest.high),
      ].every((row) => {
        const mean = row.reduce((sum, x) => sum + x / h, 0);
        const ofMean = Math.sqrt(row.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (h * (h - 1)));
        return 2 * ofMean <= 0.5 * 10 ** power;
      });
      if (settled) return at + size;
    }
    return undefined;
  }

  it.each([
    [0.9, 10_000, 1],
    [0.5, 10_000, 1.6],
    [0.995, 20_000, 1],
  ])("at %d goes on in blocks of %d until the digit has settled", (coverageProbability, size, u) => {
    const values: number[] = [];
    const ask = {
      calculation: ({ x }: { x: number }) => {
        values.push(x);
        return x;
      },
      inputs: { x: { distribution: "normal", estimate: 0, standardUncertainty: u } },
      seed: 8,
      coverageProbability,
    } as const;
    const most = 3 * size + 1;
    const run = monteCarlo({ ...ask, significantDigits: 1, trials: most });
    const wanted = settlesAfter(values, size, 1, coverageProbability);
    expect([run.trials, run.stopped]).toEqual([
      wanted ?? 3 * size,
      wanted === undefined ? "trial limit" : "stabilized",
    ]);
    // The values are those of a run of as many trials, so the answers are too.
    const [got] = run.outputs;
    const whole = summed(values, coverageProbability);
    expect(got).toMatchObject({ symmetric: whole.symmetric, shortest: whole.shortest });
    expect(got?.estimate).toBeCloseTo(whole.mean, 10);
    expect(got?.standardUncertainty).toBeCloseTo(whole.deviation, 10);
  });

  it("with fewer trials than a block makes them all, once", () => {
    const run = monteCarlo({
      calculation: ({ x }: { x: number }) => x,
      inputs: { x: { distribution: "normal", estimate: 0, standardUncertainty: 1 } },
      seed: 8,
      significantDigits: 2,
      trials: 500,
    });
    expect([run.trials, run.stopped]).toEqual([500, "trial limit"]);
  });
});

/** The integration rule against brute force: peaks of every width, at every place, one or two of them, and the flat case. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { weightsOf } from "../../../src/bench/diagnosis/numbers/linear.ts";
import { planeIntegral } from "../../../src/bench/diagnosis/numbers/nested.ts";
import { logIntegral } from "../../../src/bench/diagnosis/numbers/quadrature.ts";
import { quantiles } from "../../../src/bench/diagnosis/numbers/quantiles.ts";

/** ln ∫₀¹ exp(f) by a million points. */
function brute(f: (t: number) => number, count = 400_000): number {
  let most = Number.NEGATIVE_INFINITY;
  const values = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    values[i] = f((i + 0.5) / count);
    most = Math.max(most, values[i] as number);
  }
  let sum = 0;
  for (const value of values) sum += Math.exp(value - most);
  return most + Math.log(sum / count);
}

const NEVER = Number.NEGATIVE_INFINITY;

describe("logIntegral", () => {
  it("finds Gaussian peaks from flat to a ten-thousandth wide, inside, at and beyond the ends", () => {
    for (const width of [3, 0.5, 0.1, 0.02, 3e-3, 2e-4]) {
      for (const centre of [-0.02, 0, 0.013, 0.31, 0.5, 0.77, 1, 1.01]) {
        if ((centre < 0 || centre > 1) && width < 3e-3) continue;
        const f = (t: number): number => -0.5 * ((t - centre) / width) ** 2;
        expect(Math.abs(logIntegral(f, NEVER).log - brute(f)), `${centre} ± ${width}`).toBeLessThan(0.05);
      }
    }
  });

  it("integrates what a joint's resistance does: a reading against leads plus ρ, with ρ log-uniform", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 3, noNaN: true }),
        fc.double({ min: -7, max: 0, noNaN: true }),
        (logRho, logSigma) => {
          const y = Math.exp(logRho);
          const sigma = Math.exp(logSigma);
          const f = (t: number): number => -0.5 * ((y - 1e-3 * 30_000 ** t) / sigma) ** 2;
          expect(Math.abs(logIntegral(f, NEVER).log - brute(f, 100_000))).toBeLessThan(0.03);
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });

  it("counts both of two peaks", () => {
    const f = (t: number): number =>
      Math.log(
        Math.exp(-0.5 * ((t - 0.2) / 0.02) ** 2) + 2 * Math.exp(-0.5 * ((t - 0.8) / 0.03) ** 2) + 1e-300,
      );
    expect(Math.abs(logIntegral(f, NEVER).log - brute(f))).toBeLessThan(0.02);
  });

  // Reference: occam-open-vs-joint of the network memo, analytic erf form against 200 000 points: ln of the marginal
  // likelihood of a joint of 0 to 30 Ω (uniform) in line A under 36.1, 24.1, 35.9 Ω with 0.1 Ω of noise.
  it("gives the reference marginal likelihood of a joint of unknown resistance", () => {
    const log = (residuals: readonly number[]): number =>
      residuals.reduce(
        (sum, r) => sum - 0.5 * (r / 0.1) ** 2 - Math.log(0.1) - 0.5 * Math.log(2 * Math.PI),
        0,
      );
    const marginal = logIntegral((t) => log([36.1 - 24 - 30 * t, 24.1 - 24, 35.9 - 24 - 30 * t]), NEVER).log;
    expect(Math.abs(marginal - -2.480478)).toBeLessThan(0.01);
    // Kass and Raftery's scale: over 150 is very strong.
    expect(Math.exp(2.65094 - marginal)).toBeGreaterThan(165);
    expect(Math.exp(2.65094 - marginal)).toBeLessThan(173);
  });

  it("takes quantiles of a known posterior", () => {
    const f = (t: number): number => -0.5 * ((t - 0.4) / 0.05) ** 2;
    const { nodes, logTerms } = logIntegral(f, NEVER);
    const unit = { low: 0, high: 1, logarithmic: false };
    const parts = [0.5, 0.025, 0.975];
    const [median, low, high] = quantiles(Float64Array.from(nodes), weightsOf(logTerms), parts, unit) as [
      number,
      number,
      number,
    ];
    expect(Math.abs(median - 0.4)).toBeLessThan(0.004);
    expect(Math.abs(low - 0.302)).toBeLessThan(0.012);
    expect(Math.abs(high - 0.498)).toBeLessThan(0.012);
  });
});

describe("quantiles", () => {
  const parts = [0.025, 0.25, 0.5, 0.975];

  it("of a grid in two parameters lie between its lines, as those of an even distribution do", () => {
    // 12 middles of cells from 2 to 6 %, each met in 48 directions: what an unbalanced supply is weighed on.
    const values = Array.from({ length: 12 * 48 }, (_, i) => 0.02 + (0.04 * ((i % 12) + 0.5)) / 12);
    const logTerms = values.map(() => 0);
    const bounds = { low: 0.02, high: 0.06, logarithmic: false };
    quantiles(Float64Array.from(values), weightsOf(logTerms), parts, bounds).forEach((value, k) => {
      expect(Math.abs(value - (0.02 + 0.04 * (parts[k] as number)))).toBeLessThan(1e-9);
    });
  });

  it("of a parameter laid out by its logarithm are even in that, and none lies in a gap", () => {
    const values = Array.from({ length: 20 }, (_, i) => 1e-3 * 3e4 ** ((i + 0.5) / 20));
    const logTerms = values.map(() => 0);
    const bounds = { low: 1e-3, high: 30, logarithmic: true };
    quantiles(Float64Array.from(values), weightsOf(logTerms), parts, bounds).forEach((value, k) => {
      expect(Math.abs(Math.log(value / (1e-3 * 3e4 ** (parts[k] as number))))).toBeLessThan(1e-9);
    });
    const ratio = { low: 0.6, high: 2, logarithmic: true, gap: [0.9, 1.15] as const };
    const both = Float64Array.of(0.85, 0.88, 1.2, 1.3);
    for (const part of [0.42, 0.46, 0.5, 0.54, 0.58]) {
      const [value] = quantiles(both, weightsOf([0, 0, 0, 0]), [part], ratio) as [number];
      expect(value <= 0.9 || value >= 1.15).toBe(true);
    }
  });
});

describe("planeIntegral", () => {
  it("integrates a slanting peak: −½(u² + v²) with correlated coordinates", () => {
    const along = (x: number) => (y: number) => -0.5 * (((x + y - 1) / 0.03) ** 2 + ((x - y) / 0.3) ** 2);
    let sum = 0;
    const n = 1500;
    for (let i = 0; i < n; i += 1) {
      const f = along((i + 0.5) / n);
      for (let j = 0; j < n; j += 1) sum += Math.exp(f((j + 0.5) / n));
    }
    const plane = planeIntegral((x) => logIntegral(along(x), NEVER), NEVER);
    expect(Math.abs(plane.log - Math.log(sum / n / n))).toBeLessThan(0.03);
  });
});

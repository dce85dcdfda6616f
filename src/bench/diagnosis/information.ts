/** How much one more reading is expected to settle: mutual information between the explanations and the reading, in bits. */
import type { Open } from "../../quantity/index.ts";
import { sampled } from "./inference/judged.ts";
import { SOUND_INSULATION } from "./likelihood/insulation.ts";
import { forwardInPlace, weightsOf } from "./numbers/linear.ts";
import { floats } from "./numbers/room.ts";
import { INSTRUMENT_OF, ownVariance } from "./question/instruments.ts";
import type { Instrument } from "./question/types.ts";
import type { Finding } from "./weighing/findings.ts";

/** One way the reading may come out under an explanation: Gaussian, or open. Insulation as log10 of ohms. */
export interface Outcome {
  readonly weight: number;
  readonly mean: number | Open;
  readonly deviation: number;
}

/** Points of a posterior that a reading is predicted at. */
const SAMPLES = 6;

/** Seven-point Gauss-Hermite for a standard normal: nodes and weights (roots of He₇; Abramowitz and Stegun, table 25.10, scaled). */
const HERMITE = [
  [-3.750439717725742, 5.48268855972218e-4],
  [-2.366759410734541, 0.0307571239675865],
  [-1.154405394739968, 0.2401231786050127],
  [0, 0.4571428571428571],
  [1.154405394739968, 0.2401231786050127],
  [2.366759410734541, 0.0307571239675865],
  [3.750439717725742, 5.48268855972218e-4],
] as const;

/**
 * What a finding expects of planned rows, given the readings there are: for each row its outcomes.
 * @param rows - positions of the planned measurements among all rows
 */
export function outcomesOf(finding: Finding, rows: readonly number[]): readonly (readonly Outcome[])[] {
  const { model } = finding;
  const { prediction, evaluation, question } = model;
  const points = sampled(finding.points, weightsOf(finding.logTerms), SAMPLES);
  const weight = 1 / points.length;
  const result: Outcome[][] = rows.map(() => []);
  for (const point of points) {
    finding.visit(point);
    const m = evaluation.count;
    const { factor, active, residual } = evaluation;
    rows.forEach((r, k) => {
      const reading = question.all[r] as { readonly kind: keyof typeof INSTRUMENT_OF };
      const instrument = question.input.instruments[INSTRUMENT_OF[reading.kind]] as Instrument;
      const into = result[k] as Outcome[];
      if (reading.kind === "insulation") {
        into.push({ weight, ...insulationOutcome(finding, r, point, instrument) });
        return;
      }
      const f = prediction.mean[r] as number;
      if (prediction.adrift[r] !== 0) {
        // A floating probe shows nothing, or anything up to the line voltage.
        const reach = question.seen.reach[r] as number;
        into.push({ weight: weight / 2, mean: 0, deviation: Math.sqrt(ownVariance(instrument, 0)) });
        into.push({ weight: weight / 2, mean: reach / 4, deviation: reach / 4 });
        return;
      }
      if (f === Number.POSITIVE_INFINITY) {
        into.push({ weight, mean: "open", deviation: 0 });
        return;
      }
      const shared = floats(m);
      let variance = ownVariance(instrument, f) + (prediction.extra[r] as number);
      for (let c = 0; c < prediction.count; c += 1) {
        const base = c * prediction.rows;
        const own = prediction.columns[base + r] as number;
        if (own === 0) continue;
        variance += own * own;
        for (let i = 0; i < m; i += 1) {
          shared[i] =
            (shared[i] as number) + own * (prediction.columns[base + (active[i] as number)] as number);
        }
      }
      forwardInPlace(factor, m, shared);
      let mean = f;
      for (let i = 0; i < m; i += 1) {
        mean += (shared[i] as number) * (residual[i] as number);
        variance -= (shared[i] as number) ** 2;
      }
      const least = instrument.resolution ** 2 / 12;
      into.push({ weight, mean, deviation: Math.sqrt(Math.max(variance, least)) });
    });
  }
  return result;
}

/** log10 of ohms: wide on a sound module, near what an earth fault in the way and the coil before it make. */
function insulationOutcome(
  finding: Finding,
  row: number,
  point: readonly number[],
  instrument: Instrument,
): { readonly mean: number; readonly deviation: number } {
  const shown = finding.insulation?.(row, point) ?? null;
  if (shown !== null) {
    const ohms = Math.max(shown.mean, instrument.resolution);
    const relative = Math.sqrt(ownVariance(instrument, ohms) + shown.variance) / ohms;
    return { mean: Math.log10(ohms), deviation: Math.min(1, Math.max(0.05, relative / Math.LN10)) };
  }
  const [low, high] = SOUND_INSULATION;
  const width = Math.log10(high / low);
  return { mean: Math.log10(low) + width / 2, deviation: width / Math.sqrt(12) };
}

function density(outcomes: readonly Outcome[], y: number | Open): number {
  let sum = 0;
  for (const { weight, mean, deviation } of outcomes) {
    if (mean === "open" || y === "open") {
      if (mean === y) sum += weight;
      continue;
    }
    const z = (y - mean) / deviation;
    if (z * z < 200) sum += (weight * Math.exp(-0.5 * z * z)) / (deviation * Math.sqrt(2 * Math.PI));
  }
  return sum;
}

/**
 * Expected fall of the entropy over explanations by one reading, bits: Σ_g p_g ∫ p(y|g)·log₂(p(y|g)/p(y)) dy, the
 * integral by Gauss-Hermite on each outcome.
 */
export function expectedInformation(
  probabilities: readonly number[],
  outcomes: readonly (readonly Outcome[])[],
): number {
  let bits = 0;
  const whole = probabilities.reduce((sum, p) => sum + p, 0);
  outcomes.forEach((own, g) => {
    const p = (probabilities[g] as number) / whole;
    for (const { weight, mean, deviation } of own) {
      const at = (y: number | Open, share: number): void => {
        const here = density(own, y);
        let all = 0;
        outcomes.forEach((other, j) => {
          all += ((probabilities[j] as number) / whole) * (j === g ? here : density(other, y));
        });
        if (here > 0 && all > 0) bits += p * weight * share * Math.log2(here / all);
      };
      if (mean === "open") at("open", 1);
      else for (const [x, w] of HERMITE) at(mean + deviation * x, w);
    }
  });
  // Quadrature leaves a few parts in a million on either side of nothing.
  return Math.max(0, bits);
}

/** Mean of outcomes that are not open, and how far they reach; null if all are open. */
export function spanOf(outcomes: readonly Outcome[]): { readonly low: number; readonly high: number } | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { mean, deviation } of outcomes) {
    if (mean === "open") continue;
    low = Math.min(low, mean - 2 * deviation);
    high = Math.max(high, mean + 2 * deviation);
  }
  return low > high ? null : { low, high };
}

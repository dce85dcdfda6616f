/** What a finding says of the readings at its best point, and on average over its parameters. */
import { chiSquareSurvival } from "../../../numeric/index.ts";
import type { Open } from "../../../quantity/index.ts";
import { isBelowDamp } from "../likelihood/insulation.ts";
import { logSumExp } from "../numbers/linear.ts";
import { copied, floats } from "../numbers/room.ts";
import type { PredictedReading } from "../question/types.ts";
import type { Finding } from "../weighing/findings.ts";

/** Points that stand for a posterior: enough for its mean. */
const SAMPLES = 4;

/** A finding's best point held against the readings. */
export interface Judged {
  readonly chiSquare: number;
  /** Readings in the Gaussian part. */
  readonly count: number;
  readonly contradictions: number;
  readonly predicted: readonly PredictedReading[];
}

/** Readings left over once each parameter of a finding has had one. */
export const degreesOfFreedomOf = ({ parameters }: Finding, { count }: Judged): number =>
  Math.max(0, count - parameters.length);

/** p-value of the χ² of a finding; null where no reading is left over to test it with. */
export function pValueOf(finding: Finding, judged: Judged): number | null {
  const { chiSquare, contradictions } = judged;
  if (contradictions > 0) return 0;
  const degreesOfFreedom = degreesOfFreedomOf(finding, judged);
  return degreesOfFreedom === 0 ? null : chiSquareSurvival({ chiSquare, degreesOfFreedom });
}

/** What an explanation predicts: mean over its posterior, and which rows are open or adrift. */
export interface Signature {
  readonly mean: Float64Array;
  readonly pattern: string;
  readonly active: Int32Array;
  readonly factor: Float64Array;
  readonly wiring: number;
}

/** Points that cut the posterior into equal parts; all of them where there are few. */
export function sampled(
  { points, logTerms }: Finding,
  count: number = SAMPLES,
): readonly (readonly number[])[] {
  if (points.length === 1) return points;
  const total = logSumExp(logTerms);
  const chosen: (readonly number[])[] = [];
  let sum = 0;
  points.forEach((point, i) => {
    sum += Math.exp((logTerms[i] as number) - total);
    while (chosen.length < count && sum >= (chosen.length + 0.5) / count) chosen.push(point);
  });
  while (chosen.length < count) chosen.push(points.at(-1) as readonly number[]);
  return chosen;
}

/** Readings beside predictions; the finding has just been visited at its best point. */
function predictedReadings({ model }: Finding): PredictedReading[] {
  const { prediction, question } = model;
  return question.input.readings.map((reading, r) => {
    const reads = reading.reads as number | Open;
    const mean = prediction.mean[r] as number;
    if (prediction.adrift[r] !== 0) return { reads, predicted: null, deviation: null };
    if (mean === Number.POSITIVE_INFINITY) return { reads, predicted: "open", deviation: null };
    let variance = (question.seen.own[r] as number) + (prediction.extra[r] as number);
    for (let c = 0; c < prediction.count; c += 1) {
      variance += (prediction.columns[c * prediction.rows + r] as number) ** 2;
    }
    const deviation = reads === "open" ? null : (reads - mean) / Math.sqrt(variance);
    return { reads, predicted: mean, deviation };
  });
}

/** Insulation readings beside what an earth fault makes of them; null for all others. */
function insulationBeside({ model, insulation, best }: Finding): readonly (PredictedReading | null)[] {
  if (insulation === undefined) return [];
  const { input, seen } = model.question;
  return input.readings.map((reading, r) => {
    const one = insulation(r, best);
    if (one === null) return null;
    const reads = reading.reads as number | Open;
    const spread = Math.sqrt(one.variance + (seen.own[r] as number));
    return { reads, predicted: one.mean, deviation: reads === "open" ? null : (reads - one.mean) / spread };
  });
}

/** Visits the best point; the model's prediction and evaluation are left there. */
export function judge(finding: Finding): Judged {
  finding.visit(finding.best);
  const { evaluation } = finding.model;
  const gaussian = predictedReadings(finding);
  const insulation = insulationBeside(finding);
  let { chiSquare, count, contradictions } = evaluation;
  const { input, seen } = finding.model.question;
  input.readings.forEach(({ kind, reads }, r) => {
    if (kind !== "insulation" || (insulation[r] ?? null) !== null) return;
    if (isBelowDamp(reads, seen.resolution[r] as number)) contradictions += 1;
  });
  for (const one of insulation) {
    if (one === null || one.deviation === null) continue;
    chiSquare += one.deviation ** 2;
    count += 1;
  }
  const predicted = gaussian.map((one, r) => insulation[r] ?? one);
  return { chiSquare, count, contradictions, predicted };
}

/** What a finding predicts on average over its parameters; it has just been judged. */
export function signatureOf(finding: Finding, wiring: number): Signature {
  const { model, earthed = "" } = finding;
  const { prediction, evaluation } = model;
  const { reads } = model.question.seen;
  const rows = prediction.rows;
  let pattern = "";
  // Near zero the mean is not that of the network alone.
  let scattered = false;
  for (let r = 0; r < rows; r += 1) {
    const adrift = prediction.adrift[r] as number;
    if ((prediction.extra[r] as number) > 0) scattered = true;
    if (Number.isNaN(reads[r])) pattern += "-";
    else if (adrift !== 0) pattern += adrift;
    else pattern += prediction.mean[r] === Number.POSITIVE_INFINITY ? "o" : "v";
  }
  const m = evaluation.count;
  const active = evaluation.active.slice(0, m);
  const factor = copied(evaluation.factor, m * m);
  const mean = floats(rows);
  const points = sampled(finding);
  if (points.length === 1 && points[0] === finding.best) mean.set(prediction.mean);
  else {
    const now = floats(rows);
    let last: readonly number[] | null = null;
    for (const point of points) {
      if (point !== last) {
        if (finding.means !== undefined && !scattered) finding.means(point, now);
        else {
          finding.visit(point);
          now.set(prediction.mean);
        }
      }
      last = point;
      for (let r = 0; r < rows; r += 1) mean[r] = (mean[r] as number) + (now[r] as number) / points.length;
    }
  }
  return { mean, pattern: `${pattern}|${earthed}`, active, factor, wiring };
}

/** What a finding says of the readings at its best point, and on average over its parameters. */
import { chiSquareSurvival } from "../../../numeric/index.ts";
import type { Open } from "../../../quantity/index.ts";
import { isBelowDamp } from "../likelihood/insulation.ts";
import type { Model } from "../likelihood/model.ts";
import { copied, copyInto, filledWhole, floats } from "../numbers/room.ts";
import type { FieldReading } from "../question/fieldReading.ts";
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

/** What a row shows: nothing yet, a value, an open path, or, from here up, in which way nothing determines it. */
const PLANNED = 0;
const VALUE = 1;
const OPEN = 2;

/** What an explanation predicts: mean over its posterior, and which rows are open or adrift. */
export interface Signature {
  readonly mean: Float64Array;
  readonly pattern: Uint8Array;
  /** Of an earth fault, what insulation shows of it. */
  readonly earthed: string;
  readonly active: Int32Array;
  readonly factor: Float64Array;
}

/** Points that cut a posterior into equal parts, from the weight of each; all of them where there are few. */
export function sampled(
  points: Finding["points"],
  weights: Float64Array,
  count: number = SAMPLES,
): Finding["points"] {
  if (points.length === 1) return points;
  const chosen: (readonly number[])[] = [];
  let sum = 0;
  for (let i = 0; i < points.length && chosen.length < count; i += 1) {
    sum += weights[i] as number;
    while (chosen.length < count && sum >= (chosen.length + 0.5) / count)
      chosen.push(points[i] as readonly number[]);
  }
  while (chosen.length < count) chosen.push(points.at(-1) as readonly number[]);
  return chosen;
}

/** One reading beside what was predicted of it; always of one shape. */
const beside = (
  reads: number | Open,
  predicted: number | Open | null,
  deviation: number | null,
): PredictedReading => ({ reads, predicted, deviation });

/** A reading of the Gaussian part beside its prediction. */
function gaussianBeside({ prediction, question }: Model, r: number, reads: number | Open): PredictedReading {
  const mean = prediction.mean[r] as number;
  if (prediction.adrift[r] !== 0) return beside(reads, null, null);
  if (mean === Number.POSITIVE_INFINITY) return beside(reads, "open", null);
  if (reads === "open") return beside(reads, mean, null);
  const { columns, rows, count } = prediction;
  let variance = (question.seen.own[r] as number) + (prediction.extra[r] as number);
  for (let c = 0, at = r; c < count; c += 1, at += rows) variance += (columns[at] as number) ** 2;
  return beside(reads, mean, (reads - mean) / Math.sqrt(variance));
}

/** An insulation reading beside what an earth fault makes of it; null where none is in its way. */
function insulationBeside(
  { model, insulation, best }: Finding,
  r: number,
  reads: number | Open,
): PredictedReading | null {
  const one = insulation?.(r, best) ?? null;
  if (one === null) return null;
  const spread = Math.sqrt(one.variance + (model.question.seen.own[r] as number));
  return beside(reads, one.mean, reads === "open" ? null : (reads - one.mean) / spread);
}

/** Visits the best point; the model's prediction and evaluation are left there. */
export function judge(finding: Finding): Judged {
  finding.visit(finding.best);
  const { model } = finding;
  const { input, seen } = model.question;
  let { chiSquare, count, contradictions } = model.evaluation;
  const predicted: PredictedReading[] = [];
  for (let r = 0; r < input.readings.length; r += 1) {
    const { kind, reads } = input.readings[r] as FieldReading;
    const earthed = insulationBeside(finding, r, reads);
    if (earthed === null) {
      predicted.push(gaussianBeside(model, r, reads));
      if (kind === "insulation" && isBelowDamp(reads, seen.resolution[r] as number)) contradictions += 1;
      continue;
    }
    predicted.push(earthed);
    if (earthed.deviation === null) continue;
    chiSquare += earthed.deviation ** 2;
    count += 1;
  }
  return { chiSquare, count, contradictions, predicted };
}

/** What the rows of the prediction show, a number for each. */
function patternOf({ prediction, question }: Model): Uint8Array {
  const { adrift, mean, rows } = prediction;
  const { reads } = question.seen;
  const pattern = new Uint8Array(rows);
  for (let r = 0; r < rows; r += 1) {
    const way = adrift[r] as number;
    if (Number.isNaN(reads[r])) pattern[r] = PLANNED;
    else if (way !== 0) pattern[r] = OPEN + way;
    else pattern[r] = mean[r] === Number.POSITIVE_INFINITY ? OPEN : VALUE;
  }
  return pattern;
}

/** Whether any row has scatter that is not of the network: near zero the mean is not that of the network alone. */
function isScattered({ extra, rows }: Model["prediction"]): boolean {
  for (let r = 0; r < rows; r += 1) if ((extra[r] as number) > 0) return true;
  return false;
}

/** Mean prediction over a finding's parameters; its model stands at the best point, and need not after. */
function meanOf(finding: Finding, weights: Float64Array): Float64Array {
  const { prediction } = finding.model;
  const { rows } = prediction;
  const points = sampled(finding.points, weights);
  if (points.length === 1 && points[0] === finding.best) return copied(prediction.mean);
  const mean = floats(rows);
  const now = floats(rows);
  const means = isScattered(prediction) ? undefined : finding.means;
  let last: readonly number[] | null = null;
  for (const point of points) {
    if (point !== last) {
      if (means !== undefined) means(point, now);
      else {
        finding.visit(point);
        copyInto(now, prediction.mean);
      }
    }
    last = point;
    for (let r = 0; r < rows; r += 1) mean[r] = (mean[r] as number) + (now[r] as number) / points.length;
  }
  return mean;
}

/**
 * What a finding predicts on average over its parameters; its model stands at the best point.
 * @param weights - of its points, all together 1
 */
export function signatureOf(finding: Finding, weights: Float64Array): Signature {
  const { model, earthed = "" } = finding;
  const { active, count, factor } = model.evaluation;
  return {
    pattern: patternOf(model),
    earthed,
    active: filledWhole(count, (i) => active[i] as number),
    factor: copied(factor, count * count),
    mean: meanOf(finding, weights),
  };
}

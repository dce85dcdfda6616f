/** Explanations that these readings cannot tell apart, found by what they predict. */
import type { Finding } from "./findings.ts";
import { forwardInPlace, logSumExp, squared } from "./linear.ts";

/**
 * Two explanations are one group when their mean predictions lie within this many standard deviations of the readings'
 * covariance: even readings without any error would then shift the odds by less than 5 %.
 */
const APART = 0.3;

/** Points that stand for a posterior: enough for its mean. */
const SAMPLES = 4;

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

/** What a finding predicts on average over its parameters. */
export function signatureOf(finding: Finding, wiring: number): Signature {
  const { model, earthed = "" } = finding;
  const { prediction, evaluation } = model;
  const points = sampled(finding);
  const mean = new Float64Array(prediction.rows);
  let last: readonly number[] | null = null;
  for (const point of points) {
    if (point !== last) finding.visit(point);
    last = point;
    for (let r = 0; r < mean.length; r += 1) {
      mean[r] = (mean[r] as number) + (prediction.mean[r] as number) / points.length;
    }
  }
  if (last !== finding.best) finding.visit(finding.best);
  const state = Array.from(prediction.adrift, (adrift, r) => {
    if (Number.isNaN(finding.model.question.seen.reads[r])) return "";
    return adrift !== 0 ? adrift : prediction.mean[r] === Number.POSITIVE_INFINITY ? "o" : "v";
  });
  const m = evaluation.count;
  return {
    mean,
    pattern: `${state.join("")}|${earthed}`,
    active: evaluation.active.slice(0, m),
    factor: evaluation.factor.slice(0, m * m),
    wiring,
  };
}

/** Distance between two predictions in standard deviations of the first one's readings; Infinity for other patterns. */
function apart(first: Signature, second: Signature): number {
  if (first.pattern !== second.pattern) return Number.POSITIVE_INFINITY;
  const m = first.active.length;
  const difference = new Float64Array(m);
  for (let i = 0; i < m; i += 1) {
    const r = first.active[i] as number;
    difference[i] = (first.mean[r] as number) - (second.mean[r] as number);
  }
  forwardInPlace(first.factor, m, difference);
  return Math.sqrt(squared(difference, m));
}

/** Puts each item with the first, more probable one that it cannot be told from. */
export function grouped<T>(
  items: readonly T[],
  signature: (item: T) => Signature | null,
): readonly (readonly T[])[] {
  const groups: { readonly leader: Signature | null; readonly members: T[] }[] = [];
  for (const item of items) {
    const own = signature(item);
    const home =
      own === null ? undefined : groups.find(({ leader }) => leader !== null && apart(leader, own) < APART);
    if (home === undefined) groups.push({ leader: own, members: [item] });
    else home.members.push(item);
  }
  return groups.map(({ members }) => members);
}

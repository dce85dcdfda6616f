/** ln of the probability of the readings under a prediction, nuisances integrated: Cholesky of the readings' covariance. */

import { backwardInPlace, choleskyInPlace, forwardInPlace, precisionAt, squared } from "../numbers/linear.ts";
import { floats } from "../numbers/room.ts";
import { OPEN_SLIP } from "../question/settings.ts";
import { LEAK } from "./leak.ts";
import { NO_SUCH_PLACE, type Prediction } from "./observe.ts";

/** Readings as the likelihood takes them, in plain numbers: it is asked thousands of times. */
export interface Seen {
  /** What was read: Infinity for an open path, NaN for a planned measurement, which takes no part. */
  readonly reads: Float64Array;
  /** Variance of each reading by itself. */
  readonly own: Float64Array;
  /** Last digit of each reading. */
  readonly resolution: Float64Array;
  /** What a reading that nothing determines may come to: its density is one over this. */
  readonly reach: Float64Array;
}

/** Work space and result of one evaluation. */
export interface Evaluation {
  logLikelihood: number;
  chiSquare: number;
  /** Readings in the Gaussian part. */
  count: number;
  /** Readings that contradict an open path, or see one where there is none. */
  contradictions: number;
  /** Rows in the Gaussian part. */
  readonly active: Int32Array;
  readonly factor: Float64Array;
  /** Whitened residuals. */
  readonly residual: Float64Array;
  /** ln of what each reading outside the Gaussian part adds; 0 for those in it. */
  readonly aside: Float64Array;
  /** Work space: rows that one nuisance touches, and by how much. */
  readonly touched: Int32Array;
  readonly by: Float64Array;
}

const LOG_TWO_PI = Math.log(2 * Math.PI);

/** An ohmmeter's span, as the logarithm of its range (40 MΩ) over its last digit: the density of a reading gone astray. */
const METER_RANGE = 4e7;

/** Probability that a break leaks that much in an ohmmeter's eyes: our judgement; as likely in each decade. */
const LEAKS = 0.02;

const leaking = (reads: number): number => Math.log(LEAKS) - Math.log(reads * Math.log(METER_RANGE / LEAK));

/** ln density of volts to a floating node: as likely as not the meter's own load brings it to 0, else it may be anything. */
function floating(reads: number, own: number, reach: number): number {
  const zero = Math.exp((-0.5 * reads * reads) / own) / Math.sqrt(2 * Math.PI * own);
  return Math.log(0.5 * zero + 0.5 / reach);
}

/** Room for evaluations of so many rows. */
export function evaluationFor(rows: number): Evaluation {
  return {
    logLikelihood: 0,
    chiSquare: 0,
    count: 0,
    contradictions: 0,
    active: new Int32Array(rows),
    factor: floats(rows * rows),
    residual: floats(rows),
    aside: floats(rows),
    touched: new Int32Array(rows),
    by: floats(rows),
  };
}

/** ln of what a contradiction between a meter and an open path weighs. */
const CONTRADICTION = Math.log(OPEN_SLIP);

/** ln of a reading that is not Gaussian under this prediction; null for one that is. */
function asideOf(seen: Seen, prediction: Prediction, r: number, into: Evaluation): number | null {
  const reads = seen.reads[r] as number;
  const adrift = prediction.adrift[r] as number;
  if (adrift === NO_SUCH_PLACE) {
    into.contradictions += 1;
    return CONTRADICTION;
  }
  if (adrift === 1) {
    return seen.reach[r] === 0 ? 0 : floating(reads, seen.own[r] as number, seen.reach[r] as number);
  }
  const open = prediction.mean[r] === Number.POSITIVE_INFINITY;
  const overflow = reads === Number.POSITIVE_INFINITY;
  if (!open && !overflow) return null;
  if (open && overflow) return 0;
  if (open && reads >= LEAK) return leaking(reads);
  into.contradictions += 1;
  if (overflow) return CONTRADICTION;
  const digit = seen.resolution[r] as number;
  return (
    CONTRADICTION - Math.log(Math.max(reads, digit)) - Math.log(Math.log(Math.max(METER_RANGE / digit, 10)))
  );
}

/** Sorts the readings into those that are Gaussian under this prediction and those that are not; returns ln of the latter. */
function setAside(seen: Seen, prediction: Prediction, into: Evaluation): number {
  let log = 0;
  into.count = 0;
  into.contradictions = 0;
  for (let r = 0; r < prediction.rows; r += 1) {
    into.aside[r] = 0;
    if (Number.isNaN(seen.reads[r])) continue;
    const aside = asideOf(seen, prediction, r, into);
    if (aside === null) {
      into.active[into.count] = r;
      into.count += 1;
    } else {
      into.aside[r] = aside;
      log += aside;
    }
  }
  return log;
}

/** Evaluates the readings under a prediction. */
export function evaluate(seen: Seen, prediction: Prediction, into: Evaluation): void {
  const aside = setAside(seen, prediction, into);
  const { active, factor, residual, count: m } = into;
  const { columns, rows: n, count, mean, extra } = prediction;
  const { touched, by } = into;
  for (let i = 0; i < m; i += 1) {
    const r = active[i] as number;
    residual[i] = (seen.reads[r] as number) - (mean[r] as number);
    for (let j = 0; j < i; j += 1) factor[i * m + j] = 0;
    factor[i * m + i] = (seen.own[r] as number) + (extra[r] as number);
  }
  for (let c = 0; c < count; c += 1) {
    // Most nuisances touch few readings: leads only ohms, an element only what lies around it.
    const base = c * n;
    let some = 0;
    for (let i = 0; i < m; i += 1) {
      const value = columns[base + (active[i] as number)] as number;
      if (value === 0) continue;
      touched[some] = i;
      by[some] = value;
      some += 1;
    }
    for (let i = 0; i < some; i += 1) {
      const row = (touched[i] as number) * m;
      const value = by[i] as number;
      for (let j = 0; j <= i; j += 1) {
        const cell = row + (touched[j] as number);
        factor[cell] = (factor[cell] as number) + value * (by[j] as number);
      }
    }
  }
  const logDeterminant = choleskyInPlace(factor, m);
  forwardInPlace(factor, m, residual);
  into.chiSquare = squared(residual, m);
  into.logLikelihood = aside - 0.5 * (into.chiSquare + logDeterminant + m * LOG_TWO_PI);
}

/**
 * ln likelihood without each single reading, by row, from one evaluation of all: of a Gaussian the density of one reading given the others
 * is that of its residual in the precision matrix, (Q·e)ᵣ/Qᵣᵣ with variance 1/Qᵣᵣ. Near enough to tell what is hopeless: a residual of a thousand
 * deviations leaves few digits to the rest. Residuals are left unwhitened.
 * @param insulation - ln density of the insulation readings, which are not among these
 */
export function withoutEach(evaluation: Evaluation, insulation: number, into: Float64Array): void {
  const { active, factor, residual, aside, count: m, by } = evaluation;
  const logLikelihood = evaluation.logLikelihood + insulation;
  for (let r = 0; r < into.length; r += 1) into[r] = logLikelihood - (aside[r] as number);
  backwardInPlace(factor, m, residual);
  for (let i = 0; i < m; i += 1) {
    const precision = precisionAt(factor, m, i, by);
    const pull = residual[i] as number;
    const r = active[i] as number;
    into[r] = logLikelihood + 0.5 * (LOG_TWO_PI - Math.log(precision) + (pull * pull) / precision);
  }
}

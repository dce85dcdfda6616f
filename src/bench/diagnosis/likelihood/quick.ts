/**
 * A family of faults weighed quickly: its means are exact, its covariance that of the ground it stands on with each reading's
 * deviation scaled as its mean. Full evaluations at a few points of the posterior then correct the difference.
 */

import type { Insertion } from "../faults/atom.ts";
import type { CutResponse } from "../network/change.ts";
import type { State } from "../network/state.ts";
import { forwardInPlace, squared } from "../numbers/linear.ts";
import { copied, filled, floats } from "../numbers/room.ts";
import { logLikelihood, type Model } from "./model.ts";
import type { SupplyModel } from "./observe.ts";

/** The readings on a ground, factored once for everything quick that is put on it. */
export interface Baseline {
  /** ln likelihood of the ground itself, insulation left out. */
  readonly log: number;
  readonly healthyInsulation: number;
  /** ln likelihood without its residuals. */
  readonly determinant: number;
  readonly count: number;
  readonly active: Int32Array;
  readonly factor: Float64Array;
  readonly mean: Float64Array;
  readonly reads: Float64Array;
  /** For each active reading: arrangement (−1 for energised) and position in it. */
  readonly setting: Int32Array;
  readonly position: Int32Array;
  /** Phasors of the energised rows, drops as currents. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** The joint's edge for drops, else −1. */
  readonly drop: Int32Array;
}

/** Evaluates a ground and keeps what quick weighing needs of it. */
export function baselineOf(model: Model, state: State): Baseline {
  const whole = logLikelihood(model, state);
  const { evaluation, prediction, frame, question } = model;
  const m = evaluation.count;
  const active = evaluation.active.slice(0, m);
  const setting = new Int32Array(m);
  const position = new Int32Array(m);
  const drop = new Int32Array(m).fill(-1);
  for (let i = 0; i < m; i += 1) {
    const r = active[i] as number;
    const row = frame.rows[r];
    setting[i] = row?.kind === "resistance" ? row.setting : -1;
    position[i] =
      row?.kind === "resistance"
        ? (frame.deadRows[row.setting] as readonly number[]).indexOf(r)
        : frame.liveRows.indexOf(r);
    if (row?.kind === "drop") drop[i] = row.edge;
  }
  const log = whole - model.healthyInsulation;
  return {
    log,
    healthyInsulation: model.healthyInsulation,
    determinant: log + 0.5 * evaluation.chiSquare,
    count: m,
    active,
    factor: copied(evaluation.factor, m * m),
    mean: filled(m, (i) => prediction.mean[active[i] as number] as number),
    reads: filled(m, (i) => question.seen.reads[active[i] as number] as number),
    setting,
    position,
    re: copied(prediction.re),
    im: copied(prediction.im),
    drop,
  };
}

/** The same readings with the covariance of the state evaluated last: what is near that state is then weighed rightly. */
export function rebased(model: Model, base: Baseline, whole: number): Baseline {
  const { evaluation, prediction } = model;
  const log = whole - base.healthyInsulation;
  const m = evaluation.count;
  const { healthyInsulation, count, active, reads, setting, position, re, im, drop } = base;
  return {
    log,
    healthyInsulation,
    determinant: log + 0.5 * evaluation.chiSquare,
    count,
    active,
    factor: copied(evaluation.factor, m * m),
    mean: filled(m, (i) => prediction.mean[active[i] as number] as number),
    reads,
    setting,
    position,
    re,
    im,
    drop,
  };
}

/** ln likelihood of other means on a baseline: residuals in the deviations that grow with the means. `work` is overwritten. */
export function logOfMeans(base: Baseline, means: Float64Array, work: Float64Array): number {
  const { count, mean, reads, factor } = base;
  let log = base.determinant;
  let product = 1;
  for (let i = 0; i < count; i += 1) {
    const now = means[i] as number;
    const was = mean[i] as number;
    if (now !== was && was > 0 && now > 0.05 * was && now < 20 * was) {
      const ratio = now / was;
      work[i] = ((reads[i] as number) - now) / ratio;
      product *= ratio;
      // One logarithm for many ratios, as long as float64 holds their product.
      if (!(product > 1e-200 && product < 1e200)) {
        log -= Math.log(product);
        product = 1;
      }
    } else work[i] = (reads[i] as number) - now;
  }
  forwardInPlace(factor, count, work);
  return log - Math.log(product) - 0.5 * squared(work, count);
}

/** What an insertion does to a reading: ohms (0) follow the cut's stiffness, others its current or nothing. */
const UNTOUCHED = 1;
const ENERGISED = 2;
const DROP_ON_IT = 3;

/** The means of the active readings as they follow an insertion in a cut. */
export interface Means {
  readonly cut: CutResponse;
  readonly count: number;
  /** Arrangement of each reading. */
  readonly setting: Int32Array;
  /** For each reading what the insertion does to it, phasor and change of it by the current taken away, and a factor. */
  readonly figures: Float64Array;
  /** Work space: stiffness of the cut in each dead arrangement. */
  readonly stiff: Float64Array;
}

/** Figures of each reading: what is done to it, re and its step, im and its step, factor. */
const FIGURES = 6;

/**
 * Prepares the means of a cut on a ground: ohms are a line in what the cut's own stiffness comes to, phasors of the
 * energised rows a line in the current that it takes away.
 */
export function meansOf(model: Model, state: State, base: Baseline, cut: CutResponse, edge: number): Means {
  const { leads, supply } = model.question.by;
  const { count, setting, position, drop, mean } = base;
  let [flowRe, flowIm] = [0, 0];
  if (cut.live !== null) {
    const { re, im } = supply as SupplyModel;
    for (let l = 0; l < 3; l += 1) {
      const t = cut.live.through[l] as number;
      flowRe += t * (re[l] as number);
      flowIm += t * (im[l] as number);
    }
  }
  const figures = floats(FIGURES * count);
  for (let i = 0; i < count; i += 1) {
    const d = setting[i] as number;
    const k = position[i] as number;
    const joint = drop[i] as number;
    const at = FIGURES * i;
    const t = d >= 0 ? (cut.dead[d]?.through[k] ?? 0) : (cut.live?.shown[k] ?? 0);
    if (t === 0 && joint !== edge) {
      figures[at] = UNTOUCHED;
      figures[at + 1] = mean[i] as number;
    } else if (d >= 0) {
      figures[at + 1] = (state.dead[d]?.resistance[k] as number) + leads.mean;
      figures[at + 2] = t * t;
    } else {
      // A drop is kept as volts; the insertion changes its current, and its joint to another resistance.
      const scale = joint >= 0 ? (state.resistance[joint] as number) : 1;
      figures[at] = joint >= 0 && joint === edge ? DROP_ON_IT : ENERGISED;
      figures[at + 1] = (base.re[k] as number) / scale;
      figures[at + 2] = t * flowRe;
      figures[at + 3] = (base.im[k] as number) / scale;
      figures[at + 4] = t * flowIm;
      figures[at + 5] = scale;
    }
  }
  return { cut, count, setting, figures, stiff: floats(cut.dead.length) };
}

/** Writes the means with an insertion in the cut. */
export function meansInto(
  { cut, count, setting, figures, stiff }: Means,
  { cold, hot, resistance }: Insertion,
  into: Float64Array,
): void {
  const flow = cut.live?.way === true ? hot / (1 + hot * cut.live.own) : 0;
  for (let d = 0; d < stiff.length; d += 1) {
    const { way, own } = cut.dead[d] as CutResponse["dead"][number];
    stiff[d] = way ? cold / (1 + cold * own) : cold;
  }
  for (let i = 0; i < count; i += 1) {
    const at = FIGURES * i;
    const kind = figures[at] as number;
    const re = figures[at + 1] as number;
    if (kind === UNTOUCHED) into[i] = re;
    else if (kind === 0) into[i] = re + (stiff[setting[i] as number] as number) * (figures[at + 2] as number);
    else {
      const x = re - flow * (figures[at + 2] as number);
      const y = (figures[at + 3] as number) - flow * (figures[at + 4] as number);
      into[i] = Math.sqrt(x * x + y * y) * (kind === DROP_ON_IT ? resistance : (figures[at + 5] as number));
    }
  }
}

/** Largest relative change of any mean: beyond some 15 % the ground's covariance is no longer the fault's. */
export function largestChange(base: Baseline, means: Float64Array): number {
  let most = 0;
  for (let i = 0; i < base.count; i += 1) {
    const was = base.mean[i] as number;
    const scale = Math.max(Math.abs(was), 1e-300);
    most = Math.max(most, Math.abs((means[i] as number) - was) / scale);
  }
  return most;
}

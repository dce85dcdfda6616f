/** A supply whose line voltages differ: linear in the readings, so that one factorisation serves every size and direction. */

import type { Estimated, Finding, Named } from "./findings.ts";
import { evaluate } from "./likelihood.ts";
import { forwardInPlace, logSumExp } from "./linear.ts";
import { logLikelihood, type Model } from "./model.ts";
import { RANGE } from "./settings.ts";
import type { State } from "./state.ts";

/** Steps in size and in direction: finer than the scatter of each line of a sound supply by default. */
const SIZES = 12;
const DIRECTIONS = 48;

/** Relative deviations of the three line voltages for a spread from lowest to highest, in a direction. */
function deviations(spread: number, direction: number): readonly [number, number, number] {
  const raw = [0, 1, 2].map((k) => Math.cos(direction + (2 * Math.PI * k) / 3)) as [number, number, number];
  const range = Math.max(...raw) - Math.min(...raw);
  return raw.map((value) => (value * spread) / range) as [number, number, number];
}

/** Every size and direction of unbalance with what it adds to the evidence, sizes outermost; and the likeliest. */
interface Sizes {
  readonly points: readonly (readonly number[])[];
  readonly logTerms: readonly number[];
  readonly best: readonly number[];
}

/** Weighs every size and direction about a model that has just been visited, with ln likelihood `base`. */
function sizesAbout({ prediction, evaluation, question }: Model, base: number): Sizes {
  const m = evaluation.count;
  const z = evaluation.residual.slice(0, m);
  const columns = [0, 1, 2].map((k) => {
    const column = new Float64Array(m);
    for (let i = 0; i < m; i += 1) {
      const r = evaluation.active[i] as number;
      column[i] =
        (prediction.columns[(prediction.voltageColumn + k) * prediction.rows + r] as number) /
        question.by.unbalance;
    }
    forwardInPlace(evaluation.factor, m, column);
    return column;
  });
  const product = (a: Float64Array, b: Float64Array): number =>
    a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);
  const linear = columns.map((column) => product(column, z));
  const square = columns.map((a) => columns.map((b) => product(a, b)));
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  const each = -Math.log(SIZES * DIRECTIONS);
  let best: readonly number[] = [];
  let most = Number.NEGATIVE_INFINITY;
  const [low, high] = RANGE.unbalance;
  for (let s = 0; s < SIZES; s += 1) {
    const spread = low + ((high - low) * (s + 0.5)) / SIZES;
    for (let a = 0; a < DIRECTIONS; a += 1) {
      const direction = (2 * Math.PI * (a + 0.5)) / DIRECTIONS;
      const d = deviations(spread, direction);
      let log = base;
      for (let i = 0; i < 3; i += 1) {
        log += (linear[i] as number) * (d[i] as number);
        for (let j = 0; j < 3; j += 1)
          log -= 0.5 * (square[i]?.[j] as number) * (d[i] as number) * (d[j] as number);
      }
      points.push([spread, direction]);
      logTerms.push(log + each);
      if (log > most) [most, best] = [log, [spread, direction]];
    }
  }
  return { points, logTerms, best };
}

/** Weighs an unbalanced supply on a fixed state. */
export function unbalanceFinding(
  model: Model,
  state: State,
  names: readonly Named[],
  fault: number,
): Finding {
  const { prediction, evaluation, question } = model;
  const shift = (point: readonly number[]): void => {
    const d = deviations(point[0] as number, point[1] as number);
    for (let r = 0; r < prediction.rows; r += 1) {
      for (let k = 0; k < 3; k += 1) {
        const column = prediction.columns[(prediction.voltageColumn + k) * prediction.rows + r] as number;
        prediction.mean[r] =
          (prediction.mean[r] as number) + (column / question.by.unbalance) * (d[k] as number);
      }
    }
  };
  const visit = (point: readonly number[]): number => {
    logLikelihood(model, state);
    shift(point);
    evaluate(question.seen, prediction, evaluation);
    return evaluation.logLikelihood + model.healthyInsulation;
  };
  const { points, logTerms, best } = sizesAbout(model, logLikelihood(model, state));
  return {
    model,
    names,
    log: logSumExp(logTerms),
    parameters: [{ of: "unbalance", fault }],
    points,
    logTerms,
    best,
    visit,
  };
}

/** Nats below the heaviest point at which a point no longer bears on an estimate. */
const NEGLIGIBLE = 9;

/**
 * Parameters of a fault beside an unbalanced supply, each given the other. The fault was weighed with the unbalance as
 * scatter; here the scatter's evidence at each of its points gives way to that of every size and direction of unbalance.
 * @param wide - finding of the fault, the unbalance taken as scatter
 * @param sharp - the same fault on the supply's own scatter
 * @param fault - place of the unbalance among the faults
 */
export function besideUnbalance(wide: Finding, sharp: Finding, fault: number): Estimated {
  const heaviest = Math.max(...wide.logTerms);
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  wide.points.forEach((point, i) => {
    const term = wide.logTerms[i] as number;
    if (term < heaviest - NEGLIGIBLE) return;
    const weight = term - wide.visit(point);
    const sizes = sizesAbout(sharp.model, sharp.visit(point));
    for (let s = 0; s < SIZES; s += 1) {
      const terms = sizes.logTerms.slice(s * DIRECTIONS, (s + 1) * DIRECTIONS);
      points.push([...point, sizes.points[s * DIRECTIONS]?.[0] as number]);
      logTerms.push(weight + logSumExp(terms));
    }
  });
  return { parameters: [...wide.parameters, { of: "unbalance", fault }], points, logTerms };
}

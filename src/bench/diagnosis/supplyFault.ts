/** A supply whose line voltages differ: linear in the readings, so that one factorisation serves every size and direction. */

import { type Estimated, type Finding, findingOf } from "./findings.ts";
import { evaluate } from "./likelihood.ts";
import { forwardInPlace, logSumExp } from "./linear.ts";
import { logLikelihood, type Model } from "./model.ts";
import type { Names } from "./names.ts";
import { heaviest } from "./nested.ts";
import { copied, filled, floats } from "./room.ts";
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

/** Every size and direction, sizes outermost, and the deviations of each: they hang on no module. */
function makeGrid() {
  const points: (readonly [number, number])[] = [];
  const deviation = floats(3 * SIZES * DIRECTIONS);
  const [low, high] = RANGE.unbalance;
  for (let s = 0; s < SIZES; s += 1) {
    for (let a = 0; a < DIRECTIONS; a += 1) {
      const point = [
        low + ((high - low) * (s + 0.5)) / SIZES,
        (2 * Math.PI * (a + 0.5)) / DIRECTIONS,
      ] as const;
      deviation.set(deviations(...point), 3 * points.length);
      points.push(point);
    }
  }
  return { points, deviation };
}

let made: ReturnType<typeof makeGrid> | undefined;

/** Laid out once, at the first diagnosis that asks: at import it would cost everyone who imports the room. */
function grid(): ReturnType<typeof makeGrid> {
  made ??= makeGrid();
  return made;
}

/** What every point of the grid adds to the evidence, about a model just visited with ln likelihood `base`. */
function gridAbout({ prediction, evaluation, question }: Model, base: number): Float64Array {
  const m = evaluation.count;
  const z = copied(evaluation.residual, m);
  const columns = [0, 1, 2].map((k) => {
    const column = floats(m);
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
  const linear = columns.map((column) => product(column, z)) as [number, number, number];
  const square = columns.flatMap((one, i) => columns.slice(i).map((other) => product(one, other)));
  const [aa, ab, ac, bb, bc, cc] = square as [number, number, number, number, number, number];
  const { points, deviation } = grid();
  const logTerms = floats(points.length);
  const shift = base - Math.log(points.length);
  for (let k = 0; k < logTerms.length; k += 1) {
    const x = deviation[3 * k] as number;
    const y = deviation[3 * k + 1] as number;
    const w = deviation[3 * k + 2] as number;
    const squares = aa * x * x + bb * y * y + cc * w * w + 2 * (ab * x * y + ac * x * w + bc * y * w);
    logTerms[k] = shift + linear[0] * x + linear[1] * y + linear[2] * w - 0.5 * squares;
  }
  return logTerms;
}

/** Weighs an unbalanced supply on a fixed state. */
export function unbalanceFinding(model: Model, state: State, names: Names): Finding {
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
  const { points } = grid();
  const logTerms = Array.from(gridAbout(model, logLikelihood(model, state)));
  const weighted = { log: logSumExp(logTerms), points, logTerms, best: heaviest(points, logTerms) };
  return findingOf(model, names, [{ of: "unbalance", fault: names.faults - 1 }], weighted, visit);
}

/** ln Σ exp over the directions of one size; what lies 20 nats below the highest adds nothing. */
function overDirections(terms: Float64Array, from: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let k = from; k < from + DIRECTIONS; k += 1)
    if ((terms[k] as number) > most) most = terms[k] as number;
  let sum = 0;
  for (let k = from; k < from + DIRECTIONS; k += 1) {
    const below = (terms[k] as number) - most;
    if (below > -20) sum += Math.exp(below);
  }
  return most + Math.log(sum);
}

/** Nats below the heaviest point at which a point no longer bears on an estimate. */
const NEGLIGIBLE = 7;

/** Points along a fault of one parameter at which an unbalance beside it is weighed; it changes smoothly between them. */
const ANCHORS = 5;

/**
 * Parameters of a fault beside an unbalanced supply, each given the other. The fault was weighed with the unbalance as
 * scatter; here the scatter's evidence at each of its points gives way to that of every size and direction of unbalance.
 * @param wide - finding of the fault, the unbalance taken as scatter
 * @param sharp - the same fault on the supply's own scatter
 * @param fault - place of the unbalance among the faults
 */
export function besideUnbalance(wide: Finding, sharp: Finding, fault: number): Estimated {
  const sizes = grid().points;
  const most = Math.max(...wide.logTerms);
  const kept = wide.points.filter((_, i) => (wide.logTerms[i] as number) >= most - NEGLIGIBLE);
  const terms = wide.logTerms.filter((term) => term >= most - NEGLIGIBLE);
  /** For each size, what it has over the scatter at a point. */
  const gainAt = (point: readonly number[]): Float64Array => {
    const scatter = wide.visit(point);
    const all = gridAbout(sharp.model, sharp.visit(point));
    return filled(SIZES, (s) => overDirections(all, s * DIRECTIONS) - scatter);
  };
  const last = kept.length - 1;
  // Points of one parameter come in rising order; those of two lie in a plane and are all weighed.
  const parts = wide.parameters.length === 1 ? Math.min(ANCHORS - 1, last) : last;
  const anchors = Array.from({ length: parts + 1 }, (_, k) =>
    parts === 0 ? 0 : Math.round((k * last) / parts),
  );
  const gains = anchors.map((i) => gainAt(kept[i] as readonly number[]));
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  let k = 0;
  kept.forEach((point, i) => {
    while (k < parts - 1 && (anchors[k + 1] as number) < i) k += 1;
    const [from, to] = [anchors[k] as number, anchors[Math.min(k + 1, parts)] as number];
    const share = to === from ? 0 : (i - from) / (to - from);
    const [a, b] = [gains[k] as Float64Array, gains[Math.min(k + 1, parts)] as Float64Array];
    for (let s = 0; s < SIZES; s += 1) {
      points.push([...point, sizes[s * DIRECTIONS]?.[0] as number]);
      logTerms.push((terms[i] as number) + (1 - share) * (a[s] as number) + share * (b[s] as number));
    }
  });
  return { parameters: [...wide.parameters, { of: "unbalance", fault }], points, logTerms };
}

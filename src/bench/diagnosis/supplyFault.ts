/** A supply whose line voltages differ: linear in the readings, so that one factorisation serves every size and direction. */

import { type Finding, findingOf, type Marginal, marginalsOf } from "./findings.ts";
import { evaluate } from "./likelihood.ts";
import { forwardInPlace, logSumExp, product } from "./linear.ts";
import { logLikelihood, type Model } from "./model.ts";
import type { Names } from "./names.ts";
import { heaviest } from "./nested.ts";
import { filled, floats } from "./room.ts";
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

/** Every size and direction, sizes outermost, and the deviations of each direction for a spread of 1: they hang on no module. */
function makeGrid() {
  const points: (readonly [number, number])[] = [];
  const sizes: number[] = [];
  const directions = floats(3 * DIRECTIONS);
  const [low, high] = RANGE.unbalance;
  for (let a = 0; a < DIRECTIONS; a += 1) directions.set(deviations(1, directionAt(a)), 3 * a);
  for (let s = 0; s < SIZES; s += 1) {
    const size = low + ((high - low) * (s + 0.5)) / SIZES;
    sizes.push(size);
    for (let a = 0; a < DIRECTIONS; a += 1) points.push([size, directionAt(a)]);
  }
  return { points, sizes, directions };
}

const directionAt = (a: number): number => (2 * Math.PI * (a + 0.5)) / DIRECTIONS;

let made: ReturnType<typeof makeGrid> | undefined;

/** Laid out once, at the first diagnosis that asks: at import it would cost everyone who imports the room. */
function grid(): ReturnType<typeof makeGrid> {
  made ??= makeGrid();
  return made;
}

/** What unbalance adds to the exponent by its size s in each direction: s·linear − s²·quadratic/2. */
interface Slopes {
  readonly linear: Float64Array;
  readonly quadratic: Float64Array;
}

/** Room for slopes. */
const slopesFor = (): Slopes => ({ linear: floats(DIRECTIONS), quadratic: floats(DIRECTIONS) });

/** The slopes about a model just visited, written into `into`. */
function slopesAbout({ prediction, evaluation, question }: Model, into: Slopes): Slopes {
  const { count: m, active, factor, residual } = evaluation;
  const [a, b, c] = [floats(m), floats(m), floats(m)];
  for (let i = 0; i < m; i += 1) {
    const at = prediction.voltageColumn * prediction.rows + (active[i] as number);
    a[i] = (prediction.columns[at] as number) / question.by.unbalance;
    b[i] = (prediction.columns[at + prediction.rows] as number) / question.by.unbalance;
    c[i] = (prediction.columns[at + 2 * prediction.rows] as number) / question.by.unbalance;
  }
  for (const column of [a, b, c]) forwardInPlace(factor, m, column);
  const za = product(a, residual, m);
  const zb = product(b, residual, m);
  const zc = product(c, residual, m);
  const aa = product(a, a, m);
  const bb = product(b, b, m);
  const cc = product(c, c, m);
  const ab = product(a, b, m);
  const ac = product(a, c, m);
  const bc = product(b, c, m);
  const { linear, quadratic } = into;
  const { directions } = grid();
  for (let k = 0; k < DIRECTIONS; k += 1) {
    const x = directions[3 * k] as number;
    const y = directions[3 * k + 1] as number;
    const w = directions[3 * k + 2] as number;
    linear[k] = za * x + zb * y + zc * w;
    quadratic[k] = aa * x * x + bb * y * y + cc * w * w + 2 * (ab * x * y + ac * x * w + bc * y * w);
  }
  return into;
}

/** ln of the mean over the directions of one size of what it adds; what lies 20 nats below the highest adds nothing. */
function overDirections({ linear, quadratic }: Slopes, size: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < DIRECTIONS; k += 1) {
    const term = size * ((linear[k] as number) - 0.5 * size * (quadratic[k] as number));
    if (term > most) most = term;
  }
  let sum = 0;
  for (let k = 0; k < DIRECTIONS; k += 1) {
    const below = size * ((linear[k] as number) - 0.5 * size * (quadratic[k] as number)) - most;
    if (below > -20) sum += Math.exp(below);
  }
  return most + Math.log(sum / DIRECTIONS);
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
  const { points, sizes } = grid();
  const base = logLikelihood(model, state) - Math.log(points.length);
  const slopes = slopesAbout(model, slopesFor());
  const { linear, quadratic } = slopes;
  const logTerms: number[] = [];
  for (const size of sizes) {
    for (let k = 0; k < DIRECTIONS; k += 1) {
      logTerms.push(base + size * ((linear[k] as number) - 0.5 * size * (quadratic[k] as number)));
    }
  }
  const own = { of: "unbalance", fault: names.faults - 1 } as const;
  const weighted = { log: logSumExp(logTerms), points, logTerms, best: heaviest(points, logTerms) };
  const completed = (): readonly Marginal[] => [
    { ...own, values: sizes, logTerms: sizes.map((size) => overDirections(slopes, size)) },
  ];
  const more = { completed, earthed: undefined, insulation: undefined };
  return findingOf(model, names, [own], weighted, visit, undefined, more);
}

/** Nats below the heaviest point at which a point no longer bears on an estimate. */
const NEGLIGIBLE = 7;

/** Points of a fault of one parameter, and of two, at which an unbalance beside it is weighed; it changes smoothly between them. */
const ANCHORS = [1, 9, 17] as const;

/**
 * Parameters of a fault beside an unbalanced supply, each given the other. The fault was weighed with the unbalance as
 * scatter; here the scatter's evidence at each of its points gives way to that of every size and direction of unbalance.
 * @param wide - finding of the fault, the unbalance taken as scatter
 * @param sharp - the same fault on the supply's own scatter
 * @param fault - place of the unbalance among the faults
 */
export function besideUnbalance(wide: Finding, sharp: Finding, fault: number): readonly Marginal[] {
  const { sizes } = grid();
  const most = Math.max(...wide.logTerms);
  const kept = wide.points.filter((_, i) => (wide.logTerms[i] as number) >= most - NEGLIGIBLE);
  const terms = wide.logTerms.filter((term) => term >= most - NEGLIGIBLE);
  const slopes = slopesFor();
  /** For each size, what it has over the scatter at a point. */
  const gainAt = (point: readonly number[]): Float64Array => {
    const scatter = wide.visit(point);
    const base = sharp.visit(point) - scatter;
    slopesAbout(sharp.model, slopes);
    return filled(SIZES, (s) => base + overDirections(slopes, sizes[s] as number));
  };
  const last = kept.length - 1;
  // Points come in rising order, those of two parameters row after row.
  const parts = Math.min((ANCHORS[wide.parameters.length as 0 | 1 | 2] as number) - 1, last);
  const anchors = Array.from({ length: parts + 1 }, (_, k) =>
    parts === 0 ? 0 : Math.round((k * last) / parts),
  );
  const gains = anchors.map((i) => gainAt(kept[i] as readonly number[]));
  // For each point all sizes together, for each size all points.
  const logTerms: number[] = [];
  const bySize = sizes.map(() => floats(kept.length));
  const own = floats(SIZES);
  let k = 0;
  for (let i = 0; i < kept.length; i += 1) {
    while (k < parts - 1 && (anchors[k + 1] as number) < i) k += 1;
    const next = Math.min(k + 1, parts);
    const [from, to] = [anchors[k] as number, anchors[next] as number];
    const share = to === from ? 0 : (i - from) / (to - from);
    const [a, b] = [gains[k] as Float64Array, gains[next] as Float64Array];
    for (let s = 0; s < SIZES; s += 1) {
      own[s] = (terms[i] as number) + (1 - share) * (a[s] as number) + share * (b[s] as number);
      (bySize[s] as Float64Array)[i] = own[s] as number;
    }
    logTerms.push(logSumExp(own));
  }
  const { parameters } = wide;
  const unbalance = { of: "unbalance", fault, values: sizes, logTerms: bySize.map(logSumExp) } as const;
  return [...marginalsOf({ parameters, points: kept, logTerms }), unbalance];
}

/** A supply whose line voltages differ: linear in the readings, so that one factorisation serves every size and direction. */

import { stretchOf } from "../faults/atom.ts";
import { evaluate } from "../likelihood/likelihood.ts";
import { logLikelihood, type Model } from "../likelihood/model.ts";
import { narrowed, type Shown, shownBy } from "../likelihood/supplyShown.ts";
import type { State } from "../network/state.ts";
import { logSumExp } from "../numbers/linear.ts";
import { heaviest } from "../numbers/nested.ts";
import { filled, floats } from "../numbers/room.ts";
import { RANGE } from "../question/settings.ts";
import { type Finding, findingOf, type Marginal, marginalsOf } from "../weighing/findings.ts";
import type { Names } from "../weighing/names.ts";

/** Steps in size and in direction: finer than the scatter of each line of a sound supply by default. */
const SIZES = 12;
const DIRECTIONS = 48;

/** The parameter that is told: the spread from lowest to highest line voltage. */
const UNBALANCE = { of: "unbalance", stretches: [stretchOf(RANGE.unbalance, false, 1)] } as const;

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
  /** Work space: exponents of one size. */
  readonly terms: Float64Array;
}

/** Room for slopes. */
const slopesFor = (): Slopes => ({
  linear: floats(DIRECTIONS),
  quadratic: floats(DIRECTIONS),
  terms: floats(DIRECTIONS),
});

/** Rows of a matrix of three, one after the other. */
type Nine = readonly [number, number, number, number, number, number, number, number, number];

/** The slopes of what is shown, written into `into`. */
function slopesOf({ score, information }: Shown, into: Slopes): Slopes {
  const [za, zb, zc] = score as unknown as readonly [number, number, number];
  const [aa, ab, ac, , bb, bc, , , cc] = information as unknown as Nine;
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
function overDirections({ linear, quadratic, terms }: Slopes, size: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < DIRECTIONS; k += 1) {
    const term = size * ((linear[k] as number) - 0.5 * size * (quadratic[k] as number));
    terms[k] = term;
    if (term > most) most = term;
  }
  let sum = 0;
  for (let k = 0; k < DIRECTIONS; k += 1) {
    const below = (terms[k] as number) - most;
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
  const slopes = slopesOf(shownBy(model), slopesFor());
  const { linear, quadratic } = slopes;
  const logTerms: number[] = [];
  for (const size of sizes) {
    for (let k = 0; k < DIRECTIONS; k += 1) {
      logTerms.push(base + size * ((linear[k] as number) - 0.5 * size * (quadratic[k] as number)));
    }
  }
  const own = { ...UNBALANCE, fault: names.faults - 1 };
  const weighted = { log: logSumExp(logTerms), points, logTerms, best: heaviest(points, logTerms) };
  const completed = (): readonly Marginal[] => [
    { ...own, values: sizes, logTerms: sizes.map((size) => overDirections(slopes, size)) },
  ];
  const more = { completed, earthed: undefined, insulation: undefined, under: undefined };
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
 * @param own - scatter of each line voltage of a sound supply
 * @param fault - place of the unbalance among the faults
 */
export function besideUnbalance(wide: Finding, own: number, fault: number): readonly Marginal[] {
  const { sizes } = grid();
  let most = Number.NEGATIVE_INFINITY;
  for (const term of wide.logTerms) if (term > most) most = term;
  const kept = wide.points.filter((_, i) => (wide.logTerms[i] as number) >= most - NEGLIGIBLE);
  const terms = wide.logTerms.filter((term) => term >= most - NEGLIGIBLE);
  const more = wide.model.question.by.unbalance ** 2 - own ** 2;
  const slopes = slopesFor();
  /** For each size, what it has over the scatter at a point. */
  const gainAt = (point: readonly number[]): Float64Array => {
    wide.visit(point);
    const { shown, gain } = narrowed(shownBy(wide.model), more);
    slopesOf(shown, slopes);
    return filled(SIZES, (s) => gain + overDirections(slopes, sizes[s] as number));
  };
  const last = kept.length - 1;
  // Points come in rising order, those of two parameters row after row.
  const parts = Math.min((ANCHORS[wide.parameters.length as 0 | 1 | 2] as number) - 1, last);
  const anchors = Array.from({ length: parts + 1 }, (_, k) =>
    parts === 0 ? 0 : Math.round((k * last) / parts),
  );
  const gains = anchors.map((i) => gainAt(kept[i] as readonly number[]));
  // ln of what each point adds with each size.
  const cells = floats(kept.length * SIZES);
  let k = 0;
  for (let i = 0; i < kept.length; i += 1) {
    while ((anchors[k + 1] ?? last) < i) k += 1;
    const next = Math.min(k + 1, parts);
    const [from, to] = [anchors[k] as number, anchors[next] as number];
    const share = to === from ? 0 : (i - from) / (to - from);
    const [a, b] = [gains[k] as Float64Array, gains[next] as Float64Array];
    for (let s = 0; s < SIZES; s += 1) {
      cells[i * SIZES + s] = (terms[i] as number) + (1 - share) * (a[s] as number) + share * (b[s] as number);
    }
  }
  const { byPoint, bySize } = edgesOf(cells, kept.length);
  const { parameters } = wide;
  const unbalance = { ...UNBALANCE, fault, values: sizes, logTerms: bySize };
  return [...marginalsOf({ parameters, points: kept, logTerms: byPoint }), unbalance];
}

/** ln of the sums of points × sizes along both, one exponential for each cell. */
function edgesOf(
  cells: Float64Array,
  points: number,
): { readonly byPoint: number[]; readonly bySize: number[] } {
  let most = Number.NEGATIVE_INFINITY;
  for (let c = 0; c < cells.length; c += 1) most = Math.max(most, cells[c] as number);
  const byPoint: number[] = [];
  const bySize: number[] = Array(SIZES).fill(0);
  for (let i = 0; i < points; i += 1) {
    let sum = 0;
    for (let s = 0; s < SIZES; s += 1) {
      const part = Math.exp((cells[i * SIZES + s] as number) - most);
      sum += part;
      bySize[s] = (bySize[s] as number) + part;
    }
    byPoint.push(sum);
  }
  const logOf = (sum: number): number => most + Math.log(sum);
  return { byPoint: byPoint.map(logOf), bySize: bySize.map(logOf) };
}

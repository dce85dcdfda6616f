/**
 * ∫₀¹ exp(f(t)) dt for a smooth f that may be as narrow as a good meter makes it or as flat as a blind one: the peak is
 * found first, then panels grow from it in steps of its own width. A fixed grid would miss narrow peaks.
 */
import { logSumExp } from "./linear.ts";

/** The integral and where it comes from. */
export interface Integral {
  /** ln of the integral. */
  readonly log: number;
  /** Argument of the largest f found. */
  readonly best: number;
  readonly bestLog: number;
  /** Nodes and ln of what each contributes. */
  readonly nodes: readonly number[];
  readonly logTerms: readonly number[];
}

/** Three-point Gauss-Legendre on −1..1. */
const GAUSS = [
  [-Math.sqrt(0.6), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(0.6), 5 / 9],
] as const;

/**
 * Coarse points, first panel in widths of the peak and at most, growth of the panels, widest of the others, and where the
 * tail is dropped. A peak at an end of the range tells its width badly, so the first panel is kept narrow.
 */
const COARSE = 9;
const FIRST = 1.1;
const GROWTH = 1.5;
const FIRST_WIDEST = 0.11;
const WIDEST = 0.2;
const TAIL = 16;

interface Peak {
  readonly at: number;
  readonly log: number;
  readonly width: number;
}

/** Vertex of the parabola through three points, and its curvature; null where it is not a maximum. */
function vertex(
  [a, fa]: readonly [number, number],
  [b, fb]: readonly [number, number],
  [c, fc]: readonly [number, number],
): { readonly at: number; readonly curvature: number; readonly log: number } | null {
  const left = (fb - fa) / (b - a);
  const right = (fc - fb) / (c - b);
  const curvature = (2 * (right - left)) / (c - a);
  if (!(curvature < 0)) return null;
  const slopeAtB = left + ((right - left) * (b - a)) / (c - a);
  const at = b - slopeAtB / curvature;
  return { at, curvature, log: fb - slopeAtB ** 2 / (2 * curvature) };
}

/** Climbs from a coarse maximum to the peak; gives up early on one that cannot reach `floor`. */
function climb(f: (t: number) => number, k: number, coarse: readonly number[], floor: number): Peak {
  const step = 1 / (COARSE - 1);
  const edge = k === 0 || k === COARSE - 1;
  const inward = k === 0 ? 1 : -1;
  let b: [number, number] = [k * step, coarse[k] as number];
  let a: [number, number] = edge ? b : [(k - 1) * step, coarse[k - 1] as number];
  let c: [number, number] = edge
    ? [(k + inward) * step, coarse[k + inward] as number]
    : [(k + 1) * step, coarse[k + 1] as number];
  if (edge) {
    // A maximum at the end of the range: halve inwards until the neighbour is higher, or the fall is slow on its scale.
    for (let tries = 0; tries < 12 && b[1] - c[1] > 1; tries += 1) {
      const t = (b[0] + c[0]) / 2;
      const value = f(t);
      if (value > b[1]) {
        a = b;
        b = [t, value];
        break;
      }
      c = [t, value];
      if (tries > 7 && b[1] < floor - 40) break;
    }
    if (a === b) {
      const fall = Math.max(b[1] - c[1], 1e-9) / Math.abs(c[0] - b[0]);
      return { at: b[0], log: b[1], width: Math.min(1 / fall, 0.3) };
    }
    if (a[0] > c[0]) [a, c] = [c, a];
  }
  let width = 0.3;
  for (let tries = 0; tries < 24; tries += 1) {
    const top = vertex(a, b, c);
    if (top !== null) width = 1 / Math.sqrt(-top.curvature);
    if (tries > 7 && top !== null && top.log < floor - 10 && top.log - b[1] < 0.3 * (floor - top.log)) break;
    const span = c[0] - a[0];
    const wide = b[0] - a[0] > c[0] - b[0];
    const golden = wide ? b[0] - 0.382 * (b[0] - a[0]) : b[0] + 0.382 * (c[0] - b[0]);
    // The parabola's own guess, kept off the points there are; in a lopsided bracket every third try cuts the long side.
    let t = top === null || tries % 3 === 2 ? golden : top.at;
    const least = Math.min(0.25 * width, 0.05 * span);
    if (Math.abs(t - b[0]) < least) t = b[0] + (wide ? -least : least);
    if (!(t > a[0] && t < c[0])) t = golden;
    const value = f(t);
    const point: [number, number] = [t, value];
    const settled = top !== null && Math.abs(top.log - Math.max(value, b[1])) < 0.02 && span < 6 * width;
    if (value > b[1]) {
      if (t > b[0]) a = b;
      else c = b;
      b = point;
    } else if (t > b[0]) c = point;
    else a = point;
    if (settled) break;
  }
  const top = vertex(a, b, c);
  if (top !== null) width = 1 / Math.sqrt(-top.curvature);
  return { at: b[0], log: b[1], width: Math.min(width, 0.3) };
}

/** Panels from the peak outwards to `end`. */
function panels(
  f: (t: number) => number,
  peak: Peak,
  end: number,
  most: number,
  nodes: number[],
  logTerms: number[],
): void {
  const side = Math.sign(end - peak.at);
  let from = peak.at;
  let span = Math.min(FIRST * peak.width, FIRST_WIDEST);
  while (side * (end - from) > 1e-15) {
    const to = side * (end - from) < 1.3 * span ? end : from + side * span;
    const half = Math.abs(to - from) / 2;
    let last = Number.NEGATIVE_INFINITY;
    for (const [x, w] of GAUSS) {
      const t = (from + to) / 2 + side * half * x;
      last = f(t);
      nodes.push(t);
      logTerms.push(last + Math.log(w * half));
    }
    if (last < most - TAIL) break;
    from = to;
    span = Math.min(span * GROWTH, WIDEST);
  }
}

/**
 * ln ∫₀¹ exp(f).
 * @param f - the exponent
 * @param floor - integrals whose largest f stays below this are only estimated
 * @param known - values at every second coarse point, where they are known already
 */
export function logIntegral(
  f: (t: number) => number,
  floor: number,
  known: readonly number[] = [],
): Integral {
  const coarse: number[] = [];
  for (let k = 0; k < COARSE; k += 1) {
    const before = k % 2 === 0 ? known[k / 2] : undefined;
    coarse.push(before ?? f(k / (COARSE - 1)));
  }
  const peaks: Peak[] = [];
  let top = Number.NEGATIVE_INFINITY;
  for (const value of coarse) if (value > top) top = value;
  for (let k = 0; k < COARSE; k += 1) {
    const value = coarse[k] as number;
    const higherThanLeft = k === 0 || value > (coarse[k - 1] as number);
    const asHighAsRight = k === COARSE - 1 || value >= (coarse[k + 1] as number);
    // A coarse point far below may still stand beside a narrow peak; the highest one always counts.
    if (higherThanLeft && asHighAsRight && (value === top || value > top - 200)) {
      peaks.push(climb(f, k, coarse, floor));
    }
  }
  let best = peaks[0] as Peak;
  for (const peak of peaks) if (peak.log > best.log) best = peak;
  const most = best.log;
  if (!(most > floor)) {
    const log = most + Math.log(Math.min(1, best.width * Math.sqrt(2 * Math.PI)));
    return { log, best: best.at, bestLog: most, nodes: [best.at], logTerms: [log] };
  }
  const high = peaks.filter(({ log }) => log > most - TAIL);
  const nodes: number[] = [];
  const logTerms: number[] = [];
  high.forEach((peak, i) => {
    const before = high[i - 1];
    const after = high[i + 1];
    const low = before === undefined ? 0 : lowest(coarse, before.at, peak.at);
    const end = after === undefined ? 1 : lowest(coarse, peak.at, after.at);
    // From the peak down, then turned round: nodes come in rising order.
    const [below, terms]: [number[], number[]] = [[], []];
    panels(f, peak, low, most, below, terms);
    for (let i = below.length - 1; i >= 0; i -= 1) {
      nodes.push(below[i] as number);
      logTerms.push(terms[i] as number);
    }
    panels(f, peak, end, most, nodes, logTerms);
  });
  return { log: logSumExp(logTerms), best: best.at, bestLog: most, nodes, logTerms };
}

/** Coarse point of the valley between two peaks. */
function lowest(coarse: readonly number[], from: number, to: number): number {
  let at = (from + to) / 2;
  let value = Number.POSITIVE_INFINITY;
  coarse.forEach((one, k) => {
    const t = k / (COARSE - 1);
    if (t > from && t < to && one < value) [at, value] = [t, one];
  });
  return at;
}

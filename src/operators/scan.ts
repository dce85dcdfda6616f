/** Searches a bracket for sign changes, and tells roots from jumps and from holes in the domain. */
import { bracketedRoot } from "../numeric/index.ts";

/** A place and the function there: a number, or why there is none. */
export interface Sample {
  readonly x: number;
  readonly y: number | undefined;
  readonly reason: string | undefined;
}

/** A place with a number. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A stretch where the function gives no number. */
export interface Hole {
  readonly low: number;
  readonly high: number;
  readonly reason: string;
}

/** What a scan found, each list in rising order. */
export interface Findings {
  readonly roots: readonly Point[];
  readonly jumps: readonly Point[];
  readonly holes: readonly Hole[];
}

export type Sampler = (x: number) => Sample;

/** Thrown inside a bracket that was thought to be whole; never leaves this file. */
class HoleMet extends Error {
  constructor(readonly sample: Sample) {
    super("hole");
  }
}

const isPoint = (sample: Sample): sample is Sample & Point => sample.y !== undefined;

/** A gap below this part of the size of the function around the root is rounding. */
const ROUNDING = 1e-9;

function sizeOf(a: Point, b: Point): number {
  return Math.max(Math.abs(a.y), Math.abs(b.y));
}

/**
 * Narrows a sign change between two points until the doubles run out, and says whether the function passes through zero
 * there or jumps over it. It passes if what is left of the step is rounding, or still shrinks with the bracket; a jump or a
 * pole keeps its height however close one looks.
 */
export function narrowed(sample: Sampler, a: Point, b: Point): { kind: "root" | "jump"; at: Point } | Hole {
  const evaluate = (x: number): number => {
    if (x === a.x) return a.y;
    if (x === b.x) return b.y;
    const one = sample(x);
    if (!isPoint(one)) throw new HoleMet(one);
    return one.y;
  };
  try {
    const spacing = 4 * Number.EPSILON * Math.max(Math.abs(a.x), Math.abs(b.x));
    const found = bracketedRoot({
      evaluate,
      low: a.x,
      high: b.x,
      tolerance: Math.max(spacing, Number.MIN_VALUE),
    });
    const at = { x: found.root + 0, y: found.residual };
    if (at.y === 0) return { kind: "root", at };
    const inside = (x: number): number => Math.min(b.x, Math.max(a.x, x));
    const stepOver = (margin: number): number =>
      Math.abs(evaluate(inside(found.high + margin)) - evaluate(inside(found.low - margin)));
    const near = stepOver(0);
    if (near <= ROUNDING * sizeOf(a, b)) return { kind: "root", at };
    const width = found.high - found.low || spacing;
    return { kind: stepOver(1000 * width) > 2 * near ? "root" : "jump", at };
  } catch (error) {
    if (!(error instanceof HoleMet)) throw error;
    const { x, reason } = error.sample;
    return { low: x, high: x, reason: reason as string };
  }
}

/** The last point of the domain from a point towards a hole, by halving. */
function edge(sample: Sampler, from: Point, hole: Sample): { readonly last: Point; readonly hole: Sample } {
  let last = from;
  let out = hole;
  for (let i = 0; i < 60; i += 1) {
    const x = last.x + (out.x - last.x) / 2;
    if (x === last.x || x === out.x) break;
    const middle = sample(x);
    if (isPoint(middle)) last = { x, y: middle.y };
    else out = middle;
  }
  return { last, hole: out };
}

const GOLDEN = 0.381_966_011_250_105_1;

/**
 * Looks between three points of one sign, the middle one nearest to zero, for the place where the function comes closest:
 * a pair of roots between two samples, or a root where it only touches.
 */
function closest(sample: Sampler, a: Point, b: Point, c: Point): Point | undefined {
  let [low, middle, high] = [a, b, c];
  for (let i = 0; i < 80 && high.x - low.x > 1e-9 * Math.max(Math.abs(low.x), Math.abs(high.x)); i += 1) {
    const right = high.x - middle.x > middle.x - low.x;
    const x = middle.x + GOLDEN * (right ? high.x - middle.x : low.x - middle.x);
    const tried = sample(x);
    if (!isPoint(tried)) return undefined;
    if (tried.y > 0 !== b.y > 0 || tried.y === 0) return tried;
    if (Math.abs(tried.y) < Math.abs(middle.y)) {
      if (right) low = middle;
      else high = middle;
      middle = tried;
    } else if (right) high = tried;
    else low = tried;
  }
  return middle;
}

/** Two stretches without numbers that meet are one. */
function mergedHoles(holes: readonly Hole[]): readonly Hole[] {
  const merged: Hole[] = [];
  for (const hole of [...holes].sort((a, b) => a.low - b.low)) {
    const last = merged.at(-1);
    if (last !== undefined && hole.low <= last.high) {
      merged[merged.length - 1] = { ...last, high: Math.max(last.high, hole.high) };
    } else merged.push(hole);
  }
  return merged;
}

/** Turns samples into points, with the edges of the domain found and put in, and the holes between them. */
function pieces(
  sample: Sampler,
  samples: readonly Sample[],
): { readonly runs: readonly (readonly Point[])[]; readonly holes: readonly Hole[] } {
  const runs: Point[][] = [];
  const holes: Hole[] = [];
  let run: Point[] = [];
  // Set whenever the sample before is no point.
  let hole: Hole | undefined;
  samples.forEach((now, i) => {
    const before = samples[i - 1];
    if (isPoint(now)) {
      if (before !== undefined && !isPoint(before)) {
        const found = edge(sample, now, before);
        holes.push({ ...(hole as Hole), high: found.hole.x });
        hole = undefined;
        if (found.last.x !== now.x) run.push(found.last);
      }
      run.push({ x: now.x, y: now.y });
      return;
    }
    if (before !== undefined && isPoint(before)) {
      const found = edge(sample, before, now);
      if (found.last.x !== before.x) run.push(found.last);
      runs.push(run);
      run = [];
      hole = { low: found.hole.x, high: now.x, reason: found.hole.reason as string };
    } else hole = { low: hole?.low ?? now.x, high: now.x, reason: hole?.reason ?? (now.reason as string) };
  });
  if (hole !== undefined) holes.push(hole);
  if (run.length > 0) runs.push(run);
  return { runs, holes };
}

/** Everything between the samples, in rising order. */
export function findings(sample: Sampler, samples: readonly Sample[]): Findings {
  const { runs, holes: domain } = pieces(sample, samples);
  const roots: Point[] = [];
  const jumps: Point[] = [];
  const holes: Hole[] = [...domain];
  const keep = (at: Point): void => {
    if (!roots.some(({ x }) => x === at.x)) roots.push(at);
  };
  const look = (a: Point, b: Point): void => {
    if (a.y === 0 || b.y === 0 || a.y > 0 === b.y > 0) return;
    const found = narrowed(sample, a, b);
    if (!("kind" in found)) holes.push(found);
    else if (found.kind === "root") keep(found.at);
    else jumps.push(found.at);
  };
  for (const run of runs) {
    run.forEach((b, i) => {
      if (b.y === 0) keep(b);
      const [a, c] = [run[i - 1], run[i + 1]];
      if (a !== undefined) look(a, b);
      if (a === undefined || c === undefined || b.y === 0) return;
      // No products: those of small values are 0. Beside a root at a sample there is no dip: nothing is nearer to zero.
      const oneSign = a.y > 0 === b.y > 0 && b.y > 0 === c.y > 0;
      if (!oneSign || Math.abs(b.y) > Math.abs(a.y) || Math.abs(b.y) > Math.abs(c.y)) return;
      // A flat stretch is no dip.
      if (b.y === a.y && b.y === c.y) return;
      const dip = closest(sample, a, b, c);
      if (dip === undefined) return;
      if (dip.y === 0) keep(dip);
      else if (dip.y > 0 !== b.y > 0) {
        look(a, dip);
        look(dip, c);
      } else if (Math.abs(dip.y) <= 1e-12 * sizeOf(a, c)) keep(dip);
    });
  }
  const byPlace = (a: Point, b: Point): number => a.x - b.x;
  return { roots: roots.sort(byPlace), jumps: jumps.sort(byPlace), holes: mergedHoles(holes) };
}

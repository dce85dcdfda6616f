/** What a posterior says of one parameter: the values below which parts of it lie. */
import { copied, floats } from "./room.ts";

/** Where a parameter can lie: from `low` to `high`, but not between the two ends of `gap`. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
  /** Whether its nodes are laid out by its logarithm. */
  readonly logarithmic: boolean;
  readonly gap?: readonly [number, number] | undefined;
}

/** More than any rounding of a node, less than any distance between two. */
const ROUNDING = 1e-12;

/** Nodes in rising order with the weight of each. */
interface Nodes {
  readonly count: number;
  readonly x: Float64Array;
  readonly w: Float64Array;
}

/** Place of a value among the first `count`, which rise. */
function placeOf(value: number, x: Float64Array, count: number): number {
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((x[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Values in rising order, each once, in the place of the list; returns how many there are. */
function distinct(x: Float64Array): number {
  for (let i = 1; i < x.length; i += 1) {
    if ((x[i] as number) >= (x[i - 1] as number)) continue;
    x.sort();
    break;
  }
  let count = 0;
  for (let k = 0; k < x.length; k += 1) {
    const value = x[k] as number;
    if (count > 0 && x[count - 1] === value) continue;
    x[count] = value;
    count += 1;
  }
  return count;
}

/** Whether each value is more than the one before. */
function rises(values: Float64Array): boolean {
  for (let i = 1; i < values.length; i += 1) {
    if (!((values[i] as number) > (values[i - 1] as number))) return false;
  }
  return true;
}

/** Values in rising order with the weight of each; equal ones, of a grid in two parameters, together. */
function nodesOf(values: Float64Array, weights: Float64Array): Nodes {
  const n = values.length;
  if (rises(values)) return { count: n, x: values, w: weights };
  const x = copied(values);
  const count = distinct(x);
  const w = floats(count);
  let at = 0;
  for (let i = 0; i < n; i += 1) {
    const value = values[i] as number;
    // What comes in rising order is found where the last was, or behind it.
    if (x[at] !== value) at = at + 1 < count && x[at + 1] === value ? at + 1 : placeOf(value, x, count);
    w[at] = (w[at] as number) + (weights[i] as number);
  }
  return { count, x, w };
}

const scaled = (value: number, logarithmic: boolean): number => (logarithmic ? Math.log(value) : value);

const unscaled = (value: number, logarithmic: boolean): number => (logarithmic ? Math.exp(value) : value);

/** Place of a knot of the distribution function: its nodes, with one more at either end. */
function knotOf(k: number, { count, x }: Nodes, { low, high, logarithmic }: Bounds): number {
  // Half of an end node's weight lies beyond it, as far out as it lies inwards.
  if (k === 0) {
    const first = scaled(x[0] as number, logarithmic);
    return Math.max(scaled(low, logarithmic), first - (scaled(x[1] as number, logarithmic) - first) / 2);
  }
  if (k > count) {
    const last = scaled(x[count - 1] as number, logarithmic);
    const before = scaled(x[count - 2] as number, logarithmic);
    return Math.min(scaled(high, logarithmic), last + (last - before) / 2);
  }
  return scaled(x[k - 1] as number, logarithmic);
}

/** The value below which a part of the distribution lies, which is taken as straight between knots. */
function quantile(part: number, nodes: Nodes, bounds: Bounds): number {
  const { count, w } = nodes;
  const { logarithmic, gap } = bounds;
  let before = 0;
  let own = 0;
  for (let k = 1; k < count + 2; k += 1) {
    const next = k > count ? 0 : (w[k - 1] as number);
    // Each node stands for half its weight on either side.
    const here = before + (own + next) / 2;
    if (here >= part && here > before) {
      const a = knotOf(k - 1, nodes, bounds);
      const b = knotOf(k, nodes, bounds);
      // No quantile lies in the gap of a parameter that has one: what either end holds stays there.
      if (gap !== undefined && spans(a, b, gap, logarithmic))
        return unscaled(part - before < own / 2 ? a : b, logarithmic);
      return unscaled(a + ((part - before) / (here - before)) * (b - a), logarithmic);
    }
    before = here;
    own = next;
  }
  return unscaled(knotOf(count + 1, nodes, bounds), logarithmic);
}

/** Whether a gap lies between two knots; a node at an end of it is that end to the rounding of its logarithm. */
const spans = (a: number, b: number, [low, high]: readonly [number, number], logarithmic: boolean): boolean =>
  a <= scaled(low, logarithmic) + ROUNDING && b >= scaled(high, logarithmic) - ROUNDING;

/** Values of a parameter below which parts of the posterior lie, from nodes and their weights, all together 1. */
export function quantiles(
  values: Float64Array,
  weights: Float64Array,
  parts: readonly number[],
  bounds: Bounds,
): number[] {
  const nodes = nodesOf(values, weights);
  if (nodes.count === 1) return parts.map(() => nodes.x[0] as number);
  return parts.map((part) => quantile(part, nodes, bounds));
}

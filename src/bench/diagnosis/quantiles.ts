/** What a posterior says of one parameter: the values below which parts of it lie. */
import { filled, floats } from "./room.ts";

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
  readonly x: ArrayLike<number>;
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
function rises(values: readonly number[]): boolean {
  for (let i = 1; i < values.length; i += 1) {
    if (!((values[i] as number) > (values[i - 1] as number))) return false;
  }
  return true;
}

/** Values in rising order with the weight of each; equal ones, of a grid in two parameters, together. */
function nodesOf(values: readonly number[], weights: Float64Array): Nodes {
  const n = values.length;
  if (rises(values)) return { count: n, x: values, w: weights };
  const x = filled(n, (i) => values[i] as number);
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

/** The distribution function at knots between which it is straight: its nodes, with one more at either end. */
class Distribution {
  readonly #nodes: Nodes;
  readonly #bounds: Bounds;
  /** Where the first and the last knot lie. */
  readonly #first: number;
  readonly #last: number;

  constructor(nodes: Nodes, bounds: Bounds) {
    this.#nodes = nodes;
    this.#bounds = bounds;
    const { count } = nodes;
    // Half of an end node's weight lies beyond it, as far out as it lies inwards.
    const [a, b] = [this.#node(0), this.#node(1)];
    this.#first = Math.max(this.#scaled(bounds.low), a - (b - a) / 2);
    const [y, z] = [this.#node(count - 2), this.#node(count - 1)];
    this.#last = Math.min(this.#scaled(bounds.high), z + (z - y) / 2);
  }

  #scaled(value: number): number {
    return this.#bounds.logarithmic ? Math.log(value) : value;
  }

  #back(value: number): number {
    return this.#bounds.logarithmic ? Math.exp(value) : value;
  }

  #node(k: number): number {
    return this.#scaled(this.#nodes.x[k] as number);
  }

  #knot(k: number): number {
    return k === 0 ? this.#first : k > this.#nodes.count ? this.#last : this.#node(k - 1);
  }

  /** The value below which a part of the distribution lies. */
  quantile(part: number): number {
    const { count, w } = this.#nodes;
    let before = 0;
    let own = 0;
    for (let k = 1; k < count + 2; k += 1) {
      const next = k > count ? 0 : (w[k - 1] as number);
      // Each node stands for half its weight on either side; between nodes the distribution is taken as straight.
      const here = before + (own + next) / 2;
      if (here >= part && here > before)
        return this.#between(k, (part - before) / (here - before), part - before < own / 2);
      before = here;
      own = next;
    }
    return this.#back(this.#last);
  }

  /** The value at a share of the way up to a knot. No quantile lies in the gap of a parameter that has one: what either end holds stays there. */
  #between(k: number, share: number, low: boolean): number {
    const { gap } = this.#bounds;
    const [a, b] = [this.#knot(k - 1), this.#knot(k)];
    // A node at an end of the gap is that end to the rounding of its logarithm.
    if (gap !== undefined && a <= this.#scaled(gap[0]) + ROUNDING && b >= this.#scaled(gap[1]) - ROUNDING)
      return this.#back(low ? a : b);
    return this.#back(a + share * (b - a));
  }
}

/** Values of a parameter below which parts of the posterior lie, from nodes and their weights, all together 1. */
export function quantiles(
  values: readonly number[],
  weights: Float64Array,
  parts: readonly number[],
  bounds: Bounds,
): number[] {
  const nodes = nodesOf(values, weights);
  if (nodes.count === 1) return parts.map(() => nodes.x[0] as number);
  const distribution = new Distribution(nodes, bounds);
  return parts.map((part) => distribution.quantile(part));
}

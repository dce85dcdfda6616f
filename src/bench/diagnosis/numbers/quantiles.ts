/** What a posterior says of one parameter: the values below which parts of it lie. */
import { copied, floats } from "./room.ts";

/** Where a parameter can lie: from `low` to `high`, but not between the two ends of `gap`. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
  /** Whether its nodes are laid out by its logarithm. */
  readonly logarithmic: boolean;
  readonly gap?: readonly [number, number];
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

/** Values in rising order with the weight of each; equal ones, of a grid in two parameters, together. */
function weighted(
  values: readonly number[],
  logTerms: readonly number[],
  scale: (x: number) => number,
): Nodes {
  let most = Number.NEGATIVE_INFINITY;
  for (const term of logTerms) if (term > most) most = term;
  const n = values.length;
  const own = floats(n);
  const terms = floats(n);
  let rises = true;
  let total = 0;
  for (let i = 0; i < n; i += 1) {
    own[i] = scale(values[i] as number);
    terms[i] = Math.exp((logTerms[i] as number) - most);
    if (i > 0 && (own[i] as number) < (own[i - 1] as number)) rises = false;
    total += terms[i] as number;
  }
  const x = copied(own, n);
  if (!rises) x.sort();
  let count = 0;
  for (let k = 0; k < n; k += 1) {
    const value = x[k] as number;
    if (count > 0 && x[count - 1] === value) continue;
    x[count] = value;
    count += 1;
  }
  const w = floats(count);
  let at = 0;
  for (let k = 0; k < n; k += 1) {
    const value = own[k] as number;
    if (!rises) at = placeOf(value, x, count);
    else if (x[at] !== value) at += 1;
    w[at] = (w[at] as number) + (terms[k] as number) / total;
  }
  return { count, x, w };
}

/** Values of a parameter below which parts of the posterior lie, from nodes and the logarithms of their weights. */
export function quantiles(
  values: readonly number[],
  logTerms: readonly number[],
  parts: readonly number[],
  { low, high, logarithmic, gap = [low, high] }: Bounds,
): number[] {
  const scale = logarithmic ? Math.log : (x: number): number => x;
  const back = logarithmic ? Math.exp : (x: number): number => x;
  const { count, x, w } = weighted(values, logTerms, scale);
  if (count === 1) return parts.map(() => back(x[0] as number));
  const spacing = (k: number): number => ((x[k + 1] as number) - (x[k] as number)) / 2;
  // Half of an end node's weight lies beyond it, as far out as it lies inwards.
  const first = Math.max(scale(low), (x[0] as number) - spacing(0));
  const last = Math.min(scale(high), (x[count - 1] as number) + spacing(count - 2));
  const knot = (k: number): number => (k === 0 ? first : k > count ? last : (x[k - 1] as number));
  const weight = (k: number): number => (k === 0 || k > count ? 0 : (w[k - 1] as number));
  // A node at an end of the gap is that end to the rounding of its logarithm.
  const [gapLow, gapHigh] = [scale(gap[0]) + ROUNDING, scale(gap[1]) - ROUNDING];
  return parts.map((part) => {
    let before = 0;
    for (let k = 1; k < count + 2; k += 1) {
      // Each node stands for half its weight on either side; between nodes the distribution is taken as straight.
      const here = before + (weight(k - 1) + weight(k)) / 2;
      if (here >= part && here > before) {
        const [a, b] = [knot(k - 1), knot(k)];
        const share = (part - before) / (here - before);
        // No quantile lies in the gap of a parameter that has one: what either end holds stays there.
        if (a <= gapLow && b >= gapHigh) return back(part - before < weight(k - 1) / 2 ? a : b);
        return back(a + share * (b - a));
      }
      before = here;
    }
    return back(last);
  });
}

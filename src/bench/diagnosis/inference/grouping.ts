/** Explanations that these readings cannot tell apart, found by what they predict. */

import { forwardInPlace, squared } from "../numbers/linear.ts";
import { filled, floats } from "../numbers/room.ts";
import type { Signature } from "./judged.ts";

/**
 * Two explanations are one group when their mean predictions lie within this many standard deviations of the readings'
 * covariance: even readings without any error would then shift the odds by less than 5 %.
 */
const APART = 0.3;

/** Whether two show a value, an open path or nothing in the same rows. */
function alike(first: Signature, second: Signature): boolean {
  if (first.earthed !== second.earthed) return false;
  const [one, other] = [first.pattern, second.pattern];
  for (let r = 0; r < one.length; r += 1) if (one[r] !== other[r]) return false;
  return true;
}

/** Variance of each reading in the Gaussian part: the diagonal of the covariance, of which `factor` holds 1 over its own diagonal. */
function variancesOf({ active, factor }: Signature): Float64Array {
  const m = active.length;
  return filled(m, (i) => {
    let sum = 1 / (factor[i * m + i] as number) ** 2;
    for (let k = 0; k < i; k += 1) sum += (factor[i * m + k] as number) ** 2;
    return sum;
  });
}

/** The first of a group, and the variance of each of its readings. */
interface Leader {
  readonly own: Signature;
  readonly variances: Float64Array;
}

/** Groups as they fill: each item joins the first, more probable one that it cannot be told from. */
export class Grouping<T> {
  readonly #leaders: (Leader | null)[] = [];
  readonly groups: T[][] = [];
  #difference = floats(0);

  /** Puts an item in its group; what has no signature stays alone. */
  add(item: T, own: Signature | null): void {
    const home = own === null ? -1 : this.#homeOf(own);
    if (home >= 0) {
      (this.groups[home] as T[]).push(item);
      return;
    }
    this.#leaders.push(own === null ? null : { own, variances: variancesOf(own) });
    this.groups.push([item]);
  }

  #homeOf(own: Signature): number {
    for (let k = 0; k < this.#leaders.length; k += 1) {
      const leader = this.#leaders[k] as Leader | null;
      if (leader !== null && alike(leader.own, own) && this.#near(leader, own)) return k;
    }
    return -1;
  }

  /** Whether two predictions are less than {@link APART} from each other in standard deviations of the first one's readings. */
  #near({ own: { active, factor, mean }, variances }: Leader, other: Signature): boolean {
    const m = active.length;
    if (this.#difference.length < m) this.#difference = floats(m);
    const difference = this.#difference;
    for (let i = 0; i < m; i += 1) {
      const r = active[i] as number;
      const own = (mean[r] as number) - (other.mean[r] as number);
      // All readings together tell at least as much as any one of them.
      if (own * own >= APART * APART * (variances[i] as number)) return false;
      difference[i] = own;
    }
    forwardInPlace(factor, m, difference);
    return squared(difference, m) < APART * APART;
  }
}

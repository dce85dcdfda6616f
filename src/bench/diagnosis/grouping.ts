/** Explanations that these readings cannot tell apart, found by what they predict. */
import type { Signature } from "./judged.ts";
import { forwardInPlace, squared } from "./linear.ts";
import { floats } from "./room.ts";

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

/** Groups as they fill: each item joins the first, more probable one that it cannot be told from. */
export class Grouping<T> {
  readonly #leaders: (Signature | null)[] = [];
  readonly groups: T[][] = [];
  #difference = floats(0);

  /** Puts an item in its group; what has no signature stays alone. */
  add(item: T, own: Signature | null): void {
    const home = own === null ? -1 : this.#homeOf(own);
    if (home >= 0) {
      (this.groups[home] as T[]).push(item);
      return;
    }
    this.#leaders.push(own);
    this.groups.push([item]);
  }

  #homeOf(own: Signature): number {
    for (let k = 0; k < this.#leaders.length; k += 1) {
      const leader = this.#leaders[k] as Signature | null;
      if (leader !== null && alike(leader, own) && this.#apart(leader, own) < APART) return k;
    }
    return -1;
  }

  /** Distance between two predictions in standard deviations of the first one's readings. */
  #apart({ active, factor, mean }: Signature, other: Signature): number {
    const m = active.length;
    if (this.#difference.length < m) this.#difference = floats(m);
    const difference = this.#difference;
    for (let i = 0; i < m; i += 1) {
      const r = active[i] as number;
      difference[i] = (mean[r] as number) - (other.mean[r] as number);
    }
    forwardInPlace(factor, m, difference);
    return Math.sqrt(squared(difference, m));
  }
}

/** Explanations that these readings cannot tell apart, found by what they predict. */

import { forwardInPlace, squared } from "../numbers/linear.ts";
import { floats } from "../numbers/room.ts";
import type { Signature } from "./judged.ts";

/**
 * Two explanations are one group when their mean predictions lie within this many standard deviations of the readings'
 * covariance: even readings without any error would then shift the odds by less than 5 %.
 */
const APART = 0.3;

/** Distance between two predictions in standard deviations of the first one's readings; Infinity for other patterns. */
function apart(first: Signature, second: Signature): number {
  if (first.pattern !== second.pattern) return Number.POSITIVE_INFINITY;
  const m = first.active.length;
  const difference = floats(m);
  for (let i = 0; i < m; i += 1) {
    const r = first.active[i] as number;
    difference[i] = (first.mean[r] as number) - (second.mean[r] as number);
  }
  forwardInPlace(first.factor, m, difference);
  return Math.sqrt(squared(difference, m));
}

/** Puts each item with the first, more probable one that it cannot be told from. */
export function grouped<T>(
  items: readonly T[],
  signature: (item: T) => Signature | null,
): readonly (readonly T[])[] {
  const groups: { readonly leader: Signature | null; readonly members: T[] }[] = [];
  for (const item of items) {
    const own = signature(item);
    const home =
      own === null ? undefined : groups.find(({ leader }) => leader !== null && apart(leader, own) < APART);
    if (home === undefined) groups.push({ leader: own, members: [item] });
    else home.members.push(item);
  }
  return groups.map(({ members }) => members);
}

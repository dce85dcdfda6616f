/** The names a finding goes by: how likely they are beforehand, all together, and the list of them only when someone asks. */

import type { Member } from "../faults/atom.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import type { FaultEstimate } from "../question/types.ts";

/** A fault that cannot be seen, its prior odds, and what is known of its parameters all the same: their prior. */
export interface Unseen {
  readonly fault: DiagnosedFault;
  readonly logOdds: number;
  readonly estimates: readonly Omit<FaultEstimate, "fault">[];
}

/** One explanation under each of its names. */
export interface Named {
  readonly faults: readonly DiagnosedFault[];
  readonly logOdds: number;
  /** The last of its faults, where no reading can show them. */
  readonly unseen?: readonly Unseen[];
}

/** All names of one finding. Thousands of findings are weighed and a few told of, so the list is made when asked for. */
export interface Names {
  /** Faults in each. */
  readonly faults: number;
  /** Whether these, if several, are one cause: they are then no reason to doubt it. */
  readonly oneCause?: boolean;
  /** ln of the sum of their prior odds. */
  readonly logOdds: number;
  readonly list: () => readonly Named[];
}

/** A single name. */
export function oneName(faults: readonly DiagnosedFault[], logOdds: number): Names {
  return { faults: faults.length, logOdds, list: () => [{ faults, logOdds }] };
}

/** The module without any fault. */
export const NO_FAULT: Names = oneName([], 0);

/** ln of the sum of the odds of some places. */
export function logOddsOf(members: readonly Member[]): number {
  let sum = 0;
  for (const { odds } of members) sum += odds;
  return Math.log(sum);
}

/** Each name with each place of a further fault. */
export function namesBeside(before: Names, members: readonly Member[]): Names {
  return {
    faults: before.faults + 1,
    logOdds: before.logOdds + logOddsOf(members),
    list: () => {
      const list: Named[] = [];
      for (const { faults, logOdds } of before.list()) {
        for (const { fault, odds } of members)
          list.push({ faults: [...faults, fault], logOdds: logOdds + Math.log(odds) });
      }
      return list;
    },
  };
}

/** Pairs of places, each a name. */
export function pairedNames(pairs: readonly (readonly [Member, Member])[]): Names {
  let sum = 0;
  for (const [a, b] of pairs) sum += a.odds * b.odds;
  return {
    faults: 2,
    logOdds: Math.log(sum),
    list: () =>
      pairs.map(([a, b]) => ({ faults: [a.fault, b.fault], logOdds: Math.log(a.odds) + Math.log(b.odds) })),
  };
}

/** Names with as many faults each, put together. */
export function allNames(first: Names, others: readonly Names[]): Names {
  if (others.length === 0) return first;
  let sum = 1;
  for (const { logOdds } of others) sum += Math.exp(logOdds - first.logOdds);
  return {
    faults: first.faults,
    logOdds: first.logOdds + Math.log(sum),
    list: () => {
      const list = [...first.list()];
      for (const other of others) for (const one of other.list()) list.push(one);
      return list;
    },
  };
}

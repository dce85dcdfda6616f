/** Branches that nothing but their names tells apart: what a fault does to one it does to each. */
import type { IndexedNetwork } from "./indexed.ts";
import type { Branch } from "./network.ts";

/** The branches of a network in groups of twins: same ends in the same direction, same resistance, same role. */
export interface Twins {
  /** Group of each branch. */
  readonly groupOf: readonly number[];
  /** Branches of each group, in the network's order. */
  readonly members: readonly (readonly number[])[];
}

/** Groups the given branches; `indexed` may hold source resistances behind them. */
export function twinsOf(branches: readonly Branch[], indexed: IndexedNetwork): Twins {
  const groupOf: number[] = [];
  const members: number[][] = [];
  const byEnds = new Map<number, number[]>();
  const same = (a: Branch, b: Branch): boolean =>
    a.resistance === b.resistance && (a.role ?? "element") === (b.role ?? "element");
  for (let i = 0; i < branches.length; i += 1) {
    const branch = branches[i] as Branch;
    const ends = (indexed.from[i] as number) * indexed.nodes.length + (indexed.to[i] as number);
    const known = byEnds.get(ends);
    const found = known?.find((group) => same(branches[members[group]?.[0] as number] as Branch, branch));
    const group = found ?? members.length;
    if (found === undefined) {
      members.push([]);
      if (known === undefined) byEnds.set(ends, [group]);
      else known.push(group);
    }
    groupOf.push(group);
    (members[group] as number[]).push(i);
  }
  return { groupOf, members };
}

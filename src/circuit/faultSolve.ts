/**
 * Solves the faulted network without factoring it again: opening or bolting a branch is a rank-one change of the
 * nodal equations, so its effect follows from one extra solve per faulted branch.
 */

import { zeros } from "./lists.ts";
import type { Network } from "./network.ts";
import { refinedPotentials } from "./refined.ts";
import {
  branchCurrents,
  type Energisable,
  lineCurrents,
  type Parts,
  type Solution,
  setUp,
  solve,
  timesConductance,
} from "./solve.ts";
import type { Supply } from "./supply.ts";

/** Voltages and currents of all branches under a fault. */
export interface FaultedState {
  readonly across: Parts;
  readonly currents: Parts;
  /** Line currents, in the supply's order. */
  readonly lines: Parts;
  /** Branches whose gap voltage nothing determines. */
  readonly floating: (branch: number) => boolean;
}

/** A branch change: opened, or bolted to 0 Ω. */
export interface BranchChange {
  readonly branch: number;
  readonly kind: "open" | "short";
}

/** Where the changes leave less than this of their pivots they nearly cut the network in two, and the update would lose its digits. */
const BRIDGE_LIMIT = 1e-6;

/** The healthy network with everything the updates reuse. */
export interface FaultBase {
  readonly set: Energisable;
  readonly solution: Solution;
  /** For each branch asked for so far: what one ampere circulated through it does to all branch voltages. */
  readonly responses: Map<number, readonly number[]>;
}

/** Sets the healthy network up once for any number of faults. */
export function faultBase(network: Network, supply: Supply): FaultBase {
  const set = setUp(network, supply);
  return { set, solution: solve(set), responses: new Map() };
}

/** Voltages across all branches when 1 A enters at the branch's `from` end and leaves at its `to` end, sources at 0 V. */
function response(base: FaultBase, branch: number): readonly number[] {
  const known = base.responses.get(branch);
  if (known !== undefined) return known;
  const { factor, ends, held, indexed } = base.set;
  const injected = zeros(factor.nodeCount);
  injected[ends.from[branch] as number] = 1;
  injected[ends.to[branch] as number] = -1;
  for (const node of held) if (node >= 0) injected[node] = 0;
  const potential = zeros(factor.nodeCount);
  const { conductance } = indexed;
  const { across } = refinedPotentials({ factor, ends, conductance, held, potential, injected });
  base.responses.set(branch, across);
  return across;
}

/**
 * Currents i_j that the changes add through their branches. For an opened branch i = −g·V′, for a bolted one V′ = 0,
 * with V′_j = V_j − Σ S_jk·i_k and S_jk the response of branch j to branch k.
 */
function addedCurrents(
  base: FaultBase,
  changes: readonly BranchChange[],
): readonly (readonly [number, number])[] | null {
  const { conductance } = base.set.indexed;
  const { re, im } = base.solution.across;
  const rows = changes.map(({ branch, kind }) => {
    const g = kind === "open" ? (conductance[branch] as number) : 1;
    const scale = kind === "open" ? -g : 1;
    const s = changes.map((other) => (response(base, other.branch)[branch] as number) * scale);
    return { s, re: (re[branch] as number) * scale, im: (im[branch] as number) * scale };
  });
  rows.forEach((row, j) => {
    if (changes[j]?.kind === "open") row.s[j] = 1 + (row.s[j] as number);
  });
  return solveSmall(rows, changes);
}

interface SmallRow {
  readonly s: number[];
  readonly re: number;
  readonly im: number;
}

/** One or two changes in closed form; null when a pivot says that the network is all but cut, or the supply bolted. */
function solveSmall(
  rows: readonly SmallRow[],
  changes: readonly BranchChange[],
): readonly (readonly [number, number])[] | null {
  const [first, second] = rows as [SmallRow, SmallRow | undefined];
  const a = first.s[0] as number;
  // An open that leaves little of its pivot takes digits, and a second change takes them from what the first left.
  const kept = changes[0]?.kind === "open" ? a : 1;
  if (!(a > 0 && kept > BRIDGE_LIMIT)) return null;
  if (second === undefined) return [[first.re / a, first.im / a]];
  const below = (second.s[0] as number) / a;
  const pivot = (second.s[1] as number) - below * (first.s[1] as number);
  const scale = Math.abs(second.s[1] as number);
  const keptOfSecond = Math.min(pivot / scale, changes[1]?.kind === "open" ? pivot : 1);
  if (!(pivot > 0 && kept * keptOfSecond > BRIDGE_LIMIT)) return null;
  const i2 = [(second.re - below * first.re) / pivot, (second.im - below * first.im) / pivot] as const;
  const b = first.s[1] as number;
  return [[(first.re - b * i2[0]) / a, (first.im - b * i2[1]) / a], i2];
}

/** State of a network solved afresh. */
export function solvedState(set: Energisable, solution: Solution): FaultedState {
  const currents = branchCurrents(set, solution.across);
  return {
    across: solution.across,
    currents,
    lines: lineCurrents(set, currents),
    floating: (branch) => floatsIn(set, branch),
  };
}

/** Whether nothing ties an end of the branch to the supply. */
function floatsIn({ factor, indexed }: Energisable, branch: number): boolean {
  const loose = (node: number): boolean => factor.floating[indexed.merged[node] as number] === 1;
  return loose(indexed.from[branch] as number) || loose(indexed.to[branch] as number);
}

/** State under the changes by updating the healthy solution, or null where that is not sound and a fresh solve is. */
export function updatedState(base: FaultBase, changes: readonly BranchChange[]): FaultedState | null {
  const { set, solution } = base;
  const { conductance, links, network } = set.indexed;
  // Ideal links are merged away in the healthy network, and a branch already open has nothing to update.
  if (links.length > 0 || changes.length > 2) return null;
  if (changes.some(({ branch }) => network.branches[branch]?.resistance === "open")) return null;
  const added = addedCurrents(base, changes);
  if (added === null) return null;
  const across = { re: solution.across.re.slice(), im: solution.across.im.slice() };
  changes.forEach(({ branch }, j) => {
    const [re, im] = added[j] as readonly [number, number];
    const effect = response(base, branch);
    for (let e = 0; e < effect.length; e += 1) {
      across.re[e] = (across.re[e] as number) - (effect[e] as number) * re;
      across.im[e] = (across.im[e] as number) - (effect[e] as number) * im;
    }
  });
  const currents = {
    re: timesConductance(across.re, conductance),
    im: timesConductance(across.im, conductance),
  };
  changes.forEach(({ branch, kind }, j) => {
    const bolted = kind === "short";
    currents.re[branch] = bolted ? (added[j]?.[0] as number) : 0;
    currents.im[branch] = bolted ? (added[j]?.[1] as number) : 0;
    if (bolted) {
      across.re[branch] = 0;
      across.im[branch] = 0;
    }
  });
  // A change that is sound as an update cuts nothing off, and what floats in the healthy network still does.
  return {
    across,
    currents,
    lines: lineCurrents(set, currents),
    floating: (branch) => floatsIn(set, branch),
  };
}

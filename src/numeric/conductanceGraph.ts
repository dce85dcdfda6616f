/**
 * Direct solution of a graph of conductances by eliminating one node after the other.
 *
 * Eliminating a node is the star-mesh transform: every pair of its neighbours i, j gains g_i·g_j/Σg. That is
 * sparse LDLᵀ factorisation of the graph Laplacian, except that the pivot is taken as the sum of what is left
 * at the node instead of by subtracting from a diagonal. Nothing is ever subtracted, so a 100 µΩ joint beside a
 * 10 MΩ insulation path loses no digits, and a node without a path to a fixed one shows as a pivot of exactly 0.
 */
import { checkNonNegative, checkWhole, fail } from "../quantity/index.ts";
import { DegreeQueue, filled, Remainder } from "./remainder.ts";

/**
 * A graph of conductances between numbered nodes, some of which are held at given potentials.
 * @since 0.1.0
 */
export interface ConductanceGraph {
  /** Number of nodes; they are numbered from 0. */
  readonly nodeCount: number;
  /** First end of each edge. */
  readonly from: ArrayLike<number>;
  /** Second end of each edge. */
  readonly to: ArrayLike<number>;
  /** Conductance of each edge, 0 or more; 0 is an open edge. */
  readonly conductance: ArrayLike<number>;
  /** 1 for each node whose potential is given, 0 for the others. */
  readonly fixed: ArrayLike<number>;
}

/**
 * What elimination leaves: enough to solve for any fixed potentials and injected currents.
 * @since 0.1.0
 */
export interface ConductanceFactor {
  /** Number of nodes. */
  readonly nodeCount: number;
  /** Free nodes in the order they were eliminated. */
  readonly order: readonly number[];
  /** Sum of conductances at each eliminated node when its turn came, by position in `order`; 0 if none. */
  readonly pivot: readonly number[];
  /** Where each eliminated node's row begins in `neighbour` and `share`; one longer than `order`. */
  readonly rowStart: readonly number[];
  /** Neighbours at elimination. */
  readonly neighbour: readonly number[];
  /** Conductance to that neighbour over the pivot: the part of a current that goes there. */
  readonly share: readonly number[];
  /** 1 for each node without a path to any fixed node. */
  readonly floating: readonly number[];
}

/** Largest number of nodes and largest conductance taken: sums of this many conductances stay within float64. */
const LARGEST_COUNT = 1e7;
const LARGEST_CONDUCTANCE = 1e290;

function checkGraph(graph: ConductanceGraph): void {
  const { nodeCount, from, to, conductance, fixed } = graph ?? {};
  checkWhole("nodeCount", nodeCount, 0, LARGEST_COUNT);
  const edges = from?.length;
  if (to?.length !== edges || conductance?.length !== edges || fixed?.length !== nodeCount) {
    fail({
      code: from && to && conductance && fixed ? "inconsistent" : "missing",
      path: "from",
      expected: "from, to and conductance of one length, and fixed as long as there are nodes",
      received: `${edges}, ${to?.length}, ${conductance?.length} and ${fixed?.length}`,
    });
  }
}

/** A node of the graph: everything else would be dropped or read past the end. */
function checkNode(path: string, edge: number, node: number, nodeCount: number): void {
  if (!(node >= 0 && node < nodeCount && node % 1 === 0))
    checkWhole(`${path}.${edge}`, node, 0, nodeCount - 1);
}

function wholeGraph(graph: ConductanceGraph): Remainder {
  const { nodeCount, from, to, conductance, fixed } = graph;
  const left = new Remainder(nodeCount);
  for (let edge = 0; edge < from.length; edge += 1) {
    const g = conductance[edge] as number;
    const a = from[edge] as number;
    const b = to[edge] as number;
    checkNode("from", edge, a, nodeCount);
    checkNode("to", edge, b, nodeCount);
    if (!(g >= 0 && g <= LARGEST_CONDUCTANCE)) {
      checkNonNegative(`conductance.${edge}`, g);
      fail({ code: "out-of-range", path: `conductance.${edge}`, expected: "at most 1e290", received: g });
    }
    if (g === 0 || a === b) continue;
    if (fixed[a] !== 1) left.put(a, b, g);
    if (fixed[b] !== 1) left.put(b, a, g);
  }
  return left;
}

/**
 * Eliminates the free nodes of a graph of conductances, fewest neighbours first.
 * @param graph - nodes, edges and which nodes are fixed
 * @returns the factor, for {@link solveConductances}
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source star-mesh transform: A. Rosen, A new network theorem, Journal of the IEE 62 (1924) 916; minimum-degree
 *   order: W. F. Tinney and J. W. Walker, Proceedings of the IEEE 55 (1967) 1801
 * @example
 * ```ts
 * factorConductances({ nodeCount: 2, from: [0], to: [1], conductance: [0.5], fixed: [1, 0] }).pivot[0] // => 0.5
 * ```
 * @since 0.1.0
 */
export function factorConductances(graph: ConductanceGraph): ConductanceFactor {
  checkGraph(graph);
  const { nodeCount, fixed } = graph;
  const left = wholeGraph(graph);
  const { first, next, other, conductance, degree } = left;
  const queue = new DegreeQueue();
  let freeCount = 0;
  for (let node = 0; node < nodeCount; node += 1) {
    if (fixed[node] === 1) continue;
    freeCount += 1;
    queue.put(node, degree[node] as number);
  }
  const order: number[] = [];
  const pivot: number[] = [];
  const rowStart = [0];
  const neighbour: number[] = [];
  const share: number[] = [];

  for (let step = 0; step < freeCount; step += 1) {
    const node = queue.take(degree);
    const start = neighbour.length;
    let sum = 0;
    left.merge(node);
    for (let entry = first[node] as number; entry >= 0; entry = next[entry] as number) {
      const g = conductance[entry] as number;
      sum += g;
      neighbour.push(other[entry] as number);
      share.push(g);
    }
    left.remove(node);
    order.push(node);
    pivot.push(sum);
    rowStart.push(neighbour.length);
    for (let i = start; i < neighbour.length; i += 1) {
      const a = neighbour[i] as number;
      const g = share[i] as number;
      share[i] = g / sum;
      // The edges to the neighbours before it: theirs are shares already, its own is still a conductance.
      for (let j = start; j < i; j += 1) {
        const b = neighbour[j] as number;
        const between = g * (share[j] as number);
        if (between === 0) continue;
        if (fixed[a] !== 1) left.put(a, b, between);
        if (fixed[b] !== 1) left.put(b, a, between);
      }
    }
    for (let i = start; i < neighbour.length; i += 1) {
      const at = neighbour[i] as number;
      if (fixed[at] === 1) continue;
      left.lost(at);
      queue.put(at, degree[at] as number);
    }
  }
  const floating = filled(nodeCount, 0);
  for (let step = freeCount - 1; step >= 0; step -= 1) {
    const start = rowStart[step] as number;
    const alone = start === rowStart[step + 1];
    floating[order[step] as number] = alone ? 1 : (floating[neighbour[start] as number] as number);
  }
  return { nodeCount, order, pivot, rowStart, neighbour, share, floating };
}

/**
 * Potentials of all nodes for given fixed potentials and injected currents.
 * Floating nodes are left at 0: ask `factor.floating` before using them.
 * @param input.factor - from {@link factorConductances}
 * @param input.potential - length nodeCount; holds the fixed potentials on entry and all potentials on return
 * @param input.injected - length nodeCount; current entering each node; overwritten. Left out: none
 * @returns `input.potential`, filled in
 * @throws ElectroheatError `inconsistent` for lists of another length; `out-of-range` when a current over the conductance
 *   at its node goes beyond float64, or what was given is not finite
 * @example
 * ```ts
 * const factor = factorConductances({ nodeCount: 3, from: [0, 1], to: [1, 2], conductance: [1, 3], fixed: [1, 0, 1] });
 * solveConductances({ factor, potential: [8, 0, 0] })[1] // => 2
 * ```
 * @since 0.1.0
 */
export function solveConductances<P extends number[] | Float64Array>(input: {
  readonly factor: ConductanceFactor;
  readonly potential: P;
  readonly injected?: number[] | Float64Array;
}): P {
  const { order, pivot, rowStart, neighbour, share } = input.factor;
  const { potential, injected } = input;
  const { nodeCount } = input.factor;
  if (potential?.length !== nodeCount || (injected !== undefined && injected.length !== nodeCount)) {
    fail({
      code: "inconsistent",
      path: potential?.length === nodeCount ? "injected" : "potential",
      expected: `one number for each of ${nodeCount} nodes`,
      received: potential?.length === nodeCount ? injected?.length : potential?.length,
    });
  }
  if (injected !== undefined) {
    for (let step = 0; step < order.length; step += 1) {
      const current = injected[order[step] as number] as number;
      if (current === 0) continue;
      const end = rowStart[step + 1] as number;
      for (let k = rowStart[step] as number; k < end; k += 1) {
        const at = neighbour[k] as number;
        injected[at] = (injected[at] as number) + current * (share[k] as number);
      }
    }
  }
  for (let step = order.length - 1; step >= 0; step -= 1) {
    const node = order[step] as number;
    const sum = pivot[step] as number;
    let value = 0;
    if (sum > 0) {
      if (injected !== undefined) value = (injected[node] as number) / sum + 0;
      const end = rowStart[step + 1] as number;
      for (let k = rowStart[step] as number; k < end; k += 1) {
        value += (share[k] as number) * (potential[neighbour[k] as number] as number);
      }
    }
    if (value - value !== 0) {
      fail({
        code: "out-of-range",
        path: "potential",
        expected: "potentials and currents whose solution float64 can hold",
        received: value,
      });
    }
    potential[node] = value;
  }
  return potential;
}

/** What a network answers to each volt held at a node and each ampere sent into one: the raw material of inference. */
import { solveConductances } from "../numeric/index.ts";
import { given, type Ohms } from "../quantity/index.ts";
import { factorNetwork, indexNetwork } from "./indexed.ts";
import { zeros } from "./lists.ts";
import type { Network } from "./network.ts";

/**
 * Responses of a network to unit sources, all of which any reading on it is made of.
 * @since 0.1.0
 */
export interface NetworkResponses {
  /** Node names, the held ones first; the lists below keep this order. */
  readonly nodes: readonly string[];
  /** For each node, the number of the connected part it lies in: nodes of different parts have no path between them. */
  readonly part: readonly number[];
  /** For each node given in `held`: potential of every node with 1 V there and 0 V at the other held nodes. */
  readonly transfer: readonly (readonly number[])[];
  /** `impedance[i][j]`: potential of node i when 1 A enters at node j and leaves through the held nodes, Ω. */
  readonly impedance: readonly (readonly Ohms[])[];
}

/** Connected parts through branches that conduct; the numbers are those of the parts' first nodes. */
function partsOf(network: Network, nodeNumber: ReadonlyMap<string, number>, count: number): number[] {
  const part = Array.from({ length: count }, (_, node) => node);
  const find = (node: number): number => {
    let at = node;
    while (part[at] !== at) at = part[at] as number;
    return at;
  };
  for (const { from, to, resistance } of network.branches) {
    if (resistance === "open") continue;
    const a = find(nodeNumber.get(from) as number);
    const b = find(nodeNumber.get(to) as number);
    part[Math.max(a, b)] = Math.min(a, b);
  }
  return part.map((_, node) => find(node));
}

/**
 * Responses of a network to unit sources, from one factorisation.
 *
 * With V the potentials held at some nodes and J the currents entering at the others, every potential is
 * Σ transfer·V + Σ impedance·J. The resistance that an ohmmeter reads between a and b of a dead network is
 * Z_aa + Z_bb − 2·Z_ab. In a part without a held node the first node is held at 0 V, so that a dead network needs none.
 * @param input.network - branches between named nodes
 * @param input.held - nodes whose potential is given, such as the supply lines; none if left out. Nodes that no branch
 *   names are taken in all the same
 * @returns potentials for unit voltages and unit currents
 * @throws ElectroheatError as for the network
 * @source Kirchhoff's laws (nodal analysis)
 * @example
 * ```ts
 * const network: Network = { branches: [
 *   { id: "R1", from: "a", to: "b", resistance: ohms(6) }, { id: "R2", from: "b", to: "c", resistance: ohms(3) },
 * ] };
 * networkResponses({ network, held: ["a", "c"] }).impedance[2] // => [0, 0, 2]
 * ```
 * @since 0.1.0
 */
export function networkResponses(input: {
  readonly network: Network;
  readonly held?: readonly string[];
}): NetworkResponses {
  const { network, held = [] } = given(input);
  const indexed = indexNetwork(network, held);
  const { nodes, nodeNumber, merged } = indexed;
  const count = nodes.length;
  const part = partsOf(network, nodeNumber, count);
  const wanted = held.map((name) => merged[nodeNumber.get(name) as number] as number);
  const fixed = new Set(wanted);
  const anchored = new Set(held.map((name) => part[nodeNumber.get(name) as number] as number));
  part.forEach((number, node) => {
    if (number === node && !anchored.has(number)) fixed.add(merged[node] as number);
  });
  const { factor } = factorNetwork(indexed, [...fixed]);
  const spread = (potential: readonly number[]): number[] =>
    Array.from({ length: count }, (_, node) => potential[merged[node] as number] as number);
  const transfer = wanted.map((node) => {
    const potential = zeros(count);
    potential[node] = 1;
    return spread(solveConductances({ factor, potential }));
  });
  const known = new Map<number, number[]>();
  const impedance = nodes.map((_, j) => {
    const at = merged[j] as number;
    if (fixed.has(at)) return zeros(count);
    const before = known.get(at);
    if (before !== undefined) return before;
    const injected = zeros(count);
    injected[at] = 1;
    const column = spread(solveConductances({ factor, potential: zeros(count), injected }));
    known.set(at, column);
    return column;
  });
  // The matrix is symmetric (reciprocity), so its columns are its rows.
  return { nodes, part, transfer, impedance: impedance as unknown as readonly Ohms[][] };
}

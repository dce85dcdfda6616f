/**
 * A network in numbers, made once and used by every solve: nodes numbered, resistances turned into
 * conductances, ideal links merged away.
 */
import { type ConductanceFactor, factorConductances } from "../numeric/index.ts";
import { fail, type Ohms, type Open } from "../quantity/index.ts";
import { counting, zeros } from "./lists.ts";
import { checkNetwork, type Network } from "./network.ts";

/**
 * A network with numbered nodes.
 */
export interface IndexedNetwork {
  readonly network: Network;
  /** Node names by number. */
  readonly nodes: readonly string[];
  /** Node numbers by name. */
  readonly nodeNumber: ReadonlyMap<string, number>;
  /** Node numbers of the branch ends. */
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** Conductance of each branch; 0 for an open branch and for an ideal link. */
  readonly conductance: readonly number[];
  /** Positions of the ideal links (0 Ω). */
  readonly links: readonly number[];
  /** For each node, the node that stands for all those it is linked to at 0 Ω. */
  readonly merged: readonly number[];
}

/** Union-find with path halving: which nodes are tied together. */
class Ties {
  private readonly parent: number[];

  constructor(count: number) {
    this.parent = counting(count);
  }

  find(node: number): number {
    const parent = this.parent;
    let at = node;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  }

  tie(a: number, b: number): void {
    const rootA = this.find(a);
    const rootB = this.find(b);
    // The lower number stands for both, so that results do not depend on the order of the branches.
    if (rootA < rootB) this.parent[rootB] = rootA;
    else this.parent[rootA] = rootB;
  }
}

/** Conductance used in the solve: none for an open branch, none for a link (its ends are merged instead). */
function conductanceOf(resistance: Ohms | Open): number {
  return resistance === "open" || resistance === 0 ? 0 : 1 / resistance;
}

/**
 * Numbers the nodes of a network and checks it.
 * @param network - the network
 * @param extraNodes - nodes that must have a number even if no branch names them, such as supply lines
 * @returns the indexed network
 * @throws ElectroheatError as checkNetwork
 */
export function indexNetwork(network: Network, extraNodes: readonly string[] = []): IndexedNetwork {
  checkNetwork(network);
  const { branches } = network;
  const nodes: string[] = [];
  const nodeNumber = new Map<string, number>();
  const numberOf = (name: string): number => {
    let number = nodeNumber.get(name);
    if (number === undefined) {
      number = nodes.length;
      nodes.push(name);
      nodeNumber.set(name, number);
    }
    return number;
  };
  for (const name of extraNodes) numberOf(name);
  const from: number[] = [];
  const to: number[] = [];
  const conductance: number[] = [];
  const links: number[] = [];
  for (let i = 0; i < branches.length; i += 1) {
    const branch = branches[i] as Network["branches"][number];
    // Branches in parallel or of one star stand together: they share an end with the one before.
    const before = branches[i - 1];
    from.push(branch.from === before?.from ? (from[i - 1] as number) : numberOf(branch.from));
    to.push(branch.to === before?.to ? (to[i - 1] as number) : numberOf(branch.to));
    conductance.push(conductanceOf(branch.resistance));
    if (branch.resistance === 0) links.push(i);
  }
  const merged = counting(nodes.length);
  if (links.length > 0) {
    const ties = new Ties(nodes.length);
    for (const link of links) ties.tie(from[link] as number, to[link] as number);
    for (let node = 0; node < nodes.length; node += 1) merged[node] = ties.find(node);
  }
  return { network, nodes, nodeNumber, from, to, conductance, links, merged };
}

/** Branch ends after merging ideal links: what the solver sees. */
export interface MergedEnds {
  readonly from: readonly number[];
  readonly to: readonly number[];
}

function mergedEnds(indexed: IndexedNetwork): MergedEnds {
  if (indexed.links.length === 0) return { from: indexed.from, to: indexed.to };
  const through = (ends: readonly number[]): number[] => ends.map((node) => indexed.merged[node] as number);
  return { from: through(indexed.from), to: through(indexed.to) };
}

/** Eliminates the nodes that nothing holds; `held` names the merged nodes of given potential, −1 for none. */
export function factorNetwork(
  indexed: IndexedNetwork,
  held: readonly number[],
): { readonly ends: MergedEnds; readonly factor: ConductanceFactor } {
  const fixed = zeros(indexed.nodes.length);
  for (let i = 0; i < held.length; i += 1) {
    if ((held[i] as number) >= 0) fixed[held[i] as number] = 1;
  }
  const ends = mergedEnds(indexed);
  const { from, to } = ends;
  const { conductance, nodes } = indexed;
  return { ends, factor: factorConductances({ nodeCount: nodes.length, from, to, conductance, fixed }) };
}

/**
 * Refuses a network with a part that no branch, open or closed, ties to the supply: that is a slip in the drawing
 * of the module, not a fault of it. A part cut off by open branches alone is a legal state.
 */
export function refuseUnattached(indexed: IndexedNetwork, anchors: readonly number[]): void {
  const ties = new Ties(indexed.nodes.length);
  const { from, to } = indexed;
  for (let i = 0; i < from.length; i += 1) ties.tie(from[i] as number, to[i] as number);
  const attached = zeros(indexed.nodes.length);
  for (let i = 0; i < anchors.length; i += 1) attached[ties.find(anchors[i] as number)] = 1;
  const loose: string[] = [];
  for (let node = 0; node < attached.length; node += 1) {
    if (attached[ties.find(node)] === 0) loose.push(indexed.nodes[node] as string);
  }
  if (loose.length === 0) return;
  fail({
    code: "floating",
    path: "network",
    expected: `every node tied to one of ${anchors.map((node) => indexed.nodes[node]).join(", ")} by some branch`,
    received: `nodes ${loose.slice(0, 12).join(", ")}${loose.length > 12 ? ", …" : ""} tied to none`,
  });
}

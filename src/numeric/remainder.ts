/** What is left of a graph of conductances while its nodes are eliminated one after the other. */

/** So many times the same number. Lists, not typed arrays: those above 64 bytes take an engine ten times as long to make. */
export function filled(count: number, value: number): number[] {
  const list = new Array<number>(count);
  for (let i = 0; i < count; i += 1) list[i] = value;
  return list;
}

/**
 * The edges that are left, each at those of its ends that are to be eliminated. The edges of a node are a chain through a few
 * flat lists: a list or a map for each node costs more than what is done with it.
 */
export class Remainder {
  /** Newest entry of each node; −1 for none. */
  readonly first: number[];
  /** For each entry the one before it in its chain; −1 for none. */
  readonly next: number[] = [];
  /** For each entry the node at the other end. */
  readonly other: number[] = [];
  readonly conductance: number[] = [];
  /** Edges at each node, parallel ones counted singly until they are merged; −1 for a node that is gone. */
  readonly degree: number[];
  /** Edges put at each node since its parallel ones were merged. */
  private readonly fresh: number[];
  /** For each node its entry in the chain that is being merged; −1 outside of it. */
  private readonly mark: number[];

  /** Newest of the entries that were dropped and may be taken again; −1 for none. */
  private unused = -1;

  constructor(nodeCount: number) {
    this.first = filled(nodeCount, -1);
    this.degree = filled(nodeCount, 0);
    this.fresh = filled(nodeCount, 0);
    this.mark = filled(nodeCount, -1);
  }

  put(node: number, other: number, g: number): void {
    let entry = this.unused;
    if (entry < 0) entry = this.other.length;
    else this.unused = this.next[entry] as number;
    this.next[entry] = this.first[node] as number;
    this.other[entry] = other;
    this.conductance[entry] = g;
    this.first[node] = entry;
    this.degree[node] = (this.degree[node] as number) + 1;
    this.fresh[node] = (this.fresh[node] as number) + 1;
  }

  /** Merges parallel edges and drops those to nodes that are gone. */
  merge(node: number): void {
    const { first, next, other, conductance, degree, mark } = this;
    let last = -1;
    let kept = 0;
    let after = -1;
    for (let entry = first[node] as number; entry >= 0; entry = after) {
      after = next[entry] as number;
      const at = other[entry] as number;
      const known = mark[at] as number;
      if (known >= 0) conductance[known] = (conductance[known] as number) + (conductance[entry] as number);
      if (known >= 0 || (degree[at] as number) < 0) {
        next[entry] = this.unused;
        this.unused = entry;
        continue;
      }
      mark[at] = entry;
      if (last < 0) first[node] = entry;
      else next[last] = entry;
      last = entry;
      kept += 1;
    }
    if (last < 0) first[node] = -1;
    else next[last] = -1;
    for (let entry = first[node] as number; entry >= 0; entry = next[entry] as number)
      mark[other[entry] as number] = -1;
    degree[node] = kept;
    this.fresh[node] = 0;
  }

  /** The node is gone: it takes its chain with it, and what its neighbours hold of it is passed over. */
  remove(node: number): void {
    const { first, next } = this;
    this.degree[node] = -1;
    let last = first[node] as number;
    if (last < 0) return;
    while ((next[last] as number) >= 0) last = next[last] as number;
    next[last] = this.unused;
    this.unused = first[node] as number;
  }

  /**
   * Takes note that a neighbour of the node is gone and has left edges in its place. They are merged when they are half of all:
   * each time, a bar with a thousand branches would be gone through once for each of them.
   */
  lost(node: number): void {
    this.degree[node] = (this.degree[node] as number) - 1;
    if (2 * (this.fresh[node] as number) >= (this.degree[node] as number)) this.merge(node);
  }
}

/** Nodes by number of edges, fewest first; entries that are out of date are passed over when they come up. */
export class DegreeQueue {
  private readonly first: number[] = [];
  private readonly next: number[] = [];
  private readonly node: number[] = [];
  private lowest = 0;

  put(node: number, degree: number): void {
    while (this.first.length <= degree) this.first.push(-1);
    this.next.push(this.first[degree] as number);
    this.first[degree] = this.node.length;
    this.node.push(node);
    this.lowest = Math.min(this.lowest, degree);
  }

  /** The next node; there must be one left. */
  take(degree: readonly number[]): number {
    for (;;) {
      const entry = this.first[this.lowest] as number;
      if (entry < 0) {
        this.lowest += 1;
        continue;
      }
      this.first[this.lowest] = this.next[entry] as number;
      const node = this.node[entry] as number;
      if (degree[node] === this.lowest) return node;
    }
  }
}

/**
 * Nodal solve of the simulated bench: node-admittance matrix stamped here, LU of a general-purpose matrix library
 * (ml-matrix). Resistive networks have a real matrix, so phasors go as two right-hand sides. Shares nothing with the
 * library's own solver, on purpose.
 */
import { LuDecomposition, Matrix } from "ml-matrix";

export interface Edge {
  readonly from: string;
  readonly to: string;
  /** Ω, more than 0; a broken path is left out. */
  readonly ohms: number;
}

export interface Phasor {
  readonly re: number;
  readonly im: number;
}

/** Nodes that edges tie to any of the starting nodes. */
export function reached(edges: readonly Edge[], starts: Iterable<string>): Set<string> {
  const neighbours = new Map<string, string[]>();
  const join = (a: string, b: string): void => {
    const list = neighbours.get(a);
    if (list) list.push(b);
    else neighbours.set(a, [b]);
  };
  for (const { from, to } of edges) {
    join(from, to);
    join(to, from);
  }
  const found = new Set(starts);
  const waiting = [...found];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const next of neighbours.get(node) ?? []) {
      if (found.has(next)) continue;
      found.add(next);
      waiting.push(next);
    }
  }
  return found;
}

/**
 * Potentials of all nodes tied to a fixed one; `into` are currents put in at nodes. Floating nodes are absent.
 */
export function potentials(
  edges: readonly Edge[],
  fixed: ReadonlyMap<string, Phasor>,
  into: ReadonlyMap<string, Phasor> = new Map(),
): Map<string, Phasor> {
  const tied = reached(edges, fixed.keys());
  const free = [...tied].filter((node) => !fixed.has(node));
  const row = new Map(free.map((node, i) => [node, i]));
  const result = new Map<string, Phasor>(fixed);
  if (free.length === 0) return result;
  const matrix = Matrix.zeros(free.length, free.length);
  const right = Matrix.zeros(free.length, 2);
  const add = (target: Matrix, i: number, j: number, value: number): void => {
    target.set(i, j, target.get(i, j) + value);
  };
  for (const { from, to, ohms } of edges) {
    if (from === to || !tied.has(from)) continue;
    const g = 1 / ohms;
    const i = row.get(from);
    const j = row.get(to);
    if (i !== undefined) add(matrix, i, i, g);
    if (j !== undefined) add(matrix, j, j, g);
    if (i !== undefined && j !== undefined) {
      add(matrix, i, j, -g);
      add(matrix, j, i, -g);
    } else if (i !== undefined || j !== undefined) {
      const known = fixed.get(i === undefined ? from : to) as Phasor;
      const at = (i ?? j) as number;
      add(right, at, 0, g * known.re);
      add(right, at, 1, g * known.im);
    }
  }
  for (const [node, current] of into) {
    const i = row.get(node);
    if (i === undefined) continue;
    add(right, i, 0, current.re);
    add(right, i, 1, current.im);
  }
  const solved = new LuDecomposition(matrix).solve(right);
  free.forEach((node, i) => {
    result.set(node, { re: solved.get(i, 0), im: solved.get(i, 1) });
  });
  return result;
}

/** What an ideal ohmmeter sees between two nodes. */
export function betweenNodes(edges: readonly Edge[], from: string, to: string): number | "open" {
  if (from === to) return 0;
  if (!reached(edges, [from]).has(to)) return "open";
  const found = potentials(edges, new Map([[to, { re: 0, im: 0 }]]), new Map([[from, { re: 1, im: 0 }]]));
  return (found.get(from) as Phasor).re;
}

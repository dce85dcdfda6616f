/**
 * A second solver for the differential tests: modified nodal analysis stamped here and solved by the complex LU of a
 * general-purpose library (mathjs). Every branch below 2 Ω and every supply line has its current as an unknown, so that
 * no current has to be read from the small difference of two voltages.
 */
import type { Network, Supply } from "electroheat/circuit";
import { type Complex, complex, lusolve, type Matrix } from "mathjs";

export interface ReferenceState {
  /** Node name to voltage phasor; nodes without a path to the supply are absent. */
  readonly voltage: ReadonlyMap<string, Complex>;
  /** Branch name to current, from → to. */
  readonly current: ReadonlyMap<string, Complex>;
  /** Current out of each supply line, in the supply's order. */
  readonly lines: readonly Complex[];
}

const CURRENT_UNKNOWN_BELOW = 2;

/** Nodes that some conducting path ties to a live supply line. */
export function tiedNodes(network: Network, supply: Supply): ReadonlySet<string> {
  const live = supply.lines.filter(({ node }) => !supply.lost?.includes(node)).map(({ node }) => node);
  const tied = new Set(live);
  const neighbours = new Map<string, string[]>();
  for (const { from, to, resistance } of network.branches) {
    if (resistance === "open") continue;
    neighbours.set(from, [...(neighbours.get(from) ?? []), to]);
    neighbours.set(to, [...(neighbours.get(to) ?? []), from]);
  }
  const waiting = [...live];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const next of neighbours.get(node) ?? []) {
      if (tied.has(next)) continue;
      tied.add(next);
      waiting.push(next);
    }
  }
  return tied;
}

export function referenceSolution(network: Network, supply: Supply): ReferenceState {
  const tied = tiedNodes(network, supply);
  const nodes = [...tied];
  const row = new Map(nodes.map((node, i) => [node, i]));
  const inside = network.branches.filter(({ from, resistance }) => resistance !== "open" && tied.has(from));
  const byCurrent = inside.filter(({ resistance }) => (resistance as number) < CURRENT_UNKNOWN_BELOW);
  const live = supply.lines.filter(({ node }) => !supply.lost?.includes(node));
  const size = nodes.length + byCurrent.length + live.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right: Complex[] = Array.from({ length: size }, () => complex(0, 0));
  const add = (i: number, j: number, value: number): void => {
    const line = matrix[i] as number[];
    line[j] = (line[j] as number) + value;
  };
  const at = (node: string): number => row.get(node) as number;
  for (const { from, to, resistance } of inside) {
    if ((resistance as number) < CURRENT_UNKNOWN_BELOW) continue;
    const [a, b, g] = [at(from), at(to), 1 / (resistance as number)];
    add(a, a, g);
    add(b, b, g);
    add(a, b, -g);
    add(b, a, -g);
  }
  byCurrent.forEach(({ from, to, resistance }, k) => {
    const unknown = nodes.length + k;
    const [a, b] = [at(from), at(to)];
    add(a, unknown, 1);
    add(b, unknown, -1);
    add(unknown, a, 1);
    add(unknown, b, -1);
    add(unknown, unknown, -(resistance as number));
  });
  live.forEach(({ node, voltage, sourceResistance = 0 }, k) => {
    const unknown = nodes.length + byCurrent.length + k;
    // The line's current enters the node; V_node + r·I = E.
    add(at(node), unknown, -1);
    add(unknown, at(node), 1);
    add(unknown, unknown, sourceResistance);
    right[unknown] = complex(voltage.re, voltage.im);
  });
  const solved = lusolve(
    matrix.map((line) => line.map((value) => complex(value, 0))) as unknown as Matrix,
    right.map((value) => [value]) as unknown as Matrix,
  ) as unknown as (Complex | number)[][];
  // The library hands back a plain 0 for some of the zeros.
  const value = (i: number): Complex => {
    const z = (solved[i] as (Complex | number)[])[0] as Complex | number;
    return typeof z === "number" ? complex(z, 0) : z;
  };
  const voltage = new Map(nodes.map((node, i) => [node, value(i)]));
  const current = new Map<string, Complex>();
  for (const { id } of network.branches) current.set(id, complex(0, 0));
  byCurrent.forEach(({ id }, k) => {
    current.set(id, value(nodes.length + k));
  });
  for (const { id, from, to, resistance } of inside) {
    if ((resistance as number) < CURRENT_UNKNOWN_BELOW) continue;
    const [a, b] = [voltage.get(from) as Complex, voltage.get(to) as Complex];
    const r = resistance as number;
    current.set(id, complex((a.re - b.re) / r, (a.im - b.im) / r));
  }
  let next = nodes.length + byCurrent.length;
  const lines = supply.lines.map(({ node }) => (supply.lost?.includes(node) ? complex(0, 0) : value(next++)));
  return { voltage, current, lines };
}

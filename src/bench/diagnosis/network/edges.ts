/**
 * The module as the inference sees it: one edge for each branch of a bank, its elements lumped together where no reading
 * looks inside, and one for each joint of the plan. The network is still the circuit room's.
 */
import { buildModule, type HeatingModule, type ModulePlan, type Network } from "../../../circuit/index.ts";
import type { Ohms } from "../../../quantity/index.ts";
import { LINES } from "../question/lines.ts";

/** Elements one after the other; several such strings side by side make a branch. */
export interface ElementString {
  readonly elements: readonly string[];
  /** Resistances, Ω; Infinity for an element drawn open. */
  readonly values: readonly number[];
}

/** A branch of a bank (or one element of it), or a joint. */
export interface Edge {
  readonly id: string;
  readonly joint: boolean;
  readonly bank: string;
  /** Bank and branch, as in `A-L1`. */
  readonly branch: string;
  /** Nodes in the network, joints included. */
  readonly from: string;
  readonly to: string;
  /** Nodes as they would be without joints. */
  readonly ends: readonly [string, string];
  /** The star point it is drawn to end on, if it is. */
  readonly star: string | null;
  readonly strings: readonly ElementString[];
  readonly resistance: number;
  /** Share of the elements' individual variance that is left in the edge: Σ (∂ln R/∂ln R_i)². */
  readonly variance: number;
}

/** A plan with its edges and names. */
export interface Wiring {
  /** As drawn. */
  readonly module: HeatingModule;
  /** Star point of each bank drawn in star, as really linked. */
  readonly starPoints: Readonly<Record<string, string>>;
  readonly edges: readonly Edge[];
  readonly edgeNumber: ReadonlyMap<string, number>;
  readonly nodes: ReadonlySet<string>;
}

/** Joints drawn at less are computed as 1 µΩ, a hundredth of a very good joint: it keeps them solvable. */
const LEAST_JOINT = 1e-6;

/** What is done to an element: its resistance times this; Infinity opens it. */
export interface ElementChange {
  readonly string: number;
  readonly position: number;
  readonly factor: number;
}

/** Resistance and left-over variance of strings side by side, with some elements changed. */
export function lumped(
  strings: readonly ElementString[],
  changes: readonly ElementChange[] = [],
): { readonly resistance: number; readonly variance: number } {
  let conductance = 0;
  let squares = 0;
  for (let s = 0; s < strings.length; s += 1) {
    const { values } = strings[s] as ElementString;
    let sum = 0;
    let square = 0;
    for (let i = 0; i < values.length; i += 1) {
      let value = values[i] as number;
      for (const change of changes) {
        if (change.string === s && change.position === i) value *= change.factor;
      }
      sum += value;
      square += value * value;
    }
    if (sum === Number.POSITIVE_INFINITY) continue;
    const g = 1 / sum;
    conductance += g;
    squares += g * g * g * g * square;
  }
  // ∂ln R/∂ln R_i = g_s²·R_i/g: the string's share of the conductance times the element's share of the string.
  return conductance === 0
    ? { resistance: Number.POSITIVE_INFINITY, variance: 0 }
    : { resistance: 1 / conductance, variance: squares / (conductance * conductance) };
}

/** Plan without its joints, for the names of the nodes at both ends of each element. */
function bare(plan: ModulePlan): ModulePlan {
  const { joints: _, ...rest } = plan;
  return rest;
}

/**
 * Edges of a module.
 * @param module - the module as drawn
 * @param inside - branches (`A-L1`) into which some reading looks: their elements stay apart
 * @param scale - factor on all element resistances: the middle of the common tolerance
 */
export function wiringOf(module: HeatingModule, inside: ReadonlySet<string>, scale: number): Wiring {
  const { plan } = module;
  const drawn = module.network.branches;
  const plain = plan.joints === undefined ? drawn : buildModule(bare(plan)).network.branches;
  const edges: Edge[] = [];
  const value = (k: number): number => {
    const { resistance } = drawn[k] as Network["branches"][number];
    return resistance === "open" ? Number.POSITIVE_INFINITY : resistance * scale;
  };
  const add = (id: string, first: number, last: number, strings: readonly ElementString[]): void => {
    const place = module.elements[first] as HeatingModule["elements"][number];
    const end = plain[last]?.to as string;
    const { resistance, variance } = lumped(strings);
    edges.push({
      id,
      joint: false,
      bank: place.bank,
      branch: `${place.bank}-${place.branch}`,
      from: drawn[first]?.from as string,
      to: drawn[last]?.to as string,
      ends: [plain[first]?.from as string, end],
      star: module.starPoints[place.bank] === end ? end : null,
      strings,
      resistance,
      variance,
    });
  };
  let k = 0;
  for (const bank of plan.banks) {
    const { elementsInParallel: p = 1, elementsInSeries: s = 1 } = bank;
    for (let line = 0; line < 3; line += 1) {
      const first = k;
      const place = module.elements[k] as HeatingModule["elements"][number];
      const branch = `${bank.id}-${place.branch}`;
      const strings: ElementString[] = [];
      let alike = !inside.has(branch);
      for (let j = 0; j < p; j += 1) {
        const members = Array.from({ length: s }, (_, i) => k + i);
        strings.push({
          elements: members.map((m) => module.elements[m]?.id as string),
          values: members.map(value),
        });
        alike &&= drawn[k]?.from === drawn[first]?.from && drawn[k + s - 1]?.to === drawn[first + s - 1]?.to;
        k += s;
      }
      if (alike) add(branch, first, k - 1, strings);
      else {
        for (let m = first; m < k; m += 1) {
          const id = module.elements[m]?.id as string;
          add(id, m, m, [{ elements: [id], values: [value(m)] }]);
        }
      }
    }
  }
  for (let j = k; j < drawn.length; j += 1) {
    const { id, from, to, resistance } = drawn[j] as Network["branches"][number];
    const ohms = resistance === "open" ? Number.POSITIVE_INFINITY : Math.max(resistance, LEAST_JOINT);
    edges.push({
      id,
      joint: true,
      bank: "",
      branch: "",
      from,
      to,
      ends: [from, to],
      star: null,
      strings: [],
      resistance: ohms,
      variance: 1,
    });
  }
  return {
    module,
    starPoints: module.starPoints,
    edges,
    edgeNumber: new Map(edges.map((edge, i) => [edge.id, i])),
    nodes: new Set([...drawn.flatMap(({ from, to }) => [from, to]), ...LINES, "N"]),
  };
}

/** An edge that runs between other nodes than drawn. */
export function rerouted(edge: Edge, from: string, to: string, ends: Edge["ends"]): Edge {
  const { id, joint, bank, branch, star, strings, resistance, variance } = edge;
  return { id, joint, bank, branch, from, to, ends, star, strings, resistance, variance };
}

/** The wiring with all its elements so many times as large. */
export function rescaled(wiring: Wiring, factor: number): Wiring {
  return withEdges(wiring, (edge): Edge => {
    const { id, joint, bank, branch, from, to, ends, star, strings, variance } = edge;
    const resistance = joint ? edge.resistance : edge.resistance * factor;
    return { id, joint, bank, branch, from, to, ends, star, strings, resistance, variance };
  });
}

/** A wiring whose edges are made anew one by one; nodes and names stay. */
export function withEdges(wiring: Wiring, anew: (edge: Edge) => Edge): Wiring {
  const { module, starPoints, edgeNumber, nodes } = wiring;
  return { module, starPoints, edges: wiring.edges.map(anew), edgeNumber, nodes };
}

/** The edges as a network for the circuit room; `keep` picks those still connected, `hot` multiplies the elements. */
export function networkOf(wiring: Wiring, hot: number, keep?: ReadonlySet<number>): Network {
  return {
    branches: wiring.edges.map(({ id, from, to, resistance, joint }, i) => ({
      id,
      from,
      to,
      resistance:
        resistance === Number.POSITIVE_INFINITY || keep?.has(i) === false
          ? ("open" as const)
          : ((joint ? resistance : resistance * hot) as Ohms),
    })),
  };
}

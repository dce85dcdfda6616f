/** The phasors of an energised module: potentials of its nodes, and the voltages between them. */
import { type Branch, energise, type HeatingModule, type Supply } from "../circuit/index.ts";
import { type Complex, complexDifference, modulus } from "../numeric/index.ts";
import { moduleTree } from "./moduleTree.ts";
import { cleanText } from "./text.ts";

/** A point of the diagram: the potential of a node against the supply neutral. */
export interface PhasorNode {
  readonly name: string;
  readonly at: Complex;
}

/** A voltage from one potential to another; `null` where an end floats. */
export interface PhasorRow {
  readonly name: string;
  readonly from: Complex | null;
  readonly to: Complex | null;
  readonly open: boolean;
}

export interface PhasorData {
  /** Corners of the supply, lost lines marked. */
  readonly supply: readonly (PhasorNode & { readonly lost: boolean })[];
  /** Line terminals of the module. */
  readonly lines: readonly { readonly name: string; readonly at: Complex | null }[];
  readonly stars: readonly { readonly name: string; readonly at: Complex | null }[];
  readonly branches: readonly PhasorRow[];
  /** Longest potential or line voltage: what counts as nothing is told by it. */
  readonly scale: number;
}

const LINES = ["L1", "L2", "L3"] as const;

/** Difference of two potentials, null if either floats. */
export function between(from: Complex | null, to: Complex | null): Complex | null {
  return from === null || to === null ? null : complexDifference(from, to);
}

/** Energises the module and reads its phasors; strings that have the same voltage are told once. */
export function phasorData(module: HeatingModule, supply: Supply): PhasorData {
  const energised = energise({ network: module.network, supply });
  const potentials = new Map(energised.nodes.map(({ node, voltagePhasor }) => [node, voltagePhasor]));
  const potential = (node: string): Complex | null => potentials.get(node) ?? null;
  const lost = new Set(supply.lost ?? []);
  const corners = supply.lines
    .filter(({ node }) => LINES.includes(node as (typeof LINES)[number]))
    .map(({ node, voltage }) => ({ name: node, at: voltage, lost: lost.has(node) }));
  const scale = Math.max(...corners.map(({ at }) => modulus(at)));
  const same = (a: Complex | null, b: Complex | null): boolean =>
    a === null || b === null ? a === b : modulus(complexDifference(a, b)) <= 1e-6 * scale;
  const tree = moduleTree(module);
  const groups: (PhasorRow & { readonly names: string[]; readonly branch: string })[] = [];
  for (const { bank, branch, elements } of tree.strings) {
    const plan = tree.banks[bank];
    const next = LINES[(branch + 1) % 3];
    const lines = plan?.connection === "delta" ? `${LINES[branch]}${next}` : `${LINES[branch]}`;
    const name = `${plan?.id}-${lines}`;
    const from = potential((elements[0] as Branch).from);
    const to = potential((elements.at(-1) as Branch).to);
    const open = elements.some(({ resistance }) => resistance === "open");
    const like = groups.find(
      (one) => one.branch === lines && one.open === open && same(one.from, from) && same(one.to, to),
    );
    if (like === undefined) groups.push({ name, names: [name], branch: lines, from, to, open });
    else if (!like.names.includes(name)) like.names.push(name);
  }
  const branches = groups.map(({ names, from, to, open }) => {
    return { name: cleanText("module", names.join(", ")), from, to, open };
  });
  const stars = [...new Set(Object.values(module.starPoints))].flatMap((node) => {
    const at = potential(node);
    // Star points on the neutral of the supply are that neutral; without one they float like any other.
    return node === "N" && same(at, { re: 0, im: 0 }) ? [] : [{ name: cleanText("module", node), at }];
  });
  const lines = LINES.map((name) => ({ name, at: potential(name) }));
  return { supply: corners, lines, stars, branches, scale };
}

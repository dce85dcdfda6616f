/** A module read back from its network: strings of elements, and the joints on each node as a tree. */
import {
  type BankPlan,
  type Branch,
  buildModule,
  type HeatingModule,
  type ModulePlan,
} from "../circuit/index.ts";
import { fail, given } from "../quantity/index.ts";

/** More symbols than this make no picture that anybody reads. */
const MOST_SYMBOLS = 2000;

/** One string of elements in series, from the line side to the star point or the next line. */
export interface ElementString {
  readonly bank: number;
  readonly branch: number;
  readonly elements: readonly Branch[];
}

/** An end of a string. */
export interface Port {
  readonly string: ElementString;
  readonly end: "start" | "end";
}

/** A node with what hangs on it; `joint` leads to it from the node nearer to the supply. */
export interface TreeNode {
  readonly net: string;
  readonly joint: Branch | null;
  readonly ports: readonly Port[];
  readonly limbs: readonly TreeNode[];
  /** Banks that anything on it belongs to. */
  readonly banks: ReadonlySet<number>;
}

export interface ModuleTree {
  readonly banks: readonly BankPlan[];
  readonly strings: readonly ElementString[];
  /** Joints, jumper bars and conductors, in the network's order. */
  readonly joints: readonly Branch[];
  /** L1, L2, L3. */
  readonly lines: readonly TreeNode[];
  /** The neutral or the star points. */
  readonly stars: readonly TreeNode[];
  readonly onNeutral: boolean;
  readonly starPoints: ModulePlan["starPoints"];
}

const LINES = ["L1", "L2", "L3"] as const;

/** The built module of either form. A changed network of a built one is taken as it is. */
export function builtModule(module: HeatingModule | ModulePlan, path = "module"): HeatingModule {
  const some = given(module, path);
  if (!("network" in some)) return buildModule(some);
  // A slip in a hand-made one shows here, with the builder's own words.
  const built = buildModule(given(some.plan, `${path}.plan`));
  const branches = given(some.network, `${path}.network`).branches;
  if (!Array.isArray(branches)) {
    fail({ code: "missing", path: `${path}.network.branches`, expected: "a list", received: branches });
  }
  const named = new Map<string, Branch>(branches.map((branch) => [branch.id, branch]));
  const fits = built.network.branches.every((one) => {
    const other = named.get(one.id);
    return other !== undefined && other.from === one.from && other.to === one.to;
  });
  if (!fits || branches.length !== built.network.branches.length) {
    const expected = "the branches of its own plan, between the same nodes";
    fail({ code: "inconsistent", path: `${path}.network`, expected, received: "another network" });
  }
  return { ...built, network: { branches } };
}

function stringsOf(module: HeatingModule): readonly ElementString[] {
  const byId = new Map(module.network.branches.map((branch) => [branch.id, branch]));
  const found: { bank: number; branch: number; elements: Branch[] }[] = [];
  const banks = new Map(module.plan.banks.map(({ id }, i) => [id, i]));
  for (const place of module.elements) {
    const bank = banks.get(place.bank) as number;
    const series = (module.plan.banks[bank] as BankPlan).elementsInSeries ?? 1;
    const element = byId.get(place.id) as Branch;
    const last = found.at(-1);
    // The builder lists the elements string by string.
    if (last !== undefined && last.bank === bank && last.elements.length < series)
      last.elements.push(element);
    else found.push({ bank, branch: Number(place.branch[1]) - 1, elements: [element] });
  }
  return found;
}

/** Reads the strings and joints of a built module. */
export function moduleTree(module: HeatingModule): ModuleTree {
  const size = module.network.branches.length;
  if (size > MOST_SYMBOLS) {
    const expected = `at most ${MOST_SYMBOLS} elements and joints in one picture`;
    fail({ code: "out-of-range", path: "module", expected, received: size });
  }
  const strings = stringsOf(module);
  const ports = new Map<string, Port[]>();
  const add = (node: string, port: Port): void => {
    ports.set(node, [...(ports.get(node) ?? []), port]);
  };
  for (const string of strings) {
    add((string.elements[0] as Branch).from, { string, end: "start" });
    add((string.elements.at(-1) as Branch).to, { string, end: "end" });
  }
  const elements = new Set(module.elements.map(({ id }) => id));
  const joints = module.network.branches.filter(({ id }) => !elements.has(id));
  const grow = (net: string, joint: Branch | null): TreeNode => {
    const own = ports.get(net) ?? [];
    const limbs = joints.filter(({ from }) => from === net).map((one) => grow(one.to, one));
    const banks = new Set([
      ...own.map(({ string }) => string.bank),
      ...limbs.flatMap((limb) => [...limb.banks]),
    ]);
    return { net, joint, ports: own, limbs, banks };
  };
  const onNeutral = module.plan.neutral === "connected";
  return {
    banks: module.plan.banks,
    strings,
    joints,
    lines: LINES.map((line) => grow(line, null)),
    stars: [...new Set(Object.values(module.starPoints))].map((node) => grow(node, null)),
    onNeutral,
    starPoints: module.plan.starPoints,
  };
}

/** One bank laid out from top to bottom: rows of strings, return paths of a delta, and what lies on either side of them. */
import type { Branch } from "../circuit/index.ts";
import { ABOVE, below, GAP, HEAD, type Packing } from "./diagramMetrics.ts";
import type { DiagramWords } from "./diagramWords.ts";
import type { ElementString, ModuleTree, Port, TreeNode } from "./moduleTree.ts";

/** Something on one side of a bank that a wire leads to: the end of a row, several joined, or a joint with what is behind it. */
export interface Item {
  readonly kind: "row" | "bus" | "joint";
  /** Node of its outer end, and of what is behind it. */
  readonly net: string;
  readonly inner: string;
  readonly joint: Branch | null;
  /** Row axis, from the top of the bank. */
  readonly y: number;
  /** Ends of rows behind it, by their axis, and those of them that have words above and below. */
  readonly leaves: readonly number[];
  readonly worded: readonly number[];
  /** Joints one after the other, itself included. */
  readonly height: number;
  readonly children: readonly Item[];
  /** Place of its vertical wire among those that would meet it; −1 if it has none. */
  lane: number;
}

/** The path of a delta branch back to the line it ends on. */
export interface Return {
  readonly net: string;
  readonly y: number;
  readonly rows: readonly number[];
  lane: number;
}

export interface BankRows {
  readonly bank: number;
  readonly height: number;
  readonly rows: readonly { readonly string: ElementString; readonly y: number }[];
  readonly returns: readonly Return[];
  readonly left: readonly Item[];
  readonly right: readonly Item[];
  /** Vertical wires side by side in each zone, from the elements outwards. */
  readonly leftLanes: readonly number[];
  readonly rightLanes: readonly number[];
}

/** Whether a node has a wire of its own outside the banks. */
export const isShared = (node: TreeNode): boolean => node.banks.size > 1;

interface Place {
  readonly y: number;
  readonly worded: boolean;
  /** What is one end has one key. */
  readonly key: string;
}

function rowItem(net: string, { y, worded }: Place): Item {
  const axes = { y, leaves: [y], worded: worded ? [y] : [] };
  return { kind: "row", net, inner: net, joint: null, ...axes, height: 0, children: [], lane: -1 };
}

/** Axis for several: their middle, unless the end of something else lies between; then one of their own. */
function axisOf(own: readonly number[], all: readonly number[]): number {
  const [low, high] = [Math.min(...own), Math.max(...own)];
  const middle = (low + high) / 2;
  const between = all.some((y) => y > low && y < high && !own.includes(y));
  if (!between) return middle;
  return own.reduce((best, y) => (Math.abs(y - middle) < Math.abs(best - middle) ? y : best));
}

function joined(
  kind: "bus" | "joint",
  node: { net: string; inner: string; joint: Branch | null },
  children: readonly Item[],
  all: readonly number[],
): Item {
  const leaves = children.flatMap((child) => child.leaves);
  const worded = children.flatMap((child) => child.worded);
  // A return path is too thin for a joint's words where there is a row to put it on.
  const own = worded.length > 0 ? worded : leaves;
  const y = children.length === 1 ? (children[0] as Item).y : axisOf(own, all);
  const depth = Math.max(...children.map(({ height }) => height));
  const height = depth + (kind === "joint" ? 1 : 0);
  return { kind, ...node, y, leaves, worded, height, children, lane: -1 };
}

/** Gives the vertical wires of one side places, so that no two meet; returns how many each zone needs. */
function shareLanes(items: readonly Item[], returns: readonly Return[]): readonly number[] {
  const zones: { from: number; to: number; lane: number }[][] = [];
  const take = (zone: number, from: number, to: number): number => {
    while (zones.length <= zone) zones.push([]);
    const taken = zones[zone] as { from: number; to: number; lane: number }[];
    let lane = 0;
    while (taken.some((one) => one.lane === lane && one.from <= to && from <= one.to)) lane += 1;
    taken.push({ from, to, lane });
    return lane;
  };
  for (const one of returns) one.lane = take(0, Math.min(...one.rows), one.y);
  const visit = (item: Item): void => {
    for (const child of item.children) visit(child);
    if (item.children.length < 2) return;
    const ys = [...item.children.map(({ y }) => y), item.y];
    item.lane = take(busZone(item), Math.min(...ys), Math.max(...ys));
  };
  for (const item of items) visit(item);
  return zones.map((zone) => Math.max(0, ...zone.map(({ lane }) => lane + 1)));
}

/** Zone of an item's vertical wire: outside everything behind it. */
export function busZone(item: Item): number {
  return Math.max(...item.children.map(({ height }) => height));
}

/** Return paths with a joint that nothing but return paths lie behind: it stands on them and needs room for its words. */
function jointedReturns(tree: ModuleTree, bank: number): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (node: TreeNode): { starts: boolean; nets: string[] } => {
    const below = node.limbs.map(visit);
    const own = node.ports.filter(({ string }) => string.bank === bank);
    const starts = own.some(({ end }) => end === "start") || below.some((one) => one.starts);
    const nets = [...(own.length > 0 ? [node.net] : []), ...below.flatMap((one) => one.nets)];
    if (node.joint !== null && !isShared(node) && !starts) for (const net of nets) found.add(net);
    return { starts, nets };
  };
  tree.lines.forEach(visit);
  return found;
}

/** Rows of one bank, and the axes of its ends. */
function stackRows(tree: ModuleTree, words: DiagramWords, bank: number, packing: Packing) {
  const rows: { string: ElementString; y: number }[] = [];
  const returns: Return[] = [];
  const places = new Map<Port["string"], { start: Place; end: Place }>();
  const jointed = jointedReturns(tree, bank);
  const low = below({ ...packing, stacked: false });
  // Words of joints stand on any row; without them a row is as deep as its own elements need.
  const deep = inBankJoints(tree, bank).some((id) => words.of(id).state !== null);
  let y = HEAD;
  for (const branch of [0, 1, 2]) {
    const strings = tree.strings.filter((one) => one.bank === bank && one.branch === branch);
    const axes = strings.map((string) => {
      y += ABOVE;
      rows.push({ string, y });
      const axis = y;
      const stated = deep || string.elements.some(({ id }) => words.of(id).state !== null);
      y += (stated ? below(packing) : low) + GAP;
      return axis;
    });
    const delta = tree.banks[bank]?.connection === "delta";
    const ends = strings.map(({ elements }) => (elements.at(-1) as Branch).to);
    for (const net of delta ? new Set(ends) : []) {
      const full = jointed.has(net);
      y += full ? ABOVE : 2;
      returns.push({ net, y, rows: axes.filter((_, i) => ends[i] === net), lane: -1 });
      y += full ? below(packing) + GAP : GAP;
    }
    strings.forEach((string, i) => {
      const axis = axes[i] as number;
      const start: Place = { y: axis, worded: true, key: `${branch} start ${i}` };
      const back = returns.find((one) => one.rows.includes(axis));
      const end: Place =
        back === undefined
          ? start
          : { y: back.y, worded: jointed.has(back.net), key: `${branch} ${back.net}` };
      places.set(string, { start, end });
    });
  }
  return { rows, returns, places, height: y - 4 };
}

function inBankJoints(tree: ModuleTree, bank: number): readonly string[] {
  const visit = (node: TreeNode): string[] => [
    ...(node.joint !== null && !isShared(node) && node.banks.has(bank) ? [node.joint.id] : []),
    ...node.limbs.flatMap(visit),
  ];
  return [...tree.lines, ...tree.stars].flatMap(visit);
}

/** Lays out one bank. */
export function bankRows(tree: ModuleTree, words: DiagramWords, bank: number, packing: Packing): BankRows {
  const { rows, returns, places, height } = stackRows(tree, words, bank, packing);
  const axes = [...places.values()];
  const leftAxes = [...axes.map(({ start }) => start.y), ...returns.map(({ y }) => y)];
  const rightAxes = rows.map(({ y }) => y);

  const ownRows = (node: TreeNode): Place[] => {
    const found = new Map<string, Place>();
    for (const { string, end } of node.ports) {
      if (string.bank !== bank) continue;
      const place = places.get(string)?.[end] as Place;
      found.set(place.key, place);
    }
    return [...found.values()];
  };
  const jointItem = (node: TreeNode, all: readonly number[]): Item => {
    const children = [
      ...node.limbs.map((limb) => jointItem(limb, all)),
      ...ownRows(node).map((place) => rowItem(node.net, place)),
    ].sort((a, b) => a.y - b.y);
    const joint = node.joint as Branch;
    return joined("joint", { net: joint.from, inner: node.net, joint }, children, all);
  };
  const forest = (node: TreeNode, all: readonly number[]): Item[] =>
    node.limbs.filter((limb) => !isShared(limb) && limb.banks.has(bank)).map((limb) => jointItem(limb, all));
  const nodesOf = (root: TreeNode): TreeNode[] =>
    [root, ...root.limbs.filter(isShared).flatMap(nodesOf)].filter(({ banks }) => banks.has(bank));

  const left = tree.lines.flatMap(nodesOf).flatMap((node) => {
    const groups = new Map<string, Item[]>();
    for (const place of ownRows(node)) {
      const group = place.key.includes("start") ? (place.key[0] as string) : place.key;
      groups.set(group, [...(groups.get(group) ?? []), rowItem(node.net, place)]);
    }
    const self = { net: node.net, inner: node.net, joint: null };
    const buses = [...groups.values()].map((group) =>
      group.length === 1 ? (group[0] as Item) : joined("bus", self, group, leftAxes),
    );
    return [...forest(node, leftAxes), ...buses];
  });
  const right = tree.stars.flatMap(nodesOf).flatMap((node) => {
    const items = [
      ...forest(node, rightAxes),
      ...ownRows(node).map((place) => rowItem(node.net, place)),
    ].sort((a, b) => a.y - b.y);
    const self = { net: node.net, inner: node.net, joint: null };
    return items.length > 1 ? [joined("bus", self, items, rightAxes)] : items;
  });
  return {
    bank,
    height,
    rows,
    returns,
    left,
    right,
    leftLanes: shareLanes(left, []),
    rightLanes: shareLanes(right, returns),
  };
}

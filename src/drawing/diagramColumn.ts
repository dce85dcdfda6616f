/** A column of banks, measured: shared edges for all of them. */
import type { BankPlan } from "../circuit/index.ts";
import { type BankRows, bankRows, type Item } from "./diagramBank.ts";
import { wordsWidth } from "./diagramCanvas.ts";
import {
  BAR,
  ELEMENT,
  HEAD_GAP,
  HEAD_LEFT,
  HEAD_LINE,
  HEAD_LINES,
  HEADING,
  LANE,
  PANEL_PAD,
  type Packing,
  STUB,
  TEXT,
} from "./diagramMetrics.ts";
import type { DiagramWords } from "./diagramWords.ts";
import type { ModuleTree } from "./moduleTree.ts";
import { textWidth, wrapped } from "./text.ts";

export const PANEL_GAP = 14;

/** Widths from the elements outwards: zones of vertical wires and, between them, columns of joints. */
export interface Side {
  readonly zones: number[];
  readonly joints: number[];
}

export interface Column {
  readonly banks: readonly BankRows[];
  /** Nodes with a vertical wire beside the panels. */
  readonly leftNets: readonly string[];
  readonly rightNets: readonly string[];
  readonly width: number;
  readonly height: number;
  readonly left: Side;
  readonly right: Side;
  readonly cell: number;
  readonly panelWidth: number;
  /** By bank, its name in lines. */
  readonly headings: readonly (readonly string[])[];
}

export const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

function zoneWidth(lanes: number): number {
  return lanes === 0 ? 4 : 2 * STUB + (lanes - 1) * LANE;
}

function side(
  items: readonly Item[],
  lanes: readonly (readonly number[])[],
  words: DiagramWords,
  packing: Packing,
): Side {
  const joints: number[] = [];
  const visit = (item: Item): void => {
    item.children.forEach(visit);
    if (item.joint === null) return;
    const wide = Math.max(2 * BAR.x, wordsWidth(words.of(item.joint.id), packing)) + 14;
    joints[item.height - 1] = Math.max(joints[item.height - 1] ?? 0, wide);
  };
  items.forEach(visit);
  const zones: number[] = [];
  for (let z = 0; z <= joints.length; z += 1) {
    zones.push(zoneWidth(Math.max(0, ...lanes.map((one) => one[z] ?? 0))));
  }
  return { zones, joints };
}

/** What stands in the heading of a bank. */
export function headingOf(tree: ModuleTree, bank: number): string {
  const { connection } = tree.banks[bank] as BankPlan;
  if (connection === "delta") return "delta";
  const stars = tree.banks.filter((one) => one.connection === "star").length;
  return `star, ${tree.onNeutral ? "neutral" : stars > 1 ? tree.starPoints : "floating"}`;
}

/** Label of a bank. */
export function bankName(tree: ModuleTree, words: DiagramWords, bank: number): string {
  const { id } = tree.banks[bank] as BankPlan;
  return words.name(id, `Bank ${id}`);
}

/** Height that a heading takes beyond its first line. */
export const headingExtra = (lines: readonly string[]): number => (lines.length - 1) * HEAD_LINE;

/** Measures a column. */
export function measureColumn(
  tree: ModuleTree,
  banks: readonly number[],
  words: DiagramWords,
  packing: Packing,
): Column {
  const rows = banks.map((bank) => bankRows(tree, words, bank, packing));
  const nets = (items: readonly Item[]): string[] => [...new Set(items.map(({ net }) => net))];
  const lefts = rows.flatMap((one) => one.left);
  const rights = rows.flatMap((one) => one.right);
  const left = side(
    lefts,
    rows.map((one) => one.leftLanes),
    words,
    packing,
  );
  const right = side(
    rights,
    rows.map((one) => one.rightLanes),
    words,
    packing,
  );
  if (rights.length > 0) {
    // Room for the name of the star point above its wire.
    const name = Math.max(
      ...nets(rights).map((net) => Math.min(packing.nodeRoom, textWidth(words.starName(net), TEXT, true))),
    );
    right.zones[right.zones.length - 1] = Math.max(right.zones.at(-1) as number, name + 8);
  }
  const elements = rows.flatMap((one) => one.rows.flatMap(({ string }) => string.elements));
  const wide = Math.max(2 * ELEMENT.x + 12, ...elements.map(({ id }) => wordsWidth(words.of(id), packing)));
  const cell = wide + 12;
  const series = Math.max(...rows.flatMap((one) => one.rows.map(({ string }) => string.elements.length)));
  const inner = sum([...left.zones, ...left.joints, ...right.zones, ...right.joints]) + cell * series;
  const names = banks.map((bank) => bankName(tree, words, bank));
  const sides = banks.map((bank) => HEAD_LEFT + HEAD_GAP + textWidth(headingOf(tree, bank), TEXT));
  const heads = names.map((name, i) => {
    return (sides[i] as number) + Math.min(packing.labelRoom, textWidth(name, HEADING, true)) + 5;
  });
  const panelWidth = Math.max(inner, ...heads) + 2 * PANEL_PAD;
  const headings = names.map((name, i) => {
    const room = panelWidth - 2 * PANEL_PAD - (sides[i] as number);
    return wrapped(name, room, HEADING, true, HEAD_LINES);
  });
  const leftNets = nets(lefts);
  const lanes = nets(rights).filter((net) => net === "N" || netSpans(tree, net));
  return {
    banks: rows,
    leftNets,
    rightNets: lanes,
    width: leftNets.length * LANE + panelWidth + (lanes.length > 0 ? lanes.length * LANE + 4 : 0),
    height:
      sum(rows.map(({ height }) => height + PANEL_PAD)) +
      sum(headings.map(headingExtra)) +
      (rows.length - 1) * PANEL_GAP,
    left,
    right,
    cell,
    panelWidth,
    headings,
  };
}

/** Whether a star point has anything outside one bank. */
function netSpans(tree: ModuleTree, net: string): boolean {
  const all = tree.stars.flatMap(function nodes(node): typeof tree.stars {
    return [node, ...node.limbs.flatMap(nodes)];
  });
  return (all.find((node) => node.net === net)?.banks.size ?? 0) > 1;
}

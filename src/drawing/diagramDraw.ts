/** A column of banks, drawn: every row, joint and wire in its place. */
import type { Branch } from "../circuit/index.ts";
import { type BankRows, busZone, type Item } from "./diagramBank.ts";
import type { DiagramCanvas } from "./diagramCanvas.ts";
import {
  bankName,
  type Column,
  headingExtra,
  headingOf,
  PANEL_GAP,
  type Side,
  sum,
} from "./diagramColumn.ts";
import { halfOf, kindOf } from "./diagramFeed.ts";
import {
  ELEMENT,
  HEAD,
  HEAD_GAP,
  HEAD_LEFT,
  HEAD_LINE,
  HEADING,
  LANE,
  PANEL_PAD,
  type Packing,
  STUB,
  TEXT,
} from "./diagramMetrics.ts";
import type { DiagramLayout } from "./diagramTypes.ts";
import type { DiagramWords } from "./diagramWords.ts";
import type { Box } from "./geometry.ts";
import type { ModuleTree } from "./moduleTree.ts";
import { shortened, textWidth } from "./text.ts";

/** Where a bank's verticals and joints are, counted from the elements outwards. */
class SidePlan {
  constructor(
    private readonly edge: number,
    private readonly way: -1 | 1,
    private readonly spec: Side,
  ) {}
  private before(zone: number): number {
    return sum(this.spec.zones.slice(0, zone)) + sum(this.spec.joints.slice(0, zone));
  }
  bus(zone: number, lane: number): number {
    return this.edge + this.way * (this.before(zone) + STUB + lane * LANE);
  }
  joint(height: number): number {
    const inner = this.before(height - 1) + (this.spec.zones[height - 1] as number);
    return this.edge + this.way * (inner + (this.spec.joints[height - 1] as number) / 2);
  }
  get wayOut(): -1 | 1 {
    return this.way;
  }
  get end(): number {
    return this.edge;
  }
}

/** Draws an item and what is behind it; returns where a wire from further out meets it. */
function drawItem(
  item: Item,
  top: number,
  plan: SidePlan,
  canvas: DiagramCanvas,
  words: DiagramWords,
  packing: Packing,
): { readonly x: number; readonly y: number } {
  const y = top + item.y;
  if (item.kind === "row") return { x: plan.end, y };
  let x = 0;
  let outer = 0;
  if (item.joint !== null) {
    const joint = item.joint as Branch;
    const kind = kindOf(joint);
    const centre = plan.joint(item.height);
    const nets = plan.wayOut === 1 ? ([item.inner, item.net] as const) : ([item.net, item.inner] as const);
    const { state } = words.of(joint.id);
    const [near, far] = canvas.between({ kind, about: joint.id, state, x: centre, y }, halfOf(kind), nets);
    canvas.words(joint.id, words.of(joint.id), centre, y, packing);
    x = (plan.wayOut === 1 ? near : far).x;
    outer = (plan.wayOut === 1 ? far : near).x;
  }
  const only = item.children.length === 1;
  const bus = only ? x : plan.bus(busZone(item), item.lane);
  for (const child of item.children) {
    const to = drawItem(child, top, plan, canvas, words, packing);
    canvas.wire(item.inner, { x: bus, y: to.y }, to);
  }
  if (!only) {
    const ys = [...item.children.map((child) => top + child.y), y];
    canvas.wire(item.inner, { x: bus, y: Math.min(...ys) }, { x: bus, y: Math.max(...ys) });
    if (item.joint !== null) canvas.wire(item.inner, { x: bus, y }, { x, y });
  }
  return { x: item.joint === null ? bus : outer, y };
}

/** What a column leaves for its rails: panels, and by node where its vertical wire is and what it meets. */
export interface DrawnColumn {
  readonly panels: DiagramLayout["panels"];
  readonly lanes: ReadonlyMap<string, { readonly x: number; readonly taps: number[] }>;
}

/** Draws the banks of a column; returns panels and, by node, how far down its vertical wire is needed. */
export function drawColumn(input: {
  readonly column: Column;
  readonly x: number;
  readonly top: number;
  readonly tree: ModuleTree;
  readonly canvas: DiagramCanvas;
  readonly words: DiagramWords;
  readonly packing: Packing;
}): DrawnColumn {
  const { column, x, top, tree, canvas, words, packing } = input;
  const panels: { bank: string; box: Box }[] = [];
  const lanes = new Map<string, { readonly x: number; readonly taps: number[] }>();
  const panelX = x + column.leftNets.length * LANE;
  // The first line's wire is the innermost, so that its rail on top bends round the others without crossing them.
  column.leftNets.forEach((net, i) => {
    lanes.set(net, { x: panelX - LANE - i * LANE, taps: [] });
  });
  column.rightNets.forEach((net, i) => {
    lanes.set(net, { x: panelX + column.panelWidth + LANE * (i + 1), taps: [] });
  });
  const slack =
    column.panelWidth -
    2 * PANEL_PAD -
    sum([...column.left.zones, ...column.left.joints, ...column.right.zones, ...column.right.joints]);
  const elementsLeft = panelX + PANEL_PAD + sum([...column.left.zones, ...column.left.joints]);
  const elementsRight = elementsLeft + slack;
  const left = new SidePlan(elementsLeft, -1, column.left);
  const right = new SidePlan(elementsRight, 1, column.right);
  let above = top;
  column.banks.forEach((bank, i) => {
    const lines = column.headings[i] as readonly string[];
    const height = bank.height + PANEL_PAD + headingExtra(lines);
    const box = { x: panelX, y: above, width: column.panelWidth, height };
    panels.push({ bank: String(tree.banks[bank.bank]?.id), box });
    drawHeading({ tree, bank: bank.bank, lines, x: panelX, y: above, canvas, words });
    const y = above + headingExtra(lines);
    for (const { string, y: row } of bank.rows) {
      drawString(string.elements, elementsLeft, elementsRight, y + row, canvas, words, packing);
    }
    for (const back of bank.returns) {
      const bus = right.bus(0, back.lane);
      for (const row of back.rows)
        canvas.wire(back.net, { x: elementsRight, y: y + row }, { x: bus, y: y + row });
      const corner = { x: bus, y: y + back.y };
      canvas.wire(back.net, { x: bus, y: y + Math.min(...back.rows) }, corner, {
        x: elementsLeft,
        y: corner.y,
      });
    }
    for (const [items, plan] of [
      [bank.left, left],
      [bank.right, right],
    ] as const) {
      for (const item of items) {
        const tap = drawItem(item, y, plan, canvas, words, packing);
        const lane = lanes.get(item.net);
        if (lane === undefined) continue;
        canvas.wire(item.net, tap, { x: lane.x, y: tap.y });
        lane.taps.push(tap.y);
      }
    }
    drawStarName({ bank, top: y, plan: right, spec: column.right, canvas, words, room: packing.nodeRoom });
    above += height + PANEL_GAP;
  });
  return { panels, lanes };
}

function drawStarName(input: {
  readonly bank: BankRows;
  readonly top: number;
  readonly plan: SidePlan;
  readonly spec: Side;
  readonly canvas: DiagramCanvas;
  readonly words: DiagramWords;
  readonly room: number;
}): void {
  const { bank, top, plan, spec, canvas, words, room } = input;
  const first = bank.right[0];
  if (first === undefined) return;
  const full = words.starName(first.net);
  const text = shortened(full, room, TEXT, true);
  const zone = spec.zones.length - 1;
  const half = textWidth(text, TEXT, true) / 2;
  const middle = plan.bus(zone, 0) - STUB + (spec.zones[zone] as number) / 2;
  // Over its own wire; in the last zone, which is made for it, in the middle.
  const inner = first.kind === "bus" && busZone(first) < zone;
  const x = inner ? plan.bus(busZone(first), first.lane) - 6 + half : middle;
  const y = top + Math.min(...bank.rows.map((row) => row.y)) - 13.5;
  canvas.text({ role: "node", about: first.net, text, full, x, y, anchor: "middle", size: TEXT, bold: true });
}

function drawString(
  elements: readonly Branch[],
  from: number,
  to: number,
  y: number,
  canvas: DiagramCanvas,
  words: DiagramWords,
  packing: Packing,
): void {
  const pitch = (to - from) / elements.length;
  let x = from;
  elements.forEach((element, i) => {
    const centre = from + (i + 0.5) * pitch;
    const { state } = words.of(element.id);
    const symbol = { kind: "element", about: element.id, state, x: centre, y } as const;
    canvas.between(symbol, ELEMENT, [element.from, element.to]);
    canvas.wire(element.from, { x, y }, { x: centre - ELEMENT.x, y });
    canvas.words(element.id, words.of(element.id), centre, y, packing);
    x = centre + ELEMENT.x;
    if (i === elements.length - 1) canvas.wire(element.to, { x, y }, { x: to, y });
  });
}

/** Name of a bank in as many lines as it was measured to take, and behind the first what it is. */
function drawHeading(input: {
  readonly tree: ModuleTree;
  readonly bank: number;
  readonly lines: readonly string[];
  readonly x: number;
  readonly y: number;
  readonly canvas: DiagramCanvas;
  readonly words: DiagramWords;
}): void {
  const { tree, bank, lines, x, y, canvas, words } = input;
  const about = String(tree.banks[bank]?.id);
  const detail = headingOf(tree, bank);
  const kind = detail === "delta" ? "delta" : "star";
  const glyph = { x: x + PANEL_PAD + 8, y: y + HEAD / 2 + 2 };
  const box = { x: glyph.x - 7, y: glyph.y - 7, width: 14, height: 14 };
  canvas.symbols.push({ kind, about, state: null, ...glyph, box, pins: [] });
  const left = x + PANEL_PAD + HEAD_LEFT;
  const base = glyph.y + 4.5;
  const whole = bankName(tree, words, bank);
  lines.forEach((text, i) => {
    const at = { x: left, y: base + i * HEAD_LINE, anchor: "start", size: HEADING, bold: true } as const;
    // Of a name that had to be shortened all the same, the last line carries the whole.
    const full = text.endsWith("…") ? whole : text;
    canvas.text({ role: "heading", about, text, full, ...at });
  });
  const after = left + textWidth(lines[0] as string, HEADING, true) + HEAD_GAP;
  const kindAt = { x: after, y: base, anchor: "start", size: TEXT } as const;
  canvas.text({ role: "node", about: "", text: detail, full: detail, ...kindAt });
}

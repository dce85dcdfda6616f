/** Collects what a diagram consists of; knows how words stand around a symbol and where connection dots belong. */

import { JOINT, LABEL_UP, MARK, type Packing, STATE_DOWN, TEXT, VALUE_DOWN } from "./diagramMetrics.ts";
import type {
  DiagramLayout,
  DiagramMark,
  DiagramPin,
  DiagramState,
  DiagramSymbol,
  DiagramText,
  DiagramWire,
} from "./diagramTypes.ts";
import type { Words } from "./diagramWords.ts";
import { around, type Point, textBox } from "./geometry.ts";
import { shortened, textWidth } from "./text.ts";

const MARK_GAP = 4;
const PART_GAP = 9;

/** A bold word stands out where colour does not. */
const isBold = (state: DiagramState): boolean => state !== "within" && state !== "undecided";

const stateWidth = (state: DiagramState): number =>
  2 * MARK + MARK_GAP + textWidth(state, TEXT, isBold(state));

/** Width that the words around a symbol take at most. */
export function wordsWidth(words: Words, { stacked, labelRoom }: Packing): number {
  const label = Math.min(labelRoom, textWidth(words.label, TEXT));
  const value = Math.min(labelRoom, textWidth(words.value, TEXT));
  const state = words.state === null ? 0 : stateWidth(words.state);
  const gap = value > 0 && state > 0 ? PART_GAP : 0;
  return Math.max(label, stacked ? Math.max(value, state) : value + gap + state);
}

export class DiagramCanvas {
  readonly texts: DiagramText[] = [];
  readonly symbols: DiagramSymbol[] = [];
  readonly marks: DiagramMark[] = [];
  readonly wires: DiagramWire[] = [];

  text(placed: Omit<DiagramText, "box">): void {
    if (placed.text !== "") this.texts.push({ ...placed, box: textBox(placed) });
  }

  wire(net: string, ...points: readonly Point[]): void {
    const kept = points.filter((p, i) => i === 0 || p.x !== points[i - 1]?.x || p.y !== points[i - 1]?.y);
    if (kept.length > 1) this.wires.push({ net, points: kept });
  }

  /** A symbol between two ends on a horizontal axis; returns its ends, left and right. */
  between(
    symbol: Pick<DiagramSymbol, "kind" | "about" | "state" | "x" | "y">,
    half: { readonly x: number; readonly y: number },
    nets: readonly [string, string],
  ): readonly [DiagramPin, DiagramPin] {
    const { x, y, state } = symbol;
    // The thick ring and the cross stand out of the symbol itself.
    const tall = Math.max(half.y, state === "open" || state === "hot joint" || state === "lost" ? 9.5 : 0);
    const wide = Math.max(half.x, symbol.kind === "joint" && state !== null ? 9.5 : 0);
    const pins = [
      { net: nets[0], x: x - wide, y },
      { net: nets[1], x: x + wide, y },
    ] as const;
    this.symbols.push({ ...symbol, box: around(x, y, wide, tall), pins });
    return pins;
  }

  /** The words around a symbol: label above, value and state below. */
  words(about: string, words: Words, x: number, y: number, { stacked, labelRoom }: Packing): void {
    const { label: full, value: fullValue, state } = words;
    const common = { about, size: TEXT, bold: false } as const;
    const label = shortened(full, labelRoom, TEXT, false, words.tail);
    this.text({ ...common, role: "label", text: label, full, x, y: y - LABEL_UP, anchor: "middle" });
    const value = shortened(fullValue, labelRoom, TEXT);
    const wide = textWidth(value, TEXT);
    const said = state === null ? 0 : stateWidth(state);
    const inLine = !stacked && value !== "" && state !== null;
    const start = inLine ? x - (wide + PART_GAP + said) / 2 : x - wide / 2;
    const at = { x: start, y: y + VALUE_DOWN, anchor: "start" } as const;
    this.text({ ...common, role: "value", text: value, full: fullValue, ...at });
    if (state === null) return;
    const left = inLine ? start + wide + PART_GAP : x - said / 2;
    const down = y + (stacked && value !== "" ? STATE_DOWN : VALUE_DOWN);
    const mark = { x: left + MARK, y: down - 0.36 * TEXT };
    this.marks.push({ ...mark, state, box: around(mark.x, mark.y, MARK, MARK) });
    const word = { ...common, bold: isBold(state), role: "state", text: state } as const;
    this.text({ ...word, x: left + 2 * MARK + MARK_GAP, y: down, anchor: "start" });
  }

  terminal(net: string, x: number, y: number): void {
    const box = around(x, y, JOINT - 2.5, JOINT - 2.5);
    this.symbols.push({
      kind: "terminal",
      about: net,
      state: null,
      x,
      y,
      box,
      pins: [{ net, x: x + JOINT - 2.5, y }],
    });
  }

  /** Dots where three or more ways of one node meet. */
  dots(): DiagramLayout["dots"] {
    const segments = new Map<string, [Point, Point][]>();
    for (const { net, points } of this.wires) {
      const own = segments.get(net) ?? [];
      for (let i = 0; i + 1 < points.length; i += 1) own.push([points[i] as Point, points[i + 1] as Point]);
      segments.set(net, own);
    }
    const dots: DiagramPin[] = [];
    for (const [net, own] of segments) {
      const seen = new Set<string>();
      for (const point of own.flat()) {
        const key = `${point.x} ${point.y}`;
        if (seen.has(key)) continue;
        seen.add(key);
        if (new Set(own.flatMap((segment) => waysFrom(point, segment))).size > 2) {
          dots.push({ net, x: point.x, y: point.y });
        }
      }
    }
    return dots;
  }
}

/** Directions in which a segment leads away from a point that lies on it. */
function waysFrom(p: Point, [a, b]: readonly [Point, Point]): string[] {
  const [left, right] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const [top, bottom] = [Math.min(a.y, b.y), Math.max(a.y, b.y)];
  if (p.x < left || p.x > right || p.y < top || p.y > bottom) return [];
  const ways: string[] = [];
  if (p.x > left) ways.push("left");
  if (p.x < right) ways.push("right");
  if (p.y > top) ways.push("up");
  if (p.y < bottom) ways.push("down");
  return ways;
}

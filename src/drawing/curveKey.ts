/** The key of a chart: at the ends of the curves where there is room beside them, in rows below where there is not. */
import { marker, seriesLook } from "./curveLook.ts";
import type { Point } from "./geometry.ts";
import { fixed, tag, textTag } from "./svg.ts";
import { shortened, textWidth } from "./text.ts";
import type { Palette } from "./theme.ts";

const TEXT = 12;
const SAMPLE = 30;
const PITCH = 20;
/** Between the plot and its key. */
export const KEY_GAP = 18;

export interface KeyEntry {
  readonly label: string;
  /** Number of the series; −1 for a level. */
  readonly index: number;
  readonly band: boolean;
  readonly marked: boolean;
  readonly end: Point;
}

interface Key {
  readonly body: readonly string[];
  readonly bottom: number;
}

/** Width of a key beside the curves, with the gap to them; `most` for the longest label. */
export function keyWidth(entries: readonly { readonly label: string }[], most: number): number {
  const longest = Math.min(most, Math.max(...entries.map(({ label }) => textWidth(label, TEXT))) + 1);
  return KEY_GAP + SAMPLE + 8 + longest;
}

function sample({ index, band, marked }: KeyEntry, x: number, y: number, palette: Palette): string {
  if (index < 0) {
    const d = `M${fixed(x)} ${fixed(y)}L${fixed(x + SAMPLE)} ${fixed(y)}`;
    return tag("path", { d, stroke: palette.ink, "stroke-width": 1.2, "stroke-dasharray": "1 3" });
  }
  const { colour, dash, shape } = seriesLook(index, palette);
  const line = { fill: "none", stroke: colour, "stroke-dasharray": dash };
  if (!band) {
    const d = `M${fixed(x)} ${fixed(y)}L${fixed(x + SAMPLE)} ${fixed(y)}`;
    const mark = marked ? marker(shape, x + SAMPLE / 2, y, colour, palette) : "";
    return tag("path", { d, ...line, "stroke-width": 2.2 }) + mark;
  }
  const edges = [y - 5, y + 5]
    .map((at) => `M${fixed(x)} ${fixed(at)}L${fixed(x + SAMPLE)} ${fixed(at)}`)
    .join("");
  const area = { x, y: y - 5, width: SAMPLE, height: 10, fill: colour, "fill-opacity": 0.13 };
  return tag("rect", area) + tag("path", { d: edges, ...line, "stroke-width": 1.2 });
}

function entryAt(entry: KeyEntry, x: number, y: number, room: number, palette: Palette): string[] {
  const text = shortened(entry.label, room, TEXT);
  const at = { x: x + SAMPLE + 8, y: y + 4, anchor: "start", size: TEXT } as const;
  return [sample(entry, x, y, palette), textTag({ text, full: entry.label, ...at }, palette.ink)];
}

/** Heights near the wanted ones, in their order, at least one pitch apart and within the limits as far as they hold all. */
function spread(wanted: readonly number[], top: number, bottom: number): number[] {
  const order = wanted.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y || a.i - b.i);
  const placed: number[] = [];
  for (const { y } of order)
    placed.push(Math.max(y, (placed.at(-1) ?? Number.NEGATIVE_INFINITY) + PITCH, top));
  let most = bottom;
  for (let k = placed.length - 1; k >= 0; k -= 1) {
    placed[k] = Math.min(placed[k] as number, most);
    most = (placed[k] as number) - PITCH;
  }
  const out: number[] = [];
  order.forEach(({ i }, k) => {
    out[i] = placed[k] as number;
  });
  return out;
}

/** A key beside the curves, each entry as near to the end of its curve as the others let it. */
export function drawKeyColumn(input: {
  readonly entries: readonly KeyEntry[];
  readonly left: number;
  /** For the longest label. */
  readonly room: number;
  /** Right edge of the plot. */
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly palette: Palette;
}): Key {
  const { entries, left, room, right, top, bottom, palette } = input;
  const places = spread(
    entries.map(({ end }) => end.y),
    top + PITCH / 2,
    bottom - PITCH / 2,
  );
  const body = entries.flatMap((entry, i) => {
    const y = places[i] as number;
    const { end } = entry;
    // A leader only from a curve that ends at the edge: from further in it would read as part of the curve.
    const leads = end.x > right - 2 && entry.index >= 0;
    const d = `M${fixed(right + 3)} ${fixed(end.y)}L${fixed(left - 3)} ${fixed(y)}`;
    const leader = leads ? [tag("path", { d, stroke: palette.soft, "stroke-width": 1 })] : [];
    return [...leader, ...entryAt(entry, left, y, room, palette)];
  });
  return { body, bottom };
}

/** A key in rows. */
export function drawKeyRows(input: {
  readonly entries: readonly KeyEntry[];
  readonly left: number;
  readonly top: number;
  readonly room: number;
  readonly palette: Palette;
}): Key {
  const { entries, left, top, room, palette } = input;
  const body = entries.flatMap((entry, i) =>
    entryAt(entry, left, top + i * PITCH, room - SAMPLE - 8, palette),
  );
  return { body, bottom: top + (entries.length - 1) * PITCH + 8 };
}

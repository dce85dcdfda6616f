/** A chart of curves and bands as an SVG picture, with axes of its own. */
import { checkBetween, given } from "../quantity/index.ts";
import { drawKeyColumn, drawKeyRows, KEY_GAP, type KeyEntry, keyWidth } from "./curveKey.ts";
import { marker, seriesLook } from "./curveLook.ts";
import {
  type BandPoint,
  type CheckedChart,
  type CheckedSeries,
  type CurveInput,
  checkedChart,
} from "./curveTypes.ts";
import type { Point } from "./geometry.ts";
import { checkPictureId, fixed, picture, tag, textTag } from "./svg.ts";
import { namedText, shortened, textWidth, wrapped } from "./text.ts";
import { type Palette, paletteOf } from "./theme.ts";
import { linearScale, logScale, type Scale, tickText } from "./ticks.ts";

const WIDTH = 720;
const NARROW = 560;
const MARGIN = 16;
const TEXT = 12;
const TITLE = 17;
const NOTE = 11;
const KEY_PITCH = 20;

interface Plot {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  readonly y: Scale;
}

/** Lowest and highest of the data and of what the axis was asked to hold. */
function reach(
  values: readonly number[],
  from: number | undefined,
  to: number | undefined,
): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values.concat(from ?? [], to ?? [])) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}

function scaleOf(axis: CheckedChart["x"], values: readonly number[], most: number): Scale {
  const [low, high] = reach(values, axis.from, axis.to);
  return axis.scale === "log" ? logScale(low, high, most) : linearScale(low, high, most);
}

const allX = ({ points, band }: CheckedSeries): number[] => [
  ...points.map(({ x }) => x),
  ...band.map(({ x }) => x),
];
const allY = ({ points, band }: CheckedSeries): number[] => [
  ...points.map(({ y }) => y),
  ...band.flatMap(({ low, high }) => [low, high]),
];

function pathOf(points: readonly Point[]): string {
  return points.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${fixed(x)} ${fixed(y)}`).join("");
}

function drawAxes(chart: CheckedChart, plot: Plot, palette: Palette): string[] {
  const { left, top, width, height, x, y } = plot;
  const [right, bottom] = [left + width, top + height];
  const grid: string[] = [];
  const texts: string[] = [];
  for (const { value, text } of y.ticks) {
    const at = bottom - y.share(value) * height;
    grid.push(`M${fixed(left)} ${fixed(at)}L${fixed(right)} ${fixed(at)}`);
    texts.push(textTag({ text, x: left - 8, y: at + 4, anchor: "end", size: TEXT }, palette.soft));
  }
  let free = Number.NEGATIVE_INFINITY;
  for (const { value, text } of x.ticks) {
    const at = left + x.share(value) * width;
    grid.push(`M${fixed(at)} ${fixed(top)}L${fixed(at)} ${fixed(bottom)}`);
    const half = textWidth(text, TEXT) / 2;
    // A number that would touch its neighbour is left out; its line stays.
    if (at - half < free) continue;
    free = at + half + 6;
    texts.push(textTag({ text, x: at, y: bottom + 18, anchor: "middle", size: TEXT }, palette.soft));
  }
  const frame = `M${fixed(left)} ${fixed(top)}L${fixed(left)} ${fixed(bottom)}L${fixed(right)} ${fixed(bottom)}`;
  const room = right - MARGIN;
  const yCaption = shortened(chart.y.caption, room, TEXT, true);
  const xCaption = shortened(chart.x.caption, room, TEXT, true);
  const bold = { size: TEXT, bold: true } as const;
  return [
    tag("path", { d: grid.join(""), fill: "none", stroke: palette.grid, "stroke-width": 1 }),
    tag("path", { d: frame, fill: "none", stroke: palette.soft, "stroke-width": 1.5 }),
    ...texts,
    textTag(
      { text: yCaption, full: chart.y.caption, x: MARGIN, y: top - 12, anchor: "start", ...bold },
      palette.ink,
    ),
    textTag(
      { text: xCaption, full: chart.x.caption, x: right, y: bottom + 38, anchor: "end", ...bold },
      palette.ink,
    ),
  ];
}

function placeIn(plot: Plot, x: number, y: number): Point {
  return {
    x: plot.left + plot.x.share(x) * plot.width,
    y: plot.top + (1 - plot.y.share(y)) * plot.height,
  };
}

function drawBand(one: CheckedSeries, index: number, plot: Plot, palette: Palette): string[] {
  const { colour, dash } = seriesLook(index, palette);
  const place = (x: number, y: number): Point => placeIn(plot, x, y);
  const out: string[] = [];
  if (one.band.length > 0) {
    const low = one.band.map((point) => place(point.x, point.low));
    const high = one.band.map((point) => place(point.x, point.high));
    const edge = { fill: "none", stroke: colour, "stroke-width": 1.2, "stroke-dasharray": dash };
    out.push(
      tag("path", { d: `${pathOf([...high, ...low.reverse()])}Z`, fill: colour, "fill-opacity": 0.13 }),
      tag("path", { d: pathOf(high), ...edge }),
      tag("path", { d: pathOf([...low].reverse()), ...edge }),
    );
  }
  return out;
}

function drawLine(one: CheckedSeries, index: number, plot: Plot, palette: Palette): string[] {
  const { colour, dash, shape } = seriesLook(index, palette);
  const out: string[] = [];
  const line = one.points.map(({ x, y }) => placeIn(plot, x, y));
  if (line.length > 1) {
    const look = {
      stroke: colour,
      "stroke-width": 2.2,
      "stroke-dasharray": dash,
      "stroke-linejoin": "round",
    };
    out.push(tag("path", { d: pathOf(line), fill: "none", ...look }));
  }
  // A single point would not show as a line.
  if (one.marked || line.length === 1)
    for (const { x, y } of line) out.push(marker(shape, x, y, colour, palette));
  return out;
}

/** Where a series ends on the right, as a share of the height from the top; its key stands there. */
function endOf(one: CheckedSeries, plot: Plot): Point {
  const last = one.points.at(-1);
  if (last !== undefined) return placeIn(plot, last.x, last.y);
  // A series without points has a band.
  const { x, low, high } = one.band.at(-1) as BandPoint;
  return placeIn(plot, x, middleOf(plot, low, high));
}

/** The value whose place is midway between two, on either kind of axis. */
function middleOf({ y }: Plot, low: number, high: number): number {
  const straight = (low + high) / 2;
  return Math.abs(y.share(straight) - (y.share(low) + y.share(high)) / 2) < 1e-9
    ? straight
    : Math.sqrt(low * high);
}

function sentences(chart: CheckedChart): string {
  const range = (values: readonly number[]): string => {
    const [low, high] = reach(values, undefined, undefined);
    return `${tickText(Number(low.toPrecision(4)))} to ${tickText(Number(high.toPrecision(4)))}`;
  };
  const list = chart.series.map((one) => `${one.label}: ${range(allY(one))} over ${range(allX(one))}`);
  const levels = chart.levels.map(({ label, y }) => `${label}: ${tickText(Number(y.toPrecision(4)))}`);
  const parts = [`${chart.y.caption} against ${chart.x.caption}`, ...list, ...levels];
  return `${parts.join(". ")}.${chart.note === "" ? "" : ` ${chart.note}`}`;
}

/**
 * Chart of curves and bands with axes of its own, from plain numbers; an SVG picture as text. Curves differ in dash, marker and
 * label, not in colour alone.
 *
 * Axes end at ticks of 1, 2 or 5 times a power of ten and hold all data: nothing is cut off. The key stands at the curves' ends.
 * @param input.title - heading
 * @param input.x - axis to the right: label, unit, linear or log, values to hold besides the data
 * @param input.y - axis upwards
 * @param input.series - curves, bands, or curves in bands, 1 to 12, with 20 000 points each at most; values within ±1e100, above 0 on a log axis
 * @param input.levels - horizontal lines to compare with, with their labels
 * @param input.note - remark under the picture
 * @param input.description - the picture in words; made from the data if left out
 * @param input.width - width, 280 to 4000; 720 if left out
 * @param input.theme - light or dark, each with its own background; light if left out
 * @param input.id - start of the ids in the picture, unique on the page; from the content if left out
 * @returns the picture; the same input gives the same bytes
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`, `unknown-name`, `wrong-type`, `malformed-text`
 * @example
 * ```ts
 * const points = [{ x: 0, y: 20 }, { x: 30, y: 140 }, { x: 60, y: 200 }];
 * const svg = curveChart({
 *   title: "As measured", x: { label: "Time", unit: "min" }, y: { label: "Air", unit: "°C" },
 *   series: [{ label: "Monday", points, marked: true }],
 * });
 * [svg.startsWith("<svg "), svg.includes(">Time, min</text>")] // => [true, true]
 * ```
 * @since 0.1.0
 */
export function curveChart(input: CurveInput): string {
  const { width = WIDTH, theme, id } = given(input);
  checkBetween("width", width, 280, 4000);
  const palette = paletteOf(theme);
  checkPictureId(id);
  const chart = checkedChart(input);
  const said =
    input.description === undefined ? sentences(chart) : namedText("description", input.description);
  const titles = wrapped(chart.title, width - 2 * MARGIN, TITLE, true);
  const entries: Omit<KeyEntry, "end">[] = [
    ...chart.series.map((one, index) => ({
      label: one.label,
      index,
      band: one.points.length === 0,
      marked: one.marked,
    })),
    ...chart.levels.map(({ label }) => ({ label, index: -1, band: false, marked: false })),
  ];
  const beside = width >= NARROW;
  const keyRoom = beside ? keyWidth(entries, 0.3 * width) : 0;
  const top = MARGIN + titles.length * (TITLE + 6) + 34;
  const height = Math.max(
    beside ? 0.52 * (width - keyRoom) : 0.62 * width,
    190,
    beside ? entries.length * KEY_PITCH : 0,
  );
  const ys = [...chart.series.flatMap(allY), ...chart.levels.map((level) => level.y)];
  const y = scaleOf(chart.y, ys, Math.max(3, Math.floor(height / 48)));
  const left = MARGIN + Math.max(...y.ticks.map(({ text }) => textWidth(text, TEXT))) + 10;
  const plotWidth = width - left - MARGIN - keyRoom;
  const x = scaleOf(chart.x, chart.series.flatMap(allX), Math.max(2, Math.floor(plotWidth / 70)));
  const plot: Plot = { left, top, width: plotWidth, height, x, y };
  const [right, bottom] = [left + plotWidth, top + height];
  const level = (value: number): number => bottom - y.share(value) * height;
  const ends = [
    ...chart.series.map((one) => endOf(one, plot)),
    ...chart.levels.map((one) => ({ x: right, y: level(one.y) })),
  ];
  const keyed = entries.map((entry, i): KeyEntry => ({ ...entry, end: ends[i] as Point }));
  const key = beside
    ? drawKeyColumn({
        entries: keyed,
        left: right + KEY_GAP,
        room: keyRoom - KEY_GAP - 38,
        right,
        top,
        bottom,
        palette,
      })
    : drawKeyRows({ entries: keyed, left: MARGIN, top: bottom + 56, room: width - 2 * MARGIN, palette });
  const notes = wrapped(chart.note, width - 2 * MARGIN, NOTE);
  const under = beside ? bottom + 46 : key.bottom;
  const body = [
    ...titles.map((text, i) => {
      const at = { x: MARGIN, y: MARGIN + TITLE + i * (TITLE + 6), anchor: "start" } as const;
      return textTag({ text, ...at, size: TITLE, bold: true }, palette.ink);
    }),
    ...drawAxes(chart, plot, palette),
    ...chart.levels.map((one) => {
      const at = fixed(level(one.y));
      return tag("path", {
        d: `M${fixed(left)} ${at}L${fixed(right)} ${at}`,
        stroke: palette.ink,
        "stroke-width": 1.2,
        "stroke-dasharray": "1 3",
      });
    }),
    // Bands first: a curve must not vanish under another one's band.
    ...chart.series.flatMap((one, i) => drawBand(one, i, plot, palette)),
    ...chart.series.flatMap((one, i) => drawLine(one, i, plot, palette)),
    ...key.body,
    ...notes.map((text, i) =>
      textTag({ text, x: MARGIN, y: under + 14 + i * (NOTE + 6), anchor: "start", size: NOTE }, palette.soft),
    ),
  ];
  const total = under + notes.length * (NOTE + 6) + MARGIN;
  return picture({ id, title: chart.title, description: said, width, height: total, palette, body });
}

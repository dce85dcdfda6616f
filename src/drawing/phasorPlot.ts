/** The plot of a phasor diagram: potentials as points, voltages as lines between them. */
import type { Complex } from "../numeric/index.ts";
import { around, type Box, type Point } from "./geometry.ts";
import { around8, LabelPlacer, type Obstacle } from "./labelPlace.ts";
import type { PhasorData } from "./phasorData.ts";
import { kindLine } from "./phasorTable.ts";
import { fixed, type PlacedText, tag, textTag } from "./svg.ts";
import type { Palette } from "./theme.ts";

const TEXT = 12;
const ROOM = 36;
const HEAD = 9;

const lineOf = (a: Point, b: Point): string => `M${fixed(a.x)} ${fixed(a.y)}L${fixed(b.x)} ${fixed(b.y)}`;
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** From potentials to places: turned so that a real one points up, to one scale in both directions. */
function fitted(points: readonly Complex[], plot: Box): (z: Complex) => Point {
  const turned = points.map(({ re, im }) => ({ x: -im, y: -re }));
  const [xs, ys] = [turned.map(({ x }) => x), turned.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const spans = [(plot.width - 2 * ROOM) / (right - left), (plot.height - 2 * ROOM) / (bottom - top)];
  const scale = Math.min(...spans.filter(Number.isFinite));
  const [cx, cy] = [plot.x + plot.width / 2, plot.y + plot.height / 2];
  return ({ re, im }) => ({
    x: cx + scale * (-im - (left + right) / 2),
    y: cy + scale * (-re - (top + bottom) / 2),
  });
}

/** The point one head's length before the end. */
function shortOf(from: Point, to: Point): Point {
  const t = Math.max(0, 1 - HEAD / apart(from, to));
  return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
}

function arrowHead(from: Point, to: Point, fill: string, wide = 1): string {
  const length = apart(from, to);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const base = { x: to.x - HEAD * ux, y: to.y - HEAD * uy };
  const corner = (side: number): string =>
    `L${fixed(base.x - side * wide * 3.6 * uy)} ${fixed(base.y + side * wide * 3.6 * ux)}`;
  return tag("path", { d: `M${fixed(to.x)} ${fixed(to.y)}${corner(1)}${corner(-1)}Z`, fill });
}

/** Places for an arrow's number: beside it, at its middle first. */
function numbersAlong(text: string, a: Point, b: Point): readonly PlacedText[] {
  const length = apart(a, b);
  const [nx, ny] = [-(b.y - a.y) / length, (b.x - a.x) / length];
  return [11, 19].flatMap((off) =>
    [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].flatMap((t) =>
      [1, -1].map((side): PlacedText => {
        const x = a.x + t * (b.x - a.x) + side * off * nx;
        const y = a.y + t * (b.y - a.y) + side * off * ny + 0.36 * TEXT;
        return { text, x, y, anchor: "middle", size: TEXT, bold: true };
      }),
    ),
  );
}

/** Draws the plot; `numbered` branches carry their number. */
export function drawPhasors(
  data: PhasorData,
  plot: Box,
  palette: Palette,
  numbered: number,
): readonly string[] {
  const { supply, lines, stars, branches } = data;
  const origin: Complex = { re: 0, im: 0 };
  const held = <T extends { at: Complex | null }>(some: readonly T[]) =>
    some.filter((one): one is T & { at: Complex } => one.at !== null);
  const place = fitted([...[...supply, ...held(lines), ...held(stars)].map(({ at }) => at), origin], plot);
  const corners = supply.map(({ at }) => place(at));
  const neutral = place(origin);
  const sides: Obstacle[] = corners.map((from, i) => ({ from, to: corners[(i + 1) % 3] as Point }));
  const module = held(lines).map(({ name, at }) => ({ name, at: place(at) }));
  const arrows = branches.slice(0, numbered).flatMap(({ from, to, open }, i) => {
    if (from === null || to === null) return [];
    const [a, b] = [place(to), place(from)];
    return apart(a, b) > 2 ? [{ from: a, to: b, open, number: String(i + 1) }] : [];
  });
  const shifts = held(stars)
    .map(({ at }) => ({ from: neutral, to: place(at) }))
    .filter(({ from, to }) => apart(from, to) > 3);
  const body: string[] = [];
  for (const { from, to } of sides) {
    body.push(tag("path", { d: lineOf(from, to), fill: "none", stroke: palette.edge, "stroke-width": 5 }));
  }
  module.forEach(({ at }, i) => {
    const next = (module[(i + 1) % module.length] as { readonly at: Point }).at;
    if (apart(at, next) > 2) body.push(kindLine("line", lineOf(at, next), palette));
  });
  for (const { from, to, open } of arrows) {
    const dash = open ? { "stroke-dasharray": "1 5", "stroke-linecap": "round" } : {};
    body.push(kindLine("branch", lineOf(from, to), palette, dash));
    body.push(arrowHead(from, to, palette.ink));
  }
  for (const { from, to } of shifts) {
    // The hollow line ends where its head begins.
    const neck = shortOf(from, to);
    body.push(kindLine("displacement", lineOf(from, neck), palette));
    body.push(arrowHead(from, to, palette.bad, 1.7));
  }
  const cross = `M${fixed(neutral.x - 6)} ${fixed(neutral.y)}h12M${fixed(neutral.x)} ${fixed(neutral.y - 6)}v12`;
  body.push(tag("path", { d: cross, fill: "none", stroke: palette.ink, "stroke-width": 1.5 }));

  const placer = new LabelPlacer(plot, [...sides, ...arrows, ...shifts]);
  const points: { at: Point; names: string[]; fill: string; ring: boolean }[] = [];
  const point = (at: Point, name: string, ring: boolean): void => {
    const same = points.find((one) => apart(one.at, at) < 9);
    if (same === undefined) points.push({ at, names: [name], fill: palette.ink, ring });
    else if (!same.names.includes(name)) same.names.push(name);
  };
  supply.forEach(({ name, lost }, i) => {
    point(corners[i] as Point, lost ? `${name} lost` : name, false);
  });
  point(neutral, "N", true);
  for (const { name, at } of held(stars)) point(place(at), name, false);
  module.forEach(({ name, at }) => {
    const corner = supply.find((one) => one.name === name);
    // A line that is lost, or sags behind its source resistance, ends elsewhere at the module.
    if (corner !== undefined && apart(place(corner.at), at) >= 9)
      point(at, corner.lost ? name : `${name} module`, false);
  });
  for (const { at } of points) placer.block(around(at.x, at.y, 5, 5));
  // The cross of a lost line is larger than a point.
  supply.forEach(({ lost }, i) => {
    const { x, y } = corners[i] as Point;
    if (lost) placer.block(around(x, y, 9, 9));
  });
  for (const { at, ring } of points) {
    if (!ring) body.push(tag("circle", { cx: at.x, cy: at.y, r: 3.4, fill: palette.ink }));
  }
  supply.forEach(({ lost }, i) => {
    if (!lost) return;
    const { x, y } = corners[i] as Point;
    const d = `M${fixed(x - 8)} ${fixed(y - 8)}L${fixed(x + 8)} ${fixed(y + 8)}M${fixed(x - 8)} ${fixed(y + 8)}L${fixed(x + 8)} ${fixed(y - 8)}`;
    body.push(tag("path", { d, fill: "none", stroke: palette.bad, "stroke-width": 2.6 }));
  });
  for (const { at, names } of points) {
    const away = apart(at, neutral) < 1 ? { x: at.x - 1, y: at.y - 1 } : neutral;
    const text = names.join(" = ");
    body.push(textTag(placer.place(around8(text, at, away, { size: TEXT, bold: true })), palette.ink));
  }
  for (const { from, to, number } of arrows) {
    body.push(textTag(placer.place(numbersAlong(number, from, to)), palette.ink));
  }
  return body;
}

/** Symbols and marks of a connection diagram, told apart by shape. */
import type { DiagramMark, DiagramState, DiagramSymbol } from "./diagramTypes.ts";
import { fixed, tag } from "./svg.ts";
import type { Palette } from "./theme.ts";

const LINE = 1.5;
const HEAVY = 2.6;
const CROSS_ARM = 8;

type Draw = (symbol: DiagramSymbol, palette: Palette) => string;

const path = (d: string, stroke: string, width = LINE, more = {}): string =>
  tag("path", {
    d,
    fill: "none",
    stroke,
    "stroke-width": width,
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
    ...more,
  });

const at = (parts: readonly (string | number)[]): string =>
  parts.map((part) => (typeof part === "number" ? fixed(part) : part)).join(" ");

/** A diagonal cross over a break. */
function cross({ x, y }: DiagramSymbol, palette: Palette): string {
  const a = CROSS_ARM;
  return path(
    at(["M", x - a, y - a, "L", x + a, y + a, "M", x - a, y + a, "L", x + a, y - a]),
    palette.bad,
    HEAVY,
  );
}

/** A rectangle as IEC 60617 draws a resistor; broken in its middle if open, bridged by a double line if shorted. */
const element: Draw = (symbol, palette) => {
  const { x, y, state, box } = symbol;
  const [left, right, top, bottom] = [box.x, box.x + box.width, y - 7.5, y + 7.5];
  if (state === "open") {
    const half = (from: number, to: number): string =>
      at(["M", to, top, "L", from, top, "L", from, bottom, "L", to, bottom]);
    return path(`${half(left, x - 11)} ${half(right, x + 11)}`, palette.ink) + cross(symbol, palette);
  }
  const dashed = state === "shorted" ? { "stroke-dasharray": "3 3" } : {};
  const body = { x: left, y: top, width: right - left, height: 15 };
  const rect = tag("rect", {
    ...body,
    fill: palette.background,
    stroke: palette.ink,
    "stroke-width": LINE,
    ...dashed,
  });
  if (state !== "shorted") return rect;
  const bridge = at(["M", left, y - 2.5, "L", right, y - 2.5, "M", left, y + 2.5, "L", right, y + 2.5]);
  const ends = at(["M", left, y - 5, "L", left, y + 5, "M", right, y - 5, "L", right, y + 5]);
  return rect + path(bridge, palette.bad, 2.2) + path(ends, palette.bad, 2.2);
};

function ring({ x, y }: DiagramSymbol, r: number, stroke: string, width: number, fill: string): string {
  return tag("circle", { cx: x, cy: y, r, fill, stroke, "stroke-width": width });
}

/** Wire up to a ring that is narrower than the symbol's place. */
function leads({ x, y, pins }: DiagramSymbol, r: number, palette: Palette): string {
  const [a, b] = [pins[0]?.x ?? x - r, pins[1]?.x ?? x + r];
  return path(at(["M", a, y, "L", x - r, y, "M", x + r, y, "L", b, y]), palette.ink);
}

/** An open circle, as of a terminal, in the line; thick-ringed if hot, crossed if open. */
const joint: Draw = (symbol, palette) => {
  const { state } = symbol;
  if (state === "hot joint") return ring(symbol, 7, palette.bad, 4.6, palette.background);
  const plain = leads(symbol, 5, palette) + ring(symbol, 5, palette.ink, LINE, palette.background);
  if (state === "open")
    return (
      leads(symbol, 9, palette) +
      ring(symbol, 5, palette.ink, LINE, palette.background) +
      cross(symbol, palette)
    );
  if (state !== "shorted") return plain;
  const { x, y } = symbol;
  return (
    plain +
    path(at(["M", x - 9, y - 2, "L", x + 9, y - 2, "M", x - 9, y + 2, "L", x + 9, y + 2]), palette.bad, 2.2)
  );
};

/** A flat bar between two bolts; a conductor is the bare heavy line between ticks. */
const bar: Draw = (symbol, palette) => {
  const { x, y, state, kind, box } = symbol;
  const [left, right] = [box.x, box.x + box.width];
  const faulty = state === "hot joint" || state === "open" || state === "shorted";
  const gap = state === "open" ? 11 : 0;
  const pieces =
    gap === 0
      ? at(["M", left, y, "L", right, y])
      : at(["M", left, y, "L", x - gap, y, "M", x + gap, y, "L", right, y]);
  const heavy = path(pieces, palette.ink, 4.4, { "stroke-linecap": "butt" });
  const end = (cx: number): string =>
    kind === "jumper bar"
      ? tag("circle", {
          cx,
          cy: y,
          r: 4,
          fill: palette.background,
          stroke: palette.ink,
          "stroke-width": LINE,
        })
      : path(at(["M", cx, y - 5.5, "L", cx, y + 5.5]), palette.ink);
  const inset = kind === "jumper bar" ? 4 : 0.75;
  const base = heavy + end(left + inset) + end(right - inset);
  if (!faulty) return base;
  if (state === "open") return base + cross(symbol, palette);
  if (state === "hot joint") return base + ring(symbol, 7, palette.bad, 4.6, palette.background);
  return base + path(at(["M", left, y - 4.5, "L", right, y - 4.5]), palette.bad, 2.2);
};

/** A line that has lost its voltage: both ends of the break and a cross. */
const lineBreak: Draw = (symbol, palette) => leads(symbol, 9, palette) + cross(symbol, palette);

const terminal: Draw = (symbol, palette) => ring(symbol, 4.5, palette.ink, LINE, palette.background);

const earth: Draw = ({ x, y }, palette) => {
  const bars = [
    [7, -3],
    [4.5, 0.7],
    [2, 4.4],
  ].map(([half = 0, down = 0]) => at(["M", x - half, y + down, "L", x + half, y + down]));
  const circle = tag("circle", {
    cx: x,
    cy: y,
    r: 11,
    fill: "none",
    stroke: palette.ink,
    "stroke-width": LINE,
  });
  return circle + path(at(["M", x, y - 11, "L", x, y - 3, ...bars]), palette.ink, LINE);
};

const star: Draw = ({ x, y }, palette) =>
  path(
    at(["M", x, y, "L", x, y + 6.5, "M", x, y, "L", x - 6, y - 5, "M", x, y, "L", x + 6, y - 5]),
    palette.ink,
    1.8,
  );

const delta: Draw = ({ x, y }, palette) =>
  path(at(["M", x, y - 6, "L", x + 6.5, y + 5.5, "L", x - 6.5, y + 5.5, "Z"]), palette.ink, 1.8);

const DRAW: Readonly<Record<DiagramSymbol["kind"], Draw>> = {
  element,
  joint,
  "jumper bar": bar,
  conductor: bar,
  "line break": lineBreak,
  terminal,
  "protective earth": earth,
  star,
  delta,
};

/** One symbol as markup. */
export const drawSymbol: Draw = (symbol, palette) => DRAW[symbol.kind](symbol, palette);

/** The mark beside a state's word: tick, question mark's hook, or the fault's own sign in small. */
export function drawMark({ x, y, state }: DiagramMark, palette: Palette): string {
  const shapes: Readonly<Record<DiagramState, string>> = {
    within: path(at(["M", x - 4, y, "L", x - 1.2, y + 3.2, "L", x + 4.2, y - 3.6]), palette.good, 2),
    outside: path(at(["M", x, y - 4.4, "L", x + 4.4, y + 3.6, "L", x - 4.4, y + 3.6, "Z"]), palette.bad, 1.8),
    undecided:
      path(
        at(["M", x - 4.2, y - 1.8, "Q", x - 2.1, y - 4.8, x, y - 1.8, "T", x + 4.2, y - 1.8]),
        palette.doubt,
        1.8,
      ) +
      path(
        at(["M", x - 4.2, y + 2.8, "Q", x - 2.1, y - 0.2, x, y + 2.8, "T", x + 4.2, y + 2.8]),
        palette.doubt,
        1.8,
      ),
    open: path(
      at(["M", x - 3.8, y - 3.8, "L", x + 3.8, y + 3.8, "M", x - 3.8, y + 3.8, "L", x + 3.8, y - 3.8]),
      palette.bad,
      2,
    ),
    lost: path(
      at(["M", x - 3.8, y - 3.8, "L", x + 3.8, y + 3.8, "M", x - 3.8, y + 3.8, "L", x + 3.8, y - 3.8]),
      palette.bad,
      2,
    ),
    shorted: path(
      at(["M", x - 4, y - 2, "L", x + 4, y - 2, "M", x - 4, y + 2, "L", x + 4, y + 2]),
      palette.bad,
      2,
    ),
    "hot joint": tag("circle", {
      cx: x,
      cy: y,
      r: 3.2,
      fill: "none",
      stroke: palette.bad,
      "stroke-width": 2.8,
    }),
  };
  return shapes[state];
}

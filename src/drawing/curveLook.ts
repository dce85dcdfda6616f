/** How curves differ: dash and marker first, colour besides. */
import { fixed, tag } from "./svg.ts";
import type { Palette } from "./theme.ts";

const DASHES = [undefined, "8 4", "2.5 3", "10 3 2.5 3", "14 5", "6 2.5 1.5 2.5 1.5 2.5"] as const;
const SHAPES = ["circle", "square", "triangle", "diamond", "cross", "plus"] as const;

type Shape = (typeof SHAPES)[number];

interface SeriesLook {
  readonly colour: string;
  readonly dash: string | undefined;
  readonly shape: Shape;
}

/** Colour, dash and marker of the nth curve; the second six shift the dashes against the colours. */
export function seriesLook(index: number, palette: Palette): SeriesLook {
  const round = Math.floor(index / DASHES.length);
  return {
    colour: palette.series[index % palette.series.length] as string,
    dash: DASHES[(index + 3 * round) % DASHES.length],
    shape: SHAPES[index % SHAPES.length] as Shape,
  };
}

/** One marker around a point. */
export function marker(shape: Shape, x: number, y: number, colour: string, palette: Palette): string {
  const r = 3.4;
  const path = (d: readonly (string | number)[], fill: string): string => {
    const text = d.map((part) => (typeof part === "number" ? fixed(part) : part)).join(" ");
    return tag("path", { d: text, fill, stroke: colour, "stroke-width": 1.5 });
  };
  const paper = palette.background;
  if (shape === "circle") {
    return tag("circle", { cx: x, cy: y, r, fill: paper, stroke: colour, "stroke-width": 1.5 });
  }
  if (shape === "square") {
    return path(["M", x - 3, y - 3, "L", x + 3, y - 3, "L", x + 3, y + 3, "L", x - 3, y + 3, "Z"], paper);
  }
  if (shape === "triangle") {
    return path(["M", x, y - 4, "L", x + 3.8, y + 3, "L", x - 3.8, y + 3, "Z"], paper);
  }
  if (shape === "diamond") {
    return path(["M", x, y - 4.4, "L", x + 4.4, y, "L", x, y + 4.4, "L", x - 4.4, y, "Z"], paper);
  }
  return shape === "cross"
    ? path(["M", x - r, y - r, "L", x + r, y + r, "M", x - r, y + r, "L", x + r, y - r], "none")
    : path(["M", x - 4, y, "L", x + 4, y, "M", x, y - 4, "L", x, y + 4], "none");
}

/** The phasor diagram of an energised module as an SVG picture. */
import type { HeatingModule, ModulePlan, Supply } from "../circuit/index.ts";
import { angleDegrees, type Complex, modulus } from "../numeric/index.ts";
import { checkBetween, fail, formatQuantity, given, volts } from "../quantity/index.ts";
import type { PictureStyle } from "./diagramTypes.ts";
import { builtModule } from "./moduleTree.ts";
import { between, type PhasorData, phasorData } from "./phasorData.ts";
import { drawPhasors } from "./phasorPlot.ts";
import { drawTable, type TableSection } from "./phasorTable.ts";
import { checkPictureId, type DescribedPicture, picture, textTag } from "./svg.ts";
import { namedText, wrapped } from "./text.ts";
import { paletteOf } from "./theme.ts";

const WIDTH = 760;
const NARROW = 620;
const MARGIN = 16;
const TITLE = 17;
const NOTE = 11;
const MOST_ROWS = 40;

/** Voltage and angle as printed. What is below a millionth of the supply is nothing, and has no angle. */
function printed(value: Complex | null, scale: number): { readonly volts: string; readonly angle: string } {
  if (value === null) return { volts: "floats", angle: "" };
  const size = modulus(value);
  const none = size <= 1e-6 * scale;
  const decimals = scale >= 20 ? 1 : 3;
  const text = formatQuantity(volts(none ? 0 : size), { unit: "V", decimals, nonBreakingSpace: true });
  if (none) return { volts: text, angle: "" };
  const degrees = angleDegrees(value).toFixed(1);
  // −180.0 and −0.0 are 180.0 and 0.0.
  const plain = degrees === "-180.0" ? "180.0" : degrees === "-0.0" ? "0.0" : degrees;
  return { volts: text, angle: `${plain.replace("-", "−")}°` };
}

function sections(data: PhasorData): readonly TableSection[] {
  const { lines, stars, branches, scale } = data;
  const lineRows = lines.map(({ name, at }, i) => {
    const next = lines[(i + 1) % 3];
    const text = printed(between(at, next?.at ?? null), scale);
    return { tag: "", name: `${name} to ${next?.name}`, ...text };
  });
  const starRows = stars.map(({ name, at }) => ({ tag: "", name: `N to ${name}`, ...printed(at, scale) }));
  const shown = branches.slice(0, MOST_ROWS).map(({ name, from, to, open }, i) => {
    const text = printed(between(from, to), scale);
    return { tag: String(i + 1), name: open ? `${name}, open` : name, ...text };
  });
  const more = branches.length - shown.length;
  const rest = more > 0 ? [{ tag: "", name: `and ${more} more`, volts: "", angle: "" }] : [];
  return [
    { kind: "line", heading: "Line voltages at the module", rows: lineRows },
    ...(stars.length > 0
      ? [{ kind: "displacement", heading: "Star-point displacement", rows: starRows } as const]
      : []),
    { kind: "branch", heading: "Branch voltages", rows: [...shown, ...rest] },
  ];
}

function sentences(data: PhasorData, all: readonly TableSection[]): string {
  const lost = data.supply.filter((one) => one.lost).map(({ name }) => `Line ${name} lost.`);
  const parts = all.map(({ heading, rows }) => {
    const list = rows.map(
      ({ name, volts: size, angle }) => `${name} ${size}${angle === "" ? "" : ` at ${angle}`}`,
    );
    return `${heading}: ${list.join("; ")}.`;
  });
  return [...lost, ...parts].join(" ");
}

/**
 * Phasor diagram of a module under voltage: the supply's triangle, line voltages at the module, displacement of each star
 * point from the supply neutral, and branch voltages, with their numbers in a table; an SVG picture as text.
 *
 * Drawn to one scale with L1 of a balanced supply upwards; angles count anticlockwise as in the supply, L1 at 0°. Strings and
 * banks with the same voltage are one arrow. Of a lost line the module's side is drawn, which hangs on what is behind it.
 * @param input.module - the module, as planned or as built
 * @param input.supply - from one of the supply builders, with L1, L2 and L3
 * @param input.title - heading; `"Phasor diagram"` if left out
 * @param input.width - width, 280 to 4000; 760 if left out. Below 620 the table stands under the plot
 * @param input.theme - light or dark, each with its own background; light if left out
 * @param input.id - start of the ids in the picture, unique on the page; from the content if left out
 * @returns the picture; the same input gives the same bytes
 * @throws ElectroheatError as `buildModule` and `energise`; `missing` for a supply without one of the three lines
 * @source phasor definition; IEC 60445 (marks)
 * @example
 * ```ts
 * const module: ModulePlan = {
 *   banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }], elements: { "A-L1": "open" },
 * };
 * const svg = phasorDiagram({ module, supply: balancedSupply({ lineVoltage: volts(480) }) });
 * svg.includes("N to S 138.6\u00a0V at 180.0°") // => true
 * ```
 * @since 0.1.0
 */
export function phasorDiagram(
  input: {
    readonly module: HeatingModule | ModulePlan;
    readonly supply: Supply;
    readonly title?: string;
    readonly width?: number;
  } & PictureStyle,
): string {
  return phasorPicture(input).svg;
}

/** The same with its description. */
export function phasorPicture(input: Parameters<typeof phasorDiagram>[0]): DescribedPicture {
  const { module, supply, title = "Phasor diagram", width = WIDTH, theme, id } = given(input);
  checkBetween("width", width, 280, 4000);
  const palette = paletteOf(theme);
  checkPictureId(id);
  const built = builtModule(module);
  if (!Array.isArray(given(supply, "supply").lines)) {
    fail({ code: "missing", path: "supply.lines", expected: "a supply with lines", received: supply.lines });
  }
  for (const line of ["L1", "L2", "L3"]) {
    if (!supply.lines.some(({ node }) => node === line)) {
      fail({ code: "missing", path: "supply.lines", expected: `a line ${line}`, received: undefined });
    }
  }
  const data = phasorData(built, supply);
  const heading = namedText("title", title);
  const titles = wrapped(heading, width - 2 * MARGIN, TITLE, true);
  const top = MARGIN + titles.length * (TITLE + 6) + 8;
  const all = sections(data);
  const beside = width >= NARROW;
  const tableWidth = beside ? Math.max(300, 0.42 * width) : width - 2 * MARGIN;
  const plotWidth = beside ? width - tableWidth - 3 * MARGIN : width - 2 * MARGIN;
  const plotHeight = Math.min(0.94 * plotWidth, 460);
  const plot = { x: MARGIN, y: top, width: plotWidth, height: plotHeight };
  const tableTop = beside ? top : top + plotHeight + 14;
  const tableLeft = beside ? plotWidth + 2 * MARGIN : MARGIN;
  const table = drawTable({ sections: all, left: tableLeft, top: tableTop, width: tableWidth, palette });
  const lost = data.supply.some((one) => one.lost);
  const note = `Wide light lines: the supply. L1 of the supply points up; angles count anticlockwise from it. RMS values, resistances as given.${lost ? " Of a lost line the module's side bears the line's own name; it may be live." : ""}`;
  const notes = wrapped(note, width - 2 * MARGIN, NOTE);
  const bottom = Math.max(top + plotHeight, table.bottom) + 8;
  const body = [
    ...titles.map((text, i) => {
      const at = { x: MARGIN, y: MARGIN + TITLE + i * (TITLE + 6), anchor: "start" } as const;
      return textTag({ text, ...at, size: TITLE, bold: true }, palette.ink);
    }),
    ...drawPhasors(data, plot, palette, Math.min(MOST_ROWS, data.branches.length)),
    ...table.body,
    ...notes.map((text, i) => {
      const at = { x: MARGIN, y: bottom + NOTE + i * (NOTE + 6), anchor: "start" } as const;
      return textTag({ text, ...at, size: NOTE }, palette.soft);
    }),
  ];
  const height = bottom + notes.length * (NOTE + 6) + MARGIN;
  const description = sentences(data, all);
  return { svg: picture({ id, title: heading, description, width, height, palette, body }), description };
}

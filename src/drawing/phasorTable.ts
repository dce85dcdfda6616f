/** The numbers beside a phasor diagram, each section with a sample of its line. */
import { type Attributes, fixed, tag, textTag } from "./svg.ts";
import { shortened, textWidth } from "./text.ts";
import type { Palette } from "./theme.ts";

export interface TableSection {
  readonly kind: "line" | "displacement" | "branch";
  readonly heading: string;
  readonly rows: readonly {
    /** Number that the arrow carries. */
    readonly tag: string;
    readonly name: string;
    readonly volts: string;
    readonly angle: string;
  }[];
}

const TEXT = 12;
const PITCH = 20;
const SAMPLE = 26;

/** Stroke of each kind of line, in plot and table alike: told apart by weight and dash. */
function strokeOf(kind: TableSection["kind"], palette: Palette): Record<string, string | number> {
  if (kind === "line") return { stroke: palette.soft, "stroke-width": 1.4, "stroke-dasharray": "6 4" };
  if (kind === "branch") return { stroke: palette.ink, "stroke-width": 2 };
  return { stroke: palette.bad, "stroke-width": 6 };
}

/** A line of a kind as markup. The displacement is hollow: it often lies on a branch voltage. */
export function kindLine(
  kind: TableSection["kind"],
  d: string,
  palette: Palette,
  more: Attributes = {},
): string {
  const line = tag("path", { d, fill: "none", ...strokeOf(kind, palette), ...more });
  const core = { fill: "none", stroke: palette.background, "stroke-width": 2.4 };
  return kind === "displacement" ? line + tag("path", { d, ...core }) : line;
}

/** Draws the table; numbers are aligned at their right ends. */
export function drawTable(input: {
  readonly sections: readonly TableSection[];
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly palette: Palette;
}): { readonly body: readonly string[]; readonly bottom: number } {
  const { sections, left, top, width, palette } = input;
  const body: string[] = [];
  const right = left + width;
  const rows = sections.flatMap((section) => section.rows);
  const angleWidth = Math.max(...rows.map(({ angle }) => textWidth(angle, TEXT)));
  const voltsRight = right - angleWidth - 16;
  const voltsWidth = Math.max(...rows.map(({ volts }) => textWidth(volts, TEXT)));
  const nameLeft = left + SAMPLE + 10;
  const nameRoom = voltsRight - voltsWidth - 12 - nameLeft;
  let y = top;
  sections.forEach(({ kind, heading, rows: own }, i) => {
    y += i === 0 ? 14 : 26;
    const d = `M${fixed(left)} ${fixed(y - 4)}L${fixed(left + SAMPLE)} ${fixed(y - 4)}`;
    body.push(kindLine(kind, d, palette));
    const head = { x: nameLeft, y, anchor: "start", size: TEXT, bold: true } as const;
    body.push(
      textTag(
        { text: shortened(heading, right - nameLeft, TEXT, true), full: heading, ...head },
        palette.ink,
      ),
    );
    const rule = `M${fixed(left)} ${fixed(y + 7)}L${fixed(right)} ${fixed(y + 7)}`;
    body.push(tag("path", { d: rule, fill: "none", stroke: palette.edge, "stroke-width": 1 }));
    y += 4;
    for (const row of own) {
      y += PITCH;
      const name = shortened(row.name, nameRoom, TEXT);
      const look = { y, size: TEXT } as const;
      const cells = [
        { text: row.tag, x: left + SAMPLE, anchor: "end", bold: true, ...look },
        { text: name, full: row.name, x: nameLeft, anchor: "start", ...look },
        { text: row.volts, x: voltsRight, anchor: "end", ...look },
        { text: row.angle, x: right, anchor: "end", ...look },
      ] as const;
      for (const cell of cells) if (cell.text !== "") body.push(textTag(cell, palette.ink));
    }
  });
  return { body, bottom: y + 6 };
}

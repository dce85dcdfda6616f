/** The connection diagram of a module as an SVG picture. */
import { given } from "../quantity/index.ts";
import type { DrawnAs } from "./diagramKey.ts";
import { layoutOf } from "./diagramLayout.ts";
import { drawMark, drawSymbol } from "./diagramSymbols.ts";
import type { DiagramInput, DiagramLayout, DiagramText, PictureStyle } from "./diagramTypes.ts";
import { checkPictureId, type DescribedPicture, fixed, picture, tag, textTag } from "./svg.ts";
import { type Palette, paletteOf } from "./theme.ts";

/** Colour of a text by what it is; a fault's word has the colour of its mark. */
function inkOf(text: DiagramText, palette: Palette): string {
  if (text.role === "state") {
    return text.text === "within" ? palette.good : text.text === "undecided" ? palette.doubt : palette.bad;
  }
  return text.role === "value" || text.role === "note" || text.role === "key" ? palette.soft : palette.ink;
}

function drawn(layout: DiagramLayout, palette: Palette): readonly string[] {
  const panels = layout.panels.map(({ box }) =>
    tag("rect", { ...box, rx: 6, fill: palette.panel, stroke: palette.edge }),
  );
  const frame =
    layout.frame === null
      ? []
      : [
          tag("rect", {
            ...layout.frame,
            rx: 8,
            fill: "none",
            stroke: palette.soft,
            "stroke-dasharray": "7 4",
          }),
        ];
  const paths = layout.wires.map(({ points }) =>
    points.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${fixed(x)} ${fixed(y)}`).join(""),
  );
  const line = {
    fill: "none",
    stroke: palette.ink,
    "stroke-width": 1.5,
    "stroke-linejoin": "round",
    "stroke-linecap": "round",
  };
  return [
    ...panels,
    ...frame,
    tag("path", { d: paths.join(""), ...line }),
    ...layout.dots.map(({ x, y }) => tag("circle", { cx: x, cy: y, r: 3, fill: palette.ink })),
    ...layout.symbols.map((symbol) => drawSymbol(symbol, palette)),
    ...layout.marks.map((mark) => drawMark(mark, palette)),
    ...layout.texts.map((text) => textTag(text, inkOf(text, palette))),
  ];
}

/**
 * Connection diagram of a heating module: every element and joint in its place between lines and star points, with labels,
 * values and states; an SVG picture as text.
 *
 * Open, shorted and hot joint differ in shape and word, not in colour alone. Joints and jumper bars have symbols of their own,
 * since a resistor's would read as an element; a key under the picture names them.
 * @param input.module - the module, as planned or as built, up to 2000 elements and joints
 * @param input.values - values by element or joint: number with unit, or text; the module's resistances if left out
 * @param input.states - states by element, joint or line: within, outside, undecided, open, shorted, hot joint, lost. What
 *   the module itself says (open, 0 Ω) stands where nothing is given
 * @param input.labels - other labels by element, joint, bank, line or star point; long ones are shortened, with the whole as title
 * @param input.title - heading; `"Connection diagram"` if left out
 * @param input.width - width to lay it out for, 280 to 4000; 960 if left out. Banks stand side by side as far as it allows
 * @param input.protectiveEarth - draws the frame and its protective earth; off if left out
 * @param input.theme - light or dark, each with its own background; light if left out
 * @param input.id - start of the ids in the picture, unique on the page; from the content if left out
 * @returns the picture; the same input gives the same bytes
 * @throws ElectroheatError as `buildModule`, and `unknown-name` for a name that the module does not have, `inconsistent` for a
 *   state that does not fit, `wrong-type`, `not-a-number`, `out-of-range`, `malformed-text`
 * @source IEC 60617 (resistor, terminal, connection, protective earth), IEC 60445 (L1, L2, L3, N, PE)
 * @example
 * ```ts
 * const module: ModulePlan = {
 *   banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }],
 *   elements: { "A-L1": "open" },
 * };
 * const svg = connectionDiagram({ module, title: "Curing oven, as found" });
 * [svg.startsWith("<svg "), svg.includes(">A-L1</text>"), svg.includes(">open</text>")] // => [true, true, true]
 * ```
 * @since 0.1.0
 */
export function connectionDiagram(input: DiagramInput & PictureStyle): string {
  return diagramPicture(input, "elements").svg;
}

/** The same with its description; its resistors may stand for whole branches. */
export function diagramPicture(input: DiagramInput & PictureStyle, symbols: DrawnAs): DescribedPicture {
  given(input);
  const palette = paletteOf(input.theme);
  checkPictureId(input.id);
  const layout = layoutOf(input, symbols);
  const { title, description, width, height } = layout;
  const body = drawn(layout, palette);
  return { svg: picture({ id: input.id, title, description, width, height, palette, body }), description };
}

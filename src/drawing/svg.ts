/** SVG as strings. Presentation attributes only: no style element or script, which sanitisers and page policies strip. */
import { fail } from "../quantity/index.ts";
import { escapeText, isMeasured, textWidth } from "./text.ts";
import type { Palette } from "./theme.ts";

/** A number with at most two decimals and no sign on zero: the same digits on every machine. */
export function fixed(value: number): string {
  const text = value.toFixed(2).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One element; children are finished markup, attribute values are escaped here. */
export function tag(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let out = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    out += ` ${key}="${typeof value === "number" ? fixed(value) : escapeText(value)}"`;
  }
  return children.length === 0 ? `${out}/>` : `${out}>${children.join("")}</${name}>`;
}

/**
 * A line of text as placed.
 * @since 0.1.0
 */
export interface PlacedText {
  /** What is written. */
  readonly text: string;
  /** The whole text where `text` is a shortened one. */
  readonly full?: string;
  /** Place of its start, middle or end, by `anchor`. */
  readonly x: number;
  /** Its baseline. */
  readonly y: number;
  /** What `x` is the place of. */
  readonly anchor: "start" | "middle" | "end";
  /** Font size. */
  readonly size: number;
  /** Bold; regular if left out. */
  readonly bold?: boolean;
}

/** A text element; what was shortened carries its whole text as a title. */
export function textTag(placed: PlacedText, fill: string): string {
  const { text, full, x, y, anchor, size, bold = false } = placed;
  const title = full === undefined || full === text ? "" : tag("title", {}, escapeText(full));
  // A character of unknown width is given the width that the layout reckoned with.
  const forced = isMeasured(text)
    ? {}
    : { textLength: textWidth(text, size, bold), lengthAdjust: "spacingAndGlyphs" };
  const place = { x, y, "text-anchor": anchor === "start" ? undefined : anchor };
  const look = { "font-size": size, "font-weight": bold ? "bold" : undefined, fill };
  return tag("text", { ...place, ...look, ...forced }, title + escapeText(text));
}

/** Thirty-two bits of FNV-1a as text: enough to tell the pictures of one page apart. */
function hash(text: string): string {
  let state = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) state = Math.imul(state ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return state.toString(16).padStart(8, "0");
}

/** Requires an id that XML, CSS and a fragment of an address all take as it is. */
export function checkPictureId(id: string | undefined): void {
  if (id === undefined || (typeof id === "string" && /^[A-Za-z][A-Za-z0-9_-]{0,63}$/.test(id))) return;
  const expected = "a letter, then up to 63 letters, digits, - or _";
  fail({
    code: typeof id === "string" ? "malformed-text" : "wrong-type",
    path: "id",
    expected,
    received: id,
  });
}

/** A picture and what it shows in sentences. */
export interface DescribedPicture {
  readonly svg: string;
  readonly description: string;
}

/** A whole picture with its title, description and background. */
export function picture(input: {
  readonly id: string | undefined;
  readonly title: string;
  readonly description: string;
  readonly width: number;
  readonly height: number;
  readonly palette: Palette;
  readonly body: readonly string[];
}): string {
  const { id, title, description, width, height, palette, body } = input;
  const inside = body.join("\n");
  const prefix = id ?? `picture-${hash(`${title}\n${description}\n${inside}`)}`;
  const background = { x: 0, y: 0, width, height, rx: 8, fill: palette.background };
  return tag(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width,
      height,
      viewBox: `0 0 ${fixed(width)} ${fixed(height)}`,
      role: "img",
      "aria-labelledby": `${prefix}-title ${prefix}-desc`,
      "font-family": "system-ui, sans-serif",
    },
    `\n${tag("title", { id: `${prefix}-title` }, escapeText(title))}`,
    `\n${tag("desc", { id: `${prefix}-desc` }, escapeText(description))}`,
    `\n${tag("rect", background)}`,
    `\n${inside}\n`,
  );
}

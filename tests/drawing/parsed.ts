/** A picture read back by a strict XML parser, and what the tests ask of every one. */
import { SaxesParser } from "saxes";

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** Parses a document; throws on anything that is not well-formed XML 1.0. */
export function parsed(svg: string): Element {
  const parser = new SaxesParser({ xmlns: false });
  const stack: Element[] = [{ name: "", attributes: {}, children: [], text: "" }];
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const element: Element = { name, attributes, children: [], text: "" };
    stack.at(-1)?.children.push(element);
    stack.push(element);
  });
  parser.on("text", (text) => {
    const top = stack.at(-1);
    if (top !== undefined) top.text += text;
  });
  parser.on("closetag", () => {
    stack.pop();
  });
  parser.write(svg).close();
  return stack[0]?.children[0] as Element;
}

/** An element and everything in it. */
export function everything(element: Element): Element[] {
  return [element, ...element.children.flatMap(everything)];
}

/** Texts as a reader sees them, without the titles in them. */
export function shownTexts(svg: string): string[] {
  return everything(parsed(svg))
    .filter(({ name }) => name === "text")
    .map(({ text }) => text);
}

const NUMBER = String.raw`-?\d+(?:\.\d{1,2})?`;
const number = new RegExp(`^${NUMBER}$`);
const size = /^(?!0$)\d+(?:\.\d{1,2})?$/;
const colour = /^(?:none|#[0-9a-f]{6})$/i;
const name = /^[A-Za-z][A-Za-z0-9_-]*$/;
/** Attributes as SVG 1.1 writes them; no others are used. A path begins with M, each command has its pairs of numbers (A: seven numbers). */
const GRAMMAR: Readonly<Record<string, RegExp>> = {
  ...{ x: number, y: number, cx: number, cy: number, width: size, height: size, r: size, rx: size, ry: size },
  ...{ fill: colour, stroke: colour, "stroke-width": size, "fill-opacity": /^0\.\d{1,2}$/ },
  ...{ "font-size": size, "font-weight": /^bold$/, "font-family": /^system-ui, sans-serif$/ },
  "text-anchor": /^(?:middle|end)$/,
  textLength: size,
  lengthAdjust: /^spacingAndGlyphs$/,
  "stroke-dasharray": new RegExp(`^${NUMBER}(?: ${NUMBER})+$`),
  "stroke-linejoin": /^(?:round|bevel)$/,
  "stroke-linecap": /^(?:round|butt)$/,
  d: new RegExp(
    `^(?:[ML] ?${NUMBER}[ ,]${NUMBER} ?|[ML](?: ${NUMBER}){2} ?|T ?${NUMBER}[ ,]${NUMBER} ?|[HVhv] ?${NUMBER} ?|A ?${NUMBER}(?:[ ,]${NUMBER}){6} ?|Q ?${NUMBER}(?:[ ,]${NUMBER}){3} ?|C ?${NUMBER}(?:[ ,]${NUMBER}){5} ?|Z ?)+$`,
  ),
  id: name,
  "aria-labelledby": /^\S+-title \S+-desc$/,
  role: /^img$/,
  xmlns: /^http:\/\/www\.w3\.org\/2000\/svg$/,
  viewBox: new RegExp(`^0 0 ${NUMBER} ${NUMBER}$`),
};

/** What would not be seen: a shape without colour, an area filled black because nobody said otherwise, anything beyond the paper. */
function unshown(name: string, attributes: Element["attributes"], width: number, height: number): string[] {
  const { d = "", fill, stroke } = attributes;
  const what = `${name} ${JSON.stringify(attributes).slice(0, 120)}`;
  const problems: string[] = [];
  if (["path", "circle", "rect", "text"].includes(name)) {
    if ((fill ?? "none") === "none" && (stroke ?? "none") === "none") problems.push(`not seen: ${what}`);
    // A straight stroke has nothing to fill.
    const isStraight = d
      .split("M")
      .every((part) => (part.match(/[LHVhv]/g) ?? []).length <= 1 && !/[AQTCZ]/.test(part));
    if (fill === undefined && !(name === "path" && isStraight)) problems.push(`fill left out: ${what}`);
  }
  const at = (key: string) => Number(attributes[key] ?? 0);
  const far = (value: number, most: number) => value < -0.01 || value > most + 0.01;
  if (
    name !== "svg" &&
    ([at("x"), at("cx")].some((x) => far(x, width)) || [at("y"), at("cy")].some((y) => far(y, height)))
  )
    problems.push(`off the paper: ${what}`);
  if (name === "rect" && (far(at("x") + at("width"), width) || far(at("y") + at("height"), height)))
    problems.push(`off the paper: ${what}`);
  for (const [, x, y] of d.matchAll(new RegExp(`[ML] ?(${NUMBER})[ ,](${NUMBER})`, "g")))
    if (far(Number(x), width) || far(Number(y), height)) problems.push(`off the paper: ${what}`);
  return problems;
}

/** What every picture must keep; empty when it does. */
export function pictureProblems(svg: string): string[] {
  const root = parsed(svg);
  const all = everything(root);
  const problems: string[] = [];
  const { role, width, height, viewBox } = root.attributes;
  if (root.name !== "svg" || root.attributes["xmlns"] !== "http://www.w3.org/2000/svg")
    problems.push("no SVG");
  if (role !== "img") problems.push("role");
  if (viewBox !== `0 0 ${width} ${height}`) problems.push("viewBox");
  const ids = all.flatMap(({ attributes }) => (attributes["id"] === undefined ? [] : [attributes["id"]]));
  if (new Set(ids).size !== ids.length) problems.push("an id twice");
  const named = (root.attributes["aria-labelledby"] ?? "").split(" ");
  const [title, desc] = root.children;
  if (title?.name !== "title" || title.text === "" || title.attributes["id"] !== named[0])
    problems.push("title");
  if (desc?.name !== "desc" || desc.text === "" || desc.attributes["id"] !== named[1]) problems.push("desc");
  const [, , background] = root.children;
  if (background?.name !== "rect" || background.attributes["width"] !== width) problems.push("no background");
  const allowed = new Set(["svg", "title", "desc", "rect", "path", "circle", "text"]);
  for (const { name, attributes } of all) {
    if (!allowed.has(name)) problems.push(`element ${name}`);
    for (const [key, value] of Object.entries(attributes)) {
      if (/^on|^style$|href/i.test(key)) problems.push(`attribute ${key}`);
      if (/NaN|Infinity|undefined|null/.test(value)) problems.push(`${key}="${value}"`);
      if (/\d\.\d{3}/.test(value)) problems.push(`more than two decimals: ${key}="${value.slice(0, 60)}"`);
      if (GRAMMAR[key]?.test(value) !== true) problems.push(`${name} ${key}="${value.slice(0, 60)}"`);
    }
    problems.push(...unshown(name, attributes, Number(width), Number(height)));
  }
  return problems;
}

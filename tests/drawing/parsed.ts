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
    }
  }
  return problems;
}

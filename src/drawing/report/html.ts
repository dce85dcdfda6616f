/** A report as one page of HTML that is well-formed XML too: no script, nothing loaded, every text escaped. */
import { tag } from "../svg.ts";
import { cleanText, escapeText } from "../text.ts";
import type { Theme } from "../theme.ts";
import type { Block, Cell, PictureBlock, ReportDocument, Section, TableBlock } from "./document.ts";
import { styleSheet } from "./htmlStyle.ts";

/** A table of so many rows is kept on one page. */
const SHORT = 12;
/** Rows with names this long get room for them where there is little. */
const WORDY = 12;
/** Nothing may be loaded and nothing run, whatever the page is opened with. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

const text = (value: string): string => escapeText(cleanText("text", value));

function cell({ text: shown, tone }: Cell, numeric: boolean, head: boolean): string {
  const inner = tone === undefined || shown === "" ? text(shown) : tag("span", { class: tone }, text(shown));
  const look = { class: numeric ? "number" : undefined };
  return head ? tag("th", { scope: "row", ...look }, inner) : tag("td", look, inner);
}

function tableOf({ caption, columns, rows }: TableBlock): string {
  const head = columns.map(({ heading, numeric }) =>
    tag("th", { scope: "col", class: numeric ? "number" : undefined }, text(heading)),
  );
  const body = rows.map((cells) =>
    tag("tr", {}, ...cells.map((one, c) => cell(one, columns[c]?.numeric === true, c === 0))),
  );
  const wordy = rows.some(([name]) => (name as Cell).text.length > WORDY);
  const looks = [...(rows.length <= SHORT ? ["short"] : []), ...(wordy ? ["wordy"] : [])].join(" ");
  const whole = tag(
    "table",
    { class: looks === "" ? undefined : looks },
    tag("caption", {}, text(caption)),
    tag("thead", {}, tag("tr", {}, ...head)),
    `\n${tag("tbody", {}, `\n${body.join("\n")}\n`)}`,
  );
  return tag(
    "div",
    { class: "scroll", role: "region", tabindex: "0", "aria-label": cleanText("caption", caption) },
    whole,
  );
}

function figureOf({ wide, narrow }: PictureBlock): string {
  return tag(
    "figure",
    {},
    tag("div", { class: "wide" }, wide),
    "\n",
    tag("div", { class: "narrow" }, narrow),
  );
}

function cautionOf(items: readonly string[], level: "h2" | "h3", id?: string): string {
  const title = tag(level, { id }, items.length > 1 ? "Cautions" : "Caution");
  const [only = ""] = items;
  const body =
    items.length === 1
      ? tag("p", {}, text(only))
      : tag("ul", {}, ...items.map((item) => tag("li", {}, text(item))));
  return tag("div", { class: "caution", role: "note" }, title, body);
}

function listOf(items: readonly string[], ordered: boolean): string {
  return tag(ordered ? "ol" : "ul", {}, `\n${items.map((item) => tag("li", {}, text(item))).join("\n")}\n`);
}

function blockOf(block: Block): string {
  switch (block.kind) {
    case "paragraph":
      return tag("p", {}, text(block.text));
    case "list":
      return listOf(block.items, block.ordered === true);
    case "caution":
      return cautionOf(block.items, "h3");
    case "table":
      return tableOf(block);
    case "picture":
      return figureOf(block);
  }
}

function sectionOf({ id, title, blocks }: Section): string {
  const heading = tag("h3", { id: `${id}-heading` }, text(title));
  return tag(
    "section",
    { id, "aria-labelledby": `${id}-heading` },
    `\n${[heading, ...blocks.map(blockOf)].join("\n")}\n`,
  );
}

/** Writes the report as a page. */
export function htmlOf(report: ReportDocument, theme: Theme | undefined): string {
  const { title, facts, answer, cautions, parts, footer } = report;
  const sections = parts.flatMap((part) => part.sections);
  const contents = sections.map(({ id, title: name }) =>
    tag("li", {}, tag("a", { href: `#${id}` }, text(name))),
  );
  const identity = facts.map(([name, value]) => `${tag("dt", {}, text(name))}${tag("dd", {}, text(value))}`);
  const head = tag(
    "head",
    {},
    `\n${[
      tag("meta", { charset: "utf-8" }),
      tag("meta", { "http-equiv": "Content-Security-Policy", content: POLICY }),
      tag("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
      tag("title", {}, text(title)),
      tag("style", {}, `\n${styleSheet(theme)}\n`),
    ].join("\n")}\n`,
  );
  const header = tag(
    "header",
    {},
    tag("h1", {}, text(title)),
    ...(identity.length === 0 ? [] : [tag("dl", {}, ...identity)]),
  );
  const main = [
    tag(
      "section",
      { class: "answer", "aria-labelledby": "answer" },
      tag("h2", { id: "answer" }, "The answer"),
      listOf(answer, true),
    ),
    cautionOf(cautions, "h2", "cautions"),
    tag(
      "nav",
      { "aria-label": "Contents" },
      tag("details", {}, tag("summary", {}, "Contents"), tag("ul", {}, ...contents)),
    ),
    ...parts.flatMap((part) => [
      tag("h2", { id: part.id }, text(part.title)),
      ...part.sections.map(sectionOf),
    ]),
  ];
  const body = tag(
    "body",
    {},
    `\n${[header, tag("main", {}, `\n${main.join("\n")}\n`), tag("footer", {}, text(footer))].join("\n")}\n`,
  );
  return `<!DOCTYPE html>\n${tag("html", { lang: "en", xmlns: "http://www.w3.org/1999/xhtml" }, `\n${head}\n${body}\n`)}\n`;
}

/** The Markdown: read back by markdown-it, a general-purpose CommonMark parser that is here with the documentation tool. */
import { createRequire } from "node:module";
import { benchReport } from "electroheat/drawing";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyText, hidden, nasty } from "../nasty.ts";
import { FULL, SPARSE, written } from "./assessments.ts";

interface Token {
  readonly type: string;
  readonly tag: string;
  readonly content: string;
  readonly children: readonly Token[] | null;
}
interface Parser {
  parse(text: string, env: object): readonly Token[];
}
const own = createRequire(import.meta.url);
const markdownIt = createRequire(own.resolve("typedoc"))("markdown-it") as new (options: object) => Parser;
// HTML is let through and bare addresses become links, so that whatever could become markup does.
const parser = new markdownIt({ html: true, linkify: true });

const report = (assessment = FULL): string => benchReport({ assessment, format: "markdown" });
const flat = (tokens: readonly Token[]): Token[] =>
  tokens.flatMap((one) => [one, ...flat(one.children ?? [])]);
const tokensOf = (text: string): Token[] => flat(parser.parse(text, {}));
const shape = (text: string): string =>
  tokensOf(text)
    .filter(({ type }) => !["text", "text_special", "inline"].includes(type))
    .map(({ type, tag }) => `${type}:${tag}`)
    .join(" ");
/** Texts of blocks as a reader sees them. */
const shown = (text: string): string[] =>
  parser
    .parse(text, {})
    .flatMap(({ type, children }) =>
      type === "inline" ? [(children ?? []).map(({ content }) => content).join("")] : [],
    );

describe.each([
  ["full", FULL],
  ["sparse", SPARSE],
] as const)("the Markdown of a %s assessment", (_name, assessment) => {
  it("has no HTML, no link, no code, and tables that are tables", () => {
    const types = new Set(tokensOf(report(assessment)).map(({ type }) => type));
    for (const type of [
      "html_block",
      "html_inline",
      "link_open",
      "code_inline",
      "code_block",
      "fence",
      "image",
    ]) {
      expect(types).not.toContain(type);
    }
    expect(types.has("table_open")).toBe(assessment === FULL);
  });

  it("gives the same bytes for the same input", () => {
    expect(report(assessment)).toBe(report(JSON.parse(JSON.stringify(assessment))));
  });
});

it("has every table of the page with as many rows", () => {
  const html = benchReport({ assessment: FULL, format: "html" });
  const count = (text: string, what: RegExp): number => (text.match(what) ?? []).length;
  const types = tokensOf(report()).map(({ type }) => type);
  expect(types.filter((type) => type === "table_open")).toHaveLength(count(html, /<table/g));
  expect(types.filter((type) => type === "tr_open")).toHaveLength(count(html, /<tr/g));
  expect(types.filter((type) => type === "td_open")).toHaveLength(count(html, /<td|<th scope="row"/g));
});

const more = [
  "# heading",
  "- item",
  "+ item",
  "12. item",
  "7) item",
  "> quote",
  "| cell | cell |",
  "`code` and ``more``",
  "*strong* __strong__ ~~gone~~",
  "[link](javascript:alert(1)) ![image](x.svg) <javascript:alert(1)>",
  "http://example.invalid and www.example.invalid",
  "=====",
  "---",
  "a\\|b \\ c\\",
  "&lt;b&gt; &#x41;",
  "    indented",
  "[x]: /somewhere",
  "$x^2$ @someone",
];

describe("text from a user", () => {
  const plain = () => shape(report(written("plain")));

  it.each([...nasty, ...more])("%j stays text wherever it stands", (text) => {
    const markdown = report(written(text));
    expect(shape(markdown)).toBe(plain());
    expect([...markdown].filter(hidden)).toEqual([]);
    const trimmed = text.trim();
    if (![...text].some(hidden) && !/[\n\t\u2028]/.test(text)) {
      expect(shown(markdown)[0]).toBe(trimmed);
      expect(shown(markdown).filter((one) => one === trimmed).length).toBeGreaterThan(10);
    }
  });

  it("any text at all leaves the report as it was but for the text", () => {
    const wanted = plain();
    fc.assert(
      fc.property(anyText, (text) => {
        expect(shape(report(written(`x${text}`)))).toBe(wanted);
      }),
      { numRuns: 60 },
    );
  });
});

/** The page: well-formed, self-contained, accessible, escaped, in colours that can be read; and it prints. */
import { benchReport } from "electroheat/drawing";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { paletteOf } from "../../../src/drawing/theme.ts";
import { contrast } from "../contrast.ts";
import { anyText, hidden, nasty } from "../nasty.ts";
import { type Element, everything, parsed, pictureProblems } from "../parsed.ts";
import { FULL, SPARSE, written } from "./assessments.ts";

const themes = [undefined, "light", "dark"] as const;
const page = (assessment = FULL, theme?: "light" | "dark"): string =>
  benchReport({ assessment, format: "html", ...(theme === undefined ? {} : { theme }) });
const called = (root: Element, name: string): Element[] =>
  everything(root).filter((one) => one.name === name);
/** All text in an element, in order of its parts. */
const allText = (one: Element): string => [one.text, ...one.children.map(allText)].join(" ");

/** Elements and attributes that a report is made of; everything else would be somebody's markup. */
const ELEMENTS = new Set(
  "html head meta title style body header main footer nav section div h1 h2 h3 p ul ol li dl dt dd a details summary table caption thead tbody tr th td span figure svg desc rect path circle text".split(
    " ",
  ),
);
function foreign(root: Element): string[] {
  const found: string[] = [];
  for (const { name, attributes } of everything(root)) {
    if (!ELEMENTS.has(name)) found.push(`<${name}>`);
    for (const [key, value] of Object.entries(attributes)) {
      if (/^on|^style$|^src|^action|^data/i.test(key)) found.push(key);
      if (/href$/i.test(key) && !/^#[a-z-]+$/.test(value)) found.push(`${key}=${value}`);
    }
  }
  return found;
}

describe.each([
  ["full", FULL],
  ["sparse", SPARSE],
] as const)("the page of a %s assessment", (_name, assessment) => {
  it.each(themes)("is well-formed, with nothing in it that runs or loads (%s)", (theme) => {
    const html = page(assessment, theme);
    expect(html.startsWith("<!DOCTYPE html>\n")).toBe(true);
    const root = parsed(html);
    expect(foreign(root)).toEqual([]);
    const css = called(root, "style")[0]?.text ?? "";
    expect(css).not.toMatch(/url\(|@import|expression|http/i);
    expect(html.replaceAll('xmlns="http://www.w3.org/', "")).not.toMatch(/https?:|javascript:/i);
    const policy = called(root, "meta").find(({ attributes }) => "http-equiv" in attributes);
    expect(policy?.attributes["content"]).toBe("default-src 'none'; style-src 'unsafe-inline'");
  });

  it("says its language and title, has one main heading, and levels that never jump", () => {
    const root = parsed(page(assessment));
    expect(root.attributes["lang"]).toBe("en");
    expect(called(root, "title")[0]?.text).toBe(assessment.title);
    const levels = everything(root).flatMap(({ name }) => (/^h[1-6]$/.test(name) ? [Number(name[1])] : []));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.forEach((level, i) => {
      expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1);
    });
    for (const landmark of ["header", "main", "footer", "nav"])
      expect(called(root, landmark)).toHaveLength(1);
  });

  it("has ids once, and links and labels that lead somewhere", () => {
    const all = everything(parsed(page(assessment)));
    const ids = all.flatMap(({ attributes }) => attributes["id"] ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { attributes } of all) {
      const to = [
        ...(attributes["href"] ?? "").replace("#", "").split(" "),
        ...(attributes["aria-labelledby"] ?? "").split(" "),
      ];
      for (const id of to) if (id !== "") expect(ids).toContain(id);
    }
  });

  it("gives the same bytes for the same input, and does not touch it", () => {
    const before = JSON.stringify(assessment);
    expect(page(assessment)).toBe(page(JSON.parse(before)));
    expect(JSON.stringify(assessment)).toBe(before);
  });
});

describe("tables", () => {
  const tablesOf = () => called(parsed(page()), "table");

  it("each have a caption, heads with a scope, and as many cells in every row", () => {
    const tables = tablesOf();
    expect(tables.length).toBeGreaterThan(15);
    for (const one of tables) {
      expect(one.children[0]?.name).toBe("caption");
      expect(one.children[0]?.text).not.toBe("");
      const columns = called(one, "th").filter(({ attributes }) => attributes["scope"] === "col");
      const [body] = called(one, "tbody");
      for (const row of called(body as Element, "tr")) {
        expect(row.children).toHaveLength(columns.length);
        expect(row.children[0]?.name).toBe("th");
        expect(row.children[0]?.attributes["scope"]).toBe("row");
      }
      expect(columns.every(({ text }) => text !== "")).toBe(true);
    }
  });

  it("scroll in a box of their own that the keyboard reaches and that has a name", () => {
    const boxes = called(parsed(page()), "div").filter(({ attributes }) => attributes["class"] === "scroll");
    expect(boxes).toHaveLength(tablesOf().length);
    for (const { attributes, children } of boxes) {
      expect([attributes["role"], attributes["tabindex"]]).toEqual(["region", "0"]);
      expect(attributes["aria-label"]).toBe(children[0]?.children[0]?.text);
    }
    const css = called(parsed(page()), "style")[0]?.text ?? "";
    expect(css).toMatch(/\.scroll\{overflow-x:auto/);
  });

  it("say every verdict in a word", () => {
    for (const one of called(parsed(page()), "span")) {
      expect(["good", "bad", "doubt"]).toContain(one.attributes["class"]);
      expect(one.text).toMatch(/[a-z]|×/i);
    }
  });
});

describe("pictures in the page", () => {
  const drawn = () => page().match(/<svg [\s\S]*?<\/svg>/g) ?? [];

  it("are sound pictures with title and description, in two widths each, one for a phone of 390", () => {
    const svgs = drawn();
    expect(svgs).toHaveLength(4);
    for (const svg of svgs) expect(pictureProblems(svg)).toEqual([]);
    const widths = svgs.map((svg) => Number(parsed(svg).attributes["width"]));
    for (const width of widths.filter((_, i) => i % 2 === 1)) expect(width).toBeLessThanOrEqual(360);
  });

  it("turn dark with the page: every colour in them has its other", () => {
    const css = called(parsed(page()), "style")[0]?.text ?? "";
    const [light, dark] = [paletteOf("light"), paletteOf("dark")];
    for (const svg of drawn()) {
      for (const { attributes } of everything(parsed(svg))) {
        for (const key of ["fill", "stroke"] as const) {
          const colour = attributes[key];
          if (colour === undefined || colour === "none") continue;
          const role = (Object.keys(light) as (keyof typeof light)[]).find((one) => light[one] === colour);
          const other = role === undefined ? undefined : dark[role];
          expect(css).toContain(`svg [${key}="${colour}"]{${key}:${other}}`);
        }
      }
    }
  });

  it("show the phasors where every branch is known and one is open, and leave them out of a sound module", () => {
    const known = FULL.asFound?.resistances.branches.map((one) =>
      one.resistance === null ? { ...one, resistance: 11.2 as never, finding: "sound" as const } : one,
    );
    const found = {
      ...(FULL.asFound as NonNullable<typeof FULL.asFound>),
      resistances: {
        ...(FULL.asFound as NonNullable<typeof FULL.asFound>).resistances,
        branches: known ?? [],
      },
    };
    expect(page({ ...FULL, asFound: found })).toContain("Phasors, as found");
    expect(page({ ...FULL, asFound: FULL.asLeft })).not.toContain("Phasors, as found");
  });
});

describe("colours", () => {
  /** Colours by name as a `:root` rule sets them, in order of the rules. */
  const roots = (css: string) =>
    [...css.matchAll(/:root\{([^}]*)\}/g)].map(
      ([, body = ""]) =>
        Object.fromEntries(body.split(";").map((one) => one.slice(2).split(":"))) as Record<string, string>,
    );

  it.each(themes)("reach 4.5:1 for every colour of text on every ground (%s)", (theme) => {
    const css = called(parsed(page(FULL, theme)), "style")[0]?.text ?? "";
    const found = roots(css);
    expect(found).toHaveLength(theme === "light" ? 1 : 2);
    const used = new Set([...css.matchAll(/[{;]color:var\(--(\w+)\)/g)].map(([, name]) => name as string));
    const grounds = new Set(
      [...css.matchAll(/background:var\(--(\w+)\)/g)].map(([, name]) => name as string),
    );
    expect(used.size).toBeGreaterThan(3);
    for (const colours of found) {
      for (const ink of used) {
        for (const ground of grounds) {
          expect(contrast(colours[ink] ?? "", colours[ground] ?? "")).toBeGreaterThanOrEqual(4.5);
        }
      }
    }
  });

  it("follow the reader's setting on screen, the theme where one is given, and are light on paper", () => {
    const css = (theme?: "light" | "dark") => called(parsed(page(FULL, theme)), "style")[0]?.text ?? "";
    const dark = `--background:${paletteOf("dark").background}`;
    expect(css()).toContain(`@media screen and (prefers-color-scheme:dark){\n:root{${dark}`);
    expect(css("dark")).toContain(`@media screen{\n:root{${dark}`);
    expect(css("light")).not.toContain(dark);
  });
});

it("prints: margins without a size, head rows that repeat, rows and pictures in one piece", () => {
  const css = called(parsed(page()), "style")[0]?.text ?? "";
  const paper = css.slice(css.indexOf("@media print"));
  for (const rule of [
    "thead{display:table-header-group}",
    "overflow:visible",
    "break-after:avoid",
    "p+.scroll,p+ul{break-before:avoid}",
  ]) {
    expect(paper).toContain(rule);
  }
  expect(paper).toMatch(/tr,[^{]*figure[^{]*\{break-inside:avoid\}/);
  expect(paper).toMatch(/@page\{margin:/);
  expect(css).not.toMatch(/size:(A4|letter)/i);
});

const more = [
  "javascript:alert(1)",
  "</style><script>alert(1)</script>",
  "</title></head><body onload=alert(1)>",
  "&lt;b&gt;",
  "{{7*7}} #{7*7}",
];

describe("text from a user", () => {
  it.each([...nasty, ...more])("%j stays text wherever it stands", (text) => {
    const html = page(written(text));
    const root = parsed(html);
    expect(foreign(root)).toEqual([]);
    expect([...html].filter(hidden)).toEqual([]);
    expect(() => encodeURIComponent(html)).not.toThrow();
    // What can be shown is shown as it was written, in the title to begin with.
    const plain = ![...text].some(hidden) && !/[\n\t\u2028]/.test(text);
    if (plain) expect(called(root, "h1")[0]?.text).toBe(text);
    if (plain) expect(allText(root).split(text).length).toBeGreaterThan(20);
  });

  it("any text at all leaves the page as it was but for the text", () => {
    const shape = (html: string) =>
      everything(parsed(html))
        .filter(({ name }) => !["title", "text", "rect", "path", "circle"].includes(name))
        .map(({ name }) => name)
        .join(" ");
    const plain = shape(page(written("plain")));
    fc.assert(
      fc.property(anyText, (text) => {
        expect(shape(page(written(`x${text}`)))).toBe(plain);
      }),
      { numRuns: 60 },
    );
  });
});

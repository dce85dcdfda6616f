/** The documentation site as built: no warning, no broken link or anchor, nothing fetched from elsewhere while reading. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { documents } from "../../scripts/siteParts.mjs";
import { root } from "../support/house.ts";

const site = mkdtempSync(join(tmpdir(), "electroheat-site-"));
let said = "";
const pages = new Map<string, string>();

beforeAll(() => {
  const command = [join(root, "node_modules/typedoc/bin/typedoc"), "--options", "typedoc.config.mjs"];
  const built = spawnSync(process.execPath, [...command, "--out", site], { cwd: root, encoding: "utf8" });
  said = `${built.stdout}${built.stderr}`;
  for (const name of readdirSync(site, { recursive: true }))
    if (String(name).endsWith(".html"))
      pages.set(String(name), readFileSync(join(site, String(name)), "utf8"));
}, 300_000);
afterAll(() => rmSync(site, { recursive: true, force: true }));

const unescaped = (text: string) =>
  text
    .replace(/&amp;/g, "&")
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'");
/** Values of an attribute on a page. */
const values = (html: string, attribute: string) =>
  [...html.matchAll(new RegExp(`\\s${attribute}="([^"]*)"`, "g"))].map((hit) => unescaped(hit[1] as string));
const idsOf = new Map<string, ReadonlySet<string>>();
function ids(page: string): ReadonlySet<string> {
  const known = idsOf.get(page) ?? new Set(values(pages.get(page) ?? "", "id"));
  idsOf.set(page, known);
  return known;
}

/** Why a link leads nowhere; null for a good one. */
function fault(from: string, link: string): string | null {
  const [path = "", anchor = ""] = link.split("#") as [string, string?];
  const target = path === "" ? from : relative(site, resolve(site, dirname(from), decodeURIComponent(path)));
  if (!statSync(join(site, target), { throwIfNoEntry: false })?.isFile())
    return `${from}: ${link}: no such file`;
  const named = decodeURIComponent(anchor);
  return named === "" || !pages.has(target) || ids(target).has(named)
    ? null
    : `${from}: ${link}: no such place`;
}

describe("the documentation site", () => {
  it("builds without a warning: everything public is documented", () => {
    expect(
      said.split("\n").filter((line) => /warning|error/.test(line) && !/Found 0 errors and 0/.test(line)),
    ).toEqual([]);
  });

  it("has a page for every document and every public symbol of its index", () => {
    expect([...pages.keys()].filter((name) => name.startsWith("documents/")).length).toBe(documents().length);
    expect(pages.size).toBeGreaterThan(600);
    expect(pages.get("functions/element.stripForSurfaceLoad.html")).toContain("<math");
  });

  it("has one title on every page", () => {
    const titles = (html: string) => html.split(/<h1[ >]/).length - 1;
    expect([...pages].filter(([, html]) => titles(html) !== 1).map(([name]) => name)).toEqual([]);
  });

  it("has no broken link", () => {
    let links = 0;
    const broken = [...pages].flatMap(([from, html]) =>
      [...values(html, "href"), ...values(html, "src")].flatMap((link) => {
        if (/^(https?:|mailto:|data:)/.test(link)) return [];
        links += 1;
        return fault(from, link) ?? [];
      }),
    );
    console.log(`${pages.size} pages, ${links} links followed`);
    expect(broken).toEqual([]);
    expect(links).toBeGreaterThan(pages.size);
  });

  it("fetches nothing from elsewhere while reading", () => {
    const outside = [...pages].flatMap(([from, html]) =>
      [...html.matchAll(/<(?:script|link|img|iframe|source)\b[^>]*\s(?:src|href)="https?:[^"]*"/g)].map(
        (hit) => `${from}: ${hit[0]}`,
      ),
    );
    expect(outside).toEqual([]);
    expect(said).not.toMatch(/undefined/);
  });
});

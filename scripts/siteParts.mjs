/**
 * What the documentation site adds to the comments: guides under their own headings, and at each calculation its
 * formula as the catalogue writes it and the sources of its worked examples, linked to the page of sources.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { Comment, CommentTag, Converter, ReflectionKind } from "typedoc";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Guides in the order in which a newcomer reads them, then the pages one looks things up in. */
const GUIDES = [
  "burnt-module",
  "reading-ohms",
  "star-or-delta",
  "joints",
  "feeding",
  "spreadsheet",
  "notebook",
  "units",
  "own-table",
];
const PAGES = ["sources", "glossary", "catalogue", "vectors"];

/** @returns {readonly string[]} the pages of the site, guides first */
export function documents() {
  const guides = readdirSync(join(root, "docs/guides")).map((name) => name.replace(/\.md$/, ""));
  const known = GUIDES.filter((name) => guides.includes(name));
  const others = guides.filter((name) => !GUIDES.includes(name)).sort();
  const rest = readdirSync(join(root, "docs"))
    .filter((name) => name.endsWith(".md") && !PAGES.includes(name.replace(/\.md$/, "")))
    .sort();
  return [
    ...[...known, ...others].map((name) => `docs/guides/${name}.md`),
    ...PAGES.map((name) => `docs/${name}.md`),
    ...rest.map((name) => `docs/${name}`),
    "DEVELOPERS.md",
    "CHANGELOG.md",
  ];
}

/** @returns {ReadonlyMap<string, readonly string[]>} ids of the sources of each call's worked examples, `room.name` */
export function sourcesByCall() {
  /** @type {Map<string, Set<string>>} */
  const found = new Map();
  const folder = join(root, "shared/vectors");
  for (const file of readdirSync(folder, { recursive: true })) {
    if (!String(file).endsWith(".json")) continue;
    /** @type {{ readonly vectors: readonly { readonly call: string, readonly source: string }[] }} */
    const { vectors } = JSON.parse(readFileSync(join(folder, String(file)), "utf8"));
    for (const { call, source } of vectors) {
      const of = found.get(call) ?? new Set();
      found.set(call, of.add(source));
    }
  }
  return new Map([...found].map(([call, ids]) => [call, [...ids].sort()]));
}

/** @returns {Promise<ReadonlyMap<string, string>>} formula in TeX of each calculation that the catalogue has one for */
export async function formulas() {
  const entryPoints = [join(root, "src/catalogue/index.ts")];
  const bundle = await build({ entryPoints, bundle: true, write: false, format: "esm", platform: "node" });
  const code = Buffer.from(bundle.outputFiles[0]?.contents ?? []).toString("base64");
  /** @type {typeof import("../src/catalogue/index.ts")} */
  const { catalogueEntries } = await import(`data:text/javascript;base64,${code}`);
  return new Map(catalogueEntries().flatMap(({ id, tex }) => (tex === undefined ? [] : [[id, tex]])));
}

/** The first heading of a page. */
const headingOf = (/** @type {string} */ text) => /^# (.+)$/m.exec(text)?.[1];

/** @param {`@${string}`} name @param {string} text */
const tag = (name, text) => new CommentTag(name, [{ kind: "text", text }]);

/**
 * Plugin of typedoc.
 * @param {import("typedoc").Application} app the application
 */
export async function siteParts(app) {
  const sources = sourcesByCall();
  const tex = await formulas();
  /** Address of the page of sources, from a page of the API. */
  const page = "../documents/Where_every_number_comes_from.html";
  app.converter.on(Converter.EVENT_CREATE_DOCUMENT, (_, document) => {
    const text = document.content.map((part) => part.text).join("");
    document.name = headingOf(text) ?? document.name;
  });
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, (context) => {
    // The front page carries the project's name already.
    const [first] = context.project.readme ?? [];
    if (first !== undefined) first.text = first.text.replace(/^# .+\n+/, "");
    for (const room of context.project.getChildrenByKind(ReflectionKind.Module)) {
      for (const own of room.getChildrenByKind(ReflectionKind.Function)) {
        const call = `${room.name}.${own.name}`;
        const ids = sources.get(call) ?? [];
        const links = ids.map((id) => `[${id}](${page}#${id})`).join(", ");
        for (const signature of own.signatures ?? []) {
          signature.comment ??= new Comment();
          const { blockTags } = signature.comment;
          if (tex.has(call)) blockTags.unshift(tag("@formula", `$$${tex.get(call)}$$`));
          if (ids.length > 0) blockTags.push(tag("@checkedAgainst", links));
        }
      }
    }
  });
}

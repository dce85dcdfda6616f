/**
 * What the documentation site adds to the comments: guides under their own headings, each room under what the README says
 * of it, and at each calculation its formula as the catalogue writes it and the sources of its worked examples, linked to
 * the page of sources.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { Comment, CommentTag, Converter, ReflectionKind } from "typedoc";

const root = fileURLToPath(new URL("..", import.meta.url));

/** How to follow a guide, guides in the order in which a newcomer reads them, then the pages one looks things up in. */
const FIRST = "following";
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
    .filter((name) => name.endsWith(".md") && ![FIRST, ...PAGES].includes(name.replace(/\.md$/, "")))
    .sort();
  return [
    `docs/${FIRST}.md`,
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

/** @returns {ReadonlyMap<string, string>} what the README's table says of each room */
export function roomPurposes() {
  const rows = readFileSync(join(root, "README.md"), "utf8").matchAll(
    /^\| `electroheat\/(\w+)` \| (.+?) \|/gm,
  );
  return new Map([...rows].map(([, room = "", purpose = ""]) => [room, purpose]));
}

/**
 * Lines of a formula: its equations one below the other, so that a narrow page shows them whole.
 * @param {string} tex equations with a comma and a quad between them
 */
export function formulaLines(tex) {
  /** @type {string[]} */
  const lines = [];
  for (const part of tex.split(/, \\q?quad /)) {
    const last = lines.at(-1) ?? "";
    // A quad inside braces or between begin and end belongs to its equation.
    const open = (last.match(/(?<!\\)\{|\\begin\b|\\left\b/g) ?? []).length;
    const closed = (last.match(/(?<!\\)\}|\\end\b|\\right\b/g) ?? []).length;
    if (open === closed) lines.push(part);
    else lines.splice(-1, 1, `${last}, \\quad ${part}`);
  }
  return lines;
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
  const purposes = roomPurposes();
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
      const purpose = purposes.get(room.name);
      if (purpose === undefined) throw new Error(`the README's table of rooms does not name ${room.name}`);
      room.comment ??= new Comment([{ kind: "text", text: `\`electroheat/${room.name}\`: ${purpose}.` }]);
      for (const own of room.getChildrenByKind(ReflectionKind.Function)) {
        const call = `${room.name}.${own.name}`;
        const ids = sources.get(call) ?? [];
        const links = ids.map((id) => `[${id}](${page}#${id})`).join(", ");
        for (const signature of own.signatures ?? []) {
          signature.comment ??= new Comment();
          const { summary, blockTags } = signature.comment;
          const shown = formulaLines(tex.get(call) ?? "").map((line) => `$$${line}$$`);
          if (tex.has(call))
            summary.push({
              kind: "text",
              text: `\n\n<div class="formula">\n\n${shown.join("\n\n")}\n\n</div>`,
            });
          if (ids.length > 0) blockTags.push(tag("@checkedAgainst", links));
        }
      }
    }
  });
}

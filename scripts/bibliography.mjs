/**
 * Writes docs/sources.md from shared/sources.json and shared/tables: which source, how it was
 * seen, and what rests on memory. The page is committed; a test compares it with what this script gives.
 *   node scripts/bibliography.mjs            writes the page
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
export const PAGE = "docs/sources.md";

/**
 * @typedef {{ id: string, kind: string, title: string, author?: string, publisher?: string, edition?: string, year?: number | string, locator?: string, provenance: string, note?: string }} Source
 * @typedef {{ id: string, title: string, source: string, edition?: string, kind: string, provenance: string, rows: unknown[], note?: string }} Table
 */

/** Text of a table cell: no pipe or line break may end it early, no angle bracket may start markup. */
const cell = (/** @type {unknown} */ text) =>
  String(text ?? "")
    .replace(/\s+/g, " ")
    .replace(/\|/g, "\\|")
    .replace(/</g, "&lt;");

/** @param {readonly string[]} head @param {readonly (readonly unknown[])[]} rows */
const table = (head, rows) =>
  [head, head.map(() => "---"), ...rows].map((row) => `| ${row.map(cell).join(" | ")} |`).join("\n");

/** @type {readonly (readonly [string, string])[]} */
const KINDS = [
  ["standard", "Standards and codes"],
  ["handbook", "Handbooks"],
  ["textbook", "Textbooks"],
  ["paper", "Papers"],
  ["database", "Databases"],
  ["definition", "Definitions"],
  ["maker data", "Maker data"],
  ["derivation", "Derivations of our own"],
  ["common practice", "Common practice, no published source"],
];

const count = (/** @type {number} */ n, /** @type {string} */ word) => `${n} ${word}${n === 1 ? "" : "s"}`;

/** @param {Source} source */
const where = ({ author, publisher, edition, year, locator }) =>
  [
    author,
    publisher,
    edition && (/^\d+(st|nd|rd|th)$/.test(edition) ? `${edition} edition` : edition),
    year,
    locator,
  ]
    .filter((part) => part !== undefined && part !== "")
    .join("; ");

/** @returns {string} the page */
export function bibliography() {
  /** @type {Source[]} */
  const sources = JSON.parse(readFileSync(join(root, "shared/sources.json"), "utf8"));
  const folder = join(root, "shared/tables");
  /** @type {Table[]} */
  const tables = readdirSync(folder)
    .sort()
    .map((name) => JSON.parse(readFileSync(join(folder, name), "utf8")));
  const unknown = [...new Set(sources.map(({ kind }) => kind))].filter(
    (kind) => !KINDS.some(([known]) => known === kind),
  );
  if (unknown.length > 0)
    throw new Error(`sources.json has kinds this page does not know: ${unknown.join(", ")}`);
  const memory = tables.filter(({ provenance }) => provenance === "memory");
  const sections = KINDS.flatMap(([kind, heading]) => {
    const of = sources.filter((source) => source.kind === kind);
    if (of.length === 0) return [];
    const rows = of.map((source) => [
      `<a id="${source.id}"></a>\`${source.id}\``,
      source.title,
      where(source),
      source.provenance,
      source.note ?? "",
    ]);
    // The anchors are ours; every other angle bracket is text.
    const text = table(["id", "title", "where", "how seen", "note"], rows).replace(
      /&lt;a id="([\w-]+)">&lt;\/a>/g,
      '<a id="$1"></a>',
    );
    return [`### ${heading}`, "", text, ""];
  });
  return [
    "# Where every number comes from",
    "",
    "Every table, worked example and rule in this library names a source by its id, and every source says how it was seen: `seen` means read in the document itself or in a public collection that quotes it, `memory` means cited from memory, `derived` means worked out here, `common practice` means that the trade does it so and no published source was found. Figures were taken over; sentences never.",
    "",
    `There are ${count(sources.length, "source")} and ${count(tables.length, "table")} with ${count(
      tables.reduce((sum, { rows }) => sum + rows.length, 0),
      "row",
    )}. This page is written by \`node scripts/bibliography.mjs\` from the files in \`shared/\` and is not edited by hand.`,
    "",
    "## What rests on memory",
    "",
    memory.length === 0
      ? "No table as a whole."
      : `${count(memory.length, "table")} as a whole. A figure from memory is never the only leg of a test: each of these is also held to a law or a second source.`,
    "",
    ...(memory.length === 0
      ? []
      : [
          table(
            ["table", "title", "rows"],
            memory.map(({ id, title, rows }) => [`\`${id}\``, title, rows.length]),
          ),
          "",
        ]),
    "## Tables",
    "",
    table(
      ["table", "title", "source", "edition", "kind", "how seen", "rows"],
      tables.map(({ id, title, source, edition, kind, provenance, rows }) => [
        `\`${id}\``,
        title,
        `[${source}](#${source})`,
        edition ?? "",
        kind,
        provenance,
        rows.length,
      ]),
    ),
    "",
    "## Sources",
    "",
    ...sections,
  ]
    .join("\n")
    .trimEnd()
    .concat("\n");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(join(root, PAGE), bibliography());

/** Counts the cells of the wiring tables held to their second copy, and the worked examples, by how they were found. */
import { readdirSync, readFileSync } from "node:fs";
import { transformSync } from "esbuild";

const at = (/** @type {string} */ path) => new URL(`../${path}`, import.meta.url);
const source = transformSync(readFileSync(at("tests/wiring/printed.ts"), "utf8"), { loader: "ts" }).code;
/** @type {{ printed: { table: string, basis: string, columns: Record<string, string> }[] }} */
const { printed } = await import(`data:text/javascript;base64,${Buffer.from(source).toString("base64")}`);

/** @type {Map<string, { seen: Set<string>, memory: Set<string>, source: string }>} */
const tables = new Map();
for (const { table, basis, columns } of printed) {
  const { source: id } = JSON.parse(readFileSync(at(`shared/tables/${table}.json`), "utf8"));
  const entry = tables.get(table) ?? { seen: new Set(), memory: new Set(), source: id };
  tables.set(table, entry);
  const found = basis.startsWith("seen") ? entry.seen : entry.memory;
  for (const [column, text] of Object.entries(columns)) {
    for (const pair of text.split(" ")) found.add(`${column} ${pair.slice(0, pair.lastIndexOf(":"))}`);
  }
}
const line = (
  /** @type {string} */ name,
  /** @type {string} */ from,
  /** @type {(string | number)[]} */ counts,
) => console.log(name.padEnd(30) + from.padEnd(24) + counts.map((one) => String(one).padStart(9)).join(""));
const total = { seen: 0, memory: 0 };
console.log(
  "Cells of tables, each held to the second copy (a cell read in one place and remembered in another counts as seen)",
);
line("table", "source", ["seen", "memory"]);
for (const [table, { seen, memory, source: from }] of tables) {
  const remembered = [...memory].filter((cell) => !seen.has(cell)).length;
  line(table, from, [seen.size, remembered]);
  total.seen += seen.size;
  total.memory += remembered;
}
line("all", "", [total.seen, total.memory]);

console.log("\nWorked examples and rules in shared/vectors/wiring");
line("file", "", ["seen", "derived", "memory"]);
const all = { seen: 0, derived: 0, memory: 0 };
for (const file of readdirSync(at("shared/vectors/wiring"))) {
  /** @type {{ vectors: { provenance: "seen" | "derived" | "memory" }[] }} */
  const { vectors } = JSON.parse(readFileSync(at(`shared/vectors/wiring/${file}`), "utf8"));
  const counts = { seen: 0, derived: 0, memory: 0 };
  for (const { provenance } of vectors) {
    counts[provenance]++;
    all[provenance]++;
  }
  line(file, "", Object.values(counts));
}
line("all", "", Object.values(all));

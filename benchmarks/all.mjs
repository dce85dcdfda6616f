/**
 * Every speed that the library promises, each row in a process of its own, and the sizes beside them.
 *
 *   npm run build && npm run bench               one table
 *   npm run build && npm run bench -- --write    the same, and docs/benchmarks.md
 *   npm run bench -- network units               only these of benchmarks/rows
 */
import { fork, spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism, cpus } from "node:os";
import { fileURLToPath } from "node:url";
import { sizes, WHOLE_REACH } from "../scripts/size.mjs";
import { lineOf } from "./measure.mjs";

const folder = new URL("./rows/", import.meta.url);
const page = new URL("../docs/benchmarks.md", import.meta.url);
const write = process.argv.includes("--write");
const asked = process.argv.slice(2).filter((word) => !word.startsWith("-"));

/** @typedef {import("./measure.mjs").Row} Row */

/** @param {string} name @param {readonly string[]} given @returns {Promise<Row[]>} */
function rowsOf(name, given = []) {
  return new Promise((done, failed) => {
    /** @type {Row[]} */
    let rows = [];
    const child = fork(fileURLToPath(new URL(`${name}.mjs`, folder)), [...given], { execArgv: [] });
    child.on("message", (message) => {
      rows = /** @type {Row[]} */ (message);
      // A database holds its threads; what was asked for is here.
      child.kill();
    });
    child.on("exit", () => (rows.length > 0 ? done(rows) : failed(new Error(`${name} told nothing`))));
  });
}

/** @returns {Promise<Row[]>} */
async function sizeRows() {
  return (await sizes()).map(({ what, gzip, budget, minified }) => {
    const whole = what === "electroheat, without tables";
    const reach = whole ? WHOLE_REACH : budget;
    return {
      what: `size of ${what}`,
      against: "–",
      reach: reach === undefined ? "" : `≤ ${reach} B`,
      found: `${gzip} B gzip`,
      met: reach === undefined ? null : gzip <= reach,
      detail: `${minified} B minified${whole ? `; CI fails above ${budget} B` : ""}`,
    };
  });
}

/** @param {readonly Row[]} rows */
const markdown = (rows) =>
  [
    "| what | against | reach | found | | times |",
    "| --- | --- | --- | --- | --- | --- |",
    ...rows.map((row) => `| ${lineOf(row)} |`),
  ].join("\n");

const names = readdirSync(folder)
  .map((name) => name.replace(/\.mjs$/, ""))
  .sort();
/** @type {Row[]} */
const rows = [];
for (const name of names.filter((one) => asked.length === 0 || asked.includes(one))) {
  const runs = name === "closedForm" ? [[], ["used"]] : [[]];
  for (const given of runs) {
    const found = await rowsOf(name, given);
    for (const row of found) console.log(lineOf(row));
    rows.push(...found);
  }
}
if (asked.length === 0) {
  const found = await sizeRows();
  for (const row of found) console.log(lineOf(row));
  rows.push(...found);
}
const missed = rows.filter(({ met }) => met === false);
console.log(`\n${rows.length} rows; ${rows.filter(({ met }) => met).length} met, ${missed.length} missed`);

if (write && asked.length === 0) {
  const commit = spawnSync("git", ["rev-parse", "--short", "HEAD"], { encoding: "utf8" }).stdout.trim();
  const text = readFileSync(page, "utf8");
  const [before, after] = ["<!-- table -->", "<!-- end of table -->"];
  const [start, end] = [text.indexOf(before), text.indexOf(after)];
  if (start < 0 || end < start) throw new Error(`docs/benchmarks.md has no ${before} … ${after}`);
  const machine = `${cpus()[0]?.model.trim() ?? "unknown processor"}, ${availableParallelism()} threads`;
  const head = `Run at commit \`${commit}\`, Node ${process.version}, ${machine}.`;
  writeFileSync(
    page,
    `${text.slice(0, start + before.length)}\n${head}\n\n${markdown(rows)}\n${text.slice(end)}`,
  );
}

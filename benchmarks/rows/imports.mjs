// Cold import of every room and of everything, above an empty module: fresh processes in turn, in processor
// time, the least of each: what else runs on the machine only ever adds.
//   node benchmarks/rows/imports.mjs     (after npm run build)
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { rooms } from "../../scripts/rooms.mjs";
import { tell } from "../measure.mjs";

const TURNS = 7;
const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "electroheat-bench-"));
const [empty, all] = [join(folder, "empty.mjs"), join(folder, "all.mjs")];
const names = rooms(join(root, "src"));
const dist = (/** @type {string} */ name) => pathToFileURL(join(root, "dist", `${name}.js`)).href;
writeFileSync(empty, "export const nothing = 0;\n");
writeFileSync(all, ["index", ...names].map((name) => `import ${JSON.stringify(dist(name))};`).join("\n"));

const targets = {
  "an empty module": pathToFileURL(empty).href,
  everything: pathToFileURL(all).href,
  "the main entry": dist("index"),
  ...Object.fromEntries(names.map((name) => [name, dist(name)])),
};
/** @type {Record<string, number[]>} */
const times = {};
try {
  for (let turn = 0; turn < TURNS; turn += 1) {
    for (const [name, url] of Object.entries(targets)) {
      const code = `const t = process.cpuUsage(); await import(${JSON.stringify(url)}); const { user, system } = process.cpuUsage(t); console.log((user + system) * 1000);`;
      const { stdout, status } = spawnSync(process.execPath, ["--input-type=module", "-e", code], {
        encoding: "utf8",
      });
      if (status !== 0) throw new Error(`${name} does not load`);
      times[name] ??= [];
      times[name].push(Number(stdout));
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
const base = Math.min(...(times["an empty module"] ?? []));
const above = (/** @type {string} */ name) => (Math.min(...(times[name] ?? [])) - base) / 1e6;
const byRoom = names.map((name) => ({ name, ms: above(name) })).sort((x, y) => y.ms - x.ms);
const over = byRoom.filter(({ ms }) => ms > 3);
/** @param {string} what @param {number} ms @param {number | null} most @param {string} detail */
const row = (what, ms, most, detail) => ({
  what,
  against: "an empty module",
  reach: most === null ? "" : `≤ ${most} ms above`,
  found: `${ms.toFixed(1)} ms above`,
  met: most === null ? null : ms <= most,
  detail,
});
tell([
  row(
    `cold import of a room; the slowest, ${byRoom[0]?.name}`,
    byRoom[0]?.ms ?? Number.NaN,
    3,
    `${over.length} of ${names.length} over; ${byRoom.map(({ name, ms }) => `${name} ${ms.toFixed(1)}`).join(", ")}`,
  ),
  row(
    "cold import of the main entry",
    above("the main entry"),
    null,
    `empty module ${(base / 1e6).toFixed(1)} ms`,
  ),
  row("cold import of everything", above("everything"), 15, `main entry and all ${names.length} rooms`),
]);

/**
 * Which lines and branches the tests of the rooms reach, room by room.
 *
 *   npm run coverage                         all tests of the rooms; properties run a tenth as often
 *   npm run coverage -- --missed joint       and what is not reached in one room
 *   npm run coverage -- --report old.json    the figures of a report that is there
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { option, words } from "./options.mjs";

/** What the whole must reach (docs/reliability.md says what is not reached, and why). */
const LEAST = { lines: 98, branches: 98 };

const root = fileURLToPath(new URL("..", import.meta.url));
const [missed, old] = [option("--missed"), option("--report")];

/**
 * @typedef {{ line: number }} Place
 * @typedef {{ start: Place }} Span
 * @typedef {{ statementMap: Record<string, Span>, s: Record<string, number>,
 *   branchMap: Record<string, { type: string, loc: Span, locations: (Span | { start: Partial<Place> })[] }>,
 *   b: Record<string, number[]> }} FileCover
 */

/** @returns {Record<string, FileCover>} */
function measured() {
  if (old !== undefined) return JSON.parse(readFileSync(old, "utf8"));
  const folder = mkdtempSync(join(tmpdir(), "electroheat-coverage-"));
  try {
    // A test that counts how often a property met a case fails with few runs; what it reaches counts all the same.
    const run = ["vitest", "run", "--project", "rooms", "--coverage", "--coverage.reportOnFailure"];
    spawnSync("npx", ["--no-install", ...run, `--coverage.reportsDirectory=${folder}`, ...words], {
      cwd: root,
      stdio: "inherit",
      env: { ELECTROHEAT_FUZZ_RUNS: "100", ...process.env },
    });
    return JSON.parse(readFileSync(join(folder, "coverage-final.json"), "utf8"));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @param {FileCover} file @returns {{ lines: Map<number, number>, branches: { line: number, type: string, runs: number }[] }} */
function reached({ statementMap, s, branchMap, b }) {
  const lines = new Map();
  for (const [id, { start }] of Object.entries(statementMap))
    lines.set(start.line, Math.max(lines.get(start.line) ?? 0, s[id] ?? 0));
  const branches = Object.entries(branchMap).flatMap(([id, { type, loc, locations }]) =>
    locations.map((at, i) => ({ line: at.start.line ?? loc.start.line, type, runs: b[id]?.[i] ?? 0 })),
  );
  return { lines, branches };
}

/** @type {Map<string, { lines: number, ofLines: number, branches: number, ofBranches: number }>} */
const rooms = new Map();
const none = { lines: 0, ofLines: 0, branches: 0, ofBranches: 0 };
for (const [path, file] of Object.entries(measured())) {
  const name = path.split(/[\\/]src[\\/]/)[1] ?? path;
  const [room = ""] = name.split(/[\\/]/);
  const { lines, branches } = reached(file);
  for (const key of room.endsWith(".ts") ? ["all"] : [room, "all"]) {
    const sum = rooms.get(key) ?? none;
    rooms.set(key, {
      lines: sum.lines + [...lines.values()].filter((runs) => runs > 0).length,
      ofLines: sum.ofLines + lines.size,
      branches: sum.branches + branches.filter(({ runs }) => runs > 0).length,
      ofBranches: sum.ofBranches + branches.length,
    });
  }
  if (room !== missed) continue;
  const text = readFileSync(join(root, "src", name), "utf8").split("\n");
  for (const { line, type, runs } of branches)
    if (runs === 0) console.log(`src/${name}:${line} ${type}: ${text[line - 1]?.trim()}`);
}
/** @param {number} part @param {number} of */
const percent = (part, of) => (of === 0 ? 100 : (100 * part) / of);
console.log("| room | lines | branches | branches not reached |\n| --- | --- | --- | --- |");
for (const [room, { lines, ofLines, branches, ofBranches }] of [...rooms].sort())
  console.log(
    `| ${room} | ${percent(lines, ofLines).toFixed(1)} % | ${percent(branches, ofBranches).toFixed(1)} % | ${ofBranches - branches} of ${ofBranches} |`,
  );
const all = rooms.get("all") ?? none;
const whole = words.length === 0;
if (
  whole &&
  !(percent(all.lines, all.ofLines) >= LEAST.lines && percent(all.branches, all.ofBranches) >= LEAST.branches)
)
  process.exitCode = 1;

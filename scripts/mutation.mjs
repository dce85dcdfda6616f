/**
 * Changes the code of one room a little, again and again, and runs the room's tests on each change: what no test notices survives.
 *
 *   npm run mutation -- decision              one room
 *   npm run mutation -- circuit solve.ts      one file of it
 *   npm run mutation -- --processes 1 wiring  beside other work; 2 unless said otherwise
 *   npm run mutation -- --part 1/20 wiring    a twentieth of the changes, drawn by a hash; the parts together are all
 *   npm run mutation -- --without simulated bench   leaves out the test files so named: what takes long is left out anyway, but tried first
 *   npm run mutation -- --out file wiring     leaves every change and what became of it in a JSON file; while it runs, in file.lines
 */
import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { option, words } from "./options.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const [processes = "2", part, out, without] = ["--processes", "--part", "--out", "--without"].map(option);
if (part !== undefined && !/^\d+\/\d+$/.test(part)) throw new Error(`--part ${part}: give it as 1/20`);
const [room, file = "**/*.ts"] = words;
if (room === undefined) throw new Error("which room? npm run mutation -- decision");

const folder = mkdtempSync(join(tmpdir(), "electroheat-mutation-"));
const config = join(folder, "stryker.config.json");
const report = join(folder, "mutation.json");
const plugins = ["runner", "prose", "part"].map((name) => join(root, "scripts", "mutation", `${name}.mjs`));
writeFileSync(
  config,
  JSON.stringify({
    testRunner: "room",
    plugins,
    ignorers: ["prose"],
    checkers: part === undefined ? [] : ["part"],
    mutate: [`src/${room}/${file}`, `!src/${room}/index.ts`],
    coverageAnalysis: "perTest",
    concurrency: Number(processes),
    reporters: ["clear-text", "json", "progress-append-only"],
    jsonReporter: { fileName: report },
    clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
    tempDirName: join(folder, "sandbox"),
    allowConsoleColors: false,
    ignorePatterns: ["dist", "site", "coverage", "docs/api", "tests/nodes"].map((name) => `/${name}`),
    // Endless loops are ended by the counter in the changed code; the clock, which a busy machine fools, only by the last resort.
    timeoutMS: 300_000,
    dryRunTimeoutMinutes: 60,
  }),
);
try {
  const run = spawnSync("npx", ["--no-install", "stryker", "run", config], {
    cwd: root,
    stdio: "inherit",
    // Properties run a tenth as often, for each of thousands of changes.
    env: {
      ...process.env,
      NODE_ENV: "test",
      ELECTROHEAT_FUZZ_RUNS: "100",
      ELECTROHEAT_ROOM: room,
      ...(part === undefined ? {} : { ELECTROHEAT_MUTATION_PART: part }),
      ...(without === undefined ? {} : { ELECTROHEAT_MUTATION_WITHOUT: without }),
      ELECTROHEAT_MUTATION_NOTES: join(folder, "notes.json"),
      ...(out === undefined ? {} : { ELECTROHEAT_MUTATION_LOG: resolve(`${out}.lines`) }),
    },
  });
  process.exitCode = run.status ?? 1;
  if (out !== undefined && existsSync(report)) copyFileSync(report, resolve(out));
} finally {
  rmSync(folder, { recursive: true, force: true });
}

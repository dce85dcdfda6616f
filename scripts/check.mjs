/**
 * Runs everything CI runs: lint, types, build, the two package linters on the packed tarball, tests. A failing
 * step does not hide the ones after it, unless they need its output.
 *
 * `npm run check -- --report <file>` also leaves the test results as JSON, for the count CI prints.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const at = process.argv.indexOf("--report");
const report = at < 0 ? undefined : resolve(process.argv[at + 1] ?? "vitest-report.json");
const folder = mkdtempSync(join(tmpdir(), "electroheat-check-"));

/** @type {{ name: string, seconds: number, outcome: "passed" | "failed" | "not run" }[]} */
const done = [];

/** @param {string} name @param {string[]} command @param {string[]} [needs] steps whose output it works on */
function step(name, command, needs = []) {
  const blocked = needs.some((need) => done.find((one) => one.name === need)?.outcome !== "passed");
  console.log(`\n== ${name}${blocked ? ": not run" : ""}`);
  const start = Date.now();
  const [program = "", ...args] = command;
  const failed = !blocked && spawnSync(program, args, { cwd: root, stdio: "inherit" }).status !== 0;
  const outcome = blocked ? "not run" : failed ? "failed" : "passed";
  done.push({ name, seconds: (Date.now() - start) / 1000, outcome });
}

const tarball = () =>
  join(folder, readdirSync(folder).find((name) => name.endsWith(".tgz")) ?? "no-tarball.tgz");

try {
  step("lint", ["npm", "run", "--silent", "lint"]);
  step("types", ["npm", "run", "--silent", "types"]);
  step("build", ["npm", "run", "--silent", "build", "--", "--silent"]);
  step("pack", ["npm", "pack", "--silent", "--ignore-scripts", "--pack-destination", folder], ["build"]);
  step("publint", ["npx", "--no-install", "publint", "run", tarball(), "--strict"], ["pack"]);
  // The single-file script is for a page's script tag and declares a global: no import resolves types for it.
  const script = ["--exclude-entrypoints", "electroheat.global.js"];
  step("attw", ["npx", "--no-install", "attw", tarball(), "--profile", "node16", ...script], ["pack"]);
  const reporters =
    report === undefined ? [] : ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  step("tests", ["npx", "--no-install", "vitest", "run", ...reporters]);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

console.log();
for (const { name, seconds, outcome } of done) {
  console.log(`${name.padEnd(8)} ${outcome.padEnd(8)} ${seconds.toFixed(1).padStart(6)} s`);
}
const failures = done.filter(({ outcome }) => outcome !== "passed");
if (report !== undefined) {
  // CI counts a failed step beside the failed tests; the tests step is already counted test by test.
  const steps = failures.filter(({ name }) => name !== "tests").map(({ name }) => name);
  /** @type {Record<string, unknown>} */
  let results = {};
  try {
    results = JSON.parse(readFileSync(report, "utf8"));
  } catch {
    steps.push("tests");
  }
  writeFileSync(report, JSON.stringify({ ...results, failedSteps: steps }));
}
process.exitCode = failures.length === 0 ? 0 : 1;

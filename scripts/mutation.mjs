/**
 * Changes the code of one room a little, again and again, and runs the room's tests on each change: what no test notices survives.
 *
 *   npm run mutation -- decision           one room; minutes to hours
 *   npm run mutation -- circuit solve.ts   one file of it
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const [room, file = "**/*.ts"] = process.argv.slice(2);
if (room === undefined) throw new Error("which room? npm run mutation -- decision");

const folder = mkdtempSync(join(tmpdir(), "electroheat-mutation-"));
const config = join(folder, "stryker.config.json");
const tests = join(folder, "vitest.config.mjs");
// The room's own tests and the vectors; properties run a tenth as often, for each of thousands of changes.
writeFileSync(
  tests,
  `export default {
  root: process.cwd(),
  resolve: { alias: [
    { find: /^fast-check$/, replacement: process.cwd() + "/tests/support/fastCheck.ts" },
    { find: /^electroheat$/, replacement: process.cwd() + "/src/index.ts" },
    { find: /^electroheat\\/(.+)$/, replacement: process.cwd() + "/src/$1/index.ts" },
  ] },
  test: { include: ["tests/${room}/**/*.test.ts"], exclude: ["**/bundle.test.ts"], setupFiles: [process.cwd() + "/tests/support/seed.ts"],
    testTimeout: 120000 },
};
`,
);
writeFileSync(
  config,
  JSON.stringify({
    testRunner: "vitest",
    plugins: ["@stryker-mutator/vitest-runner"],
    vitest: { configFile: tests },
    mutate: [`src/${room}/${file}`, `!src/${room}/index.ts`],
    coverageAnalysis: "perTest",
    concurrency: 2,
    reporters: ["clear-text", "json"],
    jsonReporter: { fileName: join(folder, "mutation.json") },
    clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
    tempDirName: join(folder, "sandbox"),
    allowConsoleColors: false,
    ignorePatterns: ["dist", "site", "coverage", "docs", "tests/nodes", "tests/package"],
    timeoutMS: 60_000,
  }),
);
try {
  const run = spawnSync("npx", ["--no-install", "stryker", "run", config], {
    cwd: root,
    stdio: "inherit",
    env: { ...process.env, ELECTROHEAT_FUZZ_RUNS: "100" },
  });
  process.exitCode = run.status ?? 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

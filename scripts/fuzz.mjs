/**
 * Runs the properties only, more often than the gate does.
 *
 *   npm run fuzz                            every property 100,000 times (dearer ones in proportion), hours
 *   npm run fuzz -- --runs 5000             another number
 *   npm run fuzz -- --seed 7 tests/circuit  another seed; only these tests
 *   npm run fuzz -- --count                 as often as the gate, and how many properties there are and how often each runs
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { option, words } from "./options.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const [runs, seed] = [option("--runs"), option("--seed")];
const count = words.includes("--count");
const asked = words.filter((word) => !word.startsWith("--"));

/** @returns {string[]} test files that hold a property */
const withProperties = () =>
  readdirSync(join(root, "tests"), { recursive: true })
    .map((name) => join("tests", String(name)))
    .filter((name) => name.endsWith(".test.ts") && !name.includes("node_modules"))
    .filter((name) => /\bfc\.assert\(/.test(readFileSync(join(root, name), "utf8")));

const folder = mkdtempSync(join(tmpdir(), "electroheat-fuzz-"));
const log = join(folder, "properties.jsonl");
try {
  const { status } = spawnSync(
    "npx",
    [
      "--no-install",
      "vitest",
      "run",
      "--project",
      "rooms",
      "--test-timeout=0",
      ...(asked.length > 0 ? asked : withProperties()),
    ],
    {
      cwd: root,
      stdio: "inherit",
      env: {
        ...process.env,
        ELECTROHEAT_FUZZ_RUNS: runs ?? (count ? "1000" : "100000"),
        ELECTROHEAT_PROPERTY_LOG: log,
        ...(seed === undefined ? {} : { ELECTROHEAT_FUZZ_SEED: seed }),
      },
    },
  );
  process.exitCode = status ?? 1;
  if (existsSync(log)) {
    /** @type {{ test: string, file: string, gate: number, numRuns: number, ms: number }[]} */
    const lines = readFileSync(log, "utf8")
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    const cases = lines.reduce((sum, { numRuns }) => sum + numRuns, 0);
    const often = lines.filter(({ gate }) => gate >= 1000).length;
    console.log(
      `\n${lines.length} properties, ${cases} cases; ${often} of them run at least 1,000 times in the gate`,
    );
    for (const { test, gate } of lines.filter((one) => one.gate < 1000))
      console.log(`  ${gate} runs: ${test}`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/**
 * fast-check as the tests get it: `fast-check` is resolved to this file (vitest.config.ts), so that every property of every room has
 * the same say in how often it runs, without each test asking.
 *
 * A property runs 1,000 times where its test names no count; a test that names fewer does so because one case costs much.
 * `ELECTROHEAT_FUZZ_RUNS=100000` runs each in proportion: 100,000 for those of 1,000, a tenth of that for those of 100.
 * `ELECTROHEAT_PROPERTY_LOG=file` leaves a line for each property: what `npm run fuzz -- --count` counts.
 */
import { appendFileSync } from "node:fs";
import { expect } from "vitest";
// By its path in the package: by its name it would be this file again.
import * as real from "../../node_modules/fast-check/lib/fast-check.js";

const GATE = 1_000;
const wanted = Number(process.env["ELECTROHEAT_FUZZ_RUNS"] ?? GATE);
if (!Number.isSafeInteger(wanted) || wanted < 1)
  throw new Error("ELECTROHEAT_FUZZ_RUNS must be a whole number");
const log = process.env["ELECTROHEAT_PROPERTY_LOG"];

function assert<Ts>(
  property: real.IRawProperty<Ts>,
  params: real.Parameters<Ts> = {},
): ReturnType<typeof real.assert> {
  const gate = params.numRuns ?? GATE;
  const numRuns = Math.max(1, Math.round((gate * wanted) / GATE));
  const start = performance.now();
  const outcome = real.assert(property, { ...params, numRuns });
  if (log !== undefined) {
    const { currentTestName, testPath } = expect.getState();
    const line = { test: currentTestName, file: testPath, gate, numRuns, ms: performance.now() - start };
    appendFileSync(log, `${JSON.stringify(line)}\n`);
  }
  return outcome;
}

export * from "../../node_modules/fast-check/lib/fast-check.js";
export { assert };
export default { ...real, assert };

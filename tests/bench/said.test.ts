/**
 * What an assessment says to the technician, sheet by sheet, as people have read it: answer, steps with their reasons, parts, and what looks
 * odd; of three records the whole text. That the words follow from the readings is held by the other tests of this room; this one holds that
 * none of them changes unread. Whoever changes them on purpose writes them anew, reads each, and commits them:
 *
 *   ELECTROHEAT_SAID=write npx vitest run tests/bench/said.test.ts
 *
 * No published source: records are invented, and what is said of which finding is common practice.
 */
import { assessModule, assessmentText, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { keptIn } from "../support/kept.ts";
import { POOL } from "./pool.ts";
import { SAID } from "./saidRecords.ts";

const kept = keptIn(new URL("said/", import.meta.url), "ELECTROHEAT_SAID");
const records: Readonly<Record<string, BenchRecord>> = { ...POOL, ...SAID };
const WHOLE = ["every field", "a curing oven with a bad joint", "an IEC feed as installed"];

function saidOf(name: string): string {
  const assessment = assessModule(records[name] as BenchRecord);
  if (WHOLE.includes(name)) return `${assessmentText(assessment)}\n`;
  const { answer, nextSteps, parts, warnings } = assessment;
  return [
    ...answer,
    "",
    ...nextSteps.flatMap(({ action, reason, about }) => [
      `> ${action}`,
      `  ${reason}`,
      `  [${about.join(", ")}]`,
    ]),
    ...parts.map(({ part, quantity, reason }) => `+ ${quantity} × ${part}: ${reason}`),
    ...warnings.map(({ path, message }) => `? ${path}: ${message}`),
    "",
  ].join("\n");
}

describe.each(Object.keys(records))("%s", (name) => {
  it("is told as it was read", () => {
    kept.hold(`${name}.txt`, saidOf(name));
  });
});

it("no other sheets lie beside them", () => {
  expect(kept.names()).toEqual(
    Object.keys(records)
      .map((name) => `${name}.txt`)
      .sort(),
  );
});

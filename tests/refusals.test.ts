/** Every public function of the rooms meets a call without its argument with an error of ours, never with a TypeError. */
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { onlyRoom } from "./support/shared.ts";

const ROOMS = [
  "bench",
  "circuit",
  "drawing",
  "element",
  "joint",
  "material",
  "operators",
  "process",
  "wiring",
];
const modules: Record<string, object> = {};
for (const room of ROOMS)
  if (onlyRoom.length === 0 || onlyRoom.includes(room))
    modules[room] = await import(`../src/${room}/index.ts`);

/** What a function does with one argument: an error of ours, another one, or an answer. */
function outcome(run: (input: unknown) => unknown, input: unknown): string {
  try {
    run(input);
    return "answers";
  } catch (error) {
    return isElectroheatError(error) ? "refuses" : String(error);
  }
}

/** One takes a finished result of ours; the other is the gate itself, which answers with a list of issues. */
const EXEMPT = new Set(["assessmentText", "editionIssues"]);

describe.each(Object.entries(modules))("%s", (_room, exported) => {
  const functions = Object.entries(exported).filter(
    ([name, value]) => typeof value === "function" && value.length === 1 && !EXEMPT.has(name),
  ) as unknown as [string, (input: unknown) => unknown][];

  it("has functions to try", () => {
    expect(functions.length).toBeGreaterThan(3);
  });

  it.each(functions)("%s refuses undefined, null and a number for a record", (_name, run) => {
    for (const input of [undefined, null]) expect(outcome(run, input)).toBe("refuses");
    expect(["refuses", "answers"]).toContain(outcome(run, 5));
  });
});

/** Which pairs of faults are weighed, against what the answer says was left out: nothing is left out in silence. */
import { diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { infer } from "../../../src/bench/diagnosis/inference/infer.ts";
import { questionOf } from "../../../src/bench/diagnosis/likelihood/model.ts";
import { amps, asked, bank, pairs, reading, volts3 } from "./sheets.ts";

const MODULE = {
  banks: [bank("A", "star", 24, { elementsInParallel: 2 }), bank("B", "star", 24)],
  starPoints: "tied",
};
const LIVE = [
  ...amps([34, 34, 34]),
  ...volts3([480, 480, 480]),
  reading({ kind: "insulation", from: "L1", reads: 5e7 }),
];
const KINDS = [
  "element open",
  "shorted turns",
  "element off value",
  "joint",
  "open joint",
  "mis-linked",
  "lost line",
  "earth fault",
  "supply unbalance",
];

const key = (kinds: readonly string[]): string => [...kinds].sort().join(" + ");

/** Pairs of kinds weighed, and those that are not. */
function weighed(more: object = {}): {
  readonly listed: ReadonlySet<string>;
  readonly missing: readonly string[];
} {
  const names = infer(questionOf(asked(MODULE, LIVE, { depth: "pairs", ...more }))).flatMap(({ finding }) =>
    finding.names.list(),
  );
  const listed = new Set(
    names
      .filter(({ faults }) => faults.length === 2)
      .map(({ faults }) => key(faults.map(({ kind }) => kind))),
  );
  const possible = KINDS.flatMap((a, i) => KINDS.slice(i).map((b) => key([a, b])));
  return { listed, missing: possible.filter((one) => !listed.has(one)) };
}

const said = (readings: ReturnType<typeof asked>["readings"], more: object = {}): string | undefined =>
  diagnose(asked(MODULE, readings, { depth: "pairs", ...more })).notDetermined.find((one) =>
    one.startsWith("Not weighed:"),
  );

describe("pairs of faults", () => {
  it("are weighed for every two kinds but those named as left out", () => {
    const { missing } = weighed();
    expect([...missing].sort()).toEqual(
      [
        key(["earth fault", "shorted turns"]),
        key(["earth fault", "element off value"]),
        key(["earth fault", "joint"]),
        key(["earth fault", "earth fault"]),
        key(["mis-linked", "mis-linked"]),
        // There is but one of it.
        key(["supply unbalance", "supply unbalance"]),
      ].sort(),
    );
    expect(said(LIVE)).toBe(
      "Not weighed: an earth fault beside shorted turns, an element off its value, resistance in a joint, an open element of the same branch or a second earth fault, two slips in the links, two bad joints on one wire or three faults at once.",
    );
  });

  it("that no prior allows are not said to be missing", () => {
    expect(said(LIVE, { priors: { earthFault: 0, misLinked: 0 } })).toBe(
      "Not weighed: two bad joints on one wire or three faults at once.",
    );
  });

  it("with an earth fault are not missing where nothing shows earth faults anyway: they keep their prior", () => {
    const ohms = pairs([16.4, 16.4, 16.4]);
    expect(said(ohms)).not.toContain("earth");
    const found = diagnose(asked(MODULE, ohms, { depth: "pairs" }));
    expect(found.notDetermined.some((one) => one.includes("an earth fault does not show"))).toBe(true);
  });

  it("are not spoken of where they were not asked for", () => {
    expect(said(LIVE, { depth: "single" })).toBeUndefined();
  });
});

/**
 * What is wrong with a module as a whole, or with how it was read. Expected readings by Ohm: like branches stay like, a winding of the
 * feed lies beside them between every two lines.
 */
import { diagnose, diagnosisText } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, reading, topOf, volts3 } from "./sheets.ts";

const R = 7.2 * 1.025;
const STAR = { banks: [bank("A", "star", 7.2)] };
const OFF = {
  instruments: { ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" } },
};
const toStar = (reads: number) =>
  ["L1", "L2", "L3"].map((from) => reading({ kind: "resistance", from, to: "S", reads }));

describe("all elements alike of another value", () => {
  it.each([0.25, 1 / 3, 0.5, 0.75, 4 / 3, 2, 3, 4])("%d times", (factor) => {
    const sheet = [...toStar(factor * R), ...pairs([2 * factor * R, 2 * factor * R, 2 * factor * R])];
    const found = diagnose(asked(STAR, sheet, OFF));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([{ kind: "other rating" }]);
    const [ratio] = topOf(found)[0]?.estimates ?? [];
    expect(ratio?.of).toBe("resistance ratio");
    expect(ratio?.low).toBeLessThan(factor);
    expect(ratio?.high).toBeGreaterThan(factor);
    // The tolerance that all elements share, -5 to +10 %, is all that is not known of it.
    expect((ratio?.high as number) / (ratio?.low as number)).toBeLessThan(1.25);
  });

  it("shows in amps as it does in ohms", () => {
    // Half the ohms draw twice the amps: 480 V/√3 over 7.38 Ω hot is 36.1 A.
    const twice = Math.round((10 * 2 * 480) / Math.sqrt(3) / (R * 1.04)) / 10;
    const found = diagnose(asked(STAR, [...amps([twice, twice, twice]), ...volts3([480, 480, 480])]));
    expect(firstFaults(found)).toEqual([{ kind: "other rating" }]);
  });

  it("is no word where the common tolerance will do, nor where one branch alone is off", () => {
    expect(firstFaults(diagnose(asked(STAR, toStar(0.97 * R), OFF)))).toEqual([]);
    const one = [0.5, 1, 1].map((factor, i) =>
      reading({ kind: "resistance", from: `L${i + 1}`, to: "S", reads: factor * R }),
    );
    expect(firstFaults(diagnose(asked(STAR, one, OFF)))[0]).toMatchObject({ element: "A-L1" });
  });
});

describe("the feed still connected", () => {
  it.each([0.05, 0.35, 1.2])("%d Ω between lines", (w) => {
    // Delta of the winding and star of the module side by side: the star as a delta has 3R a side.
    const side = (3 * R * w) / (3 * R + w);
    const seen = (2 * side) / 3;
    const found = diagnose(asked(STAR, pairs([seen, seen, seen]), OFF));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([{ kind: "feed connected" }]);
    const [winding] = topOf(found)[0]?.estimates ?? [];
    expect(winding).toMatchObject({ of: "feed resistance", unit: "Ω" });
    expect(winding?.low).toBeLessThan(w);
    expect(winding?.high).toBeGreaterThan(w);
  });

  it("brings all three branches together at the star point: a third of one", () => {
    const found = diagnose(asked(STAR, [...toStar(R / 3 + 0.02), ...pairs([0.06, 0.06, 0.06])], OFF));
    expect(firstFaults(found)).toEqual([{ kind: "feed connected" }]);
    expect(diagnosisText({ asked: asked(STAR, pairs([0.06, 0.06, 0.06]), OFF), diagnosis: found })).toContain(
      "still connected while ohms were read",
    );
  });

  it("is not thought of where nothing was read in ohms", () => {
    const found = diagnose(asked(STAR, [...amps([300, 300, 300]), ...volts3([480, 480, 480])]));
    const kinds = found.groups.flatMap(({ explanations }) =>
      explanations.flatMap(({ faults }) => faults.map(({ kind }) => kind)),
    );
    expect(kinds).not.toContain("feed connected");
  });
});

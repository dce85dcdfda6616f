/**
 * A joint burnt off altogether. Expected readings are worked by hand from the circuit: what is parted reads open, what is
 * left carries what two lines drive through it.
 */
import { diagnose, diagnosisText, nextMeasurements } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, pairs, probabilityOf, reading, topOf, volts3 } from "./sheets.ts";

const R = 12 * 1.025;
const OPEN_L1 = [{ kind: "open joint", place: "L1" }];

describe("a joint or lug burnt off", () => {
  const twin = { banks: [bank("A", "star", 12), bank("B", "star", 12)], starPoints: "separate" };

  it("explains both banks dead on one line, which no single open element does", () => {
    // L1 parted: only L2-L3 is left, two stars of 2R side by side.
    const found = diagnose(asked(twin, pairs(["open", R, "open"])));
    expect(found.outcome).not.toBe("nothing fits");
    expect(topOf(found)[0]?.faults).toEqual(OPEN_L1);
    expect(topOf(found)[0]?.estimates).toEqual([]);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.9);
    expect(
      diagnose(asked(twin, pairs(["open", R, "open"]), { priors: { openJoint: 0 } })).groups[0]
        ?.explanations[0]?.faults,
    ).not.toEqual(OPEN_L1);
  });

  it("is told from a lost line by ohms, and by volts on the supply's side", () => {
    const star = { banks: [bank("A", "star", 12)] };
    const current = 480 / (2 * R * 1.04);
    const live = amps([0, current, current]);
    const together = diagnose(asked(star, live));
    const kinds = topOf(together).map(({ faults }) => faults[0]?.kind);
    expect(kinds).toContain("open joint");
    expect(kinds).toContain("lost line");
    // The supply stands on all three lines; a lost line shows half the voltage from the module's side.
    const fed = diagnose(asked(star, [...live, ...volts3([480, 480, 480])]));
    expect(probabilityOf(fed, OPEN_L1)).toBeGreaterThan(0.05);
    expect(probabilityOf(fed, [{ kind: "lost line", line: "L1" }])).toBeLessThan(1e-4);
    const dead = diagnose(asked(star, [...live, ...pairs([2 * R, 2 * R, 2 * R])]));
    expect(probabilityOf(dead, OPEN_L1)).toBeLessThan(1e-4);
    expect(probabilityOf(dead, [{ kind: "lost line", line: "L1" }])).toBeGreaterThan(0.9);
  });

  it("is told from an open element by ohms across the element alone, and is one group with it without", () => {
    const delta = { banks: [bank("A", "delta", 12, { elementsInParallel: 1 })] };
    // L1 parted: L2-L3 reads one side; the strings on L1 hang on it. An open side would leave L1 a way.
    const found = diagnose(asked(delta, pairs(["open", (R * 2) / 3, "open"])));
    expect(topOf(found)[0]?.faults.map(({ kind }) => kind)).toEqual(["open joint"]);
    const star = { banks: [bank("A", "star", 12)] };
    const readings = pairs(["open", 2 * R, "open"]);
    const first = topOf(diagnose(asked(star, readings)));
    const kinds = new Set(first.map(({ faults }) => faults[0]?.kind));
    expect(kinds).toContain("element open");
    expect(kinds).toContain("open joint");
    expect(
      diagnosisText({ asked: asked(star, readings), diagnosis: diagnose(asked(star, readings)) }),
    ).toContain("open circuit in the joint where line L1");
  });

  it("takes any drop across the open place: a millivoltmeter there may show the line voltage", () => {
    const drawn = {
      banks: [bank("A", "star", 12)],
      joints: ["L1", "L2", "L3"].map((at) => ({ id: `J-${at}`, at, resistance: 1e-4 })),
    };
    const current = 480 / (2 * R * 1.04);
    for (const reads of [0, 415]) {
      const found = diagnose(
        asked(drawn, [
          ...amps([0, current, current]),
          ...volts3([480, 480, 480]),
          reading({ kind: "drop", across: "J-L1", reads }),
        ]),
      );
      expect(found.outcome).toBe("explained");
      const own = probabilityOf(found, [{ kind: "open joint", place: "J-L1" }]);
      // Volts across a joint look like a slip of the unit; that it may be open and live is said with it.
      expect(
        found.warnings.some(({ message }) => message.includes("the joint open and the supply across it")),
      ).toBe(reads > 0);
      expect(own).toBeGreaterThan(reads === 0 ? 0.001 : 0.99);
    }
  });

  it("is beside another fault at depth pairs, never twice in one place", () => {
    const found = diagnose(asked(twin, pairs(["open", 2 * R, "open"]), { depth: "pairs" }));
    const all = found.groups.flatMap(({ explanations }) => explanations);
    expect(found.outcome).not.toBe("nothing fits");
    for (const { faults } of all) {
      const places = faults.flatMap((one) => ("place" in one ? [one.place] : []));
      expect(new Set(places).size).toBe(places.length);
    }
    expect(
      topOf(found).some(
        ({ faults }) => faults.length === 2 && faults.some(({ kind }) => kind === "open joint"),
      ),
    ).toBe(true);
  });

  it("has measurements proposed that look for it", () => {
    const found = nextMeasurements(asked(twin, amps([0, 480 / (R * 1.04), 480 / (R * 1.04)])));
    expect(found[0]?.separates.flat().some((words) => words.includes("joint"))).toBe(true);
  });

  it("has whoever measures across it warned of the supply's voltage", () => {
    const drawn = { ...twin, joints: [{ id: "J-L1", at: "L1", resistance: 1e-4 }] };
    const candidates = [{ kind: "drop", across: "J-L1" }] as const;
    const [one] = nextMeasurements({
      ...asked(drawn, amps([0, 480 / (R * 1.04), 480 / (R * 1.04)])),
      candidates,
    });
    expect(one?.instruction).toContain("begin on the volts range, an open joint has the supply across it");
    expect(one?.live).toBe(true);
  });

  it("refuses a prior that is none", () => {
    expect(() => diagnose(asked(twin, [], { priors: { openJoint: 1 } }))).toThrow(/priors\.openJoint/);
  });
});

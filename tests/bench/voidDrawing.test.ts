/**
 * Links against the drawing: what is worked out on the drawing is void and accuses no element.
 *
 * Two like stars of R in each branch whose tie bar is missing: from L1 to the star point of the first R lies beside R + R/2 + R/2 = 2R,
 * 2R/3 together; tied it would be R/2, for nothing flows in the other lines (Kirchhoff). A
 * star relinked as delta: line to line R beside 2R, 2R/3.
 */
import { assessModule, type BenchRecord, type RecordOhms } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const R = 7.385;
const LEADS = 0.2;
const show = (value: number): string => `${(value + LEADS).toFixed(2)} Ω`;
const base = {
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } } },
} as const;
const LINES = ["L1", "L2", "L3"] as const;
const alone = (bank: string, ownStuds = false): RecordOhms[] =>
  LINES.map((from) => ({
    from,
    to: "S",
    reads: show(R),
    alone: `${bank}-${from}`,
    ...(ownStuds ? { ownStuds } : {}),
  }));

describe("links against the drawing", () => {
  it("a missing tie bar leaves branches that read right alone in peace", () => {
    const record: BenchRecord = {
      title: "invented bead oven",
      nameplate: { power: "60 kW", voltage: "480 V" },
      wiring: {
        banks: [
          { id: "A", connection: "star" },
          { id: "B", connection: "star" },
        ],
        starPoints: "tied",
      },
      ...base,
      asFound: { ohms: [...alone("A"), ...alone("B"), { from: "L1", to: "S", reads: show((2 * R) / 3) }] },
    };
    const { answer, nextSteps, assumptions } = assessModule(record);
    expect(answer[0]).toMatch(/^Star points separate, against the drawing.*void/);
    expect(answer[0]).not.toMatch(/contradict|outside|open/);
    expect(nextSteps[0]?.action).toContain("put the links of the star points as drawn");
    for (const { action, reason } of nextSteps) {
      expect(action).not.toMatch(/Repeat|four-wire|own studs/);
      expect(reason).not.toContain("from target");
    }
    expect(assumptions.join()).toContain("void until what is read is as drawn and has been read again");
    expect(answer[2]).not.toContain("contradict");
  });

  it("a star relinked as delta accounts for what its elements on their own studs do not", () => {
    const pairs = [
      ["L1", "L2"],
      ["L2", "L3"],
      ["L3", "L1"],
    ] as const;
    const record: BenchRecord = {
      title: "invented bead oven",
      nameplate: { power: "30 kW", voltage: "480 V" },
      wiring: { banks: [{ id: "A", connection: "star" }] },
      ...base,
      asFound: {
        ohms: [...alone("A", true), ...pairs.map(([from, to]) => ({ from, to, reads: show((2 * R) / 3) }))],
      },
    };
    const { answer, nextSteps, asFound } = assessModule(record);
    expect(answer[0]).toMatch(/^Bank A linked as delta, against the drawing/);
    expect(answer[0]).not.toContain("path beside");
    expect(answer[2]).toMatch(/^Do not energise it: bank A linked as delta/);
    expect(nextSteps[0]?.action).toContain("link bank A in star");
    expect(asFound?.resistances.branches.map(({ finding }) => finding)).toEqual(["sound", "sound", "sound"]);
  });
});

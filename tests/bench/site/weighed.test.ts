/**
 * What weighs more on site: a failure more than a question that nobody answered, and a question more than a pass. Common practice, no
 * published source; limits of insulation as `insulation.test.ts` has them.
 */
import type { Figure, HardwareAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import type { ChecklistSource } from "../../../src/bench/site/checklist.ts";
import { siteConcerns } from "../../../src/bench/site/concerns.ts";
import { day, figure, judged, list, QUIET } from "./made.ts";

const item = (start: string, more: Partial<ChecklistSource>) => {
  const { state, evidence } = list(more).find(({ text }) => text.startsWith(start)) ?? {};
  return [state, evidence];
};
const hardware = (id: string, ...figures: readonly Figure[]): HardwareAssessment => ({
  ...{ id, thread: "M6", count: 1, notes: [], deferral: "invented" },
  figures,
});
const outside = (label: string, value: number, unit: string, low: number | null, high: number | null) =>
  figure(label, value, unit, "invented", { limit: { low, high }, verdict: "outside" });

describe("on the checklist", () => {
  it("a torque that nothing judges is none to pass by", () => {
    const judgedOne = hardware("a", judged("torque applied", "within", "N·m"));
    const unjudged = hardware("b", judged("torque applied", null, "N·m"));
    expect(item("Tighten every nut", { hardware: [judgedOne, unjudged] })).toEqual([
      "to do",
      "Within: a: torque applied. No torque to judge at b.",
    ]);
    expect(item("Tighten every nut", { hardware: [unjudged] })).toEqual(["to do", null]);
  });

  it("a feed that fails is not passed, whatever else of it has no answer", () => {
    const silent = figure("conductor as installed, ampacity", null, "A", "not answered");
    const device = (verdict: Figure["verdict"]) =>
      judged("overcurrent device as installed, for the load", verdict);
    const of = (...figures: readonly Figure[]) =>
      item("Conductors", { feed: { edition: "NEC 2023", figures, cautions: [], deferral: "invented" } });
    expect(of(silent, device("outside"))).toEqual([
      "not passed",
      "Outside: overcurrent device as installed, for the load.",
    ]);
    expect(of(silent, device("within"))).toEqual([
      "to do",
      "Not answered: conductor as installed, ampacity.",
    ]);
  });

  it("insulation that nothing judges is still to be judged", () => {
    const insulation = [figure("insulation at L1", 3e6, "Ω", "not judged")];
    expect(item("Insulation", { asLeft: day([], { insulation }) })).toEqual(["to do", null]);
  });

  it("insulation below different limits is told of limit by limit", () => {
    const poor = (node: string, rule: string, value: number) =>
      outside(`insulation at ${node}, ${rule}`, value, "Ω", 1e6, null);
    const insulation = [
      poor("L1", "IEC 60364-6", 210e3),
      poor("L1", "IEC 60204-1", 210e3),
      poor("L2", "IEC 60204-1", 12_300),
    ];
    expect(item("Insulation", { asLeft: day([], { insulation }) })).toEqual([
      "not passed",
      "As left: insulation at L1 210 kΩ, below the least that IEC 60364-6 and IEC 60204-1 ask for; insulation at L2 12.3 kΩ, below the least that IEC 60204-1 asks for.",
    ]);
  });
});

describe("hardware that is both loose and overstressed", () => {
  it("is renewed and not tightened further", () => {
    const both = hardware(
      "studs",
      outside("torque applied", 5, "N·m", 5.85, 7.15),
      outside("share of proof load at the torque applied", 0.9, "1", null, 0.75),
    );
    const [step] = siteConcerns({ hardware: [both], feed: null, cuts: [], supply: QUIET }).steps;
    expect(step?.action).toMatch(/^Isolate, then renew stud, nut and washer of studs/);
    expect(step?.reason).toBe(
      "studs: torque applied 5 N·m, where 5.85 N·m at least is asked; share of proof load at the torque applied 0.9, where 0.75 at most is asked.",
    );
  });
});

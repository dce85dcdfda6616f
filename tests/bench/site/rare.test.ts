/**
 * Site sections where the record gives little or much: feeds without a plate, threads without a table, tolerances without an end.
 *
 * Sources: printed tables as named beside each check; Ohm's law; for words, what the record itself says.
 */
import type { Figure, RecordFeed } from "electroheat/bench";
import { balancedSupply } from "electroheat/circuit";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import type { ChecklistSource } from "../../../src/bench/site/checklist.ts";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { assessHardware } from "../../../src/bench/site/hardware.ts";
import { assessInsulation } from "../../../src/bench/site/insulation.ts";
import { lineSpreads } from "../../../src/bench/site/lineSpread.ts";
import { day, joint, list, read, rise, the } from "./made.ts";

describe("a cable as installed", () => {
  const cable: RecordFeed = {
    edition: "IEC 60364-5-52:2009",
    installation: "B2",
    insulation: "PVC",
    conductor: "25 mm²",
  };
  const figures = (current: number | null): readonly Figure[] => {
    const found = assessFeed(read({ feed: cable, ambient: "30 °C" }), current as never);
    if (found === null) throw new Error("no feed");
    return found.figures;
  };
  const INSTALLED = "conductor as installed, ampacity";
  it("is not judged without a load: no plate says what it must carry", () => {
    // IEC 60364-5-52:2009, Table B.52.4, method B2, copper 25 mm² with PVC, three loaded: 80 A.
    const found = the(figures(null), INSTALLED);
    expect([found.value, found.limit, found.verdict]).toEqual([80, null, null]);
  });
  it("is held against the load itself where no cable of the table serves", () => {
    const found = the(figures(2000), INSTALLED);
    expect(found).toMatchObject({ value: 80, limit: { low: 2000, high: null }, verdict: "outside" });
    expect(found.basis).not.toContain("smallest that serves");
  });
});

describe("hardware that no table has", () => {
  it("has no torque to use, and what was applied is held against nothing", () => {
    // The tables of torques end at M24 and 1 in; without a strength there is no share of proof to work from.
    const [only] = assessHardware(read({ hardware: [{ id: "studs", thread: "M39x3", applied: "12 N·m" }] }));
    const applied = the(only!.figures, "torque applied");
    expect([applied.value, applied.verdict, the(only!.figures, "torque to use").value]).toEqual([
      12,
      null,
      null,
    ]);
  });
});

describe("what branches that nobody measured can do to a line", () => {
  const supply = balancedSupply({ lineVoltage: volts(480) });
  const spreads = (low: number, atTarget: readonly string[]) =>
    lineSpreads({
      record: read({ tolerance: { low, high: 0.1 } }),
      repaired: new Map(["A-L1", "A-L2", "A-L3"].map((id) => [id, ohms(7.68)])),
      atTarget,
      supply,
    });
  it("is nothing where every branch was measured", () => {
    expect(spreads(-0.05, []).size).toBe(0);
  });
  it("is worked out for sixty branches and left to Ohm's law beyond", () => {
    // The count alone decides; one branch named again and again keeps the network small.
    const of = (n: number) => spreads(-0.05, Array(n).fill("A-L1")).has("L1");
    expect([of(60), of(61)]).toEqual([true, false]);
  });
  it("has no end where a branch may be 0 Ω", () => {
    expect(spreads(-1, ["A-L1"]).size).toBe(0);
  });
  it("is one branch's share of its own line: conductances 0.95⁻¹, 1, 1 shift the star point", () => {
    // I1 = g1·(V − n), n = V·(g1 − 1)/(g1 + 2), so I1/I = 3·g1/(g1 + 2): 1.03448 for g1 = 1/0.95, 0.96774 for 1/1.1.
    const found = spreads(-0.05, ["A-L1"]).get("L1")!;
    const sound = 480 / Math.sqrt(3) / 7.68;
    const at = (ratio: number): number => 3 / ratio / (1 / ratio + 2);
    expect(found.above / sound).toBeCloseTo(at(0.95) - 1, 9);
    expect(found.below / sound).toBeCloseTo(1 - at(1.1), 9);
  });
});

describe("the checklist", () => {
  const states = (more: Partial<ChecklistSource>) =>
    list(more).map(({ text, state, evidence }) => ({ text, state, evidence }));
  it("takes a joint for good by its rise alone, where it stood out as found", () => {
    const before = joint("a", { rise: rise(4, 4) });
    const after = joint("a", { rise: rise(0, 0) });
    const remade = states({
      asFound: day([], { joints: [before] }),
      asLeft: day([], { joints: [after] }),
    }).filter(({ evidence }) => evidence === "As left nothing found at a.");
    expect(remade.length).toBeGreaterThan(0);
    expect(remade.every(({ state }) => state === "done")).toBe(true);
  });
  it("does not pass insulation that is outside every limit judged", () => {
    // 1 kΩ is below each of them: IEC 60364-6, Table 6.1, asks for 1 MΩ; the others for more.
    const insulation = assessInsulation(
      read({ asFound: { insulation: [{ from: "L1", reads: "1 kΩ", testVoltage: "500 V" }] } }).asFound
        ?.insulation,
      480 as never,
      {},
    ).map((one) => ({
      ...one,
      label: one.label.replace("IEC 60364-6", "other").replace("IEC 60204-1", "another"),
    }));
    expect(insulation.every(({ verdict }) => verdict === "outside")).toBe(true);
    const [failed] = states({ asLeft: day([], { insulation }) }).filter(({ evidence }) =>
      evidence?.startsWith("Outside every limit"),
    );
    expect(failed).toMatchObject({ state: "not passed", evidence: "Outside every limit: insulation at L1." });
  });
});

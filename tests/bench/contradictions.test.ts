/**
 * Insulation, odd amps and contradictory readings in the answer. The 1 MΩ floor is that of
 * IEC 60204-1, 18.3 (power circuits against the protective circuit), the same for every voltage.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const ohmmeter = { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: { shorted: "0.15 Ω" } } as const;
const clamp = { ofReading: 0.02, digits: 5, resolution: "0.1 A" } as const;
const tester = { ofReading: 0.03, digits: 2, resolution: "0.01 MΩ" } as const;
const supply = { v12: "400 V", v23: "400 V", v31: "400 V" } as const;
const tolerance = { low: -0.05, high: 0.1 };

/** Resistances of a star from each line to its point. */
const toPoint = (...reads: readonly string[]) =>
  reads.map((one, i) => ({ from: `L${i + 1}`, to: "S", reads: one }));
const bare: BenchRecord = {
  title: "an invented star",
  wiring: { banks: [{ id: "A", connection: "star" }] },
  tolerance,
  instruments: { ohmmeter, clamp, insulationTester: tester },
};
const SOUND = toPoint("9.00 Ω", "9.05 Ω", "9.00 Ω");
const earthed = (reads: string) => [{ from: "L1", reads, testVoltage: "500 V" }];

describe("insulation without a nameplate", () => {
  it("is judged for the voltage that was measured, and forbids voltage when dead", () => {
    for (const reads of ["0.00 MΩ", "0.20 MΩ"]) {
      const record = { ...bare, supply, asFound: { ohms: SOUND, insulation: earthed(reads) } };
      const { answer, asFound } = assessModule(record);
      expect(answer[2]).toMatch(/^Do not energise it: insulation at L1/);
      expect(asFound?.insulation.length).toBeGreaterThan(2);
    }
  });

  it("is held to the floor that asks the same of every voltage where no voltage is known", () => {
    const { answer, nextSteps } = assessModule({
      ...bare,
      asFound: { ohms: SOUND, insulation: earthed("0.30 MΩ") },
    });
    expect(answer[0]).toContain("below the least that IEC 60204-1 ask");
    expect(answer[2]).toMatch(/^Do not energise it/);
    expect(nextSteps[0]?.action).toMatch(/^Do not energise/);
  });

  it("never passes by the floor alone", () => {
    const day = { ohms: SOUND, insulation: earthed("2.00 MΩ") };
    const { answer, checklist } = assessModule({ ...bare, asLeft: day });
    expect(answer.join()).not.toContain("speaks against");
    expect(answer[2]).toMatch(/^Not known: insulation at L1/);
    expect(checklist.find(({ text }) => text.startsWith("Insulation"))?.state).toBe("to do");
  });
});

describe("the checklist", () => {
  it("does not pass insulation as left that forbids voltage in the answer", () => {
    const nameplate = { power: "18 kW", voltage: "400 V" };
    const { answer, checklist } = assessModule({
      ...bare,
      nameplate,
      supply,
      asLeft: { ohms: SOUND, insulation: earthed("0.20 MΩ") },
    });
    expect(answer[2]).toMatch(/^Do not energise/);
    const item = checklist.find(({ text }) => text.startsWith("Insulation"));
    expect(item?.state).toBe("not passed");
  });
});

describe("amps that a faulty branch cannot explain", () => {
  it("keep their step: a break may close when cold", () => {
    // +17.6 % cold carries less than its share, never nothing (Ohm's law).
    const { nextSteps } = assessModule({
      ...bare,
      nameplate: { power: "18 kW", voltage: "400 V" },
      supply,
      asFound: {
        ohms: toPoint("9.05 Ω", "9.05 Ω", "10.60 Ω"),
        currents: ["22.5 A", "22.5 A", "0.0 A"].map((reads, i) => ({ at: `L${i + 1}`, reads })),
      },
    });
    expect(nextSteps.map(({ action }) => action).join()).toContain("a break may close when cold");
  });
});

const delta = (first: string): BenchRecord => ({
  ...bare,
  nameplate: { power: "27 kW", voltage: "400 V" },
  wiring: { banks: [{ id: "A", connection: "delta" }] },
  supply,
  asFound: {
    ohms: [
      { from: "L1", to: "L2", reads: first },
      { from: "L2", to: "L3", reads: "12.00 Ω" },
      { from: "L3", to: "L1", reads: "12.00 Ω" },
    ],
  },
});

describe("readings that contradict each other", () => {
  it("give no branch a value to reckon with: the draw is the plate's", () => {
    const { draw, warnings, asFound } = assessModule(delta("12.0 kΩ"));
    expect(asFound?.resistances.consistency).toBe("inconsistent");
    // 27 kW at its own voltage.
    expect(draw?.repaired.power).toBeCloseTo(27_000, 3);
    expect(draw?.confirmed).toBe(false);
    expect(warnings.filter(({ path }) => path === "asFound.ohms.0.reads")).toHaveLength(1);
  });

  it("warns of a slip of a thousand alone", () => {
    const { warnings } = assessModule(delta("12.00 Ω"));
    expect(warnings.filter(({ path }) => path.includes("ohms"))).toEqual([]);
    const { warnings: ten } = assessModule(delta("120.0 Ω"));
    expect(ten.filter(({ path }) => path.includes("ohms"))).toEqual([]);
  });

  it("names the unit of a refused reading once", () => {
    expect(() => assessModule(delta("12.0 mΩ"))).toThrow(/shorted, 0\.15 Ω$/);
  });
});

describe("equal readings", () => {
  it("are no unbalance at all, and full load is full load", () => {
    const equal = assessModule({
      ...delta("12.00 Ω"),
      asFound: { currents: [1, 2, 3].map((n) => ({ at: `L${n}`, reads: "38.9 A" })) },
    });
    for (const { value } of equal.asFound?.unbalance ?? []) expect(value === null || value === 0).toBe(true);
  });
});

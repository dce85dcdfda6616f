/**
 * Rises that do not ask for opening a joint at once must not stand behind a clean bill.
 *
 * ANSI/NETA ATS-2003, Table 100.18: over a like joint 4 to 15 K "probable deficiency; repair as time permits", above 15 K "repair
 * immediately"; over the air 11 to 20 K and above 40 K. NFPA 70B-2023, 7.4.5: below 40 % load faults may not show, so what does
 * show is the least of it. Rise to full load: load to the power −1.6 to −2 (thermography practice).
 */
import { assessModule, assessmentText, type BenchRecord, type RecordJoint } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const scan = (
  joints: readonly (readonly [id: string, rise: string, loadRatio: number])[],
  more: Partial<BenchRecord> = {},
): BenchRecord => ({
  title: "invented core oven",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  asFound: { joints: joints.map(([id, rise, loadRatio]): RecordJoint => ({ id, rise, loadRatio })) },
  ...more,
});
const CLEAN = /No fault shows|Nothing (left )?to renew|speaks against running/;

describe("a joint that is warm at low load", () => {
  const LOW = [
    [["a", "12 K", 0.3] as const, ["b", "3 K", 0.3] as const],
    [["a", "19 K", 0.3] as const],
    [["a", "12 K", 0.39] as const, ["b", "3 K", 0.39] as const],
  ];
  it("is named, to be opened or cleared before full load, and is history once its drop is like the best", () => {
    for (const joints of LOW) {
      const { answer, nextSteps, checklist, parts } = assessModule(scan(joints));
      expect(answer.join(" ")).not.toMatch(CLEAN);
      expect(answer[0]).toMatch(/^Joint a 1[29] K over the air/);
      expect(answer[0]).toContain("repair as time permits");
      expect(answer[2]).toMatch(/^Not at full load before joint a is opened/);
      expect(nextSteps[0]?.action).toMatch(/open joint a.*before full load/);
      expect(nextSteps[0]?.about).toEqual(["a"]);
      expect(
        checklist.some(({ text, state }) => /joint/i.test(text) && text.includes("a") && state === "to do"),
      ).toBe(true);
      expect(parts.some(({ part }) => part.includes("joint a"))).toBe(true);
    }
    // Sound millivolts at its own current clear the contact: the warmth comes from elsewhere.
    const joint = (id: string, rise: string): RecordJoint => ({
      id,
      drop: "3.0 mV",
      current: "36.0 A",
      rise,
      loadRatio: 0.3,
    });
    const instruments = {
      millivoltmeter: { ofReading: 0.005, digits: 2 },
      clamp: { ofReading: 0.02, digits: 5 },
    };
    const cleared = scan([], { instruments, asFound: { joints: [joint("a", "12 K"), joint("b", "3 K")] } });
    expect(assessModule(cleared).answer[0]).toBe("No fault shows in the readings.");
  });

  it("is bounded by the load law, whatever the words: 7 K to 11 K seen at 30 %", () => {
    const rise = assessModule(scan(LOW[0] ?? [])).asFound?.joints.find(({ id }) => id === "a")?.rise;
    expect(rise?.fullLoadLow).toBeCloseTo(7 / 0.3 ** 1.6, 9);
    expect(rise?.fullLoadHigh).toBeCloseTo(11 / 0.3 ** 2, 9);
    expect([rise?.atLeast, rise?.atMost]).toEqual([2, 4]);
  });

  it("says nothing for itself where hardly any rise shows", () => {
    // 5 K ± 2 K at 30 %: up to 78 K at full load.
    const { answer, nextSteps } = assessModule(scan([["a", "5 K", 0.3]]));
    expect(answer.join(" ")).not.toMatch(CLEAN);
    expect(answer[0]).toContain("does not say if it is bad");
    expect(nextSteps[0]?.action).toMatch(/^Scan joint a again nearer to full load/);
  });
});

describe("a joint that is warm at full load", () => {
  it("is to be repaired at the next stop and does not bar running", () => {
    const { answer, nextSteps } = assessModule(scan([["a", "15 K", 1]]));
    expect(answer.join(" ")).not.toMatch(CLEAN);
    expect(answer[2]).toMatch(/^Nothing read here forbids it, but joint a asks for repair/);
    expect(nextSteps[0]?.action).toContain("at the next stop");
  });

  it("is left in peace on the first row", () => {
    for (const joints of [
      [["a", "6 K", 1] as const],
      [["a", "4 K", 0.95] as const, ["b", "3 K", 0.95] as const],
    ])
      expect(assessModule(scan(joints)).answer[0]).toBe("No fault shows in the readings.");
  });
});

it("names the coolest joint as that, not as one that rises by nothing", () => {
  const text = assessmentText(
    assessModule(
      scan([
        ["a", "12 K", 0.3],
        ["b", "3 K", 0.3],
      ]),
    ),
  );
  expect(text).toContain("b: the coolest of its kind, which the others are graded over");
  expect(text).not.toContain("0 to 0 K");
});

/**
 * Joints that are bad alike, and drops that stand alone. Expected temperatures and voltages by hand from the law of the contact,
 * T² = bulk² + V²/(4·2.44e-8) in kelvins (F. Kohlrausch 1900), the softening temperatures of copper, 190 °C, and tin, 100 °C
 * (R. Holm, Electric Contacts, from memory), and the scatter of 0.03 V that the screen allows:
 * copper √(4·2.44e-8·(463.15² − 293.15²)) = 112.0 mV, and (112.0 + 30)/√2 = 100.4 mV r.m.s. is surely above;
 * tin √(4·2.44e-8·(373.15² − 293.15²)) = 72.1 mV, and (72.1 − 30)/√2 = 29.8 mV r.m.s. is surely below.
 */
import { describe, expect, it } from "vitest";
import { assessModule, assessmentText, type BenchRecord } from "../../src/bench/index.ts";

const JOINTS = ["J1", "J2", "J3"];
const base: BenchRecord = {
  title: "drying tunnel (invented)",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: {
    banks: [{ id: "A", connection: "star" }],
    joints: JOINTS.map((id, i) => ({ id, at: `L${i + 1}` })),
  },
  instruments: {
    clamp: { ofReading: 0.02, digits: 5 },
    millivoltmeter: { ofReading: 0.005, digits: 3 },
  },
};
const drops = (...all: readonly string[]) => ({
  joints: all.map((drop, i) => ({ id: JOINTS[i] as string, drop, current: "36.0 A" })),
});
const found = (...all: readonly string[]) => assessModule({ ...base, asFound: drops(...all) });
const answerOf = (one: ReturnType<typeof assessModule>): string => one.answer.join("\n");

describe("joints that are bad alike", () => {
  it("does not clear three joints of 300 mV because they resemble each other", () => {
    const bad = found("300.0 mV", "310.0 mV", "305.0 mV");
    // 310 mV · 36 A = 11.16 W; 310 mV·√2 = 438.4 mV, √(293.15² + 0.4384²/9.76e-8) = 1433 K = 1160 °C.
    const [worst] = bad.asFound?.joints ?? [];
    expect(worst?.id).toBe("J2");
    expect(worst?.comparison).toBe("like the best");
    expect(worst?.contact?.verdict).toBe("outside");
    expect(worst?.contact?.drop).toBeCloseTo(0.31, 12);
    expect(worst?.contact?.spot).toBeCloseTo(1160.4, 0);
    expect(bad.answer[0]).toBe(
      "Joint J2 310 mV and 11.2 W in one contact, too much whatever its like show; joint J3 305 mV and 11.0 W in one contact, too much whatever its like show; joint J1 300 mV and 10.8 W in one contact, too much whatever its like show.",
    );
    expect(bad.answer[1]).toContain("Isolate, then open joint J2");
    expect(bad.answer[2]).toContain("Not on joints J2, J3 and J1");
    expect(bad.parts.map(({ reason }) => reason)).toEqual([
      "J2 drops more than any contact stands",
      "J3 drops more than any contact stands",
      "J1 drops more than any contact stands",
    ]);
    expect(assessmentText(bad)).toContain("TOO MUCH");
    expect(assessmentText(bad)).toContain("a screen, not a test");
  });
  it("leaves sound joints as they were", () => {
    const sound = found("3.9 mV", "3.6 mV", "4.1 mV");
    expect(sound.asFound?.joints.map(({ contact }) => contact?.verdict)).toEqual(Array(3).fill("within"));
    expect(sound.answer[0]).toBe("No fault shows in the readings.");
    expect(assessmentText(sound)).not.toContain("softening");
  });
  it("turns where the hand computation says, the meter's own error taken against it", () => {
    // The meter allows 0.5 % + 3 digits: 29.0 ± 0.45, 29.6 ± 0.45, 100.0 ± 0.8, 102.0 ± 0.81 mV.
    for (const [drop, verdict] of [
      ["29.0 mV", "within"],
      ["29.6 mV", "undecided"],
      ["100.0 mV", "undecided"],
      ["102.0 mV", "outside"],
    ] as const) {
      expect([drop, found(drop, drop, drop).asFound?.joints[0]?.contact?.verdict]).toEqual([drop, verdict]);
    }
  });
  it("says of drops in doubt what would clear them, and lets nothing pass before", () => {
    const warm = found("45.0 mV", "44.0 mV", "46.0 mV");
    expect(answerOf(warm)).not.toContain("No fault shows");
    expect(warm.answer[0]).toContain("Joint J3 46.0 mV and 1.66 W in one contact");
    expect(warm.answer[2]).toMatch(/^Not at full load before joints J3, J1 and J2 are opened/);
    expect(warm.nextSteps[0]?.action).toMatch(
      /^Read joints J3, J1 and J2 again with the probes on either side/,
    );
    expect(warm.checklist.find(({ text }) => text.startsWith("Remade"))?.state ?? "to do").toBe("to do");
    expect(assessmentText(warm)).toContain("not cleared");
  });
  it("is cleared by what is read as left", () => {
    const left = assessModule({
      ...base,
      asFound: drops("300.0 mV", "310.0 mV", "305.0 mV"),
      asLeft: drops("3.9 mV", "3.8 mV", "4.0 mV"),
    });
    expect(left.answer[0]).toContain("As left: No fault shows in the readings.");
    expect(left.parts).toEqual([]);
  });
  it("judges one joint alone that drops more than any contact stands, and one above a volt by nothing", () => {
    const one = assessModule({
      ...base,
      asFound: { joints: [{ id: "J1", drop: "0.30 V", current: "36.0 A" }] },
    });
    expect(one.answer[0]).toContain("too much whatever its like show");
    const open = assessModule({ ...base, asFound: { joints: [{ id: "J1", drop: "4 V", current: "36 A" }] } });
    expect(open.asFound?.joints[0]?.contact).toBeNull();
    // 1 V · 36 A is 36 W in one contact: copper has melted at less (0.43 V, R. Holm, from memory).
    expect(open.answer[0]).toContain("4 V across joint J1 is more than a joint lives through");
    expect(open.answer[2]).toBe("Not known before the readings that look odd are settled and taken again.");
  });
});

describe("drops without ohms or amps", () => {
  it("does not take two bad joints for a bank linked in delta", () => {
    // 36 mV / 36 A = 1 mΩ against 108 µΩ, 9.2 times: two burnt joints, and nothing about how the bank is linked.
    const two = found("3.9 mV", "36.0 mV", "36.0 mV");
    expect(two.diagnosis).toBeNull();
    expect(answerOf(two)).not.toContain("delta");
    expect(two.answer[0]).toMatch(/^Joint J2 at 9.23 times the best like joint/);
    expect(two.assumptions.join(" ")).toContain("drops across joints, for without ohms or amps");
  });
  it("does not take drops at an injected 10 A for elements of another value", () => {
    const injected = assessModule({
      ...base,
      asFound: { joints: JOINTS.map((id) => ({ id, drop: "1.1 mV", current: "10.0 A" })) },
    });
    expect(injected.answer[0]).toBe("No fault shows in the readings.");
  });
});

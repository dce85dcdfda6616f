/**
 * Missing heat from missing volts: P = U²/R, so the share of the plate's power is (U/U of the plate)². 415 V on 480 V: 74.8 %;
 * 208 V on 240 V: 75.1 %; 208 V on 480 V: 18.8 %. IEC 60038: a supply keeps within 10 % of its nominal voltage (from memory).
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

/** Plate volts, kW, supply volts, and the amps of a sound module on it: √3·U·I = P·(U/plate)². */
function on(plate: number, kilowatts: number, volts: number, more: Partial<BenchRecord> = {}): BenchRecord {
  const amps = ((kilowatts * 1000) / (Math.sqrt(3) * plate)) * (volts / plate);
  const v = `${volts.toFixed(0)} V`;
  return {
    title: "invented shrink tunnel",
    nameplate: { power: `${kilowatts} kW`, voltage: `${plate} V` },
    wiring: { banks: [{ id: "A", connection: "star" }] },
    instruments: {
      clamp: { ofReading: 0.02, digits: 5, resolution: "0.1 A" },
      voltmeter: { ofReading: 0.01, digits: 3 },
      ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" },
    },
    tolerance: { low: -0.05, high: 0.1 },
    supply: { v12: v, v23: v, v31: v },
    asFound: { currents: ["L1", "L2", "L3"].map((at) => ({ at, reads: `${amps.toFixed(1)} A` })) },
    ...more,
  };
}

describe("a sound module on too low a supply", () => {
  it.each([
    [480, 30, 415, "75 %"],
    [240, 24, 208, "75 %"],
    [480, 30, 208, "19 %"],
  ])(
    "plate %s V, %s kW, on %s V: gives %s, and that is said, with no fault beside it",
    (plate, kw, volts, share) => {
      const { answer, nextSteps, diagnosis } = assessModule(on(plate, kw, volts));
      expect(answer[0]).toMatch(/^No fault shows in the readings\. Outside its limit: supply/);
      expect(answer[0]).toContain(share);
      expect(answer[2]).toContain(`gives ${share} of its plate power`);
      expect(answer[3]).toContain(`(${share} of the plate)`);
      expect(nextSteps[0]?.about).toEqual(["supply"]);
      expect(diagnosis?.outcome).toBe("explained");
      expect(diagnosis?.groups[0]?.explanations[0]?.faults).toEqual([]);
    },
  );

  it("is not scolded within a tenth of the plate, but the share is said from a twentieth of the power on", () => {
    const { answer } = assessModule(on(480, 30, 440));
    expect(answer[0]).toBe("No fault shows in the readings.");
    // (440/480)² = 84.0 %.
    expect(answer[3]).toContain("(84 % of the plate)");
    expect(assessModule(on(480, 30, 478)).answer[3]).not.toContain("of the plate)");
  });

  it("keeps a broken element first", () => {
    const ohms = ["7.68 Ω", "7.68 Ω", "OL"].map((reads, i) => ({ from: `L${i + 1}`, to: "S", reads }));
    const { nextSteps, answer } = assessModule(on(480, 30, 415, { asFound: { ohms } }));
    expect(nextSteps[0]?.about).toContain("A-L3");
    expect(nextSteps.some(({ about }) => about.includes("supply"))).toBe(true);
    expect(answer[2]).toContain("At this voltage a sound module gives 75 %");
  });
});

it("takes volts that were read to neutral out of the diagnosis: they refute nothing", () => {
  // 480 V over √3 is 277 V; the amps are the plate's.
  const { answer, assumptions } = assessModule({
    ...on(480, 30, 480),
    supply: { v12: "277 V", v23: "277 V", v31: "277 V" },
  });
  expect(answer[0]).toBe("No fault shows in the readings.");
  expect(answer[2]).toMatch(/^Not known before the voltages are read again/);
  expect(assumptions.join()).toContain("look read to neutral");
});

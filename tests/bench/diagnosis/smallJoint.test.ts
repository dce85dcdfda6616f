/**
 * Joints below a milliohm, which no ohmmeter and no clamp shows and a drop across the very joint does. Readings by Ohm's law from
 * a known joint: U = R·I with the line current of a balanced delta, √3·U/R, which so small a joint does not move.
 */
import { type DiagnosisInput, diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import {
  amps,
  asked,
  bank,
  CLAMP,
  firstFaults,
  MILLIVOLTMETER,
  reading,
  topOf,
  VOLTMETER,
  volts3,
} from "./sheets.ts";

const HOT = 17.7778 / 2;
const CURRENT = (Math.sqrt(3) * 398) / HOT;
const SOUND = 75e-6;

const oven = (joint: number, drops: boolean): DiagnosisInput =>
  asked(
    {
      banks: [bank("A", "delta", 17.7778 / 1.04, { elementsInParallel: 2 })],
      joints: ["L1", "L2", "L3"].map((at) => ({ id: `J-${at}`, at, resistance: SOUND })),
    },
    [
      ...volts3([398, 398, 398]),
      ...amps([1, 1, 1].map(() => Math.round(CURRENT * 10) / 10) as [number, number, number]),
      ...(drops ? [SOUND, joint, SOUND] : []).map((ohms, i) =>
        reading({ kind: "drop", across: `J-L${i + 1}`, reads: Math.round(ohms * CURRENT * 1e4) / 1e4 }),
      ),
    ],
    {
      instruments: { clamp: CLAMP, voltmeter: VOLTMETER, millivoltmeter: MILLIVOLTMETER },
      supply: { lineVoltage: 400 },
    },
  );

describe("a joint below a milliohm", () => {
  it.each([0.25e-3, 0.3e-3, 0.5e-3, 0.9e-3, 1e-3, 1.5e-3, 10e-3])("of %d Ω is found by its drop", (ohms) => {
    const found = diagnose(oven(ohms, true));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([{ kind: "joint", place: "J-L2" }]);
    const [first] = topOf(found);
    expect(first?.probability).toBeGreaterThan(0.9);
    const [joint] = first?.estimates ?? [];
    // The clamp is good for 2 %, the last digit of the millivoltmeter for 0.1 mV.
    expect(Math.abs((joint?.value as number) / ohms - 1)).toBeLessThan(0.03);
    expect(joint?.low).toBeLessThan(ohms);
    expect(joint?.high).toBeGreaterThan(ohms);
  });

  it.each([0.6, 1, 1.4])("%d times the sound value is a sound joint", (times) => {
    const found = diagnose(oven(times * SOUND, true));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([]);
  });

  it("is nothing that amps and volts alone are asked about: without a drop the range begins at a milliohm", () => {
    const found = diagnose(oven(0, false));
    const joints = found.groups
      .flatMap(({ explanations }) => explanations)
      .filter(({ faults }) => faults.length === 1 && faults[0]?.kind === "joint");
    expect(joints.length).toBeGreaterThan(0);
    for (const { estimates } of joints) expect(estimates[0]?.low).toBeGreaterThanOrEqual(1e-3);
  });
});

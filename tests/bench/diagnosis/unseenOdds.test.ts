/** Faults that no reading of a question shows: they keep what they had beforehand, whatever the readings say. */

import { type DiagnosisInput, diagnose, diagnosisText } from "electroheat/bench";
import { ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const LOST_LINE = 0.02;

/** Ohms between the lines of a dead star: a lost line, the supply's unbalance and an earth fault stay out of sight. */
const dead = (reads: readonly [number, number, number]): DiagnosisInput => ({
  module: { banks: [{ id: "A", connection: "star", elementResistance: ohms(12) }] },
  instruments: { ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" } },
  priors: { lostLine: LOST_LINE },
  readings: [
    { kind: "resistance", from: "L1", to: "L2", reads: ohms(reads[0]) },
    { kind: "resistance", from: "L2", to: "L3", reads: ohms(reads[1]) },
    { kind: "resistance", from: "L3", to: "L1", reads: ohms(reads[2]) },
  ],
});
const hidden = (input: DiagnosisInput) => {
  const all = diagnose(input).groups.flatMap(({ explanations }) => explanations);
  return {
    sound: all.find(({ faults }) => faults.length === 0),
    lines: all.filter(({ unseen }) => unseen.length === 1 && unseen[0]?.kind === "lost line"),
    earths: all.filter(({ unseen }) => unseen.length === 1 && unseen[0]?.kind === "earth fault"),
  };
};

describe("faults that no reading shows", () => {
  // Bayes' theorem: equal likelihood leaves the odds as they were beforehand.
  it.each([[[24, 24, 24]], [[24.4, 24.2, 24.3]]] as const)(
    "keep their prior odds beside sound, %j",
    (reads) => {
      const { sound, lines } = hidden(dead(reads));
      const alone = lines.filter(({ faults }) => faults.length === 1);
      expect(alone).toHaveLength(3);
      for (const { probability } of alone) {
        expect(probability / (sound?.probability ?? 0)).toBeCloseTo(LOST_LINE / (1 - LOST_LINE), 9);
      }
    },
  );
  it("learn nothing of their parameters: different readings leave them the same", () => {
    const parameters = (reads: readonly [number, number, number]) =>
      hidden(dead(reads))
        .earths.filter(({ faults }) => faults.length === 1)
        .map(({ estimates }) => estimates);
    const before = parameters([24, 24, 24]);
    expect(before).toHaveLength(3);
    expect(parameters([24.4, 24.2, 24.3])).toEqual(before);
    // Nothing known of where on the coil: 95 % of an even spread over its whole length.
    expect(before[0]?.find(({ of }) => of === "position")).toMatchObject({ low: 0.025, high: 0.975 });
  });
  it("are named in the text", () => {
    const asked = dead([24, 24, 24]);
    expect(diagnosisText({ asked, diagnosis: diagnose(asked) })).toMatch(/alone or besides/);
  });
});

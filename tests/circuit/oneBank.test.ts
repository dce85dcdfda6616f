/** What one bank's change leaves of the others, and what firing takes from the sine. */
import { reconnected, threePhaseAngleFiring } from "electroheat/circuit";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

describe("a bank linked otherwise", () => {
  const plan = {
    banks: ["A", "B", "C"].map((id) => ({ id, connection: "star" as const, elementResistance: ohms(12) })),
    starPoints: "tied" as const,
  };

  it("leaves the other banks as drawn", () => {
    const { banks } = reconnected({ plan, connection: "delta", bank: "B" });
    expect(banks.map(({ id, connection }) => [id, connection])).toEqual([
      ["A", "star"],
      ["B", "delta"],
      ["C", "star"],
    ]);
  });

  it("or all of them where none is named", () => {
    const { banks } = reconnected({ plan, connection: "delta" });
    expect(banks.map(({ connection }) => connection)).toEqual(["delta", "delta", "delta"]);
  });
});

describe("the distortion of fired line currents", () => {
  it("is what the r.m.s. has over the fundamental, by its definition: √((I/I1)² − 1)", () => {
    for (const firingDegrees of [15, 45, 60, 75, 90, 120]) {
      const found = threePhaseAngleFiring({
        lineVoltage: volts(400),
        branchResistance: ohms(10),
        firingDegrees,
      });
      const over = (found.lineCurrent / found.fundamental) ** 2 - 1;
      expect(found.distortion, `${firingDegrees}°`).toBeCloseTo(Math.sqrt(over), 9);
      expect(found.distortion, `${firingDegrees}°`).toBeGreaterThan(0.05);
    }
  });
});

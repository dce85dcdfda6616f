/** Readings that do not determine the answer say so. Sources: null directions and closed forms, beside each case. */
import { deltaFromLineReadings, fitTerminalReadings, type TerminalOhms } from "electroheat/bench";
import { buildModule } from "electroheat/circuit";
import { ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const star = buildModule({ banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] }).network;
const reads = (from: string, to: string, value: number): TerminalOhms => ({
  from,
  to,
  reads: ohms(value),
  standardUncertainty: ohms(0.06),
});
const _toStarPoint = [reads("L1", "S", 7.9), reads("L2", "S", 7.9), reads("L3", "S", 7.8)];
const lineToLine = [reads("L1", "L2", 15.5), reads("L2", "L3", 15.5), reads("L3", "L1", 15.5)];

describe("readings that do not determine the answer say so", () => {
  it("three line-to-line readings of a star, leads unknown: null direction (½, ½, ½, −1)", () => {
    const fit = fitTerminalReadings({ network: star, readings: lineToLine, leads: "unknown" });
    expect(fit.outcome).toBe("partly");
    expect(fit.notIdentifiable).toEqual(["A-L1", "A-L2", "A-L3", "leads"]);
    expect(fit.consistency).toBe("untestable");
  });

  it("three line-to-line readings of a delta, leads unknown", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "delta", elementResistance: ohms(12) }],
    });
    const fit = fitTerminalReadings({ network, readings: lineToLine, leads: "unknown" });
    expect(fit.notIdentifiable).toEqual(["A-L1L2", "A-L2L3", "A-L3L1", "leads"]);
  });

  it("two deltas side by side with the links in", () => {
    const { network } = buildModule({
      banks: [
        { id: "A", connection: "delta", elementResistance: ohms(12) },
        { id: "B", connection: "delta", elementResistance: ohms(12) },
      ],
    });
    const readings = [reads("L1", "L2", 4), reads("L2", "L3", 4), reads("L3", "L1", 4)];
    const fit = fitTerminalReadings({ network, readings, leads: "taken off" });
    expect(fit.notIdentifiable).toHaveLength(6);
    // The readings are met all the same: they determine what the terminals see.
    for (const { residual } of fit.readings) expect(residual).toBeCloseTo(0, 6);
  });

  it("branches read only side by side, the leads shorted: rounding along what nothing determines is no lack of convergence", () => {
    const { network } = buildModule({
      banks: ["A", "B"].map((id) => ({ id, connection: "star" as const, elementResistance: ohms(9.23) })),
      starPoints: "tied",
    });
    const readings: TerminalOhms[] = [
      reads("L1", "S", 4.82),
      reads("L2", "S", 9.47),
      reads("L3", "S", 4.84),
      { from: "L2", to: "S", reads: "open", only: ["A-L2"] },
      { ...reads("L2", "S", 9.46), only: ["B-L2"] },
    ];
    const leads = { shorted: ohms(0.2), standardUncertainty: ohms(0.01) };
    const fit = fitTerminalReadings({ network, readings, leads });
    expect(fit.notIdentifiable).toEqual(["A-L1", "A-L3", "B-L1", "B-L3"]);
    expect(fit.branches.find(({ id }) => id === "A-L2")?.resistance).toBe("open");
    // By hand: the mean of its two readings less the leads.
    expect(fit.branches.find(({ id }) => id === "B-L2")?.resistance).toBeCloseTo(9.465 - 0.2, 9);
    // Side by side they are as read: 4.82 Ω and 4.84 Ω are met to the last digit.
    for (const at of [0, 2]) expect(fit.readings[at]?.residual).toBeCloseTo(0, 6);
  });

  it("a delta side whose star arm is not clear of 0: at least so many ohms, never a huge number", () => {
    const sides = deltaFromLineReadings({
      y12: ohms(47.98),
      y23: ohms(24),
      y31: ohms(24),
      standardUncertainty: ohms(0.05),
    });
    expect(sides.outcome).toBe("partly");
    expect(sides.r12).toMatchObject({ state: "not identifiable", resistance: null });
    // Arm 0.01 Ω and at most 0.01 + 2·0.866·0.05 = 0.0966 Ω: at least 24·24/0.1 Ω or so.
    expect(sides.r12.atLeast).toBeGreaterThan(4000);
    expect(sides.r12.atLeast).toBeLessThan(7000);
    expect(sides.r23.resistance).toBeCloseTo(24, 1);
  });

  it("exact readings with the star arm 0: an open side, not a division by zero", () => {
    const sides = deltaFromLineReadings({
      y12: ohms(48),
      y23: ohms(24),
      y31: ohms(24),
      standardUncertainty: ohms(0),
    });
    expect(sides.r12.state).toBe("open");
    expect(sides.outcome).toBe("solved");
  });

  it("a shorted side hides how the other two share what is left", () => {
    const sides = deltaFromLineReadings({
      y12: ohms(0),
      y23: ohms(5),
      y31: ohms(5),
      standardUncertainty: ohms(0),
    });
    expect(sides.r12.resistance).toBe(0);
    for (const side of [sides.r23, sides.r31]) {
      expect(side).toMatchObject({ state: "not identifiable", resistance: null });
      // Two in parallel that read 5 Ω together are 5 Ω each at least.
      expect(side.atLeast).toBeCloseTo(5, 9);
    }
  });

  it("three OL of a star could be any two of its branches", () => {
    const readings = (["L1", "L2", "L3"] as const).map(
      (from, i): TerminalOhms => ({ from, to: ["L2", "L3", "L1"][i] as string, reads: "open" }),
    );
    const fit = fitTerminalReadings({ network: star, readings, leads: "taken off" });
    expect(fit.outcome).toBe("partly");
    expect(fit.openChoices).toEqual([
      ["A-L1", "A-L2"],
      ["A-L1", "A-L3"],
      ["A-L2", "A-L3"],
    ]);
  });
});

/**
 * Line voltages at the limits of what a supply is taken to be. The limits are common practice without a published source: 5 % between the
 * voltages of a whole supply, 97 % of a flat triangle for a lost line, a tenth from the plate's by IEC 60038 (from memory).
 */
import { describe, expect, it } from "vitest";
import { supplyConcerns, voltageOf } from "../../../src/bench/day/supplyConcerns.ts";
import { supplyState } from "../../../src/bench/day/supplyState.ts";
import { QUIET, read, refused } from "../site/made.ts";

const supplied = (v12: number, v23: number, v31: number) =>
  read({
    nameplate: { power: "30 kW", voltage: "480 V" },
    supply: { v12: `${v12.toFixed(1)} V`, v23: `${v23.toFixed(1)} V`, v31: `${v31.toFixed(1)} V` },
  });
const concerns = (...volts: readonly [number, number, number]) =>
  supplyConcerns(supplied(...volts), 36.08, null);
const STEP = {
  action:
    "Have the electrician in charge find why the line voltages differ before the module is judged by its amps: a loose or burnt conductor, a fuse, a line wire on the neutral, unlike loads on the lines before it.",
  about: ["supply"],
};
const WHOLE = "from L1 to L2, L2 to L3, L3 to L1: those of a whole supply lie within 5 % of each other.";

describe("unequal line voltages", () => {
  it("are told of with what is usual", () => {
    expect(concerns(480, 450, 470)).toEqual({
      ...QUIET,
      outside: "line voltages that differ, 480 V, 450 V, 470 V",
      steps: [{ ...STEP, reason: `480 V, 450 V, 470 V ${WHOLE}` }],
      before: "it is known why the line voltages differ, 480 V, 450 V, 470 V",
    });
  });
  it("that are too high as well are both", () => {
    const high = "560 V between lines on a module whose plate says 480 V";
    const found = concerns(560, 500, 520);
    expect(found.outside).toBe(
      `supply ${high}, where 528 V at most is usual; line voltages that differ, 560 V, 500 V, 520 V`,
    );
    expect(found.before).toBe(
      `the supply's voltage is settled: ${high}; nor before it is known why the line voltages differ, 560 V, 500 V, 520 V`,
    );
    // (560/480)² = 1.36.
    expect(found.steps.map(({ reason }) => reason)).toEqual([
      `${high}: its elements give 1.36 times their power.`,
      `560 V, 500 V, 520 V ${WHOLE}`,
    ]);
  });
  it("begin above 5 % of the least, and are then nobody's other supply", () => {
    // 1.05 · 400 V = 420 V.
    expect(concerns(400, 420, 410).before).toBeNull();
    expect(concerns(400, 420.1, 410).before).toBe(
      "it is known why the line voltages differ, 400 V, 420.1 V, 410 V",
    );
    const taken = (...volts: readonly [number, number, number]) => {
      const record = supplied(...volts);
      return voltageOf(record, record.supply, 480 as never, 36.08);
    };
    expect(taken(400, 420, 410)).toBeCloseTo(410, 9);
    expect(taken(400, 420.1, 410)).toBe(480);
  });
});

describe("voltages read to neutral", () => {
  it("are proved by the amps of the lines, whatever the neutral has", () => {
    // 277 V is 480 V over √3; 30 kW on 480 V take 36.08 A a line, and next to nothing on the neutral.
    const amps = (...all: readonly (readonly [string, number])[]) =>
      supplyConcerns(
        read({
          nameplate: { power: "30 kW", voltage: "480 V" },
          wiring: { banks: [{ id: "A", connection: "star" }], neutral: "connected" },
          supply: { v12: "277 V", v23: "277 V", v31: "277 V" },
          asFound: { currents: all.map(([at, value]) => ({ at, reads: `${value.toFixed(1)} A` })) },
        }),
        36.08,
        null,
      ).explainsAmps;
    const lines = [
      ["L1", 36],
      ["L2", 36.2],
      ["L3", 35.9],
    ] as const;
    expect([amps(...lines), amps(...lines, ["N", 0.3]), amps(["N", 36], ...lines.slice(1))]).toEqual([
      true,
      true,
      false,
    ]);
  });
});

describe("a lost line", () => {
  const lost = (...volts: readonly [number, number, number]) =>
    supplyState(supplied(...volts).supply, 480 as never)?.lostLine;
  const bare = (...volts: readonly [number, number, number]) =>
    supplyState(supplied(...volts).supply, null)?.lostLine;
  it("is taken from a triangle as flat as 97 %, on either side", () => {
    // 0.97 · (250 + 250) V = 485 V: at that it is measured as it is, above it a line is lost.
    expect([lost(484.9, 250, 250), lost(485, 250, 250), lost(485.1, 250, 250)]).toEqual([null, null, "L3"]);
    // 0.97 · 500 V = 485 V: two sides of together so little close no triangle, whatever the meter's error.
    expect([bare(500, 250, 240), bare(500, 250, 235.1)]).toEqual(["L3", "L3"]);
    for (const least of [235, 234.9]) expect(refused(() => bare(500, 250, least))).toHaveLength(1);
    // With a plate that says the longest is right, the line floats, and shows anything down to nothing.
    expect([lost(500, 250, 234.9), lost(480, 0.5, 0.5), lost(480, 0, 0)]).toEqual(["L3", "L3", "L3"]);
  });
});

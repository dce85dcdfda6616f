/**
 * What a controller's figures are at both ends of its range, when they come with a caution, and what is refused. Figures worked by hand
 * from the sine wave and from 120° phasors.
 */
import {
  burstDuty,
  burstDutyFromCycles,
  burstFiring,
  burstReadings,
  oneSidedFiring,
  phaseAngleFiring,
  singlePhasing,
  stageBanks,
  switchFault,
} from "electroheat/circuit";
import { amperes, ohms, volts, watts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { facts, refusal } from "../support/told.ts";

describe("a controller", () => {
  it("cautions of whole bursts only while there are bursts", () => {
    const at = (duty: number) => burstReadings({ onCurrent: amperes(65), duty }).warnings;
    expect([at(0), at(1)]).toEqual([[], []]);
    expect(at(0.6).map(facts)).toEqual([
      { code: "caution", path: "trueRmsClamp", source: "common practice" },
    ]);
    for (const duty of [-0.1, 1.1])
      expect(
        refusal(() => burstFiring({ voltage: volts(480), resistance: ohms(10), duty })).slice(0, 3),
      ).toEqual(["out-of-range", "duty", "0 to 1"]);
    expect(burstDutyFromCycles({ onCycles: 0, offCycles: 5 })).toBe(0);
    expect(burstDutyFromCycles({ onCycles: 5, offCycles: 0 })).toBe(1);
    expect(refusal(() => burstDutyFromCycles({ onCycles: 0, offCycles: 0 })).slice(0, 4)).toEqual([
      "inconsistent",
      "offCycles",
      "a burst of at least one cycle",
      "0",
    ]);
    expect(refusal(() => burstDuty({ meanPower: watts(11), fullPower: watts(10) }))).toEqual([
      "out-of-range",
      "meanPower",
      "0 to 10",
      "11",
      "W",
    ]);
    expect([
      burstDuty({ meanPower: watts(0), fullPower: watts(10) }),
      burstDuty({ meanPower: watts(10), fullPower: watts(10) }),
    ]).toEqual([0, 1]);
  });

  it("cautions of a chopped wave only while it is chopped", () => {
    const at = (firingDegrees: number) =>
      phaseAngleFiring({ voltage: volts(277), resistance: ohms(10), firingDegrees });
    expect([at(0).warnings, at(180).warnings]).toEqual([[], []]);
    expect(at(90).warnings.map(facts)).toEqual([{ code: "caution", path: "harmonics" }]);
    expect(at(180)).toMatchObject({
      rmsVoltage: 0,
      power: 0,
      fundamental: 0,
      lagDegrees: null,
      distortion: null,
      averageClamp: 0,
      thyristorRms: 0,
    });
    expect(at(90).harmonics.map(({ order }) => order)).toEqual([3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25]);
    expect(at(180).harmonics.every(({ current }) => current === 0)).toBe(true);
    const sided = (firingDegrees: number) =>
      oneSidedFiring({ voltage: volts(277), resistance: ohms(10), firingDegrees });
    expect(sided(0)).toMatchObject({ directVoltage: 0, warnings: [], powerFactor: 1 });
    expect(sided(180).warnings.map(facts)).toEqual([
      { code: "caution", path: "directVoltage", source: "rashid-power-electronics" },
    ]);
    // Half a wave: half the power, and √2·V/π on the mean.
    expect(sided(180).power).toBeCloseTo(277 ** 2 / 20, 9);
    expect(sided(180).directVoltage).toBeCloseTo((Math.SQRT2 * 277) / Math.PI, 9);
  });

  it("with a failed switch leaves what conducts, and always a caution", () => {
    const left = (switchedLines: 2 | 3, failure: "shorted" | "open", failed: number) =>
      switchFault({ connection: "star", neutral: "floating", switchedLines, failure, failed });
    // Commanded off, shorted ones conduct; commanded on, open ones do not.
    expect([0, 1, 2, 3].map((n) => left(3, "shorted", n).conductingLines)).toEqual([0, 1, 2, 3]);
    expect([0, 1, 2, 3].map((n) => left(3, "open", n).conductingLines)).toEqual([3, 2, 1, 0]);
    expect([0, 1, 2].map((n) => left(2, "shorted", n).conductingLines)).toEqual([1, 2, 3]);
    expect([0, 1, 2].map((n) => left(2, "open", n).conductingLines)).toEqual([3, 2, 1]);
    for (const switched of [2, 3] as const) {
      const { warnings } = left(switched, "open", 1);
      expect(warnings.map(facts)).toEqual([
        { code: "caution", path: "conductingLines", source: "common practice" },
      ]);
      expect(warnings[0]?.message).toMatch(/prove dead/);
      expect(/third line/.test(warnings[0]?.message ?? "")).toBe(switched === 2);
      expect(refusal(() => left(switched, "open", switched + 1)).slice(0, 3)).toEqual([
        "out-of-range",
        "failed",
        `a whole number from 0 to ${switched}`,
      ]);
    }
  });

  it("single phases by what conducts (superposition of 120° phasors)", () => {
    const at = (
      neutral: "connected" | "floating",
      conductingLines: number,
      connection: "star" | "delta" = "star",
    ) => singlePhasing({ connection, neutral, conductingLines });
    expect([0, 1, 2, 3].map((n) => at("connected", n))).toEqual([
      { powerRatio: 0, lineCurrentRatio: 0, branchPowerRatios: [0, 0, 0], neutralCurrentRatio: 0 },
      { powerRatio: 1 / 3, lineCurrentRatio: 1, branchPowerRatios: [1, 0, 0], neutralCurrentRatio: 1 },
      { powerRatio: 2 / 3, lineCurrentRatio: 1, branchPowerRatios: [1, 1, 0], neutralCurrentRatio: 1 },
      { powerRatio: 1, lineCurrentRatio: 1, branchPowerRatios: [1, 1, 1], neutralCurrentRatio: 0 },
    ]);
    const dead = { powerRatio: 0, lineCurrentRatio: 0, branchPowerRatios: [0, 0, 0], neutralCurrentRatio: 0 };
    for (const connection of ["star", "delta"] as const) {
      expect([at("floating", 0, connection), at("floating", 1, connection)]).toEqual([dead, dead]);
      expect(at("floating", 3, connection)).toEqual({
        ...dead,
        powerRatio: 1,
        lineCurrentRatio: 1,
        branchPowerRatios: [1, 1, 1],
      });
    }
    expect(at("floating", 2)).toEqual({
      ...dead,
      powerRatio: 0.5,
      lineCurrentRatio: Math.sqrt(3) / 2,
      branchPowerRatios: [0.75, 0.75, 0],
    });
    expect(at("floating", 2, "delta").branchPowerRatios).toEqual([1, 0.25, 0.25]);
    expect(refusal(() => at("connected", 2, "delta")).slice(0, 4)).toEqual([
      "inconsistent",
      "neutral",
      "floating: a delta has no star point",
      '"connected"',
    ]);
    expect(refusal(() => at("floating", 4)).slice(0, 3)).toEqual([
      "out-of-range",
      "conductingLines",
      "a whole number from 0 to 3",
    ]);
  });

  it("stages banks up to the demand and no further", () => {
    const stages = ["a", "b", "c"].map((id) => ({ id, power: watts(9000) }));
    const plan = (demand: number, trimmed?: number) =>
      stageBanks({
        stages,
        demand: watts(demand),
        ...(trimmed === undefined ? {} : { trimmed: { id: "t", power: watts(trimmed) } }),
      });
    expect(plan(0)).toEqual({ on: [], trimDuty: 0, delivered: 0, shortfall: 0, excess: 0 });
    expect(plan(9000)).toEqual({ on: ["a"], trimDuty: 0, delivered: 9000, shortfall: 0, excess: 0 });
    expect(plan(9001)).toEqual({
      on: ["a", "b"],
      trimDuty: 0,
      delivered: 18_000,
      shortfall: 0,
      excess: 8999,
    });
    expect(plan(30_000)).toEqual({
      on: ["a", "b", "c"],
      trimDuty: 0,
      delivered: 27_000,
      shortfall: 3000,
      excess: 0,
    });
    expect(plan(9000, 9000)).toEqual({ on: [], trimDuty: 1, delivered: 9000, shortfall: 0, excess: 0 });
    expect(plan(13_500, 9000)).toEqual({
      on: ["a"],
      trimDuty: 0.5,
      delivered: 13_500,
      shortfall: 0,
      excess: 0,
    });
    // A trim smaller than a step leaves a gap, and the step overshoots.
    expect(plan(5000, 1000)).toEqual({ on: ["a"], trimDuty: 0, delivered: 9000, shortfall: 0, excess: 4000 });
  });
});

/** What a hot joint, a joint at low load, an unknown surface and an unprinted washer are answered with. */
import * as joint from "electroheat/joint";
import { amperes, kelvins, kelvinsPerWatt, milliohms, perKelvin } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

describe("a joint that is hot where it stands still", () => {
  const at = (resistance: number) =>
    joint.jointBalance({
      current: amperes(60),
      resistance: milliohms(resistance),
      coefficient: perKelvin(0.00393),
      thermalResistance: kelvinsPerWatt(15),
      uncertainty: 0,
    });
  // rise = I²·R·θ/(1 − I²·R·θ·α), by hand: 3 mΩ make 162 K without feedback and a gain of 0.63666, so 445.9 K.
  it("is warned of as a bar of that temperature is", () => {
    const { rise, warnings } = at(3);
    expect(rise).toBeCloseTo(162 / (1 - 162 * 0.00393), 6);
    expect(warnings.map(({ code, path, limit }) => [code, path, limit])).toEqual([["caution", "rise", 130]]);
    expect(warnings[0]?.message).toContain("On top of 20 °C");
  });
  it.each([
    // 85 K and 130 K above 20 °C are the 105 and 150 °C at which bars are warned of; x/(1 − 0.00393·x) = 85 at x = 63.7.
    [63.6, undefined],
    [63.8, 105],
    [86.0, 105],
    [86.1, 150],
  ])("%f K without feedback has the limit %s", (bare, limit) => {
    expect(at((bare / (3600 * 15)) * 1000).warnings[0]?.limit).toBe(
      limit === undefined ? undefined : limit - 20,
    );
  });
  it("without a steady state has no temperature to be warned of", () => {
    expect(at(8).warnings.map(({ path }) => path)).toEqual(["loopGain"]);
  });
});

describe("joints seen at different loads", () => {
  const worse = (first: readonly [number, number], second: readonly [number, number]) => {
    const seen = ([rise, current]: readonly [number, number]) => ({
      rise: kelvins(rise),
      current: amperes(current),
    });
    return joint.compareRises({
      first: seen(first),
      second: seen(second),
      referenceCurrent: amperes(60),
      fullLoadCurrent: amperes(60),
    }).worse;
  };
  // 20 A of 60 A is 33 %, below the 40 % of NFPA 70B-2023, 7.4.5, under which faults may not show. Exponent 1 is the lowest of all: 12 K
  // become 36 K at three times the current, and no more load makes less of them.
  it("are decided where the one at low load is hotter by every exponent", () => {
    expect(worse([12, 20], [20, 60])).toBe("first");
    expect(worse([20, 60], [12, 20])).toBe("second");
    // 6.6 K become 19.8 K by exponent 1 and 59.4 K by 2: hotter by some exponents only.
    expect(worse([6.6, 20], [20, 60])).toBe("undecided");
    expect(worse([6.7, 20], [20, 60])).toBe("first");
  });
  it("never clear the one at low load", () => {
    expect(worse([0.1, 20], [60, 60])).toBe("undecided");
    expect(worse([30, 20], [3, 20])).toBe("undecided");
  });
});

describe("a surface of unknown emissivity", () => {
  it("has no level, and is told what to do", () => {
    for (const [loadFraction, load] of [
      [1, "as measured"],
      [0.5, "full load"],
      [0.2, "as measured"],
    ] as const) {
      const found = joint.scanSeverity({
        rise: kelvins(60),
        riseHalfWidth: kelvins(2),
        comparison: "similar",
        loadFraction,
        load,
        scale: "neta-100.18",
        emissivity: "unknown",
      });
      expect([found.level, found.atLeast]).toEqual(["undecided", 0]);
      expect(found.action).toMatch(/emissivity .* not known.*tape or matt paint.*millivolts/);
      expect(found.low.rise).toBeGreaterThan(0);
    }
  });
});

it("a washer that is left out is refused with the reason, an unknown one with the sizes", () => {
  // DIN 6796:1987 prints 2.4 mm for the least height of M8, where 2.24 mm fits its neighbours.
  const error = caught(() => joint.conicalWasher("M8"));
  expect([error.code, error.argument]).toEqual(["outside-table", "size"]);
  expect(error.message).toContain("does not fit the series");
  expect(caught(() => joint.conicalWasher("M9")).message).toContain("M6, M7, M10");
});

it("a field that a tightening does not have is refused by name", () => {
  const m6 = joint.metricThread("M6");
  const error = caught(() =>
    joint.tightening({
      torque: 6 as never,
      diameter: m6.diameter,
      stressArea: m6.stressArea,
      nutFactorLow: 0.14,
      nutFactorHigh: 0.18,
      strength: 450e6 as never,
      allowedshare: 0.9,
    } as never),
  );
  expect([error.code, error.argument]).toEqual(["unknown-field", "allowedshare"]);
  expect(error.message).toContain("allowedShare");
});

describe("a size in a torque table", () => {
  const torque = (table: joint.TorqueTable, column: string, size: string) =>
    joint.tighteningTorque({ table, column, size }).torque;
  it("goes by the name of the thread, too", () => {
    for (const [table, column, own, thread] of [
      ["bus-bolts", "bronzeStainlessGalvanized", "1/4", "1/4-20"],
      ["nonferrous-maximum", "brass", "#10", "10-32"],
      ["nonferrous-maximum", "brass", "#10", "#10-24"],
      ["conical-washers", "oneWasher", "5/16 / M8", "M8"],
      ["conical-washers", "oneWasher", "5/16 / M8", "5/16"],
      ["conical-washers", "oneWasher", "5/16 / M8", "5/16-18"],
    ] as const) {
      expect(torque(table, column, thread)).toBe(torque(table, column, own));
    }
    for (const { thread } of [joint.metricThread("M8"), joint.metricThread("M10")])
      expect(torque("switchgear-metric", "mainCircuit", thread)).toBeGreaterThan(0);
  });
  it("is not guessed from a diameter, which leaves the pitch open", () => {
    for (const size of ["1/4", "#10", "10-32", "10", ""]) {
      expect(caught(() => torque("telecom-minimum", "nut", size)).argument).toBe("size");
    }
    expect(caught(() => torque("nonferrous-maximum", "brass", undefined as never)).code).toBe("missing");
  });
});

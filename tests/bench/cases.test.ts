/**
 * Three invented modules with faults, from their readings to what a technician may and may not conclude.
 *
 * Source of the figures: readings made from a known truth with errors inside 60 % of the instruments' accuracy and display rounding;
 * network figures by two numeric routes outside this library (Millman, voltage triangle, series pair) that agree to 3e-5; joint
 * figures are U/I and U·I of the printed readings. Diagnosis proper is not the business of this part.
 */
import { assessModule, assessmentText, type BenchRecord, type ModuleAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const flowing = (assessment: ModuleAssessment): string => assessmentText(assessment).replace(/\s+/g, " ");
const branch = ({ resistances }: ModuleAssessment, id: string) =>
  resistances.branches.find((one) => one.id === id)!;
const near = (value: number | undefined, expected: number, relative: number): void => {
  expect(Math.abs((value as number) / expected - 1)).toBeLessThan(relative);
};
const LINES = ["L1", "L2", "L3"] as const;

describe("tunnel dryer, 72 kW on 480 V, two stars with separate star points, slow to reach temperature", () => {
  const lifted = {
    "A1-L1": "6.37 Ω",
    "A1-L2": "6.42 Ω",
    "A1-L3": "6.34 Ω",
    "A2-L1": "6.44 Ω",
    "A2-L2": "6.38 Ω",
    "A2-L3": "OL",
  };
  const linksIn = [
    { from: "L1", to: "L2", reads: "6.43 Ω" },
    { from: "L2", to: "L3", reads: "11.03 Ω" },
    { from: "L3", to: "L1", reads: "11.09 Ω" },
  ];
  const record: BenchRecord = {
    title: "invented tunnel dryer",
    nameplate: { power: "72 kW", voltage: "480 V" },
    wiring: {
      banks: [
        { id: "A1", connection: "star" },
        { id: "A2", connection: "star" },
      ],
      starPoints: "separate",
    },
    supply: { v12: "478.0 V", v23: "481.0 V", v31: "479.0 V" },
    temperatureFactor: 1.045,
    tolerance: { low: -0.05, high: 0.1 },
    meter: { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: { shorted: "0.17 Ω" } },
    readings: Object.entries(lifted).map(([alone, reads]) => ({
      from: alone.slice(3),
      to: `S-${alone.slice(0, 2)}`,
      reads,
      alone,
    })),
  };
  const found = assessModule(record);

  it.each([
    ["A1-L1", 6.2, 1.23437],
    ["A1-L2", 6.25, 2.05078],
    ["A1-L3", 6.17, 0.744531],
    ["A2-L1", 6.27, 2.37734],
    ["A2-L2", 6.21, 1.39766],
  ] as const)("%s is %d Ω cold with the leads off, %d %% above target", (id, ohms, percent) => {
    expect(Math.abs((branch(found, id).resistance as number) - ohms)).toBeLessThan(0.005);
    expect(Math.abs((branch(found, id).deviation as number) * 100 - percent)).toBeLessThan(0.1);
    expect(branch(found, id).judgement?.verdict).toBe("within");
  });

  it("A2-L3 is open, and that comes first", () => {
    expect(branch(found, "A2-L3").resistance).toBe("open");
    expect(found.nextSteps[0]?.about).toEqual(["A2-L3"]);
  });

  it("draws 52.94 kW as found", () => {
    near(found.draw.asFound?.power, 52_944.8, 2e-5);
    // Against the truth it was made from, within the ohmmeter: 52.8095 kW.
    near(found.draw.asFound?.power, 52_809.5, 0.02);
  });

  it("will draw 71.08 kW and 85.28 / 85.32 / 85.89 A at 480 V with a nominal element in, −1.28 % from plate", () => {
    const { repairedAtPlateVoltage: repaired, deviationFromPlate } = found.draw;
    near(repaired.power, 71_077.6, 2e-5);
    expect(Math.abs(deviationFromPlate * 100 + 1.28107)).toBeLessThan(0.2);
    [85.2804, 85.3152, 85.885].forEach((amps, i) => {
      near(repaired.lines.find(({ node }) => node === LINES[i])?.current, amps, 2e-5);
    });
  });

  it("the currents clamped as found agree with the resistances: 76.5 / 75.6 / 43.5 A within the clamp's ±(2 % + 5 digits)", () => {
    [76.5, 75.6, 43.5].forEach((amps, i) => {
      const predicted = found.draw.asFound?.lines[i]?.current as number;
      expect(Math.abs(predicted - amps)).toBeLessThan(0.02 * amps + 0.5 + 0.01 * amps);
    });
  });

  it("survivors of the broken star run at three quarters, the other star as before: nothing is over-stressed", () => {
    const row = found.whatIf.find(({ element }) => element === "A2-L3");
    expect(row?.worst?.powerRatio).toBeLessThan(1.01);
    expect(row?.powerRatio).toBeGreaterThan(0.73);
    expect(row?.powerRatio).toBeLessThan(0.76);
  });

  it("must not conclude: a lost line, doubled survivors, elements 3 % high", () => {
    const text = flowing(found);
    expect(found.nextSteps.map(({ action }) => action).join()).not.toMatch(/supply|fuse|line L3/i);
    for (const { worst } of found.whatIf) expect(worst?.voltageRatio).toBeLessThan(1.01);
    for (const { deviation } of found.resistances.branches) expect(deviation ?? 0).toBeLessThan(0.03);
    expect(text).toContain("Leads and probe contact: 0.17");
    expect(text).toContain("check the nuts cold afterwards");
    expect(text).toContain("Hot resistance is 1.045 times cold, as given.");
  });

  it("says the same with the line-to-line readings in as well, which then agree with the others", () => {
    const all = assessModule({ ...record, readings: [...record.readings!, ...linksIn] });
    expect(all.resistances.consistency).toBe("consistent");
    expect(branch(all, "A2-L3").resistance).toBe("open");
    for (const id of ["A1-L1", "A1-L2", "A1-L3", "A2-L1", "A2-L2"]) {
      near(branch(all, id).resistance as number, branch(found, id).resistance as number, 0.01);
    }
    near(all.draw.asFound?.power, 52_809.5, 0.02);
  });

  it("the line-to-line readings alone do not say which star it is", () => {
    const alone = assessModule({ ...record, readings: linksIn });
    expect(alone.resistances.outcome).toBe("partly");
    expect(alone.draw.asFound).toBeNull();
    expect(alone.nextSteps[0]?.action).toContain("Lift the links");
    expect(flowing(alone)).toContain("READINGS AGAINST A SOUND MODULE");
    // 2·480²/72 000/1.045 = 6.1244 Ω: L1 to L2 is the only healthy pair.
    alone.resistances.expectedReadings.forEach((one) => {
      near(one as number, 6.1244, 1e-5);
    });
    expect(flowing(alone)).toMatch(/L1 to L2 6\.43 Ω 6\.26 Ω 6\.12 Ω \+2\.2 %/);
    expect(flowing(alone)).toMatch(/L2 to L3 11\.03 Ω 10\.86 Ω 6\.12 Ω \+77\.3 %/);
  });
});

describe("curing oven, 54 kW on 400 V, one delta of two elements side by side, burning smell, no trip", () => {
  const found = assessModule({
    title: "invented curing oven",
    nameplate: { power: "54 kW", voltage: "400 V" },
    wiring: { banks: [{ id: "A", connection: "delta", elementsInParallel: 2 }] },
    supply: { v12: "398.0 V", v23: "398.0 V", v31: "398.0 V" },
    joints: [
      { id: "J-L1", drop: "5.5 mV", current: "78.1 A" },
      { id: "J-L2", drop: "248.2 mV", current: "77.8 A" },
      { id: "J-L3", drop: "6.5 mV", current: "77.3 A" },
    ],
  });
  const joint = (id: string) => found.joints.find((one) => one.id === id)!;

  it.each([
    ["J-L1", 70.4225, 0.42955],
    ["J-L2", 3190.23, 19.31],
    ["J-L3", 84.088, 0.50245],
  ] as const)("%s is %d µΩ and loses %d W", (id, microohms, watts) => {
    near(joint(id).resistance * 1e6, microohms, 1e-5);
    near(joint(id).power, watts, 2e-5);
  });

  it("J-L2 is 45.3 times the best like joint, stands first and is to be opened; the others are like each other", () => {
    near(joint("J-L2").ratioToBest as number, 45.3013, 1e-5);
    expect(found.joints[0]?.id).toBe("J-L2");
    expect(found.joints.map(({ id, comparison }) => [id, comparison])).toEqual([
      ["J-L2", "investigate"],
      ["J-L3", "like the best"],
      ["J-L1", "like the best"],
    ]);
    expect(found.nextSteps[0]?.about).toEqual(["J-L2"]);
    expect(found.nextSteps[0]?.action).toContain("renew bar end");
  });

  it("names the rule, whose it is, and who decides", () => {
    expect(joint("J-L2").rule).toContain("common practice");
    expect(joint("J-L2").rule).toContain("licensed electrician");
  });

  it("plate power at 398 V is 53.4614 kW", () => {
    near(found.draw.repaired.power, 53_461.4, 2e-6);
  });

  it("must not conclude: an open element, an unbalanced supply, or that normal amps clear the joint", () => {
    const text = flowing(found);
    expect(found.resistances.outcome).toBe("no readings");
    expect(found.nextSteps.flatMap(({ about }) => about)).toEqual(["J-L2"]);
    expect(found.warnings).toEqual([]);
    expect(text).toContain("Line currents cannot show this");
    expect(text).toContain("check the nuts cold afterwards");
    expect(found.notTested).toContain("resistance of the branches");
  });
});

describe("duct heater, 30 kW on 208 V, three banks that should all be delta, even heat but low air rise", () => {
  const record: BenchRecord = {
    title: "invented duct heater",
    nameplate: { power: "30 kW", voltage: "208 V" },
    wiring: {
      banks: [
        { id: "A1", connection: "delta" },
        { id: "A2", connection: "delta" },
        { id: "A3", connection: "delta" },
      ],
    },
    supply: { v12: "209.0 V", v23: "209.0 V", v31: "209.0 V" },
    temperatureFactor: 1.04,
    tolerance: { low: -0.05, high: 0.1 },
    meter: { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: { shorted: "0.12 Ω" } },
    readings: [
      { from: "L1", to: "L2", reads: "3.71 Ω" },
      { from: "L2", to: "L3", reads: "3.71 Ω" },
      { from: "L3", to: "L1", reads: "3.67 Ω" },
    ],
  };
  const found = assessModule(record);

  it("targets: 12.9792 Ω per element hot, 2.77333 Ω between lines cold, 83.2717 A at 208 V and 83.672 A at 209 V", () => {
    for (const { targets } of found.targets) near(targets.elementResistanceHot, 12.9792, 1e-9);
    for (const one of found.resistances.expectedReadings) near(one as number, 2.77333, 2e-6);
    for (const { current } of found.draw.repairedAtPlateVoltage.lines) near(current, 83.2717, 1e-6);
    for (const { current } of found.draw.repaired.lines) near(current, 83.672, 1e-5);
    near(found.draw.repairedAtPlateVoltage.power, 30_000, 1e-9);
  });

  it("corrected mean of the readings is 3.57667 Ω, 1.28966 times the healthy one: nearly 9/7", () => {
    const { readings, expectedReadings, leads } = found.resistances;
    const mean = readings.reduce((sum, { reads }) => sum + (reads as number) - (leads as number), 0) / 3;
    near(mean, 3.57667, 2e-6);
    near(mean / (expectedReadings[0] as number), 1.28966, 5e-6);
    near(mean / (expectedReadings[0] as number), 9 / 7, 0.005);
  });

  it("shows the shortfall alike in all three pairs, and does not pretend to know nine branches from three readings", () => {
    const text = flowing(found);
    expect(found.resistances.branches.every(({ resistance }) => resistance === null)).toBe(true);
    expect(text).toMatch(/L1 to L2 3\.71 Ω 3\.59 Ω 2\.77 Ω \+29\.4 %/);
    expect(text).toMatch(/L2 to L3 3\.71 Ω 3\.59 Ω 2\.77 Ω \+29\.4 %/);
    expect(text).toMatch(/L3 to L1 3\.67 Ω 3\.55 Ω 2\.77 Ω \+28\.0 %/);
    expect(found.nextSteps[0]?.action).toContain("Lift the links");
    expect(found.draw.asFound).toBeNull();
  });

  it("taken as one delta of three elements side by side, draws 23.56 kW as found (true value, within the meter)", () => {
    const lumped = assessModule({
      ...record,
      wiring: { banks: [{ id: "A", connection: "delta", elementsInParallel: 3 }] },
    });
    near(lumped.draw.asFound?.power, 23_558.2, 0.03);
    near((lumped.draw.asFound?.power as number) / 30_000 / (209 / 208) ** 2, 7 / 9, 0.01);
    for (const one of lumped.resistances.branches) {
      expect(one.judgement?.verdict).toBe("outside");
      // 28 % high is not one of three open, which would be 50 % high.
      expect(one.openElements).toBeNull();
    }
    expect(flowing(lumped)).not.toMatch(/\bOPEN\b/);
  });

  it("must not conclude: a low supply, an open element", () => {
    expect(found.warnings).toEqual([]);
    expect(flowing(found)).not.toMatch(/\bOPEN\b|low supply/);
    expect(found.resistances.openChoices).toEqual([]);
  });
});

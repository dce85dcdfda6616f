/**
 * What people type into cells and records, as nameplates, drawings and old books write it. Expected values by hand: 36 kW / (√3 · 480 V)
 * = 43.301 A and / (√3 · 400 V) = 51.962 A; 1 kgf = 9.80665 N (exact); 132 lbf·in = 11 lbf·ft; AWG 12 is 0.005 in · 92^(24/39)
 * = 2.0525 mm (ASTM B258); No. 12 SWG is 0.104 in (BS 3737), 29 % thicker: "12 ga" may be either.
 */
import { sheetStatus, sheetValue } from "electroheat/catalogue";
import { wireSize } from "electroheat/material";
import { tableAmpacity } from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { celsius, isElectroheatError } from "../../src/quantity/index.ts";

const codeOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (isElectroheatError(error)) return error.code;
    throw error;
  }
  return "none";
};

describe("the volts of a nameplate", () => {
  it.each([
    ["480V 3ph", 43.301],
    ["480 V 3 PH 60 HZ", 43.301],
    ["480VAC, 3-phase", 43.301],
    ["480 V AC", 43.301],
    ["400 V 3~ 50 Hz", 51.962],
    ["400 V 50/60 Hz", 51.962],
    ["400V~", 51.962],
  ])("%s are read", (volts, amps) => {
    expect(sheetValue("lineCurrent", "36 kW", volts)).toBeCloseTo(amps, 3);
  });
  it.each([
    "480 V 1ph",
    "480 V 13ph",
    "480 3ph",
    "480Y/277 V 3ph",
    "480 V 2 ph",
    "36 kW 3ph",
    "480 V 30 Hz",
    "3ph",
  ])("%s are not", (volts) => {
    expect(sheetStatus("lineCurrent", "36 kW", volts)).toMatch(/^lineVoltage: .* is not allowed/);
  });
  it("have marks that nothing else has", () => {
    expect(sheetStatus("lineCurrent", "36 kW 3ph", "480 V")).toMatch(/^power: .* is not allowed/);
  });
});

describe("torque of old books", () => {
  // 1.5 kgf·m = 14.710 N·m on 8 mm at a nut factor of 0.2: 14.710/(0.2 · 0.008) = 9193.7 N.
  it.each(["1.5 kpm", "1.5 kp·m", "1.5 mkp", "1.5 kg m", "150 kpcm", "150 kp cm"])("%s", (torque) => {
    expect(sheetValue("preloadFromTorque", torque, "8 mm", 0.2)).toBeCloseTo(9193.734, 3);
  });
  // 132 lbf·in = 14.914 N·m: 9321.2 N.
  it.each(["132 inlbs", "132 in.-lbs.", "11 ftlbs", "11 ft-lb"])("%s", (torque) => {
    expect(sheetValue("preloadFromTorque", torque, "8 mm", 0.2)).toBeCloseTo(9321.248, 3);
  });
});

describe("ratios in per cent", () => {
  it("are read where a ratio is taken", () => {
    for (const duty of ["60 %", "60%", " 60.0 % ", 0.6])
      expect(sheetValue("burstReadings", "65 A", duty, "averageClamp")).toBe(39);
    // 20 Ω + 5 % − 10 %.
    expect(sheetValue("toleranceBand", "20 Ω", "230 V", "5 %", "10 %", "resistance.high")).toBeCloseTo(
      21,
      12,
    );
    expect(sheetValue("toleranceBand", "20 Ω", "230 V", "5 %", "10 %", "resistance.low")).toBeCloseTo(18, 12);
  });
  it("keep their limits, and are nowhere else a number", () => {
    for (const duty of ["160 %", "−5 %", "-5%", "60", "%", "six %", "6 0 %", 60])
      expect(sheetStatus("burstReadings", "65 A", duty)).toMatch(/^duty: .* expected 0 to 1$/);
    expect(sheetStatus("starWithOpenElements", "200 %", 1)).toMatch(/^elementsInParallel: /);
  });
});

describe("names", () => {
  it("reads wye and Y as star in a cell, names of connections in capitals too, and no other word", () => {
    // 480/√3 = 277.128 V in a star; a delta's branch has the whole.
    for (const star of ["wye", "WYE", "Wye", "Y", "Star", "STAR "])
      expect(sheetValue("branchVoltage", star, "480 V")).toBeCloseTo(277.128, 3);
    for (const delta of ["Delta", "DELTA", "Δ"])
      expect(sheetValue("branchVoltage", delta, "480 V")).toBe(480);
    expect(sheetStatus("branchVoltage", "why", "480 V")).toMatch(/^connection: "why" is not allowed/);
  });
  it("takes numbers for names where a sheet has made them of text", () => {
    const branches = [
      ["id", "from", "to", "resistance"],
      [1, "L1", "S", 7.68],
      [2, "L2", "S", 7.68],
      [3, "L3", "S", 7.68],
    ];
    const supply = sheetValue("balancedSupply", 480, "", "", "json");
    // 480/√3/7.68 = 36.084 A.
    expect(sheetValue("energise", branches, supply, "branches[id=2].current")).toBeCloseTo(36.084, 3);
    expect(sheetValue("awgDiameter", 12)).toBeCloseTo(2.0525e-3, 7);
    expect(sheetValue("awgDiameter", [[12], ["12"]])).toEqual([
      [sheetValue("awgDiameter", "12")],
      [sheetValue("awgDiameter", "12")],
    ]);
    // A number is no date and no flag, and text is still no number.
    expect(sheetStatus("awgDiameter", true)).toMatch(/^size: true is not allowed/);
    expect(sheetStatus("awgDiameter", 12.5)).toMatch(/^size: /);
  });
});

describe("wire sizes", () => {
  it("may have the gauge in front", () => {
    expect(wireSize("AWG 12").diameter).toBeCloseTo(2.0525e-3, 7);
    expect(wireSize("awg 2/0").size).toBe("2/0");
    const row = {
      edition: "NEC 2023",
      installation: "raceway",
      material: "copper",
      insulationTemperature: celsius(75),
    } as const;
    // NEC 2023 Table 310.16, 12 AWG copper, 75 °C: 25 A.
    for (const size of ["AWG 12", "12 AWG", "#12", "awg12"])
      expect(tableAmpacity({ ...row, size }).value).toBe(25);
  });
  it("are ambiguous as ga, and say so", () => {
    for (const size of ["12 ga", "12 ga.", "12 gauge", "2/0 ga"]) {
      expect([size, codeOf(() => wireSize(size))]).toEqual([size, "ambiguous"]);
      const row = {
        edition: "NEC 2023",
        installation: "raceway",
        material: "copper",
        insulationTemperature: celsius(75),
      } as const;
      expect([size, codeOf(() => tableAmpacity({ ...row, size }))]).toEqual([size, "ambiguous"]);
    }
    expect(sheetStatus("awgDiameter", "12 ga")).toContain("SWG: see swgSize");
  });
  it("may be square millimeters however they are typed", () => {
    for (const size of ["10 mm²", "10mm2", "10 mm^2", "10 sq mm"])
      expect(wireSize(size).area).toBeCloseTo(10e-6, 12);
  });
});

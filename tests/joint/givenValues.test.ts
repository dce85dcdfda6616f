/** What the caller may give in place of the usual value: it is used, and it is checked. */
import { barAmpacity, discSpringState, fastenerStrength, metricThread, tightening } from "electroheat/joint";
import { celsius, millimeters, newtonMeters, ohmMeters, perKelvin } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

describe("a bar", () => {
  const bar = {
    width: millimeters(30),
    thickness: millimeters(5),
    emissivity: 0,
    air: celsius(35),
    resistivity20: ohmMeters(1.7241e-8),
    coefficient20: perKelvin(0.00393),
  };
  const amps = (some: object): number =>
    barAmpacity({ bar: { ...bar, ...some }, temperature: celsius(65) }).current;

  it("of a film coefficient given, without radiation: I²·R′ = h·P·ΔT", () => {
    // Source: heat balance of a long bar. P = 2·(30 + 5) mm, R′ = ρ20·(1 + α·45 K)/(30·5 mm²).
    const perMetre = (1.7241e-8 * (1 + 0.00393 * 45)) / (0.03 * 0.005);
    expect(amps({ filmCoefficient: 10 })).toBeCloseTo(Math.sqrt((10 * 0.07 * 30) / perMetre), 8);
  });

  it("of a skin ratio s carries 1/√s of the current", () => {
    // Source: the same balance with s·R′ in place of R′.
    expect(amps({ filmCoefficient: 10, skinRatio: 1.44 }) * 1.2).toBeCloseTo(
      amps({ filmCoefficient: 10 }),
      8,
    );
  });

  it.each([
    ["out-of-range", "bar.skinRatio", { skinRatio: 0.9 }],
    ["out-of-range", "bar.filmCoefficient", { filmCoefficient: 0 }],
  ])("refuses %s at %s", (code, path, slip) => {
    const error = caught(() => amps(slip));
    expect([error.code, error.argument]).toEqual([code, path]);
  });
});

describe("a disc spring", () => {
  const spring = {
    outerDiameter: millimeters(20),
    innerDiameter: millimeters(10.2),
    thickness: millimeters(1.1),
    coneHeight: millimeters(0.45),
  };
  const force = (some: object): number =>
    discSpringState({ spring: { ...spring, ...some }, deflection: millimeters(0.3375) }).force;

  it("of a modulus and a ratio given: the force goes with E/(1 − µ²)", () => {
    // Source: Almen and Laszlo 1936; E and µ stand in the formula as this factor only. Spring steel is 206 GPa and 0.3.
    const usual = force({});
    expect(force({ modulus: 103e9 }) / usual).toBeCloseTo(0.5, 12);
    expect(force({ poisson: 0.5 }) / usual).toBeCloseTo((1 - 0.09) / (1 - 0.25), 12);
    expect(force({ modulus: 206e9, poisson: 0.3 })).toBe(usual);
  });

  it.each([
    ["out-of-range", "spring.modulus", { modulus: -1 }],
    ["out-of-range", "spring.poisson", { poisson: 0.6 }],
  ])("refuses %s at %s", (code, path, slip) => {
    const error = caught(() => force(slip));
    expect([error.code, error.argument]).toEqual([code, path]);
  });
});

describe("a share of proof load given by the caller", () => {
  it("is what the preload is held against, and named as the caller's own", () => {
    // Source: ISO 898-1, grade 8.8 up to M16: proof 580 N/mm²; stress area of M6 20.1 mm² (ISO 724). 6.5 N·m at K = 0.18 gives
    // F = T/(K·d) = 6019 N, which is 0.516 of 20.1·580 N.
    const m6 = metricThread("M6");
    const at = (allowedShare: number) =>
      tightening({
        torque: newtonMeters(6.5),
        diameter: m6.diameter,
        stressArea: m6.stressArea,
        nutFactorLow: 0.18,
        nutFactorHigh: 0.27,
        strength: fastenerStrength({ standard: "ISO 898-1", grade: "8.8", diameter: m6.diameter }).limit,
        allowedShare,
      });
    expect([at(0.5).proof.verdict === "within", at(0.53).proof.verdict]).toEqual([false, "within"]);
    expect(at(0.53).proofBasis.kind).toBe("user table");
  });
});

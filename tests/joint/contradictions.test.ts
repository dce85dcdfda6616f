/**
 * Arguments that contradict each other: refused, with the figure that would have been right. Lengths and holes by geometry; the
 * self-locking limit of a power screw from Shigley's Mechanical Engineering Design, section 8-2 (it jams where the friction carries the
 * whole turn).
 */
import * as joint from "electroheat/joint";
import { type Issue, isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

/** Code, field and message of the refusal. */
function refusal(call: () => unknown): Partial<Issue> & { readonly message: string } {
  try {
    call();
  } catch (error) {
    if (isElectroheatError(error)) return error.issues[0] as Issue;
    throw error;
  }
  return { message: "nothing was refused" };
}
type Input<F> = F extends (input: infer I) => unknown ? I : never;

describe("a stack under a bolt", () => {
  const part = (length: number) => ({ length, expansion: 17e-6, rise: 100 });
  const change = (lengths: readonly number[]) => () =>
    joint.preloadChange({
      stud: part(0.02),
      parts: lengths.map(part),
      studStiffness: 1e8,
      partsStiffness: 3e8,
    } as unknown as Input<typeof joint.preloadChange>);

  it("has parts that add up to the length clamped, but for rounding", () => {
    expect(change([0.005, 0.015])()).toBe(0);
    expect(change([0.02 / 3, 0.02 / 3, 0.02 / 3])()).toBeCloseTo(0, 6);
    for (const lengths of [[0.005], [0.005, 0.0150001], [0.005, 0.0149999], [0.02, 0.02]]) {
      expect(refusal(change(lengths)), String(lengths)).toMatchObject({
        code: "inconsistent",
        path: "parts",
      });
    }
    expect(refusal(change([0.005])).message).toContain("0.02");
  });

  it("is longer than the shank and no longer than the bolt", () => {
    // Shigley, table 8-7: threads over 2·d + 6 mm up to 125 mm of length; M8 × 50 has 22 mm of thread, 28 mm of shank.
    const at =
      (grip: number, boltLength = 0.05) =>
      () =>
        joint.boltLengths({ diameter: 0.008, boltLength, grip } as unknown as Input<
          typeof joint.boltLengths
        >);
    for (const grip of [0.028, 0.04, 0.05]) expect(at(grip)).not.toThrow();
    expect(at(0.028)()).toMatchObject({ threadInGrip: 0 });
    expect(at(0.022, 0.022)()).toMatchObject({ shankInGrip: 0 });
    for (const grip of [0.0279, 0.0501]) {
      expect(refusal(at(grip)), String(grip)).toMatchObject({ code: "inconsistent", path: "grip" });
    }
    expect(refusal(at(0.02)).message).toMatch(/0\.028\d* and the bolt length 0\.05/);
    expect(refusal(at(0.02, 0.02))).toMatchObject({ code: "inconsistent", path: "grip" });
    expect(refusal(at(0.1, 0.126))).toMatchObject({ code: "out-of-range", path: "boltLength" });
  });
});

describe("a ring", () => {
  const under = (holeDiameter: number) => () =>
    joint.annulusPressure({ force: 5000, outerDiameter: 0.012, holeDiameter } as unknown as Input<
      typeof joint.annulusPressure
    >);

  it("has a hole smaller than itself", () => {
    // F/(π/4·D²) without a hole.
    expect(under(0)()).toBeCloseTo(5000 / (0.25 * Math.PI * 0.012 ** 2), 3);
    for (const hole of [0.012, 0.013]) {
      expect(refusal(under(hole))).toMatchObject({ code: "inconsistent", path: "holeDiameter" });
    }
    expect(refusal(under(0.013)).message).toContain("0.012");
  });
});

describe("a power screw", () => {
  const screw = (lead: number) => () =>
    joint.screwTorque({
      force: 5000,
      lead,
      meanDiameter: 0.02,
      threadFriction: 0.2,
      halfAngle: 0,
      collarFriction: 0.06,
      collarDiameter: 0.04,
    } as unknown as Input<typeof joint.screwTorque>);

  it("jams where the lead reaches π·d/f", () => {
    const limit = (Math.PI * 0.02) / 0.2;
    expect(screw(0.99 * limit)().raise).toBeGreaterThan(0);
    for (const lead of [1.0001 * limit, 2 * limit]) {
      expect(refusal(screw(lead))).toMatchObject({ code: "inconsistent", path: "lead" });
    }
    expect(refusal(screw(limit * 2)).message).toContain(String(limit).slice(0, 6));
  });
});

describe("a jumper with a current", () => {
  it("needs a resistivity, and none without a current", () => {
    const side = { conductance: 0.05, temperature: 40 };
    const profile = (more: object) => () =>
      joint.jumperProfile({
        bar: { section: 75e-6, perimeter: 0.056, conductivity: 390, filmCoefficient: 10 },
        air: 35,
        leftArm: 0.05,
        rightArm: 0.05,
        left: side,
        right: side,
        jointPower: 2,
        coefficient20: 0,
        points: 3,
        ...more,
      } as unknown as Input<typeof joint.jumperProfile>);
    expect(profile({ current: 0 })).not.toThrow();
    expect(profile({ current: 50, resistivity20: 1.7241e-8 })).not.toThrow();
    expect(refusal(profile({ current: 50 }))).toMatchObject({ code: "missing", path: "resistivity20" });
  });
});

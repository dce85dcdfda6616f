/** What does not compile, what is refused with its reason, what comes with a warning, and the plain-data promise. */
import * as joint from "electroheat/joint";
import {
  amperes,
  celsius,
  isElectroheatError,
  joules,
  kelvins,
  megapascals,
  microohms,
  millimeters,
  millivolts,
  newtonMeters,
  ohmMeters,
  ohms,
  perKelvin,
  squareMillimeters,
  volts,
  watts,
  wattsPerKelvin,
  wattsPerMeterKelvin,
  wattsPerSquareMeterKelvin,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";

const bar = {
  width: millimeters(30),
  thickness: millimeters(5),
  resistivity20: ohmMeters(1.7241e-8),
  coefficient20: perKelvin(0.00393),
  emissivity: 0.4,
  air: celsius(35),
};
/** Readings without a width. */
const sharp = { dropHalfWidth: volts(0), currentHalfWidth: amperes(0) };
const alike = { halfWidth: ohms(0), similarHalfWidth: ohms(0) };
const issueOf = (call: () => unknown) => {
  try {
    call();
  } catch (error) {
    if (isElectroheatError(error)) return error.issues[0];
    throw error;
  }
  return undefined;
};

describe("mix-ups that do not compile", () => {
  it("energy for torque, rise for temperature, temperature for rise", () => {
    const diameter = millimeters(8);
    // @ts-expect-error an energy is not a torque
    joint.preloadFromTorque({ torque: joules(15), diameter, nutFactor: 0.2 });
    // @ts-expect-error a rise is not a temperature
    joint.barAmpacity({ bar, temperature: kelvins(65) });
    // @ts-expect-error a temperature is not a rise
    joint.riseAtFullLoad({ rise: celsius(22), loadFraction: 0.6 });
    // @ts-expect-error a power is not a resistance
    joint.jointPower({ current: amperes(5), resistance: watts(5) });
    // @ts-expect-error a reading has a width
    issueOf(() => joint.measuredJoint({ drop: millivolts(5), current: amperes(5) }));
    // @ts-expect-error lubrication is named or given, never left out
    const band = issueOf(() => joint.preloadBand({ torque: newtonMeters(15), diameter }));
    // @ts-expect-error an unknown stud has no strength
    const strength = issueOf(() => joint.fastenerStrength({ standard: "ISO 898-1", diameter }));
    // Plain JavaScript learns at run time what TypeScript refuses.
    expect([band?.code, strength?.code]).toEqual(["missing", "missing"]);
    expect([band?.path, strength?.path]).toEqual(["nutFactorLow", "grade"]);
  });
});

describe("refusals say why", () => {
  it("bright copper is not graded: the reason names reflection, tape and millivolts", () => {
    const found = issueOf(() =>
      joint.scanSeverity({
        rise: kelvins(22),
        riseHalfWidth: kelvins(2),
        comparison: "similar",
        loadFraction: 0.8,
        load: "as measured",
        scale: "neta-100.18",
        emissivity: 0.04,
      }),
    );
    expect(found?.code).toBe("not-identifiable");
    expect(found?.message).toMatch(/reflected room.*tape.*millivolts/);
  });

  it("a torque without anything, and a twin of 0 Ω, say what to do", () => {
    expect(issueOf(() => joint.tighteningTorque(undefined as never))?.code).toBe("missing");
    const twin = issueOf(() =>
      joint.judgeJoint({
        ...alike,
        resistance: microohms(300),
        similar: [microohms(60), ohms(0)],
        rule: "50-percent-above-lowest",
      }),
    );
    expect([twin?.code, twin?.path]).toEqual(["not-identifiable", "similar.1"]);
    expect(twin?.message).toMatch(/more current or a finer meter/);
  });

  it("an unknown condition or grade lists what is known", () => {
    const condition = issueOf(() => joint.nutFactorRange("brass" as never));
    expect(condition?.message).toMatch(/dry steel.*zinc-plated.*dry stainless on stainless/);
    const grade = issueOf(() =>
      joint.fastenerStrength({ standard: "brass C36000", grade: "brass", diameter: millimeters(6) }),
    );
    expect(grade?.message).toMatch(/H02 rod 3\/4 in/);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, "5" as never, null as never, undefined as never, -1])(
    "%s is no current",
    (current) => {
      const found = issueOf(() =>
        joint.measuredJoint({ ...sharp, drop: millivolts(5), current: current as never }),
      );
      expect(found?.path).toBe("current");
    },
  );
});

describe("warnings, never silence", () => {
  const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);

  it("a bar left out is said, a bar that takes the whole drop is suspicious", () => {
    const reading = { ...sharp, drop: millivolts(18.4), current: amperes(64.2) };
    expect(codes(joint.measuredJoint(reading).warnings)).toEqual(["assumed"]);
    expect(joint.measuredJoint({ ...reading, barResistance: microohms(20) }).warnings).toEqual([]);
    const swallowed = joint.measuredJoint({
      ...reading,
      barResistance: microohms(290),
      dropHalfWidth: millivolts(0.5),
    });
    expect(swallowed.resistance).toBe(0);
    expect(codes(swallowed.warnings)).toEqual(["suspicious"]);
  });

  it("105 and 150 °C each belong to one side", () => {
    const at = (t: number) =>
      joint.barAmpacity({ bar, temperature: celsius(t) }).warnings.map(({ limit }) => limit);
    expect([at(104.9), at(105), at(105.1), at(150), at(150.1)]).toEqual([[], [], [105], [105], [150]]);
  });

  it("no maker's torque is said; a minimum and a maximum are called so", () => {
    const minimum = joint.tighteningTorque({ table: "telecom-minimum", size: "1/4-20", column: "nut" });
    expect(codes(minimum.warnings)).toEqual(["assumed", "caution"]);
    const typical = joint.tighteningTorque({ table: "switchgear-metric", size: "M6", column: "mainCircuit" });
    expect(codes(typical.warnings)).toEqual(["assumed"]);
    const maker = joint.tighteningTorque({
      maker: { torque: newtonMeters(5), source: "plate on the module" },
      table: "telecom-minimum",
      size: "1/4-20",
      column: "nut",
    });
    expect([maker.torque, maker.kind, maker.warnings]).toEqual([5, "maker", []]);
  });

  it("a torque that yields a brass stud is cautioned; one that does not is quiet", () => {
    const m6 = joint.metricThread("M6");
    const at = (torque: number) =>
      joint.tightening({
        torque: newtonMeters(torque),
        diameter: m6.diameter,
        stressArea: m6.stressArea,
        nutFactorLow: 0.18,
        nutFactorHigh: 0.25,
        strength: megapascals(172),
        face: {
          outerDiameter: millimeters(12.5),
          holeDiameter: millimeters(6.6),
          barThickness: millimeters(3),
        },
      });
    expect(codes(at(6.5).warnings)).toEqual(["caution"]);
    expect(at(6.5).yielding.verdict).toBe("outside");
    expect(at(2).warnings).toEqual([]);
    expect(at(2).proof.verdict).toBe("within");
    expectFinite(at(2), "tightening");
  });

  it("a strength that is no minimum is said, a minimum with its size is quiet", () => {
    const at = (grade: string) =>
      joint.fastenerStrength({ standard: "brass C36000", grade, diameter: millimeters(6) });
    expect(codes(at("H04 rod 1/4 in").warnings)).toEqual([]);
    expect(codes(at("H02 bar").warnings)).toEqual(["assumed"]);
    expect(codes(at("H02 rod 1 in, typical").warnings)).toEqual(["caution"]);
    expect(codes(at("H02, property database").warnings)).toEqual(["caution", "assumed"]);
    expect(at("all tempers, lowest").kind).toBe("range");
    expect(issueOf(() => at("all tempers, highest"))?.message).toMatch(/no strength to design on/);
  });

  it("anti-seize: the 0.12 of a textbook lies below the range, so the preload may be higher", () => {
    const range = joint.nutFactorRange("stainless with anti-seize");
    expect(range.warnings[0]?.message).toMatch(/0\.12.*higher/);
    expect(joint.nutFactorRange("zinc-plated").warnings).toEqual([]);
  });

  it("every verdict names its source", () => {
    const { proofBasis, yieldingBasis } = joint.tightening({
      torque: newtonMeters(6.5),
      diameter: millimeters(6),
      stressArea: squareMillimeters(20.1),
      nutFactorLow: 0.18,
      nutFactorHigh: 0.27,
      strength: megapascals(580),
    });
    const halfWidth = millivolts(0.5);
    const trend = joint.dropTrend({ drop: millivolts(18.4), asLeftDrop: millivolts(3.9), halfWidth });
    expect([proofBasis.kind, yieldingBasis.kind, trend.basis.kind]).toEqual([
      "published",
      "common practice",
      "published",
    ]);
    expect(trend.basis.edition).toMatch(/second-hand/);
    expect(codes(trend.warnings)).toEqual(["approximate"]);
  });

  it("the practitioner's scale below 75 % load, and a doubtful emissivity", () => {
    const found = joint.scanSeverity({
      rise: kelvins(10),
      riseHalfWidth: kelvins(0),
      comparison: "similar",
      loadFraction: 0.6,
      load: "as measured",
      scale: "practitioner-limits",
      emissivity: 0.4,
    });
    expect(codes(found.warnings)).toEqual(["approximate", "outside-validity"]);
  });

  it("the two published scales disagree on the same joint, and both name themselves", () => {
    const at = (scale: joint.SeverityScale) =>
      joint.scanSeverity({
        rise: kelvins(18),
        riseHalfWidth: kelvins(0),
        comparison: "similar",
        loadFraction: 1,
        load: "as measured",
        scale,
        emissivity: 0.95,
      });
    const [neta, other] = [at("neta-100.18"), at("practitioner-limits")];
    expect([neta.level, other.level]).toEqual([4, 2]);
    expect(neta.basis.source).not.toBe(other.basis.source);
    for (const { deferral, basis } of [neta, other]) {
      expect(deferral).toMatch(/licensed electrician/);
      expect(basis.edition).not.toBe("");
    }
  });

  it("a joint without a steady state is told to leave service", () => {
    const found = joint.jointBalance({
      current: amperes(200),
      resistance: microohms(1000),
      coefficient: perKelvin(0.00393),
      thermalResistance: 15 as never,
    });
    expect(found.rise).toBe(null);
    expect(codes(found.warnings)).toEqual(["caution"]);
    expect(found.margin).toBeLessThan(0);
  });
});

describe("hardware", () => {
  const kinds = ["flat washer", "conical washer", "star washer", "serrated flange nut", "plain nut"] as const;
  it.each(kinds)("%s: every note says what it rests on", (kind) => {
    const notes = joint.hardwareNotes(kind);
    expect(notes.length).toBeGreaterThan(0);
    for (const note of notes) {
      expect(note.statement).toMatch(/\.$/);
      expect(note.source).not.toBe("");
    }
  });

  it("a conical washer is fitted with the concave side to the joint (common practice, no published source)", () => {
    const said = joint.hardwareNotes("conical washer").map(({ statement }) => statement);
    expect(said.join(" ")).toMatch(/concave side towards the joint/);
    for (const kind of kinds.filter((one) => one !== "conical washer"))
      expect(joint.hardwareNotes(kind)).not.toEqual(joint.hardwareNotes("conical washer"));
  });

  it("star washers and serrated flanges say that no number was found", () => {
    for (const kind of ["star washer", "serrated flange nut"] as const) {
      expect(joint.hardwareNotes(kind).some((note) => note.kind === "no published source")).toBe(true);
    }
  });

  it("rules on re-tightening disagree, so each is named and none is a default", () => {
    const rules = ["never-as-routine", "periodic-busway", "measure-and-remake"] as const;
    const notes = rules.map((rule) => joint.retighteningNote(rule));
    expect(new Set(notes.map(({ statement }) => statement)).size).toBe(3);
    expect(issueOf(() => joint.retighteningNote("yearly" as never))?.message).toMatch(/never-as-routine/);
    expect(issueOf(() => joint.retighteningNote(undefined as never))?.code).toBe("missing");
  });

  it("a wide flange lowers the pressure on the bar and not the force (geometry)", () => {
    const face = (outer: number) =>
      joint.bearingPressure({
        force: 5000 as never,
        outerDiameter: millimeters(outer),
        holeDiameter: millimeters(6.6),
        barThickness: millimeters(3),
      });
    const [nut, flange] = [face(10), face(14.2)];
    expect(flange.facePressure).toBeLessThan(0.5 * nut.facePressure);
    expect(flange.facePressure * flange.faceArea).toBeCloseTo(nut.facePressure * nut.faceArea, 6);
  });
});

describe("plain data", () => {
  it("results survive JSON, hold no −0 and no infinity", () => {
    const end = { conductance: wattsPerKelvin(0), temperature: celsius(300) };
    const results = [
      joint.measuredJoint({ ...sharp, drop: volts(0), current: amperes(1) }),
      joint.riseAtFullLoad({ rise: kelvins(0), loadFraction: 0.1 }),
      joint.judgeJoint({
        ...alike,
        resistance: ohms(0),
        similar: [microohms(5)],
        rule: "50-percent-above-lowest",
      }),
      joint.judgeJoint({
        resistance: microohms(5),
        halfWidth: ohms(0),
        similar: [microohms(5)],
        similarHalfWidth: microohms(9),
        rule: "50-percent-above-lowest",
      }),
      joint.contactVoltageScreen({ voltage: volts(0.5), reading: "rms", bulk: celsius(20), metal: "tin" }),
      joint.jumperProfile({
        bar: {
          section: squareMillimeters(60),
          perimeter: millimeters(46),
          conductivity: wattsPerMeterKelvin(390),
          filmCoefficient: wattsPerSquareMeterKelvin(10),
        },
        air: celsius(25),
        leftArm: millimeters(5000),
        rightArm: millimeters(50),
        jointPower: watts(0),
        left: end,
        right: end,
      }),
      joint.tighteningTorque({ table: "bus-bolts", size: "1/4", column: "bronzeStainlessGalvanized" }),
      joint.barTemperature({ bar, current: amperes(1e-6) }),
    ];
    for (const [i, result] of results.entries()) expectFinite(result, String(i));
  });
});

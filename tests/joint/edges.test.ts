/** Every breakpoint belongs to one branch: at it, just below and just above. */
import * as joint from "electroheat/joint";
import {
  amperes,
  celsius,
  inches,
  isElectroheatError,
  kelvins,
  meters,
  millimeters,
  newtons,
  ohmMeters,
  ohms,
  perKelvin,
  volts,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const outcome = (call: () => unknown): string => {
  try {
    call();
    return "given";
  } catch (error) {
    if (isElectroheatError(error)) return error.code;
    throw error;
  }
};
const copper = { resistivity20: ohmMeters(1.7241e-8), coefficient20: perKelvin(0.00393) };

describe("emissivity", () => {
  const scan = (emissivity: number) =>
    joint.scanSeverity({
      rise: kelvins(8),
      riseHalfWidth: kelvins(0),
      comparison: "similar",
      loadFraction: 1,
      load: "as measured",
      scale: "neta-100.18",
      emissivity,
    });
  it("0.1 is read, less is refused; from 0.6 on without a warning", () => {
    expect(outcome(() => scan(0.1))).toBe("given");
    expect(outcome(() => scan(0.0999999))).toBe("not-identifiable");
    expect(outcome(() => scan(1))).toBe("given");
    expect(outcome(() => scan(1.0000001))).toBe("out-of-range");
    expect([0.5999999, 0.6, 0.6000001].map((e) => scan(e).warnings.length)).toEqual([1, 0, 0]);
  });
});

describe("load", () => {
  it("the practitioner's scale warns below 75 %, not at it", () => {
    const at = (loadFraction: number) =>
      joint.scanSeverity({
        rise: kelvins(8),
        riseHalfWidth: kelvins(0),
        comparison: "similar",
        loadFraction,
        load: "as measured",
        scale: "practitioner-limits",
        emissivity: 0.95,
      }).warnings.length;
    expect([0.7499999, 0.75, 0.7500001].map(at)).toEqual([1, 0, 0]);
  });

  it("the acceptance scale, graded as measured, warns below full load, not at it", () => {
    const at = (loadFraction: number) =>
      joint
        .scanSeverity({
          rise: kelvins(8),
          riseHalfWidth: kelvins(0),
          comparison: "similar",
          loadFraction,
          load: "as measured",
          scale: "neta-100.18",
          emissivity: 0.95,
        })
        .warnings.map(({ code }) => code);
    expect([0.9999999, 1, 1.0000001].map(at)).toEqual([["caution"], [], []]);
  });

  it("below 40 % load a hot joint has its level at the least", () => {
    const at = (loadFraction: number) =>
      joint.scanSeverity({
        rise: kelvins(60),
        riseHalfWidth: kelvins(2),
        comparison: "ambient",
        loadFraction,
        load: "full load",
        scale: "neta-100.18",
        emissivity: 0.95,
      });
    expect([at(0.3999999).level, at(0.4).level]).toEqual(["undecided", 4]);
    expect([at(0.3999999).atLeast, at(0.4).atLeast]).toEqual([4, 4]);
    expect(at(0.3).action).toMatch(/at least level 4/);
  });

  it("two joints are compared from 40 % of the module's full-load current on", () => {
    const at = (amps: number) =>
      joint.compareRises({
        first: { rise: kelvins(10), current: amperes(amps) },
        second: { rise: kelvins(40), current: amperes(amps) },
        referenceCurrent: amperes(amps),
        fullLoadCurrent: amperes(100),
      }).worse;
    expect([39.9999, 40, 40.0001].map(at)).toEqual(["undecided", "second", "second"]);
  });

  it("2 is the largest load fraction, 1 and 2 the exponents", () => {
    const load = (loadFraction: number) =>
      outcome(() => joint.riseAtFullLoad({ rise: kelvins(8), loadFraction }));
    expect([2, 2.0000001, 0].map(load)).toEqual(["given", "out-of-range", "out-of-range"]);
    const low = (exponentLow: number) =>
      outcome(() => joint.riseAtFullLoad({ rise: kelvins(8), loadFraction: 0.6, exponentLow }));
    expect([2, 2.1].map(low)).toEqual(["given", "out-of-range"]);
    const power = (exponent: number) =>
      outcome(() =>
        joint.riseAtCurrent({ rise: kelvins(8), current: amperes(5), otherCurrent: amperes(9), exponent }),
      );
    expect([1, 2, 0.9999999, 2.0000001].map(power)).toEqual([
      "given",
      "given",
      "out-of-range",
      "out-of-range",
    ]);
  });
});

describe("bars", () => {
  it("holes: 0.1 and 0.6 of the width, continuous across every row", () => {
    const at = (share: number) => joint.holeExcessSquares({ holeDiameter: meters(share), width: meters(1) });
    expect(at(0)).toBe(0);
    for (const share of [0.1, 0.2, 0.3, 0.4, 0.5]) {
      expect(at(share * 1.0000001) / at(share)).toBeCloseTo(1, 5);
      expect(at(share * 0.9999999) / at(share)).toBeCloseTo(1, 5);
    }
    expect(at(0.001) / 0.000001).toBeCloseTo(Math.PI / 2, 3);
    expect(outcome(() => at(0.6))).toBe("given");
    expect(outcome(() => at(0.6001))).toBe("outside-table");
  });

  it("overlap: from 1 thickness, continuous across every row and across 5, where the closed form takes over", () => {
    const at = (x: number) => joint.streamlineFactor({ overlap: meters(x), thickness: meters(1) });
    expect(outcome(() => at(1))).toBe("given");
    expect(outcome(() => at(0.9999))).toBe("outside-table");
    for (const x of [2, 3, 4, 5])
      expect(Math.abs(at(x * 0.999999) / at(x * 1.000001) - 1)).toBeLessThan(2e-4);
    for (let x = 1; x < 12; x += 0.1) expect(at(x + 0.1)).toBeLessThan(at(x));
  });

  it("nothing left of a section is inconsistent", () => {
    const bar = { width: millimeters(20), thickness: millimeters(3) };
    expect(outcome(() => joint.netSection({ ...bar, holeDiameter: millimeters(20) }))).toBe("inconsistent");
    expect(outcome(() => joint.netSection({ ...bar, holeDiameter: millimeters(19.99) }))).toBe("given");
    expect(outcome(() => joint.netSection({ ...bar, pitDepth: millimeters(3) }))).toBe("inconsistent");
  });

  it("a resistivity below zero is refused", () => {
    const at = (t: number) =>
      outcome(() =>
        joint.barResistance({
          ...copper,
          temperature: celsius(t),
          length: meters(1),
          width: meters(0.02),
          thickness: meters(0.003),
        }),
      );
    expect([at(-234), at(-235)]).toEqual(["given", "out-of-range"]);
  });

  it("air a hair below the limit gives a small current, air at it none", () => {
    const at = (air: number) =>
      joint.barAmpacity({
        bar: {
          ...copper,
          width: millimeters(30),
          thickness: millimeters(3),
          emissivity: 0.4,
          air: celsius(air),
        },
        temperature: celsius(90),
      }).current;
    expect(at(89.9999)).toBeLessThan(2);
    expect(outcome(() => at(90))).toBe("inconsistent");
  });

  it("published sizes are found through either unit", () => {
    const at = (width: number) =>
      joint.publishedBarAmpacity({
        table: "c11000-40C",
        width: meters(width),
        thickness: inches(0.125),
        column: "rise50",
      }).current;
    expect(at(0.0381)).toBe(510);
    expect(outcome(() => at(0.03811))).toBe("outside-table");
  });
});

describe("bolts", () => {
  it("a brass minimum holds up to the size it is printed for", () => {
    const at = (d: number) =>
      outcome(() =>
        joint.fastenerStrength({ standard: "brass C36000", grade: "H04 rod 1/4 in", diameter: inches(d) }),
      );
    expect([0.2499, 0.25, 0.2501].map(at)).toEqual(["given", "given", "outside-table"]);
  });

  it("8.8 changes at M16, grade 5 at 1 in, both sizes on one side", () => {
    const proof = (standard: joint.StrengthStandard, grade: string, diameter: ReturnType<typeof meters>) =>
      joint.fastenerStrength({ standard, grade, diameter }).proof;
    expect(proof("ISO 898-1", "8.8", millimeters(16))).toBe(580e6);
    expect(proof("ISO 898-1", "8.8", millimeters(16.001))).toBe(600e6);
    const ksi = (d: number) => Math.round((proof("SAE J429", "5", inches(d)) as number) / 6894757.293168);
    expect([ksi(0.25), ksi(1), ksi(1.125), ksi(1.5)]).toEqual([85, 85, 74, 74]);
    expect(outcome(() => ksi(1.05))).toBe("outside-table");
    expect(outcome(() => ksi(0.249))).toBe("outside-table");
  });

  it("nut factors from 0.03 to 1", () => {
    const at = (nutFactor: number) =>
      outcome(() => joint.preloadFromTorque({ torque: 5 as never, diameter: millimeters(6), nutFactor }));
    expect([0.0299, 0.03, 1, 1.001].map(at)).toEqual(["out-of-range", "given", "given", "out-of-range"]);
  });

  it("an overload begins above the ceiling; a joint is slack at no force", () => {
    const at = (change: number) =>
      joint.preloadAfterOverload({
        preload: newtons(5000),
        change: newtons(change),
        ceiling: newtons(6000),
      });
    expect([at(999).state, at(1000).state, at(1001).state]).toEqual(["elastic", "elastic", "yielded"]);
    expect([at(-4999).state, at(-5000).state]).toEqual(["elastic", "slack when hot"]);
    expect([at(5999).state, at(6000).state]).toEqual(["yielded", "slack when cold"]);
    expect(at(6000).coldAfter).toBe(0);
  });

  it("a disc spring warns beyond three quarters of flat, ends at flat", () => {
    const spring = {
      outerDiameter: millimeters(20),
      innerDiameter: millimeters(10.2),
      thickness: millimeters(1.1),
      coneHeight: millimeters(0.4),
    };
    const at = (mm: number) => joint.discSpringState({ spring, deflection: millimeters(mm) });
    expect([0.2999, 0.3, 0.3001, 0.4].map((mm) => at(mm).warnings.length)).toEqual([0, 0, 1, 1]);
    expect(outcome(() => at(0.4001))).toBe("out-of-range");
    expect(at(0).force).toBe(0);
  });
});

describe("limits of what is taken", () => {
  it("a disc spring is a ring, at most 20 side by side and 20 in a row", () => {
    const at = (inner: number, inParallel = 1, inSeries = 1) =>
      outcome(() =>
        joint.discSpringState({
          spring: {
            outerDiameter: millimeters(20),
            innerDiameter: millimeters(inner),
            thickness: millimeters(1.1),
            coneHeight: millimeters(0.4),
          },
          deflection: millimeters(0.1),
          inParallel,
          inSeries,
        }),
      );
    expect([at(19.7), at(19.9), at(21)]).toEqual(["given", "inconsistent", "inconsistent"]);
    expect([at(10, 20, 20), at(10, 21), at(10, 1, 21)]).toEqual(["given", "out-of-range", "out-of-range"]);
  });

  it("one exponent for both ends is a band without width", () => {
    const { low, high } = joint.riseAtFullLoad({
      rise: kelvins(10),
      loadFraction: 0.5,
      exponentLow: 1.8,
      exponentHigh: 1.8,
    });
    expect(low).toBe(high);
  });

  it("a joint without preload cannot lose any", () => {
    const { state, lost } = joint.preloadAfterOverload({
      preload: newtons(0),
      change: newtons(7000),
      ceiling: newtons(6000),
    });
    expect([state, lost]).toEqual(["yielded", 0]);
  });

  it("a blank source is missing, a number for one is the wrong type", () => {
    const at = (source: unknown) =>
      outcome(() => joint.tighteningTorque({ maker: { torque: 5 as never, source: source as never } }));
    expect(["plate", " ", undefined, 7].map(at)).toEqual(["given", "missing", "missing", "wrong-type"]);
  });
});

describe("contacts", () => {
  // 190 °C of softening copper beside a bar at 20 °C: √(4·2.44e-8·(463.15² − 293.15²)) = 0.112018 V.
  it.each([
    ["dc", 1],
    ["rms", Math.SQRT2],
  ] as const)(
    "the screen has three outcomes, 0.03 V either side of the voltage of the law (%s)",
    (reading, peak) => {
      const at = (voltage: number) =>
        joint.contactVoltageScreen({
          voltage: volts(voltage / peak),
          reading,
          bulk: celsius(20),
          metal: "copper",
        }).softening.verdict;
      expect([0.08201, 0.08203, 0.14201, 0.14203].map(at)).toEqual([
        "within",
        "undecided",
        "undecided",
        "outside",
      ]);
    },
  );

  it("a bar above a limit is outside at any voltage, a hair below it undecided", () => {
    const at = (bulk: number) =>
      joint.contactVoltageScreen({ voltage: volts(0), reading: "rms", bulk: celsius(bulk), metal: "tin" });
    expect([at(231.9), at(232), at(232.1)].map(({ melting }) => melting.verdict)).toEqual([
      "undecided",
      "undecided",
      "outside",
    ]);
    expect(at(232.1).warnings.at(-1)?.message).toMatch(/above its melting temperature already/);
  });

  it("the steady state is not certain once 1.3 times the gain reaches 1", () => {
    const at = (current: number) =>
      joint.jointBalance({
        current: amperes(current),
        resistance: ohms(0.0001),
        coefficient: perKelvin(0.01),
        thermalResistance: 100 as never,
      });
    // 1/√1.3 of 100 A.
    const found = [87.7, 87.71, 99.99, 100].map(at);
    expect(found.map(({ rise, riseHigh }) => [rise === null, riseHigh === null])).toEqual([
      [false, false],
      [false, true],
      [false, true],
      [true, true],
    ]);
    const steady = found.map(({ warnings }) => warnings.find(({ path }) => path === "loopGain"));
    expect(steady.map((one) => one?.message.slice(0, 20))).toEqual([
      undefined,
      "The steady state is ",
      "The steady state is ",
      "No steady state: the",
    ]);
  });

  it("air and ends of a jumper: −50 and 500, −50 and 1500 °C; hot bars are said from 105 and 150 °C on", () => {
    const at = (air: number, end: number) =>
      joint.jumperProfile({
        bar: {
          section: 60e-6 as never,
          perimeter: meters(0.046),
          conductivity: 390 as never,
          filmCoefficient: 10 as never,
        },
        air: celsius(air),
        leftArm: meters(0.05),
        rightArm: meters(0.05),
        jointPower: 0 as never,
        left: { conductance: 0 as never, temperature: celsius(end) },
        right: { conductance: 0 as never, temperature: celsius(end) },
      });
    expect([-50.1, -50, 500, 500.1].map((air) => outcome(() => at(air, 20)))).toEqual([
      "out-of-range",
      "given",
      "given",
      "out-of-range",
    ]);
    expect([-50.1, -50, 1500, 1500.1].map((end) => outcome(() => at(20, end)))).toEqual([
      "out-of-range",
      "given",
      "given",
      "out-of-range",
    ]);
    // Nothing heats it: the bar is as warm as its air.
    const limits = (air: number) => at(air, 20).warnings.map(({ limit }) => limit);
    expect([104.9, 105.1, 149.9, 150.1].map(limits)).toEqual([[], [105], [105], [150]]);
    expect(at(20, 20).deferral).toMatch(/licensed electrician/);
  });

  it("a profile goes down to absolute zero and not below", () => {
    const at = (temperature: number) =>
      joint.profileAsSeen({
        profile: [-0.1, 0, 0.1].map((x) => ({ position: meters(x), temperature: celsius(temperature) })),
        spot: meters(0.01),
      });
    expect([-273.16, -273.15].map((one) => outcome(() => at(one)))).toEqual(["out-of-range", "given"]);
  });

  it("growth of a drop: 10 and 30 mV belong to the quiet side", () => {
    const at = (mv: number) => {
      const { start, end } = joint.dropTrend({
        drop: volts(mv / 1000),
        asLeftDrop: volts(0),
        halfWidth: volts(0),
      });
      return `${start.verdict} ${end.verdict}`;
    };
    expect([10, 10.01, 30, 30.01].map(at)).toEqual([
      "within within",
      "outside within",
      "outside within",
      "outside outside",
    ]);
  });

  it("loop gain 1 has no steady state", () => {
    const at = (current: number) =>
      joint.jointBalance({
        current: amperes(current),
        resistance: ohms(0.001),
        coefficient: perKelvin(0.01),
        thermalResistance: 10 as never,
      });
    expect([at(99.999).rise === null, at(100).rise === null]).toEqual([false, true]);
    const flat = joint.jointBalance({
      current: amperes(100),
      resistance: ohms(0.001),
      coefficient: perKelvin(0),
      thermalResistance: 10 as never,
    });
    expect([flat.runawayCurrent, flat.margin, flat.rise]).toEqual([null, null, 100]);
  });
});

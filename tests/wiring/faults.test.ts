/**
 * Short circuits and earth faults against routes that know nothing of the functions: the per-unit method with the complex numbers of a
 * general-purpose library (mathjs), the three mesh equations of two lines bolted together solved by its matrices, and limits. Worked cases
 * with their hand computations are vectors (shared/vectors/wiring/faults.json).
 */
import { type Amperes, amperes, type Ohms, ohms, type Volts, volts } from "electroheat/quantity";
import {
  disconnectionTime,
  earthFaultLoop,
  earthFaultVerdict,
  faultCurrent,
  interruptingVerdict,
} from "electroheat/wiring";
import fc from "fast-check";
import { abs, add, type Complex, complex, divide, lusolve, type MathNumericType, multiply } from "mathjs";
import { describe, expect, it } from "vitest";
import { expectRefusal } from "../support/spoil.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Nothing at all, or what can be measured. */
const orNone = (max: number) => fc.oneof(fc.constant(0), real(1e-9, max));
const source = fc.record({
  lineVoltage: real(200, 700),
  transformerRating: real(15e3, 3e6),
  transformerImpedance: real(0.02, 0.08),
  transformerResistance: orNone(0.018),
  networkFaultPower: real(2e7, 1e9),
  voltageFactor: real(0.9, 1.1),
});
const feeder = fc.record({
  length: orNone(300),
  resistancePerLength: real(5e-5, 2e-3),
  reactancePerLength: orNone(2e-4),
  conductorsPerLine: fc.integer({ min: 1, max: 4 }),
});
type Asked = Parameters<typeof faultCurrent>[0];
const ask = (input: object) => faultCurrent(input as Asked);
const times = (one: Complex | number, by: number) => multiply(one, by) as Complex;

describe("the fault current", () => {
  it("is that of the per-unit method (property)", () => {
    fc.assert(
      fc.property(source, feeder, (of, along) => {
        const base = of.transformerRating;
        const baseImpedance = of.lineVoltage ** 2 / base;
        const reactance = Math.sqrt(of.transformerImpedance ** 2 - of.transformerResistance ** 2);
        const network = times(complex(0.0995, 0.995), base / of.networkFaultPower);
        const line = times(
          complex(along.resistancePerLength, along.reactancePerLength),
          along.length / along.conductorsPerLine / baseImpedance,
        );
        const perUnit = add(network, complex(of.transformerResistance, reactance), line) as Complex;
        const rated = base / (Math.sqrt(3) * of.lineVoltage);
        const expected = Number(abs(divide(of.voltageFactor, perUnit) as Complex)) * rated;
        expect(ask({ ...of, ...along }).threePhase / expected).toBeCloseTo(1, 10);
      }),
      { numRuns: 500 },
    );
  });

  it("of two lines bolted together is that of the mesh they close (property)", () => {
    fc.assert(
      fc.property(source, feeder, (of, along) => {
        const found = ask({ ...of, ...along });
        const z = complex(found.resistance, found.reactance);
        const e = (of.voltageFactor * of.lineVoltage) / Math.sqrt(3);
        const at = (degrees: number) => complex({ r: e, phi: (degrees * Math.PI) / 180 });
        // E1 − z·I1 = V, E2 − z·I2 = V, I1 + I2 = 0; the third line carries nothing.
        const solved = lusolve(
          [
            [z, 0, 1],
            [0, z, 1],
            [1, 1, 0],
          ] as MathNumericType[][],
          [at(0), at(-120), 0] as MathNumericType[],
        ) as unknown as Complex[][];
        expect(found.lineToLine / Number(abs(solved[0]?.[0] as Complex))).toBeCloseTo(1, 9);
      }),
      { numRuns: 300 },
    );
  });

  it("falls with length, network and resistance, and two conductors are half the length (property)", () => {
    fc.assert(
      fc.property(source, feeder, (of, along) => {
        const { threePhase, atTransformer } = ask({ ...of, ...along });
        expect(threePhase).toBeLessThanOrEqual(atTransformer);
        expect(ask({ ...of, ...along, length: along.length + 10 }).threePhase).toBeLessThan(threePhase);
        const { networkFaultPower: _, ...stiff } = of;
        expect(ask({ ...stiff, ...along }).threePhase).toBeGreaterThan(threePhase);
        const two = { ...along, conductorsPerLine: 2 };
        const half = { ...along, conductorsPerLine: 1, length: along.length / 2 };
        expect(ask({ ...of, ...two }).threePhase).toBeCloseTo(ask({ ...of, ...half }).threePhase, 6);
        expect(ask({ ...of, ...along, length: 0 }).threePhase).toBe(atTransformer);
        expect(ask(of)).toEqual(ask({ ...of, length: 0, resistancePerLength: 0 }));
      }),
      { numRuns: 300 },
    );
  });

  it("is highest where the transformer's resistance is left out, at the end of a cable more resistive than it (property)", () => {
    fc.assert(
      fc.property(source, feeder, ({ networkFaultPower: _, ...of }, along) => {
        const share = Math.sqrt(of.transformerImpedance ** 2 - of.transformerResistance ** 2);
        fc.pre(along.resistancePerLength * share > along.reactancePerLength * of.transformerResistance);
        const { transformerResistance: __, ...unknown } = of;
        expect(ask({ ...unknown, ...along }).threePhase).toBeGreaterThanOrEqual(
          ask({ ...of, ...along }).threePhase * (1 - 1e-12),
        );
      }),
      { numRuns: 300 },
    );
  });

  const plate = { lineVoltage: 480, transformerRating: 5e5, transformerImpedance: 0.05 };

  it("asks for the conductor with its length, and doubts VA that look like kVA", () => {
    expectRefusal(() => ask({ ...plate, length: 10 }), "missing", "resistancePerLength", "no resistance");
    expect(ask({ ...plate, length: 0 }).warnings).toEqual([]);
    expect(ask({ ...plate, transformerRating: 500 }).warnings).toMatchObject([
      { code: "suspicious", path: "transformerRating" },
    ]);
    expect(ask({ ...plate, transformerRating: 1000 }).warnings).toEqual([]);
    expect(ask({ ...plate, transformerRating: 999 }).warnings).toHaveLength(1);
    // All of the impedance may be resistive, none may be more.
    const all = ask({ ...plate, transformerResistance: 0.05 });
    expect([all.reactance, all.threePhase]).toEqual([0, ask(plate).threePhase]);
    expect(ask({ ...plate, impedanceFactor: 0.9 }).threePhase).toBeCloseTo(ask(plate).threePhase / 0.9, 6);
    const { cautions, deferral } = ask(plate);
    expect(cautions.join(" ")).toMatch(/first peak is higher.*Motors.*arc.*network operator/);
    expect(deferral).toMatch(/licensed electrician/);
  });
});

describe("an interrupting rating", () => {
  const held = (availableCurrent: number, interruptingRating: number, more: object = {}) =>
    interruptingVerdict({
      edition: "NEC 2023",
      availableCurrent: amperes(availableCurrent),
      interruptingRating: amperes(interruptingRating),
      markedVoltage: volts(480),
      circuitVoltage: volts(480),
      ...more,
    });

  it("is decided in decimal, equal is enough, and the uncertainty counts", () => {
    // 0.1 + 0.2 of floats: 9.9 kA + 0.1 kA through kiloamperes is 10 kA.
    expect(held((9.9 + 0.1 * 1.0000000000000002) * 1000, 10_000).value).toBe("within");
    expect(held(10_000.0001, 10_000).value).toBe("outside");
    expect(held(9900, 10_000, { halfWidth: 100 }).value).toBe("within");
    expect(held(9900, 10_000, { halfWidth: 101 }).value).toBe("undecided");
    expect(held(10_200, 10_000, { halfWidth: 100 }).value).toBe("outside");
    expect(held(10_100, 10_000, { halfWidth: 100 }).value).toBe("undecided");
    expect(held(9000, 10_000).margin).toBe(1000);
    expect(held(11_000, 10_000).margin).toBe(-1000);
  });

  it("marked for less than the circuit's voltage is no rating there", () => {
    const at = (markedVoltage: number) => held(9000, 10_000, { markedVoltage });
    expect([at(479).value, at(479).governing]).toEqual(["outside", "marked voltage"]);
    expect([at(480).value, at(480).governing]).toEqual(["within", "available current"]);
    expect(at(600).value).toBe("within");
  });

  it("names its rule by edition, and defers", () => {
    const told = (edition: string) => {
      const { table, system, provenance, deferral } = held(9000, 10_000, { edition });
      expect(deferral).toMatch(/licensed electrician/);
      return [table, system, provenance];
    };
    for (const edition of ["NEC 2008", "NEC 2017", "NEC 2023"])
      expect(told(edition)).toEqual(["110.9", "North America", "seen"]);
    expect(told("IEC 60364-5-52:2009")).toEqual(["IEC 60364-4-43, 434.5.1", "IEC", "memory"]);
  });

  it("any current and rating: within exactly where the one is at most the other (property)", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200_000 }),
        fc.integer({ min: 1, max: 200_000 }),
        (one, other) => {
          expect(held(one, other).value).toBe(one <= other ? "within" : "outside");
        },
      ),
    );
  });
});

describe("an earth-fault loop", () => {
  const circuit = fc.record({
    voltageToEarth: real(100, 400),
    sourceResistance: real(0.001, 1),
    sourceReactance: orNone(0.5),
    length: orNone(200),
    lineResistancePerLength: real(5e-5, 0.02),
    protectiveResistancePerLength: real(5e-5, 0.02),
    lineReactancePerLength: orNone(2e-4),
    protectiveReactancePerLength: orNone(2e-4),
    conductorsPerLine: fc.integer({ min: 1, max: 3 }),
    protectiveConductors: fc.integer({ min: 1, max: 3 }),
    voltageFactor: real(0.9, 1),
  });
  const loop = (input: object) => earthFaultLoop(input as Parameters<typeof earthFaultLoop>[0]);

  it("is the sum of its complex parts, and its verdict turns at its own current (property)", () => {
    fc.assert(
      fc.property(circuit, (input) => {
        const found = loop(input);
        const part = (r: number, x: number, by: number) => times(complex(r, x), by);
        const whole = add(
          complex(input.sourceResistance, input.sourceReactance),
          part(
            input.lineResistancePerLength,
            input.lineReactancePerLength,
            input.length / input.conductorsPerLine,
          ),
          part(
            input.protectiveResistancePerLength,
            input.protectiveReactancePerLength,
            input.length / input.protectiveConductors,
          ),
        ) as Complex;
        expect(found.impedance / Number(abs(whole))).toBeCloseTo(1, 10);
        expect((found.current * found.impedance) / (input.voltageFactor * input.voltageToEarth)).toBeCloseTo(
          1,
          10,
        );
        const at = (trippingCurrent: number) =>
          earthFaultVerdict({
            impedance: found.impedance,
            trippingCurrent: trippingCurrent as Amperes,
            voltageToEarth: input.voltageToEarth as Volts,
            voltageFactor: input.voltageFactor,
          });
        expect(at(found.current * (1 - 1e-9)).value).toBe("within");
        expect(at(found.current * (1 + 1e-9)).value).toBe("outside");
        expect(at(found.current).largestImpedance).toBeCloseTo(found.impedance, 9);
      }),
      { numRuns: 300 },
    );
  });

  it("is refused where nothing in it has an impedance", () => {
    const nothing = {
      voltageToEarth: 230,
      sourceResistance: 0,
      length: 0,
      lineResistancePerLength: 0.001,
      protectiveResistancePerLength: 0.001,
    };
    expectRefusal(() => loop(nothing), "inconsistent", "sourceResistance", "no impedance");
    expect(loop({ ...nothing, sourceReactance: 0.1 }).current).toBeCloseTo(2300, 9);
    expect(loop({ ...nothing, length: 1 }).impedance).toBeCloseTo(0.002, 12);
    expect(loop({ ...nothing, length: 1 }).cautions.join(" ")).toMatch(/loop is measured.*coil, draws less/);
  });

  it("equal is enough, and the uncertainty of the loop counts", () => {
    // 230 V over 320 A is 0.71875 Ω.
    const held = (impedance: number, halfWidth = 0) =>
      earthFaultVerdict({
        impedance: impedance as Ohms,
        halfWidth: halfWidth as Ohms,
        trippingCurrent: amperes(320),
        voltageToEarth: volts(230),
      });
    expect([held(0.71875).value, held(0.71876).value]).toEqual(["within", "outside"]);
    expect([held(0.7, 0.018).value, held(0.7, 0.02).value, held(0.75, 0.02).value]).toEqual([
      "within",
      "undecided",
      "outside",
    ]);
    expect(held(0.7).margin).toBeCloseTo(0.01875, 12);
    expect(held(ohms(0.7)).provenance).toBe("memory");
  });
});

describe("times of disconnection, Table 41.1", () => {
  // Second copy of the columns, alternating current, up to and including the voltage at the head.
  const printed = {
    TN: [
      [120, 0.8],
      [230, 0.4],
      [400, 0.2],
      [1000, 0.1],
    ],
    TT: [
      [120, 0.3],
      [230, 0.2],
      [400, 0.07],
      [1000, 0.04],
    ],
  } as const;
  const at = (system: "TN" | "TT", voltage: number, circuit: "final to 32 A" | "other" = "final to 32 A") =>
    disconnectionTime({ system, voltageToEarth: volts(voltage), circuit });

  it.each(["TN", "TT"] as const)("%s: at, just below and just above each voltage", (system) => {
    const column = printed[system];
    column.forEach(([to, time], i) => {
      expect(at(system, to).value).toBe(time);
      expect(at(system, to - 1e-6).value).toBe(time);
      const next = column[i + 1];
      if (next !== undefined) expect(at(system, to + 1e-6).value).toBe(next[1]);
    });
    expect(at(system, 50.000001).value).toBe(column[0][1]);
    expect(at(system, 230).row).toBe("above 120 to 230 V");
    expect(at(system, 690).row).toBe("above 400 V");
    expect([at(system, 230).provenance, at(system, 230).table]).toEqual(["seen", "Table 41.1"]);
  });

  it("other circuits have 5 s in a TN system and 1 s in a TT system, whatever the voltage", () => {
    for (const voltage of [120, 230, 277, 400]) {
      expect([at("TN", voltage, "other").value, at("TT", voltage, "other").value]).toEqual([5, 1]);
    }
    expect(at("TN", 277, "other")).toMatchObject({ table: "411.3.2.3, 411.3.2.4", provenance: "memory" });
    expect(at("TT", 277).cautions.join()).toMatch(/residual-current device/);
  });
});

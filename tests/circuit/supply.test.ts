/** Supplies and unbalance. Sources beside each law; the phasor geometry is worked here with a complex library (mathjs). */
import {
  balancedSupply,
  branchCurrent,
  branchResistance,
  branchVoltage,
  healthyLineToLineResistance,
  lineCurrent,
  negativeSequenceRatio,
  powerAtVoltage,
  type Supply,
  supplyFromLineVoltages,
  supplyFromNeutralVoltages,
  symmetricalComponents,
  threePhasePower,
  unbalance,
  unbalanceByDefinition,
  withoutLines,
} from "electroheat/circuit";
import { amperes, volts, watts } from "electroheat/quantity";
import fc from "fast-check";
import { complex, divide, matrix, multiply, add as plus, sqrt } from "mathjs";
import { describe, expect, it } from "vitest";
import { apart, size } from "../support/close.ts";

const RUNS = { numRuns: 1000 };
const between = (supply: Supply, a: number, b: number): number => {
  const [x, y] = [supply.lines[a]!.voltage, supply.lines[b]!.voltage];
  return Math.hypot(x.re - y.re, x.im - y.im);
};
const anyVolts = fc.double({ min: 1, max: 2000, noNaN: true });
/** Three sides that close a triangle, from thin to balanced. */
const anyTriangle = fc
  .tuple(anyVolts, anyVolts, fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }))
  .map(([a, b, part]) => [a, b, Math.abs(a - b) + part * (a + b - Math.abs(a - b))] as const);
const phasorOf = (magnitude: number, degrees: number) => ({
  re: magnitude * Math.cos((degrees * Math.PI) / 180),
  im: magnitude * Math.sin((degrees * Math.PI) / 180),
});
const anyPhasor = fc
  .tuple(fc.double({ min: 0, max: 1000, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
  .map(([magnitude, degrees]) => phasorOf(magnitude, degrees));

describe("supplyFromLineVoltages", () => {
  it("gives back the three readings, L1 at 0° and no zero sequence", () => {
    fc.assert(
      fc.property(anyTriangle, fc.constantFrom("L1-L2-L3", "L1-L3-L2"), ([a, b, c], rotation) => {
        const supply = supplyFromLineVoltages({ v12: volts(a), v23: volts(b), v31: volts(c), rotation });
        const top = Math.max(a, b, c);
        [
          [0, 1, a],
          [1, 2, b],
          [2, 0, c],
        ].forEach(([i, j, reading]) => {
          // A thin triangle turns a rounding of its height into sqrt(1e-16) of its sides.
          expect(Math.abs(between(supply, i!, j!) - reading!)).toBeLessThan(1e-9 * top);
        });
        const [l1, l2, l3] = supply.lines.map(({ voltage }) => voltage);
        expect(Math.hypot(l1!.re + l2!.re + l3!.re, l1!.im + l2!.im + l3!.im)).toBeLessThan(1e-12 * top);
        expect(l1!.im).toBe(0);
        expect(l1!.re).toBeGreaterThan(0);
        // L2 lags in the normal order: (V1 × V2) < 0.
        const turn = l1!.re * l2!.im;
        if (Math.abs(turn) > 1e-6 * top * top) expect(turn < 0).toBe(rotation === "L1-L2-L3");
      }),
      RUNS,
    );
  });

  it("is the balanced supply for three equal readings", () => {
    const [a, b] = [
      supplyFromLineVoltages({ v12: volts(480), v23: volts(480), v31: volts(480) }),
      balancedSupply({ lineVoltage: volts(480) }),
    ];
    a.lines.forEach(({ voltage }, i) => {
      expect(apart(voltage, b.lines[i]!.voltage, 480)).toBeLessThan(1e-15);
    });
  });

  it("stands a collapsed triangle (a lost line) and refuses one that does not close, just beyond", () => {
    const input = (v12: number) => ({ v12: volts(v12), v23: volts(240), v31: volts(240) });
    expect(between(supplyFromLineVoltages(input(480)), 0, 1)).toBeCloseTo(480, 9);
    expect(between(supplyFromLineVoltages(input(479.9999999999)), 0, 1)).toBeCloseTo(480, 5);
    expect(() => supplyFromLineVoltages(input(480.0000000001))).toThrow(/close a triangle/);
  });
});

describe("supplyFromNeutralVoltages and balancedSupply", () => {
  it("put the magnitudes at the angles", () => {
    fc.assert(
      fc.property(
        fc.tuple(anyVolts, anyVolts, anyVolts),
        fc.array(fc.integer({ min: -720, max: 720 }), { minLength: 3, maxLength: 3 }),
        (magnitudes, degrees) => {
          const voltages = magnitudes.map(volts) as [never, never, never];
          const supply = supplyFromNeutralVoltages({
            voltages,
            degrees: degrees as [number, number, number],
          });
          magnitudes.forEach((magnitude, i) => {
            expect(apart(supply.lines[i]!.voltage, phasorOf(magnitude, degrees[i]!), magnitude)).toBeLessThan(
              1e-13,
            );
          });
          expect(supply.lines[3]).toEqual({ node: "N", voltage: { re: 0, im: 0 } });
        },
      ),
      RUNS,
    );
  });

  it("turn the other way on request", () => {
    const turned = balancedSupply({ lineVoltage: volts(400), rotation: "L1-L3-L2" });
    expect(turned.lines[1]!.voltage.im).toBeGreaterThan(0);
    expect(turned.lines[2]!.voltage.im).toBeLessThan(0);
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      expect(between(turned, a, b)).toBeCloseTo(400, 11);
    }
  });

  it("lose lines once, whatever is named twice", () => {
    const supply = balancedSupply({ lineVoltage: volts(400) });
    const once = withoutLines({ supply, lines: ["L1", "L1"] });
    expect(withoutLines({ supply: once, lines: ["L2", "L1"] }).lost).toEqual(["L1", "L2"]);
    expect(supply.lost).toBe(undefined);
  });
});

describe("symmetrical components (Fortescue 1918)", () => {
  const a = complex(-0.5, (sqrt(3) as number) / 2);

  it("add up to the phasors again, by the matrix of another library", () => {
    fc.assert(
      fc.property(anyPhasor, anyPhasor, anyPhasor, (x1, x2, x3) => {
        const { zero, positive, negative } = symmetricalComponents([x1, x2, x3]);
        const back = multiply(
          matrix([
            [1, 1, 1],
            [1, multiply(a, a), a],
            [1, a, multiply(a, a)],
          ] as never),
          matrix([zero, positive, negative].map(({ re, im }) => complex(re, im)) as never),
        ).toArray() as unknown as { re: number; im: number }[];
        [x1, x2, x3].forEach((x, i) => {
          expect(apart(back[i]!, x, size(x1) + size(x2) + size(x3) + 1e-12)).toBeLessThan(1e-14);
        });
      }),
      RUNS,
    );
  });

  it("carry the power: Σ|X|² = 3(|X0|² + |X⁺|² + |X⁻|²)", () => {
    fc.assert(
      fc.property(anyPhasor, anyPhasor, anyPhasor, (x1, x2, x3) => {
        const { zero, positive, negative } = symmetricalComponents([x1, x2, x3]);
        const sum = size(x1) ** 2 + size(x2) ** 2 + size(x3) ** 2;
        const parts = 3 * (size(zero) ** 2 + size(positive) ** 2 + size(negative) ** 2);
        expect(Math.abs(parts - sum)).toBeLessThan(1e-13 * sum + 1e-18);
      }),
      RUNS,
    );
  });

  it("of a lone current are equal: the ratio is 1", () => {
    for (const lone of [0, 1, 2]) {
      const phasors = [0, 1, 2].map((i) => phasorOf(i === lone ? 10 : 0, 33));
      expect(negativeSequenceRatio(phasors as never)).toBeCloseTo(1, 14);
    }
  });

  it("of a reversed system have no positive sequence to divide by", () => {
    const reversed = [phasorOf(10, 0), phasorOf(10, 120), phasorOf(10, -120)];
    expect(() => negativeSequenceRatio(reversed as never)).toThrow(/positive sequence/);
  });
});

describe("unbalance", () => {
  it("from three magnitudes is the negative over the positive sequence of the triangle they close", () => {
    fc.assert(
      fc.property(anyTriangle, ([v12, v23, v31]) => {
        // The triangle by the law of cosines, here.
        const x = (v12 * v12 + v31 * v31 - v23 * v23) / (2 * v12);
        const y = Math.sqrt(Math.max(0, v31 * v31 - x * x));
        const corners = [complex(0, 0), complex(v12, 0), complex(x, -y)] as const;
        const side = (i: number, j: number) =>
          plus(corners[i as 0], multiply(-1, corners[j as 0])) as ReturnType<typeof complex>;
        const [u, v, w] = [side(0, 1), side(1, 2), side(2, 0)];
        const a = complex(-0.5, Math.sqrt(3) / 2);
        const a2 = complex(-0.5, -Math.sqrt(3) / 2);
        const plusSequence = plus(plus(u, multiply(a, v)), multiply(a2, w)) as { re: number; im: number };
        const minusSequence = plus(plus(u, multiply(a2, v)), multiply(a, w)) as { re: number; im: number };
        const [p, n] = [size(plusSequence), size(minusSequence)];
        const expected = Math.min(p, n) / Math.max(p, n);
        const got = unbalance({ l1: v12, l2: v23, l3: v31 }).negativeSequence;
        // Near balance and near collapse the formula takes the root of a cancelled difference.
        expect(got).not.toBe(null);
        expect(Math.abs(got! - expected)).toBeLessThan(1e-6);
        if (expected > 0.01 && expected < 0.9) expect(got! / expected).toBeCloseTo(1, 8);
      }),
      RUNS,
    );
  });

  it("closes where the longest is the other two together, whatever float64 makes of that, and not a thousandth further", () => {
    let rounded = 0;
    for (let i = 1; i < 40; i += 1) {
      for (let j = 1; j < 40; j += 1) {
        // Decimals that add up on paper; in float64 the longest is often more than the sum of the other two.
        const [l1, l2, l3] = [(i + j) / 10, i / 10, j / 10];
        if (l1 > l2 + l3) rounded += 1;
        expect(unbalance({ l1, l2, l3 }).negativeSequence, `${l1} ${l2} ${l3}`).toBeCloseTo(1, 6);
        expect(unbalance({ l1: l1 * 1.001, l2, l3 }).negativeSequence).toBe(null);
        expect(unbalance({ l1: l1 * 1.000001, l2, l3 }).negativeSequence).toBe(null);
      }
    }
    expect(rounded).toBeGreaterThan(50);
  });

  it("does not care for order or scale", () => {
    fc.assert(
      fc.property(anyTriangle, fc.double({ min: 1e-20, max: 1e20, noNaN: true }), ([l1, l2, l3], k) => {
        const one = unbalance({ l1, l2, l3 });
        const other = unbalance({ l1: l3 * k, l2: l1 * k, l3: l2 * k });
        expect(other.maxDeviation).toBeCloseTo(one.maxDeviation, 12);
        expect(other.spread).toBeCloseTo(one.spread, 12);
        if (one.negativeSequence !== null && other.negativeSequence !== null)
          expect(other.negativeSequence).toBeCloseTo(one.negativeSequence, 6);
        expect(other.mean / (one.mean * k)).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  it("can be up to 2.3 / 5.8 / 11.6 / 23.8 % by sequence for 2 / 5 / 10 / 20 % by deviation", () => {
    // P. Pillay, M. Manyage, Definitions of voltage unbalance, IEEE Power Engineering Review, Table 1 (upper ends, seen).
    for (const [deviation, printed] of [
      [0.02, 0.023],
      [0.05, 0.058],
      [0.1, 0.116],
      [0.2, 0.238],
    ] as const) {
      let highest = 0;
      // One voltage off the mean by the deviation, the other two anywhere that keeps the mean and is not further off.
      for (const sign of [1, -1]) {
        for (let step = 0; step <= 2000; step += 1) {
          const second = 1 - deviation + (2 * deviation * step) / 2000;
          const l = { l1: 1 + sign * deviation, l2: second, l3: 2 - sign * deviation - second };
          const found = unbalance(l);
          if (Math.abs(found.maxDeviation - deviation) > 1e-9) continue;
          highest = Math.max(highest, found.negativeSequence ?? 0);
        }
      }
      expect(highest).toBeGreaterThan(printed - 0.0005);
      expect(highest).toBeLessThan(printed + 0.0005);
    }
  });

  it("to neutral: equal magnitudes may hide any sequence, so none is given", () => {
    fc.assert(
      fc.property(anyTriangle, ([a, b, c]) => {
        const [row, other] = (["line voltages", "voltages to neutral"] as const).map((measured) =>
          unbalanceByDefinition({ l1: a, l2: b, l3: c, measured }),
        );
        expect(row?.map(({ value }) => value)).toEqual([
          unbalance({ l1: a, l2: b, l3: c }).maxDeviation,
          unbalance({ l1: a, l2: b, l3: c }).negativeSequence,
          unbalance({ l1: a, l2: b, l3: c }).spread,
        ]);
        expect(other?.[1]?.value).toBe(null);
        for (const list of [row, other]) {
          for (const { value, reason } of list ?? []) expect(reason === "").toBe(value !== null);
        }
      }),
      RUNS,
    );
    const equal = [phasorOf(277, 0), phasorOf(277, -90), phasorOf(277, 120)] as const;
    expect(negativeSequenceRatio(equal)).toBeGreaterThan(0.1);
  });

  it("of currents one of which is 0 is whole: no triangle is left but a line", () => {
    const found = unbalance({ l1: 0, l2: 10, l3: 10 });
    expect(found.maxDeviation).toBeCloseTo(1, 14);
    expect(found.negativeSequence).toBeCloseTo(1, 7);
    expect(unbalance({ l1: 10, l2: 3, l3: 3 }).negativeSequence).toBe(null);
  });
});

describe("balanced formulas", () => {
  const any = fc.double({ min: 1e-3, max: 1e7, noNaN: true });

  it("invert each other and agree with Ohm and Joule", () => {
    fc.assert(
      fc.property(any, any, fc.constantFrom("star", "delta"), (p, v, connection) => {
        const [power, lineVoltage] = [watts(p), volts(v)];
        const current = lineCurrent({ power, lineVoltage });
        expect(threePhasePower({ lineCurrent: current, lineVoltage }) / p).toBeCloseTo(1, 13);
        const r = branchResistance({ connection, power, lineVoltage });
        const u = branchVoltage({ connection, lineVoltage });
        const i = branchCurrent({ connection, lineCurrent: current });
        expect(u / (r * i)).toBeCloseTo(1, 13);
        expect((3 * u * i) / p).toBeCloseTo(1, 13);
        const between = healthyLineToLineResistance({ power, lineVoltage });
        // Star: two branches in series. Delta: one beside two.
        const expected = connection === "star" ? 2 * r : (r * 2 * r) / (3 * r);
        expect(between / expected).toBeCloseTo(1, 13);
      }),
      RUNS,
    );
  });

  it("power goes with the square of the voltage", () => {
    fc.assert(
      fc.property(any, any, any, (p, v, w) => {
        const there = powerAtVoltage({ power: watts(p), ratedVoltage: volts(v), voltage: volts(w) });
        expect(there / p / ((w / v) * (w / v))).toBeCloseTo(1, 13);
        const back = powerAtVoltage({ power: there, ratedVoltage: volts(w), voltage: volts(v) });
        expect(back / p).toBeCloseTo(1, 13);
      }),
      RUNS,
    );
  });

  it("10 A in a delta line are 10/√3 A in its branches, and 10 A in a star's", () => {
    expect(branchCurrent({ connection: "star", lineCurrent: amperes(10) })).toBe(10);
    expect(branchCurrent({ connection: "delta", lineCurrent: amperes(10) })).toBeCloseTo(
      Number(divide(10, Math.sqrt(3))),
      14,
    );
  });
});

/** Solving any calculation for any input: against inverses in closed form, and against functions made to deceive. */
import { powerFromVoltageAndResistance, voltageFromPowerAndResistance } from "electroheat/element";
import { type Solved, solveFor } from "electroheat/operators";
import { ohms, volts, watts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { expectFinite } from "../support/close.ts";

const all = (f: (x: number) => number, low: number, high: number, more: object = {}): Solved =>
  solveFor({
    calculation: ({ x }: { x: number }) => f(x),
    input: "x",
    target: 0,
    low,
    high,
    all: true,
    ...more,
  });
const values = (solved: Solved): readonly number[] =>
  solved.outcome === "found" ? solved.roots.map(({ value }) => value) : [];
const expectValues = (solved: Solved, wanted: readonly number[], tolerance = 1e-12): void => {
  expect(values(solved)).toHaveLength(wanted.length);
  values(solved).forEach((value, i) => {
    expect(Math.abs(value - (wanted[i] as number))).toBeLessThanOrEqual(tolerance);
  });
  expectFinite(solved, "an answer");
};

describe("solveFor", () => {
  it("undoes the power of an element for voltage and for resistance, as the closed forms do", () => {
    const element = fc.record({
      voltage: fc.double({ min: 1, max: 1000, noNaN: true }),
      resistance: fc.double({ min: 0.1, max: 500, noNaN: true }),
    });
    // The search stops at about 1e-12 of the argument: the last bit of the test must not turn on where in that span it stops.
    fc.assert(
      fc.property(element, ({ voltage, resistance }) => {
        const target = powerFromVoltageAndResistance({
          voltage: volts(voltage),
          resistance: ohms(resistance),
        });
        const common = { calculation: powerFromVoltageAndResistance, target, low: 0.05, high: 1001 };
        const byVoltage = solveFor({ ...common, input: "voltage", fixed: { resistance: ohms(resistance) } });
        const closed = voltageFromPowerAndResistance({ power: watts(target), resistance: ohms(resistance) });
        expect(Math.abs((values(byVoltage)[0] ?? 0) / closed - 1)).toBeLessThan(4e-12);
        const byResistance = solveFor({ ...common, input: "resistance", fixed: { voltage: volts(voltage) } });
        expect(Math.abs((values(byResistance)[0] ?? 0) / resistance - 1)).toBeLessThan(4e-12);
      }),
    );
  });

  it("finds every root of a polynomial with known roots that lie further apart than a cell", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: -45, max: 45 }), { minLength: 1, maxLength: 5 }),
        (list) => {
          const roots = [...list].sort((a, b) => a - b).map((root) => root / 10 + 0.0123);
          const solved = all((x) => roots.reduce((product, root) => product * (x - root), 1), -5, 5);
          expectValues(solved, roots, 1e-9);
        },
      ),
    );
  });

  it("finds roots at the ends, roots that touch, and pairs inside one cell", () => {
    expectValues(
      all((x) => x * (x - 1), 0, 1),
      [0, 1],
    );
    expectValues(
      all(Math.sin, 1, 20),
      [1, 2, 3, 4, 5, 6].map((n) => n * Math.PI),
    );
    expectValues(
      all((x) => (x - 0.333) ** 2, 0, 1),
      [0.333],
      1e-8,
    );
    expectValues(
      all((x) => (x - 0.333) ** 2 - 1e-8, 0, 1),
      [0.3329, 0.3331],
      1e-11,
    );
    expectValues(
      all((x) => x ** 3, -1, 1.1),
      [0],
    );
    expectValues(
      all((x) => Math.cbrt(x - 0.2), 0, 1),
      [0.2],
      1e-14,
    );
  });

  it("does not take a jump or a pole for a root", () => {
    const jump = all((x) => (x < 0.5 ? x - 1 : x), 0, 1);
    expect(jump.outcome).toBe("no root");
    expect(jump.jumps[0]?.value).toBeCloseTo(0.5, 12);
    const poles = all(Math.tan, 1, 8);
    expectValues(poles, [Math.PI, 2 * Math.PI]);
    expect(poles.jumps.map(({ value }) => value / Math.PI).map((n) => n.toFixed(9))).toEqual([
      "0.500000000",
      "1.500000000",
      "2.500000000",
    ]);
    const one = solveFor({
      calculation: ({ x }: { x: number }) => 1 / (x - 0.3),
      input: "x",
      target: 0,
      low: 0,
      high: 1,
    });
    expect(one.outcome).toBe("no root");
  });

  it("says what the ends give and what came closest where there is no root", () => {
    const solved = solveFor({
      calculation: powerFromVoltageAndResistance,
      input: "resistance",
      fixed: { voltage: volts(480) },
      target: 1e6,
      low: 1,
      high: 100,
    });
    expect(solved).toEqual({
      outcome: "no root",
      atLow: 230_400,
      atHigh: 2304,
      closest: { value: 1, output: 230_400 },
      jumps: [],
      gaps: [],
      cells: 256,
    });
  });

  it("keeps to the domain of the calculation: gaps with their edges, roots beside them, nothing at all", () => {
    const cold = (x: number): number => {
      if (x < 0.3) throw new RangeError("below the domain");
      return Math.sqrt(x - 0.3) - 1e-3;
    };
    const beside = all(cold, 0, 1);
    expectValues(beside, [0.300001]);
    expect(beside.gaps).toHaveLength(1);
    expect(beside.gaps[0]?.low).toBe(0);
    expect(beside.gaps[0]?.high).toBeCloseTo(0.3, 12);
    expect(beside.gaps[0]?.reason).toBe("RangeError: below the domain");
    const negative = solveFor({
      calculation: powerFromVoltageAndResistance,
      input: "resistance",
      fixed: { voltage: volts(480) },
      target: 18_000,
      low: -100,
      high: 100,
    });
    expect(values(negative)[0]).toBeCloseTo(12.8, 10);
    expect(negative.gaps[0]?.reason).toMatch(/^resistance: -?\d/);
    const hole = all((x) => (x > 0.4 && x < 0.6 ? Number.NaN : x - 0.5), 0, 1);
    expect([hole.outcome, hole.gaps.length]).toEqual(["no root", 1]);
    const nothing = all(
      () => {
        throw new Error("no");
      },
      0,
      1,
    );
    expect(nothing).toEqual({
      outcome: "no value",
      jumps: [],
      gaps: [{ low: 0, high: 1, reason: "Error: no" }],
      cells: 256,
    });
    const open = solveFor({
      calculation: (_: { x: number }) => "open",
      input: "x",
      target: 1,
      low: 0,
      high: 1,
    });
    expect(open.outcome).toBe("no value");
    expect(open.gaps[0]?.reason).toBe('the result is "open", not a number');
  });

  it("searches over many powers of ten by logarithms, and reads outputs inside records", () => {
    const solved = solveFor({
      calculation: ({ x }: { x: number }) => ({ lines: [{ current: Math.log10(x) }] }),
      input: "x",
      output: "lines.0.current",
      target: -6.5,
      low: 1e-300,
      high: 1e300,
      spacing: "logarithmic",
      all: true,
    });
    expect((values(solved)[0] ?? 0) / 10 ** -6.5).toBeCloseTo(1, 12);
  });

  it.each([
    [{ calculation: undefined }, "missing", "calculation"],
    [{ input: undefined }, "missing", "input"],
    [{ input: "__proto__" }, "unknown-field", "input"],
    [{ target: Number.NaN }, "not-a-number", "target"],
    [{ low: 1, high: 1 }, "inconsistent", "high"],
    [{ low: -1, spacing: "logarithmic" }, "inconsistent", "low"],
    [{ spacing: "square" }, "unknown-name", "spacing"],
    [{ cells: 0 }, "out-of-range", "cells"],
    [{ all: "yes" }, "wrong-type", "all"],
    [{ fixed: { x: 1 } }, "duplicate", "fixed.x"],
  ])("refuses %j", (change, code, argument) => {
    const error = caught(() =>
      solveFor({
        calculation: (i: { x: number }) => i.x,
        input: "x",
        target: 0,
        low: 0,
        high: 1,
        ...change,
      } as never),
    );
    expect([error.code, error.argument]).toEqual([code, argument]);
  });
});

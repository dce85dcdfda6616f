/** Order by size with ties: against a sort by another rule, and against the last bits that another host would give. */
import { balancedSupply, buildModule, faultScan, type ModulePlan } from "electroheat/circuit";
import { EQUAL_WITHIN, largestFirst } from "electroheat/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectRefusal, negative, notQuantities } from "../support/spoil.ts";

const RUNS = { numRuns: 1000 };
const self = (x: number): number => x;

describe("largest first", () => {
  it("is the plain order where nothing is tied", () => {
    const whole = fc.uniqueArray(fc.integer({ min: 0, max: 1e6 }), { maxLength: 30 });
    fc.assert(
      fc.property(whole, (list) => {
        const before = [...list];
        expect(largestFirst(list, self)).toEqual([...list].sort((a, b) => b - a));
        expect(list).toEqual(before);
      }),
      RUNS,
    );
  });

  it("is the same whatever the last bits are", () => {
    const sizes = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 20 });
    const bits = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 20, maxLength: 20 });
    fc.assert(
      fc.property(sizes, bits, bits, (list, one, two) => {
        const order = (noise: readonly number[]): number[] =>
          largestFirst(
            list.map((size, i) => ({ i, size: size * (1 + (noise[i] as number) * Number.EPSILON) })),
            ({ size }) => size,
          ).map(({ i }) => i);
        expect(order(one)).toEqual(order(two));
        // Of equals the first in the list comes first.
        const exact = list.map((size, i) => ({ size, i })).sort((a, b) => b.size - a.size || a.i - b.i);
        expect(order(one)).toEqual(exact.map(({ i }) => i));
      }),
      RUNS,
    );
  });

  it("ties to the largest of a run, so that a slope of small steps is not one tie", () => {
    const slope = Array.from({ length: 10 }, (_, i) => 1 + i * 0.6 * EQUAL_WITHIN);
    expect(largestFirst(slope, self).indexOf(slope[9] as number)).toBeLessThan(2);
    expect(largestFirst(slope, self).indexOf(slope[0] as number)).toBeGreaterThan(7);
    const [at, above] = [1 + EQUAL_WITHIN, 1 + 1.01 * EQUAL_WITHIN];
    expect(largestFirst([1, at], self)).toEqual([1, at]);
    expect(largestFirst([1, above], self)).toEqual([above, 1]);
  });

  it("refuses what has no size", () => {
    for (const [value, code] of [...notQuantities, ...negative]) {
      expectRefusal(() => largestFirst([1, value as number], self), code, "items.1", String(value));
    }
    expectRefusal(() => largestFirst(undefined as never, self), "missing", "items", "no list");
    expectRefusal(() => largestFirst([1], undefined as never), "missing", "sizeOf", "no function");
    expectRefusal(() => largestFirst([1], 3 as never), "wrong-type", "sizeOf", "a number");
  });
});

describe("the survivor that is named", () => {
  // An element of a star opens: the other two then carry the same, by symmetry (3/4 of their voltage each, √3/2 of 1).
  const star = (ohms: readonly [number, number, number]): ModulePlan => ({
    banks: [{ id: "A", connection: "star", elementResistance: 10 as never }],
    elements: Object.fromEntries(ohms.map((one, i) => [`A-L${i + 1}`, one])) as never,
  });

  it.each([
    ["A-L1", "A-L2"],
    ["A-L2", "A-L1"],
    ["A-L3", "A-L1"],
  ])("%s open: %s, whatever the last bits of the supply and the elements", (opened, named) => {
    for (let k = -4; k <= 4; k += 1) {
      for (const at of [0, 1, 2]) {
        const ohms = [10, 10, 10] as [number, number, number];
        ohms[at] = 10 * (1 + k * Number.EPSILON);
        const supply = balancedSupply({ lineVoltage: (400 * (1 + k * Number.EPSILON)) as never });
        const { network } = buildModule(star(ohms));
        const found = faultScan({ network, supply }).find(
          (one) => one.faults[0]?.kind === "open" && one.faults[0].id === opened,
        );
        expect(found?.outcome === "runs" && found.worst?.id, `${k} ${at}`).toBe(named);
      }
    }
  });
});

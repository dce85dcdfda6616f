/** Complex arithmetic against a general-purpose library (mathjs), and the laws of a field. */
import {
  angleDegrees,
  complexDifference,
  complexProduct,
  complexQuotient,
  complexScaled,
  complexSum,
  factorConductances,
  modulus,
  phasor,
  solveConductances,
} from "electroheat/numeric";
import fc from "fast-check";
import { abs, arg, complex, divide, lusolve, type Matrix, multiply } from "mathjs";
import { describe, expect, it } from "vitest";
import { apart } from "../support/close.ts";
import { Chance } from "../support/networks.ts";
import { expectRefusal, notQuantities } from "../support/spoil.ts";

const RUNS = { numRuns: 1000 };
const part = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const anyZ = fc.record({ re: part, im: part });
const nonZero = anyZ.filter(({ re, im }) => Math.hypot(re, im) > 1e-6);

describe("complex numbers", () => {
  it("multiply and divide as those of another library", () => {
    fc.assert(
      fc.property(anyZ, nonZero, (a, b) => {
        const [x, y] = [complex(a.re, a.im), complex(b.re, b.im)];
        const top = modulus(a) * modulus(b) + 1e-300;
        expect(apart(complexProduct(a, b), multiply(x, y) as never, top)).toBeLessThan(1e-15);
        expect(apart(complexQuotient(a, b), divide(x, y) as never, 1e-300)).toBeLessThan(2e-15);
      }),
      RUNS,
    );
  });

  it("have that library's modulus and angle", () => {
    fc.assert(
      fc.property(nonZero, (z) => {
        expect(modulus(z) / Number(abs(complex(z.re, z.im)))).toBeCloseTo(1, 14);
        const degrees = (Number(arg(complex(z.re, z.im))) * 180) / Math.PI;
        expect(angleDegrees(z)).toBeCloseTo(degrees === -180 ? 180 : degrees, 10);
      }),
      RUNS,
    );
  });

  it("undo: quotient of product, difference of sum, scaled there and back", () => {
    fc.assert(
      fc.property(anyZ, nonZero, (a, b) => {
        const top = modulus(a) + 1e-300;
        expect(apart(complexQuotient(complexProduct(a, b), b), a, top)).toBeLessThan(2e-15);
        expect(apart(complexDifference(complexSum(a, b), b), a, top + modulus(b))).toBeLessThan(1e-15);
        expect(complexScaled(complexScaled(a, 4), 0.25)).toEqual({ re: a.re + 0, im: a.im + 0 });
      }),
      RUNS,
    );
  });

  it("take a phasor's modulus and angle back out", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        (magnitude, degrees) => {
          const z = phasor({ magnitude, degrees });
          expect(modulus(z) / magnitude).toBeCloseTo(1, 13);
          const turn = (((angleDegrees(z) - degrees + 180) % 360) + 360) % 360;
          expect(turn).toBeCloseTo(180, 9);
        },
      ),
      RUNS,
    );
  });

  it("are exact at the quarters, and neither over- nor underflow where the answer does not", () => {
    for (const [degrees, re, im] of [
      [0, 2, 0],
      [90, 0, 2],
      [180, -2, 0],
      [-90, 0, -2],
      [450, 0, 2],
      [-360, 2, 0],
    ] as const) {
      expect(phasor({ magnitude: 2, degrees })).toEqual({ re, im });
    }
    expect(modulus({ re: 3e200, im: 4e200 }) / 5e200).toBeCloseTo(1, 14);
    expect(modulus({ re: 3e-200, im: 4e-200 }) / 5e-200).toBeCloseTo(1, 14);
    expect(modulus({ re: 0, im: -7 })).toBe(7);
    const quotient = complexQuotient({ re: 1e200, im: 0 }, { re: 1e200, im: 1e200 });
    expect(apart(quotient, { re: 0.5, im: -0.5 }, 0)).toBeLessThan(1e-15);
    expect(angleDegrees({ re: -1, im: -0 })).toBe(180);
    expect(angleDegrees({ re: 0, im: 0 })).toBe(0);
  });

  it("refuse a phasor without a number", () => {
    for (const [value, code] of notQuantities) {
      expectRefusal(
        () => phasor({ magnitude: value as number, degrees: 0 }),
        code,
        "magnitude",
        String(value),
      );
      expectRefusal(() => phasor({ magnitude: 1, degrees: value as number }), code, "degrees", String(value));
    }
  });
});

describe("a graph of conductances", () => {
  /** A random graph; some nodes may hang on nothing. */
  function graph(seed: number) {
    const chance = new Chance(seed);
    const nodeCount = chance.whole(2, 14);
    const edges = Array.from({ length: chance.whole(1, 3 * nodeCount) }, () => ({
      from: chance.whole(0, nodeCount - 1),
      to: chance.whole(0, nodeCount - 1),
      g: chance.happens(0.1) ? 0 : chance.spread(0.1, 10),
    }));
    const fixed = Array.from({ length: nodeCount }, (_, i) => (i === 0 || chance.happens(0.2) ? 1 : 0));
    return { chance, nodeCount, edges, fixed };
  }

  it("is solved as by the LU of another library, floating nodes told apart", () => {
    let floated = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 31 - 1 }), (seed) => {
        const { chance, nodeCount, edges, fixed } = graph(seed);
        const factor = factorConductances({
          nodeCount,
          from: edges.map(({ from }) => from),
          to: edges.map(({ to }) => to),
          conductance: edges.map(({ g }) => g),
          fixed,
        });
        // Which nodes hang on a fixed one, by spreading along the edges.
        const tied = fixed.map((one) => one === 1);
        for (let round = 0; round < nodeCount; round += 1) {
          for (const { from, to, g } of edges) {
            if (g > 0 && (tied[from] || tied[to])) {
              tied[from] = true;
              tied[to] = true;
            }
          }
        }
        expect([...factor.floating]).toEqual(tied.map((one) => (one ? 0 : 1)));
        floated += tied.filter((one) => !one).length;
        const given = fixed.map((one) => (one === 1 ? chance.between(-100, 100) : 0));
        const injected = fixed.map((one, i) => (one === 0 && tied[i] ? chance.between(-10, 10) : 0));
        const matrix = fixed.map((_, i) =>
          fixed.map((_unused, j) => (i === j && (fixed[i] === 1 || !tied[i]) ? 1 : 0)),
        );
        for (const { from, to, g } of edges) {
          if (from === to) continue;
          for (const [a, b] of [
            [from, to],
            [to, from],
          ] as const) {
            if (fixed[a] === 1 || !tied[a]) continue;
            matrix[a]![a]! += g;
            matrix[a]![b]! -= g;
          }
        }
        const right = fixed.map((one, i) => [one === 1 ? given[i]! : injected[i]!]);
        const solved = lusolve(
          matrix as unknown as Matrix,
          right as unknown as Matrix,
        ) as unknown as number[][];
        const potential = solveConductances({
          factor,
          potential: Float64Array.from(given),
          injected: Float64Array.from(injected),
        });
        const top = Math.max(...solved.map(([value]) => Math.abs(value!)), 1e-300);
        solved.forEach(([value], i) => {
          // What the subtracting LU itself may lose on conductances 0.1 to 10.
          expect(Math.abs(potential[i]! - value!) / top).toBeLessThan(1e-9);
        });
      }),
      RUNS,
    );
    expect(floated).toBeGreaterThan(100);
  });
});

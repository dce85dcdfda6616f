/** Complex arithmetic against general-purpose libraries (mathjs, decimal.js), and the laws of a field. */
import { Decimal } from "decimal.js";
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
import { apart, expectFinite } from "../support/close.ts";
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
    // sin 30° = ½, cos 60° = ½; nothing at all has no sign.
    expect(phasor({ magnitude: 2, degrees: 390 }).im).toBeCloseTo(1, 15);
    expect(phasor({ magnitude: 2, degrees: -60 }).re).toBeCloseTo(1, 15);
    expect(phasor({ magnitude: 0, degrees: 210 })).toEqual({ re: 0, im: 0 });
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

describe("complex numbers at the ends of float64", () => {
  const any = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constantFrom(0, -0, 5e-324, -1e-300, 1e154, Number.MAX_VALUE, -Number.MAX_VALUE),
  );
  const anyOf = fc.record({ re: any, im: any });

  it("name the argument that takes a result beyond float64, in either part", () => {
    const [big, one] = [Number.MAX_VALUE, 1];
    const cases: readonly (readonly [() => unknown, string])[] = [
      [() => complexSum({ re: big, im: one }, { re: big, im: one }), "a"],
      [() => complexSum({ re: one, im: big }, { re: one, im: big }), "a"],
      [() => complexDifference({ re: big, im: one }, { re: -big, im: one }), "a"],
      [() => complexDifference({ re: one, im: big }, { re: one, im: -big }), "a"],
      [() => complexProduct({ re: big, im: 0 }, { re: 2, im: 0 }), "a"],
      [() => complexProduct({ re: 0, im: big }, { re: 2, im: 0 }), "a"],
      [() => complexScaled({ re: big, im: 0 }, 2), "factor"],
      [() => complexScaled({ re: 0, im: big }, 2), "factor"],
      [() => complexQuotient({ re: big, im: 0 }, { re: 0.5, im: 0 }), "b"],
      [() => complexQuotient({ re: 0, im: big }, { re: 0.5, im: 0 }), "b"],
      [() => complexQuotient({ re: big, im: 0 }, { re: 0, im: 0.5 }), "b"],
      [() => complexQuotient({ re: 0, im: big }, { re: 0, im: 0.5 }), "b"],
      [() => modulus({ re: big, im: big }), "z"],
    ];
    for (const [call, argument] of cases) expectRefusal(call, "out-of-range", argument, String(call));
    expect(complexQuotient({ re: big, im: 0 }, { re: big, im: 0 })).toEqual({ re: 1, im: 0 });
  });

  it("give finite plain numbers or say that the result is beyond float64", () => {
    const seen = { given: 0, refused: 0 };
    fc.assert(
      fc.property(anyOf, anyOf, any, (a, b, x) => {
        for (const call of [
          () => modulus(a),
          () => angleDegrees(a),
          () => complexSum(a, b),
          () => complexDifference(a, b),
          () => complexProduct(a, b),
          () => complexScaled(a, x),
          () => complexQuotient(a, b),
          () => phasor({ magnitude: x, degrees: a.re }),
        ]) {
          try {
            expectFinite(call(), `${call} ${JSON.stringify([a, b, x])}`);
            seen.given += 1;
          } catch (error) {
            if ((error as { code?: string }).code !== "out-of-range") throw error;
            seen.refused += 1;
          }
        }
      }),
      RUNS,
    );
    expect(seen.given).toBeGreaterThan(4000);
    expect(seen.refused).toBeGreaterThan(100);
  });

  it("keep the digits of a modulus whose square is denormal or overflows", () => {
    for (const scale of [
      1e-323, 1e-170, 1e-162, 1e-160, 1e-158, 1e-150, 1e-140, 1e-138, 1, 1e139, 1e141, 1e153, 1e300,
    ]) {
      const [re, im] = [3 * scale, 4 * scale];
      const exact = new Decimal(re).pow(2).plus(new Decimal(im).pow(2)).sqrt();
      const off = new Decimal(modulus({ re, im })).minus(exact).abs();
      expect(off.lessThanOrEqualTo(exact.times(3e-16).plus(5e-324)), String(scale)).toBe(true);
    }
  });

  it("refuse what is no number, by part, and a quotient by 0", () => {
    const one = { re: 1, im: 1 };
    for (const [value, code] of notQuantities) {
      const bad = { re: value as number, im: 1 };
      const shown = String(value);
      expectRefusal(() => modulus(bad), code, "z.re", shown);
      expectRefusal(() => modulus({ re: 1, im: value as number }), code, "z.im", shown);
      expectRefusal(() => angleDegrees(bad), code, "z.re", shown);
      expectRefusal(() => complexScaled(bad, 2), code, "z.re", shown);
      expectRefusal(() => complexScaled(one, value as number), code, "factor", shown);
      for (const call of [complexSum, complexDifference, complexProduct, complexQuotient]) {
        expectRefusal(() => call(bad, one), code, "a.re", shown);
        expectRefusal(() => call(one, bad), code, "b.re", shown);
      }
    }
    expectRefusal(() => modulus(undefined as never), "missing", "z.re", "no argument");
    expectRefusal(() => phasor(undefined as never), "missing", "magnitude", "no argument");
    expectRefusal(() => complexQuotient(one, { re: 0, im: -0 }), "out-of-range", "b", "by 0");
  });
});

describe("a graph of conductances", () => {
  const line = { nodeCount: 3, from: [0, 1], to: [1, 2], conductance: [1, 3], fixed: [1, 0, 1] };

  it("refuses nodes that are not there, conductances below 0 or without a number, and lists of other lengths", () => {
    const call = (change: object) => () => factorConductances({ ...line, ...change });
    for (const node of [-1, 3, 0.5, Number.NaN]) {
      const code = Number.isNaN(node) ? "not-a-number" : "out-of-range";
      expectRefusal(call({ from: [0, node] }), code, "from.1", String(node));
      expectRefusal(call({ to: [node, 2] }), code, "to.0", String(node));
    }
    for (const [value, code] of [
      [-1, "out-of-range"],
      [-5e-324, "out-of-range"],
      [1e291, "out-of-range"],
      [Number.NaN, "not-a-number"],
      [Number.POSITIVE_INFINITY, "not-a-number"],
    ] as const) {
      expectRefusal(call({ conductance: [1, value] }), code, "conductance.1", String(value));
    }
    expectRefusal(call({ nodeCount: -1 }), "out-of-range", "nodeCount", "negative");
    expectRefusal(call({ fixed: undefined }), "missing", "from", "no word on which are fixed");
    expectRefusal(call({ nodeCount: undefined }), "missing", "nodeCount", "none");
    expectRefusal(call({ fixed: [1, 0] }), "inconsistent", "from", "fixed too short");
    expectRefusal(call({ to: [1] }), "inconsistent", "from", "to too short");
    expectRefusal(call({ conductance: undefined }), "missing", "from", "no conductances");
    expectRefusal(() => factorConductances(undefined as never), "missing", "nodeCount", "no argument");
  });

  it("refuses potentials and currents of another length, and a current over nothing", () => {
    const factor = factorConductances({ ...line, conductance: [1e-310, 0] });
    const solve = (potential: number[], injected: number[]) => () =>
      solveConductances({
        factor,
        potential: Float64Array.from(potential),
        injected: Float64Array.from(injected),
      });
    expectRefusal(solve([0, 0], [0, 0, 0]), "inconsistent", "potential", "short");
    expectRefusal(solve([0, 0, 0], [0, 0]), "inconsistent", "injected", "short");
    expectRefusal(solve([0, 0, 0], [0, 1, 0]), "out-of-range", "potential", "1 A into 1e-310 S");
    expectRefusal(solve([Number.NaN, 0, 0], [0, 0, 0]), "out-of-range", "potential", "NaN held");
    expect([...solve([0, 0, 0], [0, -0, 0])()]).toEqual([0, 0, 0]);
    expect([...solve([5, 0, 7], [0, 0, 0])()]).toEqual([5, 5, 7]);
    const none = { factor, potential: undefined as unknown as Float64Array };
    expectRefusal(() => solveConductances(none), "inconsistent", "potential", "no potentials");
    // A divider without currents: 8 V over 1 S and 3 S leaves 8·1/(1 + 3).
    const divider = factorConductances({ ...line, conductance: [1, 3] });
    expect(solveConductances({ factor: divider, potential: Float64Array.of(8, 0, 0) })[1]).toBe(2);
  });

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

/** The elimination of conductance graphs against a dense LU solve of another library (ml-matrix), and against Kirchhoff's current law. */
import {
  angleDegrees,
  complexQuotient,
  factorConductances,
  integrateOde,
  leastSquares,
  phasor,
  solveConductances,
  studentCumulative,
  studentQuantile,
} from "electroheat/numeric";
import { Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { Chance } from "../support/networks.ts";

interface Graph {
  readonly nodeCount: number;
  readonly from: number[];
  readonly to: number[];
  readonly conductance: number[];
  readonly fixed: number[];
}

/** A connected graph with parallel edges, open ones, and loops of an edge to its own node. */
function randomGraph(chance: Chance, nodeCount: number, edges: number): Graph {
  const [from, to, conductance]: number[][] = [[], [], []];
  const put = (a: number, b: number, g: number) => {
    from?.push(a);
    to?.push(b);
    conductance?.push(g);
  };
  for (let node = 1; node < nodeCount; node += 1)
    put(chance.whole(0, node - 1), node, chance.spread(0.1, 10));
  for (let e = 0; e < edges; e += 1) {
    const [a, b] = [chance.whole(0, nodeCount - 1), chance.whole(0, nodeCount - 1)];
    put(a, b, e % 7 === 3 ? 0 : chance.spread(0.1, 10));
    if (e % 3 === 0) put(b, a, chance.spread(0.1, 10));
  }
  const fixed = Array.from({ length: nodeCount }, (_, i) => (i === 0 || chance.whole(0, 5) === 0 ? 1 : 0));
  return {
    nodeCount,
    from: from as number[],
    to: to as number[],
    conductance: conductance as number[],
    fixed,
  };
}

/** Node equations Σ G·(v_a − v_b) = i at the free nodes, v = given at the held ones, by dense LU. */
function dense(
  { nodeCount, from, to, conductance, fixed }: Graph,
  potential: number[],
  injected: number[],
): number[] {
  const g = Matrix.zeros(nodeCount, nodeCount);
  const add = (row: number, column: number, value: number) => g.set(row, column, g.get(row, column) + value);
  conductance.forEach((value, e) => {
    const [a, b] = [from[e] as number, to[e] as number];
    for (const [x, y] of [
      [a, b],
      [b, a],
    ] as const) {
      if (fixed[x] === 1) continue;
      add(x, x, value);
      add(x, y, -value);
    }
  });
  fixed.forEach((is, node) => {
    if (is === 1) g.set(node, node, 1);
  });
  const right = potential.map((v, node) => (fixed[node] === 1 ? v : (injected[node] as number)));
  return solve(g, Matrix.columnVector(right)).to1DArray();
}

describe("a graph of conductances", () => {
  it.each(Array.from({ length: 60 }, (_, i) => i + 1))(
    "is solved as a dense matrix is, currents and potentials given: %d",
    (seed) => {
      const chance = new Chance(seed);
      const nodeCount = chance.whole(2, 14);
      const graph = randomGraph(chance, nodeCount, chance.whole(0, 30));
      const potential = graph.fixed.map((is) => (is === 1 ? chance.between(-5, 5) : 0));
      const injected = graph.fixed.map(() => (chance.whole(0, 2) === 0 ? 0 : chance.between(-5, 5)));
      const factor = factorConductances(graph);
      const expected = dense(graph, potential, injected);
      const largest = Math.max(1, ...expected.map(Math.abs));
      const near = (found: readonly number[], wanted: readonly number[]) => {
        for (const [node, v] of wanted.entries())
          expect(Math.abs((found[node] as number) - v)).toBeLessThan(1e-11 * largest);
      };
      near(solveConductances({ factor, potential: [...potential], injected: [...injected] }), expected);
      near(
        solveConductances({
          factor,
          potential: Float64Array.from(potential),
          injected: Float64Array.from(injected),
        }) as never,
        expected,
      );
      near(
        solveConductances({ factor, potential: [...potential] }),
        dense(
          graph,
          potential,
          injected.map(() => 0),
        ),
      );
      // Every free node goes once, held ones stay; nothing floats in a connected graph.
      expect([...factor.order].sort((a, b) => a - b)).toEqual(
        graph.fixed.flatMap((is, node) => (is === 1 ? [] : [node])),
      );
      expect(factor.floating).toEqual(graph.fixed.map(() => 0));
      expect(factor.rowStart).toHaveLength(factor.order.length + 1);
      // What a node hands on is all of it: the shares of each row make up 1.
      for (let step = 0; step < factor.order.length; step += 1) {
        const row = factor.share.slice(factor.rowStart[step], factor.rowStart[step + 1]);
        expect(row.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
      }
    },
  );

  it("takes the nodes of fewest edges first, so that a tree fills in nothing", () => {
    // A star of 40 arms on a held centre, and a chain: each node leaves one row with one or two neighbours.
    const chain = Array.from({ length: 40 }, (_, i) => i);
    const graph = {
      nodeCount: 41,
      from: chain,
      to: chain.map((i) => i + 1),
      conductance: chain.map(() => 2),
      fixed: [1, ...chain.map(() => 0)],
    };
    expect(factorConductances(graph).neighbour).toHaveLength(40);
    const star = {
      ...graph,
      from: chain.map(() => 40),
      to: chain,
      fixed: chain
        .map(() => 0)
        .concat(0)
        .map((_, i) => (i === 0 ? 1 : 0)),
    };
    expect(factorConductances(star).neighbour).toHaveLength(40);
    // Edges side by side are one.
    const doubled = {
      ...graph,
      from: [...chain, ...chain],
      to: [...graph.to, ...graph.to],
      conductance: [...graph.conductance, ...graph.conductance],
    };
    const { neighbour, pivot } = factorConductances(doubled);
    expect(neighbour).toHaveLength(40);
    expect(Math.max(...pivot)).toBe(4);
  });

  it("tells the nodes that no conductance ties to a held one", () => {
    const graph = {
      nodeCount: 6,
      from: [0, 1, 3, 4],
      to: [1, 2, 4, 5],
      conductance: [1, 0, 1, 1],
      fixed: [1, 0, 0, 0, 0, 0],
    };
    expect(factorConductances(graph).floating).toEqual([0, 0, 1, 1, 1, 1]);
    // They stand at 0, which nobody is to read: no division by a sum of nothing.
    const zeros = () => [5, 0, 0, 0, 0, 0];
    const factor = factorConductances(graph);
    expect(solveConductances({ factor, potential: zeros(), injected: [0, 0, 0, 0, 0, 0] })).toEqual([
      5, 5, 0, 0, 0, 0,
    ]);
    expect(solveConductances({ factor, potential: zeros() })).toEqual([5, 5, 0, 0, 0, 0]);
    expect(factorConductances({ ...graph, fixed: [0, 0, 0, 0, 1, 0] }).floating).toEqual([1, 1, 1, 0, 0, 0]);
    expect(factorConductances({ nodeCount: 0, from: [], to: [], conductance: [], fixed: [] }).order).toEqual(
      [],
    );
  });

  it("refuses nodes that are none by place and range", () => {
    const graph = { nodeCount: 3, from: [0, 1], to: [1, 2], conductance: [1, 1], fixed: [1, 0, 0] };
    for (const end of ["from", "to"] as const)
      for (const node of [-1, 3, 0.5, 1.5, Number.NaN, undefined as never]) {
        const [issue] = caught(() => factorConductances({ ...graph, [end]: [0, node] })).issues;
        expect([issue?.path, issue?.expected]).toEqual([`${end}.1`, "a whole number from 0 to 2"]);
      }
    const [large] = caught(() => factorConductances({ ...graph, conductance: [1, 1.1e290] })).issues;
    expect([large?.code, large?.path, large?.expected]).toEqual([
      "out-of-range",
      "conductance.1",
      "at most 1e290",
    ]);
    expect(factorConductances({ ...graph, conductance: [1e290, 1e290] }).pivot).toEqual([1e290, 1e290]);
    const [lengths] = caught(() => factorConductances({ ...graph, to: [1] })).issues;
    expect([lengths?.code, lengths?.path, lengths?.received]).toEqual([
      "inconsistent",
      "from",
      '"2, 1, 2 and 3"',
    ]);
    const factor = factorConductances(graph);
    for (const [potential, injected, path, received] of [
      [[0, 0], undefined, "potential", "2"],
      [[0, 0, 0], [0, 0], "injected", "2"],
    ] as const) {
      const input = {
        factor,
        potential: [...potential],
        ...(injected === undefined ? {} : { injected: [...injected] }),
      };
      const [issue] = caught(() => solveConductances(input)).issues;
      expect([issue?.code, issue?.path, issue?.expected, issue?.received]).toEqual([
        "inconsistent",
        path,
        "one number for each of 3 nodes",
        received,
      ]);
    }
  });
});

describe("a quotient", () => {
  it("by nothing is refused as such", () => {
    for (const zero of [
      { re: 0, im: 0 },
      { re: -0, im: 0 },
    ]) {
      const [issue] = caught(() => complexQuotient({ re: 1, im: 1 }, zero)).issues;
      expect([issue?.code, issue?.path, issue?.expected, issue?.received]).toEqual([
        "out-of-range",
        "b",
        "a complex number other than 0",
        "0",
      ]);
    }
  });
});

describe("signs of nothing", () => {
  it("no negative zero comes out of a phasor or an angle, whichever way it is turned", () => {
    for (const magnitude of [0, -0, 5, -5])
      for (let quarter = -8; quarter <= 8; quarter += 1) {
        const { re, im } = phasor({ magnitude, degrees: quarter === 0 ? -0 : 90 * quarter });
        const [cos, sin] = [
          [1, 0, -1, 0],
          [0, 1, 0, -1],
        ].map((of) => of[(quarter + 8) % 4] as number) as [number, number];
        expect([re, im]).toEqual([magnitude * cos + 0, magnitude * sin + 0]);
      }
    for (const z of [
      { re: 1, im: -0 },
      { re: 0, im: -0 },
      { re: 0, im: 0 },
    ])
      expect(Object.is(angleDegrees(z), 0)).toBe(true);
    for (const im of [0, -0]) expect(angleDegrees({ re: -1, im })).toBe(180);
  });
});

describe("a fit of lists that do not fit", () => {
  it("is refused with how many there are of each", () => {
    const fit = { design: [[1], [1], [1]], observed: [1, 2, 3], uncertainty: [1, 1, 1] };
    const refused = (change: object) => {
      const [issue] = caught(() => leastSquares({ ...fit, ...change } as typeof fit)).issues;
      return [issue?.code, issue?.path, issue?.expected, issue?.received];
    };
    const each = "one row and one uncertainty for each observation";
    for (const [change, counts] of [
      [{ design: [[1], [1]] }, "2 rows, 3 observations, 3 uncertainties"],
      [{ design: [[1], [1], [1], [1]] }, "4 rows, 3 observations, 3 uncertainties"],
      [{ uncertainty: [1, 1] }, "3 rows, 3 observations, 2 uncertainties"],
      [{ uncertainty: [1, 1, 1, 1] }, "3 rows, 3 observations, 4 uncertainties"],
      [{ observed: [1, 2] }, "3 rows, 2 observations, 3 uncertainties"],
    ] as const)
      expect(refused(change)).toEqual(["inconsistent", "design", each, `"${counts}"`]);
    expect(refused({ design: [[1], [1, 2], [1]] })).toEqual(["inconsistent", "design.1", "1 columns", "2"]);
    expect(refused({ design: [[1], undefined, [1]] })).toEqual([
      "inconsistent",
      "design.1",
      "1 columns",
      "undefined",
    ]);
    expect(refused({ design: [[1], [Number.NaN], [1]] }).slice(0, 2)).toEqual(["not-a-number", "design.1.0"]);
    for (const design of [undefined, [], [[]]])
      expect(refused({ design }).slice(0, 3)).toEqual([
        "missing",
        "design",
        "at least one row and one column",
      ]);
    for (const list of ["observed", "uncertainty"])
      expect(refused({ [list]: 5 }).slice(0, 3)).toEqual(["missing", list, "a list of numbers"]);
    expect(refused({ observed: [1e200, 2, 3] }).slice(0, 2)).toEqual(["out-of-range", "observed"]);
    // By hand: the mean of 1, 2, 3 is 2 with u = 1/√3, χ² = 2 on two degrees of freedom.
    expect(leastSquares(fit)).toMatchObject({
      estimates: [expect.closeTo(2, 14)],
      covariance: [[expect.closeTo(1 / 3, 14)]],
      chiSquare: expect.closeTo(2, 13),
      degreesOfFreedom: 2,
      rank: 1,
    });
  });
});

describe("the integrator", () => {
  const refused = (change: object) => {
    const [issue] = caught(() =>
      integrateOde({ derivative: () => [1], start: 0, end: 1, initial: [0], ...change }),
    ).issues;
    return [issue?.path, issue?.expected, issue?.received];
  };

  it("says what slope it was given, and where", () => {
    expect(refused({ derivative: () => [Number.NaN] })).toEqual([
      "derivative",
      "1 finite numbers at 0",
      '"NaN"',
    ]);
    expect(refused({ derivative: () => [1, 2] })).toEqual(["derivative", "1 finite numbers at 0", "2"]);
    expect(refused({ end: -1 }).slice(0, 2)).toEqual(["end", "more than start, 0"]);
    for (const relativeTolerance of [9e-15, 0.11])
      expect(refused({ relativeTolerance })[1]).toBe("1e-14 to 0.1");
    for (const relativeTolerance of [1e-14, 0.1])
      expect(
        integrateOde({ derivative: () => [1], start: 0, end: 1, initial: [0], relativeTolerance }).state[0],
      ).toBeCloseTo(1, 14);
  });

  it("needs as few steps as the published pair: decay over ten time constants", () => {
    // The same system by an independent package at the same tolerance takes steps of the same order; a wrong weight of the error
    // estimate multiplies them.
    const steps = [1e-6, 1e-9].map(
      (tolerance) =>
        integrateOde({
          derivative: (_, [y]) => [-(y as number)],
          start: 0,
          end: 10,
          initial: [1],
          relativeTolerance: tolerance,
          absoluteTolerance: tolerance,
        }).steps,
    ) as [number, number];
    // Order 5: a thousandth of the tolerance is 1000^(1/5) = 4 times the steps.
    expect(steps[1] / steps[0]).toBeGreaterThan(2.5);
    expect(steps[1] / steps[0]).toBeLessThan(5);
    expect(steps[0]).toBeLessThan(60);
  });

  it("measures an error by the larger end of its step, so that a passage through 0 costs no more steps", () => {
    const steps = (relativeTolerance: number, absoluteTolerance: number) =>
      integrateOde({
        derivative: (_, [y, v]) => [v as number, -(y as number)],
        start: 0,
        end: 40,
        initial: [1, 0],
        relativeTolerance,
        absoluteTolerance,
      }).steps;
    // Where the amplitude is 1, an absolute allowance alone is the whole of it at every place.
    expect(steps(1e-5, 1e-12)).toBeLessThan(1.5 * steps(1e-14, 1e-5));
  });

  it("begins with a hundredth of the time in which the state changes by its own size, or of the whole way", () => {
    const places: number[] = [];
    const first = (rate: number, initial: number, end: number) => {
      places.length = 0;
      integrateOde({
        derivative: (at) => {
          places.push(at);
          return [rate];
        },
        start: 0,
        end,
        initial: [initial],
      });
      // Second stage of the pair: a fifth of the first step.
      return 5 * (places[1] as number);
    };
    expect(first(4, 2, 100)).toBeCloseTo(0.01 * (2 / 4), 12);
    expect(first(0.001, 2, 100)).toBeCloseTo(1, 12);
    expect(first(4, 0, 100)).toBeCloseTo(1, 12);
    expect(first(0, 2, 100)).toBeCloseTo(1, 12);
    expect(first(1e12, 2, 100)).toBeCloseTo(1e-7, 15);
  });
});

describe("Student's t by its series in 1/ν", () => {
  /** ln Γ((ν + 1)/2) − ln Γ(ν/2) − ½·ln(ν/2), by Stirling's series (Abramowitz and Stegun, 6.1.41): ratio to the normal density. */
  const shift = (nu: number) => -1 / (4 * nu) + 1 / (24 * nu ** 3);
  /** Density of t by its definition (26.7.1), from log1p so that no digits go. */
  const density = (t: number, nu: number) =>
    Math.exp(shift(nu) - ((nu + 1) / 2) * Math.log1p((t * t) / nu)) / Math.sqrt(2 * Math.PI);
  /** Integral of the density from 0, by Simpson's rule. */
  const fromZero = (t: number, nu: number) => {
    const n = 2000;
    let sum = density(0, nu) + density(t, nu);
    for (let k = 1; k < n; k += 1) sum += (k % 2 === 1 ? 4 : 2) * density((k * t) / n, nu);
    return (sum * t) / (3 * n);
  };

  it.each([
    [200_000, 1],
    [200_000, 3],
    [150_000, 5],
    [1e6, 2],
    [1e8, 4],
  ])("of %d degrees of freedom at %d is the integral of its density, and back", (degreesOfFreedom, t) => {
    const probability = 0.5 + fromZero(t, degreesOfFreedom);
    expect(studentCumulative({ t, degreesOfFreedom })).toBeCloseTo(probability, 13);
    expect(studentCumulative({ t: -t, degreesOfFreedom })).toBeCloseTo(1 - probability, 13);
    const tail = 0.5 - fromZero(t, degreesOfFreedom);
    if (t > 4) return;
    expect(studentQuantile({ probability: tail, degreesOfFreedom }) / -t).toBeCloseTo(1, 9);
  });
});

/** The elimination of conductance graphs against a dense LU solve of another library (ml-matrix), and against Kirchhoff's current law. */
import { factorConductances, solveConductances } from "electroheat/numeric";
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

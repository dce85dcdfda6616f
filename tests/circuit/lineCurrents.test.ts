/**
 * Branches from line currents: currents made by the complex LU of a general-purpose library (mathjs, stamped in
 * tests/support/nodal.ts) from known branches must give those branches back; and the laws that any answer keeps.
 */
import {
  type BranchesFromCurrents,
  branchesFromLineCurrents,
  deltaFromStar,
  type Network,
  supplyFromLineVoltages,
} from "electroheat/circuit";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite, size } from "../support/close.ts";
import { referenceSolution } from "../support/nodal.ts";

const LINES = ["L1", "L2", "L3"] as const;
type Three = readonly [number, number, number];

const networkOf = (connection: "star" | "delta", ohms: readonly (number | "open")[]): Network => ({
  branches: ohms.map((resistance, k) => ({
    id: `B${k}`,
    from: LINES[k] as string,
    to: connection === "star" ? "S" : (LINES[(k + 1) % 3] as string),
    resistance: resistance as never,
  })),
});

function currentsOf(
  connection: "star" | "delta",
  ohms: readonly (number | "open")[],
  [v12, v23, v31]: Three,
): Three {
  const supply = supplyFromLineVoltages({ v12, v23, v31 } as never);
  return referenceSolution(networkOf(connection, ohms), supply)
    .lines.slice(0, 3)
    .map(size) as unknown as Three;
}

const asked = (
  connection: "star" | "delta",
  [v12, v23, v31]: Three,
  [l1, l2, l3]: Three,
  accuracy?: number,
): BranchesFromCurrents =>
  branchesFromLineCurrents({
    connection,
    v12,
    v23,
    v31,
    l1,
    l2,
    l3,
    ...(accuracy === undefined ? {} : { accuracy }),
  } as never);

const solvedBy = (found: BranchesFromCurrents) => {
  if (found.outcome !== "solved") expect.fail(JSON.stringify(found));
  return found;
};

const three = (one: fc.Arbitrary<number>): fc.Arbitrary<Three> => fc.tuple(one, one, one);
const ohms = three(fc.double({ min: 1, max: 50, noNaN: true }));
const volts = three(fc.double({ min: 340, max: 480, noNaN: true }));
const connections = fc.constantFrom("star", "delta");

describe("branches from line currents", () => {
  it("gives back the branches that a nodal matrix made the currents from", () => {
    let worst = 0;
    fc.assert(
      fc.property(connections, ohms, volts, (connection, truth, v) => {
        const { branches, power } = solvedBy(asked(connection, v, currentsOf(connection, truth, v)));
        branches.forEach(({ resistance, low, high }, k) => {
          const off = Math.abs((resistance as number) / (truth[k] as number) - 1);
          worst = Math.max(worst, off);
          expect(off).toBeLessThan(1e-8);
          expect(low).toBeLessThanOrEqual(resistance as number);
          expect(high === "open" || high >= (resistance as number)).toBe(true);
        });
        // Tellegen: what the branches turn into heat is what the three lines bring at unity power factor.
        const delta =
          connection === "delta"
            ? truth
            : Object.values(deltaFromStar({ r1: truth[0], r2: truth[1], r3: truth[2] } as never));
        const heat = v.reduce((sum, u, k) => sum + (u * u) / (delta[k] as number), 0);
        expect(Math.abs(power / heat - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 1000 },
    );
    console.info(`branchesFromLineCurrents against mathjs lusolve: ${worst.toExponential(1)}`);
  });

  it("keeps the branches when all readings are larger or smaller together", () => {
    const scale = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(connections, ohms, volts, scale, scale, (connection, truth, v, a, b) => {
        const l = currentsOf(connection, truth, v);
        const times = (three: Three, by: number): Three => three.map((x) => x * by) as unknown as Three;
        const found = solvedBy(asked(connection, times(v, a), times(l, b)));
        found.branches.forEach(({ resistance }, k) => {
          expect(Math.abs((resistance as number) / ((truth[k] as number) * (a / b)) - 1)).toBeLessThan(1e-8);
        });
      }),
      { numRuns: 1000 },
    );
  });

  it("reads a star and the delta that draws the same from one set of readings (Kennelly)", () => {
    fc.assert(
      fc.property(ohms, volts, (truth, v) => {
        const l = currentsOf("star", truth, v);
        const delta = deltaFromStar({ r1: truth[0], r2: truth[1], r3: truth[2] } as never);
        const sides = [delta.r12, delta.r23, delta.r31] as unknown as Three;
        solvedBy(asked("delta", v, l)).branches.forEach(({ resistance }, k) => {
          expect(Math.abs((resistance as number) / (sides[k] as number) - 1)).toBeLessThan(1e-8);
        });
      }),
      { numRuns: 1000 },
    );
  });

  it("holds the truth in its bands when clamps read off by less than their accuracy", () => {
    const error = fc.double({ min: -0.02, max: 0.02, noNaN: true });
    const alike = three(fc.double({ min: 8, max: 16, noNaN: true }));
    fc.assert(
      fc.property(
        connections,
        alike,
        volts,
        fc.tuple(error, error, error),
        (connection, truth, v, errors) => {
          const l = currentsOf(connection, truth, v).map(
            (x, k) => x * (1 + (errors[k] as number)),
          ) as unknown as Three;
          // A reading x(1 + e) has its truth within reading/(1 ± 0.02); 0.0205 covers the difference of the two.
          const found = asked(connection, v, l, 0.0205);
          solvedBy(found).branches.forEach(({ low, high }, k) => {
            expect(low).toBeLessThanOrEqual(truth[k] as number);
            expect(high === "open" ? Number.POSITIVE_INFINITY : high).toBeGreaterThanOrEqual(
              truth[k] as number,
            );
          });
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("holds the truth in whatever it says of a star, one arm a hundred times another or not", () => {
    const error = fc.double({ min: -1, max: 1, noNaN: true });
    const arm = fc.oneof(
      fc.double({ min: 1, max: 50, noNaN: true }),
      fc.double({ min: 100, max: 5000, noNaN: true }),
    );
    const met = { solved: 0, near: 0 };
    fc.assert(
      fc.property(
        three(arm),
        volts,
        fc.constantFrom(0.01, 0.02, 0.05),
        fc.tuple(error, error, error),
        (truth, v, accuracy, errors) => {
          // A reading is truth/(1 + e): its truth is the reading times 1 + e, within the accuracy.
          const l = currentsOf("star", truth, v).map(
            (x, k) => x / (1 + accuracy * (errors[k] as number)),
          ) as unknown as Three;
          const found = asked("star", v, l, accuracy);
          if (found.outcome === "solved") {
            met.solved += 1;
            found.branches.forEach(({ low, high }, k) => {
              expect(low).toBeLessThanOrEqual((truth[k] as number) * (1 + 1e-9));
              expect(high === "open" ? Number.POSITIVE_INFINITY : high).toBeGreaterThanOrEqual(
                (truth[k] as number) * (1 - 1e-9),
              );
            });
            return;
          }
          if (found.outcome !== "not told from one open") expect.fail(JSON.stringify(found));
          met.near += 1;
          const { low, high } = found.inSeries;
          const sum = truth.reduce((all, r, k) => all + (LINES[k] === found.least ? 0 : r), 0);
          expect(low).toBeLessThanOrEqual(sum * (1 + 1e-9));
          expect(high === "open" ? Number.POSITIVE_INFINITY : high).toBeGreaterThanOrEqual(sum * (1 - 1e-9));
        },
      ),
      { numRuns: 1000 },
    );
    expect(Math.min(met.solved, met.near)).toBeGreaterThan(20);
  });

  it("does not call an arm open whose line carries current, nor a star with a high arm impossible", () => {
    // Arms of 6.63, 6.63 and 1383 Ω at 480 V draw 36.20, 36.20 and 0.30 A; the first clamp reads half a percent high.
    const found = asked("star", [480, 480, 480], [36.4, 36.2, 0.3], 0.02);
    expect(found).toMatchObject({ outcome: "not told from one open", least: "L3" });
    if (found.outcome !== "not told from one open") return;
    expect(found.inSeries.low).toBeLessThan(13.26);
    expect(found.inSeries.high).toBeGreaterThan(13.26);
  });

  it("has open sides of a delta open, and an open arm of a star by its line", () => {
    const v: Three = [480, 470, 465];
    for (const k of [0, 1, 2]) {
      const truth = [11, 12, 13].map((r, i) => (i === k ? "open" : r)) as (number | "open")[];
      const delta = solvedBy(asked("delta", v, currentsOf("delta", truth, v)));
      delta.branches.forEach(({ resistance, high }, i) => {
        if (i === k) expect(high).toBe("open");
        else expect(Math.abs((resistance as number) / (truth[i] as number) - 1)).toBeLessThan(1e-8);
      });
      const star = asked("star", v, currentsOf("star", truth, v));
      expect(star).toMatchObject({ outcome: "one branch open", open: LINES[k] });
      const sum = truth.reduce<number>((all, r) => all + (r === "open" ? 0 : r), 0);
      if (star.outcome === "one branch open")
        expect(Math.abs((star.inSeries.resistance as number) / sum - 1)).toBeLessThan(1e-8);
    }
  });

  it("a bolted arm of a star reads 0", () => {
    // The other two then lie across a line voltage each: |I2| = V12/R2, |I3| = V31/R3, I1 the two together.
    const [r2, r3] = [8, 8];
    const found = solvedBy(asked("star", [480, 480, 480], [(480 / 8) * Math.sqrt(3), 480 / r2, 480 / r3]));
    expect(found.branches[0]?.resistance).toBeLessThan(1e-6);
    expect(Math.abs((found.branches[1]?.resistance as number) - r2)).toBeLessThan(1e-6);
    expect(Math.abs((found.branches[2]?.resistance as number) - r3)).toBeLessThan(1e-6);
  });

  it("says by name what no three resistances give, at the limit and on either side of it", () => {
    const v: Three = [400, 400, 400];
    // On a balanced supply a triangle of currents with an angle of 120° is a delta with an open side; beyond it there is none.
    const seen = (degrees: number): BranchesFromCurrents =>
      asked("delta", v, [30, 30, 60 * Math.sin((degrees * Math.PI) / 360)]);
    expect(seen(119.9).outcome).toBe("solved");
    expect(solvedBy(seen(120)).branches.map(({ high }) => high === "open")).toContain(true);
    expect(seen(120.1)).toEqual({ outcome: "does not fit", why: "negative resistance" });
    expect(asked("delta", v, [30, 20, 50.1])).toEqual({ outcome: "does not fit", why: "closes no triangle" });
    expect(asked("delta", v, [30, 20, 50.1], 0.02).outcome).toBe("does not fit");
    expect(asked("star", v, [30, 30, 0]).outcome).toBe("one branch open");
    expect(asked("star", v, [0, 0, 0])).toEqual({ outcome: "nothing flows" });
  });

  it("says nothing but finite numbers of whatever a clamp and a voltmeter may show", () => {
    const any = fc.oneof(
      fc.constantFrom(0, 1e-30, 1, 1e30),
      fc.double({ min: 0, max: 100, noNaN: true }).filter((x) => x === 0 || x > 1e-30),
    );
    const shown = three(any);
    fc.assert(
      fc.property(connections, volts, shown, fc.constantFrom(0, 0.02, 0.2), (connection, v, l, accuracy) => {
        expectFinite(asked(connection, v, l, accuracy), JSON.stringify([connection, v, l, accuracy]));
      }),
      { numRuns: 1000 },
    );
  });
});

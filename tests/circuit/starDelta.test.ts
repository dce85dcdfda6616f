/** Star and delta equivalents. Source: A. E. Kennelly, Electrical World and Engineer 34 (1899) 413. */
import {
  type DeltaOf,
  deltaFromStar,
  deltaFromStarImpedance,
  energise,
  type Network,
  type StarOf,
  starFromDelta,
  starFromDeltaImpedance,
  terminalResistance,
} from "electroheat/circuit";
import { type Ohms, type Open, ohms } from "electroheat/quantity";
import fc from "fast-check";
import { complex, divide, multiply, add as plus } from "mathjs";
import { describe, expect, it } from "vitest";
import { apart, topCurrent, topVoltage } from "../support/close.ts";
import { anySeed, Chance, randomCase } from "../support/networks.ts";

const RUNS = { numRuns: 1000 };
const anyOhms = fc.double({ min: 1e-6, max: 1e6, noNaN: true }).map(ohms);
const anyArm = fc.oneof(
  { weight: 4, arbitrary: anyOhms },
  { weight: 1, arbitrary: fc.constant("open" as Open) },
);
const starNetwork = ({ r1, r2, r3 }: StarOf<Ohms | Open>): Network => ({
  branches: [r1, r2, r3].map((resistance, i) => ({ id: `s${i}`, from: `T${i + 1}`, to: "S", resistance })),
});
const deltaNetwork = ({ r12, r23, r31 }: DeltaOf<Ohms | Open>): Network => ({
  branches: [r12, r23, r31].map((resistance, i) => ({
    id: `d${i}`,
    from: `T${i + 1}`,
    to: `T${((i + 1) % 3) + 1}`,
    resistance,
  })),
});
const PAIRS = [
  ["T1", "T2"],
  ["T2", "T3"],
  ["T3", "T1"],
] as const;

function expectSameTerminals(one: Network, two: Network): void {
  for (const [from, to] of PAIRS) {
    const [a, b] = [one, two].map((network) => terminalResistance({ network, from, to }));
    if (a === "open" || b === "open") expect(a).toBe(b);
    else expect(Math.abs((a as number) - (b as number))).toBeLessThanOrEqual(1e-11 * (a as number));
  }
}

describe("star and delta", () => {
  it("read the same at the terminals, opens included", () => {
    fc.assert(
      fc.property(anyArm, anyArm, anyArm, (r1, r2, r3) => {
        expectSameTerminals(starNetwork({ r1, r2, r3 }), deltaNetwork(deltaFromStar({ r1, r2, r3 })));
        const sides = { r12: r1, r23: r2, r31: r3 };
        expectSameTerminals(deltaNetwork(sides), starNetwork(starFromDelta(sides)));
      }),
      RUNS,
    );
  });

  it("read the same with one arm or side of 0 Ω", () => {
    fc.assert(
      fc.property(anyOhms, anyOhms, (a, b) => {
        const star = { r1: ohms(0), r2: a, r3: b };
        expectSameTerminals(starNetwork(star), deltaNetwork(deltaFromStar(star)));
        const sides = { r12: ohms(0), r23: a, r31: b };
        expectSameTerminals(deltaNetwork(sides), starNetwork(starFromDelta(sides)));
      }),
      RUNS,
    );
  });

  it("return to the start", () => {
    fc.assert(
      fc.property(anyOhms, anyOhms, anyOhms, (r1, r2, r3) => {
        const back = starFromDelta(deltaFromStar({ r1, r2, r3 }));
        expect((back.r1 as number) / r1).toBeCloseTo(1, 11);
        expect((back.r2 as number) / r2).toBeCloseTo(1, 11);
        expect((back.r3 as number) / r3).toBeCloseTo(1, 11);
        const sides = deltaFromStar(starFromDelta({ r12: r1, r23: r2, r31: r3 }));
        expect((sides.r12 as number) / r1).toBeCloseTo(1, 11);
        expect((sides.r23 as number) / r2).toBeCloseTo(1, 11);
        expect((sides.r31 as number) / r3).toBeCloseTo(1, 11);
      }),
      RUNS,
    );
  });

  it("stand in for each other inside any network", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed, { smallestJoint: 1e-3 });
        const chance = new Chance(seed);
        const nodes = [...new Set(network.branches.flatMap(({ from, to }) => [from, to]))];
        const first = chance.pick(nodes);
        const second = chance.pick(nodes.filter((node) => node !== first));
        const third = chance.pick(nodes.filter((node) => node !== first && node !== second));
        if (third === undefined) return;
        const star = {
          r1: ohms(chance.spread(0.5, 500)),
          r2: ohms(chance.spread(0.5, 500)),
          r3: ohms(chance.spread(0.5, 500)),
        };
        const at = new Map([
          ["T1", first],
          ["T2", second],
          ["T3", third],
        ]);
        const put = (extra: Network): Network => ({
          branches: [
            ...network.branches,
            ...extra.branches.map((branch) => ({
              ...branch,
              from: at.get(branch.from) ?? "new star point",
              to: at.get(branch.to) ?? "new star point",
            })),
          ],
        });
        const withStar = energise({ network: put(starNetwork(star)), supply });
        const withDelta = energise({ network: put(deltaNetwork(deltaFromStar(star))), supply });
        const top = Math.max(topCurrent(withStar), topCurrent(withDelta));
        network.branches.forEach((_, i) => {
          const [a, b] = [withStar.branches[i]!.currentPhasor, withDelta.branches[i]!.currentPhasor];
          expect(apart(a, b, top)).toBeLessThan(1e-10);
        });
        const gap = Math.abs(withDelta.totalPower - withStar.totalPower);
        expect(gap).toBeLessThan(1e-10 * (withStar.totalPower + top * topVoltage(withStar)));
      }),
      RUNS,
    );
  });

  it("scale, and turn with the terminals", () => {
    fc.assert(
      fc.property(anyOhms, anyOhms, anyOhms, (r1, r2, r3) => {
        const one = deltaFromStar({ r1, r2, r3 });
        const turned = deltaFromStar({ r1: r2, r2: r3, r3: r1 });
        const same = (a: Ohms | Open, b: Ohms | Open) =>
          expect((a as number) / (b as number)).toBeCloseTo(1, 13);
        same(turned.r12, one.r23);
        same(turned.r23, one.r31);
        same(turned.r31, one.r12);
        const scaled = deltaFromStar({ r1: ohms(8 * r1), r2: ohms(8 * r2), r3: ohms(8 * r3) });
        expect(scaled.r12).toBe(8 * (one.r12 as number));
      }),
      RUNS,
    );
  });
});

describe("impedances", () => {
  const anyZ = fc
    .record({
      magnitude: fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
      angle: fc.double({ min: -1.4, max: 1.4, noNaN: true }),
    })
    .map(({ magnitude, angle }) => ({ re: magnitude * Math.cos(angle), im: magnitude * Math.sin(angle) }));

  it("are those of a complex library's own product and quotient (mathjs)", () => {
    fc.assert(
      fc.property(anyZ, anyZ, anyZ, (a, b, c) => {
        const [x, y, z] = [a, b, c].map(({ re, im }) => complex(re, im)) as [never, never, never];
        const arm = divide(multiply(x, z), plus(plus(x, y), z)) as unknown as { re: number; im: number };
        expect(apart(starFromDeltaImpedance({ r12: a, r23: b, r31: c }).r1, arm, 0)).toBeLessThan(1e-12);
      }),
      RUNS,
    );
  });

  it("return to the start", () => {
    fc.assert(
      fc.property(anyZ, anyZ, anyZ, (r1, r2, r3) => {
        const back = starFromDeltaImpedance(deltaFromStarImpedance({ r1, r2, r3 }));
        expect(apart(back.r1, r1, 0)).toBeLessThan(1e-9);
        expect(apart(back.r2, r2, 0)).toBeLessThan(1e-9);
        expect(apart(back.r3, r3, 0)).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it("without a reactive part are the resistances", () => {
    fc.assert(
      fc.property(anyOhms, anyOhms, anyOhms, (r1, r2, r3) => {
        const z = (r: number) => ({ re: r, im: 0 });
        const { r12 } = deltaFromStarImpedance({ r1: z(r1), r2: z(r2), r3: z(r3) });
        expect(r12.im).toBe(0);
        expect(r12.re / (deltaFromStar({ r1, r2, r3 }).r12 as number)).toBeCloseTo(1, 13);
      }),
      RUNS,
    );
  });

  it("in resonance have no equivalent", () => {
    const loop = { r12: { re: 0, im: 5 }, r23: { re: 0, im: -3 }, r31: { re: 0, im: -2 } };
    expect(() => starFromDeltaImpedance(loop)).toThrow(/resonance/);
    // Just off resonance there is one again.
    expect(starFromDeltaImpedance({ ...loop, r31: { re: 1e-9, im: -2 } }).r1.re).toBeCloseTo(1e10, -2);
  });
});

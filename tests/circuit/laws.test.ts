/** Laws that hold for any network, tried on random ones. Source of each law: named beside it; none needs a printed value. */
import {
  type Branch,
  energise,
  type Network,
  type Supply,
  terminalReading,
  terminalResistance,
} from "electroheat/circuit";
import { type Ohms, ohms } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { apart, expectFinite, topCurrent, topVoltage } from "../support/close.ts";
import { anySeed, Chance, type RandomOptions, randomCase } from "../support/networks.ts";

const RUNS = { numRuns: 1000 };
const nodesOf = (network: Network): string[] => [
  ...new Set(network.branches.flatMap(({ from, to }) => [from, to])),
];

function shuffled<T>(items: readonly T[], chance: Chance): T[] {
  const left = [...items];
  const out: T[] = [];
  while (left.length > 0) out.push(...left.splice(chance.whole(0, left.length - 1), 1));
  return out;
}

/** A random network with two different nodes on it. */
function probed(seed: number, options: RandomOptions = {}) {
  const { network } = randomCase(seed, options);
  const chance = new Chance(seed);
  const nodes = nodesOf(network);
  const from = chance.pick(nodes);
  return { network, chance, from, to: chance.pick(nodes.filter((node) => node !== from)) };
}

describe("an energised network", () => {
  it("gives finite numbers and plain data", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        expectFinite(energise(randomCase(seed, { links: true })), `seed ${seed}`);
      }),
      RUNS,
    );
  });

  it("turns into heat what the sources deliver (conservation of energy)", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed, { links: true });
        const found = energise({ network, supply });
        // Lines deliver E·I*; what the source resistances turn into heat is not the network's.
        const delivered = found.lines.reduce((sum, line) => sum + line.power, 0);
        const inSources = found.lines.reduce(
          (sum, { current }, k) => sum + current ** 2 * (supply.lines[k]?.sourceResistance ?? 0),
          0,
        );
        // In a network that draws nothing all of these are rounding: a millionth of V²/500 Ω counts as none.
        const none = 1e-6 * (topVoltage(found) ** 2 / 500);
        const scale = found.lines.reduce((sum, line) => sum + Math.abs(line.power), none) + found.totalPower;
        expect(Math.abs(delivered - inSources - found.totalPower)).toBeLessThanOrEqual(1e-11 * scale);
      }),
      RUNS,
    );
  });

  it("loses no current at any node, links included (Kirchhoff)", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed, { links: true });
        const found = energise({ network, supply });
        const sum = new Map<string, { re: number; im: number }>();
        const add = (node: string, re: number, im: number): void => {
          const old = sum.get(node) ?? { re: 0, im: 0 };
          sum.set(node, { re: old.re + re, im: old.im + im });
        };
        found.branches.forEach(({ currentPhasor: { re, im } }, i) => {
          add(network.branches[i]!.from, -re, -im);
          add(network.branches[i]!.to, re, im);
        });
        for (const { node, currentPhasor } of found.lines) add(node, currentPhasor.re, currentPhasor.im);
        const top = topCurrent(found);
        for (const [node, { re, im }] of sum) {
          expect(Math.hypot(re, im) / top, `seed ${seed} ${node}`).toBeLessThan(1e-11);
        }
      }),
      RUNS,
    );
  });

  it("obeys Ohm's law in every branch", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed, { links: true });
        const found = energise({ network, supply });
        found.branches.forEach(({ voltage, current, power }, i) => {
          const { resistance } = network.branches[i]!;
          if (resistance === "open") {
            expect(current).toBe(0);
            expect(power).toBe(0);
          } else {
            expect(voltage!).toBeCloseTo(current * resistance, 9);
            expect(power).toBeCloseTo(current * current * resistance, 6);
          }
        });
      }),
      RUNS,
    );
  });

  it("scales: k times the voltage is k times every current and k² times every power", () => {
    fc.assert(
      fc.property(anySeed(), fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (seed, k) => {
        const { network, supply } = randomCase(seed);
        const lines = supply.lines.map((line) => ({
          ...line,
          voltage: { re: line.voltage.re * k, im: line.voltage.im * k },
        }));
        const found = energise({ network, supply });
        const scaled = energise({ network, supply: { ...supply, lines } });
        const top = topCurrent(found);
        scaled.branches.forEach((state, i) => {
          const before = found.branches[i]!.currentPhasor;
          const expected = { re: before.re * k, im: before.im * k };
          expect(apart(state.currentPhasor, expected, 1e-3 * k * top)).toBeLessThan(1e-9);
        });
        expect(scaled.totalPower / (k * k)).toBeCloseTo(found.totalPower, 5);
      }),
      RUNS,
    );
  });

  it("does not care for the order of branches, their direction or the names of lines", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed);
        const chance = new Chance(seed);
        const renamed: Record<string, string> = { L1: "L2", L2: "L3", L3: "L1" };
        const name = (node: string): string => renamed[node] ?? node;
        const turned = network.branches.map((branch): Branch => {
          const [from, to] = [name(branch.from), name(branch.to)];
          return chance.happens(0.5) ? { ...branch, from: to, to: from } : { ...branch, from, to };
        });
        const turnedSupply: Supply = {
          lines: shuffled(supply.lines, chance).map((line) => ({ ...line, node: name(line.node) })),
          ...(supply.lost && { lost: supply.lost.map(name) }),
        };
        const found = energise({ network, supply });
        const again = energise({ network: { branches: shuffled(turned, chance) }, supply: turnedSupply });
        const top = topCurrent(found);
        for (const state of again.branches) {
          const before = found.branches.find(({ id }) => id === state.id)!;
          expect(Math.abs(state.current - before.current)).toBeLessThan(
            1e-9 * Math.max(before.current, 1e-3 * top) + 1e-12,
          );
        }
        for (const line of again.lines) {
          const before = found.lines.find(({ node }) => name(node) === line.node)!;
          expect(Math.abs(line.current - before.current)).toBeLessThan(1e-10 * top + 1e-12);
          expect(line.lost).toBe(before.lost);
        }
      }),
      RUNS,
    );
  });

  it("is the sum of what each line does alone (superposition)", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed, { lostLines: false });
        const found = energise({ network, supply });
        const parts = supply.lines.map((_, k) =>
          energise({
            network,
            supply: {
              lines: supply.lines.map((line, j) => (j === k ? line : { ...line, voltage: { re: 0, im: 0 } })),
            },
          }),
        );
        const top = Math.max(...parts.map(topCurrent));
        found.branches.forEach(({ currentPhasor }, i) => {
          const sum = parts.reduce(
            (total, part) => ({
              re: total.re + part.branches[i]!.currentPhasor.re,
              im: total.im + part.branches[i]!.currentPhasor.im,
            }),
            { re: 0, im: 0 },
          );
          expect(apart(currentPhasor, sum, 0.01 * top)).toBeLessThan(1e-9);
        });
      }),
      RUNS,
    );
  });
});

describe("an ohmmeter", () => {
  it("reads the same with the probes swapped (reciprocity)", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, from, to } = probed(seed, { links: true });
        const [there, back] = [
          terminalReading({ network, from, to }),
          terminalReading({ network, from: to, to: from }),
        ];
        if (there.resistance === "open") expect(back.resistance).toBe("open");
        else {
          expect((back.resistance as number) - there.resistance).toBeCloseTo(0, 9);
          there.currentShare.forEach((share, i) => {
            if (share === null) expect(back.currentShare[i]).toBe(null);
            else expect(back.currentShare[i]! + share).toBeCloseTo(0, 8);
          });
        }
      }),
      RUNS,
    );
  });

  it("transfers the same both ways: V at one pair for current at another (reciprocity of transfer)", () => {
    // Taken from the shares: the drop at branch j for 1 A through branch i's ends is that at i for 1 A through j's.
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, chance } = probed(seed, { opens: 0 });
        const [i, j] = [
          chance.whole(0, network.branches.length - 1),
          chance.whole(0, network.branches.length - 1),
        ];
        const [a, b] = [network.branches[i]!, network.branches[j]!];
        const drop = (through: Branch, at: number): number =>
          terminalReading({ network, from: through.from, to: through.to }).currentShare[at]! *
          (network.branches[at]!.resistance as number);
        const [forth, back] = [drop(a, j), drop(b, i)];
        expect(Math.abs(forth - back)).toBeLessThan(1e-9 * Math.max(1e-3, Math.abs(forth), Math.abs(back)));
      }),
      RUNS,
    );
  });

  it("reads the power that one ampere makes: Σ share²·R (Joule)", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, from, to } = probed(seed, { links: true });
        const { resistance, currentShare } = terminalReading({ network, from, to });
        const heat = currentShare.reduce<number>((sum, share, i) => {
          const r = network.branches[i]!.resistance;
          return r === "open" || share === null ? sum : sum + share * share * r;
        }, 0);
        if (resistance === "open") expect(heat).toBe(0);
        else expect(Math.abs(heat - resistance)).toBeLessThan(1e-10 * resistance + 1e-15);
      }),
      RUNS,
    );
  });

  it("hangs on each branch by the square of the share (Cohn), against central differences", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, from, to, chance } = probed(seed, { smallestJoint: 1e-3 });
        const reading = terminalReading({ network, from, to });
        const at = chance.whole(0, network.branches.length - 1);
        const r = network.branches[at]!.resistance;
        if (reading.resistance === "open" || r === "open") return;
        const step = 1e-3;
        const read = (factor: number): number => {
          const branches = network.branches.map((branch, i) =>
            i === at ? { ...branch, resistance: (r * factor) as Ohms } : branch,
          );
          return terminalResistance({ network: { branches }, from, to }) as number;
        };
        const slope = (read(1 + step) - read(1 - step)) / (2 * step * r);
        const share = reading.currentShare[at]!;
        // The difference quotient is off by step² of itself, and by the rounding of the readings over the step.
        const allowed = 4 * step * step * share * share + (1e-15 * reading.resistance) / (step * r) + 1e-15;
        expect(Math.abs(slope - share * share)).toBeLessThan(allowed * 10);
      }),
      RUNS,
    );
  });

  it("never reads less when a branch rises or opens (Rayleigh's monotonicity law)", () => {
    fc.assert(
      fc.property(anySeed(), fc.double({ min: 1, max: 1e6, noNaN: true }), (seed, factor) => {
        const { network, from, to, chance } = probed(seed);
        const at = chance.whole(0, network.branches.length - 1);
        const before = terminalResistance({ network, from, to });
        const raised = network.branches.map((branch, i): Branch => {
          if (i !== at || branch.resistance === "open") return branch;
          return {
            ...branch,
            resistance: factor > 9e5 ? "open" : ohms((branch.resistance as number) * factor),
          };
        });
        const after = terminalResistance({ network: { branches: raised }, from, to });
        if (before === "open") expect(after).toBe("open");
        else if (after !== "open") expect(after).toBeGreaterThanOrEqual(before * (1 - 1e-12));
      }),
      RUNS,
    );
  });

  it("finds every branch's own resistance summing to nodes less parts: Σ R_ab/R = n − c (Foster)", () => {
    // R. M. Foster, The average impedance of an electrical network, Reissner Anniversary Volume (1949) 333.
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network } = randomCase(seed, { banks: 2 });
        const closed = network.branches.filter(({ resistance }) => resistance !== "open");
        const only: Network = { branches: closed };
        const nodes = nodesOf(only);
        const part = new Map(nodes.map((node) => [node, node]));
        const find = (node: string): string => {
          const up = part.get(node)!;
          return up === node ? node : find(up);
        };
        for (const { from, to } of closed) part.set(find(from), find(to));
        const parts = new Set(nodes.map(find)).size;
        const sum = closed.reduce((total, { from, to, resistance }) => {
          const between = terminalResistance({ network: only, from, to }) as number;
          return total + between / (resistance as number);
        }, 0);
        expect(sum).toBeCloseTo(nodes.length - parts, 6);
      }),
      { numRuns: 300 },
    );
  });

  it("obeys the triangle inequality: R_ac ≤ R_ab + R_bc", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, from, to, chance } = probed(seed);
        const via = chance.pick(nodesOf(network).filter((node) => node !== from && node !== to));
        if (via === undefined) return;
        const read = (a: string, b: string) => {
          const r = terminalResistance({ network, from: a, to: b });
          return r === "open" ? Number.POSITIVE_INFINITY : r;
        };
        expect(read(from, to)).toBeLessThanOrEqual((read(from, via) + read(via, to)) * (1 + 1e-12));
      }),
      RUNS,
    );
  });
});

describe("limits", () => {
  const replaced = (network: Network, at: number, resistance: Branch["resistance"]): Network => ({
    branches: network.branches.map((branch, i) => (i === at ? { ...branch, resistance } : branch)),
  });

  it("0 Ω is where ever smaller resistances go", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed, { smallestJoint: 1e-3 });
        const at = network.branches.findIndex(({ role }) => role === "joint");
        if (at < 0) return;
        const link = energise({ network: replaced(network, at, ohms(0)), supply });
        const tiny = energise({ network: replaced(network, at, ohms(1e-9)), supply });
        const [volt, amp] = [topVoltage(link), topCurrent(link)];
        link.branches.forEach((state, i) => {
          expect(apart(state.currentPhasor, tiny.branches[i]!.currentPhasor, amp)).toBeLessThan(1e-5);
        });
        link.nodes.forEach(({ voltagePhasor }, i) => {
          const other = tiny.nodes[i]!.voltagePhasor;
          if (voltagePhasor === null) expect(other).toBe(null);
          else expect(apart(voltagePhasor, other!, volt)).toBeLessThan(1e-5);
        });
      }),
      RUNS,
    );
  });

  it("open is where ever larger resistances go", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, supply } = randomCase(seed, { smallestJoint: 1e-3 });
        const at = new Chance(seed).whole(0, network.branches.length - 1);
        const open = energise({ network: replaced(network, at, "open"), supply });
        const huge = energise({ network: replaced(network, at, ohms(1e13)), supply });
        const amp = Math.max(topCurrent(open), topVoltage(open) / 500);
        open.branches.forEach((state, i) => {
          expect(apart(state.currentPhasor, huge.branches[i]!.currentPhasor, amp)).toBeLessThan(1e-7);
        });
      }),
      RUNS,
    );
  });
});

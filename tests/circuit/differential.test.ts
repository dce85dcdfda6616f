/**
 * The network solve against two programs that share no line with it: a complex LU of a general-purpose library (mathjs
 * `lusolve`, stamped in tests/support/nodal.ts) on 1,000 random networks, and a circuit simulator (ngspice) on 240.
 *
 * What counts as a relative difference. Most values are compared to themselves. A value far below the largest of its
 * kind in the same network is what is left when larger ones cancel (the current through a bridge near balance, the
 * displacement of a star point near symmetry): float64 carries such a remainder to about 1e-16 of the terms, so it is
 * compared to one ten-thousandth of the largest of its kind when it lies below that. In a network that draws nothing
 * the largest current is rounding; currents are then held against the largest voltage over 500 Ω.
 */
import { energise, terminalReading } from "electroheat/circuit";
import { abs, lusolve, type Matrix } from "mathjs";
import { beforeAll, describe, expect, it } from "vitest";
import { Chance, type RandomCase, randomCase } from "../support/networks.ts";
import { hasNgspice, type Phasor, type SimulatedState, simulate } from "../support/ngspice.ts";
import { referenceSolution } from "../support/nodal.ts";

const LIMIT = 1e-9;
const FLOOR = 1e-4;

const size = (z: Phasor): number => Math.hypot(z.re, z.im);
const largest = (values: Iterable<Phasor>): number => Math.max(0, ...[...values].map(size));

/** Worst relative differences met, by kind; each with the seed that makes the network again. */
class Worst {
  readonly kinds = new Map<string, { difference: number; seed: number; compared: number }>();
  note(kind: string, seed: number, got: Phasor, reference: Phasor, top: number): void {
    const scale = Math.max(size(reference), FLOOR * top);
    const gap = size({ re: got.re - reference.re, im: got.im - reference.im });
    const difference = gap === 0 ? 0 : gap / scale;
    const known = this.kinds.get(kind) ?? { difference: -1, seed, compared: 0 };
    known.compared += 1;
    if (!(difference <= known.difference)) {
      known.difference = difference;
      known.seed = seed;
    }
    this.kinds.set(kind, known);
  }
  report(what: string): void {
    const rows = [...this.kinds].map(
      ([kind, { difference, seed, compared }]) =>
        `${kind} ${difference.toExponential(1)} (${compared} compared, worst seed ${seed})`,
    );
    console.info(`${what}: ${rows.join("; ")}`);
  }
}

describe("1,000 random networks against a complex LU solve", () => {
  const worst = new Worst();
  const seeds = Array.from({ length: 1000 }, (_, i) => i + 1);
  const shapes = { joints: 0, opens: 0, floating: 0, lost: 0, neutral: 0, sources: 0, smallest: 1 };

  beforeAll(() => {
    for (const seed of seeds) {
      const { network, supply } = randomCase(seed);
      const found = energise({ network, supply });
      const reference = referenceSolution(network, supply);
      const topVoltage = largest(reference.voltage.values());
      const topCurrent = Math.max(largest(reference.current.values()), topVoltage / 500);
      const zero = { re: 0, im: 0 };
      for (const { node, voltagePhasor } of found.nodes) {
        const expected = reference.voltage.get(node);
        if (expected === undefined) {
          shapes.floating += 1;
          expect(voltagePhasor, `seed ${seed} node ${node}`).toBe(null);
        } else worst.note("node voltage", seed, voltagePhasor ?? zero, expected, topVoltage);
      }
      found.branches.forEach((state, i) => {
        const { resistance, role } = network.branches[i]!;
        const expected = reference.current.get(state.id)!;
        const kind = role === "joint" ? "joint" : "element";
        worst.note(`${kind} current`, seed, state.currentPhasor, expected, topCurrent);
        if (resistance === "open") return;
        if (role === "joint") shapes.smallest = Math.min(shapes.smallest, resistance);
        // R times the reference's current, so that a micro-ohm joint is not read from a difference of two node voltages.
        const across = { re: expected.re * resistance, im: expected.im * resistance };
        worst.note(`${kind} voltage`, seed, state.voltagePhasor ?? zero, across, topCurrent * resistance);
        const heat = { re: size(expected) ** 2 * resistance, im: 0 };
        worst.note(`${kind} power`, seed, { re: state.power, im: 0 }, heat, topCurrent ** 2 * resistance);
      });
      found.lines.forEach((line, k) => {
        worst.note("line current", seed, line.currentPhasor, reference.lines[k]!, topCurrent);
      });
      shapes.joints += network.branches.filter(({ role }) => role === "joint").length;
      shapes.opens += network.branches.filter(({ resistance }) => resistance === "open").length;
      shapes.lost += supply.lost === undefined ? 0 : 1;
      shapes.neutral += supply.lines.length === 4 ? 1 : 0;
      shapes.sources += supply.lines[0]?.sourceResistance === undefined ? 0 : 1;
    }
    worst.report("energise against mathjs lusolve");
  });

  it("were of many shapes", () => {
    expect(shapes.joints).toBeGreaterThan(1500);
    expect(shapes.opens).toBeGreaterThan(1000);
    expect(shapes.floating).toBeGreaterThan(5);
    expect(shapes.lost).toBeGreaterThan(80);
    expect(shapes.neutral).toBeGreaterThan(300);
    expect(shapes.sources).toBeGreaterThan(300);
    expect(shapes.smallest).toBeLessThan(2e-6);
  });

  it.each([
    "node voltage",
    "element current",
    "element voltage",
    "element power",
    "joint current",
    "joint voltage",
    "joint power",
    "line current",
  ])("%s agrees", (kind) => {
    const { difference, seed, compared } = worst.kinds.get(kind)!;
    expect(compared).toBeGreaterThan(1000);
    expect(difference, `seed ${seed}`).toBeLessThan(LIMIT);
  });
});

describe("the ohmmeter against an LU solve", () => {
  it("agrees on 1,000 random pairs of nodes", () => {
    let compared = 0;
    let worst = 0;
    for (let seed = 1; seed <= 1000; seed += 1) {
      // Joints from 1 mΩ: the plain nodal matrix of this check subtracts, and would lose the micro-ohms itself.
      const { network } = randomCase(seed, { smallestJoint: 1e-3 });
      const nodes = [...new Set(network.branches.flatMap(({ from, to }) => [from, to]))];
      const chance = new Chance(seed);
      const from = chance.pick(nodes);
      const to = chance.pick(nodes.filter((node) => node !== from));
      const reading = terminalReading({ network, from, to }).resistance;
      // What hangs together with `from`, so that the matrix is not singular.
      const together = new Set([from]);
      for (let before = 0; before !== together.size; ) {
        before = together.size;
        for (const branch of network.branches) {
          if (branch.resistance === "open") continue;
          if (together.has(branch.from)) together.add(branch.to);
          else if (together.has(branch.to)) together.add(branch.from);
        }
      }
      if (!together.has(to)) {
        expect(reading, `seed ${seed}`).toBe("open");
        continue;
      }
      const free = [...together].filter((node) => node !== to);
      const row = new Map(free.map((node, i) => [node, i]));
      const matrix = free.map(() => new Array<number>(free.length).fill(0));
      for (const branch of network.branches) {
        if (branch.resistance === "open" || !together.has(branch.from)) continue;
        const [a, b] = [row.get(branch.from), row.get(branch.to)];
        const g = 1 / branch.resistance;
        if (a !== undefined) matrix[a]![a]! += g;
        if (b !== undefined) matrix[b]![b]! += g;
        if (a !== undefined && b !== undefined) {
          matrix[a]![b]! -= g;
          matrix[b]![a]! -= g;
        }
      }
      const solved = lusolve(
        matrix as unknown as Matrix,
        free.map((node) => [node === from ? 1 : 0]) as unknown as Matrix,
      ) as unknown as number[][];
      const expected = solved[row.get(from)!]![0]!;
      worst = Math.max(worst, abs((reading as number) / expected - 1));
      compared += 1;
    }
    console.info(`terminalReading against mathjs lusolve: ${worst.toExponential(1)} (${compared} compared)`);
    expect(compared).toBeGreaterThan(900);
    expect(worst).toBeLessThan(LIMIT);
  });
});

const present = hasNgspice();
const SIMULATED = 240;
if (!present)
  console.warn(`ngspice is not installed: ${SIMULATED} comparisons with the circuit simulator are skipped`);

describe(`${SIMULATED} random networks against a circuit simulator (ngspice .ac)`, () => {
  // The simulator's own matrix subtracts and keeps about 2⁻⁵² · 500 Ω over the smallest joint, 1e-7 at 1 µΩ. The first 60 happen to
  // stay far from that; of seeds 5063 and 5197 drawn like them the matrix library bears out energise to 1e-15 and the simulator is
  // off by 4e-9. The others begin at 0.1 mΩ, where it holds the limit; joints from 1 µΩ are for the matrix library, above.
  const cases = Array.from({ length: SIMULATED }, (_, i): RandomCase & { readonly seed: number } => {
    const seed = 5001 + i;
    return { seed, ...randomCase(seed, { smallestJoint: i < 60 ? 1e-6 : 1e-4 }) };
  });
  const worst = new Worst();
  let simulated: readonly SimulatedState[] = [];
  beforeAll(() => {
    if (present) simulated = simulate(cases);
    return () => worst.report("energise against ngspice");
  });

  it.skipIf(!present).each(cases.map(({ seed }, i) => [seed, i] as const))("seed %i", (seed, i) => {
    const { network, supply } = cases[i]!;
    const { voltage, lines } = simulated[i]!;
    const found = energise({ network, supply });
    const own = new Worst();
    const topVoltage = largest(voltage.values());
    const topCurrent = Math.max(largest(lines.values()), topVoltage / 500);
    const zero = { re: 0, im: 0 };
    for (const kinds of [own, worst]) {
      for (const { node, voltagePhasor } of found.nodes) {
        const expected = voltage.get(node);
        if (expected === undefined) expect(voltagePhasor, node).toBe(null);
        else kinds.note("node voltage", seed, voltagePhasor ?? zero, expected, topVoltage);
      }
      for (const line of found.lines) {
        kinds.note("line current", seed, line.currentPhasor, lines.get(line.node) ?? zero, topCurrent);
      }
    }
    for (const [kind, { difference }] of own.kinds) expect(difference, kind).toBeLessThan(LIMIT);
  });
});

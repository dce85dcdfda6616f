/** Builders, joints, links and cut-off parts. Sources: series and parallel laws, Kirchhoff's laws. */
import {
  balancedSupply,
  buildModule,
  energise,
  type ModulePlan,
  type Network,
  reconnected,
  terminalReading,
  terminalResistance,
  withJoint,
  withoutLines,
  withResistance,
} from "electroheat/circuit";
import { type Ohms, ohms, volts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Chance } from "../support/networks.ts";

const supply = balancedSupply({ lineVoltage: volts(480) });
const anyOhms = fc.double({ min: 0.5, max: 500, noNaN: true }).map(ohms);
const anyJoint = fc.double({ min: 1e-6, max: 1, noNaN: true }).map(ohms);
const LINES = ["L1", "L2", "L3"] as const;

const anyBank = fc.record({
  connection: fc.constantFrom("star", "delta"),
  elementResistance: anyOhms,
  elementsInParallel: fc.integer({ min: 1, max: 5 }),
  elementsInSeries: fc.integer({ min: 1, max: 3 }),
});
const anyPlan = fc
  .record({
    banks: fc.array(anyBank, { minLength: 1, maxLength: 4 }),
    starPoints: fc.constantFrom("tied", "separate"),
    neutral: fc.constantFrom("connected", "floating"),
  })
  .map(({ banks, starPoints, neutral }): ModulePlan => {
    const named = banks.map((bank, i) => ({ id: "ABCD".charAt(i), ...bank }));
    const star = banks.some(({ connection }) => connection === "star");
    return { banks: named, starPoints, neutral: star ? neutral : "floating" } as ModulePlan;
  });

describe("buildModule", () => {
  it("gives 3·parallel·series elements per bank, each named once and placed", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { network, elements } = buildModule(plan);
        const count = plan.banks.reduce(
          (sum, { elementsInParallel = 1, elementsInSeries = 1 }) =>
            sum + 3 * elementsInParallel * elementsInSeries,
          0,
        );
        expect(elements).toHaveLength(count);
        expect(new Set(network.branches.map(({ id }) => id)).size).toBe(count);
        expect(elements.map(({ id }) => id)).toEqual(network.branches.map(({ id }) => id));
      }),
      { numRuns: 1000 },
    );
  });

  it("draws Σ V²/R in star and Σ 3V²/R in delta, R = series·element/parallel", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const expected = plan.banks.reduce((sum, bank) => {
          const { connection, elementResistance, elementsInParallel = 1, elementsInSeries = 1 } = bank;
          const branch = (elementResistance * elementsInSeries) / elementsInParallel;
          return sum + ((connection === "star" ? 1 : 3) * 480 * 480) / branch;
        }, 0);
        const found = energise({ network: buildModule(plan).network, supply });
        expect(found.totalPower / expected).toBeCloseTo(1, 11);
        for (const { node, current } of found.lines) {
          const line = node === "N" ? 0 : expected / (Math.sqrt(3) * 480);
          expect(Math.abs(current - line)).toBeLessThan(1e-9 * expected);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("draws exactly 3 times when every star is reconnected in delta, and every line to line reading is a third", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const star = { ...reconnected({ plan, connection: "star" }), neutral: "floating" } as ModulePlan;
        const delta = reconnected({ plan: star, connection: "delta" });
        const [before, after] = [star, delta].map((one) => buildModule(one).network) as [Network, Network];
        const ratio =
          energise({ network: after, supply }).totalPower / energise({ network: before, supply }).totalPower;
        expect(ratio).toBeCloseTo(3, 11);
        const read = (network: Network): number =>
          terminalResistance({ network, from: "L1", to: "L2" }) as number;
        expect(read(before) / read(after)).toBeCloseTo(3, 11);
      }),
      { numRuns: 1000 },
    );
  });

  it("returns to the plan it came from", () => {
    const plan: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7) }] };
    const there = reconnected({ plan, connection: "delta", bank: "A" });
    expect(reconnected({ plan: there, connection: "star" })).toEqual(plan);
    expect(plan.banks[0]!.connection).toBe("star");
  });

  it("reads 2R/3 from a line to its own star point, two stars tied at the lines only; 1/n + … for more", () => {
    // n equal stars: own branch R beside the path through the other two lines, R/2 + (R + R/2)/(n − 1) for n ≥ 2.
    fc.assert(
      fc.property(anyOhms, fc.integer({ min: 2, max: 6 }), (r, n) => {
        const banks = Array.from({ length: n }, (_, i) => ({
          id: `B${i}`,
          connection: "star" as const,
          elementResistance: r,
        }));
        const { network, starPoints } = buildModule({ banks, starPoints: "separate" });
        const around = r / 2 + (1.5 * r) / (n - 1);
        const reading = terminalResistance({ network, from: "L1", to: starPoints["B0"]! }) as number;
        expect(reading / ((r * around) / (r + around))).toBeCloseTo(1, 12);
        if (n === 2) expect(reading / r).toBeCloseTo(2 / 3, 12);
      }),
      { numRuns: 1000 },
    );
  });

  it("puts measured values and opens on the elements named", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "star", elementResistance: ohms(8), elementsInParallel: 2 }],
      elements: { "A-L1-2": "open", "A-L3-1": ohms(7.5) },
    });
    expect(network.branches.map(({ resistance }) => resistance)).toEqual([8, "open", 8, 8, 7.5, 8]);
  });

  it("stacks joints outwards: the later one lies nearer the supply and carries what the earlier ones carry", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "star", elementResistance: ohms(8), elementsInParallel: 2 }],
      joints: [
        { id: "lug", at: "L1", behind: ["A-L1-1"], resistance: ohms(0.1) },
        { id: "stud", at: "L1", resistance: ohms(0.01) },
        { id: "bar", at: "S", behind: ["A-L3"], resistance: ohms(0.02), role: "jumper bar" },
      ],
    });
    const { branches } = energise({ network, supply });
    const current = (id: string): number => branches.find((branch) => branch.id === id)!.current;
    expect(current("lug")).toBeCloseTo(current("A-L1-1"), 10);
    expect(current("stud")).toBeCloseTo(current("lug") + current("A-L1-2"), 10);
    expect(current("bar")).toBeCloseTo(current("A-L3-1") + current("A-L3-2"), 10);
    // Series and parallel by hand: L1 side 0.01 + (8.1 ∥ 8), L2 side 4.
    const reading = terminalResistance({ network, from: "L1", to: "L2" }) as number;
    expect(reading).toBeCloseTo(0.01 + (8.1 * 8) / 16.1 + 4, 12);
  });
});

describe("withJoint", () => {
  it("adds in series: what is read through it rises by its resistance", () => {
    fc.assert(
      fc.property(anyPlan, anyJoint, fc.constantFrom(...LINES), (plan, joint, at) => {
        const { network } = buildModule(plan);
        const other = at === "L1" ? "L2" : "L1";
        const before = terminalResistance({ network, from: at, to: other }) as number;
        const jointed = withJoint({ network, at, id: "J", resistance: joint });
        const after = terminalResistance({ network: jointed, from: at, to: other }) as number;
        expect(Math.abs(after - before - joint)).toBeLessThan(1e-12 * after);
        expect(network.branches.some(({ id }) => id === "J")).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });

  it("broken cuts off what is behind it, and 0 Ω changes nothing", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { network } = buildModule(plan);
        const read = (one: Network) => terminalResistance({ network: one, from: "L1", to: "L2" });
        const cut = withJoint({ network, at: "L1", id: "J", resistance: "open" });
        expect(read(cut)).toBe("open");
        const ideal = withJoint({ network, at: "L1", id: "J", resistance: ohms(0) });
        expect((read(ideal) as number) / (read(network) as number)).toBeCloseTo(1, 12);
        expect(energise({ network: cut, supply }).totalPower).toBeLessThan(
          energise({ network, supply }).totalPower,
        );
        expect(energise({ network: ideal, supply }).totalPower).toBeCloseTo(
          energise({ network, supply }).totalPower,
          4,
        );
      }),
      { numRuns: 300 },
    );
  });

  describe("at a node that no line feeds", () => {
    const two: ModulePlan = {
      banks: ["A", "B"].map((id) => ({ id, connection: "star", elementResistance: ohms(12) })),
      starPoints: "tied",
    };
    const bar = (behind?: readonly string[]) => ({
      id: "bar",
      at: "S",
      resistance: "open" as const,
      ...(behind && { behind }),
    });

    it("is refused with everything on one side, with what to write instead", () => {
      const { network } = buildModule(two);
      for (const behind of [undefined, ["A", "B"]]) {
        expect(() => buildModule({ ...two, joints: [bar(behind)] })).toThrow(
          /joints\.0\.behind: .*some, not all, of A-L1, A-L2, A-L3, B-L1, B-L2, B-L3/,
        );
      }
      expect(() => withJoint({ network, ...bar() })).toThrow(/behind: .*A-L1.*no line feeds S/);
    });

    it("opened between two star points parts them: an open element then stresses its own bank only", () => {
      const elements = { "A-L1": "open" as const };
      const power = (plan: ModulePlan): number =>
        energise({ network: buildModule({ ...plan, elements }).network, supply }).totalPower;
      const parted = power({ ...two, joints: [bar(["A"])] });
      const separate = power({ ...two, starPoints: "separate" });
      expect(parted / separate).toBeCloseTo(1, 12);
      // Tied: the survivor beside the open branch keeps the common point nearer the middle.
      expect(power(two) / separate).toBeGreaterThan(1.01);
    });

    it("changes something whenever it is opened, wherever the builder takes it", () => {
      let taken = 0;
      fc.assert(
        fc.property(anyPlan, fc.nat(), fc.nat(), fc.boolean(), (plan, where, which, all) => {
          const { network } = buildModule(plan);
          const nodes = [...new Set(network.branches.flatMap(({ from, to }) => [from, to]))];
          const at = nodes[where % nodes.length]!;
          const ending = network.branches.filter(({ from, to }) => from === at || to === at);
          const behind = all ? undefined : [ending[which % ending.length]!.id];
          const joint = { id: "J", at, ...(behind && { behind }), resistance: ohms(1) };
          let made: Network;
          try {
            made = buildModule({ ...plan, joints: [joint] }).network;
          } catch {
            // The only refusal here: all of a node that no line feeds.
            expect(all && !["L1", "L2", "L3", "N"].includes(at)).toBe(true);
            return;
          }
          taken += 1;
          const opened = energise({
            network: withResistance({ network: made, id: "J", resistance: "open" }),
            supply,
          });
          const closed = energise({ network: made, supply });
          const most = Math.max(...closed.branches.map(({ current }) => current));
          const changed = opened.branches.some(
            ({ current }, i) => Math.abs(current - closed.branches[i]!.current) > 1e-6 * most,
          );
          // A symmetric neutral carries nothing: opening it rightly changes nothing.
          if (at !== "N") expect(changed, JSON.stringify({ plan, joint })).toBe(true);
        }),
        { numRuns: 1000 },
      );
      expect(taken).toBeGreaterThan(400);
    });

    it("is taken with everything on one side where `fed` says that a supply of one's own is there", () => {
      const network: Network = {
        branches: [
          { id: "R1", from: "plus", to: "minus", resistance: ohms(10) },
          { id: "R2", from: "plus", to: "minus", resistance: ohms(10) },
        ],
      };
      const joint = { network, at: "plus", id: "J", resistance: ohms(1) };
      expect(() => withJoint(joint)).toThrow(/no line feeds plus/);
      const fed = withJoint({ ...joint, fed: ["plus", "minus"] });
      expect(terminalResistance({ network: fed, from: "plus", to: "minus" })).toBeCloseTo(6, 14);
      // A lone branch end can have nothing but a supply or a probe on its other side.
      const lone: Network = { branches: network.branches.slice(0, 1) };
      expect(
        terminalResistance({ network: withJoint({ ...joint, network: lone }), from: "plus", to: "minus" }),
      ).toBe(11);
    });
  });

  it("carries only the branches said to be behind it", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "delta", elementResistance: ohms(24) }],
    });
    const corner = withJoint({ network, at: "L1", behind: ["A-L1L2"], id: "J", resistance: ohms(0.5) });
    const { branches } = energise({ network: corner, supply });
    // 480 V over 24.5 Ω through the joint; the other side on that line is untouched.
    expect(branches.find(({ id }) => id === "J")!.current).toBeCloseTo(480 / 24.5, 10);
    expect(branches.find(({ id }) => id === "A-L3L1")!.current).toBeCloseTo(20, 10);
  });
});

describe("ideal links", () => {
  const star = (extra: Network["branches"]): Network => ({
    branches: [
      { id: "R1", from: "L1", to: "a", resistance: ohms(12) },
      { id: "R2", from: "L2", to: "b", resistance: ohms(12) },
      { id: "R3", from: "L3", to: "c", resistance: ohms(12) },
      ...extra,
    ],
  });
  const link = (id: string, from: string, to: string) => ({ id, from, to, resistance: ohms(0) }) as const;

  it("in a ring share a star's currents as equal bars would", () => {
    const network = star([link("ab", "a", "b"), link("bc", "b", "c"), link("ca", "c", "a")]);
    const { branches, totalPower } = energise({ network, supply });
    expect(totalPower).toBeCloseTo((480 * 480) / 12, 8);
    // Three equal bars in delta between balanced currents I carry I/√3 each.
    const amps = 480 / Math.sqrt(3) / 12;
    for (const id of ["ab", "bc", "ca"]) {
      const state = branches.find((branch) => branch.id === id)!;
      expect(state.current).toBeCloseTo(amps / Math.sqrt(3), 10);
      expect(state.voltage).toBe(0);
      expect(state.power).toBe(0);
    }
  });

  it("give the same voltages to the last bit in whatever order they are drawn", () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const chance = new Chance(seed);
      const node = (i: number) => `n${i}`;
      const resistive = Array.from({ length: 20 }, (_, i) => {
        // The first ones tie every node to a line; the others lie anywhere.
        const from = i < 8 ? `L${1 + (i % 3)}` : node(chance.whole(0, 7));
        const to = node(i < 8 ? i : chance.whole(0, 7));
        return { id: `R${i}`, from, to: from === to ? "N" : to, resistance: ohms(chance.spread(1, 100)) };
      });
      const links = Array.from({ length: 5 }, (_, i) => {
        const from = chance.whole(0, 7);
        return link(`B${i}`, node(from), node((from + chance.whole(1, 7)) % 8));
      });
      const solved = (drawn: Network["branches"]) => {
        const { branches, nodes } = energise({ network: { branches: [...resistive, ...drawn] }, supply });
        return { resistive: branches.slice(0, resistive.length), nodes };
      };
      const turned = links.map(({ id, from, to }) => link(id, to, from));
      expect(solved([...turned].reverse()), `seed ${seed}`).toEqual(solved(links));
    }
  });

  it("one across another carry half each", () => {
    const network = star([link("ab", "a", "b"), link("bc1", "b", "c"), link("bc2", "b", "c")]);
    const { branches } = energise({ network, supply });
    const [one, two] = ["bc1", "bc2"].map((id) => branches.find((branch) => branch.id === id)!);
    expect(one!.current).toBeCloseTo(480 / Math.sqrt(3) / 24, 10);
    expect(two!.current).toBeCloseTo(one!.current, 12);
  });

  it("give a share of the ohmmeter's current that is not unique, hence null", () => {
    const network = star([link("ab", "a", "b"), link("bc", "b", "c")]);
    const reading = terminalReading({ network, from: "L1", to: "L2" });
    expect(reading.resistance).toBeCloseTo(24, 12);
    expect(reading.currentShare.slice(3)).toEqual([null, null]);
    expect(terminalReading({ network, from: "a", to: "c" }).resistance).toBe(0);
  });

  it("may join lines of one voltage, and lines that are lost", () => {
    const twice = {
      lines: [
        { node: "L1", voltage: { re: 100, im: 0 } },
        { node: "M1", voltage: { re: 100, im: 0 } },
        { node: "L2", voltage: { re: 0, im: 0 } },
      ],
    };
    const network: Network = {
      branches: [
        { id: "tie", from: "L1", to: "M1", resistance: ohms(0) },
        { id: "R", from: "M1", to: "L2", resistance: ohms(10) },
      ],
    };
    const found = energise({ network, supply: twice });
    expect(found.totalPower).toBeCloseTo(100 * 10, 10);
    expect(found.lines.reduce((sum, { power }) => sum + power, 0)).toBeCloseTo(1000, 9);
    const bolted: Network = {
      branches: [
        { id: "tie", from: "L1", to: "L2", resistance: ohms(0) },
        { id: "R", from: "L1", to: "L3", resistance: ohms(10) },
      ],
    };
    const lost = energise({ network: bolted, supply: withoutLines({ supply, lines: ["L1"] }) });
    expect(lost.totalPower).toBeCloseTo((480 * 480) / 10, 8);
  });
});

describe("lost lines and cut-off parts", () => {
  it("a lost line carries nothing and its module side floats at what the module gives it", () => {
    fc.assert(
      fc.property(anyOhms, anyOhms, anyOhms, (r1, r2, r3) => {
        const { network } = buildModule({
          banks: [{ id: "A", connection: "star", elementResistance: r1 }],
          elements: { "A-L2": r2, "A-L3": r3 },
        });
        const found = energise({ network, supply: withoutLines({ supply, lines: ["L1"] }) });
        expect(found.lines[0]).toMatchObject({ node: "L1", current: 0, power: 0, lost: true });
        expect(found.lines.map(({ lost }) => lost)).toEqual([true, ...found.lines.slice(1).map(() => false)]);
        // Two branches in series on one line voltage; L1 floats with the star point.
        expect(found.lines[1]!.current / (480 / (r2 + r3))).toBeCloseTo(1, 12);
        const [line, point] = ["L1", "S"].map((node) => found.nodes.find((one) => one.node === node)!);
        expect(line!.voltage).toBeCloseTo(point!.voltage!, 9);
      }),
      { numRuns: 1000 },
    );
  });

  it("all lines lost leave a dead module whose nodes have no voltage", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "star", elementResistance: ohms(12) }],
    });
    const found = energise({ network, supply: withoutLines({ supply, lines: [...LINES] }) });
    expect(found.totalPower).toBe(0);
    expect(found.nodes.find(({ node }) => node === "S")!.voltage).toBe(null);
  });

  it("names the nodes of a part that nothing ties to the supply", () => {
    const network: Network = {
      branches: [
        { id: "A", from: "L1", to: "L2", resistance: ohms(5) },
        { id: "X", from: "P", to: "Q", resistance: ohms(5) },
      ],
    };
    expect(() => energise({ network, supply })).toThrow(/P, Q/);
    // Cut off by an open branch is a state, not a slip.
    const tied: Network = {
      branches: [...network.branches, { id: "cut", from: "L1", to: "P", resistance: "open" }],
    };
    const found = energise({ network: tied, supply });
    expect(found.nodes.filter(({ voltage }) => voltage === null).map(({ node }) => node)).toEqual(["P", "Q"]);
    expect(found.branches[2]).toMatchObject({ voltage: null, current: 0, power: 0 });
  });

  it("names the links that bolt two lines together", () => {
    const network: Network = {
      branches: [
        { id: "bar-1", from: "L1", to: "x", resistance: ohms(0) },
        { id: "bar-2", from: "x", to: "L2", resistance: ohms(0) },
      ],
    };
    expect(() => energise({ network, supply })).toThrow(/L1 and L2 bolted together through bar-1, bar-2/);
  });
});

describe("withResistance", () => {
  it("changes one branch, any way, and nothing of the given network", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "star", elementResistance: ohms(12) }],
    });
    const copy = structuredClone(network);
    for (const resistance of [ohms(0), ohms(13), "open"] as (Ohms | "open")[]) {
      const changed = withResistance({ network, id: "A-L2", resistance });
      expect(changed.branches.map((branch) => branch.resistance)).toEqual([12, resistance, 12]);
    }
    expect(network).toEqual(copy);
  });
});

/**
 * What a refusal of this room tells: the figures and names of the very case, the unit, and what would have been right; and the limits met
 * exactly. The figures are those of the input, or worked beside them from Ohm's and Kirchhoff's laws.
 */
import {
  type Branch,
  type BranchFault,
  balancedSupply,
  branchesFromLineCurrents,
  buildModule,
  burstDuty,
  burstDutyFromCycles,
  burstFiring,
  burstReadings,
  deltaFromStar,
  deltaFromStarImpedance,
  energise,
  faultEffect,
  faultScan,
  findBranch,
  type ModulePlan,
  type Network,
  negativeSequenceRatio,
  networkResponses,
  oneSidedFiring,
  phaseAngleFiring,
  reconnected,
  type Supply,
  singlePhasing,
  stageBanks,
  starFromDelta,
  starFromDeltaImpedance,
  supplyFromLineVoltages,
  supplyFromNeutralVoltages,
  switchFault,
  symmetricalComponents,
  terminalReading,
  terminalResistance,
  unbalance,
  unbalanceByDefinition,
  withJoint,
  withoutLines,
  withResistance,
} from "electroheat/circuit";
import type { Complex } from "electroheat/numeric";
import { amperes, ohms, volts, type Warning, watts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const refusal = (call: () => unknown) => {
  const [issue] = caught(call).issues;
  return [issue?.code, issue?.path, issue?.expected, issue?.received, issue?.unit];
};
const facts = ({ message: _, ...rest }: Warning) => rest;
const R = (id: string, from: string, to: string, resistance: number | "open" = 10): Branch => ({
  id,
  from,
  to,
  resistance: resistance === "open" ? resistance : ohms(resistance),
});
const star: Network = { branches: [R("A", "L1", "S"), R("B", "L2", "S"), R("C", "L3", "S")] };
const supply = balancedSupply({ lineVoltage: volts(480) });

describe("a supply", () => {
  const energised = (lines: unknown, lost?: unknown) => () =>
    energise({ network: star, supply: { lines, ...(lost === undefined ? {} : { lost }) } as Supply });
  const line = (node: unknown, voltage: unknown = { re: 1, im: 0 }) => ({ node, voltage });

  it("is a list of lines with names used once", () => {
    for (const lines of [undefined, null, [], "L1"])
      expect(refusal(energised(lines)).slice(0, 3)).toEqual(["missing", "supply.lines", "at least one line"]);
    for (const node of [undefined, "", 5])
      expect(refusal(energised([line("L1"), line(node)])).slice(0, 3)).toEqual([
        "missing",
        "supply.lines.1.node",
        "a node's name",
      ]);
    expect(refusal(energised([line("L1"), undefined])).slice(0, 2)).toEqual([
      "missing",
      "supply.lines.1.node",
    ]);
    expect(refusal(energised([line("L1"), line("L2"), line("L1")]))).toEqual([
      "duplicate",
      "supply.lines.2.node",
      "a node used once",
      '"L1"',
      undefined,
    ]);
    expect(refusal(energised([line("L1"), line("L2")], ["L2", "L9"]))).toEqual([
      "unknown-name",
      "supply.lost",
      "one of L1, L2",
      '"L9"',
      undefined,
    ]);
  });

  it("has phasors of two finite parts within what can be measured", () => {
    const told = (voltage: unknown) => refusal(energised([line("L1", voltage)]));
    const expected = "a finite phasor, each part at most 1e30";
    const path = "supply.lines.0.voltage";
    expect(told(null)).toEqual(["missing", path, expected, "undefined", "V"]);
    expect(told({ re: 1 })).toEqual(["missing", path, expected, "undefined", "V"]);
    expect(told({ im: 1 })).toEqual(["missing", path, expected, "undefined", "V"]);
    expect(told({ re: Number.NaN, im: 1 })).toEqual(["not-a-number", path, expected, "NaN", "V"]);
    expect(told({ re: 1, im: Number.NaN })).toEqual(["not-a-number", path, expected, "NaN", "V"]);
    expect(told({ re: 1, im: "2" })).toEqual(["not-a-number", path, expected, '"2"', "V"]);
    for (const part of ["re", "im"])
      for (const size of [1.01e30, -1.01e30]) {
        expect(told({ re: 0, im: 0, [part]: size })[1]).toBe(path);
        const most = [line("L1", { re: 0, im: 0, [part]: Math.sign(size) * 1e30 }), line("L2"), line("L3")];
        expect(energised(most)).not.toThrow();
      }
  });

  it("closes a triangle of line voltages, at the limit too", () => {
    const from = (v12: number, v23: number, v31: number) => () =>
      supplyFromLineVoltages({ v12: volts(v12), v23: volts(v23), v31: volts(v31) });
    for (const [a, b, c] of [
      [480, 240, 240],
      [240, 480, 240],
      [240, 240, 480],
    ] as const) {
      const { lines } = from(a, b, c)();
      for (const { voltage } of lines)
        for (const part of [voltage.re, voltage.im]) expect(Object.is(part, -0)).toBe(false);
      // What was read stands between the lines again; the three lie in one line, with their centroid at the neutral.
      const [l1, l2, l3] = lines.map(({ voltage }) => voltage) as [Complex, Complex, Complex];
      const between = (x: Complex, y: Complex) => Math.hypot(x.re - y.re, x.im - y.im);
      expect([between(l1, l2), between(l2, l3), between(l3, l1)]).toEqual(
        [a, b, c].map((v) => expect.closeTo(v, 9)),
      );
      expect([l1.re + l2.re + l3.re, l1.im + l2.im + l3.im]).toEqual([
        expect.closeTo(0, 9),
        expect.closeTo(0, 9),
      ]);
    }
    // L1 lost in the middle has no angle of its own: the others lie where they go to as it goes to 0.
    for (const [rotation, sign] of [
      ["L1-L2-L3", -1],
      ["L1-L3-L2", 1],
    ] as const) {
      const read = (v23: number) =>
        supplyFromLineVoltages({ v12: volts(240), v23: volts(v23), v31: volts(240), rotation }).lines[1]
          ?.voltage;
      expect(read(480)).toEqual({ re: expect.closeTo(0, 9), im: expect.closeTo(sign * 240, 9) });
      expect(Math.sign(read(479.9999)?.im ?? 0)).toBe(sign);
    }
    expect(refusal(from(481, 240, 240))).toEqual([
      "inconsistent",
      "v12",
      "three voltages that close a triangle (each at most the other two together)",
      '"481, 240, 240 V"',
      undefined,
    ]);
  });

  it("is three magnitudes at three angles, and what it lacks is named by its place", () => {
    const from = (voltages: unknown, degrees?: unknown) => () =>
      supplyFromNeutralVoltages({ voltages, ...(degrees === undefined ? {} : { degrees }) } as never);
    expect(refusal(from([1, 2])).slice(0, 2)).toEqual(["missing", "voltages.2"]);
    expect(refusal(from([1, 2, 3], [0, -120])).slice(0, 2)).toEqual(["missing", "degrees.2"]);
    expect(refusal(from([1, -2, 3])).slice(0, 2)).toEqual(["out-of-range", "voltages.1"]);
    expect(refusal(from([1, -2, 3]))[4]).toBe("V");
    expect(refusal(from([1, 2, 3], [0, Number.NaN, 120]))).toEqual([
      "not-a-number",
      "degrees.1",
      "a finite number",
      "NaN",
      "°",
    ]);
    expect(refusal(from(5)).slice(0, 2)).toEqual(["wrong-type", "voltages"]);
    expect(refusal(from([1, 2, 3], 5)).slice(0, 2)).toEqual(["wrong-type", "degrees"]);
  });

  it("loses lines by name", () => {
    expect(refusal(() => withoutLines({ supply, lines: ["L4"] }))).toEqual([
      "unknown-name",
      "lines",
      "one of L1, L2, L3, N",
      '"L4"',
      undefined,
    ]);
    expect(refusal(() => withoutLines({ supply: {} as Supply, lines: [] })).slice(0, 3)).toEqual([
      "missing",
      "supply",
      "a supply with lines",
    ]);
    expect(refusal(() => withoutLines({ supply: undefined as never, lines: [] })).slice(0, 2)).toEqual([
      "missing",
      "supply",
    ]);
    expect(refusal(() => withoutLines({ supply, lines: "L1" as never })).slice(0, 3)).toEqual([
      "missing",
      "lines",
      "a list of lines",
    ]);
  });

  it("bolted together names lines and links, whichever way their voltages differ", () => {
    const bolted = {
      branches: [...star.branches, R("K1", "L1", "X", 0), R("K2", "X", "L2", 0), R("K3", "L3", "Y", 0)],
    };
    expect(refusal(() => energise({ network: bolted, supply }))).toEqual([
      "short-circuit",
      "network",
      "some resistance between supply lines of different voltage",
      '"L1 and L2 bolted together through K1, K2"',
      undefined,
    ]);
    const two = (one: object, other: object) => () =>
      energise({
        network: bolted,
        supply: {
          lines: [
            { node: "L1", voltage: one },
            { node: "L2", voltage: other },
            { node: "L3", voltage: { re: 0, im: 0 } },
          ],
        } as Supply,
      });
    expect(two({ re: 5, im: 1 }, { re: 5, im: 1 })).not.toThrow();
    for (const other of [
      { re: 6, im: 1 },
      { re: 5, im: 2 },
    ])
      expect(refusal(two({ re: 5, im: 1 }, other))[0]).toBe("short-circuit");
  });
});

describe("a network", () => {
  it("names what it lacks and what is there twice", () => {
    const given = (branches: unknown) => () =>
      terminalResistance({ network: { branches } as Network, from: "L1", to: "S" });
    for (const branches of [undefined, null, "A"])
      expect(refusal(given(branches)).slice(0, 3)).toEqual(["missing", "branches", "a list of branches"]);
    for (const branch of [null, 5, "A"])
      expect(refusal(given([...star.branches, branch])).slice(0, 3)).toEqual([
        "wrong-type",
        "branches.3",
        "a branch",
      ]);
    for (const end of ["id", "from", "to"]) {
      for (const [name, code, expected] of [
        [undefined, "missing", "a name"],
        [null, "missing", "a name"],
        ["", "missing", "a name"],
        [5, "wrong-type", "a name (text)"],
      ] as const)
        expect(refusal(given([{ ...R("A", "L1", "S"), [end]: name }])).slice(0, 3)).toEqual([
          code,
          `branches.0.${end}`,
          expected,
        ]);
    }
    expect(refusal(given([...star.branches, R("B", "L1", "S")])).slice(0, 4)).toEqual([
      "duplicate",
      "branches.3.id",
      "a name used once",
      '"B"',
    ]);
    expect(refusal(given([R("A", "L1", "L1")])).slice(0, 4)).toEqual([
      "inconsistent",
      "branches.0.to",
      "two different nodes",
      '"L1 to L1"',
    ]);
    expect(refusal(given([{ ...R("A", "L1", "S"), role: "fuse" }])).slice(0, 3)).toEqual([
      "unknown-name",
      "branches.0.role",
      "one of element, joint, jumper bar, conductor",
    ]);
    for (const role of ["element", "joint", "jumper bar", "conductor", undefined])
      expect(given([{ ...R("A", "L1", "S"), role }])()).toBe(10);
  });

  it("has resistances from what can be measured up to what can be measured, 0 or open", () => {
    const read = (resistance: unknown) => () =>
      terminalResistance({
        network: { branches: [{ ...R("A", "L1", "S"), resistance } as Branch] },
        from: "L1",
        to: "S",
      });
    for (const value of [0, 1e-30, 1e-9, 9e-10, 1, 1e9, 1.1e9, 1e30]) {
      const found = read(value)() as number;
      expect(Math.abs(found - value)).toBeLessThanOrEqual(4e-16 * value);
    }
    expect(read("open")()).toBe("open");
    for (const value of [-1, 9e-31, 1.1e30])
      expect(refusal(read(value))).toEqual([
        "out-of-range",
        "branches.0.resistance",
        value < 0 ? "0 or more" : "1e-30 to 1e+30",
        String(value),
        "Ω",
      ]);
    expect(refusal(read("OL")).slice(0, 2)).toEqual(["not-a-number", "branches.0.resistance"]);
    expect(refusal(() => withResistance({ network: star, id: "A", resistance: ohms(-1) }))).toEqual([
      "out-of-range",
      "resistance",
      "0 or more",
      "-1",
      "Ω",
    ]);
  });

  it("names the nodes and branches there are where another is asked for", () => {
    const read = (from: string, to: string) => () => terminalReading({ network: star, from, to });
    expect(refusal(read("L9", "S")).slice(0, 4)).toEqual([
      "unknown-name",
      "from",
      "a node of the network: one of L1, S, L2, L3",
      '"L9"',
    ]);
    expect(refusal(read("S", "L9")).slice(0, 3)).toEqual([
      "unknown-name",
      "to",
      "a node of the network: one of L1, S, L2, L3",
    ]);
    expect(refusal(read("S", "S")).slice(0, 4)).toEqual([
      "inconsistent",
      "to",
      "two different nodes",
      '"S to S"',
    ]);
    const many = { branches: Array.from({ length: 60 }, (_, i) => R(`R${i}`, `n${i}`, `n${i + 1}`)) };
    expect(refusal(() => terminalReading({ network: many, from: "x", to: "n0" }))[2]).toMatch(/n38, n39$/);
    expect(refusal(() => findBranch({ network: star, id: "Z" })).slice(0, 4)).toEqual([
      "unknown-name",
      "id",
      "a branch: one of A, B, C",
      '"Z"',
    ]);
    expect(refusal(() => findBranch({ network: null as never, id: "Z" })).slice(0, 2)).toEqual([
      "missing",
      "network",
    ]);
  });

  it("names the nodes that nothing ties to the supply, twelve of them", () => {
    const loose = (count: number) => () =>
      energise({
        network: {
          branches: [
            ...star.branches,
            ...Array.from({ length: count }, (_, i) => R(`X${i}`, `x${i}`, `x${i + 1}`)),
          ],
        },
        supply,
      });
    expect(refusal(loose(1))).toEqual([
      "floating",
      "network",
      "every node tied to one of L1, L2, L3, N by some branch",
      '"nodes x0, x1 tied to none"',
      undefined,
    ]);
    expect(refusal(loose(11))[3]).toBe(
      `"nodes ${Array.from({ length: 12 }, (_, i) => `x${i}`).join(", ")} tied to none"`,
    );
    expect(caught(loose(12)).issues[0]?.received).toContain("x10, x11, …");
    // Open branches tie as well: what is cut off is a state.
    expect(() =>
      energise({ network: { branches: [...star.branches, R("O", "S", "far", "open")] }, supply }),
    ).not.toThrow();
  });
});

describe("a joint", () => {
  it("lies between branches of one node and what feeds it", () => {
    const put = (input: object) => () =>
      withJoint({ network: star, id: "J", resistance: ohms(0.1), at: "S", ...input } as Parameters<
        typeof withJoint
      >[0]);
    expect(refusal(put({ at: "X" })).slice(0, 4)).toEqual([
      "unknown-name",
      "at",
      "a node with branches on it",
      '"X"',
    ]);
    expect(refusal(put({ behind: [] })).slice(0, 2)).toEqual(["unknown-name", "at"]);
    expect(refusal(put({ at: "L1", behind: ["B"] })).slice(0, 4)).toEqual([
      "inconsistent",
      "behind",
      "branches that end at L1",
      '"B"',
    ]);
    expect(refusal(put({}))).toEqual([
      "inconsistent",
      "behind",
      "the branches on one side of the joint: some, not all, of A, B, C (no line feeds S, so nothing else is on its other side)",
      '"all 3"',
      undefined,
    ]);
    expect(refusal(put({ id: "A", behind: ["A"] })).slice(0, 2)).toEqual(["duplicate", "branches.3.id"]);
    const { branches } = put({ at: "L1" })();
    expect(branches.slice(-1)).toEqual([{ id: "J", from: "L1", to: "L1|J", resistance: 0.1, role: "joint" }]);
    expect(branches[0]).toMatchObject({ from: "L1|J", to: "S" });
    // On the other end of a branch as well, and in another role.
    expect(put({ behind: ["B"], role: "jumper bar" })().branches[1]).toMatchObject({ from: "L2", to: "S|J" });
    for (const fed of ["L1", "L2", "L3", "N"]) {
      const bank = { branches: [R("A", fed, "X"), R("B", fed, "X")] };
      expect(() => withJoint({ network: bank, at: fed, id: "J", resistance: ohms(0) }), fed).not.toThrow();
    }
  });
});

describe("a plan", () => {
  const bank = { id: "A", connection: "star", elementResistance: ohms(10) } as const;
  const plan = (change: object) => () => buildModule({ banks: [bank], ...change } as ModulePlan);

  it("names what it lacks, and what contradicts", () => {
    for (const banks of [undefined, [], "A"])
      expect(refusal(plan({ banks })).slice(0, 3)).toEqual(["missing", "banks", "at least one bank"]);
    for (const id of [undefined, "", 5])
      expect(refusal(plan({ banks: [bank, { ...bank, id }] })).slice(0, 3)).toEqual([
        "missing",
        "banks.1.id",
        "a name",
      ]);
    expect(refusal(plan({ banks: [bank, bank] })).slice(0, 4)).toEqual([
      "duplicate",
      "banks.1.id",
      "a name used once",
      '"A"',
    ]);
    expect(refusal(plan({ banks: [{ ...bank, connection: "zigzag" }] })).slice(0, 2)).toEqual([
      "unknown-name",
      "banks.0.connection",
    ]);
    for (const count of ["elementsInParallel", "elementsInSeries"])
      for (const value of [0, 1.5, 10_001])
        expect(refusal(plan({ banks: [{ ...bank, [count]: value }] })).slice(0, 3)).toEqual([
          "out-of-range",
          `banks.0.${count}`,
          "a whole number from 1 to 10000",
        ]);
    expect(
      refusal(plan({ banks: [bank, { ...bank, id: "B" }, { ...bank, id: "C", connection: "delta" }] })).slice(
        0,
        3,
      ),
    ).toEqual(["missing", "starPoints", '"tied" or "separate" (there are 2 star banks)']);
    expect(
      refusal(plan({ neutral: "connected", banks: [{ ...bank, connection: "delta" }] })).slice(0, 3),
    ).toEqual(["inconsistent", "neutral", "a star bank to connect"]);
    expect(refusal(plan({ neutral: "earthed" })).slice(0, 3)).toEqual([
      "unknown-name",
      "neutral",
      "one of connected, floating",
    ]);
    expect(refusal(plan({ starPoints: "loose" })).slice(0, 3)).toEqual([
      "unknown-name",
      "starPoints",
      "one of tied, separate",
    ]);
    expect(refusal(() => buildModule(undefined as never)).slice(0, 2)).toEqual(["missing", "plan"]);
    expect(
      refusal(() => reconnected({ plan: { banks: [bank] }, connection: "delta", bank: "Z" })).slice(0, 3),
    ).toEqual(["unknown-name", "bank", "one of A"]);
  });

  it("has star points as told: the neutral, one for all, one of each bank", () => {
    const points = (change: object) =>
      plan({ banks: [bank, { ...bank, id: "B" }, { ...bank, id: "C", connection: "delta" }], ...change })()
        .starPoints;
    expect(points({ starPoints: "tied" })).toEqual({ A: "S", B: "S" });
    expect(points({ starPoints: "separate" })).toEqual({ A: "S-A", B: "S-B" });
    expect(points({ neutral: "connected" })).toEqual({ A: "N", B: "N" });
    expect(plan({})().starPoints).toEqual({ A: "S" });
  });

  it("names elements by bank, branch, place side by side and place in the string", () => {
    const ids = (change: object) =>
      plan({ banks: [{ ...bank, ...change }] })()
        .elements.map(({ id }) => id)
        .slice(0, 4);
    expect(ids({})).toEqual(["A-L1", "A-L2", "A-L3"]);
    expect(ids({ elementsInParallel: 2 })).toEqual(["A-L1-1", "A-L1-2", "A-L2-1", "A-L2-2"]);
    expect(ids({ elementsInSeries: 2 })).toEqual(["A-L1.1", "A-L1.2", "A-L2.1", "A-L2.2"]);
    expect(ids({ elementsInParallel: 2, elementsInSeries: 2 })).toEqual([
      "A-L1-1.1",
      "A-L1-1.2",
      "A-L1-2.1",
      "A-L1-2.2",
    ]);
    expect(ids({ connection: "delta" })).toEqual(["A-L1L2", "A-L2L3", "A-L3L1"]);
    expect(refusal(plan({ elements: { "A-L9": ohms(5) } })).slice(0, 4)).toEqual([
      "unknown-name",
      "elements.A-L9",
      "an element: one of A-L1, A-L2, A-L3",
      '"A-L9"',
    ]);
    expect(refusal(plan({ elements: { "A-L1": ohms(-5) } }))).toEqual([
      "out-of-range",
      "elements.A-L1",
      "0 or more",
      "-5",
      "Ω",
    ]);
  });

  it("has joints behind which banks, branches or elements of their node lie", () => {
    const joint = (change: object) =>
      plan({ joints: [{ id: "J", at: "L1", resistance: ohms(0.1), ...change }] });
    expect(refusal(joint({ behind: ["A-L2"] })).slice(0, 4)).toEqual([
      "unknown-name",
      "joints.0.behind.0",
      "a bank, branch or element that ends on L1 (there: A-L1)",
      '"A-L2"',
    ]);
    expect(refusal(joint({ at: "S" })).slice(0, 2)).toEqual(["inconsistent", "joints.0.behind"]);
    for (const behind of [undefined, ["A"], ["A-L1"]])
      expect(joint(behind === undefined ? {} : { behind })().network.branches[0]).toMatchObject({
        from: "L1|J",
      });
    const two = plan({
      banks: [{ ...bank, elementsInParallel: 2 }],
      joints: [{ id: "J", at: "L1", resistance: ohms(0.1), behind: ["A-L1-2"] }],
    })();
    expect(two.network.branches.slice(0, 2).map(({ from }) => from)).toEqual(["L1", "L1|J"]);
    // On the neutral, all of it may lie behind a joint.
    const neutral = plan({ neutral: "connected", joints: [{ id: "J", at: "N", resistance: ohms(0.1) }] })();
    expect(neutral.network.branches.map(({ to }) => to)).toEqual(["N|J", "N|J", "N|J", "N|J"]);
    expect(neutral.network.branches.at(-1)).toMatchObject({ from: "N", role: "joint" });
  });
});

describe("faults", () => {
  const effect =
    (...faults: unknown[]) =>
    () =>
      faultEffect({ network: star, supply, faults: faults as BranchFault[] });

  it("are named one by one", () => {
    expect(refusal(effect()).slice(0, 3)).toEqual(["missing", "faults", "at least one fault"]);
    expect(refusal(() => faultEffect({ network: star, supply, faults: "A" as never })).slice(0, 2)).toEqual([
      "missing",
      "faults",
    ]);
    expect(refusal(effect({ kind: "open", id: "A" }, { kind: "bent", id: "B" })).slice(0, 3)).toEqual([
      "unknown-name",
      "faults.1.kind",
      "one of open, short, lost line",
    ]);
    expect(refusal(effect({ kind: "lost line", line: "L9" })).slice(0, 3)).toEqual([
      "unknown-name",
      "faults.0.line",
      "one of L1, L2, L3, N",
    ]);
    expect(refusal(effect({ kind: "open", id: "A" }, { kind: "short", id: "A" })).slice(0, 4)).toEqual([
      "duplicate",
      "faults.1",
      "one fault for each branch",
      '"A"',
    ]);
    expect(refusal(effect({ kind: "open", id: "Z" })).slice(0, 2)).toEqual(["unknown-name", "id"]);
  });

  it("are held against a network that draws power", () => {
    const dead = { branches: [R("A", "L1", "S", "open"), R("B", "L2", "S"), R("C", "L3", "S", "open")] };
    expect(
      refusal(() => faultEffect({ network: dead, supply, faults: [{ kind: "open", id: "B" }] })),
    ).toEqual([
      "inconsistent",
      "network",
      "a healthy network that draws power, to hold the faults against",
      '"0 W"',
      undefined,
    ]);
  });

  it("are scanned by kind and depth", () => {
    const scan = (change: object) => () => faultScan({ network: star, supply, ...change });
    expect(refusal(scan({ kinds: "open" })).slice(0, 3)).toEqual(["missing", "kinds", "a list of kinds"]);
    expect(refusal(scan({ kinds: ["open", "lost line"] })).slice(0, 3)).toEqual([
      "unknown-name",
      "kinds.1",
      "one of open, short",
    ]);
    expect(refusal(scan({ depth: 3 })).slice(0, 3)).toEqual([
      "out-of-range",
      "depth",
      "a whole number from 1 to 2",
    ]);
    expect(refusal(scan({ survivors: "some" })).slice(0, 3)).toEqual([
      "unknown-name",
      "survivors",
      "one of all, worst",
    ]);
    const sets = (change: object) =>
      scan(change)().map(({ faults }) =>
        faults.map((one) => `${one.kind} ${(one as BranchFault).id}`).join(" + "),
      );
    expect(sets({})).toEqual(["open A", "open B", "open C"]);
    expect(sets({ kinds: ["short", "open"] })).toEqual([
      "short A",
      "open A",
      "short B",
      "open B",
      "short C",
      "open C",
    ]);
    expect(sets({ depth: 2 })).toEqual([
      "open A",
      "open B",
      "open C",
      "open A + open B",
      "open A + open C",
      "open B + open C",
    ]);
    expect(sets({ kinds: [] })).toEqual([]);
  });
});

describe("a controller", () => {
  it("cautions of whole bursts only while there are bursts", () => {
    const at = (duty: number) => burstReadings({ onCurrent: amperes(65), duty }).warnings;
    expect([at(0), at(1)]).toEqual([[], []]);
    expect(at(0.6).map(facts)).toEqual([
      { code: "caution", path: "trueRmsClamp", source: "common practice" },
    ]);
    for (const duty of [-0.1, 1.1])
      expect(
        refusal(() => burstFiring({ voltage: volts(480), resistance: ohms(10), duty })).slice(0, 3),
      ).toEqual(["out-of-range", "duty", "0 to 1"]);
    expect(burstDutyFromCycles({ onCycles: 0, offCycles: 5 })).toBe(0);
    expect(burstDutyFromCycles({ onCycles: 5, offCycles: 0 })).toBe(1);
    expect(refusal(() => burstDutyFromCycles({ onCycles: 0, offCycles: 0 })).slice(0, 4)).toEqual([
      "inconsistent",
      "offCycles",
      "a burst of at least one cycle",
      "0",
    ]);
    expect(refusal(() => burstDuty({ meanPower: watts(11), fullPower: watts(10) }))).toEqual([
      "out-of-range",
      "meanPower",
      "0 to 10",
      "11",
      "W",
    ]);
    expect([
      burstDuty({ meanPower: watts(0), fullPower: watts(10) }),
      burstDuty({ meanPower: watts(10), fullPower: watts(10) }),
    ]).toEqual([0, 1]);
  });

  it("cautions of a chopped wave only while it is chopped", () => {
    const at = (firingDegrees: number) =>
      phaseAngleFiring({ voltage: volts(277), resistance: ohms(10), firingDegrees });
    expect([at(0).warnings, at(180).warnings]).toEqual([[], []]);
    expect(at(90).warnings.map(facts)).toEqual([{ code: "caution", path: "harmonics" }]);
    expect(at(180)).toMatchObject({
      rmsVoltage: 0,
      power: 0,
      fundamental: 0,
      lagDegrees: null,
      distortion: null,
      averageClamp: 0,
      thyristorRms: 0,
    });
    expect(at(90).harmonics.map(({ order }) => order)).toEqual([3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25]);
    expect(at(180).harmonics.every(({ current }) => current === 0)).toBe(true);
    const sided = (firingDegrees: number) =>
      oneSidedFiring({ voltage: volts(277), resistance: ohms(10), firingDegrees });
    expect(sided(0)).toMatchObject({ directVoltage: 0, warnings: [], powerFactor: 1 });
    expect(sided(180).warnings.map(facts)).toEqual([
      { code: "caution", path: "directVoltage", source: "rashid-power-electronics" },
    ]);
    // Half a wave: half the power, and √2·V/π on the mean.
    expect(sided(180).power).toBeCloseTo(277 ** 2 / 20, 9);
    expect(sided(180).directVoltage).toBeCloseTo((Math.SQRT2 * 277) / Math.PI, 9);
  });

  it("with a failed switch leaves what conducts, and always a caution", () => {
    const left = (switchedLines: 2 | 3, failure: "shorted" | "open", failed: number) =>
      switchFault({ connection: "star", neutral: "floating", switchedLines, failure, failed });
    // Commanded off, shorted ones conduct; commanded on, open ones do not.
    expect([0, 1, 2, 3].map((n) => left(3, "shorted", n).conductingLines)).toEqual([0, 1, 2, 3]);
    expect([0, 1, 2, 3].map((n) => left(3, "open", n).conductingLines)).toEqual([3, 2, 1, 0]);
    expect([0, 1, 2].map((n) => left(2, "shorted", n).conductingLines)).toEqual([1, 2, 3]);
    expect([0, 1, 2].map((n) => left(2, "open", n).conductingLines)).toEqual([3, 2, 1]);
    for (const switched of [2, 3] as const) {
      const { warnings } = left(switched, "open", 1);
      expect(warnings.map(facts)).toEqual([
        { code: "caution", path: "conductingLines", source: "common practice" },
      ]);
      expect(warnings[0]?.message).toMatch(/prove dead/);
      expect(/third line/.test(warnings[0]?.message ?? "")).toBe(switched === 2);
      expect(refusal(() => left(switched, "open", switched + 1)).slice(0, 3)).toEqual([
        "out-of-range",
        "failed",
        `a whole number from 0 to ${switched}`,
      ]);
    }
  });

  it("single phases by what conducts (superposition of 120° phasors)", () => {
    const at = (
      neutral: "connected" | "floating",
      conductingLines: number,
      connection: "star" | "delta" = "star",
    ) => singlePhasing({ connection, neutral, conductingLines });
    expect([0, 1, 2, 3].map((n) => at("connected", n))).toEqual([
      { powerRatio: 0, lineCurrentRatio: 0, branchPowerRatios: [0, 0, 0], neutralCurrentRatio: 0 },
      { powerRatio: 1 / 3, lineCurrentRatio: 1, branchPowerRatios: [1, 0, 0], neutralCurrentRatio: 1 },
      { powerRatio: 2 / 3, lineCurrentRatio: 1, branchPowerRatios: [1, 1, 0], neutralCurrentRatio: 1 },
      { powerRatio: 1, lineCurrentRatio: 1, branchPowerRatios: [1, 1, 1], neutralCurrentRatio: 0 },
    ]);
    const dead = { powerRatio: 0, lineCurrentRatio: 0, branchPowerRatios: [0, 0, 0], neutralCurrentRatio: 0 };
    for (const connection of ["star", "delta"] as const) {
      expect([at("floating", 0, connection), at("floating", 1, connection)]).toEqual([dead, dead]);
      expect(at("floating", 3, connection)).toEqual({
        ...dead,
        powerRatio: 1,
        lineCurrentRatio: 1,
        branchPowerRatios: [1, 1, 1],
      });
    }
    expect(at("floating", 2)).toEqual({
      ...dead,
      powerRatio: 0.5,
      lineCurrentRatio: Math.sqrt(3) / 2,
      branchPowerRatios: [0.75, 0.75, 0],
    });
    expect(at("floating", 2, "delta").branchPowerRatios).toEqual([1, 0.25, 0.25]);
    expect(refusal(() => at("connected", 2, "delta")).slice(0, 4)).toEqual([
      "inconsistent",
      "neutral",
      "floating: a delta has no star point",
      '"connected"',
    ]);
    expect(refusal(() => at("floating", 4)).slice(0, 3)).toEqual([
      "out-of-range",
      "conductingLines",
      "a whole number from 0 to 3",
    ]);
  });

  it("stages banks up to the demand and no further", () => {
    const stages = ["a", "b", "c"].map((id) => ({ id, power: watts(9000) }));
    const plan = (demand: number, trimmed?: number) =>
      stageBanks({
        stages,
        demand: watts(demand),
        ...(trimmed === undefined ? {} : { trimmed: { id: "t", power: watts(trimmed) } }),
      });
    expect(plan(0)).toEqual({ on: [], trimDuty: 0, delivered: 0, shortfall: 0, excess: 0 });
    expect(plan(9000)).toEqual({ on: ["a"], trimDuty: 0, delivered: 9000, shortfall: 0, excess: 0 });
    expect(plan(9001)).toEqual({
      on: ["a", "b"],
      trimDuty: 0,
      delivered: 18_000,
      shortfall: 0,
      excess: 8999,
    });
    expect(plan(30_000)).toEqual({
      on: ["a", "b", "c"],
      trimDuty: 0,
      delivered: 27_000,
      shortfall: 3000,
      excess: 0,
    });
    expect(plan(9000, 9000)).toEqual({ on: [], trimDuty: 1, delivered: 9000, shortfall: 0, excess: 0 });
    expect(plan(13_500, 9000)).toEqual({
      on: ["a"],
      trimDuty: 0.5,
      delivered: 13_500,
      shortfall: 0,
      excess: 0,
    });
    // A trim smaller than a step leaves a gap, and the step overshoots.
    expect(plan(5000, 1000)).toEqual({ on: ["a"], trimDuty: 0, delivered: 9000, shortfall: 0, excess: 4000 });
  });
});

describe("star, delta and unbalance", () => {
  it("have no equivalent with two shorted arms, without an impedance, in resonance", () => {
    expect(refusal(() => deltaFromStar({ r1: ohms(0), r2: ohms(0), r3: ohms(5) })).slice(0, 3)).toEqual([
      "inconsistent",
      "star",
      "at most one arm of 0 Ω",
    ]);
    const z = (re: number, im: number) => ({ re, im });
    const expected = "a finite impedance, each part at most 1e30";
    const delta = (r12: unknown) => () =>
      starFromDeltaImpedance({ r12, r23: z(1, 0), r31: z(1, 0) } as never);
    expect(refusal(delta(undefined))).toEqual(["missing", "r12", expected, "undefined", "Ω"]);
    expect(refusal(delta(z(1, Number.NaN)))).toEqual(["not-a-number", "r12", expected, "NaN", "Ω"]);
    expect(refusal(delta(z(Number.NaN, 1)))).toEqual(["not-a-number", "r12", expected, "NaN", "Ω"]);
    expect(refusal(delta(z(1, 2e30)))).toEqual(["out-of-range", "r12", expected, "2e+30", "Ω"]);
    expect(refusal(() => starFromDeltaImpedance({ r12: z(0, 1), r23: z(0, -2), r31: z(0, 1) }))).toEqual([
      "inconsistent",
      "delta",
      "impedances whose sum is not 0 (no resonance)",
      "0",
      undefined,
    ]);
    const none = { r1: z(1, 0), r2: z(0, 0), r3: z(1, 0) };
    expect(refusal(() => deltaFromStarImpedance(none))).toEqual([
      "inconsistent",
      "r2",
      "an impedance other than 0",
      "0",
      "Ω",
    ]);
    for (const [call, path] of [
      [starFromDeltaImpedance, "delta"],
      [deltaFromStarImpedance, "star"],
      [deltaFromStar, "star"],
      [starFromDelta, "delta"],
    ] as const)
      expect(refusal(() => call(undefined as never)).slice(0, 2)).toEqual(["missing", path]);
    // j·(1 + 1)·x + j²: with x = −1/2 the products cancel.
    expect(
      refusal(() => deltaFromStarImpedance({ r1: z(0, 1), r2: z(0, 1), r3: z(0, -0.5) })).slice(0, 2),
    ).toEqual(["inconsistent", "star"]);
  });

  it("of phasors names the one that is none, and the system without a positive sequence", () => {
    const x = { re: 1, im: 0 };
    const expected = "a finite phasor, each part at most 1e30";
    expect(refusal(() => symmetricalComponents([x, x] as never)).slice(0, 3)).toEqual([
      "missing",
      "phasors.2",
      expected,
    ]);
    expect(refusal(() => symmetricalComponents([x, { re: Number.NaN, im: 0 }, x])).slice(0, 3)).toEqual([
      "not-a-number",
      "phasors.1",
      expected,
    ]);
    expect(refusal(() => negativeSequenceRatio([x, x, x])).slice(0, 3)).toEqual([
      "inconsistent",
      "phasors",
      "some positive sequence",
    ]);
    // A balanced system of positive sequence has none of the other, to the last digit.
    expect(
      negativeSequenceRatio([x, { re: -0.5, im: -Math.sqrt(3) / 2 }, { re: -0.5, im: Math.sqrt(3) / 2 }]),
    ).toBe(0);
  });

  it("of magnitudes gives each definition its name, and says why one is not told", () => {
    // 230, 232, 225: mean 229; largest deviation 4; spread 7.
    expect(unbalance({ l1: 230, l2: 232, l3: 225 })).toMatchObject({
      mean: 229,
      maxDeviation: expect.closeTo(4 / 229, 14),
      spread: expect.closeTo(7 / 229, 14),
    });
    expect(unbalance({ l1: 3, l2: 1, l3: 1 }).negativeSequence).toBeNull();
    expect(unbalance({ l1: 2, l2: 1, l3: 1 }).negativeSequence).toBeCloseTo(1, 6);
    expect(refusal(() => unbalance({ l1: 0, l2: 0, l3: 0 })).slice(0, 2)).toEqual(["out-of-range", "mean"]);
    expect(refusal(() => unbalance({ l1: 1, l2: -1, l3: 1 })).slice(0, 3)).toEqual([
      "out-of-range",
      "l2",
      "0 or more",
    ]);
    for (const [measured, first, known] of [
      ["line voltages", "line voltage unbalance rate", true],
      ["voltages to neutral", "phase voltage unbalance rate", false],
      ["line currents", "current unbalance rate", false],
    ] as const) {
      const all = unbalanceByDefinition({ l1: 230, l2: 232, l3: 225, measured });
      expect(all.map(({ definition }) => definition)).toEqual([
        first,
        "negative over positive sequence",
        "spread over mean",
      ]);
      const [rate, sequence, spread] = all;
      expect([rate?.value, spread?.value]).toEqual([
        expect.closeTo(4 / 229, 14),
        expect.closeTo(7 / 229, 14),
      ]);
      if (measured === "line voltages")
        expect([sequence?.value !== null, sequence?.reason]).toEqual([known, ""]);
      if (measured === "voltages to neutral")
        expect([sequence?.value, (sequence?.reason ?? "").length > 0]).toEqual([null, true]);
      expect([rate?.reason, spread?.reason]).toEqual(["", ""]);
      for (const { formula, source } of all)
        expect([formula, source].every((text) => text.length > 3)).toBe(true);
    }
  });

  it("of line currents names a triangle of voltages that is none", () => {
    const at =
      (v12: number, l1 = 10) =>
      () =>
        branchesFromLineCurrents({
          connection: "delta",
          v12: volts(v12),
          v23: volts(240),
          v31: volts(240),
          l1: amperes(l1),
          l2: amperes(10),
          l3: amperes(10),
        });
    expect(refusal(at(480))).toEqual([
      "inconsistent",
      "v12",
      "three voltages that close a triangle (each less than the other two together): all lines alive",
      '"480, 240, 240 V"',
      undefined,
    ]);
    expect(at(240)()).toMatchObject({ outcome: "solved" });
    expect(at(240, 0)()).toMatchObject({ outcome: expect.any(String) });
    expect(at(240, 21)()).toEqual({ outcome: "does not fit", why: "closes no triangle" });
  });
});

describe("what a network answers", () => {
  it("keeps parts apart, holds what is held, and refers a free part to its first node", () => {
    const network = {
      branches: [R("A", "1", "2", 4), R("B", "2", "3", 6), R("C", "4", "5", 5), R("O", "3", "4", "open")],
    };
    const found = networkResponses({ network, held: ["1"] });
    expect(found.nodes).toEqual(["1", "2", "3", "4", "5"]);
    expect(found.part).toEqual([0, 0, 0, 3, 3]);
    // One volt at the only held node is one volt wherever it reaches; elsewhere 0.
    expect(found.transfer).toEqual([[1, 1, 1, 0, 0]]);
    // Series resistances to the held node, or to the first node of the part.
    expect(found.impedance.map((row) => row.map((r) => Number(r.toFixed(12))))).toEqual([
      [0, 0, 0, 0, 0],
      [0, 4, 4, 0, 0],
      [0, 4, 10, 0, 0],
      [0, 0, 0, 0, 0],
      [0, 0, 0, 0, 5],
    ]);
    expect(networkResponses({ network }).transfer).toEqual([]);
  });
});

describe("a scan of twins", () => {
  it.each(["star", "delta"] as const)(
    "leaves the effect of each set as if it had been asked alone: %s",
    (connection) => {
      const { network } = buildModule({
        banks: [{ id: "A", connection, elementResistance: ohms(15.36), elementsInParallel: 3 }],
      });
      const scanned = faultScan({ network, supply, kinds: ["open", "short"], depth: 2 });
      // Nine elements, each open or short; any two of different elements.
      expect(scanned).toHaveLength(18 + (18 * 16) / 2);
      for (const found of scanned.filter((_, i) => i < 18 || i % 8 === 3)) {
        const alone = faultEffect({ network, supply, faults: found.faults });
        expect(found).toEqual(alone);
        if (found.outcome === "supply shorted") continue;
        const broken = found.faults.map((one) => (one as BranchFault).id);
        expect(found.survivors.map(({ id }) => id)).toEqual(
          network.branches.map(({ id }) => id).filter((id) => !broken.includes(id)),
        );
      }
    },
  );

  it("three faults and a lost line as well are what they are one after the other", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "delta", elementResistance: ohms(10), elementsInParallel: 2 }],
    });
    const gone = ["A-L1L2-1", "A-L2L3-2", "A-L3L1-1"];
    const three = faultEffect({ network, supply, faults: gone.map((id) => ({ kind: "open" as const, id })) });
    // A delta with half of each side left: half the power, each survivor as before.
    expect(three).toMatchObject({
      outcome: "runs",
      powerRatio: expect.closeTo(0.5, 12),
      worst: { powerRatio: expect.closeTo(1, 12) },
    });
    const lost = faultEffect({
      network,
      supply,
      faults: [
        { kind: "lost line", line: "L3" },
        { kind: "open", id: "A-L1L2-1" },
      ],
    });
    // 480 V over 10 Ω, and over two pairs of 5 Ω in series.
    expect(lost).toMatchObject({
      totalPower: expect.closeTo(480 ** 2 / 10 + 480 ** 2 / 10, 6),
      lines: [{}, {}, { current: 0, currentRatio: 0 }, { current: 0, currentRatio: null }],
    });
  });
});

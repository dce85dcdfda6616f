/**
 * What a refusal of a network tells: the names of the very case, the unit, and what would have been right; the limits met exactly. The
 * figures are those of the input, or worked beside them from Ohm's law.
 */
import {
  type Branch,
  balancedSupply,
  energise,
  findBranch,
  type Network,
  networkResponses,
  terminalReading,
  terminalResistance,
  withJoint,
  withResistance,
} from "electroheat/circuit";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { refusal } from "../support/told.ts";

const R = (id: string, from: string, to: string, resistance: number | "open" = 10): Branch => ({
  id,
  from,
  to,
  resistance: resistance === "open" ? resistance : ohms(resistance),
});
const star: Network = { branches: [R("A", "L1", "S"), R("B", "L2", "S"), R("C", "L3", "S")] };
const supply = balancedSupply({ lineVoltage: volts(480) });

describe("a network", () => {
  it("names what it lacks and what is there twice", () => {
    const given = (branches: unknown) => () =>
      terminalResistance({ network: { branches } as Network, from: "L1", to: "S" });
    for (const branches of [undefined, null, "A"])
      expect(refusal(given(branches)).slice(0, 3)).toEqual([
        "missing",
        "network.branches",
        "a list of branches",
      ]);
    for (const branch of [null, 5, "A"])
      expect(refusal(given([...star.branches, branch])).slice(0, 3)).toEqual([
        "wrong-type",
        "network.branches.3",
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
          `network.branches.0.${end}`,
          expected,
        ]);
    }
    expect(refusal(given([...star.branches, R("B", "L1", "S")])).slice(0, 4)).toEqual([
      "duplicate",
      "network.branches.3.id",
      "a name used once",
      '"B"',
    ]);
    expect(refusal(given([R("A", "L1", "L1")])).slice(0, 4)).toEqual([
      "inconsistent",
      "network.branches.0.to",
      "two different nodes",
      '"L1 to L1"',
    ]);
    expect(refusal(given([{ ...R("A", "L1", "S"), role: "fuse" }])).slice(0, 3)).toEqual([
      "unknown-name",
      "network.branches.0.role",
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
        "network.branches.0.resistance",
        value < 0 ? '0 or more Ω or "open"' : '1e-30 to 1e+30 Ω or "open"',
        String(value),
        "Ω",
      ]);
    expect(refusal(read("OL")).slice(0, 2)).toEqual(["not-a-number", "network.branches.0.resistance"]);
    expect(refusal(() => withResistance({ network: star, id: "A", resistance: ohms(-1) }))).toEqual([
      "out-of-range",
      "resistance",
      '0 or more Ω or "open"',
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
    expect(refusal(put({ id: "A", behind: ["A"] })).slice(0, 2)).toEqual(["duplicate", "id"]);
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

/** Limits and names at the edge of what a network may be: answered by the limit of the law, or refused by name. */
import {
  type Branch,
  balancedSupply,
  deltaFromStar,
  deltaFromStarImpedance,
  energise,
  type Network,
  starFromDelta,
  terminalReading,
  terminalResistance,
  withJoint,
} from "electroheat/circuit";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

describe("star and delta", () => {
  it("three sides of 0 Ω are three arms of 0 Ω", () => {
    // Source: Kennelly 1899; all terminals are one node.
    const none = ohms(0);
    expect(starFromDelta({ r12: none, r23: none, r31: none })).toEqual({ r1: 0, r2: 0, r3: 0 });
  });

  it("one shorted arm leaves the other two as sides and nothing between them; as a network says", () => {
    const delta = deltaFromStar({ r1: ohms(0), r2: ohms(4), r3: ohms(6) });
    expect(delta).toEqual({ r12: 4, r23: "open", r31: 6 });
    // Source: series resistances. Through the star point 4 + 6 Ω lie between terminals 2 and 3.
    const branches: Branch[] = [
      { id: "r12", from: "1", to: "2", resistance: delta.r12 },
      { id: "r23", from: "2", to: "3", resistance: delta.r23 },
      { id: "r31", from: "3", to: "1", resistance: delta.r31 },
    ];
    expect(terminalResistance({ network: { branches }, from: "2", to: "3" })).toBeCloseTo(10, 12);
  });
});

describe("a joint put into a network", () => {
  const many: Network = {
    branches: Array.from({ length: 45 }, (_, i) => ({
      id: `R${i + 1}`,
      from: "L1",
      to: "S",
      resistance: ohms(10),
    })),
  };

  it.each<readonly [string, string, string, string, () => unknown]>([
    [
      "a node that nothing is on",
      "unknown-name",
      "at",
      "a node with branches on it",
      () => withJoint({ network: many, at: "X", id: "J", resistance: ohms(0.01) }),
    ],
    [
      "a node with nothing on its other side; forty names are told",
      "inconsistent",
      "behind",
      "R39, R40, … (no line feeds S",
      () => withJoint({ network: many, at: "S", id: "J", resistance: ohms(0.01) }),
    ],
    [
      "a node whose name is a number",
      "wrong-type",
      "network.branches.0.from",
      "a name (text)",
      () =>
        energise({
          network: { branches: [{ id: "R", from: 1 as never, to: "L2", resistance: ohms(1) }] },
          supply: balancedSupply({ lineVoltage: volts(480) }),
        }),
    ],
  ])("refuses %s", (_what, code, path, allowed, run) => {
    const error = caught(run);
    expect([error.code, error.argument]).toEqual([code, path]);
    expect(error.message).toContain(allowed);
  });
});

describe("a reading between two nodes", () => {
  const branches: Branch[] = [
    { id: "R1", from: "a", to: "b", resistance: ohms(2) },
    { id: "open, drawn the other way", from: "b", to: "a", resistance: "open" },
    { id: "link", from: "b", to: "c", resistance: ohms(0) },
    { id: "loose", from: "d", to: "e", resistance: "open" },
  ];

  it("has no current in what is open, and no negative zero of it", () => {
    // A link of 0 Ω has no current of its own that the resistances say.
    const { resistance, currentShare } = terminalReading({ network: { branches }, from: "a", to: "c" });
    expect(resistance).toBe(2);
    expect(currentShare.map((one) => Object.is(one, 0))).toEqual([false, true, false, true]);
    expect([currentShare[0], currentShare[2]]).toEqual([1, null]);
  });

  it("of two that a link makes one is nothing, and nothing flows elsewhere", () => {
    const { resistance, currentShare } = terminalReading({ network: { branches }, from: "b", to: "c" });
    expect(resistance).toBe(0);
    expect(currentShare).toEqual([0, 0, null, 0]);
  });
});

describe("impedances", () => {
  it("that no meter could tell from nothing are refused in ohms", () => {
    const [small, one] = [
      { re: 0, im: 1e-40 },
      { re: 1, im: 0 },
    ];
    const [issue] = caught(() => deltaFromStarImpedance({ r1: one, r2: small, r3: one })).issues;
    expect([issue?.path, issue?.code, issue?.unit]).toEqual(["r2", "out-of-range", "Ω"]);
  });
});

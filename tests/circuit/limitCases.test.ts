/** Limits and names at the edge of what a network may be: answered by the limit of the law, or refused by name. */
import {
  type Branch,
  balancedSupply,
  deltaFromStar,
  energise,
  type Network,
  starFromDelta,
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

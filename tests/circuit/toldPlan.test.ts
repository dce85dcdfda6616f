/** What a plan of a module is told that lacks something or contradicts itself, and how its parts are named. */
import { buildModule, type ModulePlan, reconnected } from "electroheat/circuit";
import { ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { refusal } from "../support/told.ts";

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
      '0 or more Ω or "open"',
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
    // A node that is not there is the joint's place, whatever is said to lie behind it.
    for (const behind of [undefined, ["A-L1"]])
      expect(refusal(joint({ at: "S-A", ...(behind === undefined ? {} : { behind }) })).slice(0, 4)).toEqual([
        "unknown-name",
        "joints.0.at",
        "a line or star point: one of L1, L2, L3, S",
        '"S-A"',
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

/** What a study of faults is told, and that twins in a scan fare as they do alone. Figures worked from Ohm's law. */
import {
  type Branch,
  type BranchFault,
  balancedSupply,
  buildModule,
  faultEffect,
  faultScan,
  type Network,
} from "electroheat/circuit";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { refusal } from "../support/told.ts";

const R = (id: string, from: string, to: string, resistance: number | "open" = 10): Branch => ({
  id,
  from,
  to,
  resistance: resistance === "open" ? resistance : ohms(resistance),
});
const star: Network = { branches: [R("A", "L1", "S"), R("B", "L2", "S"), R("C", "L3", "S")] };
const supply = balancedSupply({ lineVoltage: volts(480) });

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
    expect(refusal(effect({ kind: "open", id: "Z" })).slice(0, 2)).toEqual(["unknown-name", "faults.0.id"]);
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

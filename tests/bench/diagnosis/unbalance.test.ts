/**
 * An unbalanced supply beside another fault, both of known size. The readings come from the nodal solution of `circuit`, with
 * line voltages given one by one; the diagnosis gets the line currents and ohms, and has to take the two faults apart.
 */
import { diagnose, type Explanation } from "electroheat/bench";
import {
  buildModule,
  energise,
  type ModulePlan,
  supplyFromLineVoltages,
  terminalResistance,
} from "electroheat/circuit";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, OHMMETER, pairs, topOf } from "./sheets.ts";

const LINES = ["L1", "L2", "L3"] as const;
/** Highest less lowest is 4 % of the mean. */
const VOLTS = [489.6, 480, 470.4] as const;
const HOT = 1.04;

/** Line currents and ohms between lines of a module on the unbalanced supply. */
function sheet(plan: ModulePlan): ReturnType<typeof asked>["readings"] {
  const { network } = buildModule(plan);
  const hot = {
    branches: network.branches.map((branch) => ({
      ...branch,
      resistance: branch.resistance === "open" ? "open" : branch.resistance * HOT,
    })),
  } as typeof network;
  const [v12, v23, v31] = VOLTS;
  const live = energise({ network: hot, supply: supplyFromLineVoltages({ v12, v23, v31 } as never) });
  const current = (line: string): number => live.lines.find(({ node }) => node === line)?.current as number;
  const ohms = LINES.map((from, i) =>
    terminalResistance({ network, from, to: LINES[(i + 1) % 3] as string }),
  );
  return [...amps(LINES.map(current)), ...pairs(ohms as readonly number[])];
}

const INSTRUMENTS = {
  ohmmeter: { ...OHMMETER, leads: "taken off" },
  clamp: { ofReading: 0.004, digits: 1, resolution: 0.1 },
};

const estimate = (one: Explanation | undefined, of: string): { value: number; low: number; high: number } => {
  const found = one?.estimates.find((each) => each.of === of);
  if (found === undefined) throw new Error(`no estimate of ${of}`);
  return found;
};

const pairOf = (all: readonly Explanation[], kind: string): Explanation | undefined =>
  all.find(
    ({ faults }) =>
      faults.length === 2 &&
      faults.some((one) => one.kind === "supply unbalance") &&
      faults.some((one) => one.kind === kind),
  );

describe("the supply unbalanced by 4 %", () => {
  const drawn = {
    banks: [bank("A", "delta", 24 * 1.025, { elementsInParallel: 2 })],
  } as unknown as ModulePlan;
  const question = (plan: ModulePlan): ReturnType<typeof asked> =>
    asked({ banks: [bank("A", "delta", 24, { elementsInParallel: 2 })] }, sheet(plan), {
      instruments: INSTRUMENTS,
      // A matched set on a supply without scatter of its own: what the fault leaves over is the unbalance.
      spread: { individual: 0.003, unbalance: 0.001 },
      depth: "pairs",
    });

  it("is told beside an open element, from what the open leaves over", () => {
    const found = diagnose(question({ ...drawn, elements: { "A-L1L2-1": "open" } }));
    expect(found.outcome).toBe("explained");
    const one = pairOf(topOf(found), "element open");
    expect(one?.faults).toContainEqual({ kind: "element open", element: "A-L1L2-1" });
    const { value, low, high } = estimate(one, "unbalance");
    expect(Math.abs(value - 0.04)).toBeLessThan(0.006);
    expect(low).toBeLessThan(0.04);
    expect(high).toBeGreaterThan(0.04);
    // Beforehand the 95 % interval is 0.038 wide.
    expect(high - low).toBeLessThan(0.02);
    expect(one?.faults[one.estimates[0]?.fault as number]?.kind).toBe("supply unbalance");
  });

  it("is told beside an element off its value, and the value beside it", () => {
    const element = { "A-L1L2-1": 24 * 1.025 * 1.6 } as never;
    const found = diagnose(question({ ...drawn, elements: element }));
    const one = pairOf(
      found.groups.flatMap(({ explanations }) => explanations),
      "element off value",
    );
    expect(one?.faults).toContainEqual({ kind: "element off value", element: "A-L1L2-1" });
    const unbalance = estimate(one, "unbalance");
    expect(Math.abs(unbalance.value - 0.04)).toBeLessThan(0.006);
    const ratio = estimate(one, "resistance ratio");
    expect(Math.abs(ratio.value - 1.6)).toBeLessThan(0.1);
    expect(ratio.low).toBeLessThan(1.6);
    expect(ratio.high).toBeGreaterThan(1.6);
    for (const each of one?.estimates ?? []) {
      const kind = each.of === "unbalance" ? "supply unbalance" : "element off value";
      expect(one?.faults[each.fault]?.kind).toBe(kind);
    }
  });
});

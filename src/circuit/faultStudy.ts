/** A healthy network made ready for any number of faults. */
import { modulus } from "../numeric/index.ts";
import { checkOneOf, fail, inField } from "../quantity/index.ts";
import { type FaultBase, type FaultedState, faultBase, solvedState } from "./faultSolve.ts";
import type { Fault } from "./faultTypes.ts";
import { findBranch, type Network } from "./network.ts";
import type { Supply } from "./supply.ts";
import { type Twins, twinsOf } from "./twins.ts";

/** Below this part of the largest healthy value a healthy value counts as none. */
export const NEGLIGIBLE = 1e-9;

/** What the healthy network carries, and the largest of each: what "none" is measured against. */
interface Healthy {
  readonly totalPower: number;
  /** Of each branch. */
  readonly voltage: readonly number[];
  readonly current: readonly number[];
  /** Of each supply line. */
  readonly line: readonly number[];
  readonly largestVoltage: number;
  readonly largestCurrent: number;
}

/** A healthy network made ready once for any number of faults. */
export interface FaultStudy {
  readonly network: Network;
  readonly supply: Supply;
  readonly base: FaultBase;
  readonly healthy: Healthy;
  readonly position: ReadonlyMap<string, number>;
  readonly twins: Twins;
  /** Branches whose stress is reported: elements that are not open to begin with. */
  readonly elements: readonly number[];
  /** For each branch its place in `elements`; −1 for the others. */
  readonly slotOf: readonly number[];
}

export const voltageAt = (state: FaultedState, i: number): number =>
  modulus({ re: state.across.re[i] as number, im: state.across.im[i] as number });
export const currentAt = (state: FaultedState, i: number): number =>
  modulus({ re: state.currents.re[i] as number, im: state.currents.im[i] as number });
export const lineAt = (state: FaultedState, k: number): number =>
  modulus({ re: state.lines.re[k] as number, im: state.lines.im[k] as number });

export function totalPowerOf(network: Network, state: FaultedState): number {
  let sum = 0;
  for (let i = 0; i < network.branches.length; i += 1) {
    if (network.branches[i]?.resistance !== "open") sum += voltageAt(state, i) * currentAt(state, i);
  }
  return sum;
}

export function faultStudy(network: Network, supply: Supply): FaultStudy {
  const base = faultBase(network, supply);
  const state = solvedState(base.set, base.solution);
  const { branches } = network;
  const voltage: number[] = [];
  const current: number[] = [];
  const line = supply.lines.map((_, k) => lineAt(state, k));
  let largestVoltage = 0;
  let largestCurrent = 0;
  const elements: number[] = [];
  const slotOf: number[] = [];
  const position = new Map<string, number>();
  branches.forEach((branch, i) => {
    voltage.push(voltageAt(state, i));
    current.push(currentAt(state, i));
    position.set(branch.id, i);
    slotOf.push(-1);
    largestCurrent = Math.max(largestCurrent, current[i] as number);
    if (branch.resistance === "open") return;
    largestVoltage = Math.max(largestVoltage, voltage[i] as number);
    if ((branch.role ?? "element") === "element") slotOf[i] = elements.push(i) - 1;
  });
  const totalPower = totalPowerOf(network, state);
  if (!(totalPower > 0)) {
    fail({
      code: "inconsistent",
      path: "network",
      expected: "a healthy network that draws power, to hold the faults against",
      received: `${totalPower} W`,
    });
  }
  const healthy = { totalPower, voltage, current, line, largestVoltage, largestCurrent };
  const twins = twinsOf(branches, base.set.indexed);
  return { network, supply, base, healthy, position, twins, elements, slotOf };
}

export function checkFaults(from: FaultStudy, faults: readonly Fault[]): void {
  if (!Array.isArray(faults) || faults.length === 0) {
    fail({ code: "missing", path: "faults", expected: "at least one fault", received: faults });
  }
  const lines = from.supply.lines.map((line) => line.node);
  const seen = new Set<string>();
  faults.forEach((fault, i) => {
    checkOneOf(`faults.${i}.kind`, fault.kind, ["open", "short", "lost line"]);
    const name = fault.kind === "lost line" ? fault.line : fault.id;
    if (fault.kind === "lost line") checkOneOf(`faults.${i}.line`, name, lines);
    else if (!from.position.has(name))
      inField(`faults.${i}`, () => findBranch({ network: from.network, id: name }));
    if (seen.has(name)) {
      fail({ code: "duplicate", path: `faults.${i}`, expected: "one fault for each branch", received: name });
    }
    seen.add(name);
  });
}

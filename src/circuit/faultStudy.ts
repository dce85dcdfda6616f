/** A healthy network made ready for faults, and the effect of any set of them on its survivors. */
import { modulus } from "../numeric/index.ts";
import {
  type Amperes,
  type BranchVolts,
  checkOneOf,
  fail,
  isElectroheatError,
  type Ohms,
  type Volts,
  type Watts,
} from "../quantity/index.ts";
import {
  type BranchChange,
  type FaultBase,
  type FaultedState,
  faultBase,
  solvedState,
  updatedState,
} from "./faultSolve.ts";
import type { Fault, FaultEffect, SurvivorState } from "./faultTypes.ts";
import { findBranch, type Network, withResistance } from "./network.ts";
import { setUp, solve } from "./solve.ts";
import { type Supply, withoutLines } from "./supply.ts";

/** Below this part of the largest healthy value a healthy value counts as none. */
const NEGLIGIBLE = 1e-9;

/** What the healthy network carries, and the largest of each: what "none" is measured against. */
interface Healthy {
  readonly state: FaultedState;
  readonly totalPower: number;
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
}

const voltageAt = (state: FaultedState, i: number): number =>
  modulus({ re: state.across.re[i] as number, im: state.across.im[i] as number });
const currentAt = (state: FaultedState, i: number): number =>
  modulus({ re: state.currents.re[i] as number, im: state.currents.im[i] as number });
const lineAt = (state: FaultedState, k: number): number =>
  modulus({ re: state.lines.re[k] as number, im: state.lines.im[k] as number });

function ratioTo(value: number, healthy: number, largest: number): number | null {
  return healthy > NEGLIGIBLE * largest ? value / healthy : null;
}

function totalPowerOf(network: Network, state: FaultedState): number {
  let sum = 0;
  network.branches.forEach((branch, i) => {
    if (branch.resistance !== "open") sum += voltageAt(state, i) * currentAt(state, i);
  });
  return sum;
}

export function faultStudy(network: Network, supply: Supply): FaultStudy {
  const base = faultBase(network, supply);
  const state = solvedState(base.set, base.solution);
  let largestVoltage = 0;
  let largestCurrent = 0;
  network.branches.forEach((branch, i) => {
    if (branch.resistance !== "open") largestVoltage = Math.max(largestVoltage, voltageAt(state, i));
    largestCurrent = Math.max(largestCurrent, currentAt(state, i));
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
  return {
    network,
    supply,
    base,
    healthy: { state, totalPower, largestVoltage, largestCurrent },
    position: new Map(network.branches.map((branch, i) => [branch.id, i])),
  };
}

/** Network and supply with the faults in them, for a fresh solve. */
function faulted(from: FaultStudy, faults: readonly Fault[]): { network: Network; supply: Supply } {
  let { network, supply } = from;
  for (const fault of faults) {
    if (fault.kind === "lost line") supply = withoutLines({ supply, lines: [fault.line] });
    else {
      const resistance = fault.kind === "open" ? ("open" as const) : (0 as Ohms);
      network = withResistance({ network, id: fault.id, resistance });
    }
  }
  return { network, supply };
}

function stateUnder(from: FaultStudy, faults: readonly Fault[]): FaultedState | null {
  const changes: BranchChange[] = [];
  for (const fault of faults) {
    if (fault.kind !== "lost line")
      changes.push({ branch: from.position.get(fault.id) as number, kind: fault.kind });
  }
  const updated = changes.length === faults.length ? updatedState(from.base, changes) : null;
  if (updated !== null) return updated;
  const { network, supply } = faulted(from, faults);
  try {
    const set = setUp(network, supply);
    return solvedState(set, solve(set));
  } catch (error) {
    if (isElectroheatError(error) && error.code === "short-circuit") return null;
    throw error;
  }
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
    else findBranch({ network: from.network, id: name });
    if (seen.has(name)) {
      fail({ code: "duplicate", path: `faults.${i}`, expected: "one fault for each branch", received: name });
    }
    seen.add(name);
  });
}

function survivorsOf(from: FaultStudy, state: FaultedState, broken: ReadonlySet<string>): SurvivorState[] {
  const { healthy, network } = from;
  const survivors: SurvivorState[] = [];
  network.branches.forEach((branch, i) => {
    if ((branch.role ?? "element") !== "element" || branch.resistance === "open" || broken.has(branch.id))
      return;
    const [voltage, current] = [voltageAt(state, i), currentAt(state, i)];
    const [voltageBefore, currentBefore] = [voltageAt(healthy.state, i), currentAt(healthy.state, i)];
    const voltageRatio = ratioTo(voltage, voltageBefore, healthy.largestVoltage);
    const currentRatio = ratioTo(current, currentBefore, healthy.largestCurrent);
    survivors.push({
      id: branch.id,
      voltage: voltage as BranchVolts,
      current: current as Amperes,
      power: (voltage * current) as Watts,
      voltageRatio,
      currentRatio,
      powerRatio: voltageRatio === null || currentRatio === null ? null : voltageRatio * currentRatio,
    });
  });
  return survivors;
}

export function effectOf(from: FaultStudy, faults: readonly Fault[]): FaultEffect {
  const state = stateUnder(from, faults);
  if (state === null) return { faults, outcome: "supply shorted" };
  const { healthy, network, position, supply } = from;
  const open = faults.flatMap((fault) => (fault.kind === "open" ? [fault.id] : []));
  const broken = new Set(faults.flatMap((fault) => (fault.kind === "lost line" ? [] : [fault.id])));
  const survivors = survivorsOf(from, state, broken);
  let worst: SurvivorState | null = null;
  for (const one of survivors) {
    if ((one.powerRatio ?? 0) > (worst?.powerRatio ?? NEGLIGIBLE)) worst = one;
  }
  const totalPower = totalPowerOf(network, state);
  return {
    faults,
    outcome: totalPower > NEGLIGIBLE * healthy.totalPower ? "runs" : "dead",
    totalPower: totalPower as Watts,
    powerRatio: totalPower / healthy.totalPower,
    lines: supply.lines.map((line, k) => ({
      node: line.node,
      current: lineAt(state, k) as Amperes,
      currentRatio: ratioTo(lineAt(state, k), lineAt(healthy.state, k), healthy.largestCurrent),
    })),
    survivors,
    worst,
    gaps: open.map((id) => {
      const i = position.get(id) as number;
      return { id, voltage: state.floating(i) ? null : (voltageAt(state, i) as Volts) };
    }),
  };
}

/**
 * The effect of a set of faults worked out once for all sets that differ only in which of several twins are broken. Each
 * set is worked out with the first members of its groups broken, so that a fault has the same effect to the last bit
 * whether it is asked for alone or in a scan.
 */
import type { Amperes, BranchVolts, Volts, Watts } from "../quantity/index.ts";
import { isElectroheatError, type Ohms } from "../quantity/index.ts";
import { type BranchChange, type FaultedState, solvedState, updatedState } from "./faultSolve.ts";
import { currentAt, type FaultStudy, lineAt, NEGLIGIBLE, totalPowerOf, voltageAt } from "./faultStudy.ts";
import type { Fault, LineUnderFault, SurvivorState } from "./faultTypes.ts";
import { zeros } from "./lists.ts";
import { type Network, withResistance } from "./network.ts";
import { setUp, solve } from "./solve.ts";
import { type Supply, withoutLines } from "./supply.ts";

/** A survivor without its name. */
export type Model = Omit<SurvivorState, "id">;

/** What the faults leave, but for the names of the twins. */
export interface Outlook {
  readonly totalPower: Watts;
  readonly lines: readonly LineUnderFault[];
  /** How a survivor of each group of twins fares; `null` where none is left. */
  readonly models: readonly (Model | null)[];
  /** The same under the name of each of the study's elements, made when first asked for. */
  named: readonly (SurvivorState | null)[] | null;
  /** Highest power ratio among them; 0 if none carries current. */
  readonly worstRatio: number;
  /** Voltage across each fault's branch where it is an open one, in the order of the faults. */
  readonly gaps: readonly (Volts | null)[];
}

function ratioTo(value: number, healthy: number, largest: number): number | null {
  return healthy > NEGLIGIBLE * largest ? value / healthy : null;
}

/** The same faults on the first members of their groups; the k-th fault of a group falls on its k-th member. */
function onFirstTwins(from: FaultStudy, faults: readonly Fault[]): readonly Fault[] {
  const { network, position, twins } = from;
  const taken = new Map<number, number>();
  return faults.map((fault) => {
    if (fault.kind === "lost line") return fault;
    const group = twins.groupOf[position.get(fault.id) as number] as number;
    const turn = taken.get(group) ?? 0;
    taken.set(group, turn + 1);
    const member = twins.members[group]?.[turn] as number;
    return { kind: fault.kind, id: network.branches[member]?.id as string };
  });
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

function modelsOf(from: FaultStudy, state: FaultedState, broken: readonly Fault[]): (Model | null)[] {
  const { healthy, twins, position } = from;
  const lost = zeros(twins.members.length);
  for (const fault of broken) {
    if (fault.kind === "lost line") continue;
    const group = twins.groupOf[position.get(fault.id) as number] as number;
    lost[group] = (lost[group] as number) + 1;
  }
  // The first members are broken, so the last one tells how those that are left fare.
  return twins.members.map((members, group) => {
    if ((lost[group] as number) >= members.length) return null;
    const i = members[members.length - 1] as number;
    const voltage = voltageAt(state, i);
    const current = currentAt(state, i);
    const voltageRatio = ratioTo(voltage, healthy.voltage[i] as number, healthy.largestVoltage);
    const currentRatio = ratioTo(current, healthy.current[i] as number, healthy.largestCurrent);
    return {
      voltage: voltage as BranchVolts,
      current: current as Amperes,
      power: (voltage * current) as Watts,
      voltageRatio,
      currentRatio,
      powerRatio: voltageRatio === null || currentRatio === null ? null : voltageRatio * currentRatio,
    };
  });
}

/** Works out what the faults leave; `null` if they bolt supply lines together. */
export function outlookOf(from: FaultStudy, asked: readonly Fault[]): Outlook | null {
  const faults = onFirstTwins(from, asked);
  const state = stateUnder(from, faults);
  if (state === null) return null;
  const { healthy, network, position, supply, twins } = from;
  const models = modelsOf(from, state, faults);
  let worstRatio = 0;
  for (const i of from.elements) {
    const ratio = models[twins.groupOf[i] as number]?.powerRatio ?? 0;
    if (ratio > worstRatio) worstRatio = ratio;
  }
  return {
    totalPower: totalPowerOf(network, state) as Watts,
    lines: supply.lines.map(({ node }, k) => {
      const current = lineAt(state, k) as Amperes;
      return {
        node,
        current,
        currentRatio: ratioTo(current, healthy.line[k] as number, healthy.largestCurrent),
      };
    }),
    models,
    named: null,
    worstRatio,
    gaps: faults.map((fault) => {
      if (fault.kind !== "open") return null;
      const i = position.get(fault.id) as number;
      return state.floating(i) ? null : (voltageAt(state, i) as Volts);
    }),
  };
}

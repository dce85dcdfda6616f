/** The network under voltage: what every branch, line and node carries. */
import { type Complex, modulus } from "../numeric/index.ts";
import { type Amperes, type BranchVolts, given, type Volts, type Watts } from "../quantity/index.ts";
import type { Branch, BranchRole, Network } from "./network.ts";
import { branchCurrents, type Energisable, lineCurrents, type Parts, setUp, solve } from "./solve.ts";
import type { Supply } from "./supply.ts";

/**
 * One branch of an energised network. Phasors count from → to.
 * @since 0.1.0
 */
export interface BranchState {
  /** Name of the branch. */
  readonly id: string;
  /** What the branch is. */
  readonly role: BranchRole;
  /** RMS voltage across it, V. Across an open branch: the voltage of the gap; `null` if an end floats. */
  readonly voltage: BranchVolts | null;
  /** Phasor of that voltage, V. */
  readonly voltagePhasor: Complex | null;
  /** RMS current, A; 0 for an open branch. */
  readonly current: Amperes;
  /** Phasor of that current, A. */
  readonly currentPhasor: Complex;
  /** Power turned into heat in it, W. */
  readonly power: Watts;
}

/**
 * One supply conductor of an energised network.
 * @since 0.1.0
 */
export interface LineState {
  /** Node it feeds. */
  readonly node: string;
  /** RMS current into the network, A; 0 if the line is lost. */
  readonly current: Amperes;
  /** Phasor of that current, A. */
  readonly currentPhasor: Complex;
  /** Active power delivered by it against the supply neutral, W. */
  readonly power: Watts;
  /** Whether the line has lost its voltage. */
  readonly lost: boolean;
}

/**
 * One node of an energised network.
 * @since 0.1.0
 */
export interface NodeState {
  /** Name of the node. */
  readonly node: string;
  /** RMS voltage to the supply neutral, V: of a star point, its displacement. `null` if nothing ties it down. */
  readonly voltage: Volts | null;
  /** Phasor of that voltage, V. */
  readonly voltagePhasor: Complex | null;
}

/**
 * An energised network. Resistances are taken as constant at the values given.
 * @since 0.1.0
 */
export interface EnergisedNetwork {
  /** Heat in all branches together, W. */
  readonly totalPower: Watts;
  /** Branches, in the network's order. */
  readonly branches: readonly BranchState[];
  /** Supply conductors, in the supply's order. */
  readonly lines: readonly LineState[];
  /** Nodes, in order of first mention (lines first). */
  readonly nodes: readonly NodeState[];
}

// + 0: no −0 leaves the room, since JSON cannot say it.
const at = (parts: Parts, i: number): Complex => ({
  re: (parts.re[i] as number) + 0,
  im: (parts.im[i] as number) + 0,
});

/** Whether nothing ties a node to the supply: its voltage is whatever leakage makes it, so none is reported. */
function floats({ factor, indexed }: Energisable, node: number): boolean {
  return factor.floating[indexed.merged[node] as number] === 1;
}

// One function for each pass: an engine computes only so much into one function, and a call for each branch costs as much as its work.
function branchStates(
  set: Energisable,
  branches: readonly Branch[],
  across: Parts,
  currents: Parts,
): BranchState[] {
  const { from, to } = set.indexed;
  const states: BranchState[] = [];
  // The given branches only: the source resistances were appended behind them.
  for (let i = 0; i < branches.length; i += 1) {
    const { id, role = "element", resistance } = branches[i] as Branch;
    const undetermined =
      resistance === "open" && (floats(set, from[i] as number) || floats(set, to[i] as number));
    const voltagePhasor = undetermined ? null : at(across, i);
    const currentPhasor = at(currents, i);
    const voltage = voltagePhasor === null ? null : modulus(voltagePhasor);
    const current = modulus(currentPhasor);
    states.push({
      id,
      role,
      voltage: voltage as BranchVolts | null,
      voltagePhasor,
      current: current as Amperes,
      currentPhasor,
      power: (current * (voltage ?? 0)) as Watts,
    });
  }
  return states;
}

function lineStates({ supply, held }: Energisable, lines: Parts): LineState[] {
  return supply.lines.map(({ node, voltage }, k) => {
    const currentPhasor = at(lines, k);
    const power = voltage.re * currentPhasor.re + voltage.im * currentPhasor.im + 0;
    const current = modulus(currentPhasor) as Amperes;
    return { node, current, currentPhasor, power: power as Watts, lost: held[k] === -1 };
  });
}

function nodeStates(set: Energisable, potential: Parts): NodeState[] {
  const { indexed, source, supply } = set;
  const { nodes: names, merged } = indexed;
  const states: NodeState[] = [];
  for (let i = 0; i < names.length; i += 1) {
    const node = names[i] as string;
    // The source behind a resistance is a node of ours, not of the network.
    if (source.includes(i) && !supply.lines.some((line) => line.node === node)) continue;
    const voltagePhasor = floats(set, i) ? null : at(potential, merged[i] as number);
    const voltage = voltagePhasor === null ? null : (modulus(voltagePhasor) as Volts);
    states.push({ node, voltage, voltagePhasor });
  }
  return states;
}

/**
 * Voltages, currents and powers of a network under a supply, by nodal analysis.
 *
 * Σ over the branches at a node of (V_node − V_other)/R = 0 at every node that is not held by a supply line. Any
 * mixture of stars, deltas, joints and jumper bars; unbalanced or lost lines; star points floating, tied or on the
 * neutral. Resistances are constant: an element at 1.2 times its voltage runs hotter, which shifts a nickel-chromium
 * resistance by a few per cent that are not modelled here.
 * @param input.network - branches between named nodes
 * @param input.supply - from one of the supply builders
 * @returns every branch, line and node, with phasors
 * @throws ElectroheatError `short-circuit` when 0 Ω branches bolt lines together; `floating` when a part of the network
 *   is tied to the supply by no branch at all, open or closed; and as for the network and the supply
 * @source Kirchhoff's laws (nodal analysis)
 * @example
 * ```ts
 * const network: Network = { branches: [
 *   { id: "A-L1", from: "L1", to: "S", resistance: "open" },
 *   { id: "A-L2", from: "L2", to: "S", resistance: ohms(7.68) },
 *   { id: "A-L3", from: "L3", to: "S", resistance: ohms(7.68) },
 * ] };
 * energise({ network, supply: balancedSupply({ lineVoltage: volts(480) }) }).totalPower // => 15000
 * ```
 * @since 0.1.0
 */
export function energise(input: { readonly network: Network; readonly supply: Supply }): EnergisedNetwork {
  const { network, supply } = given(input);
  const set = setUp(network, supply);
  const { across, potential } = solve(set);
  const currents = branchCurrents(set, across);
  const branches = branchStates(set, network.branches, across, currents);
  let totalPower = 0;
  for (let i = 0; i < branches.length; i += 1) totalPower += (branches[i] as BranchState).power;
  return {
    totalPower: totalPower as Watts,
    branches,
    lines: lineStates(set, lineCurrents(set, currents)),
    nodes: nodeStates(set, potential),
  };
}

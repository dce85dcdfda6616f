/** What an ohmmeter reads between two nodes of a dead network. */
import { fail, given, type Ohms, type Open, oneOf } from "../quantity/index.ts";
import { factorNetwork, type IndexedNetwork, indexNetwork } from "./indexed.ts";
import { zeros } from "./lists.ts";
import type { Network } from "./network.ts";
import { refinedPotentials } from "./refined.ts";

/**
 * A reading and how it hangs on each branch.
 * @since 0.1.0
 */
export interface TerminalReading {
  /** Resistance between the two nodes, Ω; `"open"` if no path. */
  readonly resistance: Ohms | Open;
  /**
   * Part of the meter's current in each branch, in the order of the network's branches, signed from → to. Its square is
   * the sensitivity dR/dR_branch. All 0 for an open reading. `null` for a branch of 0 Ω, whose share is not unique.
   */
  readonly currentShare: readonly (number | null)[];
}

function numberOf(indexed: IndexedNetwork, path: "from" | "to", name: string): number {
  const number = indexed.nodeNumber.get(name);
  if (number !== undefined) return number;
  return fail({
    code: "unknown-name",
    path,
    expected: `a node of the network: ${oneOf(indexed.nodes.slice(0, 40))}`,
    received: name,
  });
}

/**
 * Resistance between two nodes of a dead network, and the share of the meter's current in every branch.
 *
 * One ampere is sent in at `from` and taken out at `to`; the voltage between them is the resistance, and
 * dR/dR_branch = (share of the current in that branch)². The supply must be isolated: an upstream transformer winding
 * still tied to the lines would be part of the network.
 * @param input.network - the network
 * @param input.from - node of one probe
 * @param input.to - node of the other probe
 * @returns the reading and the current shares
 * @throws ElectroheatError `unknown-name`, and as for the network
 * @source Kirchhoff's laws; sensitivity: R. M. Cohn, The resistance of an electrical network, Proceedings of
 *   the American Mathematical Society 1 (1950) 316-324 (from memory)
 * @example
 * ```ts
 * const network: Network = { branches: [
 *   { id: "R1", from: "a", to: "b", resistance: ohms(6) }, { id: "R2", from: "a", to: "b", resistance: ohms(3) },
 * ] };
 * terminalReading({ network, from: "a", to: "b" }) // => { resistance: 2, currentShare: [0.333333, 0.666667] }
 * ```
 * @since 0.1.0
 */
export function terminalReading(input: {
  readonly network: Network;
  readonly from: string;
  readonly to: string;
}): TerminalReading {
  const { network, from, to } = given(input);
  const indexed = indexNetwork(network);
  const [a, b] = [numberOf(indexed, "from", from), numberOf(indexed, "to", to)];
  if (a === b) {
    fail({ code: "inconsistent", path: "to", expected: "two different nodes", received: `${from} to ${to}` });
  }
  const [source, sink] = [indexed.merged[a] as number, indexed.merged[b] as number];
  const share = (i: number, value: number): number | null =>
    network.branches[i]?.resistance === 0 ? null : value;
  const { ends, factor } = factorNetwork(indexed, [sink]);
  if (factor.floating[source] === 1) {
    return { resistance: "open", currentShare: network.branches.map((_, i) => share(i, 0)) };
  }
  const injected = zeros(indexed.nodes.length);
  injected[source] = 1;
  const { potential, across } = refinedPotentials({
    factor,
    ends,
    conductance: indexed.conductance,
    held: [sink],
    potential: zeros(indexed.nodes.length),
    injected,
  });
  return {
    resistance: potential[source] as number as Ohms,
    currentShare: network.branches.map((_, i) =>
      share(i, (across[i] as number) * (indexed.conductance[i] as number) + 0),
    ),
  };
}

/**
 * Resistance between two nodes of a dead network, as an ohmmeter with perfect leads reads it.
 * @param input.network - the network
 * @param input.from - node of one probe
 * @param input.to - node of the other probe
 * @returns resistance, Ω; `"open"` if there is no path (the meter shows OL)
 * @throws ElectroheatError `unknown-name`, and as for the network
 * @source Kirchhoff's laws
 * @example
 * ```ts
 * const network: Network = { branches: [
 *   { id: "R12", from: "L1", to: "L2", resistance: ohms(14.4) },
 *   { id: "R23", from: "L2", to: "L3", resistance: ohms(14.4) },
 *   { id: "R31", from: "L3", to: "L1", resistance: ohms(14.4) },
 * ] };
 * terminalResistance({ network, from: "L1", to: "L2" }) // => 9.6
 * ```
 * @since 0.1.0
 */
export function terminalResistance(input: {
  readonly network: Network;
  readonly from: string;
  readonly to: string;
}): Ohms | Open {
  given(input);
  return terminalReading(input).resistance;
}

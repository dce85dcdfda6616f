/** Which branches must be open for a set of readings to show OL where it does and a value where it does. */
import { type Network, terminalResistance, withResistance } from "../circuit/index.ts";

/** A reading as far as its path matters. */
export interface PathReading {
  readonly from: string;
  readonly to: string;
  /** Branches connected when it was taken. */
  readonly only: readonly string[];
  readonly open: boolean;
}

/** Answer of the search. */
export interface OpenSearch {
  /** Every smallest set of open branches that explains all readings; one empty set if none need be open; [] if none does. */
  readonly sets: readonly (readonly string[])[];
}

/** More open branches than this at once are not searched for: the module is then scrap, not a puzzle. */
const MOST_OPEN = 3;

/** The network with only the named branches in it: what is left when links are lifted. */
export function withOnly(network: Network, only: readonly string[]): Network {
  const kept = new Set(only);
  return { branches: network.branches.filter((branch) => kept.has(branch.id)) };
}

function explains(network: Network, open: readonly string[], readings: readonly PathReading[]): boolean {
  let faulted = network;
  for (const id of open) faulted = withResistance({ network: faulted, id, resistance: "open" });
  return readings.every(({ from, to, only, open: readsOpen }) => {
    const path = terminalResistance({ network: withOnly(faulted, only), from, to });
    return (path === "open") === readsOpen;
  });
}

function* subsets(ids: readonly string[], size: number, first = 0): Generator<string[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = first; i <= ids.length - size; i += 1) {
    for (const rest of subsets(ids, size - 1, i + 1)) yield [ids[i] as string, ...rest];
  }
}

/** Smallest sets of open branches that agree with every reading. */
export function findOpens(
  network: Network,
  candidates: readonly string[],
  readings: readonly PathReading[],
): OpenSearch {
  for (let size = 0; size <= Math.min(MOST_OPEN, candidates.length); size += 1) {
    const sets: string[][] = [];
    for (const open of subsets(candidates, size)) {
      if (explains(network, open, readings)) sets.push(open);
    }
    if (sets.length > 0) return { sets };
  }
  return { sets: [] };
}

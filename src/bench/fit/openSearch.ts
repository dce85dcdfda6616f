/** Which branches must be open for a set of readings to show OL where it does and a value where it does. */
import { type Network, terminalResistance, withResistance } from "../../circuit/index.ts";

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
  /** The choices were too many to try: nothing is known, which is not the same as contradictory. */
  readonly unfinished: boolean;
}

/** So many choices of open branches are tried before the search is given up: some seconds at worst. */
const MOST_TRIES = 20_000;

/** The network with only the named branches in it: what is left when links are lifted. */
export function withOnly(network: Network, only: readonly string[]): Network {
  const kept = new Set(only);
  return { branches: network.branches.filter((branch) => kept.has(branch.id)) };
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

/** What one reading shows when the named branches are open. */
function readsOpen(network: Network, open: ReadonlySet<string>, { from, to, only }: PathReading): boolean {
  let faulted = withOnly(network, only);
  for (const id of only) {
    if (open.has(id)) faulted = withResistance({ network: faulted, id, resistance: "open" });
  }
  return terminalResistance({ network: faulted, from, to }) === "open";
}

/**
 * Smallest sets of open branches that agree with every reading. What follows with certainty comes first: a branch that alone
 * would close an OL path is open, a branch that alone would break a finite path is not; only the rest is tried out.
 */
export function findOpens(
  network: Network,
  candidates: readonly string[],
  readings: readonly PathReading[],
): OpenSearch {
  const none: OpenSearch = { sets: [], unfinished: false };
  const [ol, finite] = [readings.filter(({ open }) => open), readings.filter(({ open }) => !open)];
  const concerned = candidates.filter((id) => ol.some(({ only }) => only.includes(id)));
  const closed = concerned.filter((id) => finite.some((one) => readsOpen(network, new Set([id]), one)));
  const openable = concerned.filter((id) => !closed.includes(id));
  const all = new Set(openable);
  if (!ol.every((one) => readsOpen(network, all, one))) return none;
  const certain = openable.filter((id) => {
    const others = new Set(openable.filter((other) => other !== id));
    return ol.some((one) => !readsOpen(network, others, one));
  });
  const rest = openable.filter((id) => !certain.includes(id));
  let tries = 0;
  for (let size = 0; size <= rest.length; size += 1) {
    const sets: string[][] = [];
    for (const some of subsets(rest, size)) {
      tries += 1;
      if (tries > MOST_TRIES) return { sets: [], unfinished: true };
      const open = candidates.filter((id) => certain.includes(id) || some.includes(id));
      const set = new Set(open);
      if (readings.every((one) => readsOpen(network, set, one) === one.open)) sets.push(open);
    }
    if (sets.length > 0) return { sets, unfinished: false };
  }
  return none;
}

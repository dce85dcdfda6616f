/** Gauss-Newton on the network: the terminal resistances are the model, their current shares the slopes. */
import { findBranch, type Network, terminalReading, withResistance } from "../circuit/index.ts";
import { type LeastSquaresFit, leastSquares } from "../numeric/index.ts";
import { fail, type Ohms } from "../quantity/index.ts";
import type { LeadKnowledge, TerminalOhms } from "./fitTypes.ts";
import { withOnly } from "./openSearch.ts";

const MOST_STEPS = 200;

/** Relative step at which a value has settled: a few units of the last place. */
const SETTLED = 1e-12;

/** So small a part of its own uncertainty does nobody any good; a value that the readings hardly see settles no better. */
const SETTLED_UNCERTAINTY = 1e-9;

/** Name of the leads among the unknowns. */
export const LEADS = "leads";

/**
 * A branch that runs beyond this many times its nominal resistance, and the highest reading, has no path that the readings
 * could show: a branch alone between two probes reads what it is, however high, and never gets there.
 */
const RUNAWAY = 1e5;

/** A branch below this part of its nominal resistance is at the edge of what can be: 0 Ω, a bolted short. */
const FLOOR = 1e-9;

export interface Setting {
  readonly network: Network;
  readonly unknown: readonly string[];
  readonly readings: readonly TerminalOhms[];
  readonly leads: LeadKnowledge;
  readonly significance: number;
}

export interface Observation {
  readonly reading: TerminalOhms | null;
  readonly value: number;
  readonly uncertainty: number;
}

export function observationsOf({ readings, leads }: Setting): Observation[] {
  const finite: Observation[] = readings.flatMap((reading) =>
    reading.reads === "open"
      ? []
      : [{ reading, value: reading.reads, uncertainty: reading.standardUncertainty as number }],
  );
  if (typeof leads === "object") {
    finite.push({ reading: null, value: leads.shorted, uncertainty: leads.standardUncertainty });
  }
  return finite;
}

function predict(
  network: Network,
  reading: TerminalOhms,
  ids: readonly string[],
): { value: number; slopes: number[] } {
  const branches = reading.only ?? network.branches.map((branch) => branch.id);
  const state = withOnly(network, branches);
  const { resistance, currentShare } = terminalReading({
    network: state,
    from: reading.from,
    to: reading.to,
  });
  const share = new Map(state.branches.map((branch, i) => [branch.id, currentShare[i] as number]));
  if (resistance === "open") {
    // The search for open branches has left a path to every finite reading; this would be a fault of ours.
    fail({
      code: "inconsistent",
      path: "readings",
      expected: "a path for every finite reading",
      received: `${reading.from} to ${reading.to}`,
    });
  }
  return { value: resistance, slopes: ids.map((id) => (share.get(id) ?? 0) ** 2) };
}

/** Outcome of the iteration: settled, or a branch that ran away towards open or down to a short. */
export type Iterated =
  | { readonly state: "runaway"; readonly id: string }
  | { readonly state: "shorted"; readonly id: string; readonly standardUncertainty: number }
  | {
      readonly state: "settled";
      readonly values: readonly number[];
      readonly fit: LeastSquaresFit;
      readonly predicted: readonly number[];
    };

/** Gauss-Newton: exact in one step for a star alone, a few steps where branches lie in parallel. */
export function gaussNewton(setting: Setting, ids: readonly string[], start: Network): Iterated {
  const observations = observationsOf(setting);
  const withLeads = setting.leads !== "taken off";
  const nominal = ids.map((id) => findBranch({ network: start, id }).resistance as number);
  const highest = observations.reduce((most, { value }) => Math.max(most, value), 0);
  let network = start;
  let values: readonly number[] = nominal;
  let leads = 0;
  let step = Number.POSITIVE_INFINITY;
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const rows = observations.map(({ reading }) =>
      reading === null ? { value: 0, slopes: ids.map(() => 0) } : predict(network, reading, ids),
    );
    const predicted = rows.map((row) => row.value + leads);
    const fit = leastSquares({
      design: rows.map((row) => (withLeads ? [...row.slopes, 1] : row.slopes)),
      observed: observations.map((one, k) => one.value - (predicted[k] as number)),
      uncertainty: observations.map((one) => one.uncertainty),
    });
    if (step < 1)
      return { state: "settled", values: withLeads ? [...values, leads] : values, fit, predicted };
    const moves = fit.particular;
    // A resistance never crosses zero: from below a tenth of itself it is approached, not jumped over.
    const next = values.map((value, k) => Math.max(value + (moves[k] as number), value / 10));
    const away = next.findIndex((value, k) => value > RUNAWAY * Math.max(nominal[k] as number, highest));
    if (away >= 0) return { state: "runaway", id: ids[away] as string };
    const low = next.findIndex((value, k) => value < FLOOR * (nominal[k] as number));
    if (low >= 0) {
      const variance = fit.covariance[low]?.[low] ?? 0;
      return { state: "shorted", id: ids[low] as string, standardUncertainty: Math.sqrt(variance) };
    }
    const allowed = (k: number, size: number): number => {
      const variance = fit.covariance[k]?.[k] ?? null;
      const spread = variance === null ? size : Math.sqrt(variance);
      return Math.max(SETTLED * size, SETTLED_UNCERTAINTY * spread);
    };
    step = next.reduce(
      (most, value, k) => Math.max(most, Math.abs(value - (values[k] as number)) / allowed(k, value)),
      0,
    );
    if (withLeads) {
      const move = moves[ids.length] as number;
      leads += move;
      step = Math.max(step, Math.abs(move) / allowed(ids.length, Math.max(...next, Math.abs(leads))));
    }
    values = next;
    ids.forEach((id, k) => {
      network = withResistance({ network, id, resistance: next[k] as Ohms });
    });
  }
  return fail({
    code: "no-convergence",
    path: "readings",
    expected: `a fit that settles within ${MOST_STEPS} steps`,
    received: `last step ${step.toPrecision(3)} times what is allowed`,
  });
}

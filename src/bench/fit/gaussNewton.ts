/** Gauss-Newton on the network: the terminal resistances are the model, their current shares the slopes. */
import { findBranch, type Network, terminalReading, withResistance } from "../../circuit/index.ts";
import { type LeastSquaresFit, leastSquares } from "../../numeric/index.ts";
import { fail, type Ohms } from "../../quantity/index.ts";
import { withOnly } from "./openSearch.ts";
import type { LeadKnowledge, TerminalOhms } from "./types.ts";

const MOST_STEPS = 200;

/** Relative step at which a value has settled: a few units of the last place. */
const SETTLED = 1e-12;

/**
 * The same for an unknown that the readings do not determine. Only its combinations matter, and those are asked for by what the
 * readings see of the step; along the rest the pull is so weak that rounding alone moves the unknown by a ten-millionth of itself.
 */
const SETTLED_UNKNOWN = 1e-4;

/** So small a part of its own uncertainty does nobody any good: of a value that the readings hardly see, or of a reading. */
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

/** Outcome of the iteration: settled, or a branch that ran away towards open or down to a short, or unknowns that come to no rest. */
export type Iterated =
  | { readonly state: "restless" }
  | { readonly state: "runaway"; readonly id: string }
  | { readonly state: "shorted"; readonly id: string; readonly standardUncertainty: number }
  | {
      readonly state: "settled";
      readonly values: readonly number[];
      readonly fit: LeastSquaresFit;
      readonly predicted: readonly number[];
      /** Positions of the unknowns that readings of this kind cannot determine. */
      readonly unknown: ReadonlySet<number>;
    };

/** Design of the true readings at given values: predicted values and one row of slopes for each observation. */
function linearise(
  setting: Setting,
  observations: readonly Observation[],
  network: Network,
  ids: readonly string[],
): { readonly values: number[]; readonly design: number[][] } {
  const withLeads = setting.leads !== "taken off";
  const rows = observations.map(({ reading }) =>
    reading === null ? { value: 0, slopes: ids.map(() => 0) } : predict(network, reading, ids),
  );
  return {
    values: rows.map((row) => row.value),
    design: rows.map((row) => (withLeads ? [...row.slopes, 1] : row.slopes)),
  };
}

/**
 * Positions of the unknowns that readings of this kind cannot determine, whatever they show. Judged at values that are equal
 * in no way, because at equal ones a combination can look determined, or not, by accident.
 */
function structurallyUnknown(
  setting: Setting,
  observations: readonly Observation[],
  ids: readonly string[],
  start: Network,
): ReadonlySet<number> {
  let network = start;
  ids.forEach((id, k) => {
    // The golden ratio's multiples modulo 1 never repeat and lie evenly.
    const spread = 1 + 0.3 * ((k * 0.6180339887498949) % 1);
    const nominal = findBranch({ network: start, id }).resistance as number;
    network = withResistance({ network, id, resistance: (nominal * spread) as Ohms });
  });
  const { design } = linearise(setting, observations, network, ids);
  const { estimates } = leastSquares({
    design,
    observed: observations.map(() => 0),
    uncertainty: observations.map((one) => one.uncertainty),
  });
  return new Set(estimates.flatMap((estimate, k) => (estimate === null ? [k] : [])));
}

/** Weight of the pull towards nominal, in relative uncertainty: far weaker than any reading, it only breaks ties. */
const PULL = 1e4;

/**
 * Steps after which the pull lets go. Where one reading is far off and many branches share it, each step along the pull leads past
 * what the readings ask for, and round in a circle; where it stands by then the ties are broken, and the readings alone settle it.
 */
const PULL_STEPS = 50;

/** Steps after which only half a step is taken: what still goes to and fro comes to rest between. */
const HALF_STEPS = 100;

/** Once the pull has let go only readings count, and an unknown may creep on as long as they see no more of it than this part of theirs. */
const SEEN_UNPULLED = 1e-3;

/**
 * Gauss-Newton: exact in one step for a star alone, a few steps where branches lie in parallel.
 *
 * Unknowns that the readings cannot determine are pulled, ever so weakly, towards nominal (the leads towards 0). That shares a
 * combination out evenly, so that which of two like branches moves does not hang on their order, and none of them is ever taken for
 * open or shorted.
 */
export function gaussNewton(setting: Setting, ids: readonly string[], start: Network): Iterated {
  const observations = observationsOf(setting);
  const withLeads = setting.leads !== "taken off";
  const nominal = ids.map((id) => findBranch({ network: start, id }).resistance as number);
  const highest = observations.reduce((most, { value }) => Math.max(most, value), 0);
  const typical = Math.max(...nominal, 0) || 1;
  const unknown = structurallyUnknown(setting, observations, ids, start);
  const pulled = [...unknown].map((k) => ({
    k,
    towards: nominal[k] ?? 0,
    uncertainty: PULL * (nominal[k] ?? typical),
  }));
  let network = start;
  let values: readonly number[] = nominal;
  let leads = 0;
  // Unknowns that have come to an edge stay there: nothing says that they are open or shorted, and nothing would bring them back.
  const held = new Set<number>();
  let step = Number.POSITIVE_INFINITY;
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const { values: bare, design } = linearise(setting, observations, network, ids);
    const predicted = bare.map((value) => value + leads);
    const current = withLeads ? [...values, leads] : values;
    const observed = observations.map((one, k) => one.value - (predicted[k] as number));
    const uncertainty = observations.map((one) => one.uncertainty);
    const fit = leastSquares({ design, observed, uncertainty });
    if (step < 1) return { state: "settled", values: current, fit, predicted, unknown };
    const rows = [...design, ...pulled.map(({ k }) => current.map((_, j) => (j === k ? 1 : 0)))];
    const moves =
      pulled.length === 0
        ? fit.particular
        : leastSquares({
            design: rows.map((row) => row.map((slope, j) => (held.has(j) ? 0 : slope))),
            observed: [
              ...observed,
              ...pulled.map(({ k, towards }) => (i < PULL_STEPS ? towards - (current[k] as number) : 0)),
            ],
            uncertainty: [...uncertainty, ...pulled.map((one) => one.uncertainty)],
          }).particular;
    // A resistance never crosses zero: from below a tenth of itself it is approached, not jumped over.
    const stride = i < HALF_STEPS ? 1 : 0.5;
    const next = values.map((value, k) => Math.max(value + stride * (moves[k] as number), value / 10));
    const most = (k: number): number => RUNAWAY * Math.max(nominal[k] as number, highest);
    const least = (k: number): number => FLOOR * (nominal[k] as number);
    for (const k of unknown) {
      const value = next[k];
      if (value === undefined || (value > least(k) && value < most(k))) continue;
      held.add(k);
      next[k] = value < most(k) ? least(k) : most(k);
    }
    const away = next.findIndex((value, k) => value > most(k));
    if (away >= 0) return { state: "runaway", id: ids[away] as string };
    const low = next.findIndex((value, k) => value < least(k));
    if (low >= 0) {
      const variance = fit.covariance[low]?.[low] ?? 0;
      return { state: "shorted", id: ids[low] as string, standardUncertainty: Math.sqrt(variance) };
    }
    const allowed = (k: number, size: number): number => {
      const variance = fit.covariance[k]?.[k] ?? null;
      if (unknown.has(k) && i >= PULL_STEPS) return Number.POSITIVE_INFINITY;
      const settled = unknown.has(k) ? SETTLED_UNKNOWN : SETTLED;
      return Math.max(settled * size, variance === null ? 0 : SETTLED_UNCERTAINTY * Math.sqrt(variance));
    };
    step = next.reduce(
      (most, value, k) => Math.max(most, Math.abs(value - (values[k] as number)) / allowed(k, value)),
      0,
    );
    if (withLeads) {
      const move = stride * (moves[ids.length] as number);
      leads += move;
      step = Math.max(step, Math.abs(move) / allowed(ids.length, Math.max(...next, Math.abs(leads))));
    }
    design.forEach((row, k) => {
      const moved = (j: number): number => (next[j] ?? leads) - (current[j] as number);
      const seen = row.reduce((sum, slope, j) => sum + slope * moved(j), 0);
      const part = i < PULL_STEPS ? SETTLED_UNCERTAINTY : SEEN_UNPULLED;
      step = Math.max(step, Math.abs(seen) / (part * (uncertainty[k] as number)));
    });
    values = next;
    ids.forEach((id, k) => {
      network = withResistance({ network, id, resistance: next[k] as Ohms });
    });
  }
  // What readings do not determine is no error, and neither is that they leave no way to share it out.
  if (unknown.size > 0) return { state: "restless" };
  return fail({
    code: "no-convergence",
    path: "readings",
    expected: `a fit that settles within ${MOST_STEPS} steps`,
    received: `last step ${step.toPrecision(3)} times what is allowed`,
  });
}

/** What is known of a hypothesis once it is weighed, and the grounds that faults are weighed on. */

import type { Atom, Insertion, Stretch } from "../faults/atom.ts";
import type { InsulationShown } from "../likelihood/insulation.ts";
import { logLikelihood, type Model } from "../likelihood/model.ts";
import { type Baseline, baselineOf } from "../likelihood/quick.ts";
import { type CutResponse, cutResponse, inserted } from "../network/change.ts";
import type { Cut } from "../network/rows.ts";
import type { Frame, State } from "../network/state.ts";
import type { FaultEstimate } from "../question/types.ts";
import type { Names } from "./names.ts";

/** Parameter of a fault in a finding. */
export interface Parameter {
  readonly of: FaultEstimate["of"];
  /** Where it can lie beforehand. */
  readonly stretches: readonly Stretch[];
  readonly fault: number;
}

/** Values of one parameter, and ln of what each contributes to the evidence. */
export interface Marginal extends Parameter {
  readonly values: readonly number[];
  readonly logTerms: readonly number[];
}

/** A hypothesis after its evidence has been weighed. */
export interface Finding {
  readonly model: Model;
  readonly names: Names;
  /** ln of the marginal likelihood. */
  readonly log: number;
  /** Points in parameter space, one list of values for each, and ln of what each contributes to the evidence. */
  readonly parameters: readonly Parameter[];
  readonly points: readonly (readonly number[])[];
  readonly logTerms: readonly number[];
  /** What it says of each parameter, where its points do not say it or say it at length. */
  readonly completed: (() => readonly Marginal[]) | undefined;
  /** The point of the highest likelihood. */
  readonly best: readonly number[];
  /** For earth faults: what the insulation readings in its way show, alike where they do not tell places apart. */
  readonly earthed: string | undefined;
  /** For earth faults: what an insulation row, taken or planned, shows at a point; null where the fault is not in its way. */
  readonly insulation: InsulationShown | undefined;
  /** Leaves prediction and evaluation of the model as they are at a point; returns ln likelihood there. */
  readonly visit: (point: readonly number[]) => number;
  /** Means of the Gaussian readings at a point, by row, where they can be had without all that goes with a visit. */
  readonly means: ((point: readonly number[], into: Float64Array) => void) | undefined;
  /** Of a finding without a parameter: its visit under other readings in the same places. */
  readonly under: ((other: Model) => Finding["visit"]) | undefined;
}

/** Evidence of a family of one parameter, and where it comes from. */
export type Weighted = Pick<Finding, "log" | "points" | "logTerms" | "best">;

/** A finding, always of one and the same shape: engines are slow with objects put together piece by piece. */
export function findingOf(
  model: Model,
  names: Names,
  parameters: readonly Parameter[],
  { log, points, logTerms, best }: Weighted,
  visit: Finding["visit"],
  means?: Finding["means"],
  { completed, earthed, insulation, under }: Own = NOTHING_OWN,
): Finding {
  return {
    model,
    names,
    log,
    parameters,
    points,
    logTerms,
    best,
    visit,
    means,
    completed,
    earthed,
    insulation,
    under,
  };
}

/** What only some kinds of fault have. */
type Own = Pick<Finding, "completed" | "earthed" | "insulation" | "under">;

const NOTHING_OWN: Own = {
  completed: undefined,
  earthed: undefined,
  insulation: undefined,
  under: undefined,
};

/** A finding without a parameter, given by its visit under any readings. */
export function fixedFinding(model: Model, names: Names, under: (other: Model) => Finding["visit"]): Finding {
  const visit = under(model);
  const own = { completed: undefined, earthed: undefined, insulation: undefined, under };
  return findingOf(model, names, [], onePoint(visit([])), visit, undefined, own);
}

/** A state of the network that has nothing left to choose. */
export const stateFinding = (model: Model, state: State, names: Names): Finding =>
  fixedFinding(model, names, (other) => () => logLikelihood(other, state));

/** The same finding under other names, or with its parameters told otherwise. */
export function renamed(finding: Finding, names: Names, completed: Finding["completed"]): Finding {
  const { model, parameters, visit, means, earthed, insulation, under } = finding;
  return findingOf(model, names, parameters, finding, visit, means, {
    completed,
    earthed,
    insulation,
    under,
  });
}

/** The points of a finding without a parameter: one, of no values. */
const ONE_POINT: Finding["points"] = [[]];

/** The evidence of a fault without a parameter. */
const onePoint = (log: number): Weighted => ({
  log,
  points: ONE_POINT,
  logTerms: [log],
  best: ONE_POINT[0] as readonly number[],
});

/** What a finding says of each of its parameters. */
export function marginalsOf({
  parameters,
  points,
  logTerms,
}: Pick<Finding, "parameters" | "points" | "logTerms">): readonly Marginal[] {
  return parameters.map(({ of, stretches, fault }, k) => ({
    of,
    stretches,
    fault,
    values: points.map((point) => point[k] as number),
    logTerms,
  }));
}

/**
 * Puts an insertion's edge change into a state written by insertInto. Across a drawn joint that is open no current says
 * what the drop is: anything up to the line voltage may stand there.
 */
export function setEdge(frame: Frame, state: State, edge: number, insertion: Insertion): void {
  if (edge < 0) return;
  const { cold, resistance, variance } = insertion;
  state.resistance[edge] = resistance;
  state.variance[edge] = variance;
  if (state.live === null || cold !== Number.POSITIVE_INFINITY) return;
  for (let k = 0; k < frame.liveRows.length; k += 1) {
    const row = frame.rows[frame.liveRows[k] as number];
    if (row?.kind === "drop" && row.edge === edge) state.live.adrift[k] = 1;
  }
}

/** A fault without parameter put into a state for good. */
export function applied(model: Model, ground: Ground, atom: Atom, insertion: Insertion): State {
  const response = responseOn(model, ground, atom);
  const next = inserted(model.frame, ground.state, response, insertion.cold, insertion.hot);
  setEdge(model.frame, next, atom.edge, insertion);
  return next;
}

/** The sound module of a wiring. */
export const soundFinding = (model: Model, names: Names): Finding => stateFinding(model, model.sound, names);

/** What a finding on top of others starts from. */
export interface Ground {
  readonly state: State;
  /** Evaluated when the first family is weighed on it. */
  readonly base: () => Baseline;
  readonly names: Names;
  /** Responses of cuts on this state, as far as they have been asked for: several faults sit in one cut. */
  readonly responses: Map<Cut, CutResponse>;
}

/** A state with names before whatever is found on it. */
export const groundOf = (model: Model, state: State, names: Names): Ground =>
  grounded(model, state, names, new Map());

/** The same ground under other readings in the same places. */
export const regrounded = (model: Model, { state, names, responses }: Ground): Ground =>
  grounded(model, state, names, responses);

function grounded(model: Model, state: State, names: Names, responses: Ground["responses"]): Ground {
  let base: Baseline | null = null;
  return {
    state,
    base: () => {
      base ??= baselineOf(model, state);
      return base;
    },
    names,
    responses,
  };
}

/** The response of a fault's cut on a ground. */
export function responseOn({ frame }: Model, { state, responses }: Ground, { cut, line }: Atom): CutResponse {
  if (line !== undefined) return cutResponse(frame, state, cut, line);
  let known = responses.get(cut);
  if (known === undefined) {
    known = cutResponse(frame, state, cut);
    responses.set(cut, known);
  }
  return known;
}

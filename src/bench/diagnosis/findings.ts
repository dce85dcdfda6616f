/** Hypotheses weighed one by one: marginal likelihood, and what is needed to tell about them afterwards. */
import { type CutResponse, cutResponse, inserted, insertInto } from "./change.ts";
import type { ElementChange } from "./edges.ts";
import { broken, corrected, integrated, isBroken, type Weighted } from "./family.ts";
import {
  type Atom,
  ELEMENT_FAULTS,
  type ElementFault,
  elementInsertion,
  type Insertion,
  type Member,
} from "./faults.ts";
import { logLikelihood, type Model } from "./model.ts";
import { type Names, namesBeside, pairedNames } from "./names.ts";
import { type Baseline, baselineOf, largestChange, logOfMeans, meansOf, rebased } from "./quick.ts";
import { floats } from "./room.ts";
import type { Cut } from "./rows.ts";
import type { Frame, State } from "./state.ts";
import type { FaultEstimate } from "./types.ts";

/** Parameter of a fault in a finding. */
export interface Parameter {
  readonly of: FaultEstimate["of"];
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
  /** Where a fault was weighed as scatter: the parameters of all faults, each given the others. */
  readonly completed: (() => readonly Marginal[]) | undefined;
  /** The point of the highest likelihood. */
  readonly best: readonly number[];
  /** For earth faults: which insulation readings it lies in the way of. */
  readonly earthed: string | undefined;
  /** For earth faults: whether an insulation row, taken or planned, would find it. */
  readonly reached: ((row: number) => boolean) | undefined;
  /** Leaves prediction and evaluation of the model as they are at a point; returns ln likelihood there. */
  readonly visit: (point: readonly number[]) => number;
  /** Means of the Gaussian readings at a point, by row, where they can be had without all that goes with a visit. */
  readonly means: ((point: readonly number[], into: Float64Array) => void) | undefined;
}

/** A finding, always of one and the same shape: engines are slow with objects put together piece by piece. */
export function findingOf(
  model: Model,
  names: Names,
  parameters: readonly Parameter[],
  { log, points, logTerms, best }: Weighted,
  visit: Finding["visit"],
  means?: Finding["means"],
  { earthed, reached }: Pick<Finding, "earthed" | "reached"> = NOT_EARTHED,
): Finding {
  const completed = undefined;
  return { model, names, log, parameters, points, logTerms, best, visit, means, completed, earthed, reached };
}

const NOT_EARTHED: Pick<Finding, "earthed" | "reached"> = { earthed: undefined, reached: undefined };

/** The same finding under other names, or with its parameters told otherwise. */
export function renamed(
  { model, log, parameters, points, logTerms, best, visit, means, earthed, reached }: Finding,
  names: Names,
  completed: Finding["completed"],
): Finding {
  return { model, names, log, parameters, points, logTerms, best, visit, means, completed, earthed, reached };
}

/** The points of a finding without a parameter: one, of no values. */
const ONE_POINT: Finding["points"] = [[]];

/** The evidence of a fault without a parameter. */
const only = (log: number): Weighted => ({
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
  return parameters.map(({ of, fault }, k) => ({
    of,
    fault,
    values: points.map((point) => point[k] as number),
    logTerms,
  }));
}

const parametersOf = ({ of }: Atom, fault: number): readonly Parameter[] =>
  of === null ? [] : [{ of, fault }];

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
export function soundFinding(model: Model, names: Names): Finding {
  const visit = (): number => logLikelihood(model, model.sound);
  return findingOf(model, names, [], only(visit()), visit);
}

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
export function groundOf(model: Model, state: State, names: Names): Ground {
  let base: Baseline | null = null;
  return {
    state,
    base: () => {
      base ??= baselineOf(model, state);
      return base;
    },
    names,
    responses: new Map(),
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

/** Nats above the floor (itself 30 below the best) from which a family is evaluated in full: a share of a thousandth, or of a millionth where it changes the readings much. */
const IN_FULL = 23;
const IN_FULL_IF_LARGE = 16;
const LARGE = 0.15;

/**
 * Points of a posterior at which the quick evidence is corrected; nats by which the corrections may differ from one to the
 * next on the ground's covariance, where a better one can be had, and on that of the peak.
 */
const CORRECTIONS = 5;
const AGREED = 0.4;
const DISAGREEMENT = 1;

/** Weighs one fault on a ground. `floor`: evidence below it is only estimated. */
export function weigh(model: Model, ground: Ground, atom: Atom, floor: number, named?: Names): Finding {
  const { frame, scratch } = model;
  const { state } = ground;
  const response = responseOn(model, ground, atom);
  const visitAt = (value: number): number => {
    const insertion = atom.insertion(value);
    insertInto(scratch, frame, state, response, insertion.cold, insertion.hot);
    setEdge(frame, scratch, atom.edge, insertion);
    return logLikelihood(model, scratch);
  };
  const visit = (point: readonly number[]): number => visitAt(point[0] ?? 0);
  const names = named ?? namesBeside(ground.names, atom.members);
  if (atom.of === null) return findingOf(model, names, [], only(visitAt(0)), visit);
  const parameters = parametersOf(atom, names.faults - 1);
  if (isBroken(atom)) return findingOf(model, names, parameters, broken(atom, visit), visit);
  const base = ground.base();
  const means = meansOf(model, state, base, response, atom.edge);
  const [now, work] = [floats(base.count), floats(base.count)];
  const quickOn =
    (on: Baseline) =>
    (value: number): number => {
      means(atom.insertion(value), now);
      return logOfMeans(on, now, work) + base.healthyInsulation;
    };
  const found = (weighted: Weighted): Finding =>
    findingOf(model, names, parameters, weighted, visit, (point, into) => {
      means(atom.insertion(point[0] as number), now);
      for (let i = 0; i < base.count; i += 1) into[base.active[i] as number] = now[i] as number;
    });
  const quick = quickOn(base);
  const rough = integrated(atom.stretches, quick, floor, { f: quick, residual: work });
  if (rough.log < floor + IN_FULL_IF_LARGE) return found(rough);
  const peak = rough.best[0] as number;
  means(atom.insertion(peak), now);
  const change = largestChange(base, now);
  if (change < LARGE) {
    if (rough.log < floor + IN_FULL) return found(rough);
    const full = corrected(rough, quick, visitAt, CORRECTIONS, AGREED);
    if (full !== null) return found(full);
  }
  // The covariance is no longer that of the ground: the fault is weighed on that of its peak.
  const near = quickOn(rebased(model, base, visitAt(peak)));
  const full = corrected(integrated(atom.stretches, near, floor), near, visitAt, CORRECTIONS, DISAGREEMENT);
  return found(full ?? integrated(atom.stretches, visitAt, floor));
}

/** What a fault of an element does to it in its string. */
export function elementChange(
  { string, position }: Member,
  kind: Atom["kind"],
  value: number,
): ElementChange {
  const { factor } = ELEMENT_FAULTS.find((one) => one.kind === kind) as ElementFault;
  return { string, position, factor: factor(value) };
}

/**
 * Pairs of element faults on one edge, each pair on its own, all pairs alike: as many cases as there are ways to sit beside
 * or behind one another.
 */
export function sameEdge(
  model: Model,
  sound: Ground,
  alike: readonly (readonly [Atom, Atom])[],
  floor: number,
): Finding[] {
  const [first, second] = alike[0] as readonly [Atom, Atom];
  const edge = model.wiring.edges[first.edge];
  if (edge === undefined || edge.joint) return [];
  const cases = new Map<string, [Member, Member][]>();
  for (const [one, other] of alike) {
    one.members.forEach((a, i) => {
      other.members.forEach((b, j) => {
        if (a.string === b.string && a.position === b.position) return;
        if (one === other && j <= i) return;
        const key = a.string === b.string ? "string" : "beside";
        const list = cases.get(key);
        if (list === undefined) cases.set(key, [[a, b]]);
        else list.push([a, b]);
      });
    });
  }
  return [...cases.values()].map((pairs) => {
    const [a, b] = pairs[0] as [Member, Member];
    // Only the later fault may have a parameter here; the caller orders them so.
    const { kind, members, cut, edge: own, line, stretches, of } = second;
    const hot = model.frame.hot[first.edge] as number;
    const insertion = (value: number): Insertion =>
      elementInsertion(edge, hot, [elementChange(a, first.kind, 0), elementChange(b, second.kind, value)]);
    const both: Atom = { kind, members, cut, edge: own, line, stretches, of, insertion };
    return weigh(model, sound, both, floor, pairedNames(pairs));
  });
}

/** Hypotheses weighed one by one: marginal likelihood, and what is needed to tell about them afterwards. */
import { type CutResponse, cutResponse, inserted, insertInto, scratchOf } from "./change.ts";
import type { ElementChange } from "./edges.ts";
import { broken, corrected, integrated, isBroken } from "./family.ts";
import {
  type Atom,
  ELEMENT_FAULTS,
  type ElementFault,
  elementInsertion,
  type Insertion,
  type Member,
} from "./faults.ts";
import { logLikelihood, type Model } from "./model.ts";
import { type Baseline, baselineOf, largestChange, logOfMeans, meansOf, rebased } from "./quick.ts";
import type { Frame, State } from "./state.ts";
import type { DiagnosedFault, FaultEstimate } from "./types.ts";
import type { Unseen } from "./unseen.ts";

/** Parameter of a fault in a finding. */
export interface Parameter {
  readonly of: FaultEstimate["of"];
  readonly fault: number;
}

/** One explanation under each of its names. */
export interface Named {
  readonly faults: readonly DiagnosedFault[];
  readonly logOdds: number;
  /** The last of its faults, where no reading can show them. */
  readonly unseen?: readonly Unseen[];
}

/** Points in parameter space, one list of values for each, and ln of what each contributes to the evidence. */
export interface Estimated {
  readonly parameters: readonly Parameter[];
  readonly points: readonly (readonly number[])[];
  readonly logTerms: readonly number[];
}

/** A hypothesis after its evidence has been weighed. */
export interface Finding extends Estimated {
  readonly model: Model;
  readonly names: readonly Named[];
  /** ln of the marginal likelihood. */
  readonly log: number;
  /** Where a fault was weighed as scatter: the parameters of all faults, each given the others. */
  readonly completed?: () => Estimated;
  /** The point of the highest likelihood. */
  readonly best: readonly number[];
  /** For earth faults: which insulation readings it lies in the way of. */
  readonly earthed?: string;
  /** For earth faults: whether an insulation row, taken or planned, would find it. */
  readonly reached?: (row: number) => boolean;
  /** Leaves prediction and evaluation of the model as they are at a point; returns ln likelihood there. */
  readonly visit: (point: readonly number[]) => number;
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
export function applied(model: Model, state: State, atom: Atom, insertion: Insertion): State {
  const response = cutResponse(model.frame, state, atom.cut, atom.line);
  const next = inserted(model.frame, state, response, insertion.cold, insertion.hot);
  setEdge(model.frame, next, atom.edge, insertion);
  return next;
}

/** The sound module of a wiring. */
export function soundFinding(model: Model, faults: readonly DiagnosedFault[], logOdds: number): Finding {
  const visit = (): number => logLikelihood(model, model.sound);
  const log = visit();
  return {
    model,
    names: [{ faults, logOdds }],
    log,
    parameters: [],
    points: [[]],
    logTerms: [log],
    best: [],
    visit,
  };
}

export const namesOf = (members: readonly Member[], before: readonly Named[]): Named[] =>
  before.flatMap(({ faults, logOdds }) =>
    members.map(({ fault, odds }) => ({ faults: [...faults, fault], logOdds: logOdds + Math.log(odds) })),
  );

/** Something inserted in one cut, its size hanging on no or one parameter. */
interface Slot {
  readonly response: CutResponse;
  readonly edge: number;
  readonly insertion: (value: number) => Insertion;
}

function visitor(model: Model, state: State, slot: Slot): (value: number) => number {
  const scratch = scratchOf(state);
  return (value) => {
    const insertion = slot.insertion(value);
    insertInto(scratch, model.frame, state, slot.response, insertion.cold, insertion.hot);
    setEdge(model.frame, scratch, slot.edge, insertion);
    return logLikelihood(model, scratch);
  };
}

/** What a finding on top of others starts from. */
export interface Ground {
  readonly state: State;
  readonly base: Baseline;
  readonly names: readonly Named[];
  /** Faults in it already. */
  readonly faults: number;
}

/** Nats above the floor (itself 30 below the best) from which a family is evaluated in full: a share of a thousandth, or of a millionth where it changes the readings much. */
const IN_FULL = 23;
const IN_FULL_IF_LARGE = 16;
const LARGE = 0.15;

/** Relative change of a reading beyond which the covariance is taken at the peak of the fault and no longer on its ground. */
const SMALL = 0.03;

/** Weighs one fault on a ground. `floor`: evidence below it is only estimated. */
export function weigh(
  model: Model,
  ground: Ground,
  atom: Atom,
  floor: number,
  names?: readonly Named[],
): Finding {
  const { state, base, faults } = ground;
  const slot: Slot = {
    response: cutResponse(model.frame, state, atom.cut, atom.line),
    edge: atom.edge,
    insertion: atom.insertion,
  };
  let at: ((value: number) => number) | null = null;
  const visit = (point: readonly number[]): number => {
    at ??= visitor(model, state, slot);
    return at(point[0] ?? 0);
  };
  const named = names ?? namesOf(atom.members, ground.names);
  if (atom.of === null) {
    const log = visit([]);
    return { model, names: named, log, parameters: [], points: [[]], logTerms: [log], best: [], visit };
  }
  if (isBroken(atom))
    return { ...broken(atom, visit), model, names: named, parameters: parametersOf(atom, faults), visit };
  const means = meansOf(model, state, base, slot.response, atom.edge);
  const [now, work] = [new Float64Array(base.count), new Float64Array(base.count)];
  const quickOn =
    (ground: Baseline) =>
    (value: number): number => {
      means(atom.insertion(value), now);
      return logOfMeans(ground, now, work) + base.healthyInsulation;
    };
  const quick = quickOn(base);
  const shell = { model, names: named, parameters: parametersOf(atom, faults), visit };
  const rough = integrated(atom.stretches, quick, floor);
  if (rough.log < floor + IN_FULL_IF_LARGE) return { ...shell, ...rough };
  means(atom.insertion(rough.best[0] as number), now);
  if (rough.log < floor + IN_FULL && largestChange(base, now) < LARGE) return { ...shell, ...rough };
  const peak = rough.best[0] as number;
  const near = largestChange(base, now) < SMALL ? quick : quickOn(rebased(model, base, visit([peak])));
  const better = near === quick ? rough : integrated(atom.stretches, near, floor);
  const full = corrected(better, near, (value) => visit([value]));
  return { ...shell, ...(full ?? integrated(atom.stretches, (value) => visit([value]), floor)) };
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

/** Two opens of elements, on different edges or side by side on one. */
export function twoOpens(
  model: Model,
  first: Atom,
  second: Atom,
  opened: ReadonlyMap<Atom, State>,
): Finding[] {
  if (first.edge !== second.edge) {
    const state = opened.get(first) as State;
    const ground: Ground = {
      state,
      base: baselineOf(model, state),
      names: namesOf(first.members, [{ faults: [], logOdds: 0 }]),
      faults: 1,
    };
    return [weigh(model, ground, second, Number.NEGATIVE_INFINITY)];
  }
  return sameEdge(model, first, second, Number.NEGATIVE_INFINITY);
}

/** Two element faults on one edge: as many cases as there are ways to sit beside or behind one another. */
export function sameEdge(model: Model, first: Atom, second: Atom, floor: number): Finding[] {
  const edge = model.wiring.edges[first.edge];
  if (edge === undefined || edge.joint) return [];
  const cases = new Map<string, [Member, Member][]>();
  first.members.forEach((a, i) => {
    second.members.forEach((b, j) => {
      if (a.string === b.string && a.position === b.position) return;
      if (first === second && j <= i) return;
      const key = a.string === b.string ? "string" : "beside";
      const list = cases.get(key);
      if (list === undefined) cases.set(key, [[a, b]]);
      else list.push([a, b]);
    });
  });
  return [...cases.values()].map((pairs) => {
    const [a, b] = pairs[0] as [Member, Member];
    const names = pairs.map(([x, y]) => ({
      faults: [x.fault, y.fault],
      logOdds: Math.log(x.odds) + Math.log(y.odds),
    }));
    const ground: Ground = {
      state: model.sound,
      base: baselineOf(model, model.sound),
      names: [],
      faults: 1,
    };
    // Only the later fault may have a parameter here; the caller orders them so.
    const both: Atom = {
      ...second,
      insertion: (value) =>
        elementInsertion(edge, model.frame.hot[first.edge] as number, [
          elementChange(a, first.kind, 0),
          elementChange(b, second.kind, value),
        ]),
    };
    return weigh(model, ground, both, floor, names);
  });
}

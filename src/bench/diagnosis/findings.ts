/** Hypotheses weighed one by one: marginal likelihood, and what is needed to tell about them afterwards. */
import { type CutResponse, cutResponse, inserted, insertInto, scratchOf } from "./change.ts";
import type { ElementChange } from "./edges.ts";
import {
  type Atom,
  ELEMENT_FAULTS,
  type ElementFault,
  elementInsertion,
  type Insertion,
  type Member,
  parameterAt,
} from "./faults.ts";
import { logSumExp } from "./linear.ts";
import { logLikelihood, type Model } from "./model.ts";
import { logIntegral } from "./quadrature.ts";
import type { State } from "./state.ts";
import type { DiagnosedFault, FaultEstimate } from "./types.ts";

/** Parameter of a fault in a finding. */
export interface Parameter {
  readonly of: FaultEstimate["of"];
  readonly fault: number;
}

/** One explanation under each of its names. */
export interface Named {
  readonly faults: readonly DiagnosedFault[];
  readonly logOdds: number;
}

/** A hypothesis after its evidence has been weighed. */
export interface Finding {
  readonly model: Model;
  readonly names: readonly Named[];
  /** ln of the marginal likelihood. */
  readonly log: number;
  readonly parameters: readonly Parameter[];
  /** Points in parameter space, one list of values for each, and ln of what each contributes to the evidence. */
  readonly points: readonly (readonly number[])[];
  readonly logTerms: readonly number[];
  /** The point of the highest likelihood. */
  readonly best: readonly number[];
  /** For earth faults: which insulation readings it lies in the way of. */
  readonly earthed?: string;
  /** For earth faults: whether an insulation row, taken or planned, would find it. */
  readonly reached?: (row: number) => boolean;
  /** Leaves prediction and evaluation of the model as they are at a point; returns ln likelihood there. */
  readonly visit: (point: readonly number[]) => number;
}

/** Puts an insertion's edge change into a state written by insertInto. */
export function setEdge(state: State, edge: number, { resistance, variance }: Insertion): void {
  if (edge < 0) return;
  state.resistance[edge] = resistance;
  state.variance[edge] = variance;
}

/** A fault without parameter put into a state for good. */
export function applied(model: Model, state: State, atom: Atom, insertion: Insertion): State {
  const response = cutResponse(model.frame, state, atom.cut, atom.line);
  const next = inserted(model.frame, state, response, insertion.cold, insertion.hot);
  setEdge(next, atom.edge, insertion);
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
    setEdge(scratch, slot.edge, insertion);
    return logLikelihood(model, scratch);
  };
}

/** What a finding on top of others starts from. */
export interface Ground {
  readonly state: State;
  readonly names: readonly Named[];
  /** Parameters already spent below this one are none: a ground has a fixed state. */
  readonly faults: number;
}

/** Weighs one fault on a ground. `floor`: evidence below it is only estimated. */
export function weigh(
  model: Model,
  ground: Ground,
  atom: Atom,
  floor: number,
  names?: readonly Named[],
): Finding {
  const { state } = ground;
  const slot: Slot = {
    response: cutResponse(model.frame, state, atom.cut, atom.line),
    edge: atom.edge,
    insertion: atom.insertion,
  };
  const at = visitor(model, state, slot);
  const visit = (point: readonly number[]): number => at(point[0] ?? 0);
  const named = names ?? namesOf(atom.members, ground.names);
  return stretched(model, named, atom, ground.faults, visit, floor);
}

function stretched(
  model: Model,
  names: readonly Named[],
  atom: Atom,
  fault: number,
  visit: (point: readonly number[]) => number,
  floor: number,
): Finding {
  if (atom.of === null) {
    const log = visit([]);
    return { model, names, log, parameters: [], points: [[]], logTerms: [log], best: [], visit };
  }
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  let best: readonly number[] = [];
  let bestLog = Number.NEGATIVE_INFINITY;
  for (const stretch of atom.stretches) {
    const shift = Math.log(stretch.part);
    const integral = logIntegral((t) => visit([parameterAt(stretch, t)]), floor);
    integral.nodes.forEach((t, i) => {
      points.push([parameterAt(stretch, t)]);
      logTerms.push((integral.logTerms[i] as number) + shift);
    });
    if (integral.bestLog > bestLog) {
      bestLog = integral.bestLog;
      best = [parameterAt(stretch, integral.best)];
    }
  }
  return {
    model,
    names,
    log: logSumExp(logTerms),
    parameters: [{ of: atom.of, fault }],
    points,
    logTerms,
    best,
    visit,
  };
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
    const ground: Ground = {
      state: opened.get(first) as State,
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
    const ground: Ground = { state: model.sound, names: [], faults: 0 };
    // Only the later fault may have a parameter here; the caller orders them so.
    const both: Atom = {
      ...second,
      insertion: (value) =>
        elementInsertion(edge, model.frame.hot[first.edge] as number, [
          elementChange(a, first.kind, 0),
          elementChange(b, second.kind, value),
        ]),
    };
    return weigh(model, { ...ground, faults: 1 }, both, floor, names);
  });
}

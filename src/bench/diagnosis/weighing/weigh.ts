/** One fault weighed on a ground: its marginal likelihood, quickly where that serves and in full where it counts. */

import type { Atom, Insertion, Member } from "../faults/atom.ts";
import { ELEMENT_FAULTS, type ElementFault, elementInsertion } from "../faults/faults.ts";
import { logLikelihood, type Model } from "../likelihood/model.ts";
import {
  type Baseline,
  largestChange,
  logOfMeans,
  type Means,
  meansInto,
  meansOf,
  rebased,
} from "../likelihood/quick.ts";
import { NO_MORE } from "../likelihood/screen.ts";
import { type CutResponse, insertInto } from "../network/change.ts";
import type { ElementChange } from "../network/edges.ts";
import type { State } from "../network/state.ts";
import { floats } from "../numbers/room.ts";
import { broken, corrected, integrated, isBroken } from "./family.ts";
import {
  type Finding,
  findingOf,
  fixedFinding,
  type Ground,
  type Parameter,
  responseOn,
  setEdge,
  type Weighted,
} from "./findings.ts";
import { type Names, namesBeside, pairedNames } from "./names.ts";

/** Nats above the floor (itself 22 below the best) from which a family is evaluated in full: whatever can be listed, and a share of a millionth where it changes the readings much. */
const IN_FULL = 12;
const IN_FULL_IF_LARGE = 8;
const LARGE = 0.15;

/**
 * Relative change of a reading up to which the ground's covariance and few corrections do; points of a posterior at which quick
 * evidence is corrected; nats by which the corrections may differ from one to the next on the ground's covariance, where a better one
 * can be had (0.2 already moves a probability by half a percent), and where none can.
 */
const SMALL = 0.03;
const CORRECTIONS = 5;
const CORRECTIONS_IF_SMALL = 3;
const AGREED = 0.05;
const DISAGREEMENT = 1;

/** ln likelihood, in full, with a fault on a ground at a value; prediction and evaluation are left there. */
function visitAt(model: Model, state: State, response: CutResponse, atom: Atom, value: number): number {
  const { frame, scratch } = model;
  const insertion = atom.insertion(value);
  insertInto(scratch, frame, state, response, insertion.cold, insertion.hot);
  setEdge(frame, scratch, atom.edge, insertion);
  return logLikelihood(model, scratch);
}

/** A fault of one parameter being weighed quickly. */
interface Quick {
  readonly atom: Atom;
  readonly means: Means;
  /** Work space: means, whitened residuals, those of the point before. */
  readonly now: Float64Array;
  readonly work: Float64Array;
  readonly before: Float64Array;
}

function quickAt({ atom, means, now, work }: Quick, on: Baseline, value: number): number {
  meansInto(means, atom.insertion(value), now);
  return logOfMeans(on, now, work) + on.healthyInsulation;
}

const parametersOf = ({ of, stretches }: Atom, fault: number): readonly Parameter[] =>
  of === null ? [] : [{ of, stretches, fault }];

/** Weighs one fault on a ground. `floor`: evidence below it is only estimated. */
export function weigh(model: Model, ground: Ground, atom: Atom, floor: number, named?: Names): Finding {
  const { state } = ground;
  const response = responseOn(model, ground, atom);
  const names = named ?? namesBeside(ground.names, atom.members);
  if (atom.of === null) {
    return fixedFinding(model, names, (other) => () => visitAt(other, state, response, atom, 0));
  }
  const full = (value: number): number => visitAt(model, state, response, atom, value);
  const visit = (point: readonly number[]): number => full(point[0] as number);
  const parameters = parametersOf(atom, names.faults - 1);
  if (isBroken(atom)) return findingOf(model, names, parameters, broken(atom, visit), visit);
  const base = ground.base();
  const { count, active } = base;
  const means = meansOf(model, state, base, response, atom.edge);
  const family: Quick = { atom, means, now: floats(count), work: floats(count), before: floats(count) };
  const weighted = familyEvidence(model, base, family, full, floor);
  return findingOf(model, names, parameters, weighted, visit, (point, into) => {
    const { now } = family;
    meansInto(means, atom.insertion(point[0] as number), now);
    for (let i = 0; i < count; i += 1) into[active[i] as number] = now[i] as number;
  });
}

/** Evidence of a fault of one parameter: quick, and as near in full as it comes to anything. */
function familyEvidence(
  model: Model,
  base: Baseline,
  family: Quick,
  full: (value: number) => number,
  floor: number,
): Weighted {
  const { atom, means, now, work, before } = family;
  const { stretches } = atom;
  const quick = (value: number): number => quickAt(family, base, value);
  const rough = integrated(stretches, quick, floor, { f: quick, residual: work, before, more: NO_MORE });
  if (rough.log < floor + IN_FULL_IF_LARGE) return rough;
  const peak = rough.best[0] as number;
  meansInto(means, atom.insertion(peak), now);
  const change = largestChange(base, now);
  if (change < LARGE) {
    if (rough.log < floor + IN_FULL) return rough;
    const right =
      change < SMALL
        ? corrected(rough, quick, full, CORRECTIONS_IF_SMALL, DISAGREEMENT)
        : corrected(rough, quick, full, CORRECTIONS, AGREED);
    if (right !== null) return right;
  }
  // The covariance is no longer that of the ground: the fault is weighed on that of its peak.
  const on = rebased(model, base, full(peak));
  const near = (value: number): number => quickAt(family, on, value);
  const right = corrected(integrated(stretches, near, floor), near, full, CORRECTIONS, DISAGREEMENT);
  return right ?? integrated(stretches, full, floor);
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

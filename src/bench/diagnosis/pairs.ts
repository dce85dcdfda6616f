/**
 * Two faults at once. Where one of them has no parameter the other is weighed on the network with the first in it, exactly.
 * Two parameters are first weighed with their effects added, which is exact where they are small; those that come to
 * anything are integrated over the plane.
 */
import { cutResponse, inserted, insertInto, scratchOf } from "./change.ts";
import { type EarthPlace, earthFinding } from "./earth.ts";
import type { Edge } from "./edges.ts";
import {
  type Atom,
  elementInsertion,
  type Insertion,
  type Member,
  parameterAt,
  type Stretch,
} from "./faults.ts";
import {
  applied,
  elementChange,
  type Finding,
  type Ground,
  type Named,
  namesOf,
  sameEdge,
  setEdge,
  weigh,
} from "./findings.ts";
import { forwardInPlace, logSumExp } from "./linear.ts";
import { logLikelihood, type Model } from "./model.ts";
import { heaviest, planeIntegral } from "./nested.ts";
import type { State } from "./state.ts";

/** Nodes along each parameter for the sum of effects. */
const NODES = 12;

/** Nats below the best at which a pair's effects are no longer worth integrating exactly. */
const WORTH = 9;

/** Faults whose peak beats the sound module by this many nats are taken as grounds for every second fault. */
const LEADS = 4;
const MOST_LEADERS = 4;

/** A family of one stretch with its whitened effects on the sound module's readings. */
interface Family {
  readonly atom: Atom;
  readonly stretch: Stretch;
  /** NODES × readings. */
  readonly effects: Float64Array;
  readonly square: Float64Array;
  readonly alone: Float64Array;
}

function familiesOf(model: Model, atoms: readonly Atom[]): { families: Family[]; base: number; m: number } {
  const base = logLikelihood(model, model.sound);
  const { evaluation, prediction, frame, sound } = model;
  const m = evaluation.count;
  const factor = evaluation.factor.slice(0, m * m);
  const active = evaluation.active.slice(0, m);
  const residual = evaluation.residual.slice(0, m);
  const mean = prediction.mean.slice();
  const scratch = scratchOf(sound);
  const families = atoms.flatMap((atom) => {
    const response = cutResponse(frame, sound, atom.cut, atom.line);
    return atom.stretches.map((stretch): Family => {
      const effects = new Float64Array(NODES * m);
      const square = new Float64Array(NODES);
      const alone = new Float64Array(NODES);
      const change = new Float64Array(m);
      for (let k = 0; k < NODES; k += 1) {
        const insertion = atom.insertion(parameterAt(stretch, (k + 0.5) / NODES));
        insertInto(scratch, frame, sound, response, insertion.cold, insertion.hot);
        const edge = atom.edge;
        const [r, v] = [scratch.resistance[edge], scratch.variance[edge]];
        setEdge(scratch, edge, insertion);
        logLikelihood(model, scratch);
        if (edge >= 0) [scratch.resistance[edge], scratch.variance[edge]] = [r as number, v as number];
        for (let i = 0; i < m; i += 1) {
          const at = active[i] as number;
          const now = prediction.mean[at] as number;
          change[i] = Number.isFinite(now) ? now - (mean[at] as number) : 1e6;
        }
        forwardInPlace(factor, m, change);
        effects.set(change, k * m);
        for (let i = 0; i < m; i += 1) {
          square[k] = (square[k] as number) + (change[i] as number) ** 2;
          alone[k] = (alone[k] as number) + (change[i] as number) * (residual[i] as number);
        }
      }
      return { atom, stretch, effects, square, alone };
    });
  });
  return { families, base, m };
}

/** ln of the evidence of two families with their effects added. */
function added(a: Family, b: Family, base: number, m: number): number {
  let most = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (let i = 0; i < NODES; i += 1) {
    for (let j = 0; j < NODES; j += 1) {
      let cross = 0;
      for (let r = 0; r < m; r += 1) {
        cross += (a.effects[i * m + r] as number) * (b.effects[j * m + r] as number);
      }
      const log =
        (a.alone[i] as number) +
        (b.alone[j] as number) -
        0.5 * ((a.square[i] as number) + (b.square[j] as number)) -
        cross;
      if (log > most) {
        sum = sum * Math.exp(most - log) + 1;
        most = log;
      } else sum += Math.exp(log - most);
    }
  }
  return base + most + Math.log(sum / (NODES * NODES)) + Math.log(a.stretch.part * b.stretch.part);
}

/** ln of the largest prior odds that any pair of names has, times their number. */
const oddsOf = (atom: Atom): number => Math.log(atom.members.reduce((sum, { odds }) => sum + odds, 0));

/** Two elements of one edge: their lumped resistance with both changed. */
function sharedInsertion(model: Model, first: Atom, second: Atom): (x: number, y: number) => Insertion {
  const edge = model.wiring.edges[first.edge] as Edge;
  const hot = model.frame.hot[first.edge] as number;
  const a = first.members[0] as Member;
  const b = second.members.find((one) => !samePlace(a, one)) as Member;
  return (x, y) =>
    elementInsertion(edge, hot, [elementChange(a, first.kind, x), elementChange(b, second.kind, y)]);
}

/** The network with two parameters in it, the first kept between calls. */
function planeVisitor(model: Model, first: Atom, second: Atom): (x: number, y: number) => number {
  const { frame, sound } = model;
  const scratch = scratchOf(sound);
  if (share(first, second)) {
    const both = sharedInsertion(model, first, second);
    const cut = cutResponse(frame, sound, first.cut);
    return (x, y) => {
      const insertion = both(x, y);
      insertInto(scratch, frame, sound, cut, insertion.cold, insertion.hot);
      setEdge(scratch, first.edge, insertion);
      return logLikelihood(model, scratch);
    };
  }
  const response = cutResponse(frame, sound, first.cut, first.line);
  let last: number | null = null;
  let state: State = sound;
  let inner = response;
  return (x, y) => {
    if (x !== last) {
      const insertion = first.insertion(x);
      state = inserted(frame, sound, response, insertion.cold, insertion.hot);
      setEdge(state, first.edge, insertion);
      inner = cutResponse(frame, state, second.cut, second.line);
      scratch.resistance.set(state.resistance);
      scratch.variance.set(state.variance);
      last = x;
    }
    const insertion: Insertion = second.insertion(y);
    insertInto(scratch, frame, state, inner, insertion.cold, insertion.hot);
    setEdge(scratch, second.edge, insertion);
    return logLikelihood(model, scratch);
  };
}

/** Two parameters integrated over the plane, stretch by stretch. */
function planeFinding(
  model: Model,
  first: Atom,
  second: Atom,
  names: readonly Named[],
  floor: number,
): Finding {
  const at = planeVisitor(model, first, second);
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  for (const a of first.stretches) {
    for (const b of second.stretches) {
      const shift = Math.log(a.part * b.part);
      const plane = planeIntegral((x) => {
        const value = parameterAt(a, x);
        return (y) => at(value, parameterAt(b, y));
      }, floor);
      plane.points.forEach(([x, y], i) => {
        points.push([parameterAt(a, x), parameterAt(b, y)]);
        logTerms.push((plane.logTerms[i] as number) + shift);
      });
    }
  }
  return {
    model,
    names,
    log: logSumExp(logTerms),
    parameters: [
      { of: first.of as NonNullable<Atom["of"]>, fault: 0 },
      { of: second.of as NonNullable<Atom["of"]>, fault: 1 },
    ],
    points,
    logTerms,
    best: heaviest(points, logTerms),
    visit: ([x = 0, y = 0]) => at(x, y),
  };
}

/** A pair not worth integrating, at the middle of what its summed effects weigh. */
function roughFinding(
  model: Model,
  names: readonly Named[],
  first: Atom,
  second: Atom,
  log: number,
): Finding {
  const at = planeVisitor(model, first, second);
  const middle = (atom: Atom): number => parameterAt(atom.stretches[0] as Stretch, 0.5);
  const point = [middle(first), middle(second)];
  return {
    model,
    names,
    log,
    parameters: [
      { of: first.of as NonNullable<Atom["of"]>, fault: 0 },
      { of: second.of as NonNullable<Atom["of"]>, fault: 1 },
    ],
    points: [point],
    logTerms: [log],
    best: point,
    visit: ([x = 0, y = 0]) => at(x, y),
  };
}

const NONE: readonly Named[] = [{ faults: [], logOdds: 0 }];

const samePlace = (a: Member, b: Member): boolean => a.string === b.string && a.position === b.position;

/** Names of a pair of faults; no element is named twice in one. */
function pairNames(first: Atom, second: Atom): readonly Named[] {
  const shared = share(first, second);
  return first.members.flatMap((a, i) =>
    second.members.flatMap((b, j) =>
      (first === second && j <= i) || (shared && samePlace(a, b))
        ? []
        : [{ faults: [a.fault, b.fault], logOdds: Math.log(a.odds) + Math.log(b.odds) }],
    ),
  );
}

/** Whether two faults are elements of one edge, where the lumped resistance decides and not the network. */
const share = (a: Atom, b: Atom): boolean => a.edge >= 0 && a.edge === b.edge;

/**
 * All pairs of series faults of a model.
 * @param singles - findings of the single faults, by atom
 * @param best - the best log posterior so far
 * @param keep - takes each finding; returns the best log posterior with it
 */
export function seriesPairs(
  model: Model,
  singles: ReadonlyMap<Atom, Finding>,
  best: () => number,
  keep: (finding: Finding) => void,
): void {
  const fixed = model.atoms.filter(({ of }) => of === null);
  const free = model.atoms.filter(({ of }) => of !== null);
  const floorFor = (a: Atom, b: Atom): number => best() - oddsOf(a) - oddsOf(b) - 25;
  const grounds = new Map<Atom, Ground>();
  const groundOf = (atom: Atom): Ground => {
    const known = grounds.get(atom);
    if (known !== undefined) return known;
    const state = applied(model, model.sound, atom, atom.insertion(0));
    const ground: Ground = { state, names: namesOf(atom.members, NONE), faults: 1 };
    grounds.set(atom, ground);
    return ground;
  };
  fixed.forEach((first, i) => {
    for (const second of [...fixed.slice(i), ...free]) {
      if (first.kind === "element open" && second.kind === "element open") continue;
      if (first === second) continue;
      const floor = floorFor(first, second);
      if (share(first, second)) for (const one of sameEdge(model, first, second, floor)) keep(one);
      else keep(weigh(model, groundOf(first), second, floor));
    }
  });
  freePairs(model, free, singles, best, keep);
}

function freePairs(
  model: Model,
  free: readonly Atom[],
  singles: ReadonlyMap<Atom, Finding>,
  best: () => number,
  keep: (finding: Finding) => void,
): void {
  const { families, base, m } = familiesOf(model, free);
  const byAtom = new Map<Atom, Family[]>();
  for (const family of families) byAtom.set(family.atom, [...(byAtom.get(family.atom) ?? []), family]);
  const peak = (atom: Atom): number => singles.get(atom)?.log ?? Number.NEGATIVE_INFINITY;
  const leaders = new Map(
    [...free]
      .filter((atom) => peak(atom) > base + LEADS)
      .sort((a, b) => peak(b) - peak(a))
      .slice(0, MOST_LEADERS)
      .map((atom) => {
        const insertion = atom.insertion(singles.get(atom)?.best[0] ?? 0);
        return [atom, applied(model, model.sound, atom, insertion)] as const;
      }),
  );
  free.forEach((first, i) => {
    for (const second of free.slice(i)) {
      if (first === second && first.edge < 0) continue;
      const names = pairNames(first, second);
      if (names.length === 0) continue;
      const parts = (byAtom.get(first) ?? []).flatMap((a) =>
        (byAtom.get(second) ?? []).map((b) => added(a, b, base, m)),
      );
      let log = logSumExp(parts);
      const odds = oddsOf(first) + oddsOf(second);
      for (const [lead, other] of [
        [first, second],
        [second, first],
      ] as const) {
        const state = leaders.get(lead);
        if (state === undefined || share(first, second)) continue;
        const ground: Ground = { state, names: NONE, faults: 1 };
        // The ground stands at the peak of the first fault: as much of its evidence as its width is worth.
        const width = (singles.get(lead)?.log ?? 0) - visitBest(singles.get(lead));
        log = Math.max(log, weigh(model, ground, other, best() - odds - 20 - width).log + width);
      }
      keep(
        log + odds > best() - WORTH
          ? planeFinding(model, first, second, names, best() - odds - 25)
          : roughFinding(model, names, first, second, log),
      );
    }
  });
}

const visitBest = (finding: Finding | undefined): number => finding?.visit(finding.best) ?? 0;

/** An earth fault beside each fault without a parameter. */
export function earthPairs(
  model: Model,
  places: readonly EarthPlace[],
  best: () => number,
  keep: (finding: Finding) => void,
): void {
  for (const atom of model.atoms) {
    if (atom.of !== null) continue;
    const state = applied(model, model.sound, atom, atom.insertion(0));
    const before = namesOf(atom.members, NONE);
    for (const place of places) {
      if (place.edge === atom.edge) continue;
      keep(earthFinding({ model, state, place, before, fault: 1, floor: best() - oddsOf(atom) - 25 }));
    }
  }
}

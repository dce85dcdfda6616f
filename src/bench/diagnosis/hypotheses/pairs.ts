/**
 * Two faults at once. Where one of them has no parameter the other is weighed on the network with the first in it, exactly.
 * Two parameters are first weighed with their effects added, which is exact where they are small; those that come to
 * anything are integrated over the plane.
 */

import type { Atom, Member } from "../faults/atom.ts";
import type { Model } from "../likelihood/model.ts";
import { type Alike, type AlikePair, alikePairs } from "../weighing/alike.ts";
import { applied, type Finding, findingOf, type Ground, groundOf } from "../weighing/findings.ts";
import { logOddsOf, type Named, type Names, NO_FAULT, namesBeside } from "../weighing/names.ts";
import { parametersOfBoth, planeFinding, planeVisit, samePlace, share } from "../weighing/plane.ts";
import { type Added, addedOver, type Family, familiesOf } from "../weighing/summed.ts";
import { sameEdge, weigh } from "../weighing/weigh.ts";
import { earthFinding } from "./earth.ts";
import { alikePlaces, type EarthPlace } from "./earthPlaces.ts";

/** Nats below the best at which a pair's effects are no longer worth integrating exactly, and at which it is only estimated. */
const WORTH = 4;
const NEGLIGIBLE = 17;

/** Faults whose peak beats the sound module by this many nats are taken as grounds for every second fault. */
const LEADS = 4;
const MOST_LEADERS = 4;

/** A pair not worth integrating, told of where its summed effects weigh most. */
function roughFinding(input: {
  readonly model: Model;
  readonly sound: Ground;
  readonly faults: readonly [Atom, Atom];
  readonly names: Names;
  readonly near: readonly number[];
  readonly log: number;
}): Finding {
  const { model, sound, names, near, log } = input;
  const [first, second] = input.faults;
  let at: ((point: readonly number[]) => number) | null = null;
  const weighted = { log, points: [near], logTerms: [log], best: near };
  return findingOf(model, names, parametersOfBoth(first, second), weighted, (point) => {
    at ??= planeVisit(model, sound, first, second);
    return at(point);
  });
}

/** Whether two places of two faults cannot be named together: one element twice, or a pair already named. */
const isNamed = (first: Atom, second: Atom, i: number, j: number): boolean =>
  (first === second && j <= i) ||
  (share(first, second) && samePlace(first.members[i] as Member, second.members[j] as Member));

/** Sum of the prior odds of all names of a pair. */
function pairOdds(first: Atom, second: Atom): number {
  let sum = 0;
  for (let i = 0; i < first.members.length; i += 1) {
    for (let j = 0; j < second.members.length; j += 1) {
      if (isNamed(first, second, i, j)) continue;
      sum += (first.members[i] as Member).odds * (second.members[j] as Member).odds;
    }
  }
  return sum;
}

/** Adds the names of a pair of faults. */
function addNames(first: Atom, second: Atom, into: Named[]): void {
  // Members of one fault are alike beforehand: of hundreds of names the logarithms are few.
  let [odds, log] = [Number.NaN, Number.NaN];
  for (let i = 0; i < first.members.length; i += 1) {
    const a = first.members[i] as Member;
    for (let j = 0; j < second.members.length; j += 1) {
      if (isNamed(first, second, i, j)) continue;
      const b = second.members[j] as Member;
      if (a.odds * b.odds !== odds) {
        odds = a.odds * b.odds;
        log = Math.log(odds);
      }
      into.push({ faults: [a.fault, b.fault], logOdds: log });
    }
  }
}

/** Names of all pairs that are alike; null if there is none. */
function namesOfAll({ pair, others }: AlikePair): Names | null {
  let sum = pairOdds(pair[0], pair[1]);
  for (const [a, b] of others) sum += pairOdds(a, b);
  if (sum === 0) return null;
  const list = (): readonly Named[] => {
    const names: Named[] = [];
    addNames(pair[0], pair[1], names);
    for (const [a, b] of others) addNames(a, b, names);
    return names;
  };
  return { faults: 2, logOdds: Math.log(sum), list };
}

/** Grounds with one fault in them, made when first asked for. */
function groundsOn(
  model: Model,
  sound: Ground,
  peakOf: (atom: Atom) => number = () => 0,
): (atom: Atom) => Ground {
  const grounds = new Map<Atom, Ground>();
  return (atom) => {
    let ground = grounds.get(atom);
    if (ground === undefined) {
      const state = applied(model, sound, atom, atom.insertion(peakOf(atom)));
      ground = groundOf(model, state, namesBeside(NO_FAULT, atom.members));
      grounds.set(atom, ground);
    }
    return ground;
  };
}

/** Pairs to weigh of a list of faults with a list that goes on from it; `from` says where the second list begins for each. */
function* pairsOf(
  firsts: readonly Atom[],
  seconds: readonly Atom[],
  from: (i: number) => number,
): Iterable<readonly [Atom, Atom]> {
  for (let i = 0; i < firsts.length; i += 1) {
    for (let j = from(i); j < seconds.length; j += 1) yield [firsts[i] as Atom, seconds[j] as Atom];
  }
}

/** All that pairs are weighed with. */
export interface PairWeighing {
  readonly model: Model;
  /** The sound module as a ground. */
  readonly sound: Ground;
  /** Faults that are alike on it. */
  readonly alike: readonly Alike[];
  /** Findings of the single faults, by atom. */
  readonly singles: ReadonlyMap<Atom, Finding>;
  /** The best log posterior so far. */
  readonly best: () => number;
  /** Takes each finding. */
  readonly keep: (finding: Finding) => void;
}

/** Pairs of opens of elements, which are weighed at any depth. */
export function doubleOpens({ model, sound, alike, keep }: Omit<PairWeighing, "singles">): void {
  const opens = model.atoms().filter(({ kind }) => kind === "element open");
  const groundOn = groundsOn(model, sound);
  for (const { pair, others } of alikePairs(
    model,
    sound,
    alike,
    pairsOf(opens, opens, (i) => i),
  )) {
    const [first, second] = pair;
    if (share(first, second)) {
      for (const one of sameEdge(model, sound, [pair, ...others], Number.NEGATIVE_INFINITY)) keep(one);
      continue;
    }
    const names = namesOfAll({ pair, others }) as Names;
    keep(weigh(model, groundOn(first), second, Number.NEGATIVE_INFINITY, names));
  }
}

/** Whether a pair is weighed elsewhere, or shows nothing more than one of the two: joints of one wire, one open. */
const isIdle = ([a, b]: readonly [Atom, Atom]): boolean =>
  a === b ||
  (a.kind === "element open" && b.kind === "element open") ||
  (a.kind === "open joint" && b.cut === a.cut);

/** All pairs of series faults of a model but for two opens of elements. */
export function seriesPairs(weighing: PairWeighing): void {
  const { model, sound, alike, best, keep } = weighing;
  const fixed = model.atoms().filter(({ of, kind }) => of === null && kind !== "unfed bank");
  const free = model.atoms().filter(({ of }) => of !== null);
  const groundOn = groundsOn(model, sound);
  const withFixed = [...pairsOf(fixed, fixed, (i) => i + 1), ...pairsOf(fixed, free, () => 0)].filter(
    (pair) => !isIdle(pair),
  );
  for (const alikes of alikePairs(model, sound, alike, withFixed)) {
    const { pair, others } = alikes;
    const [first, second] = pair;
    const names = namesOfAll(alikes);
    if (names === null) continue;
    const floor = best() - names.logOdds - NEGLIGIBLE;
    if (share(first, second)) {
      for (const one of sameEdge(model, sound, [pair, ...others], floor)) keep(one);
    } else keep(weigh(model, groundOn(first), second, floor, names));
  }
  freePairs(weighing, free);
}

function freePairs({ model, sound, alike, singles, best, keep }: PairWeighing, free: readonly Atom[]): void {
  const alone = alike.filter(({ atom }) => atom.of !== null);
  const { families, base, m } = familiesOf(
    model,
    sound,
    alone.map(({ atom }) => atom),
  );
  const byAtom = new Map<Atom, Family[]>();
  alone.forEach(({ atom, others }) => {
    const own = families.filter((family) => family.atom === atom);
    for (const each of [atom, ...others]) byAtom.set(each, own);
  });
  const single = (atom: Atom): Finding => singles.get(atom) as Finding;
  const peak = (atom: Atom): number => singles.get(atom)?.log ?? Number.NEGATIVE_INFINITY;
  const leading = new Set(
    alone
      .map(({ atom }) => atom)
      .filter((atom) => peak(atom) > base + LEADS)
      .sort((a, b) => peak(b) - peak(a))
      .slice(0, MOST_LEADERS)
      .map(single),
  );
  const groundOn = groundsOn(model, sound, (atom) => single(atom).best[0] as number);
  // Effects on the sound module are the same for all that are alike on it.
  const known = new Map<Family[], Map<Family[], Added>>();
  const together = (first: Atom, second: Atom): Added => {
    const [a, b] = [byAtom.get(first) as Family[], byAtom.get(second) as Family[]];
    const row = known.get(a) ?? new Map<Family[], Added>();
    known.set(a, row);
    let sum = row.get(b);
    if (sum === undefined) {
      sum = addedOver(a, b, base, m);
      row.set(b, sum);
    }
    return sum;
  };
  const pairs = [...pairsOf(free, free, (i) => i)].filter(([a, b]) => a !== b || a.edge >= 0);
  for (const alikes of alikePairs(model, sound, alike, pairs)) {
    const [first, second] = alikes.pair;
    const names = namesOfAll(alikes);
    if (names === null) continue;
    const { log: sum, point } = together(first, second);
    let log = sum;
    const odds = names.logOdds;
    for (const [lead, other] of [
      [first, second],
      [second, first],
    ] as const) {
      const own = single(lead);
      if (share(first, second) || !leading.has(own)) continue;
      // The ground stands at the peak of the first fault: as much of its evidence as its width is worth.
      const width = own.log - own.visit(own.best);
      log = Math.max(log, weigh(model, groundOn(lead), other, best() - odds - 18 - width).log + width);
    }
    const pair = { model, sound, faults: alikes.pair, names, near: point };
    const exact = log + odds > best() - WORTH;
    keep(
      exact ? planeFinding({ ...pair, floor: best() - odds - NEGLIGIBLE }) : roughFinding({ ...pair, log }),
    );
  }
}

/** An earth fault beside each fault without a parameter. */
export function earthPairs(
  { model, sound, alike, best, keep }: Omit<PairWeighing, "singles">,
  places: readonly EarthPlace[],
): void {
  const groundOn = groundsOn(model, sound);
  for (const { atom } of alike.flatMap(({ atom, others }) =>
    [atom, ...others].map((one) => ({ atom: one })),
  )) {
    if (atom.of !== null || atom.kind === "unfed bank") continue;
    for (const place of alikePlaces(
      places.filter(({ edge, terminal }) => terminal !== null || edge !== atom.edge),
    )) {
      const ground = groundOn(atom);
      const odds = ground.names.logOdds + logOddsOf(place.members);
      keep(earthFinding({ model, ground, place, floor: best() - odds - NEGLIGIBLE }));
    }
  }
}

/**
 * Two faults at once. Where one of them has no parameter the other is weighed on the network with the first in it, exactly.
 * Two parameters are first weighed with their effects added, which is exact where they are small; those that come to
 * anything are integrated over the plane.
 */
import { type EarthPlace, earthFinding } from "./earth.ts";
import type { Atom, Member } from "./faults.ts";
import { applied, type Finding, type Ground, groundOf, sameEdge, weigh } from "./findings.ts";
import { logSumExp } from "./linear.ts";
import type { Model } from "./model.ts";
import { logOddsOf, type Names, NO_FAULT, namesBeside, pairedNames } from "./names.ts";
import { planeFinding, planeVisit, samePlace, share } from "./plane.ts";
import { added, type Family, familiesOf } from "./summed.ts";

/** Nats below the best at which a pair's effects are no longer worth integrating exactly. */
const WORTH = 4;

/** Faults whose peak beats the sound module by this many nats are taken as grounds for every second fault. */
const LEADS = 4;
const MOST_LEADERS = 4;

const oddsOf = (atom: Atom): number => logOddsOf(atom.members);

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
  return {
    model,
    names,
    log,
    parameters: [
      { of: first.of as NonNullable<Atom["of"]>, fault: 0 },
      { of: second.of as NonNullable<Atom["of"]>, fault: 1 },
    ],
    points: [near],
    logTerms: [log],
    best: near,
    visit: (point) => {
      at ??= planeVisit(model, sound, first, second);
      return at(point);
    },
  };
}

/** Names of a pair of faults, null if there is none; no element is named twice in one. */
function pairNames(first: Atom, second: Atom): Names | null {
  const shared = share(first, second);
  if (!shared && first !== second) return namesBeside(namesBeside(NO_FAULT, first.members), second.members);
  const pairs = first.members.flatMap((a, i) =>
    second.members.flatMap((b, j): [Member, Member][] =>
      (first === second && j <= i) || (shared && samePlace(a, b)) ? [] : [[a, b]],
    ),
  );
  return pairs.length === 0 ? null : pairedNames(pairs);
}

/** Whether both are in joints of one wire, where the second shows nothing more than the first. */
const sameWire = (a: Atom, b: Atom): boolean => a.kind === "open joint" && b.cut === a.cut;

/**
 * All pairs of series faults of a model.
 * @param sound - the sound module as a ground
 * @param singles - findings of the single faults, by atom
 * @param best - the best log posterior so far
 * @param keep - takes each finding; returns the best log posterior with it
 */
export function seriesPairs(
  model: Model,
  sound: Ground,
  singles: ReadonlyMap<Atom, Finding>,
  best: () => number,
  keep: (finding: Finding) => void,
): void {
  const fixed = model.atoms.filter(({ of }) => of === null);
  const free = model.atoms.filter(({ of }) => of !== null);
  const floorFor = (a: Atom, b: Atom): number => best() - oddsOf(a) - oddsOf(b) - 25;
  const grounds = new Map<Atom, Ground>();
  const groundOn = (atom: Atom): Ground => {
    let ground = grounds.get(atom);
    if (ground === undefined) {
      ground = groundOf(
        model,
        applied(model, sound, atom, atom.insertion(0)),
        namesBeside(NO_FAULT, atom.members),
      );
      grounds.set(atom, ground);
    }
    return ground;
  };
  fixed.forEach((first, i) => {
    for (const second of [...fixed.slice(i), ...free]) {
      if (first.kind === "element open" && second.kind === "element open") continue;
      if (first === second || sameWire(first, second)) continue;
      const floor = floorFor(first, second);
      if (share(first, second)) for (const one of sameEdge(model, sound, first, second, floor)) keep(one);
      else keep(weigh(model, groundOn(first), second, floor));
    }
  });
  freePairs(model, sound, free, singles, best, keep);
}

function freePairs(
  model: Model,
  sound: Ground,
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
        return [atom, groundOf(model, applied(model, sound, atom, insertion), NO_FAULT)] as const;
      }),
  );
  free.forEach((first, i) => {
    for (const second of free.slice(i)) {
      if (first === second && first.edge < 0) continue;
      const names = pairNames(first, second);
      if (names === null) continue;
      const parts = (byAtom.get(first) ?? []).flatMap((a) =>
        (byAtom.get(second) ?? []).map((b) => added(a, b, base, m)),
      );
      let log = logSumExp(parts.map((part) => part.log));
      const { point } = parts.reduce((one, part) => (part.most > one.most ? part : one));
      const odds = oddsOf(first) + oddsOf(second);
      for (const [lead, other] of [
        [first, second],
        [second, first],
      ] as const) {
        const ground = leaders.get(lead);
        if (ground === undefined || share(first, second)) continue;
        // The ground stands at the peak of the first fault: as much of its evidence as its width is worth.
        const width = (singles.get(lead)?.log ?? 0) - visitBest(singles.get(lead));
        log = Math.max(log, weigh(model, ground, other, best() - odds - 20 - width).log + width);
      }
      const pair = { model, sound, faults: [first, second] as const, names, near: point };
      const exact = log + odds > best() - WORTH;
      keep(exact ? planeFinding({ ...pair, floor: best() - odds - 25 }) : roughFinding({ ...pair, log }));
    }
  });
}

const visitBest = (finding: Finding | undefined): number => finding?.visit(finding.best) ?? 0;

/** An earth fault beside each fault without a parameter. */
export function earthPairs(
  model: Model,
  sound: Ground,
  places: readonly EarthPlace[],
  best: () => number,
  keep: (finding: Finding) => void,
): void {
  for (const atom of model.atoms) {
    if (atom.of !== null) continue;
    const state = applied(model, sound, atom, atom.insertion(0));
    const ground = groundOf(model, state, namesBeside(NO_FAULT, atom.members));
    for (const place of places) {
      if (place.edge === atom.edge) continue;
      keep(earthFinding({ model, ground, place, floor: best() - oddsOf(atom) - 25 }));
    }
  }
}

/** Faults in places that no reading tells apart by symmetry: two like banks read only together. Weighed once. */

import type { Atom } from "../faults/atom.ts";
import type { Model } from "../likelihood/model.ts";
import { type CutResponse, dot } from "../network/change.ts";
import { copied, floats } from "../numbers/room.ts";
import { type Ground, responseOn } from "./findings.ts";

/** Agreement of figures that symmetry makes equal, relative. */
const EQUAL = 1e-9;

const equal = (a: number, b: number): boolean => {
  const apart = Math.abs(a - b);
  return a === b || apart < EQUAL || apart < EQUAL * Math.abs(a);
};

/** A sign in which a list of figures can be counted, whichever way round the cut was: that of the first to differ from 0. */
function turnOf(values: Float64Array, count: number): number {
  for (let i = 0; i < count; i += 1) {
    const value = values[i] as number;
    if (Math.abs(value) > EQUAL) return Math.sign(value);
  }
  return 0;
}

const directionOf = (live: NonNullable<CutResponse["live"]>, rows: number): number =>
  turnOf(live.through, 3) || turnOf(live.shown, rows) || 1;

/** What all readings see of a cut, its direction aside. */
function seenBy(model: Model, { dead, live }: CutResponse, into: number[]): void {
  for (const { own, through } of dead) {
    into.push(own);
    // An ohmmeter's share counts squared.
    for (let r = 0; r < through.length; r += 1) into.push(Math.abs(through[r] as number));
  }
  if (live === null) return;
  const rows = model.frame.liveRows.length;
  into.push(live.own);
  const turn = directionOf(live, rows);
  for (let l = 0; l < 3; l += 1) into.push(turn * (live.through[l] as number));
  for (let r = 0; r < rows; r += 1) into.push(turn * (live.shown[r] as number));
}

/** What a fault does to its own edge, which the network does not show. */
function make(model: Model, { edge, line, insertion, stretches }: Atom, into: number[]): void {
  const own = edge < 0 ? undefined : model.wiring.edges[edge];
  into.push(line ?? -1, own === undefined ? -1 : +own.joint, own?.resistance ?? 0);
  const add = (value: number): void => {
    const { cold, resistance, variance } = insertion(value);
    into.push(cold, resistance, variance);
  };
  if (stretches.length === 0) add(0);
  for (const { low, high } of stretches) {
    add(low);
    add(high);
  }
}

/** A fault standing for all that are like it, and those it stands for. */
export interface Alike {
  readonly atom: Atom;
  readonly others: readonly Atom[];
}

/** Gathers faults that all readings see alike on a ground. */
export function alikeAtoms(model: Model, ground: Ground, atoms: readonly Atom[]): readonly Alike[] {
  const found: { atom: Atom; others: Atom[]; figures: number[] }[] = [];
  for (const atom of atoms) {
    const figures: number[] = [];
    seenBy(model, responseOn(model, ground, atom), figures);
    make(model, atom, figures);
    const known = found.find(
      (one) =>
        one.atom.kind === atom.kind &&
        one.figures.length === figures.length &&
        one.figures.every((value, i) => equal(value, figures[i] as number)),
    );
    if (known === undefined) found.push({ atom, others: [], figures });
    else known.others.push(atom);
  }
  return found;
}

/** A pair of faults standing for all that are like it. */
export interface AlikePair {
  readonly pair: readonly [Atom, Atom];
  readonly others: readonly (readonly [Atom, Atom])[];
}

/**
 * What two cuts have to do with one another: all that a network with both changed adds to what it shows of each.
 * Written into `figures`; returns how many.
 */
function together(
  model: Model,
  a: CutResponse,
  b: CutResponse,
  { cut }: Atom,
  figures: Float64Array,
): number {
  let count = 0;
  const arrangements = Math.min(a.dead.length, b.dead.length);
  for (let d = 0; d < arrangements; d += 1) {
    const { answer, through } = a.dead[d] as CutResponse["dead"][number];
    const other = (b.dead[d] as CutResponse["dead"][number]).through;
    const mutual = dot(answer, 0, cut);
    for (let r = 0; r < through.length; r += 1) {
      figures[count] = mutual * (through[r] as number) * (other[r] as number);
      count += 1;
    }
  }
  if (a.live !== null && b.live !== null) {
    const rows = model.frame.liveRows.length;
    const mutual = dot(a.live.answer, 0, cut);
    figures[count] = mutual * directionOf(a.live, rows) * directionOf(b.live, rows);
    count += 1;
  }
  return count;
}

function sameFigures(known: Float64Array, figures: Float64Array): boolean {
  for (let i = 0; i < known.length; i += 1) {
    if (!equal(known[i] as number, figures[i] as number)) return false;
  }
  return true;
}

/**
 * Gathers pairs of faults that all readings see alike: their members are alike one by one, and so is what they have to do
 * with one another.
 */
export function alikePairs(
  model: Model,
  sound: Ground,
  alike: readonly Alike[],
  pairs: Iterable<readonly [Atom, Atom]>,
): readonly AlikePair[] {
  const number = new Map<Atom, number>();
  alike.forEach(({ atom, others }, k) => {
    number.set(atom, k);
    for (const each of others) number.set(each, k);
  });
  interface Found extends AlikePair {
    readonly figures: Float64Array;
    readonly others: (readonly [Atom, Atom])[];
  }
  const found: Found[] = [];
  const byKey = new Map<number, Found[]>();
  const figures = floats(model.frame.rows.length + 1);
  for (const pair of pairs) {
    const [first, second] = pair;
    const own = (number.get(first) as number) * alike.length + (number.get(second) as number);
    // Elements of one edge come to one resistance; that is another matter than two edges.
    const key = 2 * own + (first.edge >= 0 && first.edge === second.edge ? 1 : 0);
    const [a, b] = [responseOn(model, sound, first), responseOn(model, sound, second)];
    const count = together(model, a, b, second, figures);
    let list = byKey.get(key);
    if (list === undefined) {
      list = [];
      byKey.set(key, list);
    }
    const known = list.find((one) => sameFigures(one.figures, figures));
    if (known !== undefined) {
      known.others.push(pair);
      continue;
    }
    const one: Found = { pair, others: [], figures: copied(figures, count) };
    list.push(one);
    found.push(one);
  }
  return found;
}

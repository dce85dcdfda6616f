/** Where a joint may have gone bad: those the plan draws, and the ends of lines, banks and branches. */

import type { Edge, Wiring } from "../network/edges.ts";
import type { Cut } from "../network/rows.ts";
import { filled } from "../numbers/room.ts";
import { LINES, lineNumber } from "../question/lines.ts";
import { type FaultPriors, RANGE } from "../question/settings.ts";
import { type Atom, BREAK, type Insertion, type Stretch, stretchOf } from "./atom.ts";

/** What the readings let be seen of joints beyond what ohms and amps always show. */
export interface JointsSeen {
  /** Edges of the joints across which a drop was read. */
  readonly withDrop: ReadonlySet<number>;
  /** Some path between terminals was read longer than a sound one by more than a joint commonly has. */
  readonly charred: boolean;
}

/** Part of the bad joints that are burnt to tens of ohms and more, where a reading shows such a path. */
const CHARRED = 0.1;

/** What they show is far from straight over decades, and a meter sees it sharply: each step is searched by itself. */
const CHARRED_STEPS = 5;

/** Joint resistances are as likely in each decade. */
const stretchesFrom = (low: number, charred: boolean): readonly Stretch[] => {
  const common: readonly [number, number] = [low, RANGE.joint[1]];
  if (!charred) return [stretchOf(common, true, 1)];
  const step = (RANGE.charredJoint / RANGE.joint[1]) ** (1 / CHARRED_STEPS);
  const edgeAt = (k: number): number => RANGE.joint[1] * step ** k;
  const charredSteps = Array.from({ length: CHARRED_STEPS }, (_, k) =>
    stretchOf([edgeAt(k), edgeAt(k + 1)], true, CHARRED / CHARRED_STEPS),
  );
  return [stretchOf(common, true, 1 - CHARRED), ...charredSteps];
};

/**
 * Ohms and amps do not see below a milliohm; a drop across the very joint does, down to where sound ones end. Twice the sound value is
 * three of its deviations away: what is nearer is a sound joint that differs.
 */
const leastWithDrop = (sound: number): number =>
  Math.min(RANGE.joint[0], Math.max(RANGE.jointWithDrop, 2 * sound));

/** Edges that meet in a place, as they come, with the sign in which each is counted. */
interface Meeting {
  readonly place: string;
  readonly index: number[];
  readonly sign: number[];
}

/** Joint places that the plan does not draw: lines, bank ends, branch ends at star points. */
function undrawnPlaces(wiring: Wiring): readonly Meeting[] {
  const found = new Map<string, Meeting>();
  const placeAt = (place: string): Meeting => {
    let known = found.get(place);
    if (known === undefined) {
      known = { place, index: [], sign: [] };
      found.set(place, known);
    }
    return known;
  };
  const lines = LINES.map(placeAt);
  const ofBank = new Map<string, readonly Meeting[]>();
  for (const { id } of wiring.module.plan.banks) {
    ofBank.set(
      id,
      LINES.map((line) => placeAt(`${line}>${id}`)),
    );
  }
  const add = (at: Meeting | undefined, e: number, sign: number): void => {
    if (at === undefined) return;
    at.index.push(e);
    at.sign.push(sign);
  };
  const { edges } = wiring;
  for (let e = 0; e < edges.length; e += 1) {
    const { joint, ends, bank, star, branch } = edges[e] as Edge;
    if (joint) continue;
    const [from, to] = [lineNumber(ends[0]), lineNumber(ends[1])];
    const own = ofBank.get(bank) as readonly Meeting[];
    if (from >= 0) {
      add(lines[from], e, 1);
      add(own[from], e, 1);
    }
    if (to >= 0 && to !== from) {
      add(lines[to], e, -1);
      add(own[to], e, -1);
    }
    // A branch keeps the joint at its end wherever that has been landed.
    if (star !== null) add(placeAt(`${star}<${branch}`), e, -1);
  }
  return [...found.values()].filter(({ index }) => index.length > 0);
}

/** The same edges counted the same way round, whatever the overall sign. */
function sameWire(a: Meeting, b: Meeting): boolean {
  const { index, sign } = a;
  if (index.length !== b.index.length) return false;
  const turn = (sign[0] as number) * (b.sign[0] as number);
  for (let k = 0; k < index.length; k += 1) {
    if (index[k] !== b.index[k] || sign[k] !== turn * (b.sign[k] as number)) return false;
  }
  return true;
}

/** Places of joints on one and the same wire: what goes bad in any of them does the same to the network. */
interface Wire {
  readonly places: readonly string[];
  readonly cut: Cut;
  /** The edge of a drawn joint, else −1. */
  readonly edge: number;
  /** What is inserted when its resistance comes to this. */
  readonly insertion: (value: number) => Insertion;
}

/** What a joint of no resistance in the drawing inserts. */
const undrawn = (value: number): Insertion => ({ cold: value, hot: value, resistance: 0, variance: 0 });

/** Numbers of the edges that are drawn joints and closed, and the places that are not drawn. */
function placesOf(wiring: Wiring): {
  readonly drawn: readonly number[];
  readonly others: readonly Meeting[];
} {
  const { edges, module } = wiring;
  const joints = module.plan.joints ?? [];
  const taken = new Set<string>();
  const drawn: number[] = [];
  // Edges of joints come last, in the order of the plan.
  const first = edges.length - joints.length;
  for (let e = first; e < edges.length; e += 1) {
    if ((edges[e] as Edge).resistance === Number.POSITIVE_INFINITY) continue;
    drawn.push(e);
    const { at, behind } = joints[e - first] as (typeof joints)[number];
    if (behind === undefined) taken.add(at);
    else if (behind.length === 1) taken.add(`${at}>${behind[0]}`).add(`${at}<${behind[0]}`);
  }
  // A joint drawn there is that place.
  return { drawn, others: undrawnPlaces(wiring).filter(({ place }) => !taken.has(place)) };
}

/** How many places of a wiring have a joint. */
export function jointCount(wiring: Wiring): number {
  const { drawn, others } = placesOf(wiring);
  return drawn.length + others.length;
}

/** All wires with joints: each drawn joint, and the places that are not drawn. */
function wiresOf(wiring: Wiring): readonly Wire[] {
  const { drawn, others } = placesOf(wiring);
  const wires = drawn.map((e): Wire => {
    const { id, resistance } = wiring.edges[e] as Edge;
    const insertion = (value: number): Insertion => {
      const more = value - resistance;
      return { cold: more, hot: more, resistance: value, variance: 0 };
    };
    return { places: [id], cut: { index: Int32Array.of(e), sign: Float64Array.of(1) }, edge: e, insertion };
  });
  const apart: { readonly meeting: Meeting; readonly places: string[] }[] = [];
  for (const meeting of others) {
    const known = apart.find((one) => sameWire(one.meeting, meeting));
    if (known !== undefined) known.places.push(meeting.place);
    else apart.push({ meeting, places: [meeting.place] });
  }
  for (const { meeting, places } of apart) {
    const { index, sign } = meeting;
    const cut = { index: Int32Array.from(index), sign: filled(sign.length, (k) => sign[k] as number) };
    wires.push({ places, cut, edge: -1, insertion: undrawn });
  }
  return wires;
}

/**
 * Joint faults of a wiring, of some resistance or open; places on one and the same wire count as one, with each its name.
 * @param seen - what the readings let be seen of them
 */
export function jointAtoms(
  wiring: Wiring,
  priors: Required<FaultPriors>,
  { withDrop, charred }: JointsSeen,
): Atom[] {
  const wires = wiresOf(wiring);
  const atomsOf = (
    kind: "joint" | "open joint",
    stretchesOf: (edge: number) => readonly Stretch[],
    of: Atom["of"],
    own: ((value: number) => Insertion) | null,
  ): Atom[] => {
    const prior = kind === "joint" ? priors.joint : priors.openJoint;
    if (prior === 0) return [];
    const odds = prior / (1 - prior);
    return wires.map(({ places, cut, edge, insertion }) => ({
      kind,
      members: places.map((place) => ({ fault: { kind, place }, odds, string: 0, position: 0 })),
      cut,
      edge,
      line: undefined,
      stretches: stretchesOf(edge),
      of,
      insertion: own ?? insertion,
    }));
  };
  const usual = stretchesFrom(RANGE.joint[0], charred);
  const stretchesAt = (edge: number): readonly Stretch[] =>
    withDrop.has(edge)
      ? stretchesFrom(leastWithDrop((wiring.edges[edge] as Edge).resistance), charred)
      : usual;
  return [
    ...atomsOf("joint", stretchesAt, "joint resistance", null),
    ...atomsOf(
      "open joint",
      () => [],
      null,
      () => BREAK,
    ),
  ];
}

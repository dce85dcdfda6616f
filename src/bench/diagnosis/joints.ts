/** Where a joint may have gone bad: those the plan draws, and the ends of lines, banks and branches. */
import type { Wiring } from "./edges.ts";
import { type Atom, BREAK, type Insertion, type Stretch } from "./faults.ts";
import { type Cut, cutAt, cutOf } from "./rows.ts";
import { type FaultPriors, RANGE } from "./settings.ts";

/** Joint resistances are as likely in each decade. */
const stretchFrom = (low: number): readonly Stretch[] => [
  { low, high: RANGE.joint[1], logarithmic: true, part: 1 },
];
const STRETCHES = stretchFrom(RANGE.joint[0]);

/**
 * Ohms and amps do not see below a milliohm; a drop across the very joint does, down to where sound ones end. Twice the sound value is
 * three of its deviations away: what is nearer is a sound joint that differs.
 */
const dropStretches = (sound: number): readonly Stretch[] =>
  stretchFrom(Math.min(RANGE.joint[0], Math.max(RANGE.jointWithDrop, 2 * sound)));

/** Joint places that the plan does not draw: lines, bank ends, branch ends at star points. */
function undrawnPlaces(wiring: Wiring): readonly (readonly [string, Cut])[] {
  const { plan } = wiring.module;
  const places: [string, Cut][] = [];
  for (const line of ["L1", "L2", "L3"]) places.push([line, cutAt(wiring, line, () => true)]);
  for (const { id } of plan.banks) {
    for (const line of ["L1", "L2", "L3"]) {
      places.push([`${line}>${id}`, cutAt(wiring, line, (edge) => edge.bank === id)]);
    }
  }
  // A branch keeps the joint at its end wherever that has been landed.
  const ends = new Map<string, (readonly [number, number])[]>();
  wiring.edges.forEach(({ star, branch }, e) => {
    if (star === null) return;
    const place = `${star}<${branch}`;
    const known = ends.get(place);
    if (known === undefined) ends.set(place, [[e, -1]]);
    else known.push([e, -1]);
  });
  for (const [place, parts] of ends) places.push([place, cutOf(parts)]);
  return places.filter(([, cut]) => cut.index.length > 0);
}

/** The same edges counted the same way round, whatever the overall sign. */
function keyOf({ index, sign }: Cut): string {
  const first = sign[0] as number;
  const parts = Array.from(index, (edge, k) => `${edge}:${(sign[k] as number) * first}`);
  return parts.sort().join();
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

/** All wires with joints: each drawn joint, and the places that are not drawn. */
function wiresOf(wiring: Wiring): readonly Wire[] {
  const drawn = wiring.module.plan.joints ?? [];
  const taken = new Set<string>();
  const wires = wiring.edges.flatMap((edge, e): Wire[] => {
    if (!edge.joint || edge.resistance === Number.POSITIVE_INFINITY) return [];
    const at = drawn.find(({ id }) => id === edge.id);
    if (at?.behind === undefined) taken.add(at?.at ?? "");
    else if (at.behind.length === 1) taken.add(`${at.at}>${at.behind[0]}`).add(`${at.at}<${at.behind[0]}`);
    const insertion = (value: number): Insertion => {
      const more = value - edge.resistance;
      return { cold: more, hot: more, resistance: value, variance: 0 };
    };
    return [{ places: [edge.id], cut: cutOf([[e, 1]]), edge: e, insertion }];
  });
  const byCut = new Map<string, { places: string[]; cut: Cut }>();
  for (const [place, cut] of undrawnPlaces(wiring)) {
    // A joint drawn there is that place.
    if (taken.has(place)) continue;
    const key = keyOf(cut);
    const known = byCut.get(key);
    if (known === undefined) byCut.set(key, { places: [place], cut });
    else known.places.push(place);
  }
  const insertion = (value: number): Insertion => ({ cold: value, hot: value, resistance: 0, variance: 0 });
  return [...wires, ...[...byCut.values()].map((wire) => ({ ...wire, edge: -1, insertion }))];
}

/**
 * Joint faults of a wiring, of some resistance or open; places on one and the same wire count as one, with each its name.
 * @param withDrop - edges of the joints across which a drop was read
 */
export function jointAtoms(
  wiring: Wiring,
  priors: Required<FaultPriors>,
  withDrop: ReadonlySet<number>,
): Atom[] {
  const wires = wiresOf(wiring);
  const atomsOf = (
    kind: "joint" | "open joint",
    prior: number,
    rest: (wire: Wire) => Pick<Atom, "stretches" | "of" | "insertion">,
  ): Atom[] => {
    if (prior === 0) return [];
    const odds = prior / (1 - prior);
    return wires.map((wire) => ({
      kind,
      members: wire.places.map((place) => ({ fault: { kind, place }, odds, string: 0, position: 0 })),
      cut: wire.cut,
      edge: wire.edge,
      ...rest(wire),
    }));
  };
  return [
    ...atomsOf("joint", priors.joint, ({ edge, insertion }) => ({
      stretches: withDrop.has(edge) ? dropStretches(wiring.edges[edge]?.resistance ?? 0) : STRETCHES,
      of: "joint resistance",
      insertion,
    })),
    ...atomsOf("open joint", priors.openJoint, () => ({ stretches: [], of: null, insertion: () => BREAK })),
  ];
}

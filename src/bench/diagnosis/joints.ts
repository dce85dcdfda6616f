/** Where a joint may have gone bad: those the plan draws, and the ends of lines, banks and branches. */
import type { Wiring } from "./edges.ts";
import type { Atom, Insertion, Member, Stretch } from "./faults.ts";
import { type Cut, cutAt, cutOf } from "./rows.ts";
import { RANGE } from "./settings.ts";

/** Joint resistances are as likely in each decade. */
const STRETCHES: readonly Stretch[] = [
  { low: RANGE.joint[0], high: RANGE.joint[1], logarithmic: true, part: 1 },
];

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

/** Joint faults of a wiring; places on one and the same wire count as one, with each its name. */
export function jointAtoms(wiring: Wiring, prior: number): Atom[] {
  if (prior === 0) return [];
  const stretches = STRETCHES;
  const odds = prior / (1 - prior);
  const of = "joint resistance" as const;
  const drawn = wiring.module.plan.joints ?? [];
  const taken = new Set<string>();
  const atoms: Atom[] = wiring.edges.flatMap((edge, e): Atom[] => {
    if (!edge.joint || edge.resistance === Number.POSITIVE_INFINITY) return [];
    const at = drawn.find(({ id }) => id === edge.id);
    if (at?.behind === undefined) taken.add(at?.at ?? "");
    else if (at.behind.length === 1) taken.add(`${at.at}>${at.behind[0]}`).add(`${at.at}<${at.behind[0]}`);
    const member = {
      fault: { kind: "joint" as const, place: edge.id },
      odds,
      string: 0,
      position: 0,
    };
    return [
      {
        kind: "joint",
        members: [member],
        cut: cutOf([[e, 1]]),
        edge: e,
        stretches,
        of,
        insertion: (value) => {
          const more = value - edge.resistance;
          return { cold: more, hot: more, resistance: value, variance: 0 };
        },
      },
    ];
  });
  const byCut = new Map<string, Member[]>();
  for (const [place, cut] of undrawnPlaces(wiring)) {
    // A joint drawn there is that place.
    if (taken.has(place)) continue;
    const member = { fault: { kind: "joint" as const, place }, odds, string: 0, position: 0 };
    const key = keyOf(cut);
    const known = byCut.get(key);
    if (known !== undefined) {
      known.push(member);
      continue;
    }
    const members = [member];
    byCut.set(key, members);
    const insertion = (value: number): Insertion => ({ cold: value, hot: value, resistance: 0, variance: 0 });
    atoms.push({ kind: "joint", members, cut, edge: -1, stretches, of, insertion });
  }
  return atoms;
}

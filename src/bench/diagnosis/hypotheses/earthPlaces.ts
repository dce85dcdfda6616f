/** Where a module can be earthed; places that no reading tells apart put together. */

import type { Member } from "../faults/atom.ts";
import type { Model } from "../likelihood/model.ts";
import type { Edge, Wiring } from "../network/edges.ts";
import { LINES } from "../question/lines.ts";

/** An element, or twins, that may be earthed; or a terminal. */
export interface EarthPlace {
  /** Node of a terminal; null for elements. */
  readonly terminal: string | null;
  readonly edge: number;
  readonly members: readonly Member[];
  /** Part of the string's resistance before the element, and the element's own part. */
  readonly before: number;
  readonly part: number;
  /** Cold resistance of the string. */
  readonly string: number;
  /** Equal for places that no reading tells apart: between the same nodes, alike, and seen by the same readings. */
  readonly key: number;
}

/** Twins: the same height in strings of the same resistances. */
interface Twins extends Pick<EarthPlace, "before" | "part" | "string"> {
  readonly values: readonly number[];
  readonly position: number;
  readonly members: Member[];
}

/** The elements of an edge, twins together. */
function twinsOf({ strings }: Edge, odds: number): readonly Twins[] {
  const found: Twins[] = [];
  strings.forEach(({ elements, values }, string) => {
    const whole = values.reduce((sum, value) => sum + value, 0);
    if (whole === Number.POSITIVE_INFINITY) return;
    let before = 0;
    values.forEach((value, position) => {
      const fault = { kind: "earth fault" as const, element: elements[position] as string };
      const member: Member = { fault, odds, string, position };
      const known = found.find(
        (one) =>
          one.position === position &&
          one.values.length === values.length &&
          values.every((each, i) => each === one.values[i]),
      );
      if (known === undefined) {
        const [lower, part] = [before / whole, value / whole];
        found.push({ values, position, members: [member], before: lower, part, string: whole });
      } else known.members.push(member);
      before += value;
    });
  });
  return found;
}

/** All places of a wiring that can be earthed. */
export function earthPlaces(model: Model): readonly EarthPlace[] {
  const { earthFault, earthedTerminal } = model.question.priors;
  const coils = earthFault === 0 ? [] : coilPlaces(model, earthFault);
  if (earthedTerminal === 0) return coils;
  return [...coils, ...terminalPlaces(model.wiring, earthedTerminal / (1 - earthedTerminal), coils.length)];
}

/** Elements that can be earthed; twins lie side by side at the same height of their strings. */
function coilPlaces(model: Model, prior: number): readonly EarthPlace[] {
  const odds = prior / (1 - prior);
  const { edges } = model.wiring;
  const places: EarthPlace[] = [];
  edges.forEach((edge, e) => {
    for (const { members, before, part, string } of twinsOf(edge, odds)) {
      const alike = places.find((one) => {
        const other = edges[one.edge] as Edge;
        return (
          one.before === before &&
          one.part === part &&
          one.string === string &&
          other.from === edge.from &&
          other.to === edge.to &&
          (one.edge === e || seenAlike(model, one.edge, e))
        );
      });
      const key = alike?.key ?? places.length;
      places.push({ terminal: null, edge: e, members, before, part, string, key });
    }
  });
  return places;
}

/** Lines and star points that can be earthed by themselves: a star point on the neutral is earthed as drawn. */
export function terminalsOf({ starPoints }: Wiring): readonly string[] {
  return [...new Set([...LINES, ...Object.values(starPoints)])].filter((node) => node !== "N");
}

/** A terminal lies at the end of each coil on it, joints left aside: one of them stands for all. */
function terminalPlaces(wiring: Wiring, odds: number, firstKey: number): readonly EarthPlace[] {
  return terminalsOf(wiring).flatMap((terminal, k) => {
    const edge = wiring.edges.findIndex(({ joint, ends }) => !joint && ends.includes(terminal));
    if (edge < 0) return [];
    const { ends } = wiring.edges[edge] as Edge;
    const fault = { kind: "earthed terminal" as const, terminal };
    const members = [{ fault, odds, string: 0, position: 0 }];
    const before = ends[0] === terminal ? 0 : 1;
    return [{ terminal, edge, members, before, part: 0, string: 0, key: firstKey + k }];
  });
}

/** Place along the coil and fault resistance of a point: a terminal has the latter alone. */
export function placeAndOhms({ terminal }: EarthPlace, point: readonly number[]): readonly [number, number] {
  const [first, second] = point as readonly [number, number];
  return terminal === null ? [first, second] : [0, first];
}

/** Whether the same readings have two edges in their way: clamps by the sign they count them with, arrangements by whether they are connected. */
function seenAlike({ frame, settings }: Model, a: number, b: number): boolean {
  return (
    frame.rows.every((row) => {
      if (row?.kind === "drop") return row.edge !== a && row.edge !== b;
      if (row?.kind !== "current") return true;
      const { index, sign } = row.cut;
      const [i, j] = [index.indexOf(a), index.indexOf(b)];
      return (i < 0 ? 0 : sign[i]) === (j < 0 ? 0 : sign[j]);
    }) && settings.every((kept) => kept.has(a) === kept.has(b))
  );
}

/** Places that no reading tells apart put together. */
export function alikePlaces(places: readonly EarthPlace[]): readonly EarthPlace[] {
  const found = new Map<number, EarthPlace>();
  for (const place of places) {
    const known = found.get(place.key);
    found.set(
      place.key,
      known === undefined ? place : { ...known, members: [...known.members, ...place.members] },
    );
  }
  return [...found.values()];
}

/** Where a module can be earthed; places that no reading tells apart put together. */
import type { Edge } from "./edges.ts";
import type { Member } from "./faults.ts";
import type { Model } from "./model.ts";

/** An element, or twins, that may be earthed. */
export interface EarthPlace {
  readonly edge: number;
  readonly members: readonly Member[];
  /** Part of the string's resistance before the element, and the element's own part. */
  readonly before: number;
  readonly part: number;
  /** Cold resistance of the string. */
  readonly string: number;
  /** Equal for places that no reading tells apart: between the same nodes, alike, and seen by the same readings. */
  readonly key: string;
}

/** All places of a wiring where an element can be earthed; twins lie side by side at the same height of their strings. */
export function earthPlaces(model: Model): readonly EarthPlace[] {
  const { priors } = model.question;
  if (priors.earthFault === 0) return [];
  const odds = priors.earthFault / (1 - priors.earthFault);
  return model.wiring.edges.flatMap((edge: Edge, e): EarthPlace[] => {
    const places = new Map<string, { members: Member[]; before: number; part: number; string: number }>();
    edge.strings.forEach(({ elements, values }, string) => {
      const whole = values.reduce((sum, value) => sum + value, 0);
      if (whole === Number.POSITIVE_INFINITY) return;
      let before = 0;
      values.forEach((value, position) => {
        const fault = { kind: "earth fault" as const, element: elements[position] as string };
        const member: Member = { fault, odds, string, position };
        const key = `${values.join()}|${position}`;
        const known = places.get(key);
        if (known === undefined) {
          places.set(key, { members: [member], before: before / whole, part: value / whole, string: whole });
        } else known.members.push(member);
        before += value;
      });
    });
    const seen = seenIn(model, e);
    return [...places.values()].map((place) => {
      const { before, part, string } = place;
      return { edge: e, ...place, key: [edge.from, edge.to, before, part, string, seen].join("|") };
    });
  });
}

/** Which readings have an edge in their way: clamps by the sign they count it with, arrangements by whether it is connected. */
function seenIn({ frame, settings }: Model, e: number): string {
  const clamped = frame.rows.map((row) => {
    if (row?.kind === "drop") return row.edge === e ? 1 : 0;
    if (row?.kind !== "current") return "";
    const at = row.cut.index.indexOf(e);
    return at < 0 ? 0 : (row.cut.sign[at] as number);
  });
  return [...clamped, ...settings.map((kept) => +kept.has(e))].join();
}

/** Places that no reading tells apart put together. */
export function alikePlaces(places: readonly EarthPlace[]): readonly EarthPlace[] {
  const found = new Map<string, EarthPlace>();
  for (const place of places) {
    const known = found.get(place.key);
    found.set(
      place.key,
      known === undefined ? place : { ...known, members: [...known.members, ...place.members] },
    );
  }
  return [...found.values()];
}

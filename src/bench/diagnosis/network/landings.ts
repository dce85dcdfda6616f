/**
 * A branch landed on another line than drawn. Rare, and one wiring more for each end of each branch, so these are weighed only where
 * nothing simpler explains the readings.
 */

import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import { LINES } from "../question/lines.ts";
import { type Edge, rerouted, type Wiring } from "./edges.ts";
import { landed, landingOf, outermost } from "./variants.ts";

/** One end of a branch on another line. */
export type Landing = Extract<DiagnosedFault, { readonly kind: "mis-landed" }>;

/** Every single branch end that may lie on another line. */
export function landingsOf(wiring: Wiring): readonly Landing[] {
  const known = new Map<string, readonly [Set<string>, Set<string>]>();
  for (const { joint, branch, ends } of wiring.edges) {
    if (joint) continue;
    const sides = known.get(branch) ?? [new Set<string>(), new Set<string>()];
    known.set(branch, sides);
    ends.forEach((end, side) => {
      if (LINES.some((line) => line === end)) sides[side as 0 | 1].add(end);
    });
  }
  return [...known].flatMap(([branch, [froms, tos]]) => {
    const other = (drawn: string, farEnd: ReadonlySet<string>): Landing[] =>
      // Both ends on one line: no current, no ohms, an open branch to every reading.
      LINES.filter((line) => line !== drawn && !farEnd.has(line)).map((on) => {
        return { kind: "mis-landed", branch, drawn, on };
      });
    return [
      ...[...froms].flatMap((line) => other(line, tos)),
      ...[...tos].flatMap((line) => other(line, froms)),
    ];
  });
}

/** The wiring with one branch end on another line. */
export function relanded(wiring: Wiring, { branch, drawn, on }: Landing): Wiring {
  const own = (edge: Edge): boolean => edge.branch === branch;
  const moved = wiring.edges.flatMap((edge, e) => {
    if (edge.joint || !own(edge)) return [];
    const side = edge.ends.indexOf(drawn);
    return side < 0 ? [] : [{ e, side: side === 0 ? ("from" as const) : ("to" as const) }];
  });
  const bank = wiring.edges[moved[0]?.e as number]?.bank as string;
  const edges = landed(
    wiring,
    moved.map(({ e, side }) => [outermost(wiring, e, own, side), landingOf(wiring, on, bank)] as const),
  );
  for (const { e, side } of moved) {
    const edge = edges[e] as Edge;
    const [first, second] = edge.ends;
    edges[e] = rerouted(edge, edge.from, edge.to, side === "from" ? [on, second] : [first, on]);
  }
  return { ...wiring, edges };
}

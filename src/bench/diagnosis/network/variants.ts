/**
 * The same parts linked otherwise than drawn: a bank in the other connection, star points tied for separate. Elements,
 * joints and their names stay what they are; only where branch ends land changes.
 */

import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import { LINES } from "../question/lines.ts";
import { type Edge, rerouted, type Wiring } from "./edges.ts";

/** One slip in the links. */
export type Slip = Extract<DiagnosedFault, { readonly kind: "mis-linked" }>;

/** Every single slip in the links of a wiring; only under voltage does a neutral show. */
export function slipsOf({ module: { plan } }: Wiring, live: boolean): readonly Slip[] {
  const slips: Slip[] = plan.banks.map(({ id, connection }) => {
    return { kind: "mis-linked", bank: id, as: connection === "star" ? "delta" : "star" };
  });
  const stars = plan.banks.filter(({ connection }) => connection === "star").length;
  if (stars > 1 && plan.neutral !== "connected") {
    slips.push({ kind: "mis-linked", bank: null, as: plan.starPoints === "tied" ? "separate" : "tied" });
  }
  if (stars > 0 && plan.neutral !== "connected" && live)
    slips.push({ kind: "mis-linked", bank: null, as: "neutral" });
  return slips;
}

/** Something with an end that can be landed elsewhere: the far end of an edge of elements, or a joint's outer end. */
interface End {
  readonly edge: number;
  readonly side: "from" | "to";
}

/** Joints from an edge's end outwards, the far one unless said otherwise, as far as they carry nothing but what `own` picks. */
export function outermost(
  wiring: Wiring,
  first: number,
  own: (edge: Edge) => boolean,
  side: End["side"] = "to",
): End {
  const { edges } = wiring;
  let end: End = { edge: first, side };
  for (let steps = 0; steps < edges.length; steps += 1) {
    const node = edges[end.edge]?.[end.side] as string;
    const joint = edges.findIndex((edge) => edge.joint && edge.to === node);
    if (joint < 0) return end;
    // What else lies behind the joint: the edges that end on its inner node.
    const others = edges.some(
      (edge) => !edge.joint && !own(edge) && (edge.from === node || edge.to === node),
    );
    const inner = edges.some((edge) => edge.joint && edge.from === node && !carries(wiring, edge, own));
    if (others || inner) return end;
    end = { edge: joint, side: "from" };
  }
  return end;
}

/** Whether everything behind a joint belongs to `own`. */
function carries(wiring: Wiring, joint: Edge, own: (edge: Edge) => boolean): boolean {
  return wiring.edges.every((edge) => {
    if (edge === joint || (edge.from !== joint.to && edge.to !== joint.to)) return true;
    return edge.joint ? edge.from !== joint.to || carries(wiring, edge, own) : own(edge);
  });
}

/** Where the wires of a bank land on a line: behind the joints of the line and of the whole bank, not of a single branch. */
export function landingOf(wiring: Wiring, line: string, bank: string): string {
  const { edges, module } = wiring;
  const joints = module.plan.joints ?? [];
  let node = line;
  for (let steps = 0; steps < edges.length; steps += 1) {
    const next = edges.find((edge) => {
      if (!edge.joint || edge.from !== node) return false;
      const behind = joints.find(({ id }) => id === edge.id)?.behind;
      return behind === undefined || behind.includes(bank);
    });
    if (next === undefined) return node;
    node = next.to;
  }
  return node;
}

/** Edges with some ends landed elsewhere. */
export function landed(wiring: Wiring, ends: readonly (readonly [End, string])[]): Edge[] {
  const edges = [...wiring.edges];
  for (const [{ edge: e, side }, node] of ends) {
    const edge = edges[e] as Edge;
    edges[e] = rerouted(edge, side === "from" ? node : edge.from, side === "to" ? node : edge.to, edge.ends);
  }
  return edges;
}

/** Last edges of the branches of a bank, by branch, in the order of the lines. */
function lastEdges(wiring: Wiring, bank: string): readonly (readonly number[])[] {
  const branches = [
    ...new Set(wiring.edges.filter((edge) => edge.bank === bank).map(({ branch }) => branch)),
  ];
  return branches.map((branch) =>
    wiring.edges.flatMap((edge, e) => (edge.branch === branch && !edge.ends[1].includes("|") ? [e] : [])),
  );
}

/** Nodes of edges and lines: where a probe can be put. A stud that a slip left bare can still be probed. */
function nodesOf(edges: readonly Edge[], more: Iterable<string>): ReadonlySet<string> {
  return new Set([...edges.flatMap(({ from, to }) => [from, to]), ...LINES, "N", ...more]);
}

/** One bank in the other connection: each branch's far end on the next line, or on a star point of their own. */
function bankRelinked(wiring: Wiring, bank: string, as: "star" | "delta"): Wiring {
  const own = `own star of ${bank}`;
  const ends = lastEdges(wiring, bank).flatMap((list, i) => {
    const line = LINES[(i + 1) % 3] as string;
    const node = as === "delta" ? landingOf(wiring, line, bank) : own;
    return list.map((e) => {
      const { branch } = wiring.edges[e] as Edge;
      const bare = as === "delta" ? line : own;
      return { e, node, bare, end: outermost(wiring, e, (edge) => edge.branch === branch) };
    });
  });
  const edges = landed(
    wiring,
    ends.map(({ end, node }) => [end, node] as const),
  );
  for (const { e, bare } of ends) {
    const edge = edges[e] as Edge;
    edges[e] = rerouted(edge, edge.from, edge.to, [edge.ends[0], bare]);
  }
  const { module, starPoints, edgeNumber, nodes } = wiring;
  return { module, starPoints, edges, edgeNumber, nodes: nodesOf(edges, nodes) };
}

/** Star points tied that are drawn separate, or the reverse, or all on the neutral. */
function starsRelinked(wiring: Wiring, as: "tied" | "separate" | "neutral"): Wiring {
  const starPoints = Object.fromEntries(
    Object.keys(wiring.starPoints).map((bank) => [
      bank,
      as === "neutral" ? "N" : as === "tied" ? "S" : `S-${bank}`,
    ]),
  );
  const ends = Object.entries(starPoints).flatMap(([bank, node]) =>
    lastEdges(wiring, bank).flatMap((list) =>
      list.map((e) => ({ e, node, end: outermost(wiring, e, (edge) => edge.bank === bank) })),
    ),
  );
  const edges = landed(
    wiring,
    ends.map(({ end, node }) => [end, node] as const),
  );
  for (const { e, node } of ends) {
    const edge = edges[e] as Edge;
    edges[e] = rerouted(edge, edge.from, edge.to, [edge.ends[0], node]);
  }
  const { module, edgeNumber } = wiring;
  return { module, starPoints, edges, edgeNumber, nodes: nodesOf(edges, []) };
}

/** The wiring with one slip in its links. */
export function relinked(wiring: Wiring, { bank, as }: Slip): Wiring {
  if (bank === null) return starsRelinked(wiring, as as "tied" | "separate" | "neutral");
  return bankRelinked(wiring, bank, as as "star" | "delta");
}

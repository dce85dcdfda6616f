/** Where each reading looks: names of nodes, banks, branches and elements turned into edges of one wiring. */

import { filled, filledWhole } from "../numbers/room.ts";
import type { FieldMeasurement, FieldReading } from "../question/fieldReading.ts";
import { LINES } from "../question/lines.ts";
import type { Edge, Wiring } from "./edges.ts";

/** Edges crossed together, with the sign in which each is counted. */
export interface Cut {
  readonly index: Int32Array;
  readonly sign: Float64Array;
}

/** A reading resolved on one wiring; `null` where this wiring has no such place. */
export type Row =
  | { readonly kind: "resistance"; readonly setting: number; readonly a: string; readonly b: string }
  | {
      readonly kind: "current";
      readonly cut: Cut;
      /** The node, where the clamp is around all that it feeds. */
      readonly whole: string | null;
    }
  | { readonly kind: "voltage"; readonly a: string; readonly b: string }
  | { readonly kind: "drop"; readonly edge: number }
  | { readonly kind: "insulation"; readonly setting: number; readonly node: string }
  | null;

/** The readings on a wiring, and the arrangements of lifted links they were taken in. */
export interface Rows {
  readonly rows: readonly Row[];
  /** For each dead arrangement, the edges connected. */
  readonly settings: readonly ReadonlySet<number>[];
}

/** A list of edges as a cut. */
function cutOf(parts: readonly (readonly [number, number])[]): Cut {
  return {
    index: filledWhole(parts.length, (k) => parts[k]?.[0] as number),
    sign: filled(parts.length, (k) => parts[k]?.[1] as number),
  };
}

/** Edges that end on a node, joints left aside, counted away from it. */
export function cutAt(wiring: Wiring, node: string, of: (edge: Edge) => boolean): Cut {
  const parts: (readonly [number, number])[] = [];
  wiring.edges.forEach((edge, i) => {
    if (edge.joint || !of(edge)) return;
    if (edge.ends[0] === node) parts.push([i, 1]);
    else if (edge.ends[1] === node) parts.push([i, -1]);
  });
  return cutOf(parts);
}

/** Whether a name means this edge: its bank, branch or element. */
function means(edge: Edge, name: string): boolean {
  return edge.bank === name || edge.branch === name || edge.id === name;
}

/** Whether a name is that of some bank, branch or element of the wiring, lumped or not. */
function isPart(wiring: Wiring, name: string): boolean {
  return wiring.edges.some(
    (edge) => !edge.joint && (means(edge, name) || edge.strings.some((s) => s.elements.includes(name))),
  );
}

/** Bank a name belongs to: bank names may hold dashes, so the longest that fits. */
function bankOf(wiring: Wiring, name: string): string | undefined {
  const banks = wiring.module.plan.banks.map(({ id }) => id);
  return banks
    .filter((bank) => name === bank || name.startsWith(`${bank}-`))
    .sort((a, b) => b.length - a.length)[0];
}

/**
 * The node of a wiring that a drawn name stands for. A star point keeps its meaning when star points turn out tied or
 * separate; in a bank that turns out to be a delta it does not exist.
 */
function nodeIn(
  wiring: Wiring,
  drawn: Wiring,
  name: string,
  only: readonly string[] | undefined,
): string | null {
  if (wiring.nodes.has(name)) return name;
  const stars = Object.entries(drawn.module.starPoints)
    .filter(([, node]) => node === name)
    .map(([bank]) => bank);
  const wanted = only?.map((part) => bankOf(drawn, part));
  const bank = stars.find((one) => wanted === undefined || wanted.includes(one)) ?? stars[0];
  return bank === undefined ? null : (wiring.starPoints[bank] ?? null);
}

/** Edges of a bank in the order of its branches, which both connections share: the first is the element on L1, and so on. */
function sameElement(wiring: Wiring, drawn: Wiring, own: Edge): Edge | null {
  const order = (of: Wiring, bank: string): readonly string[] => [
    ...new Set(of.edges.filter((edge) => edge.bank === bank).map(({ branch }) => branch)),
  ];
  const branch = order(wiring, own.bank)[order(drawn, own.bank).indexOf(own.branch)];
  const id = `${branch}${own.id.slice(own.branch.length)}`;
  return wiring.edges.find((edge) => edge.id === id) ?? null;
}

/**
 * Ends of the element that two probes sit on, in another connection: across an element that alone is connected, or from a
 * line to a star point that this wiring does not have, which is then the element's far end.
 */
function acrossElement(
  wiring: Wiring,
  drawn: Wiring,
  { from, to, only }: { readonly from: string; readonly to: string; readonly only?: readonly string[] },
): Edge | null {
  const name = only?.length === 1 ? (only[0] as string) : null;
  const bank =
    name === null
      ? Object.entries(drawn.module.starPoints).find(([, node]) => node === from || node === to)?.[0]
      : bankOf(drawn, name);
  const line = LINES.find((one) => one === from || one === to);
  const edge = drawn.edges.find(
    (one) =>
      !one.joint &&
      (name === null ? one.bank === bank && one.ends.includes(line ?? "") : means(one, name)) &&
      [one.from, one.to, ...one.ends].includes(from) &&
      [one.from, one.to, ...one.ends].includes(to),
  );
  return edge === undefined ? null : sameElement(wiring, drawn, edge);
}

/** Whether a reading is taken at a star point of the drawing that no element of this wiring ends on. */
function offStar(wiring: Wiring, drawn: Wiring, from: string, to: string): boolean {
  const stars = Object.values(drawn.module.starPoints);
  return [from, to].some(
    (node) => stars.includes(node) && !wiring.edges.some(({ joint, ends }) => !joint && ends.includes(node)),
  );
}

/** A branch drawn in star has another name in delta; its wire at the line is then the bank's. */
function partIn(wiring: Wiring, name: string): string {
  return isPart(wiring, name) ? name : (bankOf(wiring, name) ?? name);
}

/** Resolves readings (taken or planned) on a wiring; `drawn` is the one that the technician had in hand. */
export function rowsOf(
  wiring: Wiring,
  drawn: Wiring,
  readings: readonly (FieldReading | FieldMeasurement)[],
): Rows {
  const settings: Set<number>[] = [];
  const byKey = new Map<string, number>();
  const setting = (only: readonly string[] | undefined): number => {
    const parts = only?.map((name) => partIn(wiring, name));
    const kept = new Set<number>();
    wiring.edges.forEach((edge, i) => {
      if (edge.joint || parts === undefined || parts.some((name) => means(edge, name))) kept.add(i);
    });
    const key = [...kept].join();
    const found = byKey.get(key);
    if (found !== undefined) return found;
    settings.push(kept);
    byKey.set(key, settings.length - 1);
    return settings.length - 1;
  };
  // Where some branch of a bank alone showed ohms the probes have found its end, and those of the others beside it.
  const probed = new Set(
    readings.flatMap((one) =>
      one.kind === "resistance" && one.only?.length === 1 && "reads" in one && one.reads !== "open"
        ? [bankOf(drawn, one.only[0] as string)]
        : [],
    ),
  );
  const resolved = (reading: FieldReading | FieldMeasurement): Row => {
    switch (reading.kind) {
      case "resistance": {
        const a = nodeIn(wiring, drawn, reading.from, reading.only);
        const b = nodeIn(wiring, drawn, reading.to, reading.only);
        const { only } = reading;
        // An element that alone is connected is read across its own ends, however it is linked: also where it does not end on the star
        // point that it is drawn to end on, if ohms were read there and not an open path to a bare stud.
        const across =
          only?.length === 1 && "reads" in reading && probed.has(bankOf(drawn, only[0] as string));
        const alone =
          only?.length === 1 &&
          (!isPart(wiring, only[0] as string) ||
            (across && offStar(wiring, drawn, reading.from, reading.to)));
        const edge = alone || a === null || b === null ? acrossElement(wiring, drawn, reading) : null;
        if (edge !== null) {
          const kept = setting(alone ? [edge.id] : only);
          return { kind: "resistance", setting: kept, a: edge.from, b: edge.to };
        }
        return a === null || b === null ? null : { kind: "resistance", setting: setting(only), a, b };
      }
      case "current": {
        const node = nodeIn(
          wiring,
          drawn,
          reading.at,
          reading.into === undefined ? undefined : [reading.into],
        );
        if (node === null) return null;
        const part = reading.into === undefined ? undefined : partIn(wiring, reading.into);
        return {
          kind: "current",
          cut: cutAt(wiring, node, (edge) => part === undefined || means(edge, part)),
          whole: part === undefined ? node : null,
        };
      }
      case "voltage": {
        const a = nodeIn(wiring, drawn, reading.from, undefined);
        const b = nodeIn(wiring, drawn, reading.to, undefined);
        if (a !== null && b !== null) return { kind: "voltage", a, b };
        const edge = acrossElement(wiring, drawn, reading);
        return edge === null ? null : { kind: "voltage", a: edge.from, b: edge.to };
      }
      case "drop": {
        const edge = wiring.edgeNumber.get(reading.across);
        return edge === undefined || wiring.edges[edge]?.joint !== true ? null : { kind: "drop", edge };
      }
      case "insulation": {
        const node = nodeIn(wiring, drawn, reading.from, reading.only);
        return node === null ? null : { kind: "insulation", setting: setting(reading.only), node };
      }
    }
  };
  return { rows: readings.map(resolved), settings };
}

/** Branches into which readings look: inner nodes of series strings, single elements clamped or left connected. */
export function branchesLookedInto(
  wiring: Wiring,
  readings: readonly (FieldReading | FieldMeasurement)[],
): ReadonlySet<string> {
  const found = new Set<string>();
  const branchOf = new Map(
    wiring.module.elements.map(({ id, bank, branch }) => [id, `${bank}-${branch}`] as const),
  );
  const look = (name: string | undefined): void => {
    if (name === undefined) return;
    const branch = branchOf.get(name);
    if (branch !== undefined && branch !== name) found.add(branch);
    const inner = /^(.*)\|\d+$/.exec(name);
    if (inner === null) return;
    const string = inner[1] as string;
    const element = branchOf.get(`${string}.1`);
    if (element !== undefined) found.add(element);
  };
  for (const reading of readings) {
    const {
      from,
      to,
      at,
      into,
      only = [],
    } = reading as {
      readonly from?: string;
      readonly to?: string;
      readonly at?: string;
      readonly into?: string;
      readonly only?: readonly string[];
    };
    for (const name of [from, to, at, into, ...only]) look(name);
  }
  return found;
}

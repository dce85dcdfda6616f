/** What insulation readings show of an earth fault: its own resistance and the piece of coil between the probe and the place. */

import {
  earthedInsulation,
  type InsulationShown,
  type ShownInsulation,
  UNSTEADY,
} from "../likelihood/insulation.ts";
import { healthyRows, type Model } from "../likelihood/model.ts";
import type { Edge } from "../network/edges.ts";
import { readsOf } from "../question/instruments.ts";
import { RANGE } from "../question/settings.ts";
import { type EarthPlace, placeAndOhms } from "./earthPlaces.ts";

/** Leads and clips of an insulation tester, which nobody subtracts, Ω. */
const LEADS = 0.3;

/** Places along the coil at which the readings are tried for how well they fit at best. */
const TRIED = 96;

/** The insulation readings as one place of an earth fault explains them. */
export interface EarthedInsulation {
  /** Whether the fault lies in the way of any reading. */
  readonly any: boolean;
  /** ln density of all readings for a place x = 0..1 along the element and a fault resistance. */
  readonly density: (x: number, ohms: number) => number;
  /** The largest density at a place, and anywhere, near enough to tell whether it is worth looking for. */
  readonly mostAt: (x: number) => number;
  readonly most: () => number;
  readonly shown: InsulationShown;
  /** Alike for points that the readings do not tell apart. */
  readonly mark: (point: readonly number[]) => string;
}

/**
 * Sets the insulation readings up for a place.
 * @param alone - no other fault changes the way through the coils; otherwise the reading may lie anywhere up to the coil's own resistance
 */
export function insulationOf(model: Model, place: EarthPlace, alone: boolean): EarthedInsulation {
  const { question, frame, paths, wiring, settings } = model;
  const { from, to } = wiring.edges[place.edge] as Edge;
  const { terminal } = place;
  const own = place.before === 0 ? from : to;
  const relative = Math.hypot(question.by.common, question.by.individual);
  /** From the probe to the tapped string: to either end, and from end to end. */
  const ways = frame.rows.map((row) => {
    if (row?.kind !== "insulation") return null;
    const { part, between } = paths[row.setting] as Model["paths"][number];
    const reached = (node: string): boolean =>
      part.get(row.node) !== undefined && part.get(row.node) === part.get(node);
    if (terminal !== null) {
      // A terminal stays where it is when coils are lifted from it.
      const coil = reached(own) ? between(row.node, own) : null;
      return coil === null ? null : { near: coil, far: coil, ends: 0 };
    }
    if (settings[row.setting]?.has(place.edge) !== true || !reached(from)) return null;
    return { near: between(row.node, from), far: between(row.node, to), ends: between(from, to) };
  });
  const shownAt = (r: number, x: number, ohms: number): ShownInsulation | null => {
    const way = ways[r];
    if (way === undefined || way === null) return null;
    const { string } = place;
    const other = LEADS ** 2 + (UNSTEADY * ohms) ** 2;
    const most = terminal === null ? string : 2 * way.near;
    if (!alone) return { mean: ohms + most / 2, variance: most ** 2 / 12 + other };
    // A string tapped at a share t of its resistance: t of the way to the far end, and the two pieces side by side.
    const t = place.before + place.part * x;
    const { near, far, ends } = way;
    const coil = (1 - t) * near + t * far + t * (1 - t) * (string - ends);
    return { mean: ohms + coil, variance: (relative * coil) ** 2 + other };
  };
  const shown = (r: number, point: readonly number[]): ShownInsulation | null =>
    shownAt(r, ...placeAndOhms(place, point));
  const taken = question.all.flatMap((reading, r) => {
    const reads = readsOf(reading);
    if (reading.kind !== "insulation" || reads === null) return [];
    return [{ r, reads, own: question.seen.own[r] as number }];
  });
  const reached = taken.filter(({ r }) => (ways[r] ?? null) !== null);
  const unreached = healthyRows(model, (r) => (ways[r] ?? null) === null);
  const density = (x: number, ohms: number): number => {
    let log = unreached;
    for (const { r, reads, own } of reached) {
      const { mean, variance } = shownAt(r, x, ohms) as ShownInsulation;
      log += earthedInsulation({ reads, mean, variance: own + variance });
    }
    return log;
  };
  /** The fault resistance that fits best at a place: the weighted mean of what the readings leave for it. */
  const fitted = (x: number): number => {
    let [sum, weight] = [0, 0];
    for (const { r, reads, own } of reached) {
      if (reads === "open") continue;
      const { mean, variance } = shownAt(r, x, 0) as ShownInsulation;
      sum += (reads - mean) / (own + variance);
      weight += 1 / (own + variance);
    }
    const [low, high] = RANGE.earth;
    return weight === 0 ? high : Math.min(high, Math.max(low, sum / weight));
  };
  const mostAt = (x: number): number => density(x, fitted(x));
  return {
    any: reached.length > 0,
    density,
    mostAt,
    most: () => {
      let most = Number.NEGATIVE_INFINITY;
      for (let k = 0; k <= TRIED; k += 1) most = Math.max(most, mostAt(k / TRIED));
      return most;
    },
    shown,
    mark: (point) =>
      reached.length === 0
        ? ""
        : taken
            .map(({ r, own }) => {
              const one = shown(r, point);
              return one === null ? "-" : Math.round(one.mean / (3 * Math.sqrt(own + one.variance)));
            })
            .join(),
  };
}

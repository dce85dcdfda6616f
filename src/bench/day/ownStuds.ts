/** Readings on an element's own studs beside readings through its links: what the two do not share lies in links, bars and joints. */
import { type Network, withResistance } from "../../circuit/index.ts";
import type { Ohms } from "../../quantity/index.ts";
import { fitTerminalReadings } from "../fit/fit.ts";
import type { FittedReading, LeadKnowledge, ResistanceFit } from "../fit/types.ts";
import { expectedReading, type MeasuredOhms } from "./readings.ts";

/** A fit, and the readings that it leaves to links, bars and joints. */
export interface StudFit {
  /** Of the readings kept; its `readings` hold all of them, in the order given. */
  readonly fit: ResistanceFit;
  readonly beyond: readonly FittedReading[];
}

const clash = ({ outcome, consistency }: ResistanceFit): boolean =>
  outcome === "contradictory" || consistency === "inconsistent";

/** The network with the values of a fit; null where it does not give every branch. */
function fittedNetwork(network: Network, { branches }: ResistanceFit): Network | null {
  let fitted = network;
  for (const { id, resistance } of branches) {
    if (resistance === null) return null;
    fitted = withResistance({ network: fitted, id, resistance });
  }
  return fitted;
}

function besides(one: MeasuredOhms, fitted: Network | null, leads: Ohms | null): FittedReading {
  const { from, to, reads } = one;
  const bare = fitted === null ? null : expectedReading(one, fitted);
  const predicted = typeof bare === "number" ? ((bare + (leads ?? 0)) as number as Ohms) : null;
  return { from, to, reads, predicted, residual: null };
}

/**
 * Fits all readings together where they agree. Where they do not and some were read on the branches' own studs, those say what the
 * elements are, and every other reading is kept that agrees with them: the rest is not the elements' doing.
 */
export function fitWithStuds(
  network: Network,
  readings: readonly MeasuredOhms[],
  leads: LeadKnowledge,
): StudFit {
  const fitted = (list: readonly MeasuredOhms[]): ResistanceFit =>
    fitTerminalReadings({ network, readings: list, leads });
  const whole = { fit: fitted(readings), beyond: [] };
  const own = readings.filter(({ ownStuds }) => ownStuds);
  if (own.length === 0 || own.length === readings.length || !clash(whole.fit)) return whole;
  let kept: readonly MeasuredOhms[] = own;
  let fit = fitted(kept);
  if (clash(fit)) return whole;
  // What passes fewer links first: the fewer of them, the more it says of the elements.
  const others = readings
    .filter(({ ownStuds }) => !ownStuds)
    .sort((a, b) => (a.only ?? []).length - (b.only ?? []).length);
  for (const one of others) {
    const more = readings.filter((some) => some === one || kept.includes(some));
    const next = fitted(more);
    if (!clash(next)) [kept, fit] = [more, next];
  }
  const values = fittedNetwork(network, fit);
  const beyond = readings.filter((one) => !kept.includes(one));
  const shown = new Map(
    beyond.map((one) => [one, besides(one, values, fit.leads.resistance as Ohms | null)]),
  );
  const told = readings.map((one) => shown.get(one) ?? (fit.readings[kept.indexOf(one)] as FittedReading));
  return { fit: { ...fit, readings: told }, beyond: [...shown.values()] };
}

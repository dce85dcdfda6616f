/** Faults in places that no reading tells apart by symmetry: two like banks read only together. Weighed once. */
import type { CutResponse } from "./change.ts";
import type { Atom } from "./faults.ts";
import { type Ground, responseOn } from "./findings.ts";
import type { Model } from "./model.ts";

/** Agreement of figures that symmetry makes equal, relative. */
const EQUAL = 1e-9;

const shown = (value: number): string => (Math.abs(value) < EQUAL ? "0" : value.toPrecision(9));

/** What all readings see of a cut, its direction aside. */
function fingerprint(model: Model, { dead, live }: CutResponse): string {
  const parts: string[] = [];
  const signed = (values: ArrayLike<number>, count: number): void => {
    for (let i = 0; i < count; i += 1) parts.push(shown(values[i] as number));
  };
  let sign = 0;
  const direct = (values: ArrayLike<number>, count: number): number => {
    for (let i = 0; i < count && sign === 0; i += 1) {
      if (Math.abs(values[i] as number) > EQUAL) sign = Math.sign(values[i] as number);
    }
    return sign || 1;
  };
  for (const one of dead) {
    parts.push(shown(one.own));
    // An ohmmeter's share counts squared.
    signed(one.through.map(Math.abs), one.through.length);
  }
  if (live !== null) {
    const rows = model.frame.liveRows.length;
    parts.push(shown(live.own));
    const turn = direct(live.through, 3);
    signed(
      live.through.map((value) => turn * value),
      3,
    );
    signed(
      live.shown.map((value) => turn * value),
      rows,
    );
  }
  return parts.join();
}

/** What a fault does to its own edge, which the network does not show. */
function make(model: Model, { kind, edge, line, insertion, stretches }: Atom): string {
  const own = edge < 0 ? undefined : model.wiring.edges[edge];
  const probe = stretches.map(({ low, high }) => [insertion(low), insertion(high)]);
  const figures = (probe.length === 0 ? [[insertion(0)]] : probe)
    .flat()
    .map(({ cold, resistance, variance }) => {
      return [cold, resistance, variance].map(shown).join();
    });
  return [kind, line ?? "", own === undefined ? "" : `${own.joint}${shown(own.resistance)}`, ...figures].join(
    "|",
  );
}

/** A fault standing for all that are like it, and those it stands for. */
export interface Alike {
  readonly atom: Atom;
  readonly others: readonly Atom[];
}

/** Gathers the faults of a model that all readings see alike on a ground. */
export function alikeAtoms(model: Model, ground: Ground): readonly Alike[] {
  const found = new Map<string, { atom: Atom; others: Atom[] }>();
  for (const atom of model.atoms) {
    const response = responseOn(model, ground, atom);
    const key = `${make(model, atom)}|${fingerprint(model, response)}`;
    const known = found.get(key);
    if (known === undefined) found.set(key, { atom, others: [] });
    else known.others.push(atom);
  }
  return [...found.values()];
}

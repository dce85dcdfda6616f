/** Single faults of one wiring weighed on a ground: in series, earthed, the supply unbalanced beside them. */

import type { Atom } from "../faults/atom.ts";
import { earthFinding } from "../hypotheses/earth.ts";
import { alikePlaces, type EarthPlace, earthPlaces } from "../hypotheses/earthPlaces.ts";
import { besideSkewed, type SkewedSupply, skewedFinding } from "../hypotheses/skewedSupply.ts";
import { besideUnbalance, unbalanceFinding } from "../hypotheses/supplyFault.ts";
import { showsEarth } from "../hypotheses/unseen.ts";
import { type Model, onSupply } from "../likelihood/model.ts";
import { type Alike, alikeAtoms } from "../weighing/alike.ts";
import { type Finding, type Ground, groundOf, renamed } from "../weighing/findings.ts";
import { allNames, logOddsOf, type Named, type Names, namesBeside, oneName } from "../weighing/names.ts";
import { weigh } from "../weighing/weigh.ts";

/** Findings whose evidence is this far below the best, in nats and priors counted, are only estimated. */
export const HOPELESS = 22;

/** Root mean square of the unbalance fault's line voltages about their mean: what it adds to the scatter beside another fault. */
const UNBALANCE_SCATTER = 0.0165;

export const logOddsFor = (prior: number): number => Math.log(prior / (1 - prior));

/** The wiring of one plan being weighed, and what has been found so far. */
export interface Weighing {
  readonly model: Model;
  readonly keep: (finding: Finding) => void;
  /** Best log posterior so far, less this wiring's prior. */
  readonly best: () => number;
  /** The supply as read, where it is out of balance beyond what is common. */
  readonly skewed: SkewedSupply | null;
}

/** Findings by the faults that they stand for. */
export type ByAtom = Map<Atom, Finding>;

const unchanged = (finding: Finding): Finding => finding;

/** Single series faults on a ground, those of a parameter or those without. Adds the findings by fault. */
export function singles(
  { model, keep, best }: Weighing,
  ground: Ground,
  alike: readonly Alike[],
  parameter: boolean,
  found: ByAtom,
  finished: (finding: Finding) => Finding = unchanged,
): void {
  const { names } = ground;
  for (const { atom, others } of alike) {
    if ((atom.of !== null) !== parameter) continue;
    const own = namesBeside(names, atom.members);
    const all = allNames(
      own,
      others.map(({ members }) => namesBeside(names, members)),
    );
    const floor = parameter ? best() - all.logOdds - HOPELESS : Number.NEGATIVE_INFINITY;
    const finding = finished(weigh(model, ground, atom, floor, all));
    found.set(atom, finding);
    for (const each of others) found.set(each, finding);
    keep(finding);
  }
}

/** Single series faults on a ground, those without a parameter first: they tell early what is hopeless. */
function allSingles(
  weighing: Weighing,
  ground: Ground,
  alike: readonly Alike[],
  finished?: (finding: Finding) => Finding,
): void {
  const found: ByAtom = new Map();
  for (const parameter of [false, true]) singles(weighing, ground, alike, parameter, found, finished);
}

/** Earth faults on a ground. */
export function earthed(
  { model, keep, best }: Weighing,
  places: readonly EarthPlace[],
  ground: Ground,
  finished: (finding: Finding) => Finding = unchanged,
): void {
  for (const place of alikePlaces(places)) {
    const floor = best() - ground.names.logOdds - logOddsOf(place.members) - HOPELESS;
    keep(finished(earthFinding({ model, ground, place, floor })));
  }
}

/** The supply unbalanced beside nothing else than what a ground names; its names, null where no reading or prior has it. */
export function unbalancedAlone({ model, keep, skewed }: Weighing, ground: Ground): Names | null {
  const { live, priors } = model.question;
  if (!live || priors.supplyUnbalance === 0) return null;
  const { names: before, state } = ground;
  const [known] = before.list() as readonly [Named];
  const logOdds = before.logOdds + logOddsFor(priors.supplyUnbalance) + (skewed?.logPart ?? 0);
  const names = oneName([...known.faults, { kind: "supply unbalance" }], logOdds);
  keep(skewed === null ? unbalanceFinding(model, state, names) : skewedFinding(model, state, skewed, names));
  return names;
}

/** The supply unbalanced beside another fault: as it was read, or its line voltages as so much more scatter. */
export function unbalancedPairs(
  weighing: Weighing,
  alike: readonly Alike[],
  places: readonly EarthPlace[],
  names: Names,
): void {
  const { model: sharp, skewed, keep, best } = weighing;
  const { by } = sharp.question;
  const model = onSupply(sharp, skewed?.supply ?? { unbalance: Math.hypot(by.unbalance, UNBALANCE_SCATTER) });
  const beside = (wide: Finding): Finding =>
    skewed === null
      ? renamed(wide, wide.names, () => besideUnbalance(wide, by.unbalance, 0))
      : besideSkewed(wide, skewed);
  const wide: Weighing = { model, keep, best, skewed };
  const ground = groundOf(model, model.sound, names);
  allSingles(wide, ground, alike, beside);
  earthed(wide, places, ground, beside);
}

/** Single faults beside what a ground has already. */
export function besideGround(weighing: Weighing, ground: Ground, atoms: readonly Atom[]): void {
  const { model } = weighing;
  allSingles(weighing, ground, alikeAtoms(model, ground, atoms));
  if (showsEarth(model.question)) earthed(weighing, earthPlaces(model), ground);
  unbalancedAlone(weighing, ground);
}

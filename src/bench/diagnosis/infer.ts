/** All hypotheses of a question, weighed against each other. */
import type { ModulePlan } from "../../circuit/index.ts";
import { alikeAtoms } from "./alike.ts";
import { type EarthPlace, earthFinding, earthPlaces } from "./earth.ts";
import { wiringOf } from "./edges.ts";
import type { Atom } from "./faults.ts";
import {
  applied,
  type Finding,
  type Ground,
  type Named,
  namesOf,
  soundFinding,
  twoOpens,
  weigh,
} from "./findings.ts";
import { logSumExp } from "./linear.ts";
import { type Model, modelOf, type Question } from "./model.ts";
import { earthPairs, seriesPairs } from "./pairs.ts";
import { baselineOf } from "./quick.ts";
import type { State } from "./state.ts";
import { besideUnbalance, unbalanceFinding } from "./supplyFault.ts";
import type { DiagnosedFault } from "./types.ts";
import { showsEarth, unseenFaults, withUnseen } from "./unseen.ts";
import { slipsOf } from "./variants.ts";

/** Findings whose evidence is this far below the best, in nats and priors counted, are only estimated. */
const HOPELESS = 30;

/** Root mean square of the unbalance fault's line voltages about their mean: what it adds to the scatter beside another fault. */
const UNBALANCE_SCATTER = 0.0165;

/** A finding of one of the wirings asked about. */
export interface Weighed {
  readonly finding: Finding;
  readonly wiring: number;
  /** ln of the prior factor common to all names: other places sound, wiring as likely as the others. */
  readonly logPrior: number;
}

const oddsOf = (atom: Atom): number => Math.log(atom.members.reduce((sum, { odds }) => sum + odds, 0));
const logOddsOf = (prior: number): number => Math.log(prior / (1 - prior));
const SOUND: readonly Named[] = [{ faults: [], logOdds: 0 }];

/** The wiring of one plan being weighed, and what has been found so far. */
interface Weighing {
  readonly model: Model;
  readonly keep: (finding: Finding) => void;
  /** Best log posterior so far, less this wiring's prior. */
  readonly best: () => number;
}

/** Single series faults on a state, with names before them. Returns the findings by fault. */
function singles(
  { model, keep, best }: Weighing,
  names: readonly Named[],
  fault: number,
  finished: (finding: Finding, atom: Atom) => Finding = (finding) => finding,
): Map<Atom, Finding> {
  const base = baselineOf(model, model.sound);
  const ground: Ground = { state: model.sound, base, names, faults: fault };
  const found = new Map<Atom, Finding>();
  const before = names[0]?.logOdds ?? 0;
  const alike = alikeAtoms(model);
  // Those without a parameter first: they tell early what is hopeless.
  for (const free of [false, true]) {
    for (const { atom, others } of alike) {
      if ((atom.of !== null) !== free) continue;
      const whole = logSumExp([atom, ...others].map(oddsOf));
      const floor = free ? best() - before - whole - HOPELESS : Number.NEGATIVE_INFINITY;
      const one = weigh(model, ground, atom, floor);
      const finding = {
        ...finished(one, atom),
        names: [...one.names, ...others.flatMap((other) => namesOf(other.members, names))],
      };
      for (const each of [atom, ...others]) found.set(each, finding);
      keep(finding);
    }
  }
  return found;
}

function doubleOpens({ model, keep }: Weighing): void {
  const opens = model.atoms.filter(({ kind }) => kind === "element open");
  const opened: ReadonlyMap<Atom, State> = new Map(
    opens.map((atom) => [atom, applied(model, model.sound, atom, atom.insertion(0))]),
  );
  opens.forEach((first, i) => {
    for (const second of opens.slice(i)) {
      for (const finding of twoOpens(model, first, second, opened)) keep(finding);
    }
  });
}

function earthed(
  { model, keep, best }: Weighing,
  places: readonly EarthPlace[],
  names: readonly Named[],
  finished: (finding: Finding, place: EarthPlace) => Finding = (finding) => finding,
): void {
  const fault = names[0]?.faults.length ?? 0;
  const before = names[0]?.logOdds ?? 0;
  for (const place of places) {
    const odds = Math.log(place.members.reduce((sum, { odds: one }) => sum + one, 0));
    const floor = best() - before - odds - HOPELESS;
    keep(finished(earthFinding({ model, state: model.sound, place, before: names, fault, floor }), place));
  }
}

/** The supply unbalanced beside another fault: its line voltages as so much more scatter. */
function unbalancedPairs(weighing: Weighing, places: readonly EarthPlace[], names: readonly Named[]): void {
  const { question } = weighing.model;
  const { by } = question;
  const scattered = { ...by, unbalance: Math.hypot(by.unbalance, UNBALANCE_SCATTER) };
  const model: Model = { ...weighing.model, question: { ...question, by: scattered } };
  const sharp = weighing.model;
  const beside = (wide: Finding, again: () => Finding): Finding => ({
    ...wide,
    completed: () => besideUnbalance(wide, again(), 0),
  });
  // With a floor that nothing reaches, a fault is set up to be visited and hardly weighed.
  const unweighed = Number.POSITIVE_INFINITY;
  const wide: Weighing = { ...weighing, model };
  singles(wide, names, 1, (one, atom) => {
    const ground = (): Ground => ({
      state: sharp.sound,
      base: baselineOf(sharp, sharp.sound),
      names,
      faults: 1,
    });
    return beside(one, () => weigh(sharp, ground(), atom, unweighed));
  });
  earthed(wide, places, names, (one, place) =>
    beside(one, () =>
      earthFinding({ model: sharp, state: sharp.sound, place, before: names, fault: 1, floor: unweighed }),
    ),
  );
}

/** Weighs everything about one plan as linked. */
function asLinked(weighing: Weighing, pairs: boolean): void {
  const { model, keep, best } = weighing;
  const { question } = model;
  const { priors } = question;
  const found = singles(weighing, SOUND, 0);
  doubleOpens(weighing);
  const unbalanced: readonly Named[] | null =
    question.live && priors.supplyUnbalance > 0
      ? [{ faults: [{ kind: "supply unbalance" }], logOdds: logOddsOf(priors.supplyUnbalance) }]
      : null;
  if (unbalanced !== null) keep(unbalanceFinding(model, model.sound, unbalanced, 0));
  const places = showsEarth(question) ? earthPlaces(model) : [];
  earthed(weighing, places, SOUND);
  if (!pairs) return;
  seriesPairs(model, found, best, keep);
  if (unbalanced !== null) unbalancedPairs(weighing, places, unbalanced);
  if (places.length > 0) earthPairs(model, places, best, keep);
}

/** Weighs one slip in the links, with single faults beside it if pairs are asked for. */
function misLinked(weighing: Weighing, fault: DiagnosedFault, pairs: boolean): void {
  const { model, keep } = weighing;
  const { question } = model;
  const { misLinked: prior, supplyUnbalance } = question.priors;
  const names: readonly Named[] = [{ faults: [fault], logOdds: logOddsOf(prior) }];
  keep(soundFinding(model, [fault], logOddsOf(prior)));
  if (!pairs) return;
  singles(weighing, names, 1);
  if (showsEarth(question)) earthed(weighing, earthPlaces(model), names);
  if (question.live && supplyUnbalance > 0) {
    const both = [...names].map((one) => ({
      faults: [...one.faults, { kind: "supply unbalance" as const }],
      logOdds: one.logOdds + logOddsOf(supplyUnbalance),
    }));
    keep(unbalanceFinding(model, model.sound, both, 1));
  }
}

/** Weighs everything that the question's depth asks for; the module as drawn and sound comes first. */
export function infer(question: Question): readonly Weighed[] {
  const { input, priors } = question;
  const plans: readonly ModulePlan[] = [input.module, ...(input.alternatives ?? [])];
  const pairs = input.depth === "pairs";
  const found: Weighed[] = [];
  let most = Number.NEGATIVE_INFINITY;
  const weighing = (model: Model, wiring: number): Weighing => {
    const logPrior = model.logSound - Math.log(plans.length);
    const unseen = unseenFaults(model);
    return {
      model,
      best: () => most - logPrior,
      keep: (finding) => {
        found.push({ finding: withUnseen(finding, unseen, pairs ? 2 : 1), wiring, logPrior });
        let odds = Number.NEGATIVE_INFINITY;
        for (const { logOdds } of finding.names) odds = Math.max(odds, logOdds);
        most = Math.max(most, finding.log + odds + logPrior + Math.log(finding.names.length));
      },
    };
  };
  plans.forEach((plan, wiring) => {
    const drawn = wiring === 0 ? undefined : wiringOf(input.module, new Set(), 1);
    const own = weighing(modelOf(question, plan, drawn), wiring);
    own.keep(soundFinding(own.model, [], 0));
    for (const slip of priors.misLinked > 0 ? slipsOf(own.model.wiring) : []) {
      misLinked(weighing(modelOf(question, plan, drawn, slip), wiring), slip, pairs);
    }
    asLinked(own, pairs);
  });
  return found;
}

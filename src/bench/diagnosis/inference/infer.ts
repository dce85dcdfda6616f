/** All hypotheses of a question, weighed against each other. */

import { doubleOpens, earthPairs, seriesPairs } from "../hypotheses/pairs.ts";
import { type SkewedSupply, skewedSupply } from "../hypotheses/skewedSupply.ts";
import { unfedBankFindings } from "../hypotheses/unfedBanks.ts";
import { unfedGrounds } from "../hypotheses/unfedGrounds.ts";
import { unseenFaults, withUnseen } from "../hypotheses/unseen.ts";
import { wholeModuleFindings } from "../hypotheses/wholeModule.ts";
import type { Question } from "../likelihood/model.ts";
import { type Landing, landingsOf } from "../network/landings.ts";
import { type Slip, slipsOf } from "../network/variants.ts";
import { type Finding, groundOf, soundFinding } from "../weighing/findings.ts";
import { type Names, NO_FAULT, oneName } from "../weighing/names.ts";
import { type Prepared, type Wirings, wiringsOf } from "./prepared.ts";
import {
  type ByAtom,
  besideGround,
  earthed,
  HOPELESS,
  logOddsFor,
  singles,
  unbalancedAlone,
  unbalancedPairs,
  type Weighing,
} from "./singleFaults.ts";

/** A finding of one of the wirings asked about. */
export interface Weighed {
  readonly finding: Finding;
  readonly wiring: number;
  /** ln of the prior factor common to all names: other places sound, wiring as likely as the others. */
  readonly logPrior: number;
}

/** A wiring being weighed, with all that has been set up for it. */
interface Own extends Weighing, Prepared {}

/** Single faults without a parameter. */
function fixedSingles(own: Own, found: ByAtom): void {
  singles(own, own.sound, own.alike(), false, found);
}

/** Pairs of elements open. */
function openPairs({ model, sound, alike, best, keep }: Own): void {
  doubleOpens({ model, sound, alike: alike(), best, keep });
}

/** Everything with a parameter about one plan as linked, and pairs where they are asked for. */
function asLinked(own: Own, pairs: boolean, found: ByAtom): void {
  const { model, sound, best, keep, skewed } = own;
  const [alike, places] = [own.alike(), own.places()];
  singles(own, sound, alike, true, found);
  const unbalanced = unbalancedAlone(own, sound);
  earthed(own, places, sound);
  // Volts that far apart have been read: what else is wrong is wrong beside them.
  if (unbalanced !== null && (pairs || skewed !== null)) unbalancedPairs(own, alike, places, unbalanced);
  if (!pairs) return;
  const both = { model, sound, alike, singles: found, best, keep };
  seriesPairs(both);
  if (places.length > 0) earthPairs(both, places);
}

/** Part of the slips in the links that is one branch on one certain line. */
const LANDINGS = 0.1;

/** A slip in the links by itself, and its prior. */
function namesOfSlip({ priors: { misLinked } }: Question, fault: Slip | Landing): Names {
  const prior = fault.kind === "mis-landed" ? LANDINGS * misLinked : misLinked;
  return oneName([fault], logOddsFor(prior));
}

/** Weighs one slip in the links. */
function misLinked({ model, keep }: Weighing, fault: Slip | Landing): void {
  keep(soundFinding(model, namesOfSlip(model.question, fault)));
}

/** Weighs single faults beside a slip in the links. */
function besideSlip(weighing: Weighing, names: Names): void {
  const { model } = weighing;
  besideGround(weighing, groundOf(model, model.sound, names), model.atoms());
}

/** Weighs single faults beside a bank without supply. */
function besideUnfed(weighing: Weighing): void {
  const { model } = weighing;
  const others = model.atoms().filter(({ kind }) => kind !== "unfed bank");
  for (const ground of unfedGrounds(model)) besideGround(weighing, ground, others);
}

/** The hypotheses of one question: each is weighed when asked for and handed on as it comes. */
export interface Inference {
  readonly wirings: Wirings;
  /** The supply as read, where it is out of balance beyond what is common. */
  readonly skewed: SkewedSupply | null;
  /** Everything that the question's depth asks for; the module as drawn and sound comes first. */
  readonly usual: () => void;
  /** Of what is usual at the least depth, all without a parameter. */
  readonly fixed: () => void;
  /** And all with one. */
  readonly free: () => void;
  /** Of what is usual the module as drawn and sound, and single faults without a parameter. */
  readonly plain: () => void;
  /** What is wrong with the module as a whole, worth weighing where the readings refute the sound module. */
  readonly whole: () => void;
  /** Banks without supply, worth it where the module is not read as sound. `spare`: amps that may be far from what they leave. */
  readonly unfed: (spare?: number) => void;
  /** What is rarer, and worth weighing where nothing so far explains the readings: branches on other lines than drawn, slips in the links beside a fault. */
  readonly rare: () => void;
  /** A bank without supply beside one fault, where nothing simpler fits. */
  readonly besideUnfed: () => void;
}

/** Everything usual that there is to weigh, in a list. */
export function infer(question: Question): readonly Weighed[] {
  const found: Weighed[] = [];
  inference(question, (one) => found.push(one)).usual();
  return found;
}

/**
 * Sets the weighing of a question up.
 * @param taken - takes each finding
 * @param wirings - those of the question, if they have been set up already
 * @param known - best log posterior of anything weighed before
 */
export function inference(
  question: Question,
  taken: (one: Weighed) => void,
  wirings: Wirings = wiringsOf(question),
  known: number = Number.NEGATIVE_INFINITY,
): Inference {
  const { input, modules, priors, live } = question;
  const pairs = input.depth === "pairs";
  const skewed = skewedSupply(question);
  let most = known;
  const weighing = (prepared: Prepared, wiring: number): Own => {
    const { model, sound, alike, places } = prepared;
    const logPrior = model.logSound - Math.log(modules.length);
    const unseen = unseenFaults(model);
    return {
      model,
      sound,
      alike,
      places,
      skewed,
      best: () => most - logPrior,
      keep: (finding) => {
        taken({ finding: withUnseen(finding, unseen, pairs ? 2 : 1), wiring, logPrior });
        most = Math.max(most, finding.log + finding.names.logOdds + logPrior);
      },
    };
  };
  const at = (plan: number, slip?: Slip | Landing): Own => weighing(wirings.at(plan, slip), plan);
  const plans = wirings.asDrawn.map((drawn, plan) => {
    let own: Own | null = null;
    return {
      drawn,
      plan,
      own: () => {
        own ??= at(plan);
        return own;
      },
    };
  });
  const slipsIn = (drawn: (typeof plans)[number]["drawn"]): readonly Slip[] =>
    priors.misLinked > 0 ? slipsOf(drawn, live) : [];
  const soundAlone = ({ model, keep }: Own): void => keep(soundFinding(model, NO_FAULT));
  /** All without a parameter about one plan, the module as drawn and sound first; `beside`: single faults beside slips in the links, too. */
  const allFixed = ({ drawn, plan, own }: (typeof plans)[number], found: ByAtom, beside: boolean): void => {
    soundAlone(own());
    for (const slip of slipsIn(drawn)) {
      const linked = at(plan, slip);
      misLinked(linked, slip);
      if (beside) besideSlip(linked, namesOfSlip(question, slip));
    }
    fixedSingles(own(), found);
    openPairs(own());
  };
  return {
    wirings,
    skewed,
    usual: () => {
      for (const one of plans) {
        const found: ByAtom = new Map();
        allFixed(one, found, pairs);
        asLinked(one.own(), pairs, found);
      }
    },
    fixed: () => {
      for (const one of plans) allFixed(one, new Map(), false);
    },
    free: () => {
      for (const { own } of plans) asLinked(own(), false, new Map());
    },
    plain: () => {
      for (const { own } of plans) {
        soundAlone(own());
        fixedSingles(own(), new Map());
      }
    },
    whole: () => {
      for (const { own } of plans) {
        const { model, keep, best } = own();
        for (const one of wholeModuleFindings(model, (logOdds) => best() - logOdds - HOPELESS)) keep(one);
      }
    },
    unfed: (spare = 0) => {
      for (const { own } of plans) {
        const { model, keep } = own();
        for (const one of unfedBankFindings(model, spare)) keep(one);
      }
    },
    besideUnfed: () => {
      for (const { own } of plans) besideUnfed(own());
    },
    rare: () => {
      for (const { drawn, plan } of plans) {
        if (priors.misLinked === 0) return;
        for (const landing of landingsOf(drawn)) misLinked(at(plan, landing), landing);
        if (pairs) return;
        for (const slip of slipsOf(drawn, live)) besideSlip(at(plan, slip), namesOfSlip(question, slip));
      }
    },
  };
}

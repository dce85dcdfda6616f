/** All hypotheses of a question, weighed against each other. */
import type { HeatingModule } from "../../circuit/index.ts";
import { type Alike, alikeAtoms } from "./alike.ts";
import { earthFinding } from "./earth.ts";
import { alikePlaces, type EarthPlace, earthPlaces } from "./earthPlaces.ts";
import { type Wiring, wiringOf } from "./edges.ts";
import type { Atom } from "./faults.ts";
import { type Finding, type Ground, groundOf, renamed, soundFinding } from "./findings.ts";
import { type Landing, landingsOf } from "./landings.ts";
import { drawnWiring, type Model, modelOf, onSupply, type Question } from "./model.ts";
import { allNames, logOddsOf, type Named, type Names, NO_FAULT, namesBeside, oneName } from "./names.ts";
import { doubleOpens, earthPairs, seriesPairs } from "./pairs.ts";
import { besideSkewed, type SkewedSupply, skewedFinding, skewedSupply } from "./skewedSupply.ts";
import { besideUnbalance, unbalanceFinding } from "./supplyFault.ts";
import { unfedBankFindings } from "./unfedBanks.ts";
import { unfedGrounds } from "./unfedGrounds.ts";
import { showsEarth, unseenFaults, withUnseen } from "./unseen.ts";
import { type Slip, slipsOf } from "./variants.ts";
import { weigh } from "./weigh.ts";
import { wholeModuleFindings } from "./wholeModule.ts";

/** Findings whose evidence is this far below the best, in nats and priors counted, are only estimated. */
const HOPELESS = 22;

/** Root mean square of the unbalance fault's line voltages about their mean: what it adds to the scatter beside another fault. */
const UNBALANCE_SCATTER = 0.0165;

/** A finding of one of the wirings asked about. */
export interface Weighed {
  readonly finding: Finding;
  readonly wiring: number;
  /** ln of the prior factor common to all names: other places sound, wiring as likely as the others. */
  readonly logPrior: number;
}

const logOddsFor = (prior: number): number => Math.log(prior / (1 - prior));

/** The wiring of one plan being weighed, and what has been found so far. */
interface Weighing {
  readonly model: Model;
  readonly keep: (finding: Finding) => void;
  /** Best log posterior so far, less this wiring's prior. */
  readonly best: () => number;
  /** The supply as read, where it is out of balance beyond what is common. */
  readonly skewed: SkewedSupply | null;
}

/** Single series faults on a ground. Returns the findings by fault. */
function singles(
  { model, keep, best }: Weighing,
  ground: Ground,
  alike: readonly Alike[],
  finished: (finding: Finding) => Finding = (finding) => finding,
): Map<Atom, Finding> {
  const { names } = ground;
  const found = new Map<Atom, Finding>();
  // Those without a parameter first: they tell early what is hopeless.
  for (const free of [false, true]) {
    for (const { atom, others } of alike) {
      if ((atom.of !== null) !== free) continue;
      const own = namesBeside(names, atom.members);
      const all = allNames(
        own,
        others.map(({ members }) => namesBeside(names, members)),
      );
      const floor = free ? best() - all.logOdds - HOPELESS : Number.NEGATIVE_INFINITY;
      const finding = finished(weigh(model, ground, atom, floor, all));
      for (const each of [atom, ...others]) found.set(each, finding);
      keep(finding);
    }
  }
  return found;
}

function earthed(
  { model, keep, best }: Weighing,
  places: readonly EarthPlace[],
  ground: Ground,
  finished: (finding: Finding) => Finding = (finding) => finding,
): void {
  for (const place of alikePlaces(places)) {
    const floor = best() - ground.names.logOdds - logOddsOf(place.members) - HOPELESS;
    keep(finished(earthFinding({ model, ground, place, floor })));
  }
}

/** The supply unbalanced beside nothing else than what a ground names; its names, null where no reading or prior has it. */
function unbalancedAlone({ model, keep, skewed }: Weighing, ground: Ground): Names | null {
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
function unbalancedPairs(
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
  singles(wide, ground, alike, beside);
  earthed(wide, places, ground, beside);
}

/** Weighs everything about one plan as linked. */
function asLinked(weighing: Weighing, pairs: boolean): void {
  const { model, keep, best, skewed } = weighing;
  const sound = groundOf(model, model.sound, NO_FAULT);
  const alike = alikeAtoms(model, sound, model.atoms());
  const found = singles(weighing, sound, alike);
  const both = { model, sound, alike, singles: found, best, keep };
  doubleOpens(both);
  const unbalanced = unbalancedAlone(weighing, sound);
  const places = showsEarth(model.question) ? earthPlaces(model) : [];
  earthed(weighing, places, sound);
  // Volts that far apart have been read: what else is wrong is wrong beside them.
  if (unbalanced !== null && (pairs || skewed !== null)) {
    unbalancedPairs(weighing, alike, places, unbalanced);
  }
  if (!pairs) return;
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

/** Weighs single faults beside what a ground has already. */
function beside(weighing: Weighing, ground: Ground, atoms: readonly Atom[]): void {
  const { model } = weighing;
  singles(weighing, ground, alikeAtoms(model, ground, atoms));
  if (showsEarth(model.question)) earthed(weighing, earthPlaces(model), ground);
  unbalancedAlone(weighing, ground);
}

/** Weighs single faults beside a slip in the links. */
function besideSlip(weighing: Weighing, names: Names): void {
  const { model } = weighing;
  beside(weighing, groundOf(model, model.sound, names), model.atoms());
}

/** Weighs single faults beside a bank without supply. */
function besideUnfed(weighing: Weighing): void {
  const { model } = weighing;
  const others = model.atoms().filter(({ kind }) => kind !== "unfed bank");
  for (const ground of unfedGrounds(model)) beside(weighing, ground, others);
}

/** The hypotheses of one question: each is weighed when asked for and handed on as it comes. */
export interface Inference {
  /** The supply as read, where it is out of balance beyond what is common. */
  readonly skewed: SkewedSupply | null;
  /** Everything that the question's depth asks for; the module as drawn and sound comes first. */
  readonly usual: () => void;
  /** Of what is usual the module as drawn and sound, and single faults without a parameter. */
  readonly plain: () => void;
  /** What is wrong with the module as a whole, worth weighing where the readings refute the sound module. */
  readonly whole: () => void;
  /** Banks without supply, worth it where the module is not read as sound. */
  readonly unfed: () => void;
  /** What is rarer, and worth weighing where nothing so far explains the readings: branches on other lines than drawn, slips in the links beside a fault. */
  readonly rare: () => void;
  /** A bank without supply beside one fault, where nothing else fits. */
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
 * @param known - best log posterior of anything weighed before
 */
export function inference(
  question: Question,
  taken: (one: Weighed) => void,
  known: number = Number.NEGATIVE_INFINITY,
): Inference {
  const { input, modules, priors } = question;
  const pairs = input.depth === "pairs";
  const skewed = skewedSupply(question);
  let most = known;
  const weighing = (model: Model, wiring: number): Weighing => {
    const logPrior = model.logSound - Math.log(modules.length);
    const unseen = unseenFaults(model);
    return {
      model,
      skewed,
      best: () => most - logPrior,
      keep: (finding) => {
        taken({ finding: withUnseen(finding, unseen, pairs ? 2 : 1), wiring, logPrior });
        most = Math.max(most, finding.log + finding.names.logOdds + logPrior);
      },
    };
  };
  const asDrawn = modules.map((module) => drawnWiring(question, module));
  const drawnFor = asDrawn.map((wiring, k) =>
    k === 0 ? wiring : wiringOf(modules[0] as HeatingModule, new Set(), 1),
  );
  const modelAt = (wiring: number, slip?: Slip | Landing): Weighing => {
    const drawn = drawnFor[wiring] as Wiring;
    return weighing(modelOf(question, asDrawn[wiring] as Wiring, drawn, slip), wiring);
  };
  const setUp: Weighing[] = [];
  /** As drawn, set up once for what is usual and what is rare. */
  const ownAt = (wiring: number): Weighing => {
    setUp[wiring] ??= modelAt(wiring);
    return setUp[wiring];
  };
  return {
    skewed,
    usual: () => {
      modules.forEach((_, wiring) => {
        const own = ownAt(wiring);
        own.keep(soundFinding(own.model, NO_FAULT));
        if (priors.misLinked > 0) {
          for (const slip of slipsOf(own.model.wiring, question.live)) {
            const linked = modelAt(wiring, slip);
            misLinked(linked, slip);
            if (pairs) besideSlip(linked, namesOfSlip(question, slip));
          }
        }
        asLinked(own, pairs);
      });
    },
    plain: () => {
      asDrawn.forEach((_, wiring) => {
        const own = ownAt(wiring);
        own.keep(soundFinding(own.model, NO_FAULT));
        const ground = groundOf(own.model, own.model.sound, NO_FAULT);
        const fixed = own.model.atoms().filter(({ of }) => of === null);
        singles(own, ground, alikeAtoms(own.model, ground, fixed));
      });
    },
    whole: () => {
      asDrawn.forEach((_, wiring) => {
        const own = ownAt(wiring);
        for (const one of wholeModuleFindings(own.model, (logOdds) => own.best() - logOdds - HOPELESS))
          own.keep(one);
      });
    },
    unfed: () => {
      asDrawn.forEach((_, wiring) => {
        const own = ownAt(wiring);
        for (const one of unfedBankFindings(own.model)) own.keep(one);
      });
    },
    besideUnfed: () => {
      asDrawn.forEach((_, wiring) => {
        besideUnfed(ownAt(wiring));
      });
    },
    rare: () => {
      asDrawn.forEach((drawn, wiring) => {
        if (priors.misLinked === 0) return;
        for (const landing of landingsOf(drawn)) misLinked(modelAt(wiring, landing), landing);
        if (pairs) return;
        for (const slip of slipsOf(drawn, question.live))
          besideSlip(modelAt(wiring, slip), namesOfSlip(question, slip));
      });
    },
  };
}

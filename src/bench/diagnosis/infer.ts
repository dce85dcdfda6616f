/** All hypotheses of a question, weighed against each other. */

import { earthFinding, earthPlaces } from "./earth.ts";
import { wiringOf } from "./edges.ts";
import type { Atom } from "./faults.ts";
import { applied, type Finding, type Named, soundFinding, twoOpens, weigh } from "./findings.ts";
import { type Model, modelOf, type Question } from "./model.ts";
import type { State } from "./state.ts";
import { unbalanceFinding } from "./supplyFault.ts";
import { variantsOf } from "./variants.ts";

/** Findings whose evidence is this far below the best, in nats and priors counted, are only estimated. */
const HOPELESS = 30;

/** A finding of one of the wirings asked about. */
export interface Weighed {
  readonly finding: Finding;
  readonly wiring: number;
  /** ln of the prior factor common to all names: other places sound, wiring as likely as the others. */
  readonly logPrior: number;
}

const unbalanced = (prior: number): readonly Named[] => [
  { faults: [{ kind: "supply unbalance" }], logOdds: Math.log(prior / (1 - prior)) },
];

const largestOdds = (atom: Atom): number =>
  Math.log(Math.max(...atom.members.map(({ odds }) => odds)) * atom.members.length);

/** Opens of a model on its sound state, each ready for a second fault. */
function openStates(model: Model): ReadonlyMap<Atom, State> {
  return new Map(
    model.atoms
      .filter(({ kind }) => kind === "element open")
      .map((atom) => [atom, applied(model, model.sound, atom, atom.insertion(0))]),
  );
}

/** Weighs everything that the question's depth asks for. */
export function infer(question: Question): readonly Weighed[] {
  const { input, priors } = question;
  const plans = [input.module, ...(input.alternatives ?? [])];
  const found: Weighed[] = [];
  let best = Number.NEGATIVE_INFINITY;
  const keep = (finding: Finding, wiring: number, logPrior: number): void => {
    found.push({ finding, wiring, logPrior });
    for (const { logOdds } of finding.names) best = Math.max(best, finding.log + logOdds + logPrior);
  };
  plans.forEach((plan, wiring) => {
    const model = modelOf(question, plan, wiring === 0 ? undefined : wiringOf(input.module, new Set(), 1));
    const logPrior = model.logSound - Math.log(plans.length);
    const sound = { state: model.sound, names: [{ faults: [], logOdds: 0 }], faults: 0 };
    keep(soundFinding(model, [], 0), wiring, logPrior);
    if (priors.misLinked > 0) {
      const logOdds = Math.log(priors.misLinked / (1 - priors.misLinked));
      for (const { plan: other, fault } of variantsOf(plan)) {
        const linked = modelOf(question, other, model.wiring);
        keep(soundFinding(linked, [fault], logOdds), wiring, linked.logSound - Math.log(plans.length));
      }
    }
    const fixed = model.atoms.filter(({ of }) => of === null);
    for (const atom of fixed) keep(weigh(model, sound, atom, Number.NEGATIVE_INFINITY), wiring, logPrior);
    const opened = openStates(model);
    const opens = [...opened.keys()];
    opens.forEach((first, i) => {
      for (const second of opens.slice(i)) {
        for (const finding of twoOpens(model, first, second, opened)) keep(finding, wiring, logPrior);
      }
    });
    if (question.live && priors.supplyUnbalance > 0) {
      keep(unbalanceFinding(model, model.sound, unbalanced(priors.supplyUnbalance), 0), wiring, logPrior);
    }
    for (const atom of model.atoms) {
      if (atom.of === null) continue;
      keep(weigh(model, sound, atom, best - logPrior - largestOdds(atom) - HOPELESS), wiring, logPrior);
    }
    // Neither ohms nor anything else between lines show one earth fault: only amperes or insulation do.
    if (question.live || question.all.some(({ kind }) => kind === "insulation")) {
      for (const place of earthPlaces(model)) {
        const floor = best - logPrior - Math.log(priors.earthFault * place.members.length) - HOPELESS;
        const before = [{ faults: [], logOdds: 0 }];
        keep(earthFinding({ model, state: model.sound, place, before, fault: 0, floor }), wiring, logPrior);
      }
    }
  });
  return found;
}

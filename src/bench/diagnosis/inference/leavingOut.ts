/**
 * Hypotheses without a parameter, one reading left out: a Gaussian tells from one evaluation what each of its values adds to the rest, so all
 * readings are left out at once, and only what comes to anything is weighed again.
 */

import { withoutEach } from "../likelihood/likelihood.ts";
import { type Model, type Question, under } from "../likelihood/model.ts";
import { copied, floats } from "../numbers/room.ts";
import type { Finding } from "../weighing/findings.ts";
import { inference, type Weighed } from "./infer.ts";
import type { Wirings } from "./prepared.ts";
import { HOPELESS } from "./singleFaults.ts";

/** What is asked without each of some readings. */
export interface Asked {
  readonly question: Question;
  /** Those of the question. */
  readonly wirings: Wirings;
  /** Not everything usual, only what is plain. */
  readonly plain: boolean;
}

/** A question without one of its readings. */
export interface Without {
  readonly row: number;
  readonly rest: Question;
  /** ln of the density of what was read there all the same. */
  readonly shift: number;
}

/** The question without a reading: its place stays, its value is not known. Single faults are enough beside it. */
export function withoutRow(question: Question, row: number): Question {
  const { input, seen } = question;
  const reads = copied(seen.reads);
  reads[row] = Number.NaN;
  return { ...question, input: { ...input, depth: "single" }, seen: { ...seen, reads } };
}

/** A finding of all readings, and by row what it comes to without each, near enough. */
interface Fixed {
  readonly one: Weighed;
  readonly logs: Float64Array;
}

/** Everything without a parameter, and banks without supply, under all readings. */
function allFixed({ question, wirings, plain }: Asked): readonly Fixed[] {
  const found: Fixed[] = [];
  const logs = floats(question.all.length);
  const take = (one: Weighed): void => {
    const { model, best, visit } = one.finding;
    visit(best);
    withoutEach(model.evaluation, model.healthyInsulation, logs);
    found.push({ one, logs: copied(logs) });
  };
  const single = { ...question, input: { ...question.input, depth: "single" as const } };
  const weigh = inference(single, take, wirings);
  if (plain) weigh.plain();
  else weigh.fixed();
  // The reading left out may be the clamp that speaks against a bank's being off.
  weigh.unfed(1);
  return found;
}

/**
 * Everything without a parameter, and banks without supply, without each of some readings.
 * @param best - best log posterior so far: what is hopeless beside it is not weighed again
 */
export function fixedWithout(
  asked: Asked,
  all: readonly Without[],
  best: number,
  keep: (one: Weighed, without: Without) => void,
): void {
  if (all.length === 0) return;
  const found = allFixed(asked);
  const comesTo = ({ one: { finding, logPrior }, logs }: Fixed, { row, shift }: Without): number =>
    (logs[row] as number) + shift + finding.names.logOdds + logPrior;
  let most = best;
  for (const one of found) for (const without of all) most = Math.max(most, comesTo(one, without));
  for (const without of all) {
    const models = new Map<Model, Model>();
    for (const fixed of found) {
      const { finding, wiring, logPrior } = fixed.one;
      const anew = comesTo(fixed, without) > most - HOPELESS;
      const near = fixed.logs[without.row] as number;
      keep({ finding: underRest(finding, anew ? null : near, without, models), wiring, logPrior }, without);
    }
  }
}

/**
 * A finding without a parameter under the other readings.
 * @param near - what it comes to, where that is near enough
 * @param models - its wirings under them, as far as they have been asked for
 */
function underRest(
  finding: Finding,
  near: number | null,
  { rest }: Without,
  models: Map<Model, Model>,
): Finding {
  let model = models.get(finding.model);
  if (model === undefined) {
    model = under(finding.model, rest);
    models.set(finding.model, model);
  }
  const visit = (finding.under as NonNullable<Finding["under"]>)(model);
  const log = near ?? visit(finding.best);
  return { ...finding, model, visit, log, logTerms: [log] };
}

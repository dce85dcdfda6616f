/** Probabilities from evidence and priors, ranked and grouped. */
import type { Finding } from "./findings.ts";
import { grouped } from "./grouping.ts";
import { infer, type Weighed } from "./infer.ts";
import { type Judged, judge, type Signature, signatureOf } from "./judged.ts";
import { logSumExp } from "./linear.ts";
import type { Question } from "./model.ts";
import { filled, filledWhole } from "./room.ts";

/** A finding with its share of the posterior, all its names together. */
export interface Ranked {
  readonly finding: Finding;
  readonly wiring: number;
  readonly logPrior: number;
  readonly probability: number;
  readonly judged: Judged;
}

/** Everything weighed, most probable first, and the sums that normalise it. */
export interface Posterior {
  readonly ranked: readonly Ranked[];
  readonly groups: readonly (readonly Ranked[])[];
  /** The module as drawn and sound. */
  readonly sound: Weighed;
  /** ln of the evidence of all hypotheses listed. */
  readonly total: number;
  /** ln of the sum of all priors. */
  readonly priorTotal: number;
}

/** Explanations less probable than this are left out, but for the first few; below the second figure they are not grouped. */
const LISTED = 1e-6;
const FEWEST = 3;
const GROUPED = 1e-4;

/** Weighs, ranks and groups. */
export function posteriorOf(question: Question): Posterior {
  const weighed = infer(question);
  const logs = filled(weighed.length, (i) => {
    const { finding, logPrior } = weighed[i] as Weighed;
    return finding.log + logPrior + finding.names.logOdds;
  });
  const everything = logSumExp(logs);
  const priorTotal = logSumExp(weighed.map(({ finding, logPrior }) => logPrior + finding.names.logOdds));
  // What will not be listed is left out before the rest is put in order; of the others there are few.
  const order = filledWhole(weighed.length, (i) => i);
  const likely = order.filter((i) => (logs[i] as number) - everything > Math.log(LISTED));
  const kept = (likely.length < FEWEST ? order : likely)
    .sort((a, b) => (logs[b] as number) - (logs[a] as number))
    .subarray(0, Math.max(FEWEST, likely.length));
  const shareOf = (i: number): number => Math.exp((logs[i] as number) - everything);
  // What is left out is shared among the rest: what is listed makes up 1.
  const listed = kept.reduce((sum, i) => sum + shareOf(i), 0);
  const total = everything + Math.log(listed);
  const signatures = new Map<Ranked, Signature>();
  const ranked = Array.from(kept, (i): Ranked => {
    const { finding, wiring, logPrior } = weighed[i] as Weighed;
    const found = { finding, wiring, logPrior, probability: shareOf(i) / listed, judged: judge(finding) };
    if (found.probability >= GROUPED) signatures.set(found, signatureOf(finding, wiring));
    return found;
  });
  const groups = grouped(ranked, (one) => signatures.get(one) ?? null)
    .map((members) => ({ members, sum: members.reduce((sum, { probability }) => sum + probability, 0) }))
    .sort((a, b) => b.sum - a.sum)
    .map(({ members }) => members);
  return { ranked, groups, sound: weighed[0] as Weighed, total, priorTotal };
}

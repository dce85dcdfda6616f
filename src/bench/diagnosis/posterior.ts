/** Probabilities from evidence and priors, ranked and grouped. */
import { largestFirst } from "../../numeric/index.ts";
import type { Finding } from "./findings.ts";
import { grouped } from "./grouping.ts";
import { infer, type Weighed } from "./infer.ts";
import { type Judged, judge, type Signature, signatureOf } from "./judged.ts";
import { logSumExp } from "./linear.ts";
import type { Question } from "./model.ts";

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
  const logOf = ({ finding, logPrior }: Weighed): number => finding.log + logPrior + finding.names.logOdds;
  const logs = weighed.map(logOf);
  const everything = logSumExp(logs);
  const priorTotal = logSumExp(weighed.map(({ finding, logPrior }) => logPrior + finding.names.logOdds));
  const likely = weighed.map((one, i) => ({
    ...one,
    probability: Math.exp((logs[i] as number) - everything),
  }));
  const kept = largestFirst(likely, ({ probability }) => probability).filter(
    ({ probability }, i) => i < FEWEST || probability > LISTED,
  );
  // What is left out is shared among the rest: what is listed makes up 1.
  const listed = kept.reduce((sum, { probability }) => sum + probability, 0);
  const total = everything + Math.log(listed);
  const signatures = new Map<Ranked, Signature>();
  const ranked = kept.map((one): Ranked => {
    const { finding, wiring } = one;
    const found = { ...one, probability: one.probability / listed, judged: judge(finding) };
    if (found.probability >= GROUPED) signatures.set(found, signatureOf(finding, wiring));
    return found;
  });
  const groups = largestFirst(
    grouped(ranked, (one) => signatures.get(one) ?? null),
    (members) => members.reduce((sum, { probability }) => sum + probability, 0),
  );
  return { ranked, groups, sound: weighed[0] as Weighed, total, priorTotal };
}

/** Probabilities from evidence and priors, ranked and grouped. */
import { largestFirst } from "../../../numeric/index.ts";
import { neutralSlip } from "../hypotheses/neutralSlip.ts";
import type { Question } from "../likelihood/model.ts";
import { logSumExp } from "../numbers/linear.ts";
import type { Finding } from "../weighing/findings.ts";
import { grouped } from "./grouping.ts";
import { inference, type Weighed } from "./infer.ts";
import { type Judged, judge, pValueOf, type Signature, signatureOf } from "./judged.ts";
import { misreadRows, weighMisread } from "./misread.ts";

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

/** Explanations less probable than this (its logarithm) are left out, but for the first few; below the last figure they are not grouped. */
const LISTED = Math.log(1e-4);
const FEWEST = 3;
const GROUPED = 1e-4;

/** What may be listed of all that was weighed, and the evidence and priors of everything. */
interface Gathered {
  readonly sound: Weighed;
  readonly kept: readonly { readonly one: Weighed; readonly log: number }[];
  /** ln of the evidence of everything, priors counted, and of the priors alone. */
  readonly total: number;
  readonly priorTotal: number;
}

/** Takes findings as they come. What can no longer be listed is counted and let go: of pairs there are hundreds. */
class Gathering {
  #sound: Weighed | null = null;
  readonly #weighed: { one: Weighed; log: number }[] = [];
  readonly #logs: number[] = [];
  readonly #priors: number[] = [];
  /** The highest few, in falling order. */
  readonly #most: number[] = Array(FEWEST).fill(Number.NEGATIVE_INFINITY);

  take(one: Weighed): void {
    this.#sound ??= one;
    const prior = one.logPrior + one.finding.names.logOdds;
    const log = one.finding.log + prior;
    this.#logs.push(log);
    this.#priors.push(prior);
    const most = this.#most;
    const last = most[FEWEST - 1] as number;
    if (log < last && log < (most[0] as number) + LISTED) return;
    this.#weighed.push({ one, log });
    if (log > last) {
      most[FEWEST - 1] = log;
      most.sort((a, b) => b - a);
    }
  }

  /** The module as drawn and sound. */
  get sound(): Weighed {
    return this.#sound as Weighed;
  }

  /** The most probable finding so far. */
  get first(): Finding {
    const most = this.best;
    return (largestFirst(this.#weighed, ({ log }) => Math.exp(log - most))[0] as { one: Weighed }).one
      .finding;
  }

  /** The highest log posterior so far. */
  get best(): number {
    return this.#most[0] as number;
  }

  gathered(): Gathered {
    const total = logSumExp(this.#logs);
    const kept = largestFirst(this.#weighed, ({ log }) => Math.exp(log - total)).filter(
      ({ log }, i) => i < FEWEST || log - total > LISTED,
    );
    return { sound: this.sound, kept, total, priorTotal: logSumExp(this.#priors) };
  }
}

/** p-value below which an explanation is doubted, and what is rarer is weighed as well. */
const DOUBTFUL = 0.01;

/** p-value of the sound module below which banks without supply are weighed though it comes first: they are seldom, and soon weighed. */
const UNFED = 0.1;

/** Whether the readings speak against a finding. */
function isRefuted(finding: Finding, below: number = DOUBTFUL): boolean {
  const pValue = pValueOf(finding, judge(finding));
  return pValue !== null && pValue < below;
}

/** Whether an explanation fits badly, or takes two faults. */
const isDoubtful = (finding: Finding): boolean => {
  const { faults, oneCause = false } = finding.names;
  return (faults > 1 && !oneCause) || isRefuted(finding);
};

/** Weighs, ranks and groups. */
export function posteriorOf(question: Question): Posterior {
  const gathering = new Gathering();
  const take = (one: Weighed): void => gathering.take(one);
  const { wirings, skewed, usual, whole, unfed, rare, besideUnfed } = inference(question, take);
  usual();
  const sound = gathering.sound.finding;
  if (gathering.first !== sound || isRefuted(sound, UNFED)) unfed();
  if (isRefuted(sound)) whole();
  // Volts far apart are read of links against the drawing as well.
  if (isDoubtful(gathering.first) || skewed !== null) {
    rare();
    const refuted = isRefuted(gathering.first);
    besideUnfed();
    const doubtful = isDoubtful(gathering.first);
    const slip = neutralSlip(question)?.row ?? null;
    if (doubtful || slip !== null) {
      const rows = misreadRows(question, gathering.sound, slip);
      weighMisread({
        question,
        wirings,
        // A voltage to neutral fits a supply as unequal just as well: only that slip is then held against it.
        rows: doubtful ? rows : rows.filter((r) => r === slip),
        // Where a bank without supply beside a fault has come to fit, only what is simpler than that.
        plain: refuted && !isRefuted(gathering.first),
        taken: take,
        most: gathering.best,
      });
    }
  }
  return rankedOf(gathering.gathered());
}

function rankedOf({ sound, kept, total: everything, priorTotal }: Gathered): Posterior {
  const shareOf = (log: number): number => Math.exp(log - everything);
  // What is left out is shared among the rest: what is listed makes up 1.
  const listed = kept.reduce((sum, { log }) => sum + shareOf(log), 0);
  const total = everything + Math.log(listed);
  const signatures = new Map<Ranked, Signature>();
  const ranked = kept.map(({ one, log }): Ranked => {
    const { finding, wiring, logPrior } = one;
    const found = { finding, wiring, logPrior, probability: shareOf(log) / listed, judged: judge(finding) };
    if (found.probability >= GROUPED) signatures.set(found, signatureOf(finding, wiring));
    return found;
  });
  const groups = largestFirst(
    grouped(ranked, (one) => signatures.get(one) ?? null),
    (members) => members.reduce((sum, { probability }) => sum + probability, 0),
  );
  return { ranked, groups, sound, total, priorTotal };
}

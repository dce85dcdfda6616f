/** Probabilities from evidence and priors, ranked and grouped. */
import { EQUAL_WITHIN, largestFirst } from "../../../numeric/index.ts";
import { neutralSlip } from "../hypotheses/neutralSlip.ts";
import type { Question } from "../likelihood/model.ts";
import { logSumExp, weightsOf } from "../numbers/linear.ts";
import { copied } from "../numbers/room.ts";
import type { Finding } from "../weighing/findings.ts";
import { Grouping } from "./grouping.ts";
import { inference, type Weighed } from "./infer.ts";
import { type Judged, judge, pValueOf, signatureOf } from "./judged.ts";
import { misreadRows, weighMisread } from "./misread.ts";

/** A finding with its share of the posterior, all its names together. */
export interface Ranked {
  readonly finding: Finding;
  readonly wiring: number;
  readonly logPrior: number;
  readonly probability: number;
  readonly judged: Judged;
  /** What each of the finding's points is worth, all together 1. */
  readonly weights: Float64Array;
}

/** Findings that these readings cannot tell apart, most probable first. */
interface RankedGroup {
  readonly probability: number;
  readonly members: readonly Ranked[];
}

/** Everything weighed, most probable first, and the sums that normalise it. */
export interface Posterior {
  readonly ranked: readonly Ranked[];
  readonly groups: readonly RankedGroup[];
  /** The module as drawn and sound, and what it would read, by row. */
  readonly sound: Weighed;
  readonly expected: Float64Array;
  /** ln of the evidence of all hypotheses listed. */
  readonly total: number;
  /** ln of the sum of all priors. */
  readonly priorTotal: number;
}

/** Explanations less probable than this (its logarithm) are left out, but for the first few; below the last figure they are not grouped. */
const LISTED = Math.log(1e-4);
const FEWEST = 3;
const GROUPED = 1e-4;

/** A finding as it was weighed, and ln of its evidence times its prior. */
interface Kept {
  readonly one: Weighed;
  readonly log: number;
}

/** What may be listed of all that was weighed, and the evidence and priors of everything. */
interface Gathered {
  readonly kept: readonly Kept[];
  /** ln of the evidence of everything, priors counted, and of the priors alone. */
  readonly total: number;
  readonly priorTotal: number;
}

/** ln of the part of the highest from which a probability counts as equal to it. */
const TIED = Math.log1p(-EQUAL_WITHIN);

/** Takes findings as they come. What can no longer be listed is counted and let go: of pairs there are hundreds. */
class Gathering {
  #sound: Weighed | null = null;
  readonly #weighed: Kept[] = [];
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
    const last = this.#most[FEWEST - 1] as number;
    if (log < last && log < this.best + LISTED) return;
    this.#weighed.push({ one, log });
    if (log > last) this.#rank(log);
  }

  /** Puts what is among the highest few in its place. */
  #rank(log: number): void {
    const most = this.#most;
    let at = FEWEST - 1;
    for (; at > 0 && (most[at - 1] as number) < log; at -= 1) most[at] = most[at - 1] as number;
    most[at] = log;
  }

  /** The module as drawn and sound. */
  get sound(): Weighed {
    return this.#sound as Weighed;
  }

  /** The most probable finding so far; of equals the first. */
  get first(): Finding {
    const tied = this.best + TIED;
    return (this.#weighed.find(({ log }) => log >= tied) as Kept).one.finding;
  }

  /** The highest log posterior so far. */
  get best(): number {
    return this.#most[0] as number;
  }

  gathered(): Gathered {
    const total = logSumExp(this.#logs);
    // Only what may be listed is put in order: the first few, with what is equal to the last of them, and all above the limit.
    const few = Math.exp((this.#most[FEWEST - 1] as number) - total) * (1 - EQUAL_WITHIN);
    const high = this.#weighed.filter(({ log }) => log - total > LISTED || Math.exp(log - total) >= few);
    const kept = largestFirst(high, ({ log }) => Math.exp(log - total)).filter(
      ({ log }, i) => i < FEWEST || log - total > LISTED,
    );
    return { kept, total, priorTotal: logSumExp(this.#priors) };
  }
}

/** p-value below which an explanation is doubted, and what is rarer is weighed as well. */
const DOUBTFUL = 0.01;

/** p-value of the sound module below which banks without supply are weighed though it comes first: they are seldom, and soon weighed. */
const UNFED = 0.1;

/** Findings held against the readings, each once. */
class Judgements {
  readonly #known = new Map<Finding, Judged>();

  /** The judgement of a finding, whose model is left at its best point. */
  visited(finding: Finding): Judged {
    if (this.#known.has(finding)) finding.visit(finding.best);
    return this.of(finding);
  }

  /** The judgement of a finding, wherever its model is left. */
  of(finding: Finding): Judged {
    let judged = this.#known.get(finding);
    if (judged === undefined) {
      judged = judge(finding);
      this.#known.set(finding, judged);
    }
    return judged;
  }

  /** Whether the readings speak against a finding. */
  refute(finding: Finding, below: number = DOUBTFUL): boolean {
    const pValue = pValueOf(finding, this.of(finding));
    return pValue !== null && pValue < below;
  }

  /** Whether an explanation fits badly, or takes two faults. */
  doubt(finding: Finding): boolean {
    const { faults, oneCause = false } = finding.names;
    return (faults > 1 && !oneCause) || this.refute(finding);
  }
}

/** Weighs, ranks and groups. */
export function posteriorOf(question: Question): Posterior {
  const gathering = new Gathering();
  const judgements = new Judgements();
  const take = (one: Weighed): void => gathering.take(one);
  const { wirings, skewed, usual, whole, unfed, rare, besideUnfed } = inference(question, take);
  usual();
  const sound = gathering.sound.finding;
  judgements.of(sound);
  const expected = copied(sound.model.prediction.mean);
  if (gathering.first !== sound || judgements.refute(sound, UNFED)) unfed();
  if (judgements.refute(sound)) whole();
  // Volts far apart are read of links against the drawing as well.
  if (judgements.doubt(gathering.first) || skewed !== null) {
    rare();
    const refuted = judgements.refute(gathering.first);
    besideUnfed();
    const doubtful = judgements.doubt(gathering.first);
    const slip = neutralSlip(question)?.row ?? null;
    if (doubtful || slip !== null) {
      const rows = misreadRows(question, gathering.sound, slip);
      weighMisread({
        question,
        wirings,
        // A voltage to neutral fits a supply as unequal just as well: only that slip is then held against it.
        rows: doubtful ? rows : rows.filter((r) => r === slip),
        // Where a bank without supply beside a fault has come to fit, only what is simpler than that.
        plain: refuted && !judgements.refute(gathering.first),
        taken: take,
        most: gathering.best,
      });
    }
  }
  return { ...rankedOf(gathering.gathered(), judgements), sound: gathering.sound, expected };
}

/** What was kept, with its share of the posterior, in groups. */
function rankedOf(
  { kept, total: everything, priorTotal }: Gathered,
  judgements: Judgements,
): Omit<Posterior, "sound" | "expected"> {
  const shares = kept.map(({ log }) => Math.exp(log - everything));
  // What is left out is shared among the rest: what is listed makes up 1.
  const listed = shares.reduce((sum, share) => sum + share, 0);
  const total = everything + Math.log(listed);
  const grouping = new Grouping<Ranked>();
  const ranked = kept.map(({ one: { finding, wiring, logPrior } }, i): Ranked => {
    const probability = (shares[i] as number) / listed;
    const alone = probability < GROUPED;
    const judged = alone ? judgements.of(finding) : judgements.visited(finding);
    const weights = weightsOf(finding.logTerms);
    const found = { finding, wiring, logPrior, probability, judged, weights };
    grouping.add(found, alone ? null : signatureOf(finding, weights));
    return found;
  });
  const groups = largestFirst(grouping.groups.map(groupOf), ({ probability }) => probability);
  return { ranked, groups, total, priorTotal };
}

/** Members with what they are worth together. */
function groupOf(members: readonly Ranked[]): RankedGroup {
  let probability = 0;
  for (const one of members) probability += one.probability;
  return { probability, members };
}

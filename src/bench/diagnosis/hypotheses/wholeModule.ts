/**
 * What is wrong with a module as a whole, or with how it was read: all elements of another value than drawn, the feed still across the
 * lines. Each value of the parameter wants a network of its own, so these are weighed only where the readings refute the sound module.
 */

import { type Stretch, stretchOf } from "../faults/atom.ts";
import { earthedInsulation, type ShownInsulation } from "../likelihood/insulation.ts";
import { logLikelihood, type Model } from "../likelihood/model.ts";
import { rescaled } from "../network/edges.ts";
import { scaled } from "../network/scaled.ts";
import { deadStates, frameOf, type State } from "../network/state.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import { isLine } from "../question/lines.ts";
import { type FaultPriors, RANGE } from "../question/settings.ts";
import { integrated } from "../weighing/family.ts";
import { type Finding, findingOf, type Parameter } from "../weighing/findings.ts";
import { oneName } from "../weighing/names.ts";

/** A slip of one parameter. */
interface Slip {
  readonly kind: "other rating" | "feed connected";
  readonly prior: keyof FaultPriors;
  readonly of: Parameter["of"];
  readonly stretches: readonly Stretch[];
  readonly stateAt: (model: Model, value: number) => State;
  /** Whether readings like these can show it; the model has just been asked about the sound module. */
  readonly shows: (model: Model) => boolean;
  /** Where the readings put the parameter at first sight; `null` where they do not say. */
  readonly guessed: (model: Model) => number | null;
}

/** A path in parallel only takes ohms away: readings so far above the sound module's are none of its doing. */
const ABOVE = 1.12;

/** Whether no reading of ohms lies above the sound module's own. */
function ohmsNotAbove({ question, prediction }: Model): boolean {
  const { all, seen } = question;
  return all.every(({ kind }, r) => {
    const reads = seen.reads[r] as number;
    return kind !== "resistance" || Number.isNaN(reads) || reads <= ABOVE * (prediction.mean[r] as number);
  });
}

/** The middle of the ratios in which ohms lie above, and amps below, those of the sound module. */
function ratioShown({ question, prediction }: Model): number | null {
  const { all, seen } = question;
  const ratios = all.flatMap(({ kind }, r) => {
    const up = (seen.reads[r] as number) / (prediction.mean[r] as number);
    const ratio = kind === "resistance" ? up : kind === "current" ? 1 / up : Number.NaN;
    return ratio > 0 && ratio < Number.POSITIVE_INFINITY ? [ratio] : [];
  });
  const middle = ratios.sort((a, b) => a - b)[ratios.length >> 1];
  if (middle === undefined) return null;
  const [low, high] = middle < 1 ? RANGE.ratedLow : RANGE.ratedHigh;
  return Math.min(Math.max(middle, low), high);
}

/** The middle of what would have to lie between two lines to take the ohms read down from the sound module's: three alike in delta. */
function feedShown({ question, prediction }: Model): number | null {
  const { all, seen } = question;
  const [low, high] = RANGE.feed;
  const across = all.flatMap((one, r) => {
    if (one.kind !== "resistance" || Number.isNaN(seen.reads[r])) return [];
    // To a star point the feed lies beside other branches as well.
    if (!isLine(one.from) || !isLine(one.to)) return [];
    const missing = 1 / (seen.reads[r] as number) - 1 / (prediction.mean[r] as number);
    return [missing > 0 ? Math.min(Math.max(1.5 / missing, low), high) : high];
  });
  return across.sort((a, b) => a - b)[across.length >> 1] ?? null;
}

/** Nats below the floor at the guess from which the rest is not looked at: the best value is near it. */
const FAR_BELOW = 20;

/**
 * What insulation readings show through a feed whose neutral is earthed: its windings, its earth and the leads. All of them then read next to
 * nothing, and no fault of the module has to be there. As likely as not the neutral is earthed.
 */
const EARTHED_FEED = { mean: 1, deviation: 3, most: 100, part: 0.5 };

/** ln of what the insulation readings gain by an earthed feed, and what they show; null where they do not look like one. */
function earthedFeed({ question, healthyInsulation }: Model): {
  readonly gain: number;
  readonly shown: (row: number) => ShownInsulation | null;
} | null {
  const { all, seen, input } = question;
  const { mean, deviation, most, part } = EARTHED_FEED;
  const variance = deviation ** 2;
  let gain = Math.log(part) - healthyInsulation;
  let some = false;
  for (const [r, { kind, reads }] of input.readings.entries()) {
    if (kind !== "insulation") continue;
    if (reads === "open" || reads > most) return null;
    some = true;
    gain += earthedInsulation({ reads, mean, variance: variance + (seen.own[r] as number) });
  }
  if (!some) return null;
  return { gain, shown: (row) => (all[row]?.kind === "insulation" ? { mean, variance } : null) };
}

const rowsOf = ({ frame, settings }: Model) => ({ rows: frame.rows, settings });

const SLIPS: readonly Slip[] = [
  {
    kind: "other rating",
    prior: "otherRating",
    of: "resistance ratio",
    stretches: [stretchOf(RANGE.ratedLow, true, 0.5), stretchOf(RANGE.ratedHigh, true, 0.5)],
    stateAt: (model, value) => {
      const { wiring, frame, sound, question } = model;
      if (wiring.edges.every(({ joint }) => !joint)) return scaled(frame, sound, value);
      const { spread, live } = question;
      return frameOf(rescaled(wiring, value), rowsOf(model), spread.temperatureFactor.value, live).state;
    },
    shows: () => true,
    guessed: ratioShown,
  },
  {
    kind: "feed connected",
    prior: "feedConnected",
    of: "feed resistance",
    stretches: [stretchOf(RANGE.feed, true, 1)],
    // Read dead; under voltage the feed is the supply.
    stateAt: ({ frame, settings, sound }, value) => ({ ...sound, dead: deadStates(frame, settings, value) }),
    shows: (model) => model.question.all.some(({ kind }) => kind === "resistance") && ohmsNotAbove(model),
    guessed: feedShown,
  },
];

/** Weighs what is wrong with a module as a whole. `floorFor`: evidence below it, for these log odds, is only estimated. */
export function wholeModuleFindings(model: Model, floorFor: (logOdds: number) => number): readonly Finding[] {
  const { priors } = model.question;
  return SLIPS.flatMap(({ kind, prior, of, stretches, stateAt, shows, guessed }) => {
    const p = priors[prior];
    if (p === 0) return [];
    logLikelihood(model, model.sound);
    if (!shows(model)) return [];
    const fault: DiagnosedFault = { kind };
    const names = oneName([fault], Math.log(p / (1 - p)));
    const earthed = kind === "feed connected" ? earthedFeed(model) : null;
    const at = (value: number): number => logLikelihood(model, stateAt(model, value)) + (earthed?.gain ?? 0);
    const floor = floorFor(names.logOdds);
    const guess = guessed(model);
    if (guess !== null && at(guess) < floor - FAR_BELOW) return [];
    const weighted = integrated(stretches, at, floor);
    const visit = ([value]: readonly number[]): number => at(value as number);
    const own = { completed: undefined, earthed: undefined, insulation: earthed?.shown, under: undefined };
    return [findingOf(model, names, [{ of, stretches, fault: 0 }], weighted, visit, undefined, own)];
  });
}

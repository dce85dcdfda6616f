/** A group of explanations in words: how probable, which, and what the readings say of their parameters. */
import { formatQuantity, given, givenList, type Ohms } from "../../../quantity/index.ts";
import type { Explanation, ExplanationGroup, FaultEstimate } from "../question/types.ts";
import { likeExplanations, likeWords } from "./likeElements.ts";
import { probabilityWords as percent, unseenWords } from "./words.ts";

/**
 * A probability and what it is the probability of.
 * @since 0.1.0
 */
export interface LikelyWords {
  /** As people read it: `"54 %"`, `"over 99.9 %"`; never 0 or 100 %, which no reading gives. */
  readonly probability: string;
  /** The explanation: `"element A-L3 open"`. */
  readonly text: string;
}

/**
 * A group of explanations in a technician's words.
 * @since 0.1.0
 */
export interface ExplanationGroupWords {
  /** Probability that one of them holds. */
  readonly probability: string;
  /**
   * Explanations that readings like these can show, most probable first; more than one cannot be told apart. One of several like
   * elements of a branch is told as one: `"one of elements A-L1-1 and A-L1-2 open"`.
   */
  readonly explanations: readonly LikelyWords[];
  /** The others together, such as a lost line where nothing was read under voltage; `null` if there are none. */
  readonly unseen: LikelyWords | null;
  /** What the readings say of the first explanation's parameters, with 95 % intervals. */
  readonly estimates: readonly string[];
}

function estimateText({ of, value, low, high, unit }: FaultEstimate): string {
  if (unit === "Ω") {
    const ohms = (x: number): string =>
      formatQuantity(x as Ohms, { unit: "Ω", significantDigits: 2, engineering: true });
    return `${of} ${ohms(value)} (${ohms(low)} to ${ohms(high)})`;
  }
  return `${of} ${value.toFixed(2)} (${low.toFixed(2)} to ${high.toFixed(2)})`;
}

/**
 * Puts a group of explanations into words, for a report or a screen.
 * @param group - one of the groups that {@link diagnose} answers
 * @returns the words
 * @throws ElectroheatError `missing`, `wrong-type`
 * @example
 * ```ts
 * const { groups } = diagnose({
 *   module: { banks: [{ id: "A", connection: "star", elementResistance: ohms(12) }] },
 *   instruments: { ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" } },
 *   readings: [{ kind: "resistance", from: "L1", to: "S", reads: "open" }],
 * });
 * explanationGroupWords(groups[0] as ExplanationGroup).explanations[0]?.text // => "element A-L1 open"
 * ```
 * @since 0.1.0
 */
export function explanationGroupWords(group: ExplanationGroup): ExplanationGroupWords {
  const { probability } = given(group, "group");
  const explanations = givenList(group.explanations, "group.explanations", 1);
  const [first] = explanations as readonly [Explanation];
  const seen =
    explanations.length === 1 ? explanations : explanations.filter((one) => one.unseen.length === 0);
  const hidden = explanations.length === 1 ? [] : explanations.filter((one) => one.unseen.length > 0);
  const shownFaults = first.faults.length - first.unseen.length;
  return {
    probability: percent(probability),
    explanations: likeExplanations(seen).map((one) => {
      return { probability: percent(one.probability), text: likeWords(one) };
    }),
    unseen:
      hidden.length === 0
        ? null
        : {
            probability: percent(hidden.reduce((part, one) => part + one.probability, 0)),
            text: unseenWords(hidden),
          },
    estimates: first.estimates.map((estimate) => {
      // Unseen faults come last among the faults: what is said of them is what was assumed.
      const known =
        estimate.fault < shownFaults ? "95 % of it" : "assumed beforehand, not shown by these readings";
      return `${estimateText(estimate)}, ${known}`;
    }),
  };
}

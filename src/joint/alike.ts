/** A joint held against the joints like it, by a named rule or the caller's own. */
import ratioRules from "../../shared/tables/joint-ratio-rules.json" with { type: "json" };
import { compareQuoted, type Judgement, judge } from "../decision/index.ts";
import type { Basis } from "../material/index.ts";
import { checkMeasurable, checkMeasurableOrZero, fail, given, type Ohms } from "../quantity/index.ts";
import { basisOf, cellNumber, JOINT_DEFERRAL, rowNamed } from "./basis.ts";
import { checkText } from "./check.ts";

/**
 * A rule for the ratio of a joint to the lowest joint like it: by name, or your own.
 * @since 0.1.0
 */
export type JointRatioRule =
  | "50-percent-above-lowest"
  | {
      /** Name of the rule. */
      readonly name: string;
      /** Highest ratio allowed. */
      readonly limit: number;
      /** Whose rule it is. */
      readonly source: string;
    };

/**
 * A joint held against the joints like it.
 * @since 0.1.0
 */
export interface JointVerdict {
  /** Resistance over the lowest similar one. */
  readonly ratio: number;
  /** The lowest similar resistance (Ω). */
  readonly lowest: Ohms;
  /** The three-way judgement on the ratio. */
  readonly judgement: Judgement;
  /** What the verdict asks for. */
  readonly action: string;
  /** Source of the rule. */
  readonly basis: Basis;
  /** To whom the verdict defers. */
  readonly deferral: string;
}

const ACTIONS = {
  within: "no action by this rule",
  outside: "open, clean or renew, remake",
  undecided: "measure again with a finer meter or more current",
} as const;

/**
 * Judges a joint by its ratio to the lowest similar joint, by a named rule.
 *
 * Similar means same bar, same hardware, same probe points, same current or resistance. The ratio's half-width is the
 * worst case of both half-widths. The named rule `50-percent-above-lowest` asks to investigate values more than 50 %
 * above the lowest similar joint. Limits against an equal length of bar exist in other standards; give yours through
 * a rule of your own with its source.
 * @param input.resistance - resistance of the joint (Ω), 0 or more
 * @param input.halfWidth - half-width of that (Ω), 0 or more; `measuredJoint` gives it
 * @param input.similar - resistances of the similar joints (Ω), at least one, each more than 0
 * @param input.similarHalfWidth - half-width of the lowest of them (Ω), 0 or more
 * @param input.rule - named rule, or your own with name, limit (1 or more) and source
 * @returns ratio, judgement, action, basis, deferral
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `not-identifiable` when a
 *   similar joint reads 0 Ω: nothing is a multiple of it
 * @source ANSI/NETA ATS, bolted connections: investigate values more than 50 percent above the lowest similar one (as
 *   quoted)
 * @example
 * ```ts
 * const { ratio, judgement, action } = judgeJoint({
 *   resistance: microohms(286.604), halfWidth: microohms(9),
 *   similar: [microohms(60.7477), microohms(64)], similarHalfWidth: microohms(3),
 *   rule: "50-percent-above-lowest",
 * });
 * [ratio, judgement.verdict, action] // => [4.71794, "outside", "open, clean or renew, remake"]
 * ```
 * @since 0.1.0
 */
export function judgeJoint(input: {
  readonly resistance: Ohms;
  readonly halfWidth: Ohms;
  readonly similar: readonly Ohms[];
  readonly similarHalfWidth: Ohms;
  readonly rule: JointRatioRule;
}): JointVerdict {
  given(input);
  const { resistance, halfWidth, similar, similarHalfWidth, rule } = input;
  checkMeasurableOrZero("resistance", resistance, "Ω");
  checkMeasurableOrZero("halfWidth", halfWidth, "Ω");
  checkMeasurableOrZero("similarHalfWidth", similarHalfWidth, "Ω");
  if (!Array.isArray(similar) || similar.length === 0) {
    fail({ code: "missing", path: "similar", expected: "at least one similar joint", received: undefined });
  }
  similar.forEach((one, i) => {
    checkMeasurableOrZero(`similar.${i}`, one, "Ω");
    if (one === 0) {
      fail({
        code: "not-identifiable",
        path: `similar.${i}`,
        expected:
          "a joint that can be told from 0 Ω: measure it with more current or a finer meter, or leave it out",
        received: one,
        unit: "Ω",
      });
    }
  });
  const own = typeof rule === "object" && rule !== null ? rule : undefined;
  const row = own === undefined ? rowNamed(ratioRules, "rule", rule as string) : undefined;
  const limit = row === undefined ? (own?.limit as number) : cellNumber(row, 1, "rule");
  checkMeasurable("rule.limit", limit);
  if (compareQuoted({ left: limit, right: 1 }) < 0) {
    fail({ code: "out-of-range", path: "rule.limit", expected: "1 or more", received: limit });
  }
  if (own !== undefined) {
    checkText("rule.name", own.name);
    checkText("rule.source", own.source);
  }
  const name = own === undefined ? String(row?.[0]) : own.name;
  const lowest = Math.min(...similar);
  const ratio = resistance / lowest;
  const top =
    similarHalfWidth < lowest ? (resistance + halfWidth) / (lowest - similarHalfWidth) : Number.MAX_VALUE;
  const judgement = judge({ value: ratio, halfWidth: top - ratio, high: limit, rule: name });
  return {
    ratio,
    lowest: lowest as Ohms,
    judgement,
    action: ACTIONS[judgement.verdict],
    basis:
      own === undefined
        ? basisOf(ratioRules)
        : { source: own.source, edition: "as given", table: own.name, kind: "user table" },
    deferral: JOINT_DEFERRAL,
  };
}

/** Unbalance by every definition that fits what was measured, each under its name. */
import { checkOneOf, given } from "../quantity/index.ts";
import { unbalance } from "./unbalance.ts";

const MEASURED = ["line voltages", "voltages to neutral", "line currents"] as const;

/**
 * What the three magnitudes are. "line currents" are those of a module without a neutral, which sum to zero.
 * @since 0.1.0
 * @useDeclaredType
 */
export type MeasuredMagnitudes = (typeof MEASURED)[number];

/**
 * One definition of unbalance with its outcome.
 * @since 0.1.0
 */
export interface NamedUnbalance {
  /** The definition by name. */
  readonly definition:
    | "line voltage unbalance rate"
    | "phase voltage unbalance rate"
    | "current unbalance rate"
    | "negative over positive sequence"
    | "spread over mean";
  /** The formula in words. */
  readonly formula: string;
  /** Whose definition it is; where nobody's, that is said. */
  readonly source: string;
  /** Ratio (0.02 is 2 %); `null` where these magnitudes do not determine it. */
  readonly value: number | null;
  /** Why there is no value; empty if there is one. */
  readonly reason: string;
}

/**
 * Unbalance of three measured magnitudes by each named definition side by side. Which ones there are depends on what was measured: the
 * same arithmetic is one standard's rate on line voltages and another's on voltages to neutral, and magnitudes to neutral alone say
 * nothing of the sequences, for a displaced neutral shifts them unseen. The mean is never rounded on the way.
 *
 * These are criteria of motors and supplies. A resistance heater feels the power of each branch, so see `energise` for what it does.
 * @param input.l1 - first magnitude, V or A, more than 0 (one current may be 0)
 * @param input.l2 - second magnitude
 * @param input.l3 - third magnitude
 * @param input.measured - "line voltages", "voltages to neutral" or "line currents" (of a module without a neutral)
 * @returns the definitions in order: deviation rate, sequence ratio, spread; a ratio each, or `null` with the reason
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source P. Pillay, M. Manyage, Definitions of voltage unbalance, IEEE Power Engineering Review, 2001, for the three definitions; as
 *   {@link unbalance} for the sequence ratio from magnitudes
 * @example
 * ```ts
 * unbalanceByDefinition({ l1: 220, l2: 216, l3: 213, measured: "voltages to neutral" })
 *   .map(({ definition, value }) => [definition, value])
 * // => [["phase voltage unbalance rate", 0.0169492], ["negative over positive sequence", null], ["spread over mean", 0.0323575]]
 * ```
 * @since 0.1.0
 */
export function unbalanceByDefinition(input: {
  readonly l1: number;
  readonly l2: number;
  readonly l3: number;
  readonly measured: MeasuredMagnitudes;
}): readonly NamedUnbalance[] {
  const { l1, l2, l3 } = given(input);
  const measured = checkOneOf("measured", input.measured, MEASURED);
  const { maxDeviation, negativeSequence, spread } = unbalance({ l1, l2, l3 });
  const rates = {
    "line voltages": ["line voltage unbalance rate", "NEMA MG 1"],
    "voltages to neutral": ["phase voltage unbalance rate", "IEEE Std 112"],
    "line currents": ["current unbalance rate", "common practice, no published source"],
  } as const;
  const [rate, source] = rates[measured];
  const toNeutral = measured === "voltages to neutral";
  const sequence = toNeutral ? null : negativeSequence;
  const why = toNeutral
    ? "magnitudes to neutral do not determine the sequences: measure from line to line"
    : "the three magnitudes close no triangle: a reading is wrong, or a neutral carries current";
  return [
    {
      definition: rate,
      formula: "largest deviation from the mean, over the mean",
      source,
      value: maxDeviation,
      reason: "",
    },
    {
      definition: "negative over positive sequence",
      formula: "√((1 − s)/(1 + s)), s = √(3 − 6β), β = ΣX⁴/(ΣX²)²",
      source: "IEC 61000-4-30 (clause from memory)",
      value: sequence,
      reason: sequence === null ? why : "",
    },
    {
      definition: "spread over mean",
      formula: "(largest − smallest) over the mean",
      source: "neither standard's definition, often quoted",
      value: spread,
      reason: "",
    },
  ];
}

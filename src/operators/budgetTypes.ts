/** Shape of an uncertainty budget. */
import type { DegreesOfFreedom } from "../numeric/index.ts";
import type { Warning } from "../quantity/index.ts";
import type { UncertainInput } from "./inputs.ts";

/**
 * Part of one input in the standard uncertainty of an output.
 * @since 0.1.0
 */
export interface BudgetLine {
  /** Name of the input. */
  readonly input: string;
  /** Sensitivity coefficient ∂y/∂x at the estimates. */
  readonly sensitivity: number;
  /** How far the sensitivity may be off by its numerical derivation; 0 for one that was given. */
  readonly sensitivityError: number;
  /** |sensitivity|·standard uncertainty of the input, in the unit of the output. */
  readonly contribution: number;
  /** Square of the contribution over the square of the combined standard uncertainty; parts of correlated inputs do not add up to 1. */
  readonly share: number;
}

/**
 * Budget of one output.
 * @since 0.1.0
 */
export interface OutputBudget {
  /** Name of the output; `result` for a calculation that gives a bare number. */
  readonly output: string;
  /** Output estimate: the calculation at the input estimates. */
  readonly estimate: number;
  /** Combined standard uncertainty. */
  readonly standardUncertainty: number;
  /** Effective degrees of freedom, not rounded. */
  readonly effectiveDegreesOfFreedom: DegreesOfFreedom;
  /** Coverage probability asked for. */
  readonly coverageProbability: number;
  /** Coverage factor k. */
  readonly coverageFactor: number;
  /** Expanded uncertainty k·u. */
  readonly expandedUncertainty: number;
  /** Low end of the coverage interval: estimate less expanded uncertainty. */
  readonly low: number;
  /** High end. */
  readonly high: number;
  /** Part of each input. */
  readonly lines: readonly BudgetLine[];
}

/**
 * An input as the budget took it.
 * @since 0.1.0
 */
export interface BudgetInput {
  /** Name of the input. */
  readonly name: string;
  /** Its distribution. */
  readonly distribution: UncertainInput["distribution"];
  /** Input estimate. */
  readonly estimate: number;
  /** Standard uncertainty. */
  readonly standardUncertainty: number;
  /** Degrees of freedom of the standard uncertainty. */
  readonly degreesOfFreedom: DegreesOfFreedom;
}

/**
 * Result of {@link uncertaintyBudget}.
 * @since 0.1.0
 */
export interface UncertaintyBudget {
  /** The inputs with their standard uncertainties. */
  readonly inputs: readonly BudgetInput[];
  /** One budget for each output. */
  readonly outputs: readonly OutputBudget[];
  /** Covariance of the outputs, in their order. */
  readonly covariance: readonly (readonly number[])[];
  /** Correlation coefficients of the outputs; `null` with an output that has no uncertainty. */
  readonly correlation: readonly (readonly (number | null)[])[];
  /** Where first order is rough, and what was assumed of correlated inputs. */
  readonly warnings: readonly Warning[];
}

/** What goes into and comes out of a fit of ohm readings. */
import type { Ohms, Open } from "../../quantity/index.ts";

/**
 * One ohm reading between two nodes of the dead network.
 * @since 0.1.0
 */
export interface TerminalOhms {
  /** Node of one probe. */
  readonly from: string;
  /** Node of the other probe. */
  readonly to: string;
  /** What the meter showed, Ω, leads not taken off; `"open"` for OL. */
  readonly reads: Ohms | Open;
  /** Standard uncertainty of the reading, Ω, more than 0; not needed for OL. */
  readonly standardUncertainty?: Ohms;
  /** Branches connected when it was taken, the links of the others lifted; all if left out. */
  readonly only?: readonly string[];
}

/**
 * What is known of the meter's leads: nothing, that they are taken off already, or their reading when shorted.
 * @since 0.1.0
 */
export type LeadKnowledge =
  | "unknown"
  | "taken off"
  | {
      /** Reading with the leads shorted together, Ω, 0 or more. */
      readonly shorted: Ohms;
      /** Standard uncertainty of that reading, Ω, more than 0. */
      readonly standardUncertainty: Ohms;
    };

/**
 * A fitted resistance.
 * @since 0.1.0
 */
export interface FittedBranch {
  /** Name of the branch, or `"leads"`. */
  readonly id: string;
  /** Best estimate, Ω; 0 where the readings leave nothing (a short); `"open"`; `null` if they do not determine it. */
  readonly resistance: Ohms | Open | null;
  /** Standard uncertainty, Ω; `null` unless a value was fitted. A gain error common to all readings is not in it. */
  readonly standardUncertainty: Ohms | null;
  /** Where the readings only bound it: it is at least this, Ω. */
  readonly atLeast: Ohms | null;
}

/**
 * A reading held against the fit.
 * @since 0.1.0
 */
export interface FittedReading {
  /** Node of one probe. */
  readonly from: string;
  /** Node of the other probe. */
  readonly to: string;
  /** The reading, Ω, or `"open"`. */
  readonly reads: Ohms | Open;
  /** What the fit predicts, leads included, Ω. `null` for OL and where the fit failed. */
  readonly predicted: Ohms | null;
  /** (reading − predicted) over its standard uncertainty. */
  readonly residual: number | null;
}

/**
 * Branch resistances from ohm readings.
 * @since 0.1.0
 */
export interface ResistanceFit {
  /**
   * `"solved"`: every branch is known or open. `"partly"`: some are not identifiable, see there. `"contradictory"`: no choice of
   * open branches agrees with the OL readings.
   */
  readonly outcome: "solved" | "partly" | "contradictory";
  /** The branches asked for, in order. */
  readonly branches: readonly FittedBranch[];
  /** The leads; their resistance is 0 where they were taken off. */
  readonly leads: FittedBranch;
  /** Covariance of all fitted values, Ω², in the order of `fitted`. */
  readonly covariance: readonly (readonly number[])[];
  /** Names that the rows of `covariance` stand for. */
  readonly fitted: readonly string[];
  /** The readings against the fit. */
  readonly readings: readonly FittedReading[];
  /** Σ of squared residuals. */
  readonly chiSquare: number;
  /** Readings more than needed. */
  readonly degreesOfFreedom: number;
  /** Probability of a χ² at least that large by meter error alone; `null` with nothing to spare. */
  readonly pValue: number | null;
  /** Whether the readings agree with each other: `"untestable"` when there are none to spare. */
  readonly consistency: "consistent" | "inconsistent" | "untestable";
  /** Branches (or `"leads"`) that the readings do not determine. */
  readonly notIdentifiable: readonly string[];
  /** Where OL readings fit several choices of open branches: each choice. */
  readonly openChoices: readonly (readonly string[])[];
}

/** What a diagnosis is asked and what it answers, as plain data. */

import type { ModulePlan } from "../../../circuit/index.ts";
import type { LineVolts, Ohms, Open, Warning } from "../../../quantity/index.ts";
import type { MeterAccuracy } from "../../fit/meter.ts";
import type { DiagnosedFault } from "./diagnosedFault.ts";
import type { FieldReading } from "./fieldReading.ts";
import type { FaultPriors, Spread } from "./settings.ts";

/**
 * An instrument: the maker's accuracy on the range in use, and its last digit.
 * @since 0.1.0
 */
export interface Instrument extends MeterAccuracy {
  /** One unit of the last digit shown, canonical unit, more than 0. */
  readonly resolution: number;
}

/**
 * The ohmmeter and what is known of its leads.
 * @since 0.1.0
 */
export interface LeadedOhmmeter extends Instrument {
  /** Still in the readings and unknown, already taken off (or four-wire), or read with the leads shorted. */
  readonly leads:
    | "unknown"
    | "taken off"
    | {
        /** The reading with the leads shorted, Ω. */
        readonly shorted: Ohms;
      };
}

/**
 * The instruments the readings were taken with; one for each kind of reading there is.
 * @since 0.1.0
 */
export interface Instruments {
  /** For resistances. */
  readonly ohmmeter?: LeadedOhmmeter;
  /** For currents. */
  readonly clamp?: Instrument;
  /** For voltages. */
  readonly voltmeter?: Instrument;
  /** For drops across joints. */
  readonly millivoltmeter?: Instrument;
  /** For insulation. */
  readonly insulationTester?: Instrument;
}

/**
 * What a diagnosis is asked.
 * @since 0.1.0
 */
export interface DiagnosisInput {
  /** The module as drawn. Resistances are cold nominal values, as an ohmmeter should read them; joints carry their sound resistance. */
  readonly module: ModulePlan;
  /** Other ways in which the module may be wired, where nobody knows; all are equally likely beforehand. */
  readonly alternatives?: readonly ModulePlan[];
  /** The readings, any mix. */
  readonly readings: readonly FieldReading[];
  /** The instruments. */
  readonly instruments: Instruments;
  /** Nominal supply; needed with energised readings. */
  readonly supply?: {
    /** Nominal line voltage, V. */
    readonly lineVoltage: LineVolts;
  };
  /** What varies without being a fault. */
  readonly spread?: Spread;
  /** Probabilities of faults before any reading. */
  readonly priors?: FaultPriors;
  /**
   * `"single"`: single faults and two opens; `"pairs"`: all pairs of faults as well, but for those that `notDetermined` names. Single if
   * left out. Banks without supply, where the module is not read as sound. Where the first of them is two faults or is refuted by the
   * readings, also one branch on another line, a slip in the links beside one fault, all elements of another value, the feed still
   * connected, one reading misread, and a bank without supply beside one fault.
   */
  readonly depth?: "single" | "pairs";
}

/**
 * What the readings say of one parameter of a fault.
 * @since 0.1.0
 */
export interface FaultEstimate {
  /** The parameter. Feed resistance: between two lines, outside the module. Position: from the line end (star) or first line (delta), 0 to 1. */
  readonly of:
    | "turns shorted"
    | "resistance ratio"
    | "joint resistance"
    | "position"
    | "fault resistance"
    | "feed resistance"
    | "unbalance";
  /** Which fault of the explanation, counted from 0. */
  readonly fault: number;
  /** Posterior median. */
  readonly value: number;
  /** Lower end of the 95 % interval. */
  readonly low: number;
  /** Upper end of the 95 % interval. */
  readonly high: number;
  /** `"Ω"`, or `"1"` for a ratio. */
  readonly unit: string;
}

/**
 * One reading beside what an explanation predicts at its best parameters.
 * @since 0.1.0
 */
export interface PredictedReading {
  /** As read. */
  readonly reads: number | Open;
  /** As predicted; `null` where nothing determines it (a floating node). */
  readonly predicted: number | Open | null;
  /** Reading minus prediction over the standard uncertainty of their difference; `null` for open or undetermined. */
  readonly deviation: number | null;
}

/**
 * One explanation of the readings.
 * @since 0.1.0
 */
export interface Explanation {
  /** The faults; none for a sound module. */
  readonly faults: readonly DiagnosedFault[];
  /** Those of them that no reading here can show: as probable as beforehand, their parameters not estimated but assumed. */
  readonly unseen: readonly DiagnosedFault[];
  /** Which wiring it holds for: 0 for the module, from 1 for the alternatives. */
  readonly wiring: number;
  /** Posterior probability, 0..1. */
  readonly probability: number;
  /** Prior probability, 0..1, normalised over all explanations. */
  readonly prior: number;
  /** The faults' parameters. */
  readonly estimates: readonly FaultEstimate[];
  /** Natural logarithm of the marginal likelihood: nuisance and fault parameters integrated. */
  readonly logLikelihood: number;
  /** Squared residuals over their covariance at the best parameters. */
  readonly chiSquare: number;
  /** Readings less fitted fault parameters. */
  readonly degreesOfFreedom: number;
  /** Probability of a larger χ² by chance; `null` without degrees of freedom. */
  readonly pValue: number | null;
  /** Readings beside predictions, in the order of the readings. */
  readonly predicted: readonly PredictedReading[];
}

/**
 * Explanations that these readings cannot tell apart.
 * @since 0.1.0
 */
export interface ExplanationGroup {
  /** Probability that one of them holds. */
  readonly probability: number;
  /** The explanations, most probable first. */
  readonly explanations: readonly Explanation[];
}

/**
 * What a diagnosis answers.
 * @since 0.1.0
 */
export interface Diagnosis {
  /**
   * `"explained"`; `"nothing fits"` when even the best explanation that takes every reading at its word is refuted by χ² at
   * 0.001, or readings contradict each other (one that is misread then comes first and is warned of); `"too few readings"` when none is left over to test the best explanation with. The ranking is given in any case.
   */
  readonly outcome: "explained" | "nothing fits" | "too few readings";
  /** Groups, most probable first. */
  readonly groups: readonly ExplanationGroup[];
  /** What these readings can never show, in words. */
  readonly notDetermined: readonly string[];
  /** Readings that look like a slip, and what was assumed. */
  readonly warnings: readonly Warning[];
  /** What can hurt people. */
  readonly cautions: readonly string[];
}

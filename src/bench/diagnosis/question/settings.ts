/** What is taken for granted before any reading: how much sound modules differ, and how often what fails. */
import {
  checkBetween,
  checkFinite,
  checkNonNegative,
  checkPositive,
  fail,
  type Ohms,
} from "../../../quantity/index.ts";

/**
 * What varies from module to module and day to day without being a fault.
 * @since 0.1.0
 */
export interface Spread {
  /** Deviation of all elements together from nominal; −0.05 to +0.10 if left out, the usual tolerance of make. */
  readonly common?: {
    /** Lower limit, as a ratio. */
    readonly low: number;
    /** Upper limit. */
    readonly high: number;
  };
  /** Relative standard deviation from element to element; 0.02 if left out. */
  readonly individual?: number;
  /** Hot over cold resistance; 1.04 ± 0.02 if left out (nickel-chromium). */
  readonly temperatureFactor?: {
    /** Hot over cold. */
    readonly value: number;
    /** Its standard uncertainty. */
    readonly standardUncertainty: number;
  };
  /** Unknown leads lie between 0 and this, Ω; 0.5 if left out. */
  readonly leadsUpTo?: Ohms;
  /** Relative standard deviation of the supply's mean line voltage from nominal; 0.03 if left out. */
  readonly lineVoltage?: number;
  /** Relative standard deviation of each line voltage of a sound supply; 0.005 if left out. */
  readonly unbalance?: number;
  /** Relative standard deviation of a sound joint's resistance from that in the plan; 0.3 if left out. */
  readonly joint?: number;
}

/**
 * Probabilities before any reading, each for one place. The defaults are our judgement, to be replaced by the records of
 * the workshop; no published source.
 * @since 0.1.0
 */
export interface FaultPriors {
  /** Each element open; 0.02. */
  readonly elementOpen?: number;
  /** Each element with turns shorted (5 to 90 % of them, uniform); 0.005. */
  readonly shortedTurns?: number;
  /** Each element aged or of the wrong value (0.6 to 0.9 or 1.15 to 2 times, log-uniform); 0.01. */
  readonly offValue?: number;
  /** Each joint place with 1 mΩ to 30 Ω, log-uniform; 0.01. Where a path is read longer than sound by 10 Ω or more, one in ten of them with
   * 30 Ω to 100 kΩ. With a drop read across it from twice its sound resistance, 10 µΩ at least. */
  readonly joint?: number;
  /** Each joint place open: burnt off, broken or never made; 0.003. */
  readonly openJoint?: number;
  /** Each bank, and the star points, linked otherwise than drawn; 0.005, and a tenth of it for one branch on one certain other line. */
  readonly misLinked?: number;
  /** Each line without voltage; 0.01. */
  readonly lostLine?: number;
  /** Each bank without supply: its stage not called for, its contactor or fuses; 0.01. A tenth of it for each further one, those
   * counted that are fewer, without supply or with it; all of them as likely as one. */
  readonly unfedBank?: number;
  /** Each line of each bank without supply, where others feed it or the volts between lines were read: a contactor's pole, a fuse; 0.003. */
  readonly unfedBankLine?: number;
  /** Each element earthed, anywhere along it, through 10 mΩ to 100 kΩ, log-uniform; 0.003. */
  readonly earthFault?: number;
  /** The terminal of each line and each star point earthed, through as much; 0.002. */
  readonly earthedTerminal?: number;
  /** All elements alike 0.2 to 0.85 or 1.2 to 5 times the plan's value, log-uniform, where nothing usual fits; 0.005. */
  readonly otherRating?: number;
  /** The feed still connected while ohms were read, 1 mΩ to 2 Ω between two lines, log-uniform, where nothing usual fits; 0.005. */
  readonly feedConnected?: number;
  /** The supply's line voltages spread over 2 to 6 %; 0.01. A tenth of it further apart, where all three were read so. */
  readonly supplyUnbalance?: number;
  /** Each reading that the others determine not what was there, where nothing usual fits all of them; 0.001. */
  readonly misread?: number;
}

/** All spread fields present. */
export interface FullSpread {
  readonly common: { readonly low: number; readonly high: number };
  readonly individual: number;
  readonly temperatureFactor: { readonly value: number; readonly standardUncertainty: number };
  readonly leadsUpTo: number;
  readonly lineVoltage: number;
  readonly unbalance: number;
  readonly joint: number;
}

const SPREAD: FullSpread = {
  common: { low: -0.05, high: 0.1 },
  individual: 0.02,
  temperatureFactor: { value: 1.04, standardUncertainty: 0.02 },
  leadsUpTo: 0.5,
  lineVoltage: 0.03,
  unbalance: 0.005,
  joint: 0.3,
};

const PRIORS: Required<FaultPriors> = {
  elementOpen: 0.02,
  shortedTurns: 0.005,
  offValue: 0.01,
  joint: 0.01,
  openJoint: 0.003,
  misLinked: 0.005,
  lostLine: 0.01,
  unfedBank: 0.01,
  unfedBankLine: 0.003,
  earthFault: 0.003,
  earthedTerminal: 0.002,
  otherRating: 0.005,
  feedConnected: 0.005,
  supplyUnbalance: 0.01,
  misread: 0.001,
};

/** Ranges of the fault parameters, as documented in {@link FaultPriors}. */
export const RANGE = {
  turns: [0.05, 0.9],
  low: [0.6, 0.9],
  high: [1.15, 2],
  joint: [1e-3, 30],
  /** Most of a joint burnt to carbon that still conducts, weighed where a path is read that long. Our judgement. */
  charredJoint: 1e5,
  /** Least joint resistance that a drop across the very joint shows: tens of millivolts per kiloampere, common practice. */
  jointWithDrop: 10e-6,
  earth: [0.01, 1e5],
  unbalance: [0.02, 0.06],
  ratedLow: [0.2, 0.85],
  ratedHigh: [1.2, 5],
  feed: [1e-3, 2],
} as const;

/** Probability that a lead that did not touch shows an open path, or that a path predicted open shows ohms all the same. */
export const OPEN_SLIP = 1e-6;

/** p-value of the best explanation below which nothing is said to fit. */
export const GATE = 1e-3;

function known(path: string, record: object, names: readonly string[]): void {
  for (const name of Object.keys(record)) {
    if (!names.includes(name)) {
      fail({
        code: "unknown-field",
        path: `${path}.${name}`,
        expected: `one of ${names.join(", ")}`,
        received: name,
      });
    }
  }
}

/** Fills in and checks the spread. */
export function fullSpread(spread: Spread = {}): FullSpread {
  known("spread", spread, Object.keys(SPREAD));
  const full: FullSpread = { ...SPREAD, ...spread };
  const { common, temperatureFactor: ct } = full;
  checkBetween("spread.common.low", common?.low, -0.9, 10);
  checkBetween("spread.common.high", common?.high, common.low, 10);
  checkBetween("spread.individual", full.individual, 0, 1);
  checkPositive("spread.temperatureFactor.value", ct?.value);
  checkBetween("spread.temperatureFactor.value", ct.value, 0.1, 10);
  checkBetween("spread.temperatureFactor.standardUncertainty", ct.standardUncertainty, 0, 1);
  checkBetween("spread.leadsUpTo", full.leadsUpTo, 0, 1e3, "Ω");
  checkBetween("spread.lineVoltage", full.lineVoltage, 0, 0.5);
  checkBetween("spread.unbalance", full.unbalance, 0, 0.2);
  checkBetween("spread.joint", full.joint, 0, 10);
  return full;
}

/** Fills in and checks the priors. */
export function fullPriors(priors: FaultPriors = {}): Required<FaultPriors> {
  known("priors", priors, Object.keys(PRIORS));
  const full = { ...PRIORS, ...priors };
  for (const [name, p] of Object.entries(full)) {
    checkFinite(`priors.${name}`, p);
    checkNonNegative(`priors.${name}`, p);
    if (p >= 1) fail({ code: "out-of-range", path: `priors.${name}`, expected: "less than 1", received: p });
  }
  return full;
}

/** What the readings of a bench record amount to: branches, draw, joints, next steps. */
import type { Judgement } from "../decision/index.ts";
import type { Amperes, Celsius, ColdOhms, Kelvins, Ohms, Open, Volts, Watts } from "../quantity/index.ts";
import type { FittedReading, ResistanceFit } from "./fit/types.ts";

/**
 * What a branch amounts to. `sound`: judged within the tolerance. `undecided`: the meter cannot say. `unjudged`: a value, but no tolerance
 * to judge it by. `outside`: judged outside. `open`: no path worth the name. `shorted`: as good as 0 Ω. `high`: at least above its
 * target, how far is not known. `not known`: the readings do not determine it.
 * @since 0.1.0
 */
export type BranchFinding =
  | "sound"
  | "undecided"
  | "unjudged"
  | "outside"
  | "open"
  | "shorted"
  | "high"
  | "not known";

/**
 * One branch of the module: what was measured against what the plate says.
 * @since 0.1.0
 */
export interface BranchAssessment {
  /** Name: bank-branch, such as `"A-L1"`. */
  readonly id: string;
  /** What it amounts to. */
  readonly finding: BranchFinding;
  /** Resistance with the leads taken off, Ω; `"open"`; `null` if the readings do not determine it. */
  readonly resistance: ColdOhms | Open | null;
  /** Standard uncertainty of the fit, Ω; enlarged by √(χ²/ν) where the readings contradict each other. */
  readonly standardUncertainty: Ohms | null;
  /** Expanded uncertainty (k = 2) with the meter's gain in it, Ω. */
  readonly expandedUncertainty: Ohms | null;
  /** Where only bounded: it is at least this, Ω. */
  readonly atLeast: Ohms | null;
  /** Target from the nameplate, Ω; without one the median of the branches with as many elements; `null` if there is none either. */
  readonly target: ColdOhms | null;
  /** resistance/target − 1. */
  readonly deviation: number | null;
  /** Verdict against the tolerance given; `null` without a tolerance or a value. */
  readonly judgement: Judgement | null;
  /** Number of open parallel elements that would explain a high reading; `null` if none does. */
  readonly openElements: number | null;
}

/**
 * What the ohm readings say.
 * @since 0.1.0
 */
export interface ResistanceAssessment
  extends Pick<
    ResistanceFit,
    | "readings"
    | "chiSquare"
    | "degreesOfFreedom"
    | "pValue"
    | "consistency"
    | "notIdentifiable"
    | "openChoices"
  > {
  /** Whether every branch is known, only some, or the readings exclude each other. */
  readonly outcome: ResistanceFit["outcome"] | "no readings";
  /** The branches, in the wiring's order. */
  readonly branches: readonly BranchAssessment[];
  /** What each reading would show on a sound module at its targets, Ω, without leads; in the order of `readings`; `null` without targets. */
  readonly expectedReadings: readonly (ColdOhms | Open | null)[];
  /**
   * Readings that the branches, as read on their own studs, do not account for: what differs lies in a link, a bar or a joint on the way.
   * Left out of the fit; empty unless something was read on its own studs.
   */
  readonly beyondElements: readonly Pick<FittedReading, "from" | "to" | "reads" | "predicted">[];
  /** Leads and probe contact, Ω; `null` if not determined. */
  readonly leads: Ohms | null;
  /** Standard uncertainty of the leads, Ω. */
  readonly leadsUncertainty: Ohms | null;
}

/**
 * Draw of the module in one state.
 * @since 0.1.0
 */
export interface Draw {
  /** Heat of the module, W. */
  readonly power: Watts;
  /** Standard uncertainty from the resistances, W; `null` where they come from the nameplate. */
  readonly standardUncertainty: Watts | null;
  /** Line currents L1, L2, L3 (and N where there is one), A. */
  readonly lines: readonly {
    /** Line, or N. */
    readonly node: string;
    /** Current, A. */
    readonly current: Amperes;
  }[];
}

/**
 * What the module draws and will draw.
 * @since 0.1.0
 */
export interface DrawAssessment {
  /** Whether branch values were measured, as left before as found; unmeasured branches are taken at their target. */
  readonly basis: "measured resistances" | "nameplate";
  /**
   * Whether every branch is either judged sound or known to be faulty and taken as renewed, on readings that do not contradict each
   * other. Only then are the repaired amps something to accept a repair by.
   */
  readonly confirmed: boolean;
  /** Branches that `repaired` takes at their target, because they are faulty or not known. */
  readonly atTarget: readonly string[];
  /** As found, at the supply as measured; `null` if the readings do not settle it. */
  readonly asFound: Draw | null;
  /** With open, out-of-tolerance and unmeasured branches at their target, at the supply as measured. */
  readonly repaired: Draw;
  /** The same at the plate's voltage; `null` without a nameplate. */
  readonly repairedAtPlateVoltage: Draw | null;
  /** repairedAtPlateVoltage over plate power − 1; `null` without a nameplate. */
  readonly deviationFromPlate: number | null;
}

/**
 * What happens if one element opens, in the module as repaired.
 * @since 0.1.0
 */
export interface WhatIfRow {
  /** The element that opens. */
  readonly element: string;
  /** Remaining power, W. */
  readonly power: Watts;
  /** Remaining power over the healthy one. */
  readonly powerRatio: number;
  /** Line currents over the healthy ones; `null` for an unloaded neutral. */
  readonly lines: readonly {
    /** Line, or N. */
    readonly node: string;
    /** Current, A. */
    readonly current: Amperes;
    /** Over the healthy one. */
    readonly ratio: number | null;
  }[];
  /** The survivor with the highest power ratio. */
  readonly worst: {
    /** Its name. */
    readonly id: string;
    /** Its voltage over the healthy one. */
    readonly voltageRatio: number;
    /** Its power over the healthy one. */
    readonly powerRatio: number;
  } | null;
  /** Voltage across the break, V: live. */
  readonly gapVoltage: Volts | null;
}

/**
 * Rise of a joint under the thermal scan, referred to full load.
 * @since 0.1.0
 */
export interface JointRise {
  /** Rise over the air as measured, K. */
  readonly measured: Kelvins;
  /** The rise that is graded, at full load, lower end of the band of exponents and readings, K. */
  readonly fullLoadLow: Kelvins;
  /** At full load, upper end, K. */
  readonly fullLoadHigh: Kelvins;
  /** Level on the named severity scale, 0 below its first row; `"undecided"` where the band straddles two. */
  readonly level: number | "undecided";
  /** The level it has at the least, decided or not. */
  readonly atLeast: number;
  /** The level that its upper end at full load would have. */
  readonly atMost: number;
  /** What the scale asks for. */
  readonly action: string;
  /** The scale, its edition and table. */
  readonly rule: string;
}

/**
 * One joint from its millivolt drop, its rise, or both.
 * @since 0.1.0
 */
export interface JointAssessment {
  /** Name. */
  readonly id: string;
  /** Joint resistance, Ω; `null` without a drop. */
  readonly resistance: Ohms | null;
  /** Half-width of the interval that the instruments allow, Ω. */
  readonly halfWidth: Ohms | null;
  /** Heat in the joint at that current, W. */
  readonly power: Watts | null;
  /** Resistance over that of the best joint; `null` if the best reads 0 or there is nothing to compare. */
  readonly ratioToBest: number | null;
  /** What the comparison rule says. One joint, or a best one of 0 Ω, leaves nothing to compare with. */
  readonly comparison: "investigate" | "undecided" | "like the best" | "nothing to compare with";
  /** The rule, whose it is, and who decides. */
  readonly rule: string;
  /** What its drop says by itself; `null` without a drop, and for one above 1 V, which no contact holds. */
  readonly contact: JointContact | null;
  /** What the thermal scan says; `null` without one. */
  readonly rise: JointRise | null;
}

/**
 * What the drop across a joint says of its contact, whatever like joints show: a set may be bad alike.
 * @since 0.1.0
 */
export interface JointContact {
  /** Voltage drop as read, V. */
  readonly drop: Volts;
  /** Temperature of its spots at the peak of that drop, if they are clean copper and the metal beside them is at 20 °C, °C. */
  readonly spot: Celsius;
  /** Outside: at the softening of copper or above. Undecided: at that of tin or above. */
  readonly verdict: "within" | "outside" | "undecided";
  /** The rule, whose it is, and who decides. */
  readonly rule: string;
}

/**
 * Something to do next, and why.
 * @since 0.1.0
 */
export interface NextStep {
  /** What to do. */
  readonly action: string;
  /** Why. */
  readonly reason: string;
  /** Branches, joints or readings it is about. */
  readonly about: readonly string[];
}

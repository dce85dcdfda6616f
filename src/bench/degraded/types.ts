/** What ways of running on with a fault amount to. */
import type { Unbalance } from "../../circuit/index.ts";
import type { WhatIfResult } from "../../element/index.ts";
import type { HeatUpOption } from "../../process/index.ts";
import type { Amperes, BranchVolts, Joules, Seconds, Warning, Watts } from "../../quantity/index.ts";

/**
 * The element that is stressed most in one way of running.
 * @since 0.1.0
 */
export interface WorstElement {
  /** Its name. */
  readonly id: string;
  /** Its power over that in the healthy module; its surface load rises in the same ratio. */
  readonly powerRatio: number;
  /** Its surface at that load, with its band; `null` when no cooling was given or it lies outside the tables. */
  readonly surface: WhatIfResult | null;
}

/**
 * One way of running, among others.
 * @since 0.1.0
 */
export interface DegradedOption {
  /** In words: `healthy`, `leave as is`, `untie star points`, `isolate bank A`. */
  readonly name: string;
  /** What is done. */
  readonly action: "healthy" | "leave as is" | "untie star points" | "isolate bank";
  /** The bank that is isolated; `null` elsewhere. */
  readonly bank: string | null;
  /** The module draws current, or none, or bolts supply lines together. */
  readonly outcome: "runs" | "dead" | "supply shorted";
  /** Heat of the module, W; 0 when the supply is shorted. */
  readonly power: Watts;
  /** Power over the healthy one. */
  readonly powerRatio: number;
  /** The element that is stressed most; `null` if none carries current. */
  readonly worst: WorstElement | null;
  /** Line currents, and the neutral's where there is one. */
  readonly lines: readonly {
    /** Line, or N. */
    readonly node: string;
    /** Current, A. */
    readonly current: Amperes;
  }[];
  /** Unbalance of the three lines by each definition; `null` if they carry nothing. */
  readonly unbalance: Unbalance | null;
  /** Heat-up of the oven at that power. */
  readonly heatUp: HeatUpOption;
  /** Electric energy of one shift: a heat-up and holding the set point, or full power to the end if it never arrives, J. */
  readonly energyPerShift: Joules;
  /** Time at the set point in one shift, s. */
  readonly timeAtTarget: Seconds;
  /** Cost of all shifts by the tariff, in its currency; `null` without one. */
  readonly cost: number | null;
  /** Breaks that stand live, with the voltage across; `null` where nothing but leakage determines it. */
  readonly openEnds: readonly {
    /** The broken branch. */
    readonly id: string;
    /** Voltage across the break, V. */
    readonly voltage: BranchVolts | null;
  }[];
  /** What this way asks of the people who choose it. */
  readonly cautions: readonly Warning[];
}

/**
 * Ways of running on with a fault.
 * @since 0.1.0
 */
export interface DegradedOptions {
  /** The healthy module first, then the module left as it is, then what can be done to it. */
  readonly options: readonly DegradedOption[];
  /** What holds for all of them. */
  readonly cautions: readonly Warning[];
  /** Who decides. */
  readonly deferral: string;
}

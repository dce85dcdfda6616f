/** What is asked and answered about faults. */
import type { Amperes, BranchVolts, Volts, Watts } from "../quantity/index.ts";

/**
 * One fault: a branch open, a branch bolted (0 Ω), or a line lost.
 * @since 0.1.0
 */
export type Fault = BranchFault | LostLine;

/**
 * A fault of a branch.
 * @since 0.1.0
 */
export interface BranchFault {
  /** Broken, or bolted: its two ends touch (0 Ω). */
  readonly kind: "open" | "short";
  /** Name of the branch. */
  readonly id: string;
}

/**
 * A line without voltage: a blown fuse or an open contact ahead of the module.
 * @since 0.1.0
 */
export interface LostLine {
  /** The line has lost its voltage. */
  readonly kind: "lost line";
  /** Node of the line. */
  readonly line: string;
}

/**
 * A surviving branch under a fault. Ratios are to the same branch in the healthy network; `null` where that had none.
 * @since 0.1.0
 */
export interface SurvivorState {
  /** Name of the branch. */
  readonly id: string;
  /** RMS voltage across it, V. */
  readonly voltage: BranchVolts | null;
  /** RMS current, A. */
  readonly current: Amperes;
  /** Heat, W. */
  readonly power: Watts;
  /** Voltage over the healthy one. */
  readonly voltageRatio: number | null;
  /** Current over the healthy one. */
  readonly currentRatio: number | null;
  /** Power over the healthy one; the surface load of an element rises in the same ratio. */
  readonly powerRatio: number | null;
}

/**
 * A line under a fault.
 * @since 0.1.0
 */
export interface LineUnderFault {
  /** Node of the line. */
  readonly node: string;
  /** RMS current, A. */
  readonly current: Amperes;
  /** Current over the healthy one; `null` where that was 0 (the neutral of a balanced module). */
  readonly currentRatio: number | null;
}

/**
 * What a set of faults does.
 * @since 0.1.0
 */
export type FaultEffect =
  | {
      /** The faults. */
      readonly faults: readonly Fault[];
      /** The module still draws current, or none. */
      readonly outcome: "runs" | "dead";
      /** Remaining power, W. */
      readonly totalPower: Watts;
      /** Remaining power over the healthy one. */
      readonly powerRatio: number;
      /** Line currents, in the supply's order. */
      readonly lines: readonly LineUnderFault[];
      /** Elements that are left, in the network's order; only the worst if a scan was asked for that. */
      readonly survivors: readonly SurvivorState[];
      /** The survivor with the highest power ratio; `null` if none carries current. */
      readonly worst: SurvivorState | null;
      /** Voltage across each opened branch, V: what a hand on the gap would meet. `null` if an end floats. */
      readonly gaps: readonly {
        /** The broken branch. */
        readonly id: string;
        /** Voltage across the break, V; `null` where nothing but leakage determines it. */
        readonly voltage: Volts | null;
      }[];
    }
  | {
      /** The faults. */
      readonly faults: readonly Fault[];
      /** The faults bolt supply lines together: protection must clear it, and no steady state is computed. */
      readonly outcome: "supply shorted";
    };

/** What a bench record says of hardware, bars, feed and process: the parts that the elements do not know. */
import type { Quoted } from "./quoted.ts";

/**
 * Studs, nuts or screws of one kind, and the torque to judge.
 * @since 0.1.0
 */
export interface RecordFastening {
  /** Where, in the writer's words: `"line studs"`. */
  readonly id: string;
  /** Thread, metric (`"M6"`, `"M8x1.25"`) or unified (`"1/4-20"`, `"#10-32"`). */
  readonly thread: string;
  /** How many; 1 if left out. */
  readonly count?: number;
  /** Strength standard and class of the bolt or stud; without them no share of proof is judged. */
  readonly strength?: {
    /** Standard: `"ISO 898-1"`, `"ISO 3506-1"`, `"SAE J429"`, `"ASTM F593"` … */
    readonly standard: string;
    /** Class or grade as the standard writes it. */
    readonly grade: string;
  };
  /** Condition of thread and nut face, a name that the nut factor table knows; `"dry steel"` if left out. */
  readonly condition?: string;
  /** Torque of the equipment's maker: it comes before every table. */
  readonly makerTorque?: Quoted;
  /** Torque that was applied. */
  readonly applied?: Quoted;
  /** To be renewed: goes on the list of parts. */
  readonly renew?: boolean;
}

/**
 * Jumper bars of one kind, to be cut from flat copper.
 * @since 0.1.0
 */
export interface RecordBars {
  /** Which, in the writer's words. */
  readonly id: string;
  /** How many; 1 if left out. */
  readonly count?: number;
  /** Studs that each bar ties, 2 or more. */
  readonly studs: number;
  /** Distance from stud to stud. */
  readonly pitch: Quoted;
  /** From the last hole to the end. */
  readonly overhang: Quoted;
  /** Width. */
  readonly width: Quoted;
  /** Thickness. */
  readonly thickness: Quoted;
  /** Diameter of the stud holes. */
  readonly hole?: Quoted;
  /** Lost in each saw cut; 3 mm if left out. */
  readonly kerf?: Quoted;
}

/**
 * What feeds the module, as installed or as planned, for a check against a named edition of the code.
 * @since 0.1.0
 */
export interface RecordFeed {
  /** Edition to check by, as `wiring` names it: `"NEC 2023"`, `"IEC 60364-5-52:2009"`. */
  readonly edition: string;
  /** Class of the equipment, as `designCurrent` of `wiring` names it; `"process heating"` if left out. North American editions only. */
  readonly equipment?: string;
  /** Conductor as installed (`"3 AWG"`, `"25 mm²"`); left out, the smallest that serves is looked up. */
  readonly conductor?: string;
  /** Conductor material; `"copper"` if left out. */
  readonly material?: string;
  /** How it is laid: the table (North America) or reference method (IEC) by its name in `wiring`. */
  readonly installation: string;
  /** Insulation: its temperature (`"90 °C"`) in North America, its name (`"PVC"`, `"XLPE"`) in IEC. */
  readonly insulation: string;
  /** Rating of the terminals; unmarked if left out. North American editions only. */
  readonly terminals?: Quoted;
  /** Conductors in parallel that make one line, each of the size above; 1 if left out, or as many as serve where one is looked up and no size does alone. */
  readonly conductorsPerLine?: number;
  /** Current-carrying conductors in the raceway (North America) or circuits in the group (IEC), those of all sets in parallel; left out, this module's own, all together: 3 for each conductor per line, or 1. */
  readonly grouped?: number;
  /** Fuse or breaker as installed. */
  readonly device?: Quoted;
  /** Which of the two it is; a gG fuse if left out, which asks for at least as much cable. IEC only: the North American tables hold for both. */
  readonly deviceKind?: "circuit-breaker" | "gG fuse";
}

/**
 * What the module heats, for a comparison of ways to run on with a fault.
 * @since 0.1.0
 */
export interface RecordProcess {
  /** Set point, a temperature. */
  readonly target: Quoted;
  /** Heat lost for each kelvin above the ambient (`"115 W/K"`). */
  readonly lossConductance: Quoted;
  /** Heat stored for each kelvin in structure and charge (`"316 kJ/K"`). */
  readonly heatCapacity: Quoted;
  /** Length of a shift (`"8 h"`). */
  readonly shift: Quoted;
  /** Shifts until the parts come; 1 if left out. */
  readonly shifts?: number;
  /** Price of a kilowatt-hour in any currency; no cost without it. */
  readonly tariff?: number;
}

/** The assessment: one serialisable record out of one bench record. */
import type { Kilograms, LineVolts, Meters, Warning, Watts } from "../quantity/index.ts";
import type {
  DrawAssessment,
  JointAssessment,
  NextStep,
  ResistanceAssessment,
  WhatIfRow,
} from "./assessTypes.ts";
import type { DegradedOptions } from "./degraded/types.ts";
import type { Diagnosis } from "./diagnosis/question/types.ts";
import type { RecordDrawnJoint, RecordIdentity } from "./record/record.ts";
import type { NameplateTargets } from "./targets.ts";

/**
 * One number of the assessment, with all that is needed to read it.
 * @since 0.1.0
 */
export interface Figure {
  /** What it is, in words: `"line current L1"`. */
  readonly label: string;
  /** The value in the canonical unit; `"open"`; `null` where it is not known. */
  readonly value: number | "open" | null;
  /** Its unit; `"1"` for a ratio, `""` where the value has none. */
  readonly unit: string;
  /** A size or name that goes with it or stands for it, such as `"3 AWG"`; `null` if none does. */
  readonly name: string | null;
  /** Half-width of its interval (k = 2, or worst case where the basis says so), in the same unit; `null` if not known. */
  readonly halfWidth: number | null;
  /** The limits it is held against; `null` where none applies. */
  readonly limit: {
    /** At least; `null` without one. */
    readonly low: number | null;
    /** At most; `null` without one. */
    readonly high: number | null;
  } | null;
  /** `null` where it is not judged. */
  readonly verdict: "within" | "outside" | "undecided" | null;
  /** Formula, or source with edition and table; for a judged figure, whose rule it is. */
  readonly basis: string;
  /** What to mind; `null` if nothing beyond the cautions of the whole. */
  readonly caution: string | null;
}

/**
 * Readings of one day, as found or as left, judged.
 * @since 0.1.0
 */
export interface ReadingsAssessment {
  /** What the ohm readings say. */
  readonly resistances: ResistanceAssessment;
  /** Clamp readings beside what the module as drawn, sound, would take at the supply measured. */
  readonly currents: readonly Figure[];
  /** Unbalance of supply and lines, by named definition. */
  readonly unbalance: readonly Figure[];
  /** Insulation to the frame, by every criterion that applies. */
  readonly insulation: readonly Figure[];
  /** Joints, worst first. */
  readonly joints: readonly JointAssessment[];
}

/**
 * Torque and preload of one kind of fastening.
 * @since 0.1.0
 */
export interface HardwareAssessment {
  /** Where. */
  readonly id: string;
  /** Thread. */
  readonly thread: string;
  /** How many. */
  readonly count: number;
  /** Torque to use, preload band, share of proof load, the torque applied. */
  readonly figures: readonly Figure[];
  /** Notes on washers, nuts and retightening. */
  readonly notes: readonly string[];
  /** Who decides. */
  readonly deferral: string;
}

/**
 * Conductors, terminals and protection against one edition of the code.
 * @since 0.1.0
 */
export interface FeedAssessment {
  /** The edition. */
  readonly edition: string;
  /** Design current, conductor, terminals, protection. */
  readonly figures: readonly Figure[];
  /** What to mind. */
  readonly cautions: readonly string[];
  /** Who decides. */
  readonly deferral: string;
}

/**
 * What happens if any one element opens, in one way of connecting the module.
 * @since 0.1.0
 */
export interface WhatIfTable {
  /** `"as drawn"`, or all banks reconnected in the other way. */
  readonly connection: "as drawn" | "star" | "delta";
  /** What this connection would need: supply voltage, links, power it would draw. Empty as drawn. */
  readonly needs: readonly string[];
  /** One row for each element. */
  readonly rows: readonly WhatIfRow[];
}

/**
 * What to expect at the first heat.
 * @since 0.1.0
 */
export interface CommissioningAssessment {
  /** Amps by line at the voltage measured, with the band to accept, and power. */
  readonly lines: readonly Figure[];
  /** Rises of the thermal scan to act on. */
  readonly scan: readonly Figure[];
  /** Who decides. */
  readonly deferral: string;
}

/**
 * One line of the list to go through before and after the supply is closed again.
 * @since 0.1.0
 */
export interface ChecklistItem {
  /** When. */
  readonly phase: "before energising" | "first heat" | "after cooling down";
  /** What. */
  readonly text: string;
  /** What the record says of it. */
  readonly state: "done" | "not passed" | "to do";
  /** The evidence in the record; `null` if there is none. */
  readonly evidence: string | null;
}

/**
 * A part to bring.
 * @since 0.1.0
 */
export interface PartLine {
  /** What. */
  readonly part: string;
  /** How many. */
  readonly quantity: number;
  /** Why. */
  readonly reason: string;
}

/**
 * Bars to cut.
 * @since 0.1.0
 */
export interface CutLine {
  /** Which. */
  readonly id: string;
  /** How many. */
  readonly count: number;
  /** Length of each, m. */
  readonly length: Meters;
  /** Stock for all of them with saw cuts, m. */
  readonly stock: Meters;
  /** Mass of all of them, kg. */
  readonly mass: Kilograms;
  /** Section net of the hole, current density at plate current and resistance of a bar. */
  readonly figures: readonly Figure[];
}

/**
 * The module that is assessed, as read from the record: enough to draw it.
 * @since 0.1.0
 */
export interface AssessedModule {
  /** The banks. */
  readonly banks: readonly {
    /** Name of the bank. */
    readonly id: string;
    /** How it is connected. */
    readonly connection: "star" | "delta";
    /** Parallel strings in each branch. */
    readonly elementsInParallel: number;
    /** Elements in each string. */
    readonly elementsInSeries: number;
  }[];
  /** Whether star points are tied; `null` where there are no two of them. */
  readonly starPoints: "tied" | "separate" | null;
  /** Whether they lie on the neutral. */
  readonly neutral: "connected" | "floating";
  /** Joints as drawn. */
  readonly joints: readonly RecordDrawnJoint[];
  /** Plate power, W; `null` without a nameplate. */
  readonly power: Watts | null;
  /** Plate voltage between lines, V; `null` without a nameplate. */
  readonly lineVoltage: LineVolts | null;
  /** Site voltage as measured, V; `null` if it was not. */
  readonly supply: {
    /** L1 to L2. */
    readonly v12: LineVolts;
    /** L2 to L3. */
    readonly v23: LineVolts;
    /** L3 to L1. */
    readonly v31: LineVolts;
  } | null;
}

/**
 * The assessment of one bench record. Survives `JSON.stringify`; the same record always gives the same bytes.
 * @since 0.1.0
 */
export interface ModuleAssessment {
  /** Title of the record. */
  readonly title: string;
  /** Equipment, people and day; `null` if the record names none. */
  readonly identity: RecordIdentity | null;
  /** The module that is assessed. */
  readonly module: AssessedModule;
  /** The answer in at most five lines: what is wrong, what to do, whether it may run. */
  readonly answer: readonly string[];
  /** What was taken for granted. */
  readonly assumptions: readonly string[];
  /** Targets, by bank; empty without a nameplate. */
  readonly targets: readonly {
    /** The bank. */
    readonly bank: string;
    /** What the plate promises for it. */
    readonly targets: NameplateTargets;
  }[];
  /** Before the repair; `null` without such readings. */
  readonly asFound: ReadingsAssessment | null;
  /** After the repair; `null` without such readings. */
  readonly asLeft: ReadingsAssessment | null;
  /** Which faults explain the readings as found; `null` without a nameplate or without readings that a diagnosis takes. */
  readonly diagnosis: Diagnosis | null;
  /** What the module draws; `null` where neither nameplate nor readings give every branch, or no voltage is known. */
  readonly draw: DrawAssessment | null;
  /** What happens if any one element opens: as drawn first; empty where `draw` is `null`. */
  readonly whatIf: readonly WhatIfTable[];
  /** Ways to run on until parts come; `null` where nothing is open or the record has no process. */
  readonly degraded: DegradedOptions | null;
  /** Torque and preload. */
  readonly hardware: readonly HardwareAssessment[];
  /** Conductors, terminals, protection; `null` without them in the record. */
  readonly feed: FeedAssessment | null;
  /** What to expect at the first heat; `null` where `draw` is `null`. */
  readonly commissioning: CommissioningAssessment | null;
  /** What to do next, most pressing first. */
  readonly nextSteps: readonly NextStep[];
  /** Before and after the supply is closed again. */
  readonly checklist: readonly ChecklistItem[];
  /** Parts to bring. */
  readonly parts: readonly PartLine[];
  /** Bars to cut. */
  readonly cuts: readonly CutLine[];
  /** What nobody has tested yet. */
  readonly notTested: readonly string[];
  /** Suspicious input, values outside their source. */
  readonly warnings: readonly Warning[];
  /** What can hurt people, and who decides. Always present. */
  readonly cautions: readonly string[];
}

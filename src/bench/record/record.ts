/** A bench record: what a technician writes down, as text with units or as plain numbers in canonical units. */

import type { Quoted } from "./quoted.ts";
import type { RecordBars, RecordFastening, RecordFeed, RecordProcess } from "./site.ts";

/**
 * Which piece of equipment, who and when, in the writer's words. None of it enters a calculation.
 * @since 0.1.0
 */
export interface RecordIdentity {
  /** The equipment. */
  readonly equipment?: string;
  /** Its serial or asset number. */
  readonly serialNumber?: string;
  /** Where it stands. */
  readonly location?: string;
  /** The order the work is done under. */
  readonly workOrder?: string;
  /** Who did it. */
  readonly technician?: string;
  /** The day, as written. */
  readonly date?: string;
}

/**
 * Nameplate of the module.
 * @since 0.1.0
 */
export interface RecordNameplate {
  /** Rated power of the whole module. */
  readonly power: Quoted;
  /** Rated voltage between lines. */
  readonly voltage: Quoted;
}

/**
 * One bank in a record.
 * @since 0.1.0
 */
export interface RecordBank {
  /** Name of the bank. */
  readonly id: string;
  /** Star or delta; `"wye"` is read as star, and from text `"Y"`, `"Δ"` and capitals are read too. */
  readonly connection: "star" | "delta" | "wye";
  /** Parallel strings in each branch; 1 if left out. */
  readonly elementsInParallel?: number;
  /** Elements in each string; 1 if left out. */
  readonly elementsInSeries?: number;
  /** Its part of the plate's power; banks that state none share equally what the others leave. */
  readonly power?: Quoted;
}

/**
 * A joint as drawn, where it is to be part of the network: a bolted contact between a line or star point and what it feeds.
 * @since 0.1.0
 */
export interface RecordDrawnJoint {
  /** Name of the joint. */
  readonly id: string;
  /** Node it sits at: a line, or a star point (`S`, `S-A`). */
  readonly at: string;
  /** Banks or branches behind it; all that the node feeds if left out. */
  readonly behind?: readonly string[];
}

/**
 * Wiring of the module as drawn.
 * @since 0.1.0
 */
export interface RecordWiring {
  /** The banks. */
  readonly banks: readonly RecordBank[];
  /** Needed with two or more star banks without neutral. */
  readonly starPoints?: "tied" | "separate";
  /** Floating if left out. */
  readonly neutral?: "connected" | "floating";
  /** Joints to be judged by their place in the network; they count as 0 Ω in the targets. */
  readonly joints?: readonly RecordDrawnJoint[];
}

/**
 * The supply as measured at the module; the plate voltage is taken if left out. 0 is a reading: a lost line that floats shows nothing.
 * @since 0.1.0
 */
export interface RecordSupply {
  /** Voltage L1 to L2. */
  readonly v12: Quoted;
  /** Voltage L2 to L3. */
  readonly v23: Quoted;
  /** Voltage L3 to L1. */
  readonly v31: Quoted;
}

/**
 * An instrument: the maker's accuracy on the range in use.
 * @since 0.1.0
 */
export interface RecordInstrument {
  /** Part of the reading as a ratio, 0 to 0.5: 0.005 for ±0.5 %. */
  readonly ofReading: number;
  /** Number of last digits, 0 to 1000. */
  readonly digits: number;
  /** One unit of the last digit; needed where readings are plain numbers. */
  readonly resolution?: Quoted;
}

/**
 * The ohmmeter.
 * @since 0.1.0
 */
export interface RecordOhmmeter extends RecordInstrument {
  /** `"unknown"`, `"taken off"` (four-wire, zeroed or subtracted), or the reading with the leads shorted. */
  readonly leads:
    | "unknown"
    | "taken off"
    | {
        /** The reading with the leads shorted. */
        readonly shorted: Quoted;
      };
}

/**
 * The instruments. Ohms need their meter; readings of other kinds are shown without theirs, but neither judged nor diagnosed.
 * @since 0.1.0
 */
export interface RecordInstruments {
  /** For ohms on the dead module. */
  readonly ohmmeter?: RecordOhmmeter;
  /** For amps under load. */
  readonly clamp?: RecordInstrument;
  /** For volts under load. */
  readonly voltmeter?: RecordInstrument;
  /** For drops across joints under load. */
  readonly millivoltmeter?: RecordInstrument;
  /** For insulation to the frame. */
  readonly insulationTester?: RecordInstrument;
}

/**
 * One ohm reading on the dead module.
 * @since 0.1.0
 */
export interface RecordOhms {
  /** Node of one probe: a line, or a star point (`S`; `S-A` for separate ones; `N` on the neutral). */
  readonly from: string;
  /** Node of the other probe. */
  readonly to: string;
  /** What the meter showed; `"OL"` for an open path. */
  readonly reads: Quoted;
  /** The only bank or branch (`"A-L1"`) connected when it was taken, the links of the others lifted; all if left out. */
  readonly alone?: string;
  /**
   * Whether both probes sat on the own studs of the branch that `alone` names, its links lifted too: then no link, bar or joint is in the
   * reading. Left out or false: the links and joints of the branch are in it.
   */
  readonly ownStuds?: boolean;
}

/**
 * One clamp reading, energised at full conduction and hot.
 * @since 0.1.0
 */
export interface RecordAmps {
  /** Node where the wire sits, such as `"L1"`. */
  readonly at: string;
  /** What the wire feeds: a bank or a branch (`"A-L1"`); the whole line if left out. */
  readonly into?: string;
  /** What the clamp showed. */
  readonly reads: Quoted;
}

/**
 * One insulation reading of the dead module to its frame.
 * @since 0.1.0
 */
export interface RecordInsulation {
  /** Node of the probe. */
  readonly from: string;
  /** What the tester showed. Above its range: with the range, `">550 MΩ"`, which can be judged, or `"OL"`, which cannot. */
  readonly reads: Quoted;
  /** Test voltage, direct. */
  readonly testVoltage?: Quoted;
}

/**
 * What was seen of one joint under load.
 * @since 0.1.0
 */
export interface RecordJoint {
  /** Name of the joint. */
  readonly id: string;
  /** Voltage drop across it. */
  readonly drop?: Quoted;
  /** Current through it at the same time, needed with a drop. One of drop and rise must be there. */
  readonly current?: Quoted;
  /** Rise of the joint over the ambient air, a difference (`"71 K"`), at `loadRatio` of full current. */
  readonly rise?: Quoted;
  /** Current at the thermal scan over full load current, more than 0 to 1.5; 1 if left out. */
  readonly loadRatio?: number;
}

/**
 * Readings of one day: as found, or as left.
 * @since 0.1.0
 */
export interface RecordReadings {
  /** Supply at the module when amps and drops were taken; `supply` of the record if left out. */
  readonly supply?: RecordSupply;
  /** Ohms on the dead module. */
  readonly ohms?: readonly RecordOhms[];
  /** Amps under load. */
  readonly currents?: readonly RecordAmps[];
  /** Insulation to the frame. */
  readonly insulation?: readonly RecordInsulation[];
  /** Joints that are alike, under load. */
  readonly joints?: readonly RecordJoint[];
}

/**
 * A bench record. Everything but title and wiring may be left out; what is left out is listed as not tested.
 * @since 0.1.0
 */
export interface BenchRecord {
  /** What and where, in the writer's words. */
  readonly title: string;
  /** Which piece of equipment, who, when. */
  readonly identity?: RecordIdentity;
  /** Nameplate; without it branches are judged against each other. */
  readonly nameplate?: RecordNameplate;
  /** Wiring as drawn. */
  readonly wiring: RecordWiring;
  /** Site voltage as measured. */
  readonly supply?: RecordSupply;
  /** Hot over cold resistance of the elements at working temperature, 0.5 to 10. */
  readonly temperatureFactor?: number;
  /** Allowed deviation of a branch's resistance from its target, as ratios and not in per cent: low −0.05 (−1 to 0), high 0.10 (0 to 1). No verdicts without it. */
  readonly tolerance?: {
    /** Lower limit, as a ratio. */
    readonly low: number;
    /** Upper limit. */
    readonly high: number;
  };
  /** Instruments. */
  readonly instruments?: RecordInstruments;
  /** Readings before the repair. */
  readonly asFound?: RecordReadings;
  /** Readings after the repair. */
  readonly asLeft?: RecordReadings;
  /** Studs, nuts and screws, one entry for each kind of place. */
  readonly hardware?: readonly RecordFastening[];
  /** Jumper bars to be cut. */
  readonly bars?: readonly RecordBars[];
  /** Wires, lugs and protection that feed the module. */
  readonly feed?: RecordFeed;
  /** Air around the terminals, a temperature (`"40 °C"`). */
  readonly ambient?: Quoted;
  /** What the module heats, for running on with a fault. */
  readonly process?: RecordProcess;
}

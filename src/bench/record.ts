/** A bench record: what a technician writes down, as text with units or as plain numbers in canonical units. */

/**
 * A quantity in a record: text with its unit as read (`"7.90 Ω"`, `"OL"`, `"60 kW"`), or a number in the canonical unit (Ω, V, A, W).
 * Text keeps the digits that the meter showed, and with them its resolution.
 * @since 0.1.0
 */
export type Quoted = string | number;

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
  /** Star or delta; `"wye"` is read as star. */
  readonly connection: "star" | "delta" | "wye";
  /** Parallel strings in each branch; 1 if left out. */
  readonly elementsInParallel?: number;
  /** Elements in each string; 1 if left out. */
  readonly elementsInSeries?: number;
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
}

/**
 * The supply as measured at the module; the plate voltage is taken if left out.
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
 * The ohmmeter.
 * @since 0.1.0
 */
export interface RecordMeter {
  /** Part of the reading as a ratio, 0 to 0.5: 0.005 for ±0.5 %. */
  readonly ofReading: number;
  /** Number of last digits, 0 to 1000. */
  readonly digits: number;
  /** One unit of the last digit; needed where readings are plain numbers. */
  readonly resolution?: Quoted;
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
 * One ohm reading.
 * @since 0.1.0
 */
export interface RecordReading {
  /** Node of one probe: a line, or a star point (`S`; `S-A` for separate ones; `N` on the neutral). */
  readonly from: string;
  /** Node of the other probe. */
  readonly to: string;
  /** What the meter showed; `"OL"` for an open path. */
  readonly reads: Quoted;
  /** Bank (`"A"`) or branch (`"A-L1"`) measured alone with its links lifted; the whole module, links in, if left out. */
  readonly alone?: string;
}

/**
 * A joint's voltage drop under load.
 * @since 0.1.0
 */
export interface RecordJoint {
  /** Name of the joint. */
  readonly id: string;
  /** Voltage drop across it. */
  readonly drop: Quoted;
  /** Current through it at the same time. */
  readonly current: Quoted;
}

/**
 * A bench record. Everything but title, nameplate and wiring may be left out; what is left out is listed as not tested.
 * @since 0.1.0
 */
export interface BenchRecord {
  /** What and where, in the writer's words. */
  readonly title: string;
  /** Nameplate. */
  readonly nameplate: RecordNameplate;
  /** Wiring as drawn. */
  readonly wiring: RecordWiring;
  /** Supply as measured. */
  readonly supply?: RecordSupply;
  /** Hot over cold resistance of the elements at working temperature, 0.5 to 10. */
  readonly temperatureFactor?: number;
  /** Allowed deviation of a branch's resistance from its target, as ratios: low −0.05 (−1 to 0), high 0.10 (0 to 10). No verdicts without it. */
  readonly tolerance?: {
    /** Lower limit, as a ratio. */
    readonly low: number;
    /** Upper limit. */
    readonly high: number;
  };
  /** The ohmmeter; needed with readings. */
  readonly meter?: RecordMeter;
  /** Ohm readings on the dead module. */
  readonly readings?: readonly RecordReading[];
  /** Millivolt drops of joints that are alike. */
  readonly joints?: readonly RecordJoint[];
}

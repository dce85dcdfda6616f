/** A bench record with every quantity read: what the rest of the room works on. */
import type {
  Amperes,
  Celsius,
  JoulesPerKelvin,
  Kelvins,
  LineVolts,
  Meters,
  NewtonMeters,
  Ohms,
  Open,
  Seconds,
  Volts,
  Watts,
  WattsPerKelvin,
} from "../../quantity/index.ts";
import type { RecordIdentity } from "./record.ts";

/** A quantity that has been read: its value and one unit of its last quoted digit, null where a plain number was given. */
export interface Read<Q> {
  readonly value: Q;
  readonly resolution: number | null;
}

/** A reading of a tester with a range: open, and then above which resistance where that was shown. */
export interface ReadOrAbove extends Read<Ohms | Open> {
  readonly above?: Read<Ohms> | undefined;
}

/** An instrument; its last digit in the unit that it reads. */
export interface ParsedInstrument<Q> {
  readonly ofReading: number;
  readonly digits: number;
  readonly resolution?: Read<Q> | undefined;
}

/** The ohmmeter and its leads. */
export interface ParsedOhmmeter extends ParsedInstrument<Ohms> {
  readonly leads: "unknown" | "taken off" | { readonly shorted: Read<Ohms> };
}

/** Voltages between lines. */
export interface ParsedSupply {
  readonly v12: Read<LineVolts>;
  readonly v23: Read<LineVolts>;
  readonly v31: Read<LineVolts>;
}

/** Readings of one day. */
export interface ParsedReadings {
  readonly supply?: ParsedSupply | undefined;
  readonly ohms?:
    | readonly {
        readonly from: string;
        readonly to: string;
        readonly reads: Read<Ohms | Open>;
        readonly alone?: string | undefined;
        readonly ownStuds?: boolean | undefined;
      }[]
    | undefined;
  readonly currents?:
    | readonly { readonly at: string; readonly into?: string | undefined; readonly reads: Read<Amperes> }[]
    | undefined;
  readonly insulation?:
    | readonly {
        readonly from: string;
        readonly reads: ReadOrAbove;
        readonly testVoltage?: Read<Volts> | undefined;
      }[]
    | undefined;
  readonly joints?:
    | readonly {
        readonly id: string;
        readonly drop?: Read<Volts> | undefined;
        readonly current?: Read<Amperes> | undefined;
        readonly rise?: Read<Kelvins> | undefined;
        readonly loadRatio?: number | undefined;
      }[]
    | undefined;
}

/** Studs, nuts or screws of one kind. */
export interface ParsedFastening {
  readonly id: string;
  readonly thread: string;
  readonly count?: number | undefined;
  readonly strength?: { readonly standard: string; readonly grade: string } | undefined;
  readonly condition?: string | undefined;
  readonly makerTorque?: Read<NewtonMeters> | undefined;
  readonly applied?: Read<NewtonMeters> | undefined;
  readonly renew?: boolean | undefined;
}

/** Jumper bars of one kind. */
export interface ParsedBars {
  readonly id: string;
  readonly count?: number | undefined;
  readonly studs: number;
  readonly pitch: Read<Meters>;
  readonly overhang: Read<Meters>;
  readonly width: Read<Meters>;
  readonly thickness: Read<Meters>;
  readonly hole?: Read<Meters> | undefined;
  readonly kerf?: Read<Meters> | undefined;
}

/** What feeds the module. */
export interface ParsedFeed {
  readonly edition: string;
  readonly equipment?: string | undefined;
  readonly conductor?: string | undefined;
  readonly material?: string | undefined;
  readonly installation: string;
  readonly insulation: string;
  readonly terminals?: Read<Celsius> | undefined;
  readonly conductorsPerLine?: number | undefined;
  readonly grouped?: number | undefined;
  readonly device?: Read<Amperes> | undefined;
  readonly deviceKind?: "circuit-breaker" | "gG fuse" | undefined;
}

/** What the module heats. */
export interface ParsedProcess {
  readonly target: Read<Celsius>;
  readonly lossConductance: Read<WattsPerKelvin>;
  readonly heatCapacity: Read<JoulesPerKelvin>;
  readonly shift: Read<Seconds>;
  readonly shifts?: number | undefined;
  readonly tariff?: number | undefined;
}

/** A record with every quantity read. */
export interface ParsedRecord {
  readonly title: string;
  readonly identity?: { readonly [K in keyof RecordIdentity]?: string | undefined } | undefined;
  readonly nameplate?: { readonly power: Read<Watts>; readonly voltage: Read<LineVolts> } | undefined;
  readonly wiring: {
    readonly banks: readonly {
      readonly id: string;
      readonly connection: "star" | "delta";
      readonly elementsInParallel?: number | undefined;
      readonly elementsInSeries?: number | undefined;
      readonly power?: Read<Watts> | undefined;
    }[];
    readonly starPoints?: "tied" | "separate" | undefined;
    readonly neutral?: "connected" | "floating" | undefined;
    readonly joints?:
      | readonly {
          readonly id: string;
          readonly at: string;
          readonly behind?: readonly string[] | undefined;
        }[]
      | undefined;
  };
  readonly supply?: ParsedSupply | undefined;
  readonly temperatureFactor?: number | undefined;
  readonly tolerance?: { readonly low: number; readonly high: number } | undefined;
  readonly instruments?:
    | {
        readonly ohmmeter?: ParsedOhmmeter | undefined;
        readonly clamp?: ParsedInstrument<Amperes> | undefined;
        readonly voltmeter?: ParsedInstrument<Volts> | undefined;
        readonly millivoltmeter?: ParsedInstrument<Volts> | undefined;
        readonly insulationTester?: ParsedInstrument<Ohms> | undefined;
      }
    | undefined;
  readonly asFound?: ParsedReadings | undefined;
  readonly asLeft?: ParsedReadings | undefined;
  readonly hardware?: readonly ParsedFastening[] | undefined;
  readonly bars?: readonly ParsedBars[] | undefined;
  readonly feed?: ParsedFeed | undefined;
  readonly ambient?: Read<Celsius> | undefined;
  readonly process?: ParsedProcess | undefined;
}

/** The types that the simulated bench and the diagnosis share; types only, nothing that computes. */
import type { ModulePlan } from "electroheat/circuit";
import type { Amperes, Ohms, Open, Volts } from "electroheat/quantity";

export interface Instrument {
  readonly ofReading: number;
  readonly digits: number;
  readonly resolution: number;
}
export interface Instruments {
  readonly ohmmeter?: Instrument & { readonly leads: "unknown" | "taken off" | { readonly shorted: Ohms } };
  readonly clamp?: Instrument;
  readonly voltmeter?: Instrument;
  readonly millivoltmeter?: Instrument;
  readonly insulationTester?: Instrument;
}
export type FieldReading =
  | {
      readonly kind: "resistance";
      readonly from: string;
      readonly to: string;
      readonly reads: Ohms | Open;
      readonly only?: readonly string[];
    }
  | { readonly kind: "current"; readonly at: string; readonly into?: string; readonly reads: Amperes }
  | { readonly kind: "voltage"; readonly from: string; readonly to: string; readonly reads: Volts }
  | { readonly kind: "drop"; readonly across: string; readonly reads: Volts }
  | {
      readonly kind: "insulation";
      readonly from: string;
      readonly reads: Ohms | Open;
      readonly only?: readonly string[];
    };
export interface FaultPriors {
  readonly elementOpen?: number;
  readonly shortedTurns?: number;
  readonly offValue?: number;
  readonly joint?: number;
  readonly misLinked?: number;
  readonly lostLine?: number;
  readonly earthFault?: number;
  readonly supplyUnbalance?: number;
}
export type DiagnosedFault =
  | { readonly kind: "element open"; readonly element: string }
  | { readonly kind: "shorted turns"; readonly element: string }
  | { readonly kind: "element off value"; readonly element: string }
  | { readonly kind: "joint"; readonly place: string }
  | {
      readonly kind: "mis-linked";
      readonly bank: string | null;
      readonly as: "delta" | "star" | "tied" | "separate";
    }
  | { readonly kind: "lost line"; readonly line: string }
  | { readonly kind: "earth fault"; readonly element: string }
  | { readonly kind: "supply unbalance" };
export interface FaultEstimate {
  readonly of:
    | "turns shorted"
    | "resistance ratio"
    | "joint resistance"
    | "position"
    | "fault resistance"
    | "unbalance";
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}
export interface Explanation {
  readonly faults: readonly DiagnosedFault[];
  readonly probability: number;
  readonly estimates: readonly FaultEstimate[];
  readonly logLikelihood: number;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number | null;
}
export interface Diagnosis {
  readonly outcome: "explained" | "nothing fits" | "too few readings";
  readonly groups: readonly { readonly probability: number; readonly explanations: readonly Explanation[] }[];
}
export interface DiagnosisInput {
  readonly module: ModulePlan;
  readonly readings: readonly FieldReading[];
  readonly instruments: Instruments;
  readonly supply?: { readonly lineVoltage: Volts };
  readonly priors?: FaultPriors;
  readonly depth?: "single" | "pairs";
}

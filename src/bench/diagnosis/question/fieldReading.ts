/** What a technician reads on a module, and where. */
import type { Amperes, Ohms, Open, Volts } from "../../../quantity/index.ts";

/**
 * One reading as the technician took it, in the canonical unit. Resistances and insulation: module dead. Currents,
 * voltages and drops: energised, full conduction, hot.
 * @since 0.1.0
 */
export type FieldReading =
  | {
      /** Ohms between two nodes of the dead module. */
      readonly kind: "resistance";
      /** Node of one probe. */
      readonly from: string;
      /** Node of the other probe. */
      readonly to: string;
      /** What the meter shows, Ω, 0 or more; `"open"` for OL. */
      readonly reads: Ohms | Open;
      /** Banks, branches or elements still connected, the links of all others lifted; left out: everything connected. */
      readonly only?: readonly string[];
    }
  | {
      /** Amperes by a clamp. */
      readonly kind: "current";
      /** Node where the wire sits, such as `"L1"`. */
      readonly at: string;
      /** What the wire feeds: a bank, a branch (`"A-L1"`) or an element; left out: the whole line. */
      readonly into?: string;
      /** What the clamp shows, A, 0 or more. */
      readonly reads: Amperes;
    }
  | {
      /** Volts between two nodes, energised. */
      readonly kind: "voltage";
      /** Node of one probe; `"N"` is the supply neutral. */
      readonly from: string;
      /** Node of the other probe. */
      readonly to: string;
      /** What the meter shows, V, 0 or more. */
      readonly reads: Volts;
    }
  | {
      /** Volts across a joint, energised, by a millivoltmeter. */
      readonly kind: "drop";
      /** The joint, by its name in the plan. */
      readonly across: string;
      /** What the meter shows, V, 0 or more. */
      readonly reads: Volts;
    }
  | {
      /** Insulation resistance from a node of the dead module to its frame. */
      readonly kind: "insulation";
      /** Node of the probe. */
      readonly from: string;
      /** What the tester shows, Ω, 0 or more; `"open"` above its range. */
      readonly reads: Ohms | Open;
      /** As for a resistance. */
      readonly only?: readonly string[];
    };

/**
 * A reading still to be taken.
 * @since 0.1.0
 */
export type FieldMeasurement = FieldReading extends infer R
  ? R extends FieldReading
    ? Omit<R, "reads">
    : never
  : never;

/** What can be wrong with a module, as the diagnosis names it. */
import type { FieldMeasurement } from "./fieldReading.ts";

/**
 * A fault that explains readings.
 * @since 0.1.0
 */
export type DiagnosedFault =
  | {
      /** An element without a path. */
      readonly kind: "element open";
      /** Its name. */
      readonly element: string;
    }
  | {
      /** Part of an element bridged. */
      readonly kind: "shorted turns";
      /** Its name. */
      readonly element: string;
    }
  | {
      /** An element aged, or the wrong one. */
      readonly kind: "element off value";
      /** Its name. */
      readonly element: string;
    }
  | {
      /** A joint of high resistance. */
      readonly kind: "joint";
      /**
       * A joint of the plan by its name, else `"L1"` (all that the line feeds), `"L1>A"` (end of bank A on L1) or
       * `"S-A<A-L1"` (end of branch A-L1 on the star point S-A).
       */
      readonly place: string;
    }
  | {
      /** A joint or lug burnt off, broken or never made: no path through it at all. */
      readonly kind: "open joint";
      /** Named as the place of a `"joint"`. */
      readonly place: string;
    }
  | {
      /** Links not as drawn. */
      readonly kind: "mis-linked";
      /** The bank; `null` for star points. */
      readonly bank: string | null;
      /** How it is linked, against the drawing; `"neutral"`: star points that should float tied to the neutral or the frame. */
      readonly as: "delta" | "star" | "tied" | "separate" | "neutral";
    }
  | {
      /** A branch landed on another line than drawn. */
      readonly kind: "mis-landed";
      /** The branch, by bank and name. */
      readonly branch: string;
      /** The line it belongs on. */
      readonly drawn: string;
      /** The line it is on. */
      readonly on: string;
    }
  | {
      /** A line without supply. */
      readonly kind: "lost line";
      /** Its name. */
      readonly line: string;
    }
  | {
      /** A bank without supply: its stage not called for, its contactor or fuses; on one line only, a pole of the contactor or a fuse. */
      readonly kind: "unfed bank";
      /** Its name. */
      readonly bank: string;
      /** The line that it is without; left out: all of them. */
      readonly line?: string;
    }
  | {
      /** A path from an element to the frame. */
      readonly kind: "earth fault";
      /** Its name. */
      readonly element: string;
    }
  | {
      /** A path from a terminal to the frame that is no coil's: porcelain bridged or broken, a bar or lug that touches. */
      readonly kind: "earthed terminal";
      /** The line or the star point, by its node. */
      readonly terminal: string;
    }
  | {
      /** All elements alike of another value than the plan's: another plate, voltage or number side by side than drawn. */
      readonly kind: "other rating";
    }
  | {
      /** The feed's windings, or another load, still across the lines while ohms were read. */
      readonly kind: "feed connected";
    }
  | {
      /** Nothing but unequal line voltages. */
      readonly kind: "supply unbalance";
    }
  | {
      /** No fault of the module: one reading that is not what was there. */
      readonly kind: "misread";
      /** Its place among the readings, from 0. */
      readonly reading: number;
      /** Where it was taken. */
      readonly of: FieldMeasurement;
    };

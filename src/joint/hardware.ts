/** What is known, and what is not, about washers and nuts in a current-carrying joint. */
import { checkOneOf } from "../quantity/index.ts";

/**
 * Hardware that can lie under a nut.
 * @since 0.1.0
 */
export type Hardware = "flat washer" | "conical washer" | "star washer" | "serrated flange nut" | "plain nut";

/**
 * One statement about hardware, with what it rests on.
 * @since 0.1.0
 */
export interface HardwareNote {
  /** The statement. */
  readonly statement: string;
  /** What it rests on. */
  readonly kind: "published" | "common practice" | "no published source";
  /** Source, in words. */
  readonly source: string;
}

const FLAT: readonly HardwareNote[] = [
  {
    statement:
      "A flat washer under each face spreads the force so that soft copper does not set under the nut.",
    kind: "common practice",
    source: "busbar jointing practice; no numbers found",
  },
  {
    statement: "The electrical contact is bar on bar: the washer carries force, not current.",
    kind: "common practice",
    source: "common practice, no published source",
  },
];
const CONICAL: readonly HardwareNote[] = [
  {
    statement: "Fit it with the concave side towards the joint; fitted upside down it does nothing.",
    kind: "common practice",
    source: "trade press on conical washers in bus joints, 2012",
  },
  {
    statement:
      "Whether it is left flat or backed off is its maker's choice; re-torquing a flattened one does harm.",
    kind: "common practice",
    source: "trade press on conical washers in bus joints, 2012",
  },
  {
    statement: "While not flat it divides the loss by embedding and heat by the ratio of stiffnesses.",
    kind: "common practice",
    source:
      "compatibility of deflections, as VDI 2230 has it (from memory); see discSpringState and embeddingLoss",
  },
];
const STAR: readonly HardwareNote[] = [
  {
    statement:
      "Never in the current path between bar and bar or bar and lug: its teeth hold the surfaces apart.",
    kind: "common practice",
    source: "common practice, no published source",
  },
  {
    statement: "No published bearing area, stiffness or contact resistance of star washers was found.",
    kind: "no published source",
    source: "searched for this library, none found",
  },
];
const FLANGE: readonly HardwareNote[] = [
  {
    statement:
      "The flange takes the place of nut and flat washer: one bearing face less to embed, force led straight into the bar.",
    kind: "common practice",
    source: "common practice, no published source",
  },
  {
    statement:
      "The serrations bite the bar: no flat washer under them, a marked bar face, and a torque of their own from the maker.",
    kind: "common practice",
    source: "common practice, no published source",
  },
  {
    statement:
      "No published nut factor, bearing area or vibration figure for serrated flange nuts on copper was found.",
    kind: "no published source",
    source: "searched for this library, none found",
  },
];
const PLAIN: readonly HardwareNote[] = [
  {
    statement: "Bears on its across-flats circle only, less than a washer's face; soft copper sets under it.",
    kind: "common practice",
    source: "common practice, no published source; areas by bearingPressure from the diameters you measure",
  },
];

/**
 * Notes on one kind of hardware: force path, bearing, and where no number was found.
 *
 * Numbers come from geometry (`bearingPressure`, `embeddingLoss`, `discSpringState`), never from these notes.
 * @param hardware - kind of hardware
 * @returns statements, each with what it rests on
 * @throws ElectroheatError `missing`, `unknown-name`
 * @source as each note says
 * @example
 * ```ts
 * hardwareNotes("star washer").map(({ kind }) => kind) // => ["common practice", "no published source"]
 * ```
 * @since 0.1.0
 */
export function hardwareNotes(hardware: Hardware): readonly HardwareNote[] {
  const kind = checkOneOf("hardware", hardware, [
    "flat washer",
    "conical washer",
    "star washer",
    "serrated flange nut",
    "plain nut",
  ]);
  switch (kind) {
    case "flat washer":
      return FLAT;
    case "conical washer":
      return CONICAL;
    case "star washer":
      return STAR;
    case "serrated flange nut":
      return FLANGE;
    case "plain nut":
      return PLAIN;
  }
}

/**
 * Rules on re-tightening that are in print or in use. They disagree, so none is a default.
 * @since 0.1.0
 */
export type RetighteningRule = "never-as-routine" | "periodic-busway" | "measure-and-remake";

/**
 * What one named rule says about re-tightening joints in service.
 *
 * Whatever the rule: checking the torque of an aged joint tells nothing about its preload (note in UL 486A-B).
 * @param rule - named rule
 * @returns the statement, with what it rests on
 * @throws ElectroheatError `missing`, `unknown-name`
 * @source as each note says
 * @example
 * ```ts
 * retighteningNote("measure-and-remake").kind // => "common practice"
 * ```
 * @since 0.1.0
 */
export function retighteningNote(rule: RetighteningRule): HardwareNote {
  const name = checkOneOf("rule", rule, ["never-as-routine", "periodic-busway", "measure-and-remake"]);
  switch (name) {
    case "never-as-routine":
      return {
        statement: "Re-tightening as a routine is impractical or unwise.",
        kind: "common practice",
        source: "trade press on conical washers in bus joints, 2012",
      };
    case "periodic-busway":
      return {
        statement: "Re-torque every two to six years, but not over conical washers that are flat.",
        kind: "common practice",
        source: "busway guidance, read second-hand",
      };
    case "measure-and-remake":
      return {
        statement:
          "Check by millivolts, micro-ohms or a thermal scan; open, clean and remake what is bad, with new hardware after overheating.",
        kind: "common practice",
        source: "common practice, no published source",
      };
  }
}

/** Notes on the named shapes of the room `joint`, shared by every entry that takes or gives one. */
import type {
  BareBar,
  BarSection,
  BearingPressure,
  DiscSpring,
  FinBar,
  JumperEnd,
  PreloadBand,
  ProfilePoint,
  RiseBand,
  ScannedJoint,
  SeverityLevel,
  StackPart,
} from "../../joint/index.ts";
import type { Note, ValueNote } from "../note.ts";

const fin: Note<FinBar> = {
  fields: {
    section: { symbol: "A", above: 0 },
    perimeter: { symbol: "P", above: 0 },
    conductivity: { symbol: "k", above: 0 },
    filmCoefficient: { symbol: "h", above: 0 },
  },
};
const bare: Note<BareBar> = {
  fields: {
    width: { symbol: "w", above: 0 },
    thickness: { symbol: "b", above: 0 },
    resistivity20: { symbol: "\\rho_{20}", above: 0 },
    coefficient20: { symbol: "\\alpha_{20}" },
    emissivity: { symbol: "\\varepsilon", is: "ratio", min: 0, max: 1 },
    air: { symbol: "\\vartheta_a", min: -50, max: 500 },
    skinRatio: { symbol: "s", is: "ratio", min: 1, max: 10, default: 1 },
    filmCoefficient: { symbol: "h", above: 0 },
  },
};
const end: Note<JumperEnd> = {
  fields: {
    conductance: { symbol: "G", min: 0 },
    temperature: { symbol: "\\vartheta_\\infty", min: -50, max: 1500 },
  },
};
const point: Note<ProfilePoint> = {
  fields: { position: { symbol: "x" }, temperature: { symbol: "\\vartheta", min: -273.15 } },
};
const spring: Note<DiscSpring> = {
  fields: {
    outerDiameter: { symbol: "D_e", above: 0 },
    innerDiameter: { symbol: "D_i", above: 0 },
    thickness: { symbol: "t", above: 0 },
    coneHeight: { symbol: "h", above: 0 },
    modulus: { symbol: "E", above: 0, default: 206e9 },
    poisson: { symbol: "\\mu", is: "ratio", min: 0, max: 0.5, default: 0.3 },
  },
};
const part: Note<StackPart> = {
  fields: {
    length: { symbol: "l_i", above: 0 },
    expansion: { symbol: "\\alpha_i", min: 0 },
    rise: { symbol: "\\Delta T_i" },
  },
};
const section: Note<BarSection> = {
  fields: { width: { symbol: "w", above: 0 }, thickness: { symbol: "b", above: 0 } },
};
const scanned: Note<ScannedJoint> = {
  fields: { rise: { symbol: "\\Delta T_k", min: 0 }, current: { symbol: "I_k", above: 0 } },
};
const riseBand: Note<RiseBand> = {
  fields: {
    low: { symbol: "\\Delta T_\\mathrm{low}" },
    copperBar: { symbol: "\\Delta T_{1.83}" },
    high: { symbol: "\\Delta T_\\mathrm{high}" },
  },
};
const preloadBand: Note<PreloadBand> = {
  fields: { low: { symbol: "F_\\mathrm{low}" }, high: { symbol: "F_\\mathrm{high}" } },
};
const pressure: Note<BearingPressure> = {
  fields: {
    faceArea: { symbol: "A" },
    facePressure: { symbol: "p" },
    interfaceDiameter: { symbol: "D_i" },
    interfacePressure: { symbol: "p_i" },
  },
};
const level: Note<SeverityLevel> = {
  fields: { rise: { symbol: "\\Delta T" }, level: { symbol: "k", is: "count" } },
};

export const JOINT_SHAPES: Readonly<Record<string, ValueNote>> = {
  "joint.FinBar": fin as ValueNote,
  "joint.BareBar": bare as ValueNote,
  "joint.JumperEnd": end as ValueNote,
  "joint.ProfilePoint": point as ValueNote,
  "joint.DiscSpring": spring as ValueNote,
  "joint.StackPart": part as ValueNote,
  "joint.BarSection": section as ValueNote,
  "joint.ScannedJoint": scanned as ValueNote,
  "joint.RiseBand": riseBand as ValueNote,
  "joint.PreloadBand": preloadBand as ValueNote,
  "joint.BearingPressure": pressure as ValueNote,
  "joint.SeverityLevel": level as ValueNote,
};

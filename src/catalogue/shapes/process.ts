/** Notes on the named shapes of the room `process`, shared by every entry that takes one. */
import type {
  AirFlow,
  OvenLoad,
  OvenPlan,
  RadiantSurface,
  VentilationRule,
  WallLayer,
} from "../../process/index.ts";
import type { Note, ValueNote } from "../note.ts";

/** Nothing is colder. */
const min = -273.15;

const flow: Note<AirFlow> = {
  fields: {
    volumeFlow: { symbol: "\\dot V", above: 0 },
    massFlow: { symbol: "\\dot m", above: 0 },
    temperature: { symbol: "\\vartheta", above: min },
    pressure: { symbol: "p", above: 0 },
  },
};
const load: Note<OvenLoad> = {
  fields: {
    mass: { symbol: "m", above: 0 },
    specificHeat: { symbol: "c", above: 0 },
    piece: {
      fields: {
        filmCoefficient: { symbol: "h", above: 0 },
        characteristicLength: { symbol: "L_c", above: 0 },
        thermalConductivity: { symbol: "\\lambda", above: 0 },
      },
    },
  },
};
const plan: Note<OvenPlan> = {
  fields: {
    ambient: { symbol: "\\vartheta_\\mathrm{amb}", min },
    lossConductance: { symbol: "G", min: 0 },
    structure: { symbol: "C_s", above: 0 },
    walls: {
      fields: {
        heatCapacity: { symbol: "C_w", above: 0 },
        share: { symbol: "w", is: "ratio", min: 0, max: 1 },
      },
    },
    air: { fields: { volume: { symbol: "V", above: 0 }, pressure: { symbol: "p", above: 0 } } },
    beyondTable: { default: "refuse" },
  },
};
const surface: Note<RadiantSurface> = {
  fields: {
    temperature: { symbol: "\\vartheta", min },
    area: { symbol: "A", above: 0 },
    emissivity: { symbol: "\\varepsilon", is: "ratio", above: 0, max: 1 },
  },
};
const rule: Note<VentilationRule> = {
  fields: {
    vaporRatio: { symbol: "v", is: "ratio", above: 0 },
    lowerFlammableLimit: { symbol: "\\mathrm{LFL}", is: "ratio", above: 0, max: 1 },
    shareOfLimit: { symbol: "s", is: "ratio", above: 0, max: 0.25 },
  },
};
const layer: Note<WallLayer> = {
  fields: {
    thickness: { symbol: "d", above: 0 },
    thermalConductivity: { symbol: "\\lambda", above: 0 },
  },
};

export const PROCESS_SHAPES: Readonly<Record<string, ValueNote>> = {
  "process.AirFlow": flow as ValueNote,
  "process.OvenLoad": load as ValueNote,
  "process.OvenPlan": plan as ValueNote,
  "process.RadiantSurface": surface as ValueNote,
  "process.VentilationRule": rule as ValueNote,
  "process.WallLayer": layer as ValueNote,
};

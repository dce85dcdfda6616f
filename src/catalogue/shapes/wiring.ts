/** Notes on the named shapes of the room `wiring`: marks, limits and editions of one's own. */
import type {
  AmbientTable,
  AmpacityTable,
  CapacityTable,
  LugMarks,
  OwnInsulationCriterion,
} from "../../wiring/index.ts";
import type { Note, ValueNote } from "../note.ts";

const baseAmbient = { symbol: "\\vartheta_0" } as const;

const lug: Note<LugMarks> = {
  fields: { temperature: { symbol: "\\vartheta_t" }, current: { symbol: "I", above: 0 } },
};
const criterion: Note<OwnInsulationCriterion> = {
  fields: { minimum: { symbol: "R_{\\min}", above: 0 }, testVoltage: { symbol: "V_t", above: 0 } },
};
const ampacity: Note<AmpacityTable> = { fields: { baseAmbient } };
const ambient: Note<AmbientTable> = { fields: { baseAmbient } };
const capacity: Note<CapacityTable> = {
  fields: { conductorTemperature: { symbol: "\\vartheta_c" }, baseAmbient },
};

export const WIRING_SHAPES: Readonly<Record<string, ValueNote>> = {
  "wiring.LugMarks": lug as ValueNote,
  "wiring.OwnInsulationCriterion": criterion as ValueNote,
  "wiring.AmpacityTable": ampacity as ValueNote,
  "wiring.AmbientTable": ambient as ValueNote,
  "wiring.CapacityTable": capacity as ValueNote,
};

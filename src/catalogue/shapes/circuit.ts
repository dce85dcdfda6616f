/** Notes on the named shapes of the room `circuit`, shared by every entry that takes one. */
import type { BankPlan, Branch, JointPlan, Stage, SupplyLine } from "../../circuit/index.ts";
import type { Complex } from "../../numeric/index.ts";
import type { Note, ValueNote } from "../note.ts";

const phasorPart = { symbol: "V", is: "number" } as const;

const branch: Note<Branch> = { fields: { resistance: { symbol: "R", min: 0 } } };
const bank: Note<BankPlan> = {
  fields: {
    elementResistance: { symbol: "R", above: 0 },
    elementsInParallel: { symbol: "n", is: "count", min: 1, max: 10_000, default: 1 },
    elementsInSeries: { symbol: "s", is: "count", min: 1, max: 10_000, default: 1 },
  },
};
const joint: Note<JointPlan> = {
  fields: { resistance: { symbol: "R", min: 0 }, role: { default: "joint" } },
};
const line: Note<SupplyLine> = {
  fields: {
    voltage: { fields: { re: phasorPart, im: phasorPart } },
    sourceResistance: { symbol: "R_s", min: 0 },
  },
};
const complex: Note<Complex> = { fields: { re: phasorPart, im: phasorPart } };
const stage: Note<Stage> = { fields: { power: { symbol: "P", above: 0 } } };

export const CIRCUIT_SHAPES: Readonly<Record<string, ValueNote>> = {
  "circuit.Branch": branch as ValueNote,
  "circuit.BankPlan": bank as ValueNote,
  "circuit.JointPlan": joint as ValueNote,
  "circuit.SupplyLine": line as ValueNote,
  "circuit.Stage": stage as ValueNote,
  "numeric.Complex": complex as ValueNote,
};

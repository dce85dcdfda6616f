/** Notes on named shapes: written once, used by every entry whose inputs hold one. */
import type { ValueNote } from "../note.ts";
import { BENCH_SHAPES } from "./bench.ts";
import { CIRCUIT_SHAPES } from "./circuit.ts";
import { ELEMENT_SHAPES } from "./element.ts";
import { JOINT_SHAPES } from "./joint.ts";
import { MATERIAL_SHAPES } from "./material.ts";
import { NUMERIC_SHAPES } from "./numeric.ts";
import { PROCESS_SHAPES } from "./process.ts";
import { WIRING_SHAPES } from "./wiring.ts";

export const SHAPE_NOTES: Readonly<Record<string, ValueNote>> = {
  ...NUMERIC_SHAPES,
  ...CIRCUIT_SHAPES,
  ...JOINT_SHAPES,
  ...WIRING_SHAPES,
  ...PROCESS_SHAPES,
  ...ELEMENT_SHAPES,
  ...MATERIAL_SHAPES,
  ...BENCH_SHAPES,
};

/** Notes on named shapes: written once, used by every entry whose inputs hold one. */
import type { ValueNote } from "../note.ts";
import { BENCH_SHAPES } from "./bench.ts";
import { CIRCUIT_SHAPES } from "./circuit.ts";
import { PROCESS_SHAPES } from "./process.ts";

export const SHAPE_NOTES: Readonly<Record<string, ValueNote>> = {
  ...CIRCUIT_SHAPES,
  ...PROCESS_SHAPES,
  ...BENCH_SHAPES,
};

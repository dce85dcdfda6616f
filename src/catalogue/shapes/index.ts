/** Notes on named shapes: written once, used by every entry whose inputs hold one. */
import type { ValueNote } from "../note.ts";
import { CIRCUIT_SHAPES } from "./circuit.ts";
import { NUMERIC_SHAPES } from "./numeric.ts";

export const SHAPE_NOTES: Readonly<Record<string, ValueNote>> = { ...NUMERIC_SHAPES, ...CIRCUIT_SHAPES };

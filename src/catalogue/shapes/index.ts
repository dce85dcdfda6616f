/** Notes on named shapes: written once, used by every entry whose inputs hold one. */
import type { ValueNote } from "../note.ts";
import { CIRCUIT_SHAPES } from "./circuit.ts";

export const SHAPE_NOTES: Readonly<Record<string, ValueNote>> = { ...CIRCUIT_SHAPES };

/** What the functions of this room check and state alike. */
import type { Basis, BasisKind } from "../material/index.ts";
import {
  checkBetween,
  checkNonNegative,
  fail,
  type Ohms,
  type Open,
  type Warning,
} from "../quantity/index.ts";

/** Divides by the resistance of an element on a voltage: 0 when open; a short on a live supply is refused. */
export function overResistance(value: number, resistance: Ohms | Open): number {
  // What nearly all are, first: a number held against a text is slow where an engine does not know that it is one.
  if (typeof resistance === "number" && resistance > 0 && resistance < Infinity) return value / resistance;
  return overNone(value, resistance);
}

function overNone(value: number, resistance: Ohms | Open): number {
  if (resistance === "open") return 0;
  checkNonNegative("resistance", resistance, "Ω", '0 or more Ω or "open"');
  if (value === 0) return 0;
  return fail({
    code: "short-circuit",
    path: "resistance",
    expected: "more than 0 Ω where there is a voltage",
    received: resistance,
    unit: "Ω",
  });
}

/** A part of its own value below nominal: at 1 nothing would be left. */
export function checkTolerances(input: {
  readonly upperTolerance: number;
  readonly lowerTolerance: number;
}): void {
  checkBetween("upperTolerance", input.upperTolerance, 0, 1);
  checkBetween("lowerTolerance", input.lowerTolerance, 0, 1 - Number.EPSILON);
}

/** Thickest wire that has a gauge (SWG 7/0, BS 3737: 0.5 in), m; what is thicker is a rod, or millimeters for meters. */
const THICKEST = 0.0127;

/** A warning for a wire thicker than any gauge. */
export function thickWire(path: string, diameter: number): readonly Warning[] {
  if (diameter <= THICKEST) return [];
  const message = `${diameter} m is thicker than any wire gauge`;
  return [{ code: "suspicious", path, message, limit: THICKEST, unit: "m", source: "bs-3737" }];
}

/** The basis that a table under shared/tables states for its rows. */
export function basisOf(table: {
  readonly id: string;
  readonly source: string;
  readonly edition: string;
  readonly kind: string;
}): Basis {
  return { source: table.source, edition: table.edition, table: table.id, kind: table.kind as BasisKind };
}

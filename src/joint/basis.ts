/** What every looked-up value says about itself: its basis, and to whom it defers. */
import type { Basis, BasisKind } from "../material/index.ts";
import { fail, oneOf, type Warning } from "../quantity/index.ts";

/**
 * The note that goes with every verdict, torque, ampacity and severity of this room.
 * @since 0.1.0
 */
export const JOINT_DEFERRAL: string =
  "Guidance only: the maker's instruction, the locally adopted electrical code and a licensed electrician " +
  "decide. Isolate, lock out and prove dead before a joint is touched; a camera and a millivoltmeter are used " +
  "on live parts by qualified persons only.";

/** The warning of a part hotter than the published bar tables go, or than stainless fasteners are stated for. */
export function hotWarnings(path: string, temperature: number): readonly Warning[] {
  if (!(temperature > 105)) return [];
  const past = temperature > 150;
  return [
    {
      code: "caution",
      path,
      message: past
        ? "Above 150 °C: outside the stated use of A2 and A4 fasteners; copper softens from about 190 °C."
        : "Above 105 °C: hotter than the published bar tables go; bare joints oxidize faster.",
      limit: past ? 150 : 105,
      unit: "°C",
      source: past ? "iso-3506-1" : "cda-busbar-table-1",
    },
  ];
}

/** A cell of a shared table. */
export type Cell = string | number | null;

/** A shared table as it lies in its JSON file. */
export interface SharedTable {
  readonly id: string;
  readonly source: string;
  readonly edition: string;
  readonly kind: string;
  readonly columns: readonly { readonly name: string; readonly unit: string; readonly meaning: string }[];
  readonly rows: readonly (readonly Cell[])[];
}

/** The basis of a table, or of a row that names its own source and kind. */
export function basisOf(table: SharedTable, row?: { readonly source: string; readonly kind: string }): Basis {
  return {
    source: row?.source ?? table.source,
    edition: table.edition,
    table: table.id,
    kind: (row?.kind ?? table.kind) as BasisKind,
  };
}

/** Where a column stands in its table. */
export function columnOf(table: SharedTable, name: string): number {
  const at = table.columns.findIndex((column) => column.name === name);
  if (at >= 0) return at;
  return fail({
    code: "unknown-name",
    path: "column",
    expected: oneOf(table.columns.map((column) => column.name)),
    received: name,
  });
}

/** The row whose first column is this name; an unknown name is answered with the known ones. */
export function rowNamed(table: SharedTable, path: string, name: string): readonly Cell[] {
  const row = table.rows.find((one) => one[0] === name);
  if (row !== undefined) return row;
  return fail({
    code: name === undefined || name === null || name === "" ? "missing" : "unknown-name",
    path,
    expected: oneOf([...new Set(table.rows.map((one) => one[0]))]),
    received: name,
  });
}

/** A numeric cell; a cell the source leaves empty is an error that says so. */
export function cellNumber(row: readonly Cell[], at: number, path: string): number {
  const cell = row[at];
  if (typeof cell === "number") return cell;
  return fail({
    code: "outside-table",
    path,
    expected: "a cell the table fills (this one is empty)",
    received: cell,
  });
}

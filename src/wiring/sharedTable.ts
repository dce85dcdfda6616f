/** Tables as the files under shared/tables hold them, and how a cell is found in one. */
import { type ErrorCode, fail } from "../quantity/index.ts";
import type { CodeSystem, Provenance, TableCell, TableKind } from "./result.ts";

/**
 * A table as printed: named columns with units, rows of cells, `null` where the source has none. The same shape for
 * the tables of this library and for those a user brings.
 * @since 0.1.0
 */
export interface SharedTable {
  /** Name of the table, kebab-case. */
  readonly id: string;
  /** What it holds. */
  readonly title: string;
  /** Id of its source in the bibliography, or the user's own words. */
  readonly source: string;
  /** Edition and table number as printed. */
  readonly edition: string;
  /** Date of copying. */
  readonly transcribed?: string;
  /** `published`, `common practice` or `user table`. */
  readonly kind: string;
  /** `seen`, `memory` or `derived`. */
  readonly provenance: string;
  /** Columns in order. A text column named `read` lists the columns of a row that were read in print. */
  readonly columns: readonly {
    /** Name. */
    readonly name: string;
    /** Unit of its figures, as printed. */
    readonly unit: string;
    /** What it holds. */
    readonly meaning: string;
  }[];
  /** Rows, one cell per column. */
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
  /** What a reader should know. */
  readonly note?: string;
}

/**
 * A table with the name its edition gives it.
 * @since 0.1.0
 */
export interface LabelledTable {
  /** Table or clause as the edition names it: "Table 310.16". */
  readonly label: string;
  /** How the label was found; as the figures if left out. */
  readonly labelProvenance?: Provenance;
  /** The figures. */
  readonly table: SharedTable;
}

/** A row of a table. */
export type Row = SharedTable["rows"][number];

/** Columns that hold remarks about a row, not figures. */
export const REMARK_COLUMNS: readonly string[] = ["read", "provenance", "remark", "condition"];

/**
 * Place of a column of figures; an unknown name is answered with the known ones.
 * @param received - what the reader of the error gave, where that is not the name itself
 */
export function columnAt(table: SharedTable, name: string, path: string, received: unknown = name): number {
  // The rows go by their first column, bands also by their upper end.
  const known = table.columns
    .slice(1)
    .filter((column) => column.name !== "to" && !REMARK_COLUMNS.includes(column.name));
  if (known.some((column) => column.name === name))
    return table.columns.findIndex((column) => column.name === name);
  return fail({
    code: nameError(name),
    path,
    expected: `one of ${known.map((column) => column.name).join(", ")} (${table.edition})`,
    received,
  });
}

/** A cell of a named column, or `null` when the table has no such column. */
export function cellAt(table: SharedTable, row: Row, name: string): string | number | null {
  const cell = row[table.columns.findIndex((column) => column.name === name)];
  return typeof cell === "string" || typeof cell === "number" ? cell : null;
}

function provenanceAt(table: SharedTable, row: Row, column: string): Provenance {
  const own = cellAt(table, row, "provenance");
  const read = cellAt(table, row, "read");
  if (typeof read === "string" && read.split(", ").includes(column)) return "seen";
  const said = own ?? table.provenance;
  // A word that is none of the three counts as the weakest.
  return said === "seen" || said === "derived" ? said : "memory";
}

/** What a cell says about itself. */
export function describeCell(input: {
  readonly system: CodeSystem;
  readonly edition: string;
  readonly from: LabelledTable;
  readonly row: Row;
  readonly rowName: string;
  readonly column: string;
}): TableCell {
  const { system, edition, from, row, rowName, column } = input;
  const { table, label } = from;
  const provenance = provenanceAt(table, row, column);
  return {
    system,
    edition,
    table: label,
    row: rowName,
    column,
    value: cellAt(table, row, column),
    unit: (table.columns.find(({ name }) => name === column) as SharedTable["columns"][number]).unit,
    source: table.source,
    kind: table.kind as TableKind,
    provenance,
    labelProvenance: from.labelProvenance ?? provenance,
  };
}

/** A name that was left out, and one that is not known, are different slips. */
export function nameError(received: unknown): ErrorCode {
  return received === undefined || received === null || received === "" ? "missing" : "unknown-name";
}

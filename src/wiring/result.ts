/** The form of every answer of this room: the value, where it stands in print, and who decides. */
import type { Warning } from "../quantity/index.ts";

/**
 * Family of rules an answer belongs to. Figures of two systems are never combined.
 * @since 0.1.0
 */
export type CodeSystem = "North America" | "IEC" | "maker data" | "common practice";

/**
 * What stands behind a table: printed by a standards body or a maker, a habit of the trade, or brought by the user.
 * @since 0.1.0
 */
export type TableKind = "published" | "common practice" | "user table";

/**
 * How a figure came into this library: read in the document or a reprint of it, from memory and checked against
 * an independent law, or worked out.
 * @since 0.1.0
 */
export type Provenance = "seen" | "memory" | "derived";

/**
 * One cell that an answer rests on, so that it can be found again in print.
 * @since 0.1.0
 */
export interface TableCell {
  /** Family of rules. */
  readonly system: CodeSystem;
  /** Edition: "NEC 2023". */
  readonly edition: string;
  /** Table or clause as that edition names it: "Table 310.16". */
  readonly table: string;
  /** Row: "6 AWG", "46 to 50 °C". */
  readonly row: string;
  /** Column: "copper 75". */
  readonly column: string;
  /** The cell as printed. */
  readonly value: number | string | null;
  /** Unit of the cell. */
  readonly unit: string;
  /** Id of the source in the bibliography. */
  readonly source: string;
  /** Published, common practice or the user's own. */
  readonly kind: TableKind;
  /** How the figure was found. */
  readonly provenance: Provenance;
  /** How the name of the table or clause was found: figures are often read where the table is not named. */
  readonly labelProvenance: Provenance;
}

/**
 * An answer from a code, a standard or a named table.
 * @since 0.1.0
 */
export interface CodeResult<T> {
  /** The answer. */
  readonly value: T;
  /** Unit of the answer; empty for a name. */
  readonly unit: string;
  /** Family of rules. */
  readonly system: CodeSystem;
  /** Edition it belongs to. */
  readonly edition: string;
  /** Table or clause that decided. */
  readonly table: string;
  /** Row that decided. */
  readonly row: string;
  /** Column that decided. */
  readonly column: string;
  /** Conditions the deciding table was made for. */
  readonly baseConditions: readonly string[];
  /** The constraint that decided. */
  readonly governing: string;
  /** The weakest kind among the cells used. */
  readonly kind: TableKind;
  /** The weakest provenance among the cells used, their figures and names of tables alike. */
  readonly provenance: Provenance;
  /** Every cell used, the deciding one among them. */
  readonly cells: readonly TableCell[];
  /** Who decides. */
  readonly deferral: string;
  /** What the reader must know before acting on it. */
  readonly cautions: readonly string[];
  /** Doubts about the input or the source, as data. */
  readonly warnings: readonly Warning[];
}

/**
 * The note that goes with every answer of this room.
 * @since 0.1.0
 */
export const DEFERRAL: string =
  "A figure of the edition and table named, for orientation. The code adopted where the equipment stands, the " +
  "maker's instructions and marks, and a licensed electrician decide.";

/** Sentence that goes with whatever rests on a figure nobody here has read in print. */
const FIGURE_FROM_MEMORY =
  "Rests on a figure that was not read in print: confirm it in the edition named before use.";

/** Sentence for figures that were read, under a number that was not. */
const LABEL_FROM_MEMORY =
  "The number of a table or clause was not read in print, the figures were: look it up in the edition named.";

/** Sentence that goes with whatever rests on the user's own figures. */
const OWN_TABLE = "Rests on a table brought by the user; this library has not seen its source.";

/** Said anew of the whole: what a part says of its own cells need not hold for it. */
const ABOUT_CELLS: readonly string[] = [FIGURE_FROM_MEMORY, LABEL_FROM_MEMORY, OWN_TABLE];

const sameCell = (one: TableCell, other: TableCell): boolean =>
  (["edition", "table", "row", "column", "value"] as const).every((field) => one[field] === other[field]);

/** Makes an answer from the cells it rests on; the first is the deciding one, and what two steps rest on is listed once. */
export function codeResult<T>(input: {
  readonly value: T;
  readonly unit: string;
  readonly cells: readonly TableCell[];
  readonly baseConditions: readonly string[];
  readonly governing: string;
  readonly cautions?: readonly string[];
  readonly warnings?: readonly Warning[];
}): CodeResult<T> {
  const { value, unit, baseConditions, governing } = input;
  const { system, edition, table, row, column } = input.cells[0] as TableCell;
  const cells = input.cells.filter((one, i, all) => i === all.findIndex((other) => sameCell(one, other)));
  const has = (test: (cell: TableCell) => boolean): boolean => cells.some(test);
  const kind: TableKind = has((cell) => cell.kind === "user table")
    ? "user table"
    : has((cell) => cell.kind === "common practice")
      ? "common practice"
      : "published";
  const remembered = has((cell) => cell.provenance === "memory");
  const misnamed = has((cell) => cell.labelProvenance === "memory");
  const provenance: Provenance =
    remembered || misnamed ? "memory" : has((cell) => cell.provenance === "derived") ? "derived" : "seen";
  return {
    value,
    unit,
    system,
    edition,
    table,
    row,
    column,
    baseConditions,
    governing,
    kind,
    provenance,
    cells,
    deferral: DEFERRAL,
    cautions: [
      ...new Set([
        ...(kind === "user table" ? [OWN_TABLE] : []),
        ...(remembered ? [FIGURE_FROM_MEMORY] : misnamed ? [LABEL_FROM_MEMORY] : []),
        ...(input.cautions ?? []).filter((one) => !ABOUT_CELLS.includes(one)),
      ]),
    ],
    warnings: input.warnings ?? [],
  };
}

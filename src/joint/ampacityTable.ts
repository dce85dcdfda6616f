/** Published bar ampacities, cell by cell, with the conditions they hold for. */
import c11000 from "../../shared/tables/bar-ampacity-c11000.json" with { type: "json" };
import din from "../../shared/tables/bar-ampacity-din-43671.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  type Amperes,
  amperes,
  checkMeasurable,
  checkOneOf,
  fail,
  given,
  type Meters,
  toInches,
  toMillimeters,
} from "../quantity/index.ts";
import { basisOf, type Cell, cellNumber, JOINT_DEFERRAL, type SharedTable } from "./basis.ts";

/**
 * A published ampacity.
 * @since 0.1.0
 */
export interface PublishedAmpacity {
  /** The ampacity as printed (A). */
  readonly current: Amperes;
  /** What it holds for. */
  readonly conditions: string;
  /** The table. */
  readonly basis: Basis;
  /** To whom it defers. */
  readonly deferral: string;
}

/** "1 1/2" as 1.5. */
function sizeOf(cell: Cell | undefined): number {
  if (typeof cell === "number") return cell;
  return String(cell)
    .split(" ")
    .reduce((sum, part) => {
      const [top = "0", bottom = "1"] = part.split("/");
      return sum + Number(top) / Number(bottom);
    }, 0);
}

const COLUMNS = {
  "c11000-40C": ["rise30", "rise50", "rise65"],
  "din-43671": ["bare", "painted", "bare2", "painted2", "bare3", "painted3", "bare4", "painted4"],
} as const;
const CONDITIONS = {
  "c11000-40C":
    "60 Hz, C11000 bar on edge, still unconfined air at 40 °C (inferred), emissivity 0.4, rise by column",
  "din-43671":
    "AC to 60 Hz, indoors, air 35 °C, bar 65 °C, width vertical, spacing of parallel bars = thickness",
} as const;

/**
 * An ampacity out of a published table, for a size the table has; nothing between sizes, nothing beyond.
 *
 * Tables: `c11000-40C` (columns rise30, rise50, rise65), `din-43671` (bare and painted, for 1 to 4 parallel bars).
 * Air hotter than the table's is not corrected here: use `barAmpacity` for the air beside the furnace.
 * @param input.table - named table
 * @param input.width - bar width (m), more than 0
 * @param input.thickness - bar thickness (m), more than 0
 * @param input.column - column of the table
 * @returns ampacity, conditions, basis, deferral
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `outside-table` for a size the
 *   table lacks, with those it has
 * @source copper association, ampacities of rectangular copper busbars, Table 1; DIN 43671:1975
 * @example
 * ```ts
 * publishedBarAmpacity({ table: "c11000-40C", width: inches(1), thickness: inches(0.125), column: "rise30" }).current // => 270
 * ```
 * @since 0.1.0
 */
export function publishedBarAmpacity(input: {
  readonly table: "c11000-40C" | "din-43671";
  readonly width: Meters;
  readonly thickness: Meters;
  readonly column: string;
}): PublishedAmpacity {
  given(input);
  const { width, thickness } = input;
  const name = checkOneOf("table", input.table, ["c11000-40C", "din-43671"]);
  checkMeasurable("width", width, "m");
  checkMeasurable("thickness", thickness, "m");
  const column = checkOneOf("column", input.column, COLUMNS[name]);
  const table: SharedTable = name === "c11000-40C" ? c11000 : din;
  const at = (one: string): number => table.columns.findIndex((each) => each.name === one);
  const read = name === "c11000-40C" ? toInches : toMillimeters;
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * b;
  const row = table.rows.find(
    (one) =>
      near(read(width), sizeOf(one[at("width")])) && near(read(thickness), sizeOf(one[at("thickness")])),
  );
  if (row === undefined) {
    const sizes = table.rows.map((one) => `${one[at("width")]} × ${one[at("thickness")]}`);
    return fail({
      code: "outside-table",
      path: "width",
      expected: `a size of the table (${name === "c11000-40C" ? "in" : "mm"}): ${sizes.join(", ")}`,
      received: `${read(width)} × ${read(thickness)}`,
    });
  }
  return {
    current: amperes(cellNumber(row, at(column), "column")),
    conditions: CONDITIONS[name],
    basis: basisOf(table),
    deferral: JOINT_DEFERRAL,
  };
}

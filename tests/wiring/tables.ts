/** Tables of the room as they lie in shared/, and the second copy as cells. */
import type { SharedTable } from "electroheat/wiring";
import { readJson } from "../support/shared.ts";
import { printed } from "./printed.ts";

export interface PrintedCell {
  readonly table: string;
  readonly column: string;
  readonly row: string;
  readonly value: number;
  readonly seen: boolean;
}

export const printedCells: readonly PrintedCell[] = printed.flatMap(({ table, basis, columns }) =>
  Object.entries(columns).flatMap(([column, text]) =>
    text.split(" ").map((pair) => {
      const at = pair.lastIndexOf(":");
      const seen = basis.startsWith("seen");
      return { table, column, row: pair.slice(0, at), value: Number(pair.slice(at + 1)), seen };
    }),
  ),
);

export const tableNamed = (id: string): SharedTable => readJson(`shared/tables/${id}.json`) as SharedTable;

/** Figures of a column with the row's first cell, blanks left out. */
export function column(
  id: string,
  name: string,
  key = 0,
): readonly (readonly [key: number, value: number])[] {
  const table = tableNamed(id);
  const at = table.columns.findIndex((one) => one.name === name);
  return table.rows.flatMap((row) => {
    const value = row[at];
    return typeof value === "number" ? [[Number(row[key]), value] as const] : [];
  });
}

/** Columns of figures, without the first and without remarks. */
export function figureColumns(id: string): readonly string[] {
  return tableNamed(id)
    .columns.slice(1)
    .map((one) => one.name)
    .filter((name) => !["read", "provenance", "remark", "condition"].includes(name));
}

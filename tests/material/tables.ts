/** The shipped tables of this room, as rows of numbers by column name. */
import { jsonFiles, readJson, type Table, tableSchema } from "../support/shared.ts";

export function tableOf(id: string): Table {
  return tableSchema.parse(readJson(`shared/tables/${id}.json`));
}

/** Ids of the tables whose name starts with one of the prefixes. */
export function tablesLike(...prefixes: readonly string[]): string[] {
  return jsonFiles("shared/tables")
    .map((path) => path.replace(/^.*\/|\.json$/g, ""))
    .filter((id) => prefixes.some((prefix) => id.startsWith(prefix)));
}

/** Numbers of a column, blanks left out. */
export function numbersOf(id: string, column: string): number[] {
  const { columns, rows } = tableOf(id);
  const index = columns.findIndex(({ name }) => name === column);
  if (index < 0) throw new Error(`${id} has no column ${column}`);
  return rows.map((row) => row[index]).filter((cell) => typeof cell === "number");
}

/** The texts or numbers that name the rows. */
export function keysOf(id: string): (string | number | boolean | null | undefined)[] {
  return tableOf(id).rows.map((row) => row[0]);
}

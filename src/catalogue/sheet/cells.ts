/** Cells: what a spreadsheet hands to a function, and what it takes back. */
import { fail } from "../../quantity/index.ts";
import { isBlank, itemsOf, MOST_VALUES, tooMany } from "../plain.ts";

/**
 * What a cell can hold.
 * @since 0.1.0
 */
export type Cell = number | string | boolean | null;

/** A block of cells; a single cell is a block of one. */
export type Block = readonly (readonly unknown[])[];

/** The block that an argument is: a cell, a row or column, or a rectangle. */
export function blockOf(path: string, argument: unknown): Block {
  if (!Array.isArray(argument)) return [[argument]];
  const rows = itemsOf(path, argument, "a range");
  if (rows.length === 0) return [[undefined]];
  const block = rows.some(Array.isArray)
    ? rows.map((row, i) => (Array.isArray(row) ? itemsOf(`${path}.${i}`, row, "a row of cells") : [row]))
    : [rows];
  const cells = block.reduce((count, row) => count + row.length, 0);
  if (cells > MOST_VALUES) tooMany(path, MOST_VALUES);
  return block;
}

/** Whether a block is one cell. */
export function isOne(block: Block): boolean {
  return block.length === 1 && block[0]?.length === 1;
}

/** The first cell of a block: there always is one, if only a blank. */
export function firstOf(block: Block): unknown {
  return (block[0] as readonly unknown[])[0];
}

/** All cells, row by row, without the blank ones at the end: a range is often longer than what is in it. */
export function cellsOf(block: Block): readonly unknown[] {
  const cells = block.flat();
  let end = cells.length;
  while (end > 0 && isBlank(cells[end - 1])) end -= 1;
  return cells.slice(0, end);
}

/** Rows down to the last one with something in it. */
export function rowsOf(block: Block): Block {
  let end = block.length;
  while (end > 0 && (block[end - 1] as readonly unknown[]).every(isBlank)) end -= 1;
  return block.slice(0, end);
}

/** What a cell shows of a value: numbers, texts and flags as they are, structures as JSON. */
export function cellOf(value: unknown): Cell {
  if (value === undefined || value === null) return null;
  if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
  return JSON.stringify(value);
}

/** A value written as JSON in a cell: what another function of ours may have left there. */
export function jsonIn(path: string, cell: unknown): unknown {
  if (typeof cell !== "string" || !/^\s*[[{]/.test(cell)) return undefined;
  if (cell.length > MOST_VALUES) tooMany(path, MOST_VALUES);
  try {
    return JSON.parse(cell);
  } catch {
    return fail({ code: "malformed-text", path, expected: "JSON, or a range of cells", received: cell });
  }
}

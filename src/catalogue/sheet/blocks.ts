/** From blocks of cells to the structures that functions take: lists, tables of rows, records. */
import { fail } from "../../quantity/index.ts";
import { choiceAmong } from "../alternatives.ts";
import { inside, numberIn, resolved } from "../facts.ts";
import { isBlank } from "../plain.ts";
import type { Shape } from "../shape.ts";
import { type Block, cellsOf, firstOf, isOne, jsonIn, rowsOf } from "./cells.ts";

type Row = Block[number];

/** A column of a table, or a line of a record: a field, dotted into the records inside. */
interface Column {
  readonly path: string;
  readonly shape: Shape;
  readonly optional: boolean;
}

/** Whether a shape is one cell's worth: a number, a name, text, a flag, or one of several such. */
export function isScalar(shape: Shape): boolean {
  const at = resolved(shape);
  if (typeof at === "string") return at !== "opaque";
  if ("either" in at) return at.either.every(isScalar);
  return "number" in at || "names" in at || "values" in at;
}

/** Whether a name may stand in place of a record: the meter's leads "taken off", or their reading. */
function orName(shape: Shape): boolean {
  return inside(shape, "either")?.some((one) => isScalar(one) && one !== "null") === true;
}

/** Fields of a record, those of records inside it dotted; of alternatives, the fields of all. */
export function columnsOf(shape: Shape, prefix = "", depth = 0): readonly Column[] {
  if (depth > 4) return [];
  const all = inside(shape, "either")?.flatMap((one) => columnsOf(one, prefix, depth));
  if (all !== undefined) return all.filter(({ path }, i) => all.findIndex((one) => one.path === path) === i);
  return Object.entries(inside(shape, "record") ?? {}).flatMap(([key, field]) => {
    const optional = key.endsWith("?");
    const path = `${prefix}${optional ? key.slice(0, -1) : key}`;
    const inner = columnsOf(field, `${path}.`, depth + 1);
    return inner.length > 0 && !orName(field) ? inner : [{ path, shape: field, optional }, ...inner];
  });
}

/** Puts a value at a dotted path; the path is one of ours, never a name from a sheet. */
function putAt(into: Record<string, unknown>, path: string, value: unknown, root: string): void {
  const parts = path.split(".");
  const last = parts.pop() as string;
  let at = into;
  for (const part of parts) {
    at[part] ??= {};
    if (typeof at[part] !== "object") {
      fail({
        code: "inconsistent",
        path: `${root}.${path}`,
        expected: `a blank beside ${part}`,
        received: value,
      });
    }
    at = at[part] as Record<string, unknown>;
  }
  at[last] = value;
}

/** A cell where text is wanted: a sheet turns "12" into a number by itself, and elements are numbered oftener than named. */
export function asWritten(shape: Shape, cell: unknown): unknown {
  return resolved(shape) === "text" && typeof cell === "number" && Number.isFinite(cell)
    ? String(cell)
    : cell;
}

/** A cell inside a table: a list may be written as JSON, or as texts with semicolons between them. */
function fieldIn(path: string, shape: Shape, cell: unknown): unknown {
  if (isScalar(shape)) return asWritten(shape, cell);
  const written = jsonIn(path, cell);
  if (written !== undefined) return written;
  if (inside(shape, "list") === undefined) return cell;
  return typeof cell === "string" ? cell.split(";").map((one) => one.trim()) : [cell];
}

function recordFrom(path: string, columns: readonly Column[], cells: readonly unknown[]): unknown {
  const record: Record<string, unknown> = {};
  columns.forEach((column, i) => {
    if (isBlank(cells[i])) return;
    putAt(record, column.path, fieldIn(`${path}.${column.path}`, column.shape, cells[i]), path);
  });
  return record;
}

/** Columns that a first row names; undefined if it is no row of names. */
function headed(columns: readonly Column[], row: readonly unknown[]): readonly Column[] | undefined {
  const named = row.map((cell) => columns.find(({ path }) => path === cell));
  const used = row.filter((cell) => !isBlank(cell));
  if (used.length === 0 || named.filter((one) => one !== undefined).length !== used.length) return undefined;
  // A blank heading over a column leaves that column out.
  return named.map((one) => one ?? { path: "", shape: "null", optional: true });
}

function tableOf(path: string, of: Shape, block: Block): unknown {
  const rows = rowsOf(block);
  const columns = columnsOf(of);
  const heads = headed(columns, rows[0] as Row);
  const taken = heads ?? columns;
  const width = Math.max(0, ...rows.map((row) => row.length));
  if (heads === undefined && width > columns.length) {
    const expected = `columns ${columns.map((column) => column.path).join(", ")}, or a first row that names them`;
    fail({ code: "unknown-field", path, expected, received: `${width} columns` });
  }
  const body = heads === undefined ? rows : rows.slice(1);
  return body.map((row, i) =>
    recordFrom(
      `${path}.${i}`,
      taken,
      row.map((cell, k) => (taken[k]?.path === "" ? undefined : cell)),
    ),
  );
}

/** Whether a block lists names where names or records may stand: cells that are all names, or one column without a heading. */
function listsNames(of: Shape, block: Block): boolean {
  const either = inside(of, "either");
  if (!either?.some(isScalar)) return false;
  const names = either.flatMap((one) => inside(one, "names") ?? []);
  const cells = cellsOf(block);
  if (cells.every((cell) => names.includes(cell as string))) return true;
  return block.every((row) => row.length === 1) && headed(columnsOf(of), block[0] as Row) === undefined;
}

function listOf(path: string, of: Shape, block: Block): unknown {
  if (isScalar(of)) return cellsOf(block).map((cell) => asWritten(of, cell));
  if (listsNames(of, block)) return cellsOf(block).map((cell, i) => jsonIn(`${path}.${i}`, cell) ?? cell);
  if (inside(of, "list") !== undefined || inside(of, "tuple") !== undefined)
    return rowsOf(block).map((row) => cellsOf([row]));
  return tableOf(path, of, block);
}

/** Two columns of names and values; undefined if the first column holds other names. */
function namedLines(columns: readonly Column[], block: Block): readonly [Column, unknown][] | undefined {
  const rows = rowsOf(block).filter((row) => !row.every(isBlank));
  if (rows.length === 0 || rows.some((row) => row.length !== 2)) return undefined;
  const lines = rows.map(([name, value]) => [columns.find(({ path }) => path === name), value] as const);
  return lines.every(([column]) => column !== undefined) ? (lines as [Column, unknown][]) : undefined;
}

/** Values in their order are those of the alternative that the first of them names. */
function meantColumns(shape: Shape, columns: readonly Column[], first: unknown): readonly Column[] {
  const either = inside(shape, "either");
  const choice = either && choiceAmong(either);
  if (choice?.field !== (columns[0] as Column).path) return columns;
  return columnsOf(choice.by.get(first as string) ?? shape);
}

/** A headed table in place of a record: the one list in it of which these are the columns, such as the ohms of a day. */
function listMeant(path: string, columns: readonly Column[], block: Block): unknown {
  const fits = columns.flatMap((column) => {
    const items = inside(column.shape, "list");
    if (items === undefined) return [];
    const inner = columnsOf(items);
    const heads = inner.length < 2 ? undefined : headed(inner, block[0] as Row);
    const whole = inner.every(
      ({ path: name, optional }) => optional || heads?.some((one) => one.path === name),
    );
    return heads !== undefined && whole ? [{ name: column.path, of: items }] : [];
  });
  const [only, ...others] = fits;
  if (only === undefined || others.length > 0) return undefined;
  return { [only.name]: listOf(`${path}.${only.name}`, only.of, block) };
}

function recordOf(path: string, shape: Shape, block: Block): unknown {
  const columns = columnsOf(shape);
  const meant = listMeant(path, columns, block);
  if (meant !== undefined) return meant;
  const lines = namedLines(columns, block);
  if (lines !== undefined) {
    return recordFrom(
      path,
      lines.map(([column]) => column),
      lines.map(([, value]) => value),
    );
  }
  // A record around one list, such as a network around its branches, is written as that list.
  const [only, ...others] = columns.filter(({ optional }) => !optional);
  const items = only && inside(only.shape, "list");
  if (only && items !== undefined && others.length === 0)
    return { [only.path]: listOf(`${path}.${only.path}`, items, block) };
  const rows = rowsOf(block);
  const heads = rows.length === 2 ? headed(columns, rows[0] as Row) : undefined;
  if (heads !== undefined) return (tableOf(path, shape, block) as unknown[])[0];
  const cells = cellsOf(block);
  // A bare number is no flow, though the first field of a flow is its basis.
  if (isOne(block) && typeof cells[0] === "number" && !numberIn((columns[0] as Column).shape))
    return cells[0];
  if (cells.length <= columns.length && (block.length === 1 || block.every((row) => row.length === 1))) {
    return recordFrom(path, meantColumns(shape, columns, cells[0]), cells);
  }
  const expected = `two columns, names and values: ${columns.map((column) => column.path).join(", ")}`;
  return fail({ code: "wrong-type", path, expected, received: `${block.length} rows` });
}

function mapOf(path: string, block: Block): unknown {
  const map: Record<string, unknown> = {};
  for (const row of rowsOf(block)) {
    if (row.every(isBlank)) continue;
    const [name, value] = [asWritten("text", row[0]), row[1]];
    if (row.length !== 2 || typeof name !== "string") {
      fail({ code: "wrong-type", path, expected: "two columns: names and values", received: name });
    }
    if (Object.hasOwn(map, name as string)) {
      fail({ code: "duplicate", path, expected: "each name once", received: name });
    }
    Object.defineProperty(map, name as string, { value, enumerable: true });
  }
  return map;
}

/** Of several shapes the one that a range of cells stands for: the list or map among them. */
export function listAmong(shape: Shape): Shape | undefined {
  return inside(shape, "either")?.find((one) =>
    (["list", "tuple", "map"] as const).some((kind) => inside(one, kind) !== undefined),
  );
}

/** The structure that a block stands for. */
export function structureFrom(path: string, shape: Shape, block: Block): unknown {
  if (cellsOf(block).length === 0) return undefined;
  if (isOne(block)) {
    const written = jsonIn(path, firstOf(block));
    if (written !== undefined) return written;
  }
  const either = inside(shape, "either");
  if (either !== undefined) {
    if (isOne(block) && either.some(isScalar)) return firstOf(block);
    const list = listAmong(shape);
    return list === undefined ? recordOf(path, shape, block) : structureFrom(path, list, block);
  }
  const items = inside(shape, "list") ?? inside(shape, "tuple")?.[0];
  if (items !== undefined) return listOf(path, items, block);
  if (inside(shape, "map") !== undefined) return mapOf(path, block);
  return inside(shape, "record") === undefined ? firstOf(block) : recordOf(path, shape, block);
}

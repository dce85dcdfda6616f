/** From results to blocks of cells: one field picked by name, or all of it as rows. */
import { fail } from "../../quantity/index.ts";
import { type Cell, cellOf } from "./cells.ts";

/**
 * What a sheet function gives back: a cell, or rows of cells to spill.
 * @since 0.1.0
 */
export type Spill = Cell | readonly (readonly Cell[])[];

type Plain = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Plain =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Lines of a record: name and value, records inside it dotted. */
function linesOf(value: Plain, prefix = ""): readonly (readonly [string, unknown])[] {
  return Object.entries(value).flatMap(([key, one]) =>
    isRecord(one) ? linesOf(one, `${prefix}${key}.`) : [[`${prefix}${key}`, one] as const],
  );
}

function tableOf(items: readonly Plain[]): readonly (readonly Cell[])[] {
  const rows = items.map((item) => new Map(linesOf(item)));
  const heads = [...new Set(rows.flatMap((row) => [...row.keys()]))];
  return [heads, ...rows.map((row) => heads.map((head) => cellOf(row.get(head))))];
}

/** The whole of a value as cells. */
function spill(value: unknown): Spill {
  if (Array.isArray(value)) {
    if (value.length === 0) return null;
    if (value.every(isRecord)) return tableOf(value);
    return value.map((item) => (Array.isArray(item) ? item.map(cellOf) : [cellOf(item)]));
  }
  if (isRecord(value)) return linesOf(value).map(([name, one]) => [name, cellOf(one)]);
  return cellOf(value);
}

/** What a path may pick next, for the message when it picks something else. */
function namesIn(at: unknown): string {
  if (isRecord(at)) return `one of ${Object.keys(at).slice(0, 40).join(", ")}`;
  if (Array.isArray(at)) return `an item: 0 to ${at.length - 1}, or [field=value]`;
  return "nothing further";
}

/**
 * The part of a value at a path: names and item numbers with dots between them, `[key=value]` for the first item whose field has that
 * value. The grammar of the paths in shared/README.md.
 */
function partAt(value: unknown, path: string): unknown {
  const step = /\.?([^.[\]]+)|\[([^\]=]+)=([^\]]*)\]/y;
  let at = value;
  while (step.lastIndex < path.length) {
    const match = step.exec(path);
    const refuse = (): never =>
      fail({ code: "unknown-name", path: "field", expected: namesIn(at), received: path });
    if (match === null) return refuse();
    const [, name, key = "", wanted] = match;
    if (typeof at !== "object" || at === null) return refuse();
    if (name !== undefined) {
      if (!Object.hasOwn(at, name)) return refuse();
      at = (at as Plain)[name];
    } else {
      const items: readonly unknown[] = Array.isArray(at) ? at : [];
      const found = items.find((item) => isRecord(item) && String(item[key]) === wanted);
      if (found === undefined) return refuse();
      at = found;
    }
  }
  return at;
}

/** The field of a result that was asked for: a path, `json` for all of it as text, or the whole spilled. */
export function picked(value: unknown, field: string): Spill {
  if (field === "") return spill(value);
  if (field === "json") return JSON.stringify(value);
  return spill(partAt(value, field));
}

/** Writes plain inputs as the cells a person would fill in: lists as columns, tables with a row of names, records as two columns. */
import { resolved } from "../../src/catalogue/facts.ts";
import type { Shape } from "../../src/catalogue/shape.ts";

type Plain = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Plain =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isCell = (value: unknown): boolean => value === null || typeof value !== "object";

function flat(value: Plain, prefix = ""): [string, unknown][] {
  return Object.entries(value).flatMap(([key, one]): [string, unknown][] =>
    isRecord(one) && Object.keys(one).length > 0
      ? flat(one, `${prefix}${key}.`)
      : [[`${prefix}${key}`, isCell(one) ? one : JSON.stringify(one)]],
  );
}

function table(rows: readonly Plain[]): unknown[][] {
  const lines = rows.map((row) => new Map(flat(row)));
  const heads = [...new Set(lines.flatMap((line) => [...line.keys()]))];
  return [heads, ...lines.map((line) => heads.map((head) => line.get(head) ?? ""))];
}

/** The argument of a sheet function for one input. */
export function asCells(shape: Shape, value: unknown): unknown {
  if (isCell(value)) return value;
  const at = resolved(shape);
  if (Array.isArray(value)) {
    if (value.length === 0) return "[]";
    if (value.every(isCell)) return value.map((item) => [item]);
    if (value.every((row) => Array.isArray(row) && row.length > 0 && row.every(isCell))) return value;
    if (value.every(isRecord)) return table(value);
    return JSON.stringify(value);
  }
  if (!isRecord(value)) return value;
  if (typeof at === "object" && "map" in at) return Object.entries(value);
  const keys = Object.keys(value);
  const only = value[keys[0] ?? ""];
  // A network is its table of branches.
  if (keys.length === 1 && Array.isArray(only) && only.every(isRecord) && only.length > 0) return table(only);
  return keys.length === 0 ? "{}" : flat(value).map((line) => [...line]);
}

/** The gate every table passes, ours in the tests and a user's at each call: shape, keys, bounds, order. */
import { type ErrorCode, type Issue, issue } from "../quantity/index.ts";
import type { Provenance, TableKind } from "./result.ts";
import { REMARK_COLUMNS } from "./sharedTable.ts";

/** What a table of a given use must hold beyond the shape common to all. */
export interface TableUse {
  /** Columns that must be there. */
  readonly required: readonly string[];
  /** What the other columns must be named like, in words and as a pattern; none others allowed when absent. */
  readonly others?: { readonly pattern: RegExp; readonly words: string };
  /** Text columns among the required. */
  readonly text?: readonly string[];
  /** Columns whose figures rise from row to row. */
  readonly rising?: readonly string[];
  /** Columns that may be empty in some rows. */
  readonly mayBeNull?: readonly string[];
  /** How the figures of the other columns run down the rows, blanks skipped. */
  readonly run?: "rising" | "falling";
  /** Largest figure of the other columns. */
  readonly most: number;
}

type Collect = (code: ErrorCode, path: string, expected: string, received: unknown) => void;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Longest text that a field of a table may hold. */
export const LONGEST_TEXT = 500;
/** What may stand behind a table. */
export const KINDS: readonly TableKind[] = ["published", "common practice", "user table"];
/** How its figures may have been found. */
export const PROVENANCES: readonly Provenance[] = ["seen", "memory", "derived"];

export const isText = (value: unknown): value is string =>
  typeof value === "string" && value.trim() !== "" && value.length <= LONGEST_TEXT;

/** Collects issues instead of throwing at the first, so that a user repairs his table in one go. */
export function collector(): { readonly issues: Issue[]; readonly add: Collect } {
  const issues: Issue[] = [];
  return {
    issues,
    add: (code, path, expected, received) => {
      issues.push(issue({ code, path, expected, received }));
    },
  };
}

/** A missing value and a wrong one are different slips. */
export const codeFor = (value: unknown): ErrorCode =>
  value === undefined || value === null || value === "" ? "missing" : "wrong-type";

function checkHead(path: string, table: Readonly<Record<string, unknown>>, add: Collect): void {
  for (const field of ["id", "title", "source", "edition"]) {
    if (!isText(table[field])) add(codeFor(table[field]), `${path}.${field}`, "text", table[field]);
  }
  const choices: Readonly<Record<string, readonly string[]>> = { kind: KINDS, provenance: PROVENANCES };
  for (const [field, names] of Object.entries(choices)) {
    const value = table[field];
    if (!names.includes(value as string)) {
      add(
        codeFor(value) === "missing" ? "missing" : "unknown-name",
        `${path}.${field}`,
        `one of ${names.join(", ")}`,
        value,
      );
    }
  }
}

function columnNames(path: string, table: Readonly<Record<string, unknown>>, add: Collect): string[] {
  const { columns } = table;
  if (!Array.isArray(columns) || columns.length === 0) {
    add(codeFor(columns), `${path}.columns`, "a list of columns with name, unit and meaning", columns);
    return [];
  }
  return columns.map((column: unknown, i) => {
    const { name, unit } = isRecord(column) ? column : { name: undefined, unit: undefined };
    if (!isText(name)) add(codeFor(name), `${path}.columns.${i}.name`, "text", name);
    if (typeof unit !== "string") add(codeFor(unit), `${path}.columns.${i}.unit`, "a unit as text", unit);
    return String(name);
  });
}

function checkColumnNames(path: string, names: readonly string[], use: TableUse, add: Collect): void {
  names.forEach((name, i) => {
    const known =
      use.required.includes(name) || REMARK_COLUMNS.includes(name) || use.others?.pattern.test(name);
    const expected = [...use.required, ...(use.others === undefined ? [] : [use.others.words])].join(", ");
    if (!known) add("unknown-name", `${path}.columns.${i}.name`, expected, name);
    if (names.indexOf(name) !== i) add("duplicate", `${path}.columns.${i}.name`, "each name once", name);
  });
  for (const name of use.required) {
    if (!names.includes(name)) add("missing", `${path}.columns`, `a column named ${name}`, undefined);
  }
}

function checkCell(path: string, name: string, cell: unknown, use: TableUse, add: Collect): void {
  if (REMARK_COLUMNS.includes(name)) return;
  const own = use.required.includes(name);
  if (cell === null) {
    if (own && !use.mayBeNull?.includes(name)) add("missing", path, "a value", cell);
  } else if (use.text?.includes(name)) {
    if (!isText(String(cell))) add(codeFor(cell), path, "text", cell);
  } else if (typeof cell !== "number" || !Number.isFinite(cell)) {
    add("not-a-number", path, "a finite number, or null for none", cell);
  } else if (!own && !(cell > 0 && cell <= use.most)) {
    add("out-of-range", path, `more than 0, up to ${use.most}`, cell);
  }
}

/** Figures of one column against the one before, blanks skipped; a column that must rise may not repeat. */
function checkRun(
  path: string,
  rows: readonly (readonly unknown[])[],
  at: number,
  run: "strict" | "rising" | "falling",
  add: Collect,
): void {
  let before: number | undefined;
  rows.forEach((row, i) => {
    const cell = row[at];
    if (typeof cell !== "number") return;
    const fits =
      before === undefined ||
      (run === "strict" ? cell > before : run === "rising" ? cell >= before : cell <= before);
    if (!fits) {
      const word = run === "strict" ? "more than" : run === "rising" ? "at least" : "at most";
      add("inconsistent", `${path}.rows.${i}.${at}`, `${word} the ${before} of the row before`, cell);
    }
    before = cell;
  });
}

/** Adds an issue for everything wrong with a table. */
export function checkTable(path: string, table: unknown, use: TableUse, add: Collect): void {
  if (!isRecord(table)) {
    add(codeFor(table), path, "a table", table);
    return;
  }
  checkHead(path, table, add);
  const names = columnNames(path, table, add);
  if (names.length === 0) return;
  checkColumnNames(path, names, use, add);
  const rows: unknown = table["rows"];
  if (!Array.isArray(rows) || rows.length === 0) {
    add(codeFor(rows), `${path}.rows`, "a list of rows", rows);
    return;
  }
  const whole: (readonly unknown[])[] = [];
  rows.forEach((row: unknown, i) => {
    if (!Array.isArray(row) || row.length !== names.length) {
      add("wrong-type", `${path}.rows.${i}`, `a list of ${names.length} cells`, row);
      return;
    }
    whole.push(row);
    row.forEach((cell: unknown, j) => {
      checkCell(`${path}.rows.${i}.${j}`, names[j] as string, cell, use, add);
    });
  });
  names.forEach((name, at) => {
    if (use.rising?.includes(name)) checkRun(path, whole, at, "strict", add);
    else if (!use.required.includes(name) && !REMARK_COLUMNS.includes(name) && use.run !== undefined)
      checkRun(path, whole, at, use.run, add);
  });
  if (use.text?.includes(use.required[0] as string) && use.run !== undefined) {
    const keys = whole.map((row) => String(row[0]));
    keys.forEach((key, i) => {
      if (keys.indexOf(key) !== i) add("duplicate", `${path}.rows.${i}.0`, "each row once", key);
    });
  }
}

/** Sheet functions: every entry as a flat function of cells, with what an add-in needs to register it. */
import type { Entry, Input } from "../describe.ts";
import { allEntries } from "../entries/index.ts";
import { outputUnit } from "../evaluate.ts";
import { inside } from "../facts.ts";
import type { ValueNote } from "../note.ts";
import { rangeWords, shapeWords } from "../read.ts";
import type { Shape } from "../shape.ts";
import { columnsOf, isScalar, listAmong } from "./blocks.ts";
import { callWithCells, isStructured, type SheetAnswer } from "./call.ts";
import type { Cell } from "./cells.ts";
import type { Spill } from "./spill.ts";

/**
 * One argument of a sheet function.
 * @since 0.1.0
 */
export interface SheetParameter {
  /** Name, as in the function's argument object. */
  readonly name: string;
  /** One cell (a range of cells is gone through cell by cell), a list, a table of rows, or a record of names and values. */
  readonly takes: "cell" | "list" | "table" | "record";
  /** What is allowed, in words. */
  readonly expected: string;
  /** Unit of a plain number; text may carry another ("36 kW"). Empty where there is none. */
  readonly unit: string;
  /** Whether it may be blank. */
  readonly optional: boolean;
  /** Columns of a table, lines of a record; empty otherwise. */
  readonly columns: readonly string[];
}

/**
 * One entry as a function of cells.
 * @since 0.1.0
 */
export interface SheetFunction {
  /** `room.functionName`. */
  readonly id: string;
  /** The function's own name. A sheet may put a prefix before it; capitals do not matter there. */
  readonly name: string;
  /** Arguments in their order. Where `fields` is true, the name of a field may follow as the last one. */
  readonly parameters: readonly SheetParameter[];
  /** Unit of a plain number that comes out; empty where there is none. */
  readonly unit: string;
  /** Whether the result has fields to pick from or to spill. */
  readonly fields: boolean;
  /** Value and status for the given cells; never throws. */
  readonly answer: (...cells: readonly unknown[]) => SheetAnswer;
}

/** Unit of a number, or of the numbers of a list. */
function unitIn(shape: Shape, note: ValueNote): string {
  const items = inside(listAmong(shape) ?? shape, "list");
  return outputUnit(shape, note) || (items === undefined ? "" : unitIn(items, note.each ?? {}));
}

/** What each row of a range stands for: the items of a list, the first of a tuple. */
function itemsIn(shape: Shape): Shape | undefined {
  const at = listAmong(shape) ?? shape;
  return inside(at, "list") ?? inside(at, "tuple")?.[0];
}

/** The one table that a record is written as when nothing else in it is needed, such as the branches of a network. */
function onlyTable(shape: Shape): Shape | undefined {
  const [only, ...others] = columnsOf(shape).filter(({ optional }) => !optional);
  return only && others.length === 0 && takesOf(only.shape) === "table" ? only.shape : undefined;
}

function takesOf(shape: Shape): SheetParameter["takes"] {
  if (isScalar(shape)) return "cell";
  const items = itemsIn(shape);
  if (items !== undefined) return isScalar(items) ? "list" : "table";
  return onlyTable(shape) === undefined ? "record" : "table";
}

function columnNames(shape: Shape): readonly string[] {
  const items = itemsIn(shape) ?? shape;
  const table = onlyTable(items);
  return table === undefined ? columnsOf(items).map(({ path }) => path) : columnNames(table);
}

function parameterOf(input: Input): SheetParameter {
  const { name, shape, optional, note } = input;
  const number = inside(shape, "number") !== undefined;
  return {
    name,
    takes: takesOf(shape),
    expected: number ? rangeWords(note) : shapeWords(shape, note),
    unit: unitIn(shape, note),
    optional,
    columns: columnNames(shape),
  };
}

function functionOf(entry: Entry): SheetFunction {
  return {
    id: entry.id,
    name: entry.note.sheetName ?? entry.name,
    parameters: entry.inputs.map(parameterOf),
    unit: outputUnit(entry.output, entry.note.output),
    fields: isStructured(entry),
    answer: (...cells) => callWithCells(entry, cells),
  };
}

/**
 * Every calculation as a function of cells, with what an add-in needs to register it: names, arguments, units.
 *
 * Arguments come in catalogue order. A range where one value is wanted is gone through cell by cell, with single rows and columns
 * stretched to fit. A blank is missing, never 0; true and false are no numbers; text may carry a unit ("132 lbf·in", "2/0 AWG"). A
 * table is a range of rows, with or without a first row of names; a record is two columns of names and values; either may be the JSON text
 * that another of these functions left in a cell. A result with fields spills as rows, or as the one field whose name is given last: a
 * path such as `branches[id=A-L1].power`, or `json` for all of it as text.
 * @returns the functions
 * @example
 * ```ts
 * const lineCurrent = sheetFunctions().find((one) => one.name === "lineCurrent");
 * lineCurrent?.answer("36 kW", [[480], [400]])
 * // => { value: [[43.3013], [51.9615]], status: [["ok"], ["ok"]], code: null }
 * ```
 * @since 0.1.0
 */
export function sheetFunctions(): readonly SheetFunction[] {
  return allEntries().map(functionOf);
}

function byName(name: unknown): SheetFunction | undefined {
  const asked = typeof name === "string" ? name.toLowerCase() : "";
  const entry = allEntries().find(
    (one) => (one.note.sheetName ?? one.name).toLowerCase() === asked || one.id.toLowerCase() === asked,
  );
  return entry && functionOf(entry);
}

const NO_FUNCTION = "name: no such function";

/** Value where there is one; elsewhere the status, so that arithmetic on it fails in the sheet's own way. */
function valueOrStatus({ value, status, code }: SheetAnswer): Spill {
  if (typeof status === "string") return code === null ? value : status;
  const rows = value as readonly (readonly Cell[])[];
  const told = (state: string | undefined): Cell =>
    state === undefined || state === "ok" || state.startsWith("warning: ") ? null : state;
  return rows.map((row, i) => row.map((cell, k) => cell ?? told(status[i]?.[k])));
}

/**
 * Value of a calculation for a cell; where there is none, the text that says why.
 * @param name - the function's name in any capitals, or its id
 * @param cells - arguments in catalogue order
 * @returns a value, rows to spill, or text
 * @example
 * ```ts
 * sheetValue("lineCurrent", 36_000, "") // => "lineVoltage: missing; expected more than 0 V"
 * ```
 * @since 0.1.0
 */
export function sheetValue(name: unknown, ...cells: readonly unknown[]): Spill {
  const found = byName(name);
  return found === undefined ? NO_FUNCTION : valueOrStatus(found.answer(...cells));
}

/**
 * Status of a calculation for a cell: `"ok"`, a warning, or why there is no value.
 * @param name - the function's name in any capitals, or its id
 * @param cells - arguments in catalogue order
 * @returns text, or rows of texts for a call that is gone through cell by cell
 * @example
 * ```ts
 * sheetStatus("lineCurrent", 36_000, 480) // => "ok"
 * ```
 * @since 0.1.0
 */
export function sheetStatus(name: unknown, ...cells: readonly unknown[]): SheetAnswer["status"] {
  return byName(name)?.answer(...cells).status ?? NO_FUNCTION;
}

/** Any calculation over columns: a table in, a table out, and a status for each row instead of an error in its middle. */
import { checkWhole, fail, given } from "../quantity/index.ts";
import {
  argumentFrom,
  BARE,
  type Calculation,
  checkCalculation,
  outputNames,
  outputReader,
} from "./calculation.ts";
import {
  AT_A_TIME,
  anyRows,
  MOST_OUTPUTS,
  numbersOfColumns,
  numbersOfRows,
  type OtherRows,
  recordsOfColumns,
  recordsOfRows,
  WIDEST,
} from "./rowLoops.ts";
import { type RowStatus, StatusTable } from "./rowStatus.ts";

/**
 * What a column of input may be: any typed array of numbers, or a list that may also hold text (`"open"`, a name). A blank
 * cell is missing, as everywhere; infinity is not read as an open circuit.
 * @since 0.1.0
 */
export type InputColumn = ArrayLike<unknown>;

/**
 * Result of {@link evaluateColumns}.
 * @since 0.1.0
 */
export interface EvaluatedColumns {
  /** Rows in every column. */
  readonly rows: number;
  /** One column for each output. NaN in rows whose status is not 0, and nowhere else. */
  readonly columns: Readonly<Record<string, Float64Array>>;
  /** 0 where every output is a number; else the number of an entry of `statuses`. */
  readonly status: Uint8Array;
  /** The statuses that occur, in the order in which they were met. */
  readonly statuses: readonly RowStatus[];
  /** Rows whose status is not 0. */
  readonly failed: number;
}

function lengthOf(names: readonly string[], columns: readonly InputColumn[]): number {
  names.forEach((name, i) => {
    const column = columns[i] as unknown;
    const listed =
      Array.isArray(column) ||
      (ArrayBuffer.isView(column) && !(column instanceof DataView) && "length" in column);
    if (!listed) {
      fail({
        code: "wrong-type",
        path: `columns.${name}`,
        expected: "an array or a typed array",
        received: column,
      });
    }
  });
  const [first] = columns;
  if (first === undefined) {
    return fail({ code: "missing", path: "columns", expected: "at least one column", received: undefined });
  }
  const odd = columns.findIndex((column) => column.length !== first.length);
  if (odd > 0) {
    const path = `columns.${names[odd]}`;
    const expected = `${first.length} rows, like ${names[0]}`;
    fail({ code: "inconsistent", path, expected, received: columns[odd]?.length });
  }
  return first.length;
}

/** What the row loop needs to know. */
interface Table {
  readonly calculation: (input: never) => unknown;
  /** The one argument, written anew for each row; undefined where the calculation takes the row number. */
  readonly argument: Record<string, unknown> | undefined;
  readonly names: readonly string[];
  readonly columns: readonly InputColumn[];
  readonly rows: number;
}

/** Rows that are not plain numbers: NaN with a status in each output that is none; the first trouble of a row is its status. */
class Others implements OtherRows {
  private readonly outputs: readonly string[];
  private readonly targets: readonly Float64Array[];
  private readonly status: Uint8Array;
  private readonly statuses: StatusTable;
  private readonly readers: readonly ((result: unknown) => unknown)[];

  constructor(
    outputs: readonly string[],
    targets: readonly Float64Array[],
    status: Uint8Array,
    statuses: StatusTable,
  ) {
    this.outputs = outputs;
    this.targets = targets;
    this.status = status;
    this.statuses = statuses;
    this.readers = outputs.map(outputReader);
  }

  refused(row: number, error: unknown): void {
    this.status[row] = this.statuses.noteError(row, error);
    for (const target of this.targets) target[row] = Number.NaN;
  }

  looked(row: number, result: unknown): void {
    this.targets.forEach((target, k) => {
      const value = (this.readers[k] as (result: unknown) => unknown)(result);
      const fine = typeof value === "number" && Number.isFinite(value);
      target[row] = fine ? value : Number.NaN;
      if (fine || this.status[row] !== 0) return;
      this.status[row] = this.statuses.noteValue(row, this.outputs[k] as string, value);
    });
  }
}

/** All rows, by the loop that fits. */
function run(
  table: Table,
  outputs: readonly string[],
  status: Uint8Array,
  statuses: StatusTable,
): Float64Array[] {
  const { argument, names, columns, rows } = table;
  const calculation = table.calculation as (input: unknown) => unknown;
  const targets = outputs.map(() => new Float64Array(rows));
  const others = new Others(outputs, targets, status, statuses);
  const width = names.length;
  const count = outputs.length;
  const bare = count === 1 && outputs[0] === BARE;
  const plain = count > 0 && count <= MOST_OUTPUTS && !outputs.some((output) => output.includes("."));
  // Beyond the width and the count nothing is read.
  const [n0, n1, n2, n3] = names as [string, string, string, string];
  const [c0, c1, c2, c3] = columns as [InputColumn, InputColumn, InputColumn, InputColumn];
  const [o0, o1, o2] = outputs as [string, string, string];
  const [t0, t1, t2] = targets as [Float64Array, Float64Array, Float64Array];
  const narrow = argument !== undefined && width <= WIDEST;
  const some = (from: number, to: number): void => {
    if (bare && argument === undefined) numbersOfRows(calculation, t0, others, from, to);
    else if (plain && argument === undefined)
      recordsOfRows(calculation, count, o0, o1, o2, t0, t1, t2, others, from, to);
    else if (bare && narrow)
      numbersOfColumns(calculation, argument, width, n0, n1, n2, n3, c0, c1, c2, c3, t0, others, from, to);
    else if (plain && narrow)
      // biome-ignore format: one line for each kind of parameter
      recordsOfColumns(
        calculation, argument, width, n0, n1, n2, n3, c0, c1, c2, c3,
        count, o0, o1, o2, t0, t1, t2, others, from, to,
      );
    else anyRows(calculation, argument, names, columns, others, from, to);
  };
  for (let from = 0; from < rows; from += AT_A_TIME) some(from, Math.min(rows, from + AT_A_TIME));
  return targets;
}

/** The outputs of the first row that gives any; nothing where no row does. */
function discovered(table: Table): readonly string[] {
  const { argument, names, columns, rows } = table;
  const calculation = table.calculation as (input: unknown) => unknown;
  for (let row = 0; row < rows; row += 1) {
    names.forEach((name, c) => {
      (argument as Record<string, unknown>)[name] = (columns[c] as InputColumn)[row];
    });
    try {
      return outputNames(calculation(argument ?? row), undefined);
    } catch {
      // Its status is set when the rows are run.
    }
  }
  return [];
}

function evaluated(table: Table, wanted: readonly string[] | undefined): EvaluatedColumns {
  const status = new Uint8Array(table.rows);
  const statuses = new StatusTable(table.names);
  const outputs = wanted === undefined ? discovered(table) : outputNames(undefined, wanted);
  const found = run(table, outputs, status, statuses);
  return {
    rows: table.rows,
    columns: Object.fromEntries(outputs.map((name, k) => [name, found[k] as Float64Array])),
    status,
    statuses: statuses.list,
    failed: statuses.failed,
  };
}

/**
 * Evaluates any calculation over columns, row by row, and never stops in the middle: a row that is refused gets a status.
 *
 * Fields in `fixed` are the same in every row. The outputs come as `Float64Array`; a row whose status is not 0 holds NaN, the
 * one place in the library where NaN stands for "see the status": a sum over the column then shows that something is missing,
 * where a 0 would hide it. An open circuit goes in as the text `"open"` in a list (typed arrays cannot say it), and comes out
 * as the status `open`. The calculation is handed one object that is written anew for each row and must not keep it.
 * @param input.calculation - the calculation
 * @param input.columns - columns by the name of their field, all of one length
 * @param input.fixed - the other fields of the argument
 * @param input.outputs - names of outputs, dots leading into records; left out, the bare number, or the fields that are numbers
 *   in the first row that gives any
 * @returns output columns, status column and what the statuses mean
 * @throws ElectroheatError `missing`, `wrong-type`, `inconsistent`, `duplicate`, `unknown-field` for the question itself; never for a
 *   row
 * @source definition
 * @example
 * ```ts
 * evaluateColumns({
 *   calculation: powerFromVoltageAndResistance,
 *   columns: { resistance: [12.8, 25.6, -1] },
 *   fixed: { voltage: volts(480) },
 * }).columns["result"]?.[1] // => 9000
 * ```
 * @since 0.1.0
 */
export function evaluateColumns<I extends object>(input: {
  readonly calculation: Calculation<I>;
  readonly columns: { readonly [K in keyof NoInfer<I>]?: InputColumn };
  readonly fixed?: Partial<NoInfer<I>>;
  readonly outputs?: readonly string[];
}): EvaluatedColumns {
  const { calculation, fixed } = given(input);
  checkCalculation(calculation);
  const entries = Object.entries(given(input.columns as Record<string, InputColumn>, "columns")).filter(
    ([, column]) => (column as unknown) !== undefined,
  );
  const names = entries.map(([name]) => name);
  const columns = entries.map(([, column]) => column);
  const rows = lengthOf(names, columns);
  const argument = argumentFrom(fixed, names, "columns");
  // A fraction first: the engine then keeps the field as a double and writes into it without a new box for each row.
  for (const name of names) argument[name] = 0.5;
  return evaluated({ calculation, argument, names, columns, rows }, input.outputs);
}

/**
 * Evaluates a function of the row number, with the same output columns and statuses as `evaluateColumns`.
 *
 * For columns that need work of their own before the call, and for speed: the call is then compiled where you wrote it, also
 * in a program that runs many calculations over columns.
 * @param input.rows - number of rows, 0 to 2^31 − 1
 * @param input.evaluate - gives the result of a row from its number, from 0
 * @param input.outputs - names of outputs, dots leading into records; left out, the bare number, or the fields that are numbers
 *   in the first row that gives any
 * @returns output columns, status column and what the statuses mean
 * @throws ElectroheatError `missing`, `wrong-type`, `out-of-range`, `duplicate` for the question itself; never for a row
 * @source definition
 * @example
 * ```ts
 * const resistance = [12.8, 25.6];
 * evaluateRows({
 *   rows: 2,
 *   evaluate: (row) => powerFromVoltageAndResistance({ voltage: volts(480), resistance: ohms(resistance[row] ?? 0) }),
 * }).columns["result"]?.[1] // => 9000
 * ```
 * @since 0.1.0
 */
export function evaluateRows(input: {
  readonly rows: number;
  readonly evaluate: (row: number) => unknown;
  readonly outputs?: readonly string[];
}): EvaluatedColumns {
  const { rows, evaluate, outputs } = given(input);
  checkWhole("rows", rows, 0, 2 ** 31 - 1);
  checkCalculation(evaluate, "evaluate");
  return evaluated({ calculation: evaluate, argument: undefined, names: [], columns: [], rows }, outputs);
}

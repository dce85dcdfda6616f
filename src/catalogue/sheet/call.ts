/** A call from a cell: blocks of cells in, a value and a status out. Never throws. */
import { type ErrorCode, fail, isElectroheatError } from "../../quantity/index.ts";
import type { Entry, Input } from "../describe.ts";
import { type Evaluation, evaluateEntry } from "../evaluate.ts";
import { isBlank, LONGEST_TEXT, MOST_VALUES, tooMany } from "../plain.ts";
import { asWritten, isScalar, structureFrom } from "./blocks.ts";
import { type Block, blockOf, type Cell, firstOf, isOne } from "./cells.ts";
import { picked, type Spill } from "./spill.ts";

/**
 * What a sheet function answers.
 * @since 0.1.0
 */
export interface SheetAnswer {
  /** The value, or rows of cells to spill; null where there is none. */
  readonly value: Spill;
  /** `"ok"`, a warning, or why there is no value; one for each cell of a broadcast call. */
  readonly status: string | readonly (readonly string[])[];
  /** Code of the first error, for a host with errors of its own; null if there is a value in every cell. */
  readonly code: ErrorCode | "unexpected" | null;
}

interface Single {
  readonly value: Spill;
  readonly status: string;
  readonly code: SheetAnswer["code"];
}

interface Argument {
  readonly input: Input;
  readonly block: Block;
  readonly scalar: boolean;
}

/** Whether a result has fields to pick from. */
export function isStructured(entry: Entry): boolean {
  return !isScalar(entry.output);
}

function failure(error: unknown): Single {
  if (isElectroheatError(error)) return { value: null, status: error.message, code: error.code };
  return { value: null, status: "a cell that refuses to be read", code: "wrong-type" };
}

function answerOf(evaluation: Evaluation, field: string): Single {
  if (!evaluation.ok) {
    const { message, code } = evaluation.error;
    return { value: null, status: message, code };
  }
  try {
    const warnings = evaluation.warnings.map(({ message }) => message);
    const status = warnings.length === 0 ? "ok" : `warning: ${warnings.join(" ")}`;
    return { value: picked(evaluation.value, field), status, code: null };
  } catch (error) {
    return failure(error);
  }
}

function argumentsOf(entry: Entry, cells: readonly unknown[]): readonly Argument[] {
  const most = entry.inputs.length + (isStructured(entry) ? 1 : 0);
  const extra = cells.slice(most).find((cell) => !isBlank(cell));
  if (extra !== undefined) {
    fail({
      code: "unknown-field",
      path: "arguments",
      expected: `at most ${most} arguments`,
      received: extra,
    });
  }
  return entry.inputs.map((input, i) => ({
    input,
    block: blockOf(input.name, cells[i]),
    scalar: isScalar(input.shape),
  }));
}

function fieldOf(entry: Entry, cells: readonly unknown[]): string {
  const cell = isStructured(entry) ? cells[entry.inputs.length] : undefined;
  const block = blockOf("field", cell);
  const field = firstOf(block);
  if (isBlank(field)) return "";
  if (isOne(block) && typeof field === "string" && field.length <= LONGEST_TEXT) return field;
  return fail({ code: "wrong-type", path: "field", expected: "the name of a field", received: field });
}

/** Rows and columns of the answer: those of the ranges given where one value is wanted. */
function sizeOf(given: readonly Argument[]): readonly [number, number] {
  let [rows, columns] = [1, 1];
  for (const { input, block, scalar } of given) {
    if (!scalar || isOne(block)) continue;
    const [high, wide] = [block.length, (block[0] as Block[number]).length];
    const fits = (own: number, other: number): boolean => own === 1 || other === 1 || own === other;
    if (!fits(high, rows) || !fits(wide, columns)) {
      const expected = `a range of ${rows} by ${columns}, one row or column of it, or one cell`;
      fail({ code: "inconsistent", path: input.name, expected, received: `${high} by ${wide}` });
    }
    rows = Math.max(rows, high);
    columns = Math.max(columns, wide);
  }
  if (rows * columns > MOST_VALUES) tooMany("arguments", MOST_VALUES);
  return [rows, columns];
}

function cellAt(block: Block, row: number, column: number): unknown {
  const line = block[block.length === 1 ? 0 : row] as Block[number];
  return line[line.length === 1 ? 0 : column];
}

/**
 * Calls an entry with cells: scalars, ranges where a list or table is wanted, ranges of scalars to be gone through cell by cell.
 * @param entry - the entry
 * @param cells - arguments in catalogue order; for a result with fields, the name of one may follow
 */
export function callWithCells(entry: Entry, cells: readonly unknown[]): SheetAnswer {
  try {
    const given = argumentsOf(entry, cells);
    const field = fieldOf(entry, cells);
    const structures = given.map(({ input, block, scalar }) =>
      scalar ? undefined : structureFrom(input.name, input.shape, block),
    );
    const one = (row: number, column: number): Single => {
      const inputs: Record<string, unknown> = {};
      given.forEach(({ input, block, scalar }, i) => {
        inputs[input.name] = scalar ? asWritten(input.shape, cellAt(block, row, column)) : structures[i];
      });
      return answerOf(evaluateEntry(entry, inputs), field);
    };
    const [rows, columns] = sizeOf(given);
    return rows * columns === 1 ? one(0, 0) : broadcast(one, rows, columns);
  } catch (error) {
    return failure(error);
  }
}

function broadcast(one: (row: number, column: number) => Single, rows: number, columns: number): SheetAnswer {
  const value: Cell[][] = [];
  const status: string[][] = [];
  let code: SheetAnswer["code"] = null;
  for (let row = 0; row < rows; row += 1) {
    const [values, states]: [Cell[], string[]] = [[], []];
    for (let column = 0; column < columns; column += 1) {
      const single = one(row, column);
      const flat = !Array.isArray(single.value);
      values.push(flat ? (single.value as Cell) : null);
      states.push(flat ? single.status : "field: missing; expected the name of one field of the result");
      code ??= flat ? single.code : "missing";
    }
    value.push(values);
    status.push(states);
  }
  return { value, status, code };
}

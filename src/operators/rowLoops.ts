/**
 * The loops over rows, each written out for up to four columns and three outputs, for some of the rows at a time.
 *
 * Every name, column and output is a parameter with a place of its own in the code: the engine then compiles a write by name into a
 * plain store and takes the calculation itself into the loop. Such a loop by itself took 0.9 to 1.1 times a loop written by hand; with
 * lists of names and columns instead of parameters 1.3 to 2 times, with a pass for each output 5 times. Entered once for all rows it
 * stays in the engine's stopgap for running loops, 1.6 times: hence some rows at a time. Where the program calls the calculation elsewhere
 * too, its argument has two layouts and each field that it reads is boxed: two to four times the time by hand (docs/benchmarks.md).
 */
/** Takes the rows that are not plain numbers: a refusal, or a result that needs a closer look. */
export interface OtherRows {
  /** The calculation threw. */
  refused(row: number, error: unknown): void;
  /** The result is no number, or not all of it; reads each output and gives the row its status. */
  looked(row: number, result: unknown): void;
}

type Column = ArrayLike<unknown>;
type Calls = (argument: unknown) => unknown;
type Cells = Record<string, unknown>;
type Fields = Readonly<Record<string, unknown>>;

/** One subtraction tells a finite number from everything else. */
const isNumber = (value: unknown): value is number => typeof value === "number" && value - value === 0;

/** Rows of one call. */
export const AT_A_TIME = 1024;
/** Columns that the loops over one argument have written out. */
export const WIDEST = 4;
/** Outputs that the loops over records have written out. */
export const MOST_OUTPUTS = 3;

/** Calculations of an argument that give a bare number. */
export function numbersOfColumns(
  calculation: Calls,
  cells: Cells,
  width: number,
  n0: string,
  n1: string,
  n2: string,
  n3: string,
  c0: Column,
  c1: Column,
  c2: Column,
  c3: Column,
  t0: Float64Array,
  others: OtherRows,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    try {
      cells[n0] = c0[row];
      if (width > 1) cells[n1] = c1[row];
      if (width > 2) cells[n2] = c2[row];
      if (width > 3) cells[n3] = c3[row];
      const result = calculation(cells);
      if (isNumber(result)) t0[row] = result;
      else others.looked(row, result);
    } catch (error) {
      others.refused(row, error);
    }
  }
}

/** Calculations of an argument that give a record. */
export function recordsOfColumns(
  calculation: Calls,
  cells: Cells,
  width: number,
  n0: string,
  n1: string,
  n2: string,
  n3: string,
  c0: Column,
  c1: Column,
  c2: Column,
  c3: Column,
  count: number,
  o0: string,
  o1: string,
  o2: string,
  t0: Float64Array,
  t1: Float64Array,
  t2: Float64Array,
  others: OtherRows,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    try {
      cells[n0] = c0[row];
      if (width > 1) cells[n1] = c1[row];
      if (width > 2) cells[n2] = c2[row];
      if (width > 3) cells[n3] = c3[row];
      const result = calculation(cells);
      if (typeof result !== "object" || result === null) {
        others.looked(row, result);
        continue;
      }
      const first = (result as Fields)[o0];
      const second = count > 1 ? (result as Fields)[o1] : 0;
      const third = count > 2 ? (result as Fields)[o2] : 0;
      if (isNumber(first) && isNumber(second) && isNumber(third)) {
        t0[row] = first;
        if (count > 1) t1[row] = second;
        if (count > 2) t2[row] = third;
      } else others.looked(row, result);
    } catch (error) {
      others.refused(row, error);
    }
  }
}

/** Functions of the row number that give a bare number. */
export function numbersOfRows(
  calculation: Calls,
  t0: Float64Array,
  others: OtherRows,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    try {
      const result = calculation(row);
      if (isNumber(result)) t0[row] = result;
      else others.looked(row, result);
    } catch (error) {
      others.refused(row, error);
    }
  }
}

/** Functions of the row number that give a record. */
export function recordsOfRows(
  calculation: Calls,
  count: number,
  o0: string,
  o1: string,
  o2: string,
  t0: Float64Array,
  t1: Float64Array,
  t2: Float64Array,
  others: OtherRows,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    try {
      const result = calculation(row);
      if (typeof result !== "object" || result === null) {
        others.looked(row, result);
        continue;
      }
      const first = (result as Fields)[o0];
      const second = count > 1 ? (result as Fields)[o1] : 0;
      const third = count > 2 ? (result as Fields)[o2] : 0;
      if (isNumber(first) && isNumber(second) && isNumber(third)) {
        t0[row] = first;
        if (count > 1) t1[row] = second;
        if (count > 2) t2[row] = third;
      } else others.looked(row, result);
    } catch (error) {
      others.refused(row, error);
    }
  }
}

/** Whatever is wider, reaches deeper or gives more than the loops above have written out. */
export function anyRows(
  calculation: Calls,
  cells: Cells | undefined,
  names: readonly string[],
  columns: readonly Column[],
  others: OtherRows,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    try {
      if (cells !== undefined) {
        for (let c = 0; c < names.length; c += 1) cells[names[c] as string] = (columns[c] as Column)[row];
      }
      others.looked(row, calculation(cells ?? row));
    } catch (error) {
      others.refused(row, error);
    }
  }
}

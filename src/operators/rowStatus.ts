/** What became of each row of a table, one status for each kind of trouble. */
import { type ErrorCode, isElectroheatError } from "../quantity/index.ts";

/**
 * Meaning of one status other than 0.
 * @since 0.1.0
 */
export interface RowStatus {
  /** The number in the status column. */
  readonly status: number;
  /** `open`: a legal state that no number holds. A code of ours: the row was refused. `other`: another error, or one too many kinds. */
  readonly code: ErrorCode | "open" | "other";
  /** The input or output it is about; empty where the error names none. */
  readonly path: string;
  /** The whole sentence of the first such row. */
  readonly message: string;
  /** First such row, from 0. */
  readonly firstRow: number;
  /** How many rows have this status. */
  readonly rows: number;
}

type Counted = { -readonly [K in keyof RowStatus]: RowStatus[K] };

/** Statuses fit a byte; the last one takes all kinds of error beyond. */
const MOST_STATUSES = 255;

/** Keeps the statuses: one for each pair of code and path. */
export class StatusTable {
  readonly list: Counted[] = [];
  failed = 0;
  private readonly byKind = new Map<string, Counted>();
  private readonly columns: readonly string[];

  /** Columns of the input by name: where a field is missing, one of them may be it, misspelled. */
  constructor(columns: readonly string[]) {
    this.columns = columns;
  }

  note(row: number, code: RowStatus["code"], path: string, message: string): number {
    this.failed += 1;
    const full = this.list.length >= MOST_STATUSES - 1;
    const kind = `${code} ${path}`;
    const known = this.byKind.get(kind) ?? (full ? this.byKind.get("other") : undefined);
    if (known !== undefined) {
      known.rows += 1;
      return known.status;
    }
    const status = this.list.length + 1;
    const entry: Counted = full
      ? { status, code: "other", path: "", message, firstRow: row, rows: 1 }
      : { status, code, path, message, firstRow: row, rows: 1 };
    this.byKind.set(full ? "other" : kind, entry);
    this.list.push(entry);
    return status;
  }

  noteError(row: number, error: unknown): number {
    if (isElectroheatError(error)) {
      const { code, argument, message } = error;
      const unknown =
        code === "missing" &&
        this.columns.length > 0 &&
        !this.columns.includes(argument.split(".", 1).join());
      const hint = unknown ? `; columns: ${this.columns.join(", ")}` : "";
      return this.note(row, code, argument, message + hint);
    }
    return this.note(
      row,
      "other",
      "",
      error instanceof Error ? `${error.name}: ${error.message}` : String(error),
    );
  }

  noteValue(row: number, output: string, value: unknown): number {
    if (value === "open") return this.note(row, "open", output, `${output} is open: no number holds it`);
    const shown = typeof value === "object" ? "an object" : String(value);
    return this.note(row, "not-a-number", output, `${output}: ${shown} is not a finite number`);
  }
}

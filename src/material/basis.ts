/** Where a figure comes from, and the shapes in which figures leave this room. */
import { type Celsius, fail, type Warning } from "../quantity/index.ts";

/**
 * What stands behind a figure.
 *
 * - `published`: printed in the named source
 * - `common practice`: a habit of the trade, no published source
 * - `user table`: given by the caller
 * - `definition`: a law or a defined constant
 * @since 0.1.0
 */
export type BasisKind = "published" | "common practice" | "user table" | "definition";

/**
 * Where a figure comes from: an entry of the bibliography and the table in it.
 * @since 0.1.0
 */
export interface Basis {
  /** Id of the source in `shared/sources.json`. */
  readonly source: string;
  /** Edition, year or page as far as known. */
  readonly edition: string;
  /** Id of the table in `shared/tables`, or the name of the law. */
  readonly table: string;
  /** What stands behind it. */
  readonly kind: BasisKind;
}

/**
 * A figure with its source.
 * @since 0.1.0
 */
export interface Sourced<T> {
  /** The figure. */
  readonly value: T;
  /** Where it comes from. */
  readonly basis: Basis;
}

/**
 * Result of a lookup: the figure, its source and what the reader must know.
 * @since 0.1.0
 */
export interface Lookup<T> extends Sourced<T> {
  /** Empty when the source covers what was asked. */
  readonly warnings: readonly Warning[];
}

/**
 * Result of a lookup in a code or standard that somebody may accept or refuse work by.
 * @since 0.1.0
 */
export interface CodeLookup<T> extends Lookup<T> {
  /** Who decides in the end. */
  readonly deferral: string;
}

/** What every lookup in a code says beside its figure. */
export const DEFERRAL =
  "Edition and table as named in the basis; the edition in force at the site, the local code and a licensed electrician decide.";

/**
 * A published table of one quantity against temperature, read by straight lines between its rows.
 * @since 0.1.0
 */
export interface TemperatureTable<T extends number> {
  /** Rising temperatures (°C). */
  readonly temperatures: readonly Celsius[];
  /** One value for each temperature. */
  readonly values: readonly T[];
  /** Where it comes from. */
  readonly basis: Basis;
}

const KINDS: readonly unknown[] = ["published", "common practice", "user table", "definition"];

/** Requires the basis of figures that may be the caller's own: an answer says where it is from. */
export function checkBasis(path: string, basis: Basis): void {
  for (const field of ["source", "edition", "table", "kind"] as const) {
    const received: unknown = basis?.[field];
    const isText = typeof received === "string" && received.trim() !== "";
    const isKind = field === "kind";
    if (isText && (!isKind || KINDS.includes(received))) continue;
    fail({
      code: isText ? "unknown-name" : (received ?? "") === "" ? "missing" : "wrong-type",
      path: basis ? `${path}.${field}` : path,
      expected: isKind ? `one of ${KINDS.join(", ")}` : "text",
      received,
    });
  }
}

/** A table as the files under shared/tables hold it. */
export interface SharedTable {
  readonly id: string;
  readonly source: string;
  readonly edition: string;
  readonly kind: string;
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** The basis that a shared table states for all its rows. */
export function basisOf(table: SharedTable): Basis {
  return { source: table.source, edition: table.edition, table: table.id, kind: table.kind as BasisKind };
}

/** The row whose first cell is `name`. A shipped table always holds it: tests read every name. */
export function rowOf(table: SharedTable, name: string | number): readonly (string | number | null)[] {
  return table.rows.find((row) => row[0] === name) ?? [];
}

/** A column against another as a temperature table, rows with a blank left out, values times `factor`. */
export function columnOf<T extends number>(
  table: SharedTable,
  column: number,
  convert: (value: number) => T,
): TemperatureTable<T> {
  const kept = table.rows.filter((row) => typeof row[column] === "number");
  return {
    temperatures: kept.map((row) => row[0] as Celsius),
    values: kept.map((row) => convert(row[column] as number)),
    basis: basisOf(table),
  };
}

/** Reading a table between its rows, and beyond its ends only when asked by name. */
import { checkFinite, checkOneOf, fail, type Warning } from "../quantity/index.ts";
import type { Basis } from "./basis.ts";

/**
 * What to do beyond the ends of a table: `refuse` is an error, `extrapolate` continues the last straight piece
 * and says so in a warning.
 * @since 0.1.0
 */
export type BeyondTable = "refuse" | "extrapolate";

/** A place in a table. */
export interface PlaceQuery {
  readonly xs: readonly number[];
  readonly at: number;
  /** Name of the argument `at`, for messages. */
  readonly path: string;
  readonly unit: string;
  readonly basis: Basis;
  readonly beyond?: BeyondTable | undefined;
}

/** What is read where. */
export interface CurveQuery extends PlaceQuery {
  /** Name of the table, for messages: it may be the caller's own. */
  readonly owner: string;
  readonly ys: readonly number[];
}

/** The straight piece that holds a place, and how far along it: 0 and 1 are its rows. */
export interface Place {
  readonly piece: number;
  readonly share: number;
  readonly warnings: readonly Warning[];
}

/** A number whose products and quotients with its like a double holds. */
const isSmall = (x: number | undefined): boolean => typeof x === "number" && Math.abs(x) <= 1e30;

/** Requires rows that can be read: as many values as places, places rising, everything finite. */
export function checkRows(xs: readonly number[], ys: readonly number[], basis: Basis, owner: string): void {
  const missing = xs === undefined ? "temperatures" : ys === undefined ? "values" : null;
  if (missing !== null) {
    fail({
      code: "missing",
      path: `${owner}.${missing}`,
      expected: "a list of numbers",
      received: undefined,
    });
  }
  const bad =
    !Array.isArray(xs) || !Array.isArray(ys) || xs.length === 0 || xs.length !== ys.length
      ? 0
      : xs.findIndex((x, i) => {
          const before = i === 0 ? Number.NEGATIVE_INFINITY : (xs[i - 1] as number);
          return !(isSmall(x) && x > before && isSmall(ys[i]));
        });
  if (bad < 0) return;
  const expected = `one finite value for each of its rising temperatures (${basis?.table}, row ${bad + 1})`;
  fail({ code: "inconsistent", path: `${owner}.temperatures`, expected, received: xs?.[bad] });
}

/** Finds a place among rising xs; beyond their ends on the last piece, with a warning, and only when asked for. */
export function placeIn({ xs, at, path, unit, basis, beyond }: PlaceQuery): Place {
  checkFinite(path, at, unit);
  const policy =
    beyond === undefined ? "refuse" : checkOneOf("beyondTable", beyond, ["refuse", "extrapolate"]);
  const low = xs[0] as number;
  const high = xs[xs.length - 1] as number;
  const outside = at < low || at > high;
  if (outside && (policy === "refuse" || xs.length < 2)) {
    const expected = `${low} to ${high} ${unit} (table ${basis.table})`;
    fail({ code: "outside-table", path, expected, received: at, unit });
  }
  let piece = 0;
  while (piece < xs.length - 2 && at > (xs[piece + 1] as number)) piece += 1;
  const start = xs[piece] as number;
  const share = at === start ? 0 : (at - start) / ((xs[piece + 1] as number) - start);
  if (!outside) return { piece, share, warnings: [] };
  const limit = at < low ? low : high;
  const message = `${path} ${at} ${unit} lies beyond the table ${basis.table}, which ends at ${limit} ${unit}; its last straight piece is continued.`;
  return {
    piece,
    share,
    warnings: [{ code: "extrapolated", path, message, limit, unit, source: basis.source }],
  };
}

/** An asked-for extrapolation must not leave physics: below absolute zero, or to a property of 0 or less. */
export function checkPhysical(value: number, temperature: number): void {
  if (value > 0 && temperature >= -273.15) return;
  const expected = "a temperature above −273.15 °C at which the continued line is still above 0";
  fail({ code: "out-of-range", path: "temperature", expected, received: temperature, unit: "°C" });
}

/** Straight line between two rows; a row itself gives its printed figure to the last bit. */
export function valueAt(ys: readonly number[], { piece, share }: Place): number {
  const start = ys[piece] as number;
  if (share === 0) return start;
  const end = ys[piece + 1] as number;
  return share === 1 ? end : start + (end - start) * share;
}

/**
 * Straight line between rows of a table that may be the caller's own. A table of one row has nothing to interpolate,
 * so only its own temperature is inside it.
 */
export function readCurve(query: CurveQuery): {
  readonly value: number;
  readonly warnings: readonly Warning[];
} {
  checkRows(query.xs, query.ys, query.basis, query.owner);
  const place = placeIn(query);
  return { value: valueAt(query.ys, place), warnings: place.warnings };
}

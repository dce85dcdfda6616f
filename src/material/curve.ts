/** Reading a table between its rows, and beyond its ends only when asked by name. */
import { checkFinite, checkOneOf, fail, type Warning } from "../quantity/index.ts";
import type { Basis } from "./basis.ts";

/**
 * What to do beyond the ends of a table: `refuse` is an error, `extrapolate` continues the last straight piece
 * and says so in a warning.
 * @since 0.1.0
 */
export type BeyondTable = "refuse" | "extrapolate";

/** What is read where. */
export interface CurveQuery {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly at: number;
  /** Name of the argument `at`, for messages. */
  readonly path: string;
  readonly unit: string;
  readonly basis: Basis;
  readonly beyond?: BeyondTable | undefined;
}

/** The straight piece of a table that holds x; beyond the ends the nearest piece. */
export function pieceAt(xs: readonly number[], x: number): number {
  let piece = 0;
  while (piece < xs.length - 2 && x > (xs[piece + 1] as number)) piece += 1;
  return piece;
}

/**
 * Straight line between rows. A row itself gives its printed figure to the last bit; a table of one row has
 * nothing to interpolate, so only its own temperature is inside it.
 */
export function readCurve(query: CurveQuery): {
  readonly value: number;
  readonly warnings: readonly Warning[];
} {
  const { xs, ys, at, path, unit, basis } = query;
  checkFinite(path, at, unit);
  const beyond =
    query.beyond === undefined
      ? "refuse"
      : checkOneOf("beyondTable", query.beyond, ["refuse", "extrapolate"]);
  const low = xs[0] as number;
  const high = xs[xs.length - 1] as number;
  const outside = at < low || at > high;
  if (outside && (beyond === "refuse" || xs.length < 2)) {
    fail({
      code: "outside-table",
      path,
      expected: `${low} to ${high} (table ${basis.table})`,
      received: at,
      unit,
    });
  }
  const piece = pieceAt(xs, at);
  const [x0, y0] = [xs[piece] as number, ys[piece] as number];
  if (at === x0) return { value: y0, warnings: [] };
  const [x1, y1] = [xs[piece + 1] as number, ys[piece + 1] as number];
  const value = at === x1 ? y1 : y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
  if (!outside) return { value, warnings: [] };
  const limit = at < low ? low : high;
  const message = `${path} ${at} ${unit} lies beyond the table ${basis.table}, which ends at ${limit} ${unit}; its last straight piece is continued.`;
  return { value, warnings: [{ code: "extrapolated", path, message, limit, unit, source: basis.source }] };
}

/** A family told to be hopeless from a few of its points, before it is integrated. */
import { parameterAt, type Stretch } from "../faults/atom.ts";
import { product, squared } from "../numbers/linear.ts";
import { copyInto } from "../numbers/room.ts";

/** A quick exponent that leaves its whitened residuals behind, so that a few of them tell where the rest can lie. */
export interface Screened {
  readonly f: (value: number) => number;
  readonly residual: Float64Array;
  /** Work space for the residuals at the point before. */
  readonly before: Float64Array;
  /** What comes on top of it by readings that have no residuals, and the most that this comes to anywhere. */
  readonly more: { readonly at: (value: number) => number; readonly most: number };
}

/** Nothing on top. */
export const NO_MORE: Screened["more"] = { at: () => 0, most: 0 };

/** Points of a screen; they are every second one of those that an integral begins with. */
export const SCREEN = 5;

/** Part of a squared distance that is counted: the path of the residuals bends a little between points. */
const STRAIGHT = 0.7;

/**
 * The most that an exponent can come to: residuals move along a path, nearly straight from point to point, and the nearest
 * it can come to 0 is its nearest to that polyline. Writes the values at the points; returns the bound.
 */
export function mostOnPath(
  { f, residual, before, more }: Screened,
  stretch: Stretch,
  values: number[],
): number {
  const m = residual.length;
  let bound = Number.NEGATIVE_INFINITY;
  let [offset, square] = [0, 0];
  for (let k = 0; k < SCREEN; k += 1) {
    const value = parameterAt(stretch, k / (SCREEN - 1));
    const log = f(value);
    values.push(log + more.at(value));
    const now = squared(residual, m);
    const raised = log + 0.5 * now;
    if (k > 0) {
      const across = product(residual, before, m);
      const length = now + square - 2 * across;
      // Foot of the perpendicular from 0 on the stretch from `before` to here.
      const part = length > 0 ? Math.min(1, Math.max(0, (square - across) / length)) : 0;
      const least = square + part * (part * length - 2 * (square - across));
      bound = Math.max(bound, Math.max(offset, raised) - 0.5 * STRAIGHT * Math.max(0, least));
    }
    copyInto(before, residual);
    [offset, square] = [raised, now];
  }
  return bound + more.most;
}

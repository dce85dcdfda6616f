/** ∫∫ exp(f(x, y)) dx dy over the unit square: the one-dimensional rule along x of the one along y. */
import { logSumExp } from "./linear.ts";
import { type Integral, logIntegral } from "./quadrature.ts";

/** The integral and where it comes from. */
export interface PlaneIntegral {
  readonly log: number;
  readonly points: readonly (readonly [number, number])[];
  readonly logTerms: readonly number[];
}

/** An integral whose exponent lies higher by a constant. */
export function raised({ log, best, bestLog, nodes, logTerms }: Integral, shift: number): Integral {
  return {
    log: log + shift,
    best,
    bestLog: bestLog + shift,
    nodes,
    logTerms: logTerms.map((term) => term + shift),
  };
}

/**
 * ln of the integral.
 * @param along - for an x, the integral along y
 * @param floor - as for {@link logIntegral}
 */
export function planeIntegral(along: (x: number) => Integral, floor: number): PlaneIntegral {
  const rows: { x: number; nodes: readonly number[]; logTerms: readonly number[]; log: number }[] = [];
  const outer = logIntegral((x) => {
    const inner = along(x);
    rows.push({ x, ...inner });
    return inner.log;
  }, floor);
  const weight = new Map(outer.nodes.map((x, i) => [x, outer.logTerms[i] as number]));
  const points: (readonly [number, number])[] = [];
  const logTerms: number[] = [];
  for (const row of rows) {
    const share = weight.get(row.x);
    // Points of the search for the peak carry no weight, and a node met twice counts once.
    if (share === undefined) continue;
    weight.delete(row.x);
    row.nodes.forEach((y, i) => {
      points.push([row.x, y]);
      logTerms.push((row.logTerms[i] as number) - row.log + share);
    });
  }
  return { log: logSumExp(logTerms), points, logTerms };
}

/** The point of the largest contribution. */
export function heaviest<P>(points: readonly P[], logTerms: readonly number[]): P {
  let best = 0;
  logTerms.forEach((log, i) => {
    if (log > (logTerms[best] as number)) best = i;
  });
  return points[best] as P;
}

/** Evidence of a fault of one parameter: integrated, corrected, or the same whatever the parameter. */
import { type Atom, parameterAt, type Stretch } from "../faults/atom.ts";
import { mostOnPath, SCREEN, type Screened } from "../likelihood/screen.ts";
import { logSumExp } from "../numbers/linear.ts";
import { logIntegral } from "../numbers/quadrature.ts";
import type { Weighted } from "./findings.ts";

/** Whether a path is open whatever the parameter: another fault has broken it, and nothing shows how large this one is. */
export const isBroken = ({ stretches, insertion }: Atom): boolean =>
  stretches.every((stretch) => insertion(parameterAt(stretch, 0.5)).cold === Number.POSITIVE_INFINITY);

/** Steps of a parameter that nothing shows: its posterior is its prior. */
const UNSEEN_STEPS = 40;

export function broken({ stretches }: Atom, visit: (point: readonly number[]) => number): Weighted {
  const points = stretches.flatMap((stretch) =>
    Array.from({ length: UNSEEN_STEPS }, (_, k) => [parameterAt(stretch, (k + 0.5) / UNSEEN_STEPS)]),
  );
  const best = points[0] as readonly number[];
  const log = visit(best);
  const logTerms = stretches.flatMap(({ part }) =>
    Array(UNSEEN_STEPS).fill(log + Math.log(part / UNSEEN_STEPS)),
  );
  return { log, points, logTerms, best };
}

/** Integrates over all stretches; with `screened`, those that cannot come near the floor are told by their best point. */
export function integrated(
  stretches: readonly Stretch[],
  f: (value: number) => number,
  floor: number,
  screened?: Screened,
): Weighted {
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  let best: readonly number[] = [];
  let bestLog = Number.NEGATIVE_INFINITY;
  for (const stretch of stretches) {
    const shift = Math.log(stretch.part);
    const values: number[] = [];
    if (screened !== undefined && mostOnPath(screened, stretch, values) + shift < floor) {
      let most = 0;
      for (let k = 1; k < values.length; k += 1) {
        if ((values[k] as number) > (values[most] as number)) most = k;
      }
      const log = values[most] as number;
      const point = [parameterAt(stretch, most / (SCREEN - 1))];
      points.push(point);
      logTerms.push(log + shift);
      if (log > bestLog || best.length === 0) [best, bestLog] = [point, log];
      continue;
    }
    const integral = logIntegral((t) => f(parameterAt(stretch, t)), floor, values);
    const { nodes, logTerms: terms } = integral;
    for (let i = 0; i < nodes.length; i += 1) {
      points.push([parameterAt(stretch, nodes[i] as number)]);
      logTerms.push((terms[i] as number) + shift);
    }
    if (integral.bestLog > bestLog) {
      bestLog = integral.bestLog;
      best = [parameterAt(stretch, integral.best)];
    }
  }
  return { log: logSumExp(logTerms), points, logTerms, best };
}

/**
 * Quick evidence corrected by full evaluations at points spread over its posterior.
 * @param count - parts of the posterior between which they lie
 * @param disagreement - nats by which the corrections may differ; null where they differ by more
 */
export function corrected(
  rough: Weighted,
  quick: (value: number) => number,
  full: (value: number) => number,
  count: number,
  disagreement: number,
): Weighted | null {
  const { points, logTerms: terms } = rough;
  const peak = rough.best[0] as number;
  // Points come in rising order. Of those that cut the posterior into equal parts, and the best, the shift is known.
  const values: number[] = [];
  let sum = 0;
  const add = (value: number): void => {
    const last = values.at(-1);
    if (last !== undefined && last < peak && peak < value) values.push(peak);
    if (value !== last) values.push(value);
  };
  points.forEach((point, i) => {
    const before = Math.floor(sum * count + 0.5);
    sum += Math.exp((terms[i] as number) - rough.log);
    if (Math.floor(sum * count + 0.5) > before) add(point[0] as number);
  });
  if (!values.includes(peak)) {
    if (values.length === 0 || peak > (values.at(-1) as number)) values.push(peak);
    else values.unshift(peak);
  }
  let [best, bestValue] = [Number.NEGATIVE_INFINITY, peak];
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const shifts = values.map((value) => {
    const log = full(value);
    if (log > best) [best, bestValue] = [log, value];
    const shift = log - quick(value);
    least = Math.min(least, shift);
    most = Math.max(most, shift);
    return shift;
  });
  if (most - least > disagreement) return null;
  let k = 0;
  const logTerms = points.map((point, i) => {
    const value = point[0] as number;
    while (k < values.length - 1 && (values[k + 1] as number) < value) k += 1;
    const next = Math.min(k + 1, values.length - 1);
    const [a, b] = [values[k] as number, values[next] as number];
    const [from, to] = [shifts[k] as number, shifts[next] as number];
    const log = terms[i] as number;
    if (value <= a || k === next) return log + from;
    if (value >= b) return log + to;
    return log + from + ((to - from) * (value - a)) / (b - a);
  });
  return { log: logSumExp(logTerms), points, logTerms, best: [bestValue] };
}

/** Evidence of a fault of one parameter: integrated, corrected, or the same whatever the parameter. */
import { type Atom, parameterAt, type Stretch } from "./faults.ts";
import type { Finding } from "./findings.ts";
import { logSumExp } from "./linear.ts";
import { logIntegral } from "./quadrature.ts";

/** Points of a posterior at which the quick evidence is corrected, and nats of disagreement between them that it bears. */
const CORRECTIONS = 9;
const DISAGREEMENT = 1;

/** Evidence of a family of one parameter, and where it comes from. */
export type Weighted = Pick<Finding, "log" | "points" | "logTerms" | "best">;

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

export function integrated(
  stretches: readonly Stretch[],
  f: (value: number) => number,
  floor: number,
): Weighted {
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  let best: readonly number[] = [];
  let bestLog = Number.NEGATIVE_INFINITY;
  for (const stretch of stretches) {
    const shift = Math.log(stretch.part);
    const integral = logIntegral((t) => f(parameterAt(stretch, t)), floor);
    integral.nodes.forEach((t, i) => {
      points.push([parameterAt(stretch, t)]);
      logTerms.push((integral.logTerms[i] as number) + shift);
    });
    if (integral.bestLog > bestLog) {
      bestLog = integral.bestLog;
      best = [parameterAt(stretch, integral.best)];
    }
  }
  return { log: logSumExp(logTerms), points, logTerms, best };
}

/** Quick evidence corrected by full evaluations at points spread over its posterior; null where they disagree. */
export function corrected(
  rough: Weighted,
  quick: (value: number) => number,
  full: (value: number) => number,
): Weighted | null {
  const order = rough.points
    .map((point, i) => ({ value: point[0] as number, log: rough.logTerms[i] as number }))
    .sort((a, b) => a.value - b.value);
  const chosen = new Set<number>([rough.best[0] as number]);
  let sum = 0;
  for (const { value, log } of order) {
    const before = Math.floor(sum * CORRECTIONS + 0.5);
    sum += Math.exp(log - rough.log);
    if (Math.floor(sum * CORRECTIONS + 0.5) > before) chosen.add(value);
  }
  let best = Number.NEGATIVE_INFINITY;
  let bestValue = rough.best[0] as number;
  const known = [...chosen]
    .sort((a, b) => a - b)
    .map((value) => {
      const log = full(value);
      if (log > best) [best, bestValue] = [log, value];
      return { value, shift: log - quick(value) };
    });
  const shifts = known.map(({ shift }) => shift);
  if (Math.max(...shifts) - Math.min(...shifts) > DISAGREEMENT) return null;
  let k = 0;
  const logTerms = order.map(({ value, log }) => {
    while (k < known.length - 1 && (known[k + 1]?.value as number) < value) k += 1;
    const [a, b] = [known[k], known[Math.min(k + 1, known.length - 1)]] as [
      (typeof known)[0],
      (typeof known)[0],
    ];
    if (value <= a.value || a === b) return log + a.shift;
    if (value >= b.value) return log + b.shift;
    return log + a.shift + ((b.shift - a.shift) * (value - a.value)) / (b.value - a.value);
  });
  return { log: logSumExp(logTerms), points: order.map(({ value }) => [value]), logTerms, best: [bestValue] };
}

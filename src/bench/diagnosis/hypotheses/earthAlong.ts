/** An earth fault somewhere along a coil: weighed at three places, and at as many as it takes where the place can be told. */

import { parameterAt, stretchOf } from "../faults/atom.ts";
import { logSumExp } from "../numbers/linear.ts";
import { planeIntegral } from "../numbers/nested.ts";
import { logIntegral } from "../numbers/quadrature.ts";
import { RANGE } from "../question/settings.ts";
import type { Finding, Parameter, Weighted } from "../weighing/findings.ts";

/** Fault resistances are as likely in each decade, places along the coil in each of its parts. */
const STRETCH = stretchOf(RANGE.earth, true, 1);
export const RESISTANCE: Omit<Parameter, "fault"> = { of: "fault resistance", stretches: [STRETCH] };
export const POSITION: Omit<Parameter, "fault"> = {
  of: "position",
  stretches: [stretchOf([0, 1], false, 1)],
};

/** Nats above the floor (which is 22 below the best) from which the position is worth telling: a share of about 2 %. */
const RELEVANT = 18;

/** Three-point Gauss-Legendre on 0..1. */
const POSITIONS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 4 / 9],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;

/** Nats between the three positions below which the likelihood is smooth along the coil, and positions that then tell where. */
const SMOOTH = 1.5;
const EVEN = 12;

/** The parabola through the logarithms at the three positions. */
function parabola([low, middle, high]: readonly [number, number, number], x: number): number {
  const step = POSITIONS[2][0] - 0.5;
  const t = (x - 0.5) / step;
  return middle + (t * (high - low)) / 2 + (t * t * (high + low - 2 * middle)) / 2;
}

/** Places along the coil with fault resistances, and what each contributes to the evidence. */
export type Along = Pick<Finding, "points" | "logTerms" | "completed">;

/** What a coil is weighed with. */
interface Coil {
  /** Evidence at one place, the fault resistance integrated. */
  readonly across: (x: number) => Weighted;
  /** ln likelihood at one place by the fault resistance. */
  readonly exponentAt: (x: number) => (ohms: number) => number;
  /** The most that the likelihood comes to anywhere on the coil, where three places do not tell. */
  readonly most: (() => number) | null;
  /** Whether any reading sees the fault at all. */
  readonly seen: boolean;
  readonly floor: number;
  /** Which of the explanation's faults it is. */
  readonly fault: number;
}

/** Rows of places × fault resistances put together. */
class Rows {
  readonly points: (readonly number[])[] = [];
  readonly logTerms: number[] = [];

  add(x: number, weight: number, { points, logTerms }: Weighted): void {
    const shift = Math.log(weight);
    points.forEach((point, i) => {
      this.points.push([x, point[0] as number]);
      this.logTerms.push((logTerms[i] as number) + shift);
    });
  }
}

/** Evidence of an earth fault anywhere along a coil. */
export function alongCoil({ across, exponentAt, most, seen, floor, fault }: Coil): Along {
  const few = POSITIONS.map(([x]) => across(x));
  const rough = new Rows();
  POSITIONS.forEach(([x, weight], i) => {
    rough.add(x, weight, few[i] as Weighted);
  });
  // Between the three places insulation readings may fit far better, and amps better than on the ground at those three.
  const worth = Math.max(logSumExp(rough.logTerms), most === null ? Number.NEGATIVE_INFINITY : most());
  if (!seen || worth <= floor + RELEVANT) return { ...rough, completed: undefined };
  const logs = few.map(({ log }) => log) as [number, number, number];
  if (Math.max(...logs) - Math.min(...logs) < SMOOTH) return smoothly(few, logs, fault);
  const plane = planeIntegral((x) => {
    const f = exponentAt(x);
    return logIntegral((t) => f(parameterAt(STRETCH, t)), floor);
  }, floor);
  const points = plane.points.map(([x, t]) => [x, parameterAt(STRETCH, t)]);
  return { points, logTerms: plane.logTerms, completed: undefined };
}

/** Evidence that changes little along the coil: resistances as at the nearest of the three places, weights by the parabola. */
function smoothly(few: readonly Weighted[], logs: readonly [number, number, number], fault: number): Along {
  const even = new Rows();
  const places: number[] = [];
  const byPlace: number[] = [];
  const shares = [0, 0, 0];
  for (let k = 0; k < EVEN; k += 1) {
    const x = (k + 0.5) / EVEN;
    const third = Math.floor((3 * k) / EVEN);
    const near = few[third] as Weighted;
    const log = parabola(logs, x) - Math.log(EVEN);
    const share = Math.exp(log - near.log);
    even.add(x, share, near);
    places.push(x);
    byPlace.push(log);
    shares[third] = (shares[third] as number) + share;
  }
  return {
    points: even.points,
    logTerms: even.logTerms,
    completed: () => [
      { ...POSITION, fault, values: places, logTerms: byPlace },
      {
        ...RESISTANCE,
        fault,
        values: few.flatMap(({ points }) => points.map(([value]) => value as number)),
        logTerms: few.flatMap(({ logTerms }, i) =>
          logTerms.map((term) => term + Math.log(shares[i] as number)),
        ),
      },
    ],
  };
}

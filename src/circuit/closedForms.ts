/**
 * Closed forms for n equal elements in parallel in each branch, k of them open in one branch: what a technician can check on
 * paper, and what the network solve is held against.
 */
import { checkWhole, given } from "../quantity/index.ts";

/**
 * Ratios to the healthy bank after k of n parallel elements in one branch have opened.
 * @since 0.1.0
 */
export interface OpenedBranchRatios {
  /** Voltage and current of a survivor beside the open elements; `null` if none is left. */
  readonly survivorVoltage: number | null;
  /** Power and surface load of such a survivor; `null` if none is left. */
  readonly survivorPower: number | null;
  /** Voltage and current of an element in the other branches. */
  readonly otherVoltage: number;
  /** Power of an element in the other branches. */
  readonly otherPower: number;
  /** Total power. */
  readonly totalPower: number;
  /** Current of the line, or of each of the two lines, that feed the faulted branch. */
  readonly faultedLine: number;
  /** Current of the remaining lines or line. */
  readonly otherLine: number;
}

function remaining(input: { readonly elementsInParallel: number; readonly open: number }): number {
  const { elementsInParallel, open } = given(input);
  checkWhole("elementsInParallel", elementsInParallel, 1, 10_000);
  checkWhole("open", open, 0, elementsInParallel);
  return (elementsInParallel - open) / elementsInParallel;
}

/**
 * Star with floating star point, k of n parallel elements open in the branch of one line. With m = (n − k)/n:
 * survivor 3/(2 + m), others √(3·(1 + m + m²))/(2 + m), total (1 + 2m)/(2 + m), faulted line 3m/(2 + m).
 *
 * For n = 2, k = 1 the survivor carries 1.2 times its current and 1.44 times its power: not double. Several star banks with
 * their star points tied count as one star with all their elements in parallel.
 * @param input.elementsInParallel - equal elements in parallel in each branch, n, whole, 1 or more
 * @param input.open - how many of one branch are open, k, whole, 0 to n
 * @returns ratios to the healthy star
 * @throws ElectroheatError `not-a-number`, `out-of-range`
 * @source Millman's theorem: J. Millman, A useful network theorem, Proceedings of the IRE 28 (1940) 413
 * @example
 * ```ts
 * const { survivorVoltage, survivorPower, totalPower } = starWithOpenElements({ elementsInParallel: 2, open: 1 });
 * [survivorVoltage, survivorPower, totalPower] // => [1.2, 1.44, 0.8]
 * ```
 * @since 0.1.0
 */
export function starWithOpenElements(input: {
  readonly elementsInParallel: number;
  readonly open: number;
}): OpenedBranchRatios {
  given(input);
  const m = remaining(input);
  const survivor = 3 / (2 + m);
  const other = Math.sqrt(3 * (1 + m + m * m)) / (2 + m);
  return {
    survivorVoltage: m === 0 ? null : survivor,
    survivorPower: m === 0 ? null : survivor * survivor,
    otherVoltage: other,
    otherPower: other * other,
    totalPower: (1 + 2 * m) / (2 + m),
    faultedLine: (3 * m) / (2 + m),
    otherLine: other,
  };
}

/**
 * Delta, k of n parallel elements open in one branch. With m = (n − k)/n: survivors and others unchanged, total (2 + m)/3, the
 * two lines of the faulted branch √((1 + m + m²)/3), the third line unchanged.
 * @param input.elementsInParallel - equal elements in parallel in each branch, n, whole, 1 or more
 * @param input.open - how many of one branch are open, k, whole, 0 to n
 * @returns ratios to the healthy delta
 * @throws ElectroheatError `not-a-number`, `out-of-range`
 * @source Kirchhoff's laws: each branch of a delta sees the line voltage whatever the others do
 * @example
 * ```ts
 * const { totalPower, faultedLine } = deltaWithOpenElements({ elementsInParallel: 2, open: 1 });
 * [totalPower, faultedLine] // => [0.833333, 0.763763]
 * ```
 * @since 0.1.0
 */
export function deltaWithOpenElements(input: {
  readonly elementsInParallel: number;
  readonly open: number;
}): OpenedBranchRatios {
  given(input);
  const m = remaining(input);
  return {
    survivorVoltage: m === 0 ? null : 1,
    survivorPower: m === 0 ? null : 1,
    otherVoltage: 1,
    otherPower: 1,
    totalPower: (2 + m) / 3,
    faultedLine: Math.sqrt((1 + m + m * m) / 3),
    otherLine: 1,
  };
}

/**
 * Weighted linear least squares by Householder QR with column pivoting: keeps the digits that the normal
 * equations would lose, and says which unknowns the observations do not determine instead of guessing them.
 */
import { checkFinite, checkPositive, fail } from "../quantity/index.ts";

/**
 * Result of {@link leastSquares}. An unknown that the observations do not determine is `null` everywhere.
 * @since 0.1.0
 */
export interface LeastSquaresFit {
  /** Best estimates, one for each unknown. */
  readonly estimates: readonly (number | null)[];
  /** One solution of many that fit as well: the estimates, with undetermined unknowns at some value. For iterations. */
  readonly particular: readonly number[];
  /** Covariance of the estimates, from the stated standard uncertainties (not scaled by the residuals). */
  readonly covariance: readonly (readonly (number | null)[])[];
  /** Observed minus fitted, one for each observation. */
  readonly residuals: readonly number[];
  /** Sum of squared residuals, each over its standard uncertainty: χ². */
  readonly chiSquare: number;
  /** Number of observations minus rank. */
  readonly degreesOfFreedom: number;
  /** Number of independent combinations of unknowns that the observations see. */
  readonly rank: number;
}

/** A column whose remainder falls below this part of its length adds nothing that rounding could not have made. */
const RANK_TOLERANCE = 1e-10;

interface Triangular {
  /** Row-major m × n, R in the upper triangle after elimination. */
  readonly a: Float64Array;
  readonly y: Float64Array;
  readonly pivots: Int32Array;
  readonly rank: number;
}

function remainderNorm(a: Float64Array, n: number, column: number, fromRow: number): number {
  let sum = 0;
  for (let at = fromRow * n + column; at < a.length; at += n) sum += (a[at] as number) ** 2;
  return Math.sqrt(sum);
}

function swapColumns(a: Float64Array, n: number, i: number, j: number): void {
  for (let at = 0; at < a.length; at += n) {
    const kept = a[at + i] as number;
    a[at + i] = a[at + j] as number;
    a[at + j] = kept;
  }
}

/** Applies the reflection that sends column k below row k to zero, to the later columns and to y. */
function reflect(a: Float64Array, y: Float64Array, n: number, k: number, norm: number): void {
  const m = y.length;
  const head = a[k * n + k] as number;
  const alpha = head > 0 ? -norm : norm;
  const v = new Float64Array(m - k);
  for (let i = k; i < m; i += 1) v[i - k] = a[i * n + k] as number;
  v[0] = head - alpha;
  let vv = 0;
  for (const x of v) vv += x * x;
  for (let j = k; j <= n; j += 1) {
    const get = (i: number): number => (j < n ? (a[i * n + j] as number) : (y[i] as number));
    let dot = 0;
    for (let i = k; i < m; i += 1) dot += (v[i - k] as number) * get(i);
    const factor = (2 * dot) / vv;
    for (let i = k; i < m; i += 1) {
      const value = get(i) - factor * (v[i - k] as number);
      if (j < n) a[i * n + j] = value;
      else y[i] = value;
    }
  }
}

function triangularise(a: Float64Array, y: Float64Array, n: number): Triangular {
  const m = y.length;
  const pivots = Int32Array.from({ length: n }, (_, j) => j);
  let rank = 0;
  while (rank < Math.min(m, n)) {
    let best = rank;
    let norm = remainderNorm(a, n, rank, rank);
    for (let j = rank + 1; j < n; j += 1) {
      const other = remainderNorm(a, n, j, rank);
      if (other > norm) {
        norm = other;
        best = j;
      }
    }
    if (!(norm > RANK_TOLERANCE)) break;
    swapColumns(a, n, rank, best);
    const kept = pivots[rank] as number;
    pivots[rank] = pivots[best] as number;
    pivots[best] = kept;
    reflect(a, y, n, rank, norm);
    rank += 1;
  }
  return { a, y, pivots, rank };
}

/** Solves R₁₁ x = b in place for the leading rank × rank triangle. */
function backSubstitute(a: Float64Array, n: number, rank: number, b: Float64Array): void {
  for (let i = rank - 1; i >= 0; i -= 1) {
    let value = b[i] as number;
    for (let j = i + 1; j < rank; j += 1) value -= (a[i * n + j] as number) * (b[j] as number);
    b[i] = value / (a[i * n + i] as number);
  }
}

/**
 * Fits y ≈ X·b, each observation weighted by 1/u²: minimises χ² = Σ((y − X·b)/u)².
 *
 * Covariance is (Xᵀ·W·X)⁻¹ with W = diag(1/u²); it says nothing of a gain error common to all observations.
 * @param input.design - one row for each observation, one column for each unknown
 * @param input.observed - the observations, in one unit
 * @param input.uncertainty - standard uncertainty of each observation, same unit, more than 0
 * @returns estimates, covariance, residuals, χ², degrees of freedom and rank
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source G. H. Golub, Numerical methods for solving linear least squares problems, Numerische Mathematik 7 (1965) 206
 * @example
 * ```ts
 * leastSquares({ design: [[1], [1], [1]], observed: [7.9, 7.9, 7.8], uncertainty: [0.1, 0.1, 0.1] }).estimates
 * // => [7.8667]
 * ```
 * @since 0.1.0
 */
export function leastSquares(input: {
  readonly design: readonly (readonly number[])[];
  readonly observed: readonly number[];
  readonly uncertainty: readonly number[];
}): LeastSquaresFit {
  const { design, observed, uncertainty } = input ?? {};
  const n = Array.isArray(design) ? (design[0]?.length ?? 0) : 0;
  if (!(n > 0))
    fail({ code: "missing", path: "design", expected: "at least one row and one column", received: design });
  for (const [path, list] of [
    ["observed", observed],
    ["uncertainty", uncertainty],
  ] as const) {
    if (!Array.isArray(list)) fail({ code: "missing", path, expected: "a list of numbers", received: list });
  }
  const m = observed.length;
  if (design.length !== m || uncertainty.length !== m) {
    const received = `${design.length} rows, ${m} observations, ${uncertainty.length} uncertainties`;
    fail({
      code: "inconsistent",
      path: "design",
      expected: "one row and one uncertainty for each observation",
      received,
    });
  }
  const a = new Float64Array(m * n);
  const y = new Float64Array(m);
  for (let i = 0; i < m; i += 1) {
    const u = uncertainty[i] as number;
    const row = design[i] as readonly number[];
    checkFinite(`observed.${i}`, observed[i] as number);
    checkPositive(`uncertainty.${i}`, u);
    if (row?.length !== n) {
      fail({ code: "inconsistent", path: `design.${i}`, expected: `${n} columns`, received: row?.length });
    }
    y[i] = (observed[i] as number) / u;
    for (let j = 0; j < n; j += 1) {
      checkFinite(`design.${i}.${j}`, row[j] as number);
      a[i * n + j] = (row[j] as number) / u;
    }
  }
  // Columns to a length of 1 to 2, so that one rank tolerance serves ohms and micro-ohms alike; by powers of two, which
  // round nothing: dividing by the length itself costs most of a digit on an ill-conditioned fit.
  const scale = Float64Array.from(
    { length: n },
    (_, j) => 2 ** Math.floor(Math.log2(remainderNorm(a, n, j, 0) || 1)),
  );
  for (let i = 0; i < m; i += 1) {
    for (let j = 0; j < n; j += 1) a[i * n + j] = (a[i * n + j] as number) / (scale[j] as number);
  }
  const solved = solveTriangular(triangularise(a, y, n), n, scale);
  const residuals = observed.map((value, i) => {
    const row = design[i] as readonly number[];
    return row.reduce((left, x, j) => left - x * (solved.basic[j] as number), value) + 0;
  });
  const chiSquare = residuals.reduce((sum, r, i) => sum + (r / (uncertainty[i] as number)) ** 2, 0);
  const variances = solved.covariance.flat().filter((value) => value !== null);
  if (![chiSquare, ...solved.basic, ...variances].every(Number.isFinite)) {
    const expected =
      "numbers over their uncertainties small enough to be squared in float64 (below about 1e150)";
    fail({ code: "out-of-range", path: "observed", expected, received: "larger" });
  }
  return {
    estimates: solved.estimates,
    particular: solved.basic,
    covariance: solved.covariance,
    residuals,
    chiSquare,
    degreesOfFreedom: m - solved.rank,
    rank: solved.rank,
  };
}

function solveTriangular(
  { a, y, pivots, rank }: Triangular,
  n: number,
  scale: Float64Array,
): Pick<LeastSquaresFit, "estimates" | "covariance" | "rank"> & { readonly basic: readonly number[] } {
  // Columns of R₁₁⁻¹; the free unknowns are held at 0 (basic solution), which the determined ones do not feel.
  const head = Float64Array.from(y.subarray(0, rank));
  backSubstitute(a, n, rank, head);
  const inverse: Float64Array[] = [];
  for (let k = 0; k < rank; k += 1) {
    const unit = new Float64Array(rank);
    unit[k] = 1;
    backSubstitute(a, n, rank, unit);
    inverse.push(unit);
  }
  const determined = new Array<boolean>(n).fill(true);
  for (let free = rank; free < n; free += 1) {
    determined[pivots[free] as number] = false;
    const column = Float64Array.from({ length: rank }, (_, i) => a[i * n + free] as number);
    backSubstitute(a, n, rank, column);
    column.forEach((x, i) => {
      if (Math.abs(x) > Math.sqrt(RANK_TOLERANCE)) determined[pivots[i] as number] = false;
    });
  }
  const basic = new Array<number>(n).fill(0);
  const place = new Int32Array(n);
  for (let i = 0; i < rank; i += 1) {
    const unknown = pivots[i] as number;
    // + 0 here and below: JSON cannot say −0.
    basic[unknown] = (head[i] as number) / (scale[unknown] as number) + 0;
    place[unknown] = i;
  }
  const covariance = basic.map((_, p) =>
    basic.map((_unused, q) => {
      if (!determined[p] || !determined[q]) return null;
      const [i, j] = [place[p] as number, place[q] as number];
      let sum = 0;
      for (const column of inverse) sum += (column[i] as number) * (column[j] as number);
      return sum / (scale[p] as number) / (scale[q] as number) + 0;
    }),
  );
  return { basic, rank, covariance, estimates: basic.map((value, j) => (determined[j] ? value : null)) };
}

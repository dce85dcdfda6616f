/** Dense linear algebra of a few rows, in place on typed arrays: the inference calls it thousands of times. */
import { floats } from "./room.ts";

/**
 * Replaces the lower triangle of a symmetric positive definite n×n matrix by its Cholesky factor, the diagonal by its
 * reciprocal, since all that follows divides by it; returns ln det of the matrix.
 */
export function choleskyInPlace(matrix: Float64Array, n: number): number {
  let logDeterminant = 0;
  let product = 1;
  for (let j = 0; j < n; j += 1) {
    const row = j * n;
    let pivot = matrix[row + j] as number;
    for (let k = 0; k < j; k += 1) pivot -= (matrix[row + k] as number) ** 2;
    // The diagonal holds each reading's own variance, so a pivot at or below 0 is rounding of a hopelessly tight row.
    if (!(pivot > 1e-14 * (matrix[row + j] as number)))
      pivot = 1e-14 * Math.max(matrix[row + j] as number, 1e-300);
    const part = 1 / Math.sqrt(pivot);
    matrix[row + j] = part;
    product *= pivot;
    // One logarithm for many pivots, as long as float64 holds their product.
    if (!(product > 1e-200 && product < 1e200)) {
      logDeterminant += Math.log(product / pivot) + Math.log(pivot);
      product = 1;
    }
    for (let i = j + 1; i < n; i += 1) {
      const below = i * n;
      let sum = matrix[below + j] as number;
      for (let k = 0; k < j; k += 1) sum -= (matrix[below + k] as number) * (matrix[row + k] as number);
      matrix[below + j] = sum * part;
    }
  }
  return logDeterminant + Math.log(product);
}

/** Solves L·x = b in place, with the factor as {@link choleskyInPlace} leaves it. */
export function forwardInPlace(factor: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i += 1) {
    const row = i * n;
    let sum = b[i] as number;
    for (let k = 0; k < i; k += 1) sum -= (factor[row + k] as number) * (b[k] as number);
    b[i] = sum * (factor[row + i] as number);
  }
}

/** Solves Lᵀ·x = b in place, with the factor as {@link choleskyInPlace} leaves it. */
export function backwardInPlace(factor: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = b[i] as number;
    for (let k = i + 1; k < n; k += 1) sum -= (factor[k * n + i] as number) * (b[k] as number);
    b[i] = sum * (factor[i * n + i] as number);
  }
}

/** Element i, i of the inverse of a matrix, with its factor as {@link choleskyInPlace} leaves it. `work` is overwritten. */
export function precisionAt(factor: Float64Array, n: number, i: number, work: Float64Array): number {
  // The square of column i of the factor's inverse, which is 0 above i.
  let sum = 0;
  for (let k = i; k < n; k += 1) {
    let value = k === i ? 1 : 0;
    for (let j = i; j < k; j += 1) value -= (factor[k * n + j] as number) * (work[j] as number);
    value *= factor[k * n + k] as number;
    work[k] = value;
    sum += value * value;
  }
  return sum;
}

/** Scalar product of the first n. */
export function product(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i += 1) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** Σ of squares of the first n. */
export function squared(values: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i += 1) sum += (values[i] as number) ** 2;
  return sum;
}

/** Nats below the largest at which a term is nothing beside it: float64 holds 36. */
export const NOTHING = -40;

/** Weights, all together 1, from their logarithms and any term that is common to all. */
export function weightsOf(logTerms: readonly number[]): Float64Array {
  const n = logTerms.length;
  const weights = floats(n);
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < n; i += 1) if ((logTerms[i] as number) > most) most = logTerms[i] as number;
  let total = 0;
  for (let i = 0; i < n; i += 1) {
    const below = (logTerms[i] as number) - most;
    if (below < NOTHING) continue;
    const weight = Math.exp(below);
    weights[i] = weight;
    total += weight;
  }
  for (let i = 0; i < n; i += 1) weights[i] = (weights[i] as number) / total;
  return weights;
}

/** ln Σ exp of a list; −∞ for an empty one. */
export function logSumExp(values: ArrayLike<number>): number {
  let largest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number;
    if (value > largest) largest = value;
  }
  if (largest === Number.NEGATIVE_INFINITY) return largest;
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) {
    const below = (values[i] as number) - largest;
    if (below > NOTHING) sum += Math.exp(below);
  }
  return largest + Math.log(sum);
}

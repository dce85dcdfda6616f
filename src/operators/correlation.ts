/** Correlation matrices: what makes one legal, and the factor that draws from it. */
import { checkFinite, fail, given } from "../quantity/index.ts";

/**
 * Correlation coefficients of inputs: `coefficients[i][j]` is r of `inputs[i]` and `inputs[j]`. Inputs that are not listed are
 * independent of all others.
 * @since 0.1.0
 */
export interface Correlation {
  /** Names of the inputs, in the order of the rows. */
  readonly inputs: readonly string[];
  /** Symmetric, 1 on the diagonal, −1 to 1 elsewhere, with no negative eigenvalue. */
  readonly coefficients: readonly (readonly number[])[];
}

/** Rounding allowance on symmetry and on the diagonal, and how far below 0 a pivot may come out. */
const ROUNDING = 1e-12;

function checkShape(matrix: readonly (readonly number[])[], size: number, path: string): void {
  const square = Array.isArray(matrix) && matrix.length === size;
  if (square && matrix.every((row) => Array.isArray(row) && row.length === size)) return;
  const code = matrix === undefined || matrix === null ? "missing" : "inconsistent";
  fail({ code, path, expected: `${size} rows of ${size} numbers`, received: matrix });
}

/**
 * Lower triangle L with L·Lᵀ = matrix. A zero pivot is legal (one input follows from others), a negative one is not: no
 * quantities can be correlated that way.
 */
export function correlationFactor(
  matrix: readonly (readonly number[])[],
  size: number,
  path: string,
): readonly Float64Array[] {
  checkShape(matrix, size, path);
  const at = (i: number, j: number): number => (matrix[i] as readonly number[])[j] as number;
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      checkFinite(`${path}.${i}.${j}`, at(i, j));
      const r = at(i, j);
      if (i === j ? Math.abs(r - 1) > ROUNDING : Math.abs(r) > 1) {
        const expected = i === j ? "1 on the diagonal" : "-1 to 1";
        fail({ code: "out-of-range", path: `${path}.${i}.${j}`, expected, received: r });
      }
      if (Math.abs(r - at(j, i)) > ROUNDING) {
        const expected = `the same as ${path}.${j}.${i}, ${at(j, i)}`;
        fail({ code: "inconsistent", path: `${path}.${i}.${j}`, expected, received: r });
      }
    }
  }
  const rows: Float64Array[] = [];
  for (let i = 0; i < size; i += 1) {
    const row = new Float64Array(size);
    for (let j = 0; j <= i; j += 1) {
      const other = i === j ? row : (rows[j] as Float64Array);
      let left = i === j ? 1 : at(i, j);
      for (let k = 0; k < j; k += 1) left -= (row[k] as number) * (other[k] as number);
      const pivot = i === j ? 0 : (other[j] as number);
      const impossible = i === j ? left < -ROUNDING * size : pivot === 0 && Math.abs(left) > 1e-7;
      if (impossible) {
        fail({
          code: "inconsistent",
          path,
          expected: "coefficients that can hold together (no negative eigenvalue)",
          received: `a matrix that input ${i} makes impossible`,
        });
      }
      // A pivot that is rounding only counts as 0: the root of 1e-16 would be 1e-8 of noise.
      row[j] = i === j ? (left > ROUNDING * size ? Math.sqrt(left) : 0) : pivot === 0 ? 0 : left / pivot;
    }
    rows.push(row);
  }
  return rows;
}

/** Checks the names too, and lays the coefficients out over all inputs. */
export function fullCorrelation(
  correlation: Correlation | undefined,
  inputs: readonly string[],
): readonly (readonly number[])[] {
  const full = inputs.map((_, i) => inputs.map((_unused, j) => (i === j ? 1 : 0)));
  if (correlation === undefined) return full;
  const { inputs: names, coefficients } = given(correlation, "correlation");
  if (!Array.isArray(names)) {
    fail({ code: "missing", path: "correlation.inputs", expected: "a list of inputs", received: names });
  }
  const places = names.map((name, i) => {
    const path = `correlation.inputs.${i}`;
    const place = inputs.indexOf(name);
    if (place < 0)
      fail({ code: "unknown-name", path, expected: `one of ${inputs.join(", ")}`, received: name });
    if (names.indexOf(name) !== i) {
      fail({ code: "duplicate", path, expected: "each input once", received: name });
    }
    return place;
  });
  correlationFactor(coefficients, names.length, "correlation.coefficients");
  places.forEach((row, i) => {
    places.forEach((column, j) => {
      if (i !== j) {
        (full[row] as number[])[column] = (coefficients[i] as readonly number[])[j] as number;
      }
    });
  });
  return full;
}

/** Sets of inputs that hang together by correlation, each with its members in order; one member where it stands alone. */
export function correlatedGroups(full: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const groupOf = full.map((_, i) => i);
  full.forEach((row, i) => {
    row.forEach((r, j) => {
      if (r === 0 || groupOf[i] === groupOf[j]) return;
      const [kept, merged] = [groupOf[i], groupOf[j]];
      groupOf.forEach((group, k) => {
        if (group === merged) groupOf[k] = kept as number;
      });
    });
  });
  return [...new Set(groupOf)].map((group) => groupOf.flatMap((other, i) => (other === group ? [i] : [])));
}

/** The law of propagation of uncertainty for outputs whose sensitivity coefficients are known. */
import { checkFinite, checkNonNegative, fail, given } from "../quantity/index.ts";
import { correlationFactor } from "./correlation.ts";

/**
 * Result of {@link propagateUncertainty}.
 * @since 0.1.0
 */
export interface PropagatedUncertainty {
  /** Combined standard uncertainty of each output. */
  readonly standardUncertainties: readonly number[];
  /** Covariance of the outputs. */
  readonly covariance: readonly (readonly number[])[];
  /** Correlation coefficients of the outputs; `null` with an output that has no uncertainty. */
  readonly correlation: readonly (readonly (number | null)[])[];
}

/**
 * Law of propagation of uncertainty, for one output or several: U_y = C·U_x·Cᵀ, with U_x(i, j) = u(xᵢ)·u(xⱼ)·r(xᵢ, xⱼ).
 *
 * First order: exact for models that are linear in their inputs. Summed as squares of C·u·L with L·Lᵀ the correlation
 * matrix, so that parts that cancel cannot leave a variance below 0.
 * @param input.sensitivities - ∂y/∂x: one row for each output, one column for each input
 * @param input.standardUncertainties - of the inputs, 0 or more
 * @param input.correlation - correlation coefficients of the inputs; left out, they are independent
 * @returns standard uncertainties, covariance and correlation of the outputs
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source JCGM 100:2008 (GUM), 5.1.2, 5.2.2 equation (16), H.2.3 equation (H.9)
 * @example
 * ```ts
 * propagateUncertainty({ sensitivities: [[1, 1]], standardUncertainties: [0.3, 0.4] }).standardUncertainties // => [0.5]
 * ```
 * @since 0.1.0
 */
export function propagateUncertainty(input: {
  readonly sensitivities: readonly (readonly number[])[];
  readonly standardUncertainties: readonly number[];
  readonly correlation?: readonly (readonly number[])[];
}): PropagatedUncertainty {
  const { sensitivities, standardUncertainties: u, correlation } = given(input);
  for (const [path, list] of [
    ["sensitivities", sensitivities],
    ["standardUncertainties", u],
  ] as const) {
    if (!Array.isArray(list) || list.length === 0) {
      fail({ code: "missing", path, expected: "a list of numbers", received: list });
    }
  }
  const n = u.length;
  u.forEach((value, i) => {
    checkNonNegative(`standardUncertainties.${i}`, value);
  });
  sensitivities.forEach((row, k) => {
    if (!Array.isArray(row) || row.length !== n) {
      fail({ code: "inconsistent", path: `sensitivities.${k}`, expected: `${n} numbers`, received: row });
    }
    row.forEach((value: number, i) => {
      checkFinite(`sensitivities.${k}.${i}`, value);
    });
  });
  const factor = correlation === undefined ? undefined : correlationFactor(correlation, n, "correlation");
  const rows = sensitivities.map((row) => {
    const scaled = row.map((c, i) => c * (u[i] as number));
    if (factor === undefined) return scaled;
    return scaled.map((_, j) =>
      scaled.reduce((sum, value, i) => sum + value * (factor[i]?.[j] as number), 0),
    );
  });
  // Over its largest part, so that squares neither over- nor underflow.
  const standardUncertainties = rows.map((row) => Math.hypot(...row));
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
  const covariance = rows.map((a) => rows.map((b) => dot(a, b)));
  if (!covariance.flat().every(Number.isFinite)) {
    const expected = "products c·u small enough to be squared in float64 (below about 1e150)";
    fail({ code: "out-of-range", path: "sensitivities", expected, received: "larger" });
  }
  return {
    standardUncertainties,
    covariance,
    correlation: rows.map((a, i) =>
      rows.map((b, j) => {
        const [sa, sb] = [standardUncertainties[i] as number, standardUncertainties[j] as number];
        if (sa === 0 || sb === 0) return null;
        if (i === j) return 1;
        // Unit vectors first: the product of two tiny uncertainties would underflow.
        const r = dot(
          a.map((value) => value / sa),
          b.map((value) => value / sb),
        );
        return Math.min(1, Math.max(-1, r));
      }),
    ),
  };
}

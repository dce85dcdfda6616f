/** Estimate, standard uncertainty and coverage intervals of a set of model values (JCGM 101, 7.5 to 7.7). */

/**
 * What a Monte Carlo run found for one output.
 * @since 0.1.0
 */
export interface MonteCarloOutput {
  /** Name of the output; `result` for a calculation that gives a bare number. */
  readonly output: string;
  /** Estimate: mean of the model values. */
  readonly estimate: number;
  /** Standard uncertainty: standard deviation of the model values. */
  readonly standardUncertainty: number;
  /** Coverage probability of both intervals. */
  readonly coverageProbability: number;
  /** Probabilistically symmetric coverage interval: as much probability below as above. */
  readonly symmetric: {
    /** Lower end. */
    readonly low: number;
    /** Upper end. */
    readonly high: number;
  };
  /** Shortest coverage interval. */
  readonly shortest: {
    /** Lower end. */
    readonly low: number;
    /** Upper end. */
    readonly high: number;
  };
}

/** Ranks from 1 of the ends: how many values apart they are, and where the symmetric interval starts. */
function ranks(
  count: number,
  coverageProbability: number,
): { readonly apart: number; readonly start: number } {
  // Whole or not (7.7.1): 0.95·1e6 in float64 may fall beside the whole number it is.
  const apart = Math.round(coverageProbability * count);
  return { apart, start: Math.ceil((count - apart) / 2) };
}

/** Summary of one output. Sorts the values in place. */
export function summary(output: string, values: Float64Array, coverageProbability: number): MonteCarloOutput {
  const count = values.length;
  // About one of the values: digits common to all would otherwise use up those that differ.
  const about = values[0] as number;
  let sum = 0;
  for (let i = 0; i < count; i += 1) sum += (values[i] as number) - about;
  const estimate = about + sum / count;
  let squares = 0;
  for (let i = 0; i < count; i += 1) squares += ((values[i] as number) - estimate) ** 2;
  values.sort();
  const { apart, start } = ranks(count, coverageProbability);
  let at = 1;
  let least = Number.POSITIVE_INFINITY;
  for (let r = 1; r + apart <= count; r += 1) {
    const width = (values[r + apart - 1] as number) - (values[r - 1] as number);
    if (width < least) {
      least = width;
      at = r;
    }
  }
  const interval = (r: number): { low: number; high: number } => ({
    low: (values[r - 1] as number) + 0,
    high: (values[r + apart - 1] as number) + 0,
  });
  return {
    output,
    estimate: estimate + 0,
    standardUncertainty: Math.sqrt(squares / (count - 1)),
    coverageProbability,
    symmetric: interval(start),
    shortest: interval(at),
  };
}

/**
 * Numerical tolerance of a standard uncertainty: with u written as c·10^l, c of `digits` digits, half of 10^l.
 * (JCGM 101, 7.9.2)
 */
export function numericalTolerance(standardUncertainty: number, digits: number): number {
  if (standardUncertainty === 0) return 0;
  // Through text, which rounds 0.0999 to 0.10 and not to 0.100.
  const exponent = Number(standardUncertainty.toExponential(digits - 1).split("e")[1]);
  return 0.5 * 10 ** (exponent - digits + 1);
}

/** What the readings show of the three line voltages, and what they would show were the supply known to scatter less. */
import { backwardInPlace, choleskyInPlace, forwardInPlace, product } from "../numbers/linear.ts";
import { filled, floats } from "../numbers/room.ts";
import type { Model } from "./model.ts";

/**
 * What the readings show of the logarithms of the three line voltages: Vᵀ·C⁻¹·r and Vᵀ·C⁻¹·V, with V their effects on the
 * readings, C the covariance and r the residuals.
 */
export interface Shown {
  readonly score: Float64Array;
  /** 3 × 3. */
  readonly information: Float64Array;
}

/** What is shown about a model just visited. */
export function shownBy({ prediction, evaluation, question }: Model): Shown {
  const { count: m, active, factor, residual } = evaluation;
  const effects = [floats(m), floats(m), floats(m)];
  const score = floats(3);
  const information = floats(9);
  for (let k = 0; k < 3; k += 1) {
    const effect = effects[k] as Float64Array;
    const base = (prediction.voltageColumn + k) * prediction.rows;
    for (let i = 0; i < m; i += 1) {
      effect[i] = (prediction.columns[base + (active[i] as number)] as number) / question.by.unbalance;
    }
    forwardInPlace(factor, m, effect);
    score[k] = product(effect, residual, m);
    for (let j = 0; j <= k; j += 1) {
      const both = product(effect, effects[j] as Float64Array, m);
      information[3 * k + j] = both;
      information[3 * j + k] = both;
    }
  }
  return { score, information };
}

/**
 * The same on a supply of less scatter: C less `variance` of each line voltage, by the identities of Woodbury and Sylvester.
 * `gain` is what ln likelihood gains by it.
 */
export function narrowed(
  { score, information }: Shown,
  variance: number,
): { readonly shown: Shown; readonly gain: number } {
  const left = filled(9, (k) => (k % 4 === 0 ? 1 : 0) - variance * (information[k] as number));
  const logDeterminant = choleskyInPlace(left, 3);
  // (I − v·G)⁻¹ commutes with G: with I − v·G = L·Lᵀ both are L⁻ᵀ·L⁻¹ times what they were.
  const solved = (from: Float64Array, offset: number): Float64Array => {
    const x = filled(3, (k) => from[offset + k] as number);
    forwardInPlace(left, 3, x);
    backwardInPlace(left, 3, x);
    return x;
  };
  const own = solved(score, 0);
  const sharper = floats(9);
  for (let k = 0; k < 3; k += 1) sharper.set(solved(information, 3 * k), 3 * k);
  const gain = -0.5 * (logDeterminant + variance * product(score, own, 3));
  return { shown: { score: own, information: sharper }, gain };
}

/** Unbalance by each named definition, and the symmetrical components behind the last one. */
import { type Complex, complexProduct, complexScaled, complexSum, modulus } from "../numeric/index.ts";
import { checkMeasurable, checkMeasurableOrZero, fail, given, givenList } from "../quantity/index.ts";
import { isBounded } from "./scale.ts";

/**
 * Symmetrical components of three phasors.
 * @since 0.1.0
 */
export interface SymmetricalComponents {
  /** Zero sequence. */
  readonly zero: Complex;
  /** Positive sequence. */
  readonly positive: Complex;
  /** Negative sequence. */
  readonly negative: Complex;
}

// √3/2 as a literal: a call here would stay in every bundle that takes anything from this room.
const ROTATE: Complex = { re: -0.5, im: 0.8660254037844386 };
const ROTATE_TWICE: Complex = { re: -0.5, im: -0.8660254037844386 };

/**
 * Symmetrical components of three phasors in the order L1, L2, L3:
 * X0 = (X1 + X2 + X3)/3, X⁺ = (X1 + a·X2 + a²·X3)/3, X⁻ = (X1 + a²·X2 + a·X3)/3 with a = 1∠120°.
 * @param phasors - L1, L2, L3; volts or amperes
 * @returns zero, positive and negative sequence, in the same unit
 * @throws ElectroheatError `not-a-number`
 * @source C. L. Fortescue, Method of symmetrical co-ordinates applied to the solution of polyphase networks, Transactions
 *   of the AIEE 37 (1918) 1027
 * @example
 * ```ts
 * const one: Complex = { re: 10, im: 0 };
 * symmetricalComponents([one, { re: 0, im: 0 }, { re: 0, im: 0 }]).negative // => { re: 3.33333, im: 0 }
 * ```
 * @since 0.1.0
 */
export function symmetricalComponents(phasors: readonly [Complex, Complex, Complex]): SymmetricalComponents {
  givenList(phasors, "phasors");
  for (let i = 0; i < 3; i += 1) {
    const z = phasors[i] as Complex;
    if (!isBounded(z)) {
      const expected = "a finite phasor, each part at most 1e30";
      fail({
        code: z === undefined ? "missing" : "not-a-number",
        path: `phasors.${i}`,
        expected,
        received: z,
      });
    }
  }
  const [x1, x2, x3] = phasors;
  const third = (a: Complex, b: Complex): Complex => complexScaled(complexSum(complexSum(x1, a), b), 1 / 3);
  return {
    zero: third(x2, x3),
    positive: third(complexProduct(ROTATE, x2), complexProduct(ROTATE_TWICE, x3)),
    negative: third(complexProduct(ROTATE_TWICE, x2), complexProduct(ROTATE, x3)),
  };
}

/**
 * Unbalance of three magnitudes by each named definition, as ratios (0.02 is 2 %). They differ: always say which.
 * @since 0.1.0
 */
export interface Unbalance {
  /** Unrounded mean of the three. */
  readonly mean: number;
  /** Largest deviation from the mean over the mean: "line voltage unbalance rate" on line voltages. */
  readonly maxDeviation: number;
  /** (largest − smallest)/mean: neither of the standards' definitions, but often quoted. */
  readonly spread: number;
  /** Negative over positive sequence, from the triangle three line voltages close; `null` if they close none. */
  readonly negativeSequence: number | null;
}

/**
 * Unbalance of three measured magnitudes, all definitions side by side.
 *
 * maxDeviation = max|X − X̄|/X̄. negativeSequence = √((1 − s)/(1 + s)), s = √(3 − 6β), β = ΣX⁴/(ΣX²)²: exact for line voltages,
 * and for the currents of a three-wire module, whose phasors close a triangle too. The mean is never rounded: 220, 216 and
 * 213 V are 1.69 %, not the 1.8 % that a rounded mean gives.
 * @param input.l1 - first magnitude, V or A, more than 0 (one current may be 0)
 * @param input.l2 - second magnitude
 * @param input.l3 - third magnitude
 * @returns each definition as a ratio
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source maxDeviation on line voltages: NEMA MG 1 (clause from memory); negativeSequence from magnitudes: IEC 61000-4-30
 *   (clause from memory), checked against the phasor triangle
 * @example
 * ```ts
 * unbalance({ l1: 480, l2: 470, l3: 465 }).maxDeviation // => 0.0176678
 * ```
 * @since 0.1.0
 */
export function unbalance(input: {
  readonly l1: number;
  readonly l2: number;
  readonly l3: number;
}): Unbalance {
  const { l1, l2, l3 } = given(input);
  const values = [l1, l2, l3] as const;
  values.forEach((x, i) => {
    checkMeasurableOrZero(`l${i + 1}`, x);
  });
  const mean = (values[0] + values[1] + values[2]) / 3;
  checkMeasurable("mean", mean);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  // Scaled by the mean first, so that fourth powers neither overflow nor underflow.
  const squares = values.map((x) => (x / mean) ** 2) as [number, number, number];
  const sum = squares[0] + squares[1] + squares[2];
  const beta = (squares[0] ** 2 + squares[1] ** 2 + squares[2] ** 2) / (sum * sum);
  const closes = 2 * high <= 3 * mean * (1 + 1e-12);
  const s = Math.sqrt(Math.max(0, 3 - 6 * beta));
  return {
    mean,
    maxDeviation: Math.max(high - mean, mean - low) / mean,
    spread: (high - low) / mean,
    negativeSequence: closes ? Math.sqrt(Math.max(0, 1 - s) / (1 + s)) : null,
  };
}

/**
 * Negative over positive sequence of three phasors: the unbalance of a voltage or current system with known angles.
 * @param phasors - L1, L2, L3; volts or amperes
 * @returns |X⁻|/|X⁺| as a ratio; 1 for a single-phase current
 * @throws ElectroheatError `not-a-number`; `inconsistent` when there is no positive sequence
 * @source Fortescue 1918, as {@link symmetricalComponents}
 * @example
 * ```ts
 * const at = (degrees: number): Complex => phasor({ magnitude: 230, degrees });
 * negativeSequenceRatio([at(0), at(-120), at(120)]) // => 0
 * ```
 * @since 0.1.0
 */
export function negativeSequenceRatio(phasors: readonly [Complex, Complex, Complex]): number {
  const { positive, negative } = symmetricalComponents(phasors);
  const size = phasors.reduce((total, z) => total + modulus(z), 0);
  if (!(modulus(positive) > 1e-12 * size)) {
    fail({
      code: "inconsistent",
      path: "phasors",
      expected: "some positive sequence",
      received: modulus(positive),
    });
  }
  const ratio = modulus(negative) / modulus(positive);
  // Rounding of the operator a leaves about 1e-16 of the positive sequence behind.
  return ratio < 1e-14 ? 0 : ratio;
}

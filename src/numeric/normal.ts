/** The normal distribution: probability from a deviate, and a deviate from a probability. */
import { checkFinite, fail } from "../quantity/index.ts";
import { complementaryErrorFunction } from "./chiSquare.ts";

/** Value of a polynomial, lowest power first. */
function polynomial(x: number, coefficients: readonly number[]): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) value = value * x + (coefficients[i] as number);
  return value;
}

// Digits as far as float64 holds them. Rational approximations of Wichura's PPND16, numerator and denominator each: the centre, the near and the far tail.
const CENTRE: readonly [readonly number[], readonly number[]] = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
    67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
];
const NEAR: readonly [readonly number[], readonly number[]] = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
];
const FAR: readonly [readonly number[], readonly number[]] = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
];

/**
 * Probability that a standard normal deviate is at most z: Φ(z) = ½·erfc(−z/√2).
 * @param z - deviate, in standard deviations
 * @returns probability, 0..1
 * @throws ElectroheatError `missing`, `not-a-number`
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.29
 * @example
 * ```ts
 * normalCumulative(1.959964) // => 0.9750000
 * ```
 * @since 0.1.0
 */
export function normalCumulative(z: number): number {
  checkFinite("z", z);
  const tail = complementaryErrorFunction(Math.abs(z) / Math.SQRT2) / 2;
  return z > 0 ? 1 - tail : tail;
}

/**
 * Standard normal deviate that a probability stays below: z with Φ(z) = probability.
 * @param probability - more than 0, less than 1
 * @returns deviate, in standard deviations
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution, Applied Statistics 37
 *   (1988) 477
 * @example
 * ```ts
 * normalQuantile(0.975) // => 1.95996398454005
 * ```
 * @since 0.1.0
 */
export function normalQuantile(probability: number): number {
  checkFinite("probability", probability);
  if (!(probability > 0 && probability < 1)) {
    fail({
      code: "out-of-range",
      path: "probability",
      expected: "more than 0, less than 1",
      received: probability,
    });
  }
  const q = probability - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(r, CENTRE[0])) / polynomial(r, CENTRE[1]) + 0;
  }
  const r = Math.sqrt(-Math.log(q < 0 ? probability : 1 - probability));
  const [x, [top, bottom]] = r <= 5 ? [r - 1.6, NEAR] : [r - 5, FAR];
  const size = polynomial(x, top) / polynomial(x, bottom);
  return q < 0 ? -size : size;
}

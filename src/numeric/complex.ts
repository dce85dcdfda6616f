/**
 * Complex numbers as plain `{ re, im }` records, for phasors. RMS phasors: the modulus is what a meter reads.
 * Every function checks its numbers and its result: NaN, ±Infinity and an overflow are errors. The `+ 0` turns −0 into 0: JSON cannot say −0, and a result must survive it unchanged.
 */
import { checkFinite, fail } from "../quantity/index.ts";

/**
 * A complex number or an RMS phasor; the unit is that of the field it stands in.
 * @since 0.1.0
 */
export interface Complex {
  /** Real part. */
  readonly re: number;
  /** Imaginary part. */
  readonly im: number;
}

function checkComplex(path: string, z: Complex): void {
  checkFinite(`${path}.re`, z?.re);
  checkFinite(`${path}.im`, z?.im);
}

/** A result that float64 holds. The numbers it came from are finite, so anything else is an overflow. */
function held(value: number, path: string): number {
  if (value - value === 0) return value + 0;
  return fail({
    code: "out-of-range",
    path,
    expected: "numbers whose result float64 can hold (below about 1.8e308)",
    received: value,
  });
}

/**
 * Phasor from modulus and angle: modulus·(cos φ + j sin φ).
 * @param input.magnitude - modulus, any unit
 * @param input.degrees - angle in degrees; multiples of 90° are exact
 * @returns the phasor
 * @throws ElectroheatError `missing`, `not-a-number`
 * @example
 * ```ts
 * phasor({ magnitude: 277.128, degrees: -120 }) // => { re: -138.564, im: -240 }
 * ```
 * @since 0.1.0
 */
export function phasor(input: { readonly magnitude: number; readonly degrees: number }): Complex {
  const { magnitude, degrees } = input ?? {};
  checkFinite("magnitude", magnitude);
  checkFinite("degrees", degrees, "°");
  // Reduced in degrees, where it is exact, so that 90° gives a real part of exactly 0.
  const turn = ((degrees % 360) + 360) % 360;
  if (turn % 90 === 0) {
    const cos = [1, 0, -1, 0][turn / 90] as number;
    const sin = [0, 1, 0, -1][turn / 90] as number;
    return { re: magnitude * cos + 0, im: magnitude * sin + 0 };
  }
  const radians = (turn * Math.PI) / 180;
  return { re: magnitude * Math.cos(radians) + 0, im: magnitude * Math.sin(radians) + 0 };
}

/**
 * Modulus |z| = √(re² + im²).
 * @param z - a complex number
 * @returns its modulus, 0 or more
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` for a result beyond float64
 * @example
 * ```ts
 * modulus({ re: 3, im: 4 }) // => 5
 * ```
 * @since 0.1.0
 */
export function modulus(z: Complex): number {
  const re = z?.re;
  const im = z?.im;
  if (typeof re !== "number" || typeof im !== "number") checkComplex("z", z);
  // sqrt of a sum is several times faster than Math.hypot; hypot only where squares could over- or underflow.
  const square = re * re + im * im;
  if (square > 1e-280 && square < 1e280) return Math.sqrt(square);
  checkComplex("z", z);
  return held(Math.hypot(re, im), "z");
}

/**
 * Angle of z in degrees, −180 < φ ≤ 180; 0 for z = 0.
 * @param z - a complex number
 * @returns its angle in degrees
 * @throws ElectroheatError `missing`, `not-a-number`
 * @example
 * ```ts
 * angleDegrees({ re: 0, im: -2 }) // => -90
 * ```
 * @since 0.1.0
 */
export function angleDegrees(z: Complex): number {
  checkComplex("z", z);
  const degrees = (Math.atan2(z.im, z.re) * 180) / Math.PI;
  return degrees === -180 ? 180 : degrees + 0;
}

/**
 * Sum a + b.
 * @param a - a complex number
 * @param b - a complex number
 * @returns a + b
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` for a result beyond float64
 * @example
 * ```ts
 * complexSum({ re: 1, im: 2 }, { re: 3, im: -1 }) // => { re: 4, im: 1 }
 * ```
 * @since 0.1.0
 */
export function complexSum(a: Complex, b: Complex): Complex {
  checkComplex("a", a);
  checkComplex("b", b);
  return { re: held(a.re + b.re, "a"), im: held(a.im + b.im, "a") };
}

/**
 * Difference a − b.
 * @param a - a complex number
 * @param b - a complex number
 * @returns a − b
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` for a result beyond float64
 * @example
 * ```ts
 * complexDifference({ re: 1, im: 2 }, { re: 3, im: -1 }) // => { re: -2, im: 3 }
 * ```
 * @since 0.1.0
 */
export function complexDifference(a: Complex, b: Complex): Complex {
  checkComplex("a", a);
  checkComplex("b", b);
  return { re: held(a.re - b.re, "a"), im: held(a.im - b.im, "a") };
}

/**
 * Product a·b.
 * @param a - a complex number
 * @param b - a complex number
 * @returns a·b
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` for a result beyond float64
 * @example
 * ```ts
 * complexProduct({ re: 1, im: 2 }, { re: 3, im: -1 }) // => { re: 5, im: 5 }
 * ```
 * @since 0.1.0
 */
export function complexProduct(a: Complex, b: Complex): Complex {
  checkComplex("a", a);
  checkComplex("b", b);
  return { re: held(a.re * b.re - a.im * b.im, "a"), im: held(a.re * b.im + a.im * b.re, "a") };
}

/**
 * Product of a complex number and a real one.
 * @param z - a complex number
 * @param factor - a real factor
 * @returns factor·z
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` for a result beyond float64
 * @example
 * ```ts
 * complexScaled({ re: 1, im: 2 }, 3) // => { re: 3, im: 6 }
 * ```
 * @since 0.1.0
 */
export function complexScaled(z: Complex, factor: number): Complex {
  checkComplex("z", z);
  checkFinite("factor", factor);
  return { re: held(z.re * factor, "factor"), im: held(z.im * factor, "factor") };
}

/**
 * Quotient a/b by Smith's method, which does not overflow where |b|² would.
 * @param a - a complex number
 * @param b - a complex number other than 0
 * @returns a/b
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` for b = 0 and for a result beyond float64
 * @source R. L. Smith, Algorithm 116: Complex division, Communications of the ACM 5 (1962) 435
 * @example
 * ```ts
 * complexQuotient({ re: 5, im: 5 }, { re: 3, im: -1 }) // => { re: 1, im: 2 }
 * ```
 * @since 0.1.0
 */
export function complexQuotient(a: Complex, b: Complex): Complex {
  checkComplex("a", a);
  checkComplex("b", b);
  if (b.re === 0 && b.im === 0) {
    fail({ code: "out-of-range", path: "b", expected: "a complex number other than 0", received: 0 });
  }
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const ratio = b.im / b.re;
    const denominator = b.re + b.im * ratio;
    return {
      re: held((a.re + a.im * ratio) / denominator, "b"),
      im: held((a.im - a.re * ratio) / denominator, "b"),
    };
  }
  const ratio = b.re / b.im;
  const denominator = b.re * ratio + b.im;
  return {
    re: held((a.re * ratio + a.im) / denominator, "b"),
    im: held((a.im * ratio - a.re) / denominator, "b"),
  };
}

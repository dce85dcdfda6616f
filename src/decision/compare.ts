/**
 * Limits compared in decimal. A double that came through a short chain of operations differs from the decimal
 * number a person would have got by about 1e-15 of its value, and 48 A × 1.25 against 60 A must not turn on that.
 */
import { Decimal as DecimalLibrary } from "decimal.js";
import { checkFinite, checkWhole, fail } from "../quantity/index.ts";

/**
 * Significant decimal digits on which limits are compared.
 *
 * A chain of a hundred float64 operations stays within about 1e-14; field readings carry 3 to 5 digits and
 * published limits at most 6. Twelve digits lie well clear of both, so no decision turns on noise and none that
 * a person could see in the digits is lost.
 * @since 0.1.0
 */
export const DECISION_DIGITS = 12;

/** A private copy: precision settings of the shared constructor belong to the program, not to a library. */
const Decimal: typeof DecimalLibrary = /*#__PURE__*/ DecimalLibrary.clone({
  precision: 40,
  rounding: DecimalLibrary.ROUND_HALF_UP,
});

function quoted(path: string, value: number): DecimalLibrary {
  checkFinite(path, value);
  return new Decimal(value).toSignificantDigits(DECISION_DIGITS);
}

/**
 * Compares two numbers on their first {@link DECISION_DIGITS} significant decimal digits.
 * @param input.left - a number
 * @param input.right - a number in the same unit
 * @returns −1 if left is less, 0 if they are the same to that many digits, 1 if left is more
 * @throws ElectroheatError `missing`, `not-a-number`
 * @source decimal arithmetic; the number of digits is our decision, reasoned at {@link DECISION_DIGITS}
 * @example
 * ```ts
 * compareQuoted({ left: 48.00000000000001, right: 48 }) // => 0
 * ```
 * @since 0.1.0
 */
export function compareQuoted(input: { readonly left: number; readonly right: number }): -1 | 0 | 1 {
  const order = quoted("left", input?.left).comparedTo(quoted("right", input.right));
  return order < 0 ? -1 : order > 0 ? 1 : 0;
}

/**
 * Product of two numbers in decimal, each taken at {@link DECISION_DIGITS} significant digits, as is the result.
 * @param input.value - a number
 * @param input.factor - a factor, such as 1.25
 * @returns the product, free of float noise
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` for a product beyond float64
 * @source decimal arithmetic
 * @example
 * ```ts
 * decimalProduct({ value: 47.99999999999999, factor: 1.25 }) // => 60
 * ```
 * @since 0.1.0
 */
export function decimalProduct(input: { readonly value: number; readonly factor: number }): number {
  const product = quoted("value", input?.value)
    .times(quoted("factor", input.factor))
    .toSignificantDigits(DECISION_DIGITS)
    .toNumber();
  if (!Number.isFinite(product)) {
    fail({
      code: "out-of-range",
      path: "factor",
      expected: "a product that float64 can hold (below about 1.8e308)",
      received: input.factor,
    });
  }
  // + 0 here and below: JSON cannot say −0.
  return product + 0;
}

/**
 * Rounds to a number of decimal places, half away from zero, on the decimal digits of the value.
 * @param input.value - a number
 * @param input.places - decimal places, whole, 0 to 12
 * @returns the rounded number
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source decimal arithmetic
 * @example
 * ```ts
 * roundDecimal({ value: 1.005, places: 2 }) // => 1.01
 * ```
 * @since 0.1.0
 */
export function roundDecimal(input: { readonly value: number; readonly places: number }): number {
  checkWhole("places", input?.places, 0, DECISION_DIGITS);
  return quoted("value", input.value).toDecimalPlaces(input.places).toNumber() + 0;
}

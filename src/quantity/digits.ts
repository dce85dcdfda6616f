/**
 * Decimal rounding on the shortest decimal digits of a double, without `Intl` and without a decimal library
 * (script hosts have neither). 1.005 is rounded as the text 1.005, not as the binary 1.00499999999999989…
 */

/** digits × 10^place, the digits being a whole number without leading zeros ("0" for zero). */
export interface Decimal {
  readonly negative: boolean;
  readonly digits: string;
  /** Power of ten of the last digit. */
  readonly place: number;
}

/** The shortest digits that read back as the same double. */
export function decimalOf(value: number): Decimal {
  // toExponential without an argument gives as many digits as necessary (ECMA-262 Number.prototype.toExponential).
  const text = Math.abs(value).toExponential();
  const mark = text.indexOf("e");
  const digits = text.slice(0, mark).replace(".", "");
  return { negative: value < 0, digits, place: Number(text.slice(mark + 1)) - (digits.length - 1) };
}

/** Power of ten of the first digit. */
export function leadingPlace(decimal: Decimal): number {
  return decimal.place + decimal.digits.length - 1;
}

function increment(digits: string): string {
  let end = digits.length;
  while (end > 0 && digits[end - 1] === "9") end--;
  const zeros = "0".repeat(digits.length - end);
  return end === 0 ? `1${zeros}` : `${digits.slice(0, end - 1)}${Number(digits[end - 1]) + 1}${zeros}`;
}

/** Rounds half away from zero so that the last digit stands at the given power of ten. */
export function roundAt(decimal: Decimal, place: number): Decimal {
  const { negative, digits } = decimal;
  const cut = place - decimal.place;
  if (cut <= 0) return { negative, digits: digits + "0".repeat(-cut), place };
  if (cut > digits.length) return { negative, digits: "0", place };
  const kept = digits.slice(0, digits.length - cut) || "0";
  const up = (digits[digits.length - cut] as string) >= "5";
  return { negative, digits: up ? increment(kept) : kept, place };
}

/** Rounds to a number of significant digits: 9.99 to two is 10, not 10.0. */
export function roundSignificant(decimal: Decimal, count: number): Decimal {
  if (decimal.digits === "0") return { ...decimal, place: 1 - count };
  const rounded = roundAt(decimal, leadingPlace(decimal) - count + 1);
  return rounded.digits.length > count ? roundAt(rounded, rounded.place + 1) : rounded;
}

/** Digits with a decimal mark; a rounded zero loses its sign. */
export function writeFixed(decimal: Decimal): string {
  const { digits, place } = decimal;
  const sign = decimal.negative && !/^0+$/.test(digits) ? "-" : "";
  if (place >= 0) return sign + (digits === "0" ? "0" : digits + "0".repeat(place));
  const padded = digits.padStart(1 - place, "0");
  return `${sign}${padded.slice(0, place)}.${padded.slice(place)}`;
}

/** As fixed notation from 1e-7 up to 1e21, where a double prints itself so; with an exponent beyond. */
export function writeShort(decimal: Decimal): string {
  const lead = leadingPlace(decimal);
  if (decimal.digits === "0" || (lead >= -7 && lead < 21)) return writeFixed(decimal);
  const mantissa = writeFixed({ ...decimal, place: 1 - decimal.digits.length });
  return `${mantissa}e${lead < 0 ? "-" : "+"}${Math.abs(lead)}`;
}

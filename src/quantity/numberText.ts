/** Reads the number at the start of a text, character by character: no backtracking, no locale. */
import { type ErrorCode, fail } from "./errors.ts";

/** A number as it was written. */
export interface NumberText {
  readonly value: number;
  /** One unit of the last digit written; of a fraction, one part. */
  readonly resolution: number;
  /** Null for a fraction. */
  readonly significantDigits: number | null;
  /** Two numbers with a slash and no whole one before them: a fraction, or two ratings side by side. */
  readonly pair: boolean;
  /** Where the rest of the text begins. */
  readonly end: number;
}

const SPACES = " \t\u00A0\u2009\u202F";

function isDigit(character: string | undefined): boolean {
  return character !== undefined && character >= "0" && character <= "9";
}

/** First place at or after `at` that is no digit. */
function skipDigits(text: string, at: number): number {
  let end = at;
  while (isDigit(text[end])) end++;
  return end;
}

function skipSpaces(text: string, at: number): number {
  let end = at;
  while (end < text.length && SPACES.includes(text[end] as string)) end++;
  return end;
}

/** Cuts spaces, tabs and no-break spaces at both ends. */
export function trimSpaces(text: string): string {
  const start = skipSpaces(text, 0);
  let end = text.length;
  while (end > start && SPACES.includes(text[end - 1] as string)) end--;
  return text.slice(start, end);
}

/** Where the first word of a text ends: at a space, a tab, a no-break space, or with the text. */
export function wordEnd(text: string): number {
  let end = 0;
  while (end < text.length && !SPACES.includes(text[end] as string)) end++;
  return end;
}

function isSlash(character: string | undefined): boolean {
  return character === "/" || character === "\u2044";
}

/** End of `digits/digits` at `at`, or `at` itself when there is none. */
function fractionEnd(text: string, at: number): number {
  const slash = skipDigits(text, at);
  if (slash === at || !isSlash(text[slash])) return at;
  const end = skipDigits(text, slash + 1);
  return end === slash + 1 ? at : end;
}

/** + 0: nobody means a negative nothing, and JSON cannot say it. */
function signed(size: number, negative: boolean): number {
  return (negative ? -size : size) + 0;
}

/** Where a mixed number's fraction begins ("1 1/2", "1-1/2"), or -1. */
function mixedStart(text: string, end: number): number {
  const start = text[end] === "-" ? end + 1 : skipSpaces(text, end);
  return start > end && fractionEnd(text, start) > start ? start : -1;
}

/**
 * @param path - name of the text
 * @param text - text without spaces at its ends, not empty
 * @param expected - what is allowed, in words
 * @param decimalComma - the decimal mark is a comma
 */
export function readNumber(path: string, text: string, expected: string, decimalComma: boolean): NumberText {
  const refuse = (code: ErrorCode, hint = expected): never =>
    fail({ code, path, expected: hint, received: text });
  const negative = text[0] === "-" || text[0] === "\u2212";
  const start = negative || text[0] === "+" ? 1 : 0;
  const [mark, otherMark] = decimalComma ? [",", "."] : [".", ","];
  const whole = skipDigits(text, start);
  const decimals = text[whole] === mark ? skipDigits(text, whole + 1) : whole;
  if (whole === start && decimals <= whole + 1) {
    const word = text.slice(start).toLowerCase();
    return refuse(/^(nan|inf|∞)/.test(word) ? "not-a-number" : "malformed-text");
  }
  if (decimals === whole + 1)
    return refuse("malformed-text", `${expected}, with a digit after the decimal mark`);
  if (text[decimals] === otherMark || text[decimals] === mark) {
    return refuse(
      "ambiguous",
      `${expected}, ${decimalComma ? "decimal comma" : "decimal point"} and no grouping`,
    );
  }

  const mixed = decimals === whole && whole > start ? mixedStart(text, whole) : -1;
  const fraction = mixed > 0 ? mixed : start;
  const fractionStop = fractionEnd(text, fraction);
  if (decimals === whole && fractionStop > fraction) {
    const slash = skipDigits(text, fraction);
    const parts = Number(text.slice(slash + 1, fractionStop));
    if (parts === 0) return refuse("malformed-text", 'a fraction with a denominator above 0, or "1/0 AWG"');
    const integer = mixed > 0 ? Number(text.slice(start, whole)) : 0;
    const value = (integer * parts + Number(text.slice(fraction, slash))) / parts;
    return {
      value: signed(value, negative),
      resolution: 1 / parts,
      significantDigits: null,
      pair: mixed < 0,
      end: fractionStop,
    };
  }

  let end = decimals;
  let exponent = "0";
  if (text[end] === "e" || text[end] === "E") {
    const sign = text[end + 1] === "\u2212" ? "-" : text[end + 1];
    const hasSign = sign === "-" || sign === "+";
    const digits = end + (hasSign ? 2 : 1);
    const stop = skipDigits(text, digits);
    if (stop > digits) {
      exponent = (hasSign ? sign : "") + text.slice(digits, stop);
      end = stop;
    }
  }
  // "1 500": a grouped number or two numbers; "0.004 1/K" is a unit that begins with a digit.
  const next = skipSpaces(text, end);
  if (next > end && isDigit(text[next]) && !isSlash(text[skipDigits(text, next)])) {
    return refuse("ambiguous", `${expected}, digits without spaces`);
  }

  const written = text.slice(start, whole) + text.slice(whole + 1, decimals);
  const decimalCount = Math.max(0, decimals - whole - 1);
  const significant = written.replace(/^0+/, "");
  const value = Number(`${text.slice(start, whole)}.${text.slice(whole + 1, decimals)}e${exponent}`);
  const resolution = Number(`1e${Number(exponent) - decimalCount}`);
  const inRange = Number.isFinite(value) && resolution > 0 && resolution < Number.POSITIVE_INFINITY;
  if (!inRange || (value === 0 && significant !== "")) {
    return refuse("out-of-range", "a number within the range of a double (about 1e-308 to 1e308)");
  }
  return {
    value: signed(value, negative),
    resolution,
    significantDigits: Math.max(1, significant.length),
    pair: false,
    end,
  };
}

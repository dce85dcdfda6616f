/** Judgements with three outcomes: within, outside, or undecided because the uncertainty straddles the limit. */
import { checkFinite, checkNonNegative, fail } from "../quantity/index.ts";
import { compareQuoted } from "./compare.ts";

/**
 * Outcome of holding a value against a limit.
 * @since 0.1.0
 */
export type Verdict = "within" | "outside" | "undecided";

/**
 * A judgement: the verdict, and everything needed to repeat it.
 * @since 0.1.0
 */
export interface Judgement {
  /** Within, outside, or undecided. */
  readonly verdict: Verdict;
  /** The value judged. */
  readonly value: number;
  /** Half-width of its interval; the whole interval must clear the limit for a verdict. */
  readonly halfWidth: number;
  /** Lower limit, or null if there is none. */
  readonly low: number | null;
  /** Upper limit, or null if there is none. */
  readonly high: number | null;
  /** Distance from the value to the nearest limit: positive inside, negative outside. */
  readonly margin: number;
  /** Whose rule the limit is. */
  readonly rule: string;
}

/**
 * Holds a value with its uncertainty against a lower limit, an upper limit, or both. The limits themselves count
 * as within; comparisons are made in decimal on 12 significant digits.
 * @param input.value - the value, any unit
 * @param input.halfWidth - half-width of its interval at the coverage you want, same unit, 0 or more
 * @param input.low - lower limit, same unit; leave out for none
 * @param input.high - upper limit, same unit; leave out for none
 * @param input.rule - whose rule the limit is, not blank
 * @returns the judgement
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source three-way decision rule: JCGM 106:2012, section 8 (guarded acceptance and guarded rejection)
 * @example
 * ```ts
 * judge({ value: 2.9, halfWidth: 0.126, low: 2.8975, high: 3.2025, rule: "target ±5 %" }).verdict // => "undecided"
 * ```
 * @since 0.1.0
 */
export function judge(input: {
  readonly value: number;
  readonly halfWidth: number;
  readonly low?: number;
  readonly high?: number;
  readonly rule: string;
}): Judgement {
  const { value, halfWidth, rule, low = null, high = null } = input ?? {};
  checkFinite("value", value);
  checkNonNegative("halfWidth", halfWidth);
  if (low !== null) checkFinite("low", low);
  if (high !== null) checkFinite("high", high);
  if (typeof rule !== "string" || rule === "") {
    fail({ code: "missing", path: "rule", expected: "whose rule the limit is", received: rule });
  }
  if (low === null && high === null) {
    fail({
      code: "missing",
      path: "low",
      expected: "a lower limit, an upper limit or both",
      received: undefined,
    });
  }
  if (low !== null && high !== null && low > high) {
    fail({ code: "inconsistent", path: "low", expected: `at most the upper limit ${high}`, received: low });
  }
  const inside = (x: number): boolean =>
    (low === null || compareQuoted({ left: x, right: low }) >= 0) &&
    (high === null || compareQuoted({ left: x, right: high }) <= 0);
  const clearOf = (limit: number | null, far: number, sign: -1 | 1): boolean =>
    limit !== null && compareQuoted({ left: far, right: limit }) === sign;
  const [bottom, top] = [value - halfWidth, value + halfWidth];
  const margin = Math.min(
    low === null ? Number.POSITIVE_INFINITY : value - low,
    high === null ? Number.POSITIVE_INFINITY : high - value,
  );
  if (![bottom, top, margin].every(Number.isFinite)) {
    fail({
      code: "out-of-range",
      path: "value",
      expected: "a value, half-width and limits whose sums float64 can hold",
      received: value,
    });
  }
  const verdict: Verdict =
    inside(bottom) && inside(top)
      ? "within"
      : clearOf(low, top, -1) || clearOf(high, bottom, 1)
        ? "outside"
        : "undecided";
  // + 0: JSON cannot say −0.
  const plain = (limit: number | null): number | null => (limit === null ? null : limit + 0);
  return {
    verdict,
    value: value + 0,
    halfWidth: halfWidth + 0,
    low: plain(low),
    high: plain(high),
    margin: margin + 0,
    rule,
  };
}

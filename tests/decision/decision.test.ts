/**
 * Limits compared in decimal, and three-way verdicts. Sources: the 125 % and 48 A rules are those of the wiring codes (used
 * here only as numbers); JCGM 106:2012 section 8 for the verdict; decimal arithmetic by BigInt, written here.
 */

import { lineCurrent } from "electroheat/circuit";
import { compareQuoted, DECISION_DIGITS, decimalProduct, judge, roundDecimal } from "electroheat/decision";
import { volts, watts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";
import { expectRefusal, negative, notQuantities } from "../support/spoil.ts";

/** Next float64 in a direction. */
function neighbour(x: number, up: boolean): number {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, x);
  const step = up === x > 0 ? 1n : -1n;
  bits.setBigUint64(0, bits.getBigUint64(0) + step);
  return bits.getFloat64(0);
}

describe("48 A continuous at 125 %", () => {
  // What P/(√3·V) may leave of 48 A.
  const noisy = [47.99999999999999, 48, 48.00000000000001, neighbour(48, true), neighbour(48, false)];

  it.each(noisy)("%d A: 125 %% of it is 60 A, no more", (current) => {
    expect(decimalProduct({ value: current, factor: 1.25 })).toBe(60);
    expect(compareQuoted({ left: decimalProduct({ value: current, factor: 1.25 }), right: 60 })).toBe(0);
  });

  it.each(noisy)("%d A counts as not more than 48 A", (current) => {
    expect(compareQuoted({ left: current, right: 48 })).toBe(0);
    expect(judge({ value: current, halfWidth: 0, high: 48, rule: "48 A" }).verdict).toBe("within");
  });

  it("comes out of a plate that is 48 A by hand: 48·√3·480 W", () => {
    // 39 906.452… W: √3 is irrational, so the round trip leaves noise in the last digits.
    const current = lineCurrent({ power: watts(48 * Math.sqrt(3) * 480), lineVoltage: volts(480) });
    expect(compareQuoted({ left: current, right: 48 })).toBe(0);
  });

  it("a difference a person can see still counts: 48.0000001 A is more, 47.9999999 A less", () => {
    expect(compareQuoted({ left: 48.0000001, right: 48 })).toBe(1);
    expect(compareQuoted({ left: 47.9999999, right: 48 })).toBe(-1);
    expect(judge({ value: 48.0000001, halfWidth: 0, high: 48, rule: "48 A" }).verdict).toBe("outside");
  });

  it("changes its mind exactly at half of the twelfth digit", () => {
    // 48.0000000000 ± 5e-11 are the same twelve digits.
    expect(compareQuoted({ left: 48.00000000004, right: 48 })).toBe(0);
    expect(compareQuoted({ left: 48.00000000006, right: 48 })).toBe(1);
    expect(compareQuoted({ left: 47.99999999996, right: 48 })).toBe(0);
    expect(compareQuoted({ left: 47.99999999994, right: 48 })).toBe(-1);
  });
});

describe("quoted digits", () => {
  it("57.75 is more than 57.7, as read and as computed", () => {
    expect(compareQuoted({ left: 57.75, right: 57.7 })).toBe(1);
    expect(compareQuoted({ left: 57.7, right: 57.75 })).toBe(-1);
    expect(judge({ value: 57.75, halfWidth: 0, high: 57.7, rule: "57.7 A" }).verdict).toBe("outside");
    // 46.2 × 1.25 in float64 is 57.75 already; 0.1 + 0.2 against 0.3 is not.
    expect(compareQuoted({ left: 46.2 * 1.25, right: 57.75 })).toBe(0);
    expect(compareQuoted({ left: 0.1 + 0.2, right: 0.3 })).toBe(0);
    expect(0.1 + 0.2 > 0.3).toBe(true);
  });

  it("order numbers as their decimals do (BigInt), to twelve digits", () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(10n ** 12n) + 1n, max: 10n ** 12n - 1n }),
        fc.bigInt({ min: -(10n ** 12n) + 1n, max: 10n ** 12n - 1n }),
        fc.integer({ min: -20, max: 20 }),
        (a, b, exponent) => {
          // Text to float64: the nearest double of a decimal of at most twelve digits.
          const [left, right] = [Number(`${a}e${exponent}`), Number(`${b}e${exponent}`)];
          expect(compareQuoted({ left, right })).toBe(a < b ? -1 : a > b ? 1 : 0);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("do not tell apart what differs by float noise only", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 999_999 }),
        fc.integer({ min: -3, max: 6 }),
        fc.array(fc.integer({ min: 2, max: 999 }), { maxLength: 20 }),
        (digits, exponent, chain) => {
          const right = Number(`${digits}e${exponent}`);
          // Multiplied and divided back: up to forty roundings.
          const left = chain.reduce((x, k) => (x * k) / 7, right);
          const back = chain.reduceRight((x, k) => (x * 7) / k, left);
          expect(compareQuoted({ left: back, right })).toBe(0);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("are twelve, and the products and roundings use them", () => {
    expect(DECISION_DIGITS).toBe(12);
    expect(decimalProduct({ value: 0.1, factor: 3 })).toBe(0.3);
    expect(decimalProduct({ value: 19.36, factor: 1.1 })).toBe(21.296);
    // Half away from zero on the decimal digits, where float64 holds 1.005 as 1.00499999999999989….
    expect(roundDecimal({ value: 1.005, places: 2 })).toBe(1.01);
    expect(roundDecimal({ value: -2.5, places: 0 })).toBe(-3);
    expect(roundDecimal({ value: 2.675, places: 2 })).toBe(2.68);
  });

  it("give exact products of short decimals (BigInt)", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.integer({ min: 0, max: 6 }),
        fc.integer({ min: 0, max: 6 }),
        (a, b, i, j) => {
          const [value, factor] = [Number(`${a}e-${i}`), Number(`${b}e-${j}`)];
          const exact = Number(`${BigInt(a) * BigInt(b)}e-${i + j}`);
          expect(decimalProduct({ value, factor }) + 0).toBe(exact + 0);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("round a product once, not at twenty digits first (BigInt: …734 499999995000 is below the half)", () => {
    const [value, factor] = [809_814_735_349, 892_414_255_000];
    expect(BigInt(value) * BigInt(factor)).toBe(722_690_213_734_499_999_995_000n);
    expect(decimalProduct({ value, factor })).toBe(722_690_213_734e12);
  });
});

describe("verdicts", () => {
  const rule = "target 3.05 Ω ±5 %";
  const [low, high] = [2.8975, 3.2025];
  const verdict = (value: number, halfWidth: number) => judge({ value, halfWidth, low, high, rule }).verdict;

  it.each([
    // value, half-width, verdict: the interval at, just inside and just beyond each limit
    [3.05, 0.1525, "within"],
    [3.05, 0.15251, "undecided"],
    [3.05, 0.15249, "within"],
    [2.8975, 0, "within"],
    [2.8974, 0, "outside"],
    [2.8976, 0, "within"],
    [3.2025, 0, "within"],
    [3.2026, 0, "outside"],
    [2.9, 0.2315, "undecided"],
    [2.7975, 0.1, "undecided"],
    [2.7974, 0.1, "outside"],
    [2.7976, 0.1, "undecided"],
    [3.3025, 0.1, "undecided"],
    [3.3026, 0.1, "outside"],
    [3.05, 1, "undecided"],
  ] as const)("%d ± %d Ω is %s", (value, halfWidth, expected) => {
    expect(verdict(value, halfWidth)).toBe(expected);
  });

  it("know one-sided limits, at, just below and just above", () => {
    const most = (value: number) => judge({ value, halfWidth: 0.5, high: 60, rule: "at most 60 A" });
    expect([59.5, 59.51, 60.5, 60.51].map((value) => most(value).verdict)).toEqual([
      "within",
      "undecided",
      "undecided",
      "outside",
    ]);
    expect(most(58)).toMatchObject({ low: null, high: 60, margin: 2 });
    const least = (value: number) => judge({ value, halfWidth: 0.5, low: 1, rule: "at least 1 MΩ" });
    expect([1.5, 1.49, 0.5, 0.49].map((value) => least(value).verdict)).toEqual([
      "within",
      "undecided",
      "undecided",
      "outside",
    ]);
    expect(least(0.25).margin).toBe(-0.75);
  });

  it("are those of whole thousandths (BigInt), whatever the numbers", () => {
    const thousandths = fc.integer({ min: -100_000, max: 100_000 });
    fc.assert(
      fc.property(
        thousandths,
        fc.integer({ min: 0, max: 50_000 }),
        thousandths,
        fc.integer({ min: 0, max: 100_000 }),
        (value, halfWidth, bottom, width) => {
          const top = bottom + width;
          const found = judge({
            value: value / 1000,
            halfWidth: halfWidth / 1000,
            low: bottom / 1000,
            high: top / 1000,
            rule,
          });
          const [from, to] = [value - halfWidth, value + halfWidth];
          const expected =
            from >= bottom && to <= top ? "within" : to < bottom || from > top ? "outside" : "undecided";
          expect(found.verdict).toBe(expected);
          expect(found.margin * 1000).toBeCloseTo(Math.min(value - bottom, top - value), 6);
          expectFinite(found, JSON.stringify([value, halfWidth, bottom, top]));
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("never turn from outside to within as the meter gets worse", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (value, halfWidth, more) => {
          const [sharp, blunt] = [verdict(value, halfWidth), verdict(value, halfWidth + more)];
          if (sharp === "undecided") expect(blunt).toBe("undecided");
          else expect([sharp, "undecided"]).toContain(blunt);
        },
      ),
      { numRuns: 1000 },
    );
  });

  // Subtraction; a limit that is not there is no limit at 0.
  it.each([
    [{ value: 2, high: 10 }, "within", 8],
    [{ value: 10, low: 4 }, "within", 6],
    [{ value: -10, high: -5 }, "within", 5],
    [{ value: -3, high: -5 }, "outside", -2],
    [{ value: -3, low: -5 }, "within", 2],
    [{ value: -10, low: -5 }, "outside", -5],
  ] as const)("of one side only: %j is %s by %d", (given, expected, margin) => {
    expect(judge({ ...given, halfWidth: 0, rule })).toMatchObject({ verdict: expected, margin });
  });

  it("never give −0, which JSON cannot say", () => {
    const found = judge({ value: -0, halfWidth: -0, low: 0, high: 5, rule });
    for (const figure of [found.value, found.halfWidth, found.low, found.margin]) expect(figure).toBe(0);
  });

  it("refuse what is no number, no limit and no order", () => {
    const call = (change: object) => () => judge({ value: 3, halfWidth: 0.1, low, high, rule, ...change });
    for (const [value, code] of notQuantities) {
      expectRefusal(call({ value }), code, "value", String(value));
      expectRefusal(call({ halfWidth: value }), code, "halfWidth", String(value));
    }
    for (const [value, code] of negative) {
      expectRefusal(call({ halfWidth: value }), code, "halfWidth", String(value));
    }
    expectRefusal(() => judge({ value: 3, halfWidth: 0, rule }), "missing", "low", "no limit");
    expectRefusal(call({ low: 4 }), "inconsistent", "low", "limits crossed");
    expect(call({ low: 4 })).toThrow(String(high));
    for (const [value, code] of notQuantities) {
      // Left out is legal for one of the two limits; null is how a judgement itself says "none".
      if (value === undefined || value === null) continue;
      expectRefusal(call({ low: value }), code, "low", String(value));
      expectRefusal(call({ high: value }), code, "high", String(value));
    }
    for (const value of [undefined, null, "", 7]) {
      expectRefusal(call({ rule: value }), "missing", "rule", String(value));
    }
    expectRefusal(() => judge(undefined as never), "missing", "value", "no argument");
  });

  it("are finite and plain at the ends of float64, or refused", () => {
    const any = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom(0, -0, 5e-324, -5e-324, Number.MAX_VALUE, -Number.MAX_VALUE),
    );
    let refused = 0;
    fc.assert(
      fc.property(any, any.map(Math.abs), any, any, (value, halfWidth, a, b) => {
        const limits = { low: Math.min(a, b), high: Math.max(a, b) };
        try {
          expectFinite(
            judge({ value, halfWidth, ...limits, rule }),
            JSON.stringify([value, halfWidth, a, b]),
          );
        } catch (error) {
          if ((error as { code?: string }).code !== "out-of-range") throw error;
          refused += 1;
        }
      }),
      { numRuns: 1000 },
    );
    expect(refused).toBeLessThan(900);
    expectRefusal(
      () => judge({ value: Number.MAX_VALUE, halfWidth: Number.MAX_VALUE, low: 0, rule }),
      "out-of-range",
      "value",
      "overflow",
    );
  });
});

describe("products and roundings at their ends", () => {
  it("overflow in a typed error, just above what float64 holds", () => {
    expect(decimalProduct({ value: 1e200, factor: 1e108 })).toBe(1e308);
    expectRefusal(
      () => decimalProduct({ value: 1e200, factor: 2e108 }),
      "out-of-range",
      "factor",
      "overflow",
    );
    expectRefusal(
      () => decimalProduct({ value: -1e200, factor: 1e200 }),
      "out-of-range",
      "factor",
      "overflow",
    );
  });

  it("never give −0", () => {
    expect(decimalProduct({ value: -5, factor: 0 })).toBe(0);
    expect(decimalProduct({ value: -1e-200, factor: 1e-200 })).toBe(0);
    expect(roundDecimal({ value: -0.4, places: 0 })).toBe(0);
    expect(roundDecimal({ value: -0, places: 3 })).toBe(0);
    expect(roundDecimal({ value: -0.5, places: 0 })).toBe(-1);
  });

  it("round to 0 to 12 whole places and refuse any other number of them", () => {
    expect(roundDecimal({ value: 1.2345678901249, places: 12 })).toBe(1.23456789012);
    for (const [places, code] of [
      ...notQuantities,
      [-3, "out-of-range"],
      [2.5, "out-of-range"],
      [13, "out-of-range"],
    ] as const) {
      expectRefusal(
        () => roundDecimal({ value: 1, places: places as number }),
        code,
        "places",
        String(places),
      );
    }
  });
});

describe("refusals of the comparisons", () => {
  it("name the side", () => {
    for (const [value, code] of notQuantities) {
      expectRefusal(() => compareQuoted({ left: value as number, right: 1 }), code, "left", String(value));
      expectRefusal(() => compareQuoted({ left: 1, right: value as number }), code, "right", String(value));
      expectRefusal(
        () => decimalProduct({ value: value as number, factor: 1 }),
        code,
        "value",
        String(value),
      );
      expectRefusal(
        () => decimalProduct({ value: 1, factor: value as number }),
        code,
        "factor",
        String(value),
      );
      expectRefusal(() => roundDecimal({ value: value as number, places: 1 }), code, "value", String(value));
    }
    expectRefusal(() => compareQuoted(undefined as never), "missing", "left", "no argument");
    expectRefusal(() => decimalProduct(undefined as never), "missing", "value", "no argument");
    expectRefusal(() => roundDecimal(undefined as never), "missing", "places", "no argument");
  });
});

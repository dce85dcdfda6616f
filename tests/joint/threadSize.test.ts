/**
 * Threads as people write them. Published areas: ISO 898-1 (M8 36.6 mm²) and ASME B1.1 (1/4-20 0.0318 in²); others by the formulas of the
 * same standards, worked by hand: M20x2.5 π/4·(20 − 0.938194·2.5)² = 244.8 mm² (tables print 245), 5/8-11 π/4·(5/8 − 0.9743/11)² =
 * 0.2260 in² (tables print 0.226), M8x1 π/4·(8 − 0.938194)² = 39.17 mm².
 */
import { metricThread, threadSize, unifiedThread } from "electroheat/joint";
import { describe, expect, it } from "vitest";
import {
  isElectroheatError,
  toInches,
  toMillimeters,
  toSquareInches,
  toSquareMillimeters,
} from "../../src/quantity/index.ts";

const refusal = (text: unknown): string => {
  try {
    threadSize(text as string);
  } catch (error) {
    if (isElectroheatError(error)) return `${error.code} ${error.message}`;
    throw error;
  }
  return "none";
};

describe("a thread in words", () => {
  it.each([
    ["M8", "M8"],
    ["m8", "M8"],
    ["M 8", "M8"],
    ["M8x1.25", "M8"],
    ["M8 × 1.25", "M8"],
    ["M8-1.25", "M8"],
    ["M8-6g", "M8"],
    ["M8x1.25-6H", "M8"],
    ["M08", "M8"],
  ])("%s is the metric size %s of the table", (text, name) => {
    expect(threadSize(text)).toEqual({ ...metricThread(name), nominal: name });
  });
  it.each([
    ["1/4-20", "1/4-20", "1/4"],
    ["1/4-20 UNC", "1/4-20", "1/4"],
    ["1/4-20UNC-2A", "1/4-20", "1/4"],
    ['1/4"-20', "1/4-20", "1/4"],
    ['¼"-20 UNC', "1/4-20", "1/4"],
    ["1/4 in-20", "1/4-20", "1/4"],
    ["1/4–20", "1/4-20", "1/4"],
    [".25-20", "1/4-20", "1/4"],
    ["0.250-20", "1/4-20", "1/4"],
    ["0.3125-18", "5/16-18", "5/16"],
    ["3/8-16 UNC-2A", "3/8-16", "3/8"],
    ["10-32", "10-32", "#10"],
    ["#10-32", "10-32", "#10"],
    ["No. 10-32 UNF", "10-32", "#10"],
    ["1/2-20", "1/2-20", "1/2"],
  ])("%s is the unified size %s of the table", (text, name, nominal) => {
    expect(threadSize(text)).toEqual({ ...unifiedThread(name), nominal });
  });
  it("is worked out where no table has it", () => {
    const coarse = threadSize("M20x2.5");
    expect(toSquareMillimeters(coarse.stressArea)).toBeCloseTo(244.79, 1);
    expect([coarse.thread, coarse.nominal, coarse.form, coarse.basis.kind]).toEqual([
      "M20x2.5",
      "M20",
      "metric",
      "definition",
    ]);
    const fine = threadSize("M8x1.00");
    expect(fine.thread).toBe("M8x1");
    expect(toMillimeters(fine.pitch)).toBeCloseTo(1, 12);
    expect(toSquareMillimeters(fine.stressArea)).toBeCloseTo(39.17, 2);
    // 8 − 1.226869 = 6.7731 mm: π/4 of its square is 36.03 mm².
    expect(toSquareMillimeters(fine.minorArea)).toBeCloseTo(36.03, 2);
    const thick = threadSize("5/8-11 UNC");
    expect(toSquareInches(thick.stressArea)).toBeCloseTo(0.226, 4);
    expect([toInches(thick.diameter), toInches(thick.pitch)]).toEqual([
      expect.closeTo(0.625, 12),
      expect.closeTo(1 / 11, 12),
    ]);
    expect([thick.thread, thick.nominal, thick.basis.source]).toEqual(["5/8-11", "5/8", "asme-b1-1"]);
  });
  it("tells a metric thread from the inch thread that looks like it", () => {
    // 5/16-18 is 7.9375 mm with 1.411 mm of pitch, M8 is 8 mm with 1.25 mm: a nut of one starts on the other and strips it.
    const [inch, metric] = [threadSize("5/16-18"), threadSize("M8")];
    expect(toMillimeters(inch.diameter)).toBeCloseTo(7.9375, 10);
    expect(toMillimeters(inch.pitch) - toMillimeters(metric.pitch)).toBeCloseTo(0.1611, 4);
  });
  it("is refused with what would settle it", () => {
    expect(refusal("M20")).toMatch(
      /^unknown-name text: "M20" is not allowed; expected one of M3, .*M16, or a thread with its pitch: "M20x2.5"/,
    );
    expect(refusal("5/16")).toMatch(/^malformed-text text: "5\/16"/);
    expect(refusal("8 mm")).toMatch(/^malformed-text/);
    expect(refusal("#14-20")).toMatch(/^unknown-name text: .*a screw number with the threads of its table/);
    expect(refusal("1-8")).toMatch(/^unknown-name/);
    expect(refusal("1/0-20")).toMatch(/^unknown-name/);
    expect(refusal("1/4-0")).toMatch(/^malformed-text/);
    expect(refusal("0.30-20")).toMatch(/^malformed-text/);
    expect(refusal("0.00-20")).toMatch(/^malformed-text/);
    expect(refusal("M8x20")).toMatch(/^out-of-range text: /);
    expect(refusal("M8x0")).toMatch(/^out-of-range text: /);
    expect(refusal(`M8${" ".repeat(40)}`)).toMatch(/^malformed-text/);
    expect(refusal("")).toMatch(/^missing text: missing; expected a metric thread/);
    expect(refusal(undefined)).toMatch(/^missing/);
    expect(refusal(8)).toMatch(/^wrong-type/);
  });
});

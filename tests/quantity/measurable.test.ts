/** What counts as measurable, at its ends and just beyond; what is refused is named with its unit and both limits. */
import {
  checkBetween,
  checkFinite,
  checkMeasurable,
  checkMeasurableOrZero,
  checkMeasurableSigned,
  checkNonNegative,
  checkPositive,
  checkWhole,
  finiteResult,
  given,
  givenList,
  LARGEST_MEASURABLE,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const refusal = (call: () => unknown) => {
  const [issue] = caught(call).issues;
  return [issue?.code, issue?.path, issue?.expected, issue?.received, issue?.unit];
};
/** Neighbours of 1e-30 and 1e30 among the doubles. */
const BELOW = 9.999999999999999e-31;
const ABOVE = 1.0000000000000002e30;
const none = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, "5", true, {}, 5n];

describe("a measurable size", () => {
  it("ends at 1e-30 and 1e30, both taken", () => {
    expect(LARGEST_MEASURABLE).toBe(1e30);
    for (const check of [checkMeasurable, checkMeasurableOrZero]) {
      for (const value of [1e-30, 1, 1e30]) expect(() => check("gap", value, "m")).not.toThrow();
      for (const value of [BELOW, ABOVE, 5e-324, Number.MAX_VALUE])
        expect(refusal(() => check("gap", value, "m"))).toEqual([
          "out-of-range",
          "gap",
          "1e-30 to 1e+30",
          String(value),
          "m",
        ]);
      for (const value of none)
        expect(refusal(() => check("gap", value as number, "m")).slice(0, 2)).toEqual([
          "not-a-number",
          "gap",
        ]);
      for (const value of [undefined, null, ""])
        expect(refusal(() => check("gap", value as never, "m")).slice(0, 2)).toEqual(["missing", "gap"]);
      expect(refusal(() => check("gap", ABOVE))[4]).toBeUndefined();
    }
  });

  it("is more than 0, or 0 as well, or has either sign", () => {
    expect(refusal(() => checkMeasurable("gap", 0, "m"))).toEqual([
      "out-of-range",
      "gap",
      "more than 0",
      "0",
      "m",
    ]);
    for (const value of [0, -0]) expect(() => checkMeasurableOrZero("gap", value, "m")).not.toThrow();
    for (const value of [-1e-30, -1])
      expect(refusal(() => checkMeasurableOrZero("gap", value, "m")).slice(2)).toEqual([
        "0 or more",
        String(value),
        "m",
      ]);
    for (const value of [0, -0, 1e-30, -1e-30, 1e30, -1e30])
      expect(() => checkMeasurableSigned("rise", value, "K")).not.toThrow();
    for (const value of [BELOW, -BELOW, ABOVE, -ABOVE])
      expect(refusal(() => checkMeasurableSigned("rise", value, "K"))).toEqual([
        "out-of-range",
        "rise",
        "0 or a size from 1e-30 to 1e+30",
        String(value),
        "K",
      ]);
    for (const value of none)
      expect(refusal(() => checkMeasurableSigned("rise", value as number, "K")).slice(0, 2)).toEqual([
        "not-a-number",
        "rise",
      ]);
  });

  it("may have narrower ends of its own", () => {
    for (const check of [checkMeasurable, checkMeasurableOrZero]) {
      for (const value of [1, 3, 5]) expect(() => check("ratio", value, undefined, 1, 5)).not.toThrow();
      for (const value of [0.9999999999999999, 5.000000000000001])
        expect(refusal(() => check("ratio", value, undefined, 1, 5)).slice(2, 4)).toEqual([
          "1 to 5",
          String(value),
        ]);
    }
  });

  it("stays a finite number above 0 where the ends are 0 and nothing", () => {
    const open = (check: typeof checkMeasurable, value: number) => () =>
      check("ratio", value, "1", 0, Number.POSITIVE_INFINITY);
    for (const check of [checkMeasurable, checkMeasurableOrZero]) {
      for (const value of [5e-324, Number.MAX_VALUE]) expect(open(check, value)).not.toThrow();
      expect(refusal(open(check, Number.POSITIVE_INFINITY))[0]).toBe("not-a-number");
      expect(refusal(open(check, -1))[0]).toBe("out-of-range");
    }
    expect(refusal(open(checkMeasurable, 0))[2]).toBe("more than 0");
    expect(refusal(() => checkMeasurable("ratio", 0, "1", 0, 5))[2]).toBe("more than 0");
    expect(
      refusal(() => checkMeasurable("ratio", Number.POSITIVE_INFINITY, "1", 1, Number.POSITIVE_INFINITY))[0],
    ).toBe("not-a-number");
    expect(
      refusal(() =>
        checkMeasurableOrZero("ratio", Number.POSITIVE_INFINITY, "1", 1, Number.POSITIVE_INFINITY),
      )[0],
    ).toBe("not-a-number");
    expect(refusal(() => checkMeasurableOrZero("ratio", -1, "1", -5, 5))[2]).toBe("0 or more");
  });
});

describe("the plain checks", () => {
  it("say what they ask for, with the unit where there is one", () => {
    expect(refusal(() => checkFinite("power", Number.NaN, "W"))).toEqual([
      "not-a-number",
      "power",
      "a finite number",
      "NaN",
      "W",
    ]);
    expect(refusal(() => checkPositive("power", -1, "W"))).toEqual([
      "out-of-range",
      "power",
      "more than 0",
      "-1",
      "W",
    ]);
    expect(refusal(() => checkNonNegative("power", -1, "W"))).toEqual([
      "out-of-range",
      "power",
      "0 or more",
      "-1",
      "W",
    ]);
    expect(refusal(() => checkBetween("power", 6, 2, 5, "W"))).toEqual([
      "out-of-range",
      "power",
      "2 to 5",
      "6",
      "W",
    ]);
    expect(refusal(() => checkWhole("count", 2.5, 2, 5))).toEqual([
      "out-of-range",
      "count",
      "a whole number from 2 to 5",
      "2.5",
      undefined,
    ]);
    for (const call of [
      () => checkFinite("power", Number.NaN),
      () => checkPositive("power", -1),
      () => checkNonNegative("power", -1),
      () => checkBetween("power", 6, 2, 5),
    ])
      expect(Object.keys(caught(call).issues[0] ?? {})).not.toContain("unit");
  });

  it("a range without ends holds every number, and what is none is not in it", () => {
    const [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (const [low, high] of [
      [least, 0],
      [0, most],
      [least, most],
    ] as const) {
      expect(() => checkBetween("power", 0, low, high)).not.toThrow();
      for (const value of none)
        expect(refusal(() => checkBetween("power", value as number, low, high))[0]).toBe("not-a-number");
    }
    expect(() => checkBetween("power", -Number.MAX_VALUE, least, 0)).not.toThrow();
    expect(refusal(() => checkBetween("power", 1, least, 0))[0]).toBe("out-of-range");
  });
});

describe("a result", () => {
  it("is a finite number, without a negative nothing, or refused in its unit", () => {
    expect(finiteResult(Number.MAX_VALUE, "W")).toBe(Number.MAX_VALUE);
    expect(Object.is(finiteResult(-0, "W"), 0)).toBe(true);
    expect(finiteResult(-2.5, "W")).toBe(-2.5);
    for (const [value, code] of [
      [Number.POSITIVE_INFINITY, "Infinity"],
      [Number.NEGATIVE_INFINITY, "-Infinity"],
      [Number.NaN, "NaN"],
    ] as const)
      expect(refusal(() => finiteResult(value, "W"))).toEqual([
        "out-of-range",
        "result",
        "inputs whose result is within the range of a double",
        code,
        "W",
      ]);
    // Arithmetic on a BigInt would throw an error that is not ours.
    for (const value of [5n, "5", undefined, {}])
      expect(refusal(() => finiteResult(value as never, "W"))[0]).toBe("out-of-range");
  });
});

describe("an argument, and a list", () => {
  it("come back untouched", () => {
    const [input, list] = [{ power: 1 }, [1, 2]];
    expect(given(input)).toBe(input);
    expect(givenList(list, "loads", 2)).toBe(list);
    expect(givenList([], "loads")).toEqual([]);
  });

  it("are missing where there is none, and of the wrong type where there is something else", () => {
    for (const [value, code] of [
      [undefined, "missing"],
      [null, "missing"],
      [5, "wrong-type"],
      ["text", "wrong-type"],
      [[], "wrong-type"],
      [() => 1, "wrong-type"],
    ] as const)
      expect(refusal(() => given(value as never)).slice(0, 3)).toEqual([
        code,
        "input",
        "an object with named fields",
      ]);
    expect(refusal(() => given(undefined as never, "stages.0", "a stage")).slice(0, 3)).toEqual([
      "missing",
      "stages.0",
      "a stage",
    ]);
    for (const [value, code] of [
      [undefined, "missing"],
      [null, "missing"],
      [5, "wrong-type"],
      [{ length: 2 }, "wrong-type"],
    ] as const) {
      expect(refusal(() => givenList(value as never, "loads")).slice(0, 3)).toEqual([
        code,
        "loads",
        "a list",
      ]);
      expect(refusal(() => givenList(value as never, "loads", 2))[2]).toBe("a list of at least 2");
    }
    expect(refusal(() => givenList([1], "loads", 2)).slice(0, 3)).toEqual([
      "missing",
      "loads",
      "a list of at least 2",
    ]);
  });
});

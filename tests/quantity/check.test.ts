import {
  checkBetween,
  checkFinite,
  checkMeasurableSigned,
  checkNonNegative,
  checkOneOf,
  checkPositive,
  checkWhole,
  ElectroheatError,
  failAll,
  isElectroheatError,
  issue,
  showReceived,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { thrown } from "./support.ts";

type Check = (value: unknown) => void;
const checks: { readonly [name: string]: Check } = {
  finite: (value) => checkFinite("power", value as number, "W"),
  positive: (value) => checkPositive("power", value as number, "W"),
  nonNegative: (value) => checkNonNegative("power", value as number, "W"),
  between: (value) => checkBetween("power", value as number, 2, 5, "W"),
  whole: (value) => checkWhole("count", value as number, 2, 5),
};

describe("domain checks at, just below and just above each limit", () => {
  const ABOVE_5 = 5.000000000000001;
  const BELOW_2 = 1.9999999999999998;
  it.each([
    ["finite", [0, -1, Number.MAX_VALUE, 5e-324], []],
    ["positive", [5e-324, 1, Number.MAX_VALUE], [0, -0, -5e-324]],
    ["nonNegative", [0, -0, 5e-324], [-5e-324, -1]],
    ["between", [2, 5, 3.5], [BELOW_2, ABOVE_5, -3]],
    ["whole", [2, 3, 5], [1, 6, 2.5, BELOW_2, ABOVE_5]],
  ] as const)("%s", (name, allowed, refused) => {
    const check = checks[name] as Check;
    for (const value of allowed) expect(() => check(value), String(value)).not.toThrow();
    for (const value of refused) expect(thrown(() => check(value)).code, String(value)).toBe("out-of-range");
  });

  it.each(Object.entries(checks))("%s refuses what is no number", (_, check) => {
    for (const value of [
      Number.NaN,
      Number.POSITIVE_INFINITY,
      "3",
      true,
      3n,
      {},
      [3],
      Symbol("3"),
      () => 3,
    ]) {
      expect(thrown(() => check(value)).code, typeof value).toBe("not-a-number");
    }
    for (const value of [undefined, null, ""]) expect(thrown(() => check(value)).code).toBe("missing");
  });

  it("checkOneOf gives the name back or lists the names", () => {
    expect(checkOneOf("connection", "delta", ["star", "delta"])).toBe("delta");
    const error = thrown(() => checkOneOf("connection", "Delta", ["star", "delta"]));
    expect(error.code).toBe("unknown-name");
    expect(error.message).toBe('connection: "Delta" is not allowed; expected one of star, delta');
    expect(thrown(() => checkOneOf("connection", undefined, ["star"])).code).toBe("missing");
    expect(thrown(() => checkOneOf("connection", "toString", ["star"])).code).toBe("unknown-name");
  });
});

describe("the error", () => {
  const first = issue({
    code: "out-of-range",
    path: "power",
    expected: "more than 0",
    received: -5,
    unit: "W",
  });
  const second = issue({ code: "missing", path: "voltage", expected: "a voltage", received: undefined });

  it("carries every issue and takes code and argument from the first", () => {
    const error = new ElectroheatError([first, second]);
    expect(error.code).toBe("out-of-range");
    expect(error.argument).toBe("power");
    expect(error.issues).toEqual([first, second]);
    expect(error.message.split("\n")).toEqual([
      "power: -5 W is not allowed; expected more than 0 W",
      "voltage: missing; expected a voltage",
    ]);
    expect(JSON.parse(JSON.stringify(error.issues))).toEqual([first, second]);
  });

  it("is told by name and code, so that another copy's error is recognised", () => {
    const foreign = Object.assign(new Error("x"), {
      name: "ElectroheatError",
      code: "missing",
      issues: [second],
    });
    expect(isElectroheatError(foreign)).toBe(true);
    for (const other of [new Error("x"), { name: "ElectroheatError" }, "ElectroheatError", null, undefined]) {
      expect(isElectroheatError(other)).toBe(false);
    }
  });

  it("shows any received value in short, and runs none of its code", () => {
    const trap = {
      toString: () => {
        throw new Error("ran");
      },
    };
    expect(showReceived(trap)).toBe("an object");
    expect(showReceived([1, 2])).toBe("an array");
    expect(showReceived(() => 1)).toBe("a function");
    expect(showReceived(5n)).toBe("a BigInt");
    expect(showReceived(Symbol("s"))).toBe("Symbol(s)");
    expect(showReceived(null)).toBe("null");
    expect(showReceived("x".repeat(81))).toBe(`"${"x".repeat(80)} … (81 characters)"`);
    expect(showReceived("x".repeat(80))).toBe(`"${"x".repeat(80)}"`);
  });

  it("repeats a path up to a length, and of many issues tells the first twenty", () => {
    const made = (path: string) =>
      issue({ code: "unknown-field", path, expected: "no such field", received: 1 });
    expect(made("p".repeat(80)).path).toBe("p".repeat(80));
    expect(made("p".repeat(81)).path).toBe(`${"p".repeat(80)} … (81 characters)`);
    expect(() => failAll([])).not.toThrow();
    for (const [count, lines] of [
      [1, 1],
      [20, 20],
      [21, 21],
      [5000, 21],
    ] as const) {
      let seen: unknown;
      try {
        failAll(Array.from({ length: count }, (_, i) => made(`field${i}`)));
      } catch (error) {
        seen = error;
      }
      if (!isElectroheatError(seen)) return expect.fail("nothing of ours was thrown");
      expect(seen.issues).toHaveLength(count);
      expect(seen.argument).toBe("field0");
      const told = seen.message.split("\n");
      expect(told).toHaveLength(lines);
      expect(told.at(-1)).toBe(count > 20 ? `and ${count - 20} more` : made(`field${count - 1}`).message);
    }
  });
});

describe("limits that are not there, and the sign of what is measured", () => {
  it("a range without an end lets every finite number through, and no other", () => {
    const check = (value: number) => () => checkBetween("power", value, 0, Number.POSITIVE_INFINITY, "W");
    expect(check(Number.MAX_VALUE)).not.toThrow();
    for (const bad of [-1, Number.NaN]) expect(thrown(check(bad)).argument).toBe("power");
  });

  it("a size too large to be measured is refused with either sign, and with its unit where it has one", () => {
    for (const [value, unit] of [
      [1e300, "K"],
      [-1e300, undefined],
    ] as const) {
      const error = caught(() => checkMeasurableSigned("rise", value, unit));
      expect([error.code, error.argument, error.issues[0]?.unit]).toEqual(["out-of-range", "rise", unit]);
    }
    for (const good of [0, -40, 40]) expect(() => checkMeasurableSigned("rise", good)).not.toThrow();
  });
});

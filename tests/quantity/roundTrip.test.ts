import {
  type CanonicalUnit,
  type ElectroheatError,
  formatQuantity,
  parseQuantity,
  type Quantity,
  unitSymbols,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { constructorNames, constructorOf, readerOf, ulp } from "./support.ts";
import { CANONICAL, ROWS } from "./unitDatabase.ts";

const runs = { numRuns: 1000 };
/** Away from the ends of a double, where a conversion would overflow or lose digits. */
const number = fc
  .tuple(fc.double({ min: 1, max: 2, noNaN: true }), fc.integer({ min: -800, max: 800 }), fc.boolean())
  .map(([m, e, negative]) => (negative ? -1 : 1) * m * 2 ** e);
const row = fc.constantFrom(...ROWS);

describe("round trips by property", () => {
  it("constructor then reader gives the number back to 1 ulp", () => {
    fc.assert(
      fc.property(row, number, ([name], x) => {
        expect(Math.abs(readerOf(name)(constructorOf(name)(x)) - x)).toBeLessThanOrEqual(ulp(x));
      }),
      runs,
    );
  });

  it("reader then constructor gives the quantity back to 1 ulp", () => {
    fc.assert(
      fc.property(row, number, ([name], x) => {
        expect(Math.abs(constructorOf(name)(readerOf(name)(x)) - x)).toBeLessThanOrEqual(ulp(x));
      }),
      runs,
    );
  });

  it("temperatures come back to 2 ulp of the largest number on the way", () => {
    const scale = fc.constantFrom(["celsius", -273.15], ["fahrenheit", -459.67], ["absoluteKelvins", 0]);
    fc.assert(
      fc.property(scale, fc.double({ min: 0, max: 1e5, noNaN: true }), ([name, low], above) => {
        const x = (low as number) + above;
        const back = readerOf(name as string)(constructorOf(name as string)(x));
        expect(Math.abs(back - x)).toBeLessThanOrEqual(2 * ulp(Math.max(Math.abs(x), 459.67)));
      }),
      runs,
    );
  });

  it("every constructor keeps order and sign", () => {
    fc.assert(
      fc.property(row, number, number, ([name], a, b) => {
        fc.pre(a < b);
        const convert = constructorOf(name);
        expect(convert(a)).toBeLessThanOrEqual(convert(b));
        expect(Math.sign(convert(a))).toBe(Math.sign(a));
      }),
      runs,
    );
  });
});

describe("bad input to every constructor and reader", () => {
  const bad = [
    [Number.NaN, "not-a-number"],
    [Number.POSITIVE_INFINITY, "not-a-number"],
    [Number.NEGATIVE_INFINITY, "not-a-number"],
    ["5", "not-a-number"],
    [true, "not-a-number"],
    [5n, "not-a-number"],
    [{ valueOf: () => 5 }, "not-a-number"],
    [[5], "not-a-number"],
    [undefined, "missing"],
    [null, "missing"],
    ["", "missing"],
  ] as const;

  it.each(constructorNames())("is refused with its code and its unit by %s and its reader", (name) => {
    for (const [value, code] of bad) {
      for (const convert of [constructorOf(name), readerOf(name)]) {
        const error = caught(() => convert(value as number));
        expect([error.code, error.argument], String(value)).toEqual([code, name]);
      }
    }
    // Text and tags: what goes in is a number of the symbol, what comes back one of the canonical unit.
    const [, canonical = "°C"] = ROWS.find(([row]) => row === name) ?? [];
    const given = caught(() => constructorOf(name)(Number.NaN)).issues[0]?.unit;
    // A kelvin in a text is a difference.
    if (name === "absoluteKelvins") expect(given).toBe("K");
    else
      expect(parseQuantity<CanonicalUnit>(`500 ${given}`, { unit: canonical as CanonicalUnit }).value).toBe(
        constructorOf(name)(500),
      );
    expect(caught(() => readerOf(name)(Number.NaN)).issues[0]?.unit).toBe(canonical);
  });

  it.each(constructorNames())("never turns a finite number into Infinity: %s", (name) => {
    for (const convert of [constructorOf(name), readerOf(name)]) {
      for (const value of [Number.MAX_VALUE, -Number.MAX_VALUE]) {
        let result = 0;
        try {
          result = convert(value);
        } catch (error) {
          const { code, argument, message } = error as ElectroheatError;
          expect([code, argument]).toEqual(["out-of-range", name]);
          expect(message).toMatch(/finite when converted|at least -?\d/);
        }
        expect(Number.isFinite(result)).toBe(true);
      }
    }
  });
});

describe("text round trip by property", () => {
  const choice = fc
    .constantFrom(...(Object.keys(CANONICAL) as CanonicalUnit[]), "°C" as const)
    .chain((unit) => fc.tuple(fc.constant(unit), fc.constantFrom(...unitSymbols(unit))));
  const flags = fc.record({ trueMinus: fc.boolean(), nonBreakingSpace: fc.boolean() });
  // Positive for °C, so that no unit of temperature falls below absolute zero.
  const value = fc.double({ min: 1e-9, max: 1e9, noNaN: true });

  it("all digits: what is written reads back to 2 ulp, with the same unit", () => {
    fc.assert(
      fc.property(choice, value, fc.boolean(), flags, ([unit, as], size, negative, marks) => {
        const x = negative && unit !== "°C" ? -size : size;
        const text = formatQuantity<CanonicalUnit>(x as Quantity<CanonicalUnit>, { unit, as, ...marks });
        const parsed = parseQuantity<CanonicalUnit>(text, { unit });
        expect(parsed.symbol).toBe(as);
        const reach = unit === "°C" ? Math.max(x, 32) : x;
        expect(Math.abs((parsed.value as number) - x)).toBeLessThanOrEqual(2 * ulp(reach));
      }),
      runs,
    );
  });

  it("n significant digits read back as n digits, within half their resolution", () => {
    fc.assert(
      fc.property(choice, value, fc.integer({ min: 1, max: 15 }), ([unit, as], x, significantDigits) => {
        const options = { unit, as, significantDigits };
        const parsed = parseQuantity<CanonicalUnit>(
          formatQuantity<CanonicalUnit>(x as Quantity<CanonicalUnit>, options),
          { unit },
        );
        const resolution = parsed.resolution ?? Number.NaN;
        // Zeros that fill up to the decimal mark count as written digits.
        expect(parsed.significantDigits).toBeGreaterThanOrEqual(significantDigits);
        const written = parsed.significantDigits ?? 0;
        const rounding = (resolution * 10 ** (written - significantDigits)) / 2;
        expect(Math.abs((parsed.value as number) - x)).toBeLessThanOrEqual(
          rounding * (1 + 1e-9) + 4 * ulp(x + 32),
        );
      }),
      runs,
    );
  });
});

import Decimal from "decimal.js";
import {
  type CanonicalUnit,
  celsius,
  type FormatOptions,
  formatNumber,
  formatQuantity,
  formatUncertain,
  kelvins,
  newtonMeters,
  ohms,
  type Quantity,
  unitSymbols,
  watts,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { thrown } from "./support.ts";
import { CANONICAL } from "./unitDatabase.ts";

const write = (value: number, options: Partial<FormatOptions<CanonicalUnit>>): string =>
  formatQuantity<CanonicalUnit>(value as Quantity<CanonicalUnit>, { unit: "Ω", ...options });

describe("rounding", () => {
  // Half away from zero on the decimal text of the number, worked by hand.
  it.each([
    [1.005, { significantDigits: 3 }, "1.01 Ω"],
    [1.005, { decimals: 2 }, "1.01 Ω"],
    [1.0049999999999997, { decimals: 2 }, "1.00 Ω"],
    [2.5, { decimals: 0 }, "3 Ω"],
    [-2.5, { decimals: 0 }, "-3 Ω"],
    [0.5, { decimals: 0 }, "1 Ω"],
    [0.49, { decimals: 0 }, "0 Ω"],
    [9.995, { significantDigits: 3 }, "10.0 Ω"],
    [99.95, { significantDigits: 3 }, "100 Ω"],
    [999.96, { significantDigits: 4 }, "1000 Ω"],
    [0.0996, { significantDigits: 2 }, "0.10 Ω"],
    [7.65, { significantDigits: 5 }, "7.6500 Ω"],
    [1540, { significantDigits: 2 }, "1500 Ω"],
    [1540, {}, "1540 Ω"],
    [0.1 + 0.2, {}, "0.30000000000000004 Ω"],
    [0, { significantDigits: 3 }, "0.00 Ω"],
    [-0, {}, "0 Ω"],
    [-0.04, { decimals: 1 }, "0.0 Ω"],
    [0.04, { decimals: 0 }, "0 Ω"],
    [0.004, { decimals: 1 }, "0.0 Ω"],
    [1e-7, { significantDigits: 2 }, "0.00000010 Ω"],
    [9.99e-8, { significantDigits: 2 }, "0.00000010 Ω"],
    [9.91e-8, { significantDigits: 2 }, "9.9e-8 Ω"],
    [1e-12, {}, "1e-12 Ω"],
    [5e-324, {}, "5e-324 Ω"],
    [1e21, {}, "1e+21 Ω"],
    [1e20, {}, "100000000000000000000 Ω"],
    [1.25e21, {}, "1.25e+21 Ω"],
    [-1.25e-8, {}, "-1.25e-8 Ω"],
    // With a number of decimals never an exponent.
    [1.25e21, { decimals: 1 }, "1250000000000000000000.0 Ω"],
    [1.25e-9, { decimals: 12 }, "0.000000001250 Ω"],
    [0, { decimals: 3 }, "0.000 Ω"],
    [0, { significantDigits: 1 }, "0 Ω"],
    [9.5, { decimals: 0 }, "10 Ω"],
    [99.5, { significantDigits: 2 }, "100 Ω"],
    [0.95, { significantDigits: 1 }, "1 Ω"],
    [5, { decimals: 0 }, "5 Ω"],
    [0.05, { decimals: 1 }, "0.1 Ω"],
    [-1.25e-9, { significantDigits: 2, trueMinus: true }, "\u22121.3e\u22129 Ω"],
  ])("%d with %o is %s", (value, options, text) => {
    expect(write(value, options)).toBe(text);
  });

  // decimal.js, ROUND_HALF_UP (away from zero), on the same shortest digits.
  it("agrees with decimal.js on significant digits and on decimals (property)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e15, noNaN: true }),
        fc.integer({ min: 1, max: 17 }),
        fc.integer({ min: 0, max: 12 }),
        fc.boolean(),
        (size, significantDigits, decimals, negative) => {
          const x = negative ? -size : size;
          const exact = new Decimal(x);
          const number = (text: string): Decimal => new Decimal(text.replace(" Ω", ""));
          const rounded = exact.toSignificantDigits(significantDigits, Decimal.ROUND_HALF_UP);
          expect(number(write(x, { significantDigits })).equals(rounded)).toBe(true);
          const fixed = exact.toFixed(decimals, Decimal.ROUND_HALF_UP);
          expect(write(x, { decimals })).toBe(`${/^-[0.]+$/.test(fixed) ? fixed.slice(1) : fixed} Ω`);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe("choice of unit", () => {
  it.each([
    [0.0047, { engineering: true, significantDigits: 3 }, "4.70 mΩ"],
    [999.96, { engineering: true, significantDigits: 4 }, "1.000 kΩ"],
    [999.94, { engineering: true, significantDigits: 4 }, "999.9 Ω"],
    [1000, { engineering: true }, "1 kΩ"],
    [50e6, { engineering: true, decimals: 0 }, "50 MΩ"],
    [35e-6, { engineering: true }, "35 µΩ"],
    [1e-12, { engineering: true }, "0.001 nΩ"],
    [5e13, { engineering: true }, "50000 GΩ"],
    [0, { engineering: true }, "0 Ω"],
    [-0.0047, { engineering: true }, "-4.7 mΩ"],
    [60370, { unit: "W", engineering: true, significantDigits: 3 }, "60.4 kW"],
    [1.5, { unit: "K", engineering: true }, "1.5 K"],
    [0.0047, { as: "µΩ" }, "4700 µΩ"],
    [3.6e6, { unit: "J", as: "kWh" }, "1 kWh"],
    [200, { unit: "°C", as: "°F" }, "392 °F"],
    [200, { unit: "°C", system: "US" }, "392 °F"],
    [20, { unit: "K", system: "US", decimals: 0 }, "36 Δ°F"],
    [0.00635, { unit: "m", system: "US" }, "0.25 in"],
    [15, { unit: "N·m", system: "US", decimals: 1 }, "132.8 lbf·in"],
    [1, { unit: "V", system: "US" }, "1 V"],
    [20000, { unit: "W/m²", system: "US", decimals: 1 }, "12.9 W/in²"],
    [200, { unit: "°C", system: "SI" }, "200 °C"],
    [Math.PI, { unit: "rad", as: "°" }, "180°"],
  ] as const)("%d with %o is %s", (value, options, text) => {
    expect(write(value, options)).toBe(text);
  });

  it("writes every unit in every symbol, SI, US and engineering", () => {
    for (const unit of [...Object.keys(CANONICAL), "°C"] as CanonicalUnit[]) {
      for (const as of unitSymbols(unit)) expect(write(1.5, { unit, as })).toContain(as);
      for (const exponent of [-12, -9, -6, -3, 0, 3, 6, 9, 12]) {
        const symbol = (text: string): string => text.replace(/^\S+ ?/, "");
        const options = { unit, significantDigits: 3 };
        expect(unitSymbols(unit)).toContain(
          symbol(write(2 * 10 ** exponent, { ...options, engineering: true })),
        );
        expect(unitSymbols(unit)).toContain(symbol(write(2 * 10 ** exponent, { ...options, system: "US" })));
      }
    }
  });

  it("puts signs and spaces as asked", () => {
    expect(write(-5, {})).toBe("-5 Ω");
    expect(write(-5, { trueMinus: true, nonBreakingSpace: true })).toBe("\u22125\u00A0Ω");
    expect(write(-5, { unit: "J/(kg·K)", trueMinus: true })).toBe("\u22125 J/(kg·K)");
  });

  it("writes an open circuit", () => {
    expect(formatQuantity("open", { unit: "Ω", decimals: 2 })).toBe("open");
    expect(thrown(() => write("open" as unknown as number, { unit: "V" })).code).toBe("not-a-number");
  });
});

describe("refused", () => {
  it.each([
    [Number.NaN, {}, "not-a-number"],
    [Number.POSITIVE_INFINITY, {}, "not-a-number"],
    [1, { significantDigits: 0 }, "out-of-range"],
    [1, { significantDigits: 18 }, "out-of-range"],
    [1, { significantDigits: 2.5 }, "out-of-range"],
    [1, { decimals: -1 }, "out-of-range"],
    [1, { decimals: 21 }, "out-of-range"],
    [1, { decimals: 2, significantDigits: 2 }, "inconsistent"],
    [1, { as: "mΩ", engineering: true }, "inconsistent"],
    [1, { as: "mΩ", system: "US" }, "inconsistent"],
    [1, { system: "US", engineering: true }, "inconsistent"],
    [1, { system: "metric" as "SI" }, "unknown-name"],
    [1, { as: "ohm" }, "unknown-name"],
    [1, { as: "kW" }, "wrong-type"],
    [1, { unit: "Watt" as "W" }, "unknown-name"],
    [1, { unit: undefined as unknown as "W" }, "missing"],
    [-300, { unit: "°C", as: "°F" }, "out-of-range"],
  ] as const)("%d with %o is %s", (value, options, code) => {
    expect(thrown(() => write(value, options)).code).toBe(code);
  });
});

describe("value with uncertainty", () => {
  // JCGM 100:2008 (GUM), 7.2.2, example 2 and 3: m = 100.021 47 g with u = 0.35 mg is written 100.021 47(35) g.
  it("writes the example of the GUM", () => {
    const options = { unit: "kg", as: "g", uncertainty: 0.35e-6 as Quantity<"kg"> } as const;
    expect(formatUncertain(0.10002147 as Quantity<"kg">, options)).toBe("100.02147(35) g");
  });

  // Worked by hand after the same clause.
  it.each([
    [7.65, 0.04, 1, "7.65(4) Ω"],
    [7.65, 0.04, 2, "7.650(40) Ω"],
    [7.6543, 0.0372, 2, "7.654(37) Ω"],
    [7.6543, 0.0996, 1, "7.7(1) Ω"],
    [7.6543, 0.0996, 2, "7.65(10) Ω"],
    [12.3, 1.5, 2, "12.3(1.5) Ω"],
    [12.3, 15, 2, "12(15) Ω"],
    [12.3, 15, 1, "10(20) Ω"],
    [0.004, 1, 1, "0(1) Ω"],
    [-7.65, 0.04, 1, "-7.65(4) Ω"],
    [7.65, 0, 2, "7.65(0) Ω"],
    [0, 0.5, 1, "0.0(5) Ω"],
  ] as const)("%d with %d to %d digits is %s", (value, uncertainty, uncertaintyDigits, text) => {
    expect(
      formatUncertain(ohms(value), { unit: "Ω", uncertainty: ohms(uncertainty), uncertaintyDigits }),
    ).toBe(text);
  });

  it("takes two digits, the canonical unit and plain marks when nothing is said", () => {
    expect(formatUncertain(ohms(-7.6543), { unit: "Ω", uncertainty: ohms(0.0372) })).toBe("-7.654(37) Ω");
  });

  it("writes an uncertainty above the decimal mark in full, and with a prefix in short", () => {
    const power = { unit: "W", uncertainty: watts(1234) } as const;
    expect(formatUncertain(watts(60370), power)).toBe("60400(1200) W");
    expect(formatUncertain(watts(60370), { ...power, engineering: true })).toBe("60.4(1.2) kW");
  });

  it("converts the uncertainty of a temperature as a difference", () => {
    const options = { unit: "°C", as: "°F", uncertainty: kelvins(5), uncertaintyDigits: 1 } as const;
    expect(formatUncertain(celsius(200), options)).toBe("392(9) °F");
  });

  it.each([
    [-0.1, 2, "out-of-range"],
    [Number.NaN, 2, "not-a-number"],
    [0.1, 3, "out-of-range"],
    [0.1, 0, "out-of-range"],
  ])("refuses an uncertainty of %d to %d digits", (uncertainty, digits, code) => {
    const run = (): string =>
      formatUncertain(newtonMeters(5), {
        unit: "N·m",
        uncertainty: uncertainty as Quantity<"N·m">,
        uncertaintyDigits: digits as 1,
      });
    expect(thrown(run).code).toBe(code);
  });
});

describe("a number without a unit", () => {
  // Half away from zero on the decimal text of the number, worked by hand.
  it.each([
    [formatNumber(1.04699), "1.04699"],
    [formatNumber(1.04699, { significantDigits: 4 }), "1.047"],
    [formatNumber(-0.00125, { significantDigits: 2 }), "-0.0013"],
    [formatNumber(-2.5, { trueMinus: true }), "\u22122.5"],
  ])("%s is written %s", (shown, expected) => {
    expect(shown).toBe(expected);
  });

  it("refuses no digits at all", () => {
    const error = thrown(() => formatNumber(1, { significantDigits: 0 }));
    expect([error.code, error.argument]).toEqual(["out-of-range", "significantDigits"]);
  });
});

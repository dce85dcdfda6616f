/** Which unit is written when a system or a prefix is asked for: the lists once more, from the trade and from the SI's prefixes. */
import { type CanonicalUnit, formatQuantity, type Quantity } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { constructorOf, thrown } from "./support.ts";

const write = (value: number, options: { unit: CanonicalUnit; [option: string]: unknown }): string =>
  formatQuantity<CanonicalUnit>(value as Quantity<CanonicalUnit>, options as { unit: CanonicalUnit });

/** Common practice where feet and pounds are in use, no published source: canonical unit, constructor of the trade's unit, its symbol. */
const TRADE: readonly (readonly [CanonicalUnit, string, string])[] = [
  ["m", "inches", "in"],
  ["m²", "squareInches", "in²"],
  ["m³", "cubicFeet", "ft³"],
  ["m/s", "feetPerMinute", "ft/min"],
  ["kg", "pounds", "lb"],
  ["N", "poundsForce", "lbf"],
  ["N/m", "poundsForcePerInch", "lbf/in"],
  ["Pa", "poundsForcePerSquareInch", "psi"],
  ["N·m", "poundForceInches", "lbf·in"],
  ["Ω·m", "ohmCircularMilsPerFoot", "Ω·cmil/ft"],
  ["Ω/m", "ohmsPerThousandFeet", "Ω/1000 ft"],
  ["°C", "fahrenheit", "°F"],
  ["K", "fahrenheitDegrees", "Δ°F"],
  ["W/m²", "wattsPerSquareInch", "W/in²"],
  ["W/(m²·K)", "btuItPerHourSquareFootFahrenheit", "Btu/(h·ft²·°F)"],
  ["W/(m·K)", "btuItPerHourFootFahrenheit", "Btu/(h·ft·°F)"],
  ["W/K", "btuItPerHourFahrenheit", "Btu/(h·°F)"],
  ["J/K", "btuItPerFahrenheit", "Btu/°F"],
  ["J/(kg·K)", "btuItPerPoundFahrenheit", "Btu/(lb·°F)"],
  ["kg/m³", "poundsPerCubicFoot", "lb/ft³"],
  ["kg/m", "poundsPerFoot", "lb/ft"],
  ["m³/s", "cubicFeetPerMinute", "ft³/min"],
  ["kg/s", "poundsPerMinute", "lb/min"],
  ["A/m²", "amperesPerSquareInch", "A/in²"],
];

/** Steps of a thousand by the SI's prefixes (SI Brochure, 9th edition, table 7), as far as the units of this trade go. */
const STEPS: readonly (readonly [CanonicalUnit, lowest: number, symbols: string])[] = [
  ["V", 1e-6, "µV mV V kV"],
  ["A", 1e-6, "µA mA A kA"],
  ["Ω", 1e-9, "nΩ µΩ mΩ Ω kΩ MΩ GΩ"],
  ["S", 1e-3, "mS S"],
  ["W", 1e-6, "µW mW W kW MW"],
  ["J", 1, "J kJ MJ"],
  ["s", 1e-3, "ms s"],
  ["Hz", 1, "Hz kHz"],
  ["H", 1e-3, "mH H"],
  ["m", 1e-9, "nm µm mm m"],
  ["kg", 1e-3, "g kg"],
  ["N", 1, "N kN"],
  ["Pa", 1, "Pa kPa MPa GPa"],
  ["Ω·m", 1e-9, "nΩ·m µΩ·m"],
  ["Ω/m", 1e-3, "mΩ/m Ω/m"],
  ["W/m", 1, "W/m kW/m"],
  ["W/m²", 1, "W/m² kW/m²"],
  ["J/K", 1, "J/K kJ/K"],
  ["J/kg", 1, "J/kg kJ/kg"],
  ["J/(kg·K)", 1, "J/(kg·K) kJ/(kg·K)"],
];
/** Units whose neighbours are a million apart. */
const WIDE: readonly (readonly [CanonicalUnit, factor: number, symbol: string])[] = [
  ["F", 1e-6, "µF"],
  ["F", 1, "F"],
  ["N/m", 1, "N/m"],
  ["N/m", 1e6, "MN/m"],
  ["S/m", 1, "S/m"],
  ["S/m", 1e6, "MS/m"],
  ["Ω·m", 1e-6, "µΩ·m"],
  ["Ω·m", 1, "Ω·m"],
];

describe("the unit of a system", () => {
  it.each(TRADE)("%s is %s where feet and pounds are in use", (unit, made, symbol) => {
    const value = constructorOf(made)(7.25);
    expect(write(value, { unit, system: "US", significantDigits: 3 })).toBe(`7.25 ${symbol}`);
  });

  it("is the SI's where the trade has no other", () => {
    const electric: readonly CanonicalUnit[] = ["V", "A", "Ω", "S", "W", "J", "s", "Hz", "H", "F", "rad"];
    for (const unit of electric) expect(write(7.25, { unit, system: "US" })).toBe(`7.25 ${unit}`);
  });
});

describe("the prefix", () => {
  it.each(STEPS)("of %s goes up from %d in steps of a thousand: %s", (unit, lowest, symbols) => {
    const options = { unit, engineering: true, significantDigits: 3 } as const;
    symbols.split(" ").forEach((symbol, step) => {
      const size = lowest * 1000 ** step;
      for (const [number, text] of [
        [1, "1.00"],
        [47.5, "47.5"],
        [999, "999"],
        [-12, "-12.0"],
      ] as const)
        expect(write(number * size, options)).toBe(`${text} ${symbol}`);
      // Just below the step, the digits left no longer round up to it: the step below, where there is one.
      const below = symbols.split(" ")[step - 1];
      const short = write(0.99 * size, options);
      expect(short).toBe(below === undefined ? `0.990 ${symbol}` : `990 ${below}`);
    });
  });

  it.each(WIDE)("of %s at %d is %s", (unit, factor, symbol) => {
    for (const number of [1.25, 250, 12_500])
      expect(write(number * factor, { unit, engineering: true, significantDigits: 3 })).toBe(
        `${number} ${symbol}`,
      );
  });

  it("is none for a unit that has none, and for nothing", () => {
    for (const unit of ["K", "rad", "N·m", "K/W", "kg/s"] as const)
      for (const value of [1.5e6, 1.5e-6])
        expect(write(value, { unit, engineering: true })).toBe(write(value, { unit }));
    expect(write(0, { unit: "kg", engineering: true })).toBe("0 kg");
  });
});

describe("a choice that cannot be made is refused by its name", () => {
  it.each([
    [{ system: "metric" }, "system", "unknown-name", /SI, US/],
    [{ as: "mΩ", engineering: true }, "as", "inconsistent", /"mΩ" is not allowed/],
    [{ system: "US", engineering: true }, "as", "inconsistent", /"US" is not allowed/],
    [{ as: "ohm" }, "as", "unknown-name", /a unit of Ω: .*mΩ/],
    [{ as: "kW" }, "as", "wrong-type", /a unit of Ω: .*mΩ/],
    [{ significantDigits: 18 }, "significantDigits", "out-of-range", /from 1 to 17/],
    [{ significantDigits: 0 }, "significantDigits", "out-of-range", /from 1 to 17/],
    [{ decimals: 21 }, "decimals", "out-of-range", /from 0 to 20/],
    [{ decimals: 2, significantDigits: 2 }, "decimals", "inconsistent", /^decimals: 2 is not allowed/],
  ])("%o: %s is %s", (options, argument, code, message) => {
    const error = thrown(() => write(1, { unit: "Ω", ...options }));
    expect([error.code, error.argument]).toEqual([code, argument]);
    expect(error.message).toMatch(message);
  });

  it("takes the most digits and decimals there may be", () => {
    expect(write(1, { unit: "Ω", significantDigits: 17 })).toBe(`1.${"0".repeat(16)} Ω`);
    expect(write(1, { unit: "Ω", significantDigits: 1 })).toBe("1 Ω");
    expect(write(1, { unit: "Ω", decimals: 20 })).toBe(`1.${"0".repeat(20)} Ω`);
  });
});

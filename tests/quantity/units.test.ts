import { execFileSync } from "node:child_process";
import * as quantity from "electroheat/quantity";
import { all, create } from "mathjs";
import { describe, expect, it, test } from "vitest";
import { constructorNames, constructorOf, readerOf, thrown } from "./support.ts";
import { CANONICAL, ROWS } from "./unitDatabase.ts";

const TEMPERATURES = ["celsius", "fahrenheit", "absoluteKelvins"];
const math = create(all ?? {}, {});

function gnuVersion(): string | undefined {
  try {
    return execFileSync("units", ["--version"], { encoding: "utf8" }).split("\n")[0];
  } catch {
    return undefined;
  }
}
const version = gnuVersion();

/** One run of GNU units for all conversions: two lines in, one number out. */
function gnuFactors(pairs: readonly (readonly [string, string])[]): number[] {
  const input = pairs.map(([from, to]) => `${from}\n${to}\n`).join("");
  const output = execFileSync("units", ["--terse", "-o", "%.17g"], { input, encoding: "utf8" });
  return output.trim().split("\n").map(Number);
}

describe("constructors and readers", () => {
  it("are all listed in the unit databases or are temperatures", () => {
    expect([...ROWS.map(([name]) => name), ...TEMPERATURES].sort()).toEqual(constructorNames().sort());
  });

  it("have a symbol each, which text is read by", () => {
    const symbols = (Object.keys(CANONICAL) as quantity.CanonicalUnit[]).flatMap((unit) =>
      quantity.unitSymbols(unit).map((symbol) => [unit, symbol] as const),
    );
    const read = symbols.map(
      ([unit, symbol]) => quantity.parseQuantity(`1 ${symbol}`, { unit }).value as number,
    );
    const made = ROWS.map(([name]) => constructorOf(name)(1));
    expect(new Set(symbols.map(([unit, symbol]) => `${unit} ${symbol}`)).size).toBe(ROWS.length);
    expect(read.sort((a, b) => a - b)).toEqual(made.sort((a, b) => a - b));
  });

  it("leave no reader without a constructor", () => {
    const readers = Object.keys(quantity).filter((name) => /^to[A-Z]/.test(name));
    expect(readers).toHaveLength(constructorNames().length);
  });

  // Source: GNU units, definitions.units as shipped by Debian.
  test.skipIf(version === undefined)(
    `agree with GNU units (${version === undefined ? `SKIPPED ${ROWS.length} units: no \`units\` command` : version})`,
    () => {
      const pairs = ROWS.map(([, unit, gnu]) => [gnu, CANONICAL[unit]?.[0] ?? ""] as const);
      const factors = gnuFactors(pairs);
      expect(factors).toHaveLength(ROWS.length);
      ROWS.forEach(([name], row) => {
        const expected = factors[row] ?? Number.NaN;
        expect(Math.abs(constructorOf(name)(1) / expected - 1), name).toBeLessThan(5e-16);
        expect(Math.abs(readerOf(name)(expected) - 1), name).toBeLessThan(1e-15);
      });
    },
  );

  // Source: GNU units, functions tempC, tempF, tempK.
  test.skipIf(version === undefined)("agree with GNU units on temperatures", () => {
    for (const [name, gnu] of [
      ["celsius", "tempC"],
      ["fahrenheit", "tempF"],
      ["absoluteKelvins", "tempK"],
    ] as const) {
      for (const degrees of [0, 32, 72.5, 212, 400, 1800]) {
        const output = execFileSync("units", ["--terse", "-o", "%.17g", `${gnu}(${degrees})`, "tempC"]);
        expect(Math.abs(constructorOf(name)(degrees) - Number(output)), `${name} ${degrees}`).toBeLessThan(
          1e-12,
        );
      }
    }
  });

  // Source: mathjs 15, unit definitions of its own; it holds no circular mil, and °F alone only as a temperature.
  const known = ROWS.filter(([, , , name]) => name !== null);
  it(`agree with mathjs on ${known.length} of ${ROWS.length} units`, () => {
    expect(known.length).toBeGreaterThan(160);
    for (const [name, unit, , expression] of known) {
      const to = CANONICAL[unit]?.[1] ?? "";
      const value = math.evaluate(/^\d/.test(expression ?? "") ? `${expression}` : `1 ${expression}`);
      const expected = value.toNumber(to) as number;
      expect(Math.abs(constructorOf(name)(1) / expected - 1), name).toBeLessThan(1e-15);
    }
  });
});

describe("published factors", () => {
  // NIST SP 811, 2008 edition, Appendix B.8, seven digits as printed there; from memory, and confirmed by both
  // databases above.
  it.each([
    ["poundForceInches", 1.129848e-1],
    ["poundForceFeet", 1.355818],
    ["poundsForcePerSquareInch", 6.894757e3],
    ["kips", 4.448222e3],
    ["standardAtmospheres", 1.01325e5],
    ["bars", 1e5],
    ["hectopascals", 1e2],
    ["cubicFeetPerMinute", 4.719474e-4],
    ["btuItPerHour", 2.930711e-1],
    ["mechanicalHorsepower", 7.456999e2],
    ["circularMils", 5.067075e-10],
    ["ohmCircularMilsPerFoot", 1.662426e-9],
    ["wattsPerSquareInch", 1.550003e3],
    ["btuItPerHourSquareFootFahrenheit", 5.678263],
    ["btuItPerHourFootFahrenheit", 1.730735],
    ["btuItInchesPerHourSquareFootFahrenheit", 1.442279e-1],
    ["poundsPerCubicFoot", 1.601846e1],
    ["poundsPerCubicInch", 2.76799e4],
    ["inchesOfWaterConventional", 2.490889e2],
    ["inchesOfMercuryConventional", 3.386389e3],
    ["usGallons", 3.785412e-3],
  ] as const)("%s is %d in the canonical unit", (name, printed) => {
    expect(Number(constructorOf(name)(1).toPrecision(7))).toBe(printed);
  });
});

describe("units built from other units (definition)", () => {
  const of = (name: string): number => constructorOf(name)(1);
  it.each([
    ["kilowattHours", () => of("kilowatts") * of("hours")],
    ["poundForceFeet", () => 12 * of("poundForceInches")],
    ["poundForceInches", () => of("poundsForce") * of("inches")],
    ["poundsForcePerSquareInch", () => of("poundsForce") / of("squareInches")],
    ["kipsPerSquareInch", () => of("kips") / of("squareInches")],
    ["cubicFeetPerMinute", () => of("cubicFeet") / of("minutes")],
    ["feetPerMinute", () => of("feet") / of("minutes")],
    ["squareFeet", () => 144 * of("squareInches")],
    ["cubicFeet", () => 1728 * of("cubicInches")],
    ["usGallons", () => 231 * of("cubicInches")],
    ["thousandCircularMils", () => 1000 * of("circularMils")],
    ["circularMils", () => (Math.PI / 4) * of("mils") ** 2],
    ["ohmCircularMilsPerFoot", () => of("circularMils") / of("feet")],
    ["ohmSquareMillimetersPerMeter", () => of("microohmMeters")],
    ["microohmCentimeters", () => of("microohms") * of("centimeters")],
    ["wattsPerSquareInch", () => of("watts") / of("squareInches")],
    ["btuItPerHour", () => of("btuIt") / of("hours")],
    ["btuItPerPoundFahrenheit", () => of("btuIt") / (of("pounds") * of("fahrenheitDegrees"))],
    ["btuItPerHourFootFahrenheit", () => of("btuIt") / (of("hours") * of("feet") * of("fahrenheitDegrees"))],
    ["poundsPerCubicFoot", () => of("pounds") / of("cubicFeet")],
    ["ohmsPerThousandFeet", () => of("ohmsPerFoot") / 1000],
    ["poundsForcePerInch", () => of("poundsForce") / of("inches")],
  ])("%s", (name, built) => {
    expect(Math.abs(of(name) / built() - 1)).toBeLessThan(1e-15);
  });
});

describe("decimal submultiples", () => {
  it("land on the double that the decimal text reads as", () => {
    expect(quantity.milliohms(4.7)).toBe(0.0047);
    expect(quantity.millimeters(6.35)).toBe(0.00635);
    expect(quantity.microohms(35)).toBe(35e-6);
    expect(quantity.nanoohmMeters(17.241)).toBe(17.241e-9);
  });
});

describe("fixed points of the temperature scales", () => {
  // 0 °C = 32 °F = 273.15 K, 100 °C = 212 °F, −40 °C = −40 °F, 0 K = −459.67 °F; definitions.
  it.each([
    [0, 32, 273.15],
    [100, 212, 373.15],
    [-40, -40, 233.15],
    [-273.15, -459.67, 0],
  ])("%d °C is %d °F and %d K", (celsius, fahrenheit, kelvin) => {
    expect(quantity.fahrenheit(fahrenheit)).toBeCloseTo(celsius, 12);
    expect(quantity.toFahrenheit(quantity.celsius(celsius))).toBeCloseTo(fahrenheit, 12);
    expect(quantity.absoluteKelvins(kelvin)).toBeCloseTo(celsius, 12);
    expect(quantity.toAbsoluteKelvins(quantity.celsius(celsius))).toBeCloseTo(kelvin, 12);
  });

  it("end at absolute zero: the last double above it is read, the next below is refused", () => {
    expect(quantity.celsius(-273.15)).toBe(-273.15);
    for (const [name, below] of [
      ["celsius", -273.15000000000003],
      ["fahrenheit", -459.67000000000007],
      ["absoluteKelvins", -5e-324],
    ] as const) {
      expect(thrown(() => constructorOf(name)(below)).code, name).toBe("out-of-range");
    }
  });

  // Source: bench question temperature-difference-conversion.
  it("make a rise of 22 K one of 39.6 °F, not 71.6", () => {
    expect(quantity.toFahrenheitDegrees(quantity.kelvins(22))).toBeCloseTo(39.6, 12);
  });

  it("keep a difference of 9 °F at 5 K and a temperature of 9 °F at −12.8 °C", () => {
    expect(quantity.fahrenheitDegrees(9)).toBe(5);
    expect(quantity.fahrenheit(9)).toBeCloseTo(-12.777777777777779, 12);
  });
});

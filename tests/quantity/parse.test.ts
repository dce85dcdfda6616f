import { type CanonicalUnit, parseQuantity, unitSymbols } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ALIASES } from "../../src/quantity/aliases.ts";
import { thrown } from "./support.ts";

const read = (text: string, unit: CanonicalUnit, options: { decimalComma?: boolean; path?: string } = {}) =>
  parseQuantity<CanonicalUnit>(text, { unit, ...options });

describe("texts that are read", () => {
  // Values by definition of the unit; resolution is one unit of the last digit written.
  it.each([
    ["7.9 Ω", "Ω", 7.9, "Ω", 0.1, 2],
    ["7.90 \u2126", "Ω", 7.9, "Ω", 0.01, 3],
    ["7.9Ω", "Ω", 7.9, "Ω", 0.1, 2],
    ["7.9 ohm", "Ω", 7.9, "Ω", 0.1, 2],
    ["7.9 Ohms", "Ω", 7.9, "Ω", 0.1, 2],
    ["7.9 OHMS", "Ω", 7.9, "Ω", 0.1, 2],
    ["7.9\u00A0Ω", "Ω", 7.9, "Ω", 0.1, 2],
    ["7.9\u202FΩ", "Ω", 7.9, "Ω", 0.1, 2],
    ["  +7.9 Ω\t", "Ω", 7.9, "Ω", 0.1, 2],
    ["35 \u00B5Ω", "Ω", 35e-6, "µΩ", 1e-6, 2],
    ["35 \u03BC\u2126", "Ω", 35e-6, "µΩ", 1e-6, 2],
    ["35 uohm", "Ω", 35e-6, "µΩ", 1e-6, 2],
    ["4.7 mohm", "Ω", 0.0047, "mΩ", 1e-4, 2],
    ["50 Mohm", "Ω", 50e6, "MΩ", 1e6, 2],
    ["50 megohms", "Ω", 50e6, "MΩ", 1e6, 2],
    ["2.2 kΩ", "Ω", 2200, "kΩ", 100, 2],
    ["1500 Ω", "Ω", 1500, "Ω", 1, 4],
    // The letter of IEC 60062 for ohms, from memory.
    ["7.59R", "Ω", 7.59, "Ω", 0.01, 3],
    // Compatibility characters: Unicode Standard Annex 15, NFKC.
    ["７．５９ Ω", "Ω", 7.59, "Ω", 0.01, 3],
    ["－５ °C", "°C", -5, "°C", 1, 1],
    ["½ in", "m", 0.0127, "in", 0.0127, null],
    ['1½"', "m", 0.0381, "in", 0.0127, null],
    ["3 ⅜ in", "m", 0.085725, "in", 0.003175, null],
    ["0.050 Ω", "Ω", 0.05, "Ω", 0.001, 2],
    ["0.0 Ω", "Ω", 0, "Ω", 0.1, 1],
    [".5 Ω", "Ω", 0.5, "Ω", 0.1, 1],
    ["1.5e-3 Ω", "Ω", 0.0015, "Ω", 1e-4, 2],
    ["1.5E\u22123 Ω", "Ω", 0.0015, "Ω", 1e-4, 2],
    ["480 VAC", "V", 480, "V", 1, 3],
    ["480 volts", "V", 480, "V", 1, 3],
    ["60 KW", "W", 60000, "kW", 1000, 2],
    ["60kW", "W", 60000, "kW", 1000, 2],
    ["72.2 amps", "A", 72.2, "A", 0.1, 3],
    ["60 HZ", "Hz", 60, "Hz", 1, 2],
    ["1.5 hr", "s", 5400, "h", 360, 2],
    ["400 °F", "°C", (368 * 5) / 9, "°F", 5 / 9, 3],
    ["400 F", "°C", (368 * 5) / 9, "°F", 5 / 9, 3],
    ["20 \u00BAC", "°C", 20, "°C", 1, 2],
    ["\u221240 °C", "°C", -40, "°C", 1, 2],
    ["-40 °C", "°C", -40, "°C", 1, 2],
    ["22 K", "K", 22, "K", 1, 2],
    ["22 \u212A", "K", 22, "K", 1, 2],
    ["40 Δ°F", "K", 200 / 9, "Δ°F", 5 / 9, 2],
    ["5.0 N·m", "N·m", 5, "N·m", 0.1, 2],
    ["5.0 Nm", "N·m", 5, "N·m", 0.1, 2],
    ["5.0 N m", "N·m", 5, "N·m", 0.1, 2],
    ["5.0 N.m", "N·m", 5, "N·m", 0.1, 2],
    ["5.0 N\u22C5m", "N·m", 5, "N·m", 0.1, 2],
    ["5 nm", "m", 5e-9, "nm", 1e-9, 1],
    ["0.25 in", "m", 0.00635, "in", 2.54e-4, 2],
    ['0.25"', "m", 0.00635, "in", 2.54e-4, 2],
    ["0.25 in.", "m", 0.00635, "in", 2.54e-4, 2],
    ["25 mm2", "m²", 25e-6, "mm²", 1e-6, 2],
    ["25 mm^2", "m²", 25e-6, "mm²", 1e-6, 2],
    ["2 W/cm²", "W/m²", 20000, "W/cm²", 10000, 1],
    ["0.00393 1/K", "1/K", 0.00393, "1/K", 1e-5, 3],
    ["17 ppm/K", "1/K", 17e-6, "ppm/K", 1e-6, 2],
  ] as const)("%s", (text, unit, value, symbol, resolution, significantDigits) => {
    const parsed = read(text, unit);
    expect(parsed.value).toBeCloseTo(value, 12);
    expect(Math.abs((parsed.value as number) - value)).toBeLessThanOrEqual(4e-16 * Math.abs(value));
    expect(parsed.symbol).toBe(symbol);
    expect(Math.abs((parsed.resolution ?? 0) / resolution - 1)).toBeLessThan(1e-15);
    expect(parsed.significantDigits).toBe(significantDigits);
  });

  it.each([
    "lbf·in",
    "lbf.in",
    "lbf-in",
    "lbf in",
    "in·lbf",
    "in-lbf",
    "in-lb",
    "in-lbs",
    "in lb",
    "in.-lbs.",
  ])("132 %s is a torque of 132 × 0.112 984 8 N·m", (unit) => {
    // NIST SP 811, 2008 edition, Appendix B.8: 1 lbf·in = 1.129 848 E−01 N·m; from memory.
    const parsed = read(`132 ${unit}`, "N·m");
    expect((parsed.value as number) / 132).toBeCloseTo(0.1129848, 7);
    expect(parsed.symbol).toBe("lbf·in");
  });

  it.each([
    ["1/2 hp", "W", "0.5 hp"],
    ["1/2 h", "s", "0.5 h"],
    ["1/4 lb", "kg", "0.25 lb"],
    ["3/4 ft", "m", "0.75 ft"],
    ["1 1/2 kW", "W", "1.5 kW"],
  ] as const)("%s as a fraction of what is counted in them", (text, unit, decimal) => {
    expect(read(text, unit).value).toBe(read(decimal, unit).value);
  });

  it.each([
    ["1/4 in", 0.25, 1 / 4],
    ["3/8 in", 0.375, 1 / 8],
    ["1 1/2 in", 1.5, 1 / 2],
    ["1-1/2 in", 1.5, 1 / 2],
    ["1-1/2\u2033", 1.5, 1 / 2],
    ["-1/4 in", -0.25, 1 / 4],
    ["5\u20448 in", 0.625, 1 / 8],
  ])("%s as a fraction", (text, inches, part) => {
    const parsed = read(text, "m");
    expect(parsed.value).toBeCloseTo(inches * 0.0254, 15);
    expect(parsed.resolution).toBeCloseTo(part * 0.0254, 15);
    expect(parsed.significantDigits).toBeNull();
  });

  it.each(["OL", "ol", "O.L", "open", "OPEN", " Open ", "OL MΩ", "open ohms"])(
    "%s is an open circuit",
    (text) => {
      expect(read(text, "Ω")).toEqual({
        value: "open",
        symbol: "Ω",
        resolution: null,
        significantDigits: null,
      });
    },
  );

  it("a decimal comma when it is asked for, and then no point", () => {
    expect(read("7,9 Ω", "Ω", { decimalComma: true })).toEqual({
      value: 7.9,
      symbol: "Ω",
      resolution: 0.1,
      significantDigits: 2,
    });
    expect(thrown(() => read("7.9 Ω", "Ω", { decimalComma: true })).code).toBe("ambiguous");
    expect(thrown(() => read("1.500,5 Ω", "Ω", { decimalComma: true })).code).toBe("ambiguous");
  });
});

it("reads characters of full width and fractions of one character by the same rules as any others", () => {
  expect(thrown(() => read("７，５ Ω", "Ω")).code).toBe("ambiguous");
  expect(read("７，５ Ω", "Ω", { decimalComma: true })).toMatchObject({ value: 7.5 });
  expect(read("480½ V", "V")).toEqual(read("480 1/2 V", "V"));
  expect(thrown(() => read("½", "m")).code).toBe("ambiguous");
});

describe("texts that are refused", () => {
  it.each([
    ["7,9 Ω", "Ω", "ambiguous"],
    ["1,500 W", "W", "ambiguous"],
    ["1.500,5 W", "W", "ambiguous"],
    ["7.9.1 Ω", "Ω", "ambiguous"],
    ["1 500", "Ω", "ambiguous"],
    ["1 500 Ω", "Ω", "ambiguous"],
    ["1\u00A0500 Ω", "Ω", "ambiguous"],
    ["7.9", "Ω", "ambiguous"],
    ["1/4", "m", "ambiguous"],
    // Two ratings on one plate or lug, common practice, no published source; as fractions they would pass for small numbers.
    ["480/277 V", "V", "ambiguous"],
    ["240/416 V", "V", "ambiguous"],
    ["36/30 kW", "W", "ambiguous"],
    // A star's plate: between lines, and to neutral.
    ["480Y/277 V", "V", "ambiguous"],
    ["480Y / 277 V", "V", "ambiguous"],
    ["480y/277", "V", "ambiguous"],
    ["208 Y/120 V", "V", "ambiguous"],
    ["240Δ/120 V", "V", "ambiguous"],
    ["60/75 °C", "°C", "ambiguous"],
    ["", "Ω", "missing"],
    [" \u00A0 ", "Ω", "missing"],
    ["NaN", "Ω", "not-a-number"],
    ["nan Ω", "Ω", "not-a-number"],
    ["Infinity", "Ω", "not-a-number"],
    ["-Infinity Ω", "Ω", "not-a-number"],
    ["∞ Ω", "Ω", "not-a-number"],
    ["1e400", "Ω", "out-of-range"],
    ["1e400 Ω", "Ω", "out-of-range"],
    ["-1e400 Ω", "Ω", "out-of-range"],
    ["1e-400 Ω", "Ω", "out-of-range"],
    ["0e400 Ω", "Ω", "out-of-range"],
    ["1e99999999999999999999999 Ω", "Ω", "out-of-range"],
    ["1e308 GΩ", "Ω", "out-of-range"],
    ["1e-320 nΩ", "Ω", "out-of-range"],
    ["-300 °C", "°C", "out-of-range"],
    ["-500 °F", "°C", "out-of-range"],
    ["7. Ω", "Ω", "malformed-text"],
    [". Ω", "Ω", "malformed-text"],
    ["- Ω", "Ω", "malformed-text"],
    ["Ω", "Ω", "malformed-text"],
    ["ohms 7.9", "Ω", "malformed-text"],
    ["--7.9 Ω", "Ω", "malformed-text"],
    ["0x10 Ω", "Ω", "unknown-name"],
    ["1/0 in", "m", "malformed-text"],
    ["OL", "V", "malformed-text"],
    ["OL V", "Ω", "malformed-text"],
    ["OLD", "Ω", "malformed-text"],
    ["7.9 blobs", "Ω", "unknown-name"],
    ["7.9 Ω Ω", "Ω", "unknown-name"],
    ["5 * W", "W", "unknown-name"],
    ["5 W ...", "W", "unknown-name"],
    ["50 MOHM", "Ω", "unknown-name"],
    ["7.9e Ω", "Ω", "unknown-name"],
    ["1/4e3 in", "m", "unknown-name"],
    ["2 gal", "m³", "unknown-name"],
    ["2000 scfm", "m³/s", "unknown-name"],
    ["7.9 W", "Ω", "wrong-type"],
    ["2500 lb", "N", "wrong-type"],
  ] as const)("%s", (text, unit, code) => {
    const error = thrown(() => read(text, unit));
    expect(error.code).toBe(code);
    // The message names what was seen (a blank is said to be missing) and what is allowed.
    if (code !== "missing") expect(error.message).toContain(JSON.stringify(text.replace(/^[ \u00A0]+/, "")));
    expect(error.message).toMatch(/expected .{3,}/);
    expect(error.argument).toBe("text");
  });

  it("name the argument as the caller calls it", () => {
    expect(thrown(() => read("NaN", "Ω", { path: "readings.2.ohms" })).argument).toBe("readings.2.ohms");
  });

  it.each([undefined, null])("%s is missing", (text) => {
    expect(thrown(() => read(text as unknown as string, "Ω")).code).toBe("missing");
  });

  it.each([7.9, true, {}, [], () => "7.9 Ω"])("%s is no text", (text) => {
    expect(thrown(() => read(text as unknown as string, "Ω")).code).toBe("wrong-type");
  });

  it("an unknown unit asked for is refused with the list", () => {
    const error = thrown(() => read("7.9 Ω", "ohm" as CanonicalUnit));
    expect(error.code).toBe("unknown-name");
    expect(error.message).toContain("N·m");
  });

  it("a megabyte is refused by its length, whatever it holds, and is not repeated in the message", () => {
    for (const text of ["7", " ", "1/", "·", "Ω", "9e", "OL ", "7.9 "]) {
      const error = thrown(() => read(text.repeat(1e6 / text.length), "Ω"));
      expect(error.code).toBe("malformed-text");
      expect(error.message.length).toBeLessThan(400);
    }
  });

  it("64 characters are read, 65 are not", () => {
    const text = (length: number): string => `${"0".repeat(length - 4)}5 Ω`.padStart(length, "0");
    expect(text(64)).toHaveLength(64);
    expect(read(text(64), "Ω").value).toBe(5);
    expect(thrown(() => read(text(65), "Ω")).code).toBe("malformed-text");
  });
});

describe("units of equal or similar dimension stay apart", () => {
  it.each([
    ["132 lbf·in", "J"],
    ["5 N·m", "J"],
    ["11 ft-lb", "J"],
    ["5 J", "N·m"],
    ["1 kWh", "N·m"],
    ["22 K", "°C"],
    ["22 kelvins", "°C"],
    ["22 °C", "K"],
    ["40 °F", "K"],
    ["40 Δ°F", "°C"],
    ["5 Hz", "s"],
    ["0.75 in", "Pa"],
  ] as const)("%s is not read as %s", (text, unit) => {
    expect(thrown(() => read(text, unit)).code).toBe("wrong-type");
  });
});

describe("the list of other spellings", () => {
  const all = Object.entries(ALIASES).flatMap(([unit, symbols]) =>
    Object.entries(symbols ?? {}).flatMap(([symbol, spellings]) =>
      spellings.map((spelling) => [unit as CanonicalUnit, symbol, spelling] as const),
    ),
  );

  it("belongs to symbols that exist", () => {
    for (const [unit, symbol] of all) expect(unitSymbols(unit)).toContain(symbol);
  });

  it(`reads each of its ${all.length} spellings as the symbol it stands beside`, () => {
    for (const [unit, symbol, spelling] of all) {
      expect(read(`5 ${spelling}`, unit).symbol, `${spelling} as ${unit}`).toBe(symbol);
    }
  });
});

describe("any text at all (property)", () => {
  const alphabet = fc.constantFrom(..."0123456789.,/-+eE ΩWKCFinlbfohmMµ°·()²\u00A0\u2212OLNa");
  const text = fc.oneof(
    fc.string({ maxLength: 80 }),
    fc.array(alphabet, { maxLength: 20 }).map((characters) => characters.join("")),
  );

  it("is read as a finite quantity or refused with an error of ours", () => {
    const unit = fc.constantFrom<CanonicalUnit>("Ω", "°C", "m", "m²", "N·m", "K");
    fc.assert(
      fc.property(text, unit, fc.boolean(), (input, asked, decimalComma) => {
        let value: unknown = 0;
        try {
          value = read(input, asked, { decimalComma }).value;
        } catch (error) {
          expect((error as Error).name).toBe("ElectroheatError");
        }
        expect(value === "open" || Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });
});

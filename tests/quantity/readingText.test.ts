/** How text is taken apart: marks, signs, exponents, fractions. Values by definition of the unit. */
import { type CanonicalUnit, parseQuantity } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const read = (text: string, unit: CanonicalUnit, decimalComma = false) =>
  parseQuantity<CanonicalUnit>(text, { unit, decimalComma });
const refusal = (call: () => unknown) => {
  const { code, argument, issues } = caught(call);
  return { code, argument, expected: issues[0]?.expected ?? "", received: issues[0]?.received };
};

describe("marks that look alike are read alike", () => {
  it.each([
    ["ohm sign", "5 \u2126", "Ω", "Ω"],
    ["Greek mu", "5 \u03BCm", "m", "µm"],
    ["micro sign", "5 \u00B5m", "m", "µm"],
    ["kelvin sign", "5 \u212A", "K", "K"],
    ["ordinal indicator", "5 \u00BAC", "°C", "°C"],
    ["ring above", "5 \u02DAC", "°C", "°C"],
    ["increment", "5 \u2206°F", "K", "Δ°F"],
    ["prime", "5 \u2032", "m", "ft"],
    ["double prime", "5 \u2033", "m", "in"],
    ["closing quotation mark", "5 \u201D", "m", "in"],
    ["subscript two", "5 inH\u2082O", "Pa", "inH₂O"],
    ["two", "5 inH2O", "Pa", "inH₂O"],
    ["fraction slash", "5 m\u2044s", "m/s", "m/s"],
    ["two for the square", "5 mm2", "m²", "mm²"],
    ["caret for the square", "5 mm^2", "m²", "mm²"],
    ["three for the cube", "5 m3/s", "m³/s", "m³/s"],
    ["caret for the cube", "5 cm^3", "m³", "cm³"],
    ["a power within brackets", "5 W/(m2·K)", "W/(m²·K)", "W/(m²·K)"],
  ] as const)("%s", (_, text, unit, symbol) => {
    expect(read(text, unit).symbol).toBe(symbol);
  });

  it.each([..." \t\u00A0\u2009\u202F·\u22C5\u2219\u2022*.-\u2010\u2011\u2212"])(
    "times as %s between unit symbols",
    (mark) => {
      expect(read(`5 N${mark}m`, "N·m").value).toBe(5);
      expect(read(`5 kJ/(kg${mark}K)`, "J/(kg·K)").value).toBe(5000);
      // Beside a slash or a bracket a mark says nothing.
      expect(read(`5 W/${mark}m`, "W/m").value).toBe(5);
      expect(read(`5 J/(${mark}kg${mark}K${mark})`, "J/(kg·K)").value).toBe(5);
      // Two of them are no more than one, and at the end of a number it is a gap.
      expect(read(`5 N${mark}${mark}m`, "N·m").value).toBe(5);
    },
  );

  it.each([..." \t\u00A0\u2009\u202F"])("a gap of kind %j around and within", (gap) => {
    expect(read(`${gap}${gap}7.9${gap}${gap}Ω${gap}`, "Ω").value).toBe(7.9);
    expect(read(`1${gap}1/2${gap}in`, "m").value).toBeCloseTo(0.0381, 15);
    expect(read(`OL${gap}MΩ`, "Ω").value).toBe("open");
    expect(refusal(() => read(`1${gap}500 Ω`, "Ω")).code).toBe("ambiguous");
    expect(refusal(() => read(gap, "Ω")).code).toBe("missing");
  });

  it("a hyphen or a full stop at the edge of a unit is read, other marks are not", () => {
    expect(read("5-W", "W").value).toBe(5);
    expect(read("5 in.", "m").symbol).toBe("in");
    for (const text of ["5 *W", "5 W*", "5 ·W", "5 W-", "5 W..", "5 --W", "5 -*W", "5 .W"])
      expect(refusal(() => read(text, "W")).code, text).toBe("unknown-name");
  });

  it("an ohm in words in small letters or with a capital, not in capitals only where a prefix could be mistaken", () => {
    for (const [text, value] of [
      ["5 ohm", 5],
      ["5 Ohms", 5],
      ["5 OHM", 5],
      ["5 OHMS", 5],
      ["5 kohm", 5000],
      ["5 kOhms", 5000],
      ["5 Mohms", 5e6],
      ["5 mohms", 0.005],
    ] as const)
      expect(read(text, "Ω").value, text).toBe(value);
    expect(read("5 ohm/m", "Ω/m").value).toBe(5);
    expect(read("5 ohm·m", "Ω·m").value).toBe(5);
    for (const text of ["5 MOHM", "5 mOHM", "5 MOHMS"])
      expect(refusal(() => read(text, "Ω")).code, text).toBe("unknown-name");
  });
});

describe("numbers", () => {
  it.each([
    ["5 V", 5, 1, 1],
    ["+5 V", 5, 1, 1],
    ["-5 V", -5, 1, 1],
    ["\u22125 V", -5, 1, 1],
    ["0 V", 0, 1, 1],
    ["-0.00 V", 0, 0.01, 1],
    ["007.90 V", 7.9, 0.01, 3],
    ["0.0079 V", 0.0079, 1e-4, 2],
    [".25 V", 0.25, 0.01, 2],
    ["5e3 V", 5000, 1000, 1],
    ["5E+3 V", 5000, 1000, 1],
    ["5.25e-3 V", 0.00525, 1e-5, 3],
    ["5.25E\u22123 V", 0.00525, 1e-5, 3],
    ["1e02 V", 100, 100, 1],
    ["5e3V", 5000, 1000, 1],
  ] as const)("%s", (text, value, resolution, significantDigits) => {
    expect(read(text, "V")).toEqual({ value, symbol: "V", resolution, significantDigits });
  });

  it.each([
    ["7,90 V", 7.9, 0.01, 3],
    ["-,5 V", -0.5, 0.1, 1],
    ["5,25e-3 V", 0.00525, 1e-5, 3],
    ["12 V", 12, 1, 2],
  ] as const)("%s with a comma", (text, value, resolution, significantDigits) => {
    expect(read(text, "V", true)).toEqual({ value, symbol: "V", resolution, significantDigits });
  });

  it.each([
    ["1/4 in", 0.25, 4],
    ["+3/8 in", 0.375, 8],
    ["-3/8 in", -0.375, 8],
    ["11/16in", 0.6875, 16],
    ["1 1/2 in", 1.5, 2],
    ["-1 1/2 in", -1.5, 2],
    ["12-3/4 in", 12.75, 4],
    ["0/4 in", 0, 4],
    ["3\u20444 in", 0.75, 4],
  ] as const)("%s as a fraction", (text, inches, parts) => {
    const parsed = read(text, "m");
    expect(parsed.value).toBeCloseTo(inches * 0.0254, 15);
    expect(parsed.resolution).toBeCloseTo(0.0254 / parts, 15);
    expect([parsed.symbol, parsed.significantDigits]).toEqual(["in", null]);
  });

  it("what only begins like a fraction or an exponent is no number with one", () => {
    for (const text of [
      "1/ in",
      "1/x in",
      "1 /2 in",
      "1-/2 in",
      "1.5/2 in",
      "1.5 1/2 in",
      "/2 in",
      "5e in",
      "5e+ in",
      "5e- in",
    ])
      expect(["unknown-name", "malformed-text", "ambiguous"], text).toContain(
        refusal(() => read(text, "m")).code,
      );
    // A unit that begins with a digit is no second number.
    expect(read("0.004 1/K", "1/K").value).toBe(0.004);
    expect(refusal(() => read("0.004 12", "1/K")).code).toBe("ambiguous");
  });
});

describe("an open circuit", () => {
  // With the point where a display of its range has it, and a nought for the letter: common practice, no published source.
  it.each([
    "OL",
    "ol",
    "O.L",
    "O.L.",
    "o.l.",
    "0L",
    "0.L",
    ".0L",
    ".OL",
    "O/L",
    "0.L MΩ",
    "OPEN",
    "Open",
    "OL Ω",
    "OL MΩ",
    "O.L. kohm",
    "open  ohms",
  ])("as %s", (text) => {
    expect(read(text, "Ω")).toEqual({
      value: "open",
      symbol: "Ω",
      resolution: null,
      significantDigits: null,
    });
  });

  it.each(["OL V", "OL x", "OLΩ", "O L", "OO", "..OL", "OPENED", ".OPEN", "OL Ω Ω"])("is not %s", (text) => {
    expect(refusal(() => read(text, "Ω")).code).toBe("malformed-text");
  });

  it("is a state of a resistance only", () => {
    for (const unit of ["V", "A", "Ω/m"] as const)
      expect(refusal(() => read("OL", unit)).code).toBe("malformed-text");
  });
});

/** What is said of each slip in a text with a unit, and of sizes of wire. */
import {
  awgDiameter,
  type CanonicalUnit,
  conductorArea,
  parseQuantity,
  unitSymbols,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const read = (text: string, unit: CanonicalUnit, decimalComma = false) =>
  parseQuantity<CanonicalUnit>(text, { unit, decimalComma });
const refusal = (call: () => unknown) => {
  const { code, argument, issues } = caught(call);
  return { code, argument, expected: issues[0]?.expected ?? "", received: issues[0]?.received };
};

describe("a slip is told as what it is", () => {
  const units = 'a number and a unit of Ω (Ω, nΩ, µΩ, mΩ, kΩ, MΩ, GΩ), or "OL"';
  it.each([
    ["7. Ω", false, "malformed-text", `${units}, with a digit after the decimal mark`],
    ["7, Ω", true, "malformed-text", `${units}, with a digit after the decimal mark`],
    ["7,9 Ω", false, "ambiguous", `${units}, decimal point and no grouping`],
    ["1,500.5 Ω", false, "ambiguous", `${units}, decimal point and no grouping`],
    ["1.5.5 Ω", false, "ambiguous", `${units}, decimal point and no grouping`],
    ["7.9 Ω", true, "ambiguous", `${units}, decimal comma and no grouping`],
    ["7,9,1 Ω", true, "ambiguous", `${units}, decimal comma and no grouping`],
    ["1 500 Ω", false, "ambiguous", `${units}, digits without spaces`],
    ["1/0 Ω", false, "malformed-text", 'a fraction with a denominator above 0, or "1/0 AWG"'],
    ["1e999 Ω", false, "out-of-range", "a number within the range of a double (about 1e-308 to 1e308)"],
    ["7.9", false, "ambiguous", units],
    ["7.9 W", false, "wrong-type", `${units}, not of W`],
    ["7.9 furlong", false, "unknown-name", units],
    ["much", false, "malformed-text", units],
    ["banana", false, "malformed-text", units],
    ["infinite", false, "not-a-number", units],
    ["-Inf", false, "not-a-number", units],
    ["NAN", false, "not-a-number", units],
  ] as const)("%s", (text, comma, code, expected) => {
    expect(refusal(() => read(text, "Ω", comma))).toEqual({
      code,
      argument: "text",
      expected,
      received: JSON.stringify(text),
    });
  });

  it.each(["480/277 V", "480Y/277 V", "480Y/277V", "480 V/277 V", "480 V / 277 V", "208Y / 120 V"])(
    "two ratings, %s",
    (text) => {
      expect(refusal(() => read(text, "V"))).toMatchObject({
        code: "ambiguous",
        expected: "one number, not two ratings (fractions are read of in, ft, lb, hp, h)",
      });
    },
  );

  it.each(["36 kVA", "36 KVA", "0.036 MVA", "36000 VA"])("apparent power for a heater's, %s", (text) => {
    const { code, expected } = refusal(() => read(text, "W"));
    expect(code).toBe("unknown-name");
    // S = P/cos φ, and a resistance has cos φ = 1: the definition of the power factor.
    expect(expected).toContain("a heater's kVA are its kW at unity power factor: write kW");
  });

  it.each([
    ["480V/3PH/60HZ", 480],
    ["480V-3PH-60HZ", 480],
    ["480 V, 3 PH, 60 Hz", 480],
    ["3~ 400 V 50 Hz", 400],
    ["3 PH 480 V 60 HZ", 480],
    ["3-Phase, 208 V", 208],
    ["3AC 400V 50Hz", 400],
    ["3/N/PE AC 400 V", 400],
    ["3/PE ~ 400 V 50 Hz", 400],
    ["3 V", 3],
    ["3.3 V", 3.3],
  ] as const)("marks of a plate around its volts are none, %s", (text, volts) => {
    // As plates print them (IEC 61293 for the European ones, from memory).
    expect(read(text, "V")).toMatchObject({ value: volts, symbol: "V" });
  });
  it.each(["480/3/60", "3~", "3 PH", "3 PH V", "1~ 230 V", "1 PH 240 V", "3~ 400/230 V", "480V-1PH-60HZ"])(
    "a plate that says more than one voltage between lines, %s",
    (text) => {
      expect(["ambiguous", "unknown-name", "malformed-text"]).toContain(refusal(() => read(text, "V")).code);
    },
  );

  it("of options left out, as JavaScript can", () => {
    expect(refusal(() => (parseQuantity as (text: string) => unknown)("7.9 Ω"))).toMatchObject({
      code: "missing",
      argument: "options",
    });
  });

  it("of what a unit may be, the first twelve symbols are listed", () => {
    for (const unit of ["Ω", "W", "Pa", "m", "W/m²", "m³/s"] as const) {
      const symbols = unitSymbols(unit);
      const shown = symbols.slice(0, 12).join(", ") + (symbols.length > 12 ? ", …" : "");
      expect(refusal(() => read("7.9", unit)).expected).toBe(
        `a number and a unit of ${unit} (${shown})${unit === "Ω" ? ', or "OL"' : ""}`,
      );
      // The canonical one is named first.
      expect(symbols[0]).toBe(unit);
    }
  });

  it("of length, of type and of blanks", () => {
    expect(refusal(() => read("7".repeat(65), "Ω"))).toMatchObject({
      code: "malformed-text",
      expected: `${units} in at most 64 characters`,
    });
    expect(refusal(() => read(5 as never, "Ω"))).toMatchObject({ code: "wrong-type", expected: "text" });
    for (const none of ["", "  ", undefined, null])
      expect(refusal(() => read(none as string, "Ω"))).toMatchObject({
        code: "missing",
        argument: "text",
        expected: units,
      });
  });

  it("of the conversion: beyond a double, below absolute zero", () => {
    expect(refusal(() => read("1e308 GΩ", "Ω"))).toMatchObject({
      code: "out-of-range",
      expected: "a number that stays finite when converted GΩ",
    });
    expect(refusal(() => read("-300 °C", "°C"))).toMatchObject({
      code: "out-of-range",
      expected: "at least -273.15 °C",
    });
    expect(refusal(() => read("-500 °F", "°C"))).toMatchObject({
      code: "out-of-range",
      expected: "at least -459.67 °F",
    });
    expect(refusal(() => read("1e-320 nΩ", "Ω"))).toMatchObject({
      code: "out-of-range",
      expected: "a number within the range of a double",
    });
  });
});

describe("gauges", () => {
  const forms = "an AWG size (SWG: see swgSize): 4/0 to 1/0 (or 0000 to 0), or 1 to 40";

  it("names the function for sizes of another gauge, and only where a size is asked for", () => {
    for (const unit of ["m", "m²"] as const)
      expect(() => parseQuantity("16 SWG", { unit })).toThrow(
        /expected a number and a unit of m.*SWG: see swgSize/,
      );
    expect(() => parseQuantity("16 swg", { unit: "m" })).toThrow(/swgSize/);
    expect(() => parseQuantity("16 SWG", { unit: "V" })).toThrow(
      /^text: "16 SWG" is not allowed; expected a number and a unit of V \(V, µV, mV, kV\)$/,
    );
  });

  it("are told what there is", () => {
    for (const [text, code] of [
      ["41", "out-of-range"],
      ["5/0", "malformed-text"],
      ["0/0", "malformed-text"],
      ["00000", "malformed-text"],
      ["012", "malformed-text"],
      ["400", "malformed-text"],
      ["1.5", "malformed-text"],
      ["x4/0", "malformed-text"],
      ["4/0x", "malformed-text"],
      ["0".repeat(25), "malformed-text"],
      ["", "missing"],
      [" AWG ", "missing"],
      [undefined, "missing"],
      [null, "missing"],
      [12, "wrong-type"],
    ] as const)
      expect(
        refusal(() => awgDiameter(text as string)),
        String(text),
      ).toMatchObject({ code, argument: "size", expected: forms });
    expect(awgDiameter("40")).toBeGreaterThan(0);
    // As long as a text may be.
    expect(awgDiameter("2/0 AWG".padStart(24))).toBe(awgDiameter("2/0"));
  });

  it("and kcmil name their system", () => {
    const mils = (text: string) => conductorArea(text) / ((Math.PI / 4) * 0.0000254 ** 2);
    for (const [text, kcmil] of [
      ["250 kcmil", 250],
      ["250kcmil", 250],
      ["250 MCM", 250],
      ["1000 kcmil", 1000],
      ["133.1 kcmil", 133.1],
      ["0.125 kcmil", 0.125],
    ] as const)
      expect(mils(text)).toBeCloseTo(1000 * kcmil, 6);
    const asked = "a size with AWG or kcmil";
    for (const text of ["10", "250", "10.5", "0", "1"])
      expect(refusal(() => conductorArea(text))).toEqual({
        code: "ambiguous",
        argument: "text",
        expected: asked,
        received: JSON.stringify(text),
      });
    for (const text of ["00", "000", "0000", "1/0", "#10", "No. 10"])
      expect(conductorArea(text), text).toBeGreaterThan(0);
    expect(refusal(() => conductorArea("0 kcmil"))).toMatchObject({
      code: "out-of-range",
      argument: "text",
      expected: "more than 0 kcmil",
    });
    expect(refusal(() => conductorArea(""))).toMatchObject({
      code: "missing",
      argument: "text",
      expected: asked,
    });
    for (const text of ["12345 kcmil", "1.2345 kcmil", "250 kcmils", "x250 kcmil", "250  kcmil"])
      expect(
        refusal(() => conductorArea(text)),
        text,
      ).toMatchObject({ code: "malformed-text", argument: "text", expected: forms });
  });

  it("are lengths and areas in a text, and nothing else", () => {
    expect(read("10 awg", "m").value).toBe(awgDiameter("10"));
    expect(read("10 AWG", "m²").value).toBe(conductorArea("10 AWG"));
    expect(refusal(() => read("10 AWG", "V"))).toMatchObject({ code: "wrong-type", argument: "text" });
    expect(refusal(() => read("10 AWG", "V")).expected).toMatch(/^a number and a unit of V/);
  });
});

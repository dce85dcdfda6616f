/**
 * TeX of symbols, numbers, units and words, as a general-purpose typesetter reads it: what comes out is compared to the characters that
 * went in. Substituted formulas against ones that are put together here piece by piece, by the rule of brackets of the docstring.
 */
import { type CalculationDescription, showWorking } from "electroheat/operators";
import fc from "fast-check";
import katex from "katex";
import { describe, expect, it } from "vitest";
import { quantityTex, symbolTex, wordsTex } from "../../src/operators/tex.ts";

/** The characters of what is typeset, and which of them are raised, lowered or upright. */
function typeset(tex: string): { readonly text: string; readonly marks: string } {
  const math = katex
    .renderToString(tex, { throwOnError: true, strict: "error", output: "mathml" })
    .replace(/<annotation.*?<\/annotation>/s, "");
  const marks = [...math.matchAll(/<(msup|msub|mtext)>|mathvariant="(normal)"/g)]
    .map(([, element, variant]) => element ?? variant)
    .join(" ");
  const text = math
    .replace(/<[^>]*>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&")
    .replace(/[\u00a0\u2009]/g, " ");
  return { text, marks };
}

describe("symbols", () => {
  // Of the letters that a formula writes, those with a name of their own in TeX; the micro sign is a mu.
  it.each([..."αβγδεηθϑκλμνρστφχψωΓΔΘΛΣΦΨΩ"])(
    "%s comes out as itself, alone and with a subscript",
    (letter) => {
      expect(typeset(symbolTex(letter)).text).toBe(letter);
      expect(typeset(symbolTex(`x${letter}`))).toMatchObject({
        text: `x${letter}`,
        marks: expect.stringMatching(/^msub/),
      });
      if (letter === "Δ") return;
      expect(typeset(symbolTex(`${letter}2`)).text).toBe(`${letter}2`);
    },
  );

  it.each([
    ["µ", "μ", ""],
    ["R", "R", ""],
    ["R20", "R20", "msub"],
    ["R2", "R2", "msub"],
    ["R₂₀", "R20", "msub"],
    ["R_2", "R2", "msub"],
    ["Rx", "Rx", "msub"],
    ["R_hot", "Rhot", "msub normal normal normal"],
    ["Rhot2", "Rhot2", "msub normal normal normal normal"],
    ["ΔT", "ΔT", "normal"],
    ["ΔT1", "ΔT1", "normal msub"],
    ["Δ", "Δ", "normal"],
    ["ρ20", "ρ20", "msub"],
  ])("%s", (symbol, text, marks) => {
    const found = typeset(symbolTex(symbol));
    expect(found.text).toBe(text);
    expect(found.marks.replace(/ (?:normal ?)+$/, " normal")).toBe(
      marks.replace(/ (?:normal ?)+$/, " normal"),
    );
  });
});

describe("quantities", () => {
  it.each([
    ["5", "5"],
    ["-5.25", "−5.25"],
    ["−5.25", "−5.25"],
    ["1.5e-9", "1.5×10−9"],
    ["1.5e+9", "1.5×109"],
    ["1.5e12 V", "1.5×1012 V"],
    ["12.8 Ω", "12.8 Ω"],
    ["12.8\u00a0µm", "12.8 μm"],
    ["20 °C", "20 ∘C"],
    ["-20 °F", "−20 ∘F"],
    ["25 W/(m²·K)", "25 W/(m2⋅K)"],
    ["3 m³/s", "3 m3/s"],
    ["4 1/K", "4 1/K"],
    ["2.5 %", "2.5 %"],
    ["3 ft lbf", "3 ft lbf"],
    ["1 cmil", "1 cmil"],
  ])("%s", (text, wanted) => {
    const found = typeset(quantityTex(text));
    expect(found.text).toBe(wanted);
    // Letters of a unit stand upright, and only a power is raised.
    if (/[A-Za-z]{2}/.test(text)) expect(found.marks).toMatch(/normal/);
    expect(found.marks.includes("msup")).toBe(/[²³°]|e[+-]?\d/.test(text));
  });
});

it("raises the digit of an area and of a volume by TeX's own sign", () => {
  // The typesetter used here would raise the characters themselves, others would not.
  expect(quantityTex("3 mm²")).toBe("3\\,\\mathrm{mm}^{2}");
  expect(quantityTex("3 N·m")).toBe("3\\,\\mathrm{N}{\\cdot}\\mathrm{m}");
  expect(quantityTex("3 m³/s")).toBe("3\\,\\mathrm{m}^{3}/\\mathrm{s}");
});

describe("words", () => {
  it("come out as they are, whatever TeX makes of their characters elsewhere", () => {
    const plain = fc.string({ unit: fc.constantFrom(..."aZ09 {}$&#%_\\.,;:()/+=°") });
    fc.assert(
      fc.property(plain, (words) => {
        // TeX takes several spaces for one, and none at the end of a command's name.
        const flat = (text: string) => text.replaceAll(" ", "");
        expect(flat(typeset(wordsTex(words)).text)).toBe(flat(words));
      }),
    );
    expect(typeset(wordsTex("a^b~c")).text).toBe("a b c");
    expect(wordsTex("NiCr 80/20")).toBe("\\text{NiCr 80/20}");
  });
});

describe("a substituted formula", () => {
  const SYMBOLS = ["V", "R", "R20", "R_hot", "ΔT", "α"] as const;
  const FIELDS = ["a", "b", "c", "d", "e", "f"] as const;
  const values = [480, -7.5, 12.5, 1.25e-9, -2, 3];
  const units = ["V", "1", "1", "1", "K", "1"];
  const written = ["480 V", "-7.5", "12.5", "1.25e-9", "-2 K", "3"];
  const texts = ["480\\,\\mathrm{V}", "-7.5", "12.5", "1.25\\times 10^{-9}", "-2\\,\\mathrm{K}", "3"];
  const describing = (text: string, tex: string): CalculationDescription => ({
    id: "own",
    formula: { text, tex },
    inputs: FIELDS.map((name, i) => ({
      name,
      symbol: SYMBOLS[i] as string,
      unit: units[i] as string,
    })),
    outputs: [{ symbol: "y", unit: "1" }],
    sources: [],
  });
  const input = Object.fromEntries(FIELDS.map((name, i) => [name, values[i]]));
  const put = (text: string, tex: string) =>
    showWorking({ description: describing(text, tex), calculation: () => 1, input }).results[0]?.substitution;
  /** 0 or more and written in digits alone: needs no brackets beside a sign. */
  const bare = (i: number) => /^[\d.]+$/.test(written[i] as string);

  const term = fc.record({
    symbol: fc.nat({ max: SYMBOLS.length - 1 }),
    shape: fc.constantFrom("plain", "raised", "enclosed", "called"),
    sign: fc.constantFrom("·", " + ", " − ", "/"),
  });

  it("has each number in brackets unless it stands alone in some, or is digits alone and not raised", () => {
    fc.assert(
      fc.property(fc.array(term, { minLength: 2, maxLength: 6 }), (terms) => {
        const line = (isTex: boolean, isPut: boolean) =>
          terms
            .map(({ symbol, shape, sign }, i) => {
              const name = isTex ? symbolTex(SYMBOLS[symbol] as string) : (SYMBOLS[symbol] as string);
              const value = (isTex ? texts : written)[symbol] as string;
              const [open, close] = isTex ? ["\\left(", "\\right)"] : ["(", ")"];
              const enclosed = isPut ? value : name;
              const guarded = isPut ? `${open}${value}${close}` : name;
              const spelled = {
                plain: isPut && bare(symbol) ? value : guarded,
                raised: isTex ? `${guarded}^2` : `${guarded}²`,
                enclosed: `(${enclosed})`,
                called: isTex ? `\\sin(${enclosed})` : `sin(${enclosed})`,
              }[shape];
              return `${i === 0 ? "" : isTex ? sign.replace("·", "\\cdot ").replace("−", "-") : sign}${spelled}`;
            })
            .join("");
        const found = put(`y = ${line(false, false)}`, `y = ${line(true, false)}`);
        expect(found?.text).toBe(`y = ${line(false, true)}`);
        expect(found?.tex.replaceAll(" ", "")).toBe(`y = ${line(true, true)}`.replaceAll(" ", ""));
        typeset(found?.tex as string);
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    ["y = V", "y = V", "y = 480 V", "y = 480\\,\\mathrm{V}"],
    ["y =V ", "y =V ", "y =480 V ", "y =480\\,\\mathrm{V} "],
    ["y = R", "y = R", "y = -7.5", "y = -7.5"],
    // In the group of a fraction a number stands alone; beside something it does not.
    ["y = V/R", "y = \\frac{V}{R}", "y = (480 V)/(-7.5)", "y = \\frac{480\\,\\mathrm{V}}{-7.5}"],
    [
      "y = V/R",
      "y = \\frac{ V }{ 2 R }",
      "y = (480 V)/(-7.5)",
      "y = \\frac{ 480\\,\\mathrm{V} }{ 2 \\left(-7.5\\right) }",
    ],
    ["y = ( V )", "y = ( V )", "y = ( 480 V )", "y = ( 480\\,\\mathrm{V} )"],
    ["y = V^2", "y = V ^2", "y = (480 V)^2", "y = \\left(480\\,\\mathrm{V}\\right) ^2"],
    ["y = α³", "y = \\alpha^3", "y = (3)³", "y = \\left(3\\right)^3"],
    ["y = α⁻¹", "y = \\alpha^{-1}", "y = (3)⁻¹", "y = \\left(3\\right)^{-1}"],
    // A name within a word, a number's exponent and a dash on the symbol are no symbol.
    ["y = exp(α)", "y = \\exp(\\alpha)", "y = exp(3)", "y = \\exp(3)"],
    ["y = 2e-3·α", "y = 2e-3 \\alpha", "y = 2e-3·3", "y = 2e-3 3"],
    ["y = 2e-10·α", "y = 2e-10 \\alpha", "y = 2e-10·3", "y = 2e-10 3"],
    ["y = π·α", "y = \\pi\\,\\alpha", "y = π·3", "y = \\pi\\,3"],
    [
      "y = α + min(α)",
      "y = \\alpha + \\operatorname{min}(\\alpha)",
      "y = 3 + min(3)",
      "y = 3 + \\operatorname{min}(3)",
    ],
    ["y = α", "y = \\text{R} + \\alpha", "y = 3", "y = \\text{R} + 3"],
    ["y = α", "y = \\alpha + R' + k_R", "y = 3", "y = 3 + R' + k_{R}"],
    ["y = α", "y = \\alpha + R_q + R _{q}", "y = 3", "y = 3 + R_{q} + R _{q}"],
  ])("%s", (text, tex, wantedText, wantedTex) => {
    expect(put(text, tex)).toEqual({ text: wantedText, tex: wantedTex });
  });

  it("may call the functions that formulas have, and the numbers π and e", () => {
    const functions = ["sin", "cos", "tan", "asin", "acos", "atan", "sinh", "cosh", "tanh"];
    for (const name of [...functions, "ln", "lg", "log", "exp", "sqrt", "min", "max", "abs"])
      expect(put(`y = ${name}(α)`, "y = \\alpha")?.text).toBe(`y = ${name}(3)`);
    expect(put("y = π·e·α", "y = \\alpha")?.text).toBe("y = π·e·3");
    expect(() => put("y = cot(α)", "y = \\alpha")).toThrow(/"cot" is not allowed/);
  });

  it("writes ratios in the digits asked for too", () => {
    const { inputs, results } = showWorking({
      description: describing("y = α", "y = \\alpha"),
      calculation: () => 2 / 3,
      input: { ...input, f: 1 / 3 },
      significantDigits: 3,
    });
    expect([inputs.at(-1)?.text, results[0]?.text]).toEqual(["0.333", "0.667"]);
    const description = { ...describing("y = α", "y = \\alpha"), sources: ["definition", "joules-law"] };
    const shown = showWorking({ description, calculation: () => 1, input });
    expect(shown.sources).toEqual(["definition", "joules-law"]);
  });

  it("takes the longer of two symbols of which one begins as the other does", () => {
    const described = (names: readonly ("Δ" | "ΔT")[]): CalculationDescription => ({
      id: "own",
      formula: { text: "y = Δ·ΔT", tex: "y = \\Delta \\cdot \\Delta T" },
      inputs: names.map((symbol) => ({ name: symbol, symbol, unit: "1" })),
      outputs: [{ symbol: "y", unit: "1" }],
      sources: [],
    });
    for (const names of [
      ["Δ", "ΔT"],
      ["ΔT", "Δ"],
    ] as const) {
      const description = described(names);
      const found = showWorking({ description, calculation: () => 1, input: { Δ: 2, ΔT: 3 } });
      expect(found.results[0]?.substitution).toEqual({ text: "y = 2·3", tex: "y = 2 \\cdot 3" });
    }
  });
});

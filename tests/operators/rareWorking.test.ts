/** Shown working of what seldom is shown: flags and structures, every unit, formulas that say nothing new. What is wanted is what the input says. */
import { powerFromVoltageAndResistance } from "electroheat/element";
import { type CalculationDescription, showWorking } from "electroheat/operators";
import { type CanonicalUnit, ohms, unitSymbols, volts } from "electroheat/quantity";
import katex from "katex";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { expectRefusal } from "../support/spoil.ts";

/** Every canonical unit: a refusal lists them. */
const UNITS = caught(() => unitSymbols("none" as CanonicalUnit))
  .message.replace(/^.*one of /, "")
  .split(", ") as CanonicalUnit[];

describe("showWorking", () => {
  const heat: CalculationDescription = {
    id: "heat",
    formula: { text: "P = V²/R", tex: "P = \\frac{V^2}{R}" },
    inputs: [
      { name: "voltage", symbol: "V", unit: "V" },
      { name: "resistance", symbol: "R", unit: "Ω" },
      { name: "note", symbol: "n", unit: "1" },
    ],
    outputs: [{ symbol: "P", unit: "W" }],
    sources: ["joules-law"],
  };
  const input = { voltage: volts(480), resistance: ohms(12.8) };
  const calculation = ({ voltage, resistance }: typeof input & { note?: unknown }) =>
    powerFromVoltageAndResistance({ voltage, resistance });
  const typeset = (tex: string): string => katex.renderToString(tex, { throwOnError: true, strict: "error" });

  it("leaves out an input that is not there, and writes flags, words and structures as they are", () => {
    const noted = (note?: unknown) =>
      showWorking({
        description: heat,
        calculation,
        input: { ...input, ...(note === undefined ? {} : { note }) },
      });
    expect(noted().inputs).toHaveLength(2);
    for (const [note, value, text] of [
      [true, true, "true"],
      ["50 % of \\{a}^b", "50 % of \\{a}^b", "50 % of \\{a}^b"],
    ] as const) {
      const [, , shown] = noted(note).inputs;
      expect(shown).toMatchObject({ value, text });
      typeset(shown?.tex as string);
    }
    const [, , list] = noted([1, 2]).inputs;
    expect([list?.value, typeof list?.text]).toEqual([list?.text, "string"]);
  });

  it("leaves alone what TeX has in a subscript, and refuses a formula of no characters", () => {
    const shown = (text: string, tex: string) =>
      showWorking({
        description: {
          id: "scaled",
          formula: { text, tex },
          inputs: [{ name: "a", symbol: "a", unit: "1" }],
          outputs: [{ symbol: "y", unit: "1" }],
          sources: ["definition"],
        },
        calculation: ({ a }: { a: number }) => 3 * a,
        input: { a: 5 },
      }).results[0]?.substitution?.tex;
    expect(shown("y = 3·a", "y = k_10 \\cdot a")).toBe("y = k_10 \\cdot 5");
    expect(shown("y = 3·a", "y = k_{a} \\cdot a")).toBe("y = k_{a} \\cdot 5");
    expect(caught(() => shown("", ""))).toMatchObject({ argument: "description.formula.text" });
  });

  it("typesets every unit there is", () => {
    expect(UNITS.length).toBeGreaterThan(40);
    for (const unit of UNITS) {
      for (const symbol of unitSymbols(unit)) {
        const { inputs } = showWorking({
          description: {
            id: "as-read",
            inputs: [{ name: "a", symbol: "a", unit }],
            outputs: [{ symbol: "y", unit: "1" }],
            sources: ["definition"],
          },
          calculation: ({ a }: { a: number }) => a,
          input: { a: 2.5 },
          units: { a: symbol },
        });
        expect(inputs[0]?.text.endsWith(symbol)).toBe(true);
        typeset(inputs[0]?.tex as string);
      }
    }
  });

  it("asks for the unit of every quantity", () => {
    const unitless = { ...heat, outputs: [{ symbol: "P" } as { symbol: string; unit: string }] };
    const call = () => showWorking({ description: unitless, calculation, input });
    expectRefusal(call, "missing", "description: unit of result", "no unit");
  });

  it("writes no line of numbers that says nothing new", () => {
    const same: CalculationDescription = {
      ...heat,
      formula: { text: "x = a", tex: "x = a" },
      inputs: [{ name: "a", symbol: "a", unit: "1" }],
      outputs: [
        { name: "x", symbol: "x", unit: "1" },
        { name: "y", symbol: "y", unit: "W" },
      ],
    };
    const shown = showWorking({
      description: same,
      calculation: ({ a }: { a: number }) => ({ x: a, y: 2 }),
      input: { a: 5 },
    });
    expect(shown.text.split("\n").filter((line) => /^\s*(x|=)/.test(line))).toEqual(["x = a", "  = 5"]);
    // The second output has no formula of its own.
    expect(shown.results[1]).toMatchObject({ formula: null, substitution: null });
    expect(shown.text).toContain("y = 2 W");
    typeset(shown.tex);
  });
});

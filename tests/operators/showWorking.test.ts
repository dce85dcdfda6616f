/**
 * Shown working: what is printed is put back through other libraries. The substituted text is worked out again, units and all,
 * by a general-purpose mathematics library; the TeX must be TeX to a general-purpose typesetter.
 */
import { readFileSync } from "node:fs";
import { coldResistance, powerFromVoltageAndResistance } from "electroheat/element";
import { type CalculationDescription, showWorking } from "electroheat/operators";
import { celsius, ohms, packageVersion, volts } from "electroheat/quantity";
import fc from "fast-check";
import katex from "katex";
import * as math from "mathjs";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const typeset = (tex: string): string => katex.renderToString(tex, { throwOnError: true, strict: "error" });

const power: CalculationDescription = {
  id: "power-on-voltage",
  title: "Heat of one element on a voltage",
  formula: { text: "P = V²/R", tex: "P = \\frac{V^2}{R}" },
  inputs: [
    { name: "voltage", symbol: "V", unit: "V" },
    { name: "resistance", symbol: "R", unit: "Ω" },
  ],
  outputs: [{ symbol: "P", unit: "W" }],
  sources: ["joules-law"],
};

/** The right side of a substituted formula, in the spelling of the mathematics library. */
const spelled = (text: string): string =>
  text
    .slice(text.indexOf("=") + 1)
    .replaceAll("²", "^2")
    .replaceAll("·", "*")
    .replaceAll("−", "-")
    .replaceAll("Ω*m", "ohm*m")
    .replaceAll("Ω", "ohm")
    .replaceAll("°C", "K")
    .replace(/m\^2/g, "m^2");

describe("showWorking", () => {
  const working = showWorking({
    description: power,
    calculation: powerFromVoltageAndResistance,
    input: { voltage: volts(480), resistance: ohms(12.8) },
  });

  it("writes formula, numbers, result, source and version, and nothing else", () => {
    expect(working.text).toBe(
      [
        "Heat of one element on a voltage",
        "voltage: V = 480 V",
        "resistance: R = 12.8 Ω",
        "P = V²/R",
        "  = (480 V)²/(12.8 Ω)",
        "  = 18000 W",
        "Source: joules-law",
        `electroheat ${packageVersion}`,
      ].join("\n"),
    );
    expect(working.tex).toBe(
      "\\begin{aligned}\nP &= \\frac{V^2}{R} \\\\\n&= \\frac{\\left(480\\,\\mathrm{V}\\right)^2}{12.8\\,\\Omega} \\\\\n&= 18000\\,\\mathrm{W}\n\\end{aligned}",
    );
    typeset(working.tex);
    expect(JSON.parse(JSON.stringify(working))).toEqual(working);
  });

  it("keeps the version of package.json", () => {
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    expect(packageVersion).toBe(version);
    expect(working.version).toBe(version);
  });

  it("puts numbers in that work out to the result, units included, in any units and digits", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        fc.constantFrom<Record<string, string>>({}, { voltage: "kV" }, { voltage: "mV", resistance: "kΩ" }),
        (voltage, resistance, units) => {
          const input = { voltage: volts(voltage), resistance: ohms(resistance) };
          const shown = showWorking({
            description: power,
            calculation: powerFromVoltageAndResistance,
            input,
            units,
            significantDigits: 12,
          });
          const [result] = shown.results;
          const again = math.evaluate(
            spelled(result?.substitution?.text ?? "").replaceAll("kΩ", "kohm"),
          ) as math.Unit;
          expect(again.toNumber("W") / (voltage ** 2 / resistance)).toBeCloseTo(1, 9);
          expect(result?.value).toBe(voltage ** 2 / resistance);
          typeset(shown.tex);
        },
      ),
      // Each case is read by a calculator with units and typeset.
      { numRuns: 100 },
    );
  });

  it("shows steps, constants, defaults and several outputs, each by its own formula", () => {
    type Input = { R20: number; alpha: number; T: number; rho: number; L: number; q: number; n?: number };
    const calculation = ({ R20, alpha, T, rho, L, q, n = 2 }: Input) => ({
      hot: R20 * (1 + alpha * (T - 20)),
      more: { strip: (rho * L) / q / n },
    });
    const description: CalculationDescription<Input> = {
      id: "own",
      formula: { text: "R = R20·(1 + α·ΔT)", tex: "R = R_{20}\\,(1 + \\alpha\\,\\Delta T)" },
      inputs: [
        { name: "R20", symbol: "R20", unit: "Ω" },
        { name: "alpha", symbol: "α", unit: "1/K" },
        { name: "T", symbol: "T", unit: "°C" },
        { name: "rho", symbol: "ρ", unit: "Ω·m" },
        { name: "L", symbol: "L", unit: "m" },
        { name: "q", symbol: "q", unit: "m²" },
        { name: "n", symbol: "n", unit: "1", default: 2 },
      ],
      constants: [{ name: "reference", symbol: "T0", unit: "°C", value: 20 }],
      steps: [
        {
          name: "rise",
          symbol: "ΔT",
          unit: "K",
          formula: { text: "ΔT = T − T0", tex: "\\Delta T = T - T_{0}" },
          value: ({ T }) => T - 20,
        },
      ],
      outputs: [
        { name: "hot", symbol: "R", unit: "Ω" },
        {
          name: "more.strip",
          symbol: "Rx",
          unit: "Ω",
          formula: { text: "Rx = ρ·L/(q·n)", tex: "R_x = \\frac{\\rho\\,L}{q\\,n}" },
        },
      ],
      sources: [],
    };
    const shown = showWorking({
      description,
      calculation,
      input: { R20: 7.65, alpha: -2e-4, T: -40, rho: 1.1e-6, L: 3.2, q: 1.5e-6 },
    });
    expect(shown.steps[0]?.substitution?.text).toBe("ΔT = (-40 °C) − (20 °C)");
    expect(shown.results.map(({ substitution }) => substitution?.text)).toEqual([
      "R = (7.65 Ω)·(1 + (-0.0002 1/K)·(-60 K))",
      "Rx = (0.0000011 Ω·m)·(3.2 m)/((0.0000015 m²)·2)",
    ]);
    // −60 K, 7.65·1.012 and 1.1·3.2/1.5/2 by hand.
    expect(shown.steps[0]?.value).toBe(-60);
    expect(shown.results[0]?.value).toBeCloseTo(7.7418, 12);
    expect(shown.results[1]?.value).toBeCloseTo(1.17333333333, 10);
    const strip = math.evaluate(spelled(shown.results[1]?.substitution?.text ?? "")) as math.Unit;
    expect(strip.toNumber("ohm")).toBeCloseTo(1.17333333333, 10);
    expect(shown.inputs.at(-1)).toMatchObject({ name: "n", value: 2, text: "2" });
    typeset(shown.tex);
  });

  it("does not put a number into a part of another name", () => {
    const description: CalculationDescription = {
      id: "own",
      formula: {
        text: "Rx = R·R20·R_hot·sin(R)/Rs",
        tex: "R_x = R\\,R_{20}\\,R_{\\mathrm{hot}}\\,\\sin(R)/R_{s}",
      },
      inputs: [
        { name: "a", symbol: "R", unit: "1" },
        { name: "b", symbol: "R20", unit: "1" },
        { name: "c", symbol: "R_hot", unit: "1" },
        { name: "d", symbol: "Rs", unit: "1" },
      ],
      outputs: [{ symbol: "Rx", unit: "1" }],
      sources: [],
    };
    const shown = showWorking({
      description,
      calculation: ({ a, b, c, d }: Record<"a" | "b" | "c" | "d", number>) => (a * b * c * Math.sin(a)) / d,
      input: { a: 2, b: 3, c: 5, d: -7 },
    });
    expect(shown.results[0]?.substitution).toEqual({
      text: "Rx = 2·3·5·sin(2)/(-7)",
      tex: "R_{x} = 2\\,3\\,5\\,\\sin(2)/\\left(-7\\right)",
    });
  });

  it("writes open circuits, names and US units, and does without a formula for a look-up", () => {
    const open = showWorking({
      description: power,
      calculation: powerFromVoltageAndResistance,
      input: { voltage: volts(480), resistance: "open" },
    });
    expect(open.results[0]?.text).toBe("0 W");
    expect(open.inputs[1]).toMatchObject({ value: "open", text: "open", tex: "\\text{open}" });
    typeset(open.tex);
    const lookup = showWorking({
      description: {
        id: "own",
        inputs: [
          { name: "temperature", symbol: "T", unit: "°C" },
          { name: "alloy", symbol: "a", unit: "" },
        ],
        outputs: [{ symbol: "F", unit: "N" }],
        sources: ["a", "b"],
      },
      calculation: (_: { temperature: number; alloy: string }) => 100,
      input: { temperature: celsius(20), alloy: "NiCr 80/20 #1_a" },
      system: "US",
      significantDigits: 4,
    });
    expect(lookup.text.split("\n").slice(0, 4)).toEqual([
      "temperature: T = 68 °F",
      "alloy: a = NiCr 80/20 #1_a",
      "F = 22.48 lbf",
      "Source: a, b",
    ]);
    expect(lookup.results[0]?.formula).toBe(null);
    typeset(lookup.tex);
    for (const { tex } of lookup.inputs) typeset(tex);
  });

  it("writes every unit of the library in TeX that a typesetter reads", () => {
    for (const unit of [
      "V",
      "Ω",
      "m²",
      "Ω·m",
      "Ω/m",
      "1/K",
      "°C",
      "W/(m²·K)",
      "m³/s",
      "rad",
      "J/(kg·K)",
      "Pa·s",
    ]) {
      const shown = showWorking({
        description: {
          id: "own",
          inputs: [{ name: "x", symbol: "x", unit }],
          outputs: [{ symbol: "y", unit }],
          sources: [],
        },
        calculation: ({ x }: { x: number }) => -x,
        input: { x: 1.25e-9 },
      });
      expect(shown.results[0]?.text).toContain("e-9");
      expect(shown.results[0]?.tex).toContain("\\times 10^{-9}\\,");
      typeset(shown.tex);
    }
  });

  const cold: CalculationDescription = {
    id: "cold-resistance",
    formula: { text: "R20 = R/Ct", tex: "R_{20} = \\frac{R}{C_t}" },
    inputs: [
      { name: "hotResistance", symbol: "R", unit: "Ω" },
      { name: "temperatureFactor", symbol: "Ct", unit: "1" },
    ],
    outputs: [{ symbol: "R20", unit: "Ω" }],
    sources: [],
  };
  const show = (change: object) =>
    showWorking({
      description: { ...cold, ...change },
      calculation: coldResistance,
      input: { hotResistance: ohms(12.9067), temperatureFactor: 1.047 },
    });

  it("finds a symbol however its TeX groups the subscript", () => {
    expect(show({}).results[0]?.substitution?.tex).toBe("R_{20} = \\frac{12.9067\\,\\Omega}{1.047}");
    const braced = { text: "R20 = R/Ct", tex: "R_{20} = \\frac{R}{C_{t}}" };
    expect(show({ formula: braced }).results[0]?.substitution?.tex).toContain("{1.047}");
  });

  it.each([
    [
      { formula: { text: "R20 = R/Ct·k", tex: "R_{20} = \\frac{R}{C_t}" } },
      "unknown-name",
      "description.formula.text",
    ],
    [{ formula: { text: "R20 = R/Ct", tex: "R_{20} = R" } }, "inconsistent", "description.formula.tex"],
    [
      { formula: { text: "R20 = R", tex: "R_{20} = \\frac{R}{C_{t}}" } },
      "inconsistent",
      "description.formula.text",
    ],
    [{ formula: { text: "R/Ct", tex: "x" } }, "malformed-text", "description.formula.text"],
    [{ formula: {} }, "missing", "description.formula.text"],
    [{ outputs: [] }, "missing", "description.outputs"],
    [{ inputs: undefined }, "missing", "description.inputs"],
    [{ outputs: [{ name: "x", symbol: "R20", unit: "Ω" }] }, "unknown-name", "description.outputs.0.name"],
    [{ outputs: [{ symbol: "R20", unit: "ohm" }] }, "unknown-name", "unit"],
  ])("refuses a description that would print nonsense: %j", (change, code, argument) => {
    const error = caught(() => show(change));
    expect([error.code, error.argument]).toEqual([code, argument]);
  });
});

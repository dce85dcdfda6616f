/** Shown working of any calculation: formula, numbers put in with their units, intermediate values, result, sources. */
import {
  type CanonicalUnit,
  checkWhole,
  fail,
  formatNumber,
  formatQuantity,
  given,
  packageVersion,
  type Quantity,
  showReceived,
} from "../quantity/index.ts";
import { type Calculation, checkCalculation, outputReader } from "./calculation.ts";
import type { CalculationDescription, DescribedQuantity, FormulaText } from "./description.ts";
import { type Replacement, substitution } from "./formula.ts";
import { quantityTex, symbolTex, wordsTex } from "./tex.ts";

/**
 * A quantity of a working.
 * @since 0.1.0
 */
export interface ShownQuantity {
  /** Name of the field, of the step or of the output. */
  readonly name: string;
  /** Its symbol. */
  readonly symbol: string;
  /** Its value, not rounded; text for a name or an open circuit. */
  readonly value: number | string | boolean;
  /** Canonical unit of the value. */
  readonly unit: string;
  /** The value as written, with its unit. */
  readonly text: string;
  /** The same in TeX. */
  readonly tex: string;
}

/**
 * A quantity that was worked out.
 * @since 0.1.0
 */
export interface ShownStep extends ShownQuantity {
  /** Its formula; `null` for a look-up. */
  readonly formula: FormulaText | null;
  /** The formula with the numbers put in; `null` without a formula. */
  readonly substitution: FormulaText | null;
}

/**
 * Result of {@link showWorking}.
 * @since 0.1.0
 */
export interface ShownWorking {
  /** Id of the calculation. */
  readonly id: string;
  /** What it computes, in one line; empty if the description has none. */
  readonly title: string;
  /** Version of the package that worked it out. */
  readonly version: string;
  /** The inputs that were given, or taken by default. */
  readonly inputs: readonly ShownQuantity[];
  /** Constants of the formulas. */
  readonly constants: readonly ShownQuantity[];
  /** Intermediate values, in order. */
  readonly steps: readonly ShownStep[];
  /** The outputs. */
  readonly results: readonly ShownStep[];
  /** Ids of the sources. */
  readonly sources: readonly string[];
  /** Everything as lines of text. */
  readonly text: string;
  /** Formulas, numbers and results as one TeX `aligned` block. */
  readonly tex: string;
}

/** How numbers are written. */
interface Style {
  readonly significantDigits: number;
  readonly system: "SI" | "US";
  readonly units: Readonly<Record<string, string>>;
}

/** Zeros after the last digit that counts say nothing of how well an input is known, so they are left out. */
function withoutZeros(text: string): string {
  return text.replace(/^([-\u2212]?\d+)\.(\d*?)0+(?=\D|$)/, (_, whole, digits) =>
    digits === "" ? whole : `${whole}.${digits}`,
  );
}

function written(name: string, value: unknown, unit: string, style: Style): string {
  if (typeof value === "string") return value;
  if (typeof value !== "number") return showReceived(value);
  const { significantDigits, system, units } = style;
  if (unit === "1" || unit === "") return withoutZeros(formatNumber(value, { significantDigits }));
  const as = Object.hasOwn(units, name) ? units[name] : undefined;
  return withoutZeros(
    formatQuantity(value as Quantity<CanonicalUnit>, {
      unit: unit as CanonicalUnit,
      significantDigits,
      ...(as === undefined ? { system } : { as }),
    }),
  );
}

function shown(name: string, described: DescribedQuantity, value: unknown, style: Style): ShownQuantity {
  const { symbol, unit } = described;
  if (typeof unit !== "string") {
    fail({ code: "missing", path: `description: unit of ${name}`, expected: "a unit, or 1", received: unit });
  }
  const text = written(name, value, unit, style);
  const plainValue =
    typeof value === "number" || typeof value === "string" || typeof value === "boolean" ? value : text;
  return {
    name,
    symbol,
    value: plainValue,
    unit,
    text,
    tex: typeof value === "number" ? quantityTex(text) : wordsTex(text),
  };
}

function replacement(described: DescribedQuantity, one: ShownQuantity): Replacement {
  return {
    name: one.name,
    symbol: one.symbol,
    tex: described.tex ?? symbolTex(one.symbol),
    value: { text: one.text, tex: one.tex },
    plain: typeof one.value === "number" && one.value >= 0 && /^[\d.]+$/.test(one.text),
  };
}

/** Lines of a quantity that was worked out: formula, numbers, value. */
function lines(one: ShownStep): { readonly text: readonly string[]; readonly tex: readonly string[] } {
  const { symbol, formula, substitution: put } = one;
  if (formula === null || put === null) {
    return { text: [`${symbol} = ${one.text}`], tex: [`${symbolTex(symbol)} &= ${one.tex}`] };
  }
  const right = (side: string): string => side.slice(side.indexOf("=") + 1).trim();
  const left = formula.text.slice(0, formula.text.indexOf("=")).trimEnd();
  const indent = " ".repeat([...left].length);
  const numbers = right(put.text);
  const again = numbers === right(formula.text) || numbers === one.text;
  return {
    text: [formula.text, ...(again ? [] : [`${indent} = ${numbers}`]), `${indent} = ${one.text}`],
    tex: [formula.tex.replace("=", "&="), ...(again ? [] : [`&= ${right(put.tex)}`]), `&= ${one.tex}`],
  };
}

/**
 * Shows how a calculation came to its result: the inputs, each formula, the same with the numbers put in, and the value; with
 * sources and the version of the package. As data, text and TeX; the same input always gives the same characters.
 *
 * The result is that of the calculation itself, at full precision; only what is written is rounded. The formulas are those of
 * the description: they are read token by token, a symbol that nobody bears is refused, and so are a text and a TeX that
 * speak of different quantities.
 * @param input.description - formula, symbols, units and sources of the calculation
 * @param input.calculation - the calculation
 * @param input.input - its argument
 * @param input.significantDigits - most digits written, 1 to 17; 6 if left out
 * @param input.system - `"US"` writes US trade units where there are any; `"SI"` if left out
 * @param input.units - unit to write a quantity in, by its name (`{ voltage: "kV" }`)
 * @returns the working
 * @throws ElectroheatError `missing`, `malformed-text`, `unknown-name`, `inconsistent`, `wrong-type`, `not-a-number`, `out-of-range` for
 *   description and options; whatever the calculation throws
 * @source definition
 * @example
 * ```ts
 * showWorking({
 *   description: {
 *     id: "power-on-voltage",
 *     formula: { text: "P = V²/R", tex: "P = \\frac{V^2}{R}" },
 *     inputs: [{ name: "voltage", symbol: "V", unit: "V" }, { name: "resistance", symbol: "R", unit: "Ω" }],
 *     outputs: [{ symbol: "P", unit: "W" }],
 *     sources: ["joules-law"],
 *   },
 *   calculation: powerFromVoltageAndResistance,
 *   input: { voltage: volts(480), resistance: ohms(12.8) },
 * }).results[0]?.substitution?.text // => "P = (480 V)²/(12.8 Ω)"
 * ```
 * @since 0.1.0
 */
export function showWorking<I extends object>(input: {
  readonly description: CalculationDescription<NoInfer<I>>;
  readonly calculation: Calculation<I>;
  readonly input: NoInfer<I>;
  readonly significantDigits?: number;
  readonly system?: "SI" | "US";
  readonly units?: Readonly<Record<string, string>>;
}): ShownWorking {
  const { calculation, significantDigits = 6, system = "SI", units = {} } = given(input);
  const description = given(input.description, "description");
  checkCalculation(calculation);
  const argument = given(input.input, "input");
  checkWhole("significantDigits", significantDigits, 1, 17);
  const style: Style = { significantDigits, system, units: given(units, "units") };
  for (const list of ["inputs", "outputs", "sources"] as const) {
    if (!Array.isArray(description[list]) || (list === "outputs" && description.outputs.length === 0)) {
      const path = `description.${list}`;
      fail({ code: "missing", path, expected: "a list", received: description[list] });
    }
  }
  const result = calculation(argument);
  const replacements: Replacement[] = [];
  const known: string[] = description.inputs.map(({ symbol }) => symbol);

  const inputs = description.inputs.flatMap((one) => {
    const held = (argument as Readonly<Record<string, unknown>>)[one.name] ?? one.default;
    if (held === undefined) return [];
    const quantity = shown(one.name, one, held, style);
    replacements.push(replacement(one, quantity));
    return [quantity];
  });
  const constants = (description.constants ?? []).map((one) => {
    const quantity = shown(one.name, one, one.value, style);
    replacements.push(replacement(one, quantity));
    known.push(one.symbol);
    return quantity;
  });
  const workedOut = (
    described: DescribedQuantity,
    name: string,
    value: unknown,
    formula: FormulaText | undefined,
    path: string,
  ): ShownStep => {
    const quantity = shown(name, described, value, style);
    if (formula === undefined) return { ...quantity, formula: null, substitution: null };
    return {
      ...quantity,
      formula: { text: formula.text, tex: formula.tex },
      substitution: substitution(formula, replacements, known, path),
    };
  };
  const earlier: Record<string, number> = {};
  const steps = (description.steps ?? []).map((one, i) => {
    const value = one.value(argument, { ...earlier });
    const step = workedOut(one, one.name, value, one.formula, `description.steps.${i}.formula`);
    earlier[one.name] = value;
    replacements.push(replacement(one, step));
    known.push(one.symbol);
    return step;
  });
  const results = description.outputs.map((one, i) => {
    const name = one.name ?? "result";
    const value = outputReader(name)(result);
    if (value === undefined) {
      const path = `description.outputs.${i}.name`;
      fail({ code: "unknown-name", path, expected: "a field of the result", received: name });
    }
    const own = one.formula ?? (i === 0 ? description.formula : undefined);
    const path = one.formula === undefined ? "description.formula" : `description.outputs.${i}.formula`;
    const step = workedOut(one, name, value, own, path);
    replacements.push(replacement(one, step));
    known.push(one.symbol);
    return step;
  });
  const title = description.title ?? "";
  const worked = [...steps, ...results].map(lines);
  const text = [
    ...(title === "" ? [] : [title]),
    ...inputs.map((one) => `${one.name}: ${one.symbol} = ${one.text}`),
    ...constants.map((one) => `${one.name}: ${one.symbol} = ${one.text}`),
    ...worked.flatMap((one) => one.text),
    ...(description.sources.length === 0 ? [] : [`Source: ${description.sources.join(", ")}`]),
    `electroheat ${packageVersion}`,
  ].join("\n");
  const tex = `\\begin{aligned}\n${worked.flatMap((one) => one.tex).join(" \\\\\n")}\n\\end{aligned}`;
  const { id } = description;
  return {
    id,
    title,
    version: packageVersion,
    inputs,
    constants,
    steps,
    results,
    sources: [...description.sources],
    text,
    tex,
  };
}

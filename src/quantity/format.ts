/** Quantities as text for people. */
import { checkFinite, checkWhole } from "./check.ts";
import {
  type Decimal,
  decimalOf,
  leadingPlace,
  roundAt,
  roundSignificant,
  writeFixed,
  writeShort,
} from "./digits.ts";
import { fail } from "./errors.ts";
import { entryBySymbol, type UnitEntry } from "./table.ts";
import type { CanonicalUnit, Open, Quantity } from "./tags.ts";

/**
 * How a quantity is written.
 * @since 0.1.0
 */
export interface FormatOptions<U extends CanonicalUnit> {
  /** Canonical unit the value is held in; must fit the value's tag. */
  readonly unit: U;
  /** Symbol to write it in, any of `unitSymbols(unit)`; the canonical unit when absent. */
  readonly as?: string;
  /** `"US"` picks the US trade unit where there is one (in, °F, lbf·in, psi, ft³/min); `"SI"` is the default. */
  readonly system?: "SI" | "US";
  /** Picks the SI prefix that leaves 1 to 999 before the decimal mark, as far as the prefixes reach. */
  readonly engineering?: boolean;
  /** Significant digits, 1 to 17. All digits of the double when neither this nor `decimals` is given. */
  readonly significantDigits?: number;
  /** Digits after the decimal mark, 0 to 20. */
  readonly decimals?: number;
  /** True minus sign (U+2212) instead of the hyphen. Off: spreadsheets and calculators do not read it. */
  readonly trueMinus?: boolean;
  /** No-break space (U+00A0) before the unit instead of a space. Off: it looks the same and compares unequal. */
  readonly nonBreakingSpace?: boolean;
}

/** Units in ascending steps of a thousand. */
const ENGINEERING: { readonly [U in CanonicalUnit]?: readonly string[] } = {
  V: ["µV", "mV", "V", "kV"],
  A: ["µA", "mA", "A", "kA"],
  Ω: ["nΩ", "µΩ", "mΩ", "Ω", "kΩ", "MΩ", "GΩ"],
  S: ["mS", "S"],
  W: ["µW", "mW", "W", "kW", "MW"],
  J: ["J", "kJ", "MJ"],
  s: ["ms", "s"],
  Hz: ["Hz", "kHz"],
  H: ["mH", "H"],
  F: ["µF", "F"],
  m: ["nm", "µm", "mm", "m"],
  kg: ["g", "kg"],
  N: ["N", "kN"],
  Pa: ["Pa", "kPa", "MPa", "GPa"],
  "N/m": ["N/m", "MN/m"],
  Ω·m: ["nΩ·m", "µΩ·m", "Ω·m"],
  "Ω/m": ["mΩ/m", "Ω/m"],
  "S/m": ["S/m", "MS/m"],
  "W/m": ["W/m", "kW/m"],
  "W/m²": ["W/m²", "kW/m²"],
  "J/K": ["J/K", "kJ/K"],
  "J/kg": ["J/kg", "kJ/kg"],
  "J/(kg·K)": ["J/(kg·K)", "kJ/(kg·K)"],
};

/** The unit the trade uses where feet and pounds are in use. */
const US: { readonly [U in CanonicalUnit]?: string } = {
  m: "in",
  "m²": "in²",
  "m³": "ft³",
  "m/s": "ft/min",
  kg: "lb",
  N: "lbf",
  "N/m": "lbf/in",
  Pa: "psi",
  N·m: "lbf·in",
  Ω·m: "Ω·cmil/ft",
  "Ω/m": "Ω/1000 ft",
  "°C": "°F",
  K: "Δ°F",
  "W/m²": "W/in²",
  "W/(m²·K)": "Btu/(h·ft²·°F)",
  "W/(m·K)": "Btu/(h·ft·°F)",
  "W/K": "Btu/(h·°F)",
  "J/K": "Btu/°F",
  "J/(kg·K)": "Btu/(lb·°F)",
  "kg/m³": "lb/ft³",
  "kg/m": "lb/ft",
  "m³/s": "ft³/min",
  "kg/s": "lb/min",
  "A/m²": "A/in²",
};

function rounded(value: number, options: FormatOptions<CanonicalUnit>): Decimal {
  const decimal = decimalOf(value);
  if (options.significantDigits !== undefined) return roundSignificant(decimal, options.significantDigits);
  return options.decimals === undefined ? decimal : roundAt(decimal, -options.decimals);
}

/** The largest prefix at which the rounded number is still 1 or more. */
function engineeringEntry(value: number, options: FormatOptions<CanonicalUnit>): UnitEntry {
  const { unit } = options;
  const canonical = entryBySymbol("unit", unit, unit);
  const symbols = ENGINEERING[unit] ?? [];
  if (value === 0) return canonical;
  for (const symbol of [...symbols].reverse()) {
    const entry = entryBySymbol("unit", unit, symbol);
    const decimal = rounded(entry.to(value), options);
    if (decimal.digits !== "0" && leadingPlace(decimal) >= 0) return entry;
  }
  return symbols[0] === undefined ? canonical : entryBySymbol("unit", unit, symbols[0]);
}

function chosenEntry(value: number, options: FormatOptions<CanonicalUnit>): UnitEntry {
  const { unit, as, system = "SI", engineering = false } = options;
  if (system !== "SI" && system !== "US") {
    fail({ code: "unknown-name", path: "system", expected: "one of SI, US", received: system });
  }
  if ([as !== undefined, system === "US", engineering].filter(Boolean).length > 1) {
    fail({
      code: "inconsistent",
      path: "as",
      expected: "one choice of unit: `as`, `system` US or `engineering`",
      received: as ?? system,
    });
  }
  if (as !== undefined) return entryBySymbol("as", unit, as);
  if (engineering) return engineeringEntry(value, options);
  return entryBySymbol("unit", unit, (system === "US" ? US[unit] : undefined) ?? unit);
}

function checkOptions(options: FormatOptions<CanonicalUnit>): void {
  const { significantDigits, decimals } = options;
  if (significantDigits !== undefined) checkWhole("significantDigits", significantDigits, 1, 17);
  if (decimals !== undefined) checkWhole("decimals", decimals, 0, 20);
  if (significantDigits !== undefined && decimals !== undefined) {
    fail({
      code: "inconsistent",
      path: "decimals",
      expected: "significantDigits or decimals, not both",
      received: decimals,
    });
  }
}

/** Joins number and unit; degrees of an angle stand without a space (SI Brochure, 9th edition, 5.4.3). */
function join(number: string, symbol: string, options: FormatOptions<CanonicalUnit>): string {
  const signed = options.trueMinus === true ? number.replaceAll("-", "\u2212") : number;
  const space = symbol === "°" ? "" : options.nonBreakingSpace === true ? "\u00A0" : " ";
  return `${signed}${space}${symbol}`;
}

/**
 * Writes a quantity as a number and a unit.
 *
 * Rounds half away from zero on the shortest decimal digits of the double in the unit written: 1.005 to three
 * digits is 1.01. A zero carries no sign. Below 1e-7 and from 1e21 on an exponent is used. Zeros that fill up to
 * the decimal mark are not significant (1540 to two digits is 1500): choose a prefix to show them.
 * @param value - the quantity in its canonical unit, or `"open"` for a resistance
 * @param options.unit - symbol of the canonical unit the value is held in
 * @param options.as - symbol to write it in; the canonical unit by default
 * @param options.system - `"US"` for the US trade unit; `"SI"` by default
 * @param options.engineering - choose the SI prefix; off by default
 * @param options.significantDigits - significant digits, 1 to 17; all digits of the double by default
 * @param options.decimals - digits after the decimal mark, 0 to 20
 * @param options.trueMinus - U+2212 instead of the hyphen; off by default, spreadsheets do not read it
 * @param options.nonBreakingSpace - U+00A0 before the unit; off by default, it compares unequal to a space
 * @returns the text; `"open"` for an open circuit
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name`, `wrong-type`, `out-of-range`, `inconsistent`
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 5.4.3 (space between number
 *   and unit)
 * @example
 * ```ts
 * formatQuantity(milliohms(4.7), { unit: "Ω", engineering: true, significantDigits: 3 }) // => "4.70 mΩ"
 * ```
 * @since 0.1.0
 */
export function formatQuantity<U extends CanonicalUnit>(
  // NoInfer: from both arguments U would become "N·m" | "J", and a torque would pass as an energy.
  value: Quantity<NoInfer<U>> | (NoInfer<U> extends "Ω" ? Open : never),
  options: FormatOptions<U>,
): string {
  checkOptions(options);
  const canonical = entryBySymbol("unit", options.unit, options.unit);
  if (value === "open" && options.unit === "Ω") return "open";
  const number = canonical.to(value as number);
  const entry = chosenEntry(number, options);
  const decimal = rounded(entry.to(number), options);
  return join(
    options.decimals === undefined ? writeShort(decimal) : writeFixed(decimal),
    entry.symbol,
    options,
  );
}

/**
 * Writes a number without a unit, a ratio or a count, by the rounding rules of `formatQuantity`.
 * @param value - the number
 * @param options.significantDigits - significant digits, 1 to 17; all digits of the double by default
 * @param options.trueMinus - U+2212 instead of the hyphen; off by default
 * @returns the text
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * formatNumber(1.04699, { significantDigits: 4 }) // => "1.047"
 * ```
 * @since 0.1.0
 */
export function formatNumber(
  value: number,
  options: { readonly significantDigits?: number; readonly trueMinus?: boolean } = {},
): string {
  const { significantDigits, trueMinus } = options;
  checkFinite("value", value);
  if (significantDigits !== undefined) checkWhole("significantDigits", significantDigits, 1, 17);
  const decimal = decimalOf(value);
  const text = writeShort(
    significantDigits === undefined ? decimal : roundSignificant(decimal, significantDigits),
  );
  return trueMinus === true ? text.replaceAll("-", "\u2212") : text;
}

/**
 * How a quantity with its uncertainty is written.
 * @since 0.1.0
 */
export interface UncertainFormatOptions<U extends CanonicalUnit>
  extends Omit<FormatOptions<U>, "significantDigits" | "decimals"> {
  /** Standard uncertainty in the canonical unit (kelvins for a temperature), 0 or more. */
  readonly uncertainty: Quantity<NoInfer<U> extends "°C" ? "K" : NoInfer<U>>;
  /** Digits of the uncertainty, 1 or 2; 2 by default. */
  readonly uncertaintyDigits?: 1 | 2;
}

/** The uncertainty as the last digits of the value; with its own decimal mark where it reaches across the mark. */
function bracket(uncertainty: Decimal): string {
  const straddles = uncertainty.place < 0 && leadingPlace(uncertainty) >= 0;
  return straddles || uncertainty.place > 0 ? writeFixed(uncertainty) : uncertainty.digits;
}

/**
 * Writes a quantity with its standard uncertainty in brackets: 7.65(4) Ω is 7.65 Ω with 0.04 Ω.
 *
 * The bracket counts in the last digit of the value; where it reaches across the decimal mark it carries the mark
 * (12.3(1.5)), and where it ends before the mark it is written in full (60400(1200)). The uncertainty is rounded
 * half away from zero, then the value to the same place. An uncertainty of 0 is written (0) after all digits of
 * the value.
 * @param value - the quantity in its canonical unit
 * @param options.uncertainty - standard uncertainty in the canonical unit (K for a temperature), 0 or more
 * @param options.uncertaintyDigits - digits of the uncertainty, 1 or 2; 2 by default
 * @param options.unit - symbol of the canonical unit the value is held in
 * @param options.as - symbol to write it in; the canonical unit by default
 * @param options.system - `"US"` for the US trade unit; `"SI"` by default
 * @param options.engineering - choose the SI prefix; off by default
 * @param options.trueMinus - U+2212 instead of the hyphen; off by default
 * @param options.nonBreakingSpace - U+00A0 before the unit; off by default
 * @returns the text
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name`, `wrong-type`, `out-of-range`, `inconsistent`
 * @source JCGM 100:2008 (GUM), 7.2.2 (form), 7.2.6 (at most two digits)
 * @example
 * ```ts
 * formatUncertain(ohms(7.65), { unit: "Ω", uncertainty: ohms(0.04), uncertaintyDigits: 1 }) // => "7.65(4) Ω"
 * ```
 * @since 0.1.0
 */
export function formatUncertain<U extends CanonicalUnit>(
  value: Quantity<NoInfer<U>>,
  options: UncertainFormatOptions<U>,
): string {
  const { unit, uncertaintyDigits = 2 } = options;
  checkWhole("uncertaintyDigits", uncertaintyDigits, 1, 2);
  const canonical = entryBySymbol("unit", unit, unit);
  const number = canonical.to(value);
  const size = canonical.toSpan(options.uncertainty as number);
  if (size < 0) {
    fail({ code: "out-of-range", path: "uncertainty", expected: "0 or more", received: size, unit });
  }
  const entry = chosenEntry(number, options);
  const quoted = decimalOf(entry.to(number));
  if (size === 0) return join(`${writeFixed(quoted)}(0)`, entry.symbol, options);
  const uncertainty = roundSignificant(decimalOf(entry.toSpan(size)), uncertaintyDigits);
  return join(
    `${writeFixed(roundAt(quoted, uncertainty.place))}(${bracket(uncertainty)})`,
    entry.symbol,
    options,
  );
}

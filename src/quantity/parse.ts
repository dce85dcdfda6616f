/** Quantities from text: what people write on a bench sheet. One pass over at most 64 characters. */
import { fail, issue } from "./errors.ts";
import { gaugeArea, solidDiameter } from "./gauge.ts";
import { given } from "./given.ts";
import { type NumberText, readNumber, trimSpaces, wordEnd } from "./numberText.ts";
import { inItsUnit, retold } from "./retold.ts";
import { entriesOf, type UnitEntry } from "./table.ts";
import type { CanonicalUnit, Open, Quantity } from "./tags.ts";
import { findUnit, unitElsewhere } from "./unitText.ts";

/**
 * What `parseQuantity` is to read.
 * @since 0.1.0
 */
export interface ParseOptions<U extends CanonicalUnit> {
  /** Canonical unit of the dimension asked for: `"Ω"` reads ohms, milliohms, megaohms. */
  readonly unit: U;
  /** Reads "7,9" as 7.9, and then refuses a point. Off by default, and then a comma is refused. */
  readonly decimalComma?: boolean;
  /** Name of the text in error messages, `"text"` by default. */
  readonly path?: string;
}

/**
 * A quantity read from text.
 * @since 0.1.0
 */
export interface ParsedQuantity<U extends CanonicalUnit> {
  /** The quantity in its canonical unit. */
  readonly value: Quantity<U>;
  /** Symbol of the unit it was written in, in the spelling of `unitSymbols`; `"AWG"` for a gauge. */
  readonly symbol: string;
  /**
   * One unit of the last digit written (of a fraction: one part), in the canonical unit, in kelvins for a
   * temperature. Null for a gauge.
   */
  readonly resolution: Quantity<U extends "°C" ? "K" : U> | null;
  /** Digits written, without leading zeros; trailing zeros count. Null for a fraction and a gauge. */
  readonly significantDigits: number | null;
}

/**
 * An open circuit read from text.
 * @since 0.1.0
 */
export interface ParsedOpen {
  /** Always `"open"`. */
  readonly value: Open;
  /** Always `"Ω"`. */
  readonly symbol: "Ω";
  /** Always null. */
  readonly resolution: null;
  /** Always null. */
  readonly significantDigits: null;
}

/** What is read, before the tag of the unit asked for is put on. */
interface Parsed {
  readonly value: number | Open;
  readonly symbol: string;
  readonly resolution: number | null;
  readonly significantDigits: number | null;
}

const LONGEST = 64;
const SHOWN_SYMBOLS = 12;
/** What is counted in halves and quarters. Of anything else "480/277 V", "36/30 kW", "60/75 °C" are two ratings side by side. */
const HALVED = ["in", "ft", "lb", "hp", "h"];

function allowedUnits(unit: CanonicalUnit): string {
  const symbols = entriesOf(unit).map((entry) => entry.symbol);
  const more = symbols.length > SHOWN_SYMBOLS ? ", …" : "";
  const open = unit === "Ω" ? ', or "OL"' : "";
  return `a number and a unit of ${unit} (${symbols.slice(0, SHOWN_SYMBOLS).join(", ")}${more})${open}`;
}

/** OL as displays show it, with its point in any place and a nought that is a letter, and as it is copied from them. */
const OVERLOAD = /^(?:\.?[O0][./]?L\.?|OPEN)$/i;

/** "OL", "0.L", "O/L", "open", with or without a unit of resistance, as meters and bench sheets show an open circuit. */
function isOpen(text: string): boolean {
  const end = wordEnd(text);
  if (!OVERLOAD.test(text.slice(0, end))) return false;
  return end === text.length || findUnit("Ω", trimSpaces(text.slice(end))) !== undefined;
}

/** Digits and marks at the width of a Chinese character, and fractions of one character, as sheets and editors write them for you. */
const plainText = (text: string): string =>
  text
    .replace(/[０-９．，＋－／]/g, (wide) => wide.normalize("NFKC"))
    .replace(/[¼½¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize("NFKC")}`);

function readGauge(path: string, unit: CanonicalUnit, text: string): Parsed {
  if (unit !== "m" && unit !== "m²") {
    fail({ code: "wrong-type", path, expected: allowedUnits(unit), received: text });
  }
  const value = unit === "m" ? solidDiameter(path, text) : gaugeArea(path, text);
  return { value, symbol: "AWG", resolution: null, significantDigits: null };
}

function twoRatings(path: string, text: string): never {
  const expected = `one number, not two ratings (fractions are read of ${HALVED.join(", ")})`;
  return fail({ code: "ambiguous", path, expected, received: text });
}

const GAUGE_OF_OTHERS = /^swg$/i;
/** What a plate may state for a heater in place of watts: not a unit of power, and the same number where nothing lags. */
const APPARENT = /^[kM]?VA$/i;

/**
 * What a nameplate prints behind its volts: "480 V 3 PH 60 HZ", "480V/3PH/60HZ". One phase is none of it: it says something else of the
 * voltage.
 */
const PLATE_MARKS = /[ ,/-]*\b(?:3[ -]?(?:ph(?:ases?)?|~|φ|Ø)|(?:50|60)(?:\/60)? ?Hz)\.?$/i;

/** The same before them: "3~ 400 V 50 Hz", "3/N/PE AC 400 V". Only a number that follows is the voltage. */
const MARKS_BEFORE = /^3(?:\/N)?(?:\/PE)?[ -]?(?:ph(?:ases?)?\b\.?|~|AC\b|φ|Ø)[ ,/-]*(?=\d)/i;

/** The unit of a nameplate's voltage without those marks; with no unit before them, the text as it is. */
function withoutMarks(unit: CanonicalUnit, rest: string): string {
  if (unit !== "V") return rest;
  const bare = rest.replace(PLATE_MARKS, "").replace(PLATE_MARKS, "");
  return bare === "" ? rest : bare;
}

function readUnit(path: string, unit: CanonicalUnit, text: string, behind: string): UnitEntry {
  const rest = withoutMarks(unit, behind);
  const gauge = GAUGE_OF_OTHERS.test(rest) && (unit === "m" || unit === "m²");
  const apparent = APPARENT.test(rest) && unit === "W";
  const hint = gauge
    ? ", or an AWG size (SWG: see swgSize)"
    : apparent
      ? "; a heater's kVA are its kW at unity power factor: write kW"
      : "";
  const expected = `${allowedUnits(unit)}${hint}`;
  // A bare number has as many meanings as there are units, and none is assumed.
  if (rest === "") return fail({ code: "ambiguous", path, expected, received: text });
  const entry = findUnit(unit, rest);
  if (entry !== undefined) return entry;
  // "480Y/277 V", "480 V / 277 V": no unit has a number behind its slash that is not in the table.
  if (/\/ ?\d/.test(rest)) return twoRatings(path, text);
  const elsewhere = unitElsewhere(rest);
  return elsewhere === ""
    ? fail({ code: "unknown-name", path, expected, received: text })
    : fail({ code: "wrong-type", path, expected: `${expected}, not of ${elsewhere}`, received: text });
}

/** The conversion's own refusal (overflow, below absolute zero) told about the text that was read. */
function convert(path: string, text: string, entry: UnitEntry, number: NumberText): Parsed {
  const [value, resolution] = retold(
    () => [entry.from(number.value), entry.span(number.resolution)] as const,
    (one) => issue({ code: one.code, path, expected: inItsUnit(one), received: text }),
  );
  if (resolution === 0) {
    fail({ code: "out-of-range", path, expected: "a number within the range of a double", received: text });
  }
  return { value, symbol: entry.symbol, resolution, significantDigits: number.significantDigits };
}

/**
 * Reads a number with its unit, and keeps the digits it was written with.
 *
 * Reads fractions of what is counted in them ("1/4 in", "1½ in", "1/2 hp", "1 1/2 in"; "480/277 V" are two ratings), exponents, both code points of Ω and µ, the true minus, no-break
 * spaces, trade spellings ("in-lb", "KW", "kcmil"), the marks of a nameplate before and behind its volts ("480 V 3 PH 60 HZ", "3~ 400 V"), AWG sizes where an area or a length is asked for ("2/0 AWG" as
 * area or as solid diameter), and for a resistance "OL" or "open". Refuses a comma unless asked for, grouped digits ("1 500"), two
 * ratings with a slash, a bare number, and every unit of another dimension: torque is not energy, a temperature difference (K) is not a
 * temperature (°C). The sign is read, not judged.
 * @param text - the text, at most 64 characters
 * @param options.unit - symbol of the canonical unit of the dimension asked for
 * @param options.decimalComma - reads "7,9" as 7.9, and then refuses a point; off by default
 * @param options.path - name of the text in error messages; "text" by default
 * @returns value, unit symbol, resolution and significant digits; for a resistance possibly value `"open"`
 * @throws ElectroheatError `missing` (blank), `wrong-type` (not text, or a unit of another dimension),
 *   `not-a-number` (NaN, Infinity), `out-of-range` (beyond a double, below absolute zero), `ambiguous` (no unit, a
 *   comma, grouped digits, two ratings), `unknown-name` (unknown unit), `malformed-text`
 * @source definition
 * @example
 * ```ts
 * parseQuantity("7.90 Ω", { unit: "Ω" })
 * // => { value: 7.9, symbol: "Ω", resolution: 0.01, significantDigits: 3 }
 * ```
 * @since 0.1.0
 */
export function parseQuantity<U extends CanonicalUnit>(
  text: string,
  options: ParseOptions<U>,
): ParsedQuantity<U> | (U extends "Ω" ? ParsedOpen : never) {
  const { unit, decimalComma = false, path = "text" } = given(options, "options");
  const expected = allowedUnits(unit);
  if (text === undefined || text === null) fail({ code: "missing", path, expected, received: text });
  if (typeof text !== "string") fail({ code: "wrong-type", path, expected: "text", received: text });
  if (text.length > LONGEST) {
    fail({
      code: "malformed-text",
      path,
      expected: `${expected} in at most ${LONGEST} characters`,
      received: text,
    });
  }
  const trimmed = trimSpaces(plainText(text));
  if (trimmed === "") fail({ code: "missing", path, expected, received: text });
  let parsed: Parsed;
  if (unit === "Ω" && isOpen(trimmed)) {
    parsed = { value: "open", symbol: "Ω", resolution: null, significantDigits: null };
  } else if (trimmed.toUpperCase().includes("AWG")) {
    parsed = readGauge(path, unit, trimmed);
  } else {
    const bare = unit === "V" ? trimmed.replace(MARKS_BEFORE, "") : trimmed;
    const number = readNumber(path, bare, expected, decimalComma);
    const entry = readUnit(path, unit, trimmed, trimSpaces(bare.slice(number.end)));
    if (number.pair && !HALVED.includes(entry.symbol)) twoRatings(path, text);
    parsed = convert(path, trimmed, entry, number);
  }
  return parsed as ParsedQuantity<U> | (U extends "Ω" ? ParsedOpen : never);
}

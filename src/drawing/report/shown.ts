/** Numbers of an assessment as the report prints them, in SI or US trade units. */
import type { Figure } from "../../bench/index.ts";
import {
  type CanonicalUnit,
  convertUnits,
  formatNumber,
  formatQuantity,
  formatUncertain,
  type Quantity,
} from "../../quantity/index.ts";
import type { Cell, Tone } from "./document.ts";

export type UnitSystem = "SI" | "US";

/** Digits of a figure without an uncertainty: as many as any instrument of the job shows. */
const DIGITS = 4;
const RATIO_DIGITS = 3;
const look = { trueMinus: true, nonBreakingSpace: true } as const;
const NBSP = "\u00a0";
/** Units of a figure that are no unit of the library's. */
const BARE: ReadonlySet<string> = new Set(["", "1", "%"]);

/** Zeros behind the decimal mark that no digit follows say nothing where nobody asked for them. */
const trimmed = (text: string): string => text.replace(/(\.\d*?)0+(?!\d)/, "$1").replace(/\.(?!\d)/, "");

/** Multiples that the trade writes where no prefix gives them. */
const SI_TRADE: Readonly<Partial<Record<CanonicalUnit, string>>> = {
  "m²": "mm²",
  "A/m²": "A/mm²",
  "W/m²": "W/cm²",
};

function isUnit(unit: string): unit is CanonicalUnit {
  return !BARE.has(unit);
}

/** Symbol that a quantity is written in: the trade's where it has one, else with the prefix that fits the size. */
function symbolOf(value: number, unit: CanonicalUnit, units: UnitSystem): string {
  const text = (options: { readonly system?: "US"; readonly engineering?: boolean }): string => {
    const written = formatQuantity<CanonicalUnit>(value as Quantity<CanonicalUnit>, {
      unit,
      significantDigits: DIGITS,
      ...options,
    });
    return written.slice(written.indexOf(" ") + 1);
  };
  const trade = units === "US" ? text({ system: "US" }) : (SI_TRADE[unit] ?? unit);
  return trade === unit ? text({ engineering: true }) : trade;
}

const bare = (value: number, unit: string): string => {
  const number = formatNumber(value, { significantDigits: RATIO_DIGITS, trueMinus: true });
  return `${trimmed(number)}${unit === "%" ? `${NBSP}%` : ""}`;
};

/** A number in its canonical unit, `DIGITS` digits; in the symbol given, if one is. */
export function quantityText(value: number, unit: string, units: UnitSystem, as?: string): string {
  if (!isUnit(unit)) return bare(value, unit);
  const symbol = as ?? symbolOf(value, unit, units);
  const shown = { unit, as: symbol, significantDigits: DIGITS, ...look };
  return trimmed(formatQuantity<CanonicalUnit>(value as Quantity<CanonicalUnit>, shown));
}

/** Power with all its digits, so that a column of it lines up. */
export function powerText(value: number): string {
  const as = symbolOf(value, "W", "SI");
  return formatQuantity<"W">(value as Quantity<"W">, { unit: "W", as, significantDigits: DIGITS, ...look });
}

/** A test of χ² in words. */
export function chiSquareText(chiSquare: number, degreesOfFreedom: number, pValue: number): string {
  const p = pValue < 0.001 ? "below 0.001" : pValue > 0.999 ? "above 0.999" : pValue.toFixed(3);
  return `χ² ${chiSquare.toFixed(1)} with ${degreesOfFreedom} to spare, p ${p}`;
}

/** Two ends in one unit, with as many places behind the decimal mark: `47.20 to 49.15 A`. */
export function rangeText(
  low: number,
  high: number,
  unit: string,
  units: UnitSystem,
  digits: number = DIGITS,
): string {
  if (!isUnit(unit)) return `${bare(low, "")} to ${bare(high, unit)}`;
  const symbol = symbolOf(Math.abs(low) > Math.abs(high) ? low : high, unit, units);
  const number = (value: number, decimals?: number): string => {
    const rounded = decimals === undefined ? { significantDigits: digits } : { decimals };
    const options = { unit, as: symbol, ...rounded, ...look };
    return formatQuantity<CanonicalUnit>(value as Quantity<CanonicalUnit>, options).split(NBSP)[0] as string;
  };
  const places = [low, high].map((value) => (trimmed(number(value)).split(".")[1] ?? "").length);
  const decimals = Math.max(...places);
  return `${number(low, decimals)} to ${number(high, decimals)}${NBSP}${symbol}`;
}

/** Places behind the decimal mark at which a number has so many digits. */
const placesFor = (size: number, digits: number): number =>
  size > 0 ? Math.min(12, Math.max(0, digits - 1 - Math.floor(Math.log10(size)))) : 3;

/** Places that the second digit of a half-width reaches to. */
const placesOf = (half: number): number => placesFor(half, 2);

/** Value and half-width to the place of the half-width's second digit: `7.65 ± 0.09 Ω`. One that nobody could read is left out. */
export function intervalText(value: number, halfWidth: number, unit: string, units: UnitSystem): string {
  if (!isUnit(unit)) {
    const decimals = Math.min(placesOf(halfWidth), 4);
    const end = unit === "%" ? `${NBSP}%` : "";
    return `${value.toFixed(decimals).replace("-", "\u2212")} ± ${halfWidth.toFixed(decimals)}${end}`;
  }
  const symbol = symbolOf(value, unit, units);
  const half = halfIn(halfWidth, unit, symbol);
  const decimals = placesOf(half);
  const size = Math.abs(Number(convertUnits({ value, from: unit, to: symbol })));
  if (decimals > placesFor(size, DIGITS)) return quantityText(value, unit, units, symbol);
  const [whole = ""] = formatQuantity<CanonicalUnit>(value as Quantity<CanonicalUnit>, {
    unit,
    as: symbol,
    decimals,
    ...look,
  }).split(NBSP);
  return `${whole} ± ${half.toFixed(decimals)}${NBSP}${symbol}`;
}

/** A half-width in the unit that its value is written in; that of a temperature is a difference. */
function halfIn(halfWidth: number, unit: CanonicalUnit, symbol: string): number {
  const [from, to] = unit === "°C" ? ["K", symbol === "°F" ? "Δ°F" : "K"] : [unit, symbol];
  return convertUnits({ value: halfWidth, from, to });
}

/** A half-width alone, in the unit that its value is written in, two digits. */
export function halfWidthText(
  value: number,
  halfWidth: number,
  unit: CanonicalUnit,
  units: UnitSystem,
): string {
  const symbol = symbolOf(value, unit, units);
  const half = halfIn(halfWidth, unit, symbol);
  return `± ${half.toFixed(placesOf(half))}${NBSP}${symbol}`;
}

/** Ohms with their standard uncertainty in brackets; one digit of it. */
export function uncertainOhms(value: number, uncertainty: number): string {
  return formatUncertain<"Ω">(value as Quantity<"Ω">, {
    unit: "Ω",
    uncertainty: uncertainty as Quantity<"Ω">,
    uncertaintyDigits: 1,
    ...look,
  });
}

/** A ratio as per cent with its sign, one decimal. */
export function deviationText(ratio: number): string {
  const shown = (Math.abs(ratio) * 100).toFixed(1);
  const sign = shown === "0.0" ? "" : ratio < 0 ? "\u2212" : "+";
  return `${sign}${shown}${NBSP}%`;
}

/** A part of a whole as per cent, one decimal. */
export const shareText = (ratio: number): string => `${(ratio * 100).toFixed(1)}${NBSP}%`;

/** A time as people say it. */
export function timeText(seconds: number): string {
  const minutes = seconds / 60;
  if (minutes === 0) return "none";
  if (minutes < 1) return quantityText(seconds, "s", "SI");
  return minutes < 120 ? `${bare(minutes, "")}${NBSP}min` : `${bare(minutes / 60, "")}${NBSP}h`;
}

/** A ratio is printed as per cent; a count, whole and not 0 with whole limits, as it is. */
function printed(figure: Figure): Pick<Figure, "value" | "halfWidth" | "unit" | "limit"> {
  const { value, halfWidth, unit, limit } = figure;
  const numbers = [value, halfWidth, limit?.low ?? null, limit?.high ?? null];
  if (unit !== "1" || numbers.every((one) => one === null || (one !== 0 && Number.isInteger(one)))) {
    return figure;
  }
  const times = (one: number | null): number | null => (one === null ? null : one * 100);
  return {
    value: value === "open" ? value : times(value),
    halfWidth: times(halfWidth),
    unit: "%",
    limit: limit === null ? null : { low: times(limit.low), high: times(limit.high) },
  };
}

/** The value of a figure, with its interval and the name that goes with it. */
export function figureText(figure: Figure, units: UnitSystem): string {
  const { value, unit, halfWidth } = printed(figure);
  const { name } = figure;
  const number =
    value === null
      ? ""
      : value === "open"
        ? "open"
        : halfWidth === null || halfWidth === 0
          ? quantityText(value, unit, units)
          : intervalText(value, halfWidth, unit, units);
  if (name === null) return number === "" ? "not known" : number;
  return number === "" ? name : `${number} (${name})`;
}

/** The limits of a figure in words. */
export function limitText(figure: Figure, units: UnitSystem): string {
  const { limit, unit } = printed(figure);
  if (limit === null) return "";
  const { low, high } = limit;
  if (low !== null && high !== null) return rangeText(low, high, unit, units);
  if (low !== null) return `at least ${quantityText(low, unit, units)}`;
  return high === null ? "" : `at most ${quantityText(high, unit, units)}`;
}

const TONES: Readonly<Record<string, Tone>> = {
  within: "good",
  sound: "good",
  done: "good",
  undecided: "doubt",
  "to do": "doubt",
  outside: "bad",
  open: "bad",
  shorted: "bad",
  high: "bad",
  "not passed": "bad",
  investigate: "bad",
  "too much by itself": "bad",
  "not cleared": "doubt",
};

/** A word of judgement as a cell: the word, and its tone besides. */
export function verdictCell(verdict: string | null, text: string = verdict ?? ""): Cell {
  const tone = verdict === null ? undefined : TONES[verdict];
  return tone === undefined ? { text } : { text, tone };
}

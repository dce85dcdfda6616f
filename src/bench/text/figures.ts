/** Figures of any section as lines of a text report. */
import { type CanonicalUnit, formatNumber, formatQuantity, type Quantity } from "../../quantity/index.ts";
import type { Figure } from "../assessmentTypes.ts";
import { bullet, table, WIDTH, wrap } from "./layout.ts";

const DIGITS = 4;
/** Below this the digits of a very small or very large figure would fill the line. */
const PREFIXED = { low: 0.1, high: 1e4 } as const;
/** Canonical units that the trade shows in smaller ones. */
const SHOWN: Readonly<Record<string, string>> = { "m²": "mm²", "A/m²": "A/mm²", m: "mm" };
const WITH_PREFIXES: readonly string[] = ["Ω", "V", "A", "W", "N"];

/** A value in its canonical unit as a job sheet shows it. */
function valueText(value: number, unit: string, digits: number = DIGITS): string {
  if (unit === "1" || unit === "") return formatNumber(value, { significantDigits: digits, trueMinus: true });
  const size = Math.abs(value);
  const engineering =
    WITH_PREFIXES.includes(unit) && size > 0 && (size < PREFIXED.low || size >= PREFIXED.high);
  return formatQuantity(value as Quantity<CanonicalUnit>, {
    unit: unit as CanonicalUnit,
    significantDigits: digits,
    trueMinus: true,
    ...(engineering ? { engineering } : {}),
    ...(SHOWN[unit] === undefined ? {} : { as: SHOWN[unit] as never }),
  });
}

function measured({ value, unit, name, halfWidth }: Figure): string {
  const words = name ?? "";
  if (value === null) return words === "" ? "not known" : words;
  if (value === "open") return "OL";
  const half = halfWidth === null || halfWidth === 0 ? "" : ` ± ${valueText(halfWidth, unit, 2)}`;
  const shown = `${valueText(value, unit)}${half}`;
  return words === "" ? shown : `${words} (${shown})`;
}

function limits({ limit, unit }: Figure): string {
  if (limit === null) return "";
  const { low, high } = limit;
  if (low === null) return high === null ? "" : `at most ${valueText(high, unit)}`;
  return high === null
    ? `at least ${valueText(low, unit)}`
    : `${valueText(low, unit)} to ${valueText(high, unit)}`;
}

/** Figures as a table, then what to mind, each caution once. */
export function figureLines(figures: readonly Figure[]): string[] {
  if (figures.length === 0) return [];
  const rows = figures.map((figure) => [
    figure.label,
    measured(figure),
    limits(figure),
    figure.verdict === null ? "" : figure.verdict.toUpperCase(),
  ]);
  const columns = table([["", "value", "limits", "verdict"], ...rows]);
  const fits = columns.every((line) => [...line].length <= WIDTH);
  const cautions = [...new Set(figures.flatMap(({ caution }) => caution ?? []))];
  return [
    ...(fits
      ? columns
      : rows.map(([label = "", ...cells]) => {
          const said = cells.filter((cell) => cell !== "").join("; ");
          return bullet(`${label}: ${said}`);
        })),
    ...cautions.map((caution) => wrap(`Mind: ${caution}`, "  ")),
  ];
}

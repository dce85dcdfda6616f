/** The units that text can name: every scale, and the two temperature scales that have an offset. */
import { checkOneOf } from "./check.ts";
import { fail } from "./errors.ts";
import { into, outOf, type Scale } from "./scale.ts";
import { ELECTRIC_SCALES } from "./scales/electric.ts";
import { FORCE_SCALES } from "./scales/force.ts";
import { FAHRENHEIT_DEGREE, HEAT_SCALES, KELVIN } from "./scales/heat.ts";
import { MECHANIC_SCALES } from "./scales/mechanic.ts";
import type { CanonicalUnit, Celsius, Quantity } from "./tags.ts";
import { celsius, fahrenheit, toCelsius, toFahrenheit } from "./units/temperature.ts";

/** One unit of one canonical unit. */
export interface UnitEntry {
  readonly name: string;
  readonly symbol: string;
  readonly unit: CanonicalUnit;
  /** From a number in this unit to the canonical unit. */
  readonly from: (value: number) => number;
  /** From the canonical unit to a number in this unit. */
  readonly to: (value: number) => number;
  /** Size of a difference: as `from`, without the offset of a temperature scale. */
  readonly span: (value: number) => number;
  /** From the size of a difference to a number in this unit. */
  readonly toSpan: (value: number) => number;
}

function entryOf<U extends CanonicalUnit>(scale: Scale<U>): UnitEntry {
  const from = (value: number): number => into(scale, value);
  const to = (value: number): number => outOf(scale, value as Quantity<U>);
  return { name: scale.name, symbol: scale.symbol, unit: scale.unit, from, to, span: from, toSpan: to };
}

function temperatures(): readonly UnitEntry[] {
  const kelvin = entryOf(KELVIN);
  const degree = entryOf(FAHRENHEIT_DEGREE);
  return [
    {
      name: "celsius",
      symbol: "°C",
      unit: "°C",
      from: celsius,
      to: (value) => toCelsius(value as Celsius),
      span: kelvin.from,
      toSpan: kelvin.to,
    },
    {
      name: "fahrenheit",
      symbol: "°F",
      unit: "°C",
      from: fahrenheit,
      to: (value) => toFahrenheit(value as Celsius),
      span: degree.from,
      toSpan: degree.to,
    },
  ];
}

function build(): ReadonlyMap<string, readonly UnitEntry[]> {
  const table = new Map<string, UnitEntry[]>();
  // Lists, not namespace imports: those would keep every scale in every bundle.
  const scales = [...ELECTRIC_SCALES, ...MECHANIC_SCALES, ...FORCE_SCALES, ...HEAT_SCALES];
  for (const entry of [...scales.map(entryOf), ...temperatures()]) {
    const list = table.get(entry.unit) ?? [];
    // The canonical unit first: messages list the symbols in this order.
    if (entry.symbol === entry.unit) list.unshift(entry);
    else list.push(entry);
    table.set(entry.unit, list);
  }
  return table;
}

let made: ReadonlyMap<string, readonly UnitEntry[]> | undefined;

/** Made when first asked for, so that an import does not wait for it. */
function table(): ReadonlyMap<string, readonly UnitEntry[]> {
  made ??= build();
  return made;
}

/** Every entry, for the index of unit texts. */
export function allEntries(): readonly UnitEntry[] {
  return [...table().values()].flat();
}

/** The units that one canonical unit can be written in. */
export function entriesOf(unit: CanonicalUnit): readonly UnitEntry[] {
  const known = table().get(unit);
  return known ?? (table().get(checkOneOf("unit", unit, [...table().keys()])) as readonly UnitEntry[]);
}

/** The entry with this very symbol. */
export function entryBySymbol(path: string, unit: CanonicalUnit, symbol: string): UnitEntry {
  const entries = entriesOf(unit);
  for (const entry of entries) if (entry.symbol === symbol) return entry;
  const elsewhere = allEntries().find((entry) => entry.symbol === symbol);
  return fail({
    code: elsewhere === undefined ? "unknown-name" : "wrong-type",
    path,
    expected: `a unit of ${unit}: ${entries.map((entry) => entry.symbol).join(", ")}`,
    received: symbol,
  });
}

/**
 * Lists the symbols that text may use for a quantity, the canonical one first.
 * @param unit - symbol of the canonical unit
 * @returns the symbols as `formatQuantity` prints them
 * @throws ElectroheatError `missing`, `unknown-name`
 * @source definition
 * @example
 * ```ts
 * unitSymbols("°C") // => ["°C", "°F"]
 * ```
 * @since 0.1.0
 */
export function unitSymbols(unit: CanonicalUnit): readonly string[] {
  return entriesOf(unit).map((entry) => entry.symbol);
}

/** From the rows of shared tables to the parts of a dataset. */
import {
  type Celsius,
  gramsPerCubicCentimeter,
  type JoulesPerKilogramKelvin,
  joulesPerGramKelvin,
  type KilogramsPerCubicMeter,
  microohmMeters,
  type OhmMeters,
  type PerKelvin,
  type WattsPerMeterKelvin,
} from "../../quantity/index.ts";
import type { AlloyResistivity, MeanExpansion, SinglePoint } from "../alloy.ts";
import {
  type Basis,
  basisOf,
  columnOf,
  type SharedTable,
  type Sourced,
  type TemperatureTable,
} from "../basis.ts";

type Cell = string | number | null | undefined;

const COLD = 20 as Celsius;

/** R(T) / R(20 °C) from a column of ratios; R(20 °C) / R(20 °C) = 1 by definition where no row prints it. */
export function factorOf(table: SharedTable, column: number): TemperatureTable<number> {
  const read = columnOf(table, column, (value) => value);
  if (read.temperatures[0] === COLD) return read;
  return { ...read, temperatures: [COLD, ...read.temperatures], values: [1, ...read.values] };
}

/** R(T) / R(20 °C) from a column of resistivities whose first row is 20 °C. */
export function factorFromResistivity(table: SharedTable, column: number): TemperatureTable<number> {
  const read = columnOf(table, column, (value) => value);
  const cold = read.values[0] as number;
  return { ...read, values: read.values.map((value) => value / cold) };
}

/** A cell with the basis of its table. */
export function sourced<T extends number>(value: Cell, table: SharedTable): Sourced<T> {
  return { value: value as T, basis: basisOf(table) };
}

/** Resistivity in µΩ·m (Ω·mm²/m is the same), with the tolerance when the table has one. */
export function resistivityOf(value: Cell, table: SharedTable, tolerance?: Cell): AlloyResistivity {
  const basis = basisOf(table);
  const plain = { value: microohmMeters(value as number), basis };
  return tolerance === undefined
    ? plain
    : { ...plain, tolerance: microohmMeters(tolerance as number) as OhmMeters };
}

/** Density in g/cm³. */
export function densityOf(value: Cell, table: SharedTable): Sourced<KilogramsPerCubicMeter> {
  return { value: gramsPerCubicCentimeter(value as number), basis: basisOf(table) };
}

/** Specific heat in J/(g·K), which is kJ/(kg·K). */
export function heatOf(value: Cell, table: SharedTable, at?: number): SinglePoint<JoulesPerKilogramKelvin> {
  return point(joulesPerGramKelvin(value as number), basisOf(table), at);
}

/** Thermal conductivity, W/(m·K) × `factor`. */
export function conductivityOf(
  value: Cell,
  table: SharedTable,
  at?: number,
  per = 1,
): SinglePoint<WattsPerMeterKelvin> {
  return point(((value as number) / per) as WattsPerMeterKelvin, basisOf(table), at);
}

function point<T extends number>(value: T, basis: Basis, at: number | undefined): SinglePoint<T> {
  return at === undefined ? { value, basis } : { value, basis, temperature: at as Celsius };
}

/** Mean expansion in 1e-6/K from `from` to `to`, or over a range that the source does not give. */
export function expansionOf(value: Cell, table: SharedTable, to?: number, from = 20): MeanExpansion {
  const plain = { value: ((value as number) / 1e6) as PerKelvin, basis: basisOf(table) };
  return to === undefined ? plain : { ...plain, from: from as Celsius, to: to as Celsius };
}

/** A table of mean expansions from 20 °C. */
export function expansionsOf(table: SharedTable): readonly MeanExpansion[] {
  return table.rows.map((row) => expansionOf(row[1], table, row[0] as number));
}

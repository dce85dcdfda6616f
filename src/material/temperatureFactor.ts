/** Ct, the ratio of hot to cold resistance, of one dataset. */
import {
  type Celsius,
  checkFinite,
  checkPositive,
  fail,
  finiteResult,
  given,
  givenList,
  type OhmMeters,
} from "../quantity/index.ts";
import type { AlloyDataset } from "./alloy.ts";
import { type Basis, checkBasis, type Lookup, type TemperatureTable } from "./basis.ts";
import { type BeyondTable, checkPhysical, checkRows, readCurve } from "./curve.ts";

/** The Ct table of a dataset, checked since it may be the caller's own, or an error that says it has none. */
export function factorTable(dataset: AlloyDataset, path = "dataset"): TemperatureTable<number> {
  const table = given(dataset, path).temperatureFactor;
  if (table !== undefined) {
    checkRows(table.temperatures, table.values, table.basis, `${path}.temperatureFactor`);
    checkBasis(`${path}.temperatureFactor.basis`, table.basis);
    return table;
  }
  return fail({
    code: "missing",
    path: `${path}.temperatureFactor`,
    expected: `a dataset with a Ct table; ${dataset.id} has none`,
    received: undefined,
  });
}

/**
 * Temperature factor Ct = R(temperature) / R(20 °C) of a heating alloy, by straight lines between the rows of the
 * dataset's table. Datasets of the same alloy differ by up to 5 % ({@link temperatureFactorSpread}), because the
 * heat treatment of the wire shifts its cold resistance.
 * @param input - what is looked up
 * @param input.dataset - the alloy as one source describes it, such as {@link NICR_80_20_GB}, or by
 *   {@link alloyDataset}
 * @param input.temperature - wire temperature, by thermocouple or pyrometer, °C, 20 to the end of the table
 * @param input.beyondTable - `refuse` (default) or `extrapolate`, which continues the last straight piece
 * @returns Ct with its source, and a warning when it was extrapolated
 * @throws ElectroheatError `missing` when the dataset has no Ct, `not-a-number`, `outside-table`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * temperatureFactor({ dataset: NICR_80_20_GB, temperature: celsius(500) }).value // => 1.026
 * ```
 * @since 0.1.0
 */
export function temperatureFactor(input: {
  readonly dataset: AlloyDataset;
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable | undefined;
}): Lookup<number> {
  given(input);
  const { temperatures, values, basis } = factorTable(input.dataset);
  const query = {
    xs: temperatures,
    ys: values,
    at: input.temperature,
    path: "temperature",
    unit: "°C",
    basis,
    owner: "dataset.temperatureFactor",
  };
  const read = readCurve({ ...query, beyond: input.beyondTable });
  checkPhysical(read.value, input.temperature);
  return { ...read, basis };
}

/**
 * Resistivity of a heating alloy at a temperature, with both its sources.
 * @since 0.1.0
 */
export interface AlloyResistivityAt extends Lookup<OhmMeters> {
  /** Where its Ct comes from; `basis` is that of the resistivity at 20 °C. */
  readonly temperatureFactorBasis: Basis;
}

/**
 * Resistivity of a heating alloy at a temperature: resistivity at 20 °C × Ct(temperature).
 * @param input - what is looked up
 * @param input.dataset - the alloy as one source describes it; it needs a resistivity and a Ct table
 * @param input.temperature - wire temperature, °C, 20 to the end of the Ct table
 * @param input.beyondTable - `refuse` (default) or `extrapolate`
 * @returns the resistivity in ohm meters (Ω·m) with its source
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * const hot = alloyResistivity({ dataset: NICR_80_20_MAKER_A, temperature: celsius(1000) });
 * toMicroohmMeters(hot.value).toFixed(4) // => "1.1445"
 * ```
 * @since 0.1.0
 */
export function alloyResistivity(input: {
  readonly dataset: AlloyDataset;
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable | undefined;
}): AlloyResistivityAt {
  given(input);
  const cold = given(input.dataset, "dataset").resistivity;
  if (cold === undefined) {
    return fail({
      code: "missing",
      path: "dataset.resistivity",
      expected: `a dataset with a resistivity; ${input.dataset.id} has none`,
      received: undefined,
    });
  }
  checkPositive("dataset.resistivity.value", cold.value, "Ω·m");
  checkBasis("dataset.resistivity.basis", cold.basis);
  const factor = temperatureFactor(input);
  return {
    value: finiteResult(cold.value * factor.value, "Ω·m"),
    basis: cold.basis,
    temperatureFactorBasis: factor.basis,
    warnings: factor.warnings,
  };
}

/**
 * Ct of one dataset in a comparison.
 * @since 0.1.0
 */
export interface SpreadRow {
  /** Id of the dataset. */
  readonly dataset: string;
  /** Its Ct. */
  readonly value: number;
  /** Its source. */
  readonly basis: Basis;
}

/**
 * How far sources disagree on Ct.
 * @since 0.1.0
 */
export interface FactorSpread {
  /** Lowest Ct. */
  readonly lowest: number;
  /** Highest Ct. */
  readonly highest: number;
  /** highest / lowest − 1. */
  readonly spread: number;
  /** Every dataset whose table reaches the temperature. */
  readonly rows: readonly SpreadRow[];
  /** Ids of datasets without a Ct there. */
  readonly silent: readonly string[];
}

/**
 * How far datasets disagree on Ct at a temperature: lowest, highest, and highest / lowest − 1. Nothing is
 * extrapolated: a dataset whose table does not reach the temperature is listed as silent.
 * @param input - what is compared
 * @param input.datasets - datasets of the same alloy, at least one that reaches the temperature
 * @param input.temperature - wire temperature, °C, 20 or more
 * @returns the range with every source
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table` when no dataset reaches the temperature
 * @source the datasets' own, named in the result
 * @example
 * ```ts
 * const datasets = [NICR_80_20_GB, NICR_80_20_MAKER_A, NICR_80_20_MAKER_I];
 * temperatureFactorSpread({ datasets, temperature: celsius(500) }).spread.toFixed(3) // => "0.047"
 * ```
 * @since 0.1.0
 */
export function temperatureFactorSpread(input: {
  readonly datasets: readonly AlloyDataset[];
  readonly temperature: Celsius;
}): FactorSpread {
  given(input);
  checkFinite("temperature", input.temperature, "°C");
  const rows: SpreadRow[] = [];
  const silent: string[] = [];
  for (const [i, dataset] of givenList(input.datasets, "datasets", 1).entries()) {
    const { temperatureFactor: own } = given(dataset, `datasets.${i}`);
    const { temperatures } = own === undefined ? { temperatures: [] } : factorTable(dataset, `datasets.${i}`);
    const [first, last] = [temperatures[0] ?? Number.NaN, temperatures.at(-1) ?? Number.NaN];
    const reaches = input.temperature >= first && input.temperature <= last;
    if (reaches)
      rows.push({
        dataset: dataset.id,
        ...plain(temperatureFactor({ dataset, temperature: input.temperature })),
      });
    else silent.push(dataset.id);
  }
  const values = rows.map(({ value }) => value);
  if (values.length === 0) {
    const known = input.datasets.map(({ id }) => id).join(", ");
    fail({
      code: "outside-table",
      path: "temperature",
      expected: `a temperature that a Ct table reaches (${known})`,
      received: input.temperature,
      unit: "°C",
    });
  }
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  return { lowest, highest, spread: highest / lowest - 1, rows, silent };
}

function plain({ value, basis }: Lookup<number>): { readonly value: number; readonly basis: Basis } {
  return { value, basis };
}

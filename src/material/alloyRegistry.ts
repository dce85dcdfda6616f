/** All datasets by name. Importing this brings every alloy along; a program that needs one imports that one. */

import { type Celsius, checkOneOf, given } from "../quantity/index.ts";
import type { AlloyDataset, AlloyName } from "./alloy.ts";
import {
  FECRAL_13_4_GB,
  FECRAL_21_4_GB,
  FECRAL_21_6_GB,
  FECRAL_21_6_NB_GB,
  FECRAL_23_5_GB,
  FECRAL_25_5_GB,
  FECRAL_27_7_MO2_GB,
} from "./alloys/fecralGb.ts";
import {
  FECRAL_22_4_8_MAKER_A,
  FECRAL_22_5_3_MAKER_A,
  FECRAL_22_5_8_MAKER_A,
  FECRAL_22_5_8_POWDER_MAKER_A,
} from "./alloys/fecralMakerA.ts";
import {
  NICR_20_25_MAKER_A,
  NICR_35_20_SUPPLIER,
  NICR_60_15_MAKER_I,
  NICR_60_15_US,
  NICR_80_20_MAKER_A,
  NICR_80_20_MAKER_I,
  NICR_80_20_MAKER_U,
  NICR_80_20_US,
} from "./alloys/makers.ts";
import {
  NICR_30_20_GB,
  NICR_35_20_GB,
  NICR_60_15_GB,
  NICR_70_30_GB,
  NICR_80_20_GB,
} from "./alloys/nicrGb.ts";
import type { Lookup } from "./basis.ts";
import type { BeyondTable } from "./curve.ts";
import { datasetById } from "./registry.ts";
import { type FactorSpread, temperatureFactor, temperatureFactorSpread } from "./temperatureFactor.ts";

// Listed, not taken from namespaces: a bundler cannot drop a namespace object.
function all(): readonly AlloyDataset[] {
  return [
    NICR_80_20_GB,
    NICR_70_30_GB,
    NICR_60_15_GB,
    NICR_35_20_GB,
    NICR_30_20_GB,
    NICR_80_20_MAKER_A,
    NICR_20_25_MAKER_A,
    NICR_35_20_SUPPLIER,
    NICR_80_20_MAKER_I,
    NICR_80_20_MAKER_U,
    NICR_60_15_MAKER_I,
    NICR_80_20_US,
    NICR_60_15_US,
    FECRAL_13_4_GB,
    FECRAL_21_4_GB,
    FECRAL_21_6_GB,
    FECRAL_21_6_NB_GB,
    FECRAL_23_5_GB,
    FECRAL_25_5_GB,
    FECRAL_27_7_MO2_GB,
    FECRAL_22_5_8_MAKER_A,
    FECRAL_22_5_8_POWDER_MAKER_A,
    FECRAL_22_5_3_MAKER_A,
    FECRAL_22_4_8_MAKER_A,
  ];
}

/**
 * Lists the ids of all heating-alloy datasets.
 * @returns the ids
 * @example
 * ```ts
 * alloyDatasetIds().includes("nicr-80-20-gb") // => true
 * ```
 * @since 0.1.0
 */
export function alloyDatasetIds(): readonly string[] {
  return all().map(({ id }) => id);
}

/**
 * Lists the heating alloys that have at least one dataset.
 * @returns the alloys by composition
 * @example
 * ```ts
 * alloyNames().slice(0, 2) // => ["NiCr 80/20", "NiCr 70/30"]
 * ```
 * @since 0.1.0
 */
export function alloyNames(): readonly AlloyName[] {
  return [...new Set(all().map(({ alloy }) => alloy))];
}

/**
 * A heating-alloy dataset by its id. There is no default: sources of the same alloy differ by up to 5 % in Ct.
 * @param id - id of the dataset, such as "nicr-80-20-gb"; the name of an alloy alone is refused with the datasets
 *   to choose from
 * @returns the dataset
 * @throws ElectroheatError `missing`, `ambiguous` for an alloy without a source, `unknown-name`; both list what
 *   to write
 * @source the dataset's own, named in it
 * @example
 * ```ts
 * alloyDataset("fecral-25-5-gb").alloy // => "FeCrAl 25/5"
 * ```
 * @since 0.1.0
 */
export function alloyDataset(id: string): AlloyDataset {
  return datasetById(all(), id, isMeantBy);
}

/** "NiCr 80/20", "80/20", "nicr" and "nichrome" name alloys, not sources. */
function isMeantBy({ alloy }: AlloyDataset, text: string): boolean {
  const plain = (from: string): string => from.toLowerCase().replace(/[^a-z0-9.]/g, "");
  const asked = plain(text).replace("nichrome", "nicr").replace("nickelchromium", "nicr");
  return asked.length > 3 ? plain(alloy).startsWith(asked) || plain(alloy).endsWith(asked) : false;
}

/**
 * All datasets of one heating alloy.
 * @param alloy - the alloy by composition, such as "NiCr 80/20"
 * @returns at least one dataset
 * @throws ElectroheatError `missing`, `unknown-name` that lists the known alloys
 * @source the datasets' own, named in them
 * @example
 * ```ts
 * alloyDatasetsOf("NiCr 60/15").map(({ id }) => id)
 * // => ["nicr-60-15-gb", "nicr-60-15-maker-i", "nicr-60-15-us"]
 * ```
 * @since 0.1.0
 */
export function alloyDatasetsOf(alloy: AlloyName): readonly AlloyDataset[] {
  const name = checkOneOf("alloy", alloy, alloyNames());
  return all().filter((one) => one.alloy === name);
}

/**
 * Temperature factor Ct by the name of a dataset: {@link temperatureFactor} for spreadsheets and forms, which hold
 * text. It carries every dataset along.
 * @param input - what is looked up
 * @param input.dataset - id of the dataset, such as "nicr-80-20-gb"
 * @param input.temperature - wire temperature, °C, 20 to the end of the table
 * @param input.beyondTable - `refuse` (default) or `extrapolate`
 * @returns Ct with its source, and a warning when it was extrapolated
 * @throws ElectroheatError `missing`, `unknown-name`, `ambiguous`, `not-a-number`, `outside-table`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * alloyTemperatureFactor({ dataset: "nicr-80-20-maker-a", temperature: celsius(500) }).value // => 1.05
 * ```
 * @since 0.1.0
 */
export function alloyTemperatureFactor(input: {
  readonly dataset: string;
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable | undefined;
}): Lookup<number> {
  given(input);
  return temperatureFactor({ ...input, dataset: alloyDataset(input.dataset) });
}

/**
 * How far all datasets of one alloy disagree on Ct at a temperature: {@link temperatureFactorSpread} of
 * {@link alloyDatasetsOf}.
 * @param input - what is compared
 * @param input.alloy - the alloy by composition, such as "NiCr 80/20"
 * @param input.temperature - wire temperature, °C, 20 or more
 * @returns the range with every source, and the datasets that have no Ct there
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `outside-table`
 * @source the datasets' own, named in the result
 * @example
 * ```ts
 * alloyFactorSpread({ alloy: "NiCr 80/20", temperature: celsius(500) }).rows.map(({ value }) => value.toFixed(3))
 * // => ["1.026", "1.050", "1.074"]
 * ```
 * @since 0.1.0
 */
export function alloyFactorSpread(input: {
  readonly alloy: AlloyName;
  readonly temperature: Celsius;
}): FactorSpread {
  given(input);
  return temperatureFactorSpread({ datasets: alloyDatasetsOf(input.alloy), temperature: input.temperature });
}

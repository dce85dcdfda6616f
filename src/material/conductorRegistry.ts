/** All conductor datasets by name. Importing this brings every metal along. */

import { asField, type Celsius, given, type Meters, type Ohms } from "../quantity/index.ts";
import type { Lookup } from "./basis.ts";
import { type ConductorDataset, conductorResistance } from "./conductor.ts";
import { COPPER_HARD_DRAWN, COPPER_IACS } from "./conductors/copper.ts";
import {
  ALUMINUM_61_IACS,
  ALUMINUM_PURE_CRC,
  BRASS_70_30_CRC,
  CONSTANTAN_CRC,
  COPPER_PURE_CRC,
  GOLD_KUPHALDT,
  IRON_KUPHALDT,
  NICKEL_MAKER_I,
  NICR_79_21_CRC,
  PLATINUM_CRC,
  SILVER_CRC,
  STAINLESS_304,
  STAINLESS_316,
  TIN,
  TUNGSTEN_CRC,
  ZINC_KUPHALDT,
} from "./conductors/metals.ts";
import type { BeyondTable } from "./curve.ts";
import { datasetById } from "./registry.ts";
import { wireSize } from "./sizeText.ts";

function all(): readonly ConductorDataset[] {
  return [
    COPPER_IACS,
    COPPER_HARD_DRAWN,
    ALUMINUM_61_IACS,
    NICKEL_MAKER_I,
    COPPER_PURE_CRC,
    ALUMINUM_PURE_CRC,
    BRASS_70_30_CRC,
    SILVER_CRC,
    CONSTANTAN_CRC,
    PLATINUM_CRC,
    TUNGSTEN_CRC,
    NICR_79_21_CRC,
    TIN,
    IRON_KUPHALDT,
    ZINC_KUPHALDT,
    GOLD_KUPHALDT,
    STAINLESS_304,
    STAINLESS_316,
  ];
}

/**
 * Lists the ids of all conductor datasets.
 * @returns the ids
 * @example
 * ```ts
 * conductorDatasetIds().includes("aluminum-61-iacs") // => true
 * ```
 * @since 0.1.0
 */
export function conductorDatasetIds(): readonly string[] {
  return all().map(({ id }) => id);
}

/**
 * A conductor dataset by its id. "copper" alone is refused: wire and bars are IACS copper, physics tables hold the
 * pure element, 2.7 % lower.
 * @param id - id of the dataset, such as "copper-iacs"
 * @returns the dataset
 * @throws ElectroheatError `missing`, `ambiguous` for a metal without a source, `unknown-name`; both list what to write
 * @source the dataset's own, named in it
 * @example
 * ```ts
 * conductorDataset("nickel-maker-i").tolerance // => 0.1
 * ```
 * @since 0.1.0
 */
export function conductorDataset(id: string): ConductorDataset {
  return datasetById(all(), id, isMeantBy);
}

/** "copper" and "Aluminium" name metals, not sources. */
function isMeantBy({ id, metal }: ConductorDataset, name: string): boolean {
  const asked = name.toLowerCase().replace("aluminium", "aluminum");
  return asked.length > 2 && (metal.startsWith(asked) || id.startsWith(asked));
}

/**
 * Direct-current resistance of a length of conductor by names: {@link conductorResistance} for spreadsheets and
 * forms, which hold text. It carries every metal along.
 * @param input - what the conductor is
 * @param input.conductor - id of the dataset, such as "copper-iacs"
 * @param input.size - size with its system: "12 AWG", "250 kcmil", "18 SWG", "2.5 mm²"
 * @param input.length - length of the wire, there and back for a loop, m, 0 or more
 * @param input.temperature - temperature of the metal, °C
 * @param input.beyondTable - for metals by table: `refuse` (default) or `extrapolate`
 * @returns the resistance in ohms (Ω) with the source of the resistivity
 * @throws ElectroheatError `missing`, `unknown-name`, `ambiguous`, `malformed-text`, `not-a-number`, `out-of-range`,
 *   `outside-table`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * const loop = { conductor: "copper-iacs", size: "2/0 AWG", length: feet(1000), temperature: celsius(75) };
 * namedConductorResistance(loop).value.toFixed(4) // => "0.0948"
 * ```
 * @since 0.1.0
 */
export function namedConductorResistance(input: {
  readonly conductor: string;
  readonly size: string;
  readonly length: Meters;
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable | undefined;
}): Lookup<Ohms> {
  given(input);
  const conductor = asField("conductor", () => conductorDataset(input.conductor));
  const { area } = asField("size", () => wireSize(input.size));
  return conductorResistance({ ...input, conductor, area });
}

/** NiCr heating alloys after the GB/T and GOST tables. */
import properties from "../../../shared/tables/alloy-nicr-gb.json" with { type: "json" };
import ct3020 from "../../../shared/tables/ct-nicr-30-20-gb.json" with { type: "json" };
import ct3520 from "../../../shared/tables/ct-nicr-35-20-gb.json" with { type: "json" };
import ct6015 from "../../../shared/tables/ct-nicr-60-15-gb.json" with { type: "json" };
import ct7030 from "../../../shared/tables/ct-nicr-70-30-gb.json" with { type: "json" };
import ct8020 from "../../../shared/tables/ct-nicr-80-20-gb.json" with { type: "json" };
import type { AlloyDataset, AlloyName } from "../alloy.ts";
import { rowOf, type SharedTable } from "../basis.ts";
import { conductivityOf, densityOf, expansionOf, factorOf, heatOf, resistivityOf, sourced } from "./build.ts";

/** kJ/(m·h·K) in one W/(m·K). */
const PER_HOUR = 3.6;

function dataset(alloy: AlloyName, id: string, factor: SharedTable): AlloyDataset {
  const row = rowOf(properties, alloy);
  return {
    id,
    alloy,
    resistivity: resistivityOf(row[2], properties, row[3]),
    temperatureFactor: factorOf(factor, 1),
    density: densityOf(row[5], properties),
    specificHeat: heatOf(row[6], properties, 20),
    thermalConductivity: conductivityOf(row[7], properties, undefined, PER_HOUR),
    expansion: [expansionOf(row[8], properties, 1000)],
    meltingPoint: sourced(row[4], properties),
    maximumElementTemperature: sourced(row[1], properties),
  };
}

/**
 * NiCr 80/20 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. Its Ct peaks near 500 °C and dips near 800 °C, and lies up to 5 % below other sources.
 * @source gb-t-1234, tables alloy-nicr-gb and ct-nicr-80-20-gb
 * @since 0.1.0
 */
export const NICR_80_20_GB: AlloyDataset = /*#__PURE__*/ dataset("NiCr 80/20", "nicr-80-20-gb", ct8020);

/**
 * NiCr 70/30 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. Its Ct is not monotonic.
 * @source gb-t-1234, tables alloy-nicr-gb and ct-nicr-70-30-gb
 * @since 0.1.0
 */
export const NICR_70_30_GB: AlloyDataset = /*#__PURE__*/ dataset("NiCr 70/30", "nicr-70-30-gb", ct7030);

/**
 * NiCr 60/15 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. A third reprint gives 1.12 µΩ·m.
 * @source gb-t-1234, tables alloy-nicr-gb and ct-nicr-60-15-gb
 * @since 0.1.0
 */
export const NICR_60_15_GB: AlloyDataset = /*#__PURE__*/ dataset("NiCr 60/15", "nicr-60-15-gb", ct6015);

/**
 * NiCr 35/20 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. Its Ct is monotonic: a resistance tells the temperature.
 * @source gb-t-1234, tables alloy-nicr-gb and ct-nicr-35-20-gb
 * @since 0.1.0
 */
export const NICR_35_20_GB: AlloyDataset = /*#__PURE__*/ dataset("NiCr 35/20", "nicr-35-20-gb", ct3520);

/**
 * NiCr 30/20 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. Its Ct is monotonic: a resistance tells the temperature. A third reprint gives 1.04 µΩ·m.
 * @source gb-t-1234, tables alloy-nicr-gb and ct-nicr-30-20-gb
 * @since 0.1.0
 */
export const NICR_30_20_GB: AlloyDataset = /*#__PURE__*/ dataset("NiCr 30/20", "nicr-30-20-gb", ct3020);

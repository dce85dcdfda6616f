/** FeCrAl heating alloys after the GB/T and GOST tables. */
import properties from "../../../shared/tables/alloy-fecral-gb.json" with { type: "json" };
import ct134 from "../../../shared/tables/ct-fecral-13-4-gb.json" with { type: "json" };
import ct214 from "../../../shared/tables/ct-fecral-21-4-gb.json" with { type: "json" };
import ct216 from "../../../shared/tables/ct-fecral-21-6-gb.json" with { type: "json" };
import ct216nb from "../../../shared/tables/ct-fecral-21-6-nb-gb.json" with { type: "json" };
import ct255 from "../../../shared/tables/ct-fecral-25-5-gb.json" with { type: "json" };
import ct277 from "../../../shared/tables/ct-fecral-27-7-mo2-gb.json" with { type: "json" };
import type { AlloyDataset, AlloyName } from "../alloy.ts";
import { rowOf, type SharedTable } from "../basis.ts";
import { conductivityOf, densityOf, expansionOf, factorOf, resistivityOf, sourced } from "./build.ts";

/** kJ/(m·h·K) in one W/(m·K). */
const PER_HOUR = 3.6;

function dataset(alloy: AlloyName, id: string, factor?: SharedTable): AlloyDataset {
  const row = rowOf(properties, alloy);
  return {
    id,
    alloy,
    resistivity: resistivityOf(row[2], properties, row[3]),
    ...(factor === undefined ? {} : { temperatureFactor: factorOf(factor, 1) }),
    density: densityOf(row[4], properties),
    thermalConductivity: conductivityOf(row[5], properties, undefined, PER_HOUR),
    expansion: [expansionOf(row[6], properties, 1000)],
    meltingPoint: sourced(row[7], properties),
    maximumElementTemperature: sourced(row[1], properties),
  };
}

/**
 * FeCrAl 13/4 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers.
 * @source gb-t-1234, tables alloy-fecral-gb and ct-fecral-13-4-gb
 * @since 0.1.0
 */
export const FECRAL_13_4_GB: AlloyDataset = /*#__PURE__*/ dataset("FeCrAl 13/4", "fecral-13-4-gb", ct134);

/**
 * FeCrAl 21/4 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers.
 * @source gb-t-1234, tables alloy-fecral-gb and ct-fecral-21-4-gb
 * @since 0.1.0
 */
export const FECRAL_21_4_GB: AlloyDataset = /*#__PURE__*/ dataset("FeCrAl 21/4", "fecral-21-4-gb", ct214);

/**
 * FeCrAl 21/6 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. Its Ct is level up to 100 °C.
 * @source gb-t-1234, tables alloy-fecral-gb and ct-fecral-21-6-gb
 * @since 0.1.0
 */
export const FECRAL_21_6_GB: AlloyDataset = /*#__PURE__*/ dataset("FeCrAl 21/6", "fecral-21-6-gb", ct216);

/**
 * FeCrAl 21/6 Nb after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. Its Ct falls with temperature and is level from 500 °C.
 * @source gb-t-1234, tables alloy-fecral-gb and ct-fecral-21-6-nb-gb
 * @since 0.1.0
 */
export const FECRAL_21_6_NB_GB: AlloyDataset = /*#__PURE__*/ dataset(
  "FeCrAl 21/6 Nb",
  "fecral-21-6-nb-gb",
  ct216nb,
);

/**
 * FeCrAl 23/5 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. The source gives no Ct.
 * @source gb-t-1234, table alloy-fecral-gb
 * @since 0.1.0
 */
export const FECRAL_23_5_GB: AlloyDataset = /*#__PURE__*/ dataset("FeCrAl 23/5", "fecral-23-5-gb");

/**
 * FeCrAl 25/5 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. A supplier gives 1300 °C as the highest element temperature.
 * @source gb-t-1234, tables alloy-fecral-gb and ct-fecral-25-5-gb
 * @since 0.1.0
 */
export const FECRAL_25_5_GB: AlloyDataset = /*#__PURE__*/ dataset("FeCrAl 25/5", "fecral-25-5-gb", ct255);

/**
 * FeCrAl 27/7 Mo2 after the GB/T 1234 and GOST 12766.1 tables as reprinted by suppliers. Its Ct falls with temperature.
 * @source gb-t-1234, tables alloy-fecral-gb and ct-fecral-27-7-mo2-gb
 * @since 0.1.0
 */
export const FECRAL_27_7_MO2_GB: AlloyDataset = /*#__PURE__*/ dataset(
  "FeCrAl 27/7 Mo2",
  "fecral-27-7-mo2-gb",
  ct277,
);

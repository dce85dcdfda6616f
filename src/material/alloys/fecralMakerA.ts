/** FeCrAl heating alloys after the handbook and datasheets of alloy maker A. */
import properties from "../../../shared/tables/alloy-fecral-maker-a.json" with { type: "json" };
import heat from "../../../shared/tables/conductivity-heat-fecral-maker-a.json" with { type: "json" };
import ct58 from "../../../shared/tables/ct-fecral-22-5-8-maker-a.json" with { type: "json" };
import handbook from "../../../shared/tables/ct-fecral-maker-a-handbook.json" with { type: "json" };
import expansion from "../../../shared/tables/expansion-fecral-maker-a.json" with { type: "json" };
import { kilojoulesPerKilogramKelvin, wattsPerMeterKelvin } from "../../quantity/index.ts";
import type { AlloyDataset, AlloyName } from "../alloy.ts";
import { columnOf, rowOf } from "../basis.ts";
import {
  conductivityOf,
  densityOf,
  expansionsOf,
  factorOf,
  heatOf,
  resistivityOf,
  sourced,
} from "./build.ts";

function common(alloy: AlloyName, id: string): AlloyDataset {
  const row = rowOf(properties, alloy);
  return {
    id,
    alloy,
    resistivity: resistivityOf(row[2], properties),
    density: densityOf(row[4], properties),
    maximumElementTemperature: sourced(row[1], properties),
  };
}

function aluminum58(): AlloyDataset {
  const row = rowOf(properties, "FeCrAl 22/5.8");
  return {
    ...common("FeCrAl 22/5.8", "fecral-22-5.8-maker-a"),
    temperatureFactor: factorOf(ct58, 1),
    specificHeat: columnOf(heat, 2, kilojoulesPerKilogramKelvin),
    thermalConductivity: columnOf(heat, 1, wattsPerMeterKelvin),
    expansion: expansionsOf(expansion),
    emissivity: sourced(row[8], properties),
    meltingPoint: sourced(row[7], properties),
  };
}

function aluminum53(): AlloyDataset {
  const row = rowOf(properties, "FeCrAl 22/5.3");
  return {
    ...common("FeCrAl 22/5.3", "fecral-22-5.3-maker-a"),
    temperatureFactor: factorOf(handbook, 3),
    specificHeat: heatOf(row[6], properties, 20),
    thermalConductivity: conductivityOf(row[5], properties, 50),
    expansion: expansionsOf(expansion),
    meltingPoint: sourced(row[7], properties),
  };
}

/**
 * FeCrAl 22/5.8 after alloy maker A: Ct up to 1400 °C, specific heat and thermal conductivity against
 * temperature, emissivity 0.70 against 0.88 of NiCr: at the same surface load it runs hotter.
 * @source maker-a-fecral-22-5-8, maker-a-handbook
 * @since 0.1.0
 */
export const FECRAL_22_5_8_MAKER_A: AlloyDataset = /*#__PURE__*/ aluminum58();

/**
 * FeCrAl 22/5.8 made by powder metallurgy, after the handbook of alloy maker A: Ct only, five rows.
 * @source maker-a-handbook
 * @since 0.1.0
 */
export const FECRAL_22_5_8_POWDER_MAKER_A: AlloyDataset = {
  id: "fecral-22-5.8-powder-maker-a",
  alloy: "FeCrAl 22/5.8 powder",
  temperatureFactor: /*#__PURE__*/ factorOf(handbook, 1),
};

/**
 * FeCrAl 22/5.3 after the handbook of alloy maker A. Two sub-grades are listed with 1350 and 1300 °C; the lower
 * one is taken.
 * @source maker-a-handbook
 * @since 0.1.0
 */
export const FECRAL_22_5_3_MAKER_A: AlloyDataset = /*#__PURE__*/ aluminum53();

/**
 * FeCrAl 22/4.8 after a reseller of alloy maker A: resistivity, density and temperature limit only.
 * @source maker-a-handbook
 * @since 0.1.0
 */
export const FECRAL_22_4_8_MAKER_A: AlloyDataset = /*#__PURE__*/ common(
  "FeCrAl 22/4.8",
  "fecral-22-4.8-maker-a",
);

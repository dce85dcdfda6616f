/** Heating alloys after the datasheets of makers and suppliers. */
import nicr2025 from "../../../shared/tables/alloy-nicr-20-25-maker-a.json" with { type: "json" };
import nicr6015 from "../../../shared/tables/alloy-nicr-60-15-maker-i.json" with { type: "json" };
import nicr8020 from "../../../shared/tables/alloy-nicr-80-20-maker-a.json" with { type: "json" };
import us from "../../../shared/tables/alloy-nicr-us.json" with { type: "json" };
import ct2025 from "../../../shared/tables/ct-nicr-20-25-maker-a.json" with { type: "json" };
import ct3520 from "../../../shared/tables/ct-nicr-35-20-supplier.json" with { type: "json" };
import ct8020 from "../../../shared/tables/ct-nicr-80-20-maker-a.json" with { type: "json" };
import ct8020u from "../../../shared/tables/ct-nicr-80-20-maker-u.json" with { type: "json" };
import expansion8020 from "../../../shared/tables/expansion-nicr-80-20-maker-a.json" with { type: "json" };
import rho6015 from "../../../shared/tables/resistivity-nicr-60-15-maker-i.json" with { type: "json" };
import rho8020 from "../../../shared/tables/resistivity-nicr-80-20-maker-i.json" with { type: "json" };
import heat8020 from "../../../shared/tables/specific-heat-nicr-80-20-maker-a.json" with { type: "json" };
import conductivity8020 from "../../../shared/tables/thermal-conductivity-nicr-80-20.json" with {
  type: "json",
};
import {
  joulesPerKilogramKelvin,
  microohmCentimeters,
  ohmCircularMilsPerFoot,
  wattsPerMeterKelvin,
} from "../../quantity/index.ts";
import type { AlloyDataset, AlloyName } from "../alloy.ts";
import { basisOf, columnOf, rowOf } from "../basis.ts";
import {
  conductivityOf,
  densityOf,
  expansionOf,
  expansionsOf,
  factorFromResistivity,
  factorOf,
  heatOf,
  resistivityOf,
  sourced,
} from "./build.ts";

function makerA8020(): AlloyDataset {
  const [, limit, resistivity, density, melting, emissivity] = rowOf(nicr8020, "NiCr 80/20");
  return {
    id: "nicr-80-20-maker-a",
    alloy: "NiCr 80/20",
    resistivity: resistivityOf(resistivity, nicr8020),
    temperatureFactor: factorOf(ct8020, 1),
    density: densityOf(density, nicr8020),
    specificHeat: columnOf(heat8020, 1, joulesPerKilogramKelvin),
    thermalConductivity: columnOf(conductivity8020, 1, wattsPerMeterKelvin),
    expansion: expansionsOf(expansion8020),
    emissivity: sourced(emissivity, nicr8020),
    meltingPoint: sourced(melting, nicr8020),
    maximumElementTemperature: sourced(limit, nicr8020),
  };
}

function makerA2025(): AlloyDataset {
  const [, limit, resistivity, density, melting, emissivity] = rowOf(nicr2025, "NiCr 20/25");
  return {
    id: "nicr-20-25-maker-a",
    alloy: "NiCr 20/25",
    resistivity: resistivityOf(resistivity, nicr2025),
    temperatureFactor: factorOf(ct2025, 1),
    density: densityOf(density, nicr2025),
    emissivity: sourced(emissivity, nicr2025),
    meltingPoint: sourced(melting, nicr2025),
    maximumElementTemperature: sourced(limit, nicr2025),
  };
}

function supplier3520(): AlloyDataset {
  return { id: "nicr-35-20-supplier", alloy: "NiCr 35/20", temperatureFactor: factorOf(ct3520, 1) };
}

function makerI8020(): AlloyDataset {
  return {
    id: "nicr-80-20-maker-i",
    alloy: "NiCr 80/20",
    resistivity: { value: microohmCentimeters(rho8020.rows[0]?.[1] as number), basis: basisOf(rho8020) },
    temperatureFactor: factorFromResistivity(rho8020, 1),
  };
}

function makerU8020(): AlloyDataset {
  const temperatureFactor = columnOf(ct8020u, 1, (value) => value);
  return { id: "nicr-80-20-maker-u", alloy: "NiCr 80/20", temperatureFactor };
}

function makerI6015(): AlloyDataset {
  const [, limit, density, melting, heat, conductivity, to100, to400] = rowOf(nicr6015, "NiCr 60/15");
  return {
    id: "nicr-60-15-maker-i",
    alloy: "NiCr 60/15",
    resistivity: { value: microohmCentimeters(rho6015.rows[0]?.[1] as number), basis: basisOf(rho6015) },
    temperatureFactor: factorFromResistivity(rho6015, 1),
    density: densityOf(density, nicr6015),
    specificHeat: heatOf(heat, nicr6015),
    thermalConductivity: conductivityOf(conductivity, nicr6015),
    expansion: [expansionOf(to100, nicr6015, 100), expansionOf(to400, nicr6015, 400)],
    meltingPoint: sourced(melting, nicr6015),
    maximumElementTemperature: sourced(limit, nicr6015),
  };
}

function unitedStates(name: string, alloy: AlloyName, id: string): AlloyDataset {
  const [, resistivity, , limit, melting, density] = rowOf(us, name);
  return {
    id,
    alloy,
    resistivity: { value: ohmCircularMilsPerFoot(resistivity as number), basis: basisOf(us) },
    density: densityOf(density, us),
    meltingPoint: sourced(melting, us),
    maximumElementTemperature: sourced(limit, us),
  };
}

/**
 * NiCr 80/20 after the datasheet of alloy maker A, the fullest of all datasets: Ct with two decimals, specific
 * heat and thermal conductivity against temperature, emissivity.
 * @source maker-a-nicr-80-20
 * @since 0.1.0
 */
export const NICR_80_20_MAKER_A: AlloyDataset = /*#__PURE__*/ makerA8020();

/**
 * NiCr 20/25 (iron balance) after the datasheet of alloy maker A. Its Ct is monotonic and reaches 1.34.
 * @source maker-a-nicr-20-25
 * @since 0.1.0
 */
export const NICR_20_25_MAKER_A: AlloyDataset = /*#__PURE__*/ makerA2025();

/**
 * NiCr 35/20 (34 to 37 % Ni) after a supplier's datasheet for ribbon: Ct only, without 800 °C, whose printed
 * figure is a misprint.
 * @source supplier-nicr-35-20
 * @since 0.1.0
 */
export const NICR_35_20_SUPPLIER: AlloyDataset = /*#__PURE__*/ supplier3520();

/**
 * NiCr 80/20 after the datasheet of resistance-alloy maker I, for the state after rapid cooling: Ct up to 500 °C
 * only, where it is 4.8 % above the GB tables.
 * @source maker-i-nicr-80-20
 * @since 0.1.0
 */
export const NICR_80_20_MAKER_I: AlloyDataset = /*#__PURE__*/ makerI8020();

/**
 * NiCr 80/20 after maker U: one Ct, at 1100 °C, from a worked example; at any other temperature it is refused.
 * @source maker-u-element-design
 * @since 0.1.0
 */
export const NICR_80_20_MAKER_U: AlloyDataset = /*#__PURE__*/ makerU8020();

/**
 * NiCr 60/15 after the datasheet of resistance-alloy maker I: Ct up to 500 °C only.
 * @source maker-i-nicr-60-15
 * @since 0.1.0
 */
export const NICR_60_15_MAKER_I: AlloyDataset = /*#__PURE__*/ makerI6015();

/**
 * NiCr 80/20 as traded in the United States. The source gives no Ct.
 * @source us-wire-maker
 * @since 0.1.0
 */
export const NICR_80_20_US: AlloyDataset = /*#__PURE__*/ unitedStates(
  "NiCr 80/20",
  "NiCr 80/20",
  "nicr-80-20-us",
);

/**
 * NiCr 60/15 as traded in the United States under 60/16. The source gives no Ct.
 * @source us-wire-maker
 * @since 0.1.0
 */
export const NICR_60_15_US: AlloyDataset = /*#__PURE__*/ unitedStates(
  "NiCr 60/16",
  "NiCr 60/15",
  "nicr-60-15-us",
);

/** Other conductor metals. */
import aluminum from "../../../shared/tables/aluminum-61-iacs.json" with { type: "json" };
import nickelConstants from "../../../shared/tables/nickel-constants-maker-i.json" with { type: "json" };
import crc from "../../../shared/tables/resistivity-crc.json" with { type: "json" };
import kuphaldt from "../../../shared/tables/resistivity-elements-kuphaldt.json" with { type: "json" };
import nickel from "../../../shared/tables/resistivity-nickel-maker-i.json" with { type: "json" };
import tinTable from "../../../shared/tables/resistivity-tin.json" with { type: "json" };
import steelHot from "../../../shared/tables/stainless-304-hot.json" with { type: "json" };
import steel from "../../../shared/tables/stainless-steel.json" with { type: "json" };
import thermal from "../../../shared/tables/thermal-metals.json" with { type: "json" };
import {
  type Celsius,
  joulesPerKilogramKelvin,
  microohmCentimeters,
  nanoohmMeters,
  type OhmMeters,
  ohmCircularMilsPerFoot,
  type PerKelvin,
} from "../../quantity/index.ts";
import { conductivityOf, densityOf, expansionOf, sourced } from "../alloys/build.ts";
import { basisOf, columnOf, rowOf, type SharedTable, type TemperatureTable } from "../basis.ts";
import type { ConductorDataset, LinearResistivity } from "../conductor.ts";

const COLD = 20 as Celsius;

/** Specific heat and thermal conductivity of a metal that another source than its resistivity gives. */
function thermalOf(metal: string): Pick<ConductorDataset, "specificHeat" | "thermalConductivity"> {
  const [, heat, conductivity] = rowOf(thermal, metal);
  return {
    ...(typeof heat === "number"
      ? { specificHeat: { value: joulesPerKilogramKelvin(heat), basis: basisOf(thermal) } }
      : {}),
    ...(typeof conductivity === "number"
      ? { thermalConductivity: conductivityOf(conductivity, thermal) }
      : {}),
  };
}

/** A straight line from a figure and a coefficient, both at 20 °C. */
function line(resistivity: OhmMeters, coefficient: unknown, table: SharedTable): LinearResistivity {
  return { resistivity, reference: COLD, coefficient: coefficient as PerKelvin, basis: basisOf(table) };
}

function aluminum61(): ConductorDataset {
  const [metal, resistivity, coefficient, expansion] = rowOf(aluminum, "aluminum 61 % IACS");
  return {
    id: "aluminum-61-iacs",
    metal: String(metal),
    // Ω·mm²/km is nΩ·m.
    resistivity: line(nanoohmMeters(resistivity as number), coefficient, aluminum),
    expansion: [expansionOf(expansion, aluminum)],
    ...thermalOf("aluminum"),
  };
}

function nickelMakerI(): ConductorDataset {
  const [, density, melting, percent] = rowOf(nickelConstants, "nickel");
  return {
    id: "nickel-maker-i",
    metal: "nickel",
    resistivity: columnOf(nickel, 1, microohmCentimeters),
    tolerance: (percent as number) / 100,
    density: densityOf(density, nickelConstants),
    meltingPoint: sourced(melting, nickelConstants),
    ...thermalOf("nickel"),
  };
}

/** The four columns of the CRC table are 0, 20, 25 and 100 °C, in 1e-8 Ω·m, which is µΩ·cm. */
function fromCrc(id: string, metal: string): ConductorDataset {
  const resistivity: TemperatureTable<OhmMeters> = {
    temperatures: [0, COLD, 25, 100] as Celsius[],
    values: rowOf(crc, metal)
      .slice(1)
      .map((cell) => microohmCentimeters(cell as number)),
    basis: basisOf(crc),
  };
  return { id, metal, resistivity, ...thermalOf(metal) };
}

function fromKuphaldt(id: string, metal: string): ConductorDataset {
  const row = rowOf(kuphaldt, metal);
  return {
    id,
    metal,
    resistivity: line(ohmCircularMilsPerFoot(row[1] as number), row[3], kuphaldt),
    ...thermalOf(metal),
  };
}

function tin(): ConductorDataset {
  const row = rowOf(tinTable, "tin");
  return {
    id: "tin",
    metal: "tin",
    resistivity: line(microohmCentimeters(row[1] as number), row[2], tinTable),
    ...thermalOf("tin"),
  };
}

function stainless(grade: "304" | "316"): ConductorDataset {
  const [, resistivity, conductivity, heat, expansion, density, melting] = rowOf(steel, grade);
  const cold: TemperatureTable<OhmMeters> = {
    temperatures: [COLD],
    values: [microohmCentimeters(resistivity as number)],
    basis: basisOf(steel),
  };
  return {
    id: `stainless-${grade}`,
    metal: `stainless steel ${grade}`,
    resistivity: grade === "304" ? columnOf(steelHot, 1, microohmCentimeters) : cold,
    density: densityOf(density, steel),
    specificHeat: { value: joulesPerKilogramKelvin(heat as number), basis: basisOf(steel) },
    thermalConductivity: conductivityOf(conductivity, steel),
    expansion: [expansionOf(expansion, steel, 100)],
    meltingPoint: sourced(melting, steel),
  };
}

/**
 * Electrical-grade aluminum of 61 % IACS: 28.264 nΩ·m and 0.00403 1/K at 20 °C. Pure aluminum is 6.2 % lower.
 * @source IEC 60889 and IEC 60105 as quoted
 * @since 0.1.0
 */
export const ALUMINUM_61_IACS: ConductorDataset = /*#__PURE__*/ aluminum61();

/**
 * Nickel of 99.98 % by table, 20 to 500 °C, ±10 %. Commercially pure nickel is higher still.
 * @source maker-i-nickel
 * @since 0.1.0
 */
export const NICKEL_MAKER_I: ConductorDataset = /*#__PURE__*/ nickelMakerI();

/**
 * Pure copper, 0 to 100 °C: 2.7 % below the IACS figure that wire and bars have.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const COPPER_PURE_CRC: ConductorDataset = /*#__PURE__*/ fromCrc("copper-pure-crc", "copper (pure)");

/**
 * Pure aluminum, 0 to 100 °C: 6.2 % below conductor aluminum of 61 % IACS.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const ALUMINUM_PURE_CRC: ConductorDataset = /*#__PURE__*/ fromCrc("aluminum-pure-crc", "aluminum");

/**
 * Brass of 70 % copper and 30 % zinc, 0 to 100 °C: studs and nuts.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const BRASS_70_30_CRC: ConductorDataset = /*#__PURE__*/ fromCrc("brass-70-30-crc", "brass 70Cu-30Zn");

/**
 * Silver, 0 to 100 °C.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const SILVER_CRC: ConductorDataset = /*#__PURE__*/ fromCrc("silver-crc", "silver");

/**
 * Constantan of 60 % copper and 40 % nickel, 0 to 100 °C: shunts.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const CONSTANTAN_CRC: ConductorDataset = /*#__PURE__*/ fromCrc(
  "constantan-crc",
  "constantan 60Cu-40Ni",
);

/**
 * Platinum, 0 to 100 °C.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const PLATINUM_CRC: ConductorDataset = /*#__PURE__*/ fromCrc("platinum-crc", "platinum");

/**
 * Tungsten, 0 to 100 °C.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const TUNGSTEN_CRC: ConductorDataset = /*#__PURE__*/ fromCrc("tungsten-crc", "tungsten");

/**
 * Nickel-chromium of 79 % and 21 %, 0 to 100 °C; for heating wire at work take a heating-alloy dataset.
 * @source CRC Handbook of Chemistry and Physics, section 15, Wire Tables
 * @since 0.1.0
 */
export const NICR_79_21_CRC: ConductorDataset = /*#__PURE__*/ fromCrc("nicr-79-21-crc", "nichrome 79Ni-21Cr");

/**
 * Tin: 109 nΩ·m and 0.0045 1/K at 20 °C; other tables give 0.0042 1/K or 115 nΩ·m. For reasoning on coatings only.
 * @source resistivity-encyclopedia
 * @since 0.1.0
 */
export const TIN: ConductorDataset = /*#__PURE__*/ tin();

/**
 * Iron: straight line at 20 °C.
 * @source T. R. Kuphaldt, Lessons in Electric Circuits, volume V, Reference
 * @since 0.1.0
 */
export const IRON_KUPHALDT: ConductorDataset = /*#__PURE__*/ fromKuphaldt("iron-kuphaldt", "iron");

/**
 * Zinc: straight line at 20 °C.
 * @source T. R. Kuphaldt, Lessons in Electric Circuits, volume V, Reference
 * @since 0.1.0
 */
export const ZINC_KUPHALDT: ConductorDataset = /*#__PURE__*/ fromKuphaldt("zinc-kuphaldt", "zinc");

/**
 * Gold: straight line at 20 °C.
 * @source T. R. Kuphaldt, Lessons in Electric Circuits, volume V, Reference
 * @since 0.1.0
 */
export const GOLD_KUPHALDT: ConductorDataset = /*#__PURE__*/ fromKuphaldt("gold-kuphaldt", "gold");

/**
 * Stainless steel 304: a straight line through 72 µΩ·cm at 20 °C and 116 µΩ·cm at 650 °C.
 * @source mill-sheets
 * @since 0.1.0
 */
export const STAINLESS_304: ConductorDataset = /*#__PURE__*/ stainless("304");

/**
 * Stainless steel 316: 74 µΩ·cm at 20 °C, the only figure of its sources.
 * @source mill-sheets
 * @since 0.1.0
 */
export const STAINLESS_316: ConductorDataset = /*#__PURE__*/ stainless("316");

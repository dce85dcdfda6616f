/** Copper by definition: the International Annealed Copper Standard, and copper of less conductivity. */
import constants from "../../../shared/tables/copper-constants-cda.json" with { type: "json" };
import thermal from "../../../shared/tables/copper-thermal-cda.json" with { type: "json" };
import {
  type Celsius,
  checkBetween,
  joulesPerKilogramKelvin,
  type KilogramsPerCubicMeter,
  type OhmMeters,
  type PerKelvin,
  wattsPerMeterKelvin,
} from "../../quantity/index.ts";
import type { MeanExpansion } from "../alloy.ts";
import { expansionOf, sourced } from "../alloys/build.ts";
import { type Basis, columnOf } from "../basis.ts";
import type { ConductorDataset } from "../conductor.ts";

/** Conductivity of 100 % IACS at 20 °C, S/m; definition. */
const IACS = 58e6;
/** Its temperature coefficient at 20 °C, 1/K, and density, kg/m³; definition. */
const IACS_COEFFICIENT = 0.00393;
const IACS_DENSITY = 8890;
const REFERENCE = 20 as Celsius;

/** The 100 °C figure is a mean from 25 °C, the others from 20 °C. */
function expansions(): readonly MeanExpansion[] {
  return thermal.rows
    .filter((row) => row[3] !== null)
    .map((row) => expansionOf(row[3], thermal, row[0] as number, row[0] === 100 ? 25 : 20));
}

function copper(id: string, metal: string, conductivity: number): ConductorDataset {
  const source = conductivity === 1 ? "iec-60028" : "dellinger";
  const basis: Basis = { source, edition: "definition", table: "IACS", kind: "definition" };
  return {
    id,
    metal,
    resistivity: {
      resistivity: (1 / (IACS * conductivity)) as OhmMeters,
      reference: REFERENCE,
      coefficient: (IACS_COEFFICIENT * conductivity) as PerKelvin,
      basis,
    },
    density: {
      value: IACS_DENSITY as KilogramsPerCubicMeter,
      basis: { ...basis, source: "iec-60028" },
    },
    specificHeat: columnOf(thermal, 1, joulesPerKilogramKelvin),
    thermalConductivity: columnOf(thermal, 2, wattsPerMeterKelvin),
    expansion: expansions(),
    meltingPoint: sourced(constants.rows[0]?.[2], constants),
  };
}

function hardDrawn(): ConductorDataset {
  const percent = constants.rows[0]?.[1] as number;
  return copper("copper-hard-drawn", "copper, hard drawn", percent / 100);
}

/**
 * Copper of a given conductivity: resistivity at 20 °C = 1 / (58 MS/m × conductivity); its temperature coefficient
 * is 0.00393 1/K × conductivity, since impurities and cold work add resistivity that does not change with
 * temperature. Specific heat, thermal conductivity and expansion are those of high-conductivity copper.
 * @param conductivity - conductivity as a share of IACS, on the mill certificate or by an eddy-current meter, 0.5 to
 *   1.1 (97 % is 0.97)
 * @returns the dataset
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source IEC 60028:1925; J. H. Dellinger, Bulletin of the Bureau of Standards 7 (1), 1911
 * @example
 * ```ts
 * const bar = conductorResistivity({ conductor: copperOfConductivity(0.97), temperature: celsius(20) });
 * toNanoohmMeters(bar.value).toFixed(4) // => "17.7746"
 * ```
 * @since 0.1.0
 */
export function copperOfConductivity(conductivity: number): ConductorDataset {
  checkBetween("conductivity", conductivity, 0.5, 1.1);
  return copper(`copper-${Number((conductivity * 100).toPrecision(6))}-iacs`, "copper", conductivity);
}

/**
 * Annealed copper of 100 % IACS: 1/58 Ω·mm²/m and 0.00393 1/K at 20 °C by definition. Wire and bars are this, not
 * the pure element of physics tables, which is 2.7 % lower.
 * @source IEC 60028:1925; thermal figures: Copper Development Association fact sheets, 2001
 * @since 0.1.0
 */
export const COPPER_IACS: ConductorDataset = /*#__PURE__*/ copper("copper-iacs", "copper", 1);

/**
 * Hard-drawn, fully cold-worked copper of 97 % IACS, the temperature coefficient in proportion.
 * @source Copper Development Association fact sheets, 2001 (97 %); J. H. Dellinger, 1911 (proportionality)
 * @since 0.1.0
 */
export const COPPER_HARD_DRAWN: ConductorDataset = /*#__PURE__*/ hardDrawn();

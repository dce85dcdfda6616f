/** Dry air: the published table for what depends on temperature only, the gas law for what depends on pressure. */
import table from "../../shared/tables/air-incropera-a4.json" with { type: "json" };
import {
  type Celsius,
  checkPositive,
  finiteResult,
  given,
  type JoulesPerKilogramKelvin,
  type KilogramsPerCubicMeter,
  type PascalSeconds,
  type Pascals,
  type SquareMetersPerSecond,
  type Warning,
  type WattsPerMeterKelvin,
} from "../quantity/index.ts";
import { type Basis, basisOf } from "./basis.ts";
import { type BeyondTable, checkPhysical, placeIn, valueAt } from "./curve.ts";
import { positiveKelvins } from "./kelvin.ts";

/** Gas constant of dry air, J/(kg·K). */
const GAS_CONSTANT = 287.055;
/** Above 1200 K, in °C, the table bends: its conductivity rises by 22 % from 1300 K to 1500 K. */
const SPLICE = 926.85;

/**
 * Properties of dry air at one temperature and pressure.
 * @since 0.1.0
 */
export interface AirProperties {
  /** Density by the gas law (kg/m³). */
  readonly density: KilogramsPerCubicMeter;
  /** Specific heat at constant pressure (J/(kg·K)). */
  readonly specificHeat: JoulesPerKilogramKelvin;
  /** Dynamic viscosity (Pa·s). */
  readonly viscosity: PascalSeconds;
  /** Kinematic viscosity: viscosity / density (m²/s). */
  readonly kinematicViscosity: SquareMetersPerSecond;
  /** Thermal conductivity (W/(m·K)). */
  readonly thermalConductivity: WattsPerMeterKelvin;
  /** Thermal diffusivity: conductivity / (density × specific heat) (m²/s). */
  readonly thermalDiffusivity: SquareMetersPerSecond;
  /** Prandtl number as tabulated. */
  readonly prandtl: number;
  /** Where the tabulated figures come from. */
  readonly basis: Basis;
  /** Empty when the table covers what was asked. */
  readonly warnings: readonly Warning[];
}

/**
 * Density of dry air: pressure / (287.055 × (temperature + 273.15)), pressure in Pa, temperature in °C. Humidity
 * makes air lighter, by 1 % at 30 °C and saturated; it is not taken into account.
 * @param input - what the air is at
 * @param input.temperature - air temperature, by a shielded probe, °C, above −273.15
 * @param input.pressure - absolute pressure, by barometer or {@link pressureAtAltitude}, Pa, more than 0
 * @returns the density in kilograms per cubic meter (kg/m³)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition (gas law); U.S. Standard Atmosphere, 1976 for the molar mass of dry air
 * @example
 * ```ts
 * airDensity({ temperature: celsius(20), pressure: pascals(101325) }).toFixed(4) // => "1.2041"
 * ```
 * @since 0.1.0
 */
export function airDensity(input: {
  readonly temperature: Celsius;
  readonly pressure: Pascals;
}): KilogramsPerCubicMeter {
  given(input);
  const kelvin = positiveKelvins(input.temperature);
  checkPositive("pressure", input.pressure, "Pa");
  return finiteResult(input.pressure / (GAS_CONSTANT * kelvin), "kg/m³");
}

/** Temperatures of the table in °C: −23.15, not −23.149999999999977. */
function temperatures(): readonly number[] {
  return table.rows.map(([kelvin]) => Math.round(((kelvin as number) - 273.15) * 100) / 100);
}

function column(index: number): readonly number[] {
  return table.rows.map((row) => row[index] as number);
}

// Once, not at each call: a solver asks hundreds of times.
const TEMPERATURES: readonly number[] = /*#__PURE__*/ temperatures();
const HEATS: readonly number[] = /*#__PURE__*/ column(1);
const VISCOSITIES: readonly number[] = /*#__PURE__*/ column(2);
const CONDUCTIVITIES: readonly number[] = /*#__PURE__*/ column(3);
const PRANDTLS: readonly number[] = /*#__PURE__*/ column(4);

/**
 * Properties of dry air for heat transfer: specific heat, viscosity, thermal conductivity and Prandtl number by
 * straight lines between the rows of the table (250 K to 1500 K, −23.15 °C to 1226.85 °C); density by
 * {@link airDensity}, so that altitude counts; kinematic viscosity and diffusivity from these. The density column
 * of the printed table is that of 100 kPa and is not used. Another textbook is up to
 * 2.9 % lower in conductivity ({@link airTextbooks}).
 * @param input - what the air is at
 * @param input.temperature - air temperature; for a film the mean of surface and air, °C, −23.15 to 1226.85
 * @param input.pressure - absolute pressure, by barometer or {@link pressureAtAltitude}, Pa, more than 0
 * @param input.beyondTable - `refuse` (default) or `extrapolate`
 * @returns the properties with their source; a warning above 926.85 °C, where the table is doubtful
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th and 7th edition, Table A.4
 * @example
 * ```ts
 * airProperties({ temperature: celsius(26.85), pressure: pascals(101325) }).thermalConductivity // => 0.0263
 * ```
 * @since 0.1.0
 */
export function airProperties(input: {
  readonly temperature: Celsius;
  readonly pressure: Pascals;
  readonly beyondTable?: BeyondTable | undefined;
}): AirProperties {
  given(input);
  const density = airDensity(input);
  const basis = basisOf(table);
  const place = placeIn({
    xs: TEMPERATURES,
    at: input.temperature,
    path: "temperature",
    unit: "°C",
    basis,
    beyond: input.beyondTable,
  });
  const specificHeat = valueAt(HEATS, place);
  const viscosity = valueAt(VISCOSITIES, place);
  const conductivity = valueAt(CONDUCTIVITIES, place);
  const prandtl = valueAt(PRANDTLS, place);
  for (const one of [specificHeat, viscosity, conductivity, prandtl]) checkPhysical(one, input.temperature);
  const warnings: Warning[] = [...place.warnings];
  if (input.temperature > SPLICE && warnings.length === 0) {
    warnings.push({
      code: "approximate",
      path: "temperature",
      message: `Above ${SPLICE} °C the table looks spliced from another source: up to 14 % off the usual laws.`,
      limit: SPLICE,
      unit: "°C",
      source: basis.source,
    });
  }
  return {
    density,
    specificHeat: specificHeat as JoulesPerKilogramKelvin,
    viscosity: viscosity as PascalSeconds,
    kinematicViscosity: finiteResult(viscosity / density, "m²/s"),
    thermalConductivity: conductivity as WattsPerMeterKelvin,
    thermalDiffusivity: finiteResult(conductivity / (density * specificHeat), "m²/s"),
    prandtl,
    basis,
    warnings,
  };
}

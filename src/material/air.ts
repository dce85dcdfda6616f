/** Dry air: the published table for what depends on temperature only, the gas law for what depends on pressure. */
import table from "../../shared/tables/air-incropera-a4.json" with { type: "json" };
import {
  type Celsius,
  checkPositive,
  type JoulesPerKilogramKelvin,
  type KilogramsPerCubicMeter,
  type PascalSeconds,
  type Pascals,
  type SquareMetersPerSecond,
  toAbsoluteKelvins,
  type Warning,
  type WattsPerMeterKelvin,
} from "../quantity/index.ts";
import { type Basis, basisOf } from "./basis.ts";
import { type BeyondTable, readCurve } from "./curve.ts";

/** Gas constant of dry air, J/(kg·K). */
const GAS_CONSTANT = 287.055;
/** Above this the table bends as if spliced from another source: its conductivity rises by 22 % from 1300 K to 1500 K. */
const SPLICE = 1200;

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
  const kelvin = toAbsoluteKelvins(input.temperature);
  checkPositive("temperature", kelvin, "K");
  checkPositive("pressure", input.pressure, "Pa");
  return (input.pressure / (GAS_CONSTANT * kelvin)) as KilogramsPerCubicMeter;
}

/** One column of the table at a temperature in kelvins. */
function column(
  index: number,
  kelvin: number,
  beyond: BeyondTable | undefined,
): ReturnType<typeof readCurve> {
  const xs = table.rows.map((row) => row[0] as number);
  const ys = table.rows.map((row) => row[index] as number);
  return readCurve({ xs, ys, at: kelvin, path: "temperature", unit: "K", basis: basisOf(table), beyond });
}

/**
 * Properties of dry air for heat transfer: specific heat, viscosity, thermal conductivity and Prandtl number by
 * straight lines between the rows of the table (250 K to 1500 K, −23.15 °C to 1226.85 °C); density by
 * {@link airDensity}, so that altitude counts; kinematic viscosity and diffusivity from these. The density column
 * of the table is that of 100 kPa and is not used. Another textbook is 2.8 % lower in conductivity at 1000 °C.
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
  const density = airDensity(input);
  const kelvin = toAbsoluteKelvins(input.temperature);
  const read = (index: number): number => column(index, kelvin, input.beyondTable).value;
  const heat = column(2, kelvin, input.beyondTable);
  const viscosity = read(3);
  const conductivity = read(5);
  const warnings: Warning[] = [...heat.warnings];
  if (kelvin > SPLICE && heat.warnings.length === 0) {
    warnings.push({
      code: "approximate",
      path: "temperature",
      message: `Above ${SPLICE} K the table looks spliced from another source: up to 14 % off the usual laws.`,
      limit: SPLICE,
      unit: "K",
      source: table.source,
    });
  }
  return {
    density,
    specificHeat: heat.value as JoulesPerKilogramKelvin,
    viscosity: viscosity as PascalSeconds,
    kinematicViscosity: (viscosity / density) as SquareMetersPerSecond,
    thermalConductivity: conductivity as WattsPerMeterKelvin,
    thermalDiffusivity: (conductivity / (density * heat.value)) as SquareMetersPerSecond,
    prandtl: read(7),
    basis: basisOf(table),
    warnings,
  };
}

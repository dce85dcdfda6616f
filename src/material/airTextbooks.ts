/** Two textbooks on air side by side: how well its properties are known. */
import second from "../../shared/tables/air-cengel-a15.json" with { type: "json" };
import {
  type Celsius,
  type JoulesPerKilogramKelvin,
  pascals,
  type WattsPerMeterKelvin,
} from "../quantity/index.ts";
import { airProperties } from "./air.ts";
import { columnOf, type Sourced } from "./basis.ts";
import { placeIn, valueAt } from "./curve.ts";

/**
 * One property of air after two textbooks.
 * @since 0.1.0
 */
export interface AirComparison<T> {
  /** As {@link airProperties} gives it. */
  readonly first: Sourced<T>;
  /** As the other textbook gives it. */
  readonly second: Sourced<T>;
  /** first / second − 1. */
  readonly difference: number;
}

function compared<T extends number>(first: Sourced<T>, column: number, at: Celsius): AirComparison<T> {
  const table = columnOf(second, column, (value) => value as T);
  const { temperatures: xs, values: ys, basis } = table;
  const value = valueAt(ys, placeIn({ xs, at, path: "temperature", unit: "°C", basis })) as T;
  return { first, second: { value, basis }, difference: first.value / value - 1 };
}

/**
 * Specific heat and thermal conductivity of air after two textbooks, 0 to 1000 °C: up to 0.3 % and 2.9 % apart. No
 * convection result deserves better than that, and the correlations add some 15 %.
 * @param temperature - air temperature, °C, 0 to 1000
 * @returns both figures with their sources, and the difference
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table`
 * @source Incropera et al., Fundamentals of Heat and Mass Transfer, Table A.4; Çengel, Heat and Mass Transfer, Table A-15
 * @example
 * ```ts
 * airTextbooks(celsius(1000)).thermalConductivity.difference.toFixed(3) // => "0.023"
 * ```
 * @since 0.1.0
 */
export function airTextbooks(temperature: Celsius): {
  /** Specific heat at constant pressure, J/(kg·K). */
  readonly specificHeat: AirComparison<JoulesPerKilogramKelvin>;
  /** Thermal conductivity, W/(m·K). */
  readonly thermalConductivity: AirComparison<WattsPerMeterKelvin>;
} {
  const { specificHeat, thermalConductivity, basis } = airProperties({
    temperature,
    pressure: pascals(101325),
  });
  return {
    specificHeat: compared({ value: specificHeat, basis }, 1, temperature),
    thermalConductivity: compared({ value: thermalConductivity, basis }, 2, temperature),
  };
}

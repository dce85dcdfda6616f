/** Formulas for air, with how far each is off the published table: for derivatives and for spreadsheets. */
import {
  type Celsius,
  checkBetween,
  type JoulesPerKilogramKelvin,
  type PascalSeconds,
  toAbsoluteKelvins,
  type WattsPerMeterKelvin,
} from "../quantity/index.ts";
import type { Basis, Lookup } from "./basis.ts";

/**
 * Result of a formula with its known error.
 * @since 0.1.0
 */
export interface WithError<T> extends Lookup<T> {
  /** Largest relative deviation from the published table from 250 K up to the range the temperature lies in. */
  readonly relativeError: number;
}

/** Deviations from Incropera Table A.4 up to 600, 1000 and 1500 K, rounded up to the next 0.0001. */
const VISCOSITY_ERRORS = [0.0137, 0.0217, 0.0558] as const;
const CONDUCTIVITY_ERRORS = [0.0075, 0.0141, 0.117] as const;
const HEAT_ERRORS = [0.0026, 0.0026, 0.0662] as const;

/** The value with the error of its range, which the named table was read over. */
function withError<T extends number>(
  kelvin: number,
  value: number,
  errors: readonly [number, number, number],
  source: string,
): WithError<T> {
  const basis: Basis = { source, edition: "formula", table: "air-incropera-a4", kind: "definition" };
  const relativeError = kelvin <= 600 ? errors[0] : kelvin <= 1000 ? errors[1] : errors[2];
  return { value: value as T, basis, warnings: [], relativeError };
}

/** 250 to 1500 K: where the deviations were taken. */
function kelvinOf(temperature: Celsius): number {
  checkBetween("temperature", temperature, -23.15, 1226.85, "°C");
  return toAbsoluteKelvins(temperature);
}

/**
 * Viscosity of air by the Sutherland form: 1.458e-6 × T^1.5 / (T + 110.4), T in K. Off the published table by at
 * most 1.4 % up to 600 K, 2.2 % up to 1000 K, 5.6 % up to 1500 K.
 * @param temperature - air temperature, °C, −23.15 to 1226.85
 * @returns the viscosity in pascal seconds (Pa·s) and its known error
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source U.S. Standard Atmosphere, 1976 (coefficients from memory, confirmed by the deviation from Incropera Table A.4)
 * @example
 * ```ts
 * airViscosityFormula(celsius(26.85)).value.toExponential(3) // => "1.846e-5"
 * ```
 * @since 0.1.0
 */
export function airViscosityFormula(temperature: Celsius): WithError<PascalSeconds> {
  const kelvin = kelvinOf(temperature);
  const value = (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
  return withError(kelvin, value, VISCOSITY_ERRORS, "us-standard-atmosphere-1976");
}

/**
 * Thermal conductivity of air: 2.64638e-3 × T^1.5 / (T + 245.4 × 10^(−12 / T)), T in K. Off the published table by at
 * most 0.8 % up to 600 K, 1.4 % up to 1000 K, 12 % up to 1500 K, where the table itself is doubtful.
 * @param temperature - air temperature, °C, −23.15 to 1226.85
 * @returns the thermal conductivity in watts per meter kelvin (W/(m·K)) and its known error
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source U.S. Standard Atmosphere, 1976 (coefficients from memory, confirmed by the deviation from Incropera Table A.4)
 * @example
 * ```ts
 * airConductivityFormula(celsius(26.85)).value.toFixed(4) // => "0.0263"
 * ```
 * @since 0.1.0
 */
export function airConductivityFormula(temperature: Celsius): WithError<WattsPerMeterKelvin> {
  const kelvin = kelvinOf(temperature);
  const value = (2.64638e-3 * kelvin ** 1.5) / (kelvin + 245.4 * 10 ** (-12 / kelvin));
  return withError(kelvin, value, CONDUCTIVITY_ERRORS, "us-standard-atmosphere-1976");
}

/**
 * Specific heat of air: 287.055 × (3.653 − 1.337e-3 T + 3.294e-6 T² − 1.913e-9 T³ + 0.2763e-12 T⁴), T in K. Off the
 * published table by at most 0.3 % up to 1000 K, 6.7 % up to 1500 K.
 * @param temperature - air temperature, °C, −23.15 to 1226.85
 * @returns the specific heat in joules per kilogram kelvin (J/(kg·K)) and its known error
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source ideal-gas quartic (coefficients from memory, confirmed by the deviation from Incropera Table A.4)
 * @example
 * ```ts
 * airSpecificHeatFormula(celsius(26.85)).value.toFixed(0) // => "1004"
 * ```
 * @since 0.1.0
 */
export function airSpecificHeatFormula(temperature: Celsius): WithError<JoulesPerKilogramKelvin> {
  const t = kelvinOf(temperature);
  const value =
    287.055 * (3.653 - 1.337e-3 * t + 3.294e-6 * t ** 2 - 1.913e-9 * t ** 3 + 0.2763e-12 * t ** 4);
  return withError(t, value, HEAT_ERRORS, "ideal-gas-quartic");
}

/**
 * Temperature. The canonical scale is °C; a temperature difference is `Kelvins` and another tag, so the
 * absolute kelvin has its own name here.
 */

import { checkFinite } from "../check.ts";
import { ZERO_CELSIUS } from "../constants.ts";
import { fail } from "../errors.ts";
import type { Celsius } from "../tags.ts";

/** 0 °C in kelvins; exact definition. */

/** Requires a temperature at or above absolute zero. */
function checkTemperature(path: string, value: number, lowest: number, unit: string): void {
  checkFinite(path, value, unit);
  if (value < lowest) {
    fail({ code: "out-of-range", path, expected: `at least ${lowest}`, received: value, unit });
  }
}

/** Requires the result to be within a double, for the temperatures of 1e308 that fuzzers give. */
function checkResult(path: string, value: number, unit: string, result: number): void {
  if (!(result - result === 0)) {
    const expected = "a number that stays finite when converted";
    fail({ code: "out-of-range", path, expected, received: value, unit });
  }
}

/**
 * Temperature given in degrees Celsius (°C), the unit it is held in.
 * @param value - temperature in degrees Celsius (°C), −273.15 or more
 * @returns the temperature in degrees Celsius (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` below absolute zero
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.1; definition
 * @example
 * ```ts
 * celsius(20) // => 20
 * ```
 * @since 0.1.0
 */
export function celsius(value: number): Celsius {
  checkTemperature("celsius", value, -ZERO_CELSIUS, "°C");
  return value as Celsius;
}

/**
 * Temperature read in degrees Celsius (°C), the unit it is held in.
 * @param value - temperature in degrees Celsius (°C)
 * @returns the number of degrees Celsius
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` below absolute zero
 * @source as for {@link celsius}
 * @example
 * ```ts
 * toCelsius(fahrenheit(212)) // => 100
 * ```
 * @since 0.1.0
 */
export function toCelsius(value: Celsius): number {
  checkTemperature("celsius", value, -ZERO_CELSIUS, "°C");
  return value;
}

/**
 * Temperature given in degrees Fahrenheit (°F), held in degrees Celsius: (value − 32) × 5 / 9. For a difference
 * of temperatures use `fahrenheitDegrees`.
 * @param value - temperature in degrees Fahrenheit (°F), −459.67 or more
 * @returns the temperature in degrees Celsius (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` below absolute zero
 * @source NIST SP 811, 2008 edition, Appendix B.8; exact definition
 * @example
 * ```ts
 * fahrenheit(392) // => 200
 * ```
 * @since 0.1.0
 */
export function fahrenheit(value: number): Celsius {
  checkTemperature("fahrenheit", value, -459.67, "°F");
  const result = ((value - 32) * 5) / 9;
  checkResult("fahrenheit", value, "°F", result);
  return result as Celsius;
}

/**
 * Temperature read in degrees Fahrenheit (°F): value × 9 / 5 + 32.
 * @param value - temperature in degrees Celsius (°C)
 * @returns the number of degrees Fahrenheit
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` below absolute zero
 * @source as for {@link fahrenheit}
 * @example
 * ```ts
 * toFahrenheit(celsius(200)) // => 392
 * ```
 * @since 0.1.0
 */
export function toFahrenheit(value: Celsius): number {
  checkTemperature("fahrenheit", value, -ZERO_CELSIUS, "°C");
  const result = (value * 9) / 5 + 32;
  checkResult("fahrenheit", value, "°C", result);
  return result;
}

/**
 * Temperature given in kelvins above absolute zero, held in degrees Celsius: value − 273.15. For a difference
 * of temperatures use `kelvins`.
 * @param value - thermodynamic temperature in kelvins (K), 0 or more
 * @returns the temperature in degrees Celsius (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` below 0 K
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019), 2.3.1; definition
 * @example
 * ```ts
 * absoluteKelvins(273.15) // => 0
 * ```
 * @since 0.1.0
 */
export function absoluteKelvins(value: number): Celsius {
  checkTemperature("absoluteKelvins", value, 0, "K");
  return (value - ZERO_CELSIUS) as Celsius;
}

/**
 * Temperature read in kelvins above absolute zero: value + 273.15.
 * @param value - temperature in degrees Celsius (°C)
 * @returns the number of kelvins above absolute zero
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` below absolute zero
 * @source as for {@link absoluteKelvins}
 * @example
 * ```ts
 * toAbsoluteKelvins(celsius(20)) // => 293.15
 * ```
 * @since 0.1.0
 */
export function toAbsoluteKelvins(value: Celsius): number {
  checkTemperature("absoluteKelvins", value, -ZERO_CELSIUS, "°C");
  return value + ZERO_CELSIUS;
}

/** Barometric pressure by altitude. */
import { checkBetween, type Meters, type Pascals } from "../quantity/index.ts";

/** Standard pressure at sea level, Pa; by definition. */
const SEA_LEVEL = 101325;

/**
 * Pressure of the standard atmosphere: 101325 Pa × (1 − 2.25577e-5 × altitude)^5.25588, altitude in m. The weather
 * moves the real pressure by about ±3 %: a barometer reading (not reduced to sea level) is better.
 * @param altitude - height above sea level, from a map, m, −500 to 11000
 * @returns the absolute pressure in pascals (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source U.S. Standard Atmosphere, 1976, troposphere
 * @example
 * ```ts
 * (pressureAtAltitude(feet(5000)) / 101325).toFixed(4) // => "0.8320"
 * ```
 * @since 0.1.0
 */
export function pressureAtAltitude(altitude: Meters): Pascals {
  checkBetween("altitude", altitude, -500, 11000, "m");
  return (SEA_LEVEL * (1 - 2.25577e-5 * altitude) ** 5.25588) as Pascals;
}

/** Surfaces that radiation and air pull in two directions: work under lamps, and a probe that sees the walls. */
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Celsius,
  checkBetween,
  fail,
  given,
  type WattsPerSquareMeter,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";
import { blackBody, checkEmissivity } from "./radiationLaw.ts";
import { checkScale, checkScaleOrZero, checkTemperature } from "./scale.ts";

/**
 * Temperature of a thin insulated surface under lamps or elements: absorptivity × irradiation = filmCoefficient × (T − air) +
 * emissivity × σ × (T⁴ − surroundings⁴).
 * @param input.irradiation - radiant heat that falls on it, W/m², 0 or more
 * @param input.absorptivity - share of it taken up, 0 to 1
 * @param input.emissivity - of the surface, 0 to 1
 * @param input.filmCoefficient - convection, W/(m²·K), more than 0
 * @param input.air - air temperature, °C
 * @param input.surroundings - temperature of what it sees besides the lamps, °C
 * @returns surface temperature, °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 1.3 (surface energy balance, example 1.7)
 * @example
 * ```ts
 * irradiatedTemperature({
 *   irradiation: wattsPerSquareMeter(2000), absorptivity: 0.8, emissivity: 0.5,
 *   filmCoefficient: wattsPerSquareMeterKelvin(15), air: celsius(20), surroundings: celsius(30),
 * }) // => 104.2755
 * ```
 * @since 0.1.0
 */
export function irradiatedTemperature(input: {
  readonly irradiation: WattsPerSquareMeter;
  readonly absorptivity: number;
  readonly emissivity: number;
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
  readonly air: Celsius;
  readonly surroundings: Celsius;
}): Celsius {
  given(input);
  const { irradiation, absorptivity, emissivity, filmCoefficient, air, surroundings } = input;
  checkScaleOrZero("irradiation", irradiation, "W/m²");
  checkBetween("absorptivity", absorptivity, 0, 1);
  checkBetween("emissivity", emissivity, 0, 1);
  checkScale("filmCoefficient", filmCoefficient, "W/(m²·K)");
  checkTemperature("air", air);
  checkTemperature("surroundings", surroundings);
  const taken = absorptivity * irradiation;
  const around = blackBody(surroundings);
  const balance = (t: number): number =>
    taken - filmCoefficient * (t - air) - emissivity * (blackBody(t) - around);
  const low = Math.min(air, surroundings);
  // Above both surroundings the film alone would carry everything away at this temperature.
  const high = Math.max(air, surroundings) + taken / filmCoefficient + 1;
  return bracketedRoot({ evaluate: balance, low: Math.max(low - 1, -273.15), high, tolerance: 1e-11 })
    .root as Celsius;
}

/**
 * Air temperature behind the reading of a probe that also sees walls: reading + emissivity × σ × (reading⁴ −
 * walls⁴)/filmCoefficient. Beside hot elements a bare thermocouple reads high, beside cold walls low.
 * @param input.reading - what the probe shows, °C
 * @param input.walls - temperature of what it sees, °C
 * @param input.emissivity - of the probe's sheath, more than 0, up to 1
 * @param input.filmCoefficient - convection on the probe, W/(m²·K), more than 0
 * @returns air temperature, °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Holman, Heat Transfer, chapter 8 (effect of radiation on temperature measurement, example 8-23)
 * @example
 * ```ts
 * airBehindProbe({
 *   reading: celsius(20), walls: celsius(5), emissivity: 0.9, filmCoefficient: wattsPerSquareMeterKelvin(8.3),
 * }) // => 28.6046
 * ```
 * @since 0.1.0
 */
export function airBehindProbe(input: {
  readonly reading: Celsius;
  readonly walls: Celsius;
  readonly emissivity: number;
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
}): Celsius {
  given(input);
  const { reading, walls, emissivity, filmCoefficient } = input;
  checkTemperature("reading", reading);
  checkTemperature("walls", walls);
  checkEmissivity("emissivity", emissivity);
  checkScale("filmCoefficient", filmCoefficient, "W/(m²·K)");
  const air = reading + (emissivity * (blackBody(reading) - blackBody(walls))) / filmCoefficient;
  if (!(air >= -273.15)) {
    fail({
      code: "inconsistent",
      path: "walls",
      expected: "walls that a probe of this reading can see: the air would be below absolute zero",
      received: walls,
      unit: "°C",
    });
  }
  return air as Celsius;
}

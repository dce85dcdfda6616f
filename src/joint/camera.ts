/** What an infrared instrument reads on a surface it is not set for, and the way back. */
import { type Celsius, checkBetween, fail } from "../quantity/index.ts";
import { checkReadableEmissivity } from "./severity.ts";

const ZERO_CELSIUS = 273.15;

function fourth(path: string, temperature: Celsius): number {
  checkBetween(path, temperature, -ZERO_CELSIUS, 2000, "°C");
  return (temperature + ZERO_CELSIUS) ** 4;
}

/**
 * What a camera or infrared thermometer reads: Tr⁴ = [emissivity·T⁴ − (emissivity −
 * emissivitySet)·Te⁴]/emissivitySet, kelvins.
 *
 * Grey surface, total radiation (T⁴); the band of 8 to 14 µm reads within 0.3 K of it at 60 °C and lower above 100 °C
 * on low emissivity. The instrument is taken to allow for the same reflected temperature.
 * @param input.surface - true temperature of the surface (°C), −273.15 to 2000
 * @param input.emissivity - emissivity of the surface, more than 0 to 1
 * @param input.emissivitySet - emissivity the instrument is set to, more than 0 to 1; 1 for the apparent temperature
 * @param input.reflected - temperature of what the surface reflects, usually the room (°C), −273.15 to 2000
 * @returns reading (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when nothing could radiate so
 *   little
 * @source Stefan–Boltzmann law for a grey opaque surface
 * @example
 * ```ts
 * cameraReading({ surface: celsius(60), emissivity: 0.05, emissivitySet: 0.95, reflected: celsius(25) }) // => 27.1688
 * ```
 * @since 0.1.0
 */
export function cameraReading(input: {
  readonly surface: Celsius;
  readonly emissivity: number;
  readonly emissivitySet: number;
  readonly reflected: Celsius;
}): Celsius {
  const { emissivity, emissivitySet } = input;
  checkBetween("emissivity", emissivity, 0, 1);
  checkBetween("emissivitySet", emissivitySet, 0.01, 1);
  const surface = fourth("surface", input.surface);
  const reflected = fourth("reflected", input.reflected);
  const seen = reflected + (emissivity / emissivitySet) * (surface - reflected);
  if (!(seen >= 0)) {
    // No radiator is colder than nothing: the emissivities and temperatures contradict each other.
    fail({
      code: "inconsistent",
      path: "emissivity",
      expected: "emissivities that leave a reading above absolute zero",
      received: emissivity,
    });
  }
  return (seen ** 0.25 - ZERO_CELSIUS) as Celsius;
}

/**
 * True temperature of a surface from a reading: T⁴ = emissivitySet·(Tr⁴ − Te⁴)/emissivity + Te⁴, kelvins.
 *
 * A surface below 0.1 is refused: the correction would multiply the noise of the reading tenfold and more.
 * @param input.reading - what the instrument shows (°C), −273.15 to 2000
 * @param input.emissivitySet - emissivity it is set to, 0.01 to 1
 * @param input.emissivity - emissivity of the surface, 0.1 to 1
 * @param input.reflected - temperature of what the surface reflects (°C), −273.15 to 2000
 * @returns surface temperature (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `not-identifiable` below an emissivity of 0.1
 * @source as {@link cameraReading}
 * @example
 * ```ts
 * surfaceFromReading({ reading: celsius(60), emissivitySet: 0.95, emissivity: 0.6, reflected: celsius(25) }) // => 76.19852
 * ```
 * @since 0.1.0
 */
export function surfaceFromReading(input: {
  readonly reading: Celsius;
  readonly emissivitySet: number;
  readonly emissivity: number;
  readonly reflected: Celsius;
}): Celsius {
  checkBetween("emissivitySet", input.emissivitySet, 0.01, 1);
  checkReadableEmissivity("emissivity", input.emissivity);
  const { emissivitySet: emissivity, emissivity: emissivitySet, reflected } = input;
  return cameraReading({ surface: input.reading, emissivity, emissivitySet, reflected });
}

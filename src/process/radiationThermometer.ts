/** Reading an infrared thermometer: what it would show, and what is behind what it shows. */
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Celsius,
  fail,
  given,
  type Kelvins,
  toAbsoluteKelvins,
  type Warning,
} from "../quantity/index.ts";
import { checkEmissivity, SECOND_RADIATION } from "./radiationLaw.ts";
import { checkTemperature } from "./scale.ts";

/** Below this the reading is mostly the surroundings: no correction is worth its digits. */
const LOWEST_EMISSIVITY = 0.1;
/** Ends of the long-wave band of common instruments, m. */
const BAND = [8e-6, 14e-6] as const;
/** Range in which a temperature behind a reading is looked for, K. */
const RANGE = [1, 6000] as const;

/** Share of black-body radiation below a wavelength: 15/π⁴ Σ e^(−nx)(x³/n + 3x²/n² + 6x/n³ + 6/n⁴), x = C2/(λT). */
function shareBelow(wavelength: number, kelvin: number): number {
  const x = SECOND_RADIATION / (wavelength * kelvin);
  let sum = 0;
  for (let n = 1; n <= 1000; n += 1) {
    const term = Math.exp(-n * x) * (x ** 3 / n + (3 * x * x) / n ** 2 + (6 * x) / n ** 3 + 6 / n ** 4);
    sum += term;
    if (term <= sum * 1e-17) break;
  }
  return (15 / Math.PI ** 4) * sum;
}

/** What a detector receives from a black surface, in arbitrary units; rises with temperature. */
type Detector = (kelvin: number) => number;
const total: Detector = (kelvin) => kelvin ** 4;
const longWave: Detector = (kelvin) =>
  kelvin ** 4 * (shareBelow(BAND[1], kelvin) - shareBelow(BAND[0], kelvin));

/** Temperature at which a detector receives a signal, °C. A signal that no temperature gives contradicts the input. */
function temperatureOf(
  detector: Detector,
  signal: number,
  path: string,
  received: Celsius,
  expected: string,
): Celsius {
  if (!(signal > detector(RANGE[0]) && signal < detector(RANGE[1]))) {
    return fail({ code: "inconsistent", path, expected, received, unit: "°C" });
  }
  const kelvin =
    detector === total
      ? signal ** 0.25
      : bracketedRoot({
          evaluate: (k) => detector(k) - signal,
          low: RANGE[0],
          high: RANGE[1],
          tolerance: 1e-11,
        }).root;
  return (kelvin - 273.15) as Celsius;
}

/**
 * Temperature by both detector models, because an instrument's data sheet seldom says more than its band.
 * @since 0.1.0
 */
export interface RadiationTemperature {
  /** For a detector of all wavelengths (T⁴), °C. */
  readonly totalRadiation: Celsius;
  /** For a detector of 8 µm to 14 µm: the common hand-held instrument and thermal camera, °C. */
  readonly band8To14: Celsius;
  /** How far the two are apart, K. */
  readonly spread: Kelvins;
  /** What makes the figure weak. */
  readonly warnings: readonly Warning[];
}

function checkAll(input: {
  readonly emissivity: number;
  readonly emissivitySet: number;
  readonly reflected: Celsius;
}): void {
  checkEmissivity("emissivity", input.emissivity);
  checkEmissivity("emissivitySet", input.emissivitySet);
  checkTemperature("reflected", input.reflected);
}

/** Below this the correction multiplies every error of reading and mirrored temperature by more than five. */
const DOUBTFUL_EMISSIVITY = 0.2;
/** Nearer than this to what it mirrors, an object reads alike at any emissivity, K. */
const NEAR = 10;

function warningsOf(emissivity: number, seen: Celsius, reflected: Celsius): readonly Warning[] {
  const warnings: Warning[] = [];
  const source = "common practice";
  if (emissivity < 0.5) {
    const doubtful = emissivity < DOUBTFUL_EMISSIVITY;
    warnings.push({
      code: "approximate",
      path: "emissivity",
      message: doubtful
        ? `At emissivity ${emissivity} the instrument sees mostly mirrored surroundings: an error of the signal counts ${(1 / emissivity).toFixed(0)} times. Take no decision from this figure; paint or tape a spot, or measure by contact.`
        : "At a low emissivity a small error of it moves the temperature a lot: paint or tape a spot, or look into a bolt hole.",
      limit: doubtful ? DOUBTFUL_EMISSIVITY : 0.5,
      unit: "",
      source,
    });
  }
  if (emissivity < 1 && Math.abs(seen - reflected) < NEAR) {
    warnings.push({
      code: "approximate",
      path: "reflected",
      message: `Object and what it mirrors are within ${NEAR} K of each other: any emissivity would give about this reading, so it neither proves the emissivity nor a small rise. Load the circuit more, or shield the hot surroundings.`,
      limit: NEAR,
      unit: "K",
      source,
    });
  }
  return warnings;
}

function answer(
  byModel: (detector: Detector) => Celsius,
  warnings: readonly Warning[],
): RadiationTemperature {
  const [totalRadiation, band8To14] = [byModel(total), byModel(longWave)];
  return {
    totalRadiation,
    band8To14,
    spread: Math.abs(totalRadiation - band8To14) as Kelvins,
    warnings,
  };
}

/**
 * Surface temperature behind an infrared reading taken at the wrong emissivity: ε·E(T) = εset·E(reading) + (1 − εset)·E(reflected) −
 * (1 − ε)·E(reflected), where E is T⁴ for all wavelengths or Planck's law between 8 µm and 14 µm.
 *
 * The instrument must have been set to the same reflected temperature. Gray surface, no air absorption, spot filled by
 * the surface.
 * @param input.reading - what the instrument shows, °C
 * @param input.emissivitySet - emissivity it was set to, more than 0, up to 1; 0.95 on most fixed ones
 * @param input.emissivity - emissivity of the surface, 0.1 to 1: below 0.1 nothing useful can be said
 * @param input.reflected - temperature of what the surface mirrors, by reading on crumpled foil, °C
 * @returns the temperature by both models, and how far they are apart
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` with the reason below emissivity 0.1; `inconsistent` when
 *   the surface would have to radiate less than nothing
 * @source Planck's law and the Stefan-Boltzmann law; measurement equation of radiation thermometry, as in thermal-camera manuals
 * @example
 * ```ts
 * const { totalRadiation, band8To14 } = surfaceBehindReading({
 *   reading: celsius(60), emissivitySet: 0.95, emissivity: 0.6, reflected: celsius(25),
 * });
 * [totalRadiation, band8To14] // => [76.1985, 76.8908]
 * ```
 * @since 0.1.0
 */
export function surfaceBehindReading(input: {
  readonly reading: Celsius;
  readonly emissivitySet: number;
  readonly emissivity: number;
  readonly reflected: Celsius;
}): RadiationTemperature {
  given(input);
  const { reading, emissivitySet, emissivity, reflected } = input;
  checkAll(input);
  checkTemperature("reading", reading);
  if (!(emissivity >= LOWEST_EMISSIVITY)) {
    fail({
      code: "out-of-range",
      path: "emissivity",
      expected: `${LOWEST_EMISSIVITY} or more: below it the reading is mostly mirrored surroundings; paint or tape a spot (emissivity about 0.95), or measure by contact`,
      received: emissivity,
    });
  }
  const [read, mirrored] = [toAbsoluteKelvins(reading), toAbsoluteKelvins(reflected)];
  const warnings = warningsOf(emissivity, reading, reflected);
  return answer((detector) => {
    const signal =
      (emissivitySet * detector(read) + (emissivity - emissivitySet) * detector(mirrored)) / emissivity;
    const expected = `a reading that a surface of emissivity ${emissivity} can give where it mirrors ${reflected}`;
    return temperatureOf(detector, signal, "reading", reading, expected);
  }, warnings);
}

/**
 * What an infrared thermometer set to one emissivity shows on a surface of another: the same equation the other way.
 * @param input.temperature - of the surface, °C
 * @param input.emissivity - of the surface, more than 0, up to 1
 * @param input.emissivitySet - emissivity the instrument is set to, more than 0, up to 1
 * @param input.reflected - temperature of what the surface mirrors, for which the instrument is set too, °C
 * @returns the reading by both models, and how far they are apart
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when no reading could match
 * @source Planck's law and the Stefan-Boltzmann law; measurement equation of radiation thermometry, as in thermal-camera manuals
 * @example
 * ```ts
 * readingOfSurface({
 *   temperature: celsius(120), emissivity: 0.05, emissivitySet: 0.95, reflected: celsius(25),
 * }).band8To14 // => 31.9814
 * ```
 * @since 0.1.0
 */
export function readingOfSurface(input: {
  readonly temperature: Celsius;
  readonly emissivity: number;
  readonly emissivitySet: number;
  readonly reflected: Celsius;
}): RadiationTemperature {
  given(input);
  const { temperature, emissivity, emissivitySet, reflected } = input;
  checkAll(input);
  checkTemperature("temperature", temperature);
  const [true_, mirrored] = [toAbsoluteKelvins(temperature), toAbsoluteKelvins(reflected)];
  const warnings = warningsOf(emissivity, temperature, reflected);
  return answer((detector) => {
    const signal =
      (emissivity * detector(true_) + (emissivitySet - emissivity) * detector(mirrored)) / emissivitySet;
    const expected = `a surface that an instrument set to ${emissivitySet} can show where it mirrors ${reflected}`;
    return temperatureOf(detector, signal, "temperature", temperature, expected);
  }, warnings);
}

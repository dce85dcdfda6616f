/** Grey radiation of an element to its surroundings, and the textbook model of radiating efficiency. */
import {
  type Celsius,
  checkBetween,
  checkFinite,
  checkNonNegative,
  checkPositive,
  fail,
  finiteResult,
  given,
  STEFAN_BOLTZMANN,
  type WattsPerSquareMeter,
  ZERO_CELSIUS,
} from "../quantity/index.ts";

/** What radiation depends on besides the two temperatures. */
export interface RadiantSurface {
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly stefanBoltzmann?: number;
  readonly zeroCelsius?: number;
}

/** Effective factor σ·K·ε, checked. */
function strength(input: RadiantSurface): number {
  const { emissivity, radiatingEfficiency, stefanBoltzmann = STEFAN_BOLTZMANN } = input;
  checkPositive("emissivity", emissivity);
  checkBetween("emissivity", emissivity, 0, 1);
  checkPositive("radiatingEfficiency", radiatingEfficiency);
  checkBetween("radiatingEfficiency", radiatingEfficiency, 0, 1);
  checkPositive("stefanBoltzmann", stefanBoltzmann, "W/(m²·K⁴)");
  return stefanBoltzmann * radiatingEfficiency * emissivity;
}

/** A temperature in kelvins, checked against absolute zero, which lies where the caller puts 0 °C: textbooks round it. */
export function absolute(path: string, temperature: Celsius, zeroCelsius: number): number {
  checkFinite(path, temperature, "°C");
  checkPositive("zeroCelsius", zeroCelsius, "K");
  const kelvins = temperature + zeroCelsius;
  if (kelvins >= 0) return kelvins;
  return fail({
    code: "out-of-range",
    path,
    expected: `${-zeroCelsius} or more`,
    received: temperature,
    unit: "°C",
  });
}

/**
 * Surface load that an element radiates: p = σ·radiatingEfficiency·emissivity·(T⁴ − Tₛ⁴), temperatures absolute.
 *
 * Grey surfaces in large surroundings. Air is left out: an element that must lose the load by radiation alone comes out
 * hotter than it runs. Textbooks use σ = 5.72e-8 and 273; pass those to follow a book.
 * @param input.temperature - surface temperature of the element, by pyrometer or thermocouple, °C
 * @param input.surroundingsTemperature - temperature of what the element sees: charge, walls, duct, °C
 * @param input.emissivity - of the element surface, oxidized NiCr about 0.88, FeCrAl about 0.70, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely: 1 for one straight free wire, 0.5 to 0.8 for
 *   coils and strips in a former, more than 0 to 1
 * @param input.stefanBoltzmann - σ, W/(m²·K⁴); left out, {@link STEFAN_BOLTZMANN}
 * @param input.zeroCelsius - 0 °C in kelvins; left out, {@link ZERO_CELSIUS}
 * @returns net radiated heat per area, W/m²; negative when the surroundings are hotter
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Stefan–Boltzmann law; J. B. Gupta et al., Utilization of Electrical Energy and Traction, ex. 1.2
 * @example
 * ```ts
 * radiantSurfaceLoad({
 *   temperature: celsius(1000),
 *   surroundingsTemperature: celsius(600),
 *   emissivity: 0.9,
 *   radiatingEfficiency: 0.6,
 *   stefanBoltzmann: 5.72e-8,
 *   zeroCelsius: 273,
 * }) // => 63174.4
 * ```
 * @since 0.1.0
 */
export function radiantSurfaceLoad(input: {
  readonly temperature: Celsius;
  readonly surroundingsTemperature: Celsius;
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly stefanBoltzmann?: number;
  readonly zeroCelsius?: number;
}): WattsPerSquareMeter {
  given(input);
  const { zeroCelsius = ZERO_CELSIUS } = input;
  const factor = strength(input);
  const hot = absolute("temperature", input.temperature, zeroCelsius);
  const cold = absolute("surroundingsTemperature", input.surroundingsTemperature, zeroCelsius);
  // (a² + b²)(a + b)(a − b) keeps its digits where the two are close.
  return finiteResult(factor * (hot * hot + cold * cold) * (hot + cold) * (hot - cold), "W/m²");
}

/**
 * Temperature at which an element radiates its whole surface load: T = (p/(σ·radiatingEfficiency·emissivity) + Tₛ⁴)^(1/4).
 *
 * With the surface load of another case it answers "the same heat into a colder charge". Air is left out: this is the
 * upper bound for a straight wire; a coil sees itself, which the radiating efficiency stands for.
 * @param input.surfaceLoad - heat per area of element surface, W/m², 0 or more
 * @param input.surroundingsTemperature - temperature of what the element sees: charge, walls, duct, °C
 * @param input.emissivity - of the element surface, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely, more than 0 to 1
 * @param input.stefanBoltzmann - σ, W/(m²·K⁴); left out, {@link STEFAN_BOLTZMANN}
 * @param input.zeroCelsius - 0 °C in kelvins; left out, {@link ZERO_CELSIUS}
 * @returns surface temperature of the element, °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Stefan–Boltzmann law
 * @example
 * ```ts
 * radiantTemperature({
 *   surfaceLoad: wattsPerSquareCentimeter(4),
 *   surroundingsTemperature: celsius(20),
 *   emissivity: 0.88,
 *   radiatingEfficiency: 1,
 * }) // => 675.2
 * ```
 * @since 0.1.0
 */
export function radiantTemperature(input: {
  readonly surfaceLoad: WattsPerSquareMeter;
  readonly surroundingsTemperature: Celsius;
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly stefanBoltzmann?: number;
  readonly zeroCelsius?: number;
}): Celsius {
  given(input);
  const { surfaceLoad, zeroCelsius = ZERO_CELSIUS } = input;
  checkNonNegative("surfaceLoad", surfaceLoad, "W/m²");
  const factor = strength(input);
  const cold = absolute("surroundingsTemperature", input.surroundingsTemperature, zeroCelsius);
  return finiteResult((surfaceLoad / factor + cold ** 4) ** 0.25 - zeroCelsius, "°C");
}

/**
 * Temperature of an element on another voltage when it only radiates and its surroundings are cold: T₂ = T₁·√(V₂/V₁), absolute.
 *
 * The crude textbook answer for a change of connection; surroundings, air and the change of resistance are left out.
 * @param input.temperature - temperature of the element on its present voltage, °C, above absolute zero
 * @param input.voltageRatio - new voltage across the element over the present one, more than 0
 * @param input.zeroCelsius - 0 °C in kelvins; left out, {@link ZERO_CELSIUS}
 * @returns temperature on the new voltage, °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source C. L. Wadhwa, Generation, Distribution and Utilization of Electrical Energy, chapter 5, ex. 2
 * @example
 * ```ts
 * radiantTemperatureAtVoltage({ temperature: celsius(1125), voltageRatio: 0.5, zeroCelsius: 273 }) // => 715.5
 * ```
 * @since 0.1.0
 */
export function radiantTemperatureAtVoltage(input: {
  readonly temperature: Celsius;
  readonly voltageRatio: number;
  readonly zeroCelsius?: number;
}): Celsius {
  given(input);
  const { temperature, voltageRatio, zeroCelsius = ZERO_CELSIUS } = input;
  checkPositive("voltageRatio", voltageRatio);
  const hot = absolute("temperature", temperature, zeroCelsius);
  return finiteResult(hot * Math.sqrt(voltageRatio) - zeroCelsius, "°C");
}

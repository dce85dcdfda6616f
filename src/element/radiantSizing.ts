/** The textbook design of furnace elements: wire or strip that radiates a power to a hot charge. */
import {
  type BranchVolts,
  type Celsius,
  checkFinite,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Meters,
  type OhmMeters,
  type Watts,
  type WattsPerSquareMeter,
  ZERO_CELSIUS,
} from "../quantity/index.ts";
import { absolute, radiantSurfaceLoad } from "./radiation.ts";
import { stripWidthForThickness } from "./strip.ts";
import { smallestWireDiameter } from "./wire.ts";

/** Heat flows from hot to cold: an element no hotter than its charge cannot heat it. */
function checkHotter(path: string, element: Celsius, charge: Celsius, zeroCelsius = ZERO_CELSIUS): void {
  checkFinite(path, element, "°C");
  absolute("chargeTemperature", charge, zeroCelsius);
  if (element > charge) return;
  const expected = `more than the charge temperature, ${charge}`;
  fail({ code: "inconsistent", path, expected, received: element, unit: "°C" });
}

/**
 * A round wire that radiates a power.
 * @since 0.1.0
 */
export interface RadiantWire {
  /** Heat per area of wire surface, W/m². */
  readonly surfaceLoad: WattsPerSquareMeter;
  /** Diameter, m. */
  readonly diameter: Meters;
  /** Length, m. */
  readonly length: Meters;
}

/**
 * Round wire that radiates a power at a temperature: surface load p from {@link radiantSurfaceLoad}, then π·d·l·p = power and
 * ρ·l/(π·d²/4) = voltage²/power.
 *
 * The textbook model: radiation only, uniform temperature. Nothing here checks that the alloy stands the temperature.
 * @param input.power - heat of the element, W, more than 0
 * @param input.voltage - voltage across the element (in star the line voltage over √3), V, more than 0
 * @param input.resistivity - resistivity at working temperature, Ω·m, more than 0
 * @param input.wireTemperature - temperature the wire runs at, °C, above that of the charge
 * @param input.chargeTemperature - temperature of the charge it heats, °C
 * @param input.emissivity - of the wire surface, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely, more than 0 to 1
 * @param input.stefanBoltzmann - σ, W/(m²·K⁴); left out, `STEFAN_BOLTZMANN` of `quantity`; textbooks 5.72e-8
 * @param input.zeroCelsius - 0 °C in kelvins; left out, `ZERO_CELSIUS`; textbooks 273
 * @returns surface load, diameter and length
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the wire is not the hotter one
 * @source B. L. Theraja, A Textbook of Electrical Technology, vol. III, ex. 47.1; A. Chakrabarti et al., part IV ex. 2.1
 * @example
 * ```ts
 * radiantWire({
 *   power: watts(16_000),
 *   voltage: volts(220),
 *   resistivity: microohmMeters(1.09),
 *   wireTemperature: celsius(1170),
 *   chargeTemperature: celsius(500),
 *   emissivity: 0.9,
 *   radiatingEfficiency: 0.57,
 *   stefanBoltzmann: 5.72e-8,
 *   zeroCelsius: 273,
 * }) // => { surfaceLoad: 116750, diameter: 0.002715, length: 16.067 }
 * ```
 * @since 0.1.0
 */
export function radiantWire(input: {
  readonly power: Watts;
  readonly voltage: BranchVolts;
  readonly resistivity: OhmMeters;
  readonly wireTemperature: Celsius;
  readonly chargeTemperature: Celsius;
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly stefanBoltzmann?: number;
  readonly zeroCelsius?: number;
}): RadiantWire {
  given(input);
  const { power, voltage, resistivity, wireTemperature, chargeTemperature, ...surface } = input;
  checkPositive("power", power, "W");
  checkPositive("voltage", voltage, "V");
  checkHotter("wireTemperature", wireTemperature, chargeTemperature, input.zeroCelsius);
  const surfaceLoad = radiantSurfaceLoad({
    ...surface,
    temperature: wireTemperature,
    surroundingsTemperature: chargeTemperature,
  });
  const resistance = finiteResult<never>((voltage / power) * voltage, "Ω");
  const diameter = smallestWireDiameter({ power, resistance, resistivity, surfaceLoad });
  return { surfaceLoad, diameter, length: finiteResult(power / (Math.PI * diameter * surfaceLoad), "m") };
}

/**
 * A strip that radiates a power.
 * @since 0.1.0
 */
export interface RadiantStrip {
  /** Heat per area of the two wide faces, W/m². */
  readonly surfaceLoad: WattsPerSquareMeter;
  /** Width, m. */
  readonly width: Meters;
  /** Thickness, m. */
  readonly thickness: Meters;
  /** Length, m. */
  readonly length: Meters;
}

/**
 * Strip of a given thickness that radiates a power at a temperature: surface load p from {@link radiantSurfaceLoad}, then
 * 2·w·l·p = power and ρ·l/(w·t) = voltage²/power.
 *
 * The textbook model: radiation only, the two wide faces only, sheared edges.
 * @param input.power - heat of the element, W, more than 0
 * @param input.voltage - voltage across the element (in star the line voltage over √3), V, more than 0
 * @param input.resistivity - resistivity at working temperature, Ω·m, more than 0
 * @param input.thickness - thickness of the strip, m, more than 0
 * @param input.stripTemperature - temperature the strip runs at, °C, above that of the charge
 * @param input.chargeTemperature - temperature of the charge it heats, °C
 * @param input.emissivity - of the strip surface, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely, more than 0 to 1
 * @param input.stefanBoltzmann - σ, W/(m²·K⁴); left out, `STEFAN_BOLTZMANN` of `quantity`; textbooks 5.72e-8
 * @param input.zeroCelsius - 0 °C in kelvins; left out, `ZERO_CELSIUS`; textbooks 273
 * @returns surface load, width, thickness and length
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the strip is not the hotter one
 * @source B. L. Theraja, A Textbook of Electrical Technology, vol. III, ex. 47.2; A. Chakrabarti et al., part IV ex. 2.2
 * @example
 * ```ts
 * radiantStrip({
 *   power: watts(15_000),
 *   voltage: volts(220),
 *   resistivity: microohmMeters(1.016),
 *   thickness: millimeters(0.25),
 *   stripTemperature: celsius(1000),
 *   chargeTemperature: celsius(600),
 *   emissivity: 0.9,
 *   radiatingEfficiency: 0.6,
 *   stefanBoltzmann: 5.72e-8,
 *   zeroCelsius: 273,
 * }) // => { surfaceLoad: 63174.4, width: 0.012228, thickness: 0.00025, length: 9.709 }
 * ```
 * @since 0.1.0
 */
export function radiantStrip(input: {
  readonly power: Watts;
  readonly voltage: BranchVolts;
  readonly resistivity: OhmMeters;
  readonly thickness: Meters;
  readonly stripTemperature: Celsius;
  readonly chargeTemperature: Celsius;
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly stefanBoltzmann?: number;
  readonly zeroCelsius?: number;
}): RadiantStrip {
  given(input);
  const { power, voltage, resistivity, thickness, stripTemperature, chargeTemperature, ...surface } = input;
  checkHotter("stripTemperature", stripTemperature, chargeTemperature, input.zeroCelsius);
  const surfaceLoad = radiantSurfaceLoad({
    ...surface,
    temperature: stripTemperature,
    surroundingsTemperature: chargeTemperature,
  });
  const duty = { power, voltage, resistivity, temperatureFactor: 1, surfaceLoad, thickness } as const;
  return { surfaceLoad, ...stripWidthForThickness({ ...duty, faces: "two", edge: "sheared" }) };
}

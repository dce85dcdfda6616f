/** Inside the element: how much hotter the core of a wire is than the surface of the wire or of the sheath. */
import {
  type Celsius,
  checkFinite,
  checkPositive,
  fail,
  finiteResult,
  given,
  type JoulesPerKilogramKelvin,
  type KelvinsPerSecond,
  type KilogramsPerCubicMeter,
  type Meters,
  type Seconds,
  type Watts,
  type WattsPerMeterKelvin,
  type WattsPerSquareMeter,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";

/**
 * Temperature on the axis of a wire: T = surfaceTemperature + power/(4·π·conductivity·length).
 *
 * Heat made evenly over the section and carried off evenly around it; conductivity constant.
 * @param input.surfaceTemperature - temperature of the wire surface, °C
 * @param input.power - heat of the wire, W, more than 0
 * @param input.length - length of the wire, m, more than 0
 * @param input.conductivity - thermal conductivity of the alloy near that temperature, from its dataset, W/(m·K), more than 0
 * @returns temperature on the axis, °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Y. A. Çengel, Heat and Mass Transfer, ex. 2-17; conduction with heat generation in a cylinder
 * @example
 * ```ts
 * wireCoreTemperature({
 *   surfaceTemperature: celsius(105),
 *   power: watts(2000),
 *   length: meters(0.5),
 *   conductivity: wattsPerMeterKelvin(15),
 * }) // => 126.2
 * ```
 * @since 0.1.0
 */
export function wireCoreTemperature(input: {
  readonly surfaceTemperature: Celsius;
  readonly power: Watts;
  readonly length: Meters;
  readonly conductivity: WattsPerMeterKelvin;
}): Celsius {
  given(input);
  const { surfaceTemperature, power, length, conductivity } = input;
  checkFinite("surfaceTemperature", surfaceTemperature, "°C");
  checkPositive("power", power, "W");
  checkPositive("length", length, "m");
  checkPositive("conductivity", conductivity, "W/(m·K)");
  return finiteResult(surfaceTemperature + power / (4 * Math.PI * conductivity * length), "°C");
}

/**
 * Temperatures inside a sheathed element.
 * @since 0.1.0
 */
export interface SheathedWire {
  /** Where the wire meets the insulation, °C. */
  readonly wireSurfaceTemperature: Celsius;
  /** On the axis of the wire, °C. */
  readonly wireCoreTemperature: Celsius;
}

/**
 * Temperatures of a straight wire in a round sheath: wire surface T = outerTemperature + power/(2·π·k·length)·ln(outer/wire diameter),
 * then its axis as {@link wireCoreTemperature}.
 *
 * The wire is straight and centered. In a coiled element take the coil for the wire only as a rough bound, and remember that
 * voids in the filling cost far more than this.
 * @param input.outerTemperature - temperature at `outerDiameter`, °C
 * @param input.power - heat over `length`, W, more than 0
 * @param input.length - heated length, m, more than 0
 * @param input.wireDiameter - diameter of the wire, m, more than 0
 * @param input.outerDiameter - diameter over the filling, m, more than `wireDiameter`
 * @param input.wireConductivity - thermal conductivity of the wire, W/(m·K), more than 0
 * @param input.fillingConductivity - thermal conductivity of the filling as compacted, W/(m·K), more than 0
 * @returns temperature of the wire surface and of its axis
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the sheath is no wider than the wire
 * @source Y. A. Çengel, Heat and Mass Transfer, ex. 2-19; conduction through a cylindrical shell
 * @example
 * ```ts
 * sheathedWireTemperatures({
 *   outerTemperature: celsius(45),
 *   power: watts(628.3185),
 *   length: meters(1),
 *   wireDiameter: millimeters(4),
 *   outerDiameter: millimeters(14),
 *   wireConductivity: wattsPerMeterKelvin(15),
 *   fillingConductivity: wattsPerMeterKelvin(1.2),
 * }) // => { wireSurfaceTemperature: 149.4, wireCoreTemperature: 152.7 }
 * ```
 * @since 0.1.0
 */
export function sheathedWireTemperatures(input: {
  readonly outerTemperature: Celsius;
  readonly power: Watts;
  readonly length: Meters;
  readonly wireDiameter: Meters;
  readonly outerDiameter: Meters;
  readonly wireConductivity: WattsPerMeterKelvin;
  readonly fillingConductivity: WattsPerMeterKelvin;
}): SheathedWire {
  given(input);
  const { outerTemperature, power, length, wireDiameter, outerDiameter, fillingConductivity } = input;
  checkFinite("outerTemperature", outerTemperature, "°C");
  checkPositive("power", power, "W");
  checkPositive("length", length, "m");
  checkPositive("wireDiameter", wireDiameter, "m");
  checkPositive("outerDiameter", outerDiameter, "m");
  checkPositive("wireConductivity", input.wireConductivity, "W/(m·K)");
  checkPositive("fillingConductivity", fillingConductivity, "W/(m·K)");
  if (outerDiameter <= wireDiameter) {
    const expected = `more than the wire diameter, ${wireDiameter}`;
    fail({ code: "inconsistent", path: "outerDiameter", expected, received: outerDiameter, unit: "m" });
  }
  const drop =
    (power / (2 * Math.PI * fillingConductivity * length)) * Math.log(outerDiameter / wireDiameter);
  const surfaceTemperature = finiteResult<Celsius>(outerTemperature + drop, "°C");
  const conductivity = input.wireConductivity;
  return {
    wireSurfaceTemperature: surfaceTemperature,
    wireCoreTemperature: wireCoreTemperature({ surfaceTemperature, power, length, conductivity }),
  };
}

/**
 * How fast a bare wire heats before it loses any: dT/dt = 4·surfaceLoad/(density·specificHeat·diameter).
 * @param input.surfaceLoad - heat per area of wire surface, W/m², more than 0
 * @param input.diameter - diameter of the wire, m, more than 0
 * @param input.density - density of the alloy, from its dataset, kg/m³, more than 0
 * @param input.specificHeat - specific heat of the alloy, from its dataset, J/(kg·K), more than 0
 * @returns rise per time at switch-on, K/s; it counts in seconds, so an interlock on lost air flow must act within seconds
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source heat capacity of a cylinder; definition
 * @example
 * ```ts
 * wireHeatingRate({
 *   surfaceLoad: wattsPerSquareCentimeter(9),
 *   diameter: millimeters(1.6),
 *   density: kilogramsPerCubicMeter(8400),
 *   specificHeat: joulesPerKilogramKelvin(450),
 * }) // => 59.52381
 * ```
 * @since 0.1.0
 */
export function wireHeatingRate(input: {
  readonly surfaceLoad: WattsPerSquareMeter;
  readonly diameter: Meters;
  readonly density: KilogramsPerCubicMeter;
  readonly specificHeat: JoulesPerKilogramKelvin;
}): KelvinsPerSecond {
  given(input);
  checkPositive("surfaceLoad", input.surfaceLoad, "W/m²");
  return finiteResult(input.surfaceLoad / capacityPerSurface(input), "K/s");
}

/**
 * Time constant of a bare wire: density·specificHeat·diameter/(4·filmCoefficient), film coefficient with radiation counted in.
 * @param input.filmCoefficient - heat lost per area and kelvin of rise, radiation included, W/(m²·K), more than 0
 * @param input.diameter - diameter of the wire, m, more than 0
 * @param input.density - density of the alloy, from its dataset, kg/m³, more than 0
 * @param input.specificHeat - specific heat of the alloy, from its dataset, J/(kg·K), more than 0
 * @returns time to 63 % of the final rise, s
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source lumped body of first order; definition
 * @example
 * ```ts
 * wireTimeConstant({
 *   filmCoefficient: wattsPerSquareMeterKelvin(200),
 *   diameter: millimeters(1.6),
 *   density: kilogramsPerCubicMeter(8400),
 *   specificHeat: joulesPerKilogramKelvin(450),
 * }) // => 7.56
 * ```
 * @since 0.1.0
 */
export function wireTimeConstant(input: {
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
  readonly diameter: Meters;
  readonly density: KilogramsPerCubicMeter;
  readonly specificHeat: JoulesPerKilogramKelvin;
}): Seconds {
  given(input);
  checkPositive("filmCoefficient", input.filmCoefficient, "W/(m²·K)");
  return finiteResult(capacityPerSurface(input) / input.filmCoefficient, "s");
}

/** Heat capacity of a wire over its surface, J/(m²·K). */
function capacityPerSurface(input: {
  readonly diameter: Meters;
  readonly density: KilogramsPerCubicMeter;
  readonly specificHeat: JoulesPerKilogramKelvin;
}): number {
  checkPositive("diameter", input.diameter, "m");
  checkPositive("density", input.density, "kg/m³");
  checkPositive("specificHeat", input.specificHeat, "J/(kg·K)");
  return (input.density * input.specificHeat * input.diameter) / 4;
}

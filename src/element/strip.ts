/** Strip and ribbon: section, surface load, and the strip that a surface-load limit asks for. */
import {
  type BranchVolts,
  checkMeasurable,
  checkOneOf,
  checkPositive,
  finiteResult,
  given,
  type Meters,
  type OhmMeters,
  type SquareMeters,
  type Watts,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";

/**
 * Which faces of a strip count as radiating surface: all `four`, or the `two` wide ones (the textbook model).
 * @since 0.1.0
 */
export type StripFaces = "two" | "four";

/**
 * How the edges of a strip were made: `sheared` square from sheet, or `rolled` round from wire.
 * @since 0.1.0
 */
export type StripEdge = "sheared" | "rolled";

/** Section of rolled ribbon over width times thickness. */
const ROLLED_SECTION = 0.92;

function fillOf(edge: StripEdge): number {
  return checkOneOf("edge", edge, ["sheared", "rolled"]) === "rolled" ? ROLLED_SECTION : 1;
}

/** Surface per length over width, less the part that the edges add. */
function edgesOf(faces: StripFaces): 0 | 1 {
  return checkOneOf("faces", faces, ["two", "four"]) === "four" ? 1 : 0;
}

/**
 * Cross-section of a strip: width·thickness when sheared, 0.92·width·thickness when rolled.
 * @param input.width - width of the strip, by micrometer, m, more than 0
 * @param input.thickness - thickness of the strip, by micrometer, m, more than 0
 * @param input.edge - `sheared` or `rolled`; the rolled figure is a rule of thumb to about 1 %
 * @returns area of metal, m²
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source resistance-alloy maker A, appliance alloys handbook (2003), p. 71, eq. 15
 * @example
 * ```ts
 * stripSection({ width: millimeters(10), thickness: millimeters(1), edge: "rolled" }) // => 0.0000092
 * ```
 * @since 0.1.0
 */
export function stripSection(input: {
  readonly width: Meters;
  readonly thickness: Meters;
  readonly edge: StripEdge;
}): SquareMeters {
  given(input);
  checkPositive("width", input.width, "m");
  checkPositive("thickness", input.thickness, "m");
  return finiteResult(fillOf(input.edge) * input.width * input.thickness, "m²");
}

/**
 * Surface load of a strip: p = power/(2·(width + thickness)·length) on four faces, power/(2·width·length) on two.
 * @param input.power - heat of the element, W, more than 0
 * @param input.width - width of the strip, m, more than 0
 * @param input.thickness - thickness of the strip, m, more than 0; not used with two faces
 * @param input.length - length between the terminals, m, more than 0
 * @param input.faces - `four` or `two`; they part company when the strip is not thin against its width
 * @returns heat per area of the faces counted, W/m²
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source definition of surface load; two faces as in textbooks of electric heating
 * @example
 * ```ts
 * stripSurfaceLoad({
 *   power: watts(10_000),
 *   width: millimeters(9.2),
 *   thickness: millimeters(1.15),
 *   length: meters(46.01),
 *   faces: "four",
 * }) // => 10499.7
 * ```
 * @since 0.1.0
 */
export function stripSurfaceLoad(input: {
  readonly power: Watts;
  readonly width: Meters;
  readonly thickness: Meters;
  readonly length: Meters;
  readonly faces: StripFaces;
}): WattsPerSquareMeter {
  given(input);
  const { power, width, thickness, length } = input;
  checkPositive("power", power, "W");
  checkPositive("width", width, "m");
  checkPositive("thickness", thickness, "m");
  checkPositive("length", length, "m");
  return finiteResult(power / (2 * (width + edgesOf(input.faces) * thickness) * length), "W/m²");
}

/**
 * A strip found for a surface load.
 * @since 0.1.0
 */
export interface StripChoice {
  /** Width, m. */
  readonly width: Meters;
  /** Thickness, m. */
  readonly thickness: Meters;
  /** Length between the terminals, m. */
  readonly length: Meters;
}

interface StripDuty {
  readonly power: Watts;
  readonly voltage: BranchVolts;
  readonly resistivity: OhmMeters;
  readonly temperatureFactor: number;
  readonly surfaceLoad: WattsPerSquareMeter;
  readonly faces: StripFaces;
  readonly edge: StripEdge;
}

/** Width·thickness·(surface per length)/2 that the duty asks for: P²·ρ·Ct/(2·p·V²·fill), m³. */
function dutyOf(input: StripDuty): number {
  checkPositive("power", input.power, "W");
  checkPositive("voltage", input.voltage, "V");
  checkPositive("resistivity", input.resistivity, "Ω·m");
  checkPositive("temperatureFactor", input.temperatureFactor);
  checkPositive("surfaceLoad", input.surfaceLoad, "W/m²");
  const perVolt = input.power / input.voltage;
  const hotResistivity = input.resistivity * input.temperatureFactor;
  return (perVolt * perVolt * hotResistivity) / (2 * input.surfaceLoad * fillOf(input.edge));
}

function choice(input: StripDuty, width: number, thickness: number): StripChoice {
  const half = width + edgesOf(input.faces) * thickness;
  return {
    width: finiteResult(width, "m"),
    thickness: finiteResult(thickness, "m"),
    length: finiteResult(input.power / (2 * input.surfaceLoad * half), "m"),
  };
}

/**
 * Strip of a given shape for a power, a voltage and a surface load: thickness = (P²·ρ·Ct/(2·p·V²·n·(n + 1)))^(1/3) on four
 * faces, with n·n in place of n·(n + 1) on two; width = n·thickness.
 * @param input.power - heat wanted, W, more than 0
 * @param input.voltage - voltage across the element (in star the line voltage over √3), V, more than 0
 * @param input.resistivity - resistivity of the alloy at 20 °C, from its dataset, Ω·m, more than 0
 * @param input.temperatureFactor - Ct at working temperature, from the dataset, more than 0
 * @param input.surfaceLoad - surface load wanted, W/m², more than 0
 * @param input.widthToThickness - n, width over thickness, 1 or more
 * @param input.faces - radiating faces counted, `four` or `two`
 * @param input.edge - `sheared` or `rolled`
 * @returns width, thickness and length
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source alloy-wire maker, technical note on strip elements (coefficients Kt and Kb); derivation from R = ρ·L/A
 * @example
 * ```ts
 * stripForSurfaceLoad({
 *   power: watts(10_000),
 *   voltage: volts(220),
 *   resistivity: microohmMeters(1.09),
 *   temperatureFactor: 1.021,
 *   surfaceLoad: wattsPerSquareCentimeter(1.05),
 *   widthToThickness: 10,
 *   faces: "four",
 *   edge: "sheared",
 * }) // => { width: 0.009985, thickness: 0.0009985, length: 43.36 }
 * ```
 * @since 0.1.0
 */
export function stripForSurfaceLoad(input: {
  readonly power: Watts;
  readonly voltage: BranchVolts;
  readonly resistivity: OhmMeters;
  readonly temperatureFactor: number;
  readonly surfaceLoad: WattsPerSquareMeter;
  readonly widthToThickness: number;
  readonly faces: StripFaces;
  readonly edge: StripEdge;
}): StripChoice {
  given(input);
  const { widthToThickness: n } = input;
  const duty = dutyOf(input);
  // The wide faces are the ones that `two` counts: below 1 they would be the narrow ones.
  checkMeasurable("widthToThickness", n, undefined, 1);
  const thickness = Math.cbrt(duty / (n * (n + edgesOf(input.faces))));
  return choice(input, n * thickness, thickness);
}

/**
 * Width of strip of a given thickness for a power, a voltage and a surface load: width² = P²·ρ·Ct/(2·p·V²·thickness) on two
 * faces, width² + width·thickness the same on four.
 * @param input.power - heat wanted, W, more than 0
 * @param input.voltage - voltage across the element (in star the line voltage over √3), V, more than 0
 * @param input.resistivity - resistivity of the alloy at 20 °C, from its dataset, Ω·m, more than 0
 * @param input.temperatureFactor - Ct at working temperature, from the dataset; 1 with a hot resistivity, more than 0
 * @param input.surfaceLoad - surface load wanted, W/m², more than 0
 * @param input.thickness - thickness of the strip in stock, m, more than 0
 * @param input.faces - radiating faces counted, `four` or `two`
 * @param input.edge - `sheared` or `rolled`
 * @returns width, thickness and length
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source B. L. Theraja, A Textbook of Electrical Technology, vol. III, ex. 47.2 (two faces); derivation for four
 * @example
 * ```ts
 * stripWidthForThickness({
 *   power: watts(10_000),
 *   voltage: volts(230.940108),
 *   resistivity: microohmMeters(1.016),
 *   temperatureFactor: 1,
 *   surfaceLoad: wattsPerSquareMeter(68_401.9),
 *   thickness: millimeters(0.254),
 *   faces: "two",
 *   edge: "sheared",
 * }) // => { width: 0.0074043, thickness: 0.000254, length: 9.872 }
 * ```
 * @since 0.1.0
 */
export function stripWidthForThickness(input: {
  readonly power: Watts;
  readonly voltage: BranchVolts;
  readonly resistivity: OhmMeters;
  readonly temperatureFactor: number;
  readonly surfaceLoad: WattsPerSquareMeter;
  readonly thickness: Meters;
  readonly faces: StripFaces;
  readonly edge: StripEdge;
}): StripChoice {
  given(input);
  const { thickness } = input;
  checkPositive("thickness", thickness, "m");
  const area = dutyOf(input) / thickness;
  const edge = edgesOf(input.faces) * thickness;
  // Positive root of width² + edge·width = area, in the form that loses no digits to a difference.
  const width = (2 * area) / (edge + Math.sqrt(edge * edge + 4 * area));
  return choice(input, width, thickness);
}

/** Sheathed tubular elements: what compression does to the coil inside, and how hard wire and tube are loaded. */
import table from "../../shared/tables/swaging-effects.json" with { type: "json" };
import {
  checkBetween,
  checkPositive,
  finiteResult,
  given,
  type Meters,
  type Ohms,
  type Warning,
  type Watts,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";

/** Rows of the table of what is met in practice. */
const RESISTANCE_FALL = 0;
const SURFACE_FALL = 1;
const WIRE_OVER_TUBE = 2;

function outside(path: string, value: number, row: number): Warning[] {
  const [, lowPercent, highPercent] = table.rows[row] as [string, number, number];
  const [low, high] = [lowPercent / 100, highPercent / 100];
  if (value >= low && value <= high) return [];
  const message = `${path} ${value} lies outside ${low} to ${high}, the range its source has met`;
  const limit = value < low ? low : high;
  return [{ code: "outside-validity", path, message, limit, unit: "1", source: table.source }];
}

/**
 * A coil before and after its tube was swaged or rolled.
 * @since 0.1.0
 */
export interface SwagedCoil {
  /** Resistance to wind so that the swaged element has what is wanted, Ω. */
  readonly woundResistance: Ohms;
  /** Resistance after swaging, Ω. */
  readonly resistance: Ohms;
  /** Set when the fall lies outside what the source has met. */
  readonly warnings: readonly Warning[];
}

/**
 * Resistance to wind for a tubular element that is swaged afterwards: woundResistance = resistance/(1 − resistanceFall).
 * @param input.resistance - resistance wanted after swaging, at the same temperature, Ω, more than 0
 * @param input.resistanceFall - part of the resistance that compression takes away, from a trial piece, 0 to less than 1;
 *   0.1 to 0.3 is met in practice
 * @returns resistance before and after, with a warning when the fall is outside the range of the source
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source resistance-alloy maker A, appliance alloys handbook (2003), p. 79
 * @example
 * ```ts
 * swagedCoil({ resistance: ohms(40), resistanceFall: 0.2 }) // => { woundResistance: 50, resistance: 40, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function swagedCoil(input: {
  readonly resistance: Ohms;
  readonly resistanceFall: number;
}): SwagedCoil {
  given(input);
  checkPositive("resistance", input.resistance, "Ω");
  checkBetween("resistanceFall", input.resistanceFall, 0, 1 - Number.EPSILON);
  return {
    woundResistance: finiteResult(input.resistance / (1 - input.resistanceFall), "Ω"),
    resistance: input.resistance,
    warnings: outside("resistanceFall", input.resistanceFall, RESISTANCE_FALL),
  };
}

/**
 * How hard the tube and the wire inside it are loaded.
 * @since 0.1.0
 */
export interface TubularLoads {
  /** Heat over the outside of the heated tube, W/m². */
  readonly tubeSurfaceLoad: WattsPerSquareMeter;
  /** Heat over the surface of the wire after swaging, W/m². */
  readonly wireSurfaceLoad: WattsPerSquareMeter;
  /** Wire load over tube load. */
  readonly ratio: number;
  /** Set when the ratio or the surface fall lies outside what the source has met. */
  readonly warnings: readonly Warning[];
}

/**
 * Surface loads of a tubular element: tube P/(π·tubeDiameter·heatedLength), wire P/(π·wireDiameter·wireLength·(1 − surfaceFall)).
 * @param input.power - heat of the element, W, more than 0
 * @param input.tubeDiameter - outside diameter of the sheath, m, more than 0
 * @param input.heatedLength - length of sheath over the coil, without the cold ends, m, more than 0
 * @param input.wireDiameter - diameter of the wire as wound, m, more than 0, less than the tube's
 * @param input.wireLength - length of the wire as wound, m, more than 0
 * @param input.surfaceFall - part of the wire surface that compression takes away, 0 to less than 1; 0.02 to 0.07 is met
 * @returns both loads and their ratio, with warnings outside the ranges of the source (ratio 2 to 4)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source resistance-alloy maker A, appliance alloys handbook (2003), p. 79; surface of a cylinder
 * @example
 * ```ts
 * tubularLoads({
 *   power: watts(1000),
 *   tubeDiameter: millimeters(8),
 *   heatedLength: meters(0.8),
 *   wireDiameter: millimeters(0.5),
 *   wireLength: meters(5),
 *   surfaceFall: 0.05,
 * }) // => { tubeSurfaceLoad: 49736, wireSurfaceLoad: 134025, ratio: 2.6947, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function tubularLoads(input: {
  readonly power: Watts;
  readonly tubeDiameter: Meters;
  readonly heatedLength: Meters;
  readonly wireDiameter: Meters;
  readonly wireLength: Meters;
  readonly surfaceFall: number;
}): TubularLoads {
  given(input);
  const { power, tubeDiameter, heatedLength, wireDiameter, wireLength, surfaceFall } = input;
  checkPositive("power", power, "W");
  checkPositive("tubeDiameter", tubeDiameter, "m");
  checkPositive("heatedLength", heatedLength, "m");
  checkPositive("wireDiameter", wireDiameter, "m");
  checkBetween("wireDiameter", wireDiameter, 0, tubeDiameter, "m");
  checkPositive("wireLength", wireLength, "m");
  checkBetween("surfaceFall", surfaceFall, 0, 1 - Number.EPSILON);
  const tubeSurfaceLoad = power / (Math.PI * tubeDiameter * heatedLength);
  const wireSurfaceLoad = power / (Math.PI * wireDiameter * wireLength * (1 - surfaceFall));
  const ratio = finiteResult<number>(wireSurfaceLoad / tubeSurfaceLoad, "1");
  return {
    tubeSurfaceLoad: finiteResult(tubeSurfaceLoad, "W/m²"),
    wireSurfaceLoad: finiteResult(wireSurfaceLoad, "W/m²"),
    ratio,
    warnings: [
      ...outside("surfaceFall", surfaceFall, SURFACE_FALL),
      ...outside("ratio", ratio, WIRE_OVER_TUBE),
    ],
  };
}

/** Round wire: surface load, mass, and the wire that a surface-load limit asks for. */

import { lengthOfResistance, resistancePerLength, roundWireArea } from "../material/index.ts";
import {
  type BranchVolts,
  type ColdOhms,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Kilograms,
  type KilogramsPerCubicMeter,
  type Meters,
  type OhmMeters,
  type Ohms,
  type Warning,
  type Watts,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";
import { thickWire } from "./domain.ts";

/**
 * Surface load of a round wire or a tube: p = power/(π·diameter·length).
 * @param input.power - heat of the element, W, more than 0
 * @param input.diameter - diameter of the wire, or outside diameter of the sheath, m, more than 0
 * @param input.length - length of the wire between the terminals, or heated length of the sheath, m, more than 0
 * @returns heat per area of surface, W/m²; 1 W/cm² is 10,000 W/m²
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of surface load; surface of a cylinder
 * @example
 * ```ts
 * surfaceLoad({ power: watts(10_000), diameter: millimeters(2.05), length: meters(22.408) }) // => 69294
 * ```
 * @since 0.1.0
 */
export function surfaceLoad(input: {
  readonly power: Watts;
  readonly diameter: Meters;
  readonly length: Meters;
}): WattsPerSquareMeter {
  given(input);
  checkPositive("power", input.power, "W");
  checkPositive("diameter", input.diameter, "m");
  checkPositive("length", input.length, "m");
  return finiteResult(input.power / (Math.PI * input.diameter * input.length), "W/m²");
}

/**
 * Mass of a round wire: π/4·diameter²·length·density.
 * @param input.diameter - diameter of the wire, m, more than 0
 * @param input.length - length of the wire, m, more than 0
 * @param input.density - density of the alloy, from its dataset, kg/m³, more than 0
 * @returns mass, kg
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source volume of a cylinder; definition
 * @example
 * ```ts
 * wireMass({ diameter: millimeters(2.05), length: meters(22.408), density: gramsPerCubicCentimeter(8.3) }) // => 0.6139
 * ```
 * @since 0.1.0
 */
export function wireMass(input: {
  readonly diameter: Meters;
  readonly length: Meters;
  readonly density: KilogramsPerCubicMeter;
}): Kilograms {
  given(input);
  checkPositive("diameter", input.diameter, "m");
  checkPositive("length", input.length, "m");
  checkPositive("density", input.density, "kg/m³");
  return finiteResult((Math.PI / 4) * input.diameter * input.diameter * input.length * input.density, "kg");
}

/**
 * Smallest round wire that keeps a surface load: d = (4·resistivity·power/(π²·surfaceLoad·resistance))^(1/3).
 * @param input.power - heat of the element, W, more than 0
 * @param input.resistance - resistance of the element, Ω, more than 0, at the same temperature as `resistivity`:
 *   both hot or both at 20 °C
 * @param input.resistivity - resistivity of the alloy, from its dataset, Ω·m, more than 0
 * @param input.surfaceLoad - highest surface load allowed, W/m², more than 0
 * @returns diameter, m
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source resistance-alloy maker A, appliance alloys handbook (2003), p. 71, eq. 13, in SI units
 * @example
 * ```ts
 * smallestWireDiameter({
 *   power: watts(1000),
 *   resistance: ohms(40),
 *   resistivity: ohmSquareMillimetersPerMeter(1.35),
 *   surfaceLoad: wattsPerSquareCentimeter(8),
 * }) // => 0.000555
 * ```
 * @since 0.1.0
 */
export function smallestWireDiameter(input: {
  readonly power: Watts;
  readonly resistance: Ohms;
  readonly resistivity: OhmMeters;
  readonly surfaceLoad: WattsPerSquareMeter;
}): Meters {
  given(input);
  checkPositive("power", input.power, "W");
  checkPositive("resistance", input.resistance, "Ω");
  checkPositive("resistivity", input.resistivity, "Ω·m");
  checkPositive("surfaceLoad", input.surfaceLoad, "W/m²");
  const perOhm = input.power / input.resistance;
  return finiteResult(
    Math.cbrt((4 * input.resistivity * perOhm) / (Math.PI * Math.PI * input.surfaceLoad)),
    "m",
  );
}

/**
 * A round wire chosen for a surface-load limit.
 * @since 0.1.0
 */
export interface WireChoice {
  /** Smallest diameter that keeps the limit, m. */
  readonly minimumDiameter: Meters;
  /** Diameter chosen from stock, m. */
  readonly diameter: Meters;
  /** Where the choice stands in `stockDiameters`, from 0. */
  readonly stockIndex: number;
  /** Resistance at 20 °C, Ω. */
  readonly coldResistance: ColdOhms;
  /** Length of the chosen wire, m. */
  readonly length: Meters;
  /** Surface load of the chosen wire, W/m². */
  readonly surfaceLoad: WattsPerSquareMeter;
  /** Surface load over the limit: (minimumDiameter/diameter)³. */
  readonly surfaceLoadRatio: number;
  /** Length over that of the smallest wire: (diameter/minimumDiameter)². */
  readonly lengthRatio: number;
  /** What looks like a slip: wire as thick as a bar. */
  readonly warnings: readonly Warning[];
}

/**
 * Takes the next wire in stock for a power, a voltage and a surface-load limit, and says what the rounding does.
 *
 * A thicker wire is always longer and less loaded: check that the coil still fits. Nothing thinner than the smallest
 * allowed wire is ever chosen.
 * @param input.power - heat wanted, W, more than 0
 * @param input.voltage - voltage across the element (in star the line voltage over √3), V, more than 0
 * @param input.resistivity - resistivity of the alloy at 20 °C, from its dataset, Ω·m, more than 0
 * @param input.temperatureFactor - Ct at working temperature, from the dataset, more than 0
 * @param input.maximumSurfaceLoad - highest surface load allowed, W/m², more than 0
 * @param input.stockDiameters - diameters that can be had, in any order, m, each more than 0
 * @returns the choice, what it does to length and load, and a warning for a diameter that is more likely a slip of units
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `not-identifiable` when all stock is too thin
 * @source d = (4·ρ·Ct·P²/(π²·p·V²))^(1/3), L = R20·π·d²/(4·ρ); definitions
 * @example
 * ```ts
 * wireForSurfaceLoad({
 *   power: watts(5000),
 *   voltage: volts(277.128),
 *   resistivity: microohmMeters(1.09),
 *   temperatureFactor: 1.04,
 *   maximumSurfaceLoad: wattsPerSquareCentimeter(6),
 *   stockDiameters: [millimeters(1.2), millimeters(1.45), millimeters(1.8)],
 * }) // => { minimumDiameter: 0.0013559, diameter: 0.00145, stockIndex: 1, length: 22.375, surfaceLoadRatio: 0.8176, … }
 * ```
 * @since 0.1.0
 */
export function wireForSurfaceLoad(input: {
  readonly power: Watts;
  readonly voltage: BranchVolts;
  readonly resistivity: OhmMeters;
  readonly temperatureFactor: number;
  readonly maximumSurfaceLoad: WattsPerSquareMeter;
  readonly stockDiameters: readonly Meters[];
}): WireChoice {
  given(input);
  const { power, voltage, resistivity, temperatureFactor, maximumSurfaceLoad, stockDiameters } = input;
  checkPositive("power", power, "W");
  checkPositive("voltage", voltage, "V");
  checkPositive("temperatureFactor", temperatureFactor);
  checkPositive("maximumSurfaceLoad", maximumSurfaceLoad, "W/m²");
  const resistance = finiteResult<ColdOhms>(((voltage / power) * voltage) / temperatureFactor, "Ω");
  const minimum = smallestWireDiameter({ power, resistance, resistivity, surfaceLoad: maximumSurfaceLoad });
  const stockIndex = nextStockSize(minimum, stockDiameters);
  const diameter = stockDiameters[stockIndex] as Meters;
  const perLength = resistancePerLength({ resistivity, area: roundWireArea(diameter) });
  const length = lengthOfResistance({ resistance, resistancePerLength: perLength });
  return {
    minimumDiameter: minimum,
    diameter,
    stockIndex,
    coldResistance: resistance,
    length,
    surfaceLoad: surfaceLoad({ power, diameter, length }),
    surfaceLoadRatio: (minimum / diameter) ** 3,
    lengthRatio: finiteResult((diameter / minimum) ** 2, "1"),
    warnings: thickWire(`stockDiameters.${stockIndex}`, diameter),
  };
}

/** A stock size is thick enough when only rounding says otherwise. */
const SAME = 1e-9;

function nextStockSize(minimum: Meters, stock: readonly Meters[]): number {
  if (!Array.isArray(stock) || stock.length === 0) {
    fail({ code: "missing", path: "stockDiameters", expected: "at least one diameter", received: undefined });
  }
  let best = -1;
  for (const [at, one] of stock.entries()) {
    checkPositive(`stockDiameters.${at}`, one, "m");
    if (one >= minimum * (1 - SAME) && (best < 0 || one < (stock[best] as Meters))) best = at;
  }
  if (best >= 0) return best;
  return fail({
    code: "not-identifiable",
    path: "stockDiameters",
    expected: `a diameter of at least ${minimum}`,
    received: Math.max(...stock),
    unit: "m",
  });
}

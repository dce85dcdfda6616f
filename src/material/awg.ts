/** American wire gauge from a diameter or an area. From text it is `awgDiameter` of `quantity`, the one home of the law. */
import { awgDiameter, checkMeasurable, given, type Meters, type SquareMeters } from "../quantity/index.ts";
import type { Basis } from "./basis.ts";
import { type ChosenSize, chooseSize, roundWireArea, type SizeRounding, type WireSize } from "./wireSize.ts";

/** 4/0 to 40: the sizes as written, thick to thin. */
const FIRST = -3;
const LAST = 40;

function basis(): Basis {
  return {
    source: "astm-b258",
    edition: "definition",
    table: "0.005 in × 92^((36 − n)/39)",
    kind: "definition",
  };
}

/** 4/0 for −3, 1/0 for 0, then the number itself. */
function textOf(number: number): string {
  return number > 0 ? String(number) : `${1 - number}/0`;
}

/** All sizes, thick to thin. */
function sizes(): WireSize[] {
  return Array.from({ length: LAST - FIRST + 1 }, (_, i): WireSize => {
    const size = textOf(FIRST + i);
    const diameter = awgDiameter(size);
    return { system: "AWG", size, diameter, area: roundWireArea(diameter), basis: basis() };
  });
}

/**
 * American wire gauge number as a continuous scale: 36 − 39 × ln(diameter / 0.005 in) / ln 92; 0 is 1/0, −3 is 4/0.
 * @param diameter - diameter of the bare solid wire, by micrometer, m, more than 0
 * @returns the gauge number, 1
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source ASTM B258, Standard Nominal Diameters and Cross-Sectional Areas of AWG Sizes of Solid Round Wires
 * @example
 * ```ts
 * awgNumber(millimeters(2.05)).toFixed(2) // => "12.01"
 * ```
 * @since 0.1.0
 */
export function awgNumber(diameter: Meters): number {
  checkMeasurable("diameter", diameter, "m");
  // AWG 36 is the 0.005 in of the law, so the law itself stays in one place.
  return 36 - (39 * Math.log(diameter / awgDiameter("36"))) / Math.log(92);
}

/**
 * American wire gauge, 4/0 to 40, for a diameter.
 * @param input - what is looked up
 * @param input.diameter - diameter of the bare solid wire, by micrometer, m, 4/0 to 40
 * @param input.rounding - `nearest`, `at-least` (not thinner), `at-most` (not thicker) or `exact`
 * @returns the size with its exact diameter and area, and how far it is off
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` when no size fits
 * @source ASTM B258, Standard Nominal Diameters and Cross-Sectional Areas of AWG Sizes of Solid Round Wires
 * @example
 * ```ts
 * awgFromDiameter({ diameter: millimeters(0.7573), rounding: "at-least" }).size // => "20"
 * ```
 * @since 0.1.0
 */
export function awgFromDiameter(input: {
  readonly diameter: Meters;
  readonly rounding: SizeRounding;
}): ChosenSize {
  given(input);
  return chooseSize(sizes(), input.diameter, input.rounding, "diameter");
}

/**
 * American wire gauge, 4/0 to 40, for a metal area. Nearest is meant by the ratio of diameters, which is the same
 * choice as by the ratio of areas.
 * @param input - what is looked up
 * @param input.area - metal area, of a stranded conductor that of all strands, m², 4/0 to 40
 * @param input.rounding - `nearest`, `at-least` (not thinner), `at-most` (not thicker) or `exact`
 * @returns the size with its exact diameter and area, and how far its diameter is off
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` when no size fits
 * @source ASTM B258, Standard Nominal Diameters and Cross-Sectional Areas of AWG Sizes of Solid Round Wires
 * @example
 * ```ts
 * awgFromArea({ area: squareMillimeters(2.5), rounding: "at-least" }).size // => "13"
 * ```
 * @since 0.1.0
 */
export function awgFromArea(input: {
  readonly area: SquareMeters;
  readonly rounding: SizeRounding;
}): ChosenSize {
  given(input);
  return chooseSize(sizes(), input.area, input.rounding, "area");
}

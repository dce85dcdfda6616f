/** What every gauge system shares: the size found, and how to choose among sizes. */
import {
  checkMeasurable,
  checkOneOf,
  checkPositive,
  fail,
  finiteResult,
  type Meters,
  type SquareMeters,
} from "../quantity/index.ts";
import type { Basis } from "./basis.ts";

/**
 * Which standard size stands for a figure that lies between two.
 *
 * - `nearest`: the one with the smaller ratio to it; the thicker of two equally near
 * - `at-least`: the thinnest that is not thinner
 * - `at-most`: the thickest that is not thicker
 * - `exact`: none but itself, within one part in a million
 * @since 0.1.0
 */
export type SizeRounding = "nearest" | "at-least" | "at-most" | "exact";

/**
 * A standard size of a solid round wire or of a conductor.
 * @since 0.1.0
 */
export interface WireSize {
  /** Gauge system. */
  readonly system: "AWG" | "SWG" | "kcmil" | "mm²";
  /** Size as written in that system: "2/0", "18", "250", "2.5". */
  readonly size: string;
  /** Metal area, m². */
  readonly area: SquareMeters;
  /** Diameter of a solid round wire of that area, m; a stranded conductor is thicker. */
  readonly diameter: Meters;
  /** Where the size is defined. */
  readonly basis: Basis;
}

/**
 * A standard size chosen for a figure.
 * @since 0.1.0
 */
export interface ChosenSize extends WireSize {
  /** Diameter of the size / diameter asked for − 1. */
  readonly deviation: number;
}

/** Ratios nearer than this are equal: sizes are stated to six digits at most. */
const SAME = 1e-6;

/**
 * Area of a solid round wire: π/4 × diameter².
 * @param diameter - diameter of the bare metal, by micrometer, m, more than 0
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * toSquareMillimeters(roundWireArea(millimeters(2))).toFixed(4) // => "3.1416"
 * ```
 * @since 0.1.0
 */
export function roundWireArea(diameter: Meters): SquareMeters {
  checkPositive("diameter", diameter, "m");
  return finiteResult((Math.PI / 4) * diameter ** 2, "m²");
}

/**
 * Diameter of a solid round wire: √(4 × area / π).
 * @param area - metal area, m², more than 0
 * @returns the diameter in meters (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * toMillimeters(roundWireDiameter(squareMillimeters(2.5))).toFixed(3) // => "1.784"
 * ```
 * @since 0.1.0
 */
export function roundWireDiameter(area: SquareMeters): Meters {
  checkPositive("area", area, "m²");
  return finiteResult(2 * Math.sqrt(area / Math.PI), "m");
}

/** Chooses among sizes sorted from thick to thin by the diameter or the area asked for. */
export function chooseSize(
  sizes: readonly WireSize[],
  asked: Meters | SquareMeters,
  rounding: SizeRounding,
  path: "diameter" | "area",
): ChosenSize {
  checkMeasurable(path, asked, path === "area" ? "m²" : "m");
  const diameter = path === "area" ? roundWireDiameter(asked as SquareMeters) : asked;
  checkOneOf("rounding", rounding, ["nearest", "at-least", "at-most", "exact"]);
  const ratio = (size: WireSize): number => size.diameter / diameter;
  const near = (size: WireSize): number => Math.abs(Math.log(ratio(size)));
  let best: WireSize | undefined;
  for (const size of sizes) {
    const allowed =
      rounding === "at-least"
        ? ratio(size) >= 1 - SAME
        : rounding === "at-most"
          ? ratio(size) <= 1 + SAME
          : rounding === "nearest" || near(size) <= SAME;
    if (allowed && (best === undefined || near(size) < near(best))) best = size;
  }
  const [thick, thin] = [sizes[0] as WireSize, sizes.at(-1) as WireSize];
  // Nearest to a figure off the end of the list would be a clamp.
  const beyond = diameter > thick.diameter * (1 + SAME) || diameter < thin.diameter * (1 - SAME);
  if (best !== undefined && !(rounding === "nearest" && beyond)) {
    return { ...best, deviation: ratio(best) - 1 };
  }
  const name = (size: WireSize): string =>
    `${size.size} ${size.system} (${Number((size.diameter * 1e3).toPrecision(4))} mm)`;
  return fail({
    code: "outside-table",
    path,
    expected:
      rounding === "exact"
        ? `a size of ${thick.system} to one part in a million`
        : `a round wire from ${name(thin)} to ${name(thick)}`,
    received: Number((diameter * 1e3).toPrecision(6)),
    unit: path === "area" ? "mm (as round wire)" : "mm",
  });
}

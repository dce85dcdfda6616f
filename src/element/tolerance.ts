/** Tolerance bands of resistance and power, and the tolerances that makers state. */
import tubular from "../../shared/tables/tubular-tolerance.json" with { type: "json" };
import wire from "../../shared/tables/wire-tolerance-maker-u.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  type BranchVolts,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Meters,
  millimeters,
  type Ohms,
  type Watts,
} from "../quantity/index.ts";
import { basisOf, checkTolerances } from "./domain.ts";

/**
 * Lowest, nominal and highest resistance and power of an element at one voltage.
 * @since 0.1.0
 */
export interface ToleranceBand {
  /** Resistance, Ω. */
  readonly resistance: {
    /** At the lower limit, Ω. */
    readonly low: Ohms;
    /** Nominal, Ω. */
    readonly nominal: Ohms;
    /** At the upper limit, Ω. */
    readonly high: Ohms;
  };
  /** Power, W: the highest belongs to the lowest resistance. */
  readonly power: {
    /** At the upper limit of resistance, W. */
    readonly low: Watts;
    /** Nominal, W. */
    readonly nominal: Watts;
    /** At the lower limit of resistance, W. */
    readonly high: Watts;
  };
  /** Highest power over nominal, less 1. */
  readonly powerAbove: number;
  /** 1 less lowest power over nominal. */
  readonly powerBelow: number;
}

/**
 * Band of power that a tolerance of resistance stands for: P = voltage²/R at both ends, by exact reciprocals.
 *
 * The trade states "resistance +10/−5 %" as "power +5/−10 %"; the reciprocals are −9.09/+5.26 %. Say which of the two
 * is tested: an element at 0.95 of its resistance is 0.26 % outside +5 % of power.
 * @param input.resistance - nominal resistance, Ω, more than 0
 * @param input.voltage - voltage across the element, V, more than 0
 * @param input.upperTolerance - how far the resistance may lie above nominal, ratio 0 to 1
 * @param input.lowerTolerance - how far it may lie below nominal, ratio 0 to less than 1
 * @returns both bands and the power tolerance they amount to
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source P = V²/R; definition
 * @example
 * ```ts
 * toleranceBand({ resistance: ohms(10), voltage: volts(100), upperTolerance: 0.1, lowerTolerance: 0.05 })
 * // => { resistance: { low: 9.5, nominal: 10, high: 11 }, power: { low: 909.09, nominal: 1000, high: 1052.63 },
 * //   powerAbove: 0.05263, powerBelow: 0.09091 }
 * ```
 * @since 0.1.0
 */
export function toleranceBand(input: {
  readonly resistance: Ohms;
  readonly voltage: BranchVolts;
  readonly upperTolerance: number;
  readonly lowerTolerance: number;
}): ToleranceBand {
  given(input);
  const { resistance, voltage, upperTolerance, lowerTolerance } = input;
  checkPositive("resistance", resistance, "Ω");
  checkPositive("voltage", voltage, "V");
  checkTolerances(input);
  const nominal = finiteResult<Watts>((voltage / resistance) * voltage, "W");
  return {
    resistance: {
      low: finiteResult(resistance * (1 - lowerTolerance), "Ω"),
      nominal: resistance,
      high: finiteResult(resistance * (1 + upperTolerance), "Ω"),
    },
    power: {
      low: finiteResult(nominal / (1 + upperTolerance), "W"),
      nominal,
      high: finiteResult(nominal / (1 - lowerTolerance), "W"),
    },
    powerAbove: finiteResult(lowerTolerance / (1 - lowerTolerance), "1"),
    powerBelow: finiteResult(upperTolerance / (1 + upperTolerance), "1"),
  };
}

/**
 * A tolerance that a maker states, with whose it is.
 * @since 0.1.0
 */
export interface ElementTolerance {
  /** Resistance above nominal, ratio. */
  readonly upperTolerance: number;
  /** Resistance below nominal, ratio. */
  readonly lowerTolerance: number;
  /** Where it comes from. */
  readonly basis: Basis;
}

/**
 * Resistance tolerance that makers of finished sheathed tubular elements state.
 *
 * The contract or the nameplate standard of the module goes first. The same source calls it "power +5/−10 %", which is the
 * rounded reciprocal: see {@link toleranceBand}.
 * @returns upper and lower tolerance with their source
 * @source tubular-heater catalogue, resistance tolerance
 * @example
 * ```ts
 * tubularElementTolerance() // => { upperTolerance: 0.1, lowerTolerance: 0.05, … }
 * ```
 * @since 0.1.0
 */
export function tubularElementTolerance(): ElementTolerance {
  const [, upper, lower] = tubular.rows[0] as [string, number, number];
  return { upperTolerance: upper / 100, lowerTolerance: lower / 100, basis: basisOf(tubular) };
}

/**
 * Resistance tolerance of round resistance wire by its diameter: thin wire is sold to wider limits.
 * @param diameter - diameter of the wire, m, within the table: 0.0254 mm to less than 5.5 mm
 * @returns upper and lower tolerance with their source
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table`
 * @source resistance-wire maker U, size range and tolerance
 * @example
 * ```ts
 * wireTolerance(millimeters(2.05)) // => { upperTolerance: 0.05, lowerTolerance: 0.05, … }
 * ```
 * @since 0.1.0
 */
export function wireTolerance(diameter: Meters): ElementTolerance {
  checkPositive("diameter", diameter, "m");
  for (const [from, below, percent] of wire.rows as [number, number, number][]) {
    if (diameter >= millimeters(from) && diameter < millimeters(below)) {
      return { upperTolerance: percent / 100, lowerTolerance: percent / 100, basis: basisOf(wire) };
    }
  }
  return fail({
    code: "outside-table",
    path: "diameter",
    expected: `a wire of the table ${wire.id}`,
    received: diameter,
    unit: "m",
  });
}

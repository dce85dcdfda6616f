/** Helical coils: turns, close-wound length, pitch, stretch, and the limits that makers state for them. */
import {
  checkOneOf,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Meters,
  type Warning,
} from "../quantity/index.ts";
import {
  checkMean,
  type InsideDiameter,
  insideDiameterFromMean,
  type MeanDiameter,
  type OutsideDiameter,
  outsideDiameterFromMean,
} from "./coilDiameter.ts";
import { coilWarnings } from "./coilGuidance.ts";
import { thickWire } from "./domain.ts";

/**
 * Length of a coil with its turns touching: wireLength·wireDiameter over the length of one turn.
 *
 * `circle` takes a turn as π·meanDiameter, as printed tables do; `helix` as √((π·meanDiameter)² + wireDiameter²), which is
 * exact and shorter by (wireDiameter/(π·meanDiameter))²/2.
 * @param input.wireLength - length of the wire, m, more than 0
 * @param input.wireDiameter - diameter of the wire, m, more than 0
 * @param input.meanDiameter - mean diameter of the coil, m, more than `wireDiameter`
 * @param input.turn - how one turn is measured, `circle` or `helix`
 * @returns close-wound length, m
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`, `unknown-name`
 * @source circle: resistance-wire maker U, coiled or spiral elements; helix: geometry, definition
 * @example
 * ```ts
 * closeWoundLength({ wireLength: meters(5), wireDiameter: millimeters(0.5), meanDiameter: millimeters(5.5), turn: "helix" })
 * // => 0.144626
 * ```
 * @since 0.1.0
 */
export function closeWoundLength(input: {
  readonly wireLength: Meters;
  readonly wireDiameter: Meters;
  readonly meanDiameter: MeanDiameter;
  readonly turn: "circle" | "helix";
}): Meters {
  given(input);
  const { wireLength, wireDiameter, meanDiameter } = input;
  checkPositive("wireLength", wireLength, "m");
  checkPositive("wireDiameter", wireDiameter, "m");
  checkMean(meanDiameter, wireDiameter);
  const rise = checkOneOf("turn", input.turn, ["circle", "helix"]) === "helix" ? wireDiameter : 0;
  return finiteResult(wireLength * (wireDiameter / Math.hypot(Math.PI * meanDiameter, rise)), "m");
}

/**
 * Length of a coil after stretching: turns·pitch with pitch = stretchRatio·wireDiameter.
 * @param input.wireLength - length of the wire, m, more than 0
 * @param input.wireDiameter - diameter of the wire, m, more than 0
 * @param input.meanDiameter - mean diameter of the coil once stretched, m, more than `wireDiameter`
 * @param input.stretchRatio - stretched length over close-wound length, the same as pitch over wire diameter, 1 or more
 * @returns length of the coil, m
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source geometry of the helix; definition
 * @example
 * ```ts
 * stretchedLength({
 *   wireLength: meters(5),
 *   wireDiameter: millimeters(0.5),
 *   meanDiameter: millimeters(5.5),
 *   stretchRatio: 3.47316,
 * }) // => 0.5
 * ```
 * @since 0.1.0
 */
export function stretchedLength(input: {
  readonly wireLength: Meters;
  readonly wireDiameter: Meters;
  readonly meanDiameter: MeanDiameter;
  readonly stretchRatio: number;
}): Meters {
  given(input);
  const { wireLength, wireDiameter, meanDiameter, stretchRatio } = input;
  checkPositive("wireLength", wireLength, "m");
  checkPositive("wireDiameter", wireDiameter, "m");
  checkMean(meanDiameter, wireDiameter);
  checkStretch(stretchRatio);
  const pitch = stretchRatio * wireDiameter;
  return finiteResult(wireLength * (pitch / Math.hypot(Math.PI * meanDiameter, pitch)), "m");
}

function checkStretch(stretchRatio: number): void {
  checkPositive("stretchRatio", stretchRatio);
  if (stretchRatio < 1) {
    fail({
      code: "out-of-range",
      path: "stretchRatio",
      expected: "1 or more, because touching turns cannot come closer",
      received: stretchRatio,
    });
  }
}

/**
 * A coil as it hangs in the module.
 * @since 0.1.0
 */
export interface CoilGeometry {
  /** Mean diameter, m. */
  readonly meanDiameter: MeanDiameter;
  /** Inside diameter: the mandrel, without spring-back, m. */
  readonly insideDiameter: InsideDiameter;
  /** Outside diameter: the room it takes, m. */
  readonly outsideDiameter: OutsideDiameter;
  /** Number of turns. */
  readonly turns: number;
  /** Distance from turn to turn, m. */
  readonly pitch: Meters;
  /** Length with the turns touching, exact, m. */
  readonly closeWoundLength: Meters;
  /** Pitch over wire diameter: how far the close-wound coil is stretched. */
  readonly stretchRatio: number;
  /** Outside diameter over wire diameter. */
  readonly outsideToWire: number;
  /** Inside diameter over wire diameter. */
  readonly insideToWire: number;
  /** What lies outside the makers' limits. */
  readonly warnings: readonly Warning[];
}

/**
 * Turns, pitch and stretch of a coil of known wire and length: pitch = π·meanDiameter/√((wireLength/coilLength)² − 1).
 * @param input.wireLength - length of the wire in the coil, tails not counted, m, more than `coilLength`
 * @param input.wireDiameter - diameter of the wire, m, more than 0
 * @param input.meanDiameter - mean diameter, m, from `meanDiameterFromInside` or `meanDiameterFromOutside`
 * @param input.coilLength - length of the coil as it hangs, first to last turn, m, not below the close-wound length
 * @returns the coil, with a warning for every maker's limit it does not keep
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the wire cannot make that coil
 * @source resistance-alloy maker A, appliance alloys handbook (2003), p. 71, eq. 16; limits in shared/tables/coil-geometry-guidance
 * @example
 * ```ts
 * coilGeometry({
 *   wireLength: meters(5),
 *   wireDiameter: millimeters(0.5),
 *   meanDiameter: meanDiameterFromOutside({ outsideDiameter: millimeters(6), wireDiameter: millimeters(0.5) }),
 *   coilLength: millimeters(500),
 * }) // => { turns: 287.922, pitch: 0.00173658, closeWoundLength: 0.144626, stretchRatio: 3.4732, outsideToWire: 12, … }
 * ```
 * @since 0.1.0
 */
export function coilGeometry(input: {
  readonly wireLength: Meters;
  readonly wireDiameter: Meters;
  readonly meanDiameter: MeanDiameter;
  readonly coilLength: Meters;
}): CoilGeometry {
  given(input);
  const { wireLength, wireDiameter, meanDiameter, coilLength } = input;
  checkPositive("coilLength", coilLength, "m");
  const closed = closeWoundLength({ wireLength, wireDiameter, meanDiameter, turn: "helix" });
  // A close-wound coil given in rounded figures must pass: it is only refused when clearly impossible.
  if (!(coilLength >= closed * (1 - 1e-9)) || !(wireLength > coilLength)) {
    fail({
      code: "inconsistent",
      path: "coilLength",
      expected: `from the close-wound length ${closed} to less than the wire length ${wireLength}`,
      received: coilLength,
      unit: "m",
    });
  }
  // √((L − l)·(L + l)) keeps its digits where the coil is drawn out nearly straight.
  const around = Math.sqrt((wireLength - coilLength) * (wireLength + coilLength));
  const pitch = finiteResult<Meters>((Math.PI * meanDiameter * coilLength) / around, "m");
  const insideDiameter = insideDiameterFromMean({ meanDiameter, wireDiameter });
  const outsideDiameter = outsideDiameterFromMean({ meanDiameter, wireDiameter });
  const shape = {
    stretchRatio: finiteResult<number>(pitch / wireDiameter, "1"),
    outsideToWire: finiteResult<number>(outsideDiameter / wireDiameter, "1"),
    insideToWire: finiteResult<number>(insideDiameter / wireDiameter, "1"),
  };
  return {
    meanDiameter,
    insideDiameter,
    outsideDiameter,
    turns: finiteResult(around / (Math.PI * meanDiameter), "1"),
    pitch,
    closeWoundLength: closed,
    ...shape,
    warnings: [...coilWarnings(shape), ...thickWire("wireDiameter", wireDiameter)],
  };
}

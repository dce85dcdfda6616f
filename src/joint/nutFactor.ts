/** The nut factor K of T = K·F·d: by thread condition as a range, from friction, and the exact screw equation. */
import ranges from "../../shared/tables/nut-factor-ranges.json" with { type: "json" };
import textbook from "../../shared/tables/nut-factor-textbook.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
  given,
  type Meters,
  type NewtonMeters,
  type Newtons,
  type Warning,
} from "../quantity/index.ts";
import { basisOf, cellNumber, rowNamed } from "./basis.ts";

/**
 * Named thread conditions.
 * @since 0.1.0
 */
export type NutFactorCondition =
  | "dry steel"
  | "machine-oiled steel"
  | "cadmium-plated"
  | "phosphated and oiled"
  | "zinc-plated"
  | "dry stainless on stainless"
  | "zinc-flake"
  | "stainless with anti-seize"
  | "black oxide and oil"
  | "PTFE or wax coated";

/**
 * A range of nut factors. Low nut factor, high preload.
 * @since 0.1.0
 */
export interface NutFactorRange {
  /** Smallest nut factor. */
  readonly low: number;
  /** Largest nut factor. */
  readonly high: number;
  /** Where it comes from. */
  readonly basis: Basis;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/** Rows of the textbook table that speak of the same condition as a measured range. */
const SAME: Readonly<Record<string, TextbookCondition>> = {
  "cadmium-plated": "cadmium-plated",
  "zinc-plated": "zinc-plated",
  "stainless with anti-seize": "anti-seize",
};

/**
 * Range of nut factors of a named thread condition. There is no default: friction not known is preload not known.
 *
 * Where a textbook prints a factor outside the range, a warning says so (0.12 for anti-seize). No source was found for
 * brass nuts on brass studs: measure, or give a range of your own to the preload functions.
 * @param condition - thread condition by name
 * @returns lowest and highest nut factor, basis, warnings
 * @throws ElectroheatError `missing`, `unknown-name` with the conditions known
 * @source fastener maker's engineering data (measured ranges); fastener merchant's guide, common practice
 *   (anti-seize, black oxide, PTFE rows)
 * @example
 * ```ts
 * const { low, high } = nutFactorRange("dry stainless on stainless");
 * [low, high] // => [0.3, 0.5]
 * ```
 * @since 0.1.0
 */
export function nutFactorRange(condition: NutFactorCondition): NutFactorRange {
  const row = rowNamed(ranges, "condition", condition);
  const [low, high] = [cellNumber(row, 1, "condition"), cellNumber(row, 2, "condition")];
  const same = SAME[condition];
  const printed = same === undefined ? undefined : textbookNutFactor(same).nutFactor;
  const warnings: Warning[] = [];
  if (printed !== undefined && (printed < low || printed > high)) {
    warnings.push({
      code: "caution",
      path: "condition",
      message: `A textbook table prints ${printed} for ${same}, outside ${low} to ${high}: the preload may be ${printed < low ? "higher" : "lower"} than this range says.`,
      limit: printed,
      source: textbook.source,
    });
  }
  return { low, high, basis: basisOf(ranges, { kind: String(row[3]), source: String(row[4]) }), warnings };
}

/**
 * Conditions of the textbook table.
 * @since 0.1.0
 */
export type TextbookCondition =
  | "nonplated, black finish"
  | "zinc-plated"
  | "lubricated"
  | "cadmium-plated"
  | "anti-seize";

/**
 * The single nut factor a textbook table prints for a bolt condition: for checking its worked examples.
 *
 * One number where measured ranges run 1 to 2: use {@link nutFactorRange} for decisions.
 * @param condition - bolt condition as printed
 * @returns nut factor with its basis
 * @throws ElectroheatError `missing`, `unknown-name` with the conditions known
 * @source J. E. Shigley and C. R. Mischke, Mechanical Engineering Design, 5th ed., Table 8-15
 * @example
 * ```ts
 * textbookNutFactor("anti-seize").nutFactor // => 0.12
 * ```
 * @since 0.1.0
 */
export function textbookNutFactor(condition: TextbookCondition): {
  /** K in T = K·F·d. */
  readonly nutFactor: number;
  /** Where it stands. */
  readonly basis: Basis;
} {
  const row = rowNamed(textbook, "condition", condition);
  return { nutFactor: cellNumber(row, 1, "condition"), basis: basisOf(textbook) };
}

/**
 * Nut factor from friction: K·diameter = pitch/(2π) + threadFriction·pitchDiameter/(2·cos 30°) +
 * bearingFriction·bearingDiameter/2.
 * @param input.diameter - nominal diameter (m), more than 0
 * @param input.pitch - pitch (m), more than 0
 * @param input.pitchDiameter - pitch diameter (m), more than 0; from `threadGeometry`
 * @param input.threadFriction - coefficient of friction in the thread, 0 to 1
 * @param input.bearingFriction - coefficient of friction under the turned face, 0 to 1
 * @param input.bearingDiameter - mean diameter of the turned face (m), more than 0
 * @returns nut factor K
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source ISO 16047 / VDI 2230 (from memory) torque equation M = F·(0.16·P + 0.58·d2·µG + 0.5·DKm·µK)
 * @example
 * ```ts
 * nutFactorFromFriction({
 *   diameter: millimeters(6), pitch: millimeters(1), pitchDiameter: millimeters(5.35),
 *   threadFriction: 0.14, bearingFriction: 0.14, bearingDiameter: millimeters(7.75),
 * }) // => 0.189
 * ```
 * @since 0.1.0
 */
export function nutFactorFromFriction(input: {
  readonly diameter: Meters;
  readonly pitch: Meters;
  readonly pitchDiameter: Meters;
  readonly threadFriction: number;
  readonly bearingFriction: number;
  readonly bearingDiameter: Meters;
}): number {
  given(input);
  const { diameter, pitch, pitchDiameter, threadFriction, bearingFriction, bearingDiameter } = input;
  checkMeasurable("diameter", diameter, "m");
  checkMeasurable("pitch", pitch, "m");
  checkMeasurable("pitchDiameter", pitchDiameter, "m");
  checkBetween("threadFriction", threadFriction, 0, 1);
  checkBetween("bearingFriction", bearingFriction, 0, 1);
  checkMeasurable("bearingDiameter", bearingDiameter, "m");
  const lever =
    pitch / (2 * Math.PI) +
    (threadFriction * pitchDiameter) / (2 * Math.cos(Math.PI / 6)) +
    (bearingFriction * bearingDiameter) / 2;
  return lever / diameter;
}

/**
 * Torques of a screw under load.
 * @since 0.1.0
 */
export interface ScrewTorque {
  /** Torque to tighten or raise (N·m). */
  readonly raise: NewtonMeters;
  /** Torque to loosen or lower (N·m); negative when the thread runs down by itself. */
  readonly lower: NewtonMeters;
  /** Work on the load over work put in while raising. */
  readonly efficiency: number;
}

/**
 * Torque of a screw with thread and collar friction, exact.
 *
 * raise = (F·d/2)·(lead + π·µ·d·s)/(π·d − µ·lead·s) + F·µc·dc/2, lower = (F·d/2)·(π·µ·d·s − lead)/(π·d + µ·lead·s) +
 * F·µc·dc/2, with d the mean thread diameter, s = 1/cos(half of the thread angle); efficiency = F·lead/(2π·raise).
 * What the nut factor approximates.
 * @param input.force - load along the screw (N), more than 0
 * @param input.lead - advance per turn (m), more than 0
 * @param input.meanDiameter - mean (pitch) diameter of the thread (m), more than 0
 * @param input.threadFriction - coefficient of friction in the thread, 0 to 1
 * @param input.halfAngle - half of the thread angle in radians, 0 for a square thread to 1; π/6 for a 60° thread
 * @param input.collarFriction - coefficient of friction under the collar or nut face, 0 to 1
 * @param input.collarDiameter - mean diameter of that face (m), 0 or more
 * @returns torques and efficiency
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the thread cannot be raised
 *   at all
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equations 8-1 to 8-6
 * @example
 * ```ts
 * screwTorque({
 *   force: kilonewtons(5), lead: millimeters(5), meanDiameter: millimeters(22.5), threadFriction: 0.09,
 *   halfAngle: 0, collarFriction: 0.06, collarDiameter: millimeters(45),
 * }) // => { raise: 15.85, lower: 7.83, efficiency: 0.251 }
 * ```
 * @since 0.1.0
 */
export function screwTorque(input: {
  readonly force: Newtons;
  readonly lead: Meters;
  readonly meanDiameter: Meters;
  readonly threadFriction: number;
  readonly halfAngle: number;
  readonly collarFriction: number;
  readonly collarDiameter: Meters;
}): ScrewTorque {
  given(input);
  const { force, lead, meanDiameter, threadFriction, halfAngle, collarFriction, collarDiameter } = input;
  checkMeasurable("force", force, "N");
  checkMeasurable("lead", lead, "m");
  checkMeasurable("meanDiameter", meanDiameter, "m");
  checkBetween("threadFriction", threadFriction, 0, 1);
  checkBetween("halfAngle", halfAngle, 0, 1, "rad");
  checkBetween("collarFriction", collarFriction, 0, 1);
  checkMeasurableOrZero("collarDiameter", collarDiameter, "m");
  const friction = threadFriction / Math.cos(halfAngle);
  const around = Math.PI * meanDiameter;
  if (!(around > friction * lead)) {
    fail({
      code: "inconsistent",
      path: "lead",
      expected: `less than ${around / friction} m: a steeper thread jams at this friction`,
      received: lead,
      unit: "m",
    });
  }
  const collar = (force * collarFriction * collarDiameter) / 2;
  const half = (force * meanDiameter) / 2;
  const raise = (half * (lead + friction * around)) / (around - friction * lead) + collar;
  const lower = (half * (friction * around - lead)) / (around + friction * lead) + collar;
  return {
    raise: raise as NewtonMeters,
    lower: lower as NewtonMeters,
    efficiency: (force * lead) / (2 * Math.PI * raise),
  };
}

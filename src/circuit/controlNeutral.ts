/** The neutral of a balanced star under phase-angle firing: it carries current though the load is balanced. */
import {
  type Amperes,
  type BranchVolts,
  checkBetween,
  checkMeasurable,
  given,
  type Ohms,
} from "../quantity/index.ts";
import { phaseAngleFiring } from "./controlPhaseAngle.ts";

/**
 * Currents of a balanced star on the neutral under phase-angle firing.
 * @since 0.1.0
 */
export interface NeutralFiring {
  /** RMS current of the neutral, A, all of it harmonics 3, 9, 15 and so on: by true-RMS clamp. */
  readonly neutralCurrent: Amperes;
  /** RMS current of each line, A. */
  readonly lineCurrent: Amperes;
  /** Neutral over line current, up to √3; `null` when nothing flows. */
  readonly ratio: number | null;
  /** Neutral over line current at full conduction, for sizing against the plate: highest, 1, at 90°. */
  readonly ratioToFull: number;
}

/** ∫ 2·sin² between two angles in degrees. */
function squares(from: number, to: number): number {
  const until = (degrees: number): number => {
    const x = (degrees * Math.PI) / 180;
    return x - Math.sin(2 * x) / 2;
  };
  return until(to) - until(from);
}

/**
 * Neutral current of a balanced resistive star on the neutral, each branch fired late by the same angle: RMS of the sum of three
 * chopped waves 120° apart. To 60° two or three branches conduct at once, to 120° one or two, beyond it one or none, and then the
 * neutral carries √3 times the line current.
 * @param input.branchVoltage - RMS voltage from line to neutral, V, more than 0
 * @param input.branchResistance - of one branch, hot, Ω, more than 0
 * @param input.firingDegrees - delay of each half-wave after its zero crossing, degrees, 0 (full) to 180 (off)
 * @returns neutral and line current, and their ratios
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Kirchhoff's current law on three symmetrically chopped sines
 * @example
 * ```ts
 * const { neutralCurrent, lineCurrent } = neutralCurrentFired({
 *   branchVoltage: volts(230), branchResistance: ohms(10), firingDegrees: 90,
 * });
 * [neutralCurrent, lineCurrent] // => [23, 16.2635]
 * ```
 * @since 0.1.0
 */
export function neutralCurrentFired(input: {
  readonly branchVoltage: BranchVolts;
  readonly branchResistance: Ohms;
  readonly firingDegrees: number;
}): NeutralFiring {
  const { branchVoltage, branchResistance, firingDegrees: angle } = given(input);
  checkMeasurable("branchVoltage", branchVoltage, "V");
  checkMeasurable("branchResistance", branchResistance, "Ω");
  checkBetween("firingDegrees", angle, 0, 180, "°");
  const { rmsCurrent, powerRatio } = phaseAngleFiring({
    voltage: branchVoltage,
    resistance: branchResistance,
    firingDegrees: angle,
  });
  // In each sixth of the period one branch is at x, one at x + 60° and one at x + 120° of its half-wave; together they cancel.
  let sum: number;
  if (angle < 60) sum = squares(0, angle);
  else if (angle < 120) sum = squares(120, angle + 60) + squares(angle - 60, 60);
  else sum = Math.PI * powerRatio;
  const ratioToFull = Math.sqrt((3 / Math.PI) * sum);
  const neutralCurrent = (branchVoltage / branchResistance) * ratioToFull;
  return {
    neutralCurrent: neutralCurrent as Amperes,
    lineCurrent: rmsCurrent,
    ratio: rmsCurrent > 0 ? neutralCurrent / rmsCurrent : null,
    ratioToFull,
  };
}

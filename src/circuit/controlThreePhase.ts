/** Phase-angle firing of a balanced star without neutral: six thyristors, three lines. */
import {
  type Amperes,
  type BranchVolts,
  checkBetween,
  checkMeasurable,
  given,
  type LineVolts,
  type Ohms,
  type Watts,
} from "../quantity/index.ts";

/**
 * A balanced star under phase-angle firing.
 * @since 0.1.0
 */
export interface ThreePhaseFiring {
  /** RMS voltage on each branch, V. */
  readonly branchVoltage: BranchVolts;
  /** RMS line current, A. */
  readonly lineCurrent: Amperes;
  /** Power of the three branches, W. */
  readonly power: Watts;
  /** Power over power at full conduction. */
  readonly powerRatio: number;
  /** Power factor: RMS branch voltage over supply branch voltage. */
  readonly powerFactor: number;
}

/** Power ratio; which lines conduct together changes at 60° and at 90°, each breakpoint belongs to the upper branch. */
function ratioOf(degrees: number): number {
  const alpha = (degrees * Math.PI) / 180;
  if (degrees === 150) return 0;
  const [sine, cosine] = [Math.sin(2 * alpha), Math.cos(2 * alpha)];
  const { PI } = Math;
  if (degrees < 60) return (6 / PI) * (PI / 6 - alpha / 4 + sine / 8);
  const common = sine / 16 + (Math.sqrt(3) * cosine) / 16;
  if (degrees < 90) return (6 / PI) * (PI / 12 + (3 * sine) / 16 + (Math.sqrt(3) * cosine) / 16);
  return Math.max(0, (6 / PI) * ((5 * PI) / 24 - alpha / 4 + common));
}

/**
 * Phase-angle firing of a balanced resistive star without neutral, thyristor pairs in all three lines. The angle counts from the
 * zero crossing of the voltage between line and neutral; at 150° nothing is left.
 *
 * A delta fed through such a controller behaves as the star of a third of its branch resistance. With the neutral connected each
 * branch stands alone: {@link phaseAngleFiring}.
 * @param input.lineVoltage - RMS voltage between lines, V, more than 0
 * @param input.branchResistance - of one branch of the star, hot, Ω, more than 0
 * @param input.firingDegrees - firing angle, degrees, 0 to 150
 * @returns RMS values, power, power factor
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source M. H. Rashid, Power Electronics, three-phase full-wave controllers, RMS output per phase of a star load
 * @example
 * ```ts
 * const { branchVoltage, power } = threePhaseAngleFiring({
 *   lineVoltage: volts(415), branchResistance: ohms(15), firingDegrees: 60,
 * });
 * [branchVoltage, power] // => [201.428, 8114.65]
 * ```
 * @since 0.1.0
 */
export function threePhaseAngleFiring(input: {
  readonly lineVoltage: LineVolts;
  readonly branchResistance: Ohms;
  readonly firingDegrees: number;
}): ThreePhaseFiring {
  given(input);
  const { lineVoltage, branchResistance, firingDegrees } = input;
  checkMeasurable("lineVoltage", lineVoltage, "V");
  checkMeasurable("branchResistance", branchResistance, "Ω");
  checkBetween("firingDegrees", firingDegrees, 0, 150, "°");
  const powerRatio = ratioOf(firingDegrees);
  const root = Math.sqrt(powerRatio);
  const voltage = (lineVoltage / Math.sqrt(3)) * root;
  return {
    branchVoltage: voltage as BranchVolts,
    lineCurrent: (voltage / branchResistance) as Amperes,
    power: ((lineVoltage * lineVoltage * powerRatio) / branchResistance) as Watts,
    powerRatio,
    powerFactor: root,
  };
}

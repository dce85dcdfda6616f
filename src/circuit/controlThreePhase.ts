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
import type { Harmonic } from "./controlPhaseAngle.ts";

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
  /** RMS current of the fundamental, A. */
  readonly fundamental: Amperes;
  /** By how much the fundamental lags the supply, degrees, 0 to 90; `null` when nothing flows. */
  readonly lagDegrees: number | null;
  /** Harmonics 5, 7, 11, 13 and so on to the 25th: without a neutral none is a multiple of 3. */
  readonly harmonics: readonly Harmonic[];
  /** RMS of all harmonics over the fundamental; `null` when nothing flows. */
  readonly distortion: number | null;
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

/** A stretch of the positive half-wave of a branch: from and to, as degrees, and what it follows there. */
type Stretch = readonly [number, number, "phase" | "to next line" | "to last line"];

/** What the branch of L1 sees in its positive half-wave: its own phase while three lines conduct, half a line voltage while two do. */
function stretchesOf(degrees: number): readonly Stretch[] {
  if (degrees < 60) {
    return [
      [degrees, 60, "phase"],
      [60, 60 + degrees, "to next line"],
      [60 + degrees, 120, "phase"],
      [120, 120 + degrees, "to last line"],
      [120 + degrees, 180, "phase"],
    ];
  }
  return [
    [degrees, Math.min(degrees + 60, 150), "to next line"],
    [degrees + 60, Math.min(degrees + 120, 210), "to last line"],
  ];
}

/** Fourier sine and cosine parts of one odd order, RMS over the RMS of the supply's branch voltage. */
function fourier(stretches: readonly Stretch[], order: number): readonly [number, number] {
  let [sine, cosine] = [0, 0];
  for (const [from, to, follows] of stretches) {
    const size = follows === "phase" ? 1 : Math.sqrt(3) / 2;
    const shift = follows === "phase" ? 0 : follows === "to next line" ? Math.PI / 6 : -Math.PI / 6;
    for (const [degrees, sign] of [
      [to, size],
      [from, -size],
    ] as const) {
      const x = (degrees * Math.PI) / 180;
      const above = (order + 1) * x + shift;
      const below = (order - 1) * x - shift;
      const first = order === 1;
      sine +=
        sign *
        ((first ? x * Math.cos(shift) : Math.sin(below) / (order - 1)) - Math.sin(above) / (order + 1));
      cosine +=
        sign *
        ((first ? x * Math.sin(shift) : Math.cos(below) / (order - 1)) - Math.cos(above) / (order + 1));
    }
  }
  return [sine / Math.PI, cosine / Math.PI];
}

const ORDERS = [5, 7, 11, 13, 17, 19, 23, 25] as const;

/**
 * Phase-angle firing of a balanced resistive star without neutral, thyristor pairs in all three lines. The angle counts from the
 * zero crossing of the voltage between line and neutral; at 150° nothing is left.
 *
 * Pairs in two lines only, the third straight through, are not covered: their waves differ from line to line and from half-wave to
 * half-wave. A delta fed through such a controller behaves as the star of a third of its branch resistance. With the neutral connected each
 * branch stands alone: {@link phaseAngleFiring}.
 * @param input.lineVoltage - RMS voltage between lines, V, more than 0
 * @param input.branchResistance - of one branch of the star, hot, Ω, more than 0
 * @param input.firingDegrees - firing angle, degrees, 0 to 150
 * @returns RMS values, power, power factor, fundamental and harmonics of the line current
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source M. H. Rashid, Power Electronics, three-phase full-wave controllers, RMS output per phase of a star load; harmonics by
 *   Fourier analysis of that wave
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
  const full = lineVoltage / Math.sqrt(3) / branchResistance;
  const flows = powerRatio > 0;
  const stretches = flows ? stretchesOf(firingDegrees) : [];
  // The part in phase with the supply carries the power; the other, negative, is the lag.
  const [, quadrature] = fourier(stretches, 1);
  const lagging = Math.max(0, -quadrature);
  const first = Math.hypot(powerRatio, lagging);
  return {
    branchVoltage: voltage as BranchVolts,
    lineCurrent: (voltage / branchResistance) as Amperes,
    power: ((lineVoltage * lineVoltage * powerRatio) / branchResistance) as Watts,
    powerRatio,
    powerFactor: root,
    fundamental: (full * first) as Amperes,
    lagDegrees: flows ? (Math.atan2(lagging, powerRatio) * 180) / Math.PI : null,
    harmonics: ORDERS.map((order) => ({
      order,
      current: (full * Math.hypot(...fourier(stretches, order))) as Amperes,
    })),
    distortion: flows ? Math.sqrt(Math.max(0, powerRatio - first * first)) / first : null,
  };
}

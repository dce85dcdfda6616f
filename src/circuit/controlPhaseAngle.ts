/** Phase-angle firing of a resistive load on one phase: each half-wave begins late. */
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Amperes,
  checkBetween,
  checkMeasurable,
  given,
  type Ohms,
  type Volts,
  type Warning,
  type Watts,
} from "../quantity/index.ts";

/**
 * One harmonic of a current.
 * @since 0.1.0
 */
export interface Harmonic {
  /** Its order: 3 for three times the supply frequency. */
  readonly order: number;
  /** Its RMS current, A. */
  readonly current: Amperes;
}

/**
 * A resistive load under phase-angle firing.
 * @since 0.1.0
 */
export interface PhaseAngleFiring {
  /** RMS voltage on the load, V. */
  readonly rmsVoltage: Volts;
  /** RMS current, A: what a true-RMS clamp shows. */
  readonly rmsCurrent: Amperes;
  /** What an average-responding clamp, scaled for a sine, shows, A: too low. */
  readonly averageClamp: Amperes;
  /** Mean rectified voltage on the load, V. */
  readonly meanVoltage: Volts;
  /** Power, W. */
  readonly power: Watts;
  /** Power over power at full conduction. */
  readonly powerRatio: number;
  /** Power factor: RMS voltage over supply voltage. */
  readonly powerFactor: number;
  /** RMS current of the fundamental, A. */
  readonly fundamental: Amperes;
  /** By how much the fundamental lags the supply, degrees, 0 to 90; `null` when nothing flows. */
  readonly lagDegrees: number | null;
  /** Odd harmonics from the 3rd to the 25th. */
  readonly harmonics: readonly Harmonic[];
  /** RMS of all harmonics over the fundamental; `null` when nothing flows. */
  readonly distortion: number | null;
  /** Mean current of one thyristor of the pair, A. */
  readonly thyristorMean: Amperes;
  /** RMS current of one thyristor of the pair, A. */
  readonly thyristorRms: Amperes;
  /** A caution for the neutral while the wave is chopped. */
  readonly warnings: readonly Warning[];
}

/** Triplen harmonics of three equal branches are in phase with one another. */
const NEUTRAL: Warning = {
  code: "caution",
  path: "harmonics",
  message:
    "As branches of a star on the neutral: harmonics 3, 9, 15 and so on add in the neutral, which carries three times each of them though the load is balanced, up to √3 times the line current from 120° on. Size and measure the neutral by true RMS.",
};

const radiansOf = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Power ratio of the rest of each half-wave, β = π − α long: (β − sin 2β / 2)/π. For short ones by its series, because the
 * two terms cancel.
 */
function powerRatioOf(firingDegrees: number): number {
  const rest = Math.PI - radiansOf(firingDegrees);
  if (firingDegrees === 180) return 0;
  if (rest > 0.1) return (rest - Math.sin(2 * rest) / 2) / Math.PI;
  const square = (2 * rest) ** 2;
  const series = 1 - (square / 20) * (1 - (square / 42) * (1 - (square / 72) * (1 - square / 110)));
  return ((2 * rest) ** 3 * series) / (12 * Math.PI);
}

/** RMS of one odd harmonic from the 3rd, over the RMS supply voltage. */
function harmonicRatio(order: number, alpha: number): number {
  const part = (n: number, wave: (x: number) => number): number => wave(n * alpha) / n;
  const cosine = (x: number): number => Math.cos(x) - 1;
  const a = part(order + 1, cosine) - part(order - 1, cosine);
  const b = part(order + 1, Math.sin) - part(order - 1, Math.sin);
  return Math.hypot(a, b) / Math.PI;
}

/**
 * Phase-angle firing of a resistive load on one phase, both half-waves: RMS voltage = voltage × √(1 − α/π + sin 2α/(2π)).
 *
 * Even a pure resistance then draws lagging fundamental current and harmonics. Also each branch of a star on the neutral; a star
 * without neutral is {@link threePhaseAngleFiring}.
 * @param input.voltage - RMS voltage at full conduction, V, more than 0
 * @param input.resistance - of the load, hot, Ω, more than 0
 * @param input.firingDegrees - delay of each half-wave after its zero crossing, degrees, 0 (full) to 180 (off)
 * @returns RMS values, power, power factor, harmonics, meter readings and thyristor currents; a caution for the neutral of a star
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Fourier analysis of a symmetrically chopped sine; Rashid, Power Electronics, full-wave controllers
 * @example
 * ```ts
 * const { rmsVoltage, power, powerFactor } = phaseAngleFiring({
 *   voltage: volts(150), resistance: ohms(8), firingDegrees: 60,
 * });
 * [rmsVoltage, power, powerFactor] // => [134.541, 2262.65, 0.896939]
 * ```
 * @since 0.1.0
 */
export function phaseAngleFiring(input: {
  readonly voltage: Volts;
  readonly resistance: Ohms;
  readonly firingDegrees: number;
}): PhaseAngleFiring {
  given(input);
  const { voltage, resistance, firingDegrees } = input;
  checkMeasurable("voltage", voltage, "V");
  checkMeasurable("resistance", resistance, "Ω");
  checkBetween("firingDegrees", firingDegrees, 0, 180, "°");
  const alpha = radiansOf(firingDegrees);
  const powerRatio = powerRatioOf(firingDegrees);
  const root = Math.sqrt(powerRatio);
  const full = voltage / resistance;
  // The part in phase with the supply carries the power; the other is the lag.
  const lagging = Math.sin(alpha) ** 2 / Math.PI;
  const first = Math.hypot(powerRatio, firingDegrees === 180 ? 0 : lagging);
  const rest = Math.max(0, powerRatio - first * first);
  const mean = firingDegrees === 180 ? 0 : Math.cos(alpha / 2) ** 2;
  const flows = first > 0;
  const orders = Array.from({ length: 12 }, (_, i) => 2 * i + 3);
  return {
    rmsVoltage: (voltage * root) as Volts,
    rmsCurrent: (full * root) as Amperes,
    averageClamp: (full * mean) as Amperes,
    meanVoltage: ((2 * Math.SQRT2 * voltage * mean) / Math.PI) as Volts,
    power: (voltage * full * powerRatio) as Watts,
    powerRatio,
    powerFactor: root,
    fundamental: (full * first) as Amperes,
    lagDegrees: flows ? (Math.atan2(lagging, powerRatio) * 180) / Math.PI : null,
    harmonics: orders.map((order) => ({
      order,
      current: (full * (flows ? harmonicRatio(order, alpha) : 0)) as Amperes,
    })),
    distortion: flows ? Math.sqrt(rest) / first : null,
    thyristorMean: ((Math.SQRT2 * full * mean) / Math.PI) as Amperes,
    thyristorRms: ((full * root) / Math.SQRT2) as Amperes,
    warnings: firingDegrees > 0 && firingDegrees < 180 ? [NEUTRAL] : [],
  };
}

/**
 * Firing angle for a share of full power: the angle at which 1 − α/π + sin 2α/(2π) is that share.
 * @param input.power - wanted power, W, 0 to fullPower
 * @param input.fullPower - power at full conduction, W, more than 0
 * @returns firing angle, degrees, 0 to 180
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Inverse of {@link phaseAngleFiring}
 * @example
 * ```ts
 * firingAngleForPower({ power: watts(1587), fullPower: watts(5290) }) // => 108.6443
 * ```
 * @since 0.1.0
 */
export function firingAngleForPower(input: { readonly power: Watts; readonly fullPower: Watts }): number {
  given(input);
  checkMeasurable("fullPower", input.fullPower, "W");
  checkBetween("power", input.power, 0, input.fullPower, "W");
  const wanted = input.power / input.fullPower;
  if (wanted === 0) return 180;
  if (wanted === 1) return 0;
  const evaluate = (degrees: number): number => powerRatioOf(degrees) - wanted;
  return bracketedRoot({ evaluate, low: 0, high: 180, tolerance: 1e-12 }).root;
}

/**
 * Firing angle for an RMS voltage on the load.
 * @param input.rmsVoltage - wanted or measured RMS voltage on the load, by true-RMS meter, V, 0 to voltage
 * @param input.voltage - RMS voltage at full conduction, V, more than 0
 * @returns firing angle, degrees, 0 to 180
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Inverse of {@link phaseAngleFiring}
 * @example
 * ```ts
 * firingAngleForVoltage({ rmsVoltage: volts(84.8528), voltage: volts(120) }) // => 90.00001458
 * ```
 * @since 0.1.0
 */
export function firingAngleForVoltage(input: {
  readonly rmsVoltage: Volts;
  readonly voltage: Volts;
}): number {
  given(input);
  checkMeasurable("voltage", input.voltage, "V");
  checkBetween("rmsVoltage", input.rmsVoltage, 0, input.voltage, "V");
  const ratio = input.rmsVoltage / input.voltage;
  return firingAngleForPower({ power: (ratio * ratio) as Watts, fullPower: 1 as Watts });
}

/**
 * A resistive load of which one half-wave is fired late and the other passes whole.
 * @since 0.1.0
 */
export interface OneSidedFiring {
  /** RMS voltage on the load, V. */
  readonly rmsVoltage: Volts;
  /** Direct voltage on the load, V, 0 or more. */
  readonly directVoltage: Volts;
  /** Power, W. */
  readonly power: Watts;
  /** Power factor: RMS voltage over supply voltage. */
  readonly powerFactor: number;
  /** A caution where direct current flows. */
  readonly warnings: readonly Warning[];
}

/**
 * One half-wave fired late, the other whole: RMS² = voltage² × (1 + share of the late half-wave)/2, direct voltage √2 × voltage ×
 * (1 − cos α)/(2π). At 180° it is what a pair does after one thyristor has failed open: half the power, and direct current
 * into the transformer.
 * @param input.voltage - RMS voltage at full conduction, V, more than 0
 * @param input.resistance - of the load, hot, Ω, more than 0
 * @param input.firingDegrees - delay of the late half-wave, degrees, 0 to 180 (that half-wave missing)
 * @returns RMS and direct voltage, power, power factor
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Mean and RMS of a sine chopped on one side; Rashid, Power Electronics, half-wave controllers
 * @example
 * ```ts
 * const { rmsVoltage, directVoltage } = oneSidedFiring({ voltage: volts(120), resistance: ohms(10), firingDegrees: 90 });
 * [rmsVoltage, directVoltage] // => [103.923, 27.0095]
 * ```
 * @since 0.1.0
 */
export function oneSidedFiring(input: {
  readonly voltage: Volts;
  readonly resistance: Ohms;
  readonly firingDegrees: number;
}): OneSidedFiring {
  given(input);
  const { voltage, resistance, firingDegrees } = input;
  checkMeasurable("voltage", voltage, "V");
  checkMeasurable("resistance", resistance, "Ω");
  checkBetween("firingDegrees", firingDegrees, 0, 180, "°");
  const share = (1 + powerRatioOf(firingDegrees)) / 2;
  const direct = (Math.SQRT2 * voltage * Math.sin(radiansOf(firingDegrees) / 2) ** 2) / Math.PI;
  return {
    rmsVoltage: (voltage * Math.sqrt(share)) as Volts,
    directVoltage: direct as Volts,
    power: ((voltage * voltage * share) / resistance) as Watts,
    powerFactor: Math.sqrt(share),
    warnings:
      direct > 0
        ? [
            {
              code: "caution",
              path: "directVoltage",
              message:
                "Direct current flows: it saturates transformers, and an average-responding or a current-transformer clamp does not show it.",
              source: "rashid-power-electronics",
            },
          ]
        : [],
  };
}

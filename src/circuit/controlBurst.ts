/** Burst firing: whole cycles on, whole cycles off. Power goes by the duty, currents by its root, meters by their own rule. */
import {
  type Amperes,
  checkBetween,
  checkMeasurable,
  checkWhole,
  fail,
  given,
  type Ohms,
  type Volts,
  type Warning,
  type Watts,
} from "../quantity/index.ts";

/**
 * What two kinds of clamp show under burst firing.
 * @since 0.1.0
 */
export interface BurstReadings {
  /** True-RMS clamp that integrates whole bursts, A. */
  readonly trueRmsClamp: Amperes;
  /** Average-responding clamp, scaled for a sine, that averages whole bursts, A: too low. */
  readonly averageClamp: Amperes;
  /** Mean power over full power: the duty, not the ratio of the currents. */
  readonly powerRatio: number;
  /** What a real clamp does instead. */
  readonly warnings: readonly Warning[];
}

/** Common practice, no published source. */
const CLAMP_CAUTION: Warning = {
  code: "caution",
  path: "trueRmsClamp",
  message:
    "A clamp with a shorter window than the burst jumps between the on current and zero: force 100 % output for acceptance readings.",
  source: "common practice",
};

/**
 * What clamps show under burst firing: true RMS onCurrent × √duty, average-responding onCurrent × duty, both over whole bursts.
 * @param input.onCurrent - RMS current while on, by clamp at forced 100 % output, A, more than 0
 * @param input.duty - share of the time on, 0 to 1
 * @returns both readings, and the share of full power
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of RMS over the burst period
 * @example
 * ```ts
 * const { trueRmsClamp, averageClamp, powerRatio } = burstReadings({ onCurrent: amperes(65), duty: 0.6 });
 * [trueRmsClamp, averageClamp, powerRatio] // => [50.3488, 39, 0.6]
 * ```
 * @since 0.1.0
 */
export function burstReadings(input: { readonly onCurrent: Amperes; readonly duty: number }): BurstReadings {
  given(input);
  checkMeasurable("onCurrent", input.onCurrent, "A");
  checkBetween("duty", input.duty, 0, 1);
  return {
    trueRmsClamp: (input.onCurrent * Math.sqrt(input.duty)) as Amperes,
    averageClamp: (input.onCurrent * input.duty) as Amperes,
    powerRatio: input.duty,
    warnings: input.duty > 0 && input.duty < 1 ? [CLAMP_CAUTION] : [],
  };
}

/**
 * A resistive load under burst firing.
 * @since 0.1.0
 */
export interface BurstFiring extends BurstReadings {
  /** RMS voltage over whole bursts, V. */
  readonly rmsVoltage: Volts;
  /** Mean power, W. */
  readonly meanPower: Watts;
  /** Power while on, W. */
  readonly fullPower: Watts;
  /** RMS current while on, A: what fuses, wires and elements carry. */
  readonly onCurrent: Amperes;
  /** Power factor over whole bursts, √duty; while on it is 1. */
  readonly powerFactor: number;
  /** Mean current of one thyristor of the pair, A. */
  readonly thyristorMean: Amperes;
  /** RMS current of one thyristor of the pair over whole bursts, A. */
  readonly thyristorRms: Amperes;
}

/**
 * Burst firing of a resistive load: mean power = duty × voltage²/resistance, RMS voltage = voltage × √duty.
 * @param input.voltage - RMS voltage on the load while on, V, more than 0
 * @param input.resistance - of the load, hot, Ω, more than 0
 * @param input.duty - share of the time on, 0 to 1; {@link burstDutyFromCycles}
 * @returns powers, RMS values, meter readings and thyristor currents
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of RMS over the burst period; Rashid, Power Electronics, integral-cycle control
 * @example
 * ```ts
 * const { rmsVoltage, meanPower, powerFactor } = burstFiring({ voltage: volts(150), resistance: ohms(8), duty: 0.36 });
 * [rmsVoltage, meanPower, powerFactor] // => [90, 1012.5, 0.6]
 * ```
 * @since 0.1.0
 */
export function burstFiring(input: {
  readonly voltage: Volts;
  readonly resistance: Ohms;
  readonly duty: number;
}): BurstFiring {
  const { voltage, resistance, duty } = given(input);
  checkMeasurable("voltage", voltage, "V");
  checkMeasurable("resistance", resistance, "Ω");
  checkBetween("duty", duty, 0, 1);
  const onCurrent = (voltage / resistance) as Amperes;
  const root = Math.sqrt(duty);
  const fullPower = voltage * onCurrent;
  const peak = Math.SQRT2 * onCurrent;
  return {
    ...burstReadings({ onCurrent, duty }),
    rmsVoltage: (voltage * root) as Volts,
    meanPower: (fullPower * duty) as Watts,
    fullPower: fullPower as Watts,
    onCurrent,
    powerFactor: root,
    thyristorMean: ((duty * peak) / Math.PI) as Amperes,
    thyristorRms: ((peak * root) / 2) as Amperes,
  };
}

/**
 * Duty of a burst: onCycles / (onCycles + offCycles).
 * @param input.onCycles - whole cycles on, 0 or more
 * @param input.offCycles - whole cycles off, 0 or more, not both 0
 * @returns duty, 0 to 1
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when both are 0
 * @source definition
 * @example
 * ```ts
 * burstDutyFromCycles({ onCycles: 36, offCycles: 64 }) // => 0.36
 * ```
 * @since 0.1.0
 */
export function burstDutyFromCycles(input: {
  readonly onCycles: number;
  readonly offCycles: number;
}): number {
  given(input);
  checkWhole("onCycles", input.onCycles, 0, 1_000_000);
  checkWhole("offCycles", input.offCycles, 0, 1_000_000);
  const period = input.onCycles + input.offCycles;
  if (period === 0) {
    fail({ code: "inconsistent", path: "offCycles", expected: "a burst of at least one cycle", received: 0 });
  }
  return input.onCycles / period;
}

/**
 * Duty for a wanted mean power: meanPower / fullPower.
 * @param input.meanPower - wanted mean power, W, 0 to fullPower
 * @param input.fullPower - power at 100 % output: what is left of the module, W, more than 0
 * @returns duty, 0 to 1
 * @throws ElectroheatError `missing`, `not-a-number`; `out-of-range` when the module cannot give it
 * @source definition
 * @example
 * ```ts
 * burstDuty({ meanPower: kilowatts(18), fullPower: kilowatts(30) }) // => 0.6
 * ```
 * @since 0.1.0
 */
export function burstDuty(input: { readonly meanPower: Watts; readonly fullPower: Watts }): number {
  given(input);
  checkMeasurable("fullPower", input.fullPower, "W");
  checkBetween("meanPower", input.meanPower, 0, input.fullPower, "W");
  return input.meanPower / input.fullPower;
}

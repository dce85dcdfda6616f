/** Heat and voltage of one element from two of voltage, current, resistance and power. */
import {
  type BranchAmperes,
  type BranchVolts,
  checkNonNegative,
  checkPositive,
  finiteResult,
  given,
  type Ohms,
  type Open,
  type Watts,
} from "../quantity/index.ts";
import { overResistance } from "./domain.ts";

/**
 * Heat of one element from what is measured at its terminals: P = voltage·current.
 * @param input.voltage - voltage across the element, measured at its terminals while energized, V, 0 or more
 * @param input.current - RMS current through the element, by true-RMS clamp at full conduction, A, 0 or more
 * @returns power, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * powerFromVoltageAndCurrent({ voltage: volts(480), current: amperes(37.5) }) // => 18000
 * ```
 * @since 0.1.0
 */
export function powerFromVoltageAndCurrent(input: {
  readonly voltage: BranchVolts;
  readonly current: BranchAmperes;
}): Watts {
  const { voltage, current } = given(input);
  checkNonNegative("voltage", voltage, "V");
  checkNonNegative("current", current, "A");
  return finiteResult(voltage * current, "W");
}

/**
 * Heat of one element on a voltage: P = voltage²/resistance.
 *
 * An open element gives 0; a shorted one on a voltage is refused, because no element figure follows from it.
 * @param input.voltage - voltage across the element, measured at its terminals while energized, V, 0 or more
 * @param input.resistance - resistance of the element, hot for running, cold for the first second, Ω, more than 0, or `open`
 * @returns power, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `short-circuit`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * powerFromVoltageAndResistance({ voltage: volts(480), resistance: ohms(12.8) }) // => 18000
 * ```
 * @since 0.1.0
 */
export function powerFromVoltageAndResistance(input: {
  readonly voltage: BranchVolts;
  readonly resistance: Ohms | Open;
}): Watts {
  const { voltage, resistance } = given(input);
  checkNonNegative("voltage", voltage, "V");
  return finiteResult(overResistance(voltage * voltage, resistance), "W");
}

/**
 * Heat of one element that carries a current, as in a series string: P = current²·resistance.
 * @param input.current - RMS current through the element, by true-RMS clamp at full conduction, A, 0 or more
 * @param input.resistance - resistance of the element, hot for running, cold for the first second, Ω, 0 or more
 * @returns power, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * powerFromCurrentAndResistance({ current: amperes(37.5), resistance: ohms(12.8) }) // => 18000
 * ```
 * @since 0.1.0
 */
export function powerFromCurrentAndResistance(input: {
  readonly current: BranchAmperes;
  readonly resistance: Ohms;
}): Watts {
  const { current, resistance } = given(input);
  checkNonNegative("current", current, "A");
  checkNonNegative("resistance", resistance, "Ω");
  return finiteResult(current * current * resistance, "W");
}

/**
 * Voltage that an element needs to turn a current into a power: V = power/current.
 * @param input.power - heat of the element, W, 0 or more
 * @param input.current - RMS current through the element, by true-RMS clamp at full conduction, A, more than 0
 * @returns voltage across the element, V
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * voltageFromPowerAndCurrent({ power: watts(18_000), current: amperes(37.5) }) // => 480
 * ```
 * @since 0.1.0
 */
export function voltageFromPowerAndCurrent(input: {
  readonly power: Watts;
  readonly current: BranchAmperes;
}): BranchVolts {
  const { power, current } = given(input);
  checkNonNegative("power", power, "W");
  checkPositive("current", current, "A");
  return finiteResult(power / current, "V");
}

/**
 * Voltage at which an element gives a power: V = √(power·resistance).
 * @param input.power - heat of the element, W, 0 or more
 * @param input.resistance - resistance of the element, hot for running, cold for the first second, Ω, more than 0
 * @returns voltage across the element, V
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * voltageFromPowerAndResistance({ power: watts(18_000), resistance: ohms(12.8) }) // => 480
 * ```
 * @since 0.1.0
 */
export function voltageFromPowerAndResistance(input: {
  readonly power: Watts;
  readonly resistance: Ohms;
}): BranchVolts {
  const { power, resistance } = given(input);
  checkNonNegative("power", power, "W");
  checkPositive("resistance", resistance, "Ω");
  return finiteResult(Math.sqrt(power) * Math.sqrt(resistance), "V");
}

/**
 * Voltage across an element that carries a current: V = current·resistance.
 * @param input.current - RMS current through the element, by true-RMS clamp at full conduction, A, 0 or more
 * @param input.resistance - resistance of the element, hot for running, cold for the first second, Ω, 0 or more
 * @returns voltage across the element, V
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * voltageFromCurrentAndResistance({ current: amperes(37.5), resistance: ohms(12.8) }) // => 480
 * ```
 * @since 0.1.0
 */
export function voltageFromCurrentAndResistance(input: {
  readonly current: BranchAmperes;
  readonly resistance: Ohms;
}): BranchVolts {
  const { current, resistance } = given(input);
  checkNonNegative("current", current, "A");
  checkNonNegative("resistance", resistance, "Ω");
  return finiteResult(current * resistance, "V");
}

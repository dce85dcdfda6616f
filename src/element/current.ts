/** Current and resistance of one element from two of voltage, current, resistance and power. */
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
 * Current that an element draws for a power: I = power/voltage.
 * @param input.power - heat of the element, W, 0 or more
 * @param input.voltage - voltage across the element, measured at its terminals while energized, V, more than 0
 * @returns current through the element, A
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * currentFromPowerAndVoltage({ power: watts(18_000), voltage: volts(480) }) // => 37.5
 * ```
 * @since 0.1.0
 */
export function currentFromPowerAndVoltage(input: {
  readonly power: Watts;
  readonly voltage: BranchVolts;
}): BranchAmperes {
  const { power, voltage } = given(input);
  checkNonNegative("power", power, "W");
  checkPositive("voltage", voltage, "V");
  return finiteResult(power / voltage, "A");
}

/**
 * Current that heats an element to a power: I = √(power/resistance).
 * @param input.power - heat of the element, W, 0 or more
 * @param input.resistance - resistance of the element, hot for running, cold for the first second, Ω, more than 0
 * @returns current through the element, A
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * currentFromPowerAndResistance({ power: watts(18_000), resistance: ohms(12.8) }) // => 37.5
 * ```
 * @since 0.1.0
 */
export function currentFromPowerAndResistance(input: {
  readonly power: Watts;
  readonly resistance: Ohms;
}): BranchAmperes {
  const { power, resistance } = given(input);
  checkNonNegative("power", power, "W");
  checkPositive("resistance", resistance, "Ω");
  return finiteResult(Math.sqrt(power / resistance), "A");
}

/**
 * Current of one element on a voltage: I = voltage/resistance.
 *
 * An open element gives 0; a shorted one on a voltage is refused, because no element figure follows from it.
 * @param input.voltage - voltage across the element, measured at its terminals while energized, V, 0 or more
 * @param input.resistance - resistance of the element, hot for running, cold for the first second, Ω, more than 0, or `open`
 * @returns current through the element, A
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `short-circuit`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * currentFromVoltageAndResistance({ voltage: volts(480), resistance: ohms(12.8) }) // => 37.5
 * ```
 * @since 0.1.0
 */
export function currentFromVoltageAndResistance(input: {
  readonly voltage: BranchVolts;
  readonly resistance: Ohms | Open;
}): BranchAmperes {
  const { voltage, resistance } = given(input);
  checkNonNegative("voltage", voltage, "V");
  return finiteResult(overResistance(voltage, resistance), "A");
}

/**
 * Resistance of an element while it runs, from clamp and voltmeter: R = voltage/current.
 * @param input.voltage - voltage across the element, measured at its terminals while energized, V, more than 0
 * @param input.current - RMS current through the element, by true-RMS clamp at full conduction, A, more than 0
 * @returns resistance at that working point, Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * resistanceFromVoltageAndCurrent({ voltage: volts(480), current: amperes(37.5) }) // => 12.8
 * ```
 * @since 0.1.0
 */
export function resistanceFromVoltageAndCurrent(input: {
  readonly voltage: BranchVolts;
  readonly current: BranchAmperes;
}): Ohms {
  const { voltage, current } = given(input);
  checkPositive("voltage", voltage, "V");
  checkPositive("current", current, "A");
  return finiteResult(voltage / current, "Ω");
}

/**
 * Resistance that an element has at its rating: R = voltage²/power.
 * @param input.voltage - voltage across the element, measured at its terminals while energized, V, more than 0
 * @param input.power - heat of the element, W, more than 0
 * @returns resistance at that working point, Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * resistanceFromVoltageAndPower({ voltage: volts(480), power: watts(18_000) }) // => 12.8
 * ```
 * @since 0.1.0
 */
export function resistanceFromVoltageAndPower(input: {
  readonly voltage: BranchVolts;
  readonly power: Watts;
}): Ohms {
  const { voltage, power } = given(input);
  checkPositive("voltage", voltage, "V");
  checkPositive("power", power, "W");
  return finiteResult((voltage / power) * voltage, "Ω");
}

/**
 * Resistance of an element from its heat and its current: R = power/current².
 * @param input.power - heat of the element, W, more than 0
 * @param input.current - RMS current through the element, by true-RMS clamp at full conduction, A, more than 0
 * @returns resistance at that working point, Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law with Ohm's law; definition
 * @example
 * ```ts
 * resistanceFromPowerAndCurrent({ power: watts(18_000), current: amperes(37.5) }) // => 12.8
 * ```
 * @since 0.1.0
 */
export function resistanceFromPowerAndCurrent(input: {
  readonly power: Watts;
  readonly current: BranchAmperes;
}): Ohms {
  const { power, current } = given(input);
  checkPositive("power", power, "W");
  checkPositive("current", current, "A");
  return finiteResult(power / current / current, "Ω");
}

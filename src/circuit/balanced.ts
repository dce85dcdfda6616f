/** Balanced three-phase heating: plate to amps and ohms and back. Unity power factor, equal branches. */
import {
  type Amperes,
  type BranchVolts,
  checkMeasurable,
  given,
  type LineAmperes,
  type LineVolts,
  type Ohms,
  type Watts,
} from "../quantity/index.ts";
import { type Connection, checkConnection } from "./connection.ts";

/**
 * Line current of a balanced three-phase heating module: I = P/(√3·V).
 * @param input.power - heat at that voltage, from the nameplate, W, more than 0
 * @param input.lineVoltage - voltage between lines, V, more than 0
 * @returns RMS line current, A, the same for star and delta
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of three-phase power at unity power factor
 * @example
 * ```ts
 * lineCurrent({ power: watts(36_000), lineVoltage: volts(480) }) // => 43.3013
 * ```
 * @since 0.1.0
 */
export function lineCurrent(input: { readonly power: Watts; readonly lineVoltage: LineVolts }): LineAmperes {
  const { power, lineVoltage } = given(input);
  checkMeasurable("power", power, "W");
  checkMeasurable("lineVoltage", lineVoltage, "V");
  return (power / (Math.sqrt(3) * lineVoltage)) as LineAmperes;
}

/**
 * Heat of a balanced three-phase heating module from its line current: P = √3·V·I.
 * @param input.lineCurrent - RMS line current, by true-RMS clamp at full conduction, A, more than 0
 * @param input.lineVoltage - voltage between lines measured at the same time, V, more than 0
 * @returns power, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of three-phase power at unity power factor
 * @example
 * ```ts
 * threePhasePower({ lineCurrent: amperes(43.3013), lineVoltage: volts(480) }) // => 36000
 * ```
 * @since 0.1.0
 */
export function threePhasePower(input: {
  readonly lineCurrent: LineAmperes;
  readonly lineVoltage: LineVolts;
}): Watts {
  const { lineCurrent, lineVoltage } = given(input);
  checkMeasurable("lineCurrent", lineCurrent, "A");
  checkMeasurable("lineVoltage", lineVoltage, "V");
  return (Math.sqrt(3) * lineVoltage * lineCurrent) as Watts;
}

/**
 * Power of a resistance at another voltage: P₂ = P₁·(V₂/V₁)². The resistance is taken as constant.
 * @param input.power - power at the rated voltage, W, more than 0
 * @param input.ratedVoltage - the voltage that power belongs to, V, more than 0
 * @param input.voltage - the voltage now, V, more than 0
 * @returns power at that voltage, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Ohm's and Joule's laws
 * @example
 * ```ts
 * powerAtVoltage({ power: watts(60_000), ratedVoltage: volts(480), voltage: volts(462) }) // => 55584.4
 * ```
 * @since 0.1.0
 */
export function powerAtVoltage(input: {
  readonly power: Watts;
  readonly ratedVoltage: LineVolts;
  readonly voltage: LineVolts;
}): Watts {
  const { power, ratedVoltage, voltage } = given(input);
  checkMeasurable("power", power, "W");
  checkMeasurable("ratedVoltage", ratedVoltage, "V");
  checkMeasurable("voltage", voltage, "V");
  const ratio = voltage / ratedVoltage;
  return (power * ratio * ratio) as Watts;
}

/**
 * Resistance of one branch of a balanced bank: star R = V²/P, delta R = 3·V²/P.
 * @param input.connection - star or delta
 * @param input.power - heat of the bank, W, more than 0
 * @param input.lineVoltage - voltage between lines, V, more than 0
 * @returns branch resistance at that power (hot), Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source P = 3·V_branch²/R with V_branch = V/√3 in star, V in delta
 * @example
 * ```ts
 * branchResistance({ connection: "delta", power: watts(54_000), lineVoltage: volts(480) }) // => 12.8
 * ```
 * @since 0.1.0
 */
export function branchResistance(input: {
  readonly connection: Connection;
  readonly power: Watts;
  readonly lineVoltage: LineVolts;
}): Ohms {
  const { connection, power, lineVoltage } = given(input);
  const delta = checkConnection(connection) === "delta";
  checkMeasurable("power", power, "W");
  checkMeasurable("lineVoltage", lineVoltage, "V");
  return (((delta ? 3 : 1) * lineVoltage * lineVoltage) / power) as Ohms;
}

/**
 * Voltage across one branch of a balanced bank: star V/√3, delta V.
 * @param input.connection - star or delta
 * @param input.lineVoltage - voltage between lines, V, more than 0
 * @returns branch voltage, V
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source definitions of star and delta connection
 * @example
 * ```ts
 * branchVoltage({ connection: "star", lineVoltage: volts(480) }) // => 277.128
 * ```
 * @since 0.1.0
 */
export function branchVoltage(input: {
  readonly connection: Connection;
  readonly lineVoltage: LineVolts;
}): BranchVolts {
  const { connection, lineVoltage } = given(input);
  const delta = checkConnection(connection) === "delta";
  checkMeasurable("lineVoltage", lineVoltage, "V");
  return (delta ? lineVoltage : lineVoltage / Math.sqrt(3)) as number as BranchVolts;
}

/**
 * Current in one branch of a balanced bank: star I, delta I/√3.
 * @param input.connection - star or delta
 * @param input.lineCurrent - RMS line current of the bank, A, more than 0
 * @returns branch current, A
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source definitions of star and delta connection
 * @example
 * ```ts
 * branchCurrent({ connection: "delta", lineCurrent: amperes(64.9519) }) // => 37.5
 * ```
 * @since 0.1.0
 */
export function branchCurrent(input: {
  readonly connection: Connection;
  readonly lineCurrent: LineAmperes;
}): Amperes {
  const { connection, lineCurrent } = given(input);
  const delta = checkConnection(connection) === "delta";
  checkMeasurable("lineCurrent", lineCurrent, "A");
  return (delta ? lineCurrent / Math.sqrt(3) : lineCurrent) as Amperes;
}

/**
 * What a healthy module of equal branches reads between any two lines, star or delta alike: R = 2·V²/P.
 *
 * Because both give the same figure, this reading cannot tell star from delta.
 * @param input.power - heat of the module, W, more than 0
 * @param input.lineVoltage - voltage between lines, V, more than 0
 * @returns resistance between two lines at that power (hot), Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source star: two branches of V²/P in series; delta: 3·V²/P beside the other two in series
 * @example
 * ```ts
 * healthyLineToLineResistance({ power: watts(48_000), lineVoltage: volts(480) }) // => 9.6
 * ```
 * @since 0.1.0
 */
export function healthyLineToLineResistance(input: {
  readonly power: Watts;
  readonly lineVoltage: LineVolts;
}): Ohms {
  const { power, lineVoltage } = given(input);
  checkMeasurable("power", power, "W");
  checkMeasurable("lineVoltage", lineVoltage, "V");
  return ((2 * lineVoltage * lineVoltage) / power) as Ohms;
}

/** Elements in series and in parallel on one voltage. */
import {
  type Amperes,
  type BranchVolts,
  checkNonNegative,
  checkOpenOr,
  checkPositive,
  checkWhole,
  fail,
  finiteResult,
  given,
  type Ohms,
  type Open,
  type Volts,
  type Watts,
} from "../quantity/index.ts";
import { overResistance } from "./domain.ts";

/** More elements than this in one group is a slip. */
const MOST = 10_000;

/**
 * Resistance of a group of equal elements: R = resistance·inSeries/inParallel.
 * @param input.resistance - resistance of one element, Ω, 0 or more, or `open`
 * @param input.inSeries - elements in each series string, whole number from 1
 * @param input.inParallel - strings in parallel, whole number from 1
 * @returns resistance of the group, Ω; `open` when every element is
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Ohm's law; definition
 * @example
 * ```ts
 * groupResistance({ resistance: ohms(50), inSeries: 2, inParallel: 3 }) // => 33.3333
 * ```
 * @since 0.1.0
 */
export function groupResistance(input: {
  readonly resistance: Ohms | Open;
  readonly inSeries: number;
  readonly inParallel: number;
}): Ohms | Open {
  given(input);
  const { resistance, inSeries, inParallel } = input;
  checkWhole("inSeries", inSeries, 1, MOST);
  checkWhole("inParallel", inParallel, 1, MOST);
  if (resistance === "open") return "open";
  checkNonNegative("resistance", resistance, "Ω");
  return finiteResult((resistance * inSeries) / inParallel, "Ω");
}

/**
 * One element of a series string or a parallel group.
 * @since 0.1.0
 */
export interface GroupMember {
  /** Its resistance, Ω, or `open`. */
  readonly resistance: Ohms | Open;
  /** Voltage across it, V. */
  readonly voltage: Volts;
  /** Current through it, A. */
  readonly current: Amperes;
  /** Its heat, W. */
  readonly power: Watts;
}

/**
 * A series string or a parallel group on one voltage.
 * @since 0.1.0
 */
export interface ElementGroup {
  /** Resistance between the ends, Ω, or `open`. */
  readonly resistance: Ohms | Open;
  /** Current into the group, A. */
  readonly current: Amperes;
  /** Heat of all elements together, W. */
  readonly power: Watts;
  /** The elements in the order given. */
  readonly elements: readonly GroupMember[];
}

function checkAll(resistances: readonly (Ohms | Open)[]): void {
  if (!Array.isArray(resistances) || resistances.length === 0) {
    fail({ code: "missing", path: "resistances", expected: "at least one element", received: undefined });
  }
  checkWhole("resistances.length", resistances.length, 1, MOST);
  for (const [at, one] of resistances.entries()) {
    checkOpenOr(`resistances.${at}`, one, checkNonNegative);
  }
}

/**
 * Elements in series on one voltage: I = voltage/ΣR, each P = I²·R. The highest resistance runs hardest.
 *
 * With one element open nothing flows and the whole voltage stands across the break (shared in no known way when
 * several are open, which is refused).
 * @param input.voltage - voltage across the whole string, V, 0 or more
 * @param input.resistances - resistance of each element in the order wired, hot values for running, Ω, 0 or more, or `open`
 * @returns resistance, current and power of the string, and every element's share
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `short-circuit`, `not-identifiable` with two open
 * @source Ohm's and Joule's laws; definition
 * @example
 * ```ts
 * seriesString({ voltage: volts(480), resistances: [ohms(8.64), ohms(8)] }).elements.map(({ power }) => power)
 * // => [7189.35, 6656.80]
 * ```
 * @since 0.1.0
 */
export function seriesString(input: {
  readonly voltage: BranchVolts;
  readonly resistances: readonly (Ohms | Open)[];
}): ElementGroup {
  given(input);
  const { voltage, resistances } = input;
  checkNonNegative("voltage", voltage, "V");
  checkAll(resistances);
  const open = resistances.filter((one) => one === "open").length;
  if (open > 1 && voltage > 0) {
    fail({
      code: "not-identifiable",
      path: "resistances",
      expected: "at most one open element, or the voltages across them are undetermined",
      received: open,
    });
  }
  const sum = resistances.reduce<number>((total, one) => total + (one === "open" ? 0 : one), 0);
  const resistance = open > 0 ? "open" : finiteResult<Ohms>(sum, "Ω");
  const current = finiteResult<Amperes>(overResistance(voltage, resistance), "A");
  const elements = resistances.map((one): GroupMember => {
    if (one === "open") {
      return {
        resistance: one,
        voltage: finiteResult(voltage, "V"),
        current: 0 as Amperes,
        power: 0 as Watts,
      };
    }
    const across = finiteResult<Volts>(current * one, "V");
    return {
      resistance: finiteResult(one, "Ω"),
      voltage: across,
      current,
      power: finiteResult(across * current, "W"),
    };
  });
  return { resistance, current, power: finiteResult(voltage * current, "W"), elements };
}

/**
 * Elements in parallel on one voltage: each P = voltage²/R. The lowest resistance runs hardest.
 * @param input.voltage - voltage across the group, V, 0 or more
 * @param input.resistances - resistance of each element, hot values for running, Ω, more than 0, or `open`
 * @returns resistance, current and power of the group, and every element's share
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `short-circuit`
 * @source Ohm's and Joule's laws; definition
 * @example
 * ```ts
 * parallelGroup({ voltage: volts(250), resistances: [ohms(100), ohms(100)] }).power // => 1250
 * ```
 * @since 0.1.0
 */
export function parallelGroup(input: {
  readonly voltage: BranchVolts;
  readonly resistances: readonly (Ohms | Open)[];
}): ElementGroup {
  given(input);
  const { voltage, resistances } = input;
  checkNonNegative("voltage", voltage, "V");
  checkAll(resistances);
  for (const [at, one] of resistances.entries()) {
    checkOpenOr(`resistances.${at}`, one, checkPositive);
  }
  const elements = resistances.map((one): GroupMember => {
    const current = finiteResult<Amperes>(overResistance(voltage, one), "A");
    return {
      resistance: one,
      voltage: finiteResult(voltage, "V"),
      current,
      power: finiteResult(voltage * current, "W"),
    };
  });
  const conductance = resistances.reduce<number>((total, one) => total + (one === "open" ? 0 : 1 / one), 0);
  const current = elements.reduce((total, one) => total + one.current, 0);
  return {
    resistance: conductance === 0 ? "open" : finiteResult<Ohms>(1 / conductance, "Ω"),
    current: finiteResult(current, "A"),
    power: finiteResult(voltage * current, "W"),
    elements,
  };
}

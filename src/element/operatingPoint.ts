/** All four figures of one element from any two of them. */
import {
  type Amperes,
  type BranchAmperes,
  type BranchVolts,
  checkNonNegative,
  checkOpenOr,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Ohms,
  type Open,
  type Volts,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import { currentFromPowerAndResistance, currentFromVoltageAndResistance } from "./current.ts";

/**
 * Voltage, current, resistance and power of one element at one moment.
 * @since 0.1.0
 */
export interface OperatingPoint {
  /** Voltage across the element, V. */
  readonly voltage: Volts;
  /** Current through it, A. */
  readonly current: Amperes;
  /** Its resistance at that moment, Ω, or `open`. */
  readonly resistance: Ohms | Open;
  /** Its heat, W. */
  readonly power: Watts;
  /** What looks like a slip. */
  readonly warnings: readonly Warning[];
}

/** Less than this from a mains voltage is more likely kilowatts typed as watts than a heating element. */
const SUSPICIOUS_POWER = 100;
const SUSPICIOUS_VOLTAGE = 100;

const FIGURES = [
  ["voltage", "V"],
  ["current", "A"],
  ["resistance", "Ω"],
  ["power", "W"],
] as const;

/**
 * Completes the working point of one element from any two of voltage, current, resistance and power.
 *
 * Voltage and resistance: I = voltage/resistance; power and resistance: I = √(power/resistance); the rest from
 * P = voltage·current and V = current·resistance. A live element without current is `open`.
 * @param input.voltage - voltage across the element, measured at its terminals, V, 0 or more
 * @param input.current - RMS current through it, by true-RMS clamp at full conduction, A, 0 or more
 * @param input.resistance - its resistance at that moment (hot while running), Ω, more than 0, or `open`
 * @param input.power - its heat, W, 0 or more
 * @returns all four, with a warning when the power looks like kilowatts typed as watts
 * @throws ElectroheatError `missing` with fewer than two, `inconsistent` with more than two or with an open element
 *   that has power, `not-identifiable` when 0 V and 0 A or 0 W leave the resistance unknown, `not-a-number`, `out-of-range`,
 *   `short-circuit`
 * @source Ohm's and Joule's laws; definition
 * @example
 * ```ts
 * operatingPoint({ voltage: volts(480), power: watts(18_000) })
 * // => { voltage: 480, current: 37.5, resistance: 12.8, power: 18000, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function operatingPoint(input: {
  readonly voltage?: BranchVolts;
  readonly current?: BranchAmperes;
  readonly resistance?: Ohms | Open;
  readonly power?: Watts;
}): OperatingPoint {
  given(input);
  // A figure that is none is named first: it may be the reason why there seem to be too many or too few.
  for (const [name, unit] of FIGURES) {
    const figure = input[name];
    if (figure === undefined) continue;
    if (name === "resistance") checkOpenOr(name, figure as Ohms | Open, checkNonNegative);
    else checkNonNegative(name, figure as number, unit);
  }
  const named = FIGURES.map(([name]) => name).filter((name) => input[name] !== undefined);
  if (named.length !== 2) {
    fail({
      code: named.length < 2 ? "missing" : "inconsistent",
      path: "input",
      expected: "exactly two of voltage, current, resistance, power",
      received: named.length < 2 ? undefined : named.join(", "),
    });
  }
  const { voltage, current, power } = solved(input);
  const warnings: Warning[] = [];
  if (power > 0 && power < SUSPICIOUS_POWER && voltage >= SUSPICIOUS_VOLTAGE) {
    const message = `${Number(power.toPrecision(4))} W on ${Number(voltage.toPrecision(4))} V is little for a heating element: were kilowatts meant?`;
    warnings.push({ code: "suspicious", path: "power", message, limit: SUSPICIOUS_POWER, unit: "W" });
  }
  const resistance =
    input.resistance ?? (current === 0 ? "open" : finiteResult<Ohms>(Number(voltage) / Number(current), "Ω"));
  return {
    voltage: finiteResult(voltage, "V"),
    current: finiteResult(current, "A"),
    resistance,
    power: finiteResult(power, "W"),
    warnings,
  };
}

function solved(input: Parameters<typeof operatingPoint>[0]): {
  readonly voltage: Volts;
  readonly current: Amperes;
  readonly power: Watts;
} {
  const { voltage, current, resistance, power } = input;
  if (resistance === "open" && ((current ?? 0) > 0 || (power ?? 0) > 0)) {
    return fail({
      code: "inconsistent",
      path: "resistance",
      expected: "a resistance, because an open element carries no current",
      received: resistance,
    });
  }
  if (resistance === "open") {
    if (voltage !== undefined) return { voltage, current: 0 as Amperes, power: 0 as Watts };
    return fail({
      code: "not-identifiable",
      path: "voltage",
      expected: "the voltage across an open element",
      received: undefined,
    });
  }
  if (voltage === 0 && (current === 0 || power === 0)) {
    return fail({
      code: "not-identifiable",
      path: "voltage",
      expected: "more than 0 V: without voltage and current a sound and an open element look alike",
      received: voltage,
      unit: "V",
    });
  }
  if (voltage !== undefined) {
    if (current !== undefined) return { voltage, current, power: finiteResult(voltage * current, "W") };
    if (resistance !== undefined) {
      const drawn = currentFromVoltageAndResistance({ voltage, resistance });
      return { voltage, current: drawn, power: finiteResult(voltage * drawn, "W") };
    }
    if (power === 0) return { voltage, current: 0 as Amperes, power };
    checkPositive("voltage", voltage, "V");
    return { voltage, current: finiteResult(Number(power) / voltage, "A"), power: power as Watts };
  }
  if (resistance !== undefined) {
    checkPositive("resistance", resistance, "Ω");
    const drawn = current ?? currentFromPowerAndResistance({ power: power as Watts, resistance });
    const across = finiteResult<Volts>(drawn * resistance, "V");
    return { voltage: across, current: drawn, power: power ?? finiteResult(across * drawn, "W") };
  }
  checkPositive("current", current as Amperes, "A");
  return {
    voltage: finiteResult((power as Watts) / (current as Amperes), "V"),
    current: current as Amperes,
    power: power as Watts,
  };
}

/** The oven as one body at one temperature with constant heat capacity and loss: closed forms. */
import {
  type Celsius,
  fail,
  given,
  type Joules,
  type JoulesPerKelvin,
  onlyFields,
  type Seconds,
  type Watts,
  type WattsPerKelvin,
} from "../quantity/index.ts";
import { checkScale, checkScaleOrZero, checkTemperature } from "./scale.ts";

/**
 * An oven as one body. The two constants are often identified from readings: {@link ovenFromTwoReadings}.
 * @since 0.1.0
 */
export interface LumpedOven {
  /** Heat capacity of everything that is heated, J/K, more than 0. */
  readonly heatCapacity: JoulesPerKelvin;
  /** Loss per kelvin above ambient: walls, openings and exhaust together, W/K, 0 or more. */
  readonly lossConductance: WattsPerKelvin;
  /** Temperature of the room, °C. */
  readonly ambient: Celsius;
}

/**
 * When a set point is reached, or that it never is.
 * @since 0.1.0
 */
export interface HeatUpTime {
  /** Whether the set point is ever reached. */
  readonly reached: boolean;
  /** Time to it, s, or `"never"`. */
  readonly time: Seconds | "never";
  /** Temperature that this power holds for ever, °C; `"unlimited"` without losses. */
  readonly ultimate: Celsius | "unlimited";
  /** Heat capacity over loss, s; `"unlimited"` without losses. */
  readonly timeConstant: Seconds | "unlimited";
  /** Power that just holds the set point, W. */
  readonly holdingPower: Watts;
  /** Electric energy up to the set point, J; `null` if it is never reached. */
  readonly energy: Joules | null;
}

/** Requires an oven whose figures are possible. */
function checkOven(oven: LumpedOven): void {
  checkScale("heatCapacity", oven.heatCapacity, "J/K");
  checkScaleOrZero("lossConductance", oven.lossConductance, "W/K");
  checkTemperature("ambient", oven.ambient);
}

/** Requires a set point that there is something to do for. */
export function checkTarget(target: Celsius, ambient: Celsius, start: Celsius): void {
  checkTemperature("ambient", ambient);
  checkTemperature("start", start);
  checkTemperature("target", target);
  checkAbove("target", target, start > ambient ? "the start" : "ambient", Math.max(ambient, start));
}

function checkAbove(path: string, received: Celsius, which: string, floor: number): void {
  if (received > floor) return;
  fail({ code: "out-of-range", path, expected: `more than ${which}, ${floor}`, received, unit: "°C" });
}

/** Temperature that a power holds for ever. */
export function ultimateOf(power: number, conductance: number, ambient: number): Celsius | "unlimited" {
  const ultimate = ambient + power / conductance;
  return Number.isFinite(ultimate) ? (ultimate as Celsius) : "unlimited";
}

/**
 * Time for an oven to reach a set point: −(heatCapacity/lossConductance) × ln[1 − lossConductance × (target −
 * start)/net], where net = power − lossConductance × (start − ambient).
 *
 * One temperature for everything, constant heat capacity and loss. Where the load lags the air see
 * {@link twoNodeHeatUp}; where specific heat changes see {@link ovenHeatUp}.
 * @param input.heatCapacity - of everything heated, J/K, more than 0
 * @param input.lossConductance - loss per kelvin above ambient, W/K, 0 or more
 * @param input.ambient - room temperature, °C
 * @param input.power - heat into the oven: what is left of the module, from the network, W, 0 or more
 * @param input.target - set point, °C, above ambient and start
 * @param input.start - oven temperature at the start, °C; ambient if left out
 * @returns the time, or `"never"` with the temperature it will end at
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law for one body; any heat-transfer textbook, lumped capacitance
 * @example
 * ```ts
 * const oven = { heatCapacity: kilojoulesPerKelvin(200), lossConductance: wattsPerKelvin(40), ambient: celsius(20) };
 * const { time } = heatUpTime({ ...oven, power: kilowatts(12), target: celsius(200) });
 * const half = heatUpTime({ ...oven, power: kilowatts(6), target: celsius(200) });
 * [time, half.time, half.ultimate] // => [4581.454, "never", 170]
 * ```
 * @since 0.1.0
 */
export function heatUpTime(
  input: LumpedOven & { readonly power: Watts; readonly target: Celsius; readonly start?: Celsius },
): HeatUpTime {
  onlyFields(given(input), ["heatCapacity", "lossConductance", "ambient", "power", "target", "start"]);
  const { heatCapacity, lossConductance, ambient, power, target, start = ambient } = input;
  checkOven(input);
  checkScaleOrZero("power", power, "W");
  checkTarget(target, ambient, start);
  const holding = lossConductance * (target - ambient);
  const net = power - lossConductance * (start - ambient);
  const reached = power > holding;
  const share = (lossConductance * (target - start)) / net;
  const straight = (heatCapacity * (target - start)) / net;
  // For a small share −ln(1 − share)/share goes to 1 without dividing by a loss of zero.
  const time = share > 1e-9 ? (straight * -Math.log1p(-share)) / share : straight * (1 + share / 2);
  const timeConstant = heatCapacity / lossConductance;
  return {
    reached,
    time: reached ? (time as Seconds) : "never",
    ultimate: ultimateOf(power, lossConductance, ambient),
    timeConstant: Number.isFinite(timeConstant) ? (timeConstant as Seconds) : "unlimited",
    holdingPower: holding as Watts,
    energy: reached ? ((power * time) as Joules) : null,
  };
}

/**
 * Temperature of an oven after a time: start + net/lossConductance × (1 − e^(−time/timeConstant)), where net = power −
 * lossConductance × (start − ambient). With no power it is the cooling curve.
 * @param input.heatCapacity - of everything heated, J/K, more than 0
 * @param input.lossConductance - loss per kelvin above ambient, W/K, 0 or more
 * @param input.ambient - room temperature, °C
 * @param input.power - heat into the oven, W, 0 or more
 * @param input.time - since the start, s, 0 or more
 * @param input.start - oven temperature at the start, °C; ambient if left out
 * @returns the temperature, °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law for one body; any heat-transfer textbook, lumped capacitance
 * @example
 * ```ts
 * const oven = { heatCapacity: kilojoulesPerKelvin(200), lossConductance: wattsPerKelvin(40), ambient: celsius(20) };
 * ovenTemperature({ ...oven, power: kilowatts(12), time: hours(1) }) // => 173.974323
 * ```
 * @since 0.1.0
 */
export function ovenTemperature(
  input: LumpedOven & { readonly power: Watts; readonly time: Seconds; readonly start?: Celsius },
): Celsius {
  given(input);
  const { heatCapacity, lossConductance, ambient, power, time, start = ambient } = input;
  checkOven(input);
  checkScaleOrZero("power", power, "W");
  checkScaleOrZero("time", time, "s");
  checkTemperature("start", start);
  const net = power - lossConductance * (start - ambient);
  const share = (lossConductance * time) / heatCapacity;
  const straight = (net * time) / heatCapacity;
  return (start + (share > 1e-9 ? (straight * -Math.expm1(-share)) / share : straight)) as Celsius;
}

/**
 * Time for an oven to cool with the heat off: (heatCapacity/lossConductance) × ln[(start − ambient)/(target − ambient)].
 *
 * One temperature for everything: a thick load, bricks and elements behind a baffle stay hotter than the air, and a fan that stops takes most
 * of the loss with it. It plans a repair; whether it is cold, a thermometer says, and cold is not dead.
 * @param input.heatCapacity - of everything that was heated, J/K, more than 0
 * @param input.lossConductance - loss per kelvin above ambient as it cools, W/K, more than 0
 * @param input.ambient - room temperature, °C
 * @param input.start - oven temperature when the heat goes off, °C, above the target
 * @param input.target - temperature to cool to, °C, above ambient
 * @returns the time, s
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law for one body; any heat-transfer textbook, lumped capacitance
 * @example
 * ```ts
 * const oven = { heatCapacity: kilojoulesPerKelvin(400), lossConductance: wattsPerKelvin(90), ambient: celsius(22) };
 * coolDownTime({ ...oven, start: celsius(220), target: celsius(50) }) // => 8693.6112
 * ```
 * @since 0.1.0
 */
export function coolDownTime(
  input: LumpedOven & { readonly start: Celsius; readonly target: Celsius },
): Seconds {
  const { heatCapacity, lossConductance, ambient, start, target } = given(input);
  checkOven(input);
  checkScale("lossConductance", lossConductance, "W/K");
  checkTarget(target, ambient, ambient);
  checkTemperature("start", start);
  checkAbove("start", start, "the target", target);
  return ((heatCapacity / lossConductance) * Math.log((start - ambient) / (target - ambient))) as Seconds;
}

/**
 * Power that just holds a temperature: lossConductance × (target − ambient).
 * @param input.lossConductance - loss per kelvin above ambient, W/K, 0 or more
 * @param input.ambient - room temperature, °C
 * @param input.target - temperature to hold, °C, above ambient
 * @returns holding power, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law for a steady oven
 * @example
 * ```ts
 * holdingPower({ lossConductance: wattsPerKelvin(40), ambient: celsius(20), target: celsius(200) }) // => 7200
 * ```
 * @since 0.1.0
 */
export function holdingPower(input: {
  readonly lossConductance: WattsPerKelvin;
  readonly ambient: Celsius;
  readonly target: Celsius;
}): Watts {
  given(input);
  checkScaleOrZero("lossConductance", input.lossConductance, "W/K");
  checkTarget(input.target, input.ambient, input.ambient);
  return (input.lossConductance * (input.target - input.ambient)) as Watts;
}

/**
 * Time to store a heat when the mean loss meanwhile is known: storedHeat / (power − meanLoss). A quarter of the power
 * gone costs far more than a quarter of the time.
 * @param input.storedHeat - heat to be stored up to the set point, J, more than 0
 * @param input.meanLoss - mean loss during heat-up: half to two thirds of the loss at set point, W, 0 or more
 * @param input.power - heat into the oven, W, 0 or more
 * @returns the time, s, or `"never"`
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law over the heat-up
 * @example
 * ```ts
 * const oven = { storedHeat: kilowattHours(62), meanLoss: kilowatts(9) };
 * const healthy = heatUpTimeFromMeanLoss({ ...oven, power: kilowatts(40) });
 * const degraded = heatUpTimeFromMeanLoss({ ...oven, power: kilowatts(32) });
 * [healthy, degraded] // => [7200, 9704.35]
 * ```
 * @since 0.1.0
 */
export function heatUpTimeFromMeanLoss(input: {
  readonly storedHeat: Joules;
  readonly meanLoss: Watts;
  readonly power: Watts;
}): Seconds | "never" {
  given(input);
  checkScale("storedHeat", input.storedHeat, "J");
  checkScaleOrZero("meanLoss", input.meanLoss, "W");
  checkScaleOrZero("power", input.power, "W");
  const net = input.power - input.meanLoss;
  return net > 0 ? ((input.storedHeat / net) as Seconds) : "never";
}

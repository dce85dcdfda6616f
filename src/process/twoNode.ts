/** The oven as two bodies: air with structure, which the elements heat, and the load, which lags behind. */
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Celsius,
  given,
  type JoulesPerKelvin,
  type Seconds,
  type Watts,
  type WattsPerKelvin,
} from "../quantity/index.ts";
import { checkTarget } from "./lumped.ts";
import { checkScale, checkScaleOrZero, checkTemperature } from "./scale.ts";

/**
 * An oven as two bodies.
 * @since 0.1.0
 */
export interface TwoNodeOven {
  /** Heat capacity of air and structure, J/K, more than 0. */
  readonly airHeatCapacity: JoulesPerKelvin;
  /** Heat capacity of the load, J/K, more than 0; for steel its mean over the range. */
  readonly loadHeatCapacity: JoulesPerKelvin;
  /** Loss per kelvin of the air above ambient, W/K, more than 0. */
  readonly lossConductance: WattsPerKelvin;
  /** Heat from air to load per kelvin between them: film coefficient × surface of the load, W/K, more than 0. */
  readonly coupling: WattsPerKelvin;
  /** Temperature of the room, °C. */
  readonly ambient: Celsius;
}

/**
 * Both temperatures of a two-body oven.
 * @since 0.1.0
 */
export interface TwoNodeTemperatures {
  /** Air and structure: what the controller sees, °C. */
  readonly air: Celsius;
  /** The load, °C. */
  readonly load: Celsius;
}

/** Rises of air and load above ambient, as functions of time, and the two rates. */
function solution(oven: TwoNodeOven, power: number, start: number) {
  checkScale("airHeatCapacity", oven.airHeatCapacity, "J/K");
  checkScale("loadHeatCapacity", oven.loadHeatCapacity, "J/K");
  checkScale("lossConductance", oven.lossConductance, "W/K");
  checkScale("coupling", oven.coupling, "W/K");
  checkTemperature("ambient", oven.ambient);
  checkTemperature("start", start as Celsius);
  checkScaleOrZero("power", power, "W");
  const airRate = (oven.lossConductance + oven.coupling) / oven.airHeatCapacity;
  const fromLoad = oven.coupling / oven.airHeatCapacity;
  const loadRate = oven.coupling / oven.loadHeatCapacity;
  // The two rates multiply to this; the slow one by division, because their difference would lose its digits.
  const product = (oven.lossConductance / oven.airHeatCapacity) * loadRate;
  const fast =
    (airRate + loadRate) / 2 + Math.hypot((airRate - loadRate) / 2, Math.sqrt(fromLoad * loadRate));
  const slow = product / fast;
  const ultimate = power / oven.lossConductance;
  // Both start equally far from the end, so the load's slope is 0 at first.
  const gap = start - oven.ambient - ultimate;
  const airSlope = (-oven.lossConductance / oven.airHeatCapacity) * gap;
  const at = (time: number) => {
    const [s, f] = [Math.exp(-slow * time), Math.exp(-fast * time)];
    const load = (gap * (fast * s - slow * f)) / (fast - slow);
    const air = (gap * (fast * s - slow * f) + airSlope * (s - f)) / (fast - slow);
    return { air: ultimate + air, load: ultimate + load };
  };
  return { slow, fast, ultimate, at };
}

/**
 * Temperatures of air and load of a two-body oven after a time, both starting equal, in closed form.
 * @param input.airHeatCapacity - of air and structure, J/K, more than 0
 * @param input.loadHeatCapacity - of the load, J/K, more than 0
 * @param input.lossConductance - loss per kelvin of the air above ambient, W/K, more than 0
 * @param input.coupling - heat from air to load per kelvin between them, W/K, more than 0
 * @param input.ambient - room temperature, °C
 * @param input.power - heat into the air, W, 0 or more
 * @param input.time - since the start, s, 0 or more
 * @param input.start - temperature of both at the start, °C; ambient if left out
 * @returns both temperatures
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law for two bodies; linear system of two equations
 * @example
 * ```ts
 * twoNodeTemperatures({
 *   airHeatCapacity: kilojoulesPerKelvin(80), loadHeatCapacity: kilojoulesPerKelvin(120),
 *   lossConductance: wattsPerKelvin(40), coupling: wattsPerKelvin(60),
 *   ambient: celsius(20), power: kilowatts(12), time: hours(1),
 * }) // => { air: 189.985085, load: 130.956083 }
 * ```
 * @since 0.1.0
 */
export function twoNodeTemperatures(
  input: TwoNodeOven & { readonly power: Watts; readonly time: Seconds; readonly start?: Celsius },
): TwoNodeTemperatures {
  given(input);
  const { ambient, power, time, start = ambient } = input;
  checkScaleOrZero("time", time, "s");
  const { air, load } = solution(input, power, start).at(time);
  return { air: (ambient + air) as Celsius, load: (ambient + load) as Celsius };
}

/**
 * When air and load of a two-body oven reach the set point.
 * @since 0.1.0
 */
export interface TwoNodeHeatUp {
  /** Whether the load ever reaches the set point at this power. */
  readonly reached: boolean;
  /** Time until the air is there and the controller begins to throttle, s, or `"never"`. */
  readonly airTime: Seconds | "never";
  /** Time until the load is there at full power, s, or `"never"`. */
  readonly loadTime: Seconds | "never";
  /** The load when the air is there, °C; `null` if it never is. */
  readonly loadWhenAirReaches: Celsius | null;
  /** Temperature that this power holds for ever, °C. */
  readonly ultimate: Celsius;
  /** Slow and fast time constants, s. */
  readonly timeConstants: readonly [Seconds, Seconds];
}

/**
 * Time for the air, and for the load, of a two-body oven to reach the set point at full power. The air is there long before
 * the load: a cure time counts from the load.
 *
 * Full power to the end: a controller that throttles when the air is there makes the load later still.
 * @param input.airHeatCapacity - of air and structure, J/K, more than 0
 * @param input.loadHeatCapacity - of the load, J/K, more than 0
 * @param input.lossConductance - loss per kelvin of the air above ambient, W/K, more than 0
 * @param input.coupling - heat from air to load per kelvin between them, W/K, more than 0
 * @param input.ambient - room temperature, °C
 * @param input.power - heat into the air, W, 0 or more
 * @param input.target - set point, °C, above ambient and start
 * @param input.start - temperature of both at the start, °C; ambient if left out
 * @returns both times, or `"never"` with the temperature it will end at
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law for two bodies; linear system of two equations
 * @example
 * ```ts
 * const { airTime, loadTime } = twoNodeHeatUp({
 *   airHeatCapacity: kilojoulesPerKelvin(80), loadHeatCapacity: kilojoulesPerKelvin(120),
 *   lossConductance: wattsPerKelvin(40), coupling: wattsPerKelvin(60),
 *   ambient: celsius(20), power: kilowatts(12), target: celsius(200),
 * });
 * [airTime, loadTime] // => [4104.93, 6499.636]
 * ```
 * @since 0.1.0
 */
export function twoNodeHeatUp(
  input: TwoNodeOven & { readonly power: Watts; readonly target: Celsius; readonly start?: Celsius },
): TwoNodeHeatUp {
  given(input);
  const { ambient, target, power, start = ambient } = input;
  const { slow, fast, ultimate, at } = solution(input, power, start);
  checkTarget(target, ambient, start);
  const rise = target - ambient;
  const reached = ultimate > rise;
  const timeOf = (node: "air" | "load"): Seconds => {
    let high = 1 / slow;
    // Both rise all the way, so doubling ends: at the latest where the exponential vanishes.
    while (!(at(high)[node] >= rise)) high *= 2;
    const evaluate = (time: number): number => at(time)[node] - rise;
    return bracketedRoot({ evaluate, low: 0, high, tolerance: high * 1e-15 }).root as Seconds;
  };
  const airTime = reached ? timeOf("air") : "never";
  return {
    reached,
    airTime,
    loadTime: reached ? timeOf("load") : "never",
    loadWhenAirReaches: airTime === "never" ? null : ((ambient + at(airTime).load) as Celsius),
    ultimate: (ambient + ultimate) as Celsius,
    timeConstants: [(1 / slow) as Seconds, (1 / fast) as Seconds],
  };
}

/** Torque and preload: T = K·F·d both ways, and as a band. */
import {
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
  given,
  type Meters,
  type NewtonMeters,
  type Newtons,
  type Pascals,
  type SquareMeters,
} from "../quantity/index.ts";

/** Outside of this a nut factor is a slip (percent for ratio, friction for nut factor). */
// biome-ignore lint/suspicious/noConstEnum: compiled into literals, as in quantity/measurable.ts; it stays in this file
const enum NutFactor {
  lowest = 0.03,
  highest = 1,
}

function checkNutFactor(path: string, nutFactor: number): void {
  checkBetween(path, nutFactor, NutFactor.lowest, NutFactor.highest);
}

/**
 * Preload from tightening torque: F = torque/(nutFactor × diameter).
 *
 * One number for one nut factor; the nut factor is not known to better than ±25 %, so use {@link preloadBand} for
 * decisions. Assumes a clean turn of the nut: a torque read later on an aged joint says nothing about the preload.
 * @param input.torque - tightening torque, by torque wrench on the turned side (N·m), 0 or more; not an energy
 * @param input.diameter - nominal thread diameter (m), more than 0
 * @param input.nutFactor - nut factor K, 0.03 to 1
 * @returns preload (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-27
 * @example
 * ```ts
 * preloadFromTorque({ torque: newtonMeters(15), diameter: millimeters(8), nutFactor: 0.2 }) // => 9375
 * ```
 * @since 0.1.0
 */
export function preloadFromTorque(input: {
  readonly torque: NewtonMeters;
  readonly diameter: Meters;
  readonly nutFactor: number;
}): Newtons {
  given(input);
  const { torque, diameter, nutFactor } = input;
  checkMeasurableOrZero("torque", torque, "N·m");
  checkMeasurable("diameter", diameter, "m");
  checkNutFactor("nutFactor", nutFactor);
  return (torque / (nutFactor * diameter)) as Newtons;
}

/**
 * Torque for a preload: T = nutFactor × preload × diameter.
 * @param input.preload - preload wanted (N), 0 or more
 * @param input.diameter - nominal thread diameter (m), more than 0
 * @param input.nutFactor - nut factor K, 0.03 to 1
 * @returns torque (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source as {@link preloadFromTorque}
 * @example
 * ```ts
 * torqueFromPreload({ preload: kilonewtons(132.3), diameter: millimeters(20), nutFactor: 0.18 }) // => 476.28
 * ```
 * @since 0.1.0
 */
export function torqueFromPreload(input: {
  readonly preload: Newtons;
  readonly diameter: Meters;
  readonly nutFactor: number;
}): NewtonMeters {
  given(input);
  const { preload, diameter, nutFactor } = input;
  checkMeasurableOrZero("preload", preload, "N");
  checkMeasurable("diameter", diameter, "m");
  checkNutFactor("nutFactor", nutFactor);
  return (nutFactor * preload * diameter) as NewtonMeters;
}

/**
 * Nut factor from a measured preload: K = torque/(preload × diameter).
 * @param input.torque - torque applied (N·m), more than 0
 * @param input.preload - preload measured (N), more than 0
 * @param input.diameter - nominal thread diameter (m), more than 0
 * @returns nut factor K
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source as {@link preloadFromTorque}
 * @example
 * ```ts
 * nutFactorFromPreload({ torque: poundForceFeet(400), preload: poundsForce(30000), diameter: inches(0.875) }) // => 0.1829
 * ```
 * @since 0.1.0
 */
export function nutFactorFromPreload(input: {
  readonly torque: NewtonMeters;
  readonly preload: Newtons;
  readonly diameter: Meters;
}): number {
  given(input);
  const { torque, preload, diameter } = input;
  checkMeasurable("torque", torque, "N·m");
  checkMeasurable("preload", preload, "N");
  checkMeasurable("diameter", diameter, "m");
  return torque / (preload * diameter);
}

/**
 * A preload as a band.
 * @since 0.1.0
 */
export interface PreloadBand {
  /** Lowest preload, at the highest nut factor (N). */
  readonly low: Newtons;
  /** Highest preload, at the lowest nut factor (N). */
  readonly high: Newtons;
}

/**
 * Preload band from torque: low = torque/(nutFactorHigh × diameter), high = torque/(nutFactorLow × diameter).
 * @param input.torque - tightening torque (N·m), 0 or more
 * @param input.diameter - nominal thread diameter (m), more than 0
 * @param input.nutFactorLow - lowest nut factor of the condition, 0.03 to 1; `nutFactorRange` gives it by name
 * @param input.nutFactorHigh - highest nut factor, `nutFactorLow` to 1
 * @returns lowest and highest preload (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source as {@link preloadFromTorque}
 * @example
 * ```ts
 * const dryToGreased = { nutFactorLow: 0.15, nutFactorHigh: 0.2 };
 * preloadBand({ torque: newtonMeters(15), diameter: millimeters(8), ...dryToGreased }) // => { low: 9375, high: 12500 }
 * ```
 * @since 0.1.0
 */
export function preloadBand(input: {
  readonly torque: NewtonMeters;
  readonly diameter: Meters;
  readonly nutFactorLow: number;
  readonly nutFactorHigh: number;
}): PreloadBand {
  given(input);
  const { torque, diameter, nutFactorLow, nutFactorHigh } = input;
  checkNutFactor("nutFactorLow", nutFactorLow);
  checkNutFactor("nutFactorHigh", nutFactorHigh);
  if (nutFactorLow > nutFactorHigh) {
    fail({
      code: "inconsistent",
      path: "nutFactorLow",
      expected: `at most nutFactorHigh ${nutFactorHigh}`,
      received: nutFactorLow,
    });
  }
  return {
    low: preloadFromTorque({ torque, diameter, nutFactor: nutFactorHigh }),
    high: preloadFromTorque({ torque, diameter, nutFactor: nutFactorLow }),
  };
}

/**
 * Bolt stress that a torque implies: stress = torque/(nutFactor × diameter × stressArea). Laid over a torque table it
 * shows a slipped digit and how gentle the table is.
 * @param input.torque - torque of the table (N·m), 0 or more
 * @param input.diameter - nominal thread diameter (m), more than 0
 * @param input.stressArea - tensile stress area (m²), more than 0
 * @param input.nutFactor - nut factor K taken, 0.03 to 1
 * @returns stress (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source as {@link preloadFromTorque}
 * @example
 * ```ts
 * toMegapascals(impliedBoltStress({
 *   torque: newtonMeters(6.5), diameter: millimeters(6), stressArea: squareMillimeters(20.1), nutFactor: 0.2,
 * })) // => 269.5
 * ```
 * @since 0.1.0
 */
export function impliedBoltStress(input: {
  readonly torque: NewtonMeters;
  readonly diameter: Meters;
  readonly stressArea: SquareMeters;
  readonly nutFactor: number;
}): Pascals {
  given(input);
  checkMeasurable("stressArea", input.stressArea, "m²");
  return (preloadFromTorque(input) / input.stressArea) as Pascals;
}

/** What a change of voltage or air flow does to the surface temperature. */
import {
  checkNonNegative,
  checkPositive,
  finiteResult,
  given,
  type Issue,
  type MetersPerSecond,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";
import type { Cooling } from "./heatBalance.ts";
import { insideTable, isIssue } from "./insideTable.ts";
import { type SurfaceTemperature, surfaceTemperature } from "./surfaceTemperature.ts";

/**
 * A change of running conditions: power and air speed against now.
 * @since 0.1.0
 */
export interface WhatIf {
  /** What happens, in words. */
  readonly name: string;
  /** Power over power now: the square of a change of voltage at constant resistance. */
  readonly powerRatio: number;
  /** Air speed over air speed now; 0 with the fan stopped. */
  readonly airSpeedRatio: number;
}

/**
 * What a change of running conditions does to the surface temperature.
 * @since 0.1.0
 */
export interface WhatIfResult extends WhatIf {
  /** The balance that results; null where it lies outside what the tables cover. */
  readonly balance: SurfaceTemperature | null;
  /** Why there is none. */
  readonly issue: Issue | null;
}

/**
 * The changes a technician asks about: ±20 % voltage, a fifth less air, the fan stopped, a survivor at 1.44 times its power.
 *
 * Powers follow the square of the voltage at constant resistance; NiCr and FeCrAl change by a few per cent only.
 * @returns the cases, the present one first
 * @source definition; 1.44: an element that takes 1.2 times its voltage when a neighbor opens
 * @example
 * ```ts
 * standardWhatIfs().map(({ powerRatio }) => powerRatio) // => [1, 1.44, 0.64, 1, 1, 1.44]
 * ```
 * @since 0.1.0
 */
export function standardWhatIfs(): readonly WhatIf[] {
  const higher = 1.2 * 1.2;
  const lower = 0.8 * 0.8;
  return [
    { name: "as it is", powerRatio: 1, airSpeedRatio: 1 },
    { name: "voltage +20 %", powerRatio: higher, airSpeedRatio: 1 },
    { name: "voltage −20 %", powerRatio: lower, airSpeedRatio: 1 },
    { name: "air flow −20 %", powerRatio: 1, airSpeedRatio: 0.8 },
    { name: "fan stopped", powerRatio: 1, airSpeedRatio: 0 },
    { name: "survivor at 1.44 times its power", powerRatio: higher, airSpeedRatio: 1 },
  ];
}

/**
 * Surface temperature under changed conditions, one result per case; a case beyond the tables is reported, not left out.
 *
 * The air reaches the element at the same temperature in every case; in a real duct it also comes hotter when the flow falls.
 * With the fan stopped the surroundings heat up too: give the hot wall's temperature to see that.
 * @param input.cases - what to try, as {@link standardWhatIfs} lists them; ratios 0 or more
 * @param input.surfaceLoad - heat per area of surface now, W/m², more than 0
 * @param input.shape - `wire`, `coil` or `tube`; a coil adds a caution
 * @param input.diameter - diameter of the wire, or outside diameter of the sheath, m, more than 0
 * @param input.airTemperature - temperature of the air that reaches the element, °C, within the air table
 * @param input.airSpeed - speed of the air across the element now, m/s, 0 in still air
 * @param input.pressure - absolute pressure, by barometer or `pressureAtAltitude`, Pa, more than 0
 * @param input.surroundingsTemperature - temperature of the walls the element sees, °C
 * @param input.emissivity - of the surface, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely, more than 0 to 1
 * @param input.forcedCorrelation - for moving air; left out, `churchill-bernstein`
 * @param input.freeCorrelation - for still air; left out, `morgan`
 * @returns the cases in the order given, each with its balance or the reason why there is none
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source heat balance; correlations as named in the results; Incropera Table A.4 for air
 * @example
 * ```ts
 * surfaceTemperatureWhatIfs({
 *   cases: standardWhatIfs(),
 *   surfaceLoad: wattsPerSquareCentimeter(4),
 *   shape: "tube",
 *   diameter: millimeters(11),
 *   airTemperature: celsius(20),
 *   airSpeed: metersPerSecond(3),
 *   pressure: pascals(100_000),
 *   surroundingsTemperature: celsius(20),
 *   emissivity: 0.88,
 *   radiatingEfficiency: 1,
 *   freeCorrelation: "churchill-chu",
 * }).map(({ balance }) => balance?.surfaceTemperature) // => [477, 589, 356, 496, 620, 589]
 * ```
 * @since 0.1.0
 */
export function surfaceTemperatureWhatIfs(
  input: Cooling & {
    readonly cases: readonly WhatIf[];
    readonly surfaceLoad: WattsPerSquareMeter;
  },
): readonly WhatIfResult[] {
  given(input);
  const { cases, ...now } = input;
  checkPositive("surfaceLoad", now.surfaceLoad, "W/m²");
  return cases.map((one, at): WhatIfResult => {
    checkNonNegative(`cases.${at}.powerRatio`, one.powerRatio);
    checkNonNegative(`cases.${at}.airSpeedRatio`, one.airSpeedRatio);
    const load = finiteResult<WattsPerSquareMeter>(now.surfaceLoad * one.powerRatio, "W/m²");
    const airSpeed = finiteResult<MetersPerSecond>(now.airSpeed * one.airSpeedRatio, "m/s");
    const found = insideTable(() => surfaceTemperature({ ...now, surfaceLoad: load, airSpeed }));
    return isIssue(found) ? { ...one, balance: null, issue: found } : { ...one, balance: found, issue: null };
  });
}

/** Heat a bare bar gives off, the current it can carry, and how hot a current makes it. */

import { airProperties } from "../material/index.ts";
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Amperes,
  type Celsius,
  checkBetween,
  checkMeasurable,
  fail,
  given,
  inField,
  type Meters,
  type OhmMeters,
  type OhmsPerMeter,
  type Pascals,
  type PerKelvin,
  STEFAN_BOLTZMANN,
  type Warning,
  type WattsPerMeter,
  type WattsPerSquareMeterKelvin,
  ZERO_CELSIUS,
} from "../quantity/index.ts";
import { resistivityAt } from "./bar.ts";
import { hotWarnings, JOINT_DEFERRAL } from "./basis.ts";

const GRAVITY = 9.80665;
const SEA_LEVEL = 101325 as Pascals;
/** Where the search for a temperature ends: no bar metal of this room holds a joint there. */
const HOTTEST = 1000;

/**
 * A bare bar standing on edge in still air.
 * @since 0.1.0
 */
export interface BareBar {
  /** Width, standing upright (m). */
  readonly width: Meters;
  /** Thickness (m). */
  readonly thickness: Meters;
  /** Resistivity at 20 °C (Ω·m). */
  readonly resistivity20: OhmMeters;
  /** Temperature coefficient at 20 °C (1/K). */
  readonly coefficient20: PerKelvin;
  /** Emissivity of the surface, 0 to 1. */
  readonly emissivity: number;
  /** Air and surroundings (°C), −50 to 500. */
  readonly air: Celsius;
  /** AC over DC resistance, 1 or more; 1 if left out. */
  readonly skinRatio?: number;
  /** Film coefficient of your own in place of natural convection (W/(m²·K)), such as in a fan's flow. */
  readonly filmCoefficient?: WattsPerSquareMeterKelvin;
}

/**
 * Heat balance of one meter of bar.
 * @since 0.1.0
 */
export interface BarBalance {
  /** Current (A). */
  readonly current: Amperes;
  /** Temperature of the bar (°C). */
  readonly temperature: Celsius;
  /** Heat to the air by convection (W/m). */
  readonly convection: WattsPerMeter;
  /** Heat by radiation (W/m). */
  readonly radiation: WattsPerMeter;
  /** Film coefficient of the convection alone (W/(m²·K)). */
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
  /** Resistance per length at that temperature, skin effect included (Ω/m). */
  readonly resistancePerLength: OhmsPerMeter;
  /** To whom an ampacity defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

function checkBar(bar: BareBar): void {
  given(bar, "bar");
  checkMeasurable("bar.width", bar.width, "m");
  checkMeasurable("bar.thickness", bar.thickness, "m");
  inField("bar", () => resistivityAt(bar.resistivity20, bar.coefficient20, 20 as Celsius));
  checkBetween("bar.emissivity", bar.emissivity, 0, 1);
  checkBetween("bar.air", bar.air, -50, 500, "°C");
  if (bar.skinRatio !== undefined) checkBetween("bar.skinRatio", bar.skinRatio, 1, 10);
  if (bar.filmCoefficient !== undefined) {
    checkMeasurable("bar.filmCoefficient", bar.filmCoefficient, "W/(m²·K)");
  }
}

/**
 * Film coefficient of natural convection on an upright plate of height H in air, laminar: Nu = 0.68 + 0.670·Ra^¼/[1 +
 * (0.492/Pr)^(9/16)]^(4/9), properties at the film temperature.
 * @param input.height - height of the plate, for a bar on edge its width (m), more than 0
 * @param input.surface - surface temperature (°C), above the air to 1000
 * @param input.air - air temperature (°C), −50 to 500
 * @returns film coefficient (W/(m²·K))
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the surface is not warmer
 *   than the air; `outside-table` above Ra = 1e9, where the flow is no longer laminar
 * @source S. W. Churchill and H. H. S. Chu, International Journal of Heat and Mass Transfer 18 (1975) 1323; air: US
 *   Standard Atmosphere 1976
 * @example
 * ```ts
 * plateFilmCoefficient({ height: millimeters(30), surface: celsius(65), air: celsius(35) }) // => 7.9
 * ```
 * @since 0.1.0
 */
export function plateFilmCoefficient(input: {
  readonly height: Meters;
  readonly surface: Celsius;
  readonly air: Celsius;
}): WattsPerSquareMeterKelvin {
  given(input);
  return plateFilm(input, "height");
}

/** @param path - what the height is called by whoever asked */
function plateFilm(
  { height, surface, air }: { readonly height: Meters; readonly surface: Celsius; readonly air: Celsius },
  path: string,
): WattsPerSquareMeterKelvin {
  checkMeasurable(path, height, "m");
  checkBetween("air", air, -50, 500, "°C");
  checkBetween("surface", surface, -50, HOTTEST, "°C");
  if (!(surface > air)) {
    fail({
      code: "inconsistent",
      path: "surface",
      expected: `warmer than the air at ${air}`,
      received: surface,
      unit: "°C",
    });
  }
  const middle = ((surface + air) / 2) as Celsius;
  const film = middle + ZERO_CELSIUS;
  const { thermalConductivity, kinematicViscosity, prandtl } = airProperties({
    temperature: middle,
    pressure: SEA_LEVEL,
  });
  const rayleigh =
    (GRAVITY * (surface - air) * height ** 3 * prandtl) / (film * kinematicViscosity * kinematicViscosity);
  if (rayleigh > 1e9) {
    fail({
      code: "outside-table",
      path,
      expected: `a lower height: a Rayleigh number of at most 1e9, not ${rayleigh}`,
      received: height,
      unit: "m",
    });
  }
  const nusselt = 0.68 + (0.67 * rayleigh ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9);
  return ((nusselt * thermalConductivity) / height) as WattsPerSquareMeterKelvin;
}

function balanceAt(bar: BareBar, temperature: Celsius): BarBalance {
  const { width, thickness, air, emissivity, skinRatio = 1 } = bar;
  const around = 2 * (width + thickness);
  const film = bar.filmCoefficient ?? plateFilm({ height: width, surface: temperature, air }, "bar.width");
  const convection = film * around * (temperature - air);
  const radiation =
    emissivity * STEFAN_BOLTZMANN * around * ((temperature + ZERO_CELSIUS) ** 4 - (air + ZERO_CELSIUS) ** 4);
  const resistivity = resistivityAt(bar.resistivity20, bar.coefficient20, temperature);
  const resistancePerLength = (resistivity * skinRatio) / (width * thickness);
  return {
    current: Math.sqrt((convection + radiation) / resistancePerLength) as Amperes,
    temperature,
    convection: convection as WattsPerMeter,
    radiation: radiation as WattsPerMeter,
    filmCoefficient: film,
    resistancePerLength: resistancePerLength as OhmsPerMeter,
    deferral: JOINT_DEFERRAL,
    warnings: hotWarnings("temperature", temperature),
  };
}

/**
 * Current that holds a bare bar at a temperature: I = √[(convection + radiation)/resistance per length].
 *
 * Natural convection of an upright plate as high as the bar is wide, on all four faces, plus radiation, plus the
 * bar's own growth of resistivity. Against the C11000 table it stands within 0.95 to 1.03 without tuning; DIN 43671
 * lies 6 to 9 % below it for bars up to 5 mm and up to 13 % for wide 10 mm ones (skin effect, neighbors): DIN carries
 * that margin. One bar, no enclosure, no hot neighbors, long enough that its ends do not cool it. A joint in the bar
 * is a separate matter: see `jumperProfile`.
 * @param input.bar - bar, its metal, surface and air; skin ratio and film coefficient where known
 * @param input.temperature - temperature allowed (°C), above the air
 * @returns the balance, with `current` the ampacity
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the air is at or above the
 *   limit
 * @source heat balance; Churchill and Chu 1975; Stefan–Boltzmann law; checked against copper association Table 1 and
 *   DIN 43671
 * @example
 * ```ts
 * const bar = {
 *   width: millimeters(30), thickness: millimeters(5), emissivity: 0.4, air: celsius(35),
 *   resistivity20: ohmMeters(1.7241e-8), coefficient20: perKelvin(0.00393),
 * };
 * barAmpacity({ bar, temperature: celsius(65) }).current // => 414
 * ```
 * @since 0.1.0
 */
export function barAmpacity(input: { readonly bar: BareBar; readonly temperature: Celsius }): BarBalance {
  given(input);
  const { bar, temperature } = input;
  checkBar(bar);
  checkBetween("temperature", temperature, -50, HOTTEST, "°C");
  if (!(temperature > bar.air)) {
    fail({
      code: "inconsistent",
      path: "bar.air",
      expected: `below the temperature allowed for the bar, ${temperature}`,
      received: bar.air,
      unit: "°C",
    });
  }
  return balanceAt(bar, temperature);
}

/**
 * Temperature a current brings a bare bar to: the one where {@link barAmpacity} equals the current.
 * @param input.bar - as for {@link barAmpacity}
 * @param input.current - r.m.s. current (A), more than 0
 * @returns the balance, with `temperature` the answer
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `no-convergence` when no temperature up to 1000
 *   °C balances
 * @source as {@link barAmpacity}
 * @example
 * ```ts
 * const bar = {
 *   width: millimeters(30), thickness: millimeters(5), emissivity: 0.4, air: celsius(35),
 *   resistivity20: ohmMeters(1.7241e-8), coefficient20: perKelvin(0.00393),
 * };
 * barTemperature({ bar, current: amperes(413.6) }).temperature // => 65.0
 * ```
 * @since 0.1.0
 */
export function barTemperature(input: { readonly bar: BareBar; readonly current: Amperes }): BarBalance {
  given(input);
  const { bar, current } = input;
  checkBar(bar);
  checkMeasurable("current", current, "A");
  // At the temperature of the air a bar carries nothing.
  const excess = (temperature: number): number =>
    (temperature > bar.air ? balanceAt(bar, temperature as Celsius).current : 0) - current;
  const top = excess(HOTTEST);
  if (!(top > 0)) {
    fail({
      code: "no-convergence",
      path: "current",
      expected: `a temperature from ${bar.air} to ${HOTTEST} °C that balances; at ${HOTTEST} °C ${-top} A are left over`,
      received: current,
      unit: "A",
    });
  }
  // The upper end of the last bracket: for a current next to nothing the lower one is the air itself.
  const { high } = bracketedRoot({ evaluate: excess, low: bar.air, high: HOTTEST, tolerance: 1e-9 });
  return { ...balanceAt(bar, high as Celsius), current };
}

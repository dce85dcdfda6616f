/** Surface temperature of a wire, coil or tubular element in still or moving air. */
import {
  type Celsius,
  checkFinite,
  checkNonNegative,
  fail,
  given,
  type Warning,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";
import {
  balanceAt,
  type Cooling,
  cylinderOf,
  type HeatBalance,
  solvableRange,
  solveSurface,
} from "./heatBalance.ts";
import { bandOf, type TemperatureBand } from "./temperatureBand.ts";

/**
 * Surface temperature with the whole heat balance behind it.
 * @since 0.1.0
 */
export interface SurfaceTemperature extends HeatBalance {
  /** Radiated part of the load, 0 to 1; null when the load is 0 or a part of it flows the other way. */
  readonly radiationShare: number | null;
  /** How far it may be off: every correlation that applies, each with its convection 15 % up and down. */
  readonly band: TemperatureBand;
  /** Who decides in the end. */
  readonly deferral: string;
}

/** What every calculated temperature of hot equipment says beside its figure. */
export const HOT_DEFERRAL =
  "A calculated temperature is no permission to touch, load or leave hot equipment: measure it; the maker's limits, the local code and a licensed electrician decide.";

/** A balance that misses the load by more than this part of it stands on a step of its correlation. */
const STEP = 1e-6;

function steps(gap: number): Warning {
  const message = `the correlation changes its constants here and steps by ${Number(gap.toPrecision(2))} W/m² or more: the temperature of the step is given`;
  return { code: "approximate", path: "surfaceTemperature", message };
}

/** An end of the band that the tables do not reach must not read as if there were none. */
function openEnd(band: TemperatureBand): readonly Warning[] {
  if (band.low !== null && band.high !== null) return [];
  const end = band.high === null ? "hot" : "cold";
  const message = `the ${end} end of the band lies outside what the tables of air, alloy or constants cover: it is not known`;
  return [{ code: "approximate", path: "band", message }];
}

/** The balance at a load that may depend on the temperature, with its band. */
export function solvedBalance(
  input: Cooling,
  load: (surface: Celsius) => number,
  limits: readonly [number, number],
): SurfaceTemperature {
  const cylinder = cylinderOf(input);
  const surface = solveSurface(input, cylinder, load, limits);
  const found = balanceAt(input, cylinder, surface);
  const { convection, radiation, surfaceLoad } = found;
  const gap = Math.abs(surfaceLoad - load(surface));
  const band = bandOf(input, cylinder, found, load, limits);
  const stepped = gap > STEP * Math.abs(surfaceLoad) ? [steps(gap)] : [];
  const isSplit = surfaceLoad > 0 && convection >= 0 && radiation >= 0;
  return {
    ...found,
    warnings: [...found.warnings, ...stepped, ...openEnd(band)],
    radiationShare: isSplit ? radiation / surfaceLoad : null,
    band,
    deferral: HOT_DEFERRAL,
  };
}

/**
 * Surface temperature of an element in still or moving air: h·(Tₛ − airTemperature) + σ·radiatingEfficiency·emissivity·(Tₛ⁴ −
 * surroundings⁴) = surfaceLoad, solved inside a bracket.
 *
 * One cylinder, across the flow or horizontal in still air, steady. Measured points and correlations differ by up to 17 %: use
 * the band, which takes every correlation that applies with its film coefficient 15 % up and down. Air heated by the element itself, guards, neighboring rows and a coil's
 * own shadow are left out. Above a film temperature of 926.85 °C the air table itself is doubtful. Do not
 * decide from this alone whether hot equipment may be touched or left unattended.
 * @param input.surfaceLoad - heat per area of wire or sheath surface, from {@link surfaceLoad}, W/m², 0 or more
 * @param input.shape - `wire`, `coil` or `tube`; a coil adds a caution, because no general correlation covers it
 * @param input.diameter - diameter of the wire, or outside diameter of the sheath, m, more than 0
 * @param input.airTemperature - temperature of the air that reaches the element, by shielded probe, °C, within the air table
 * @param input.airSpeed - speed of the air across the element, by anemometer in the free section, m/s, 0 in still air
 * @param input.pressure - absolute pressure, by barometer or `pressureAtAltitude`, Pa, more than 0
 * @param input.surroundingsTemperature - temperature of the walls the element sees, °C
 * @param input.emissivity - of the surface, oxidized NiCr about 0.88, FeCrAl about 0.70, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely: 1 for one straight wire or tube, 0.5 to 0.8 for
 *   a coil, more than 0 to 1
 * @param input.forcedCorrelation - for moving air; left out, `churchill-bernstein`
 * @param input.freeCorrelation - for still air; left out, `morgan`
 * @returns the temperature with its band, the split of the heat, the correlation used, warnings and who decides
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` when film or correlation
 *   leave their tables, `no-convergence` with the bracket
 * @source heat balance; correlations as named in the result; Incropera Table A.4 for air
 * @example
 * ```ts
 * surfaceTemperature({
 *   surfaceLoad: wattsPerSquareCentimeter(4),
 *   shape: "tube",
 *   diameter: millimeters(11),
 *   airTemperature: celsius(20),
 *   airSpeed: metersPerSecond(3),
 *   pressure: pascals(100_000),
 *   surroundingsTemperature: celsius(20),
 *   emissivity: 0.88,
 *   radiatingEfficiency: 1,
 * }) // => { surfaceTemperature: 477, regime: "forced", correlation: "churchill-bernstein", radiationShare: 0.39, … }
 * ```
 * @since 0.1.0
 */
export function surfaceTemperature(
  input: Cooling & {
    readonly surfaceLoad: WattsPerSquareMeter;
  },
): SurfaceTemperature {
  given(input);
  const { surfaceLoad } = input;
  checkNonNegative("surfaceLoad", surfaceLoad, "W/m²");
  return solvedBalance(input, () => surfaceLoad, [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
}

/**
 * Heat that an element gives off at a known surface temperature: h·(Tₛ − airTemperature) + σ·radiatingEfficiency·emissivity·(Tₛ⁴ −
 * surroundings⁴).
 *
 * The same model as {@link surfaceTemperature} without a search; the same ±15 % on the convection.
 * @param input.surfaceTemperature - temperature of the surface, by pyrometer or thermocouple, °C
 * @param input.shape - `wire`, `coil` or `tube`; a coil adds a caution
 * @param input.diameter - diameter of the wire, or outside diameter of the sheath, m, more than 0
 * @param input.airTemperature - temperature of the air that reaches the element, °C, within the air table
 * @param input.airSpeed - speed of the air across the element, m/s, 0 in still air
 * @param input.pressure - absolute pressure, by barometer or `pressureAtAltitude`, Pa, more than 0
 * @param input.surroundingsTemperature - temperature of the walls the element sees, °C
 * @param input.emissivity - of the surface, more than 0 to 1
 * @param input.radiatingEfficiency - part of the surface that radiates freely, more than 0 to 1
 * @param input.forcedCorrelation - for moving air; left out, `churchill-bernstein`
 * @param input.freeCorrelation - for still air; left out, `morgan`
 * @returns the heat balance; its `surfaceLoad` is the answer
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table`
 * @source heat balance; correlations as named in the result; Incropera Table A.4 for air
 * @example
 * ```ts
 * heatBalance({
 *   surfaceTemperature: celsius(477.335),
 *   shape: "tube",
 *   diameter: millimeters(11),
 *   airTemperature: celsius(20),
 *   airSpeed: metersPerSecond(3),
 *   pressure: pascals(100_000),
 *   surroundingsTemperature: celsius(20),
 *   emissivity: 0.88,
 *   radiatingEfficiency: 1,
 * }) // => { radiation: 15461, reynolds: 792, filmCoefficient: 54, … }
 * ```
 * @since 0.1.0
 */
export function heatBalance(
  input: Cooling & {
    readonly surfaceTemperature: Celsius;
  },
): HeatBalance {
  given(input);
  const { surfaceTemperature: surface } = input;
  checkFinite("surfaceTemperature", surface, "°C");
  const cylinder = cylinderOf(input);
  const [low, high] = solvableRange(cylinder);
  if (!(surface >= low && surface <= high)) {
    const expected = `${low} to ${high} °C, so that the film stays within the air table`;
    fail({ code: "outside-table", path: "surfaceTemperature", expected, received: surface, unit: "°C" });
  }
  return balanceAt(input, cylinder, surface);
}

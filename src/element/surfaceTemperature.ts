/** Surface temperature of a wire, coil or tubular element in still or moving air. */
import {
  type Celsius,
  checkFinite,
  checkNonNegative,
  fail,
  type Issue,
  isElectroheatError,
  type Meters,
  type MetersPerSecond,
  type Pascals,
  type Warning,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";
import type { CylinderInAir } from "./cylinderFilm.ts";
import { held } from "./domain.ts";
import {
  balanceAt,
  type Cooling,
  cylinderOf,
  type ElementShape,
  type HeatBalance,
  solvableRange,
  solveSurface,
} from "./heatBalance.ts";
import type { ForcedCorrelation, FreeCorrelation } from "./nusselt.ts";

/**
 * Surface temperature by a second pair of correlations.
 * @since 0.1.0
 */
export interface TemperatureBand {
  /** The cooler of the two answers, °C. */
  readonly low: Celsius;
  /** The hotter of the two answers, °C. */
  readonly high: Celsius;
  /** The second correlation. */
  readonly correlation: ForcedCorrelation | FreeCorrelation;
}

/**
 * Surface temperature with the whole heat balance behind it.
 * @since 0.1.0
 */
export interface SurfaceTemperature extends HeatBalance {
  /** Radiated part of the load, 0 to 1; null when the load is 0 or a part of it flows the other way. */
  readonly radiationShare: number | null;
  /** What a second correlation makes of it; null where that one has no figures. */
  readonly band: TemperatureBand | null;
}

/** The correlations that the band is taken from. */
function second(cylinder: CylinderInAir): CylinderInAir {
  const forcedCorrelation =
    cylinder.forcedCorrelation === "churchill-bernstein" ? "hilpert" : "churchill-bernstein";
  const freeCorrelation = cylinder.freeCorrelation === "morgan" ? "churchill-chu" : "morgan";
  return { ...cylinder, forcedCorrelation, freeCorrelation };
}

/** Runs a search that may end outside a table; any other error goes on. */
export function insideTable<T>(search: () => T): T | Issue {
  try {
    return search();
  } catch (error) {
    if (isElectroheatError(error) && error.code === "outside-table") return error.issues[0] as Issue;
    throw error;
  }
}

export function isIssue(found: object): found is Issue {
  return "expected" in found;
}

/** A balance that misses the load by more than this part of it stands on a step of its correlation. */
const STEP = 1e-6;

function steps(gap: number): Warning {
  const message = `the correlation changes its constants here and steps by ${Number(gap.toPrecision(2))} W/m² or more: the temperature of the step is given`;
  return { code: "approximate", path: "surfaceTemperature", message };
}

/** The balance at a load that may depend on the temperature, with the band of the second correlation. */
export function solvedBalance(
  input: Cooling,
  load: (surface: Celsius) => number,
  limits: readonly [number, number],
): SurfaceTemperature {
  const cylinder = cylinderOf(input);
  const surface = solveSurface(input, cylinder, load, limits);
  const found = balanceAt(input, cylinder, surface);
  const other = insideTable(() => {
    const cylinderToo = second(cylinder);
    return balanceAt(input, cylinderToo, solveSurface(input, cylinderToo, load, limits));
  });
  const { convection, radiation, surfaceLoad } = found;
  const gap = Math.abs(surfaceLoad - load(surface));
  const warnings = gap > STEP * Math.abs(surfaceLoad) ? [...found.warnings, steps(gap)] : found.warnings;
  const isSplit = surfaceLoad > 0 && convection >= 0 && radiation >= 0;
  const band = isIssue(other)
    ? null
    : {
        low: held<Celsius>(Math.min(surface, other.surfaceTemperature), "°C"),
        high: held<Celsius>(Math.max(surface, other.surfaceTemperature), "°C"),
        correlation: other.correlation,
      };
  return { ...found, warnings, radiationShare: isSplit ? radiation / surfaceLoad : null, band };
}

/**
 * Surface temperature of an element in still or moving air: h·(Tₛ − airTemperature) + σ·radiatingEfficiency·emissivity·(Tₛ⁴ −
 * surroundings⁴) = surfaceLoad, solved inside a bracket.
 *
 * One cylinder, across the flow or horizontal in still air, steady. Measured points and correlations differ by up to 17 %:
 * read it as ±15 % of the rise and look at the band. Air heated by the element itself, guards, neighboring rows and a coil's
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
 * @returns the temperature with its band, the split of the heat, the correlation used and warnings
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
export function surfaceTemperature(input: {
  readonly surfaceLoad: WattsPerSquareMeter;
  readonly shape: ElementShape;
  readonly diameter: Meters;
  readonly airTemperature: Celsius;
  readonly airSpeed: MetersPerSecond;
  readonly pressure: Pascals;
  readonly surroundingsTemperature: Celsius;
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly forcedCorrelation?: ForcedCorrelation;
  readonly freeCorrelation?: FreeCorrelation;
}): SurfaceTemperature {
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
export function heatBalance(input: {
  readonly surfaceTemperature: Celsius;
  readonly shape: ElementShape;
  readonly diameter: Meters;
  readonly airTemperature: Celsius;
  readonly airSpeed: MetersPerSecond;
  readonly pressure: Pascals;
  readonly surroundingsTemperature: Celsius;
  readonly emissivity: number;
  readonly radiatingEfficiency: number;
  readonly forcedCorrelation?: ForcedCorrelation;
  readonly freeCorrelation?: FreeCorrelation;
}): HeatBalance {
  const { surfaceTemperature: surface } = input;
  checkFinite("surfaceTemperature", surface, "°C");
  const cylinder = cylinderOf(input);
  const [low, high] = solvableRange(cylinder);
  if (!(surface >= low && surface <= high)) {
    const expected = `${low} to ${high}, so that the film stays within the air table`;
    fail({ code: "outside-table", path: "surfaceTemperature", expected, received: surface, unit: "°C" });
  }
  return balanceAt(input, cylinder, surface);
}

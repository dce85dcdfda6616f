/** Heat that a cylinder gives off at a surface temperature, and the temperature at which it gives off a load. */
import air from "../../shared/tables/air-incropera-a4.json" with { type: "json" };
import { bracketedRoot } from "../numeric/index.ts";
import {
  absoluteKelvins,
  type Celsius,
  checkFinite,
  checkNonNegative,
  checkOneOf,
  checkPositive,
  fail,
  finiteResult,
  type Meters,
  type MetersPerSecond,
  type Pascals,
  type Warning,
  type WattsPerSquareMeter,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";
import { type CylinderInAir, type FilmState, filmAt } from "./cylinderFilm.ts";
import { type ForcedCorrelation, type FreeCorrelation, validity } from "./nusselt.ts";
import { radiantSurfaceLoad } from "./radiation.ts";

/**
 * What the element is: a straight `wire`, a `coil` of wire, or a sheathed `tube`. All are taken as one cylinder.
 * @since 0.1.0
 */
export type ElementShape = "wire" | "coil" | "tube";

/**
 * An element and what cools it: one cylinder across the flow, or horizontal in still air. Every heat balance takes these fields.
 * @since 0.1.0
 */
export interface Cooling {
  /** `wire`, `coil` or `tube`; a coil adds a caution, because no general correlation covers it. */
  readonly shape: ElementShape;
  /** Diameter of the wire, or outside diameter of the sheath, m, more than 0. */
  readonly diameter: Meters;
  /** Temperature of the air that reaches the element, by shielded probe, °C, within the air table. */
  readonly airTemperature: Celsius;
  /** Speed of the air across the element, by anemometer in the free section, m/s, 0 in still air. */
  readonly airSpeed: MetersPerSecond;
  /** Absolute pressure, by barometer or `pressureAtAltitude`, Pa, more than 0. */
  readonly pressure: Pascals;
  /** Temperature of the walls the element sees, °C. */
  readonly surroundingsTemperature: Celsius;
  /** Emissivity of the surface, more than 0 to 1. */
  readonly emissivity: number;
  /** Part of the surface that radiates freely: 1 for one straight wire or tube, 0.5 to 0.8 for a coil, more than 0 to 1. */
  readonly radiatingEfficiency: number;
  /** For moving air; left out, `churchill-bernstein`. */
  readonly forcedCorrelation?: ForcedCorrelation;
  /** For still air; left out, `morgan`. */
  readonly freeCorrelation?: FreeCorrelation;
}

/**
 * Where the heat of an element goes at one surface temperature.
 * @since 0.1.0
 */
export interface HeatBalance {
  /** Surface temperature, °C. */
  readonly surfaceTemperature: Celsius;
  /** Heat per area of surface, W/m². */
  readonly surfaceLoad: WattsPerSquareMeter;
  /** Part of it that the air carries off, W/m²; negative when the air is hotter. */
  readonly convection: WattsPerSquareMeter;
  /** Part of it that is radiated, W/m²; negative when the surroundings are hotter. */
  readonly radiation: WattsPerSquareMeter;
  /** `forced` or `free` by what carries more heat; `mixed` where Gr/Re² is 0.1 to 10 and both matter. */
  readonly regime: "forced" | "free" | "mixed";
  /** The correlation behind the film coefficient. */
  readonly correlation: ForcedCorrelation | FreeCorrelation;
  /** Mean of surface and air, °C. */
  readonly filmTemperature: Celsius;
  /** Reynolds number at film temperature, 0 in still air. */
  readonly reynolds: number;
  /** Rayleigh number at film temperature. */
  readonly rayleigh: number;
  /** Grashof number over Reynolds number squared, which tells buoyancy from flow; null in still air. */
  readonly buoyancyRatio: number | null;
  /** Film coefficient taken: the larger of the next two, W/(m²·K). */
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
  /** Film coefficient of the air flow alone, W/(m²·K); null in still air. */
  readonly forcedCoefficient: WattsPerSquareMeterKelvin | null;
  /** Film coefficient of buoyancy alone, W/(m²·K). */
  readonly freeCoefficient: WattsPerSquareMeterKelvin;
  /** What limits the answer. */
  readonly warnings: readonly Warning[];
}

/** No source here allows a heating alloy more than this, °C. */
const HOTTEST_ALLOY = 1400;
const HOTTEST_SOURCE = "maker-a-handbook";

/** A hair inside the ends of the air table, so that a mean of two doubles cannot fall outside. */
const HAIR = 1e-6;

/** First and last temperature of the air table, °C. */
function airRange(): readonly [number, number] {
  const at = (row: number): number => absoluteKelvins(air.rows[row]?.[0] as number);
  return [at(0) + HAIR, at(air.rows.length - 1) - HAIR];
}

/** Checks what the balance does not check elsewhere, and names the correlations that were left out. */
export function cylinderOf(input: Cooling): CylinderInAir {
  const { diameter, airTemperature, airSpeed, pressure } = input;
  checkOneOf("shape", input.shape, ["wire", "coil", "tube"]);
  checkPositive("diameter", diameter, "m");
  checkFinite("airTemperature", airTemperature, "°C");
  checkNonNegative("airSpeed", airSpeed, "m/s");
  checkPositive("pressure", pressure, "Pa");
  const forced = input.forcedCorrelation ?? "churchill-bernstein";
  const free = input.freeCorrelation ?? "morgan";
  checkOneOf("forcedCorrelation", forced, ["churchill-bernstein", "hilpert", "zukauskas"]);
  checkOneOf("freeCorrelation", free, ["morgan", "churchill-chu"]);
  return {
    diameter,
    airTemperature,
    airSpeed,
    pressure,
    forcedCorrelation: forced,
    freeCorrelation: free,
    counted: "larger",
    coefficientScale: 1,
  };
}

/** The two parts of the heat at one surface temperature. */
function partsAt(
  input: Cooling,
  cylinder: CylinderInAir,
  surface: Celsius,
): { readonly state: FilmState; readonly convection: number; readonly radiation: WattsPerSquareMeter } {
  const state = filmAt(cylinder, surface);
  const convection = state.film.coefficient * (surface - cylinder.airTemperature);
  const { surroundingsTemperature, emissivity, radiatingEfficiency } = input;
  const radiation = radiantSurfaceLoad({
    temperature: surface,
    surroundingsTemperature,
    emissivity,
    radiatingEfficiency,
  });
  return { state, convection, radiation };
}

function isMixed({ buoyancyRatio }: FilmState): boolean {
  return buoyancyRatio !== null && buoyancyRatio >= 0.1 && buoyancyRatio <= 10;
}

/** A figure in a message, to three digits. */
function shown(value: number | null): number {
  return Number((value ?? 0).toPrecision(3));
}

function regimeWarnings(shape: ElementShape, state: FilmState, surface: Celsius): readonly Warning[] {
  const warnings: Warning[] = [...state.film.air.warnings];
  if (surface > HOTTEST_ALLOY) {
    const message = `${shown(surface)} °C is above the highest temperature that any source here allows for a heating alloy, ${HOTTEST_ALLOY} °C`;
    const path = "surfaceTemperature";
    warnings.push({
      code: "caution",
      path,
      message,
      limit: HOTTEST_ALLOY,
      unit: "°C",
      source: HOTTEST_SOURCE,
    });
  }
  if (isMixed(state)) {
    const message = `Gr/Re² is ${shown(state.buoyancyRatio)}: buoyancy (${shown(state.freeCoefficient)} W/(m²·K)) and air flow (${shown(state.forcedCoefficient)} W/(m²·K)) both count; the larger was taken, which is no bound: air against buoyancy carries off less than either`;
    warnings.push({ code: "approximate", path: "airSpeed", message, source: "incropera-heat" });
  }
  if (shape === "coil") {
    const message =
      "no general correlation exists for coils: a single straight wire was taken, turns shadow each other, so the wire runs hotter than this";
    warnings.push({ code: "caution", path: "shape", message, source: "resistance-wire-design-notes" });
  }
  return warnings;
}

/** The whole balance at a surface temperature, with its warnings. Outside a table of constants it is an error. */
export function balanceAt(input: Cooling, cylinder: CylinderInAir, surface: Celsius): HeatBalance {
  const { state, convection, radiation } = partsAt(input, cylinder, surface);
  const { film, buoyancyRatio } = state;
  const isFree = film.correlation === "morgan" || film.correlation === "churchill-chu";
  // Without a temperature difference there is no convection, whatever the correlation says.
  const judged = convection === 0 ? [] : validity(film.judged, film.argument.path, film.argument.value);
  return {
    surfaceTemperature: finiteResult(surface, "°C"),
    surfaceLoad: finiteResult(convection + radiation, "W/m²"),
    convection: finiteResult(convection, "W/m²"),
    radiation,
    regime: isMixed(state) ? "mixed" : isFree ? "free" : "forced",
    correlation: film.correlation,
    filmTemperature: finiteResult((surface + cylinder.airTemperature) / 2, "°C"),
    reynolds: finiteResult(state.reynolds, "1"),
    rayleigh: finiteResult(state.rayleigh, "1"),
    buoyancyRatio: buoyancyRatio === null ? null : finiteResult<number>(buoyancyRatio, "1"),
    filmCoefficient: finiteResult(film.coefficient, "W/(m²·K)"),
    forcedCoefficient:
      state.forcedCoefficient === null ? null : finiteResult(state.forcedCoefficient, "W/(m²·K)"),
    freeCoefficient: finiteResult(state.freeCoefficient, "W/(m²·K)"),
    warnings: [...judged, ...regimeWarnings(input.shape, state, surface)],
  };
}

/** Surface temperatures at which the air table can be read. */
export function solvableRange(cylinder: CylinderInAir): readonly [number, number] {
  const [low, high] = airRange();
  const { airTemperature, airSpeed, forcedCorrelation } = cylinder;
  if (!(airTemperature >= low && airTemperature <= high)) {
    fail({
      code: "outside-table",
      path: "airTemperature",
      expected: `${low} to ${high} °C (table ${air.id})`,
      received: airTemperature,
      unit: "°C",
    });
  }
  // Žukauskas reads the air at the surface itself, the others at the film.
  const direct = airSpeed > 0 && forcedCorrelation === "zukauskas";
  return direct ? [low, high] : [2 * low - airTemperature, 2 * high - airTemperature];
}

/** Where the root is looked for, K; a convection answer is not good to a thousandth of this. */
const TOLERANCE = 1e-7;

/**
 * Surface temperature at which the cylinder gives off `load(temperature)`.
 * @param limits - further ends of the search, such as those of a Ct table
 */
export function solveSurface(
  input: Cooling,
  cylinder: CylinderInAir,
  load: (surface: Celsius) => number,
  limits: readonly [number, number],
): Celsius {
  checkFinite("surroundingsTemperature", input.surroundingsTemperature, "°C");
  const [from, to] = solvableRange(cylinder);
  const coldest = Math.min(cylinder.airTemperature, input.surroundingsTemperature);
  const low = Math.max(from, limits[0], coldest);
  const high = Math.min(to, limits[1]);
  const lacking = (surface: number): number => {
    const { convection, radiation } = partsAt(input, cylinder, surface as Celsius);
    return convection + radiation - load(surface as Celsius);
  };
  const atLow = low < high ? lacking(low) : 1;
  if (atLow === 0) return low as Celsius;
  if (atLow > 0 || lacking(high) < 0) {
    fail({
      code: "outside-table",
      path: "surfaceTemperature",
      expected: `a surface from ${low} to ${high} °C, where air and alloy are known; the balance lies ${atLow > 0 ? "below" : "above"}`,
      received: undefined,
      unit: "°C",
    });
  }
  return bracketedRoot({ evaluate: lacking, low, high, tolerance: TOLERANCE }).root as Celsius;
}

/** Radiant exchange in ovens: between two gray surfaces, by way of a re-radiating wall, and with air beside it. */
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Celsius,
  fail,
  given,
  type SquareMeters,
  STEFAN_BOLTZMANN,
  type Watts,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";
import { blackBody, checkEmissivity } from "./radiationLaw.ts";
import { checkScale, checkTemperature } from "./scale.ts";

/**
 * A gray surface that radiates.
 * @since 0.1.0
 */
export interface RadiantSurface {
  /** Its temperature, °C. */
  readonly temperature: Celsius;
  /** Its area, m², more than 0. */
  readonly area: SquareMeters;
  /** Its emissivity, more than 0, up to 1. */
  readonly emissivity: number;
}

function checkSurface(path: string, surface: RadiantSurface): void {
  if (surface === undefined || surface === null)
    fail({ code: "missing", path, expected: "a surface", received: surface });
  checkTemperature(`${path}.temperature`, surface.temperature);
  checkScale(`${path}.area`, surface.area, "m²");
  checkEmissivity(`${path}.emissivity`, surface.emissivity);
}

/** Resistance of a surface that is not black, 1/m². */
const surfaceResistance = (one: { readonly emissivity: number; readonly area: number }): number =>
  (1 - one.emissivity) / (one.emissivity * one.area);

/**
 * Radiant heat from a surface to one that encloses it: σ × area × (hot⁴ − cold⁴) / [1/ε + (area/outer area)(1/outer ε − 1)].
 *
 * Long concentric cylinders, spheres, wide parallel plates (equal areas), or a small body in a large room (outer emissivity
 * then does not matter).
 * @param input.inner - the enclosed surface
 * @param input.outer - the enclosing surface, at least as large
 * @returns net heat from inner to outer, W; negative when the outer one is hotter
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, Table 13.3
 * @example
 * ```ts
 * radiantHeat({
 *   inner: { temperature: absoluteKelvins(1000), area: squareMeters(0.314159265), emissivity: 0.65 },
 *   outer: { temperature: absoluteKelvins(500), area: squareMeters(0.62831853), emissivity: 0.4 },
 * }) // => 7297.755
 * ```
 * @since 0.1.0
 */
export function radiantHeat(input: {
  readonly inner: RadiantSurface;
  readonly outer: RadiantSurface;
}): Watts {
  given(input);
  const { inner, outer } = input;
  checkSurface("inner", inner);
  checkSurface("outer", outer);
  if (!(outer.area >= inner.area))
    fail({
      code: "out-of-range",
      path: "outer.area",
      expected: `the inner area, ${inner.area}, or more`,
      received: outer.area,
      unit: "m²",
    });
  const resistance = surfaceResistance(inner) + 1 / inner.area + surfaceResistance(outer);
  return ((blackBody(inner.temperature) - blackBody(outer.temperature)) / resistance) as Watts;
}

/**
 * A radiant oven with a wall that gives back what it receives.
 * @since 0.1.0
 */
export interface RadiantOven {
  /** Heat from the elements to the work, W. */
  readonly power: Watts;
  /** Temperature that the re-radiating wall takes, °C. */
  readonly wall: Celsius;
}

/**
 * Radiant oven: flat heater panel, flat work, and an insulated wall that re-radiates. Heat goes straight and by way of the wall:
 * σ(T1⁴ − T2⁴) / [(1 − ε1)/(ε1 A1) + 1/(A1 F + 1/[1/(A1 (1 − F)) + 1/(A2 − A1 F)]) + (1 − ε2)/(ε2 A2)].
 * @param input.heater - the hot surface, flat
 * @param input.work - the surface of the work, flat
 * @param input.viewFactor - share of the heater's radiation that meets the work directly, more than 0, less than 1, and at most
 *   work area / heater area
 * @returns heat, and the temperature of the wall
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, equation 13.30
 * @example
 * ```ts
 * const oven = radiantOven({
 *   heater: { temperature: absoluteKelvins(1200), area: squareMeters(1), emissivity: 0.8 },
 *   work: { temperature: absoluteKelvins(500), area: squareMeters(1), emissivity: 0.4 },
 *   viewFactor: 0.5,
 * });
 * [oven.power, toAbsoluteKelvins(oven.wall)] // => [36984.94, 1102.17]
 * ```
 * @since 0.1.0
 */
export function radiantOven(input: {
  readonly heater: RadiantSurface;
  readonly work: RadiantSurface;
  readonly viewFactor: number;
}): RadiantOven {
  given(input);
  const { heater, work, viewFactor } = input;
  checkSurface("heater", heater);
  checkSurface("work", work);
  checkScale("viewFactor", viewFactor);
  const direct = heater.area * viewFactor;
  if (!(viewFactor < 1 && direct < work.area))
    fail({
      code: "out-of-range",
      path: "viewFactor",
      expected: `less than 1 and than work area / heater area, ${work.area / heater.area}`,
      received: viewFactor,
    });
  const [toWall, fromWall] = [heater.area - direct, work.area - direct];
  const exchange = direct + 1 / (1 / toWall + 1 / fromWall);
  const [hot, cold] = [blackBody(heater.temperature), blackBody(work.temperature)];
  const resistance = surfaceResistance(heater) + 1 / exchange + surfaceResistance(work);
  const power = (hot - cold) / resistance;
  const leavingHeater = hot - power * surfaceResistance(heater);
  const leavingWork = cold + power * surfaceResistance(work);
  const leavingWall = (toWall * leavingHeater + fromWall * leavingWork) / (toWall + fromWall);
  return {
    power: power as Watts,
    wall: ((leavingWall / STEFAN_BOLTZMANN) ** 0.25 - 273.15) as Celsius,
  };
}

/**
 * A hot panel that heats air directly and by way of a reflector.
 * @since 0.1.0
 */
export interface ReflectorHeating {
  /** Heat into the air, W. */
  readonly power: Watts;
  /** Share of it that goes by way of the reflector, 0 to 1. */
  readonly reflectorShare: number;
  /** Temperature of the reflector, °C. */
  readonly reflector: Celsius;
}

/**
 * Air heated by a hot flat panel and by the insulated reflector that faces it: the reflector takes the temperature at which what
 * it receives by radiation is what it gives to the air.
 * @param input.panel - the hot surface, flat, hotter than the air
 * @param input.reflectorArea - area of the reflector that closes the space over the panel, m², the panel's or more
 * @param input.reflectorEmissivity - its emissivity, more than 0, up to 1
 * @param input.filmCoefficient - convection on both, W/(m²·K), more than 0
 * @param input.air - mean air temperature, °C
 * @returns heat into the air, its share by way of the reflector, and the reflector's temperature
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 13.4 (example 13.7)
 * @example
 * ```ts
 * reflectorHeating({
 *   panel: { temperature: celsius(700), area: squareMeters(0.04), emissivity: 0.8 },
 *   reflectorArea: squareMeters(0.0628), reflectorEmissivity: 0.8,
 *   filmCoefficient: wattsPerSquareMeterKelvin(78), air: celsius(127),
 * }).reflector // => 366.631
 * ```
 * @since 0.1.0
 */
export function reflectorHeating(input: {
  readonly panel: RadiantSurface;
  readonly reflectorArea: SquareMeters;
  readonly reflectorEmissivity: number;
  readonly filmCoefficient: WattsPerSquareMeterKelvin;
  readonly air: Celsius;
}): ReflectorHeating {
  given(input);
  const { panel, reflectorArea, reflectorEmissivity, filmCoefficient, air } = input;
  checkSurface("panel", panel);
  checkScale("reflectorArea", reflectorArea, "m²");
  checkEmissivity("reflectorEmissivity", reflectorEmissivity);
  checkScale("filmCoefficient", filmCoefficient, "W/(m²·K)");
  checkTemperature("air", air);
  if (!(reflectorArea >= panel.area))
    fail({
      code: "out-of-range",
      path: "reflectorArea",
      expected: `the panel's area, ${panel.area}, or more`,
      received: reflectorArea,
      unit: "m²",
    });
  if (!(panel.temperature > air))
    fail({
      code: "out-of-range",
      path: "panel.temperature",
      expected: `more than the air, ${air}`,
      received: panel.temperature,
      unit: "°C",
    });
  const resistance =
    surfaceResistance(panel) +
    1 / panel.area +
    surfaceResistance({ emissivity: reflectorEmissivity, area: reflectorArea });
  const radiated = (t: number): number => (blackBody(panel.temperature) - blackBody(t)) / resistance;
  const carried = (t: number): number => filmCoefficient * reflectorArea * (t - air);
  const { root } = bracketedRoot({
    evaluate: (t) => radiated(t) - carried(t),
    low: air,
    high: panel.temperature,
    tolerance: 1e-11,
  });
  const byReflector = carried(root);
  const power = byReflector + filmCoefficient * panel.area * (panel.temperature - air);
  return { power: power as Watts, reflectorShare: byReflector / power, reflector: root as Celsius };
}

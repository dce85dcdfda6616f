/** Film coefficient of a cylinder in moving or still air at one surface temperature. */
import { type AirProperties, airProperties } from "../material/index.ts";
import {
  type Celsius,
  type Kelvins,
  type Meters,
  type MetersPerSecond,
  type Pascals,
  toAbsoluteKelvins,
} from "../quantity/index.ts";
import {
  type ForcedCorrelation,
  type FreeCorrelation,
  forcedNusselt,
  freeNusselt,
  type Judged,
} from "./nusselt.ts";

/** Standard gravity, m/s². */
const GRAVITY = 9.80665;

/** The cylinder and the air it stands in. */
export interface CylinderInAir {
  readonly diameter: Meters;
  readonly airTemperature: Celsius;
  readonly airSpeed: MetersPerSecond;
  readonly pressure: Pascals;
  readonly forcedCorrelation: ForcedCorrelation;
  readonly freeCorrelation: FreeCorrelation;
  /** Which film counts in moving air; the band also asks for each alone. */
  readonly counted: "larger" | "forced" | "free";
  /** Multiplies the film coefficient: 1, or the ends of what a correlation is good for. */
  readonly coefficientScale: number;
}

/** What one correlation says. */
export interface Film {
  readonly correlation: ForcedCorrelation | FreeCorrelation;
  readonly judged: Judged;
  /** The number the correlation was judged by: Re, Re·Pr or Ra. */
  readonly argument: { readonly path: string; readonly value: number };
  readonly coefficient: number;
  readonly air: AirProperties;
}

/** The film at one surface temperature. */
export interface FilmState {
  /** The one that counts. */
  readonly film: Film;
  /** Film coefficient of the air flow alone; null in still air. */
  readonly forcedCoefficient: number | null;
  /** Film coefficient of buoyancy alone. */
  readonly freeCoefficient: number;
  /** Reynolds number at film temperature, 0 in still air. */
  readonly reynolds: number;
  readonly rayleigh: number;
  /** Grashof number over Reynolds number squared; null in still air. */
  readonly buoyancyRatio: number | null;
}

function filmOf(
  correlation: Film["correlation"],
  judged: Judged,
  argument: Film["argument"],
  air: AirProperties,
  { diameter, coefficientScale }: CylinderInAir,
): Film {
  const coefficient = ((judged.value * air.thermalConductivity) / diameter) * coefficientScale;
  return { correlation, judged, argument, coefficient, air };
}

function forcedFilm(input: CylinderInAir, surface: Celsius, filmAir: AirProperties, reynolds: number): Film {
  const { forcedCorrelation: correlation, diameter, pressure } = input;
  if (correlation !== "zukauskas") {
    const judged = forcedNusselt(correlation, reynolds, filmAir.prandtl, filmAir.prandtl);
    const product = correlation === "churchill-bernstein";
    const argument = product
      ? { path: "reynolds", value: reynolds * filmAir.prandtl }
      : { path: "reynolds", value: reynolds };
    return filmOf(correlation, judged, argument, filmAir, input);
  }
  // This one takes the properties of the free stream, and the Prandtl number at the surface.
  const stream = airProperties({ temperature: input.airTemperature, pressure });
  const value = (input.airSpeed * diameter) / stream.kinematicViscosity;
  const { prandtl } = airProperties({ temperature: surface, pressure });
  const judged = forcedNusselt(correlation, value, stream.prandtl, prandtl);
  return filmOf(correlation, judged, { path: "reynolds", value }, stream, input);
}

/**
 * The film at a surface temperature. In moving air the still-air film is worked out too and the larger of the two counts,
 * since at low speed buoyancy carries more. Where both act that is an estimate and no bound: flow along with buoyancy carries
 * more than either, flow against it (downward air) less than either.
 */
export function filmAt(input: CylinderInAir, surface: Celsius): FilmState {
  const { diameter, airTemperature, airSpeed, pressure, freeCorrelation } = input;
  const rise = Math.abs(surface - airTemperature) as Kelvins;
  const middle = ((surface + airTemperature) / 2) as Celsius;
  const air = airProperties({ temperature: middle, pressure });
  const { kinematicViscosity: nu, thermalDiffusivity: alpha, prandtl } = air;
  const grashofNu = ((GRAVITY * rise) / toAbsoluteKelvins(middle)) * diameter ** 3;
  const rayleigh = grashofNu / (nu * alpha);
  const freeJudged = freeNusselt(freeCorrelation, rayleigh, prandtl);
  const argument = { path: "rayleigh", value: rayleigh };
  const free = filmOf(freeCorrelation, freeJudged, argument, air, input);
  const freeCoefficient = free.coefficient;
  if (airSpeed === 0) {
    return {
      film: free,
      forcedCoefficient: null,
      freeCoefficient,
      reynolds: 0,
      rayleigh,
      buoyancyRatio: null,
    };
  }
  const reynolds = (airSpeed * diameter) / nu;
  const forced = forcedFilm(input, surface, air, reynolds);
  const isForced =
    input.counted === "larger" ? forced.coefficient >= freeCoefficient : input.counted === "forced";
  const film = isForced ? forced : free;
  const forcedCoefficient = forced.coefficient;
  return {
    film,
    forcedCoefficient,
    freeCoefficient,
    reynolds,
    rayleigh,
    buoyancyRatio: grashofNu / (nu * nu) / (reynolds * reynolds),
  };
}

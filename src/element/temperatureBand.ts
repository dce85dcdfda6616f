/** How far the surface temperature may be off: every correlation that applies, each at both ends of what it is good for. */
import { type Celsius, finiteResult } from "../quantity/index.ts";
import type { CylinderInAir } from "./cylinderFilm.ts";
import { balanceAt, type Cooling, type HeatBalance, solveSurface } from "./heatBalance.ts";
import { insideTable, isIssue } from "./insideTable.ts";
import type { ForcedCorrelation, FreeCorrelation } from "./nusselt.ts";

/**
 * What another correlation makes of the same case.
 * @since 0.1.0
 */
export interface OtherCorrelation {
  /** The correlation. */
  readonly correlation: ForcedCorrelation | FreeCorrelation;
  /** Its answer, °C; null where it has no figures. */
  readonly surfaceTemperature: Celsius | null;
}

/**
 * Range of surface temperatures that the knowledge of convection leaves open.
 * @since 0.1.0
 */
export interface TemperatureBand {
  /** Coldest of all, °C; null when that end lies outside what the tables cover. */
  readonly low: Celsius | null;
  /** Hottest of all, °C; null when that end lies outside what the tables cover: take it as hotter than known. */
  readonly high: Celsius | null;
  /** How far each film coefficient was taken up and down, of itself, 0 to 1. */
  readonly convectionTolerance: number;
  /** The other correlations that apply; where flow and buoyancy both count, those of each alone. */
  readonly others: readonly OtherCorrelation[];
}

/** No correlation of air across a cylinder is good to better than this: on one measured point three of them differ by 17 %. */
const CONVECTION_TOLERANCE = 0.15;

const FORCED: readonly ForcedCorrelation[] = ["churchill-bernstein", "hilpert", "zukauskas"];
const FREE: readonly FreeCorrelation[] = ["morgan", "churchill-chu"];

/** The correlations that apply besides the one taken, each as a cylinder that uses it alone. */
function othersOf(cylinder: CylinderInAir, found: HeatBalance): readonly CylinderInAir[] {
  const { correlation, regime, buoyancyRatio } = found;
  const isFree = correlation === "morgan" || correlation === "churchill-chu";
  // A hair-thin wire at a crawl: conduction carries as much as the flow, though buoyancy is far away.
  const both = regime === "mixed" || (isFree && buoyancyRatio !== null && buoyancyRatio < 0.1);
  const forced = FORCED.map(
    (forcedCorrelation): CylinderInAir => ({ ...cylinder, forcedCorrelation, counted: "forced" }),
  );
  const free = FREE.map(
    (freeCorrelation): CylinderInAir => ({ ...cylinder, freeCorrelation, counted: "free" }),
  );
  const all = both ? [...forced, ...free] : isFree ? free : forced;
  return all.filter((one) => nameOf(one) !== correlation);
}

function nameOf({
  counted,
  forcedCorrelation,
  freeCorrelation,
}: CylinderInAir): OtherCorrelation["correlation"] {
  return counted === "forced" ? forcedCorrelation : freeCorrelation;
}

/**
 * The band round a balance.
 * @param load - heat per area of surface at a surface temperature, W/m²
 * @param limits - further ends of the search, such as those of a Ct table
 */
export function bandOf(
  input: Cooling,
  cylinder: CylinderInAir,
  found: HeatBalance,
  load: (surface: Celsius) => number,
  limits: readonly [number, number],
): TemperatureBand {
  const solved = (one: CylinderInAir): Celsius | null => {
    const answer = insideTable(() => balanceAt(input, one, solveSurface(input, one, load, limits)));
    return isIssue(answer) ? null : answer.surfaceTemperature;
  };
  const others = othersOf(cylinder, found);
  const answers = others.map((one) => solved(one));
  const ends = [cylinder, ...others.filter((_, at) => answers[at] !== null)].map((one) => ({
    less: solved({ ...one, coefficientScale: 1 - CONVECTION_TOLERANCE }),
    more: solved({ ...one, coefficientScale: 1 + CONVECTION_TOLERANCE }),
  }));
  // An element colder than its air is warmed by convection: then more of it is hotter.
  const isHeated = found.convection < 0;
  const hotter = ends.map(({ less, more }) => (isHeated ? more : less));
  const colder = ends.map(({ less, more }) => (isHeated ? less : more));
  const known = [found.surfaceTemperature, ...answers.filter((one) => one !== null)];
  return {
    low: endOf(colder, known, Math.min),
    high: endOf(hotter, known, Math.max),
    convectionTolerance: CONVECTION_TOLERANCE,
    others: others.map((one, at) => ({
      correlation: nameOf(one),
      surfaceTemperature: answers[at] ?? null,
    })),
  };
}

/** One end of the band; open as soon as one of its answers lies outside the tables. */
function endOf(
  answers: readonly (Celsius | null)[],
  known: readonly Celsius[],
  pick: (...values: number[]) => number,
): Celsius | null {
  const found = answers.filter((one) => one !== null);
  return found.length < answers.length ? null : finiteResult<Celsius>(pick(...known, ...found), "°C");
}

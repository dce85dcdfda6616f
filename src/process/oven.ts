/** The oven from its parts: loads, structure, walls and air, each with its own heat, some of it rising with temperature. */
import { airDensity, type BeyondTable } from "../material/index.ts";
import {
  type Celsius,
  type CubicMeters,
  checkBetween,
  fail,
  given,
  givenList,
  inField,
  type Joules,
  type JoulesPerKelvin,
  type JoulesPerKilogramKelvin,
  type Kilograms,
  type Meters,
  onlyFields,
  type Pascals,
  type Warning,
  type WattsPerKelvin,
  type WattsPerMeterKelvin,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";
import { airHeatContent, airKinks, airSpecificHeat, checkInside } from "./airHeat.ts";
import { biotNumber } from "./piece.ts";
import { checkScale, checkScaleOrZero, checkTemperature } from "./scale.ts";
import { checkSteel, STEEL_BREAKS, steelHeatContent, steelRange, steelSpecificHeat } from "./steel.ts";

/**
 * Something heated in the oven: work, racks, trolleys.
 * @since 0.1.0
 */
export interface OvenLoad {
  /** Its mass, kg, more than 0. */
  readonly mass: Kilograms;
  /** Its specific heat, J/(kg·K), or `"carbon steel"` for the law of EN 1993-1-2. */
  readonly specificHeat: JoulesPerKilogramKelvin | "carbon steel";
  /** One piece of it as {@link biotNumber} takes it, to have the heat-up warn where the inside lags; left out, nobody checks. */
  readonly piece?: {
    /** Convection and radiation together, W/(m²·K), more than 0. */
    readonly filmCoefficient: WattsPerSquareMeterKelvin;
    /** Volume over heated surface, m, more than 0: half the thickness of a plate heated on both sides. */
    readonly characteristicLength: Meters;
    /** Of the piece, W/(m·K), more than 0. */
    readonly thermalConductivity: WattsPerMeterKelvin;
  };
}

/**
 * An oven from its parts. At least one of structure, walls, air and loads.
 * @since 0.1.0
 */
export interface OvenPlan {
  /** Temperature of the room, °C. */
  readonly ambient: Celsius;
  /** Loss per kelvin above ambient: walls, openings and exhaust together, W/K, 0 or more. */
  readonly lossConductance: WattsPerKelvin;
  /** Heat capacity of what heats through with the air: ducts, fan, inner skin, J/K, more than 0. */
  readonly structure?: JoulesPerKelvin;
  /** Heat capacity of the insulated walls, and the share of the oven's rise that they take on average: 1/2 for a steady profile. */
  readonly walls?: {
    /** Of the insulated walls, J/K. */
    readonly heatCapacity: JoulesPerKelvin;
    /** Part of the rise that they take on average, 0..1. */
    readonly share: number;
  };
  /** The air inside. Its mass at the start is counted to the end, though part of it is driven out: an upper bound. */
  readonly air?: {
    /** Inner volume, m³. */
    readonly volume: CubicMeters;
    /** Pressure of the air, Pa. */
    readonly pressure: Pascals;
  };
  /** What is heated in it. */
  readonly loads?: readonly OvenLoad[];
  /** Below 20 °C the law of steel ends: `refuse` (default), or `extrapolate` to continue it down to −50 °C. */
  readonly beyondTable?: BeyondTable;
}

/**
 * Heat by where it goes.
 * @since 0.1.0
 */
export interface OvenHeat {
  /** Into the loads, J. */
  readonly loads: Joules;
  /** Into the structure, J. */
  readonly structure: Joules;
  /** Into the walls, J. */
  readonly walls: Joules;
  /** Into the air, J. */
  readonly air: Joules;
}

/** An oven made ready: its heat capacity at a temperature, and its heat between two. */
export interface OvenModel {
  readonly capacity: (temperature: number) => number;
  readonly heat: (from: Celsius, to: Celsius) => OvenHeat;
  /** Temperatures at which the capacity has a step or a kink, rising. */
  readonly breaks: readonly number[];
  /** Between these the sources reach, °C. */
  readonly range: readonly [number, number];
  readonly warnings: readonly Warning[];
}

const PLAN = ["ambient", "lossConductance", "structure", "walls", "air", "loads", "beyondTable"];

function checkPlan(plan: OvenPlan): void {
  onlyFields(plan, PLAN, "oven");
  checkTemperature("oven.ambient", plan.ambient);
  checkScaleOrZero("oven.lossConductance", plan.lossConductance, "W/K");
  if (plan.structure !== undefined) checkScale("oven.structure", plan.structure, "J/K");
  if (plan.walls !== undefined) {
    checkScale("oven.walls.heatCapacity", plan.walls.heatCapacity, "J/K");
    checkBetween("oven.walls.share", plan.walls.share, 0, 1);
  }
  if (plan.air !== undefined) checkScale("oven.air.volume", plan.air.volume, "m³");
  if (plan.loads !== undefined) givenList(plan.loads, "oven.loads");
  (plan.loads ?? []).forEach((load, i) => {
    given(load, `oven.loads.${i}`, "a load");
    checkScale(`oven.loads.${i}.mass`, load.mass, "kg");
    if (load.specificHeat !== "carbon steel") {
      checkScale(`oven.loads.${i}.specificHeat`, load.specificHeat, "J/(kg·K)");
    }
  });
  const nothing = plan.structure === undefined && plan.walls === undefined && plan.air === undefined;
  if (nothing && (plan.loads ?? []).length === 0) {
    fail({
      code: "missing",
      path: "oven.loads",
      expected: "at least one of structure, walls, air, loads",
      received: undefined,
    });
  }
}

function steelWarnings(plan: OvenPlan, start: Celsius): Warning[] {
  const steel = (plan.loads ?? []).some((load) => load.specificHeat === "carbon steel");
  if (!steel || start >= 20) return [];
  return [
    {
      code: "extrapolated",
      path: "start",
      message: "The law of carbon steel begins at 20 °C; its first branch is continued downwards.",
      limit: 20,
      unit: "°C",
      source: "en-1993-1-2",
    },
  ];
}

/** Where the inside of a load lags its surface, one temperature for the whole oven lies. */
function pieceWarnings(loads: readonly OvenLoad[]): Warning[] {
  return loads.flatMap(({ piece }, i) => {
    if (piece === undefined) return [];
    const path = `oven.loads.${i}.piece`;
    given(piece, path);
    return inField(path, () => biotNumber(piece)).warnings.map((one) => ({
      ...one,
      path,
      message: `${one.message} The heat-up counts the heat but not the lag: the inside is later than this time.`,
    }));
  });
}

/** Makes an oven ready for heating from a temperature. */
export function ovenModel(plan: OvenPlan, start: Celsius): OvenModel {
  checkPlan(plan);
  checkTemperature("start", start);
  const beyond = plan.beyondTable === undefined ? {} : { beyondTable: plan.beyondTable };
  const loads = plan.loads ?? [];
  const structure = plan.structure ?? 0;
  const walls = plan.walls === undefined ? 0 : plan.walls.heatCapacity * plan.walls.share;
  const airMass =
    plan.air === undefined
      ? 0
      : plan.air.volume * airDensity({ temperature: start, pressure: plan.air.pressure });
  const steel = loads.some((load) => load.specificHeat === "carbon steel");
  const kinks = airMass > 0 ? airKinks() : [];
  const [steelLow, steelHigh] = steelRange(plan.beyondTable);
  const lows = [-273.15, ...kinks.slice(0, 1), ...(steel ? [steelLow] : [])];
  const highs = [1e6, ...kinks.slice(-1), ...(steel ? [steelHigh] : [])];
  return {
    capacity: (t) => {
      const temperature = t as Celsius;
      let sum = structure + walls;
      if (airMass > 0) sum += airMass * airSpecificHeat(temperature);
      for (const { mass, specificHeat } of loads) {
        sum +=
          mass *
          (specificHeat === "carbon steel" ? steelSpecificHeat({ temperature, ...beyond }) : specificHeat);
      }
      return sum;
    },
    heat: (from, to) => {
      for (const [path, t] of [
        ["start", from],
        ["target", to],
      ] as const) {
        if (steel) checkSteel(path, t, plan.beyondTable);
        if (airMass > 0) checkInside(path, t);
      }
      const rise = to - from;
      let inLoads = 0;
      for (const { mass, specificHeat } of loads) {
        inLoads +=
          mass *
          (specificHeat === "carbon steel" ? steelHeatContent({ from, to, ...beyond }) : specificHeat * rise);
      }
      return {
        loads: inLoads as Joules,
        structure: (structure * rise) as Joules,
        walls: (walls * rise) as Joules,
        air: (airMass > 0 ? airMass * airHeatContent({ from, to }) : 0) as Joules,
      };
    },
    breaks: [...kinks, ...(steel ? STEEL_BREAKS : [])].sort((a, b) => a - b),
    range: [Math.max(...lows), Math.min(...highs)],
    warnings: [...steelWarnings(plan, start), ...pieceWarnings(loads)],
  };
}

/** Conductor metals as one source describes each: resistivity against temperature and what heats and expands. */
import {
  type Celsius,
  checkFinite,
  checkPositive,
  fail,
  finiteResult,
  given,
  type JoulesPerKilogramKelvin,
  type KilogramsPerCubicMeter,
  type Meters,
  type OhmMeters,
  type Ohms,
  type PerKelvin,
  type SquareMeters,
  type Warning,
  type WattsPerMeterKelvin,
} from "../quantity/index.ts";
import type { MeanExpansion, SinglePoint } from "./alloy.ts";
import { type Basis, checkBasis, type Lookup, type Sourced, type TemperatureTable } from "./basis.ts";
import { type BeyondTable, checkPhysical, readCurve } from "./curve.ts";
import { positiveKelvins } from "./kelvin.ts";
import { resistanceOfLength, resistancePerLength } from "./resistance.ts";

/**
 * Resistivity as a straight line: resistivity × (1 + coefficient × (temperature − reference)).
 * @since 0.1.0
 */
export interface LinearResistivity {
  /** Resistivity at the reference temperature, Ω·m. */
  readonly resistivity: OhmMeters;
  /** Reference temperature of both figures, °C. */
  readonly reference: Celsius;
  /** Temperature coefficient at the reference temperature, 1/K. */
  readonly coefficient: PerKelvin;
  /** Where the figures come from. */
  readonly basis: Basis;
}

/**
 * A conductor metal as one source describes it; what the source does not give is absent.
 * @since 0.1.0
 */
export interface ConductorDataset {
  /** Name of the dataset: metal and source. */
  readonly id: string;
  /** The metal. */
  readonly metal: string;
  /** Resistivity as a straight line or as a table. */
  readonly resistivity: LinearResistivity | TemperatureTable<OhmMeters>;
  /** Tolerance of the resistivity as the source states it, 0 to 1. */
  readonly tolerance?: number;
  /** Density at 20 °C. */
  readonly density?: Sourced<KilogramsPerCubicMeter>;
  /** Specific heat against temperature. */
  readonly specificHeat?: TemperatureTable<JoulesPerKilogramKelvin> | SinglePoint<JoulesPerKilogramKelvin>;
  /** Thermal conductivity against temperature. */
  readonly thermalConductivity?: TemperatureTable<WattsPerMeterKelvin> | SinglePoint<WattsPerMeterKelvin>;
  /** Mean expansion between the temperatures given. */
  readonly expansion?: readonly MeanExpansion[];
  /** Melting point. */
  readonly meltingPoint?: Sourced<Celsius>;
}

/** The straight line is good to about this range for copper and aluminum. */
const LINE_FROM = -50;
const LINE_TO = 200;

function onLine(law: LinearResistivity, temperature: Celsius): Lookup<OhmMeters> {
  positiveKelvins(temperature);
  checkBasis("conductor.resistivity.basis", law.basis);
  checkPositive("conductor.resistivity.resistivity", law.resistivity, "Ω·m");
  checkFinite("conductor.resistivity.coefficient", law.coefficient, "1/K");
  checkFinite("conductor.resistivity.reference", law.reference, "°C");
  const value = law.resistivity * (1 + law.coefficient * (temperature - law.reference));
  if (!(value > 0)) {
    const expected = "a temperature at which the straight line is still above 0";
    return fail({ code: "out-of-range", path: "temperature", expected, received: temperature, unit: "°C" });
  }
  const warnings: Warning[] = [];
  if (temperature < LINE_FROM || temperature > LINE_TO) {
    warnings.push({
      code: "outside-validity",
      path: "temperature",
      message: `The straight line of resistivity against temperature holds from about ${LINE_FROM} to ${LINE_TO} °C.`,
      limit: temperature < LINE_FROM ? LINE_FROM : LINE_TO,
      unit: "°C",
      source: law.basis.source,
    });
  }
  return { value: finiteResult(value, "Ω·m"), basis: law.basis, warnings };
}

/**
 * Resistivity of a conductor metal at a temperature: by its straight line, resistivity × (1 + coefficient ×
 * (temperature − reference)), or between the rows of its table. Nickel only goes by table: its resistivity is five
 * times as high at 500 °C as at 20 °C, and no coefficient follows it.
 * @param input - what is looked up
 * @param input.conductor - the metal as one source describes it, such as {@link COPPER_IACS}
 * @param input.temperature - temperature of the metal, °C
 * @param input.beyondTable - for metals by table: `refuse` (default) or `extrapolate`
 * @returns the resistivity in ohm meters (Ω·m) with its source; a warning outside −50 to 200 °C for a straight line
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * const found = conductorResistivity({ conductor: COPPER_IACS, temperature: celsius(75) });
 * toNanoohmMeters(found.value).toFixed(3) // => "20.968"
 * ```
 * @since 0.1.0
 */
export function conductorResistivity(input: {
  readonly conductor: ConductorDataset;
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable | undefined;
}): Lookup<OhmMeters> {
  given(input);
  const { resistivity } = given(input.conductor, "conductor");
  const law = given(resistivity, "conductor.resistivity");
  if ("coefficient" in law) return onLine(law, input.temperature);
  checkBasis("conductor.resistivity.basis", law.basis);
  const read = readCurve({
    xs: law.temperatures,
    ys: law.values,
    at: input.temperature,
    path: "temperature",
    unit: "°C",
    basis: law.basis,
    owner: "conductor.resistivity",
    beyond: input.beyondTable,
  });
  checkPhysical(read.value, input.temperature);
  return { value: read.value as OhmMeters, basis: law.basis, warnings: read.warnings };
}

/**
 * Direct-current resistance of a length of conductor at a temperature: resistivity × length / area. A stranded
 * conductor is about 2 % longer than the cable; alternating current adds skin effect in thick conductors.
 * @param input - what the conductor is
 * @param input.conductor - the metal as one source describes it
 * @param input.area - metal area, by {@link wireSize}, m², more than 0
 * @param input.length - length of the wire, there and back for a loop, m, 0 or more
 * @param input.temperature - temperature of the metal, °C
 * @param input.beyondTable - for metals by table: `refuse` (default) or `extrapolate`
 * @returns the resistance in ohms (Ω) with the source of the resistivity
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * const area = awgArea("10");
 * const found = conductorResistance({ conductor: COPPER_IACS, area, length: feet(1000), temperature: celsius(20) });
 * found.value.toFixed(4) // => "0.9989"
 * ```
 * @since 0.1.0
 */
export function conductorResistance(input: {
  readonly conductor: ConductorDataset;
  readonly area: SquareMeters;
  readonly length: Meters;
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable | undefined;
}): Lookup<Ohms> {
  given(input);
  const { value: resistivity, basis, warnings } = conductorResistivity(input);
  const perLength = resistancePerLength({ resistivity, area: input.area });
  return {
    value: resistanceOfLength({ resistancePerLength: perLength, length: input.length }),
    basis,
    warnings,
  };
}

/** Editions as data: what one holds, whether it is ours or brought by a user. */
import type { Celsius } from "../quantity/index.ts";
import type { LabelledTable } from "./sharedTable.ts";

/**
 * A table of ampacities with the conditions it was made for.
 *
 * Columns: `size`, then one per material and insulation temperature, named so: "copper 75".
 * @since 0.1.0
 */
export interface AmpacityTable extends LabelledTable {
  /** How the conductors run: "raceway", "free air", "high-temperature raceway", or a name of your own. */
  readonly installation: string;
  /** Ambient temperature the table is for (°C). */
  readonly baseAmbient: Celsius;
  /** The other conditions, in words. */
  readonly baseConditions: readonly string[];
  /** What goes with every figure of the table. */
  readonly cautions?: readonly string[];
}

/**
 * Ambient temperature factors for tables of one base temperature.
 *
 * North America: columns `from`, `to`, then one per insulation temperature ("75"). IEC: `ambient`, then one per insulation.
 * @since 0.1.0
 */
export interface AmbientTable extends LabelledTable {
  /** Ambient temperature at which the factor is 1 (°C); fits ampacity tables of the same base only. */
  readonly baseAmbient: Celsius;
}

/**
 * A North American edition brought by the user. Leave out what it does not have; a function that needs it says so.
 * @since 0.1.0
 */
export interface NorthAmericanEdition {
  /** Name printed with every answer. */
  readonly name: string;
  /** Family of rules. */
  readonly system: "North America";
  /** Ampacity tables; the one whose installation is "raceway" also gives the termination columns. */
  readonly ampacity?: readonly AmpacityTable[];
  /** Ambient factors, one table per base temperature. */
  readonly ambient?: readonly AmbientTable[];
  /** Columns `from`, `to`, `percent`. */
  readonly conductorCount?: LabelledTable;
  /** Columns `size`, `material`, `limit`. */
  readonly smallConductors?: LabelledTable;
  /** Columns `to` (A, `null` in the last row) and `temperature` (°C): what terminals without a mark are taken for. */
  readonly terminations?: LabelledTable;
  /** Column `rating`. */
  readonly standardRatings?: LabelledTable;
  /** Columns `equipment`, `clause`, `factor`, `subdivision`, `subdivided load`, `subdivided device`. */
  readonly heatingRules?: LabelledTable;
}

/**
 * Capacities of one insulation, with the conditions the table was made for.
 *
 * Columns: `size`, then one per method and number of loaded conductors, named so: "B2 3", "F trefoil 3".
 * @since 0.1.0
 */
export interface CapacityTable extends LabelledTable {
  /** Insulation: "PVC", "XLPE", or a name of your own. */
  readonly insulation: string;
  /** Conductor material. */
  readonly material: string;
  /** Largest conductor temperature (°C). */
  readonly conductorTemperature: Celsius;
  /** Ambient or ground temperature the table is for (°C). */
  readonly baseAmbient: Celsius;
  /** The other conditions, in words. */
  readonly baseConditions: readonly string[];
}

/**
 * Grouping factors: columns `circuits`, then one per arrangement.
 * @since 0.1.0
 */
export interface GroupingTable extends LabelledTable {
  /** Name to choose it by, since published grouping tables disagree. */
  readonly name: string;
}

/**
 * An edition of the IEC family brought by the user. Leave out what it does not have.
 * @since 0.1.0
 */
export interface IecEdition {
  /** Name printed with every answer. */
  readonly name: string;
  /** Family of rules. */
  readonly system: "IEC";
  /** Capacity tables. */
  readonly capacity?: readonly CapacityTable[];
  /** Ambient air factors, one table per base temperature. */
  readonly ambient?: readonly AmbientTable[];
  /** Grouping tables; the first is taken when none is named. */
  readonly grouping?: readonly GroupingTable[];
  /** Column `rating`. */
  readonly deviceRatings?: LabelledTable;
}

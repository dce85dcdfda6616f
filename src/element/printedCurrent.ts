/** Currents that makers print for straight NiCr wire in still air: to compare a model or a measurement with. */

import coils from "../../shared/tables/coil-current.json" with { type: "json" };
import rises from "../../shared/tables/current-nicr-swg.json" with { type: "json" };
import table from "../../shared/tables/current-temperature-nicr-us.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  type Amperes,
  type Celsius,
  checkFinite,
  checkPositive,
  fail,
  finiteResult,
  given,
  inches,
  type Kelvins,
  type Meters,
  millimeters,
  type OhmsPerMeter,
  ohmsPerMeter,
  type Warning,
} from "../quantity/index.ts";
import { basisOf } from "./domain.ts";

/**
 * A printed current with the wire it was printed for.
 * @since 0.1.0
 */
export interface PrintedCurrent {
  /** RMS current, A. */
  readonly current: Amperes;
  /** Diameter printed beside it, m. */
  readonly diameter: Meters;
  /** Resistance per length printed beside it, Ω/m; null where the table has none. */
  readonly resistancePerLength: OhmsPerMeter | null;
  /** Where it is printed. */
  readonly basis: Basis;
  /** How far to trust it. */
  readonly warnings: readonly Warning[];
}

interface CurrentTable {
  readonly id: string;
  readonly source: string;
  readonly edition: string;
  readonly kind: string;
  readonly columns: readonly { readonly name: string }[];
  readonly rows: readonly (readonly number[])[];
}

/** The cell of a size and of a column whose name ends in "at <number> …". */
function cell(
  from: CurrentTable,
  size: number,
  path: string,
  value: number,
  unit: string,
): { readonly row: readonly number[]; readonly current: Amperes } {
  checkFinite("size", size);
  checkFinite(path, value, unit);
  const row = from.rows.find((one) => one[0] === size);
  if (row === undefined) {
    const expected = `one of ${from.rows.map((one) => one[0]).join(", ")}`;
    return fail({ code: "outside-table", path: "size", expected, received: size });
  }
  const heads = from.columns.map(({ name }) => /^current.*?(\d+)/.exec(name)?.[1]);
  const at = heads.findIndex((head) => head !== undefined && Number(head) === value);
  if (at < 0) {
    const expected = `one of ${heads.filter((head) => head !== undefined).join(", ")} ${unit}: nothing is read between the columns`;
    return fail({ code: "outside-table", path, expected, received: value, unit });
  }
  return { row, current: row[at] as Amperes };
}

function trust(message: string, source: string): readonly Warning[] {
  return [{ code: "approximate", path: "current", message, source }];
}

/**
 * Current printed for a straight bare NiCr wire that stands at a temperature in still air.
 *
 * The maker prints the same figures for NiCr 80/20 and 60/15, which differ by 4 % in resistivity: they are good to about 5 %.
 * A close coil reaches the temperature at 0.4 to 0.7 of the current (common practice). For other sizes and temperatures
 * use `heatBalance` and `currentFromSurfaceLoad`, which lie within 16 % of every printed figure.
 * @param input.size - AWG number, whole, 20 to 36
 * @param input.temperature - wire temperature, °C, whole hundreds from 200 to 1100
 * @returns the printed current and diameter with their source
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table`
 * @source United States resistance-wire maker, alloy pages
 * @example
 * ```ts
 * printedCurrentAtTemperature({ size: 20, temperature: celsius(600) }).current // => 8.2
 * ```
 * @since 0.1.0
 */
export function printedCurrentAtTemperature(input: {
  readonly size: number;
  readonly temperature: Celsius;
}): PrintedCurrent {
  given(input);
  const { row, current } = cell(table as CurrentTable, input.size, "temperature", input.temperature, "°C");
  const message =
    "printed alike for two alloys of different resistivity: good to about 5 %, for straight wire in still air";
  return {
    current,
    diameter: inches(row[1] as number),
    resistancePerLength: null,
    basis: basisOf(table),
    warnings: trust(message, table.source),
  };
}

/**
 * Current printed for a straight NiCr wire that rises by 500 K or 1000 K in still air.
 *
 * Coarse: a reference page without ambient or composition; the wire model lies within 25 % of every printed figure.
 * @param input.size - SWG number, even, 12 to 40
 * @param input.rise - rise of the wire over the air, K, 500 or 1000
 * @returns the printed current, diameter and resistance per length with their source
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table`
 * @source general engineering reference page, nickel-chromium heater wire, temperature rise against amperes
 * @example
 * ```ts
 * printedCurrentForRise({ size: 18, rise: kelvins(500) }).current // => 13
 * ```
 * @since 0.1.0
 */
export function printedCurrentForRise(input: {
  readonly size: number;
  readonly rise: Kelvins;
}): PrintedCurrent {
  given(input);
  const { row, current } = cell(rises as CurrentTable, input.size, "rise", input.rise, "K");
  return {
    current,
    diameter: millimeters(row[1] as number),
    resistancePerLength: ohmsPerMeter(row[2] as number),
    basis: basisOf(rises),
    warnings: trust("a rough figure for straight wire in still air, ambient not stated", rises.source),
  };
}

/**
 * What a close coil may carry where a straight wire of the same size carries a known current.
 * @since 0.1.0
 */
export interface CoilCurrent {
  /** Lowest current at which the coil may reach the straight wire's temperature, A. */
  readonly low: Amperes;
  /** Highest such current, A. */
  readonly high: Amperes;
  /** Where the rule comes from; the kind is common practice. */
  readonly basis: Basis;
  /** How far to trust it. */
  readonly warnings: readonly Warning[];
}

/**
 * Current at which a close coil reaches the temperature of a straight wire: 0.4 to 0.7 of the straight wire's.
 *
 * A rule of thumb without pitch, diameter or air flow; a stretched coil in moving air carries more. Use it to be warned, not to
 * design.
 * @param straightCurrent - current that holds a straight wire at the temperature, printed or worked out, A, more than 0
 * @returns the range, with a warning that says what it is
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source resistance-wire supplier design notes; common practice
 * @example
 * ```ts
 * coilCurrentFromStraight(amperes(8.2)) // => { low: 3.28, high: 5.74, … }
 * ```
 * @since 0.1.0
 */
export function coilCurrentFromStraight(straightCurrent: Amperes): CoilCurrent {
  checkPositive("straightCurrent", straightCurrent, "A");
  const [, low, high] = coils.rows[0] as [string, number, number];
  return {
    low: finiteResult(straightCurrent * low, "A"),
    high: finiteResult(straightCurrent * high, "A"),
    basis: basisOf(coils),
    warnings: trust("a rule of thumb for close coils that knows neither pitch nor air flow", coils.source),
  };
}

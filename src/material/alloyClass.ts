/** Which standard classes of heating wire a measured resistivity fits. */
import astm from "../../shared/tables/alloy-classes-astm-b603.json" with { type: "json" };
import jis from "../../shared/tables/alloy-classes-jis-c2520.json" with { type: "json" };
import {
  checkPositive,
  microohmCentimeters,
  type OhmMeters,
  ohmCircularMilsPerFoot,
} from "../quantity/index.ts";
import { type Basis, basisOf } from "./basis.ts";

/**
 * A standard class of heating alloy with its range of resistivity at 20 °C.
 * @since 0.1.0
 */
export interface ResistivityClass {
  /** Class as the standard names it. */
  readonly name: string;
  /** Composition in percent, as far as given. */
  readonly composition: string;
  /** Lowest resistivity, Ω·m. */
  readonly lowest: OhmMeters;
  /** Highest resistivity, Ω·m. */
  readonly highest: OhmMeters;
  /** The standard. */
  readonly basis: Basis;
}

/**
 * Lists the standard classes of heating alloys with their ranges of resistivity. Of the two tolerances quoted for
 * JIS C 2520 the wider one is taken.
 * @returns ASTM B603 (FeCrAl) and JIS C 2520 (NiCr and FeCrAl)
 * @source ASTM B603-07, Table 1; JIS C 2520 as quoted by two secondary sources
 * @example
 * ```ts
 * resistivityClasses().length // => 9
 * ```
 * @since 0.1.0
 */
export function resistivityClasses(): readonly ResistivityClass[] {
  const fromAstm = astm.rows.map((row): ResistivityClass => {
    const [name, lowest, highest, ...parts] = row as [string, ...number[]];
    return {
      name: `class ${name}`,
      composition: `Cr ${parts[2]}-${parts[3]} Al ${parts[0]}-${parts[1]}`,
      lowest: ohmCircularMilsPerFoot(lowest as number),
      highest: ohmCircularMilsPerFoot(highest as number),
      basis: basisOf(astm),
    };
  });
  const fromJis = jis.rows.map((row): ResistivityClass => {
    const [nominal, tolerance] = [row[2] as number, Math.max(row[3] as number, row[4] as number)];
    return {
      name: String(row[0]),
      composition: String(row[1]),
      lowest: microohmCentimeters(nominal - tolerance),
      highest: microohmCentimeters(nominal + tolerance),
      basis: basisOf(jis),
    };
  });
  return [...fromAstm, ...fromJis];
}

/**
 * Standard classes that a measured resistivity fits, for wire of unknown make: resistivity = resistance × area /
 * length of a straight piece. Classes overlap, so several may fit; a magnet tells FeCrAl (magnetic when cold) from
 * NiCr.
 * @param resistivity - resistivity at 20 °C from ohms, micrometer and tape, Ω·m, more than 0
 * @returns the classes that fit, none when no class does
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source ASTM B603-07, Table 1; JIS C 2520 as quoted by two secondary sources
 * @example
 * ```ts
 * classesOfResistivity(microohmMeters(1.09)).map(({ name }) => name) // => ["NiCr class 1", "NiCr class 2"]
 * ```
 * @since 0.1.0
 */
export function classesOfResistivity(resistivity: OhmMeters): readonly ResistivityClass[] {
  checkPositive("resistivity", resistivity, "Ω·m");
  return resistivityClasses().filter(
    ({ lowest, highest }) => resistivity >= lowest && resistivity <= highest,
  );
}

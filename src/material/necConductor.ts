/** Conductor resistances of the North American code, by table. */
import table from "../../shared/tables/nec-chapter-9-table-8.json" with { type: "json" };
import {
  asField,
  checkOneOf,
  conductorArea,
  fail,
  given,
  type OhmsPerMeter,
  ohmsPerThousandFeet,
  type SquareMeters,
  toThousandCircularMils,
} from "../quantity/index.ts";
import { basisOf, type CodeLookup, DEFERRAL } from "./basis.ts";
import {
  type ChosenSize,
  chooseSize,
  roundWireDiameter,
  type SizeRounding,
  type WireSize,
} from "./wireSize.ts";

const LARGEST_AWG_KCMIL = 212;
const LARGEST_BARE_AWG = 40;

/** "10" and "2/0" stand for AWG in the table, "250" for kcmil. */
function sizeText(name: string): string {
  return name.includes("/") || Number(name) <= LARGEST_BARE_AWG ? `${name} AWG` : `${name} kcmil`;
}

/**
 * A resistance per length with the cell it was read from.
 * @since 0.1.0
 */
export interface ListedResistance extends CodeLookup<OhmsPerMeter> {
  /** The cell as printed, to find it again. */
  readonly cell: {
    /** Size and build: "10 AWG stranded". */
    readonly row: string;
    /** Metal, as the column is named. */
    readonly column: string;
    /** The printed figure. */
    readonly value: number;
    /** Its unit. */
    readonly unit: string;
    /** How the figure came here: `seen` in a reprint. */
    readonly provenance: string;
  };
}

/**
 * Direct-current resistance per length at 75 °C of a conductor, by the table of the code: solid from 18 to 8 AWG,
 * stranded from 18 AWG to 2000 kcmil, so a size alone does not say which.
 * @param input - what is looked up
 * @param input.size - size printed on the cable: "10 AWG", "2/0", "250 kcmil"
 * @param input.build - `solid` or `stranded`
 * @param input.metal - `uncoated copper`, `coated copper` or `aluminum`
 * @returns the resistance per length in ohms per meter (Ω/m) with edition, table, printed cell and who decides
 * @throws ElectroheatError `missing`, `wrong-type`, `malformed-text`, `ambiguous`, `unknown-name`, `outside-table`
 * @source NFPA 70, National Electrical Code, Chapter 9, Table 8
 * @example
 * ```ts
 * const found = listedResistance({ size: "10 AWG", build: "stranded", metal: "uncoated copper" });
 * toOhmsPerThousandFeet(found.value) // => 1.24
 * ```
 * @since 0.1.0
 */
export function listedResistance(input: {
  readonly size: string;
  readonly build: "solid" | "stranded";
  readonly metal: "uncoated copper" | "coated copper" | "aluminum";
}): ListedResistance {
  given(input);
  const area = asField("size", () => conductorArea(input.size));
  const solid = checkOneOf("build", input.build, ["solid", "stranded"]) === "solid";
  const metals = ["uncoated copper", "coated copper", "aluminum"] as const;
  const metal = checkOneOf("metal", input.metal, metals);
  const column = table.columns.findIndex(({ name }) => name === metal);
  const listed = table.rows.filter((row) => (row[2] === 1) === solid);
  const named = (row: (typeof listed)[number]): string => sizeText(String(row[0]));
  const row = listed.find((one) => Math.abs(area / conductorArea(named(one)) - 1) < 1e-9);
  if (row !== undefined) {
    const value = row[column] as number;
    return {
      value: ohmsPerThousandFeet(value),
      basis: basisOf(table),
      cell: {
        row: `${named(row)} ${input.build}`,
        column: metal,
        value,
        unit: String(table.columns[column]?.unit),
        provenance: table.provenance,
      },
      warnings: [],
      deferral: DEFERRAL,
    };
  }
  const expected = `a ${input.build} size of ${table.id}: ${listed.map(named).join(", ")}`;
  return fail({ code: "outside-table", path: "size", expected, received: input.size });
}

/** Sizes above 4/0 AWG, thick to thin. */
function sizes(): WireSize[] {
  const basis = basisOf(table);
  return table.rows
    .map(([name]): WireSize => {
      const size = String(name);
      const area = conductorArea(sizeText(size));
      return { system: "kcmil", size, area, diameter: roundWireDiameter(area), basis };
    })
    .filter(({ area }) => toThousandCircularMils(area) > LARGEST_AWG_KCMIL)
    .reverse();
}

/**
 * Listed size in thousands of circular mils, 250 to 2000 kcmil, for a metal area; below that it is AWG
 * ({@link awgFromArea}).
 * @param input - what is looked up
 * @param input.area - metal area wanted, m², 250 to 2000 kcmil
 * @param input.rounding - `nearest` (by ratio), `at-least`, `at-most` or `exact`
 * @returns the size, and how far the diameter of a solid wire of that area is off
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` when no size fits
 * @source NFPA 70, National Electrical Code, Chapter 9, Table 8, for the sizes that are made
 * @example
 * ```ts
 * kcmilFromArea({ area: squareMillimeters(185), rounding: "at-least" }).size // => "400"
 * ```
 * @since 0.1.0
 */
export function kcmilFromArea(input: {
  readonly area: SquareMeters;
  readonly rounding: SizeRounding;
}): ChosenSize {
  given(input);
  return chooseSize(sizes(), input.area, input.rounding, "area");
}

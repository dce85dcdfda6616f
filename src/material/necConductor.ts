/** Conductor resistances of the North American code, by table. */
import table from "../../shared/tables/nec-chapter-9-table-8.json" with { type: "json" };
import {
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

/** "10" stands for AWG in the table. */
function areaOf(name: string): SquareMeters {
  return conductorArea(name.includes("kcmil") ? name : `${name} AWG`);
}

/**
 * Direct-current resistance per length at 75 °C of a conductor, by the table of the code: solid up to 8 AWG,
 * stranded from 18 AWG to 1000 kcmil. Sizes that this copy does not hold (700, 800, 900 kcmil and from 1250 up) are
 * refused.
 * @param input - what is looked up
 * @param input.size - size printed on the cable: "10 AWG", "2/0", "250 kcmil"
 * @param input.build - `solid` or `stranded`
 * @param input.metal - `uncoated copper`, `coated copper` or `aluminum`
 * @returns the resistance per length in ohms per meter (Ω/m) with edition, table and who decides
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
}): CodeLookup<OhmsPerMeter> {
  given(input);
  const area = conductorArea(input.size);
  const solid = checkOneOf("build", input.build, ["solid", "stranded"]) === "solid";
  const metals = ["uncoated copper", "coated copper", "aluminum"] as const;
  const column = 2 + metals.indexOf(checkOneOf("metal", input.metal, metals));
  const listed = table.rows.filter((row) => (row[1] === 1) === solid);
  const row = listed.find((one) => Math.abs(area / areaOf(String(one[0])) - 1) < 1e-9);
  if (row !== undefined) {
    return {
      value: ohmsPerThousandFeet(row[column] as number),
      basis: basisOf(table),
      warnings: [],
      deferral: DEFERRAL,
    };
  }
  const expected = `a ${input.build} size of ${table.id}: ${listed.map((one) => one[0]).join(", ")}`;
  return fail({ code: "outside-table", path: "size", expected, received: input.size });
}

/** Sizes above 4/0 AWG, thick to thin. */
function sizes(): WireSize[] {
  const basis = basisOf(table);
  return table.rows
    .map(([name]): WireSize => {
      const area = areaOf(String(name));
      const size = String(name).replace(" kcmil", "");
      return { system: "kcmil", size, area, diameter: roundWireDiameter(area), basis };
    })
    .filter(({ area }) => toThousandCircularMils(area) > LARGEST_AWG_KCMIL)
    .reverse();
}

/**
 * Listed size in thousands of circular mils, 250 to 1000 kcmil, for a metal area; below that it is AWG
 * ({@link awgFromArea}).
 * @param input - what is looked up
 * @param input.area - metal area wanted, m², 250 to 1000 kcmil
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
  return chooseSize(sizes(), roundWireDiameter(input.area), input.rounding, "area");
}

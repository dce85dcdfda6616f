/** Metric conductor sizes: highest resistances by table only. They are not ρ/A, and no formula gives them. */
import class1 from "../../shared/tables/iec-60228-class-1.json" with { type: "json" };
import class2 from "../../shared/tables/iec-60228-class-2.json" with { type: "json" };
import class5 from "../../shared/tables/iec-60228-class-5.json" with { type: "json" };
import {
  checkBetween,
  checkOneOf,
  fail,
  given,
  type OhmsPerMeter,
  ohmsPerKilometer,
  type SquareMeters,
  squareMillimeters,
} from "../quantity/index.ts";
import { basisOf, type CodeLookup, DEFERRAL, type SharedTable } from "./basis.ts";
import {
  type ChosenSize,
  chooseSize,
  roundWireDiameter,
  type SizeRounding,
  type WireSize,
} from "./wireSize.ts";

/**
 * Conductor class: `1` solid, `2` stranded, `5` flexible.
 * @since 0.1.0
 */
export type ConductorClass = 1 | 2 | 5;

/**
 * Metal of a conductor in the IEC tables.
 * @since 0.1.0
 */
export type ConductorMetal = "plain copper" | "coated copper" | "aluminum";

function tableOf(conductorClass: ConductorClass): SharedTable {
  if (conductorClass === 1) return class1;
  if (conductorClass === 2) return class2;
  if (conductorClass === 5) return class5;
  return fail({
    code: conductorClass === undefined || conductorClass === null ? "missing" : "unknown-name",
    path: "class",
    expected: "one of 1, 2, 5",
    received: conductorClass,
  });
}

/** Nominal areas are stated to three digits: anything nearer is the same size. */
const SAME = 1e-6;

/**
 * Highest permitted resistance per length at 20 °C of a metric conductor, by its table. It is 4 to 16 % above
 * resistivity / nominal area: a voltage drop wants this figure, a mass does not.
 * @param input - what is looked up
 * @param input.area - nominal area, printed on the cable, m², one of the sizes of the class
 * @param input.class - 1 solid, 2 stranded, 5 flexible
 * @param input.metal - `plain copper`, `coated copper` (tinned or the like) or `aluminum` (not in class 5)
 * @returns the highest resistance per length in ohms per meter (Ω/m) with edition, table and who decides
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `outside-table` for an area
 *   that is no nominal size or a metal that the class does not list, with the sizes it does
 * @source IEC 60228:2004, Tables 1 to 3
 * @example
 * ```ts
 * const found = highestResistance({ area: squareMillimeters(50), class: 5, metal: "plain copper" });
 * toOhmsPerKilometer(found.value).toFixed(3) // => "0.386"
 * ```
 * @since 0.1.0
 */
export function highestResistance(input: {
  readonly area: SquareMeters;
  readonly class: ConductorClass;
  readonly metal: ConductorMetal;
}): CodeLookup<OhmsPerMeter> {
  given(input);
  const table = tableOf(input.class);
  checkBetween("area", input.area, 1e-30, 1e30, "m²");
  const metals = ["plain copper", "coated copper", "aluminum"] as const;
  const column = 1 + metals.indexOf(checkOneOf("metal", input.metal, metals));
  const listed = table.rows.filter((row) => typeof row[column] === "number");
  const row = listed.find((one) => Math.abs(input.area / squareMillimeters(one[0] as number) - 1) <= SAME);
  if (row !== undefined) {
    return {
      value: ohmsPerKilometer(row[column] as number),
      basis: basisOf(table),
      warnings: [],
      deferral: DEFERRAL,
    };
  }
  return fail({
    code: "outside-table",
    path: "area",
    expected:
      listed.length === 0
        ? `a metal that class ${input.class} lists`
        : `a nominal size of class ${input.class}, ${input.metal}: ${listed.map((one) => one[0]).join(", ")} mm²`,
    received: Number((input.area / squareMillimeters(1)).toPrecision(6)),
    unit: "mm²",
  });
}

/** Nominal sizes, thick to thin; all classes list the same. */
function sizes(): WireSize[] {
  return class2.rows
    .map(([area]): WireSize => {
      const exact = squareMillimeters(area as number);
      const diameter = roundWireDiameter(exact);
      return { system: "mm²", size: String(area), area: exact, diameter, basis: basisOf(class2) };
    })
    .reverse();
}

/**
 * Nominal metric size, 0.5 to 400 mm², for a metal area.
 * @param input - what is looked up
 * @param input.area - metal area wanted, m², 0.5e-6 to 400e-6
 * @param input.rounding - `nearest` (by ratio), `at-least`, `at-most` or `exact`
 * @returns the size, and how far the diameter of a solid wire of that area is off
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` when no size fits
 * @source IEC 60228:2004, Table 2
 * @example
 * ```ts
 * metricSizeFromArea({ area: awgArea("12"), rounding: "at-least" }).size // => "4"
 * ```
 * @since 0.1.0
 */
export function metricSizeFromArea(input: {
  readonly area: SquareMeters;
  readonly rounding: SizeRounding;
}): ChosenSize {
  given(input);
  return chooseSize(sizes(), input.area, input.rounding, "area");
}

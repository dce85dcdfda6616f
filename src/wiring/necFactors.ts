/** Ambient and conductor-count factors of the North American editions. */
import ambient30 from "../../shared/tables/nec-ambient-30.json" with { type: "json" };
import ambient40 from "../../shared/tables/nec-ambient-40.json" with { type: "json" };
import count from "../../shared/tables/nec-conductor-count.json" with { type: "json" };
import { type Celsius, checkOneOf, checkWhole, fail, given } from "../quantity/index.ts";
import type { AmbientTable } from "./edition.ts";
import { atMost, checkTemperature, columnFigure, same } from "./limit.ts";
import {
  AT_30,
  AT_40,
  clauseOf,
  labelOf,
  type NorthAmerican,
  necEditions,
  northAmerican,
  noTable,
} from "./necTables.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt, columnAt, describeCell, nameError } from "./sharedTable.ts";

/**
 * Whether a factor is read from the published table, or worked out by the equation behind it, which is less safe inside a
 * band and is used only when asked for.
 * @since 0.1.0
 */
export type FactorRoute = "table" | "equation";

/** The route asked for under this name; the table if none is. */
export function checkRoute(path: string, route: FactorRoute | undefined): FactorRoute {
  return checkOneOf(path, route ?? "table", ["table", "equation"]);
}

/** Refuses an ambient that leaves the insulation no rise at all. */
export function checkBelowRating(ambient: number, rating: number): void {
  checkTemperature("ambient", ambient);
  checkTemperature("insulationTemperature", rating);
  if (atMost(rating, ambient)) {
    fail({
      code: "out-of-range",
      path: "ambient",
      expected: `below the conductor's rating of ${rating}`,
      received: ambient,
      unit: "°C",
    });
  }
}

/** √((Tc − T)/(Tc − Tbase)), for the caller who asks for it by name. */
export function factorByEquation(ambient: number, rating: number, base: number): number {
  checkBelowRating(base, rating);
  return Math.sqrt((rating - ambient) / (rating - base));
}

/** What the equation says about itself. */
export function equationCell(input: {
  readonly system: "North America" | "IEC";
  readonly edition: string;
  readonly label: string;
  readonly column: string;
  readonly value: number;
}): TableCell {
  const { system, edition, label, column, value } = input;
  return {
    system,
    edition,
    table: `${label}, equation`,
    row: "√((Tc − T)/(Tc − base))",
    column,
    value,
    unit: "1",
    source: "ambient-equation",
    kind: "published",
    provenance: "derived",
    labelProvenance: "derived",
  };
}

/** Ambient tables of an edition, one per base. */
export function ambientTables(edition: NorthAmerican): {
  readonly name: string;
  readonly tables: readonly AmbientTable[];
} {
  const { name, year, own } = northAmerican(edition);
  if (year === null) return { name, tables: own.ambient ?? [] };
  const from = (provision: string, baseAmbient: Celsius, table: typeof ambient30): AmbientTable[] =>
    clauseOf(provision, year) === null ? [] : [{ ...labelOf(provision, year), baseAmbient, table }];
  return {
    name,
    tables: [...from("ambient 30", AT_30, ambient30), ...from("ambient 40", AT_40, ambient40)],
  };
}

/** Our editions that hold ambient factors, each for both bases. */
export const editionsWithFactors = (): readonly string[] =>
  necEditions().filter((edition) => ambientTables(edition).tables.length > 0);

/**
 * Factor by which an ampacity changes with ambient temperature, from the table of the edition. A band's factor is that of
 * its hot edge, and a temperature between two bands (30.5 °C) takes the hotter one.
 *
 * A factor belongs to ampacity tables of the same base: at 55 °C 90 °C wire has 0.76 on the 30 °C base and 0.84 on the 40 °C base.
 * @param input.edition - edition by name, or one of your own
 * @param input.baseAmbient - base of the ampacity table it is for (°C): 30 or 40
 * @param input.insulationTemperature - temperature rating of the conductor (°C)
 * @param input.ambient - air around the conductor at its hottest place, measured near the equipment (°C)
 * @param input.by - "table" if left out; "equation" for √((Tc − T)/(Tc − base)), with a warning
 * @returns the factor as a ratio
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name`; `out-of-range` at or above the conductor's rating;
 *   `outside-table` where the table gives no factor
 * @source NFPA 70, National Electrical Code: 310.15(B)(2)(a), (b) (2011 to 2017), 310.15(B)(1), (2) (2020), 310.15(B)(1)(1),
 *   (1)(2) (2023)
 * @example
 * ```ts
 * ambientFactor({
 *   edition: "NEC 2023", baseAmbient: celsius(30), insulationTemperature: celsius(90), ambient: celsius(48),
 * }).value // => 0.82
 * ```
 * @since 0.1.0
 */
export function ambientFactor(input: {
  readonly edition: NorthAmerican;
  readonly baseAmbient: Celsius;
  readonly insulationTemperature: Celsius;
  readonly ambient: Celsius;
  readonly by?: FactorRoute;
}): CodeResult<number> {
  given(input);
  const { baseAmbient, ambient, insulationTemperature: rating } = input;
  const route = checkRoute("by", input.by);
  checkBelowRating(ambient, rating);
  const { name, tables } = ambientTables(input.edition);
  if (tables.length === 0) noTable("ambient factors", input.edition, editionsWithFactors());
  const from = tables.find((one) => same(baseAmbient, one.baseAmbient));
  if (from === undefined) {
    return fail({
      code: nameError(baseAmbient),
      path: "baseAmbient",
      expected: `one of ${tables.map((one) => one.baseAmbient).join(", ")} (${name})`,
      received: baseAmbient,
    });
  }
  const { table } = from;
  const column = String(columnFigure(rating));
  columnAt(table, column, "insulationTemperature", rating);
  const baseConditions = [`for ampacity tables of base ${baseAmbient} °C only`];
  if (route === "equation") {
    const value = factorByEquation(ambient, rating, baseAmbient);
    return codeResult({
      value,
      unit: "1",
      cells: [equationCell({ system: "North America", edition: name, label: from.label, column, value })],
      baseConditions,
      governing: "equation",
      warnings: [
        {
          code: "approximate",
          path: "by",
          message:
            "By the equation, up to 6 % above the table's factor inside a wide band: the table is the safer figure.",
          source: "ambient-equation",
        },
      ],
    });
  }
  const row = table.rows.find((one) => atMost(ambient, cellAt(table, one, "to") as number));
  const value = row === undefined ? null : cellAt(table, row, column);
  if (row === undefined || typeof value !== "number") {
    return fail({
      code: "outside-table",
      path: "ambient",
      expected: `an ambient for which ${from.label} gives ${rating} °C insulation a factor (or by: "equation")`,
      received: ambient,
      unit: "°C",
    });
  }
  const low = cellAt(table, row, "from");
  const high = cellAt(table, row, "to");
  const rowName = low === null ? `${high} °C or less` : `${low} to ${high} °C`;
  return codeResult({
    value,
    unit: "1",
    cells: [describeCell({ system: "North America", edition: name, from, row, rowName, column })],
    baseConditions,
    governing: "ambient",
  });
}

/**
 * Factor for more than three current-carrying conductors together. A balanced three-phase heater without neutral counts
 * three per circuit; the equipment grounding conductor does not count.
 * @param input.edition - edition by name, or one of your own
 * @param input.currentCarryingConductors - how many share the raceway, cable or bundle, 1 or more
 * @returns the factor as a ratio
 * @throws ElectroheatError `missing`, `out-of-range`, `unknown-name`, `outside-table`
 * @source NFPA 70, National Electrical Code: 310.15(B)(2)(a) (2008), 310.15(B)(3)(a) (2011 to 2017), 310.15(C)(1) (2020, 2023)
 * @example
 * ```ts
 * conductorCountFactor({ edition: "NEC 2020", currentCarryingConductors: 4 }).value // => 0.8
 * ```
 * @since 0.1.0
 */
export function conductorCountFactor(input: {
  readonly edition: NorthAmerican;
  readonly currentCarryingConductors: number;
}): CodeResult<number> {
  given(input);
  const conductors = input.currentCarryingConductors;
  checkWhole("currentCarryingConductors", conductors, 1, 10_000);
  const { name, year, own } = northAmerican(input.edition);
  const from = year === null ? own.conductorCount : { ...labelOf("conductor count", year), table: count };
  if (from === undefined) return noTable("a conductor-count table", input.edition, necEditions());
  const { table } = from;
  const row = table.rows.find((one) => {
    const to = cellAt(table, one, "to");
    return typeof to !== "number" || conductors <= to;
  });
  if (row === undefined || conductors < (cellAt(table, row, "from") as number)) {
    return fail({
      code: "outside-table",
      path: "currentCarryingConductors",
      expected: `a number of conductors that ${from.label} covers`,
      received: conductors,
    });
  }
  const to = cellAt(table, row, "to");
  const low = cellAt(table, row, "from");
  const rowName = to === null ? `${low} and more` : `${low} to ${to}`;
  return codeResult({
    value: (cellAt(table, row, "percent") as number) / 100,
    unit: "1",
    cells: [describeCell({ system: "North America", edition: name, from, row, rowName, column: "percent" })],
    baseConditions: ["raceways longer than 600 mm (24 in)"],
    governing: "conductor count",
  });
}

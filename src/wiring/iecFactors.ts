/** Ambient and grouping factors of the IEC family. */
import bs from "../../shared/tables/bs-7671-4b1-ambient.json" with { type: "json" };
import machine from "../../shared/tables/iec-60204-1-ambient.json" with { type: "json" };
import iec from "../../shared/tables/iec-b52-14-ambient.json" with { type: "json" };
import grouping from "../../shared/tables/iec-b52-17-grouping.json" with { type: "json" };
import simplified from "../../shared/tables/iec-grouping-simplified.json" with { type: "json" };
import { type Celsius, checkWhole, fail, given } from "../quantity/index.ts";
import type { AmbientTable, GroupingTable } from "./edition.ts";
import { labelledIec } from "./iecClauses.ts";
import { type Iec, iecEdition } from "./iecTables.ts";
import { atMost, checkTemperature, same } from "./limit.ts";
import {
  checkBelowRating,
  checkRoute,
  equationCell,
  type FactorRoute,
  factorByEquation,
} from "./necFactors.ts";
import { noTable } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, columnAt, describeCell, nameError, type Row } from "./sharedTable.ts";

/** Conductor temperature by insulation, for the equation and for refusing an ambient that leaves no rise. */
const RATINGS: Readonly<Record<string, number>> = { PVC: 70, XLPE: 90, "mineral 70": 70, "mineral 105": 105 };

/** Ambient tables of an edition, one per base. */
export function cableAmbientTables(edition: Iec): {
  readonly name: string;
  readonly tables: readonly AmbientTable[];
} {
  const { name, own } = iecEdition(edition);
  const of = (base: number, table: AmbientTable["table"]): AmbientTable[] => [
    { ...labelledIec(table), baseAmbient: base as Celsius },
  ];
  if (own !== null) return { name, tables: own.ambient ?? [] };
  if (name === "BS 7671:2008") return { name, tables: of(30, bs) };
  if (name === "IEC 60204-1:2005") return { name, tables: of(40, machine) };
  if (name === "IEC 60364-5-52:2001") return { name, tables: [] };
  return { name, tables: of(30, iec) };
}

/**
 * Ambient air factor of a cable. A temperature between two rows takes the hotter row; below the first row and where the
 * table is blank there is no factor.
 * @param input.edition - edition by name, or one of your own
 * @param input.insulation - "PVC" (70 °C), "XLPE" (90 °C, EPR too), "mineral 70", "mineral 105", as the edition has it
 * @param input.ambient - air around the cable at its hottest place (°C)
 * @param input.baseAmbient - base of the capacity table it is for (°C); refused where the factors have another base
 * @param input.by - "table" if left out; "equation" for √((Tc − T)/(Tc − base)), PVC and XLPE only, with a warning
 * @returns the factor as a ratio
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name`; `inconsistent` for another base; `out-of-range` at or above the
 *   conductor's temperature; `outside-table`
 * @source IEC 60364-5-52:2009 Table B.52.14; BS 7671:2008 Table 4B1; IEC 60204-1:2005
 * @example
 * ```ts
 * cableAmbientFactor({ edition: "BS 7671:2008", insulation: "PVC", ambient: celsius(35), baseAmbient: celsius(30) }).value
 * // => 0.94
 * ```
 * @since 0.1.0
 */
export function cableAmbientFactor(input: {
  readonly edition: Iec;
  readonly insulation: string;
  readonly ambient: Celsius;
  readonly baseAmbient: Celsius;
  readonly by?: FactorRoute;
}): CodeResult<number> {
  given(input);
  const { insulation, ambient, baseAmbient } = input;
  const route = checkRoute("by", input.by);
  const { name, tables } = cableAmbientTables(input.edition);
  const [from] = tables;
  if (from === undefined) {
    return noTable("ambient air factors", input.edition, [
      "IEC 60364-5-52:2009",
      "BS 7671:2008",
      "IEC 60204-1:2005",
    ]);
  }
  const fitting = tables.find((one) => same(baseAmbient, one.baseAmbient));
  if (fitting === undefined) {
    return fail({
      code: baseAmbient === undefined ? "missing" : "inconsistent",
      path: "baseAmbient",
      expected: `${tables.map((one) => one.baseAmbient).join(", ")} °C (${name}): factors of another base do not fit`,
      received: baseAmbient,
      unit: "°C",
    });
  }
  const { table } = fitting;
  columnAt(table, insulation, "insulation");
  checkTemperature("ambient", ambient);
  const rating = RATINGS[insulation];
  if (rating !== undefined) checkBelowRating(ambient, rating);
  const baseConditions = [`for capacity tables of base ${baseAmbient} °C only`];
  if (route === "equation") {
    if (rating === undefined || insulation.startsWith("mineral")) {
      fail({
        code: "inconsistent",
        path: "by",
        expected: "table: the equation is for PVC and XLPE",
        received: route,
      });
    }
    const value = factorByEquation(ambient, rating as number, baseAmbient);
    return codeResult({
      value,
      unit: "1",
      cells: [
        equationCell({ system: "IEC", edition: name, label: fitting.label, column: insulation, value }),
      ],
      baseConditions,
      governing: "equation",
      warnings: [
        {
          code: "approximate",
          path: "by",
          message: "By the equation, not by the table.",
          source: "ambient-equation",
        },
      ],
    });
  }
  const first = cellAt(table, table.rows[0] as Row, "ambient") as number;
  const row = atMost(first, ambient)
    ? table.rows.find((one) => atMost(ambient, cellAt(table, one, "ambient") as number))
    : undefined;
  const value = row === undefined ? null : cellAt(table, row, insulation);
  if (row === undefined || typeof value !== "number") {
    return fail({
      code: "outside-table",
      path: "ambient",
      expected: `an ambient for which ${fitting.label} gives ${insulation} a factor (or by: "equation")`,
      received: ambient,
      unit: "°C",
    });
  }
  const rowName = `${cellAt(table, row, "ambient")} °C`;
  return codeResult({
    value,
    unit: "1",
    cells: [describeCell({ system: "IEC", edition: name, from: fitting, row, rowName, column: insulation })],
    baseConditions,
    governing: "ambient",
  });
}

const SIMPLIFIED = "simplified guide";

function groupingTables(edition: Iec): { readonly name: string; readonly tables: readonly GroupingTable[] } {
  const { name, own } = iecEdition(edition);
  if (own !== null) return { name, tables: own.grouping ?? [] };
  if (name === "IEC 60364-5-52:2001" || name === "IEC 60204-1:2005") return { name, tables: [] };
  return {
    name,
    tables: [
      { name: "standard", ...labelledIec(grouping, name) },
      // A guide to the IEC standard, by another author: no part of the British one.
      ...(name === "BS 7671:2008" ? [] : [{ name: SIMPLIFIED, ...labelledIec(simplified) }]),
    ],
  };
}

/**
 * Reduction factor for circuits or multicore cables that touch. A number between two rows takes the row of more
 * circuits. Two published tables disagree (four enclosed circuits: 0.65 or 0.70), so each has its name.
 * @param input.edition - edition by name, or one of your own
 * @param input.arrangement - "bunched", "single layer on wall", "single layer on perforated tray", "single layer on ladder",
 *   in the simplified guide also "single layer under ceiling"
 * @param input.circuits - circuits or multicore cables in the group, equally loaded, 1 or more
 * @param input.grouping - "standard" if left out, or "simplified guide", with IEC 60364-5-52:2009 only
 * @returns the factor as a ratio
 * @throws ElectroheatError `missing`, `unknown-name`, `out-of-range`, `outside-table`
 * @source IEC 60364-5-52:2009 Table B.52.17 = BS 7671:2008 Table 4C1; simplified: an installation guide
 * @example
 * ```ts
 * groupingFactor({ edition: "IEC 60364-5-52:2009", arrangement: "bunched", circuits: 4 }).value // => 0.65
 * ```
 * @since 0.1.0
 */
export function groupingFactor(input: {
  readonly edition: Iec;
  readonly arrangement: string;
  readonly circuits: number;
  readonly grouping?: string;
}): CodeResult<number> {
  given(input);
  const { arrangement, circuits } = input;
  checkWhole("circuits", circuits, 1, 10_000);
  const { name, tables } = groupingTables(input.edition);
  if (tables.length === 0)
    return noTable("grouping factors", input.edition, ["IEC 60364-5-52:2009", "BS 7671:2008"]);
  const wanted = input.grouping ?? tables[0]?.name;
  const from = tables.find((one) => one.name === wanted);
  if (from === undefined) {
    return fail({
      code: nameError(wanted),
      path: "grouping",
      expected: `one of ${tables.map((one) => one.name).join(", ")} (${name})`,
      received: wanted,
    });
  }
  columnAt(from.table, arrangement, "arrangement");
  const row = from.table.rows.find((one) => circuits <= (cellAt(from.table, one, "circuits") as number));
  const value = row === undefined ? null : cellAt(from.table, row, arrangement);
  if (row === undefined || typeof value !== "number") {
    return fail({
      code: "outside-table",
      path: "circuits",
      expected: `a number of circuits that ${from.label} covers`,
      received: circuits,
    });
  }
  const rowName = `${cellAt(from.table, row, "circuits")} circuits`;
  const edition = from.table === simplified ? "installation guide" : name;
  return codeResult({
    value,
    unit: "1",
    cells: [describeCell({ system: "IEC", edition, from, row, rowName, column: arrangement })],
    baseConditions: ["cables touching, of one kind, equally loaded"],
    governing: "grouping",
  });
}

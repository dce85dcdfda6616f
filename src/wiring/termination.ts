/** What terminals allow: the column they are good for, and the ampacity of a size in it. */
import terminations from "../../shared/tables/nec-terminations.json" with { type: "json" };
import { type Amperes, type Celsius, checkOneOf, fail, given, type Warning } from "../quantity/index.ts";
import { ampacityTables } from "./ampacityTables.ts";
import { atMost, checkMeasured, checkTemperature, columnFigure } from "./limit.ts";
import { labelOf, type NorthAmerican, northAmerican, noTable } from "./necTables.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt, describeCell } from "./sharedTable.ts";
import { sizeOfRow } from "./size.ts";
import { ampacityCell } from "./tableAmpacity.ts";

/**
 * Temperature column for terminals that are not marked: 60 °C up to 100 A (or marked for 14 to 1 AWG), 75 °C above.
 * Terminals listed and marked for another temperature go by their mark.
 * @param input.edition - edition by name, or one of your own
 * @param input.circuitRating - rating of the circuit, that is of its overcurrent device (A), more than 0
 * @returns the temperature whose column limits the conductor (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source NFPA 70, National Electrical Code, 110.14(C)(1)
 * @example
 * ```ts
 * terminationTemperature({ edition: "NEC 2023", circuitRating: amperes(100) }).value // => 60
 * ```
 * @since 0.1.0
 */
export function terminationTemperature(input: {
  readonly edition: NorthAmerican;
  readonly circuitRating: Amperes;
}): CodeResult<Celsius> {
  given(input);
  const { circuitRating } = input;
  checkMeasured("circuitRating", circuitRating, "A");
  const { name, year, own } = northAmerican(input.edition);
  const from = year === null ? own.terminations : { ...labelOf("terminations", year), table: terminations };
  if (from === undefined) return noTable("a rule for unmarked terminals", input.edition);
  const row = from.table.rows.find((one) => {
    const to = cellAt(from.table, one, "to");
    return typeof to !== "number" || atMost(circuitRating, to);
  });
  if (row === undefined) {
    return fail({
      code: "outside-table",
      path: "circuitRating",
      expected: `a rating that ${from.label} covers`,
      received: circuitRating,
      unit: "A",
    });
  }
  const to = cellAt(from.table, row, "to");
  const rowName = to === null ? "above the row before" : `${to} A or less`;
  return codeResult({
    value: cellAt(from.table, row, "temperature") as Celsius,
    unit: "°C",
    cells: [
      describeCell({ system: "North America", edition: name, from, row, rowName, column: "temperature" }),
    ],
    baseConditions: ["terminals without a temperature mark"],
    governing: "termination",
    cautions: ["Both ends count: the lowest-rated terminal of the circuit decides."],
  });
}

/** Leads of hot equipment: the raceway table has no column for them. */
export const NICKEL_COATED = "nickel-coated copper";

/** The ampacity of a size in the column its terminals allow. */
interface TerminationLimit {
  /** Figure and cell; `null` where the table has no figure for the size. */
  readonly found: { readonly value: number; readonly cell: TableCell } | null;
  /** Temperature of the column, `null` where no column exists. */
  readonly column: number | null;
  readonly warnings: readonly Warning[];
}

/**
 * The raceway table decides at terminals whatever way the conductor runs, in the lower of the conductor's and the
 * terminal's temperature.
 */
export function terminationLimit(input: {
  readonly edition: NorthAmerican;
  readonly size: string;
  readonly material: string;
  readonly insulationTemperature: number;
  readonly terminalTemperature: number;
  /** What whoever asked calls the terminal's temperature; `terminalTemperature` if left out. */
  readonly path?: string;
}): TerminationLimit {
  const {
    path = "terminalTemperature",
    edition,
    size,
    material,
    insulationTemperature,
    terminalTemperature,
  } = input;
  checkTemperature(path, terminalTemperature);
  const { name, tables } = ampacityTables(edition);
  // A spelling that no table has would else stand for copper, which carries more than aluminum.
  const named = tables.flatMap((one) =>
    one.table.columns.slice(1).map(({ name: of }) => of.replace(/ \d+$/, "")),
  );
  checkOneOf("material", material, [...new Set([...named, NICKEL_COATED])]);
  const from = tables.find((one) => one.installation === "raceway");
  if (from === undefined) return noTable('an ampacity table for installation "raceway"', edition);
  const temperature = columnFigure(Math.min(insulationTemperature, terminalTemperature));
  const columns = from.table.columns.slice(1).map((column) => column.name);
  const own = columns.includes(`${material} ${temperature}`);
  // 310.16 knows copper and aluminum only; a nickel-coated copper lead has no more copper than a bare one.
  const standIn = own ? material : "copper";
  const column = `${standIn} ${temperature}`;
  if (!columns.includes(column)) {
    const rated = columns.filter((one) => one.startsWith(`${standIn} `));
    const hottest = Math.max(...rated.map((one) => Number(one.slice(standIn.length))));
    if (temperature < hottest) {
      return fail({
        code: "unknown-name",
        path,
        expected: `one of the columns ${columns.join(", ")} (${from.label})`,
        received: terminalTemperature,
      });
    }
    const message = `${from.label} has no column for terminals of ${temperature} °C: the terminal maker's figure decides there.`;
    return {
      found: null,
      column: null,
      warnings: [{ code: "caution", path, message, limit: hottest, unit: "°C" }],
    };
  }
  const row = from.table.rows.find((one) => sizeOfRow(from.table, one) === size);
  const found = row === undefined ? null : ampacityCell(name, from, row, column);
  const message = `${from.label} has no column for ${material}: copper ${temperature} was taken at the terminals.`;
  return {
    found,
    column: temperature,
    warnings: own ? [] : [{ code: "assumed", path: "material", message }],
  };
}

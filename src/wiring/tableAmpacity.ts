/** One cell of an ampacity table, and the editions a figure could have come from. */
import { type Amperes, type Celsius, fail, given } from "../quantity/index.ts";
import { ampacityTable, ampacityTables, SUPERSEDED } from "./ampacityTables.ts";
import type { AmpacityTable } from "./edition.ts";
import { checkMeasured, columnFigure, same } from "./limit.ts";
import { type NecEdition, type NorthAmerican, necEditions } from "./necTables.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt, describeCell, nameError, type Row } from "./sharedTable.ts";
import { rowOfSize, sizeOfRow } from "./size.ts";

/**
 * A conductor as an ampacity table knows it.
 * @since 0.1.0
 */
export interface TabledConductor {
  /** Edition by name ("NEC 2023"), or one of your own. */
  readonly edition: NorthAmerican;
  /** "raceway", "free air", "high-temperature raceway", or an installation of your own edition. */
  readonly installation: string;
  /** Size printed on the conductor: "6 AWG", "2/0", "250 kcmil". */
  readonly size: string;
  /** "copper", "aluminum" (copper-clad too), "nickel-coated copper" (nickel too). */
  readonly material: string;
  /** Temperature rating of the insulation, from its type letters (°C): 60, 75, 90, 150, 200, 250. */
  readonly insulationTemperature: Celsius;
}

/** Name of the column of a material and temperature; what the table does not have is answered with what it has. */
export function ampacityColumn(from: AmpacityTable, material: string, temperature: number): string {
  const name = `${material} ${columnFigure(temperature)}`;
  const columns = from.table.columns.slice(1).map((column) => column.name);
  if (columns.includes(name)) return name;
  const known = columns.some((one) => one.replace(/ \d+$/, "") === material);
  const received = known ? temperature : material;
  return fail({
    code: nameError(received),
    path: known ? "insulationTemperature" : "material",
    expected: `one of the columns ${columns.join(", ")} (${from.label})`,
    received,
  });
}

/** The cell of a size, or `null` where the table leaves it blank. */
export function ampacityCell(
  name: string,
  from: AmpacityTable,
  row: Row,
  column: string,
): { readonly value: number; readonly cell: TableCell } | null {
  const value = cellAt(from.table, row, column);
  if (typeof value !== "number") return null;
  const rowName = sizeOfRow(from.table, row);
  return {
    value,
    cell: describeCell({ system: "North America", edition: name, from, row, rowName, column }),
  };
}

/**
 * Ampacity of a conductor as the table has it, in its own column and at the base conditions of the table: before
 * ambient, conductor count and terminals.
 * @param input - the conductor; fields at {@link TabledConductor}
 * @returns the cell, in amperes (A), with edition, table, base conditions and note
 * @throws ElectroheatError `missing`, `unknown-name` (lists what exists), `ambiguous`, `malformed-text`, `outside-table` for
 *   a blank cell
 * @source NFPA 70, National Electrical Code, the ampacity tables of the edition named
 * @example
 * ```ts
 * tableAmpacity({
 *   edition: "NEC 2023", installation: "raceway", size: "4 AWG", material: "copper", insulationTemperature: celsius(75),
 * }).value // => 85
 * ```
 * @since 0.1.0
 */
export function tableAmpacity(input: TabledConductor): CodeResult<Amperes> {
  given(input);
  const { name, from } = ampacityTable(input.edition, input.installation);
  const column = ampacityColumn(from, input.material, input.insulationTemperature);
  const row = rowOfSize(from.table, "size", input.size);
  const found = ampacityCell(name, from, row, column);
  if (found === null) {
    return fail({
      code: "outside-table",
      path: "size",
      expected: `a size with a figure in column ${column} of ${from.label}`,
      received: input.size,
    });
  }
  return codeResult({
    value: found.value as Amperes,
    unit: "A",
    cells: [found.cell],
    baseConditions: from.baseConditions,
    governing: "table value",
    cautions: [
      "Table value only: ambient, conductor count, terminals and protection are not in it.",
      ...(from.cautions ?? []),
    ],
  });
}

/**
 * The editions whose table gives a conductor this ampacity: tells whether a catalogue or a nameplate was written after the
 * table of 2008 and earlier, of which 15 cells differ.
 * @param input.installation - "raceway", "free air" or "high-temperature raceway"
 * @param input.size - size printed on the conductor
 * @param input.material - "copper", "aluminum", "nickel-coated copper"
 * @param input.insulationTemperature - temperature column (°C)
 * @param input.ampacity - the figure found in the document (A), more than 0
 * @returns names of the editions that print this figure, oldest first, empty if none does; `cells` has the cell of every edition
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source NFPA 70-2005/2008 Table 310.16 against NFPA 70-2011 to 2023
 * @example
 * ```ts
 * ampacityEditions({
 *   installation: "raceway", size: "14 AWG", material: "copper", insulationTemperature: celsius(60), ampacity: amperes(20),
 * }).value // => ["NEC 2008"]
 * ```
 * @since 0.1.0
 */
export function ampacityEditions(input: {
  readonly installation: string;
  readonly size: string;
  readonly material: string;
  readonly insulationTemperature: Celsius;
  readonly ampacity: Amperes;
}): CodeResult<readonly NecEdition[]> {
  given(input);
  const { installation, ampacity } = input;
  checkMeasured("ampacity", ampacity, "A");
  const newest = ampacityTable("NEC 2023", installation).from;
  const held = necEditions().flatMap((edition) => {
    const from = ampacityTables(edition).tables.find((one) => one.installation === installation);
    if (from === undefined) return [];
    const column = ampacityColumn(from, input.material, input.insulationTemperature);
    const row = rowOfSize(from.table, "size", input.size);
    const rowName = sizeOfRow(from.table, row);
    const cell = describeCell({ system: "North America", edition, from, row, rowName, column });
    return [{ edition, cell, prints: typeof cell.value === "number" && same(cell.value, ampacity) }];
  });
  const found = held.filter(({ prints }) => prints);
  return codeResult({
    value: found.map(({ edition }) => edition),
    unit: "",
    // Those that print the figure first.
    cells: [...found, ...held].map(({ cell }) => cell),
    baseConditions: newest.baseConditions,
    governing: found.length > 0 ? "table value" : "none",
    cautions: [
      "Tells where a figure stands in print, not which edition the document follows: several print the same.",
      ...(found.some(({ edition }) => edition === "NEC 2008") ? [SUPERSEDED] : []),
    ],
  });
}

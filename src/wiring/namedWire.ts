/** Flexible and high-temperature wires that no installation table covers: named tables of makers and of BS 7671. */
import flexible from "../../shared/tables/bs-7671-4f2a.json" with { type: "json" };
import flexibleAmbient from "../../shared/tables/bs-7671-4f2a-ambient.json" with { type: "json" };
import cord from "../../shared/tables/bs-7671-4f3a.json" with { type: "json" };
import cordAmbient from "../../shared/tables/bs-7671-4f3a-ambient.json" with { type: "json" };
import maker30 from "../../shared/tables/wire-maker-30.json" with { type: "json" };
import maker30Ambient from "../../shared/tables/wire-maker-30-ambient.json" with { type: "json" };
import maker40 from "../../shared/tables/wire-maker-40.json" with { type: "json" };
import { type Amperes, type Celsius, checkOneOf, fail, given } from "../quantity/index.ts";
import { labelledIec } from "./iecClauses.ts";
import { atMost, checkTemperature, same } from "./limit.ts";
import { type CodeResult, type CodeSystem, codeResult, type TableCell } from "./result.ts";
import { cellAt, columnAt, describeCell, type LabelledTable } from "./sharedTable.ts";
import { rowOfSize, sizeOfRow } from "./size.ts";

const NAMES = ["wire maker, 40 °C", "wire maker, 30 °C", "BS 7671 4F2A", "BS 7671 4F3A"] as const;

/**
 * Named tables of flexible and high-temperature wire.
 * @since 0.1.0
 * @useDeclaredType
 */
export type NamedWireTable = (typeof NAMES)[number];

interface Named {
  readonly from: LabelledTable;
  readonly ambient: LabelledTable | null;
  readonly base: number;
  readonly system: CodeSystem;
  readonly edition: string;
  readonly caution: string;
}

function namedTable(name: NamedWireTable): Named {
  const british = { base: 30, system: "IEC", edition: "BS 7671:2008" } as const;
  const maker = {
    system: "maker data",
    edition: "one wire maker",
    caution:
      "One maker's suggestion: appliance wires have no official ratings. The maker of the wire in hand decides.",
  } as const;
  if (name === "wire maker, 40 °C") {
    return { ...maker, base: 40, from: { label: "40 °C table", table: maker40 }, ambient: null };
  }
  if (name === "wire maker, 30 °C") {
    const ambient = { label: "30 °C table, ambient factors", table: maker30Ambient };
    return { ...maker, base: 30, from: { label: "30 °C table", table: maker30 }, ambient };
  }
  const caution = "Near a heated part the ambient is that of the part's surroundings, not of the room.";
  if (name === "BS 7671 4F2A") {
    return { ...british, from: labelledIec(flexible), ambient: labelledIec(flexibleAmbient), caution };
  }
  return { ...british, from: labelledIec(cord), ambient: labelledIec(cordAmbient), caution };
}

/** The maker's 30 °C table repeats figures of a 40 °C table in this column, so no 30 °C factor fits it. */
const OTHER_BASE = "250 nickel-plated copper";

/**
 * Current of a flexible or high-temperature wire by a named table, with that table's own ambient factors and no others.
 *
 * An ambient between the base and the first row, or between two rows, takes the hotter row. Below the base and where the factors are
 * blank there is none.
 * @param input.table - "wire maker, 40 °C" (150 to 450 °C wire), "wire maker, 30 °C" (80 to 200 °C), "BS 7671 4F2A" (flexible cable),
 *   "BS 7671 4F3A" (cord)
 * @param input.column - column as the table has it: "250 nickel-plated copper", "three to five core"
 * @param input.size - size printed on the wire: "14 AWG", "2.5 mm²"
 * @param input.ambient - air around the wire at its hottest place (°C); the base of the table (30 or 40) needs no factor
 * @param input.insulation - column of the factors, needed away from the base by BS 7671: "180 °C thermosetting", "glass fiber cord"; a
 *   maker's wire takes the factors of its own column
 * @returns the current (A) with table, column, base and the maker's or the code's word on it
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name` (lists what exists), `ambiguous`; `inconsistent` for a column the factors do not
 *   fit; `outside-table`
 * @source a wire maker's technical page (suggestions only); BS 7671:2008 Tables 4F2A, 4F3A and their notes
 * @example
 * ```ts
 * namedWireAmpacity({
 *   table: "wire maker, 40 °C", column: "250 nickel-plated copper", size: "14 AWG", ambient: celsius(40),
 * }).value // => 39
 * ```
 * @since 0.1.0
 */
export function namedWireAmpacity(input: {
  readonly table: NamedWireTable;
  readonly column: string;
  readonly size: string;
  readonly ambient: Celsius;
  readonly insulation?: string;
}): CodeResult<Amperes> {
  given(input);
  const { ambient } = input;
  const named = namedTable(checkOneOf("table", input.table, NAMES));
  const { from, system, edition, base } = named;
  const { table, label } = from;
  columnAt(table, input.column, "column");
  checkTemperature("ambient", ambient);
  const row = rowOfSize(table, "size", input.size);
  const value = cellAt(table, row, input.column);
  if (typeof value !== "number") {
    return fail({
      code: "outside-table",
      path: "size",
      expected: `a size with a figure in column ${input.column} of ${label}`,
      received: input.size,
    });
  }
  const misfit = table === maker30 && input.column === OTHER_BASE;
  if (misfit) {
    return fail({
      code: "inconsistent",
      path: "column",
      expected: `the table "wire maker, 40 °C": this column repeats its figures and is not of base 30 °C`,
      received: input.column,
    });
  }
  const { column, insulation } = input;
  if (table === maker30 && insulation !== undefined && insulation !== column) {
    fail({
      code: columnAt(maker30Ambient, insulation, "insulation") > 0 ? "inconsistent" : "unknown-name",
      path: "insulation",
      expected: `${column}, the column of the wire`,
      received: insulation,
    });
  }
  const factor = same(ambient, base)
    ? null
    : factorOf(named, table === maker30 ? column : insulation, ambient);
  const rowName = sizeOfRow(table, row);
  const cell = describeCell({ system, edition, from, row, rowName, column: input.column });
  return codeResult({
    value: (value * (factor?.value ?? 1)) as Amperes,
    unit: "A",
    cells: [cell, ...(factor === null ? [] : [factor.cell])],
    baseConditions: [`air at ${base} °C`],
    governing: factor !== null && factor.value < 1 ? "ambient" : "table value",
    cautions: [named.caution],
  });
}

function factorOf(
  named: Named,
  insulation: string | undefined,
  ambient: number,
): { readonly value: number; readonly cell: TableCell } {
  const { ambient: from, system, edition } = named;
  const { label } = named.from;
  const outside = (expected: string): never =>
    fail({ code: "outside-table", path: "ambient", expected, received: ambient, unit: "°C" });
  if (from === null) return outside(`${named.base} °C: ${label} comes without ambient factors`);
  const { table } = from;
  columnAt(table, insulation as string, "insulation");
  const column = insulation as string;
  const filled = table.rows.filter((row) => typeof cellAt(table, row, column) === "number");
  const at = (row: (typeof filled)[number]): number => cellAt(table, row, "ambient") as number;
  const row = filled.find((one) => atMost(ambient, at(one)));
  if (row === undefined || !atMost(named.base, ambient)) {
    return outside(`${named.base} to ${Math.max(...filled.map(at))} for ${column} (${label})`);
  }
  const rowName = `${at(row)} °C`;
  const cell = describeCell({
    system,
    edition,
    from,
    row,
    rowName,
    column,
  });
  return { value: cellAt(table, row, column) as number, cell };
}

/** What an insulation reading may be held against: every limit with its owner, none of them silent. */

import heaters from "../../shared/tables/heater-insulation.json" with { type: "json" };
import machines from "../../shared/tables/iec-60204-1-insulation.json" with { type: "json" };
import circuits from "../../shared/tables/iec-60364-6-insulation.json" with { type: "json" };
import thumb from "../../shared/tables/insulation-rule-of-thumb.json" with { type: "json" };
import apparatus from "../../shared/tables/neta-100-1.json" with { type: "json" };
import { checkOneOf, fail, megaohms, type Ohms, type Volts } from "../quantity/index.ts";
import { labelledIec } from "./iecClauses.ts";
import { atMost, checkMeasured } from "./limit.ts";
import type { CodeSystem, TableCell } from "./result.ts";
import { cellAt, describeCell, type LabelledTable, type Row } from "./sharedTable.ts";

const NAMES = [
  "IEC 60364-6",
  "IEC 60364-6 SELV or PELV",
  "IEC 60204-1",
  "NETA 100.1",
  "maker assembly",
  "maker element",
  "maker production",
  "maker storage",
  "1 MΩ per kV",
] as const;

/**
 * Named limits of insulation resistance: fixed wiring (IEC 60364-6), machine equipment (IEC 60204-1), general apparatus (NETA
 * 100.1), figures of heater makers, and the rule of thumb. Makers differ by 500 to 1.
 * @since 0.1.0
 * @useDeclaredType
 */
export type InsulationCriterion = (typeof NAMES)[number];

/**
 * A limit of your own: the maker's figure for the element in hand goes before all others.
 * @since 0.1.0
 */
export interface OwnInsulationCriterion {
  /** Name printed with the verdict. */
  readonly name: string;
  /** Smallest insulation resistance (Ω). */
  readonly minimum: Ohms;
  /** Test voltage it is for (V, direct); left out if the source does not say. */
  readonly testVoltage?: Volts;
  /** What it is a limit of: one element, or whatever is measured together. */
  readonly of: "element" | "assembly";
  /** Where you have it from. */
  readonly source: string;
}

/** A limit worked out for a nominal voltage. */
interface ResolvedCriterion {
  readonly name: string;
  readonly minimum: number;
  readonly testVoltage: number | null;
  readonly of: "element" | "assembly";
  readonly scope: string;
  readonly cell: TableCell;
}

const HEATER_ROWS: Readonly<Record<string, string>> = {
  "maker assembly": "unsealed assembly, typical of the factory",
  "maker element": "single element, typical of the factory",
  "maker production": "production pass level",
  "maker storage": "dry out below, after storage",
};

function fromRow(input: {
  readonly name: string;
  readonly system: CodeSystem;
  readonly edition: string;
  readonly from: LabelledTable;
  readonly row: Row;
  readonly rowName: string;
  readonly scope: string;
}): ResolvedCriterion {
  const { name, from, row, scope } = input;
  const cell = describeCell({ ...input, column: "minimum" });
  return {
    name,
    minimum: megaohms(cellAt(from.table, row, "minimum") as number),
    testVoltage: cellAt(from.table, row, "test voltage") as number | null,
    of: cellAt(from.table, row, "of") === "element" ? "element" : "assembly",
    scope,
    cell,
  };
}

function rowFor(table: LabelledTable["table"], column: string, voltage: number, name: string): Row {
  const row = table.rows.find((one) => {
    const to = cellAt(table, one, column);
    return to === null || atMost(voltage, to as number);
  });
  if (row !== undefined) return row;
  return fail({
    code: "outside-table",
    path: "nominalVoltage",
    expected: `at most ${cellAt(table, table.rows.at(-1) as Row, column)} V (${name})`,
    received: voltage,
    unit: "V",
  });
}

/** Upper limit of direct extra-low voltage (V), the higher of the two kinds: IEC 60364-4-41, 414, from memory. */
const EXTRA_LOW_VOLTAGE = 120;

function own(at: string, criterion: OwnInsulationCriterion): ResolvedCriterion {
  const { name, minimum, of, source } = criterion;
  for (const [path, text] of [
    [`${at}.name`, name],
    [`${at}.source`, source],
  ] as const) {
    if (typeof text !== "string" || text.trim() === "")
      fail({ code: "missing", path, expected: "text", received: text });
  }
  checkMeasured(`${at}.minimum`, minimum, "Ω");
  if (criterion.testVoltage !== undefined) checkMeasured(`${at}.testVoltage`, criterion.testVoltage, "V");
  const cell: TableCell = {
    system: "maker data",
    edition: source,
    table: name,
    row: checkOneOf(`${at}.of`, of, ["element", "assembly"]),
    column: "minimum",
    value: minimum,
    unit: "Ω",
    source,
    kind: "user table",
    provenance: "seen",
    labelProvenance: "seen",
  };
  return {
    name,
    minimum,
    testVoltage: criterion.testVoltage ?? null,
    of,
    scope: "the user's own limit",
    cell,
  };
}

/** A limit by name or of the user's own, for equipment of a nominal voltage. */
export function resolveCriterion(
  at: string,
  criterion: InsulationCriterion | OwnInsulationCriterion,
  nominalVoltage: number,
): ResolvedCriterion {
  if (typeof criterion === "object" && criterion !== null) return own(at, criterion);
  const name = checkOneOf(at, criterion, NAMES);
  if (name === "1 MΩ per kV") {
    const row = thumb.rows[0] as Row;
    const from = { label: "rule of thumb", table: thumb };
    const floor = cellAt(thumb, row, "floor") as number;
    const per = cellAt(thumb, row, "per kilovolt") as number;
    const rowName = "1 MΩ per kV, at least 1 MΩ";
    return {
      name,
      minimum: megaohms(Math.max(floor, (per * nominalVoltage) / 1000)),
      testVoltage: null,
      of: "assembly",
      scope: "common practice, no published source",
      cell: describeCell({
        system: "common practice",
        edition: "common practice",
        from,
        row,
        rowName,
        column: "per kilovolt",
      }),
    };
  }
  if (name === "NETA 100.1") {
    const row = rowFor(apparatus, "rating", nominalVoltage, name);
    const rowName = `${row[0]} V`;
    const from = { label: "Table 100.1", table: apparatus };
    const scope =
      "general electrical apparatus; mineral-insulated elements often read far less and still serve";
    return fromRow({
      name,
      system: "North America",
      edition: "ANSI/NETA MTS-2019",
      from,
      row,
      rowName,
      scope,
    });
  }
  if (name === "IEC 60204-1") {
    const from = labelledIec(machines);
    const row = machines.rows[0] as Row;
    const scope = "power circuits of machines against the protective bonding circuit";
    return fromRow({
      name,
      system: "IEC",
      edition: "IEC 60204-1",
      from,
      row,
      rowName: "power circuits",
      scope,
    });
  }
  const heater = HEATER_ROWS[name];
  if (heater !== undefined) {
    const row = heaters.rows.find((one) => one[0] === heater) as Row;
    const from = { label: "makers' instructions", table: heaters };
    const scope = "one maker's figure for metal-sheathed elements; makers differ by 500 to 1";
    return fromRow({
      name,
      system: "maker data",
      edition: "heater makers",
      from,
      row,
      rowName: heater,
      scope,
    });
  }
  const low = name.endsWith("SELV or PELV");
  if (low && !atMost(nominalVoltage, EXTRA_LOW_VOLTAGE)) {
    return fail({
      code: "outside-table",
      path: "nominalVoltage",
      expected: `at most ${EXTRA_LOW_VOLTAGE} V: no circuit above it is SELV or PELV (${name})`,
      received: nominalVoltage,
      unit: "V",
    });
  }
  const table = { ...circuits, rows: circuits.rows.filter((row) => (row[0] === "SELV or PELV") === low) };
  const row = rowFor(table, "to", nominalVoltage, name);
  const from = { ...labelledIec(circuits), table };
  const scope = `fixed wiring at verification, not heating elements${low ? "; at most 50 V alternating or 120 V direct" : ""}`;
  return fromRow({
    name,
    system: "IEC",
    edition: "IEC 60364-6",
    from,
    row,
    rowName: `${row[0]} circuit`,
    scope,
  });
}

/** Acceptance tables as data: what a scan or a joint measurement is held against. */
import ratio from "../../shared/tables/joint-ratio-rules.json" with { type: "json" };
import neta from "../../shared/tables/joint-thermal-severity-neta.json" with { type: "json" };
import practitioner from "../../shared/tables/joint-thermal-severity-practitioner.json" with { type: "json" };
import { checkOneOf, given } from "../quantity/index.ts";
import { type CodeResult, type CodeSystem, codeResult } from "./result.ts";
import { cellAt, describeCell, REMARK_COLUMNS, type SharedTable } from "./sharedTable.ts";

const NAMES = ["neta-100.18", "practitioner-limits", "50-percent-above-lowest"] as const;

/**
 * Named acceptance tables: two scales of rise for thermal scans, and the rule for resistances of like bolted joints.
 * @since 0.1.0
 * @useDeclaredType
 */
export type AcceptanceTable = (typeof NAMES)[number];

/**
 * A column of an acceptance table.
 * @since 0.1.0
 */
export interface AcceptanceColumn {
  /** Its name. */
  readonly name: string;
  /** Its unit; empty for text, 1 for a ratio or a rank. */
  readonly unit: string;
  /** What stands in it. */
  readonly meaning: string;
}

/**
 * A table as printed, row by row.
 * @since 0.1.0
 */
export interface AcceptanceRows
  extends CodeResult<readonly Readonly<Record<string, number | string | null>>[]> {
  /** The columns in order. */
  readonly columns: readonly AcceptanceColumn[];
}

interface Held {
  readonly table: SharedTable;
  readonly label: string;
  readonly edition: string;
  readonly system: CodeSystem;
  readonly conditions: readonly string[];
  readonly cautions: readonly string[];
}

const SCAN_CAUTIONS = [
  "No row corrects for load or emissivity: bright bare metal shows the reflected room, and below 40 % load nothing is decided.",
  "Published scales disagree: name the one you used.",
];

function held(name: AcceptanceTable): Held {
  switch (name) {
    case "neta-100.18":
      return {
        table: neta,
        label: "Table 100.18",
        edition: "ANSI/NETA ATS-2003",
        system: "North America",
        conditions: [
          "rise over a similar component under similar load, or over ambient air: two columns, two limits",
        ],
        cautions: ["Printed in whole kelvins with gaps, from 3 to 4 and from 10 to 11.", ...SCAN_CAUTIONS],
      };
    case "practitioner-limits":
      return {
        table: practitioner,
        label: "limit values",
        edition: practitioner.edition,
        system: "common practice",
        conditions: ["from about 75 % load", "rise over ambient air, or between the three lines"],
        cautions: SCAN_CAUTIONS,
      };
    case "50-percent-above-lowest":
      return {
        table: ratio,
        label: "bolted connections",
        edition: "ANSI/NETA ATS-2003",
        system: "North America",
        conditions: ["like joints of one assembly, measured alike with direct current"],
        cautions: [
          "A trigger to investigate, no verdict: a set of joints that are all poor passes it.",
          "Resistance rises with temperature: compare joints at one temperature.",
        ],
      };
  }
}

/**
 * An acceptance table as printed, with its edition, conditions and note. The judgement by it is the business of the room `joint`
 * (`scanSeverity`, `judgeJoint`), which reads the same file.
 * @param input.table - "neta-100.18", "practitioner-limits" or "50-percent-above-lowest"
 * @returns the rows, each cell under the name of its column, `null` where the table has none
 * @throws ElectroheatError `missing`, `unknown-name` (lists what exists)
 * @source ANSI/NETA ATS-2003, Table 100.18 and bolted connections; a practitioner's published limit values
 * @example
 * ```ts
 * acceptanceTable({ table: "neta-100.18" }).value[3]?.["action"] // => "major discrepancy; repair immediately"
 * ```
 * @since 0.1.0
 */
export function acceptanceTable(input: { readonly table: AcceptanceTable }): AcceptanceRows {
  given(input);
  const { table, label, edition, system, conditions, cautions } = held(
    checkOneOf("table", input.table, NAMES),
  );
  const columns = table.columns.filter(({ name }) => !REMARK_COLUMNS.includes(name) && name !== "source");
  const from = { label, table };
  const cells = table.rows.flatMap((row, i) =>
    columns
      .filter(({ unit }) => unit !== "")
      .map(({ name: column }) =>
        describeCell({ system, edition, from, row, rowName: `row ${i + 1}`, column }),
      ),
  );
  return {
    ...codeResult({
      value: table.rows.map((row) =>
        Object.fromEntries(columns.map(({ name }) => [name, cellAt(table, row, name)])),
      ),
      unit: "",
      cells,
      baseConditions: conditions,
      governing: "none",
      cautions,
    }),
    columns,
  };
}

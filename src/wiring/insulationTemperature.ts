/** Insulation resistance referred to 20 °C. */
import table from "../../shared/tables/neta-100-14.json" with { type: "json" };
import { type Celsius, checkBetween, checkOneOf, fail, given, type Ohms } from "../quantity/index.ts";
import { checkMeasured, same } from "./limit.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, describeCell, type Row } from "./sharedTable.ts";

/**
 * Insulation resistance referred to 20 °C: R₂₀ = R·factor, by the table at its own temperatures (0, 5, 10 … 80 °C), or, asked for by
 * name, by the laws 2^((T − 20)/10) for oil and 10^((T − 20)/50) for solid insulation that the table follows to 2 %.
 *
 * Neither column is validated for the magnesium oxide, mica or ceramic of heating elements: quote the reading and its temperature.
 * @param input.resistance - reading (Ω), more than 0
 * @param input.temperature - of the insulation (°C), 0 to 80
 * @param input.insulation - "oil" or "solid"
 * @param input.by - "table" if left out; "law" for temperatures between its rows, with a warning
 * @returns the resistance at 20 °C (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` between the rows
 * @source ANSI/NETA ATS and MTS Table 100.14.1; oil read up to 75 °C, the rest from memory and checked against the laws
 * @example
 * ```ts
 * insulationAt20({ resistance: megaohms(1200), temperature: celsius(35), insulation: "oil" }).value // => 3.36e9
 * ```
 * @since 0.1.0
 */
export function insulationAt20(input: {
  readonly resistance: Ohms;
  readonly temperature: Celsius;
  readonly insulation: "oil" | "solid";
  readonly by?: "table" | "law";
}): CodeResult<Ohms> {
  given(input);
  const { resistance, temperature } = input;
  checkMeasured("resistance", resistance, "Ω");
  checkBetween("temperature", temperature, 0, 80, "°C");
  const column = checkOneOf("insulation", input.insulation, ["oil", "solid"]);
  const route = checkOneOf("by", input.by ?? "table", ["table", "law"]);
  const found = table.rows.find((row) => same(temperature, row[0] as number));
  if (route === "table" && found === undefined) {
    return fail({
      code: "outside-table",
      path: "temperature",
      expected: 'a multiple of 5 from 0 to 80 °C (or by: "law")',
      received: temperature,
      unit: "°C",
    });
  }
  const law = column === "oil" ? 2 ** ((temperature - 20) / 10) : 10 ** ((temperature - 20) / 50);
  const row = (found ?? table.rows[0]) as Row;
  const cell = describeCell({
    system: "North America",
    edition: "ANSI/NETA MTS",
    from: { label: "Table 100.14.1", table },
    row,
    rowName: `${route === "table" ? row[0] : temperature} °C`,
    column,
  });
  const byLaw = route === "law";
  const factor = byLaw ? law : (cellAt(table, row, column) as number);
  return codeResult({
    value: (resistance * factor) as Ohms,
    unit: "Ω",
    cells: [
      byLaw
        ? { ...cell, table: "Table 100.14.1, law", value: law, source: cell.source, provenance: "derived" }
        : cell,
    ],
    baseConditions: ["referred to 20 °C"],
    governing: byLaw ? "law" : "table value",
    cautions: [
      "Not validated for magnesium oxide, mica or ceramic: quote the reading with its temperature as well.",
    ],
    warnings: byLaw
      ? [
          {
            code: "approximate",
            path: "by",
            message: "By the law, within about 2 % of the table (5 % for oil at 15 °C).",
          },
        ]
      : [],
  });
}

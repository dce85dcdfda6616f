/** High-temperature insulation types by their letters. */
import types from "../../shared/tables/nec-high-temperature-insulation.json" with { type: "json" };
import { type Celsius, fail, given } from "../quantity/index.ts";
import { labelOf, type NecEdition, namedEdition } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, describeCell, nameError } from "./sharedTable.ts";

/**
 * An insulation type with its limits.
 * @since 0.1.0
 */
export interface InsulationType extends CodeResult<Celsius> {
  /** What it is made of. */
  readonly insulation: string;
  /** Conductor materials of its ampacity column, separated by commas. */
  readonly conductor: string;
  /** Where it may be used. */
  readonly use: string;
}

/**
 * Temperature column of a high-temperature insulation type, for {@link tableAmpacity} with installation "high-temperature
 * raceway". Glass and mica appliance leads are no types of this code: use {@link namedWireAmpacity} or the maker.
 * @param input.edition - edition by name
 * @param input.type - letters on the wire: Z, FEP, FEPB, PFA, SA, PFAH, TFE
 * @returns the temperature (°C), the conductor and the limits of use
 * @throws ElectroheatError `missing`, `unknown-name`
 * @source NFPA 70, National Electrical Code: Table 310.104(A) (2017), 310.4(A) (2020), 310.4(1) (2023); from memory, the grouping as in Table 310-18 (1996)
 * @example
 * ```ts
 * insulationType({ edition: "NEC 2023", type: "TFE" }).value // => 250
 * ```
 * @since 0.1.0
 */
export function insulationType(input: {
  readonly edition: NecEdition;
  readonly type: string;
}): InsulationType {
  given(input);
  const { name, year } = namedEdition(input.edition);
  const row = types.rows.find((one) => one[0] === input.type);
  if (row === undefined) {
    return fail({
      code: nameError(input.type),
      path: "type",
      expected: `one of ${types.rows.map((one) => one[0]).join(", ")}`,
      received: input.type,
    });
  }
  const from = { ...labelOf("insulation types", year), table: types };
  const use = String(cellAt(types, row, "use"));
  return {
    ...codeResult({
      value: cellAt(types, row, "temperature") as Celsius,
      unit: "°C",
      cells: [
        describeCell({
          system: "North America",
          edition: name,
          from,
          row,
          rowName: input.type,
          column: "temperature",
        }),
      ],
      baseConditions: [use],
      governing: "insulation",
    }),
    insulation: String(cellAt(types, row, "insulation")),
    conductor: String(cellAt(types, row, "conductor")),
    use,
  };
}

/** Resistance of a conductor by the code's table, at its own temperature. */
import { listedResistance } from "../material/index.ts";
import { type Celsius, checkBetween, given, type OhmsPerMeter } from "../quantity/index.ts";
import { labelOf, type NecEdition, namedEdition } from "./necTables.ts";
import { type CodeResult, codeResult, type Provenance, type TableKind } from "./result.ts";

const TABLE_TEMPERATURE = 75;
/** Coefficients of the note under the table, per kelvin at 75 °C. */
const COPPER = 0.00323;
const ALUMINUM = 0.0033;

/**
 * Direct-current resistance per length of a conductor: R = R₇₅·(1 + a·(T − 75)), a = 0.00323 /K copper, 0.00330 /K aluminum.
 *
 * T is the temperature of the conductor, not of the air. Without skin effect and reactance, which count above 4/0 AWG.
 * @param input.edition - edition by name
 * @param input.size - size printed on the conductor: "4 AWG", "250 kcmil"
 * @param input.build - "solid" or "stranded": 18 to 8 AWG stand in the table as both, larger sizes stranded only
 * @param input.metal - "uncoated copper", "coated copper" (tinned) or "aluminum"
 * @param input.temperature - of the conductor (°C), −50 to 150; outside 0 to 100 °C with a warning
 * @returns resistance per length (Ω/m) with the cell in Ω per 1000 ft
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `ambiguous`, `outside-table`
 * @source NFPA 70, National Electrical Code, Chapter 9, Table 8 and its note on temperature
 * @example
 * ```ts
 * const found = conductorResistancePerLength({
 *   edition: "NEC 2023", size: "12 AWG", build: "stranded", metal: "uncoated copper", temperature: celsius(75),
 * });
 * toOhmsPerThousandFeet(found.value) // => 1.98
 * ```
 * @since 0.1.0
 */
export function conductorResistancePerLength(input: {
  readonly edition: NecEdition;
  readonly size: string;
  readonly build: "solid" | "stranded";
  readonly metal: "uncoated copper" | "coated copper" | "aluminum";
  readonly temperature: Celsius;
}): CodeResult<OhmsPerMeter> {
  given(input);
  const { size, build, metal, temperature } = input;
  const { name, year } = namedEdition(input.edition);
  checkBetween("temperature", temperature, -50, 150, "°C");
  const { value, basis, cell } = listedResistance({ size, build, metal });
  const factor = 1 + (metal === "aluminum" ? ALUMINUM : COPPER) * (temperature - TABLE_TEMPERATURE);
  const far = !(temperature >= 0 && temperature <= 100);
  const { label, labelProvenance } = labelOf("conductor resistance", year);
  return codeResult({
    value: (value * factor) as OhmsPerMeter,
    unit: "Ω/m",
    cells: [
      {
        ...cell,
        system: "North America",
        edition: name,
        table: label,
        source: basis.source,
        kind: basis.kind as TableKind,
        provenance: cell.provenance as Provenance,
        labelProvenance,
      },
    ],
    baseConditions: ["direct current", "conductor at 75 °C"],
    governing: "table value",
    warnings: far
      ? [
          {
            code: "outside-validity",
            path: "temperature",
            message: "The straight line of the note is for temperatures not far from 75 °C.",
            limit: temperature < 0 ? 0 : 100,
            unit: "°C",
            source: "nfpa-70",
          },
        ]
      : [],
  });
}

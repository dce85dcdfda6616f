/** A resistance measured at another temperature, referred to 20 °C by a named law. */
import { type Celsius, checkBetween, checkOneOf, given, type Warning } from "../quantity/index.ts";
import type { Basis, Lookup } from "./basis.ts";

/**
 * Law that refers a conductor resistance to 20 °C.
 *
 * - `IEC 60228`: 250 / (230 + t), the table of the standard for cables, copper and aluminum alike
 * - `copper`: 1 / (1 + 0.00393 (t − 20)), the definition of IACS copper
 * - `aluminum`: 1 / (1 + 0.00403 (t − 20))
 * @since 0.1.0
 */
export type ReferenceLaw = "IEC 60228" | "copper" | "aluminum";

const LAWS: Readonly<Record<ReferenceLaw, readonly [coefficient: number, source: string]>> = {
  "IEC 60228": [0.004, "iec-60228"],
  copper: [0.00393, "iec-60028"],
  aluminum: [0.00403, "iec-60889"],
};
const TABLE_FROM = 5;
const TABLE_TO = 100;

/**
 * Factor that refers a conductor resistance measured at a temperature to 20 °C: 1 / (1 + coefficient × (temperature
 * − 20)), the coefficient by the named law. The laws differ by 0.4 % at 90 °C. Not for heating alloys and nickel.
 * @param input - what is looked up
 * @param input.temperature - temperature of the conductor when it was measured, °C, −50 to 200
 * @param input.law - `IEC 60228` (for cable acceptance), `copper` or `aluminum`
 * @returns resistance at 20 °C / resistance measured, with its source; a warning where the IEC table ends (5 and
 *   100 °C)
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `out-of-range`
 * @source IEC 60228:2004, annex; IEC 60028:1925; IEC 60889
 * @example
 * ```ts
 * referenceFactor({ temperature: celsius(90), law: "IEC 60228" }).value.toFixed(3) // => "0.781"
 * ```
 * @since 0.1.0
 */
export function referenceFactor(input: {
  readonly temperature: Celsius;
  readonly law: ReferenceLaw;
}): Lookup<number> {
  given(input);
  const law = checkOneOf("law", input.law, ["IEC 60228", "copper", "aluminum"]);
  checkBetween("temperature", input.temperature, -50, 200, "°C");
  const [coefficient, source] = LAWS[law];
  const isTable = law === "IEC 60228";
  const basis: Basis = {
    source,
    edition: isTable ? "2004, annex" : "definition",
    table: isTable ? "temperature correction" : law,
    kind: isTable ? "published" : "definition",
  };
  const outside = isTable && (input.temperature < TABLE_FROM || input.temperature > TABLE_TO);
  const warnings: Warning[] = [];
  if (outside) {
    warnings.push({
      code: "outside-validity",
      path: "temperature",
      message: `The table of IEC 60228 runs from ${TABLE_FROM} to ${TABLE_TO} °C; its law is continued.`,
      limit: input.temperature < TABLE_FROM ? TABLE_FROM : TABLE_TO,
      unit: "°C",
      source,
    });
  }
  return { value: 1 / (1 + coefficient * (input.temperature - 20)), basis, warnings };
}

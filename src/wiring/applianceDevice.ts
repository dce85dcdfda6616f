/** Largest device of an appliance that carries no mark. */
import { type Amperes, fail, given } from "../quantity/index.ts";
import { atMost, checkMeasured } from "./limit.ts";
import { labelOf, type NecEdition, namedEdition } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { ratingNear } from "./standardDevice.ts";

const LEAST_CURRENT = 13.3;
const FACTOR = 1.5;

/**
 * Largest overcurrent device of a single appliance without a marked rating, drawing more than 13.3 A: the standard rating
 * at or next above 1.5 · current. An upper bound; the lower one is {@link designCurrent}.
 * @param input.edition - edition by name
 * @param input.current - rated current of the appliance (A), more than 13.3
 * @returns the rating (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range` at 13.3 A or below (another clause), `unknown-name`,
 *   `outside-table`
 * @source NFPA 70, National Electrical Code, 422.11(E)
 * @example
 * ```ts
 * largestApplianceDevice({ edition: "NEC 2020", current: amperes(18.75) }).value // => 30
 * ```
 * @since 0.1.0
 */
export function largestApplianceDevice(input: {
  readonly edition: NecEdition;
  readonly current: Amperes;
}): CodeResult<Amperes> {
  given(input);
  const { edition, current } = input;
  checkMeasured("current", current, "A");
  const { year } = namedEdition(edition);
  if (atMost(current, LEAST_CURRENT)) {
    fail({
      code: "out-of-range",
      path: "current",
      expected: `more than ${LEAST_CURRENT}`,
      received: current,
      unit: "A",
    });
  }
  const found = ratingNear(edition, FACTOR * current, "up");
  if (found === null) {
    return fail({
      code: "outside-table",
      path: "current",
      expected: "a current within the standard ratings",
      received: current,
      unit: "A",
    });
  }
  const { label, labelProvenance } = labelOf("appliance 150 percent", year);
  return codeResult({
    value: found.value as Amperes,
    unit: "A",
    cells: [
      {
        ...found.cell,
        table: label,
        row: "unmarked, above 13.3 A",
        column: "factor",
        value: FACTOR,
        unit: "1",
        provenance: "seen",
        labelProvenance,
      },
      found.cell,
    ],
    baseConditions: ["single non-motor-operated appliance without a marked overcurrent rating"],
    governing: "appliance without mark",
    cautions: ["An upper bound. A mark on the appliance goes before it."],
  });
}

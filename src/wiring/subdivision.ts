/** Subdivision of resistance heating into protected circuits, by equipment class. */
import { type Amperes, checkWhole, fail, given } from "../quantity/index.ts";
import { type EquipmentClass, heatingRule, loadWarnings } from "./designCurrent.ts";
import { atMost, checkMeasured, partsNeeded } from "./limit.ts";
import type { NorthAmerican } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, describeCell } from "./sharedTable.ts";
import { ratingNear } from "./standardDevice.ts";

const MOST_CIRCUITS = 10_000;

/**
 * How a heater is split into protected circuits.
 * @since 0.1.0
 */
export interface Subdivision extends CodeResult<number> {
  /** Whether the class must be split at this current. */
  readonly required: boolean;
  /** Fewest circuits the rule allows. */
  readonly fewest: number;
  /** Largest load of one circuit by the rule (A); `null` where the class has no such rule. */
  readonly largestLoad: Amperes | null;
  /** Load of each circuit (A). */
  readonly circuitCurrent: Amperes;
  /** Design current of each circuit (A). */
  readonly circuitDesignCurrent: Amperes;
  /** Smallest standard device of each circuit (A). */
  readonly device: Amperes;
}

/**
 * Number of protected circuits a resistance heater needs, equal circuits: the fewest of which none exceeds the class's largest
 * subdivided load (48 A, device 60 A, for space and process heating and appliances), or the number you give.
 *
 * Classes differ: an oven under the furnace standard need not be split. The count is decided in decimal on 12
 * significant digits, so that 48.00000000000001 A is 48 A.
 * @param input.edition - edition by name, or one of your own
 * @param input.equipment - equipment class
 * @param input.current - heater current at rated voltage (A), more than 0
 * @param input.circuits - number of circuits, where the module has natural parts (arrays); the fewest if left out
 * @returns number of circuits, with load, design current and device of each
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `inconsistent` for fewer circuits than the rule allows
 * @source NFPA 70, National Electrical Code, 424.22(B), 422.11(F), 425.22(B)
 * @example
 * ```ts
 * const split = subdivision({ edition: "NEC 2023", equipment: "process heating", current: amperes(108.253) });
 * [split.value, split.device] // => [3, 50]
 * ```
 * @since 0.1.0
 */
export function subdivision(input: {
  readonly edition: NorthAmerican;
  readonly equipment: EquipmentClass | (string & {});
  readonly current: Amperes;
  readonly circuits?: number;
}): Subdivision {
  given(input);
  const { edition, equipment, current } = input;
  checkMeasured("current", current, "A");
  const { name, from, row } = heatingRule(edition, equipment);
  const largest = cellAt(from.table, row, "subdivided load") as number | null;
  const largestDevice = cellAt(from.table, row, "subdivided device") as number | null;
  const clause = cellAt(from.table, row, "subdivision");
  const fewest = largest === null ? 1 : partsNeeded(current, largest);
  if (fewest > MOST_CIRCUITS) {
    fail({
      code: "out-of-range",
      path: "current",
      expected: "a current of a heater",
      received: current,
      unit: "A",
    });
  }
  const circuits = input.circuits ?? fewest;
  checkWhole("circuits", circuits, 1, MOST_CIRCUITS);
  if (circuits < fewest) {
    fail({
      code: "inconsistent",
      path: "circuits",
      expected: `${fewest} or more, of at most ${largest} A each (${clause})`,
      received: circuits,
    });
  }
  const each = current / circuits;
  const design = (cellAt(from.table, row, "factor") as number) * each;
  const device = ratingNear(edition, design, "up");
  if (device === null || (largestDevice !== null && !atMost(device.value, largestDevice))) {
    return fail({
      code: "outside-table",
      path: "circuits",
      expected: `circuits whose device is a standard rating${largestDevice === null ? "" : ` of at most ${largestDevice} A`}`,
      received: circuits,
    });
  }
  const column = largest === null ? "factor" : "subdivided load";
  const labelled = { ...from, label: clause === null ? from.label : String(clause) };
  const cell = describeCell({
    system: "North America",
    edition: name,
    from: labelled,
    row,
    rowName: String(row[0]),
    column,
  });
  const required = fewest > 1;
  const result = codeResult({
    value: circuits,
    unit: "1",
    cells: [cell, device.cell],
    baseConditions: ["equal circuits", "resistance-type heating elements"],
    governing: required ? "subdivision" : largest === null ? "no subdivision rule" : "within one circuit",
    cautions: [
      "The equipment class decides and is settled by the listing and the authority at the site, not by the current.",
    ],
    warnings: loadWarnings(current, "current"),
  });
  return {
    ...result,
    required,
    fewest,
    largestLoad: largest as Amperes | null,
    circuitCurrent: each as Amperes,
    circuitDesignCurrent: design as Amperes,
    device: device.value as Amperes,
  };
}

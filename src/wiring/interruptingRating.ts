/** Whether a device can break the fault that its place may see. */
import { judge, type Verdict } from "../decision/index.ts";
import { type Amperes, given, type Volts } from "../quantity/index.ts";
import { type IecEditionName, iecEditionNames } from "./iecNames.ts";
import { atMost, checkMeasured, checkMeasuredOrZero } from "./limit.ts";
import { labelOf, type NecEdition, namedEdition } from "./necTables.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";

/**
 * An interrupting rating held against the fault current at the line terminals of its device.
 * @since 0.1.0
 */
export interface InterruptingVerdict extends CodeResult<Verdict> {
  /** What decides: the current, or the voltage that the rating is marked for. */
  readonly governing: "available current" | "marked voltage";
  /** Rating less available current (A): positive where the device breaks more than it may see. */
  readonly margin: Amperes;
}

/** The rule in its edition: a rating is at least once the current. */
function ruleCell(edition: NecEdition | IecEditionName): TableCell {
  const rule = { row: "rating over available current", column: "at least", value: 1, unit: "1" } as const;
  const iec = iecEditionNames().find((name) => name === edition);
  if (iec !== undefined) {
    return {
      ...rule,
      system: "IEC",
      edition: iec,
      table: "IEC 60364-4-43, 434.5.1",
      source: "iec-60364-4-43",
      kind: "published",
      provenance: "memory",
      labelProvenance: "memory",
    };
  }
  const { name, year } = namedEdition(edition as NecEdition);
  const { label, labelProvenance } = labelOf("interrupting rating", year);
  return {
    ...rule,
    system: "North America",
    edition: name,
    table: label,
    source: "nfpa-70",
    kind: "published",
    provenance: "seen",
    labelProvenance,
  };
}

const CAUTIONS: readonly string[] = [
  "The rating marked for this device, this circuit voltage and this number of poles; a slash mark (480Y/277 V) is only for a star with its star point earthed.",
  "A rating in series with another device counts only where both makers have tested the pair, and the marks say so.",
  "Breaking the fault is not outlasting it: equipment and conductors behind the device have ratings of their own (110.10; 434.5.2).",
];

/**
 * Whether a device can break the fault that its place may see: interruptingRating ≥ availableCurrent, marked for at least the circuit's
 * voltage. Equal is within; decided in decimal, and undecided where the uncertainty of the current straddles the rating.
 * @param input.edition - edition by name: "NEC 2023", "IEC 60364-5-52:2009"
 * @param input.availableCurrent - largest fault current at the line terminals (A), from the network operator or {@link faultCurrent}, more than 0
 * @param input.halfWidth - half-width of its interval (A), 0 or more; 0 if left out
 * @param input.interruptingRating - marked on the device: interrupting rating, Icu or Icn (A), more than 0
 * @param input.markedVoltage - voltage that this rating is marked for, line to line (V), more than 0
 * @param input.circuitVoltage - nominal voltage of the circuit, line to line (V), more than 0
 * @returns "within", "outside" or "undecided", with the margin and what decides
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source NFPA 70, National Electrical Code, 110.9; IEC 60364-4-43, 434.5.1, from memory
 * @example
 * ```ts
 * interruptingVerdict({
 *   edition: "NEC 2014", availableCurrent: amperes(9900), interruptingRating: kiloamperes(10), markedVoltage: volts(480), circuitVoltage: volts(480),
 * }).value // => "within"
 * ```
 * @since 0.1.0
 */
export function interruptingVerdict(input: {
  readonly edition: NecEdition | IecEditionName;
  readonly availableCurrent: Amperes;
  readonly halfWidth?: Amperes;
  readonly interruptingRating: Amperes;
  readonly markedVoltage: Volts;
  readonly circuitVoltage: Volts;
}): InterruptingVerdict {
  given(input);
  const { availableCurrent, halfWidth = 0, interruptingRating, markedVoltage, circuitVoltage } = input;
  const cell = ruleCell(input.edition);
  checkMeasured("availableCurrent", availableCurrent, "A");
  checkMeasuredOrZero("halfWidth", halfWidth, "A");
  checkMeasured("interruptingRating", interruptingRating, "A");
  checkMeasured("markedVoltage", markedVoltage, "V");
  checkMeasured("circuitVoltage", circuitVoltage, "V");
  const { verdict, margin } = judge({
    value: availableCurrent,
    halfWidth,
    high: interruptingRating,
    rule: cell.table,
  });
  const fits = atMost(circuitVoltage, markedVoltage);
  const governing = fits ? "available current" : "marked voltage";
  return {
    ...codeResult({
      value: fits ? verdict : "outside",
      unit: "",
      cells: [cell],
      baseConditions: ["symmetrical current of a bolted fault at the line terminals"],
      governing,
      cautions: CAUTIONS,
    }),
    governing,
    margin: margin as Amperes,
  };
}

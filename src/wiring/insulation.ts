/** Insulation resistance: what a group reads, what leaks, what a reading is worth. */
import { judge, type Verdict } from "../decision/index.ts";
import {
  type Amperes,
  type Celsius,
  checkOpenOr,
  checkWhole,
  fail,
  given,
  type Ohms,
  type Open,
  type Volts,
  type Warning,
} from "../quantity/index.ts";
import {
  type InsulationCriterion,
  type OwnInsulationCriterion,
  resolveCriterion,
} from "./insulationCriteria.ts";
import { atMost, checkMeasured, checkMeasuredOrZero, checkTemperature, same } from "./limit.ts";
import { type CodeResult, codeResult, DEFERRAL } from "./result.ts";

const checkMeasuredOhms = (path: string, resistance: number): void => checkMeasured(path, resistance, "Ω");

/**
 * Insulation resistance of elements measured together: 1/R = Σ 1/Rᵢ. Eight sound elements of 24 MΩ read 3 MΩ.
 *
 * `"open"` stands for a reading above the tester's range and counts as infinite: the group may then read less than this.
 * @param resistances - insulation resistance of each element to frame (Ω), each more than 0, or `"open"`; one or more
 * @returns what the group reads (Ω), `"open"` where all are; does not depend on the order
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source resistances in parallel, definition
 * @example
 * ```ts
 * insulationInParallel([megaohms(20), megaohms(20), megaohms(5)]) // => 3.33333e6
 * ```
 * @since 0.1.0
 */
export function insulationInParallel(resistances: readonly (Ohms | Open)[]): Ohms | Open {
  if (!Array.isArray(resistances) || resistances.length === 0) {
    fail({ code: "missing", path: "resistances", expected: "one reading or more", received: resistances });
  }
  resistances.forEach((resistance, i) => {
    checkOpenOr(`resistances.${i}`, resistance, checkMeasuredOhms);
  });
  const finite = resistances.filter((one): one is Ohms => one !== "open").sort((a, b) => b - a);
  if (finite.length === 0) return "open";
  return (1 / finite.reduce((total, resistance) => total + 1 / resistance, 0)) as Ohms;
}

/**
 * Insulation resistance of equal elements measured together: R = each/count.
 * @param input.each - insulation resistance of one element to frame (Ω), more than 0
 * @param input.count - elements measured together, 1 or more
 * @returns what the group reads (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source resistances in parallel, definition
 * @example
 * ```ts
 * insulationOfGroup({ each: megaohms(24), count: 8 }) // => 3e6
 * ```
 * @since 0.1.0
 */
export function insulationOfGroup(input: { readonly each: Ohms; readonly count: number }): Ohms {
  given(input);
  checkMeasured("each", input.each, "Ω");
  checkWhole("count", input.count, 1, 100_000);
  return (input.each / input.count) as Ohms;
}

/**
 * Leakage through an insulation resistance.
 * @since 0.1.0
 */
export interface InsulationLeakage {
  /** Resistive leakage current to frame (A). */
  readonly leakage: Amperes;
  /** Who decides. */
  readonly deferral: string;
  /** What the reader must know before acting on it. */
  readonly cautions: readonly string[];
}

const LEAKAGE_CAUTIONS = [
  "Resistive leakage only: capacitive leakage of cables and filters comes on top, and a residual-current device sees both.",
  "A current, not a verdict: it clears equipment neither for service nor for touch.",
];

/**
 * Resistive leakage to frame through an insulation resistance: leakage = voltage/resistance. Capacitive leakage comes on top and is
 * not in it. Hold it against {@link leakageLimit} only where that standard applies.
 * @param input.voltage - voltage to frame, in a star supply line voltage over √3 (V), 0 or more
 * @param input.resistance - insulation resistance of everything connected (Ω), more than 0
 * @returns leakage current (A), with note and cautions
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Ohm's law
 * @example
 * ```ts
 * toMicroamperes(insulationLeakage({ voltage: volts(277), resistance: megaohms(3) }).leakage).toFixed(4) // => "92.3333"
 * ```
 * @since 0.1.0
 */
export function insulationLeakage(input: {
  readonly voltage: Volts;
  readonly resistance: Ohms;
}): InsulationLeakage {
  given(input);
  checkMeasuredOrZero("voltage", input.voltage, "V");
  checkMeasured("resistance", input.resistance, "Ω");
  const leakage = (input.voltage / input.resistance) as Amperes;
  return { leakage, deferral: DEFERRAL, cautions: LEAKAGE_CAUTIONS };
}

/**
 * A reading held against one named limit.
 * @since 0.1.0
 */
export interface InsulationVerdict extends CodeResult<Verdict> {
  /** Name of the limit. */
  readonly criterion: string;
  /** The limit for what was measured (Ω). */
  readonly minimum: Ohms;
  /** Distance of the reading from it (Ω): positive within. */
  readonly margin: Ohms;
}

const TOO_LOW =
  " Read at less than that: a weak place may hold a lower voltage, so it is not passed by this.";

const CAUTIONS = [
  "Measure with the supply isolated, locked out and proved dead, semiconductors and controls disconnected; discharge afterwards.",
  "A figure without its temperature, its test voltage and the number of elements measured together says little; the trend says more.",
];

/**
 * Holds an insulation reading against the limits you name, side by side: there is no common limit, so none is assumed. A limit
 * of one element is divided by the number measured together, as if they were equal. No reading at less than the test voltage of a limit
 * passes it: that one is undecided.
 * @param input.resistance - reading to frame (Ω), more than 0
 * @param input.halfWidth - half-width of its interval, from the tester's accuracy (Ω); 0 if left out
 * @param input.nominalVoltage - rated voltage of the equipment (V), more than 0
 * @param input.testVoltage - direct voltage of the tester (V), more than 0
 * @param input.temperature - of the insulation at the test (°C); kept with the answer, not corrected for
 * @param input.elementsInParallel - elements measured together; 1 if left out
 * @param input.criteria - limits by name ({@link InsulationCriterion}) or of your own; one or more
 * @returns one verdict per limit, in your order
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` above the limit's voltages
 * @source the sources named by the limits: IEC 60364-6, IEC 60204-1, ANSI/NETA MTS, heater makers, common practice
 * @example
 * ```ts
 * insulationVerdicts({
 *   resistance: megaohms(1.3), nominalVoltage: volts(480), testVoltage: volts(500), temperature: celsius(12),
 *   criteria: ["1 MΩ per kV", "maker assembly"],
 * }).map((verdict) => verdict.value) // => ["within", "outside"]
 * ```
 * @since 0.1.0
 */
export function insulationVerdicts(input: {
  readonly resistance: Ohms;
  readonly halfWidth?: Ohms;
  readonly nominalVoltage: Volts;
  readonly testVoltage: Volts;
  readonly temperature: Celsius;
  readonly elementsInParallel?: number;
  readonly criteria: readonly (InsulationCriterion | OwnInsulationCriterion)[];
}): readonly InsulationVerdict[] {
  given(input);
  const { resistance, nominalVoltage, testVoltage, temperature, criteria } = input;
  const count = input.elementsInParallel ?? 1;
  checkMeasured("resistance", resistance, "Ω");
  checkMeasured("nominalVoltage", nominalVoltage, "V");
  checkMeasured("testVoltage", testVoltage, "V");
  checkTemperature("temperature", temperature);
  checkWhole("elementsInParallel", count, 1, 100_000);
  if (!Array.isArray(criteria) || criteria.length === 0) {
    fail({
      code: "missing",
      path: "criteria",
      expected: "at least one limit: there is no common one",
      received: criteria,
    });
  }
  return criteria.map((criterion, i) => {
    const limit = resolveCriterion(`criteria.${i}`, criterion, nominalVoltage);
    const shared = limit.of === "element" && count > 1;
    const minimum = shared ? limit.minimum / count : limit.minimum;
    const verdict = judge({
      value: resistance,
      halfWidth: input.halfWidth ?? 0,
      low: minimum,
      rule: limit.name,
    });
    const warnings: Warning[] = [];
    const tooLow = limit.testVoltage !== null && !atMost(limit.testVoltage, testVoltage);
    if (limit.testVoltage !== null && !same(testVoltage, limit.testVoltage)) {
      const message = `The limit is for a test at ${limit.testVoltage} V.${tooLow ? TOO_LOW : ""}`;
      warnings.push({
        code: "outside-validity",
        path: "testVoltage",
        message,
        limit: limit.testVoltage,
        unit: "V",
        source: limit.cell.source,
      });
    }
    if (shared) {
      const message = `Limit of one element over ${count}, as if they were equal: one poor element may hide in the group.`;
      warnings.push({ code: "approximate", path: "elementsInParallel", message });
    }
    return {
      ...codeResult({
        value: tooLow && verdict.verdict === "within" ? "undecided" : verdict.verdict,
        unit: "",
        cells: [limit.cell],
        baseConditions: [
          limit.scope,
          `read at ${testVoltage} V, ${temperature} °C, ${count} measured together, not corrected for temperature`,
        ],
        governing: limit.name,
        cautions: CAUTIONS,
        warnings,
      }),
      criterion: limit.name,
      minimum: minimum as Ohms,
      margin: verdict.margin as Ohms,
    };
  });
}

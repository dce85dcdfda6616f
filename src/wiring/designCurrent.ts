/** Minimum design current of a heating load, by the rule of its system, edition and equipment class. */
import rules from "../../shared/tables/nec-heating-rules.json" with { type: "json" };
import { type Amperes, fail, given, type Warning } from "../quantity/index.ts";
import type { IecEdition } from "./edition.ts";
import { checkedEdition } from "./editionGate.ts";
import { type IecEditionName, iecEditionNames } from "./iecNames.ts";
import { checkMeasuredOrZero } from "./limit.ts";
import { type NorthAmerican, northAmerican, noTable } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, describeCell, type LabelledTable, nameError, type Row } from "./sharedTable.ts";

/**
 * Equipment classes of the North American rules held here; editions of your own may have others.
 * @since 0.1.0
 */
export type EquipmentClass =
  | "space heating"
  | "process heating"
  | "appliance"
  | "commercial cooking appliance"
  | "deicing and snow melting"
  | "pipe and vessel heating"
  | "furnace standard"
  | "machine"
  | "continuous load"
  | "feeder";

/** The rule of an equipment class in an edition. */
export function heatingRule(
  edition: NorthAmerican,
  equipment: string,
): { readonly name: string; readonly from: LabelledTable; readonly row: Row } {
  const { name, year, own } = northAmerican(edition);
  const from = year === null ? own.heatingRules : { label: "continuous-load rules", table: rules };
  if (from === undefined) return noTable("heating rules", edition);
  const held = from.table.rows.filter((row) => {
    const first = cellAt(from.table, row, "from");
    const last = cellAt(from.table, row, "to");
    return year === null || first === null || (year >= Number(first) && year <= Number(last));
  });
  const row = held.find((one) => one[0] === equipment);
  if (row === undefined) {
    return fail({
      code: nameError(equipment),
      path: "equipment",
      expected: `one of ${held.map((one) => one[0]).join(", ")} (${name})`,
      received: equipment,
    });
  }
  return { name, from: { ...from, label: String(cellAt(from.table, row, "clause")) }, row };
}

/** Sum that does not depend on the order of the list. */
function total(path: string, currents: Amperes | readonly Amperes[] | undefined): number {
  if (currents === undefined) return 0;
  const list: readonly Amperes[] = Array.isArray(currents) ? currents : [currents as Amperes];
  list.forEach((current, i) => {
    checkMeasuredOrZero(Array.isArray(currents) ? `${path}.${i}` : path, current, "A");
  });
  return [...list].sort((a, b) => a - b).reduce((sum, current) => sum + current, 0);
}

/**
 * Load of a heating circuit.
 * @since 0.1.0
 */
export interface HeatingLoad {
  /** Continuous heater current at rated voltage, one figure or one per heater, not the as-found current (A). */
  readonly heaterCurrent: Amperes | readonly Amperes[];
  /** Blower and pump motors of the same equipment, running with it (A); 0 if left out. */
  readonly motorCurrent?: Amperes | readonly Amperes[];
  /** What is not continuous, that is below three hours at a time (A); 0 if left out. */
  readonly noncontinuousCurrent?: Amperes | readonly Amperes[];
}

/** The load as it runs, and the part the factor applies to. */
function loadOf(load: HeatingLoad): { readonly actual: number; readonly continuous: number } {
  if (load.heaterCurrent === undefined) {
    fail({
      code: "missing",
      path: "heaterCurrent",
      expected: "the heater current",
      received: undefined,
      unit: "A",
    });
  }
  const continuous = total("heaterCurrent", load.heaterCurrent) + total("motorCurrent", load.motorCurrent);
  const actual = continuous + total("noncontinuousCurrent", load.noncontinuousCurrent);
  if (!(actual > 0)) {
    fail({
      code: "out-of-range",
      path: "heaterCurrent",
      expected: "more than 0",
      received: actual,
      unit: "A",
    });
  }
  return { actual, continuous };
}

/** A module that draws less than this is more likely a slip of kW and W. */
const SUSPICIOUS_CURRENT = 0.5;

/** Doubts about a load. @param path - what the load is called by whoever gave it */
export function loadWarnings(actual: number, path = "heaterCurrent"): readonly Warning[] {
  if (actual >= SUSPICIOUS_CURRENT) return [];
  const message = `${actual} A is little for a heating module: check W against kW.`;
  return [{ code: "suspicious", path, message, limit: SUSPICIOUS_CURRENT, unit: "A" }];
}

/**
 * Design current of a load with the load itself.
 * @since 0.1.0
 */
export interface DesignCurrent extends CodeResult<Amperes> {
  /** The load as it runs (A). */
  readonly load: Amperes;
  /** Factor on the continuous part. */
  readonly factor: number;
}

/**
 * Smallest current that conductor and overcurrent device must be chosen for.
 *
 * North America: I = factor·(heaterCurrent + motorCurrent) + noncontinuousCurrent, factor 1.25 for equipment heating three hours
 * or more, 1 for an assembly listed for 100 %. It is applied once, not on top of ambient and count factors. IEC: the
 * load itself, without a factor. The sum does not depend on the order of a list.
 * @param input - the load; fields at {@link HeatingLoad}
 * @param input.edition - edition by name: "NEC 2023", "IEC 60364-5-52:2009"; or one of your own
 * @param input.equipment - equipment class: {@link EquipmentClass}; ask, never assume; not used by IEC
 * @param input.listedForFullLoad - true for an assembly and device listed for operation at 100 %; false if left out
 * @returns the design current (A) with clause, factor and note
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source NFPA 70: 424.3(B) (2017), 424.4(B) (2020, 2023), 210.19(A), 210.20(A), 215.2, 215.3; IEC 60364-4-43, 433.1
 * @example
 * ```ts
 * designCurrent({
 *   edition: "NEC 2023", equipment: "process heating", heaterCurrent: amperes(43.3013),
 * }).value // => 54.126625
 * ```
 * @since 0.1.0
 */
export function designCurrent(
  input: HeatingLoad & {
    readonly edition: NorthAmerican | IecEditionName | IecEdition;
    readonly equipment?: EquipmentClass | (string & {});
    readonly listedForFullLoad?: boolean;
  },
): DesignCurrent {
  given(input);
  const { edition } = input;
  const { actual, continuous } = loadOf(input);
  const iec =
    typeof edition === "object" && edition !== null
      ? edition.system === "IEC" && checkedEdition(edition).name
      : iecEditionNames().find((name) => name === edition);
  if (typeof iec === "string") {
    const result = codeResult({
      value: actual as Amperes,
      unit: "A",
      cells: [
        {
          system: "IEC",
          edition: iec,
          table: "IEC 60364-4-43, 433.1",
          row: "IB",
          column: "factor",
          value: 1,
          unit: "1",
          source: "iec-60364-4-43",
          kind: "published",
          provenance: "seen",
          labelProvenance: "memory",
        },
      ],
      baseConditions: ["IB is the current the circuit is designed for; no factor for continuous load"],
      governing: "load",
      warnings: loadWarnings(actual),
    });
    return { ...result, load: actual as Amperes, factor: 1 };
  }
  const { name, from, row } = heatingRule(edition as NorthAmerican, input.equipment as string);
  const full = input.listedForFullLoad === true;
  const factor = full ? 1 : (cellAt(from.table, row, "factor") as number);
  const noncontinuous = actual - continuous;
  const result = codeResult({
    value: (factor * continuous + noncontinuous) as Amperes,
    unit: "A",
    cells: [
      describeCell({
        system: "North America",
        edition: name,
        from,
        row,
        rowName: String(row[0]),
        column: "factor",
      }),
    ],
    baseConditions: [
      full ? "assembly and device listed for operation at 100 %" : "continuous load: three hours or more",
    ],
    governing: full ? "listed for 100 %" : "continuous load",
    cautions: full ? ["The listing must cover the assembly and the device together: see its marks."] : [],
    warnings: loadWarnings(actual),
  });
  return { ...result, load: actual as Amperes, factor };
}

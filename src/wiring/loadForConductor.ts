/** From the conductor found in the machine to the largest load it may feed. */
import { type Amperes, fail, given } from "../quantity/index.ts";
import {
  ampacityOfRow,
  type ConductorAmpacity,
  type ConductorRun,
  resolveRun,
  terminalColumn,
} from "./conductorAmpacity.ts";
import { type EquipmentClass, heatingRule } from "./designCurrent.ts";
import { atMost, checkMeasured } from "./limit.ts";
import { checkMayBeParallel } from "./parallel.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt, describeCell } from "./sharedTable.ts";
import { rowOfSize } from "./size.ts";
import { permittedDevice, ratingNear } from "./standardDevice.ts";

/**
 * What limits the load of a conductor.
 * @since 0.1.0
 */
export type LoadConstraint =
  | "termination"
  | "table ampacity"
  | "corrected ampacity"
  | "device"
  | "conductor's device limit"
  | "subdivided load"
  | "subdivided device";

/**
 * The largest load of a conductor.
 * @since 0.1.0
 */
export interface ConductorLoad extends CodeResult<Amperes> {
  /** What limits the load. */
  readonly governing: LoadConstraint;
  /** Largest standard device the conductor permits, of a subdivided load the class too, or the device you gave (A). */
  readonly device: Amperes;
  /** Ampacity of the conductors of a line with its steps. */
  readonly ampacity: ConductorAmpacity;
  /** The load each constraint alone would allow (A). */
  readonly constraints: readonly {
    /** What limits. */
    readonly constraint: LoadConstraint;
    /** The largest load it allows, A. */
    readonly load: Amperes;
  }[];
}

/**
 * Largest continuous heating load that the conductors of a line may feed: the smallest of terminal's column / factor (table value /
 * factor where the code has no column that hot), corrected
 * ampacity, device / factor, and the class's largest subdivided load and device where the circuit is one of a split heater.
 * @param input - the run; fields at {@link ConductorRun}
 * @param input.size - size printed on the conductor
 * @param input.equipment - equipment class: {@link EquipmentClass}
 * @param input.device - rating of the overcurrent device found (A); the largest the conductor permits if left out
 * @param input.listedForFullLoad - true for an assembly and device listed for operation at 100 %; false if left out
 * @param input.subdivided - true where the circuit is one of a split heater; false if left out
 * @returns the load (A), continuous, heaters and their motors together, with what limits it
 * @throws ElectroheatError as {@link conductorAmpacity}; `inconsistent` for a device above what the conductor or,
 *   subdivided, the class permits
 * @source NFPA 70, National Electrical Code: 210.19(A), 210.20(A), 110.14(C), 240.4, 240.6(A), 310.15, 310.10(G), ampacity tables, and the clause of the class
 * @example
 * ```ts
 * const found = loadForConductor({
 *   edition: "NEC 2023", equipment: "process heating", size: "4 AWG", installation: "raceway", material: "copper",
 *   insulationTemperature: celsius(90), ambient: celsius(30), currentCarryingConductors: 3, terminalTemperature: celsius(75),
 * });
 * [found.value, found.governing] // => [68, "termination"]
 * ```
 * @since 0.1.0
 */
export function loadForConductor(
  input: ConductorRun & {
    readonly size: string;
    readonly equipment: EquipmentClass | (string & {});
    readonly device?: Amperes;
    readonly subdivided?: boolean;
    readonly listedForFullLoad?: boolean;
  },
): ConductorLoad {
  given(input);
  const { edition, material } = input;
  const rule = heatingRule(edition, input.equipment);
  const listed = cellAt(rule.from.table, rule.row, "factor") as number;
  const factor = input.listedForFullLoad === true ? 1 : listed;
  if (input.device !== undefined) checkMeasured("device", input.device, "A");
  const resolved = resolveRun(input);
  const row = rowOfSize(resolved.from.table, "size", input.size);
  checkMayBeParallel(resolved.conductorsPerLine, input.size);
  const outside = (): never =>
    fail({
      code: "outside-table",
      path: "size",
      expected: `a size with a figure in column ${resolved.column} of ${resolved.from.label} and in the terminal's column`,
      received: input.size,
    });
  if (input.terminalTemperature === "unmarked" && input.device === undefined) {
    fail({
      code: "missing",
      path: "device",
      expected: "the overcurrent device, whose rating says which column unmarked terminals go by",
      received: undefined,
      unit: "A",
    });
  }
  const found = ampacityOfRow(input, resolved, row, terminalColumn(input, input.device)) ?? outside();
  const { ampacity, ownCell, terminalCell } = found;
  const count = ampacity.conductorsPerLine;
  const permitted =
    permittedDevice({ edition, size: ampacity.size, material, ampacity: ampacity.value }) ?? outside();
  if (input.device !== undefined && !atMost(input.device, permitted.value)) {
    fail({
      code: "inconsistent",
      path: "device",
      expected: `at most ${permitted.value} A, the largest device ${ampacity.size} permits here (${permitted.rule})`,
      received: input.device,
      unit: "A",
    });
  }
  const clause = cellAt(rule.from.table, rule.row, "subdivision");
  const ruleCell = (column: string): TableCell =>
    describeCell({
      system: "North America",
      edition: rule.name,
      from: column === "factor" || clause === null ? rule.from : { ...rule.from, label: String(clause) },
      row: rule.row,
      rowName: input.equipment,
      column,
    });
  const part = (column: string): number | null => {
    const limit = input.subdivided === true ? cellAt(rule.from.table, rule.row, column) : null;
    return typeof limit === "number" ? limit : null;
  };
  const largest = part("subdivided load");
  const largestDevice = part("subdivided device");
  if (input.device !== undefined && largestDevice !== null && !atMost(input.device, largestDevice)) {
    fail({
      code: "inconsistent",
      path: "device",
      expected: `at most ${largestDevice} A, the largest device of a subdivided load (${clause})`,
      received: input.device,
      unit: "A",
    });
  }
  const byClass = largestDevice !== null && !atMost(permitted.value, largestDevice);
  const split = byClass ? (ratingNear(edition, largestDevice, "down") ?? outside()) : null;
  const device = input.device ?? split?.value ?? permitted.value;
  const deviceCell =
    input.device !== undefined
      ? // The largest device permitted is a rating of the list.
        (ratingNear(edition, device, "up") as { readonly cell: TableCell }).cell
      : split === null
        ? permitted.cell
        : ruleCell("subdivided device");
  const byDevice: LoadConstraint =
    input.device !== undefined ? "device" : split === null ? "conductor's device limit" : "subdivided device";
  const limits: { constraint: LoadConstraint; load: number; cell: TableCell }[] = [
    ...(terminalCell === null
      ? [
          // No column is that hot: 210.19(A) holds the table value before factors to the design current.
          {
            constraint: "table ampacity" as const,
            load: (count * ampacity.tableAmpacity) / factor,
            cell: ownCell,
          },
        ]
      : [
          {
            constraint: "termination" as const,
            load: (count * (ampacity.terminationAmpacity as number)) / factor,
            cell: terminalCell,
          },
        ]),
    { constraint: "corrected ampacity", load: count * ampacity.correctedAmpacity, cell: ownCell },
    ...(largest === null
      ? []
      : [{ constraint: "subdivided load" as const, load: largest, cell: ruleCell("subdivided load") }]),
    { constraint: byDevice, load: device / factor, cell: deviceCell },
  ];
  const lowest = limits.reduce((least, one) => (atMost(least.load, one.load) ? least : one));
  const used = [...limits.map(({ cell }) => cell), ...ampacity.cells, ruleCell("factor")];
  const result = codeResult({
    value: lowest.load as Amperes,
    unit: "A",
    cells: [lowest.cell, ...used],
    baseConditions: [...ampacity.baseConditions, "continuous load: three hours or more"],
    governing: lowest.constraint,
    cautions: ampacity.cautions,
    warnings: ampacity.warnings,
  });
  return {
    ...result,
    governing: lowest.constraint,
    device: device as Amperes,
    ampacity,
    constraints: limits.map(({ constraint, load }) => ({ constraint, load: load as Amperes })),
  };
}

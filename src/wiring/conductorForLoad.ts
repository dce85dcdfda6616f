/** From the load to the smallest conductor and its device. */
import { type Amperes, fail, given, type Warning } from "../quantity/index.ts";
import {
  ampacityOfRow,
  type ConductorAmpacity,
  type ConductorRun,
  resolveRun,
  terminalColumn,
} from "./conductorAmpacity.ts";
import {
  type DesignCurrent,
  designCurrent,
  type EquipmentClass,
  type HeatingLoad,
  heatingRule,
} from "./designCurrent.ts";
import { atMost } from "./limit.ts";
import type { NorthAmerican } from "./necTables.ts";
import { mayBeParallel } from "./parallel.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt } from "./sharedTable.ts";
import { ratingNear, roundedDevice, smallConductorRating } from "./standardDevice.ts";

/**
 * What decides a conductor's size.
 * @since 0.1.0
 */
export type SizingConstraint =
  | "termination"
  | "table ampacity"
  | "corrected ampacity"
  | "small conductor limit"
  | "device step"
  | "smallest in parallel"
  | "smallest size of the table";

/**
 * A conductor chosen for a load.
 * @since 0.1.0
 */
export interface ConductorChoice extends CodeResult<string> {
  /** Conductors of that size that make one line. */
  readonly conductorsPerLine: number;
  /** What decides the size. */
  readonly governing: SizingConstraint;
  /** The load as it runs (A). */
  readonly load: Amperes;
  /** The current conductor and device are chosen for (A). */
  readonly designCurrent: Amperes;
  /** Smallest standard device at or above it (A). */
  readonly device: Amperes;
  /** Ampacity of the chosen conductors of a line with its steps. */
  readonly ampacity: ConductorAmpacity;
  /** Smallest size that each constraint alone would allow; the largest of them is the choice. */
  readonly constraints: readonly {
    /** What is tested. */
    readonly constraint: SizingConstraint;
    /** The smallest size that passes. */
    readonly size: string;
  }[];
}

/** The tests a size must pass, in the order in which they are named when two ask for the same size. */
export const SIZE_TESTS = [
  "termination",
  "table ampacity",
  "corrected ampacity",
  "small conductor limit",
  "device step",
  "smallest in parallel",
] as const;

type Passed = Readonly<Record<(typeof SIZE_TESTS)[number], boolean>>;

/** Whether a size passes each test. */
export function tested(
  run: Pick<ConductorRun, "edition" | "material">,
  found: ConductorAmpacity,
  design: DesignCurrent,
  device: number,
): Passed {
  const { edition, material } = run;
  const { size, conductorsPerLine: count } = found;
  const small = smallConductorRating(edition, size, material);
  const rounded = roundedDevice(edition, found.value);
  return {
    termination:
      found.terminationAmpacity === null || atMost(design.value, count * found.terminationAmpacity),
    // Where no column is that hot, the conductor's own column stands before factors for the terminal's: 210.19(A).
    "table ampacity": found.terminationAmpacity !== null || atMost(design.value, count * found.tableAmpacity),
    "corrected ampacity": atMost(design.load, count * found.correctedAmpacity),
    "small conductor limit": small === null || atMost(device, small.value),
    "device step": rounded !== null && atMost(device, rounded.value),
    "smallest in parallel": mayBeParallel(count, size),
  };
}

/** Warning where the class wants the load split into circuits. */
function splitWarning(edition: NorthAmerican, equipment: string, load: number): readonly Warning[] {
  const { from, row } = heatingRule(edition, equipment);
  const limit = cellAt(from.table, row, "subdivided load");
  if (typeof limit !== "number" || atMost(load, limit)) return [];
  const clause = cellAt(from.table, row, "subdivision");
  const message =
    `${equipment} above ${limit} A is split into protected circuits of at most ${limit} A each (${clause}); ` +
    "this is the feed before the split.";
  return [{ code: "caution", path: "heaterCurrent", message, limit, unit: "A" }];
}

/**
 * Smallest conductor and standard device for a heating load. Each test is its own: the value in the terminal's column carries
 * the design current, or where the code has no column that hot the table value before factors; the corrected ampacity carries the load; the device, the smallest standard rating at or above the design current, is
 * within the limit of a small conductor and within the next size up of the usable ampacity. The test that asks for
 * the largest size governs. With `conductorsPerLine` the size is that of each, all of them carry together, and 1/0 AWG is the least.
 * @param input - the load and the run; fields at {@link HeatingLoad} and {@link ConductorRun}
 * @param input.equipment - equipment class: {@link EquipmentClass}
 * @param input.listedForFullLoad - true for an assembly and device listed for operation at 100 %; false if left out
 * @returns the size, the device, and what governs; a warning where the class wants the load subdivided
 * @throws ElectroheatError as {@link designCurrent} and {@link conductorAmpacity}; `outside-table` where no size of the table does
 * @source NFPA 70, National Electrical Code: 210.19(A), 210.20(A), 110.14(C), 240.4, 240.6(A), 310.15, 310.10(G), ampacity tables, and the clause of the class
 * @example
 * ```ts
 * const found = conductorForLoad({
 *   edition: "NEC 2023", equipment: "process heating", heaterCurrent: amperes(43.3013), installation: "raceway", material: "copper",
 *   insulationTemperature: celsius(75), ambient: celsius(30), currentCarryingConductors: 3, terminalTemperature: celsius(75),
 * });
 * [found.value, found.device, found.governing] // => ["6 AWG", 60, "termination"]
 * ```
 * @since 0.1.0
 */
export function conductorForLoad(
  input: HeatingLoad &
    ConductorRun & {
      readonly equipment: EquipmentClass | (string & {});
      readonly listedForFullLoad?: boolean;
    },
): ConductorChoice {
  given(input);
  const { edition } = input;
  const design = designCurrent(input);
  const device = ratingNear(edition, design.value, "up");
  if (device === null) {
    return fail({
      code: "outside-table",
      path: "heaterCurrent",
      expected: "a design current within the standard ratings",
      received: design.value,
      unit: "A",
    });
  }
  const resolved = resolveRun(input);
  const terminal = terminalColumn(input, device.value);
  const sized = resolved.from.table.rows.flatMap((row) => {
    const found = ampacityOfRow(input, resolved, row, terminal);
    return found === null ? [] : [{ ...found, passed: tested(input, found.ampacity, design, device.value) }];
  });
  const at = sized.findIndex(({ passed }) => SIZE_TESTS.every((test) => passed[test]));
  const choice = sized[at];
  if (choice === undefined) {
    return fail({
      code: "outside-table",
      path: "heaterCurrent",
      expected: `a load that a size of ${resolved.from.label} carries in column "${resolved.column}"`,
      received: design.load,
      unit: "A",
    });
  }
  const smaller = sized[at - 1];
  const governing: SizingConstraint =
    (smaller && SIZE_TESTS.find((test) => !smaller.passed[test])) ?? "smallest size of the table";
  const { ampacity, ownCell, terminalCell } = choice;
  const limited = smallConductorRating(edition, ampacity.size, input.material);
  const small = limited?.cell ?? null;
  const deciding =
    (governing === "termination"
      ? terminalCell
      : governing === "device step"
        ? device.cell
        : governing === "small conductor limit"
          ? small
          : ownCell) ?? ownCell;
  const used = [...ampacity.cells, ...design.cells, device.cell, ...(small === null ? [] : [small])];
  const result = codeResult({
    value: ampacity.size,
    unit: "",
    cells: [deciding, ...used],
    baseConditions: [...ampacity.baseConditions, ...design.baseConditions],
    governing,
    cautions: [...ampacity.cautions, ...design.cautions, ...(limited?.cautions ?? [])],
    warnings: [
      ...design.warnings,
      ...ampacity.warnings,
      ...splitWarning(edition, input.equipment, design.load),
    ],
  });
  return {
    ...result,
    conductorsPerLine: resolved.conductorsPerLine,
    governing,
    load: design.load,
    designCurrent: design.value,
    device: device.value as Amperes,
    ampacity,
    constraints: SIZE_TESTS.flatMap((constraint) => {
      if (constraint === (terminalCell === null ? "termination" : "table ampacity")) return [];
      if (constraint === "smallest in parallel" && resolved.conductorsPerLine === 1) return [];
      // The choice at the latest.
      const first = sized.find(({ passed }) => passed[constraint]) as typeof choice;
      return [{ constraint, size: first.ampacity.size }];
    }),
  };
}

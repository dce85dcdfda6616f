/** From the conductor and its load to the hottest surroundings it may run in. */
import { type Amperes, type Celsius, fail, given } from "../quantity/index.ts";
import { ampacityTable } from "./ampacityTables.ts";
import {
  ampacityOfRow,
  type ConductorAmpacity,
  type ConductorRun,
  resolveRun,
  terminalColumn,
} from "./conductorAmpacity.ts";
import { SIZE_TESTS, type SizingConstraint, tested } from "./conductorForLoad.ts";
import { type DesignCurrent, designCurrent, type EquipmentClass, type HeatingLoad } from "./designCurrent.ts";
import { atMost, checkMeasured, columnFigure, parallelCount } from "./limit.ts";
import { ambientTables, editionsWithFactors } from "./necFactors.ts";
import { noTable } from "./necTables.ts";
import { checkMayBeParallel } from "./parallel.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt } from "./sharedTable.ts";
import { rowOfSize } from "./size.ts";
import { ratingNear } from "./standardDevice.ts";
import { ampacityColumn } from "./tableAmpacity.ts";

/**
 * The hottest ambient a conductor may carry a load in.
 * @since 0.1.0
 */
export interface ConductorAmbient extends CodeResult<Celsius> {
  /** The test that the next hotter band of the factors would fail; "end of the factors" where none is left. */
  readonly governing: SizingConstraint | "end of the factors";
  /** The load as it runs (A). */
  readonly load: Amperes;
  /** The current conductor and device are chosen for (A). */
  readonly designCurrent: Amperes;
  /** The device (A). */
  readonly device: Amperes;
  /** Ampacity of the conductors of a line at that ambient with its steps. */
  readonly ampacity: ConductorAmpacity;
}

/** The device found, or the smallest standard one at or above the design current. */
function deviceFor(
  edition: ConductorRun["edition"],
  design: DesignCurrent,
  found: Amperes | undefined,
): { readonly value: number; readonly cells: readonly TableCell[] } {
  const least = ratingNear(edition, design.value, "up");
  if (found !== undefined) {
    checkMeasured("device", found, "A");
    if (!atMost(design.value, found)) {
      fail({
        code: "inconsistent",
        path: "device",
        expected: `at least the design current of ${design.value}`,
        received: found,
        unit: "A",
      });
    }
    return { value: found, cells: [] };
  }
  if (least !== null) return { value: least.value, cells: [least.cell] };
  return fail({
    code: "outside-table",
    path: "heaterCurrent",
    expected: "a design current within the standard ratings",
    received: design.value,
    unit: "A",
  });
}

/**
 * Hottest ambient a conductor may run in with a heating load, by the table of factors: the hot edge of the last band in which it
 * passes every test of {@link conductorForLoad}. Between that edge and the next the hotter, failing band applies.
 *
 * Not by the equation, which is less safe inside a band. Near elements the ambient is that of the oven wall.
 * @param input - the load and the run without its ambient; fields at {@link HeatingLoad} and {@link ConductorRun}
 * @param input.size - size printed on the conductor
 * @param input.equipment - equipment class: {@link EquipmentClass}
 * @param input.device - rating of the overcurrent device found (A); the smallest standard one at or above the design current if left out
 * @param input.listedForFullLoad - true for an assembly and device listed for operation at 100 %; false if left out
 * @returns the ambient (°C), what the next hotter band fails, and the ampacity there
 * @throws ElectroheatError as {@link conductorForLoad}; `inconsistent` for a size that fails at any ambient, or a device below the
 *   design current
 * @source NFPA 70, National Electrical Code: 110.14(C), 210.19(A), 240.4, 240.6(A), 310.15, ampacity tables, and the clause of the class
 * @example
 * ```ts
 * const found = ambientForConductor({
 *   edition: "NEC 2023", equipment: "process heating", heaterCurrent: amperes(43.3013), size: "6 AWG", installation: "raceway",
 *   material: "copper", insulationTemperature: celsius(90), currentCarryingConductors: 3, terminalTemperature: celsius(75),
 * });
 * [found.value, found.ampacity.correctedAmpacity, found.governing] // => [60, 53.25, "device step"]
 * ```
 * @since 0.1.0
 */
export function ambientForConductor(
  input: HeatingLoad &
    Omit<ConductorRun, "ambient" | "ambientBy" | "ambientBase"> & {
      readonly size: string;
      readonly equipment: EquipmentClass | (string & {});
      readonly device?: Amperes;
      readonly listedForFullLoad?: boolean;
    },
): ConductorAmbient {
  given(input);
  const { edition, installation, material, insulationTemperature, currentCarryingConductors } = input;
  const design = designCurrent(input);
  const device = deviceFor(edition, design, input.device);
  const { from } = ampacityTable(edition, installation);
  ampacityColumn(from, material, insulationTemperature);
  const row = rowOfSize(from.table, "size", input.size);
  const conductorsPerLine = parallelCount(input.conductorsPerLine);
  checkMayBeParallel(conductorsPerLine, input.size);
  const { tables } = ambientTables(edition);
  const factors =
    tables.find((one) => one.baseAmbient === from.baseAmbient) ??
    noTable(`ambient factors of base ${from.baseAmbient} °C`, edition, editionsWithFactors());
  const terminal = terminalColumn({ ...input, ambient: from.baseAmbient }, device.value as Amperes);
  const { terminalTemperature } = input;
  const bands = factors.table.rows.flatMap((band) => {
    const ambient = cellAt(factors.table, band, "to") as number;
    const filled =
      typeof cellAt(factors.table, band, String(columnFigure(insulationTemperature))) === "number";
    if (!filled || atMost(insulationTemperature, ambient)) return [];
    const run: ConductorRun = {
      ...{ edition, installation, material, insulationTemperature, currentCarryingConductors },
      ...{ terminalTemperature, conductorsPerLine, ambient: ambient as Celsius },
    };
    const found = ampacityOfRow(run, resolveRun(run), row, terminal);
    return found === null
      ? []
      : [{ ...found, ambient, passed: tested(run, found.ampacity, design, device.value) }];
  });
  const at = bands.reduce((last, { passed }, i) => (SIZE_TESTS.every((test) => passed[test]) ? i : last), -1);
  const hottest = bands[at];
  const failing = (band: (typeof bands)[number] | undefined): SizingConstraint | undefined =>
    SIZE_TESTS.find((test) => band !== undefined && !band.passed[test]);
  if (hottest === undefined) {
    return fail({
      code: bands.length === 0 ? "outside-table" : "inconsistent",
      path: "size",
      expected: `a larger size: at no ambient does this one pass (${failing(bands[0]) ?? "no figure in the tables"})`,
      received: input.size,
    });
  }
  const { ampacity, ambient } = hottest;
  const governing = failing(bands[at + 1]) ?? "end of the factors";
  const factor = ampacity.cells.filter(({ table }) => table === factors.label);
  const used = [...ampacity.cells, ...design.cells, ...device.cells];
  const result = codeResult({
    value: ambient as Celsius,
    unit: "°C",
    cells: [...factor, hottest.ownCell, ...used],
    baseConditions: [...ampacity.baseConditions, ...design.baseConditions],
    governing,
    cautions: [
      "The air where the conductor is hottest, over the whole shift: near elements that is the oven wall, not the room.",
      ...ampacity.cautions,
      ...design.cautions,
    ],
    warnings: [...design.warnings, ...ampacity.warnings],
  });
  return {
    ...result,
    governing,
    load: design.load,
    designCurrent: design.value,
    device: device.value as Amperes,
    ampacity,
  };
}

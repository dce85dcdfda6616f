/** From the cable and its load to the hottest surroundings it may run in, by the IEC family. */
import { type Amperes, type Celsius, checkOneOf, fail, given } from "../quantity/index.ts";
import { type CableCapacity, type CableRun, capacityOfRow, resolveCable } from "./cableCapacity.ts";
import { chooseDevice, type DeviceKind, deviceRatings } from "./iecDevice.ts";
import { cableAmbientTables } from "./iecFactors.ts";
import { capacityColumn } from "./iecTables.ts";
import { atMost, checkMeasured, same } from "./limit.ts";
import { noTable } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, columnAt } from "./sharedTable.ts";
import { rowOfSize } from "./size.ts";

/**
 * The hottest ambient a cable may carry a load in.
 * @since 0.1.0
 */
export interface CableAmbient extends CodeResult<Celsius> {
  /** Device rating In (A). */
  readonly device: Amperes;
  /** Smallest capacity the device asks for, k3·In (A). */
  readonly requiredCapacity: Amperes;
  /** Capacity of the cable at that ambient with its steps. */
  readonly capacity: CableCapacity;
}

/**
 * Hottest ambient a cable may run in with a load, by the table of factors: the last row at which IB ≤ In and k3·In ≤ Iz. Between that
 * row and the next the hotter, failing one applies. Not by the equation, which is less safe between rows.
 * @param input - the run without its ambient; fields at {@link CableRun}
 * @param input.size - nominal size: "10 mm²"
 * @param input.designCurrent - load IB, from {@link designCurrent} with an IEC edition (A), more than 0
 * @param input.deviceKind - "circuit-breaker" or "gG fuse"
 * @param input.device - device rating In found (A); the smallest preferred one if left out
 * @returns the ambient (°C) with the device and the capacity there
 * @throws ElectroheatError as {@link cableForLoad}; `inconsistent` for a size that does not carry the device at any ambient
 * @source IEC 60364-4-43, 433.1; IEC 60364-5-52 for capacities and factors
 * @example
 * ```ts
 * const found = ambientForCable({
 *   edition: "IEC 60364-5-52:2009", method: "B2", loadedConductors: 3, insulation: "PVC", material: "copper", size: "25 mm²",
 *   circuits: 1, designCurrent: amperes(51.9615), deviceKind: "circuit-breaker",
 * });
 * [found.value, found.device, found.capacity.value] // => [45, 63, 63.2]
 * ```
 * @since 0.1.0
 */
export function ambientForCable(
  input: Omit<CableRun, "ambient" | "ambientBy" | "ambientBase"> & {
    readonly size: string;
    readonly designCurrent: Amperes;
    readonly deviceKind: DeviceKind;
    readonly device?: Amperes;
  },
): CableAmbient {
  given(input);
  const { edition, insulation, designCurrent } = input;
  checkMeasured("designCurrent", designCurrent, "A");
  const kind = checkOneOf("deviceKind", input.deviceKind, ["circuit-breaker", "gG fuse"]);
  const device = chooseDevice(deviceRatings(edition, kind), input.device, designCurrent);
  const required = device.k3 * device.value;
  const { from } = capacityColumn(input);
  const size = rowOfSize(from.table, "size", input.size);
  const { tables } = cableAmbientTables(edition);
  const factors =
    tables.find((one) => same(one.baseAmbient, from.baseAmbient)) ??
    noTable(`ambient factors of base ${from.baseAmbient} °C`, edition);
  columnAt(factors.table, insulation, "insulation");
  const rows = factors.table.rows.flatMap((row) => {
    const ambient = cellAt(factors.table, row, "ambient") as number;
    const filled = typeof cellAt(factors.table, row, insulation) === "number";
    if (!filled || atMost(from.conductorTemperature, ambient)) return [];
    const capacity = capacityOfRow(resolveCable({ ...input, ambient: ambient as Celsius }), size);
    return capacity === null ? [] : [{ ambient, capacity }];
  });
  const carries = ({ capacity }: (typeof rows)[number]): boolean => atMost(required, capacity.value);
  const hottest = rows.filter(carries).at(-1);
  if (hottest === undefined) {
    return fail({
      code: rows.length === 0 ? "outside-table" : "inconsistent",
      path: "size",
      expected: `a larger size: at no ambient of ${factors.label} does this one carry ${required} A`,
      received: input.size,
    });
  }
  const { ambient, capacity } = hottest;
  const factor = capacity.cells.filter((cell) => cell.table === factors.label);
  const last = rows.at(-1) === hottest;
  return {
    ...codeResult({
      value: ambient as Celsius,
      unit: "°C",
      cells: [...factor, ...capacity.cells, ...device.cells],
      baseConditions: capacity.baseConditions,
      governing: last ? "end of the factors" : device.k3 > 1 ? "In ≤ Iz/k3" : "In ≤ Iz",
      cautions: [
        "The air where the cable is hottest, over the whole shift: near elements that is the oven wall, not the room.",
        ...capacity.cautions,
      ],
      warnings: capacity.warnings,
    }),
    device: device.value as Amperes,
    requiredCapacity: required as Amperes,
    capacity,
  };
}

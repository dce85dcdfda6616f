/** IB ≤ In ≤ Iz: from the load to the cable and its device, and back. */

import { type Amperes, checkOneOf, fail, given } from "../quantity/index.ts";
import { type CableCapacity, type CableRun, capacityOfRow, resolveCable } from "./cableCapacity.ts";
import { chooseDevice, type DeviceKind, deviceRatings } from "./iecDevice.ts";
import { atMost, checkMeasured } from "./limit.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { rowOfSize } from "./size.ts";

/**
 * A cable chosen for a load.
 * @since 0.1.0
 */
export interface CableChoice extends CodeResult<string> {
  /** Conductors of that size that make one line. */
  readonly conductorsPerLine: number;
  /** Load IB (A). */
  readonly designCurrent: Amperes;
  /** Device rating In (A). */
  readonly device: Amperes;
  /** Smallest capacity the device asks for, k3·In (A). */
  readonly requiredCapacity: Amperes;
  /** Smallest table value of one cable that gives it: k3·In over the factors and the conductors in parallel (A). */
  readonly requiredTableCapacity: Amperes;
  /** Capacity Iz of the chosen cable with its steps. */
  readonly capacity: CableCapacity;
}

/**
 * Smallest cable for a load by IB ≤ In ≤ Iz, with k3·In ≤ Iz for gG fuses; no factor for continuous load. One device protects all
 * conductors in parallel (`conductorsPerLine`) where they share equally: Iz is then their sum.
 * @param input - the run; fields at {@link CableRun}
 * @param input.designCurrent - load IB, from {@link designCurrent} with an IEC edition (A), more than 0
 * @param input.deviceKind - "circuit-breaker" or "gG fuse" (fuses of 4 A and less are not covered)
 * @param input.device - device rating In (A); the smallest preferred one if left out
 * @returns the size, the device, and the capacity with its steps
 * @throws ElectroheatError as {@link cableCapacity}; `inconsistent` for a device below the load; `outside-table` where no size or device does
 * @source IEC 60364-4-43, 433.1 and 433.4; IEC 60898-1 and IEC 60269-1 for the ratings; IEC 60364-5-52 for the capacities
 * @example
 * ```ts
 * const found = cableForLoad({
 *   edition: "IEC 60364-5-52:2009", method: "A1", loadedConductors: 2, insulation: "PVC", material: "copper", ambient: celsius(35),
 *   circuits: 1, designCurrent: amperes(26.087), deviceKind: "circuit-breaker",
 * });
 * [found.value, found.device] // => ["10 mm²", 32]
 * ```
 * @since 0.1.0
 */
export function cableForLoad(
  input: CableRun & {
    readonly designCurrent: Amperes;
    readonly deviceKind: DeviceKind;
    readonly device?: Amperes;
  },
): CableChoice {
  given(input);
  const { designCurrent } = input;
  checkMeasured("designCurrent", designCurrent, "A");
  const kind = checkOneOf("deviceKind", input.deviceKind, ["circuit-breaker", "gG fuse"]);
  const device = chooseDevice(deviceRatings(input.edition, kind), input.device, designCurrent);
  const resolved = resolveCable(input);
  const required = device.k3 * device.value;
  for (const row of resolved.from.table.rows) {
    const capacity = capacityOfRow(resolved, row);
    if (capacity === null || !atMost(required, capacity.value)) continue;
    const result = codeResult({
      value: capacity.size,
      unit: "",
      cells: [...capacity.cells, ...device.cells],
      baseConditions: capacity.baseConditions,
      governing: device.k3 > 1 ? "In ≤ Iz/k3" : "In ≤ Iz",
      cautions: capacity.cautions,
      warnings: capacity.warnings,
    });
    return {
      ...result,
      conductorsPerLine: resolved.conductorsPerLine,
      designCurrent,
      device: device.value as Amperes,
      requiredCapacity: required as Amperes,
      requiredTableCapacity: (required /
        (resolved.ambientFactor * resolved.groupingFactor) /
        resolved.conductorsPerLine) as Amperes,
      capacity,
    };
  }
  return fail({
    code: "outside-table",
    path: "designCurrent",
    expected: `a device whose current a size of ${resolved.from.label} carries in column "${resolved.column}"`,
    received: designCurrent,
    unit: "A",
  });
}

/**
 * The largest load of a cable.
 * @since 0.1.0
 */
export interface CableLoad extends CodeResult<Amperes> {
  /** Largest device the cable permits, or the device you gave (A). */
  readonly device: Amperes;
  /** Capacity Iz with its steps. */
  readonly capacity: CableCapacity;
}

/**
 * Largest load IB of a cable: the rating of the largest preferred device with k3·In ≤ Iz, or of the device found there.
 * @param input - the run; fields at {@link CableRun}
 * @param input.size - nominal size: "10 mm²"
 * @param input.deviceKind - "circuit-breaker" or "gG fuse"
 * @param input.device - device rating In found (A); the largest the cable permits if left out
 * @returns the load (A) with the device and the capacity
 * @throws ElectroheatError as {@link cableCapacity}; `inconsistent` for a device above what the cable permits; `outside-table`
 * @source IEC 60364-4-43, 433.1
 * @example
 * ```ts
 * loadForCable({
 *   edition: "IEC 60364-5-52:2009", method: "B2", loadedConductors: 3, insulation: "PVC", material: "copper", size: "16 mm²",
 *   ambient: celsius(30), circuits: 1, deviceKind: "gG fuse",
 * }).value // => 50
 * ```
 * @since 0.1.0
 */
export function loadForCable(
  input: CableRun & { readonly size: string; readonly deviceKind: DeviceKind; readonly device?: Amperes },
): CableLoad {
  given(input);
  const kind = checkOneOf("deviceKind", input.deviceKind, ["circuit-breaker", "gG fuse"]);
  const resolved = resolveCable(input);
  const capacity = capacityOfRow(resolved, rowOfSize(resolved.from.table, "size", input.size));
  const ratings = deviceRatings(input.edition, kind);
  const allowed =
    capacity === null ? [] : ratings.filter(({ value, k3 }) => atMost(k3 * value, capacity.value));
  const largest = allowed.at(-1);
  if (capacity === null || largest === undefined) {
    return fail({
      code: "outside-table",
      path: "size",
      expected: `a size with a figure in column ${resolved.column} of ${resolved.from.label} that carries a preferred device`,
      received: input.size,
    });
  }
  const device = input.device === undefined ? largest : chooseDevice(ratings, input.device, 0);
  if (!allowed.includes(device)) {
    fail({
      code: "inconsistent",
      path: "device",
      expected: `at most ${largest.value} A, the largest ${kind} ${capacity.size} permits here`,
      received: device.value,
      unit: "A",
    });
  }
  const result = codeResult({
    value: device.value as Amperes,
    unit: "A",
    cells: [...device.cells, ...capacity.cells],
    baseConditions: capacity.baseConditions,
    governing: device.k3 > 1 ? "In ≤ Iz/k3" : "In ≤ Iz",
    cautions: capacity.cautions,
    warnings: capacity.warnings,
  });
  return { ...result, device: device.value as Amperes, capacity };
}

/** IB ≤ In ≤ Iz: from the load to the cable and its device, and back. */

import fuses from "../../shared/tables/iec-60269-ratings.json" with { type: "json" };
import breakers from "../../shared/tables/iec-60898-ratings.json" with { type: "json" };
import factors from "../../shared/tables/iec-overload-factors.json" with { type: "json" };
import { type Amperes, checkOneOf, fail, given } from "../quantity/index.ts";
import { type CableCapacity, type CableRun, capacityOfRow, resolveCable } from "./cableCapacity.ts";
import { labelledIec } from "./iecClauses.ts";
import { iecEdition } from "./iecTables.ts";
import { atMost, checkMeasured, same } from "./limit.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt, describeCell, type LabelledTable } from "./sharedTable.ts";
import { rowOfSize } from "./size.ts";

/**
 * Kind of overload device: circuit-breaker, or gG fuse, which needs more cable.
 * @since 0.1.0
 */
export type DeviceKind = "circuit-breaker" | "gG fuse";

interface Rated {
  readonly value: number;
  readonly cells: readonly TableCell[];
  readonly k3: number;
}

/**
 * Fuses up to here may carry 2.1 times their rating (IEC 60269-1, from memory), so k3 is 2.1/1.45 and not the printed
 * 1.31; the printed factor does not cover them and they are left out.
 */
const LARGEST_UNCOVERED_FUSE = 4;

/** Preferred ratings of a kind of device, each with the factor that the cable's capacity must exceed it by. */
function deviceRatings(run: CableRun, kind: DeviceKind): readonly Rated[] {
  const { name, own } = iecEdition(run.edition);
  const from: LabelledTable = own?.deviceRatings ?? labelledIec(kind === "gG fuse" ? fuses : breakers);
  const covered = from.table.rows.filter(
    (row) => kind !== "gG fuse" || !atMost(row[0] as number, LARGEST_UNCOVERED_FUSE),
  );
  return covered.map((row) => {
    const value = row[0] as number;
    const rule = factors.rows.find((one) => {
      const to = cellAt(factors, one, "to");
      return one[0] === kind && atMost(Number(one[1]), value) && (to === null || !atMost(Number(to), value));
    });
    const k3 = rule === undefined ? 1 : (cellAt(factors, rule, "k3") as number);
    const cell = describeCell({
      system: "IEC",
      edition: name,
      from,
      row,
      rowName: `${value} A`,
      column: "rating",
    });
    const ruled =
      rule === undefined
        ? []
        : [
            describeCell({
              system: "IEC",
              edition: "IEC 60364-4-43",
              from: labelledIec(factors),
              row: rule,
              rowName: kind,
              column: "k3",
            }),
          ];
    return { value, k3, cells: [cell, ...ruled] };
  });
}

/** The device you have, or the smallest that carries the load. */
function chooseDevice(ratings: readonly Rated[], given: number | undefined, load: number): Rated {
  const known = ratings.map(({ value }) => value).join(", ");
  const found =
    given === undefined
      ? ratings.find(({ value }) => atMost(load, value))
      : ratings.find(({ value }) => same(given, value));
  if (found === undefined) {
    return fail({
      code: "outside-table",
      path: given === undefined ? "designCurrent" : "device",
      expected: given === undefined ? `at most the largest of ${known}` : `one of ${known}`,
      received: given ?? load,
      unit: "A",
    });
  }
  return found;
}

/**
 * A cable chosen for a load.
 * @since 0.1.0
 */
export interface CableChoice extends CodeResult<string> {
  /** Load IB (A). */
  readonly designCurrent: Amperes;
  /** Device rating In (A). */
  readonly device: Amperes;
  /** Smallest capacity the device asks for, k3·In (A). */
  readonly requiredCapacity: Amperes;
  /** Smallest table value that gives it: k3·In over the factors (A). */
  readonly requiredTableCapacity: Amperes;
  /** Capacity Iz of the chosen cable with its steps. */
  readonly capacity: CableCapacity;
}

/**
 * Smallest cable for a load by IB ≤ In ≤ Iz, with k3·In ≤ Iz for gG fuses; no factor for continuous load.
 * @param input - the run; fields at {@link CableRun}
 * @param input.designCurrent - load IB, from {@link designCurrent} with an IEC edition (A), more than 0
 * @param input.deviceKind - "circuit-breaker" or "gG fuse" (fuses of 4 A and less are not covered)
 * @param input.device - device rating In (A); the smallest preferred one if left out
 * @returns the size, the device, and the capacity with its steps
 * @throws ElectroheatError as {@link cableCapacity}; `inconsistent` for a device below the load; `outside-table` where no size or device does
 * @source IEC 60364-4-43, 433.1; IEC 60898-1 and IEC 60269-1 for the ratings; IEC 60364-5-52 for the capacities
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
  const device = chooseDevice(deviceRatings(input, kind), input.device, designCurrent);
  if (!atMost(designCurrent, device.value)) {
    fail({
      code: "inconsistent",
      path: "device",
      expected: `at least the load of ${designCurrent}`,
      received: device.value,
      unit: "A",
    });
  }
  const resolved = resolveCable(input);
  const required = device.k3 * device.value;
  for (const row of resolved.from.table.rows) {
    const capacity = capacityOfRow(resolved, row);
    if (capacity === null || !atMost(required, capacity.value)) continue;
    const [first = resolved.factorCells[0] as TableCell, ...rest] = capacity.cells;
    const result = codeResult({
      value: capacity.size,
      unit: "",
      cells: [first, ...rest, ...device.cells],
      baseConditions: capacity.baseConditions,
      governing: device.k3 > 1 ? "In ≤ Iz/k3" : "In ≤ Iz",
      cautions: capacity.cautions,
      warnings: capacity.warnings,
    });
    return {
      ...result,
      designCurrent,
      device: device.value as Amperes,
      requiredCapacity: required as Amperes,
      requiredTableCapacity: (required / (resolved.ambientFactor * resolved.groupingFactor)) as Amperes,
      capacity,
    };
  }
  return fail({
    code: "outside-table",
    path: "designCurrent",
    expected: `a device whose current a size of ${resolved.from.label} carries in column ${resolved.column}`,
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
  const ratings = deviceRatings(input, kind);
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
      expected: `at most ${largest.value}, the largest ${kind} ${capacity.size} permits here`,
      received: device.value,
      unit: "A",
    });
  }
  const [first = capacity.cells[0] as TableCell, ...rest] = device.cells;
  const result = codeResult({
    value: device.value as Amperes,
    unit: "A",
    cells: [first, ...rest, ...capacity.cells],
    baseConditions: capacity.baseConditions,
    governing: device.k3 > 1 ? "In ≤ Iz/k3" : "In ≤ Iz",
    cautions: capacity.cautions,
    warnings: capacity.warnings,
  });
  return { ...result, device: device.value as Amperes, capacity };
}

/** Overload devices of the IEC family: preferred ratings, and how much cable each asks for. */
import fuses from "../../shared/tables/iec-60269-ratings.json" with { type: "json" };
import breakers from "../../shared/tables/iec-60898-ratings.json" with { type: "json" };
import factors from "../../shared/tables/iec-overload-factors.json" with { type: "json" };
import { fail } from "../quantity/index.ts";
import { labelledIec } from "./iecClauses.ts";
import { type Iec, iecEdition } from "./iecTables.ts";
import { atMost, same } from "./limit.ts";
import type { TableCell } from "./result.ts";
import { cellAt, describeCell, type LabelledTable, type Row } from "./sharedTable.ts";

/**
 * Kind of overload device: circuit-breaker, or gG fuse, which needs more cable.
 * @since 0.1.0
 */
export type DeviceKind = "circuit-breaker" | "gG fuse";

/** A rating with the factor that the cable's capacity must exceed it by. */
export interface RatedDevice {
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
export function deviceRatings(edition: Iec, kind: DeviceKind): readonly RatedDevice[] {
  const { name, own } = iecEdition(edition);
  const from: LabelledTable = own?.deviceRatings ?? labelledIec(kind === "gG fuse" ? fuses : breakers);
  const covered = from.table.rows.filter(
    (row) => kind !== "gG fuse" || !atMost(row[0] as number, LARGEST_UNCOVERED_FUSE),
  );
  return covered.map((row) => {
    const value = row[0] as number;
    const rule = factors.rows.find((one) => {
      const to = cellAt(factors, one, "to");
      return one[0] === kind && atMost(Number(one[1]), value) && (to === null || !atMost(Number(to), value));
    }) as Row;
    const k3 = cellAt(factors, rule, "k3") as number;
    const cell = describeCell({
      system: "IEC",
      edition: name,
      from,
      row,
      rowName: `${value} A`,
      column: "rating",
    });
    const ruled = describeCell({
      system: "IEC",
      edition: "IEC 60364-4-43",
      from: labelledIec(factors),
      row: rule,
      rowName: kind,
      column: "k3",
    });
    return { value, k3, cells: [cell, ruled] };
  });
}

/** The device you have, or the smallest that carries the load. */
export function chooseDevice(
  ratings: readonly RatedDevice[],
  given: number | undefined,
  load: number,
): RatedDevice {
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
  if (!atMost(load, found.value)) {
    fail({
      code: "inconsistent",
      path: "device",
      expected: `at least the load of ${load}`,
      received: found.value,
      unit: "A",
    });
  }
  return found;
}

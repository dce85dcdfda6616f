/** Overcurrent devices: standard ratings, what a conductor permits, what an appliance permits. */

import small from "../../shared/tables/nec-small-conductors.json" with { type: "json" };
import ratings from "../../shared/tables/nec-standard-ratings.json" with { type: "json" };
import { type Amperes, checkOneOf, fail, given } from "../quantity/index.ts";
import { atMost, checkMeasured } from "./limit.ts";
import { labelOf, type NorthAmerican, northAmerican, noTable } from "./necTables.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import type { LabelledTable } from "./sharedTable.ts";
import { cellAt, describeCell } from "./sharedTable.ts";
import { sizeName, sizeOfRow } from "./size.ts";

/** Above this rating the conductor must carry the device's whole rating: 240.4(C). */
const LARGEST_ROUNDED_UP = 800;

/** The rating a rule leads to, with its cell. */
interface Rating {
  readonly value: number;
  readonly cell: TableCell;
}

function ratingsOf(edition: NorthAmerican): { readonly name: string; readonly from: LabelledTable } {
  const { name, year, own } = northAmerican(edition);
  const from = year === null ? own.standardRatings : { ...labelOf("standard ratings", year), table: ratings };
  return { name, from: from ?? noTable("standard ratings", edition) };
}

/** Smallest rating at or above a current, or largest at or below it; `null` off the end of the list. */
export function ratingNear(edition: NorthAmerican, current: number, direction: "up" | "down"): Rating | null {
  const { name, from } = ratingsOf(edition);
  const value = (row: readonly unknown[]): number => row[0] as number;
  const row =
    direction === "up"
      ? from.table.rows.find((one) => atMost(current, value(one)))
      : [...from.table.rows].reverse().find((one) => atMost(value(one), current));
  if (row === undefined) return null;
  const cell = describeCell({
    system: "North America",
    edition: name,
    from,
    row,
    rowName: `${row[0]} A`,
    column: "rating",
  });
  return { value: value(row), cell };
}

/**
 * The standard rating next to a current: the smallest at or above it, or the largest at or below it.
 * @param input.edition - edition by name, or one of your own
 * @param input.current - required current (A), more than 0
 * @param input.direction - "up" or "down"
 * @returns the rating (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` beyond the list
 * @source NFPA 70, National Electrical Code, 240.6(A)
 * @example
 * ```ts
 * standardDevice({ edition: "NEC 2023", current: amperes(1.25 * 47.99999999999999), direction: "up" }).value // => 60
 * ```
 * @since 0.1.0
 */
export function standardDevice(input: {
  readonly edition: NorthAmerican;
  readonly current: Amperes;
  readonly direction: "up" | "down";
}): CodeResult<Amperes> {
  given(input);
  const { edition, current } = input;
  checkMeasured("current", current, "A");
  const direction = checkOneOf("direction", input.direction, ["up", "down"]);
  const found = ratingNear(edition, current, direction);
  if (found === null) {
    return fail({
      code: "outside-table",
      path: "current",
      expected: `a current within the standard ratings (${ratingsOf(edition).name})`,
      received: current,
      unit: "A",
    });
  }
  return codeResult({
    value: found.value as Amperes,
    unit: "A",
    cells: [found.cell],
    baseConditions: ["fuses and inverse-time circuit breakers"],
    governing: "standard rating",
  });
}

/** The largest device of a small conductor, or `null` for a size without such a limit. */
export function smallConductorRating(
  edition: NorthAmerican,
  size: string,
  material: string,
): (Rating & { readonly cautions: readonly string[] }) | null {
  const { name, year, own } = northAmerican(edition);
  const from = year === null ? own.smallConductors : { ...labelOf("small conductors", year), table: small };
  if (from === undefined) return null;
  const wanted = sizeName("size", size);
  // Nickel-coated copper is copper with a coat; the rule knows copper and aluminum.
  const metal = material === "aluminum" ? "aluminum" : "copper";
  const row = from.table.rows.find(
    (one) => sizeOfRow(from.table, one) === wanted && cellAt(from.table, one, "material") === metal,
  );
  if (row === undefined) return null;
  const rowName = `${wanted} ${metal}`;
  const cell = describeCell({ system: "North America", edition: name, from, row, rowName, column: "limit" });
  const condition = cellAt(from.table, row, "condition");
  return {
    value: cellAt(from.table, row, "limit") as number,
    cell,
    cautions: condition === null || condition === "" ? [] : [`${from.label}, ${rowName}: ${condition}.`],
  };
}

/**
 * How the largest device for a conductor was found.
 * @since 0.1.0
 */
export type DeviceRule = "standard rating" | "next size up" | "above 800 A" | "small conductor limit";

/** The largest device for an ampacity alone, small conductors not looked at; `null` off the end of the list. */
export function roundedDevice(
  edition: NorthAmerican,
  ampacity: number,
): (Rating & { readonly rule: DeviceRule }) | null {
  const above = ratingNear(edition, ampacity, "up");
  const below = ratingNear(edition, ampacity, "down");
  const exact = above !== null && below !== null && above.value === below.value;
  const up = above !== null && atMost(above.value, LARGEST_ROUNDED_UP);
  const chosen = exact || !up ? below : above;
  return chosen === null
    ? null
    : { ...chosen, rule: exact ? "standard rating" : up ? "next size up" : "above 800 A" };
}

/** The largest device a conductor permits, and by which rule. */
export function permittedDevice(input: {
  readonly edition: NorthAmerican;
  readonly size: string;
  readonly material: string;
  readonly ampacity: number;
}): (Rating & { readonly rule: DeviceRule; readonly cells: readonly TableCell[] }) | null {
  const { edition, size, material, ampacity } = input;
  const chosen = roundedDevice(edition, ampacity);
  if (chosen === null) return null;
  const limit = smallConductorRating(edition, size, material);
  if (limit !== null && !atMost(chosen.value, limit.value)) {
    return { ...limit, rule: "small conductor limit", cells: [limit.cell, chosen.cell] };
  }
  return { ...chosen, cells: [chosen.cell, ...(limit === null ? [] : [limit.cell])] };
}

/**
 * The largest overcurrent device a conductor permits: the standard rating at its ampacity, else the next size up to 800 A, the next
 * down above that, and never more than the limit of a small conductor.
 *
 * Not for multioutlet circuits with portable cord-and-plug loads, taps and motor circuits.
 * @param input.edition - edition by name, or one of your own
 * @param input.size - size printed on the conductor
 * @param input.material - "copper", "aluminum" or "nickel-coated copper"
 * @param input.ampacity - usable ampacity of the conductor, factors and terminals included (A), more than 0
 * @returns the rating (A); `governing` names the rule: {@link DeviceRule}
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `malformed-text`, `outside-table`
 * @source NFPA 70, National Electrical Code, 240.4(B), (C), (D) and 240.6(A)
 * @example
 * ```ts
 * largestDevice({ edition: "NEC 2017", size: "2/0 AWG", material: "copper", ampacity: amperes(131.04) }).value // => 150
 * ```
 * @since 0.1.0
 */
export function largestDevice(input: {
  readonly edition: NorthAmerican;
  readonly size: string;
  readonly material: string;
  readonly ampacity: Amperes;
}): CodeResult<Amperes> {
  given(input);
  const { ampacity, edition } = input;
  checkMeasured("ampacity", ampacity, "A");
  checkOneOf("material", input.material, ["copper", "aluminum", "nickel-coated copper"]);
  const found = permittedDevice(input);
  if (found === null) {
    return fail({
      code: "outside-table",
      path: "ampacity",
      expected: `an ampacity within the standard ratings (${ratingsOf(edition).name})`,
      received: ampacity,
      unit: "A",
    });
  }
  return codeResult({
    value: found.value as Amperes,
    unit: "A",
    cells: found.cells,
    baseConditions: ["240.4(B): not for multioutlet circuits with portable cord-and-plug loads"],
    governing: found.rule,
    cautions: [
      "Largest device for the conductor; the equipment's own mark or clause may ask for less.",
      ...(smallConductorRating(edition, input.size, input.material)?.cautions ?? []),
    ],
  });
}

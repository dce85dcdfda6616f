/** Tolerance of delivered heating wire. */
import table from "../../shared/tables/wire-tolerance-maker-u.json" with { type: "json" };
import { fail, type Meters, millimeters, toMillimeters } from "../quantity/index.ts";
import { basisOf, type Lookup } from "./basis.ts";

/**
 * Tolerance of the resistance per length of delivered heating wire by its diameter, plus and minus: ±5 % from
 * 0.15 mm up, ±12 % for the thinnest. An element adds its own (+10 / −5 %).
 * @param diameter - wire diameter, by micrometer, m, 0.0254 mm to below 5.5 mm
 * @returns the tolerance, 0 to 1, with its source
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table`
 * @source resistance-wire maker U, size range and tolerance page
 * @example
 * ```ts
 * wireResistanceTolerance(millimeters(2.05)).value // => 0.05
 * ```
 * @since 0.1.0
 */
export function wireResistanceTolerance(diameter: Meters): Lookup<number> {
  toMillimeters(diameter);
  for (const [from, below, percent] of table.rows) {
    if (from === undefined || below === undefined || percent === undefined) continue;
    if (diameter >= millimeters(from) && diameter < millimeters(below)) {
      return { value: percent / 100, basis: basisOf(table), warnings: [] };
    }
  }
  const expected = `${table.rows[0]?.[0]} to below ${table.rows.at(-1)?.[1]} (table ${table.id})`;
  return fail({
    code: "outside-table",
    path: "diameter",
    expected,
    received: toMillimeters(diameter),
    unit: "mm",
  });
}

/** British standard wire gauge, by its table: it is no formula. */
import table from "../../shared/tables/swg.json" with { type: "json" };
import { fail, given, inches, type Meters } from "../quantity/index.ts";
import { basisOf } from "./basis.ts";
import { type ChosenSize, chooseSize, roundWireArea, type SizeRounding, type WireSize } from "./wireSize.ts";

const FORMS = "an SWG size: 7/0 to 2/0, or 0 to 50";

/** All sizes, thick to thin; diameters are defined in inches. */
function sizes(): WireSize[] {
  const basis = basisOf(table);
  return table.rows.map(([size, inch]): WireSize => {
    const diameter = inches(inch as number);
    return { system: "SWG", size: String(size), diameter, area: roundWireArea(diameter), basis };
  });
}

/**
 * Size of a British standard wire gauge, 7/0 to 50, by its table. The gauge is withdrawn but heating wire is still
 * sold by it. SWG 18 is 1.219 mm, AWG 18 is 1.024 mm.
 * @param size - the size: "18", "18 SWG", "#18", "2/0", "0"
 * @returns the size with its diameter and area
 * @throws ElectroheatError `missing`, `wrong-type`, `malformed-text`, `out-of-range` above 50
 * @source BS 3737:1964 (withdrawn), Standard wire gauge
 * @example
 * ```ts
 * toMillimeters(swgSize("18").diameter).toFixed(4) // => "1.2192"
 * ```
 * @since 0.1.0
 */
export function swgSize(size: string): WireSize {
  const path = "size";
  if (size === undefined || size === null || size === "")
    fail({ code: "missing", path, expected: FORMS, received: size });
  if (typeof size !== "string") fail({ code: "wrong-type", path, expected: FORMS, received: size });
  const bare = size.toUpperCase().replace("SWG", "").replace("NO.", "").replace("#", "").trim();
  const name = /^0{2,7}$/.test(bare) ? `${bare.length}/0` : bare === "1/0" ? "0" : bare;
  const found = sizes().find((one) => one.size === name);
  if (found !== undefined) return found;
  const code = /^\d{1,3}$/.test(bare) ? "out-of-range" : "malformed-text";
  return fail({ code, path, expected: FORMS, received: size });
}

/**
 * British standard wire gauge, 7/0 to 50, for a diameter.
 * @param input - what is looked up
 * @param input.diameter - diameter of the bare solid wire, by micrometer, m, 7/0 to 50
 * @param input.rounding - `nearest`, `at-least` (not thinner), `at-most` (not thicker) or `exact`
 * @returns the size with its diameter and area, and how far it is off
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` when no size fits
 * @source BS 3737:1964 (withdrawn), Standard wire gauge
 * @example
 * ```ts
 * swgFromDiameter({ diameter: millimeters(2.05), rounding: "nearest" }).size // => "14"
 * ```
 * @since 0.1.0
 */
export function swgFromDiameter(input: {
  readonly diameter: Meters;
  readonly rounding: SizeRounding;
}): ChosenSize {
  given(input);
  return chooseSize(sizes(), input.diameter, input.rounding, "diameter");
}

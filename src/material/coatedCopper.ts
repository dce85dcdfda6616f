/** Nickel-coated copper wire, for leads in the heat. */
import table from "../../shared/tables/nickel-coated-copper.json" with { type: "json" };
import { type Celsius, checkOneOf, fail, given, type OhmMeters } from "../quantity/index.ts";
import { basisOf, type Lookup, rowOf } from "./basis.ts";
import { conductorResistivity } from "./conductor.ts";
import { COPPER_IACS } from "./conductors/copper.ts";
import { NICKEL_MAKER_I } from "./conductors/metals.ts";

/**
 * Class of nickel-coated copper wire: least nickel in percent of the mass.
 * @since 0.1.0
 */
export type NickelClass = 2 | 4 | 7 | 10 | 27;

/**
 * Effective resistivity of nickel-coated copper wire over its whole area: copper core and nickel coating side by
 * side, 1 / Σ (share of area / resistivity), shares of area from the class and the densities 8890 and 8900 kg/m³.
 * Ignoring the nickel is the safe side: class 27 has 73.0 % IACS then, 79.7 % with it. The standard's own minima
 * were not seen; they are said to be about 2 % lower still.
 * @param input - what is looked up
 * @param input.class - 2, 4, 7, 10 or 27, percent nickel by mass, printed on the spool
 * @param input.nickel - `ignored` (safe) or `parallel`
 * @param input.temperature - temperature of the wire, °C, with `parallel` 20 to 500
 * @returns the resistivity in ohm meters (Ω·m), to be divided by the whole area, with the source of the classes
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `out-of-range`, `outside-table`
 * @source ASTM B355 for the classes; definition (conductors in parallel) for the rest
 * @example
 * ```ts
 * const cold = celsius(20);
 * const found = coatedCopperResistivity({ class: 27, nickel: "ignored", temperature: cold });
 * (1 / (found.value * 58e6)).toFixed(4) // => "0.7302"
 * ```
 * @since 0.1.0
 */
export function coatedCopperResistivity(input: {
  readonly class: NickelClass;
  readonly nickel: "ignored" | "parallel";
  readonly temperature: Celsius;
}): Lookup<OhmMeters> {
  given(input);
  const { temperature } = input;
  const nickel = checkOneOf("nickel", input.nickel, ["ignored", "parallel"]);
  const mass = rowOf(table, input.class)[1];
  const [core, coat] = [COPPER_IACS.density?.value, NICKEL_MAKER_I.density?.value];
  if (typeof mass !== "number" || core === undefined || coat === undefined) {
    const expected = `one of ${table.rows.map(([name]) => name).join(", ")}`;
    return fail({
      code: input.class === undefined || input.class === null ? "missing" : "unknown-name",
      path: "class",
      expected,
      received: input.class,
    });
  }
  const volume = mass / 100 / coat;
  const share = volume / (volume + (1 - mass / 100) / core);
  const copper = conductorResistivity({ conductor: COPPER_IACS, temperature });
  let conductivity = (1 - share) / copper.value;
  if (nickel === "parallel") {
    conductivity += share / conductorResistivity({ conductor: NICKEL_MAKER_I, temperature }).value;
  }
  return { value: (1 / conductivity) as OhmMeters, basis: basisOf(table), warnings: copper.warnings };
}

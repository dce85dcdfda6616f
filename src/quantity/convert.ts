/** From any unit that text can name to any other of the same dimension: the hundreds of converters as one function. */
import { checkFinite } from "./check.ts";
import { fail, issue } from "./errors.ts";
import { given } from "./given.ts";
import { inItsUnit, retold } from "./retold.ts";
import { entriesOf, type UnitEntry } from "./table.ts";
import type { CanonicalUnit } from "./tags.ts";
import { findUnit, unitsOf } from "./unitText.ts";

const TEMPERATURE_OR_DIFFERENCE =
  "a temperature (°C, °F) is converted to a temperature, a difference (K, Δ°F) to a difference";

/** Text of a unit: trimmed, not blank. */
function unitText(path: "from" | "to", text: string): string {
  const expected = 'a unit as text, such as "mm" or "lbf·in"';
  const received: unknown = text;
  if (received === undefined || received === null) return fail({ code: "missing", path, expected, received });
  if (typeof received !== "string") return fail({ code: "wrong-type", path, expected, received });
  const trimmed = text.trim();
  return trimmed === "" ? fail({ code: "missing", path, expected, received }) : trimmed;
}

function unknownUnit(path: "from" | "to", received: string): never {
  return fail({ code: "unknown-name", path, expected: "a unit that `unitSymbols` lists", received });
}

/** Both ends as entries of one canonical unit. */
function bothEnds(from: string, to: string): { readonly from: UnitEntry; readonly to: UnitEntry } {
  const [source, target] = [unitsOf(from), unitsOf(to)];
  const [unit] = source;
  if (unit === undefined) return unknownUnit("from", from);
  if (target.length === 0) return unknownUnit("to", to);
  const common = source.find((one) => target.includes(one));
  if (common !== undefined) {
    return { from: findUnit(common, from) as UnitEntry, to: findUnit(common, to) as UnitEntry };
  }
  const heat = [...source, ...target].filter((one) => one === "°C" || one === "K").length > 1;
  const symbols = entriesOf(unit as CanonicalUnit).map((entry) => entry.symbol);
  const expected = heat ? TEMPERATURE_OR_DIFFERENCE : `a unit of ${unit}: ${symbols.join(", ")}`;
  return fail({ code: "wrong-type", path: "to", expected, received: to });
}

/**
 * Converts a number from one unit to another of the same dimension: result = value × (size of `from`) / (size of `to`), between °C and
 * °F with their offset.
 *
 * Reads every unit and spelling that `parseQuantity` reads ("in-lb", "KW", "kcmil"), but no wire gauge, which is no unit: see
 * {@link conductorArea}. Torque is not energy, and a temperature is not a difference of temperatures: "K" is a difference here, "°C" a
 * temperature.
 * @param input.value - the number to convert, in the unit `from`; of a temperature, not below absolute zero
 * @param input.from - unit of the number, as text: "lbf·in"
 * @param input.to - unit wanted, as text: "N·m"
 * @returns the number in the unit wanted
 * @throws ElectroheatError `missing`, `not-a-number`, `wrong-type` (not text, or units of different dimensions), `unknown-name` (unknown
 *   unit), `out-of-range` (beyond a double, below absolute zero)
 * @source BIPM, The International System of Units (SI Brochure), 9th edition (2019); NIST SP 811 (2008), Appendix B, for units outside it
 * @example
 * ```ts
 * convertUnits({ value: 132, from: "lbf·in", to: "N·m" }).toFixed(3) // => "14.914"
 * ```
 * @since 0.1.0
 */
export function convertUnits(input: {
  readonly value: number;
  readonly from: string;
  readonly to: string;
}): number {
  const { value } = given(input);
  checkFinite("value", value);
  const { from, to } = bothEnds(unitText("from", input.from), unitText("to", input.to));
  // The conversion's own refusal (overflow, below absolute zero) is told about the number that was given.
  return retold(
    () => {
      const canonical = from.from(value);
      // There and back would round twice.
      return from === to ? value + 0 : to.to(canonical) + 0;
    },
    (one) => issue({ ...one, path: "value", expected: inItsUnit(one), received: value, unit: from.symbol }),
  );
}

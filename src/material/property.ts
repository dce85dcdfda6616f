/** Specific heat and thermal conductivity of a dataset at a temperature. */
import { type Celsius, checkFinite, fail, given } from "../quantity/index.ts";
import type { SinglePoint } from "./alloy.ts";
import { checkBasis, type Lookup, type TemperatureTable } from "./basis.ts";
import { type BeyondTable, readCurve } from "./curve.ts";

/**
 * A property of a dataset at a temperature: between the rows where the source gives a table. Where it gives a single
 * figure that figure, with a warning when it is meant for another temperature or for none in particular.
 * @param input - what is looked up
 * @param input.property - `specificHeat` or `thermalConductivity` of a dataset
 * @param input.temperature - temperature of the metal, °C
 * @param input.beyondTable - for tables: `refuse` (default) or `extrapolate`
 * @returns the value in the unit of the property with its source
 * @throws ElectroheatError `missing` when the dataset does not have the property, `not-a-number`, `outside-table`
 * @source the dataset's own, named in the result
 * @example
 * ```ts
 * const property = NICR_80_20_MAKER_A.specificHeat;
 * propertyAt({ property, temperature: celsius(750) }).value // => 615
 * ```
 * @since 0.1.0
 */
export function propertyAt<T extends number>(input: {
  readonly property: TemperatureTable<T> | SinglePoint<T> | undefined;
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable | undefined;
}): Lookup<T> {
  given(input);
  const { property, temperature } = input;
  if (property === undefined) {
    const expected = "a property that the dataset has";
    return fail({ code: "missing", path: "property", expected, received: property });
  }
  const { basis } = property;
  checkBasis("property.basis", basis);
  if ("temperatures" in property) {
    const { temperatures: xs, values: ys } = property;
    const query = {
      xs,
      ys,
      at: temperature,
      path: "temperature",
      unit: "°C",
      basis,
      owner: "property",
      beyond: input.beyondTable,
    };
    const { value, warnings } = readCurve(query);
    return { value: value as T, basis, warnings };
  }
  checkFinite("temperature", temperature, "°C");
  checkFinite("property.value", property.value);
  if (property.temperature !== undefined) checkFinite("property.temperature", property.temperature, "°C");
  if (property.temperature === temperature) return { value: property.value, basis, warnings: [] };
  const at = property.temperature === undefined ? "without a temperature" : `for ${property.temperature} °C`;
  const message = `The source gives one figure ${at}; it is returned unchanged for ${temperature} °C.`;
  return {
    value: property.value,
    basis,
    warnings: [{ code: "approximate", path: "temperature", message, source: basis.source }],
  };
}

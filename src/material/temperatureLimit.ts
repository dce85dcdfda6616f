/** How hot a heating alloy may be: opinions, by source. */
import jis from "../../shared/tables/alloy-classes-jis-c2520.json" with { type: "json" };
import others from "../../shared/tables/element-temperature-opinions.json" with { type: "json" };
import type { Celsius } from "../quantity/index.ts";
import type { AlloyName } from "./alloy.ts";
import { alloyDatasetsOf } from "./alloyRegistry.ts";
import { basisOf, type Sourced } from "./basis.ts";

/** Which alloy of this library a JIS class describes, by its composition. */
const JIS_CLASSES: Readonly<Record<string, AlloyName>> = {
  "NiCr class 1": "NiCr 80/20",
  "NiCr class 2": "NiCr 60/15",
  "FeCr class 1": "FeCrAl 25/5",
  "FeCr class 2": "FeCrAl 21/4",
};

/**
 * Highest temperature of the element itself that each source allows for a heating alloy, lowest first. They differ by
 * up to 150 K and hold for thick wire in clean dry air: take the lowest and stay 50 to 100 K below it; wire under
 * 1 mm must run cooler still. It is no temperature of the air or of the work.
 * @param alloy - the alloy by composition, such as "NiCr 60/15"
 * @returns the opinions with their sources, none when no source gives one
 * @throws ElectroheatError `missing`, `unknown-name` that lists the known alloys
 * @source the sources named in the result
 * @example
 * ```ts
 * highestElementTemperatures("NiCr 60/15").map(({ value }) => value) // => [1000, 1000, 1010, 1150, 1150]
 * ```
 * @since 0.1.0
 */
export function highestElementTemperatures(alloy: AlloyName): readonly Sourced<Celsius>[] {
  const found: Sourced<Celsius>[] = alloyDatasetsOf(alloy).flatMap(({ maximumElementTemperature }) =>
    maximumElementTemperature === undefined ? [] : [maximumElementTemperature],
  );
  for (const row of jis.rows) {
    if (JIS_CLASSES[String(row[0])] !== alloy) continue;
    for (const value of [row[5], row[6]]) {
      if (typeof value === "number") found.push({ value: value as Celsius, basis: basisOf(jis) });
    }
  }
  for (const [name, value, source] of others.rows) {
    if (name === alloy) {
      found.push({ value: value as Celsius, basis: { ...basisOf(others), source: String(source) } });
    }
  }
  return found.sort((a, b) => a.value - b.value);
}

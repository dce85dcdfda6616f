/** All conductor datasets by name. Importing this brings every metal along. */
import { fail } from "../quantity/index.ts";
import type { ConductorDataset } from "./conductor.ts";
import { COPPER_HARD_DRAWN, COPPER_IACS } from "./conductors/copper.ts";
import * as metals from "./conductors/metals.ts";

function all(): readonly ConductorDataset[] {
  return [COPPER_IACS, COPPER_HARD_DRAWN, ...Object.values(metals)];
}

/**
 * Lists the ids of all conductor datasets.
 * @returns the ids
 * @example
 * ```ts
 * conductorDatasetIds().includes("aluminum-61-iacs") // => true
 * ```
 * @since 0.1.0
 */
export function conductorDatasetIds(): readonly string[] {
  return all().map(({ id }) => id);
}

/**
 * A conductor dataset by its id. "copper" alone is refused: wire and bars are IACS copper, physics tables hold the
 * pure element, 2.7 % lower.
 * @param id - id of the dataset, such as "copper-iacs"
 * @returns the dataset
 * @throws ElectroheatError `missing`, `ambiguous` for a metal without a source, `unknown-name`; both list what to write
 * @source the dataset's own, named in it
 * @example
 * ```ts
 * conductorDataset("nickel-maker-i").tolerance // => 0.1
 * ```
 * @since 0.1.0
 */
export function conductorDataset(id: string): ConductorDataset {
  const known = all();
  const found = known.find((one) => one.id === id);
  if (found !== undefined) return found;
  const asked = typeof id === "string" ? id.toLowerCase().replace("aluminium", "aluminum") : "";
  const meant =
    asked.length > 2 ? known.filter((one) => one.metal.startsWith(asked) || one.id.startsWith(asked)) : [];
  return fail({
    code:
      id === undefined || id === null || id === ""
        ? "missing"
        : meant.length > 0
          ? "ambiguous"
          : "unknown-name",
    path: "id",
    expected: `one of ${(meant.length > 0 ? meant : known).map((one) => one.id).join(", ")}`,
    received: id,
  });
}

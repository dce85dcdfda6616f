/** Ampacity tables by edition. */
import raceway from "../../shared/tables/nec-310-16.json" with { type: "json" };
import racewayOld from "../../shared/tables/nec-310-16-2008.json" with { type: "json" };
import freeAir from "../../shared/tables/nec-310-17-copper.json" with { type: "json" };
import hot from "../../shared/tables/nec-310-18.json" with { type: "json" };
import { fail } from "../quantity/index.ts";
import type { AmpacityTable } from "./edition.ts";
import { AT_30, AT_40, labelOf, type NorthAmerican, northAmerican, noTable } from "./necTables.ts";
import { nameError } from "./sharedTable.ts";

/** What goes with figures of the old table. */
export const SUPERSEDED =
  "Figures of 2008 and earlier, to recognize an older document: not for work under a later edition.";
const LEADS_ONLY =
  "The 250 °C column is for nickel or nickel-coated copper, as leads within apparatus or in raceways connected to it only.";

/** Ampacity tables of an edition. */
export function ampacityTables(edition: NorthAmerican): {
  readonly name: string;
  readonly tables: readonly AmpacityTable[];
} {
  const { name, year, own } = northAmerican(edition);
  if (year === null) return { name, tables: own.ampacity ?? [] };
  const upToThree = "not more than three current-carrying conductors in raceway, cable or earth";
  return {
    name,
    tables: [
      {
        installation: "raceway",
        ...labelOf("raceway", year),
        baseAmbient: AT_30,
        baseConditions: ["ambient 26 to 30 °C", upToThree],
        table: year < 2011 ? racewayOld : raceway,
        cautions: year < 2011 ? [SUPERSEDED] : [],
      },
      ...(year < 2011
        ? []
        : [
            {
              installation: "free air",
              ...labelOf("free air", year),
              baseAmbient: AT_30,
              baseConditions: ["ambient 26 to 30 °C", "single insulated conductors in free air"],
              table: freeAir,
            },
          ]),
      {
        installation: "high-temperature raceway",
        ...labelOf("high-temperature raceway", year),
        baseAmbient: AT_40,
        baseConditions: ["ambient 36 to 40 °C", "not more than three conductors in raceway or cable"],
        table: hot,
        cautions: [LEADS_ONLY],
      },
    ],
  };
}

/** The table of an installation; an installation the edition does not have is answered with those it has. */
export function ampacityTable(
  edition: NorthAmerican,
  installation: string,
): { readonly name: string; readonly from: AmpacityTable } {
  const { name, tables } = ampacityTables(edition);
  if (tables.length === 0) return noTable("an ampacity table", edition);
  const from = tables.find((one) => one.installation === installation);
  if (from !== undefined) return { name, from };
  const known = tables.map((one) => one.installation).join(", ");
  return fail({
    code: nameError(installation),
    path: "installation",
    expected: `one of ${known} (${name})`,
    received: installation,
  });
}

/** Names of the IEC family's tables in their editions, and the reference methods in words. */
import clauses from "../../shared/tables/iec-clauses.json" with { type: "json" };
import methods from "../../shared/tables/iec-installation-methods.json" with { type: "json" };
import type { Provenance } from "./result.ts";
import type { LabelledTable, SharedTable } from "./sharedTable.ts";

/** A table under the name its edition gives it; a table that serves several editions takes the name in the one given. */
export function labelledIec(table: SharedTable, edition = ""): LabelledTable {
  const named = clauses.rows.filter((row) => row[0] === table.id);
  const row = named.find((one) => one[1] === edition) ?? named[0];
  const [, , label, labelProvenance] = row as [string, string, string, Provenance];
  return { table, label, labelProvenance };
}

/** What a reference method means, for the base conditions; "F trefoil" is method F. */
export function methodInWords(column: string): readonly string[] {
  const [letter] = column.split(" ") as [string];
  const [, words] = methods.rows.find((row) => row[0] === letter) as [string, string];
  return [`method ${letter}: ${words}`];
}

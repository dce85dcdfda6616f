/** Tables of the North American editions, kind by kind, so that one lookup does not carry the others. */
import clauses from "../../shared/tables/nec-clauses.json" with { type: "json" };
import { type Celsius, checkOneOf, fail } from "../quantity/index.ts";
import type { IecEdition, NorthAmericanEdition } from "./edition.ts";
import { checkedEdition } from "./editionGate.ts";
import type { Provenance } from "./result.ts";
import { cellAt, type Row } from "./sharedTable.ts";

const NAMES = ["NEC 2008", "NEC 2011", "NEC 2014", "NEC 2017", "NEC 2020", "NEC 2023"] as const;

/**
 * Editions of the National Electrical Code (NFPA 70) that this library holds. "NEC 2008" stands for 2008 and earlier and
 * holds no ambient factors; it is there to recognize older figures.
 * @since 0.1.0
 * @useDeclaredType
 */
export type NecEdition = (typeof NAMES)[number];

/**
 * A North American edition: one of ours by name, or one of your own.
 * @since 0.1.0
 */
export type NorthAmerican = NecEdition | NorthAmericanEdition;

/** Name and year of a known edition, for what only these hold. */
export function namedEdition(edition: NecEdition): { readonly name: NecEdition; readonly year: number } {
  const name = checkOneOf("edition", edition, NAMES);
  return { name, year: Number(name.slice(4)) };
}

/** A known edition by its year, or one of the user's own. */
type ResolvedEdition =
  | { readonly name: string; readonly year: number; readonly own: null }
  | { readonly name: string; readonly year: null; readonly own: NorthAmericanEdition };

/** Either the name of a known edition or the user's own, past the gate. */
export function northAmerican(edition: NorthAmerican): ResolvedEdition {
  if (typeof edition === "object" && edition !== null) {
    const own = checkedEdition(edition);
    if (own.system !== "North America") {
      fail({
        code: "inconsistent",
        path: "edition.system",
        expected: "North America: systems are never mixed",
        received: own.system,
      });
    }
    return { name: own.name, year: null, own };
  }
  return { ...namedEdition(edition), own: null };
}

/** Names of the editions, oldest first. */
export const necEditions = (): readonly NecEdition[] => NAMES;

/** The row of a provision: one of ours, so that there is one. */
const rowOf = (provision: string): Row => clauses.rows.find((one) => one[0] === provision) as Row;

/** Where a provision stands in an edition; `null` if that edition does not have it in this form. */
export function clauseOf(provision: string, year: number): string | null {
  const column = year < 2011 ? "2008" : year < 2020 ? "2011" : String(year);
  return cellAt(clauses, rowOf(provision), column) as string | null;
}

/** A provision's label in an edition that has it, with the provenance of its row, for the cells found under it. */
export function labelOf(
  provision: string,
  year: number,
): { readonly label: string; readonly labelProvenance: Provenance } {
  return {
    label: clauseOf(provision, year) as string,
    labelProvenance: cellAt(clauses, rowOf(provision), "provenance") as Provenance,
  };
}

/**
 * Answers a question about a table that an edition does not hold: with the editions that do, or, where the edition is the user's
 * own, that the table is missing from it.
 */
export function noTable(
  what: string,
  edition: string | NorthAmericanEdition | IecEdition,
  known: readonly string[] = [],
): never {
  if (typeof edition === "object") {
    const expected = `an edition of your own that holds ${what}, which ${edition.name} does not`;
    return fail({ code: "missing", path: "edition", expected, received: undefined });
  }
  return fail({
    code: "unknown-name",
    path: "edition",
    expected:
      known.length > 0
        ? `an edition that holds ${what}: ${known.join(", ")}`
        : `an edition of your own that holds ${what}`,
    received: edition,
  });
}

/** The degree figure of a base temperature, as a tagged number. */
export const AT_30: Celsius = 30 as Celsius;
/** As above. */
export const AT_40: Celsius = 40 as Celsius;

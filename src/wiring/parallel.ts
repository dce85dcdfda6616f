/** Conductors side by side that make one line together: how many, how small, and what must hold for them to share its current. */
import parallel from "../../shared/tables/nec-parallel.json" with { type: "json" };
import { fail, type Warning } from "../quantity/index.ts";
import { atMost } from "./limit.ts";
import { labelOf, type NorthAmerican, northAmerican } from "./necTables.ts";
import type { TableCell } from "./result.ts";
import { cellAt, describeCell, type Row } from "./sharedTable.ts";
import { areaOfSize } from "./size.ts";

/** The one row of the table; asked for when needed, so that who does not ask does not carry the table. */
const rule = (): Row => parallel.rows[0] as Row;
const smallest = (): string => `${cellAt(parallel, rule(), "smallest")} AWG`;

/** Whether North American rules let conductors of a size be joined in parallel; one alone may be of any. */
export function mayBeParallel(count: number, size: string): boolean {
  return count === 1 || atMost(areaOfSize("size", smallest()), areaOfSize("size", size));
}

/** Refuses conductors that are too small to be joined in parallel. */
export function checkMayBeParallel(count: number, size: string): void {
  if (mayBeParallel(count, size)) return;
  fail({
    code: "inconsistent",
    path: "size",
    expected: `${smallest()} or larger: smaller ones may not be joined in parallel`,
    received: size,
  });
}

/** What an answer about several conductors per line says beside its figures. */
interface OfParallel {
  readonly cells: readonly TableCell[];
  readonly cautions: readonly string[];
  readonly warnings: readonly Warning[];
}

const NONE: OfParallel = { cells: [], cautions: [], warnings: [] };

const ALIKE_NEC =
  "Conductors in parallel share the current only where they are alike: length, metal, size, insulation, terminations. Sets in raceways of " +
  "their own need raceways alike, each with a conductor of every line and its own equipment grounding conductor.";
const ALIKE_IEC =
  "Conductors in parallel share the current only where they are alike: metal, section, about the same length, no branch on the way. " +
  "Single-core cables neither twisted nor small want an order of the lines that shares equally; from four on, consider bus bars.";

/** Fewer than all sets have: they lie apart then, which is said and not passed over. */
function apart(path: string, counted: number, least: number, message: string): readonly Warning[] {
  return counted >= least ? [] : [{ code: "assumed", path, message }];
}

/**
 * Of several conductors per line by North American rules; nothing of one alone. An edition of the reader's own brings figures and no
 * clauses: the rule holds, without a place in print.
 */
export function necParallel(edition: NorthAmerican, count: number, counted: number): OfParallel {
  if (count === 1) return NONE;
  const { name, year } = northAmerican(edition);
  const cells =
    year === null
      ? []
      : [
          describeCell({
            system: "North America",
            edition: name,
            from: { ...labelOf("parallel conductors", year), table: parallel },
            row: rule(),
            rowName: String(rule()[0]),
            column: "smallest",
          }),
        ];
  return {
    cells,
    cautions: [ALIKE_NEC],
    warnings: apart(
      "currentCarryingConductors",
      counted,
      // Two lines a set at least.
      2 * count,
      `${counted} conductors are fewer than ${count} sets have: each set is taken to have a raceway of its own. In one raceway those of all ` +
        "sets are counted.",
    ),
  };
}

/** The same by the IEC family: every set counts as a circuit of the group. */
export function iecParallel(count: number, circuits: number): Omit<OfParallel, "cells"> {
  if (count === 1) return NONE;
  return {
    cautions: [ALIKE_IEC],
    warnings: apart(
      "circuits",
      circuits,
      count,
      `Fewer circuits than sets (${circuits} and ${count}): the sets are taken to lie apart. Side by side each counts as a circuit.`,
    ),
  };
}

/** Both days of a record, and the module as it stands after them. */

import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { ResistanceAssessment } from "../assessTypes.ts";
import type { Sheet } from "../readSheet.ts";
import { assessDay } from "./assessDay.ts";
import { presentJoints } from "./hotBranches.ts";

/** The days. */
export interface Days {
  readonly asFound: ReadingsAssessment | null;
  readonly asLeft: ReadingsAssessment | null;
  /** Of each kind of reading the last there is; null where nobody read anything. */
  readonly present: ReadingsAssessment | null;
}

/** Readings of one kind of the last day that has any. */
const last = <T>(found: readonly T[] = [], left: readonly T[] = []): readonly T[] =>
  left.length > 0 ? left : found;

/** Judges both days. */
export function bothDays(input: {
  readonly sheet: Sheet;
  readonly found: ResistanceAssessment;
  readonly left: ResistanceAssessment;
  readonly present: ResistanceAssessment;
}): Days {
  const { sheet, found, left, present } = input;
  const { record, states } = sheet;
  const both = { record, targets: present.branches, temperatureFactor: record.temperatureFactor ?? 1 };
  const asFound = assessDay({ ...both, day: "asFound", resistances: found, state: states.asFound });
  const asLeft = assessDay({ ...both, day: "asLeft", resistances: left, state: states.asLeft });
  if (asFound === null && asLeft === null) return { asFound, asLeft, present: null };
  return {
    asFound,
    asLeft,
    present: {
      resistances: present,
      currents: last(asFound?.currents, asLeft?.currents),
      unbalance: last(asFound?.unbalance, asLeft?.unbalance),
      insulation: last(asFound?.insulation, asLeft?.insulation),
      joints: presentJoints(asFound?.joints ?? [], asLeft?.joints ?? []),
    },
  };
}

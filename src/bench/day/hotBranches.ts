/** Branches at working temperature, as found and as they will be once repaired; and the two days of a record as one. */
import type { Ohms, Open } from "../../quantity/index.ts";
import type { BranchAssessment, JointAssessment, ResistanceAssessment } from "../assessTypes.ts";
import { worstFirst } from "./joints.ts";

/** Branch values at working temperature, and what became of those nobody measured. */
export interface HotBranches {
  /** As found: `null` where the readings do not settle it. */
  readonly asFound: ReadonlyMap<string, Ohms | Open | null>;
  /** Repaired: faulty and unmeasured branches at their target; a branch without a target is missing. */
  readonly repaired: ReadonlyMap<string, Ohms>;
  /** Branches of which the repaired value is the target. */
  readonly atTarget: readonly string[];
}

/** Whether readings say anything of a branch. */
const known = ({ resistance, atLeast }: BranchAssessment): boolean => resistance !== null || atLeast !== null;

/**
 * The module as it stands: as left where that was read, else as found. Readings, leads and consistency are those of the later day with
 * ohm readings.
 */
export function presentResistances(
  asFound: ResistanceAssessment,
  asLeft: ResistanceAssessment,
): ResistanceAssessment {
  if (asLeft.outcome === "no readings") return asFound;
  const left = new Map(asLeft.branches.map((branch) => [branch.id, branch]));
  const again = new Set(asLeft.readings.map(({ from, to }) => `${from} ${to}`));
  return {
    ...asLeft,
    beyondElements: [
      ...asLeft.beyondElements,
      ...asFound.beyondElements.filter(({ from, to }) => !again.has(`${from} ${to}`)),
    ],
    branches: asFound.branches.map((before) => {
      const after = left.get(before.id) as BranchAssessment;
      return known(after) || !known(before) ? after : before;
    }),
  };
}

/** Joints as they stand: as left where they were measured again, else as found; worst first as each day has them. */
export function presentJoints(
  asFound: readonly JointAssessment[],
  asLeft: readonly JointAssessment[],
): readonly JointAssessment[] {
  const again = new Set(asLeft.map(({ id }) => id));
  return [...asFound.filter(({ id }) => !again.has(id)), ...asLeft].sort(worstFirst);
}

/** Branches of the module as it stands that the readings as left determine. */
export const readAsLeft = (asLeft: ResistanceAssessment): ReadonlySet<string> =>
  new Set(asLeft.branches.filter(known).map(({ id }) => id));

/** Cold values times the temperature factor. */
export function hotBranches(
  asFound: ResistanceAssessment,
  present: ResistanceAssessment,
  temperatureFactor: number,
): HotBranches {
  const found = new Map<string, Ohms | Open | null>();
  for (const { id, resistance, finding } of asFound.branches) {
    const value = typeof resistance === "number" ? ((resistance * temperatureFactor) as Ohms) : null;
    found.set(id, value ?? (finding === "open" ? "open" : null));
  }
  // Readings that exclude each other give no branch a value to reckon with.
  const believed = present.consistency !== "inconsistent" && present.outcome !== "contradictory";
  const repaired = new Map<string, Ohms>();
  const atTarget: string[] = [];
  for (const { id, resistance, target, finding } of present.branches) {
    const sound = believed && (finding === "sound" || finding === "undecided" || finding === "unjudged");
    const usable = typeof resistance === "number" && sound ? resistance : null;
    const value = usable ?? target;
    if (value !== null) repaired.set(id, (value * temperatureFactor) as Ohms);
    if (usable === null) atTarget.push(id);
  }
  return { asFound: found, repaired, atTarget };
}

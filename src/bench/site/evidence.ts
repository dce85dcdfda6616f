/** What the figures of an assessment amount to as evidence for one line of a list. */
import type { ChecklistItem, Figure } from "../assessmentTypes.ts";

/** A state with the evidence for it. */
export type Evidence = Pick<ChecklistItem, "state" | "evidence">;

/** The record says nothing: it is still to be done. */
export const TO_DO: Evidence = { state: "to do", evidence: null };

const listed = (labels: readonly string[]): string => labels.join(", ");

/**
 * Judged figures as evidence: one outside fails, all within pass, anything undecided or not judged leaves it to be done.
 * @param figures - figures with a limit; those without one are no evidence
 */
export function evidenceOf(figures: readonly Figure[]): Evidence {
  const of = (verdict: Figure["verdict"]): readonly string[] =>
    figures.filter((one) => one.verdict === verdict).map(({ label }) => label);
  const [outside, undecided, within] = [of("outside"), of("undecided"), of("within")];
  if (outside.length > 0) return { state: "not passed", evidence: `Outside: ${listed(outside)}.` };
  if (undecided.length > 0) return { state: "to do", evidence: `Undecided: ${listed(undecided)}.` };
  if (within.length === 0) return TO_DO;
  return { state: "done", evidence: `Within: ${listed(within)}.` };
}

/** What a branch's value amounts to: decided once, for verdict, draw and next steps alike. */
import type { BranchAssessment, BranchFinding } from "../assessTypes.ts";

/** Above this multiple of the target a lower bound counts as an open branch: no path worth the name. */
const AS_GOOD_AS_OPEN = 10;

/** A measured value above this multiple of the target is a break with a path of dirt or damp beside it. */
const BRIDGED_BREAK = 100;

/** The finding of a branch from its value, its uncertainties and its judgement. */
export function findingOf(branch: Omit<BranchAssessment, "finding" | "openElements">): BranchFinding {
  const { resistance, standardUncertainty, expandedUncertainty, atLeast, target, judgement } = branch;
  if (resistance === "open") return "open";
  if (resistance === null) {
    if (atLeast === null || target === null) return "not known";
    if (atLeast > AS_GOOD_AS_OPEN * target) return "open";
    return atLeast > target ? "high" : "not known";
  }
  if (target !== null) {
    // Far above its target and hardly seen by the readings: what is left is the noise of the others.
    const vague = (standardUncertainty as number) > 0.1 * resistance;
    if (resistance > (vague ? AS_GOOD_AS_OPEN : BRIDGED_BREAK) * target) return "open";
    // Not clear of 0 Ω by its uncertainty, where that uncertainty is small beside the target.
    const wide = expandedUncertainty as number;
    if (resistance <= wide && resistance + wide < target / 2) return "shorted";
  }
  if (judgement === null) return "unjudged";
  return judgement.verdict === "within" ? "sound" : judgement.verdict;
}

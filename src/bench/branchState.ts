/** What a branch's value amounts to in words that verdict, draw and next steps share. */
import type { BranchAssessment } from "./assessTypes.ts";

/** Above this multiple of the target a lower bound counts as an open branch: no path worth the name. */
const AS_GOOD_AS_OPEN = 10;

/** A measured value above this multiple of the target is a break with a path of dirt or damp beside it. */
const BRIDGED_BREAK = 100;

/** Open, or so high that it is as good as open. */
export function isOpen({ resistance, standardUncertainty, atLeast, target }: BranchAssessment): boolean {
  if (typeof resistance === "number") {
    // Far above its target and hardly seen by the readings: what is left is the noise of the others.
    const vague = (standardUncertainty ?? 0) > 0.1 * resistance;
    return resistance > (vague ? AS_GOOD_AS_OPEN : BRIDGED_BREAK) * target;
  }
  return resistance === "open" || (atLeast !== null && atLeast > AS_GOOD_AS_OPEN * target);
}

/** Not clear of 0 Ω by its uncertainty, where that uncertainty is small beside the target. */
export function isShorted({ resistance, expandedUncertainty, target }: BranchAssessment): boolean {
  if (resistance === null || resistance === "open" || expandedUncertainty === null) return false;
  return resistance <= expandedUncertainty && resistance + expandedUncertainty < target / 2;
}

/** At least so high that it lies above its target, though how high is not known. */
export function isHigh({ resistance, atLeast, target }: BranchAssessment): boolean {
  return resistance === null && atLeast !== null && atLeast > target;
}

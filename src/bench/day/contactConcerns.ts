/** Joints whose drop is in doubt by itself: neither proved bad nor a good one for their like to be held against. */
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { JointAssessment, NextStep } from "../assessTypes.ts";
import { contactText } from "./contactHeat.ts";
import { isWarmJoint, jointsByName } from "./joints.ts";
import { scanWords } from "./scanConcerns.ts";

const named = (joints: readonly JointAssessment[]): string => jointsByName(joints.map(({ id }) => id));

/** What a joint's rise and its drop by itself leave in doubt, in words. */
export const doubtfulJoint = (joint: JointAssessment): readonly string[] => [
  ...scanWords(joint),
  ...(isWarmJoint(joint)
    ? [`joint ${joint.id} ${contactText(joint)}, much even if its like show the same: not cleared`]
    : []),
];

/** What drops in doubt say of running, or null. */
export function contactMeanwhile({ joints }: ReadingsAssessment): string | null {
  const found = joints.filter(isWarmJoint);
  if (found.length === 0) return null;
  const [are, them] = found.length > 1 ? ["are", "them"] : ["is", "it"];
  return `Not at full load before ${named(found)} ${are} opened, or cleared by a drop read across the contact alone: like joints may be bad alike, and nothing beside ${them} shows how low a good one reads.`;
}

/** What to do about them. */
export function contactSteps(day: ReadingsAssessment | null): readonly NextStep[] {
  const found = (day?.joints ?? []).filter(isWarmJoint);
  if (found.length === 0) return [];
  return [
    {
      action: `Read ${named(found)} again with the probes on either side of one contact, no bar or lead between; where the drop stays, isolate, open the joint, look for heat marks, and remake it.`,
      reason: `${found.map((one) => `${one.id} ${contactText(one)}`).join(", ")}: from about 30 mV on the spots of a tinned contact may soften. Line currents cannot show this, and joints that are bad alike clear each other.`,
      about: found.map(({ id }) => id),
    },
  ];
}

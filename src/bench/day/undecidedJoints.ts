/** Joints whose drop stands above the comparison rule's limit, and whose meter leaves it open whether they are. */
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { JointAssessment, NextStep } from "../assessTypes.ts";
import { ratioText } from "../text/shown.ts";
import { doubtfulJoint } from "./contactConcerns.ts";
import { COMPARISON_RATIO, isBadJoint, isWarmJoint, jointsByName } from "./joints.ts";

/** Neither bad nor warm by itself, and read above the limit: what is wide is the meter, and it does not clear the joint. */
const isOpenQuestion = (joint: JointAssessment): boolean =>
  joint.comparison === "undecided" &&
  joint.ratioToBest !== null &&
  joint.ratioToBest > COMPARISON_RATIO &&
  !isBadJoint(joint) &&
  !isWarmJoint(joint);

const named = (joints: readonly JointAssessment[]): string => jointsByName(joints.map(({ id }) => id));

/** Such a joint in words. */
const undecidedJoint = (joint: JointAssessment): readonly string[] =>
  isOpenQuestion(joint)
    ? [
        `joint ${joint.id} reads ${ratioText(joint.ratioToBest as number)} times the best like joint, which this meter cannot tell from a good one: not cleared`,
      ]
    : [];

/** Why a joint that is not bad is not clear of trouble either: by its own heat, by its rise, or by its meter. */
export const notCleared = (joint: JointAssessment): readonly string[] => [
  ...doubtfulJoint(joint),
  ...undecidedJoint(joint),
];

/** What they say of running, or null. */
export function undecidedMeanwhile({ joints }: ReadingsAssessment): string | null {
  const found = joints.filter(isOpenQuestion);
  if (found.length === 0) return null;
  return `Not at full load before ${named(found)} ${found.length > 1 ? "are" : "is"} read with a finer meter or at a higher current, or opened: the drop read does not exclude a bad joint.`;
}

/** What to do about them. */
export function undecidedSteps(day: ReadingsAssessment | null): readonly NextStep[] {
  const found = (day?.joints ?? []).filter(isOpenQuestion);
  if (found.length === 0) return [];
  return [
    {
      action: `Read ${named(found)} and its like again with a finer millivoltmeter or at a higher current; dead, a four-wire meter does it too.`,
      reason: `${found.map(({ id, ratioToBest }) => `${id} reads ${ratioText(ratioToBest as number)} times the best`).join(", ")}: more than half above the lowest is to be opened, and what the meter may be wrong by reaches across that limit.`,
      about: found.map(({ id }) => id),
    },
  ];
}

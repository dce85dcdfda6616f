/** Joints whose rise asks for something though not for opening them at once: a repair that can wait, or a scan that cannot say. */
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { JointAssessment, JointRise, NextStep } from "../assessTypes.ts";
import { isBadJoint, isGoodDrop, jointsByName } from "./joints.ts";

/** A row that asks for a repair, if not at once. */
const DEFICIENT = 2;
/** The row that asks for one at once. */
const AT_ONCE = 4;

/** The rise of a joint that is not to be opened at once; a drop like that of the best joint clears the contact itself. */
const waiting = (joint: JointAssessment): JointRise | null =>
  isBadJoint(joint) || isGoodDrop(joint) ? null : joint.rise;

/** Whether a scan asks for a repair that can wait. */
export const isSuspectJoint = (joint: JointAssessment): boolean =>
  (waiting(joint)?.atLeast ?? 0) >= DEFICIENT;

/** Whether a scan cannot say if the joint is to be opened: taken at too low a load, or near an edge of the scale. */
function isUnclearScan(joint: JointAssessment): boolean {
  const rise = waiting(joint);
  return rise !== null && rise.atLeast < DEFICIENT && rise.atMost >= AT_ONCE;
}

/** A suspect joint that may be a bad one, for all that the scan says. */
const mayBeBad = (joint: JointAssessment): boolean => (waiting(joint)?.atMost ?? 0) >= AT_ONCE;

const riseWords = ({ measured, fullLoadLow, fullLoadHigh }: JointRise): string =>
  `${measured.toFixed(0)} K over the air, graded as ${fullLoadLow.toFixed(0)} to ${fullLoadHigh.toFixed(0)} K at full load`;

/** What a joint's rise asks for, in words; neither what is bad nor what is good. */
export function scanWords(joint: JointAssessment): readonly string[] {
  const rise = waiting(joint);
  if (rise === null) return [];
  if (isSuspectJoint(joint)) return [`joint ${joint.id} ${riseWords(rise)}: ${rise.action}`];
  return isUnclearScan(joint)
    ? [`joint ${joint.id} ${riseWords(rise)}, which does not say if it is bad`]
    : [];
}

const named = (joints: readonly JointAssessment[]): string => jointsByName(joints.map(({ id }) => id));

/** What rises that may hide a bad joint say of running, or null. */
export function scanBefore({ joints }: ReadingsAssessment): string | null {
  const open = joints.filter((one) => (isSuspectJoint(one) && mayBeBad(one)) || isUnclearScan(one));
  if (open.length === 0) return null;
  const them = open.length > 1 ? "them" : "it";
  return `Not at full load before ${named(open)} ${open.length > 1 ? "are" : "is"} opened, or cleared by the drop in millivolts or a scan nearer to full load: the rise seen does not exclude a bad joint, and full load only adds to ${them}.`;
}

/** What rises that ask for a repair in time say of running, or null. */
export function scanMeanwhile({ joints }: ReadingsAssessment): string | null {
  const found = joints.filter(isSuspectJoint);
  if (found.length === 0) return null;
  const they = found.length > 1 ? "they are" : "it is";
  return `Nothing read here forbids it, but ${named(found)} ${found.length > 1 ? "ask" : "asks"} for repair: scan again under load until ${they} remade, and stop if the rise grows; what is not tested has not passed.`;
}

const CURRENTS = "Line currents cannot show this.";

/** What to do about joints whose repair can wait, and about scans that cannot say. */
export function scanSteps(day: ReadingsAssessment | null): readonly NextStep[] {
  return (day?.joints ?? []).flatMap((joint): NextStep[] => {
    const [words] = scanWords(joint);
    if (words === undefined) return [];
    const reason = `${words.charAt(0).toUpperCase()}${words.slice(1)}. ${CURRENTS}`;
    const { id } = joint;
    return [
      {
        action: isSuspectJoint(joint)
          ? `Isolate, then open joint ${id}, look for heat marks and pitting, and remake it${mayBeBad(joint) ? " before full load" : " at the next stop"}.`
          : `Scan joint ${id} again nearer to full load, or read its drop in millivolts beside a like joint.`,
        reason,
        about: [id],
      },
    ];
  });
}

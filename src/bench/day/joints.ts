/** Joints that are alike, compared by their millivolt drops and by their rises. */

import { compareQuoted } from "../../decision/index.ts";
import { measuredJoint } from "../../joint/index.ts";
import {
  type Amperes,
  type ErrorCode,
  failAll,
  type Issue,
  issue,
  type Ohms,
  type Volts,
  type Watts,
} from "../../quantity/index.ts";
import type { JointAssessment, JointContact } from "../assessTypes.ts";
import { listed } from "../diagnosis/telling/words.ts";
import type { ParsedInstrument, ParsedReadings, ParsedRecord, Read } from "../record/parsed.ts";
import { contactOf, isTooHot, isWarm } from "./contactHeat.ts";
import { errorLimit } from "./instrumentLimits.ts";
import { jointRises } from "./jointRise.ts";

/** Joints by name, as a sentence has them. */
export const jointsByName = (ids: readonly string[]): string =>
  `${ids.length > 1 ? "joints" : "joint"} ${listed(ids)}`;

/** A joint that nobody measured, Ω: a sound bolted contact of this size of module. Common practice, no published source. */
export const SOUND_JOINT = 100e-6 as Ohms;

/** A joint above this multiple of the lowest like joint is to be looked at. */
export const COMPARISON_RATIO = 1.5;

const RULE =
  "More than 50 % above the lowest like joint: investigate (comparison rule of acceptance-testing practice; edition and table " +
  "not verified here, so treat it as common practice). It compares joints of one kind at their own currents and says nothing of a " +
  "set that is bad alike: look at the heat too. The maker's limit, the local code and a licensed electrician decide.";

interface Measured {
  readonly id: string;
  readonly resistance: Ohms;
  readonly halfWidth: Ohms;
  readonly power: Watts;
  readonly contact: JointContact | null;
  /** Lowest and highest resistance that drop and current allow within their half-widths, Ω. */
  readonly low: number;
  readonly high: number;
}

type Joints = NonNullable<ParsedReadings["joints"]>;
type Instruments = NonNullable<ParsedRecord["instruments"]>;

/** Half-width of a reading: the maker's statement, or one unit of the last digit where the instrument is not named. */
const halfWidthOf = <Q>(read: Read<Q>, instrument: ParsedInstrument<Q> | undefined): number =>
  errorLimit(read, instrument) ?? read.resolution ?? 0;

function measuredJoints(joints: Joints, { millivoltmeter, clamp }: Instruments): readonly Measured[] {
  return joints.flatMap(({ id, drop, current }) => {
    if (drop === undefined || current === undefined) return [];
    const dDrop = halfWidthOf(drop, millivoltmeter);
    const dCurrent = Math.min(halfWidthOf(current, clamp), current.value / 2);
    const { resistance, halfWidth, power } = measuredJoint({
      drop: drop.value,
      current: current.value,
      dropHalfWidth: dDrop as Volts,
      currentHalfWidth: dCurrent as Amperes,
    });
    // The interval is wider upwards than downwards: a current read too high counts for more than one read too low.
    const low = Math.max(0, drop.value - dDrop) / (current.value + dCurrent);
    const contact = contactOf(drop.value, dDrop);
    return [{ id, resistance, halfWidth, power, contact, low, high: resistance + halfWidth }];
  });
}

const isAbove = (ratio: number): boolean => compareQuoted({ left: ratio, right: COMPARISON_RATIO }) > 0;

/** The joints that can be compared: one that drops nothing at its current was not read across its contact. */
const comparable = (measured: readonly Measured[]): readonly Measured[] =>
  measured.filter(({ resistance }) => resistance > 0);

function comparisonOf(joint: Measured, best: Measured, count: number): JointAssessment["comparison"] {
  if (count === 1 || joint.resistance === 0) return "nothing to compare with";
  if (joint.id === best.id) return "like the best";
  // The interval of the ratio is not symmetric: each end is held against the limit by itself.
  const widest = best.low > 0 ? joint.high / best.low : Number.MAX_VALUE;
  if (!isAbove(widest)) return "like the best";
  return isAbove(joint.low / best.high) ? "investigate" : "undecided";
}

/** What is wrong with the joints of one day as written: names used twice, nothing measured, a drop without its current. */
export function checkJoints(joints: Joints, path: string): void {
  const seen = new Set<string>();
  const found: Issue[] = [];
  joints.forEach(({ id, drop, current, rise }, i) => {
    const refuse = (code: ErrorCode, field: string, expected: string, received?: unknown): void => {
      found.push(issue({ code, path: `${path}.${i}.${field}`, expected, received }));
    };
    if (seen.has(id)) refuse("duplicate", "id", "a name used once", id);
    seen.add(id);
    if (drop === undefined && rise === undefined)
      refuse("missing", "drop", "a drop with its current, or a rise");
    if (drop !== undefined && current === undefined)
      refuse("missing", "current", "the current at the same time");
  });
  failAll(found);
}

/** A thermal scan that asks for more than watching. */
const HOT = 3;

/** Whether a joint is to be opened: by its drop beside like joints or by itself, or by its rise. */
export const isBadJoint = (joint: JointAssessment): boolean =>
  joint.comparison === "investigate" || isTooHot(joint) || (joint.rise !== null && joint.rise.atLeast >= HOT);

/** Whether a joint's drop shows it good: like the best, and no more than any contact stands. */
export const isGoodDrop = (joint: JointAssessment): boolean =>
  joint.comparison === "like the best" && !isTooHot(joint) && !isWarm(joint);

/** Whether readings show a joint good: by one verdict at the least, and by neither bad. */
export const isGoodJoint = (joint: JointAssessment): boolean =>
  !isBadJoint(joint) && !isWarm(joint) && (isGoodDrop(joint) || joint.rise?.level === 0);

/** Joints whose drop alone leaves them in doubt, and nothing makes bad. */
export const isWarmJoint = (joint: JointAssessment): boolean => isWarm(joint) && !isBadJoint(joint);

/** Whether nothing of its own judges a joint: no like joint beside its drop, and no rise. */
export const isUnjudged = (joint: JointAssessment): boolean =>
  joint.comparison === "nothing to compare with" &&
  joint.resistance !== null &&
  joint.rise === null &&
  !isTooHot(joint) &&
  !isWarm(joint);

/** Order of joints: those to be opened, then by resistance, then by rise. */
export function worstFirst(a: JointAssessment, b: JointAssessment): number {
  return (
    Number(isBadJoint(b)) - Number(isBadJoint(a)) ||
    (b.resistance ?? -1) - (a.resistance ?? -1) ||
    (b.rise?.measured ?? -1) - (a.rise?.measured ?? -1) ||
    (a.id < b.id ? -1 : 1)
  );
}

/**
 * R = U/I, P = U·I, ratio to the best, severity of the rise; worst first.
 * @param earlier - joints of an earlier day: those not read again are compared with, too
 */
export function assessJoints(
  joints: Joints,
  instruments: Instruments,
  earlier: Joints = [],
): readonly JointAssessment[] {
  const measured = new Map(measuredJoints(joints, instruments).map((one) => [one.id, one]));
  const rises = jointRises(joints);
  const again = new Set(joints.map(({ id }) => id));
  const besides = measuredJoints(
    earlier.filter(({ id }) => !again.has(id)),
    instruments,
  );
  const like = comparable([...measured.values(), ...besides]);
  const best = like.reduce<Measured | null>(
    (least, one) => (least === null || one.resistance < least.resistance ? one : least),
    null,
  );
  return joints
    .map(({ id }): JointAssessment => {
      const joint = measured.get(id);
      const rise = rises.get(id) ?? null;
      if (joint === undefined) {
        const none = {
          resistance: null,
          halfWidth: null,
          power: null,
          ratioToBest: null,
          contact: null,
        } as const;
        return { id, ...none, comparison: "nothing to compare with", rule: RULE, rise };
      }
      return {
        id,
        resistance: joint.resistance,
        halfWidth: joint.halfWidth,
        power: joint.power,
        ratioToBest: best === null || joint.resistance === 0 ? null : joint.resistance / best.resistance,
        comparison: best === null ? "nothing to compare with" : comparisonOf(joint, best, like.length),
        rule: RULE,
        contact: joint.contact,
        rise,
      };
    })
    .sort(worstFirst);
}

/** Joints that nothing judges, and amps that speak against a module by themselves, whatever its ohms say. */
import { formatQuantity } from "../../quantity/index.ts";
import type { Figure, ReadingsAssessment } from "../assessmentTypes.ts";
import type { JointAssessment, NextStep } from "../assessTypes.ts";
import { listed } from "../diagnosis/telling/words.ts";
import { isUnjudged, SOUND_JOINT } from "./joints.ts";

/** Joints whose drop stands alone and that no diagnosis weighed: nobody has judged them. */
export const unjudgedJoints = (
  { joints }: Pick<ReadingsAssessment, "joints">,
  weighed: ReadonlySet<string>,
): readonly string[] =>
  joints.filter((joint) => isUnjudged(joint) && !weighed.has(joint.id)).map(({ id }) => id);

/** What would judge a joint that nothing judges. */
function unjudgedJointStep({ id, power, halfWidth }: JointAssessment): NextStep {
  if (power === 0) {
    // What would show a sound contact and shows nothing is a slip.
    const seen = (halfWidth ?? 0) < SOUND_JOINT;
    return {
      action: seen
        ? `Read the drop across joint ${id} again: one probe on each side of the contact, the meter on its millivolts.`
        : `Read the drop across joint ${id} again with more current through it, or dead with a four-wire meter.`,
      reason: seen
        ? `${id} could not be judged: no drop at all, where current flows, was not read across a contact.`
        : `${id} could not be judged: at so small a current this meter shows nothing of a joint, good or bad.`,
      about: [id],
    };
  }
  const heat =
    power === null
      ? ""
      : `, though ${formatQuantity(power, { unit: "W", significantDigits: 3 })} go into that contact`;
  return {
    action: `Read the drop of joints like ${id} at their own currents, or the rise of ${id} over the air at a known load; drawn in a module with a nameplate it is weighed with the other readings, too.`,
    reason: `${id} could not be judged: one drop alone shows nothing to compare with${heat}.`,
    about: [id],
  };
}

/** What would judge them. */
export function unjudgedJointSteps(
  day: ReadingsAssessment | null,
  weighed: ReadonlySet<string>,
): readonly NextStep[] {
  const alone = day === null ? [] : unjudgedJoints(day, weighed);
  return (day?.joints ?? []).filter(({ id }) => alone.includes(id)).map(unjudgedJointStep);
}

/** Clamp readings outside those of a sound module. */
export const oddAmps = ({ currents }: ReadingsAssessment): readonly Figure[] =>
  currents.filter(({ verdict, unit }) => verdict === "outside" && unit === "A");

/** So far above a sound module's highest nothing but a wrong link, a wrong element or a short is left. Common practice, no published source. */
const FAR_ABOVE = 1.5;

/** Clamp readings so far above those of a sound module that it is not run to find out why. */
export const excessAmps = (day: ReadingsAssessment): readonly Figure[] =>
  oddAmps(day).filter(
    ({ value, limit }) => limit !== null && limit.high !== null && Number(value) > FAR_ABOVE * limit.high,
  );

/** What forbids voltage then. */
export const excessWords = (excess: readonly Figure[]): readonly string[] =>
  excess.length === 0 ? [] : [`far more amps than a sound module takes: ${ampsWords(excess)}`];

/** At most so many amps are named. */
const NAMED = 3;

/** Odd amps in words. */
export function ampsWords(odd: readonly Figure[]): string {
  const named = odd.slice(0, NAMED).map(({ label, value }) => `${label} ${Number(value).toFixed(1)} A`);
  const more = odd.length - named.length;
  return `${listed(named)}${more > 0 ? ` and ${more} more` : ""}`;
}

/** What to do about amps that nothing else explains. */
export function ampsSteps(day: ReadingsAssessment | null, explained: boolean): readonly NextStep[] {
  const odd = day === null || explained ? [] : oddAmps(day);
  if (day === null || odd.length === 0) return [];
  if (excessAmps(day).length > 0) {
    return [
      {
        action:
          "Do not energise. Isolate, then compare every link with the drawing, a star linked as a delta takes three times its amps, and read the branches alone; then the voltage that it is on.",
        reason: `Far above those of a sound module: ${ampsWords(excessAmps(day))}.`,
        about: [],
      },
    ];
  }
  return [
    {
      action:
        "Before accepting it find why the amps differ: full conduction of the controller, the voltages at the same time, every link as drawn; then read the branches alone, and again while warm: a break may close when cold.",
      reason: `Outside those of a sound module, and no other reading says why: ${ampsWords(odd)}.`,
      about: [],
    },
  ];
}

/** Joints that nothing judges, and amps that speak against a module by themselves, whatever its ohms say. */
import { formatQuantity } from "../../quantity/index.ts";
import type { Figure, ReadingsAssessment } from "../assessmentTypes.ts";
import type { NextStep } from "../assessTypes.ts";
import { listed } from "../diagnosis/words.ts";
import { isUnjudged } from "./joints.ts";

/** Joints whose drop stands alone and that no diagnosis weighed: nobody has judged them. */
export const unjudgedJoints = (
  { joints }: Pick<ReadingsAssessment, "joints">,
  weighed: ReadonlySet<string>,
): readonly string[] =>
  joints.filter((joint) => isUnjudged(joint) && !weighed.has(joint.id)).map(({ id }) => id);

/** What would judge them. */
export function unjudgedJointSteps(
  day: ReadingsAssessment | null,
  weighed: ReadonlySet<string>,
): readonly NextStep[] {
  const alone = day === null ? [] : unjudgedJoints(day, weighed);
  return (day?.joints ?? [])
    .filter(({ id }) => alone.includes(id))
    .map(({ id, power }) => ({
      action: `Read the drop of joints like ${id} at their own currents, or the rise of ${id} over the air at a known load; drawn in a module with a nameplate it is weighed with the other readings, too.`,
      reason: `${id} could not be judged: one drop alone shows nothing to compare with${
        power === null
          ? ""
          : `, though ${formatQuantity(power, { unit: "W", significantDigits: 3 })} go into that contact`
      }.`,
      about: [id],
    }));
}

/** Clamp readings outside those of a sound module. */
export const oddAmps = ({ currents }: ReadingsAssessment): readonly Figure[] =>
  currents.filter(({ verdict, unit }) => verdict === "outside" && unit === "A");

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
  if (odd.length === 0) return [];
  return [
    {
      action:
        "Before accepting it find why the amps differ: full conduction of the controller, the voltages at the same time, every link as drawn; then read the branches alone, and again while warm: a break may close when cold.",
      reason: `Outside those of a sound module, and no other reading says why: ${ampsWords(odd)}.`,
      about: [],
    },
  ];
}

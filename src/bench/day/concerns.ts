/** Insulation and amps that speak against a module by themselves, whatever its ohms say. */
import { formatQuantity, type Ohms } from "../../quantity/index.ts";
import type { Figure, ReadingsAssessment } from "../assessmentTypes.ts";
import type { NextStep } from "../assessTypes.ts";
import { listed } from "../diagnosis/words.ts";
import { isUnjudged } from "./joints.ts";

/**
 * Limits below which equipment is not connected to a supply; the others in use ask for more of a new or a stored element, and are shown
 * without a step of their own.
 */
const LEAST: readonly string[] = ["IEC 60364-6", "IEC 60204-1"];

/** Insulation readings below such a limit, one for each node, with the limits missed. */
export function poorInsulation({
  insulation,
}: ReadingsAssessment): readonly { readonly at: string; readonly words: string }[] {
  const found = new Map<string, { readonly figure: Figure; readonly rules: string[] }>();
  for (const figure of insulation) {
    const [at, rule] = splitAtLast(figure.label);
    if (figure.verdict !== "outside" || !LEAST.includes(rule)) continue;
    const known = found.get(at);
    if (known === undefined) found.set(at, { figure, rules: [rule] });
    else known.rules.push(rule);
  }
  return [...found].map(([at, { figure, rules }]) => {
    const reads = formatQuantity(figure.value as Ohms, {
      unit: "Ω",
      significantDigits: 3,
      engineering: true,
    });
    return {
      at,
      words: `${at} ${reads}, below the least that ${listed(rules)} ${rules.length > 1 ? "ask" : "asks"} for`,
    };
  });
}

/** A label is what was read, then the rule. */
function splitAtLast(label: string): readonly [string, string] {
  const at = label.lastIndexOf(", ");
  return at < 0 ? [label, ""] : [label.slice(0, at), label.slice(at + 2)];
}

/** What to do about poor insulation. */
export function insulationSteps(day: ReadingsAssessment | null): readonly NextStep[] {
  return (day === null ? [] : poorInsulation(day)).map(({ at, words }) => ({
    action:
      "Do not energise. Isolate, part the banks and read each to the frame, then each element at both ends lifted: dry what is damp as its maker allows, renew what stays low.",
    reason: `${words.charAt(0).toUpperCase()}${words.slice(1)}. Damp magnesia and dirt read low when cold, and so does a coil that touches.`,
    about: [at.replace(/^insulation at /, "")],
  }));
}

/** Joints whose drop stands alone and that no diagnosis weighed: nobody has judged them. */
export const unjudgedJoints = (
  { joints }: ReadingsAssessment,
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

/** Parts to bring: elements, nuts and washers of joints, hardware marked to be renewed, bars. */

import { allOpen } from "../advice/branchSteps.ts";
import { type JointsNamed, NO_JOINTS, tellingBranches } from "../advice/diagnosisVerdict.ts";
import type { CutLine, PartLine, ReadingsAssessment } from "../assessmentTypes.ts";
import type { BranchAssessment, JointAssessment } from "../assessTypes.ts";
import { isTooHot } from "../day/contactHeat.ts";
import { isBadJoint, isGoodJoint } from "../day/joints.ts";
import { isSuspectJoint } from "../day/scanConcerns.ts";
import { placeWords } from "../diagnosis/telling/words.ts";
import type { ParsedRecord } from "../record/parsed.ts";

type Bank = ParsedRecord["wiring"]["banks"][number];

/** The bank of a branch: names are bank-branch, and the branch itself has no hyphen. */
const bankOf = (banks: readonly Bank[], branch: string): Bank =>
  banks.find(({ id }) => id === branch.slice(0, branch.lastIndexOf("-"))) as Bank;

function elementLine(branch: BranchAssessment, banks: readonly Bank[]): readonly PartLine[] {
  const { id, finding, openElements } = branch;
  const { elementsInParallel: parallel = 1, elementsInSeries: series = 1 } = bankOf(banks, id);
  const line = (quantity: number, reason: string): PartLine => ({
    part: `element for ${id}`,
    quantity,
    reason,
  });
  const one = parallel * series === 1;
  switch (finding) {
    case "open":
      return [
        line(
          parallel,
          one
            ? `${id} reads open; open it up first, for a joint or a jumper bar may be what is broken`
            : `${id} reads open: at least one element in each of ${parallel} string(s), unless what they share is broken`,
        ),
      ];
    case "shorted":
      return [
        line(
          series,
          `${id} reads as good as 0 Ω: ${one ? "its element" : "at least the elements of one string"}`,
        ),
      ];
    case "high":
      return [line(1, `${id} is high, how far is not known: at least one element or a joint`)];
    case "outside":
      return openElements === null
        ? [
            line(
              1,
              `${id} is outside the tolerance: read its elements one by one, at least one of them or a joint`,
            ),
          ]
        : [line(openElements, `${id} fits ${openElements} of its parallel elements open`)];
    default:
      return [];
  }
}

/** What a joint that stands out needs when it is remade. */
function jointLine(joint: JointAssessment): readonly PartLine[] {
  if (!isBadJoint(joint) && !isSuspectJoint(joint)) return [];
  const { id, comparison, rise } = joint;
  const why = [
    ...(comparison === "investigate" ? ["stands out among like joints"] : []),
    ...(isTooHot(joint) ? ["drops more than any contact stands"] : []),
    ...(rise !== null && rise.atLeast > 0
      ? [`shows a rise of at least level ${rise.atLeast} of the scale`]
      : []),
  ];
  return [
    {
      part: `nuts and washers for joint ${id}, and a bar end where it is burnt or pitted`,
      quantity: 1,
      reason: `${id} ${why.join(" and ")}`,
    },
  ];
}

/** What a joint needs that the diagnosis settles on: no reading of its own says so. */
const namedJointLine = (place: string): PartLine => ({
  part: `nuts and washers for ${placeWords(place)}, and a lug or a bar end where it is burnt or pitted`,
  quantity: 1,
  reason: "the readings together point to that joint before any element behind it",
});

/**
 * The list of parts, elements first. Quantities are what the readings prove at the least.
 * @param input.record - wiring and hardware
 * @param input.asFound - readings before the repair; `null` without them
 * @param input.asLeft - readings after the repair: what they show to be sound needs no part any more; `null` without them
 * @param input.cuts - bars to cut
 * @param input.joints - joints that the diagnosis settles on: their own hardware, and no element behind them that shows no more than they
 * @param input.misread - branches whose readings, as drawn, say nothing of their elements: no parts
 * @param input.readAgain - whether readings look odd and are to be taken again before any element is judged: no elements yet
 */
export function partsList(input: {
  readonly record: Pick<ParsedRecord, "wiring" | "hardware">;
  readonly asFound: ReadingsAssessment | null;
  readonly asLeft?: ReadingsAssessment | null;
  readonly cuts: readonly CutLine[];
  readonly joints?: JointsNamed;
  readonly misread?: ReadonlySet<string>;
  readonly readAgain?: boolean;
}): readonly PartLine[] {
  const { record, asFound, asLeft = null, cuts, joints = NO_JOINTS, misread = new Set(), readAgain } = input;
  const { banks } = record.wiring;
  const sound = new Set([
    ...(asLeft?.resistances.branches ?? []).flatMap(({ id, finding }) => (finding === "sound" ? [id] : [])),
    ...(asLeft?.joints ?? []).flatMap((joint) => (isGoodJoint(joint) ? [joint.id] : [])),
  ]);
  // What was read again stands as read again; what broke only then is on the list too.
  const open = <T extends { readonly id: string }>(found: readonly T[], left: readonly T[]): readonly T[] => {
    const again = new Map(left.map((one) => [one.id, one]));
    const before = new Set(found.map(({ id }) => id));
    return [
      ...found.filter(({ id }) => !sound.has(id)).map((one) => again.get(one.id) ?? one),
      ...left.filter(({ id }) => !before.has(id)),
    ];
  };
  const renewed = (record.hardware ?? []).filter(({ renew }) => renew === true);
  const branches = asFound?.resistances.branches ?? [];
  // No path anywhere is the meter or a shared link before it is every element.
  const renewable =
    allOpen(branches) || readAgain === true
      ? []
      : (asFound === null ? [] : tellingBranches(asFound.resistances, misread)).filter(
          ({ id, finding }) => !(joints.behind.has(id) && (finding === "open" || finding === "high")),
        );
  const bad = new Set(
    (asFound?.joints ?? []).filter((one) => isBadJoint(one) || isSuspectJoint(one)).map(({ id }) => id),
  );
  const left = asLeft?.resistances.branches ?? [];
  const faultyLeft = allOpen(left) ? [] : left.filter((one) => elementLine(one, banks).length > 0);
  const badLeft = (asLeft?.joints ?? []).filter((one) => jointLine(one).length > 0);
  const named = joints.places.filter((place) => !bad.has(place) && !sound.has(place));
  return [
    ...open(renewable, faultyLeft).flatMap((branch) => elementLine(branch, banks)),
    ...open(asFound?.joints ?? [], badLeft).flatMap(jointLine),
    ...named.map(namedJointLine),
    ...renewed.map(
      ({ id, thread, count = 1 }): PartLine => ({
        part: `${thread} hardware, ${id}`,
        quantity: count,
        reason: "marked to be renewed in the record",
      }),
    ),
    ...cuts.map(
      ({ id, count, length }): PartLine => ({
        part: `jumper bar, ${id}`,
        quantity: count,
        reason: `to be cut from flat copper, ${Number((length * 1000).toPrecision(4))} mm each`,
      }),
    ),
  ];
}

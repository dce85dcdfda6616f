/** What to do about the branches, by their findings; what several have in common comes before each alone. */
import { formatQuantity, type Ohms } from "../../quantity/index.ts";
import type { BranchAssessment, NextStep, ResistanceAssessment } from "../assessTypes.ts";
import { isWide } from "../day/wideLimits.ts";
import { tellingBranches } from "./diagnosisVerdict.ts";

const ohmText = (value: number): string =>
  formatQuantity(value as Ohms, { unit: "Ω", significantDigits: 3, engineering: value >= 1e3 });

/** Part of its target below which the least that a branch reads says nothing: it is seen with others only, and no finer meter parts them. */
const TELLS_FROM = 0.05;

/** Whether the readings hold a branch only together with others. */
export const isSeenWithOthers = ({ finding, resistance, atLeast, target }: BranchAssessment): boolean =>
  finding === "not known" &&
  resistance === null &&
  (atLeast === null || (target !== null && atLeast < TELLS_FROM * target));

/** What belongs there, where anyone knows. */
const wanted = ({ target }: BranchAssessment): string =>
  target === null ? "" : ` where ${ohmText(target)} belong`;
/** What a settled diagnosis says that spares a branch its own steps. */
export interface KnownFaults {
  /** Branches whose readings, as drawn, say nothing of their elements. */
  readonly misread: ReadonlySet<string>;
  /** Branches whose open elements it names. */
  readonly openElements: ReadonlySet<string>;
  /** Branches read on their own studs: no link or joint is in what they read. */
  readonly onStuds: ReadonlySet<string>;
}

/** Whether no branch shows a path: that speaks of the meter or of what the readings share. */
export const allOpen = (branches: readonly BranchAssessment[]): boolean =>
  branches.length > 1 && branches.every(({ finding }) => finding === "open");

const LINES = ["L1", "L2", "L3"] as const;

/** Bank of a branch and whether it lands on a line: names are bank-branch, the branch made of the lines it lands on. */
const landsOn = (id: string, line: string): boolean => id.slice(id.lastIndexOf("-") + 1).includes(line);

/** One break at a line's lug, joint or bar opens every branch on it: likelier than as many broken elements. */
function commonCause(
  open: readonly BranchAssessment[],
  all: readonly BranchAssessment[],
  named: ReadonlySet<string>,
): NextStep[] {
  if (open.length < 2) return [];
  if (allOpen(all)) {
    return [
      {
        action:
          "Check the meter on a known resistor, its leads, and the links the readings pass through, before any element; then read L1 to L2, L2 to L3 and L3 to L1.",
        reason: "Every branch reads open: one break in what they share is likelier than all of them.",
        about: open.map(({ id }) => id),
      },
    ];
  }
  return LINES.flatMap((line): NextStep[] => {
    const on = all.filter(({ id }) => landsOn(id, line));
    if (on.length < 2 || !on.every((branch) => open.includes(branch))) return [];
    if (on.every(({ id }) => named.has(id))) return [];
    return [
      {
        action: `Isolate, then check the lug, the joint and the jumper bar of ${line} before the elements on it.`,
        reason: `Every branch on ${line} reads open: one break there is likelier than ${on.length} broken branches.`,
        about: on.map(({ id }) => id),
      },
    ];
  });
}

function openStep(
  open: readonly BranchAssessment[],
  sawOpen: boolean,
  onStuds: ReadonlySet<string>,
): NextStep[] {
  if (open.length === 0) return [];
  const names = open.map(({ id }) => id).join(", ");
  const [only] = open;
  const bounded = (one: BranchAssessment): string => {
    const value = typeof one.resistance === "number" ? one.resistance : one.atLeast;
    if (value === null)
      return sawOpen ? `${one.id} reads open.` : `The readings show no path through ${one.id}.`;
    const least = one.atLeast === null ? "" : "at least ";
    return `${one.id} reads ${least}${ohmText(value)}${wanted(one)}.`;
  };
  const reason =
    open.length === 1 && only !== undefined
      ? bounded(only)
      : `${names} ${sawOpen ? "read open" : "show no path in these readings"}.`;
  const which = open.length === 1 ? `branch ${names}` : `branches ${names}`;
  return [
    {
      action: open.every(({ id }) => onStuds.has(id))
        ? `Isolate, then open up ${which} and renew what is broken in ${open.length === 1 ? "it" : "them"}: open on ${open.length === 1 ? "its" : "their"} own studs, with no link or joint in the reading.`
        : `Isolate, then open up ${which}: find whether a coil, its stud joint or its jumper bar is broken, and renew it.`,
      reason,
      about: open.map(({ id }) => id),
    },
  ];
}

const percentOf = (deviation: number): string => {
  const shown = (Math.abs(deviation) * 100).toFixed(1);
  return shown === "0.0" ? "0.0 %" : `${deviation < 0 ? "−" : "+"}${shown} %`;
};

function outsideStep(
  { id, deviation, openElements, judgement }: BranchAssessment,
  onStuds: ReadonlySet<string>,
): NextStep {
  const off = `${id} is ${percentOf(deviation as number)} from target`;
  const limits =
    judgement !== null && isWide(judgement.rule)
      ? "farther than making, heat and the meter explain; the record gives no tolerance"
      : "outside the tolerance given";
  if (openElements !== null) {
    return {
      action: `Isolate, lift the links of branch ${id} and read its elements one by one.`,
      reason: `${off}, which fits ${openElements} of its parallel elements open.`,
      about: [id],
    };
  }
  if ((deviation as number) > 0 && onStuds.has(id)) {
    return {
      action: `Isolate, then read the elements of branch ${id} one by one and renew what reads high: on its own studs no link or joint is in the reading.`,
      reason: `${off}, ${limits}.`,
      about: [id],
    };
  }
  return {
    action:
      (deviation as number) > 0
        ? `Isolate, lift the links of branch ${id}, then read its elements one by one and its joints with a four-wire meter: a bad joint in it must not be found by energising.`
        : `Isolate, then look for touching turns or a wrong element in branch ${id}, and for a path beside it that is not on the drawing.`,
    reason: `${off}, ${limits}.`,
    about: [id],
  };
}

function ownStep(branch: BranchAssessment, onStuds: ReadonlySet<string>): NextStep[] {
  const { id, finding, atLeast, deviation } = branch;
  switch (finding) {
    case "shorted":
      return [
        {
          action: `Do not energise. Find what bridges branch ${id}: a fallen coil, a bar across two studs, a wrong link.`,
          reason: `${id} reads as good as nothing${wanted(branch)}.`,
          about: [id],
        },
      ];
    case "outside":
      return [outsideStep(branch, onStuds)];
    case "high":
      return [
        {
          action: `Isolate, lift the links of branch ${id} and read it alone: it is high or open.`,
          reason: `${id} reads at least ${ohmText(atLeast as number)}${wanted(branch)}; these readings do not say more.`,
          about: [id],
        },
      ];
    case "undecided":
      return [
        {
          action: `Read ${id} again with a four-wire meter, or one of finer resolution.`,
          reason: `${id} is ${percentOf(deviation as number)} from target and this meter cannot say on which side of the tolerance it lies.`,
          about: [id],
        },
      ];
    // Not known.
    default:
      return atLeast === null || isSeenWithOthers(branch)
        ? []
        : [
            {
              action: `Read ${id} again with a four-wire meter, or one of finer resolution.`,
              reason: `${id} reads at least ${ohmText(atLeast)}${wanted(branch)}; this meter does not say more.`,
              about: [id],
            },
          ];
  }
}

/** A value that nobody has judged is not a sound one. */
function unjudgedStep(unjudged: readonly BranchAssessment[]): NextStep[] {
  if (unjudged.length === 0) return [];
  return [
    {
      action: "Write down the tolerance that the maker or the shop allows, and assess again.",
      reason: `Without one nobody has said that ${unjudged.map(({ id }) => id).join(", ")} are sound, whatever they read.`,
      about: unjudged.map(({ id }) => id),
    },
  ];
}

/** Steps about the branches: dangerous ones first, then open, faulty and merely unclear ones. */
export function branchSteps(
  resistances: ResistanceAssessment,
  known: KnownFaults,
): {
  readonly faulty: readonly NextStep[];
  readonly unclear: readonly NextStep[];
} {
  const { readings, consistency } = resistances;
  const branches = tellingBranches(resistances, known.misread);
  const by = (...findings: readonly BranchAssessment["finding"][]): BranchAssessment[] =>
    branches.filter(({ finding }) => findings.includes(finding));
  const open = by("open");
  const own = (branch: BranchAssessment): NextStep[] => ownStep(branch, known.onStuds);
  const sawOpen = readings.some(({ reads }) => reads === "open");
  return {
    faulty: [
      ...by("shorted").flatMap(own),
      ...commonCause(open, branches, known.openElements),
      // Where nothing shows a path there is no branch to open up yet.
      ...(allOpen(branches) ? [] : openStep(open, sawOpen, known.onStuds)),
      ...by("outside", "high").flatMap(own),
    ],
    unclear: [
      // Readings that contradict each other are repeated first: no finer meter decides between them.
      ...by(...(consistency === "inconsistent" ? [] : (["undecided"] as const)), "not known").flatMap(own),
      ...unjudgedStep(by("unjudged")),
    ],
  };
}

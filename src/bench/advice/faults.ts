/** Which faults explain the readings as found, and what follows from that. */
import type { HeatingModule } from "../../circuit/index.ts";
import type { Amperes } from "../../quantity/index.ts";
import type { BranchAssessment, NextStep } from "../assessTypes.ts";
import { supplyOf } from "../day/assessDay.ts";
import type { BankTargets } from "../day/targets.ts";
import { diagnose } from "../diagnosis/diagnose.ts";
import { nextMeasurements } from "../diagnosis/nextMeasurements.ts";
import type { DiagnosedFault } from "../diagnosis/question/diagnosedFault.ts";
import type { Diagnosis, DiagnosisInput, Explanation } from "../diagnosis/question/types.ts";
import { type ForbidsVoltage, forbidsVoltage } from "../diagnosis/telling/forbidsVoltage.ts";
import { listed, placeWords, terminalWords } from "../diagnosis/telling/words.ts";
import type { ParsedRecord } from "../record/parsed.ts";
import { type DiagnosisQuestion, diagnosisQuestion } from "./askDiagnosis.ts";
import { allOpen } from "./branchSteps.ts";
import { diagnosisSteps } from "./diagnosisSteps.ts";
import {
  type DiagnosisVerdict,
  diagnosisVerdict,
  drawingVoid,
  held,
  type JointsNamed,
  jointsAmong,
  jointsNamed,
  misreadBranches,
  NO_JOINTS,
} from "./diagnosisVerdict.ts";
import { oddDrops, oddReadings, withPlate } from "./oddReadings.ts";
import { diagnosedRunning, elementsOpen, isFewAmps } from "./runningDiagnosed.ts";

/** The diagnosis and its consequences. */
export interface AssessedFaults {
  readonly diagnosis: Diagnosis | null;
  readonly verdict: DiagnosisVerdict | null;
  readonly steps: readonly NextStep[];
  /** Faults that forbid voltage, in words. */
  readonly forbidding: readonly string[];
  /** What the diagnosis says of running on, where it holds something to be wrong that nobody has put right since. */
  readonly running: string | null;
  /** Elements that are settled on as open, where nothing else is; of like elements of a branch the first stands for all. */
  readonly elementsOpen: readonly string[];
  /** What a joint that is settled on asks for before any voltage; null without one. */
  readonly jointFirst: string | null;
  /** The same of joints of which it is one for certain. */
  readonly jointAmong: string | null;
  /** Branches whose readings, as drawn, say nothing of their elements. */
  readonly misread: ReadonlySet<string>;
  /** Whether links against the drawing are certain. */
  readonly drawingVoid: boolean;
  /** What a joint settled on, open or bad, has behind it. */
  readonly joints: JointsNamed;
  /** Joints whose drops were weighed with the other readings. */
  readonly weighedJoints: ReadonlySet<string>;
  /** Readings that look odd in themselves and were not taken again. */
  readonly odd: readonly string[];
  /** What was left out, and why. */
  readonly leftOut: readonly string[];
}

/** Elements up to which the next measurement is looked for: beyond, it takes longer than anyone waits for a sheet. */
const FEW = 24;

function proposalsFor(asked: DiagnosisInput, module: HeatingModule) {
  return module.elements.length <= FEW ? nextMeasurements(asked) : [];
}

/** What a branch on the wrong line does to the others: a floating star point moves, a delta's sides and a star's on the neutral keep their voltage. */
function landedWords(branch: string, { elements, starPoints, plan }: HeatingModule): string {
  const own = elements.find((one) => `${one.bank}-${one.branch}` === branch);
  const star = own !== undefined && own.bank in starPoints;
  if (star && plan.neutral !== "connected") return "which loads others beyond their voltage";
  return `which loads ${star ? "one line and the neutral" : "two lines"} beyond their amps`;
}

/** Why a fault forbids voltage, in words; none where it does not. */
function forbids(fault: DiagnosedFault, module: HeatingModule, ohmsRead: boolean): string[] {
  return forbidsVoltage(fault) ? [reasonOf(fault, module, ohmsRead)] : [];
}

function reasonOf(fault: ForbidsVoltage, module: HeatingModule, ohmsRead: boolean): string {
  switch (fault.kind) {
    case "earth fault":
      return `element ${fault.element} is earthed`;
    case "earthed terminal":
      return `${terminalWords(fault.terminal)} is earthed`;
    case "other rating":
      return ohmsRead
        ? "all elements are of another value than the plate asks for"
        : "its amps are far beyond the plate's";
    case "feed connected":
      return "ohms were read with the feed connected, and say nothing of the elements";
    case "mis-landed":
      return `branch ${fault.branch} is on ${fault.on} instead of ${fault.drawn}, ${landedWords(fault.branch, module)}`;
    case "mis-linked":
      return fault.as === "neutral"
        ? "the star points are on the neutral or the frame, which then carries current"
        : `bank ${fault.bank} linked as delta gives its elements three times their power`;
  }
}

/** Joints of which one is bad for certain: which it is, is found on the dead module. */
function jointAmong(verdict: DiagnosisVerdict): string | null {
  const places = jointsAmong(verdict).map(placeWords);
  return places.length === 0
    ? null
    : `Not before ${listed(places, "or")}, whichever is bad, is opened and remade: a loose or burnt end under voltage arcs.`;
}

/** Whether all that is held is joints, and each of them was read good since: they are history as well. */
function remade(verdict: DiagnosisVerdict, goodJoints: ReadonlySet<string>): boolean {
  const faults = held(verdict).flatMap((one) => one.faults);
  return (
    faults.length > 0 &&
    faults.every(
      (fault) => (fault.kind === "joint" || fault.kind === "open joint") && goodJoints.has(fault.place),
    )
  );
}

/** Faults that forbid voltage, whichever of the explanations holds. */
function forbidding(verdict: DiagnosisVerdict, module: HeatingModule, ohmsRead: boolean): readonly string[] {
  if (isFewAmps(verdict, ohmsRead)) return [];
  const all = held(verdict).map(({ faults }) => faults.flatMap((fault) => forbids(fault, module, ohmsRead)));
  if (all.length < 2) return all.flat();
  return all.every((words) => words.length > 0) ? [[...new Set(all.flat())].join("; or ")] : [];
}

/** A loose or burnt joint that is settled on: it is remade before anything is energised, open or merely hot. */
function jointFirst({ kind, explanations }: DiagnosisVerdict): string | null {
  if (kind !== "settled") return null;
  const places = (explanations[0] as Explanation).faults.flatMap((fault) =>
    fault.kind === "joint" || fault.kind === "open joint" ? [placeWords(fault.place)] : [],
  );
  return places.length === 0
    ? null
    : `Not before ${listed(places)} ${places.length > 1 ? "are" : "is"} opened and remade: a loose end under voltage arcs.`;
}

/** No path anywhere says nothing about how a bank is linked, however well a wrong link fits: the meter and what is shared come first. */
function unlessAllOpen(verdict: DiagnosisVerdict, branches: readonly BranchAssessment[]): DiagnosisVerdict {
  const fault = verdict.explanations[0]?.faults.find(({ kind }) => kind === "mis-linked");
  if (verdict.kind !== "settled" || fault?.kind !== "mis-linked" || !allOpen(branches)) return verdict;
  const link = fault.bank === null ? `star points ${fault.as}` : `bank ${fault.bank} linked as ${fault.as}`;
  return {
    ...verdict,
    kind: "not settled",
    words: `No continuity in what these readings share, or ${link}`,
  };
}

/** As many elements open in every branch read like a module built with fewer of them: nobody renews or re-plates by that alone. */
function unlessAlikeOpen(verdict: DiagnosisVerdict, branches: readonly BranchAssessment[]): DiagnosisVerdict {
  const rated = (verdict.explanations[0]?.faults ?? []).some(({ kind }) => kind === "other rating");
  const open = branches.map(({ openElements }) => openElements ?? 0);
  if (!rated || open.length === 0 || open.some((one) => one === 0)) return verdict;
  const words = "As many elements open in every branch, or all elements alike of another value than drawn";
  return { kind: "not told apart", explanations: [], words };
}

/** Amps alone show no element: a controller, a clamp or a slip makes them alike too. */
function unlessAmpsAlone(verdict: DiagnosisVerdict, ohmsRead: boolean): DiagnosisVerdict {
  const faults = verdict.kind === "settled" ? (verdict.explanations[0]?.faults ?? []) : [];
  if (ohmsRead || !faults.some(({ kind }) => kind === "other rating")) return verdict;
  return { ...verdict, words: `${verdict.words}, or amps that are not a whole line's at full conduction` };
}

const VOID =
  "Values of branches are worked out on the wiring as drawn, which these readings contradict: void until what is read is as drawn and has been read again.";

const JOINTS_ALONE =
  "Left out of the diagnosis: drops across joints, which no single fault explains together with the other readings. The joints are judged by comparison.";

/**
 * A joint that is bad besides another fault is two faults: where nothing fits, the other readings are asked alone, for each joint with a
 * drop has been judged by its own comparison.
 */
function explained(
  asked: DiagnosisInput,
  leftOut: readonly string[],
  again: () => DiagnosisQuestion,
): { readonly asked: DiagnosisInput; readonly diagnosis: Diagnosis; readonly leftOut: readonly string[] } {
  const diagnosis = diagnose(asked);
  const first = { asked, diagnosis, leftOut };
  if (diagnosis.outcome !== "nothing fits" || !asked.readings.some(({ kind }) => kind === "drop"))
    return first;
  const others = again().asked;
  if (others === null) return first;
  const second = diagnose(others);
  return second.outcome === "nothing fits"
    ? first
    : { asked: others, diagnosis: second, leftOut: [...leftOut, JOINTS_ALONE] };
}

/**
 * Diagnoses the readings as found.
 * @param bad - branches and joints found bad by their own readings, and a line found lost
 */
export function assessFaults(input: {
  readonly record: ParsedRecord;
  readonly targets: readonly BankTargets[];
  /** Line current that the plate promises, A. */
  readonly plateCurrent: Amperes | null;
  /** The module element by element. */
  readonly module: HeatingModule;
  readonly bad: ReadonlySet<string>;
  /** Branches by their readings as found. */
  readonly branches: readonly BranchAssessment[];
  /** Whether the ohms as found exclude each other on the wiring as drawn. */
  readonly clash: boolean;
  /** Joints that the readings as left show good. */
  readonly goodJoints: ReadonlySet<string>;
}): AssessedFaults {
  const { record, targets, plateCurrent, module, bad, branches, clash, goodJoints } = input;
  const { asFound, asLeft } = record;
  const none = {
    diagnosis: null,
    verdict: null,
    steps: [],
    forbidding: [],
    running: null,
    elementsOpen: [],
    jointFirst: null,
    jointAmong: null,
    misread: new Set<string>(),
    drawingVoid: false,
    joints: NO_JOINTS,
    odd: [],
    weighedJoints: new Set<string>(),
  } as const;
  if (asFound === undefined) return { ...none, leftOut: [] };
  const supply = supplyOf(record, "asFound");
  const question = { record, readings: asFound, supply, targets, plateCurrent };
  const whole = diagnosisQuestion(question);
  if (whole.asked === null) return { ...none, leftOut: whole.leftOut, odd: oddDrops(record) };
  const { asked, diagnosis, leftOut } = explained(whole.asked, whole.leftOut, () =>
    diagnosisQuestion({ ...question, without: ["drop"] }),
  );
  const ohmsRead = asked.readings.some(({ kind }) => kind === "resistance");
  const summed = unlessAlikeOpen(unlessAllOpen(diagnosisVerdict(diagnosis), branches), branches);
  const verdict = unlessAmpsAlone(summed, ohmsRead);
  // What was read as left speaks for itself: the fault as found is history then.
  // Where nothing fits, no drop has been accounted for.
  const drops = diagnosis.outcome === "nothing fits" ? [] : asked.readings;
  const weighedJoints = new Set(drops.flatMap((one) => (one.kind === "drop" ? [one.across] : [])));
  const read = (asLeft?.ohms ?? []).length + (asLeft?.currents ?? []).length > 0;
  if (read || remade(verdict, goodJoints)) return { ...none, diagnosis, verdict, leftOut, weighedJoints };
  const misread = misreadBranches(verdict, module, clash);
  return {
    diagnosis,
    verdict,
    leftOut: clash && drawingVoid(verdict) ? [...leftOut, VOID] : leftOut,
    // Where no branch shows a path the branches' own step says what to do.
    steps: allOpen(branches)
      ? []
      : diagnosisSteps({
          verdict,
          module,
          ohmsRead,
          // A branch that is misread says nothing for itself.
          covered: new Set([...bad].filter((id) => !misread.has(id))),
          proposals: () => proposalsFor(asked, module),
        }),
    forbidding: forbidding(verdict, module, ohmsRead),
    running: diagnosedRunning(verdict, ohmsRead),
    elementsOpen: elementsOpen(verdict, module),
    jointFirst: jointFirst(verdict),
    jointAmong: jointAmong(verdict),
    misread,
    drawingVoid: drawingVoid(verdict),
    joints: jointsNamed(verdict, module),
    odd: withPlate(
      record,
      [
        ...oddReadings(diagnosis),
        ...(asked.readings.some(({ kind }) => kind === "drop") ? [] : oddDrops(record)),
      ],
      held(verdict).some(({ faults }) => faults.some(({ kind }) => kind === "other rating")),
    ),
    weighedJoints,
  };
}

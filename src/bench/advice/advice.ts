/** What follows from both days: the faults behind them, the steps, whether it may run, the answer. */
import type { Supply } from "../../circuit/index.ts";
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { BranchFinding, DrawAssessment, NextStep } from "../assessTypes.ts";
import { elementPlan } from "../day/branchModule.ts";
import {
  ampsSteps,
  excessAmps,
  excessWords,
  oddAmps,
  unjudgedJointSteps,
  unjudgedJoints,
} from "../day/concerns.ts";
import { contactSteps } from "../day/contactConcerns.ts";
import type { Days } from "../day/days.ts";
import { type HotBranches, readAsLeft } from "../day/hotBranches.ts";
import { doubtfulInsulationSteps, insulationSteps, poorInsulation } from "../day/insulationConcerns.ts";
import { isBadJoint, isGoodJoint } from "../day/joints.ts";
import { scanSteps } from "../day/scanConcerns.ts";
import { supplyConcerns } from "../day/supplyConcerns.ts";
import { undecidedSteps } from "../day/undecidedJoints.ts";
import type { Diagnosis } from "../diagnosis/question/types.ts";
import { listed } from "../diagnosis/telling/words.ts";
import type { Sheet } from "../readSheet.ts";
import { siteConcerns } from "../site/concerns.ts";
import { answerLines } from "./answer.ts";
import { studsUnsaid } from "./beyondElements.ts";
import { boltedPaths, boltedSteps, boltedWords } from "./boltedPaths.ts";
import { clashing, type JointsNamed, openNamed } from "./diagnosisVerdict.ts";
import { assessFaults } from "./faults.ts";
import { nextSteps } from "./nextSteps.ts";
import { oddRunning, oddSteps } from "./oddReadings.ts";
import { runningWords } from "./runningOn.ts";
import { soundValues } from "./runningOpen.ts";
import { readOnStuds } from "./studJoints.ts";

/** The advice. */
export interface Advice {
  readonly diagnosis: Diagnosis | null;
  /** What the diagnosis left out, and why. */
  readonly leftOut: readonly string[];
  /** The line that looks lost as things stand, or null. */
  readonly lostLine: string | null;
  /** Branches whose readings as found, as drawn, say nothing of their elements. */
  readonly misread: ReadonlySet<string>;
  /** Readings that look odd in themselves, in words. */
  readonly odd: readonly string[];
  /** Joints that the diagnosis settles on. */
  readonly joints: JointsNamed;
  readonly steps: readonly NextStep[];
  readonly answer: readonly string[];
}

const FAULTY: readonly BranchFinding[] = ["open", "outside", "shorted", "high"];

/** Branches, joints and a line that are bad by their own readings. */
function badParts({ resistances, joints }: ReadingsAssessment, lostLine: string | null): ReadonlySet<string> {
  return new Set([
    ...resistances.branches.filter(({ finding }) => FAULTY.includes(finding)).map(({ id }) => id),
    ...joints.filter(isBadJoint).map(({ id }) => id),
    ...(lostLine === null ? [] : [lostLine]),
  ]);
}

const wasRead = ({ resistances, currents, insulation, joints }: ReadingsAssessment): boolean =>
  resistances.outcome !== "no readings" || currents.length + insulation.length + joints.length > 0;

/** Whether the amps as left, three or more, are all those of a sound module: nothing open or high is left in its way then. */
function soundAmps({ asLeft }: Days): boolean {
  const amps = (asLeft?.currents ?? []).filter(({ unit, verdict }) => unit === "A" && verdict !== null);
  return amps.length > 2 && amps.every(({ verdict }) => verdict === "within");
}

/**
 * Branches faulty as found that nobody read again, where the amps as left, three or more, are all those of a sound module: an open
 * branch would show in them, so that finding is history until it is read again.
 */
function outlived(days: Days): readonly string[] {
  const { asLeft, present } = days;
  if (asLeft === null || !soundAmps(days)) return [];
  const again = readAsLeft(asLeft.resistances);
  // Where something was read as left, there is a module as it stands.
  return (present as ReadingsAssessment).resistances.branches
    .filter(({ id, finding }) => finding === "open" && !again.has(id))
    .map(({ id }) => id);
}

/** The module with those branches taken for not known, and links that carry sound amps taken for mended. */
function without(days: Days, ids: readonly string[]): ReadingsAssessment | null {
  const { present, asLeft } = days;
  if (present === null || !soundAmps(days)) return present;
  const { resistances } = present;
  const beyondElements = asLeft?.resistances.beyondElements ?? [];
  const branches = resistances.branches.map((one) =>
    ids.includes(one.id) ? { ...one, finding: "not known" as const } : one,
  );
  return { ...present, resistances: { ...resistances, branches, beyondElements } };
}

function againSteps(ids: readonly string[]): readonly NextStep[] {
  if (ids.length === 0) return [];
  return [
    {
      action: `Isolate, then read ${listed(ids)} again.`,
      reason: `${listed(ids)} read open as found and ${ids.length > 1 ? "were" : "was"} not read again; the amps as left are those of a sound module.`,
      about: ids,
    },
  ];
}

/** Works the advice out. */
export function adviseOn(input: {
  readonly sheet: Sheet;
  readonly days: Days;
  readonly draw: DrawAssessment | null;
  readonly hot: HotBranches;
  /** The supply of the site, whole. */
  readonly supply: Supply | null;
  readonly untested: readonly string[];
}): Advice {
  const { sheet, days, draw, hot, supply, untested } = input;
  const { record, targets, plateCurrent, whole, states } = sheet;
  const { asFound, asLeft, present } = days;
  const again = record.asLeft?.supply !== undefined;
  const lost = {
    asFound: states.asFound?.lostLine ?? null,
    asLeft: again ? (states.asLeft?.lostLine ?? null) : null,
  };
  const lostLine = again ? lost.asLeft : lost.asFound;
  const stale = outlived(days);
  const current = without(days, stale);
  const bad = present === null ? new Set<string>() : badParts(present, lostLine);
  const faults = assessFaults({
    record,
    targets,
    plateCurrent,
    module: whole,
    bad,
    branches: asFound?.resistances.branches ?? [],
    clash: asFound !== null && clashing(asFound.resistances),
    goodJoints: new Set((asLeft?.joints ?? []).filter(isGoodJoint).map(({ id }) => id)),
  });
  const poor = present === null ? [] : poorInsulation(present);
  const branchFaulty = (present?.resistances.branches ?? []).some(({ finding }) => FAULTY.includes(finding));
  const refuted = faults.verdict?.kind === "nothing fits";
  const volts = supplyConcerns(record, plateCurrent, lostLine);
  // A faulty branch explains odd amps only while the diagnosis can bring the two together.
  const diagnosed = (branchFaulty || faults.running !== null) && !refuted;
  const explained = diagnosed || lostLine !== null || volts.explainsAmps;
  const oddNow = present !== null && !explained && oddAmps(present).length > 0;
  const excess = present !== null && oddNow ? excessAmps(present) : [];
  const anythingRead = present !== null && wasRead(present);
  const site = siteConcerns({ ...sheet.site, supply: volts });
  // As found they were weighed; what was read again as left was not.
  const readAgain = new Set((asLeft?.joints ?? []).map(({ id }) => id));
  const weighed = new Set([...faults.weighedJoints].filter((id) => !readAgain.has(id)));
  const unjudged = present === null ? [] : unjudgedJoints(present, weighed);
  // What the diagnosis or an odd reading already accounts for needs no second ban.
  const accounted = faults.forbidding.length + faults.odd.length > 0;
  const bolted = present === null || accounted ? [] : boltedPaths(present.resistances);
  const unsaid = studsUnsaid(record);
  const onStuds = readOnStuds(record);
  const steps = nextSteps({
    studsUnsaid: unsaid,
    drawingVoid: faults.drawingVoid,
    present: current,
    diagnosed: [...boltedSteps(bolted), ...againSteps(stale), ...faults.steps],
    known: { misread: faults.misread, openElements: openNamed(faults.verdict, whole), onStuds },
    concerns: {
      odd: oddSteps(faults.odd),
      insulation: insulationSteps(present),
      doubtful: [
        ...scanSteps(present),
        ...contactSteps(present),
        ...undecidedSteps(present),
        ...doubtfulInsulationSteps(present),
      ],
      supply: volts.steps,
      joints: unjudgedJointSteps(present, weighed),
      amps: ampsSteps(present, explained),
      site: [...site.steps, ...volts.later],
    },
    draw,
    lostLine,
    plateCurrent,
    readAgain: asLeft !== null && asLeft.resistances.outcome !== "no readings" && asLeft.currents.length > 0,
  });
  const unread =
    stale.length === 0
      ? null
      : `The amps as left are those of a sound module: read ${listed(stale)} again before relying on them.`;
  const module = runningWords({
    present: current,
    lostLine,
    forbidding: [...poor, ...faults.forbidding, ...boltedWords(bolted), ...excessWords(excess)],
    voltage: volts.unknown ?? (volts.before === null ? null : site.running),
    diagnosed:
      faults.running ?? (oddNow ? "Not known before the amps are explained." : (unread ?? site.running)),
    elementsOpen: faults.elementsOpen,
    anythingRead,
    unjudgedJoints: unjudged,
    jointFirst: faults.jointFirst,
    jointAmong: faults.jointAmong,
    drawingVoid: faults.drawingVoid,
    misread: faults.misread,
    onStuds,
    odd: oddRunning(faults.odd),
    sound:
      // A draw is known only where every branch has a value.
      draw === null || supply === null
        ? null
        : { record, plan: elementPlan(record, soundValues(hot, faults.elementsOpen, record)), supply },
  });
  // The module's own sentence stands beside what the site asks for first; a ban needs nothing beside it.
  const banned = module.startsWith("Do not energise") || site.running === null || module === site.running;
  const allowed = banned ? module : `${site.running} Besides: ${module}`;
  const running = volts.weak === null ? allowed : `${allowed} ${volts.weak}`;
  const answer = answerLines({
    asFound,
    // What was not read again stands as found.
    asLeft: asLeft === null ? null : present,
    verdict: faults.verdict,
    lostLine: lost,
    module: whole,
    draw,
    platePower: record.nameplate?.power.value ?? null,
    leftAlone: asLeft,
    anythingRead,
    weighedJoints: faults.weighedJoints,
    site: site.words,
    steps,
    running,
    unknownDraw: volts.unknown !== null,
    notTested: untested,
    studsUnsaid: unsaid,
    odd: faults.odd,
    ampsExplained: volts.explainsAmps,
  });
  const { diagnosis, leftOut, misread, joints, odd } = faults;
  return { diagnosis, leftOut, lostLine, misread, joints, odd, steps, answer };
}

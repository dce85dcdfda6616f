/** What follows from both days: the faults behind them, the steps, whether it may run, the answer. */
import type { Supply } from "../circuit/index.ts";
import { answerLines } from "./answer.ts";
import { assessFaults } from "./assessFaults.ts";
import { isBadJoint } from "./assessJoints.ts";
import type { ReadingsAssessment } from "./assessmentTypes.ts";
import type { BranchFinding, DrawAssessment, NextStep } from "./assessTypes.ts";
import { ampsSteps, insulationSteps, oddAmps, poorInsulation } from "./concerns.ts";
import type { Days } from "./days.ts";
import type { Diagnosis } from "./diagnosis/types.ts";
import type { HotBranches } from "./hotBranches.ts";
import { nextSteps } from "./nextSteps.ts";
import type { Sheet } from "./readSheet.ts";
import { runningWords } from "./runningOn.ts";

/** The advice. */
export interface Advice {
  readonly diagnosis: Diagnosis | null;
  /** What the diagnosis left out, and why. */
  readonly leftOut: readonly string[];
  /** The line that looks lost as things stand, or null. */
  readonly lostLine: string | null;
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
  const { record, targets, plateCurrent, drawn, whole, states } = sheet;
  const { asFound, asLeft, present } = days;
  const again = record.asLeft?.supply !== undefined;
  const lost = {
    asFound: states.asFound?.lostLine ?? null,
    asLeft: again ? (states.asLeft?.lostLine ?? null) : null,
  };
  const lostLine = again ? lost.asLeft : lost.asFound;
  const bad = present === null ? new Set<string>() : badParts(present, lostLine);
  const faults = assessFaults({ record, targets, module: whole, bad });
  const poor = present === null ? [] : poorInsulation(present);
  const branchFaulty = (present?.resistances.branches ?? []).some(({ finding }) => FAULTY.includes(finding));
  const refuted = faults.verdict?.kind === "nothing fits";
  // A faulty branch explains odd amps only while the diagnosis can bring the two together.
  const explained = (branchFaulty && !refuted) || lostLine !== null || faults.running !== null;
  const oddNow = present !== null && !explained && oddAmps(present).length > 0;
  const steps = nextSteps({
    present,
    diagnosed: faults.steps,
    concerns: { insulation: insulationSteps(present), amps: ampsSteps(present, explained) },
    draw,
    lostLine,
    plateCurrent,
    readAgain: asLeft !== null && asLeft.resistances.outcome !== "no readings" && asLeft.currents.length > 0,
  });
  const running = runningWords({
    present,
    lostLine,
    forbidding: [...poor.map(({ words }) => words), ...faults.forbidding],
    diagnosed: faults.running ?? (oddNow ? "Not known before the amps are explained." : null),
    anythingRead: present !== null && wasRead(present),
    module: drawn.module,
    repaired: draw === null ? null : hot.repaired,
    supply,
  });
  const answer = answerLines({
    asFound,
    // What was not read again stands as found.
    asLeft: asLeft === null ? null : present,
    verdict: faults.verdict,
    lostLine: lost,
    module: whole,
    draw,
    plate: record.nameplate !== undefined,
    steps,
    running,
    notTested: untested,
  });
  return { diagnosis: faults.diagnosis, leftOut: faults.leftOut, lostLine, steps, answer };
}

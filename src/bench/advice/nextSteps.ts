/** What to do next, most pressing first, in words a technician can act on. */
import { largestFirst } from "../../numeric/index.ts";
import { formatQuantity, type Ohms, type Watts } from "../../quantity/index.ts";
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { DrawAssessment, JointAssessment, NextStep, ResistanceAssessment } from "../assessTypes.ts";
import { contactText, isTooHot } from "../day/contactHeat.ts";
import { isBadJoint } from "../day/joints.ts";
import { LEAK } from "../diagnosis/likelihood/leak.ts";
import type { FittedReading } from "../fit/types.ts";
import { ratioText } from "../text/shown.ts";
import { beyondSteps, STUDS_STEP } from "./beyondElements.ts";
import { branchSteps, isSeenWithOthers, type KnownFaults } from "./branchSteps.ts";
import { lostLineWords } from "./diagnosisSteps.ts";

const list = (names: readonly string[]): string => names.join(", ");

/** Places whose residual stands out, worst first: at most two, because a star's six readings cannot separate a pair. */
function standOut(readings: readonly FittedReading[]): readonly string[] {
  const fitted = readings.filter((one) => one.residual !== null);
  const worst = largestFirst(fitted, ({ residual }) => Math.abs(residual as number)).slice(0, 2);
  // A place that was read twice is one place to read again.
  return [...new Set(worst.map(({ from, to }) => `${from} to ${to}`))];
}

/** A reading this far from a sound module's is worth a word even where the branch behind it cannot be named. */
const ODD = 0.1;

function oddReadings({ readings, expectedReadings, leads }: ResistanceAssessment): string {
  const odd = readings.flatMap(({ from, to, reads }, i) => {
    const sound = expectedReadings[i];
    if (reads === "open" || reads >= LEAK || typeof sound !== "number" || leads === null) return [];
    const off = (reads - leads) / sound - 1;
    if (Math.abs(off) < ODD) return [];
    return [`${from} to ${to} ${off < 0 ? "−" : "+"}${(Math.abs(off) * 100).toFixed(0)} %`];
  });
  return odd.length === 0 ? "" : ` Against a sound module: ${odd.join(", ")}.`;
}

/** Readings that exclude each other, and readings that do not settle every branch. */
function readingSteps(
  resistances: ResistanceAssessment,
  studsUnsaid: boolean,
): {
  readonly contradictions: readonly NextStep[];
  readonly obscure: readonly NextStep[];
} {
  const { outcome, consistency, readings, openChoices, notIdentifiable, branches } = resistances;
  const steps: NextStep[] = [];
  if (outcome === "contradictory") {
    steps.push({
      action: "Repeat the readings that show OL, on cleaned studs, with the links as the record says.",
      reason:
        "No choice of open branches gives OL where the record has it and a value where it does not: one reading is wrong, or the module is not wired as drawn.",
      about: readings.filter((one) => one.reads === "open").map(({ from, to }) => `${from} to ${to}`),
    });
  }
  if (consistency === "inconsistent") {
    const pair = standOut(readings);
    steps.push({
      action: `Repeat ${list(pair)} with clean, firm probes before believing any value below.`,
      reason:
        "The readings contradict each other by more than the meter explains; these fit worst, and a loose joint that moves under the probe does this too.",
      about: pair,
    });
  }
  if (steps.length > 0 && studsUnsaid) steps.push(STUDS_STEP);
  const obscure: NextStep[] = [];
  if (openChoices.length > 0) {
    const shown = openChoices.slice(0, 4).map((set) => set.join(" + "));
    obscure.push({
      action: "Lift the links and read each of these branches alone.",
      reason: `The OL readings fit ${openChoices.length} choices of open branches alike: ${shown.join(" or ")}${openChoices.length > 4 ? " or others" : ""}.`,
      about: [...new Set(openChoices.flat())],
    });
  }
  const leadsUnknown = notIdentifiable.includes("leads");
  const unclear = branches.filter(isSeenWithOthers).map((b) => b.id);
  if (
    outcome !== "no readings" &&
    openChoices.length === 0 &&
    outcome !== "contradictory" &&
    unclear.length > 0
  ) {
    obscure.push({
      action: leadsUnknown
        ? "Short the leads together and note the reading, or read each line to the star point as well."
        : "Lift the links and read each of these branches alone.",
      reason: leadsUnknown
        ? "Without the leads' resistance these readings do not settle the branches: a common offset hides in all of them."
        : `No reading shows these branches by themselves, and together they do not settle them.${oddReadings(resistances)}`,
      about: unclear,
    });
  }
  return { contradictions: steps, obscure };
}

function jointReason(joint: JointAssessment): string {
  const { resistance, power, ratioToBest, comparison, rise } = joint;
  const parts: string[] = [];
  // What is held against the best like joint has a drop, and so all three.
  if (comparison === "investigate") {
    const ohms = formatQuantity(resistance as Ohms, { unit: "Ω", as: "µΩ", significantDigits: 4 });
    const heat = formatQuantity(power as Watts, { unit: "W", significantDigits: 3 });
    const ratio = `, ${ratioText(ratioToBest as number)} times the best like joint`;
    parts.push(`${ohms}, ${heat}${ratio}: more than half above the lowest.`);
  }
  if (isTooHot(joint))
    parts.push(
      `${contactText(joint)}: its spots soften, copper or not, whatever its like show; they may be bad alike.`,
    );
  if (rise !== null && rise.atLeast > 0)
    parts.push(`${rise.measured.toFixed(0)} K over the air: ${rise.action}.`);
  return `${parts.join(" ")} Line currents cannot show this.`;
}

function jointSteps(joints: readonly JointAssessment[]): NextStep[] {
  return joints.filter(isBadJoint).map((joint) => ({
    action: `Isolate, then open joint ${joint.id}: renew bar end, nut and washer where burnt or pitted, and remake it.`,
    reason: jointReason(joint),
    about: [joint.id],
  }));
}

/** The amps to expect, but only where they are something to accept a repair by. */
function afterwards(
  draw: DrawAssessment | null,
  plateCurrent: number | null,
  { readAgain, work }: { readonly readAgain: boolean; readonly work: boolean },
): NextStep {
  const amps = (draw?.repaired.lines ?? []).map(({ node, current }) => `${node} ${current.toFixed(1)} A`);
  const plate =
    plateCurrent === null
      ? "Nothing closer can be expected: no nameplate, and not every branch is proved sound."
      : `The plate promises ${plateCurrent.toFixed(1)} A a line; not every branch is proved sound, so nothing closer can be expected of it.`;
  return {
    action: readAgain
      ? "After cooling down: check the nuts cold, and keep these readings as the module's own for the next visit."
      : !work
        ? "Read what is still untested, and check the nuts cold afterwards."
        : "After the work: read the resistances again as left, then the line currents at full conduction in the first heat, and check the nuts cold afterwards.",
    reason: draw?.confirmed ? `In good order it should draw ${list(amps)} at the voltage stated.` : plate,
    about: [],
  };
}

/** The line first: no reading of the module means much before its supply is whole. */
function supplySteps(lostLine: string | null): NextStep[] {
  if (lostLine === null) return [];
  return [
    {
      action: lostLineWords(lostLine),
      reason: `The voltages between lines add up as they do when ${lostLine} is lost and fed back through the module.`,
      about: [lostLine],
    },
  ];
}

/** What comes before everything else: no voltage, and no feed on what is read. */
const forbidsVoltage = ({ action }: NextStep): boolean =>
  action.startsWith("Do not energise.") || action.startsWith("Lock out the feed");

/**
 * Steps in order: what forbids voltage, readings that look odd, supply, contradictions, faulty branches, what the diagnosis adds, joints, joints and insulation in doubt, site, amps
 * that nothing explains, then what is merely unclear.
 */
export function nextSteps(input: {
  /** The module as it stands; null where nothing was read. */
  readonly present: ReadingsAssessment | null;
  /** What the diagnosis adds. */
  readonly diagnosed: readonly NextStep[];
  /** What the diagnosis takes from the branches' own steps. */
  readonly known: KnownFaults;
  readonly concerns: {
    /** Readings that look odd in themselves. */
    readonly odd: readonly NextStep[];
    readonly insulation: readonly NextStep[];
    /** Joints and insulation that are neither bad nor clear of trouble. */
    readonly doubtful: readonly NextStep[];
    readonly supply: readonly NextStep[];
    readonly joints: readonly NextStep[];
    readonly amps: readonly NextStep[];
    readonly site: readonly NextStep[];
  };
  readonly draw: DrawAssessment | null;
  readonly lostLine: string | null;
  readonly plateCurrent: number | null;
  /** Whether ohms and amps were taken as left. */
  readonly readAgain: boolean;
  /** Whether readings alone may have been taken on own studs without the record saying so. */
  readonly studsUnsaid: boolean;
  /** Whether links against the drawing are certain. */
  readonly drawingVoid: boolean;
}): readonly NextStep[] {
  const { present, diagnosed, known, concerns, draw, lostLine, plateCurrent, readAgain } = input;
  const last = (steps: readonly NextStep[]): NextStep =>
    afterwards(draw, plateCurrent, { readAgain, work: steps.length > 0 });
  if (present === null) {
    const steps = [...supplySteps(lostLine), ...concerns.supply, ...concerns.site];
    return [...steps, last(steps)];
  }
  const { faulty, unclear } = branchSteps(present.resistances, known);
  const { contradictions, obscure } = readingSteps(present.resistances, input.studsUnsaid);
  // An earthed element that is named comes before the search for it.
  const named = diagnosed.filter(forbidsVoltage);
  const steps = [
    ...named,
    ...concerns.insulation,
    ...concerns.odd,
    ...supplySteps(lostLine),
    ...concerns.supply,
    // Links against the drawing explain why the readings clash on it.
    ...(input.drawingVoid ? [] : [...contradictions, ...beyondSteps(present.resistances)]),
    ...faulty,
    // What the diagnosis says of the supply too is said once, by the voltages as read.
    ...diagnosed.filter(
      (step) => !forbidsVoltage(step) && concerns.supply.every(({ action }) => action !== step.action),
    ),
    ...jointSteps(present.joints),
    ...concerns.doubtful,
    ...concerns.site,
    ...concerns.amps,
    ...obscure,
    ...concerns.joints,
    ...unclear,
  ];
  return [...steps, last(steps)];
}

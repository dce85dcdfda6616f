/** What to do next, most pressing first, in words a technician can act on. */
import { formatQuantity, type Ohms } from "../quantity/index.ts";
import type {
  BranchAssessment,
  DrawAssessment,
  JointAssessment,
  NextStep,
  ResistanceAssessment,
} from "./assessTypes.ts";
import { isHigh, isOpen, isShorted } from "./branchState.ts";
import type { FittedReading } from "./fitTypes.ts";
import type { ParsedRecord } from "./recordSchema.ts";
import { ratioText } from "./shown.ts";

const list = (names: readonly string[]): string => names.join(", ");

/** Readings whose residual stands out, worst first: at most two, because a star's six readings cannot separate a pair. */
function standOut(readings: readonly FittedReading[]): readonly FittedReading[] {
  return readings
    .filter((one) => one.residual !== null)
    .sort((a, b) => Math.abs(b.residual as number) - Math.abs(a.residual as number))
    .slice(0, 2);
}

function readingSteps(resistances: ResistanceAssessment): NextStep[] {
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
    const pair = standOut(readings).map(({ from, to }) => `${from} to ${to}`);
    steps.push({
      action: `Repeat ${list(pair)} with clean, firm probes before believing any value below.`,
      reason:
        "The readings contradict each other by more than the meter explains; these fit worst, and a loose joint that moves under the probe does this too.",
      about: pair,
    });
  }
  if (openChoices.length > 0) {
    const shown = openChoices.slice(0, 4).map((set) => set.join(" + "));
    steps.push({
      action: "Lift the links and read each of these branches alone.",
      reason: `The OL readings fit ${openChoices.length} choices of open branches alike: ${shown.join(" or ")}${openChoices.length > 4 ? " or others" : ""}.`,
      about: [...new Set(openChoices.flat())],
    });
  }
  const leadsUnknown = notIdentifiable.includes("leads");
  const unclear = branches.filter((b) => b.resistance === null && b.atLeast === null).map((b) => b.id);
  if (
    outcome !== "no readings" &&
    openChoices.length === 0 &&
    outcome !== "contradictory" &&
    unclear.length > 0
  ) {
    steps.push({
      action: leadsUnknown
        ? "Short the leads together and note the reading, or read each line to the star point as well."
        : "Lift the links and read each of these branches alone.",
      reason: leadsUnknown
        ? "Without the leads' resistance these readings do not settle the branches: a common offset hides in all of them."
        : "With the links in, these readings see the branches only in combination.",
      about: unclear,
    });
  }
  return steps;
}

const ohmText = (value: number): string => formatQuantity(value as Ohms, { unit: "Ω", significantDigits: 3 });

function branchStep(branch: BranchAssessment): NextStep | null {
  const { id, resistance, atLeast, target, judgement, openElements, deviation } = branch;
  if (isOpen(branch)) {
    return {
      action: `Open up branch ${id}: find whether a coil, its stud joint or its jumper bar is broken, and renew it.`,
      reason:
        resistance === "open"
          ? `${id} reads open.`
          : `${id} reads ${atLeast === null ? "" : "at least "}${ohmText((resistance ?? atLeast) as number)} where ${ohmText(target)} belong.`,
      about: [id],
    };
  }
  if (isShorted(branch)) {
    return {
      action: `Do not energise. Find what bridges branch ${id}: a fallen coil, a bar across two studs, a wrong link.`,
      reason: `${id} reads as good as nothing where ${ohmText(target)} belong.`,
      about: [id],
    };
  }
  if (resistance === null && atLeast !== null) {
    return {
      action: isHigh(branch)
        ? `Lift the links of branch ${id} and read it alone: it is high or open.`
        : `Read ${id} again with a four-wire meter, or one of finer resolution.`,
      reason: `${id} reads at least ${ohmText(atLeast)} where ${ohmText(target)} belong; these readings do not say more.`,
      about: [id],
    };
  }
  if (judgement === null || deviation === null) return null;
  const percent = `${deviation < 0 ? "" : "+"}${(deviation * 100).toFixed(1)} %`;
  if (judgement.verdict === "undecided") {
    return {
      action: `Read ${id} again with a four-wire meter, or one of finer resolution.`,
      reason: `${id} is ${percent} from target and this meter cannot say on which side of the tolerance it lies.`,
      about: [id],
    };
  }
  if (judgement.verdict !== "outside") return null;
  if (openElements !== null) {
    return {
      action: `Lift the links of branch ${id} and read its elements one by one.`,
      reason: `${id} is ${percent} from target, which fits ${openElements} of its parallel elements open.`,
      about: [id],
    };
  }
  return {
    action:
      deviation > 0
        ? `Check the joints and links of branch ${id} by millivolts, then its elements one by one.`
        : `Look for touching turns or a wrong element in branch ${id}, and for a path beside it that is not on the drawing.`,
    reason: `${id} is ${percent} from target, outside the tolerance given.`,
    about: [id],
  };
}

function jointSteps(joints: readonly JointAssessment[]): NextStep[] {
  return joints
    .filter((joint) => joint.investigate)
    .map(({ id, resistance, power, ratioToBest }) => ({
      action: `Isolate, then open joint ${id}: renew bar end, nut and washer where burnt or pitted, remake it and measure the drop again.`,
      reason: `${formatQuantity(resistance, { unit: "Ω", as: "µΩ", significantDigits: 4 })}, ${formatQuantity(power, { unit: "W", significantDigits: 3 })}${
        ratioToBest === null ? "" : `, ${ratioText(ratioToBest)} times the best like joint`
      }: more than half above the lowest. Line currents cannot show this.`,
      about: [id],
    }));
}

/** Steps in order: contradictions, open and outside branches, joints, then what is merely unclear. */
export function nextSteps(
  resistances: ResistanceAssessment,
  joints: readonly JointAssessment[],
  draw: DrawAssessment,
): readonly NextStep[] {
  const { branches } = resistances;
  const undecided = branches.filter((branch) => branch.judgement?.verdict === "undecided");
  const faulty = branches.filter((branch) => !undecided.includes(branch));
  const stepsFor = (some: readonly BranchAssessment[]): NextStep[] =>
    some.flatMap((one) => branchStep(one) ?? []);
  const steps = [
    ...readingSteps(resistances),
    ...stepsFor(faulty),
    ...jointSteps(joints),
    ...stepsFor(undecided),
  ];
  const amps = draw.repaired.lines.map(({ node, current }) => `${node} ${current.toFixed(1)} A`);
  return [
    ...steps,
    {
      action:
        "After the work: read the resistances again as left, then the line currents at full conduction in the first heat, and check the nuts cold afterwards.",
      reason: `Sound branches as assessed here should draw ${list(amps)} at the voltage stated.`,
      about: [],
    },
  ];
}

/** What the record holds no test of. */
export function notTested(record: ParsedRecord): readonly string[] {
  const missing: string[] = [];
  if ((record.readings ?? []).length === 0) missing.push("resistance of the branches");
  if (record.tolerance === undefined) missing.push("verdicts on the branches: the record gives no tolerance");
  if ((record.joints ?? []).length === 0) missing.push("joints: no millivolt drops in the record");
  if (record.supply === undefined) missing.push("supply voltages at the module");
  return [
    ...missing,
    "insulation resistance to the frame",
    "line currents at full conduction",
    "thermal scan of terminals under load",
    "torque of the terminal hardware",
  ];
}

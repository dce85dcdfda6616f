/** What to do next, most pressing first, in words a technician can act on. */
import { formatQuantity } from "../quantity/index.ts";
import type { DrawAssessment, JointAssessment, NextStep, ResistanceAssessment } from "./assessTypes.ts";
import { branchSteps } from "./branchSteps.ts";
import type { FittedReading } from "./fitTypes.ts";
import type { ParsedRecord } from "./recordParsed.ts";
import { ratioText } from "./shown.ts";

const list = (names: readonly string[]): string => names.join(", ");

/** Readings whose residual stands out, worst first: at most two, because a star's six readings cannot separate a pair. */
function standOut(readings: readonly FittedReading[]): readonly FittedReading[] {
  return readings
    .filter((one) => one.residual !== null)
    .sort((a, b) => Math.abs(b.residual as number) - Math.abs(a.residual as number))
    .slice(0, 2);
}

/** A reading this far from a sound module's is worth a word even where the branch behind it cannot be named. */
const ODD = 0.1;

function oddReadings({ readings, expectedReadings, leads }: ResistanceAssessment): string {
  const odd = readings.flatMap(({ from, to, reads }, i) => {
    const sound = expectedReadings[i];
    if (reads === "open" || sound === "open" || sound === undefined || leads === null) return [];
    const off = (reads - leads) / sound - 1;
    if (Math.abs(off) < ODD) return [];
    return [`${from} to ${to} ${off < 0 ? "−" : "+"}${(Math.abs(off) * 100).toFixed(0)} %`];
  });
  return odd.length === 0 ? "" : ` Against a sound module: ${odd.join(", ")}.`;
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
        : `With the links in, these readings see the branches only in combination.${oddReadings(resistances)}`,
      about: unclear,
    });
  }
  return steps;
}

function jointSteps(joints: readonly JointAssessment[]): NextStep[] {
  return joints
    .filter((joint) => joint.comparison === "investigate")
    .map(({ id, resistance, power, ratioToBest }) => ({
      action: `Isolate, then open joint ${id}: renew bar end, nut and washer where burnt or pitted, and remake it.`,
      reason: `${formatQuantity(resistance, { unit: "Ω", as: "µΩ", significantDigits: 4 })}, ${formatQuantity(power, { unit: "W", significantDigits: 3 })}${
        ratioToBest === null ? "" : `, ${ratioText(ratioToBest)} times the best like joint`
      }: more than half above the lowest. Line currents cannot show this.`,
      about: [id],
    }));
}

/** The amps to expect, but only where they are something to accept a repair by. */
function afterwards(draw: DrawAssessment, plateCurrent: number): NextStep {
  const amps = draw.repaired.lines.map(({ node, current }) => `${node} ${current.toFixed(1)} A`);
  return {
    action:
      "After the work: read the resistances again as left, then the line currents at full conduction in the first heat, and check the nuts cold afterwards.",
    reason: draw.confirmed
      ? `With the faulty branches renewed it should draw ${list(amps)} at the voltage stated.`
      : `The plate promises ${plateCurrent.toFixed(1)} A a line; not every branch is proved sound, so nothing closer can be expected of it.`,
    about: [],
  };
}

/** The line first: no reading of the module means much before its supply is whole. */
function supplySteps(lostLine: string | null): NextStep[] {
  if (lostLine === null) return [];
  return [
    {
      action: `Find why ${lostLine} has no voltage (fuse, contact, lug) before judging the module; ${lostLine} still floats live through the elements.`,
      reason: `The voltages between lines add up as they do when ${lostLine} is lost and fed back through the module.`,
      about: [lostLine],
    },
  ];
}

/** Steps in order: supply, contradictions, faulty branches, joints, then what is merely unclear. */
export function nextSteps(input: {
  readonly resistances: ResistanceAssessment;
  readonly joints: readonly JointAssessment[];
  readonly draw: DrawAssessment;
  readonly lostLine: string | null;
  readonly plateCurrent: number;
}): readonly NextStep[] {
  const { resistances, joints, draw, lostLine, plateCurrent } = input;
  const { faulty, unclear } = branchSteps(resistances);
  return [
    ...supplySteps(lostLine),
    ...readingSteps(resistances),
    ...faulty,
    ...jointSteps(joints),
    ...unclear,
    afterwards(draw, plateCurrent),
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
    "thermal scan of the terminals with current flowing",
    "torque of the terminal hardware",
  ];
}

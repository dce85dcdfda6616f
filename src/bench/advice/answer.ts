/** The answer in at most five lines: what is wrong, what to do, whether it may run, what it will draw, what is untested. */
import type { HeatingModule } from "../../circuit/index.ts";
import { formatQuantity, type Watts } from "../../quantity/index.ts";
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { BranchAssessment, DrawAssessment, JointAssessment, NextStep } from "../assessTypes.ts";
import { ampsWords, oddAmps, unjudgedJoints } from "../day/concerns.ts";
import { contactText, isTooHot } from "../day/contactHeat.ts";
import { readAsLeft } from "../day/hotBranches.ts";
import { doubtfulInsulation, poorInsulation } from "../day/insulationConcerns.ts";
import { isBadJoint } from "../day/joints.ts";
import { notCleared } from "../day/undecidedJoints.ts";
import { isWide } from "../day/wideLimits.ts";
import type { DiagnosedFault } from "../diagnosis/question/diagnosedFault.ts";
import { listed } from "../diagnosis/telling/words.ts";
import { ratioText } from "../text/shown.ts";
import { beyondWords } from "./beyondElements.ts";
import {
  branchesOf,
  clashing,
  type DiagnosisVerdict,
  drawingVoid,
  isTelling,
  misreadBranches,
  tellingBranches,
} from "./diagnosisVerdict.ts";
import { oddWords } from "./oddReadings.ts";

const percent = (ratio: number): string => {
  const shown = (Math.abs(ratio) * 100).toFixed(1);
  return `${shown === "0.0" ? "" : ratio < 0 ? "−" : "+"}${shown} %`;
};

const FAULTY: Readonly<Partial<Record<BranchAssessment["finding"], (branch: BranchAssessment) => string>>> = {
  open: ({ id }) => `${id} open`,
  shorted: ({ id }) => `${id} as good as bolted`,
  high: ({ id }) => `${id} high or open`,
  outside: ({ id, deviation, openElements, judgement }) =>
    `${id} ${judgement !== null && isWide(judgement.rule) ? "far from its target" : "outside its tolerance"} (${percent(deviation as number)}${openElements === null ? "" : `, which fits ${openElements} of its parallel elements open`})`,
};

/** Branches named in one line; more are counted. */
const NAMED = 4;

function branchWords(branches: readonly BranchAssessment[]): string[] {
  const words = branches.flatMap((branch) => FAULTY[branch.finding]?.(branch) ?? []);
  return words.length <= NAMED
    ? words
    : [...words.slice(0, NAMED), `${words.length - NAMED} more branches faulty`];
}

function jointWords(joint: JointAssessment): string {
  const { id, power, ratioToBest, comparison, rise } = joint;
  // What is held against the best like joint has a drop, and so a ratio and its heat.
  if (comparison === "investigate") {
    const ratio = `${ratioText(ratioToBest as number)} times the best like joint, `;
    return `joint ${id} at ${ratio}${formatQuantity(power as Watts, { unit: "W", significantDigits: 3 })} in one contact`;
  }
  if (isTooHot(joint)) return `joint ${id} ${contactText(joint)}, too much whatever its like show`;
  return `joint ${id} ${rise?.measured.toFixed(0)} K over the air`;
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Normal amps beside a bad joint clear the elements, and nothing else. */
function ampsBesideJoints({ joints, currents }: ReadingsAssessment): string {
  const judged = currents.filter(({ verdict }) => verdict !== null);
  const normal = judged.length > 2 && judged.every(({ verdict }) => verdict === "within");
  return normal && joints.some(isBadJoint)
    ? " Amps are those of a sound module: no element needs renewing for them, and they do not clear the joint."
    : "";
}

/** What the readings of one day say is wrong; the diagnosis first, then what it does not cover. What is carried over unread may be what amps show. */
function wrongWords(
  day: ReadingsAssessment,
  verdict: DiagnosisVerdict | null,
  lostLine: string | null,
  weighed: ReadonlySet<string>,
  { module, studsUnsaid, ampsExplained }: AnswerInput,
  carried = false,
): string {
  const clash = clashing(day.resistances);
  const misread = misreadBranches(verdict, module, clash);
  const telling = verdict !== null && isTelling(verdict) ? verdict : null;
  const faults: readonly DiagnosedFault[] = (telling?.explanations ?? []).flatMap((one) => one.faults);
  const told = new Set([
    ...faults.flatMap((fault) => branchesOf(fault, module)),
    ...faults.flatMap((fault) =>
      fault.kind === "joint" || fault.kind === "open joint" ? [fault.place] : [],
    ),
    ...faults.flatMap((fault) => (fault.kind === "lost line" ? [fault.line] : [])),
  ]);
  const refuted = verdict?.kind === "nothing fits" ? [lower(verdict.words)] : [];
  // What is not told apart may still be known to lie in one branch: that is said first.
  const untold = tellingBranches(day.resistances, misread).filter(
    ({ id }) => telling?.kind !== "settled" || !told.has(id),
  );
  const said = [
    ...poorInsulation(day),
    ...(lostLine === null || told.has(lostLine) ? [] : [`no supply on ${lostLine}`]),
    ...(telling?.kind === "settled" ? [lower(telling.words)] : []),
    // Links against the drawing account for what the elements do not.
    ...(drawingVoid(verdict) ? [] : beyondWords(day.resistances)),
    ...branchWords(untold),
    ...(telling === null ? refuted : telling.kind === "settled" ? [] : [lower(telling.words)]),
    ...day.joints.filter((joint) => isBadJoint(joint) && !told.has(joint.id)).map(jointWords),
    ...(clash && drawingVoid(verdict) ? ["what is worked out on the drawing is void"] : []),
    ...(clash && !drawingVoid(verdict)
      ? [`the ohm readings contradict each other${studsUnsaid ? UNLESS_STUDS : ""}`]
      : []),
  ];
  const odd = said.length > 0 || ampsExplained ? [] : oddAmps(day);
  const doubts = doubtWords(day, told);
  const besides = doubts.length === 0 ? "" : ` Besides: ${doubts.join("; ")}.`;
  if (odd.length > 0)
    return `Amps outside those of a sound module${carried ? "" : ", and nothing says why"}: ${ampsWords(odd)}.${besides}`;
  if (said.length > 0) return `${capital(said.join("; "))}.${ampsBesideJoints(day)}${besides}`;
  const none = noFaultWords(day, weighed);
  if (doubts.length === 0) return none;
  // What is not clear must not stand behind a clean bill.
  return `${capital(doubts.join("; "))}.${none === NO_FAULT ? "" : ` Otherwise ${lower(none)}`}`;
}

const UNLESS_STUDS =
  ", unless those taken alone were read on the elements' own studs: then a link, bar or joint is bad";

/** Joints and insulation that are neither bad nor clear of trouble. */
const doubtWords = (day: ReadingsAssessment, told: ReadonlySet<string>): readonly string[] => [
  ...day.joints.filter(({ id }) => !told.has(id)).flatMap(notCleared),
  ...doubtfulInsulation(day).map(({ words }) => words),
];

const NO_FAULT = "No fault shows in the readings.";

/** What is said where nothing is wrong by itself: what could not be decided. */
function noFaultWords({ resistances, joints }: ReadingsAssessment, weighed: ReadonlySet<string>): string {
  const { branches, outcome } = resistances;
  const unclear = branches.filter(({ finding }) => finding === "undecided").map(({ id }) => id);
  if (unclear.length > 0)
    return `No fault shows, but this meter cannot decide ${listed(unclear.slice(0, NAMED))}.`;
  const alone = unjudgedJoints({ joints }, weighed);
  if (alone.length > 0)
    return `No fault shows, but ${alone.length > 1 ? "joints" : "joint"} ${listed(alone.slice(0, NAMED))} could not be judged: a drop alone shows nothing to compare with.`;
  const unknown = outcome !== "no readings" && branches.some(({ finding }) => finding === "not known");
  return unknown ? "No fault shows, but these readings do not settle every branch." : NO_FAULT;
}

/** The module as it stands without what was not read again as left. */
function readAgain(present: ReadingsAssessment, alone: ReadingsAssessment | null): ReadingsAssessment {
  if (alone === null) return present;
  const ids = readAsLeft(alone.resistances);
  const joints = new Set(alone.joints.map(({ id }) => id));
  const { resistances } = present;
  return {
    ...present,
    resistances: {
      ...(alone.resistances.outcome === "no readings" ? alone.resistances : resistances),
      branches: resistances.branches.filter(({ id }) => ids.has(id)),
    },
    insulation: alone.insulation,
    currents: alone.currents,
    joints: present.joints.filter(({ id }) => joints.has(id)),
  };
}

/** What is wrong as found and was not read again. */
function carriedWords(
  present: ReadingsAssessment,
  again: ReadingsAssessment,
  misread: ReadonlySet<string>,
): readonly string[] {
  const ids = new Set(again.resistances.branches.map(({ id }) => id));
  return [
    ...(again.insulation.length > 0
      ? []
      : [...poorInsulation(present), ...doubtfulInsulation(present).map(({ words }) => words)]),
    ...branchWords(tellingBranches(present.resistances, misread).filter(({ id }) => !ids.has(id))),
    ...present.joints.filter((one) => isBadJoint(one) && !again.joints.includes(one)).map(jointWords),
    ...present.joints.filter((one) => !again.joints.includes(one)).flatMap(notCleared),
  ];
}

/** What was found and what was left; what failed on site comes with it. */
function stateLine(input: AnswerInput): string {
  const words = [...oddWords(input.odd).map(capital), moduleLine(input)].join(" ");
  return input.site.length === 0 ? words : `${words} Outside its limit: ${input.site.join("; ")}.`;
}

function moduleLine(input: AnswerInput): string {
  const { asFound, asLeft, verdict, lostLine, module } = input;
  const found =
    asFound === null ? null : wrongWords(asFound, verdict, lostLine.asFound, input.weighedJoints, input);
  if (asLeft === null) return found ?? "Nothing was read: this sheet holds what the record promises.";
  const again = readAgain(asLeft, input.leftAlone);
  const before = asFound !== null && clashing(asFound.resistances);
  const old = carriedWords(asLeft, again, misreadBranches(verdict, module, before));
  const fresh = wrongWords(again, null, lostLine.asLeft, new Set(), input, old.length > 0);
  const left = old.length === 0 ? fresh : `${fresh} Not read again: ${old.join("; ")}.`;
  return found === null ? `As left: ${left}` : `As found: ${found} As left: ${left}`;
}

/** A power that differs from the plate's by less needs no words of its own. */
const NEAR_PLATE = 0.05;

function drawLine(draw: DrawAssessment | null, plate: Watts | null, unknown: boolean): string {
  if (unknown) return "What it will draw is not known before the voltages are.";
  if (draw === null)
    return "What it will draw is not known: the record gives no voltage, or not enough to know every branch.";
  const amps = draw.repaired.lines
    .filter(({ node }) => node !== "N")
    .map(({ node, current }) => `${node} ${current.toFixed(1)} A`);
  const amount = formatQuantity(draw.repaired.power, { unit: "W", as: "kW", significantDigits: 3 });
  const share = plate === null ? 1 : draw.repaired.power / plate;
  const power =
    Math.abs(share - 1) < NEAR_PLATE ? amount : `${amount} (${(share * 100).toFixed(0)} % of the plate)`;
  const off = draw.deviationFromPlate;
  // With branches at the plate's own targets the difference to the plate says nothing.
  const atPlate =
    plate !== null && draw.confirmed && off !== null
      ? `, ${percent(off)} from plate at the plate's voltage`
      : "";
  return draw.confirmed
    ? `In good order it draws ${power} and ${listed(amps)} at the voltage stated${atPlate}.`
    : `With every branch at its measured value where one can be used, else at its target, it draws ${power} and ${listed(amps)} at the voltage stated${atPlate}: not yet something to accept it by.`;
}

/** Things not tested that are named; more are counted. */
const UNTESTED = 3;

function untestedLine(notTested: readonly string[]): string {
  if (notTested.length === 0)
    return "No kind of test that this sheet knows is missing; that is not yet a proof.";
  // Of all that is missing the insulation is what hurts people.
  const insulation = notTested.filter((what) => what.startsWith("insulation"));
  const ordered = [...insulation, ...notTested.filter((what) => !insulation.includes(what))];
  const shown = ordered.slice(0, UNTESTED).map((what) => what.split(":")[0] as string);
  const more = notTested.length - shown.length;
  return `Still untested: ${more > 0 ? `${shown.join(", ")} and ${more} more` : listed(shown)}.`;
}

/** What the answer is made of. */
export interface AnswerInput {
  readonly asFound: ReadingsAssessment | null;
  /** As left, completed by what was not read again. */
  readonly asLeft: ReadingsAssessment | null;
  /** As left by its own readings alone. */
  readonly leftAlone: ReadingsAssessment | null;
  readonly verdict: DiagnosisVerdict | null;
  readonly lostLine: { readonly asFound: string | null; readonly asLeft: string | null };
  readonly module: HeatingModule;
  readonly draw: DrawAssessment | null;
  /** Plate power, W; null without a nameplate. */
  readonly platePower: Watts | null;
  /** What failed of hardware and feed, in words. */
  readonly site: readonly string[];
  /** Whether anything at all was read, either day. */
  readonly anythingRead: boolean;
  /** Joints whose drops as found were weighed with the other readings. */
  readonly weighedJoints: ReadonlySet<string>;
  readonly steps: readonly NextStep[];
  readonly running: string;
  /** Whether the voltages stated are in doubt, and with them what it draws. */
  readonly unknownDraw: boolean;
  readonly notTested: readonly string[];
  /** Whether readings alone may have been taken on own studs without the record saying so. */
  readonly studsUnsaid: boolean;
  /** Readings that look odd in themselves and were not taken again. */
  readonly odd: readonly string[];
  /** Whether the voltages say why amps differ. */
  readonly ampsExplained: boolean;
}

/** The lines. */
export function answerLines(input: AnswerInput): readonly string[] {
  const { steps, running, draw, platePower, notTested, asLeft } = input;
  // The last step is the same for every module: what to read afterwards.
  const pressing = steps.slice(0, -1);
  const more = pressing.length - 1;
  const [first] = pressing;
  const todo =
    first === undefined
      ? asLeft === null
        ? !input.anythingRead
          ? "Read it first."
          : "Nothing to renew on these readings."
        : "Nothing left to renew on the readings as left."
      : `${first.action}${more > 0 ? ` Then ${more} more ${more > 1 ? "steps" : "step"}, listed below.` : ""}`;
  return [
    stateLine(input),
    todo,
    running,
    drawLine(draw, platePower, input.unknownDraw),
    untestedLine(notTested),
  ];
}

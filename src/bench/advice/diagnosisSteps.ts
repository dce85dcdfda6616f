/** What to do about a diagnosis, where the branches and joints themselves do not say it already. */
import type { HeatingModule } from "../../circuit/index.ts";
import type { NextStep } from "../assessTypes.ts";
import { UNEQUAL } from "../day/supplyConcerns.ts";
import type { MeasurementProposal } from "../diagnosis/nextMeasurements.ts";
import type { DiagnosedFault } from "../diagnosis/question/diagnosedFault.ts";
import { faultWithin } from "../diagnosis/telling/likeElements.ts";
import { listed, measurementWords, placeWords, terminalWords } from "../diagnosis/telling/words.ts";
import { branchesOf, type DiagnosisVerdict, isTelling, jointsAmong } from "./diagnosisVerdict.ts";

/** How a bank is drawn. */
const drawnAs = (bank: string, { plan }: HeatingModule): string =>
  (plan.banks.find(({ id }) => id === bank) as HeatingModule["plan"]["banks"][number]).connection;

/** What a lost line asks for. */
export const lostLineWords = (line: string): string =>
  `Isolate and prove dead all three lines (${line} floats live through the elements), then find why ${line} has no voltage: fuse, contact, lug. Judge the module once it is back.`;

/** What comes before elements that amps alone say are of another value. */
const AMPS_ALONE =
  "Before any element is judged find whether the amps are a whole line's at full conduction: the controller, every stage called for, the clamp around every wire of the line, amps of the line and not of one element. Then isolate and read ohms between the lines: only they show whether the elements are of another value.";

/** What banks without supply ask for. */
function unfedAction(banks: readonly string[], { plan }: HeatingModule): string {
  if (banks.length === plan.banks.length) {
    return `Find out whether heat was called for and the contactor in when the amps were read, and read them again at full conduction. If so, have the electrician in charge look for volts between the lines at the ${banks.length > 1 ? "banks'" : "bank's"} terminals, then at the controller, the contactor and all fuses: 0 A does not prove it dead.`;
  }
  const [words, was, own] =
    banks.length > 1
      ? [`banks ${listed(banks)} were`, "they were", "their"]
      : [`bank ${banks[0]} was`, "it was", "its"];
  return `Find out whether ${words} called for when the amps were read, and read them again at full conduction; if ${was}, have the electrician in charge look at ${own} contactor, fuses and feed.`;
}

const NO_VOLTS =
  "Have the electrician in charge find why no line has volts: the main switch, its fuses, the feed. Treat every line as live meanwhile: a reading of 0 V does not prove it dead.";

/** What there is besides a fault: ohms, and no other fault. */
interface Beside {
  readonly ohmsRead: boolean;
  readonly alone: boolean;
}

/** What one fault asks for. */
function actionOf(
  fault: DiagnosedFault,
  module: HeatingModule,
  { ohmsRead, alone }: Beside = { ohmsRead: true, alone: true },
): { readonly action: string; readonly about: readonly string[] } {
  switch (fault.kind) {
    case "element open":
      return {
        action: `Isolate, then open up element ${fault.element}: find whether the coil, its stud joint or its jumper bar is broken, and renew it.`,
        about: [fault.element],
      };
    case "shorted turns":
    case "element off value":
      return {
        action: `Isolate, lift the links of element ${fault.element}, read it alone, and renew it if that confirms it.`,
        about: [fault.element],
      };
    case "joint":
    case "open joint":
      return {
        action: `Isolate, then open ${placeWords(fault.place)}: renew what is burnt, pitted or broken, and remake it.`,
        about: [fault.place],
      };
    case "mis-linked":
      if (fault.as === "neutral") {
        return {
          action:
            "Isolate, then look for what ties the star points to the neutral or the frame, and take it off: as drawn they float.",
          about: [],
        };
      }
      return fault.bank === null
        ? {
            action: `Isolate, then put the links of the star points as drawn: they are ${fault.as}.`,
            about: [],
          }
        : {
            action: `Isolate, then link bank ${fault.bank} in ${drawnAs(fault.bank, module)}, as drawn${alone ? "; links, no parts by these readings" : ""}. ${
              fault.as === "delta"
                ? "Its elements have had √3 times their voltage: look at and read each, its joints and conductors, before use."
                : "Its elements have had less than their voltage: confirm from the maker's data that they are rated for the voltage they then get."
            }`,
            about: [fault.bank],
          };
    case "mis-landed":
      return {
        action: `Isolate, then land branch ${fault.branch} on ${fault.drawn}, as drawn: by these readings it is on ${fault.on}. Where it has been energised like this, look at and read the other branches and their joints before use.`,
        about: [fault.branch],
      };
    case "lost line":
      return {
        action: lostLineWords(fault.line),
        about: [fault.line],
      };
    case "earth fault":
      return {
        action: `Do not energise. Isolate, lift element ${fault.element} at both ends and measure its insulation to the frame alone; clean and dry it, or renew it.`,
        about: [fault.element],
      };
    case "earthed terminal":
      return {
        action: `Do not energise. Isolate, then look at the porcelain, bars and lugs of ${terminalWords(fault.terminal)}; lift what is landed there and measure the terminal alone to the frame; clean and dry it, or renew the porcelain.`,
        about: [],
      };
    case "other rating":
      return {
        action: !ohmsRead
          ? AMPS_ALONE
          : "Isolate, then hold the plate, its voltage and the elements side by side in each branch against the drawing: all elements read alike, and not as drawn, which wear does not do. Do not energise before what is built is known to suit the voltage.",
        about: [],
      };
    case "feed connected":
      return {
        action:
          "Lock out the feed, lift its wires off the module, prove it dead and read all ohms again, those to the frame too, before any element is judged: a transformer's windings or another load lie across the lines in these readings.",
        about: [],
      };
    case "unfed bank":
      return {
        action:
          fault.line === undefined
            ? unfedAction([fault.bank], module)
            : `Isolate and prove dead all three lines (${fault.line} of bank ${fault.bank} floats live through its elements), then have the electrician in charge find why the bank has no voltage there: a pole of its contactor, a fuse, a lug.`,
        about: [],
      };
    case "supply unbalance":
      return {
        action: UNEQUAL,
        about: [],
      };
    case "misread":
      return {
        action: `Take one reading again before anything is decided: ${measurementWords(fault.of)} does not belong to the others. Mind the range, the unit, and where the probes or the clamp lie.`,
        about: [],
      };
  }
}

const isWholeBank = (
  fault: DiagnosedFault,
): fault is Extract<DiagnosedFault, { readonly kind: "unfed bank" }> =>
  fault.kind === "unfed bank" && fault.line === undefined;

/** Faults of one cause, whose step is one: several banks without supply, all lines lost. */
function together(
  faults: readonly DiagnosedFault[],
  module: HeatingModule,
): { readonly action: string; readonly covers: (fault: DiagnosedFault) => boolean } | null {
  const banks = faults.filter(isWholeBank).map(({ bank }) => bank);
  if (banks.length > 1) return { action: unfedAction(banks, module), covers: isWholeBank };
  const isLost = ({ kind }: DiagnosedFault): boolean => kind === "lost line";
  return faults.filter(isLost).length === 3 ? { action: NO_VOLTS, covers: isLost } : null;
}

/** What comes before a clamp where it is this bank or that. */
const CALLED_FOR = "Find out which banks were called for when the amps were read. ";

/** The step that a diagnosis asks for; none where the module is sound or a branch or joint says it already. */
export function diagnosisSteps(input: {
  readonly verdict: DiagnosisVerdict;
  readonly module: HeatingModule;
  /** Whether ohms were read at all; taken so if left out. */
  readonly ohmsRead?: boolean;
  /** Branches and joints found bad by their own readings, and a line found lost. */
  readonly covered: ReadonlySet<string>;
  /** Looks for measurements that would part the explanations, best first: only where it comes to that. */
  readonly proposals: () => readonly MeasurementProposal[];
}): readonly NextStep[] {
  const { verdict, module, ohmsRead = true, covered, proposals } = input;
  const { kind, explanations, words } = verdict;
  if (!isTelling(verdict)) return [];
  const told = (fault: DiagnosedFault): boolean =>
    (fault.kind === "lost line" && covered.has(fault.line)) ||
    ((fault.kind === "joint" || fault.kind === "open joint") && covered.has(fault.place)) ||
    branchesOf(fault, module).some((branch) => covered.has(branch));
  if (explanations.every(({ faults }) => faults.length > 0 && faults.every(told))) return [];
  const [first] = explanations;
  if (kind === "settled" && first !== undefined) {
    // A misread one is among the odd readings, which come first.
    const joined = together(first.faults, module);
    const single = first.faults
      .filter((fault) => !told(fault) && fault.kind !== "misread" && joined?.covers(fault) !== true)
      .map((fault) => ({
        ...actionOf(fault, module, { ohmsRead, alone: first.faults.length === 1 }),
        reason: `${words}.`,
      }));
    return joined === null ? single : [{ action: joined.action, reason: `${words}.`, about: [] }, ...single];
  }
  const within = kind === "not told apart" ? faultWithin(explanations) : null;
  if (within !== null && within.kind !== "earth fault") {
    return [
      {
        action: `Isolate, lift the links of branch ${within.branch} and read its elements one by one.`,
        reason: `${words}.`,
        about: within.elements,
      },
    ];
  }
  // One of them is bad for certain: opened dead, before anything is measured across it under voltage.
  const joints = jointsAmong(verdict);
  if (joints.length > 0) {
    return [
      {
        action: `Isolate, then open ${listed(joints.map(placeWords))}, one after the other: renew what is burnt, pitted or broken, and remake it.`,
        reason: `${words}.`,
        about: joints,
      },
    ];
  }
  const [best] = proposals();
  const about = [
    ...new Set(explanations.flatMap(({ faults }) => faults.flatMap((one) => actionOf(one, module).about))),
  ];
  return [
    {
      action:
        best === undefined
          ? "Isolate, then look at each of these places before renewing anything: no single further reading tells them apart."
          : `${explanations.every(({ faults }) => faults.some(isWholeBank)) ? CALLED_FOR : ""}${best.instruction}`,
      reason: `${words}.${best === undefined ? "" : ` Of all single readings, ${measurementWords(best.measurement)} tells most.`}`,
      about,
    },
  ];
}

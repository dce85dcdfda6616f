/** Whether a module may run meanwhile, in one sentence; the people on site decide. */

import type { Fault } from "../../circuit/index.ts";
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import { contactMeanwhile } from "../day/contactConcerns.ts";
import { insulationRunning } from "../day/insulationConcerns.ts";
import { isBadJoint, jointsByName } from "../day/joints.ts";
import { scanBefore, scanMeanwhile } from "../day/scanConcerns.ts";
import { undecidedMeanwhile } from "../day/undecidedJoints.ts";
import { listed } from "../diagnosis/telling/words.ts";
import { beyondRunning } from "./beyondElements.ts";
import { allOpen } from "./branchSteps.ts";
import { clashing, tellingBranches } from "./diagnosisVerdict.ts";
import { type OpenModule, openFaults, openWords } from "./runningOpen.ts";

const NOTHING_READ = "Not known: nothing was read.";

/** The sentence. */
export function runningWords(input: {
  /** The module as it stands; null where nothing was read. */
  readonly present: ReadingsAssessment | null;
  readonly lostLine: string | null;
  /** Faults that forbid voltage, in words. */
  readonly forbidding: readonly string[];
  /** Why nobody can say at these voltages, or what comes before any; null where they are in order. */
  readonly voltage: string | null;
  /** What the diagnosis says of it, beyond branches and joints. */
  readonly diagnosed: string | null;
  /** Elements that the diagnosis settles on as open, where it settles on nothing else; of like ones the first. None if left out. */
  readonly elementsOpen?: readonly string[];
  readonly anythingRead: boolean;
  /** Joints that nothing has judged. */
  readonly unjudgedJoints: readonly string[];
  /** What a joint that the diagnosis names asks for before any voltage; null where it names none. */
  readonly jointFirst: string | null;
  /** The same of joints of which it is one for certain. */
  readonly jointAmong: string | null;
  /** Whether links against the drawing are certain: they explain why the readings clash on it. */
  readonly drawingVoid: boolean;
  /** Branches whose readings, as drawn, say nothing of their elements. */
  readonly misread: ReadonlySet<string>;
  /** Branches read on their own studs: no link or joint is in what they read. */
  readonly onStuds: ReadonlySet<string>;
  /** What readings that look odd ask for first; null where none does. */
  readonly odd: string | null;
  /** The module with its elements sound, and its supply; null where either is not known. */
  readonly sound: OpenModule | null;
}): string {
  const { present, lostLine, forbidding, jointFirst, misread, sound } = input;
  if (present === null) return NOTHING_READ;
  const { resistances, joints } = present;
  const branches = tellingBranches(resistances, misread);
  const found = (...kinds: readonly string[]): string[] =>
    branches.filter(({ finding }) => kinds.includes(finding)).map(({ id }) => id);
  const shorted = found("shorted");
  if (shorted.length > 0)
    return `Do not energise it: ${listed(shorted)} ${shorted.length > 1 ? "are" : "is"} as good as bolted.`;
  if (forbidding.length > 0) return `Do not energise it: ${forbidding.join("; ")}.`;
  const bad = joints.filter(isBadJoint).map(({ id }) => id);
  if (bad.length > 0) {
    return `Not on ${jointsByName(bad)}: a hot joint feeds on its own heat until it burns open. Remake ${bad.length > 1 ? "them" : "it"} first.`;
  }
  if (jointFirst !== null) return jointFirst;
  const beyond = input.drawingVoid ? null : beyondRunning(resistances);
  if (beyond !== null) return beyond;
  if (input.jointAmong !== null) return input.jointAmong;
  if (input.odd !== null) return input.odd;
  if (lostLine !== null)
    return `Not before ${lostLine} is back and the module has been read on all three lines.`;
  const insulation = insulationRunning(present);
  if (insulation !== null) return insulation;
  if (clashing(resistances) && !input.drawingVoid) {
    return "Not known: the readings contradict each other.";
  }
  if (allOpen(branches))
    return "Not before the meter and what these readings share are checked: no branch shows a path.";
  const off = branches.filter(({ finding }) => finding === "outside");
  const low = off.filter(({ deviation }) => (deviation as number) < 0).map(({ id }) => id);
  if (low.length > 0) {
    return `Not before ${listed(low)} ${low.length > 1 ? "are" : "is"} explained: touching turns or a path beside ${low.length > 1 ? "them overload" : "it overload"} what is left.`;
  }
  const partly = off.filter(({ openElements }) => openElements !== null).map(({ id }) => id);
  const high = [...off.map(({ id }) => id).filter((id) => !partly.includes(id)), ...found("high")];
  const linked = high.filter((id) => !input.onStuds.has(id));
  if (linked.length > 0) {
    return `Not before the joints of ${listed(linked)} are cleared: what reads high may be one of them, and a bad joint burns on.`;
  }
  if (high.length > 0)
    return `Not before ${listed(high)} ${high.length > 1 ? "are" : "is"} renewed, or explained by the maker of the elements: high on ${high.length > 1 ? "their" : "its"} own studs, where no joint is in the reading, and a coil that thins burns through.`;
  const scanned = scanBefore(present) ?? contactMeanwhile(present) ?? undecidedMeanwhile(present);
  if (scanned !== null) return scanned;
  if (input.voltage !== null) return input.voltage;
  const open = [...found("open"), ...partly];
  const insulationRead = present.insulation.length > 0;
  if (open.length > 0) {
    return sound === null
      ? `Not known: neither nameplate nor voltages say what is left with ${listed(open)} open. The open ends are live under voltage.`
      : openWords({ sound, faults: openFaults(sound, branches), insulationRead });
  }
  // No target says how low a branch may read; one that cannot be told from a bolted path is not cleared for it.
  const blind = branches.filter(
    ({ finding, resistance, expandedUncertainty }) =>
      finding === "unjudged" && typeof resistance === "number" && resistance <= (expandedUncertainty ?? 0),
  );
  if (blind.length > 0)
    return `Not before ${listed(blind.map(({ id }) => id))} is explained: this meter cannot tell it from a bolted short, and no nameplate says what it should read.`;
  // Amps, or ohms with the links in, may settle on an open element that no branch by itself shows.
  const { elementsOpen = [] } = input;
  if (elementsOpen.length > 0 && sound !== null) {
    const faults = elementsOpen.map((id): Fault => ({ kind: "open", id }));
    return openWords({ sound, faults, insulationRead });
  }
  if (input.diagnosed !== null) return input.diagnosed;
  if (input.unjudgedJoints.length > 0)
    return `Not known: ${jointsByName(input.unjudgedJoints)} could not be judged, for nothing was read beside ${input.unjudgedJoints.length > 1 ? "them" : "it"} to compare with.`;
  const unjudged = present.insulation.filter(({ verdict }) => verdict === null);
  if (unjudged.length > 0)
    return `Not known: ${listed(unjudged.map(({ label }) => label))} is not judged by every limit without the voltage of the supply.`;
  const meanwhile = scanMeanwhile(present);
  if (meanwhile !== null) return meanwhile;
  return input.anythingRead
    ? "Nothing read here speaks against running it; what is not tested has not passed."
    : NOTHING_READ;
}

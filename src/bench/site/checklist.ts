/** The list to go through before and after the supply is closed again, in the order of safe work. Common practice, no published source. */

import type {
  ChecklistItem,
  CommissioningAssessment,
  FeedAssessment,
  Figure,
  HardwareAssessment,
  ReadingsAssessment,
} from "../assessmentTypes.ts";
import type { BranchFinding, JointAssessment } from "../assessTypes.ts";
import { clearsLimit, doubtfulInsulation, poorInsulation } from "../day/insulationConcerns.ts";
import { isBadJoint, isGoodDrop, isWarmJoint } from "../day/joints.ts";
import { isSuspectJoint } from "../day/scanConcerns.ts";
import { type Evidence, evidenceOf, TO_DO } from "./evidence.ts";
import { UNSPLIT } from "./feedNorthAmerica.ts";

/** What a list is made from; what is `null` is not in the record. */
export interface ChecklistSource {
  readonly asFound: ReadingsAssessment | null;
  readonly asLeft: ReadingsAssessment | null;
  readonly hardware: readonly HardwareAssessment[];
  readonly feed: FeedAssessment | null;
  readonly commissioning: CommissioningAssessment | null;
}

const FAULTY: readonly BranchFinding[] = ["outside", "open", "shorted", "high"];

/** Branches as left: all sound, one faulty, or not settled. As found is no evidence of the repair. */
function branchEvidence({ asLeft, asFound }: ChecklistSource): Evidence {
  const before = (asFound?.resistances.branches ?? []).filter(({ finding }) => FAULTY.includes(finding));
  const found = before.length === 0 ? null : `As found faulty: ${before.map(({ id }) => id).join(", ")}.`;
  if (asLeft === null || asLeft.resistances.outcome === "no readings")
    return { state: "to do", evidence: found };
  const { branches, consistency } = asLeft.resistances;
  const faulty = branches
    .filter(({ finding }) => FAULTY.includes(finding))
    .map(({ id, finding }) => `${id} ${finding}`);
  if (faulty.length > 0) return { state: "not passed", evidence: `As left: ${faulty.join(", ")}.` };
  if (consistency === "inconsistent") {
    return { state: "not passed", evidence: "The readings as left contradict each other." };
  }
  const unclear = branches
    .filter(({ finding }) => finding !== "sound")
    .map(({ id, finding }) => `${id} ${finding}`);
  if (unclear.length > 0) return { state: "to do", evidence: `As left: ${unclear.join(", ")}.` };
  return { state: "done", evidence: "As left every branch is judged sound." };
}

type Torques = Pick<HardwareAssessment, "id" | "figures">;

/** Torque figures of each kind of fastening that count as evidence. */
const torquesOf = (hardware: readonly HardwareAssessment[]): readonly Torques[] =>
  hardware.map(({ id, figures }) => {
    const applied = figures.filter(({ label }) => label === "torque applied");
    const stress =
      applied.length === 0
        ? []
        : figures.filter(({ verdict, unit }) => unit === "1" && verdict === "outside");
    return { id, figures: [...applied.filter(({ verdict }) => verdict !== null), ...stress] };
  });

const isOutside = ({ verdict }: Figure): boolean => verdict === "outside";

/** Fastenings with figures outside their limits, with those figures. */
export const failedTorques = (hardware: readonly HardwareAssessment[]): readonly Torques[] =>
  torquesOf(hardware)
    .map(({ id, figures }) => ({ id, figures: figures.filter(isOutside) }))
    .filter(({ figures }) => figures.length > 0);

/** Fastenings whose torque to use overstresses them, before anyone has applied it. */
export const overstressing = (hardware: readonly HardwareAssessment[]): readonly Torques[] =>
  hardware
    .filter(({ figures }) => figures.every(({ label }) => label !== "torque applied"))
    .map(({ id, figures }) => ({ id, figures: figures.filter(isOutside) }))
    .filter(({ figures }) => figures.length > 0);

/** Figures of what is installed. */
const installedFigures = (feed: FeedAssessment | null): readonly Figure[] =>
  (feed?.figures ?? []).filter(({ label }) => label.includes("as installed"));

/** What is installed and outside its limits. */
export const failedFeed = (feed: FeedAssessment | null): readonly Figure[] =>
  installedFigures(feed).filter(isOutside);

/** Torque of every fastening: all of them must have been written down, and none may overstress its stud. */
function torqueEvidence({ hardware }: ChecklistSource): Evidence {
  const torques = torquesOf(hardware);
  const evidence = evidenceOf(
    torques.flatMap(({ id, figures }) => figures.map((one) => ({ ...one, label: `${id}: ${one.label}` }))),
  );
  const missing = torques.filter(({ figures }) => figures.length === 0).map(({ id }) => id);
  if (evidence.state !== "done" || missing.length === 0) return evidence;
  return { state: "to do", evidence: `${evidence.evidence} No torque to judge at ${missing.join(", ")}.` };
}

const PARTS = ["conductor", "overcurrent device"] as const;

/** What is installed and found no answer: beyond a table is not within it. */
export const unansweredFeed = (figures: readonly Figure[]): readonly string[] =>
  figures
    .filter(({ label, value }) => value === null && label.includes("as installed"))
    .map(({ label }) => label);

/** Conductor and device are judged together: one of them within its limits says nothing of the other. */
function bothInstalled(figures: readonly Figure[]): Evidence {
  const evidence = evidenceOf(figures);
  const silent = unansweredFeed(figures);
  if (silent.length > 0 && evidence.state !== "not passed")
    return { state: "to do", evidence: `Not answered: ${silent.join(", ")}.` };
  const missing = PARTS.filter((part) => figures.every(({ label }) => !label.startsWith(part)));
  if (evidence.state !== "done" || missing.length === 0) return evidence;
  return { state: "to do", evidence: `${evidence.evidence} Not in the record: ${missing.join(", ")}.` };
}

/** What is installed against the code. Whether a load is split into circuits nobody can read from the feed before the split. */
function feedEvidence({ feed }: ChecklistSource): Evidence {
  const evidence = bothInstalled(installedFigures(feed));
  const whole = feed?.figures.find(({ label, verdict }) => label === UNSPLIT && verdict === "outside");
  if (whole === undefined || evidence.state === "not passed") return evidence;
  const said = evidence.evidence === null ? "" : `${evidence.evidence} `;
  return { state: "to do", evidence: `${said}${whole.caution}` };
}

/** What one of a joint's two verdicts, its drop among like joints or its rise by the scale, says of it. */
function jointState(joint: JointAssessment, what: "drop" | "rise"): "bad" | "unclear" | "good" | null {
  const { resistance, rise } = joint;
  if (what === "drop") {
    if (resistance === null) return null;
    return isBadJoint({ ...joint, rise: null }) ? "bad" : isGoodDrop(joint) ? "good" : "unclear";
  }
  if (rise === null) return null;
  if (isBadJoint({ ...joint, comparison: "nothing to compare with", contact: null })) return "bad";
  return rise.level === 0 ? "good" : "unclear";
}

/** Joints as left: one to be opened fails, one on a lower row of the scale or not decided is still to be looked at. */
function jointEvidence(joints: readonly JointAssessment[], what: "drop" | "rise"): Evidence {
  const of = (state: "bad" | "unclear" | "good"): string =>
    joints
      .filter((one) => jointState(one, what) === state)
      .map(({ id }) => id)
      .join(", ");
  const [bad, unclear, good] = [of("bad"), of("unclear"), of("good")];
  if (bad !== "") return { state: "not passed", evidence: `As left to be opened: ${bad}.` };
  if (unclear !== "") return { state: "to do", evidence: `As left not settled: ${unclear}.` };
  return good === "" ? TO_DO : { state: "done", evidence: `As left nothing found at ${good}.` };
}

/** Joints that stood out as found, as left: a torque is no proof of a clean contact, and a joint nobody read again is still to be read. */
function remadeEvidence(suspects: readonly string[], after: readonly JointAssessment[]): Evidence {
  const verdicts = (["drop", "rise"] as const).map((what) => jointEvidence(after, what));
  const failed = verdicts.find(({ state }) => state === "not passed");
  if (failed !== undefined) return failed;
  const good = after
    .filter((one) => jointState(one, "drop") === "good" || jointState(one, "rise") === "good")
    .map(({ id }) => id);
  const open = suspects.filter((id) => !good.includes(id));
  if (open.length > 0) return { state: "to do", evidence: `Not yet shown good as left: ${open.join(", ")}.` };
  return { state: "done", evidence: `As left nothing found at ${suspects.join(", ")}.` };
}

/**
 * Limits for insulation differ by 500 to 1: within all of them is done, outside all of them is not passed, and between the two the
 * maker's own figure decides.
 */
function insulationEvidence({ asLeft }: ChecklistSource): Evidence {
  const judged = (asLeft?.insulation ?? []).filter(({ verdict }) => verdict !== null);
  if (asLeft === null || judged.length === 0) return TO_DO;
  // What forbids voltage in the answer does not pass here, whatever the laxer limits say.
  const poor = poorInsulation(asLeft);
  if (poor.length > 0) {
    return { state: "not passed", evidence: `As left: ${poor.join("; ")}.` };
  }
  const nodes = new Map<string, Figure[]>();
  for (const one of judged) {
    const node = one.label.slice(0, one.label.lastIndexOf(", "));
    nodes.set(node, [...(nodes.get(node) ?? []), one]);
  }
  const failed = [...nodes].filter(([, figures]) => figures.every(({ verdict }) => verdict === "outside"));
  if (failed.length > 0) {
    return {
      state: "not passed",
      evidence: `Outside every limit: ${failed.map(([node]) => node).join(", ")}.`,
    };
  }
  // A limit for another test voltage than that of the codes' least is cleared by the figure, if not by its own test.
  const other = asLeft.insulation.filter((one) => one.verdict === "undecided" && clearsLimit(one));
  const passed = asLeft.insulation.every((one) => one.verdict === "within" || other.includes(one));
  if (passed && doubtfulInsulation(asLeft).length === 0) {
    const named = other.map(({ label }) => label).join(", ");
    return {
      state: "done",
      evidence: `Within every limit that is named${named === "" ? "" : `; read below the test voltage of ${named}`}.`,
    };
  }
  const below = asLeft.insulation.filter(({ verdict }) => verdict !== "within").map(({ label }) => label);
  return {
    state: "to do",
    evidence: `Not within: ${below.join("; ")}. Published limits disagree: the maker's own figure decides.`,
  };
}

/** Expected amps as text, beside their item. */
function expectedAmps(commissioning: CommissioningAssessment | null): string {
  const lines = (commissioning?.lines ?? []).filter(({ unit, limit }) => unit === "A" && limit !== null);
  const said = lines.map(({ label, value, limit }) => {
    const side = (amps: number | null | undefined): string =>
      typeof amps === "number" ? amps.toFixed(1) : "…";
    const expected = (value as number).toFixed(1);
    return `${label.replace("line current ", "")} ${expected} A (${side(limit?.low)} to ${side(limit?.high)})`;
  });
  return said.length === 0 ? "" : `: ${said.join(", ")}`;
}

/**
 * The list: isolation first, then joints, resistances, insulation, links, covers and protection; amps and scan in the first heat; and
 * the nuts once cold, where there are nuts in the record. Isolation, links and covers nobody can read from a record: they are always to do.
 */
export function checklist(source: ChecklistSource): readonly ChecklistItem[] {
  const { asLeft, hardware, commissioning } = source;
  const before = (text: string, evidence: Evidence): ChecklistItem => ({
    phase: "before energising",
    text,
    ...evidence,
  });
  const heat = (text: string, evidence: Evidence): ChecklistItem => ({
    phase: "first heat",
    text,
    ...evidence,
  });
  const suspects = (source.asFound?.joints ?? [])
    .filter((one) => isBadJoint(one) || isSuspectJoint(one) || isWarmJoint(one))
    .map(({ id }) => id);
  const after = (asLeft?.joints ?? []).filter(({ id }) => suspects.includes(id));
  const names = hardware.map(({ id }) => id).join(", ");
  return [
    before(
      "Isolate, lock out, tag, and prove dead at the point of work with a tester proved before and after.",
      TO_DO,
    ),
    ...(suspects.length === 0
      ? []
      : [
          before(
            `Remake on clean metal, with new nuts and washers: ${suspects.join(", ")}.`,
            remadeEvidence(suspects, after),
          ),
        ]),
    before("Tighten every nut to its torque, the inner nut held.", torqueEvidence(source)),
    before(
      "Compare like joints with a four-wire meter; by their drops only in the first heat.",
      jointEvidence(asLeft?.joints ?? [], "drop"),
    ),
    before(
      "Read every branch as left: no energising with a branch that is not sound.",
      branchEvidence(source),
    ),
    before(
      "Insulation to the frame, with semiconductors and controls disconnected; discharge afterwards.",
      insulationEvidence(source),
    ),
    before(
      "Links, jumper bars and star points as drawn; line wires on their own studs; no tool or offcut left inside.",
      TO_DO,
    ),
    before("Conductors, terminals and overcurrent protection fit the load.", feedEvidence(source)),
    before(
      "Protective earth connected and proved, covers and guards on, air flow, overtemperature cut-out and interlocks proved.",
      TO_DO,
    ),
    heat(
      `Amps of every line at full conduction, with the volts at the same time${expectedAmps(commissioning)}.`,
      evidenceOf(asLeft?.currents ?? []),
    ),
    heat(
      "Thermal scan of terminals and joints at steady load, by qualified persons only.",
      jointEvidence(asLeft?.joints ?? [], "rise"),
    ),
    ...(hardware.length === 0
      ? []
      : [
          {
            phase: "after cooling down" as const,
            text: `Isolate again and prove dead; look at the nuts of ${names} cold: re-torque only where the maker asks for it, and never over a conical washer that is flat.`,
            ...TO_DO,
          },
        ]),
  ];
}

/** The readings of one day as lines of a text report: branches, readings, joints. */
import { formatQuantity, formatUncertain, type Ohms, type Open } from "../../quantity/index.ts";
import type { BranchAssessment, JointAssessment, JointRise, ResistanceAssessment } from "../assessTypes.ts";
import { isTooHot, isWarm } from "../day/contactHeat.ts";
import { table, wrap } from "./layout.ts";
import { ratioText } from "./shown.ts";

/** A signed percentage. */
export const percent = (ratio: number): string => {
  const shown = (Math.abs(ratio) * 100).toFixed(1);
  const sign = shown === "0.0" ? " " : ratio < 0 ? "−" : "+";
  return `${sign}${shown} %`;
};
/** Ohms to hundredths. */
export const ohms = (value: number): string => formatQuantity(value as Ohms, { unit: "Ω", decimals: 2 });

function measured(value: Ohms | Open | null, uncertainty: Ohms | null, atLeast: Ohms | null): string {
  if (value === "open") return "open";
  if (value === null)
    return atLeast === null
      ? "not known"
      : `at least ${formatQuantity(atLeast, { unit: "Ω", significantDigits: 2 })}`;
  return uncertainty === null
    ? ohms(value)
    : formatUncertain(value, { unit: "Ω", uncertainty, uncertaintyDigits: 1 });
}

const VERDICTS: Readonly<Record<BranchAssessment["finding"], string>> = {
  sound: "WITHIN",
  undecided: "UNDECIDED",
  unjudged: "-",
  outside: "OUTSIDE",
  open: "OPEN",
  shorted: "SHORTED",
  high: "HIGH or open",
  "not known": "-",
};

/** The branches of a day, leads and agreement. */
export function resistanceLines(found: ResistanceAssessment): string[] {
  if (found.outcome === "no readings") return ["  No ohm readings in the record."];
  const rows = found.branches.map((branch) => [
    branch.id,
    measured(branch.resistance, branch.standardUncertainty, branch.atLeast),
    branch.target === null ? "-" : ohms(branch.target),
    branch.deviation === null ? "" : percent(branch.deviation),
    VERDICTS[branch.finding],
  ]);
  const leads =
    found.leads === null || found.leadsUncertainty === null
      ? "Leads: not determined by these readings."
      : found.leadsUncertainty === 0
        ? "Leads: taken off before recording."
        : `Leads and probe contact: ${measured(found.leads, found.leadsUncertainty, null)}, taken off.`;
  const agreement = {
    consistent: "agree with each other",
    inconsistent: "CONTRADICT EACH OTHER",
    untestable: "leave none to spare for a cross-check",
  }[found.consistency];
  const chi =
    found.pValue === null
      ? ""
      : ` (χ² ${found.chiSquare.toFixed(1)} with ${found.degreesOfFreedom} to spare, p ${found.pValue < 0.001 ? "below 0.001" : found.pValue.toFixed(3)})`;
  const rule = found.branches.find((branch) => branch.judgement !== null)?.judgement?.rule;
  return [
    ...table([["branch", "measured", "target", "deviation", "verdict"], ...rows]),
    ...(rule === undefined ? [] : [`  Verdicts against ${rule}, at two standard uncertainties.`]),
    `  ${leads}`,
    wrap(
      `The readings ${agreement}${chi}. In brackets: standard uncertainty in the last digit${found.consistency === "inconsistent" ? ", enlarged to cover the contradiction" : ""}.`,
      "  ",
    ),
  ];
}

/** Each reading beside what a sound module would show: all there is to see where branches cannot be told apart. */
export function readingLines({ readings, expectedReadings, leads }: ResistanceAssessment): string[] {
  const rows = readings.map(({ from, to, reads }, i) => {
    const sound = expectedReadings[i] ?? null;
    const bare = reads === "open" || leads === null ? null : reads - leads;
    return [
      `${from} to ${to}`,
      reads === "open" ? "OL" : ohms(reads),
      bare === null ? "" : ohms(bare),
      sound === null ? "-" : sound === "open" ? "OL" : ohms(sound),
      bare === null || typeof sound !== "number" ? "" : percent(bare / sound - 1),
    ];
  });
  return table([["probes", "read", "less leads", "sound module", "deviation"], ...rows]);
}

/** Whether a joint is the one that its like are graded over: it stands 0 K over itself, whatever it stands over the air. */
const isCoolest = ({ fullLoadHigh }: JointRise): boolean => fullLoadHigh === 0;

/** Joints, worst first. */
export function jointLines(joints: readonly JointAssessment[]): string[] {
  const rows = joints.map((joint) => {
    const { id, resistance, power, ratioToBest, comparison, rise } = joint;
    return [
      id,
      resistance === null ? "-" : formatQuantity(resistance, { unit: "Ω", as: "µΩ", significantDigits: 3 }),
      power === null ? "-" : formatQuantity(power, { unit: "W", significantDigits: 3 }),
      ratioToBest === null ? "-" : `${ratioText(ratioToBest)}×`,
      rise === null ? "-" : `${rise.measured.toFixed(0)} K`,
      comparison === "investigate"
        ? "INVESTIGATE"
        : isTooHot(joint)
          ? "TOO MUCH"
          : isWarm(joint)
            ? "not cleared"
            : comparison,
    ];
  });
  const scanned = joints.flatMap(({ id, rise }) =>
    rise === null
      ? []
      : [
          isCoolest(rise)
            ? `${id}: the coolest of its kind, which the others are graded over`
            : `${id}: ${rise.fullLoadLow.toFixed(0)} to ${rise.fullLoadHigh.toFixed(0)} K at full load, ${rise.action}`,
        ],
  );
  const rules = [
    ...(joints.some(({ resistance }) => resistance !== null) ? [(joints[0] as JointAssessment).rule] : []),
    // What the drops by themselves raise no doubt about needs no rule to be read.
    ...new Set(joints.flatMap((one) => (isTooHot(one) || isWarm(one) ? (one.contact?.rule ?? []) : []))),
    ...new Set(joints.flatMap(({ rise }) => rise?.rule ?? [])),
  ];
  return [
    ...table([["joint", "resistance", "heat", "to best", "over air", "by drop"], ...rows]),
    ...scanned.map((words) => wrap(words, "  ")),
    ...rules.map((rule) => wrap(rule, "  ")),
  ];
}

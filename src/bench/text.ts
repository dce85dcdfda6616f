/** The assessment as plain text, for a terminal or a job sheet: first the answer, then the evidence. */
import { formatQuantity, formatUncertain, type Ohms, type Open, type Watts } from "../quantity/index.ts";
import type {
  BranchAssessment,
  Draw,
  JointAssessment,
  ModuleAssessment,
  ResistanceAssessment,
  WhatIfRow,
} from "./assessTypes.ts";
import { bullet, heading, table, WIDTH, wrap } from "./layout.ts";
import { ratioText } from "./shown.ts";

/** Names of elements that do the same, in the first column. */
const NAMES_WIDTH = 26;

const percent = (ratio: number): string => {
  const shown = (Math.abs(ratio) * 100).toFixed(1);
  const sign = shown === "0.0" ? " " : ratio < 0 ? "−" : "+";
  return `${sign}${shown} %`;
};
const kilowatts = (power: Watts): string =>
  formatQuantity(power, { unit: "W", as: "kW", significantDigits: 4 });
const ohms = (value: number): string => formatQuantity(value as Ohms, { unit: "Ω", decimals: 2 });
const amps = (lines: Draw["lines"]): string =>
  lines.map(({ node, current }) => `${node} ${current.toFixed(1)} A`).join("   ");

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

function resistanceLines(found: ResistanceAssessment): string[] {
  if (found.outcome === "no readings") return ["  No ohm readings in the record."];
  const rows = found.branches.map((branch) => [
    branch.id,
    measured(branch.resistance, branch.standardUncertainty, branch.atLeast),
    ohms(branch.target),
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
function readingLines({ readings, expectedReadings, leads }: ResistanceAssessment): string[] {
  const rows = readings.map(({ from, to, reads }, i) => {
    const sound = expectedReadings[i] ?? "open";
    const bare = reads === "open" || leads === null ? null : reads - leads;
    return [
      `${from} to ${to}`,
      reads === "open" ? "OL" : ohms(reads),
      bare === null ? "" : ohms(bare),
      sound === "open" ? "OL" : ohms(sound),
      bare === null || sound === "open" ? "" : percent(bare / sound - 1),
    ];
  });
  return table([["probes", "read", "less leads", "sound module", "deviation"], ...rows]);
}

/** What the plate promises: whole module first, then each kind of bank. */
function targetLines({ targets }: ModuleAssessment): string[] {
  const total = targets.reduce((sum, { targets: t }) => sum + t.lineCurrent, 0);
  const cold = targets.reduce((sum, { targets: t }) => sum + (t.coldLineCurrent ?? 0), 0);
  const start = cold > 0 ? `, ${cold.toFixed(1)} A in the first second from cold` : "";
  const kinds = new Map<string, string[]>();
  for (const { bank, targets: t } of targets) {
    const coldOhms = t.elementResistanceCold === null ? "" : `, ${ohms(t.elementResistanceCold)} cold`;
    const kind = `${t.bankLineCurrent.toFixed(1)} A a line; one element ${ohms(t.elementResistanceHot)} hot${coldOhms}, ${t.branchVoltage.toFixed(0)} V across its branch`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), bank]);
  }
  return [
    `  Whole module: ${total.toFixed(1)} A a line at plate voltage${start}.`,
    ...[...kinds].map(([kind, banks]) =>
      wrap(`${banks.length > 1 ? "Banks" : "Bank"} ${banks.join(", ")}: ${kind}.`, "  "),
    ),
  ];
}

function drawLines(assessment: ModuleAssessment): string[] {
  const { asFound, repaired, repairedAtPlateVoltage: plate, deviationFromPlate, basis } = assessment.draw;
  const power = ({ power, standardUncertainty: u }: Draw): string =>
    u === null ? kilowatts(power) : `${(power / 1000).toFixed(2)} ± ${((2 * u) / 1000).toFixed(2)} kW`;
  const rows = [
    ...(asFound === null ? [] : [`  As found            ${power(asFound)}   ${amps(asFound.lines)}`]),
    `  ${assessment.draw.confirmed ? "Faulty ones renewed" : "Known branches kept"} ${power(repaired)}   ${amps(repaired.lines)}`,
    `  At plate voltage    ${power(plate)}   ${amps(plate.lines)}   ${percent(deviationFromPlate).trim()} from plate`,
  ];
  const from =
    asFound !== null && basis === "nameplate" ? "measured resistances (as found) and nameplate" : basis;
  return [...rows, `  From ${from}; ± is two standard uncertainties.`];
}

/** Elements whose loss does the same to three digits, written once. */
function whatIfLines(rows: readonly WhatIfRow[]): string[] {
  const grouped = new Map<string, { elements: string[]; cells: string[] }>();
  for (const row of rows) {
    const cells = [
      kilowatts(row.power),
      percentOf(row.powerRatio),
      ...row.lines.map(({ current }) => current.toFixed(1)),
      row.worst === null ? "none left" : `${row.worst.id} ${row.worst.powerRatio.toFixed(2)}×`,
      row.gapVoltage === null ? "unknown, live" : `${row.gapVoltage.toFixed(0)} V`,
    ];
    // The survivor's name differs within a group of like elements; its stress does not.
    const key = [...cells.slice(0, -2), row.worst?.powerRatio.toFixed(2), cells.at(-1)].join("|");
    const group = grouped.get(key);
    if (group === undefined) grouped.set(key, { elements: [row.element], cells });
    else group.elements.push(row.element);
  }
  const nodes = (rows[0]?.lines ?? []).map(({ node }) => `${node} A`);
  const header = ["opens", "power", "of full", ...nodes, "hardest survivor", "across break"];
  return table([
    header,
    ...[...grouped.values()].flatMap(({ elements, cells }) => {
      const [first = "", ...more] = wrap(elements.join(", "), "", NAMES_WIDTH).split("\n");
      return [[first, ...cells], ...more.map((names) => [names, ...cells.map(() => "")])];
    }),
  ]);
}

const percentOf = (ratio: number): string => `${(ratio * 100).toFixed(1)} %`;

function jointLines(joints: readonly JointAssessment[]): string[] {
  const rows = joints.map(({ id, resistance, power, ratioToBest, comparison }) => [
    id,
    formatQuantity(resistance, { unit: "Ω", as: "µΩ", significantDigits: 3 }),
    formatQuantity(power, { unit: "W", significantDigits: 3 }),
    ratioToBest === null ? "-" : `${ratioText(ratioToBest)}×`,
    comparison === "investigate" ? "INVESTIGATE" : comparison,
  ]);
  const rule = joints[0]?.rule ?? "";
  return [...table([["joint", "resistance", "heat", "to best", "verdict"], ...rows]), wrap(rule, "  ")];
}

/**
 * An assessment as plain text: the next steps first, then readings, draw, what-if, joints, assumptions and cautions.
 * @param assessment - from {@link assessModule}
 * @returns text of at most about 100 columns, lines ending in `\n`; the same assessment always gives the same text
 * @source layout of our own
 * @example
 * ```ts
 * const record: BenchRecord = {
 *   title: "invented kiln",
 *   nameplate: { power: "30 kW", voltage: "480 V" },
 *   wiring: { banks: [{ id: "A", connection: "delta" }] },
 * };
 * assessmentText(assessModule(record)).split("\n")[0] // => "invented kiln"
 * ```
 * @since 0.1.0
 */
export function assessmentText(assessment: ModuleAssessment): string {
  const { title, nextSteps, resistances, whatIf, joints } = assessment;
  const steps = nextSteps.flatMap(({ action, reason }, i) => [
    `  ${i + 1}. ${wrap(action, "     ").trimStart()}`,
    wrap(`Why: ${reason}`, "     "),
  ]);
  const { outcome, consistency } = resistances;
  const plain = outcome === "no readings" || (outcome === "solved" && consistency !== "inconsistent");
  const sections = [
    title,
    "=".repeat(Math.min(WIDTH, [...title].length)),
    heading("What to do next"),
    ...steps,
    heading("Branch resistances (cold, leads taken off)"),
    ...resistanceLines(resistances),
    ...(plain ? [] : [heading("Readings against a sound module (cold)"), ...readingLines(resistances)]),
    heading("What the plate promises"),
    ...targetLines(assessment),
    heading("What it draws at full conduction"),
    ...drawLines(assessment),
    heading(
      `If one element opens (${assessment.draw.confirmed ? "faulty branches renewed" : "branches as far as known, others at target"})`,
    ),
    ...whatIfLines(whatIf),
    "  × is the survivor's power, and surface load, over its own healthy value.",
    ...(joints.length === 0 ? [] : [heading("Joints, worst first"), ...jointLines(joints)]),
    ...(assessment.warnings.length === 0
      ? []
      : [heading("Looks odd"), ...assessment.warnings.map(({ message }) => bullet(message))]),
    heading("Taken for granted"),
    ...assessment.assumptions.map(bullet),
    heading("Not tested"),
    ...assessment.notTested.map(bullet),
    heading("Cautions"),
    ...assessment.cautions.map(bullet),
  ];
  return `${sections.join("\n")}\n`;
}

/** What was read, judged: branches, joints, currents, insulation; as found and as left side by side in one section each. */
import type {
  BranchAssessment,
  Figure,
  JointAssessment,
  JointRise,
  ReadingsAssessment,
  ResistanceAssessment,
} from "../../bench/index.ts";
import { type Block, type Cell, type Draft, list, paragraph, slim, table } from "./document.ts";
import {
  chiSquareText,
  deviationText,
  figureText,
  halfWidthText,
  intervalText,
  limitText,
  quantityText,
  rangeText,
  type UnitSystem,
  uncertainOhms,
  verdictCell,
} from "./shown.ts";

/** Readings of one day, with its name. */
export interface Day {
  readonly name: "as found" | "as left";
  readonly readings: ReadingsAssessment;
}

const LETTERS = "abcdefghijklmnopqrstuvwxyz";

const FINDINGS: Readonly<Record<BranchAssessment["finding"], string>> = {
  sound: "within",
  undecided: "undecided",
  unjudged: "not judged",
  outside: "outside",
  open: "open",
  shorted: "shorted",
  high: "high or open",
  "not known": "not known",
};

/** What a branch was measured to be. */
export function measuredText(branch: BranchAssessment): string {
  const { resistance, standardUncertainty, atLeast } = branch;
  if (resistance === "open") return "open";
  if (resistance !== null) {
    return standardUncertainty === null
      ? quantityText(resistance, "Ω", "SI")
      : uncertainOhms(resistance, standardUncertainty);
  }
  return atLeast === null ? "not known" : `at least ${quantityText(atLeast, "Ω", "SI")}`;
}

function branchRow(branch: BranchAssessment): readonly (Cell | string)[] {
  const { id, resistance, target, expandedUncertainty, deviation, finding } = branch;
  return [
    id,
    measuredText(branch),
    verdictCell(finding, FINDINGS[finding]),
    deviation === null ? "" : deviationText(deviation),
    target === null ? "none" : quantityText(target, "Ω", "SI"),
    expandedUncertainty === null || resistance === null || resistance === "open"
      ? ""
      : halfWidthText(resistance, expandedUncertainty, "Ω", "SI"),
  ];
}

function branchNotes({ branches, leads, leadsUncertainty, ...rest }: ResistanceAssessment): readonly Block[] {
  const rule = branches.find(({ judgement }) => judgement !== null)?.judgement?.rule;
  const explained = branches.flatMap(({ id, openElements: n }) =>
    n === null
      ? []
      : [`${id}: ${n} open element${n === 1 ? "" : "s"} in parallel would explain the reading.`],
  );
  const agreement = {
    consistent: "The readings agree with each other.",
    inconsistent:
      "The readings contradict each other; the uncertainty is enlarged to cover it. Take them again.",
    untestable: "No reading is to spare for a cross-check.",
  }[rest.consistency];
  const lead =
    leads === null || leadsUncertainty === null
      ? "The leads are not determined by these readings."
      : leadsUncertainty === 0
        ? "The leads were taken off before recording."
        : `Leads and probe contact: ${uncertainOhms(leads, leadsUncertainty)}, taken off.`;
  const choices = rest.openChoices.map((choice) => choice.join(" and "));
  return [
    ...list([
      ...explained,
      ...(rule === undefined ? [] : [`Verdicts are against ${rule}, at two standard uncertainties.`]),
      lead,
      `${agreement} In brackets: standard uncertainty in the last digit.`,
      ...(choices.length < 2
        ? []
        : [`The open readings fit several choices of open branches: ${choices.join("; ")}.`]),
    ]),
  ];
}

function dayBranches({ name, readings: { resistances } }: Day): readonly Block[] {
  if (resistances.outcome === "no readings") return [];
  const headings = ["branch", "#measured", "verdict", "#deviation", "#target", "#± (k = 2)"];
  return [
    ...slim(table(`Branch resistances, ${name}`, headings, resistances.branches.map(branchRow))),
    ...branchNotes(resistances),
  ];
}

/** Branch resistances. */
export function branchSection(days: readonly Day[]): Draft {
  const blocks = days.flatMap(dayBranches);
  return { id: "branches", title: "Branch resistances", blocks, missing: "No ohm readings." };
}

/** Resistance of a joint with what the instruments leave open; empty without a drop. */
export function jointText({ resistance, halfWidth }: JointAssessment): string {
  if (resistance === null) return "";
  return halfWidth === null
    ? quantityText(resistance, "Ω", "SI")
    : intervalText(resistance, halfWidth, "Ω", "SI");
}

/** Rank on the severity scale; what it asks for stands under the table. */
function rankText({ level, atLeast }: JointRise): string {
  return level === "undecided" ? `${atLeast} or more` : String(level);
}

function jointRow(joint: JointAssessment, units: UnitSystem): readonly (Cell | string)[] {
  const { id, power, ratioToBest, comparison, contact, rise } = joint;
  const ends = rise === null ? "" : rangeText(rise.fullLoadLow, rise.fullLoadHigh, "K", units, 3);
  return [
    id,
    jointText(joint),
    contact?.verdict === "outside" && comparison !== "investigate"
      ? verdictCell("too much by itself")
      : contact?.verdict === "undecided" && comparison === "like the best"
        ? verdictCell("not cleared")
        : verdictCell(comparison),
    ratioToBest === null ? "" : `${quantityText(ratioToBest, "1", units)}×`,
    power === null ? "" : quantityText(power, "W", units),
    rise === null ? "" : quantityText(rise.measured, "K", units),
    ends,
    rise === null ? "" : rankText(rise),
  ];
}

/** Joints, worst first. */
export function jointSection(days: readonly Day[], units: UnitSystem): Draft {
  const headings = [
    "joint",
    "#resistance",
    "comparison",
    "#to best",
    "#heat",
    "#rise",
    "#graded, at full load",
    "severity level",
  ];
  const blocks = days.flatMap(({ name, readings: { joints } }): readonly Block[] => {
    const rows = joints.map((joint) => jointRow(joint, units));
    const asked = joints.flatMap(({ id, rise }) =>
      rise === null ? [] : [`${id}, severity level ${rankText(rise)}: ${rise.action}.`],
    );
    return [...slim(table(`Joints, ${name}, worst first`, headings, rows)), ...list(asked)];
  });
  const rules = days.flatMap(({ readings: { joints } }) =>
    joints.flatMap(({ rule, rise }) => (rise === null ? [rule] : [rule, rise.rule])),
  );
  const told = [...new Set(rules)].filter((rule) => rule !== "").map((rule) => `Rule: ${rule}`);
  const missing = "No joint was measured: neither millivolt drops nor a thermal scan.";
  return { id: "joints", title: "Joints", blocks: [...blocks, ...list(told)], missing };
}

/**
 * Figures as a table, with limits and verdicts where there are any. What is to be minded of several of them stands once under the
 * table, with a letter in each row. Their bases stand in the working.
 */
export function figureTable(
  caption: string,
  figures: readonly Figure[],
  units: UnitSystem,
): readonly Block[] {
  const minded = figures.flatMap((figure) => (figure.caution === null ? [] : [figure.caution]));
  const notes = [...new Set(minded)];
  const lettered = notes.length < minded.length && notes.length <= LETTERS.length;
  const mark = (text: string): string => `(${LETTERS[notes.indexOf(text)]})`;
  const rows = figures.map((figure) => [
    figure.label,
    figureText(figure, units),
    verdictCell(figure.verdict),
    limitText(figure, units),
    figure.caution === null ? "" : lettered ? mark(figure.caution) : figure.caution,
  ]);
  return [
    ...slim(table(caption, ["what", "#value", "verdict", "#limit", "mind"], rows)),
    ...list(lettered ? notes.map((text) => `${mark(text)} ${text}`) : []),
  ];
}

/** Line currents beside a sound module, and the unbalance. */
export function currentSection(days: readonly Day[], units: UnitSystem): Draft {
  const blocks = days.flatMap(({ name, readings: { currents, unbalance } }) => [
    ...figureTable(`Currents, ${name}`, currents, units),
    ...figureTable(`Unbalance, ${name}`, unbalance, units),
  ]);
  return {
    id: "currents",
    title: "Currents and unbalance",
    blocks,
    missing: "No current was read under load.",
  };
}

/** Insulation to the frame. */
export function insulationSection(days: readonly Day[], units: UnitSystem): Draft {
  const blocks = days.flatMap(({ name, readings: { insulation } }) =>
    figureTable(`Insulation to the frame, ${name}`, insulation, units),
  );
  const missing = "No insulation resistance was read.";
  return { id: "insulation", title: "Insulation", blocks, missing };
}

/** Days for the sections above, in order of time. */
export function daysOf(found: ReadingsAssessment | null, left: ReadingsAssessment | null): readonly Day[] {
  return [
    ...(found === null ? [] : [{ name: "as found", readings: found } as const]),
    ...(left === null ? [] : [{ name: "as left", readings: left } as const]),
  ];
}

/** Every reading beside what a sound module would show and what the fit predicts. */
export function fitBlocks({ name, readings: { resistances } }: Day): readonly Block[] {
  const { readings, expectedReadings, chiSquare, degreesOfFreedom, pValue } = resistances;
  const ohms = (value: number | "open" | null | undefined): string =>
    value === "open" ? "OL" : value === null || value === undefined ? "" : quantityText(value, "Ω", "SI");
  const rows = readings.map(({ from, to, reads, predicted, residual }, i) => [
    `${from} to ${to}`,
    ohms(reads),
    ohms(predicted),
    residual === null ? "" : `${residual < 0 ? "\u2212" : "+"}${Math.abs(residual).toFixed(1)}`,
    ohms(expectedReadings[i]),
  ]);
  const test = pValue === null ? [] : [paragraph(`${chiSquareText(chiSquare, degreesOfFreedom, pValue)}.`)];
  const headings = [
    "probes",
    "#read",
    "#by the fit",
    "#off, in std. uncertainties",
    "#sound module, no leads",
  ];
  return [...slim(table(`Ohm readings, ${name}`, headings, rows)), ...(rows.length === 0 ? [] : test)];
}

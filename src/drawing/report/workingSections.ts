/** What the answer rests on: targets, assumptions, fits, the basis of each figure, what was not tested, what looks odd. */
import type { Figure, ModuleAssessment, NameplateTargets } from "../../bench/index.ts";
import { type Block, type Draft, list, paragraph, slim, table } from "./document.ts";
import { type Day, fitBlocks } from "./readingSections.ts";
import { quantityText } from "./shown.ts";

/** Targets by bank; banks that are alike in one column. */
export function targetSection(targets: ModuleAssessment["targets"]): Draft {
  const kinds = new Map<string, { banks: string[]; targets: NameplateTargets }>();
  for (const { bank, targets: own } of targets) {
    const key = JSON.stringify({ ...own, warnings: [] });
    const kind = kinds.get(key);
    if (kind === undefined) kinds.set(key, { banks: [bank], targets: own });
    else kind.banks.push(bank);
  }
  const all = [...kinds.values()];
  const row = (
    name: string,
    unit: string,
    of: (one: NameplateTargets) => number | null,
  ): readonly (readonly string[])[] => {
    const cells = all.map(({ targets: own }) => {
      const value = of(own);
      return value === null ? "" : quantityText(value, unit, "SI");
    });
    return cells.every((cell) => cell === "") ? [] : [[name, ...cells]];
  };
  const rows = [
    ...row("line current of the bank", "A", (one) => one.bankLineCurrent),
    ...row("line current in the first second from cold", "A", (one) => one.coldLineCurrent),
    ...row("voltage across a branch", "V", (one) => one.branchVoltage),
    ...row("current in a branch", "A", (one) => one.branchCurrent),
    ...row("resistance of a branch, hot", "Ω", (one) => one.branchResistanceHot),
    ...row("resistance of a branch, cold", "Ω", (one) => one.branchResistanceCold),
    ...row("resistance of an element, hot", "Ω", (one) => one.elementResistanceHot),
    ...row("resistance of an element, cold", "Ω", (one) => one.elementResistanceCold),
    ...row("power of an element", "W", (one) => one.elementPower),
    ...row("bank alone, line to line, hot", "Ω", (one) => one.lineToLineHot),
    ...row("bank alone, line to line, cold", "Ω", (one) => one.lineToLineCold),
  ];
  const headings = [
    "target",
    ...all.map(({ banks }) => `#bank${banks.length > 1 ? "s" : ""} ${banks.join(", ")}`),
  ];
  return {
    id: "targets",
    title: "Targets from the nameplate",
    blocks: all.length === 0 ? [] : table("Targets by bank, at plate voltage", headings, rows),
    missing: "No targets: the record has no nameplate. Branches are judged against each other, if at all.",
  };
}

/** Readings against the fit. */
export function fitSection(days: readonly Day[]): Draft {
  return { id: "fit", title: "Readings against the fit", blocks: days.flatMap(fitBlocks), missing: null };
}

/** What was taken for granted. */
export function assumptionSection(assumptions: readonly string[], units: string): Draft {
  return {
    id: "assumptions",
    title: "Taken for granted",
    blocks: [...list(assumptions), paragraph(units)],
    missing: null,
  };
}

/** Every figure of the assessment with the place it stands at. */
function everyFigure(
  assessment: ModuleAssessment,
  days: readonly Day[],
): readonly (readonly [string, Figure])[] {
  const at = (place: string, figures: readonly Figure[]) => figures.map((one) => [place, one] as const);
  const { hardware, feed, commissioning, cuts } = assessment;
  return [
    ...days.flatMap(({ name, readings }) => [
      ...at(`currents, ${name}`, readings.currents),
      ...at(`unbalance, ${name}`, readings.unbalance),
      ...at(`insulation, ${name}`, readings.insulation),
    ]),
    ...hardware.flatMap(({ id, figures }) => at(id, figures)),
    ...at("feed", feed?.figures ?? []),
    ...at("first heat", [...(commissioning?.lines ?? []), ...(commissioning?.scan ?? [])]),
    ...cuts.flatMap(({ id, figures }) => at(`bar ${id}`, figures)),
  ];
}

/** Where each figure comes from; figures of one place and one basis stand together. */
export function basisSection(assessment: ModuleAssessment, days: readonly Day[]): Draft {
  const groups = new Map<string, { place: string; basis: string; labels: string[] }>();
  for (const [place, { label, basis }] of everyFigure(assessment, days)) {
    const key = JSON.stringify([place, basis]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { place, basis, labels: [label] });
    else group.labels.push(label);
  }
  const rows = [...groups.values()].map(({ place, basis, labels }) => [labels.join("; "), place, basis]);
  return {
    id: "basis",
    title: "Basis of each figure",
    blocks: slim(table("Formula, or source with edition and table", ["figure", "where", "basis"], rows)),
    missing: null,
  };
}

/** What nobody has tested, and what this report has no section for. */
export function notTestedSection(notTested: readonly string[], missing: readonly string[]): Draft {
  const blocks: readonly Block[] = [
    ...list(notTested),
    ...(missing.length === 0
      ? []
      : [paragraph("Left out of this report, because the record gives nothing for it:")]),
    ...list(missing),
  ];
  return {
    id: "not-tested",
    title: "What was not tested",
    blocks: blocks.length === 0 ? [paragraph("Every part of the record was given.")] : blocks,
    missing: null,
  };
}

/** What looks like a slip, and what lies outside its source. */
export function warningSection({ warnings, targets }: ModuleAssessment): Draft {
  const messages = [...warnings, ...targets.flatMap(({ targets: own }) => own.warnings)].map(
    ({ message, source }) => `${message}${source === undefined ? "" : ` (${source})`}`,
  );
  return { id: "warnings", title: "Looks odd", blocks: list([...new Set(messages)]), missing: null };
}

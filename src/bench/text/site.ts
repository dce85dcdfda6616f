/** Hardware, feed, first heat, running on, checklist, parts and cuts as lines of a text report. */
import { formatQuantity } from "../../quantity/index.ts";
import type { ModuleAssessment } from "../assessmentTypes.ts";
import type { DegradedOption } from "../degraded/types.ts";
import { figureLines } from "./figures.ts";
import { bullet, heading, table, wrap } from "./layout.ts";

function optionRow({ name, powerRatio, worst, heatUp, cost }: DegradedOption): string[] {
  const time =
    heatUp.time === "never"
      ? "never"
      : formatQuantity(heatUp.time, { unit: "s", as: "h", significantDigits: 3 });
  return [
    name,
    `${(powerRatio * 100).toFixed(0)} %`,
    worst === null ? "none left" : `${worst.id} ${worst.powerRatio.toFixed(2)}×`,
    time,
    cost === null ? "-" : cost.toFixed(2),
  ];
}

function degradedLines({ degraded }: ModuleAssessment): string[] {
  if (degraded === null) return [];
  return [
    heading("Ways to run on until parts come"),
    ...table([
      ["way", "power", "hardest survivor", "to set point", "cost"],
      ...degraded.options.map(optionRow),
    ]),
    ...degraded.cautions.map(({ message }) => bullet(message)),
    wrap(degraded.deferral, "  "),
  ];
}

const MARKS = { done: "[x]", "not passed": "[!]", "to do": "[ ]" } as const;

function checklistLines({ checklist }: ModuleAssessment): string[] {
  if (checklist.length === 0) return [];
  let phase = "";
  const lines = checklist.flatMap((item) => {
    const begins = item.phase === phase ? [] : [`  ${item.phase}`];
    phase = item.phase;
    const evidence = item.evidence === null ? "" : ` (${item.evidence})`;
    return [...begins, `  ${MARKS[item.state]} ${wrap(`${item.text}${evidence}`, "      ").trimStart()}`];
  });
  return [heading("Checklist"), ...lines];
}

function partLines({ parts, cuts }: ModuleAssessment): string[] {
  const cutRows = cuts.map(({ id, count, length, stock, mass }) => [
    id,
    `${count}`,
    formatQuantity(length, { unit: "m", as: "mm", significantDigits: 4 }),
    formatQuantity(stock, { unit: "m", significantDigits: 4 }),
    formatQuantity(mass, { unit: "kg", significantDigits: 3 }),
  ]);
  return [
    ...(parts.length === 0
      ? []
      : [
          heading("Parts to bring"),
          ...parts.map(({ part, quantity, reason }) => bullet(`${quantity} × ${part}: ${reason}`)),
        ]),
    ...(cuts.length === 0
      ? []
      : [heading("Bars to cut"), ...table([["bar", "pieces", "length", "stock", "mass"], ...cutRows])]),
    ...cuts.flatMap(({ figures }) => figureLines(figures)),
  ];
}

/** The sections of site work; those that the assessment has nothing for are left out. */
export function siteSections(assessment: ModuleAssessment): string[] {
  const { hardware, feed, commissioning } = assessment;
  return [
    ...degradedLines(assessment),
    ...hardware.flatMap(({ id, thread, count, figures, notes, deferral }) => [
      heading(`Torque: ${id} (${count} × ${thread})`),
      ...figureLines(figures),
      ...notes.map(bullet),
      wrap(deferral, "  "),
    ]),
    ...(feed === null
      ? []
      : [
          heading(`Feed by ${feed.edition}`),
          ...figureLines(feed.figures),
          ...feed.cautions.map(bullet),
          wrap(feed.deferral, "  "),
        ]),
    ...(commissioning === null
      ? []
      : [
          heading("At the first heat"),
          ...figureLines(commissioning.lines),
          ...figureLines(commissioning.scan),
          wrap(commissioning.deferral, "  "),
        ]),
    ...checklistLines(assessment),
    ...partLines(assessment),
  ];
}

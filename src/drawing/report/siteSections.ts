/** What surrounds the elements: hardware, feed, first heat, parts and bars, and the list to go through. */
import type {
  ChecklistItem,
  CommissioningAssessment,
  CutLine,
  FeedAssessment,
  HardwareAssessment,
  ModuleAssessment,
} from "../../bench/index.ts";
import { type Block, caution, type Draft, list, paragraph, table } from "./document.ts";
import { figureTable } from "./readingSections.ts";
import { quantityText, type UnitSystem, verdictCell } from "./shown.ts";

/** Torque and preload. Notes that hold for every kind of fastening stand once. */
export function hardwareSection(hardware: readonly HardwareAssessment[], units: UnitSystem): Draft {
  const [first, ...others] = hardware;
  const common = (first?.notes ?? []).filter(
    (note) => others.length > 0 && others.every(({ notes }) => notes.includes(note)),
  );
  const blocks = hardware.flatMap(({ id, thread, count, figures, notes }): readonly Block[] => [
    ...figureTable(`${id}: ${count} × ${thread}`, figures, units),
    ...list(notes.filter((note) => !common.includes(note))),
  ]);
  const deferrals = [...new Set(hardware.map(({ deferral }) => deferral))];
  return {
    id: "hardware",
    title: "Hardware and torque",
    blocks: [
      ...caution(deferrals),
      ...blocks,
      ...(common.length === 0 ? [] : [paragraph("For all of them:")]),
      ...list(common),
    ],
    missing: "No studs, nuts or screws in the record: no torque is given.",
  };
}

/** Conductors, terminals and protection. */
export function feedSection(feed: FeedAssessment | null, units: UnitSystem): Draft {
  const section = { id: "feed", title: "Feed and protection" };
  if (feed === null) return { ...section, blocks: [], missing: "The feed of the module was not checked." };
  const { edition, figures, deferral } = feed;
  // What is said beside a figure is not said twice.
  const cautions = feed.cautions.filter((one) => !figures.some((figure) => figure.caution?.includes(one)));
  return {
    ...section,
    missing: null,
    blocks: [...caution([deferral, ...cautions]), ...figureTable(`Checked by ${edition}`, figures, units)],
  };
}

/** What to expect at the first heat. */
export function commissioningSection(
  commissioning: CommissioningAssessment | null,
  units: UnitSystem,
): Draft {
  const section = { id: "commissioning", title: "First heat" };
  if (commissioning === null) {
    return { ...section, blocks: [], missing: "No amps to expect at the first heat: the draw is not known." };
  }
  const { lines, scan, deferral } = commissioning;
  return {
    ...section,
    missing: null,
    blocks: [
      ...caution([deferral]),
      ...figureTable("Amps and power to expect at full conduction", lines, units),
      ...figureTable("Rises of the thermal scan to act on", scan, units),
    ],
  };
}

function cutBlocks(cuts: readonly CutLine[], units: UnitSystem): readonly Block[] {
  const rows = cuts.map(({ id, count, length, stock, mass }) => [
    id,
    String(count),
    quantityText(length, "m", units),
    quantityText(stock, "m", units),
    quantityText(mass, "kg", units),
  ]);
  return [
    ...table(
      "Bars to cut",
      ["bar", "#pieces", "#length of each", "#stock with saw cuts", "#mass of all"],
      rows,
    ),
    ...cuts.flatMap(({ id, figures }) => figureTable(`${id}: section and resistance`, figures, units)),
  ];
}

/** Parts to bring and bars to cut. */
export function partsSection({ parts, cuts }: ModuleAssessment, units: UnitSystem): Draft {
  const rows = parts.map(({ part, quantity, reason }) => [part, String(quantity), reason]);
  return {
    id: "parts",
    title: "Parts and bars",
    blocks: [...table("Parts to bring", ["part", "#quantity", "why"], rows), ...cutBlocks(cuts, units)],
    missing: "No parts to bring and no bars to cut follow from the record.",
  };
}

/** On one line, however narrow the column: a box apart from its word is no state. */
const BOXES: Readonly<Record<ChecklistItem["state"], string>> = {
  done: "☑\u00a0done",
  "not passed": "☒\u00a0not\u00a0passed",
  "to do": "☐\u00a0to\u00a0do",
};

/** Before and after the supply is closed again. */
export function checklistSection(items: readonly ChecklistItem[]): Draft {
  const phases = ["before energising", "first heat", "after cooling down"] as const;
  const blocks = phases.flatMap((phase) => {
    const rows = items
      .filter((item) => item.phase === phase)
      .map(({ text, state, evidence }) => [text, verdictCell(state, BOXES[state]), evidence ?? ""]);
    return table(`Checklist, ${phase}`, ["what", "state", "evidence in the record"], rows);
  });
  return {
    id: "checklist",
    title: "Checklist for return to service",
    blocks:
      blocks.length === 0
        ? []
        : [
            paragraph(
              "States are what the record shows. What it does not show is to be done, whatever was done.",
            ),
            ...blocks,
          ],
    missing: "No checklist.",
  };
}

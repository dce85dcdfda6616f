/** The report of an assessment, put together once for every way of writing it out. */
import type { ModuleAssessment, NextStep, RecordIdentity } from "../../bench/index.ts";
import { packageVersion } from "../../quantity/index.ts";
import { diagnosisSection } from "./diagnosisSection.ts";
import { type Draft, list, type ReportDocument, type Section } from "./document.ts";
import { degradedSection, drawSection, whatIfSection } from "./moduleSections.ts";
import { diagramSection, phasorSection } from "./pictureSections.ts";
import { branchSection, currentSection, daysOf, insulationSection, jointSection } from "./readingSections.ts";
import type { UnitSystem } from "./shown.ts";
import {
  checklistSection,
  commissioningSection,
  feedSection,
  hardwareSection,
  partsSection,
} from "./siteSections.ts";
import {
  assumptionSection,
  basisSection,
  fitSection,
  notTestedSection,
  targetSection,
  warningSection,
} from "./workingSections.ts";

const IDENTITY: Readonly<Record<keyof RecordIdentity, string>> = {
  equipment: "Equipment",
  serialNumber: "Serial or asset number",
  location: "Location",
  workOrder: "Work order",
  technician: "Technician",
  date: "Date",
};

const UNITS: Readonly<Record<UnitSystem, string>> = {
  SI: "Figures are printed in SI units; sizes keep the system they were named in.",
  US: "Figures are printed in US trade units where the trade has them (in, °F, lbf·in, lb); sentences keep the units they were written in.",
};

function facts(identity: RecordIdentity | null): ReportDocument["facts"] {
  return Object.entries(IDENTITY).flatMap(([field, name]) => {
    const text = identity?.[field as keyof RecordIdentity]?.trim() ?? "";
    return text === "" ? [] : [[name, text] as const];
  });
}

function stepSection(steps: readonly NextStep[]): Draft {
  const items = steps.map(({ action, reason }) => `${action} ${reason}`);
  const missing = "No next steps follow from the record.";
  return { id: "next", title: "What to do next", blocks: list(items, true), missing };
}

/** Puts the report together. */
export function reportDocument(assessment: ModuleAssessment, units: UnitSystem): ReportDocument {
  const days = daysOf(assessment.asFound, assessment.asLeft);
  const evidence = [
    stepSection(assessment.nextSteps),
    diagnosisSection(assessment.diagnosis, assessment.cautions),
    branchSection(days),
    jointSection(days, units),
    currentSection(days, units),
    insulationSection(days, units),
    diagramSection(assessment, days),
    phasorSection(assessment, days),
    drawSection(assessment.draw),
    whatIfSection(assessment.whatIf),
    degradedSection(assessment.degraded, units),
    hardwareSection(assessment.hardware, units),
    feedSection(assessment.feed, units),
    commissioningSection(assessment.commissioning, units),
    partsSection(assessment, units),
    checklistSection(assessment.checklist),
  ];
  const working = [
    targetSection(assessment.targets),
    assumptionSection(assessment.assumptions, UNITS[units]),
    fitSection(days),
    basisSection(assessment, days),
  ];
  const given = (drafts: readonly Draft[]): readonly Section[] =>
    drafts.filter(({ blocks }) => blocks.length > 0);
  const missing = [...evidence, ...working].flatMap((draft) =>
    draft.blocks.length > 0 || draft.missing === null ? [] : [draft.missing],
  );
  const last = [notTestedSection(assessment.notTested, missing), warningSection(assessment)];
  return {
    title: assessment.title,
    facts: facts(assessment.identity),
    answer: assessment.answer,
    cautions: assessment.cautions,
    parts: [
      { id: "evidence", title: "Evidence", sections: given(evidence) },
      { id: "working", title: "Working", sections: given([...working, ...last]) },
    ],
    footer: `Worked out by electroheat ${packageVersion} from the bench record alone. The code adopted where the module is installed, the maker's instructions and a licensed electrician govern.`,
  };
}

/** Invented records and assessments for the site sections, no more of them than a section looks at. */
import type {
  BenchRecord,
  BranchAssessment,
  ChecklistItem,
  Figure,
  JointAssessment,
  ReadingsAssessment,
} from "electroheat/bench";
import { type Issue, isElectroheatError } from "electroheat/quantity";
import type { ParsedRecord } from "../../../src/bench/record/parsed.ts";
import { parseRecord } from "../../../src/bench/record/schema.ts";
import { type ChecklistSource, checklist } from "../../../src/bench/site/checklist.ts";

/** A record as read, of one star bank if it says nothing else. */
export const read = (parts: Partial<BenchRecord>): ParsedRecord =>
  parseRecord({ title: "invented dryer", wiring: { banks: [{ id: "A", connection: "star" }] }, ...parts });

/** The one figure with this label. */
export function the(figures: readonly Figure[], label: string): Figure {
  const found = figures.filter((one) => one.label === label);
  if (found.length !== 1) {
    throw new Error(`${found.length} figures "${label}" among ${figures.map((one) => one.label).join("; ")}`);
  }
  return found[0] as Figure;
}

/** Its value, which must be a number. */
export function numberOf(figures: readonly Figure[], label: string): number {
  const { value } = the(figures, label);
  if (typeof value !== "number") throw new Error(`"${label}" is ${value}`);
  return value;
}

/** What a record is refused for. */
export function refused(run: () => unknown): readonly Pick<Issue, "code" | "path" | "message">[] {
  try {
    run();
  } catch (error) {
    if (isElectroheatError(error)) return error.issues;
    throw error;
  }
  throw new Error("was not refused");
}

/** A branch of which a section sees only name, finding and count. */
export const branch = (
  id: string,
  finding: BranchAssessment["finding"],
  openElements: number | null = null,
): BranchAssessment => ({
  id,
  finding,
  resistance: null,
  standardUncertainty: null,
  expandedUncertainty: null,
  atLeast: null,
  target: null,
  deviation: null,
  judgement: null,
  openElements,
});

/** A joint that nothing has judged, but for what is said of it. */
export const joint = (id: string, more: Partial<JointAssessment>): JointAssessment => ({
  id,
  resistance: null,
  halfWidth: null,
  power: null,
  ratioToBest: null,
  comparison: "nothing to compare with",
  rule: "invented",
  contact: null,
  rise: null,
  ...more,
});

/** A rise that an invented scale puts at a level, or between levels from `atLeast` on. */
export const rise = (level: number | "undecided", atLeast: number): JointAssessment["rise"] => ({
  measured: 5 as never,
  fullLoadLow: 5 as never,
  fullLoadHigh: 5 as never,
  level,
  atLeast,
  atMost: level === "undecided" ? atLeast + 1 : level,
  action: "invented",
  rule: "invented",
});

/** The checklist of a job of which nothing is known but this. */
export const list = (more: Partial<ChecklistSource> = {}): readonly ChecklistItem[] =>
  checklist({ asFound: null, asLeft: null, hardware: [], feed: null, commissioning: null, ...more });

/** Readings of a day with these branches. */
export const day = (
  branches: readonly BranchAssessment[],
  more: Partial<ReadingsAssessment> = {},
): ReadingsAssessment => ({
  resistances: {
    outcome: "solved",
    branches,
    expectedReadings: [],
    beyondElements: [],
    leads: null,
    leadsUncertainty: null,
    readings: [],
    chiSquare: 0,
    degreesOfFreedom: 0,
    pValue: null,
    consistency: "untestable",
    notIdentifiable: [],
    openChoices: [],
  },
  currents: [],
  unbalance: [],
  insulation: [],
  joints: [],
  ...more,
});

/** A figure with a verdict. */
export const judged = (label: string, verdict: Figure["verdict"], unit = "A"): Figure => ({
  label,
  value: 1,
  unit,
  name: null,
  halfWidth: null,
  limit: null,
  verdict,
  basis: "invented",
  caution: null,
});

/** A figure said in full: what a test leaves out is not there. */
export const figure = (
  label: string,
  value: number | null,
  unit: string,
  basis: string,
  more: Partial<Figure> = {},
): Figure => ({
  ...{ label, value, unit, name: null, halfWidth: null, limit: null, verdict: null, basis, caution: null },
  ...more,
});

/** A supply that nothing is to be said of. */
export const QUIET = {
  outside: null,
  steps: [],
  later: [],
  before: null,
  unknown: null,
  weak: null,
  explainsAmps: false,
} as const;

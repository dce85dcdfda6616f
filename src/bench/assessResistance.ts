/** From the record's ohm readings to branches with verdicts. */
import { type Judgement, judge } from "../decision/index.ts";
import type { ColdOhms, Ohms, Open } from "../quantity/index.ts";
import type { BranchAssessment, ResistanceAssessment } from "./assessTypes.ts";
import { findingOf } from "./branchFinding.ts";
import type { BranchModule } from "./branchModule.ts";
import { fitTerminalReadings } from "./fit.ts";
import type { FittedBranch, ResistanceFit } from "./fitTypes.ts";
import { expectedReading, measuredReadings } from "./readings.ts";
import type { ParsedRecord } from "./recordParsed.ts";

/** Coverage factor of expanded uncertainties: about 95 % for a normal distribution. */
const COVERAGE = 2;

/** How many of n parallel elements must be open for a branch to read so much above its target; null if none fits. */
function openElements(
  resistance: number,
  halfWidth: number,
  target: number,
  n: number,
  tolerance: { low: number; high: number },
): number | null {
  for (let k = 1; k < n; k += 1) {
    const expected = (target * n) / (n - k);
    const [low, high] = [expected * (1 + tolerance.low), expected * (1 + tolerance.high)];
    if (resistance + halfWidth >= low && resistance - halfWidth <= high) return k;
  }
  return null;
}

/**
 * Where readings contradict each other by more than the meter explains, the stated uncertainties were too small: they are
 * enlarged by the Birge ratio √(χ²/ν), so that no verdict rests on numbers that do not agree.
 */
export function enlargement(fit: ResistanceFit): number {
  if (fit.consistency !== "inconsistent") return 1;
  return Math.max(1, Math.sqrt(fit.chiSquare / fit.degreesOfFreedom));
}

function assessBranch(
  fitted: FittedBranch,
  record: ParsedRecord,
  drawn: BranchModule,
  enlarged = 1,
): BranchAssessment {
  const { id, resistance, atLeast } = fitted;
  const standardUncertainty =
    fitted.standardUncertainty === null ? null : ((fitted.standardUncertainty * enlarged) as Ohms);
  const target = drawn.targets.get(id) as ColdOhms;
  const { tolerance, meter } = record;
  const base = { id, resistance: resistance as ColdOhms | Open | null, standardUncertainty, atLeast, target };
  if (resistance === null || resistance === "open" || standardUncertainty === null) {
    const bare = { ...base, expandedUncertainty: null, deviation: null, judgement: null };
    return { ...bare, finding: findingOf(bare), openElements: null };
  }
  // A gain error scales all values together, so the fit cannot see it: the meter's percentage is counted once more.
  const gain = (resistance * (meter?.ofReading ?? 0)) / Math.sqrt(3);
  const halfWidth = COVERAGE * Math.hypot(standardUncertainty, gain);
  const rule = (t: { low: number; high: number }): string =>
    `target ${signedPercent(t.low)} to ${signedPercent(t.high)}, as given in the record`;
  const judgement: Judgement | null =
    tolerance === undefined
      ? null
      : judge({
          value: resistance,
          halfWidth,
          low: target * (1 + tolerance.low),
          high: target * (1 + tolerance.high),
          rule: rule(tolerance),
        });
  const judged = {
    ...base,
    expandedUncertainty: halfWidth as Ohms,
    deviation: resistance / target - 1,
    judgement,
  };
  const finding = findingOf(judged);
  const tooHigh = finding === "outside" && resistance > target && tolerance !== undefined;
  const parallel = drawn.parallel.get(id) as number;
  return {
    ...judged,
    finding,
    openElements: tooHigh ? openElements(resistance, halfWidth, target, parallel, tolerance) : null,
  };
}

function signedPercent(ratio: number): string {
  const percent = Number((ratio * 100).toPrecision(6));
  return `${percent < 0 ? "−" : "+"}${Math.abs(percent)} %`;
}

/** Fits the record's readings and judges every branch; also returns the fit, for the draw's uncertainty. */
export function assessResistances(
  record: ParsedRecord,
  drawn: BranchModule,
): { readonly assessment: ResistanceAssessment; readonly fit: ResistanceFit | null } {
  const { readings = [] } = record;
  const ids = drawn.module.elements.map((element) => element.id);
  if (readings.length === 0) {
    const unread = ids.map(
      (id): FittedBranch => ({ id, resistance: null, standardUncertainty: null, atLeast: null }),
    );
    const assessment: ResistanceAssessment = {
      outcome: "no readings",
      branches: unread.map((one) => assessBranch(one, record, drawn)),
      leads: null,
      leadsUncertainty: null,
      expectedReadings: [],
      readings: [],
      chiSquare: 0,
      degreesOfFreedom: 0,
      pValue: null,
      consistency: "untestable",
      notIdentifiable: ids,
      openChoices: [],
    };
    return { assessment, fit: null };
  }
  const measured = measuredReadings(record, drawn);
  const fit = fitTerminalReadings({ network: drawn.module.network, ...measured });
  const leads = fit.leads.resistance;
  const { outcome, chiSquare, degreesOfFreedom, pValue, consistency, notIdentifiable, openChoices } = fit;
  return {
    fit,
    assessment: {
      outcome,
      branches: fit.branches.map((one) => assessBranch(one, record, drawn, enlargement(fit))),
      leads: leads === "open" ? null : leads,
      leadsUncertainty: fit.leads.standardUncertainty,
      expectedReadings: measured.readings.map((one) => expectedReading(one, drawn)),
      readings: fit.readings,
      chiSquare,
      degreesOfFreedom,
      pValue,
      consistency,
      notIdentifiable,
      openChoices,
    },
  };
}

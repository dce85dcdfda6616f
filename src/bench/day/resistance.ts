/** From the record's ohm readings to branches with verdicts. */

import { withResistance } from "../../circuit/index.ts";
import { type Judgement, judge } from "../../decision/index.ts";
import type { ColdOhms, Ohms, Open } from "../../quantity/index.ts";
import type { BranchAssessment, ResistanceAssessment } from "../assessTypes.ts";
import type { FittedBranch, ResistanceFit, TerminalOhms } from "../fit/types.ts";
import type { ParsedOhmmeter, ParsedRecord } from "../record/parsed.ts";
import { findingOf } from "./branchFinding.ts";
import type { BranchModule } from "./branchModule.ts";
import { fitWithStuds } from "./ownStuds.ts";
import { expectedReading, leadKnowledge, type MeasuredOhms } from "./readings.ts";
import { branchTargets, type Target } from "./targets.ts";
import { farOff } from "./wideLimits.ts";

/** Coverage factor of expanded uncertainties: about 95 % for a normal distribution. */
const COVERAGE = 2;

/** How many of n parallel elements must be open for a branch to read so much above its target: of those that fit, the nearest; null if none does. */
function openElements(
  resistance: number,
  halfWidth: number,
  target: number,
  n: number,
  tolerance: { low: number; high: number },
): number | null {
  let nearest: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < n; k += 1) {
    const expected = (target * n) / (n - k);
    const [low, high] = [expected * (1 + tolerance.low), expected * (1 + tolerance.high)];
    const off = Math.abs(Math.log(resistance / expected));
    if (resistance + halfWidth < low || resistance - halfWidth > high || off >= least) continue;
    [nearest, least] = [k, off];
  }
  return nearest;
}

/**
 * Where readings contradict each other by more than the meter explains, the stated uncertainties were too small: they are
 * enlarged by the Birge ratio √(χ²/ν), so that no verdict rests on numbers that do not agree.
 */
export function enlargement(fit: ResistanceFit): number {
  if (fit.consistency !== "inconsistent") return 1;
  return Math.max(1, Math.sqrt(fit.chiSquare / fit.degreesOfFreedom));
}

function signedPercent(ratio: number): string {
  const percent = Number((ratio * 100).toPrecision(6));
  return `${percent < 0 ? "−" : "+"}${Math.abs(percent)} %`;
}

/**
 * Holds a value against its target by the record's tolerance; null without a target, or where too little is behind it. Without a tolerance
 * only what is far off is judged, and only where no diagnosis weighs it.
 */
function judgeBranch(
  resistance: number,
  ownHalfWidth: number,
  target: Target | undefined,
  { tolerance }: ParsedRecord,
  weighed: boolean,
): Judgement | null {
  if (target === undefined || !target.judges) return null;
  // A target that was measured itself is no better than its own reading.
  const halfWidth = Math.hypot(ownHalfWidth, COVERAGE * target.standardUncertainty);
  if (tolerance === undefined) {
    const { resistance: expected, name } = target;
    return weighed ? null : farOff({ value: resistance, halfWidth, expected, name });
  }
  return judge({
    value: resistance,
    halfWidth,
    low: target.resistance * (1 + tolerance.low),
    high: target.resistance * (1 + tolerance.high),
    rule: `${target.name} ${signedPercent(tolerance.low)} to ${signedPercent(tolerance.high)}, as given in the record`,
  });
}

function assessBranch(
  fitted: FittedBranch,
  record: ParsedRecord,
  drawn: BranchModule,
  aim: Target | undefined,
  weighed: boolean,
  enlarged = 1,
): BranchAssessment {
  const { id, atLeast, standardUncertainty: ofFit } = fitted;
  const target = aim?.resistance ?? null;
  // An uncertainty comes with a value, and with nothing else.
  if (ofFit === null) {
    const bare = {
      ...{ id, resistance: fitted.resistance as Open | null, standardUncertainty: null, atLeast, target },
      ...{ expandedUncertainty: null, deviation: null, judgement: null },
    };
    return { ...bare, finding: findingOf(bare), openElements: null };
  }
  const resistance = fitted.resistance as number as ColdOhms;
  const standardUncertainty = (ofFit * enlarged) as Ohms;
  // A gain error scales all values together, so the fit cannot see it: the meter's percentage is counted once more.
  const { ofReading } = meterOf(record);
  const gain = (resistance * ofReading) / Math.sqrt(3);
  const halfWidth = COVERAGE * Math.hypot(standardUncertainty, gain);
  const judged = {
    ...{ id, resistance, standardUncertainty, atLeast, target },
    expandedUncertainty: halfWidth as Ohms,
    deviation: target === null ? null : resistance / target - 1,
    judgement: judgeBranch(resistance, halfWidth, aim, record, weighed),
  };
  const finding = findingOf(judged);
  const { tolerance } = record;
  const parallel = drawn.parallel.get(id) as number;
  const tooHigh = finding === "outside" && target !== null && resistance > target && tolerance !== undefined;
  return {
    ...judged,
    finding,
    openElements: tooHigh ? openElements(resistance, halfWidth, target, parallel, tolerance) : null,
  };
}

/** The meter of a record with ohms: ohms without their meter have been refused. */
const meterOf = ({ instruments }: ParsedRecord): ParsedOhmmeter => instruments?.ohmmeter as ParsedOhmmeter;

/** Branches of which nothing was read. */
function unread(record: ParsedRecord, drawn: BranchModule): ResistanceAssessment {
  const ids = drawn.module.elements.map((element) => element.id);
  const targets = branchTargets(drawn, []);
  return {
    outcome: "no readings",
    branches: ids.map((id) =>
      assessBranch(
        { id, resistance: null, standardUncertainty: null, atLeast: null },
        record,
        drawn,
        targets.get(id),
        true,
      ),
    ),
    leads: null,
    leadsUncertainty: null,
    expectedReadings: [],
    beyondElements: [],
    readings: [],
    chiSquare: 0,
    degreesOfFreedom: 0,
    pValue: null,
    consistency: "untestable",
    notIdentifiable: ids,
    openChoices: [],
  };
}

/** What each reading would show with every branch at its target; null where a branch has none. */
function expectedReadings(
  readings: readonly TerminalOhms[],
  drawn: BranchModule,
  targets: ReadonlyMap<string, Target>,
): ResistanceAssessment["expectedReadings"] {
  const ids = drawn.module.elements.map(({ id }) => id);
  if (!ids.every((id) => targets.has(id))) return readings.map(() => null);
  let { network } = drawn.module;
  for (const id of ids) {
    network = withResistance({
      network,
      id,
      resistance: (targets.get(id) as Target).resistance as number as Ohms,
    });
  }
  return readings.map((one) => expectedReading(one, network));
}

/**
 * Fits the ohm readings of one day and judges every branch; also returns the fit, for the draw's uncertainty.
 * @param weighed - whether the diagnosis weighs these readings
 * @param before - branches of an earlier day, to compare with where there is no nameplate
 */
export function assessResistances(
  record: ParsedRecord,
  readings: readonly MeasuredOhms[],
  drawn: BranchModule,
  weighed: boolean,
  before: readonly FittedBranch[] = [],
): { readonly assessment: ResistanceAssessment; readonly fit: ResistanceFit | null } {
  if (readings.length === 0) return { assessment: unread(record, drawn), fit: null };
  const meter = meterOf(record);
  const { fit, beyond } = fitWithStuds(drawn.module.network, readings, leadKnowledge(meter));
  const leads = fit.leads.resistance;
  const targets = branchTargets(drawn, fit.branches, before);
  const { outcome, chiSquare, degreesOfFreedom, pValue, consistency, notIdentifiable, openChoices } = fit;
  return {
    fit,
    assessment: {
      outcome,
      branches: fit.branches.map((one) =>
        assessBranch(one, record, drawn, targets.get(one.id), weighed, enlargement(fit)),
      ),
      // Leads are never taken for open.
      leads: leads as Ohms | null,
      leadsUncertainty: fit.leads.standardUncertainty,
      expectedReadings: expectedReadings(readings, drawn, targets),
      beyondElements: beyond.map(({ from, to, reads, predicted }) => ({ from, to, reads, predicted })),
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

/** From the record's ohm readings to branches with verdicts. */
import { buildModule, type HeatingModule, terminalResistance } from "../circuit/index.ts";
import { type Judgement, judge } from "../decision/index.ts";
import { type ColdOhms, checkOneOf, fail, type Issue, type Ohms, type Open } from "../quantity/index.ts";
import type { BranchAssessment, ResistanceAssessment } from "./assessTypes.ts";
import { fitTerminalReadings } from "./fit.ts";
import type { FittedBranch, LeadKnowledge, ResistanceFit, TerminalOhms } from "./fitTypes.ts";
import { collect, throwAll } from "./issues.ts";
import { readingWorth } from "./meter.ts";
import { withOnly } from "./openSearch.ts";
import type { ParsedRecord } from "./recordSchema.ts";

/** Coverage factor of expanded uncertainties: about 95 % for a normal distribution. */
const COVERAGE = 2;

/** The module with one resistance for each branch: what ohm readings at the terminals can see. */
export interface BranchModule {
  readonly module: HeatingModule;
  /** Target of each branch, cold, Ω, by branch name. */
  readonly targets: ReadonlyMap<string, ColdOhms>;
  /** Parallel strings in each branch, by branch name. */
  readonly parallel: ReadonlyMap<string, number>;
}

/** Builds the module with each branch as one element at its target. */
export function branchModule(
  record: ParsedRecord,
  targetOfBank: ReadonlyMap<string, ColdOhms>,
): BranchModule {
  const { wiring } = record;
  const module = buildModule({
    banks: wiring.banks.map(({ id, connection }) => ({
      id,
      connection,
      elementResistance: targetOfBank.get(id) as ColdOhms,
    })),
    ...(wiring.starPoints === undefined ? {} : { starPoints: wiring.starPoints }),
    ...(wiring.neutral === undefined ? {} : { neutral: wiring.neutral }),
  });
  const bankOf = new Map(wiring.banks.map((bank) => [bank.id, bank]));
  return {
    module,
    targets: new Map(module.elements.map(({ id, bank }) => [id, targetOfBank.get(bank) as ColdOhms])),
    parallel: new Map(module.elements.map(({ id, bank }) => [id, bankOf.get(bank)?.elementsInParallel ?? 1])),
  };
}

type RecordReadings = NonNullable<ParsedRecord["readings"]>;
type Meter = NonNullable<ParsedRecord["meter"]>;

/** One unit of the last digit: as quoted, or the meter's where a plain number was given. */
function resolutionOf(quoted: number | null, meter: Meter): number {
  // Its absence has been refused by checkResolution.
  return quoted ?? (meter.resolution?.value as number);
}

/** A plain number does not show its last digit: the meter's must be given then. Said once, not for every reading. */
function checkResolution(meter: Meter, readings: RecordReadings): void {
  if (meter.resolution !== undefined) return;
  const plain = readings.findIndex(({ reads }) => reads.value !== "open" && reads.resolution === null);
  const leads = typeof meter.leads === "object" && meter.leads.shorted.resolution === null;
  if (plain < 0 && !leads) return;
  const which = plain < 0 ? "meter.leads.shorted" : `readings.${plain}.reads`;
  fail({
    code: "missing",
    path: "meter.resolution",
    expected: `one unit of the meter's last digit, because ${which} is a plain number`,
    received: undefined,
  });
}

/** Branches connected when a reading was taken: all, or those of the bank or branch measured alone. */
function connectedBranches(alone: string | undefined, module: HeatingModule): string[] {
  const all = module.elements.map(({ id }) => id);
  if (alone === undefined) return all;
  const names = [...new Set(module.elements.flatMap(({ id, bank }) => [bank, id]))];
  checkOneOf("alone", alone, names);
  return module.elements.filter(({ id, bank }) => id === alone || bank === alone).map(({ id }) => id);
}

function terminalOhm(
  reading: RecordReadings[number],
  record: ParsedRecord,
  drawn: BranchModule,
): TerminalOhms {
  const { from, to, reads, alone } = reading;
  const { branches } = drawn.module.network;
  const only = connectedBranches(alone, drawn.module);
  const nodes = [...new Set(branches.filter(({ id }) => only.includes(id)).flatMap((b) => [b.from, b.to]))];
  checkOneOf("from", from, nodes);
  checkOneOf("to", to, nodes);
  if (from === to) fail({ code: "inconsistent", path: "to", expected: "two different nodes", received: to });
  if (reads.value === "open") return { from, to, reads: "open", only };
  const { meter } = record;
  // Without a meter, or without its last digit, the record is refused as a whole; its names are checked all the same.
  if (meter === undefined || (reads.resolution ?? meter.resolution) === undefined) {
    return { from, to, reads: reads.value, only };
  }
  const resolution = resolutionOf(reads.resolution, meter);
  const { standardUncertainty } = readingWorth({ reading: reads.value, resolution, accuracy: meter });
  return { from, to, reads: reads.value, standardUncertainty: standardUncertainty as Ohms, only };
}

/** What a reading would be with every branch at its target. */
function expectedReading({ from, to, only }: TerminalOhms, drawn: BranchModule): ColdOhms | Open {
  const { network } = drawn.module;
  const connected = only === undefined ? network : withOnly(network, only);
  return terminalResistance({ network: connected, from, to }) as number as ColdOhms;
}

/** What the record says of the leads, with the uncertainty of a shorted reading. */
function leadKnowledge(meter: Meter): LeadKnowledge {
  if (typeof meter.leads === "string") return meter.leads;
  const { value, resolution: quoted } = meter.leads.shorted;
  const resolution = resolutionOf(quoted, meter);
  const { standardUncertainty } = readingWorth({ reading: value, resolution, accuracy: meter });
  return { shorted: value, standardUncertainty: standardUncertainty as Ohms };
}

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
    return { ...base, expandedUncertainty: null, deviation: null, judgement: null, openElements: null };
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
  const tooHigh = judgement?.verdict === "outside" && resistance > target;
  return {
    ...base,
    expandedUncertainty: halfWidth as Ohms,
    deviation: resistance / target - 1,
    judgement,
    openElements:
      tooHigh && tolerance !== undefined
        ? openElements(resistance, halfWidth, target, drawn.parallel.get(id) as number, tolerance)
        : null,
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
  const { readings = [], meter } = record;
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
  const found: Issue[] = [];
  const ohms = readings.map((one, i) =>
    collect(found, `readings.${i}.`, () => terminalOhm(one, record, drawn)),
  );
  const leadsKnown = collect(found, "", () => {
    if (meter === undefined) {
      return fail({
        code: "missing",
        path: "meter",
        expected: "the ohmmeter's accuracy and leads, with readings",
        received: meter,
      });
    }
    checkResolution(meter, readings);
    return leadKnowledge(meter);
  });
  throwAll(found);
  const fit = fitTerminalReadings({
    network: drawn.module.network,
    readings: ohms as TerminalOhms[],
    leads: leadsKnown as LeadKnowledge,
  });
  const leads = fit.leads.resistance;
  const { outcome, chiSquare, degreesOfFreedom, pValue, consistency, notIdentifiable, openChoices } = fit;
  return {
    fit,
    assessment: {
      outcome,
      branches: fit.branches.map((one) => assessBranch(one, record, drawn, enlargement(fit))),
      leads: leads === "open" ? null : leads,
      leadsUncertainty: fit.leads.standardUncertainty,
      expectedReadings: (ohms as TerminalOhms[]).map((one) => expectedReading(one, drawn)),
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

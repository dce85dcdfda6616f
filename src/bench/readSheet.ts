/** A record read and checked as a whole, before anything is worked out from it. */
import { buildModule, type HeatingModule } from "../circuit/index.ts";
import { type Amperes, type ColdOhms, failAll, type Issue, type Ohms } from "../quantity/index.ts";
import type { CutLine, FeedAssessment, HardwareAssessment } from "./assessmentTypes.ts";
import { checkDay, dayState } from "./day/assessDay.ts";
import { type BranchModule, branchModule, drawnJoints, elementPlan } from "./day/branchModule.ts";
import { checkInstruments } from "./day/instrumentLimits.ts";
import { checkOhmmeter, DAYS, type Day, type MeasuredOhms, measuredReadings } from "./day/readings.ts";
import type { SupplyState } from "./day/supplyState.ts";
import { type BankTargets, bankTargets, coldTargets } from "./day/targets.ts";
import { collect } from "./record/issues.ts";
import type { ParsedRecord } from "./record/parsed.ts";
import type { BenchRecord } from "./record/record.ts";
import { parseRecord } from "./record/schema.ts";
import { assessBars } from "./site/bars.ts";
import { assessFeed } from "./site/feed.ts";
import { assessHardware } from "./site/hardware.ts";

/** A record that holds together, and what follows from it without any reading. */
export interface Sheet {
  readonly record: ParsedRecord;
  readonly targets: readonly BankTargets[];
  /** Line current that the plate promises, A. */
  readonly plateCurrent: Amperes | null;
  readonly site: {
    readonly hardware: readonly HardwareAssessment[];
    readonly feed: FeedAssessment | null;
    readonly cuts: readonly CutLine[];
  };
  /** The module with one resistance for each branch. */
  readonly drawn: BranchModule;
  /** The module element by element, with its joints. */
  readonly whole: HeatingModule;
  readonly states: Readonly<Record<Day, SupplyState | null>>;
  readonly ohms: Readonly<Record<Day, readonly MeasuredOhms[]>>;
}

/** Where a fit starts without a nameplate: the mean of what was read, Ω. */
function startOf(record: ParsedRecord): ColdOhms {
  const values = DAYS.flatMap((day) => record[day]?.ohms ?? []).flatMap(({ reads }) =>
    typeof reads.value === "number" && reads.value > 0 ? [reads.value as number] : [],
  );
  const sum = values.reduce((total, one) => total + one, 0);
  return (sum > 0 ? sum / values.length : 1) as ColdOhms;
}

/** The module element by element with its joints: the names that readings may use. */
function wholeModule(record: ParsedRecord, { module }: BranchModule): HeatingModule {
  const ones = new Map(module.elements.map(({ id }) => [id, 1]));
  return buildModule({ ...elementPlan(record, ones), joints: drawnJoints(record, 0 as Ohms) });
}

/** The record read and checked as a whole: everything wrong with it is told at once. */
export function readSheet(input: BenchRecord): Sheet {
  const record = parseRecord(input);
  const found: Issue[] = [];
  const targets = collect(found, "", () => bankTargets(record)) ?? [];
  const drawn = collect(found, "wiring.", () => branchModule(record, coldTargets(targets), startOf(record)));
  const states = DAYS.map((day) => dayState(found, record, day));
  collect(found, "", () => checkOhmmeter(record));
  collect(found, "", () => checkInstruments(record));
  const ohms = DAYS.map((day) =>
    drawn === undefined ? undefined : collect(found, "", () => measuredReadings(record, day, drawn)),
  );
  const whole = drawn === undefined ? undefined : wholeModule(record, drawn);
  if (whole !== undefined) for (const day of DAYS) collect(found, "", () => checkDay(record, day, whole));
  const plateCurrent =
    targets.length === 0
      ? null
      : (targets.reduce((sum, { targets: t }) => sum + t.lineCurrent, 0) as Amperes);
  const hardware = collect(found, "", () => assessHardware(record));
  const feed = collect(found, "", () => assessFeed(record, plateCurrent));
  const cuts = collect(found, "", () => assessBars(record, plateCurrent));
  // Both days may stand on the site's voltages: what is wrong with them is told once.
  failAll(found.filter((one, i) => found.findIndex(({ message }) => message === one.message) === i));
  // Nothing was thrown, so nothing is missing.
  return {
    record,
    targets,
    plateCurrent,
    site: {
      hardware: hardware as NonNullable<typeof hardware>,
      feed: feed ?? null,
      cuts: cuts as NonNullable<typeof cuts>,
    },
    drawn: drawn as NonNullable<typeof drawn>,
    whole: whole as NonNullable<typeof whole>,
    states: { asFound: states[0] ?? null, asLeft: states[1] ?? null },
    ohms: { asFound: ohms[0] as readonly MeasuredOhms[], asLeft: ohms[1] as readonly MeasuredOhms[] },
  };
}

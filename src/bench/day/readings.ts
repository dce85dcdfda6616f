/** From the readings of a record to what the fit takes: names checked, uncertainties worked out. */
import { type HeatingModule, type Network, terminalResistance } from "../../circuit/index.ts";
import {
  type ColdOhms,
  checkOneOf,
  fail,
  failAll,
  type Issue,
  type Ohms,
  type Open,
} from "../../quantity/index.ts";
import { readingWorth } from "../fit/meter.ts";
import { withOnly } from "../fit/openSearch.ts";
import type { LeadKnowledge, TerminalOhms } from "../fit/types.ts";
import { collect } from "../record/issues.ts";
import type { ParsedOhmmeter as Meter, ParsedReadings, ParsedRecord } from "../record/parsed.ts";
import type { BranchModule } from "./branchModule.ts";

/** The days of a record. */
export const DAYS = ["asFound", "asLeft"] as const;
/** One day of a record. */
export type Day = (typeof DAYS)[number];

type OhmReadings = NonNullable<ParsedReadings["ohms"]>;

/** One unit of the last digit: as quoted, or the meter's where a plain number was given. */
function resolutionOf(quoted: number | null, meter: Meter): number {
  // Its absence has been refused by checkResolution.
  return quoted ?? (meter.resolution?.value as number);
}

/** A plain number does not show its last digit: the meter's must be given then. Said once, not for every reading. */
function checkResolution(meter: Meter, record: ParsedRecord): void {
  if (meter.resolution !== undefined) return;
  const plain = DAYS.flatMap((day) => {
    const at = (record[day]?.ohms ?? []).findIndex(
      ({ reads }) => reads.value !== "open" && reads.resolution === null,
    );
    return at < 0 ? [] : [`${day}.ohms.${at}.reads`];
  });
  const leads = typeof meter.leads === "object" && meter.leads.shorted.resolution === null;
  const which = plain[0] ?? (leads ? "instruments.ohmmeter.leads.shorted" : undefined);
  if (which === undefined) return;
  fail({
    code: "missing",
    path: "instruments.ohmmeter.resolution",
    expected: `one unit of the meter's last digit, because ${which} is a plain number`,
    received: undefined,
  });
}

/** The ohmmeter of a record with ohm readings. */
export function checkOhmmeter(record: ParsedRecord): void {
  const meter = record.instruments?.ohmmeter;
  if (DAYS.every((day) => (record[day]?.ohms ?? []).length === 0)) return;
  if (meter === undefined) {
    fail({
      code: "missing",
      path: "instruments.ohmmeter",
      expected: "the ohmmeter's accuracy and leads, with ohm readings",
      received: meter,
    });
  } else checkResolution(meter, record);
}

/** A reading of a record: what the fit takes, and whether links and joints were left out of it. */
export interface MeasuredOhms extends TerminalOhms {
  readonly ownStuds: boolean;
}

/** Only one branch has studs of its own to read on. */
function checkOwnStuds({ ownStuds, alone }: OhmReadings[number], module: HeatingModule): void {
  if (ownStuds !== true) return;
  checkOneOf(
    "alone",
    alone,
    module.elements.map(({ id }) => id),
  );
}

/** Branches connected when a reading was taken: all, or those of the bank or branch measured alone. */
function connectedBranches(alone: string | undefined, module: HeatingModule): string[] {
  const all = module.elements.map(({ id }) => id);
  if (alone === undefined) return all;
  const names = [...new Set(module.elements.flatMap(({ id, bank }) => [bank, id]))];
  checkOneOf("alone", alone, names);
  return module.elements.filter(({ id, bank }) => id === alone || bank === alone).map(({ id }) => id);
}

/** A reading this far below the shorted leads' own is no reading of anything: limits of both added. */
function refuseBelowLeads(reads: number, limit: number, meter: Meter): void {
  if (typeof meter.leads !== "object") return;
  const { value, resolution } = meter.leads.shorted;
  if (resolution === null && meter.resolution === undefined) return;
  const leads = readingWorth({
    reading: value,
    resolution: resolutionOf(resolution, meter),
    accuracy: meter,
  });
  if (reads >= value - limit - leads.limit) return;
  fail({
    code: "inconsistent",
    path: "reads",
    expected: `at least what the leads read shorted, ${value}`,
    received: reads,
    unit: "Ω",
  });
}

/** A node of the module. On the neutral a star point has no name of its own, which is where people look for it. */
function checkNode(path: string, node: string, nodes: readonly string[]): void {
  if (/^S/i.test(node) && nodes.includes("N") && !nodes.includes(node)) {
    const expected = `one of ${nodes.join(", ")}; a star point on the neutral is N`;
    fail({ code: "unknown-name", path, expected, received: node });
  }
  checkOneOf(path, node, nodes);
}

function terminalOhm(
  reading: OhmReadings[number],
  meter: Meter | undefined,
  drawn: BranchModule,
): MeasuredOhms {
  const { from, to, reads, alone, ownStuds = false } = reading;
  checkOwnStuds(reading, drawn.module);
  const { branches } = drawn.module.network;
  const only = connectedBranches(alone, drawn.module);
  const nodes = [...new Set(branches.filter(({ id }) => only.includes(id)).flatMap((b) => [b.from, b.to]))];
  checkNode("from", from, nodes);
  checkNode("to", to, nodes);
  if (from === to) fail({ code: "inconsistent", path: "to", expected: "two different nodes", received: to });
  if (reads.value === "open") return { from, to, reads: "open", only, ownStuds };
  // Without a meter, or without its last digit, the record is refused as a whole; its names are checked all the same.
  if (meter === undefined || (reads.resolution ?? meter.resolution) === undefined) {
    return { from, to, reads: reads.value, only, ownStuds };
  }
  const resolution = resolutionOf(reads.resolution, meter);
  const { limit, standardUncertainty } = readingWorth({ reading: reads.value, resolution, accuracy: meter });
  refuseBelowLeads(reads.value, limit, meter);
  return { from, to, reads: reads.value, standardUncertainty: standardUncertainty as Ohms, only, ownStuds };
}

/**
 * The same reading written down again adds no certainty: a meter's error is mostly the same each time. Repeats share the weight of
 * one reading.
 */
function shareRepeats(readings: readonly MeasuredOhms[]): MeasuredOhms[] {
  // OL beside a figure is no repeat of it.
  const keyOf = ({ from, to, reads, only, ownStuds }: MeasuredOhms): string =>
    JSON.stringify([[from, to].sort(), only, ownStuds, reads === "open"]);
  const count = new Map<string, number>();
  for (const one of readings) count.set(keyOf(one), (count.get(keyOf(one)) ?? 0) + 1);
  return readings.map((one) => {
    if (one.standardUncertainty === undefined) return one;
    const repeats = count.get(keyOf(one)) as number;
    return { ...one, standardUncertainty: (one.standardUncertainty * Math.sqrt(repeats)) as Ohms };
  });
}

/** What a reading would be on the network given. */
export function expectedReading({ from, to, only }: TerminalOhms, network: Network): ColdOhms | Open {
  // Readings of a record name what was connected.
  const connected = withOnly(network, only as readonly string[]);
  return terminalResistance({ network: connected, from, to }) as number as ColdOhms;
}

/** What the record says of the leads, with the uncertainty of a shorted reading. */
export function leadKnowledge(meter: Meter): LeadKnowledge {
  if (typeof meter.leads === "string") return meter.leads;
  const { value, resolution: quoted } = meter.leads.shorted;
  const resolution = resolutionOf(quoted, meter);
  const { standardUncertainty } = readingWorth({ reading: value, resolution, accuracy: meter });
  return { shorted: value, standardUncertainty: standardUncertainty as Ohms };
}

/** The ohm readings of one day, names checked and uncertainties worked out; throws all that is wrong with them at once. */
export function measuredReadings(
  record: ParsedRecord,
  day: Day,
  drawn: BranchModule,
): readonly MeasuredOhms[] {
  const meter = record.instruments?.ohmmeter;
  const found: Issue[] = [];
  const ohms = (record[day]?.ohms ?? []).map((one, i) =>
    collect(found, `${day}.ohms.${i}.`, () => terminalOhm(one, meter, drawn)),
  );
  failAll(found);
  return shareRepeats(ohms as MeasuredOhms[]);
}

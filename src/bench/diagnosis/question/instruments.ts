/** What each reading is worth by its instrument: own variance, and the gain it shares with the instrument's other readings. */
import type { Open } from "../../../quantity/index.ts";
import type { FieldMeasurement, FieldReading } from "./fieldReading.ts";
import type { Instrument, Instruments } from "./types.ts";

/** Kinds of instrument, in the order of their gain columns. */
export const KINDS = ["ohmmeter", "clamp", "voltmeter", "millivoltmeter", "insulationTester"] as const;

/** Instrument that takes a kind of reading. */
export const INSTRUMENT_OF: Readonly<Record<FieldReading["kind"], (typeof KINDS)[number]>> = {
  resistance: "ohmmeter",
  current: "clamp",
  voltage: "voltmeter",
  drop: "millivoltmeter",
  insulation: "insulationTester",
};

/** Relative standard deviation of the gain: half the maker's percentage, rectangular (the other half is each reading's own). */
export function gainDeviation(instrument: Instrument | undefined): number {
  return instrument === undefined ? 0 : instrument.ofReading / 2 / Math.sqrt(3);
}

/**
 * Variance of one reading by itself: half the percentage and all the digits as one rectangular error, and the rounding to
 * the last digit as another.
 */
export function ownVariance(instrument: Instrument, reads: number): number {
  const limit = (instrument.ofReading / 2) * Math.abs(reads) + instrument.digits * instrument.resolution;
  return limit ** 2 / 3 + instrument.resolution ** 2 / 12;
}

/** Leads in the ohm readings: mean and standard deviation. */
export function leadsOf(
  ohmmeter: Instruments["ohmmeter"],
  upTo: number,
): { readonly mean: number; readonly deviation: number } {
  const leads = ohmmeter?.leads;
  if (leads === undefined || leads === "taken off") return { mean: 0, deviation: 0 };
  if (leads === "unknown") return { mean: upTo / 2, deviation: upTo / Math.sqrt(12) };
  return {
    mean: leads.shorted,
    deviation: Math.sqrt(ownVariance(ohmmeter as Instrument, leads.shorted)),
  };
}

/** Where and how a reading was taken, without what it showed. */
export function measurementOf(reading: FieldReading): FieldMeasurement {
  const { reads: _, ...rest } = reading;
  return rest as FieldMeasurement;
}

/** What was read; `null` for a planned measurement. */
export function readsOf(reading: FieldReading | FieldMeasurement): number | Open | null {
  return "reads" in reading ? (reading.reads as number | Open) : null;
}

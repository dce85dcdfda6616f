/** Insulation readings: what a sound module shows, and what an earth fault shows. */
import type { Open } from "../../../quantity/index.ts";
import { OPEN_SLIP } from "../question/settings.ts";

/** Sound insulation to the frame, Ω, log-uniform; a drop below is an earth fault or damp. */
export const SOUND_INSULATION = [1e6, 1e10] as const;

/** Probability that a module without earth fault is damp enough to read less, and how far damp takes it. */
const DAMP = 0.01;
const DAMPEST = 1e4;

/** The most that a reading of a last digit may be: 0.00 MΩ is anything up to 10 kΩ. */
const atMost = (reads: number, resolution: number): number => Math.max(reads, resolution);

/** Whether a reading to the frame is less than damp makes: without an earth fault in its way nothing explains it. */
export const isBelowDamp = (reads: number | Open, resolution: number): boolean =>
  reads !== "open" && atMost(reads, resolution) < DAMPEST;

/** Probability of a tester showing over range on sound insulation: a constant that only earth faults differ from. */
const OVER_RANGE = 0.25;

/** ln density of an insulation reading on a module without an earth fault on it. */
function healthyInsulation(reads: number | Open, resolution: number): number {
  if (reads === "open") return Math.log(OVER_RANGE);
  const [low, high] = SOUND_INSULATION;
  const shown = atMost(reads, resolution);
  if (shown >= low) return -Math.log(shown * Math.log(high / low));
  if (shown >= DAMPEST) return Math.log(DAMP) - Math.log(shown * Math.log(low / DAMPEST));
  return Math.log(DAMP / 100) - Math.log(shown * Math.log(DAMPEST));
}

/** Relative standard deviation of what leaks to the frame, a fault or damp, from reading to reading: neither is steady. Our judgement. */
export const UNSTEADY = 0.03;

/** An insulation reading as its density is asked for. */
export interface TakenInsulation {
  readonly reads: number | Open;
  readonly resolution: number;
  /** Variance of the instrument. */
  readonly own: number;
}

/**
 * ln density of insulation readings at places that hang together, on a module without an earth fault on them: a damp one has one leakage
 * to the frame, and each further reading shows it again. Half of the time it is taken to change between readings, as it does while it dries.
 */
export function healthyTogether(taken: readonly TakenInsulation[]): number {
  let apart = 0;
  for (const { reads, resolution } of taken) apart += healthyInsulation(reads, resolution);
  const [first] = taken;
  if (first === undefined || taken.length === 1) return apart;
  if (!taken.every(({ reads }) => reads !== "open" && reads < SOUND_INSULATION[0])) return apart;
  let again = healthyInsulation(first.reads, first.resolution);
  let sum = first.reads as number;
  for (let k = 1; k < taken.length; k += 1) {
    const { reads, own } = taken[k] as TakenInsulation;
    const mean = sum / k;
    // The mean of those before is itself known as well as they are read.
    const variance = (own + (UNSTEADY * mean) ** 2) * (1 + 1 / k);
    again += earthedInsulation({ reads, mean, variance });
    sum += reads as number;
  }
  const most = Math.max(apart, again);
  return most + Math.log((Math.exp(apart - most) + Math.exp(again - most)) / 2);
}

/** ln density of an insulation reading with an earth fault in its way: fault and piece of coil together, and how far they may be off. */
export function earthedInsulation(input: {
  readonly reads: number | Open;
  readonly mean: number;
  readonly variance: number;
}): number {
  const { reads, mean, variance } = input;
  if (reads === "open") return Math.log(OPEN_SLIP);
  return -0.5 * ((reads - mean) ** 2 / variance + Math.log(2 * Math.PI * variance));
}

/** What a reading of the insulation shows of a point on the coil. */
export interface ShownInsulation {
  readonly mean: number;
  /** Of coil, fault and leads, the instrument left aside. */
  readonly variance: number;
}

/** What a row, taken or planned, shows of a point; null for one that the fault does not reach. */
export type InsulationShown = (row: number, point: readonly number[]) => ShownInsulation | null;

/** Insulation readings: what a sound module shows, and what an earth fault shows. */
import type { Open, Warning } from "../../quantity/index.ts";
import { readsOf } from "./instruments.ts";
import type { Question } from "./model.ts";
import { OPEN_SLIP } from "./settings.ts";

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

/** Insulation below 1 MΩ is told of whatever the ranking makes of it: damp does the same, and no reading names the element. */
export function insulationWarnings({ all }: Question): Warning[] {
  return all.flatMap((reading, r): Warning[] => {
    if (reading.kind !== "insulation") return [];
    const reads = readsOf(reading);
    if (reads === null || reads === "open" || reads >= SOUND_INSULATION[0]) return [];
    const path = `readings.${r}.reads`;
    const message = `${path}: ${reads} Ω to the frame is below 1 MΩ: an earth fault or damp. One reading does not say which element; lift the links and read them one by one, dry, before anything is renewed or energised.`;
    return [
      { code: "caution", path, message, limit: SOUND_INSULATION[0], unit: "Ω", source: "common practice" },
    ];
  });
}

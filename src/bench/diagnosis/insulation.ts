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

/** Whether a reading to the frame is less than damp makes: without an earth fault in its way nothing explains it. */
export const isBelowDamp = (reads: number | Open): boolean => reads !== "open" && reads < DAMPEST;

/** Probability of a tester showing over range on sound insulation: a constant that only earth faults differ from. */
const OVER_RANGE = 0.25;

/** ln density of an insulation reading on a module without an earth fault on it. */
export function healthyInsulation(reads: number | Open, resolution: number): number {
  if (reads === "open") return Math.log(OVER_RANGE);
  const [low, high] = SOUND_INSULATION;
  const shown = Math.max(reads, resolution);
  if (shown >= low) return -Math.log(shown * Math.log(high / low));
  if (shown >= DAMPEST) return Math.log(DAMP) - Math.log(shown * Math.log(low / DAMPEST));
  return Math.log(DAMP / 100) - Math.log(shown * Math.log(DAMPEST));
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
    const reads = readsOf(reading);
    if (reading.kind !== "insulation" || reads === null || reads === "open" || reads >= SOUND_INSULATION[0])
      return [];
    const path = `readings.${r}.reads`;
    const message = `${path}: ${reads} Ω to the frame is below 1 MΩ: an earth fault or damp. One reading does not say which element; lift the links and read them one by one, dry, before anything is renewed or energised.`;
    return [
      { code: "caution", path, message, limit: SOUND_INSULATION[0], unit: "Ω", source: "common practice" },
    ];
  });
}

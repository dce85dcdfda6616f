/** One line voltage that reads the others' over √3: a probe on the neutral, before the supply is that far out of balance. */
import type { Warning } from "../../../quantity/index.ts";
import type { Question } from "../likelihood/model.ts";
import type { FieldReading } from "../question/fieldReading.ts";
import { isLine } from "../question/lines.ts";

/** How near the stated line voltage one that was read rightly must be, and how near its part over √3 the other: relative. */
const NEAR_STATED = 0.1;
const NEAR_NEUTRAL = 0.03;

/** A voltage read to neutral, it seems, and the line voltage that it belongs to. */
export interface NeutralSlip {
  /** Its place among the readings. */
  readonly row: number;
  readonly lineVoltage: number;
}

/**
 * The one line voltage that looks like one to neutral; null where none does, where it was read so more than once, or where two sides of
 * the triangle read so: a line wire on the neutral gives those.
 */
export function neutralSlip({ input }: Question): NeutralSlip | null {
  const stated = input.supply?.lineVoltage;
  if (stated === undefined) return null;
  let row = -1;
  let [right, sum] = [0, 0];
  for (let r = 0; r < input.readings.length; r += 1) {
    const one = input.readings[r] as FieldReading;
    if (one.kind !== "voltage" || !isLine(one.from) || !isLine(one.to)) continue;
    if (Math.abs(one.reads / stated - 1) < NEAR_STATED) {
      right += 1;
      sum += one.reads;
    } else if (row < 0) row = r;
    else return null;
  }
  if (row < 0) return null;
  const lineVoltage = right === 0 ? stated : sum / right;
  const reads = input.readings[row]?.reads as number;
  return Math.abs((reads * Math.sqrt(3)) / lineVoltage - 1) < NEAR_NEUTRAL ? { row, lineVoltage } : null;
}

/** What a voltage to neutral is told by. */
export const neutralWords = (reads: number, { lineVoltage }: NeutralSlip): string =>
  `${reads} V is ${Number(lineVoltage.toPrecision(3))} V over √3: was a probe on the neutral? Read it again between the lines.`;

/** Warns of a voltage that was read to neutral, it seems. */
export function neutralWarnings({ input }: Question, slip: NeutralSlip | null): Warning[] {
  if (slip === null) return [];
  const path = `readings.${slip.row}.reads`;
  const message = `${path}: ${neutralWords(input.readings[slip.row]?.reads as number, slip)}`;
  return [{ code: "suspicious", path, message, limit: slip.lineVoltage, unit: "V" }];
}

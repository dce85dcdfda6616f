/** Volts between lines that are not those stated: another supply, before it is a fault. */
import type { Warning } from "../../../quantity/index.ts";
import type { Question } from "../likelihood/model.ts";
import { isLine } from "../question/lines.ts";
import { RANGE } from "../question/settings.ts";

/** Standard deviations of a supply's mean voltage from which the one stated is another. */
const ANOTHER = 4;

/** Warns where the volts between lines are alike and far from the nominal ones. */
export function statedVoltageWarnings({ input, spread }: Question): Warning[] {
  const volts = input.readings.flatMap((one, r) =>
    one.kind === "voltage" && isLine(one.from) && isLine(one.to) ? [{ r, reads: one.reads as number }] : [],
  );
  const [first] = volts;
  const nominal = input.supply?.lineVoltage;
  if (first === undefined || volts.length < 2 || nominal === undefined) return [];
  const mean = volts.reduce((sum, { reads }) => sum + reads, 0) / volts.length;
  const alike = volts.every(({ reads }) => Math.abs(reads - mean) < RANGE.unbalance[1] * mean);
  if (!alike || Math.abs(mean / nominal - 1) < ANOTHER * spread.lineVoltage) return [];
  const path = `readings.${first.r}.reads`;
  const message = `${path}: ${Number(mean.toPrecision(3))} V between lines, where supply.lineVoltage says ${nominal} V: another supply, or volts read to neutral? Give supply.lineVoltage what the supply has, and ask again.`;
  return [{ code: "suspicious", path, message, limit: nominal, unit: "V" }];
}

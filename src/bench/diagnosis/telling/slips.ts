/** Readings a thousand times too large or too small: more likely a unit than a fault. */
import type { Warning } from "../../../quantity/index.ts";
import { infer, type Weighed } from "../inference/infer.ts";
import { type Question, questionOf } from "../likelihood/model.ts";
import type { FieldReading } from "../question/fieldReading.ts";
import { measurementOf } from "../question/instruments.ts";

/** How near 1000 the ratio must be at first sight against a sound module, and then against the other readings. */
const AT_SIGHT = 4;
const CONFIRMED = 1.6;

/** A joint that drops this much at heater currents would have burnt: millivolts typed as volts, more likely. */
const DROP_OF_A_BURNT_JOINT = 1;

const NAMES = {
  resistance: [
    "Ω",
    "milliohms typed as ohms, or ohms as kiloohms",
    "kiloohms typed as ohms, or ohms as milliohms",
  ],
  insulation: ["Ω", "milliohms typed as ohms", "kiloohms typed as ohms"],
  current: ["A", "milliamperes typed as amperes", "kiloamperes typed as amperes, or amperes as milliamperes"],
  voltage: ["V", "millivolts typed as volts", "kilovolts typed as volts, or volts as millivolts"],
  drop: ["V", "millivolts typed as volts", "kilovolts typed as volts"],
} as const;

/** Whether a ratio is about 1000 or a thousandth; 0, Infinity and NaN, of readings or predictions of 0 or open, are neither. */
const near = (ratio: number, times: number): boolean => {
  const [up, down] = [ratio / 1000, ratio * 1000];
  return (up < times && up * times > 1) || (down < times && down * times > 1);
};

const shown = (value: number): string => `${Number(value.toPrecision(3))}`;

/** Most probable finding of a set. */
function bestOf(weighed: readonly Weighed[]): Weighed {
  const score = ({ finding, logPrior }: Weighed): number =>
    finding.log + logPrior + Math.max(...finding.names.list().map(({ logOdds }) => logOdds));
  return weighed.reduce((best, one) => (score(one) > score(best) ? one : best));
}

/** Readings that look like a slip of the unit at first sight. */
function suspectsOf(
  readings: readonly FieldReading[],
  expected: Float64Array,
  explained: readonly number[],
): readonly number[] {
  const suspects: number[] = [];
  for (let r = 0; r < readings.length; r += 1) {
    const { reads, kind } = readings[r] as FieldReading;
    if (reads === "open" || kind === "drop" || kind === "insulation") continue;
    if (near(reads / (expected[r] as number), AT_SIGHT) && !explained.includes(r)) suspects.push(r);
  }
  return suspects;
}

/**
 * Warnings of readings that look like a slip of the unit.
 * @param expected - what the module as drawn and sound would read
 * @param explained - readings that the best explanation already accounts for: no slip is needed for them
 */
export function slipWarnings(
  question: Question,
  expected: Float64Array,
  explained: readonly number[],
): Warning[] {
  const { readings } = question.input;
  const suspects = suspectsOf(readings, expected, explained);
  const warnings: Warning[] = [];
  if (suspects.length > 0) {
    const others = readings.filter((_, r) => !suspects.includes(r));
    const planned = suspects.map((r) => measurementOf(readings[r] as FieldReading));
    const input = { ...question.input, readings: others, depth: "single" as const };
    const rest = questionOf(input, planned, question.modules);
    const best = bestOf(infer(rest)).finding;
    best.visit(best.best);
    suspects.forEach((r, i) => {
      const reading = readings[r] as FieldReading;
      const predicted = best.model.prediction.mean[others.length + i] as number;
      const ratio = (reading.reads as number) / predicted;
      if (!near(ratio, CONFIRMED)) return;
      const [unit, small, large] = NAMES[reading.kind];
      const times = ratio > 1 ? "about 1000 times" : "about a thousandth of";
      const path = `readings.${r}.reads`;
      const by = others.length > 0 ? "the other readings lead" : "the plan leads";
      const message = `${path}: ${reading.reads} ${unit} is ${times} the ${shown(predicted)} ${unit} that ${by} to expect: ${ratio > 1 ? small : large}? It was taken as given.`;
      warnings.push({ code: "suspicious", path, message, limit: predicted, unit });
    });
  }
  readings.forEach((reading, r) => {
    if (reading.kind !== "drop" || reading.reads < DROP_OF_A_BURNT_JOINT) return;
    const path = `readings.${r}.reads`;
    const message = `${path}: ${reading.reads} V across one joint is more than a joint lives through at heater currents: millivolts typed as volts, or the joint open and the supply across it? It was taken as given.`;
    const limit = DROP_OF_A_BURNT_JOINT;
    warnings.push({ code: "suspicious", path, message, limit, unit: "V", source: "common practice" });
  });
  return warnings;
}

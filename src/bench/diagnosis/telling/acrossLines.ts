/** Ohms read while something else still lies across the lines: the windings of the source, another load. */
import type { Warning } from "../../../quantity/index.ts";
import type { Question } from "../likelihood/model.ts";
import type { FieldReading } from "../question/fieldReading.ts";
import { isLine } from "../question/lines.ts";

/** Part of the sound module's ohms below which all readings between lines at once are no fault of the module. */
const FAR_BELOW = 0.25;

/** Ohms of a sound module from which that shows beside leads and contact. */
const SHOWS_FROM = 2;

const shown = (value: number): string => `${Number(value.toPrecision(2))}`;

/**
 * Warns where every reading between two lines is far below the module's own: three bolted branches at once are less likely than one winding.
 * @param expected - what the module as drawn and sound would read
 */
export function acrossLinesWarnings({ input }: Question, expected: Float64Array): Warning[] {
  const low: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let r = 0; r < input.readings.length; r += 1) {
    const reading = input.readings[r] as FieldReading;
    if (reading.kind !== "resistance" || reading.only !== undefined) continue;
    if (!isLine(reading.from) || !isLine(reading.to)) continue;
    const { reads } = reading;
    const sound = expected[r] as number;
    if (reads === "open" || !(sound >= SHOWS_FROM && reads < FAR_BELOW * sound)) return [];
    low.push(r);
    least = Math.min(least, sound);
    most = Math.max(most, reads);
  }
  if (low.length < 2) return [];
  const path = `readings.${low[0]}.reads`;
  const message = `${path}: all readings between lines are ${shown(most)} Ω or less, where the module alone has ${shown(least)} Ω: is the feed still connected? A transformer's windings or another load across the lines read like this, and also lower what is read to the star point. Lock out the feed, lift its wires and read again before any element is judged.`;
  return [
    { code: "suspicious", path, message, limit: FAR_BELOW * least, unit: "Ω", source: "common practice" },
  ];
}

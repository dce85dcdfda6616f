/** Ohms read while something else still lies across the lines: the windings of the source, another load. */
import type { Ohms, Warning } from "../../../quantity/index.ts";
import type { Weighed } from "../inference/infer.ts";
import type { Question } from "../likelihood/model.ts";
import { isLine } from "../question/lines.ts";

/** Part of the sound module's ohms below which all readings between lines at once are no fault of the module. */
const FAR_BELOW = 0.25;

/** Ohms of a sound module from which that shows beside leads and contact. */
const SHOWS_FROM = 2;

const shown = (value: number): string => `${Number(value.toPrecision(2))}`;

/** Warns where every reading between two lines is far below the module's own: three bolted branches at once are less likely than one winding. */
export function acrossLinesWarnings({ input }: Question, { finding }: Weighed): Warning[] {
  finding.visit(finding.best);
  const { mean } = finding.model.prediction;
  const between = input.readings.flatMap((reading, r) =>
    reading.kind === "resistance" && reading.only === undefined && isLine(reading.from) && isLine(reading.to)
      ? [{ r, reads: reading.reads, sound: mean[r] as number }]
      : [],
  );
  const low = between.filter(
    ({ reads, sound }) => reads !== "open" && sound >= SHOWS_FROM && reads < FAR_BELOW * sound,
  );
  if (between.length < 2 || low.length < between.length) return [];
  const least = Math.min(...low.map(({ sound }) => sound));
  const most = Math.max(...low.map(({ reads }) => reads as Ohms));
  const path = `readings.${low[0]?.r}.reads`;
  const message = `${path}: all readings between lines are ${shown(most)} Ω or less, where the module alone has ${shown(least)} Ω: is the feed still connected? A transformer's windings or another load across the lines read like this, and also lower what is read to the star point. Lock out the feed, lift its wires and read again before any element is judged.`;
  return [
    { code: "suspicious", path, message, limit: FAR_BELOW * least, unit: "Ω", source: "common practice" },
  ];
}

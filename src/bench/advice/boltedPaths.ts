/** Readings that no sound module gives, whichever branch they lie in: a path as good as bolted between two terminals. */
import type { NextStep, ResistanceAssessment } from "../assessTypes.ts";
import { LEAK } from "../diagnosis/likelihood/leak.ts";
import { listed } from "../diagnosis/telling/words.ts";

/** Below this part of what a sound module reads, the amps would be a short circuit's. Common practice, no published source. */
const BOLTED = 0.05;

/** The same part of the highest of the readings, where no plate says what sound ones are: no two banks of a module differ so. */
const BOLTED_BESIDE = 0.02;

/** Terminals between which it reads so, in words; none where a branch shows by itself that it is shorted. */
export function boltedPaths({
  branches,
  readings,
  expectedReadings,
  leads,
}: ResistanceAssessment): readonly string[] {
  if (branches.some(({ finding }) => finding === "shorted")) return [];
  const highest = Math.max(
    0,
    ...readings.map(({ reads }) => (reads === "open" || reads >= LEAK ? 0 : reads - (leads ?? 0))),
  );
  const paths = readings.flatMap(({ from, to, reads }, i) => {
    const sound = expectedReadings[i];
    if (reads === "open" || sound === "open" || sound === 0) return [];
    const least = typeof sound === "number" ? BOLTED * sound : BOLTED_BESIDE * highest;
    return reads - (leads ?? 0) < least ? [`${from} to ${to}`] : [];
  });
  return [...new Set(paths)];
}

/** What forbids voltage then. */
export const boltedWords = (paths: readonly string[]): readonly string[] =>
  paths.length === 0
    ? []
    : [`${listed(paths)} ${paths.length > 1 ? "read" : "reads"} as good as bolted, by whatever path`];

/** What to do about them. */
export const boltedSteps = (paths: readonly string[]): readonly NextStep[] =>
  paths.length === 0
    ? []
    : [
        {
          action: `Do not energise. Find what bridges ${listed(paths)}: a bar or lug across two studs, a wrong link, a fallen coil, or a feed that was still connected when it was read.`,
          reason: `${listed(paths)} ${paths.length > 1 ? "read" : "reads"} next to nothing beside what a sound module, or the rest of this one, reads.`,
          about: paths,
        },
      ];

/** Readings that no sound module gives, whichever branch they lie in: a path as good as bolted between two terminals. */
import type { NextStep, ResistanceAssessment } from "../assessTypes.ts";
import { listed } from "../diagnosis/words.ts";

/** Below this part of what a sound module reads, the amps would be a short circuit's. Common practice, no published source. */
const BOLTED = 0.05;

/** Terminals between which it reads so, in words; none where a branch shows by itself that it is shorted. */
export function boltedPaths({
  branches,
  readings,
  expectedReadings,
  leads,
}: ResistanceAssessment): readonly string[] {
  if (branches.some(({ finding }) => finding === "shorted")) return [];
  const paths = readings.flatMap(({ from, to, reads }, i) => {
    const sound = expectedReadings[i];
    if (reads === "open" || typeof sound !== "number" || sound === 0) return [];
    return reads - (leads ?? 0) < BOLTED * sound ? [`${from} to ${to}`] : [];
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
          reason: `${listed(paths)} ${paths.length > 1 ? "read" : "reads"} less than a twentieth of what a sound module reads there.`,
          about: paths,
        },
      ];

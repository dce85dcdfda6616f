/** Readings that the diagnosis holds for odd in themselves: a feed that is still connected, a slip of the unit. They are settled before any element. */
import type { NextStep } from "../assessTypes.ts";
import type { Diagnosis } from "../diagnosis/types.ts";

/** What looks odd, without the place in the question that nobody sees; what is odd of several readings alike is said once. */
export function oddReadings(diagnosis: Diagnosis): readonly string[] {
  const messages = diagnosis.warnings
    .filter(({ code }) => code === "suspicious")
    .map(({ path, message }) => (message.startsWith(`${path}: `) ? message.slice(path.length + 2) : message));
  return [...new Set(messages)];
}

/** The question that an odd reading raises, for the first lines. */
const questionOf = (message: string): string => /^.*?\?/.exec(message)?.[0] ?? message;

export const oddWords = (odd: readonly string[]): readonly string[] => odd.map(questionOf);

/** What to do about them; what the question leaves to say is the reason. */
export const oddSteps = (odd: readonly string[]): readonly NextStep[] =>
  odd.map((message) => {
    const question = questionOf(message);
    return {
      action: `Isolate, then settle this and read again before any element is judged or renewed: ${question}`,
      reason: message.slice(question.length).trim(),
      about: [],
    };
  });

/** What has to come before running, or null. */
export const oddRunning = (odd: readonly string[]): string | null =>
  odd.length === 0 ? null : "Not known before the readings that look odd are settled and taken again.";

/** Readings that the diagnosis holds for odd in themselves: a feed that is still connected, a slip of the unit. They are settled before any element. */
import type { NextStep } from "../assessTypes.ts";
import { NO_CONTACT } from "../day/contactHeat.ts";
import type { Diagnosis } from "../diagnosis/question/types.ts";
import type { ParsedRecord } from "../record/parsed.ts";
import { plateWarnings } from "../recordWarnings.ts";

/** What looks odd, without the place in the question that nobody sees; what is odd of several readings alike is said once. */
export function oddReadings(diagnosis: Diagnosis): readonly string[] {
  const messages = diagnosis.warnings
    .filter(({ code }) => code === "suspicious")
    .map(({ path, message }) => (message.startsWith(`${path}: `) ? message.slice(path.length + 2) : message));
  return [...new Set(messages)];
}

/** A reading about 1000 times off what a plate of the wrong unit promises: the plate's slip, and none of the meter's. */
const BY_THE_PLATE = /^[^?]* is about (?:1000 times|a thousandth of) /;

/**
 * What looks odd where the plate itself does: a power of the wrong unit makes all readings odd, and a voltage to neutral all elements of
 * another value.
 */
export function withPlate(
  record: ParsedRecord,
  odd: readonly string[],
  allOfAnotherValue: boolean,
): readonly string[] {
  const plate = plateWarnings(record);
  const power = plate.filter(({ path }) => path === "nameplate.power");
  const voltage = allOfAnotherValue ? plate.filter(({ path }) => path === "nameplate.voltage") : [];
  const others = power.length > 0 ? odd.filter((words) => !BY_THE_PLATE.test(words)) : odd;
  return [...[...power, ...voltage].map(({ message }) => message), ...others];
}

/** Drops that no contact holds, where the diagnosis was not asked about drops; a joint read again speaks for itself. */
export function oddDrops({ asFound, asLeft }: Pick<ParsedRecord, "asFound" | "asLeft">): readonly string[] {
  const again = new Set((asLeft?.joints ?? []).map(({ id }) => id));
  return (asFound?.joints ?? []).flatMap(({ id, drop }) =>
    drop === undefined || drop.value < NO_CONTACT || again.has(id)
      ? []
      : [
          `${drop.value} V across joint ${id} is more than a joint lives through at heater currents: millivolts typed as volts, or the joint open and the supply across it? It was taken as given.`,
        ],
  );
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
      // A question that says it all has no rest.
      reason: message.slice(question.length).trim() || "What else these readings say rests on it.",
      about: [],
    };
  });

/** What has to come before running, or null. */
export const oddRunning = (odd: readonly string[]): string | null =>
  odd.length === 0 ? null : "Not known before the readings that look odd are settled and taken again.";

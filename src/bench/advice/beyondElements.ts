/** What readings that the elements do not account for ask for: a link, a bar or a joint is burnt, or a path lies beside them. */
import type { NextStep, ResistanceAssessment } from "../assessTypes.ts";
import { listed } from "../diagnosis/telling/words.ts";
import type { ParsedRecord } from "../record/parsed.ts";

type Beyond = ResistanceAssessment["beyondElements"];

/** Those that read more than the elements, and those that read less. */
function bySide({ beyondElements }: ResistanceAssessment): { readonly more: Beyond; readonly less: Beyond } {
  const isLess = ({ reads, predicted }: Beyond[number]): boolean =>
    typeof reads === "number" && predicted !== null && reads < predicted;
  return {
    more: beyondElements.filter((one) => !isLess(one)),
    less: beyondElements.filter(isLess),
  };
}

const places = (readings: Beyond): string =>
  listed([...new Set(readings.map(({ from, to }) => `${from} to ${to}`))]);

/** In words, for the first line; none without such readings. */
export function beyondWords(resistances: ResistanceAssessment): readonly string[] {
  const { more, less } = bySide(resistances);
  return [
    ...(more.length === 0
      ? []
      : [
          `the elements, read on their own studs, do not account for ${places(more)}: a link, bar or joint there is open or bad`,
        ]),
    ...(less.length === 0
      ? []
      : [
          `${places(less)} ${less.length > 1 ? "read" : "reads"} less than the elements on their own studs: a path beside them`,
        ]),
  ];
}

/** What has to come before running, or null. */
export function beyondRunning(resistances: ResistanceAssessment): string | null {
  const { more, less } = bySide(resistances);
  if (less.length > 0) return `Not before the path beside the elements, ${places(less)}, is found.`;
  if (more.length > 0)
    return `Not before the links, bars and joints on the way of ${places(more)} are opened, looked at and remade: a bad joint feeds on its own heat until it burns open.`;
  return null;
}

/** What to do about them. */
export function beyondSteps(resistances: ResistanceAssessment): readonly NextStep[] {
  const { more, less } = bySide(resistances);
  const named = (readings: Beyond): string[] => readings.map(({ from, to }) => `${from} to ${to}`);
  return [
    ...(more.length === 0
      ? []
      : [
          {
            action: `Isolate, then open every link, bar and joint on the way of ${places(more)}: renew what is burnt, pitted or loose, remake it, and read again through the links.`,
            reason: `On their own studs the elements read what they should; through the links ${places(more)} ${more.length > 1 ? "do" : "does"} not. No element needs renewing for it.`,
            about: named(more),
          },
        ]),
    ...(less.length === 0
      ? []
      : [
          {
            action: `Isolate, then look for a path beside the elements from ${places(less)}: a bar across two studs, a wrong link, a load that is still connected.`,
            reason: "Through the links they read less than the elements on their own studs.",
            about: named(less),
          },
        ]),
  ];
}

/** Whether readings of a branch alone may have been taken on its own studs without the record saying so. */
export const studsUnsaid = ({ asFound, asLeft }: ParsedRecord): boolean => {
  const ohms = [...(asFound?.ohms ?? []), ...(asLeft?.ohms ?? [])];
  return (
    ohms.some(({ alone }) => alone !== undefined) &&
    ohms.some(({ alone }) => alone === undefined) &&
    ohms.every(({ ownStuds }) => ownStuds !== true)
  );
};

/** What to write down where readings alone and through the links exclude each other. */
export const STUDS_STEP: NextStep = {
  action:
    "Write down where the probes sat when a branch was read alone: if on its own studs, its links lifted too, mark those readings as taken on own studs and assess again.",
  reason:
    "Taken alone a branch counts with its own links and joints in. Good on its own studs and bad through the links is a burnt link, bar or joint and no contradiction.",
  about: [],
};

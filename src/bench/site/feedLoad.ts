/** What both families of rules are asked about a feed, and how their answers become figures. */
import type { Amperes, Celsius, Issue } from "../../quantity/index.ts";
import type { CodeResult } from "../../wiring/index.ts";
import type { Figure } from "../assessmentTypes.ts";
import type { ParsedFeed } from "../record/parsed.ts";
import type { Asked, FieldNames } from "./asking.ts";
import { cautionOf, figure, judgedFigure, messagesOf, printedText } from "./figure.ts";

/** A feed to be checked. */
export interface FeedQuestion {
  readonly feed: ParsedFeed;
  /** Line current at plate voltage; `null` without a nameplate. */
  readonly lineCurrent: Amperes | null;
  /** Air at the hottest place of the run. */
  readonly ambient: Celsius;
  /** Where slips of the record are kept. */
  readonly issues: Issue[];
}

/** Figures with the cautions of all the answers they rest on. */
export interface FeedFigures {
  readonly figures: readonly Figure[];
  readonly cautions: readonly string[];
}

/** Arguments of the lookups under their names in the record. */
export const FEED_NAMES: FieldNames = {
  edition: "feed.edition",
  equipment: "feed.equipment",
  size: "feed.conductor",
  material: "feed.material",
  installation: "feed.installation",
  method: "feed.installation",
  insulation: "feed.insulation",
  insulationTemperature: "feed.insulation",
  terminalTemperature: "feed.terminals",
};

/**
 * Sets tried where no size serves alone. More of them are for bus bars by IEC 60364-5-52, 523.7, and in one raceway four carry no more than
 * three (12 conductors · 0.50, 9 · 0.70).
 */
const TRIED = [2, 3];

/** Said where nobody told how several sets lie. */
export const TOGETHER =
  "How the sets of conductors in parallel lie is not in the record: all side by side in one raceway or group are taken, the least favourable.";

/** A conductor for the load with how many of it make a line: as recorded, else one, or as few as serve where the table ends before the load. */
export function inParallel<T>(
  recorded: number | undefined,
  look: (count: number) => Asked<T>,
): { readonly count: number; readonly choice: Asked<T> } {
  const count = recorded ?? 1;
  const choice = look(count);
  if (choice.why === null || recorded !== undefined || choice.refused.code !== "outside-table")
    return { count, choice };
  for (const more of TRIED) {
    const found = look(more);
    if (found.why === null) return { count: more, choice: found };
  }
  return { count, choice };
}

/** A size with how many of it make a line. */
export const perLine = (count: number, size: string): string =>
  count === 1 ? size : `${count} × ${size} per line`;

type Answer = CodeResult<unknown>;

/** Cautions of the answers, each once; their doubts stand beside the figures. */
export const cautionsOf = (answers: readonly (Answer | null)[]): readonly string[] => [
  ...new Set(answers.flatMap((one) => one?.cautions ?? [])),
];

/** A figure for a question the source did not answer. */
export function unanswered(label: string, unit: string, why: string | null): Figure {
  return figure({ label, value: null, unit, basis: "not answered", caution: why });
}

/** A conductor that the source gives no ampacity for; in air as hot as its insulation may get it has none left for its own heat. */
export function noAmpacity(
  { why, refused }: { readonly why: string; readonly refused?: Pick<Issue, "code" | "path"> },
  design: number | null,
): Figure {
  const label = "conductor as installed, ampacity";
  const tooHot = refused?.code === "out-of-range" && refused.path === "ambient";
  if (!tooHot || design === null) return unanswered(label, "A", why);
  const basis =
    "the air is as hot as the insulation may get, or hotter: nothing is left for the conductor's own heat";
  return figure({
    label,
    value: 0,
    unit: "A",
    limit: { low: design, high: null },
    verdict: "outside",
    basis,
    caution: why,
  });
}

/** The current that conductor and device are chosen for. */
export function designFigure(design: Asked<CodeResult<Amperes> & { readonly factor: number }>): Figure {
  const label = "design current";
  if (design.found === null) return unanswered(label, "A", design.why);
  const { value, factor } = design.found;
  return figure({
    label,
    value,
    unit: "A",
    basis: `${printedText(design.found)}: ${factor} times the line current at plate voltage`,
    caution: cautionOf(messagesOf(design.found.warnings)),
  });
}

/** An ampacity beside the least that serves. */
export function conductorFigure(given: {
  readonly ampacity: CodeResult<Amperes> & { readonly size: string; readonly conductorsPerLine: number };
  readonly least: number | null;
  readonly why: string | null;
  readonly words: string;
}): Figure {
  const { ampacity, least, why, words } = given;
  const shown = {
    label: "conductor as installed, ampacity",
    value: ampacity.value as number,
    unit: "A",
    name: perLine(ampacity.conductorsPerLine, ampacity.size),
    basis: `${printedText(ampacity)} (${ampacity.governing} governs)${words}`,
    caution: cautionOf([why, ...messagesOf(ampacity.warnings)]),
  };
  return least === null ? figure(shown) : judgedFigure({ ...shown, low: least });
}

/** One side of the range a device may have, and whose rule it is. */
export interface DeviceLimit {
  readonly value: number;
  readonly basis: string;
}

/**
 * A device against the load it must carry and against the conductor it must protect: two figures, for where the conductor is too small
 * no device satisfies both. Only a device that is installed is judged: one that was looked up fits its load by itself.
 */
export function deviceFigures(given: {
  /** The device as installed, or the one looked up with the words for it. */
  readonly device: { readonly installed: number } | { readonly lookedUp: number; readonly words: string };
  readonly forLoad: DeviceLimit | null;
  readonly forConductor: DeviceLimit | null;
  readonly caution: string | null;
}): readonly Figure[] {
  const { device, forLoad, forConductor, caution } = given;
  const unit = "A";
  if ("lookedUp" in device) {
    const { lookedUp: value, words } = device;
    // A device is looked up for a load.
    const { value: low, basis: ofLoad } = forLoad as DeviceLimit;
    const figures = [
      figure({
        label: `overcurrent device, ${words}`,
        value,
        unit,
        limit: { low, high: null },
        basis: ofLoad,
      }),
    ];
    if (forConductor === null) return figures;
    const { value: most, basis } = forConductor;
    return [
      ...figures,
      figure({ label: "largest device for the conductor", value: most, unit, basis, caution }),
    ];
  }
  const label = "overcurrent device as installed";
  const shown = { value: device.installed, unit };
  const sides: Figure[] = [];
  if (forLoad !== null) {
    const { value: low, basis } = forLoad;
    sides.push(judgedFigure({ ...shown, label: `${label}, for the load`, low, basis }));
  }
  if (forConductor !== null) {
    const { value: high, basis } = forConductor;
    sides.push(judgedFigure({ ...shown, label: `${label}, for the conductor`, high, basis, caution }));
  }
  if (sides.length > 0) return sides;
  return [figure({ ...shown, label, basis: "as given in the record; nothing to hold it against", caution })];
}

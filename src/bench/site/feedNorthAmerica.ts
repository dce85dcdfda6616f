/** A feed against a North American edition: conductor, device, terminals, subdivision. */
import { type Amperes, type Celsius, fail, parseQuantity } from "../../quantity/index.ts";
import {
  type ConductorChoice,
  type ConductorRun,
  conductorAmpacity,
  conductorForLoad,
  designCurrent,
  largestDevice,
  loadForConductor,
  type NecEdition,
  type Subdivision,
  standardDevice,
  subdivision,
  terminalTorque,
  terminationTemperature,
} from "../../wiring/index.ts";
import type { Figure } from "../assessmentTypes.ts";
import { type Asked, ask, insist } from "./asking.ts";
import {
  cautionsOf,
  conductorFigure,
  designFigure,
  deviceFigures,
  FEED_NAMES,
  type FeedFigures,
  type FeedQuestion,
  inParallel,
  noAmpacity,
  perLine,
  TOGETHER,
  unanswered,
} from "./feedLoad.ts";
import { cautionOf, figure, judgedFigure, messagesOf, printedText } from "./figure.ts";

const EQUIPMENT = "process heating";
/** One circuit of a three-phase module. */
const CONDUCTORS = 3;

const HEATERS_ONLY = "Heaters alone are counted: motors and other loads on the same feed come on top.";
/** The load as one circuit, against the largest that a class allows. */
export const UNSPLIT = "load of one protected circuit, if not split";

const NO_LOAD = "no nameplate: no line current";

const NOTHING = { found: null, why: null } as const;

/** A lookup that needs what may not be known. */
type Maybe<T> = Asked<T> | typeof NOTHING;

/** Whether the load must be split, and into what. */
function splitFigures(load: number, split: Maybe<Subdivision>): readonly Figure[] {
  if (split.found === null) return [unanswered(UNSPLIT, "A", split.why)];
  const { largestLoad, required, value, circuitCurrent, device } = split.found;
  if (largestLoad === null) return [];
  const basis = printedText(split.found);
  const whole = judgedFigure({
    label: UNSPLIT,
    value: load,
    unit: "A",
    high: largestLoad,
    basis,
    caution: required ? `Split the elements into ${value} protected circuits or more.` : null,
  });
  if (!required) return [whole];
  return [
    whole,
    figure({ label: "protected circuits, at least", value, unit: "1", basis }),
    figure({ label: "load of each, equal circuits", value: circuitCurrent, unit: "A", basis }),
    figure({ label: "overcurrent device of each", value: device, unit: "A", basis }),
  ];
}

/**
 * The least that a conductor must carry: the design current, and not what the next size happens to carry. Where a rule of its own asks for a
 * larger size, or allows a smaller one, it is that of the smallest that serves.
 */
function leastAsked(
  installed: number,
  design: number | null,
  smallest: number | null,
  noneServes: boolean,
): number | null {
  if (smallest === null) return noneServes ? design : null;
  if (design === null || design > smallest) return smallest;
  return installed >= design && installed < smallest ? smallest : design;
}

/** Letters as printed on the wire: several of them stand for one temperature dry and another wet, so none is read as either. */
const LETTERS = /^ *[A-Z]{2,5}(?:-2)? *$/i;

/** Checks a feed by a North American edition. */
export function northAmericanFeed(question: FeedQuestion): FeedFigures {
  const { feed, lineCurrent, ambient, issues } = question;
  const edition = feed.edition as NecEdition;
  const { equipment = EQUIPMENT, material = "copper", installation } = feed;
  const asking = <T>(run: () => T): Asked<T> => ask(issues, FEED_NAMES, run);
  const insulationTemperature = insist(issues, FEED_NAMES, () => {
    if (LETTERS.test(feed.insulation)) {
      const expected =
        'the temperature at the head of its column in the ampacity table, such as "90 °C" for THHN and XHHW-2, "75 °C" for THW and THWN';
      fail({ code: "malformed-text", path: "insulation", expected, received: feed.insulation });
    }
    const { value } = parseQuantity(feed.insulation, { unit: "°C", path: "insulation" });
    return value as Celsius;
  });
  if (insulationTemperature === null) return { figures: [], cautions: [] };
  const { conductorsPerLine = 1, grouped = CONDUCTORS * conductorsPerLine } = feed;
  /** As recorded; with more sets than that, in the same raceway. */
  const run = (count: number): ConductorRun => ({
    edition,
    installation,
    material,
    insulationTemperature,
    ambient,
    conductorsPerLine: count,
    currentCarryingConductors: grouped + CONDUCTORS * (count - conductorsPerLine),
    terminalTemperature: feed.terminals?.value ?? "unmarked",
  });
  const loaded = <T>(ofLoad: (heaterCurrent: Amperes) => T): Maybe<T> =>
    lineCurrent === null ? NOTHING : asking(() => ofLoad(lineCurrent));
  const design = loaded((heaterCurrent) => designCurrent({ edition, equipment, heaterCurrent }));
  const { count, choice } =
    lineCurrent === null
      ? { count: conductorsPerLine, choice: NOTHING }
      : inParallel(feed.conductorsPerLine, (sets) =>
          asking(() => conductorForLoad({ ...run(sets), equipment, heaterCurrent: lineCurrent })),
        );
  const split = loaded((current) => subdivision({ edition, equipment, current }));
  const standard =
    design.found === null
      ? NOTHING
      : asking(() => standardDevice({ edition, current: design.found.value, direction: "up" }));
  const rating = feed.device?.value ?? standard.found?.value ?? null;
  const unmarked =
    feed.terminals !== undefined || rating === null
      ? NOTHING
      : asking(() => terminationTemperature({ edition, circuitRating: rating }));
  const terminal = feed.terminals?.value ?? unmarked.found?.value ?? null;
  const sized = <T>(
    sets: number,
    size: string | undefined,
    at: (marked: ConductorRun & { size: string }) => T,
  ): Maybe<T> =>
    size === undefined || terminal === null
      ? NOTHING
      : asking(() => at({ ...run(sets), terminalTemperature: terminal, size }));
  const installed = sized(conductorsPerLine, feed.conductor, conductorAmpacity);
  const least = sized(count, choice.found?.value, conductorAmpacity);
  const carrying = installed.found ?? least.found;
  const sets = carrying?.conductorsPerLine ?? 1;
  const size = carrying?.size;
  const subdivided = split.found?.required === false;
  const permitted = sized(sets, size, (marked) => loadForConductor({ ...marked, equipment, subdivided }));
  const largest =
    carrying === null
      ? NOTHING
      : asking(() => largestDevice({ edition, size: carrying.size, material, ampacity: carrying.value }));
  const torque = sized(sets, size, (marked) =>
    terminalTorque({ drive: { kind: "external hexagon" }, size: marked.size }),
  );

  const conductor = (): readonly Figure[] => {
    const looked =
      choice.found === null
        ? [unanswered("conductor, smallest that serves", "A", choice.why ?? NO_LOAD)]
        : [smallestFigure(choice.found)];
    if (feed.conductor === undefined) return looked;
    if (installed.found === null) {
      const unmarkedWhy = "unmarked terminals go by the rating of the circuit, which is not known";
      const refused = installed.why === null ? { why: unmarkedWhy } : installed;
      return [noAmpacity(refused, design.found?.value ?? null), ...looked];
    }
    return [
      conductorFigure({
        ampacity: installed.found,
        // Where no size of the table serves, the one installed is held against the design current itself.
        least: leastAsked(
          installed.found.value,
          design.found?.value ?? null,
          least.found?.value ?? null,
          choice.why !== null,
        ),
        why: choice.why,
        words:
          choice.found === null
            ? ""
            : `; held against ${perLine(count, choice.found.value)}, the smallest that serves`,
      }),
      ...looked,
    ];
  };

  const device = (): readonly Figure[] => {
    // The class of the equipment may ask for less than the conductor permits.
    const byClass =
      permitted.found !== null && largest.found !== null && permitted.found.device < largest.found.value
        ? permitted.found.cells.find(({ column }) => column === "subdivided device")
        : undefined;
    const high = permitted.found?.device ?? largest.found?.value;
    const upper =
      byClass !== undefined
        ? printedText(byClass)
        : largest.found === null
          ? ""
          : `${printedText(largest.found)} (${largest.found.governing})`;
    const words = "smallest standard";
    const lookedUp = standard.found?.value;
    if (feed.device === undefined && lookedUp === undefined) {
      return [unanswered(`overcurrent device, ${words}`, "A", standard.why ?? NO_LOAD)];
    }
    const lower = [design.found, feed.device === undefined ? standard.found : null];
    return deviceFigures({
      device:
        feed.device === undefined
          ? { lookedUp: lookedUp as number, words }
          : { installed: feed.device.value },
      forLoad:
        design.found === null
          ? null
          : {
              value: design.found.value,
              basis: lower.flatMap((one) => (one === null ? [] : [printedText(one)])).join("; "),
            },
      forConductor: high === undefined ? null : { value: high, basis: upper },
      caution: cautionOf([standard.why, permitted.why, largest.why]),
    });
  };

  const terminals = (): Figure => {
    const label = "temperature of the terminals";
    const found = unmarked.found;
    return figure({
      label,
      value: terminal,
      unit: "°C",
      basis:
        feed.terminals !== undefined
          ? "mark of the terminals, as given in the record"
          : found === null
            ? "not answered"
            : `${printedText(found)}: terminals without a mark`,
      caution: cautionOf(found?.cautions ?? [unmarked.why]),
    });
  };

  return {
    figures: [
      lineCurrent === null
        ? unanswered("design current", "A", NO_LOAD)
        : designFigure(design as Asked<NonNullable<typeof design.found>>),
      ...conductor(),
      ...device(),
      terminals(),
      ...(lineCurrent === null ? [] : splitFigures(lineCurrent, split)),
      torque.found === null
        ? unanswered("torque of wire terminals with an external hexagon", "N·m", torque.why)
        : figure({
            label: "torque of wire terminals with an external hexagon",
            value: torque.found.value,
            unit: "N·m",
            name: size as string,
            basis: printedText(torque.found),
            caution: cautionOf([
              "Slotted screws and recessed sockets have other values.",
              ...messagesOf(torque.found.warnings),
            ]),
          }),
    ],
    cautions: [
      HEATERS_ONLY,
      ...(feed.grouped === undefined && Math.max(count, sets) > 1 ? [TOGETHER] : []),
      ...cautionsOf([
        design.found,
        choice.found,
        installed.found,
        standard.found,
        largest.found,
        permitted.found,
        split.found,
        torque.found,
      ]),
    ],
  };
}

function smallestFigure(choice: ConductorChoice): Figure {
  return figure({
    label: "conductor, smallest that serves",
    value: choice.ampacity.value,
    unit: "A",
    name: perLine(choice.conductorsPerLine, choice.value),
    basis: `${printedText(choice)} (${choice.governing} governs), device ${choice.device} A`,
    caution: cautionOf(messagesOf(choice.warnings)),
  });
}

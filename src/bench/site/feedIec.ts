/** A feed against an edition of the IEC family: cable, device. */
import type { Amperes } from "../../quantity/index.ts";
import {
  type CableChoice,
  type CableRun,
  cableCapacity,
  cableForLoad,
  type DeviceKind,
  designCurrent,
  type IecEditionName,
  loadForCable,
} from "../../wiring/index.ts";
import type { Figure } from "../assessmentTypes.ts";
import { type Asked, ask } from "./asking.ts";
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
import { cautionOf, figure, messagesOf, printedText } from "./figure.ts";

/** How a group lies where nobody says: bunched has the lowest factors of the table. One circuit lies in no group and has none. */
const ARRANGEMENT = "bunched";
const LINES = 3;

const BUNCHED =
  "How the group of circuits lies is not in the record: bunched is taken, the least favourable.";
const HEATERS_ONLY = "Heaters alone are counted: motors and other loads on the same feed come on top.";
/** Of two kinds of device of one rating a fuse asks for more cable. */
const FUSE =
  "Kind of the device not in the record: taken as a gG fuse, which asks for at least as much cable as a circuit-breaker.";
const BREAKER = "Taken as a circuit-breaker: its rating is none of the preferred ones of gG fuses.";

const NO_LOAD = "no nameplate: no line current";

/** Whether this kind of device comes in this rating: asked with a load that it carries. */
function comesIn(run: CableRun, deviceKind: DeviceKind, device: Amperes): boolean {
  const { found, why } = ask([], {}, () =>
    cableForLoad({ ...run, deviceKind, device, designCurrent: device }),
  );
  return found !== null || why?.startsWith("device") !== true;
}

/** Checks a feed by an edition of the IEC family. */
export function iecFeed(question: FeedQuestion): FeedFigures {
  const { feed, lineCurrent, ambient, issues } = question;
  const edition = feed.edition as IecEditionName;
  const { conductorsPerLine = 1, grouped = conductorsPerLine } = feed;
  const { material = "copper", insulation, conductor: size } = feed;
  const asking = <T>(run: () => T): Asked<T> => ask(issues, FEED_NAMES, run);
  /** As recorded; with more sets than that, in the same group. */
  const run = (sets: number): CableRun => ({
    edition,
    method: feed.installation,
    loadedConductors: LINES,
    insulation,
    material,
    ambient,
    conductorsPerLine: sets,
    circuits: grouped + sets - conductorsPerLine,
    arrangement: ARRANGEMENT,
  });
  const given = feed.device?.value;
  const fused = given === undefined || comesIn(run(conductorsPerLine), "gG fuse", given);
  const deviceKind: DeviceKind = feed.deviceKind ?? (fused ? "gG fuse" : "circuit-breaker");
  const taken = feed.deviceKind === undefined ? (fused ? FUSE : BREAKER) : null;
  const design =
    lineCurrent === null ? null : asking(() => designCurrent({ edition, heaterCurrent: lineCurrent }));
  const load = design?.found?.value ?? null;
  const forLoad = (device: Amperes | undefined): Asked<CableChoice> | null =>
    load === null
      ? null
      : inParallel(feed.conductorsPerLine, (sets) =>
          asking(() =>
            cableForLoad({
              ...run(sets),
              designCurrent: load,
              deviceKind,
              ...(device === undefined ? {} : { device }),
            }),
          ),
        ).choice;
  // A device that does not serve is judged below; the cable is then chosen for one that does.
  const withDevice = given === undefined ? null : forLoad(given);
  const choice = withDevice?.found != null ? withDevice : forLoad(undefined);
  const installed =
    size === undefined ? null : asking(() => cableCapacity({ ...run(conductorsPerLine), size }));
  const cable = installed?.found ?? choice?.found?.capacity;
  const sets = cable?.conductorsPerLine ?? 1;
  const largest =
    cable === undefined ? null : asking(() => loadForCable({ ...run(sets), size: cable.size, deviceKind }));

  const most = Math.max(sets, choice?.found?.conductorsPerLine ?? 1);

  const conductors = (): readonly Figure[] => {
    const label = "conductor, smallest that serves";
    const looked =
      choice?.found == null
        ? unanswered(label, "A", choice?.why ?? NO_LOAD)
        : figure({
            label,
            value: choice.found.capacity.value,
            unit: "A",
            name: perLine(choice.found.conductorsPerLine, choice.found.value),
            basis: `${printedText(choice.found)} (${choice.found.governing} governs), device ${choice.found.device} A`,
            caution: cautionOf(messagesOf(choice.found.warnings)),
          });
    if (installed === null) return [looked];
    if (installed.found === null) {
      return [noAmpacity(installed, load), looked];
    }
    const least = choice?.found?.requiredCapacity ?? (choice === null ? null : load);
    return [
      conductorFigure({
        ampacity: installed.found,
        least,
        why: choice?.why ?? null,
        words:
          choice?.found == null
            ? ""
            : `; held against what a device of ${choice.found.device} A asks for, smallest that serves ${perLine(choice.found.conductorsPerLine, choice.found.value)}`,
      }),
      looked,
    ];
  };

  const device = (): readonly Figure[] => {
    const words = "smallest preferred";
    const lookedUp = choice?.found?.device;
    if (given === undefined && lookedUp === undefined) {
      return [unanswered(`overcurrent device, ${words}`, "A", choice?.why ?? NO_LOAD)];
    }
    return deviceFigures({
      device: given === undefined ? { lookedUp: lookedUp as number, words } : { installed: given },
      forLoad:
        design?.found == null
          ? null
          : { value: design.found.value, basis: `IB ≤ In by ${printedText(design.found)}` },
      forConductor:
        largest?.found == null
          ? null
          : { value: largest.found.device, basis: `In for this cable by ${printedText(largest.found)}` },
      caution: cautionOf([taken, largest?.why ?? null]),
    });
  };

  return {
    figures: [
      design === null ? unanswered("design current", "A", NO_LOAD) : designFigure(design),
      ...conductors(),
      ...device(),
      figure({
        label: "torque of wire terminals",
        value: null,
        unit: "N·m",
        basis: "the maker of the terminal; no table of the IEC family is held here",
      }),
    ],
    cautions: [
      HEATERS_ONLY,
      ...(run(most).circuits > 1 ? [BUNCHED] : []),
      ...(feed.grouped === undefined && most > 1 ? [TOGETHER] : []),
      ...cautionsOf([
        design?.found ?? null,
        choice?.found ?? null,
        installed?.found ?? null,
        largest?.found ?? null,
      ]),
    ],
  };
}

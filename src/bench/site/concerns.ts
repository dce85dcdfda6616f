/** Supply, torque and feed that failed their limits: what the list does not pass, said in the answer too. */
import type { CutLine, FeedAssessment, Figure, HardwareAssessment } from "../assessmentTypes.ts";
import type { NextStep } from "../assessTypes.ts";
import type { SupplyConcerns } from "../day/supplyConcerns.ts";
import { listed } from "../diagnosis/telling/words.ts";
import { failedFeed, failedTorques, overstressing } from "./checklist.ts";

/** What speaks against the site, whatever the module reads. */
export interface SiteConcerns {
  /** Each in words, for the first line. */
  readonly words: readonly string[];
  readonly steps: readonly NextStep[];
  /** What has to come before running, or null. */
  readonly running: string | null;
}

const amount = (value: number, unit: string): string =>
  `${Number(value.toPrecision(3))}${unit === "1" ? "" : ` ${unit}`}`;

const isAbove = ({ value, limit }: Figure): boolean =>
  typeof limit?.high === "number" && Number(value) > limit.high;

/** A figure and the side of its limit that it missed. */
function missed(figure: Figure): string {
  const { label, value, unit, limit } = figure;
  if (value === null)
    return `${label} beyond all measure, where ${amount(limit?.high as number, unit)} at most is asked`;
  const side = isAbove(figure)
    ? `${amount(limit?.high as number, unit)} at most`
    : `${amount(limit?.low as number, unit)} at least`;
  return `${label} ${amount(Number(value), unit)}, where ${side} is asked`;
}

/** The step for one kind of hardware. */
function torqueStep(id: string, figures: readonly Figure[]): NextStep {
  const reason = `${id}: ${figures.map(missed).join("; ")}.`;
  // Only a maker's torque can be one to use and too much; to tighten new hardware to it would end in the same place.
  if (figures.some(({ label }) => label.endsWith("at the torque to use"))) {
    return {
      action: `Isolate, then check strength and thread condition of ${id} against the record and ask the maker which torque holds for them, before new hardware is tightened: by the record the torque to use overstresses it.`,
      reason,
      about: [id],
    };
  }
  return figures.some(isAbove)
    ? {
        action: `Isolate, then renew stud, nut and washer of ${id} and tighten them to the torque to use: overstressed hardware does not hold its clamping force.`,
        reason,
        about: [id],
      }
    : {
        action: `Isolate, then tighten ${id} to the torque to use, the inner nut held: a joint with too little force runs hot.`,
        reason,
        about: [id],
      };
}

/** Bars that are too small for the plate current. */
const smallBars = (cuts: readonly CutLine[]): readonly { readonly id: string; readonly figure: Figure }[] =>
  cuts.flatMap(({ id, figures }) =>
    figures.filter(({ verdict }) => verdict === "outside").map((figure) => ({ id, figure })),
  );

/** Concerns of hardware, bars, feed and supply; the steps of the supply stand before all others and are not among these. */
export function siteConcerns(site: {
  readonly hardware: readonly HardwareAssessment[];
  readonly feed: FeedAssessment | null;
  readonly cuts: readonly CutLine[];
  readonly supply: SupplyConcerns;
}): SiteConcerns {
  const torques = failedTorques(site.hardware);
  // Not yet tightened, so nothing to put right before running: said before it is.
  const planned = overstressing(site.hardware);
  const feed = failedFeed(site.feed);
  const feedWords = feed.map(missed).join("; ");
  const bars = smallBars(site.cuts);
  const ids = listed(torques.map(({ id }) => id));
  const { outside, before: supplyFirst } = site.supply;
  const before = [
    ...(supplyFirst === null ? [] : [supplyFirst]),
    ...(feed.length === 0 ? [] : [`the electrician has settled the feed: ${feedWords}`]),
    ...(torques.length === 0 ? [] : [`the hardware with a wrong torque is put right: ${ids}`]),
  ];
  return {
    words: [
      ...(outside === null ? [] : [outside]),
      ...feed.map((one) => `feed: ${missed(one)}`),
      ...[...torques, ...planned].map(({ id, figures: [first] }) => `${id}: ${missed(first as Figure)}`),
      ...bars.map(({ id, figure }) => `bar ${id}: ${missed(figure)}`),
    ],
    steps: [
      ...(feed.length === 0
        ? []
        : [
            {
              action:
                "Have the electrician in charge settle conductor, terminals and protection of the feed before it is energised.",
              reason: `Against ${site.feed?.edition}: ${feedWords}.`,
              about: ["feed"],
            },
          ]),
      ...[...torques, ...planned].map(({ id, figures }) => torqueStep(id, figures)),
      ...bars.map(({ id, figure }) => ({
        action: `Do not cut bar ${id} from this stock: take a larger section, or two bars side by side, at least as much as the old one had.`,
        reason: `${id}: ${missed(figure)}.`,
        about: [id],
      })),
    ],
    running: before.length === 0 ? null : `Not before ${before.join("; nor before ")}.`,
  };
}

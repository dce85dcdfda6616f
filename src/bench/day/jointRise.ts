/** What a thermal scan says of joints: rises referred to full load and graded by a named scale. */
import { scanSeverity } from "../../joint/index.ts";
import type { Kelvins } from "../../quantity/index.ts";
import type { JointRise } from "../assessTypes.ts";
import type { ParsedReadings } from "../record/parsed.ts";

type Joints = NonNullable<ParsedReadings["joints"]>;

/** The scale that grades rises in an assessment; callers of `joint` may choose another. */
export const SCAN_SCALE = "neta-100.18";

/** What a thermal camera is customarily good for, K. Common practice, no published source. */
const CAMERA = 2;
/** Loads that differ by less count as the same. */
const SAME_LOAD = 0.05;
/** A rise as written counts as the joint's own: taken on a matt target, the camera's emissivity set for it. */
const MATT = 0.95;

interface Seen {
  readonly id: string;
  readonly rise: number;
  readonly digit: number;
  readonly load: number;
}

const graded = (
  one: Seen,
  rise: number,
  halfWidth: number,
  comparison: "similar" | "ambient",
  over: string,
): JointRise => {
  const severity = scanSeverity({
    rise: rise as Kelvins,
    riseHalfWidth: halfWidth as Kelvins,
    comparison,
    loadFraction: one.load,
    load: "full load",
    scale: SCAN_SCALE,
    emissivity: MATT,
  });
  const { source, edition } = severity.basis;
  return {
    measured: one.rise as Kelvins,
    fullLoadLow: severity.low.rise,
    fullLoadHigh: severity.high.rise,
    level: severity.level,
    atLeast: severity.atLeast,
    atMost: severity.high.level,
    action: severity.action,
    rule: `${over}; ${source}, ${edition}. ${severity.deferral}`,
  };
};

/** Rises by joint. Joints that are alike at like load are graded over the coolest of them, a single one over the air. */
export function jointRises(joints: Joints): ReadonlyMap<string, JointRise> {
  const seen = joints.flatMap(({ id, rise, loadRatio = 1 }): Seen[] =>
    rise === undefined ? [] : [{ id, rise: rise.value, digit: rise.resolution ?? 0, load: loadRatio }],
  );
  const loads = seen.map(({ load }) => load);
  const alike = seen.length > 1 && Math.max(...loads) <= Math.min(...loads) * (1 + SAME_LOAD);
  const coolest = seen.reduce<Seen | null>(
    (least, one) => (least === null || one.rise < least.rise ? one : least),
    null,
  );
  return new Map(
    seen.map((one) => [
      one.id,
      alike && coolest !== null
        ? // One camera's own error cancels between two joints; what is left is a digit of each.
          graded(
            one,
            one.rise - coolest.rise,
            one === coolest ? 0 : one.digit + coolest.digit,
            "similar",
            `Rise over ${coolest.id}, the coolest like joint at like load; it says nothing of a set that is hot alike`,
          )
        : graded(
            one,
            one.rise,
            Math.max(CAMERA, one.digit),
            "ambient",
            `Rise over the air, the camera taken as good for ${CAMERA} K`,
          ),
    ]),
  );
}

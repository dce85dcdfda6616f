/** What to expect at the first heat: amps by line with the band to accept, power, and rises to act on. */
import type { Supply } from "../../circuit/index.ts";
import { JOINT_DEFERRAL, type SeverityScale } from "../../joint/index.ts";
import type { Amperes, LineVolts, Ohms } from "../../quantity/index.ts";
import { DEFERRAL } from "../../wiring/index.ts";
import type { CommissioningAssessment, Figure } from "../assessmentTypes.ts";
import type { DrawAssessment } from "../assessTypes.ts";
import { siteSupply } from "../day/assessDay.ts";
import { errorLimit } from "../day/instrumentLimits.ts";
import { SCAN_SCALE } from "../day/jointRise.ts";
import type { ParsedRecord, Read } from "../record/parsed.ts";
import { cautionOf, figure } from "./figure.ts";
import { type LineSpread, lineSpreads } from "./lineSpread.ts";
import { scanLimits } from "./scanLimits.ts";

/** Coverage factor of expanded uncertainties: about 95 % for a normal distribution. */
const COVERAGE = 2;

/** One unit of the last digit of amps as any reading was quoted. */
function quotedDigit({ asLeft, asFound }: ParsedRecord): number | null {
  const quoted = [asLeft, asFound].flatMap((day) =>
    (day?.currents ?? []).map(({ reads }) => reads.resolution),
  );
  return quoted.find((digit) => digit !== null) ?? null;
}

/** Largest error of the clamp at a current; without its last digit only its percentage counts. */
function clampError(record: ParsedRecord, current: number): number | null {
  const clamp = record.instruments?.clamp;
  if (clamp === undefined) return null;
  const resolution = clamp.resolution?.value ?? quotedDigit(record);
  if (resolution === null) return clamp.ofReading * current;
  return errorLimit({ value: current as Amperes, resolution }, clamp);
}

/** Largest relative error of the voltages. */
function voltageError(record: ParsedRecord): number | null {
  const supply = siteSupply(record);
  const voltmeter = record.instruments?.voltmeter;
  if (supply === undefined || voltmeter === undefined) return null;
  const errors = [supply.v12, supply.v23, supply.v31].map((read: Read<LineVolts>) => {
    return (errorLimit(read, voltmeter) as number) / read.value;
  });
  return Math.max(...errors);
}

/** What a line may read, and what the band is made of. */
interface Band {
  readonly halfWidth: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly parts: readonly string[];
  readonly caution: string | null;
}

const percent = (ratio: number): string =>
  `${ratio < 0 ? "−" : "+"}${Number((Math.abs(ratio) * 100).toPrecision(4))} %`;

/** Uncertainties as independent, the tolerance of what nobody measured on top: it is no error but a range. */
function bandOf(
  record: ParsedRecord,
  { repaired, basis }: DrawAssessment,
  current: number,
  atTarget: readonly string[],
  spread: LineSpread | undefined,
): Band {
  const { tolerance } = record;
  const ofDraw =
    repaired.standardUncertainty === null ? null : (current * repaired.standardUncertainty) / repaired.power;
  const clamp = clampError(record, current);
  const voltage = voltageError(record);
  const rectangular = (limit: number | null): number => (limit ?? 0) / Math.sqrt(3);
  const known = [ofDraw, clamp, voltage].some((part) => part !== null);
  const width = COVERAGE * Math.hypot(ofDraw ?? 0, rectangular(clamp), current * rectangular(voltage));
  const unmeasured = basis === "nameplate" || atTarget.length > 0;
  const parts = [
    ...(ofDraw === null ? [] : ["uncertainty of the resistances"]),
    ...(clamp === null ? [] : ["accuracy of the clamp"]),
    ...(voltage === null ? [] : ["accuracy of the voltmeter"]),
    ...(unmeasured && tolerance !== undefined
      ? [
          `tolerance ${percent(tolerance.low)} to ${percent(tolerance.high)} of branches taken at target${
            atTarget.length > 0 ? ` (${atTarget.join(", ")})` : ""
          }`,
        ]
      : []),
  ];
  const halfWidth = known ? width : null;
  if (unmeasured && tolerance === undefined) {
    const caution =
      "Branches are taken at target and the record gives no tolerance: there is no band to accept amps by.";
    return { halfWidth, low: null, high: null, parts, caution };
  }
  if (!known && !unmeasured) return { halfWidth, low: null, high: null, parts, caution: null };
  const { low, high } = unmeasured && tolerance !== undefined ? tolerance : { low: 0, high: 0 };
  // Without the network every branch may be as high, or as low, as the tolerance allows: Ohm's law. 0 Ω sets no upper limit.
  const below = spread?.below ?? current - current / (1 + high);
  const above = spread?.above ?? (low > -1 ? current / (1 + low) - current : null);
  return {
    halfWidth,
    low: Math.max(0, current - below - width),
    high: above === null ? null : current + above + width,
    parts,
    caution:
      clamp === null ? "Accuracy of the clamp not in the record: its error comes on top of the band." : null,
  };
}

/** Neutral amps are a difference of line amps: no band of their own is worked out. */
const NEUTRAL = "N";

function lineFigures(
  record: ParsedRecord,
  draw: DrawAssessment,
  atTarget: readonly string[],
  spreads: ReadonlyMap<string, LineSpread>,
): readonly Figure[] {
  const at =
    siteSupply(record) === undefined ? "at plate voltage, none was measured" : "at the voltages measured";
  const unproved = draw.confirmed
    ? null
    : "Not every branch is proved sound: amps within the band do not prove the module.";
  const amps = draw.repaired.lines.map(({ node, current }): Figure => {
    const label = node === NEUTRAL ? "neutral current" : `line current ${node}`;
    const from = `resistances (${draw.basis}) ${at}, full conduction`;
    if (node === NEUTRAL) return figure({ label, value: current, unit: "A", basis: from, caution: unproved });
    const { halfWidth, low, high, parts, caution } = bandOf(
      record,
      draw,
      current,
      atTarget,
      spreads.get(node),
    );
    const band = parts.length === 0 ? "" : `; band of ${parts.join(", ")}, k = ${COVERAGE}`;
    return figure({
      label,
      value: current,
      unit: "A",
      halfWidth,
      // A band may have no upper end; it always has a lower one.
      limit: low === null ? null : { low, high },
      basis: `${from}${band}`,
      caution: cautionOf([unproved, caution]),
    });
  });
  const { power, standardUncertainty } = draw.repaired;
  return [
    ...amps,
    figure({
      label: "power",
      value: power,
      unit: "W",
      halfWidth: standardUncertainty === null ? null : COVERAGE * standardUncertainty,
      basis: `resistances (${draw.basis}) ${at}, full conduction`,
      caution: unproved,
    }),
  ];
}

/** The hottest-loaded line of a draw. */
const largest = (lines: DrawAssessment["repaired"]["lines"]): number =>
  Math.max(0, ...lines.filter(({ node }) => node !== NEUTRAL).map(({ current }) => current));

/**
 * Amps by line with the band to accept, power, and the rises of a thermal scan to act on; `null` without a draw.
 * @param input.record - the record
 * @param input.draw - what the module draws
 * @param input.atTarget - branches of the repaired module taken at their target; none if left out
 * @param input.network - branches of the repaired module, hot, and its supply: then the tolerance widens a line's band only by what its
 *   branches at target can do to it
 * @param input.scanRule - severity scale; the one of the assessment if left out
 */
export function assessCommissioning(input: {
  readonly record: ParsedRecord;
  readonly draw: DrawAssessment | null;
  readonly atTarget?: readonly string[];
  readonly network?: { readonly repaired: ReadonlyMap<string, Ohms>; readonly supply: Supply };
  readonly scanRule?: SeverityScale;
}): CommissioningAssessment | null {
  const { record, draw, atTarget = [], network, scanRule = SCAN_SCALE } = input;
  if (draw === null) return null;
  const spreads: ReadonlyMap<string, LineSpread> =
    network === undefined ? new Map() : lineSpreads({ record, atTarget, ...network });
  const full = draw.repairedAtPlateVoltage === null ? 0 : largest(draw.repairedAtPlateVoltage.lines);
  const loadFraction = full > 0 ? largest(draw.repaired.lines) / full : 1;
  return {
    lines: lineFigures(record, draw, atTarget, spreads),
    scan: scanLimits(scanRule, loadFraction),
    deferral: `${JOINT_DEFERRAL} ${DEFERRAL}`,
  };
}

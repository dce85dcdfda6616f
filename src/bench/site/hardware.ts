/** Torque, preload and share of proof of every kind of fastening in a record. */
import {
  type FastenerStrength,
  fastenerStrength,
  type HardwareNote,
  hardwareNotes,
  JOINT_DEFERRAL,
  type NutFactorCondition,
  type NutFactorRange,
  nutFactorRange,
  preloadBand,
  retighteningNote,
  type StrengthStandard,
  tightening,
} from "../../joint/index.ts";
import { failAll, type Issue, type NewtonMeters } from "../../quantity/index.ts";
import type { Figure, HardwareAssessment } from "../assessmentTypes.ts";
import type { ParsedFastening, ParsedRecord } from "../record/parsed.ts";
import { type Asked, ask, insist } from "./asking.ts";
import { basisText, cautionOf, figure, judgedFigure, messagesOf } from "./figure.ts";
import { type Thread, threadOf } from "./threads.ts";
import { type TorqueToUse, torqueToUse } from "./torque.ts";

/** Taken where the record names none: the friction of parts as they come out of the box. */
const CONDITION = "dry steel";

/** What is known of a fastening before its torque. */
interface Fastening {
  readonly given: ParsedFastening;
  readonly thread: Thread;
  readonly nut: NutFactorRange;
  readonly strength: Asked<FastenerStrength> | null;
}

const restsOn = ({ kind, source }: HardwareNote): string =>
  source.startsWith(kind) ? source : `${kind}: ${source}`;

/** Statements that every bolted joint of a heating module calls for, with what they rest on. */
function notesOf(): readonly string[] {
  const [spread] = hardwareNotes("flat washer");
  const [concave, flattened] = hardwareNotes("conical washer");
  const [teeth] = hardwareNotes("star washer");
  const rules = (["never-as-routine", "periodic-busway", "measure-and-remake"] as const).map(
    retighteningNote,
  );
  // The sources have one note of each kind, two of conical washers.
  return ([spread, concave, flattened, teeth, ...rules] as (typeof rules)[number][]).map(
    (note) => `${note.statement} (${restsOn(note)})`,
  );
}

/** Preload, share of proof and twist at one torque. */
function atTorque(fastening: Fastening, torque: NewtonMeters, words: string): readonly Figure[] {
  const { thread, nut, strength, given } = fastening;
  const factors = { nutFactorLow: nut.low, nutFactorHigh: nut.high };
  const { low, high } = preloadBand({ torque, diameter: thread.diameter, ...factors });
  const condition = given.condition ?? CONDITION;
  const assumed =
    given.condition === undefined ? `Condition of the thread not in the record: ${CONDITION} taken.` : null;
  const preload = figure({
    label: `preload ${words}`,
    value: (low + high) / 2,
    unit: "N",
    halfWidth: (high - low) / 2,
    basis: `F = torque/(K·d), K ${nut.low} to ${nut.high} for ${condition}: ${basisText(nut.basis)}; worst case`,
    caution: cautionOf([assumed, ...messagesOf(nut.warnings)]),
  });
  if (strength === null || strength.found === null) {
    const why = strength?.why ?? "no strength standard and class in the record";
    const share = figure({
      label: `share of proof load ${words}`,
      value: null,
      unit: "1",
      basis: "not judged",
      caution: why,
    });
    return [preload, share];
  }
  const { limit, basis, warnings } = strength.found;
  const { diameter, stressArea } = thread;
  const done = tightening({ torque, diameter, stressArea, ...factors, strength: limit });
  const { proof, yielding } = done;
  return [
    preload,
    figure({
      label: `share of proof load ${words}`,
      value: proof.value,
      unit: "1",
      halfWidth: proof.halfWidth,
      limit: { low: proof.low, high: proof.high },
      verdict: proof.verdict,
      basis: `${basisText(done.proofBasis)}; strength ${basisText(basis)}; ${thread.basis}`,
      caution: cautionOf(messagesOf(warnings)),
    }),
    figure({
      label: `tension and twist over strength, ${words}`,
      value: yielding.value,
      unit: "1",
      halfWidth: yielding.halfWidth,
      limit: { low: yielding.low, high: yielding.high },
      verdict: yielding.verdict,
      basis: basisText(done.yieldingBasis),
      caution: cautionOf(messagesOf(done.warnings)),
    }),
  ];
}

/** The torque applied against the torque to use. */
function appliedFigure({ applied }: ParsedFastening, toUse: TorqueToUse | null): readonly Figure[] {
  if (applied === undefined) return [];
  const shown = {
    label: "torque applied",
    value: applied.value as number,
    unit: "N·m",
    // Half of the last digit that was written down.
    halfWidth: (applied.resolution ?? 0) / 2,
  };
  if (toUse === null)
    return [figure({ ...shown, basis: "as given in the record; nothing to hold it against" })];
  return [judgedFigure({ ...shown, low: toUse.low, high: toUse.high ?? undefined, basis: toUse.basis })];
}

function assessFastening(fastening: Fastening): HardwareAssessment {
  const { given, thread, nut, strength } = fastening;
  const toUse = torqueToUse(given, thread, strength?.found?.limit ?? null, nut);
  const { applied } = given;
  const asUsed = toUse !== null && applied !== undefined && applied.value === toUse.torque;
  const use = figure({
    label: "torque to use",
    value: toUse?.torque ?? null,
    unit: "N·m",
    name: toUse?.kind ?? null,
    limit: toUse === null ? null : { low: toUse.low, high: toUse.high },
    basis:
      toUse?.basis ??
      "no torque of the maker, no table that holds for this thread and its condition, no strength to work it out from",
    caution: toUse === null ? (strength?.why ?? null) : toUse.caution,
  });
  return {
    id: given.id,
    thread: thread.name,
    count: given.count ?? 1,
    figures: [
      use,
      ...(toUse === null ? [] : atTorque(fastening, toUse.torque, "at the torque to use")),
      ...appliedFigure(given, toUse),
      ...(applied === undefined || asUsed ? [] : atTorque(fastening, applied.value, "at the torque applied")),
    ],
    notes: notesOf(),
    deferral: JOINT_DEFERRAL,
  };
}

/**
 * Torque to use, preload band, share of proof and the torque applied, for every kind of fastening in the record.
 * @throws ElectroheatError listing threads, conditions, standards and grades that nobody knows, by path
 */
export function assessHardware({
  hardware = [],
}: Pick<ParsedRecord, "hardware">): readonly HardwareAssessment[] {
  const issues: Issue[] = [];
  const read = hardware.flatMap((given, i): Fastening[] => {
    const at = (field: string): string => `hardware.${i}.${field}`;
    const thread = insist(issues, { "*": at("thread") }, () => threadOf(given.thread));
    const nut = insist(issues, { "*": at("condition") }, () =>
      nutFactorRange((given.condition ?? CONDITION) as NutFactorCondition),
    );
    if (thread === null || nut === null) return [];
    const names = {
      standard: at("strength.standard"),
      grade: at("strength.grade"),
    };
    const { strength } = given;
    const asked =
      strength === undefined
        ? null
        : ask(issues, names, () =>
            fastenerStrength({
              standard: strength.standard as StrengthStandard,
              grade: strength.grade,
              diameter: thread.diameter,
            }),
          );
    return [{ given, thread, nut, strength: asked }];
  });
  failAll(issues);
  return read.map(assessFastening);
}

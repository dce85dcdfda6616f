/** From a record to what the diagnosis is asked, and why not where it is not. */
import type { JointPlan, ModulePlan } from "../../circuit/index.ts";
import type { Amperes, Ohms, Volts } from "../../quantity/index.ts";
import { drawnJoints, elementCount, isDiagnosed, MOST_ELEMENTS } from "../day/branchModule.ts";
import { lastDigit } from "../day/instrumentLimits.ts";
import { SOUND_JOINT } from "../day/joints.ts";
import { readToNeutral, voltageOf } from "../day/supplyConcerns.ts";
import { isFloating } from "../day/supplyState.ts";
import type { BankTargets } from "../day/targets.ts";
import { LEAK } from "../diagnosis/likelihood/leak.ts";
import type { FieldReading } from "../diagnosis/question/fieldReading.ts";
import type { DiagnosisInput, Instrument, Instruments } from "../diagnosis/question/types.ts";
import type { ParsedInstrument, ParsedReadings, ParsedRecord, ParsedSupply, Read } from "../record/parsed.ts";
import { studsOf, withStudJoints } from "./studJoints.ts";

/** What is asked, or null; and what was left out of it, in words. */
export interface DiagnosisQuestion {
  readonly asked: DiagnosisInput | null;
  readonly leftOut: readonly string[];
}

/** Hot over cold where the record does not say: nickel-chromium, as `diagnose` takes it. */
const TEMPERATURE_FACTOR = 1.04;
/** Standard uncertainty of hot over cold as given: the element's own temperature is not known better. Common practice. */
const FACTOR_UNCERTAINTY = 0.02;

type Kind = "ohmmeter" | "clamp" | "voltmeter" | "millivoltmeter" | "insulationTester";
const WORDS: Readonly<Record<Kind, string>> = {
  ohmmeter: "ohms",
  clamp: "clamp readings",
  voltmeter: "supply voltages",
  millivoltmeter: "drops across joints",
  insulationTester: "insulation readings",
};

const DROPS_ALONE =
  "Left out of the diagnosis: drops across joints, for without ohms or amps nothing else says what flows. The joints are judged by comparison and by their own drops.";

const FLOATING =
  "Left out of the diagnosis: supply voltages, for no module feeds the lost line back to what was read: it floats, and a meter shows anything there.";

const TO_NEUTRAL =
  "Left out of the diagnosis: supply voltages, which look read to neutral where the record has them between lines.";

/**
 * Coarsest last digit of the readings taken with an instrument: a meter that changes its range has several. Were that of a leak in
 * megohms counted, no element could read wrong beside it.
 */
function instrumentOf<Q>(kind: Kind, given: ParsedInstrument<Q>, reads: readonly Read<Q>[]): Instrument {
  const digits = reads
    .filter(({ value }) => (value as unknown) !== "open")
    .filter(({ value }) => kind !== "ohmmeter" || (value as number) < LEAK)
    .map((read) => lastDigit(read, given));
  const own = given.resolution?.value as unknown as number | undefined;
  const resolution = digits.length === 0 ? (own ?? 1) : Math.max(...digits);
  return { ofReading: given.ofReading, digits: given.digits, resolution };
}

const VOLTAGES = [
  ["v12", "L1", "L2"],
  ["v23", "L2", "L3"],
  ["v31", "L3", "L1"],
] as const;

/** Joints of the drawing with a drop and its current on that day; no drop at all where current flows was not read across the contact. */
function measuredDrops(record: ParsedRecord, readings: ParsedReadings) {
  const drawn = new Set((record.wiring.joints ?? []).map(({ id }) => id));
  return (readings.joints ?? []).flatMap(({ id, drop, current }) =>
    drawn.has(id) && drop !== undefined && current !== undefined && drop.value > 0
      ? [{ id, drop, current }]
      : [],
  );
}

/** The lowest of the joints that are alike counts as sound: one alone tells nothing of the others. */
function soundJoint(drops: ReturnType<typeof measuredDrops>): Ohms {
  const least = Math.min(...drops.map(({ drop, current }) => drop.value / current.value));
  return drops.length > 1 ? (least as Ohms) : SOUND_JOINT;
}

/** The module as drawn at its cold targets. */
function nominalPlan(
  record: ParsedRecord,
  targets: readonly BankTargets[],
  joints: readonly JointPlan[],
): ModulePlan {
  const { wiring } = record;
  return {
    banks: wiring.banks.map(({ id, connection, elementsInParallel = 1, elementsInSeries = 1 }, i) => {
      const { elementResistanceCold: cold, elementResistanceHot: hot } = (targets[i] as BankTargets).targets;
      const elementResistance = (cold ?? hot / TEMPERATURE_FACTOR) as Ohms;
      return { id, connection, elementsInParallel, elementsInSeries, elementResistance };
    }),
    ...(wiring.starPoints === undefined ? {} : { starPoints: wiring.starPoints }),
    ...(wiring.neutral === undefined ? {} : { neutral: wiring.neutral }),
    ...(joints.length === 0 ? {} : { joints }),
  };
}

/** The module that is asked about; null without a nameplate. */
function moduleAsked(
  record: ParsedRecord,
  readings: ParsedReadings,
  targets: readonly BankTargets[],
  drops: ReturnType<typeof measuredDrops>,
): ModulePlan | null {
  if (record.nameplate === undefined) return null;
  const plan = nominalPlan(record, targets, drawnJoints(record, soundJoint(drops)));
  return readsStuds(readings) ? withStudJoints(plan, SOUND_JOINT) : plan;
}

interface Taken {
  readonly kind: Kind;
  readonly readings: readonly FieldReading[];
  readonly reads: readonly Read<unknown>[];
}

/** Whether some branch was read on its own studs. */
const readsStuds = ({ ohms = [] }: ParsedReadings): boolean => ohms.some(({ ownStuds }) => ownStuds === true);

/** The readings of a day by instrument; `studs` are the nodes of a branch without its links and joints. */
function takenOf(
  record: ParsedRecord,
  readings: ParsedReadings,
  supply: ParsedSupply | undefined,
  studs: ReturnType<typeof studsOf>,
): readonly Taken[] {
  const { ohms = [], currents = [], insulation = [] } = readings;
  const drops = measuredDrops(record, readings);
  return [
    {
      kind: "ohmmeter",
      reads: ohms.map(({ reads }) => reads),
      readings: ohms.map(({ from, to, reads, alone, ownStuds = false }) => {
        const own = ownStuds ? studs.get(alone as string) : undefined;
        return {
          kind: "resistance",
          from: own?.[0] ?? from,
          to: own?.[1] ?? to,
          reads: reads.value,
          ...(alone === undefined ? {} : { only: [alone] }),
        };
      }),
    },
    {
      kind: "clamp",
      reads: currents.map(({ reads }) => reads),
      readings: currents.map(({ at, into, reads }) => ({
        kind: "current",
        at,
        reads: reads.value as Amperes,
        ...(into === undefined ? {} : { into }),
      })),
    },
    {
      kind: "voltmeter",
      reads: supply === undefined ? [] : VOLTAGES.map(([name]) => supply[name]),
      readings:
        supply === undefined
          ? []
          : VOLTAGES.map(([name, from, to]) => ({
              kind: "voltage",
              from,
              to,
              reads: supply[name].value as number as Volts,
            })),
    },
    {
      kind: "millivoltmeter",
      reads: drops.map(({ drop }) => drop),
      readings: drops.map(({ id, drop }) => ({ kind: "drop", across: id, reads: drop.value })),
    },
    {
      kind: "insulationTester",
      reads: insulation.map(({ reads }) => reads),
      readings: insulation.map(({ from, reads }) => ({ kind: "insulation", from, reads: reads.value })),
    },
  ];
}

/** What the diagnosis is asked of the readings of one day. */
export function diagnosisQuestion(input: {
  readonly record: ParsedRecord;
  readonly readings: ParsedReadings;
  readonly supply: ParsedSupply | undefined;
  readonly targets: readonly BankTargets[];
  /** Line current that the plate promises, A. */
  readonly plateCurrent: Amperes | null;
  /** Kinds of readings to leave out. */
  readonly without?: readonly FieldReading["kind"][];
}): DiagnosisQuestion {
  const { record, readings, targets, plateCurrent, without = [] } = input;
  const { nameplate, instruments = {}, temperatureFactor } = record;
  // Volts to neutral are no volts between lines: they would speak against every explanation.
  const neutral =
    input.supply !== undefined &&
    nameplate !== undefined &&
    readToNeutral(record, input.supply, nameplate.voltage.value, plateCurrent);
  const floating = !neutral && input.supply !== undefined && isFloating(input.supply);
  const supply = neutral || floating ? undefined : input.supply;
  const drops = measuredDrops(record, readings);
  const plan = moduleAsked(record, readings, targets, drops);
  const studs = plan === null || !readsStuds(readings) ? new Map() : studsOf(plan);
  const all = takenOf(record, readings, supply, studs).filter(
    (one) => one.reads.length > 0 && one.readings.every(({ kind }) => !without.includes(kind)),
  );
  if (all.every(({ kind }) => kind === "voltmeter")) return { asked: null, leftOut: [] };
  if (nameplate === undefined) {
    return {
      asked: null,
      leftOut: ["No diagnosis: without a nameplate nobody knows what a sound module reads."],
    };
  }
  if (!isDiagnosed(record)) {
    return {
      asked: null,
      leftOut: [
        `No diagnosis: ${elementCount(record)} elements are more than the ${MOST_ELEMENTS} that are weighed here.`,
      ],
    };
  }
  const named = all.filter(({ kind }) => instruments[kind] !== undefined);
  const leftOut = [
    ...all
      .filter(({ kind }) => instruments[kind] === undefined)
      .map(
        ({ kind }) =>
          `Left out of the diagnosis: ${WORDS[kind]}, for the record does not name the instrument.`,
      ),
    ...(neutral ? [TO_NEUTRAL] : []),
    ...(floating ? [FLOATING] : []),
  ];
  const taken = named.flatMap((one) => one.readings);
  if (named.every(({ kind }) => kind === "voltmeter")) return { asked: null, leftOut };
  // A drop is current times joint: alone it would tell a bad joint from a wrong link by nothing but what is more usual.
  const flows = named.some(({ kind }) => kind === "ohmmeter" || kind === "clamp");
  if (!flows && named.some(({ kind }) => kind === "millivoltmeter")) {
    const others = diagnosisQuestion({ ...input, without: [...without, "drop"] });
    return { asked: others.asked, leftOut: [...others.leftOut, DROPS_ALONE] };
  }
  const built = Object.fromEntries(
    named.map(({ kind, reads }) => {
      const given = instruments[kind] as ParsedInstrument<unknown>;
      const leads = "leads" in given ? (given as { leads: unknown }).leads : undefined;
      const shorted = typeof leads === "object" ? (leads as { shorted: Read<Ohms> }).shorted : undefined;
      return [
        kind,
        {
          ...instrumentOf(kind, given, shorted === undefined ? reads : [...reads, shorted]),
          ...(leads === undefined
            ? {}
            : { leads: shorted === undefined ? leads : { shorted: shorted.value } }),
        },
      ];
    }),
  ) as Instruments;
  return {
    leftOut,
    asked: {
      module: plan as ModulePlan,
      readings: taken,
      instruments: built,
      supply: { lineVoltage: voltageOf(record, supply, nameplate.voltage.value, plateCurrent) },
      depth: "single",
      ...(temperatureFactor === undefined
        ? {}
        : {
            spread: {
              temperatureFactor: { value: temperatureFactor, standardUncertainty: FACTOR_UNCERTAINTY },
            },
          }),
    },
  };
}

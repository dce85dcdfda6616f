/** Voltages that are no fault of the module and change all that it does: a slip of what was measured, too much of it, too little. */

import type { LineVolts } from "../../quantity/index.ts";
import type { NextStep } from "../assessTypes.ts";
import type { ParsedRecord, ParsedSupply } from "../record/parsed.ts";
import { siteSupply } from "./assessDay.ts";
import { LINES } from "./currents.ts";

/** What the supply asks for before anything else. */
export interface SupplyConcerns {
  /** In words, for the first line of the answer; null where it is not outside. */
  readonly outside: string | null;
  readonly steps: readonly NextStep[];
  /** What it asks for once faults are mended. */
  readonly later: readonly NextStep[];
  /** What has to come before running, or null. */
  readonly before: string | null;
  /** Why nobody can say whether it may run, or null. */
  readonly unknown: string | null;
  /** What it gives at these voltages where they are low, or null: a reason for missing heat, no danger. */
  readonly weak: string | null;
  /** Whether the voltages were read otherwise than asked, so that amps that differ from those expected by them say nothing. */
  readonly explainsAmps: boolean;
}

const NONE: SupplyConcerns = {
  outside: null,
  steps: [],
  later: [],
  before: null,
  unknown: null,
  weak: null,
  explainsAmps: false,
};

/** Highest voltage over the nominal one that a public supply keeps to. IEC 60038, from memory; the maker's limit comes first. */
const HIGHEST = 1.1;
/** The lowest one, by the same standard. */
const LOWEST = 0.9;

/** How far apart line voltages of a whole supply may lie. Common practice, no published source. */
const ALIKE = 1.05;

/** How near a voltage must be to the plate's over √3, or amps to those of a sound module, to be taken for it. Common practice. */
const NEAR = 0.05;

const shown = (value: number): string => `${Number(value.toPrecision(4))} V`;
const near = (value: number, wanted: number): boolean => Math.abs(value / wanted - 1) < NEAR;

/** Whether the amps of a day, three lines of them, are those of a sound module on the plate's own voltage. */
function ampsOfPlate(record: ParsedRecord, plateCurrent: number | null): boolean {
  const days = [record.asLeft, record.asFound].map((day) =>
    (day?.currents ?? []).filter(({ at, into }) => into === undefined && LINES.some((line) => line === at)),
  );
  const lines = days.find((one) => one.length > 0) ?? [];
  return (
    plateCurrent !== null && lines.length > 2 && lines.every(({ reads }) => near(reads.value, plateCurrent))
  );
}

/** Whether all three voltages are near the plate's over √3. */
const toNeutral = (volts: readonly number[], plate: number): boolean =>
  volts.every((one) => near(one, plate / Math.sqrt(3)));

/** All three voltages near the plate's over √3: read to neutral, or a supply of that voltage. */
function slip(
  record: ParsedRecord,
  volts: readonly number[],
  plate: number,
  plateCurrent: number | null,
): SupplyConcerns {
  const proved = ampsOfPlate(record, plateCurrent);
  const list = volts.map(shown).join(", ");
  return {
    ...NONE,
    steps: [
      {
        action:
          "Read the voltages again from line to line, L1 to L2, L2 to L3, L3 to L1, before judging anything by them: they look like voltages to neutral.",
        reason: `${list}: that is the plate's ${shown(plate)} over √3${
          proved
            ? ", and the amps are those of a sound module on the plate's voltage."
            : ". If it is so between lines, the module gives a third of its power."
        }`,
        about: ["supply"],
      },
    ],
    unknown: "Not known before the voltages are read again from line to line.",
    explainsAmps: proved,
  };
}

/** More than the module is made for: every branch has the square of it in heat. */
function tooHigh(most: number, plate: number): SupplyConcerns {
  const power = (most / plate) ** 2;
  const words = `${shown(most)} between lines on a module whose plate says ${shown(plate)}`;
  const branch = near(most, plate * Math.sqrt(3)) ? " Is the plate's voltage that of one branch?" : "";
  return {
    ...NONE,
    outside: `supply ${words}, where ${shown(HIGHEST * plate)} at most is usual`,
    steps: [
      {
        action:
          "Have the electrician in charge settle the supply's voltage, its transformer's taps and the plate before the module is energised again.",
        reason: `${words}: its elements give ${power.toFixed(2)} times their power.${branch}`,
        about: ["supply"],
      },
    ],
    before: `the supply's voltage is settled: ${words}`,
  };
}

/** Less than the module is made for: every branch has the square of it in heat, and nothing is broken for that. */
function tooLow(volts: readonly number[], plate: number): SupplyConcerns {
  const share = volts.reduce((sum, one) => sum + (one / plate) ** 2, 0) / volts.length;
  const percent = `${(share * 100).toFixed(0)} %`;
  const words = `${shown(Math.max(...volts))} between lines on a module whose plate says ${shown(plate)}`;
  return {
    ...NONE,
    outside: `supply ${words}, where ${shown(LOWEST * plate)} at least is usual: ${percent} of its plate power`,
    later: [
      {
        action:
          "Before renewing anything for missing heat have the electrician in charge settle the supply's voltage, its transformer's taps, and whether elements for another voltage are fitted.",
        reason: `${words}: a sound module gives ${percent} of its plate power on that, and its amps are lower in proportion to the volts.`,
        about: ["supply"],
      },
    ],
    weak: `At this voltage a sound module gives ${percent} of its plate power.`,
  };
}

/** What unequal line voltages ask for, as read or as the amps show them. */
export const UNEQUAL =
  "Have the electrician in charge find why the line voltages differ before the module is judged by its amps: a loose or burnt conductor, a fuse, a line wire on the neutral, unlike loads on the lines before it.";

/** Voltages further apart than those of a whole supply: what makes them so may burn, and amps follow them. */
function unequal(volts: readonly number[], concerns: SupplyConcerns): SupplyConcerns {
  const list = volts.map(shown).join(", ");
  const words = `line voltages that differ, ${list}`;
  const settled = `it is known why the line voltages differ, ${list}`;
  return {
    ...concerns,
    outside: concerns.outside === null ? words : `${concerns.outside}; ${words}`,
    steps: [
      ...concerns.steps,
      {
        action: UNEQUAL,
        reason: `${list} from L1 to L2, L2 to L3, L3 to L1: those of a whole supply lie within ${((ALIKE - 1) * 100).toFixed(0)} % of each other.`,
        about: ["supply"],
      },
    ],
    before: concerns.before === null ? settled : `${concerns.before}; nor before ${settled}`,
  };
}

/**
 * What the voltages ask for.
 * @param plateCurrent - line current that the plate promises; `null` without a plate
 * @param lostLine - the line that looks lost; its voltages then say that and nothing else
 */
export function supplyConcerns(
  record: ParsedRecord,
  plateCurrent: number | null,
  lostLine: string | null,
): SupplyConcerns {
  const plate = record.nameplate?.voltage.value;
  // What was read after the work is what it runs on.
  const supply = record.asLeft?.supply ?? siteSupply(record);
  if (plate === undefined || supply === undefined || lostLine !== null) return NONE;
  const volts = [supply.v12, supply.v23, supply.v31].map(({ value }): number => value);
  if (toNeutral(volts, plate)) return slip(record, volts, plate, plateCurrent);
  const most = Math.max(...volts);
  const level =
    most > HIGHEST * plate ? tooHigh(most, plate) : most < LOWEST * plate ? tooLow(volts, plate) : NONE;
  return most > ALIKE * Math.min(...volts) ? unequal(volts, level) : level;
}

/** Whether voltages were read to neutral: they look like that, and the amps are those of the plate's own voltage. */
export function readToNeutral(
  record: ParsedRecord,
  { v12, v23, v31 }: ParsedSupply,
  plate: LineVolts,
  plateCurrent: number | null,
): boolean {
  return toNeutral([v12.value, v23.value, v31.value], plate) && ampsOfPlate(record, plateCurrent);
}

/**
 * The voltage that a diagnosis takes the module to be on: the plate's, or the measured one where all three agree on another. Amps and
 * volts of another supply are no fault of the module's.
 */
export function voltageOf(
  record: ParsedRecord,
  supply: ParsedSupply | undefined,
  plate: LineVolts,
  plateCurrent: number | null,
): LineVolts {
  if (supply === undefined) return plate;
  const volts = [supply.v12, supply.v23, supply.v31].map(({ value }): number => value);
  const [most, least] = [Math.max(...volts), Math.min(...volts)];
  const usual = most <= HIGHEST * plate && most >= LOWEST * plate;
  if (usual || most > ALIKE * least || readToNeutral(record, supply, plate, plateCurrent)) return plate;
  return (volts.reduce((sum, one) => sum + one, 0) / volts.length) as LineVolts;
}

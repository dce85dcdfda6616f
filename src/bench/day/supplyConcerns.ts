/** Voltages that are no fault of the module and change all that it does: a slip of what was measured, and too much of it. */

import type { NextStep } from "../assessTypes.ts";
import type { ParsedRecord } from "../record/parsed.ts";
import { siteSupply } from "./assessDay.ts";

/** What the supply asks for before anything else. */
export interface SupplyConcerns {
  /** In words, for the first line of the answer; null where it is not outside. */
  readonly outside: string | null;
  readonly steps: readonly NextStep[];
  /** What has to come before running, or null. */
  readonly before: string | null;
  /** Why nobody can say whether it may run, or null. */
  readonly unknown: string | null;
  /** Whether the voltages were read otherwise than asked, so that amps that differ from those expected by them say nothing. */
  readonly explainsAmps: boolean;
}

const NONE: SupplyConcerns = { outside: null, steps: [], before: null, unknown: null, explainsAmps: false };

/** Highest voltage over the nominal one that a public supply keeps to. IEC 60038, from memory; the maker's limit comes first. */
const HIGHEST = 1.1;

/** How near a voltage must be to the plate's over √3, or amps to those of a sound module, to be taken for it. Common practice. */
const NEAR = 0.05;

const shown = (value: number): string => `${Number(value.toPrecision(4))} V`;
const near = (value: number, wanted: number): boolean => Math.abs(value / wanted - 1) < NEAR;

/** Whether the amps of a day, three lines of them, are those of a sound module on the plate's own voltage. */
function ampsOfPlate(record: ParsedRecord, plateCurrent: number | null): boolean {
  const days = [record.asLeft, record.asFound].map((day) =>
    (day?.currents ?? []).filter(({ at, into }) => into === undefined && /^L[123]$/.test(at)),
  );
  const lines = days.find((one) => one.length > 0) ?? [];
  return (
    plateCurrent !== null && lines.length > 2 && lines.every(({ reads }) => near(reads.value, plateCurrent))
  );
}

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
  const supply = siteSupply(record);
  if (plate === undefined || supply === undefined || lostLine !== null) return NONE;
  const volts = [supply.v12, supply.v23, supply.v31].map(({ value }): number => value);
  if (volts.every((one) => near(one, plate / Math.sqrt(3)))) return slip(record, volts, plate, plateCurrent);
  const most = Math.max(...volts);
  return most > HIGHEST * plate ? tooHigh(most, plate) : NONE;
}

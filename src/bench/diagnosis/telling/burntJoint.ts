/** A joint that the amps read beside it would have burnt: something else is in the readings, more likely. */
import type { Warning } from "../../../quantity/index.ts";
import type { Question } from "../likelihood/model.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import type { FieldReading } from "../question/fieldReading.ts";
import { isLine } from "../question/lines.ts";
import type { Explanation } from "../question/types.ts";

/** More than an arc across a loose end needs, V: a contact does not hold it for long. Our judgement; metal melts at half a volt. */
const NO_JOINT_HOLDS = 30;

/** The line and the bank whose current a joint place carries; the bank is null where the whole line's does. */
function carried(
  place: string,
  { modules }: Question,
): { readonly line: string; readonly bank: string | null } | null {
  const atStar = /^.+<(.+)-(L[123])$/.exec(place);
  if (atStar !== null) return { line: atStar[2] as string, bank: atStar[1] as string };
  const ofBank = /^(L[123])>(.+)$/.exec(place);
  if (ofBank !== null) return { line: ofBank[1] as string, bank: ofBank[2] as string };
  const drawn = modules[0]?.plan.joints?.find(({ id }) => id === place);
  const line = drawn?.at ?? place;
  if (!isLine(line) || (drawn?.behind?.length ?? 0) > 1) return null;
  return { line, bank: drawn?.behind?.[0] ?? null };
}

/** Warns where the first explanation puts more volts across a joint, at amps that were read, than any joint holds. */
export function burntJointWarnings(question: Question, { faults, estimates }: Explanation): Warning[] {
  const banks = question.modules[0]?.plan.banks ?? [];
  const isWhole = (bank: string | null): boolean => bank === null || banks.length === 1;
  return faults.flatMap((fault: DiagnosedFault, f): Warning[] => {
    const ohms = estimates.find((one) => one.fault === f && one.of === "joint resistance")?.low;
    const place = fault.kind === "joint" ? carried(fault.place, question) : null;
    if (ohms === undefined || place === null) return [];
    const { line, bank } = place;
    const through = (one: FieldReading): boolean =>
      one.kind === "current" &&
      one.at === line &&
      (one.into === undefined ? isWhole(bank) : one.into === bank);
    const r = question.input.readings.findIndex(through);
    const amps = r < 0 ? 0 : (question.input.readings[r]?.reads as number);
    const volts = amps * ohms;
    if (!(volts > NO_JOINT_HOLDS)) return [];
    const path = `readings.${r}.reads`;
    const message = `${path}: ${amps} A would put ${Number(volts.toPrecision(2))} V across the joint that explains it best, which no joint holds for long: was the clamp around every wire of ${line}, at full conduction? If so, isolate and read the ohms dead before that joint is taken for the only fault.`;
    return [
      { code: "suspicious", path, message, limit: NO_JOINT_HOLDS, unit: "V", source: "common practice" },
    ];
  });
}

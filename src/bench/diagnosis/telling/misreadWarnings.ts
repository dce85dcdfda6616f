/** What is said of readings that may well be misread. */
import type { Warning } from "../../../quantity/index.ts";
import { type NeutralSlip, neutralWords } from "../hypotheses/neutralSlip.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import type { FieldReading } from "../question/fieldReading.ts";
import { GATE } from "../question/settings.ts";
import type { Explanation, ExplanationGroup } from "../question/types.ts";
import { explanationWords, measurementWords, probabilityWords } from "./words.ts";

/** Probability of a reading's being misread from which it is warned of: two that contradict each other both are. */
const WARNED = 0.2;

/** Whether an explanation that holds a reading to be misread accounts for all others. */
export const misreadFits = ({ faults, pValue }: Explanation): boolean =>
  isMisread(faults) && (pValue === null || pValue >= GATE);

/** Whether an explanation holds a reading to be misread. */
export const isMisread = (faults: readonly DiagnosedFault[]): boolean =>
  faults.some(({ kind }) => kind === "misread");

/** What amps may be instead of misread, and is not weighed: ohms pass it by, and it leaves them sound. */
const LIVE_ONLY = " Not weighed, and looks the same: a joint that opens when hot.";

/** Warns of readings that may well be misread, with what the others then say. */
export function misreadWarnings(
  readings: readonly FieldReading[],
  groups: readonly ExplanationGroup[],
  slip: NeutralSlip | null = null,
): readonly Warning[] {
  const all = groups.flatMap(({ explanations }) => explanations.filter(misreadFits));
  if (all.length === 0) return [];
  return readings.flatMap((reading, r) => {
    const without = all.filter(({ faults }) =>
      faults.some((fault) => fault.kind === "misread" && fault.reading === r),
    );
    const probability = without.reduce((sum, one) => sum + one.probability, 0);
    const [first] = without;
    if (first === undefined || probability < WARNED) return [];
    const others = first.faults.filter(({ kind }) => kind !== "misread");
    const path = `readings.${r}.reads`;
    const hint =
      reading.kind === "current"
        ? LIVE_ONLY
        : slip?.row === r
          ? ` ${neutralWords(reading.reads as number, slip)}`
          : "";
    const message = `${path}: ${measurementWords(reading)}: misread? It does not belong to the other readings (${probabilityWords(probability)}); without it the likeliest is: ${explanationWords(others, first.wiring)}.${hint}`;
    return [{ code: "suspicious", path, message }];
  });
}

/** Limits for readings that no tolerance and no diagnosis judges: what lies beyond them is not sound, what lies within is not cleared. */
import { type Judgement, judge } from "../../decision/index.ts";
import type { ParsedRecord } from "../record/parsed.ts";
import { isDiagnosed } from "./branchModule.ts";
import type { Day } from "./readings.ts";

/**
 * Making puts an element −5 to +10 % from its value, heat a few per cent more, and a clamp or a supply as read from the plate a few again:
 * what is farther off is another element, an open or a touching one, a bad joint or a wrong link. Common practice, no published source.
 */
export const FAR = 0.15;

const WIDE = "−15 % to +15 %, for the record gives no tolerance";

/** Whether a rule is that of the wide limits. */
export const isWide = (rule: string): boolean => rule.endsWith(WIDE);

/** Whether the diagnosis weighs the amps or ohms of a day: as left nothing is diagnosed. */
export const isWeighed = (record: ParsedRecord, day: Day, by: "ohmmeter" | "clamp"): boolean =>
  day === "asFound" && isDiagnosed(record) && record.instruments?.[by] !== undefined;

/** The judgement of a value beyond the wide limits; null within them, for that clears nothing. */
export function farOff(input: {
  readonly value: number;
  readonly halfWidth: number;
  readonly expected: number;
  /** What the expected value is, in words. */
  readonly name: string;
}): Judgement | null {
  const { value, halfWidth, expected, name } = input;
  const limits = { low: expected * (1 - FAR), high: expected * (1 + FAR) };
  const judgement = judge({ value, halfWidth, ...limits, rule: `${name} ${WIDE}` });
  return judgement.verdict === "outside" ? judgement : null;
}

/**
 * A supply further out of balance than anything linear in its line voltages reaches: taken as it was read, by its own triangle, where
 * all three line voltages were.
 */
import { stretchOf } from "../faults/atom.ts";
import { logLikelihood, type Model, onSupply, type Question } from "../likelihood/model.ts";
import { supplyAbout } from "../likelihood/observe.ts";
import type { State } from "../network/state.ts";
import { logSumExp } from "../numbers/linear.ts";
import { RANGE } from "../question/settings.ts";
import { type Finding, findingOf, type Marginal, marginalsOf, renamed } from "../weighing/findings.ts";

/** Part of the prior of an unbalanced supply that lies beyond its common range, and the spread by which it falls e times. Our judgement. */
const BEYOND = 0.1;
const FALLS_BY = 0.1;

/** Relative scatter of each line voltage about what was read: what such a supply may come to, far wider than any meter's error. */
const SCATTER = 0.1;

/** Triangles flatter than this, the longest side over the other two together, are a lost line and what feeds back to it. */
const FLAT = 0.95;

/** Most that the spread over the mean can come to: two sides as long as each other, and nothing of the third. */
const WIDEST = 1.5;

/** Standard deviations on either side, and steps, by which the spread is told. */
const SIDE = 3;
const STEPS = 24;

const SIDES = [
  ["L1", "L2"],
  ["L2", "L3"],
  ["L3", "L1"],
] as const;

/** A supply as read: what the model takes for it, and the spread from lowest to highest line voltage. */
export interface SkewedSupply {
  readonly supply: Parameters<typeof onSupply>[1];
  /** ln of its part of the prior odds of an unbalanced supply. */
  readonly logPart: number;
  readonly spread: Pick<Marginal, "of" | "stretches" | "values" | "logTerms">;
}

/** Mean of what was read across one side of the triangle, and its variance; null where nothing was. */
function sideRead({ input, seen }: Question, [a, b]: readonly [string, string]) {
  const rows = input.readings.flatMap((reading, r) =>
    reading.kind === "voltage" &&
    !Number.isNaN(seen.reads[r]) &&
    ((reading.from === a && reading.to === b) || (reading.from === b && reading.to === a))
      ? [r]
      : [],
  );
  const mean = (values: ArrayLike<number>): number =>
    rows.reduce((sum, r) => sum + (values[r] as number), 0) / rows.length;
  return rows.length === 0 ? null : { volts: mean(seen.reads), variance: mean(seen.own) / rows.length };
}

/** The three line voltages as read, and their spread over their mean, where that is beyond the common range; null elsewhere. */
function sidesApart(question: Question) {
  const sides = SIDES.flatMap((side) => sideRead(question, side) ?? []);
  if (sides.length < SIDES.length) return null;
  const lowest = sides.reduce((a, b) => (b.volts < a.volts ? b : a));
  const highest = sides.reduce((a, b) => (b.volts > a.volts ? b : a));
  const sum = sides.reduce((all, { volts }) => all + volts, 0);
  const spread = (3 * (highest.volts - lowest.volts)) / sum;
  // No volts at all have no spread: not a number.
  return spread > RANGE.unbalance[1] ? { sides, lowest, highest, sum, spread } : null;
}

/** Whether line voltages were read further apart than common, be it as no supply has them: one longer than the other two together. */
export const readApart = (question: Question): boolean => sidesApart(question) !== null;

/** The supply as read, where it is further out of balance than the common range; null elsewhere. */
export function skewedSupply(question: Question): SkewedSupply | null {
  const apart = sidesApart(question);
  if (apart === null) return null;
  const { sides, lowest, highest, sum, spread } = apart;
  if (highest.volts > FLAT * (sum - highest.volts)) return null;
  const deviation = (3 * Math.sqrt(lowest.variance + highest.variance)) / sum;
  const z = Array.from({ length: STEPS }, (_, k) => SIDE * ((2 * k + 1) / STEPS - 1));
  const terms = z.map((value) => -0.5 * value * value);
  const total = logSumExp(terms);
  return {
    supply: { supply: supplyAbout(sides.map(({ volts }) => volts)), unbalance: SCATTER },
    logPart: Math.log(BEYOND) - (spread - RANGE.unbalance[1]) / FALLS_BY,
    spread: {
      of: "unbalance",
      stretches: [stretchOf([RANGE.unbalance[1], WIDEST], false, 1)],
      values: z.map((value) => Math.max(0, spread + value * deviation)),
      logTerms: terms.map((term) => term - total),
    },
  };
}

/** Weighs a supply as read by itself, or beside what the model has already. */
export function skewedFinding(
  model: Model,
  state: State,
  { supply, spread }: SkewedSupply,
  names: Finding["names"],
): Finding {
  const on = onSupply(model, supply);
  const visit = (): number => logLikelihood(on, state);
  const log = visit();
  const points = spread.values.map((value) => [value]);
  const logTerms = spread.logTerms.map((term) => log + term);
  const best = points[STEPS >> 1] as readonly number[];
  const { of, stretches } = spread;
  const parameters = [{ of, stretches, fault: names.faults - 1 }];
  return findingOf(on, names, parameters, { log, points, logTerms, best }, visit);
}

/** A fault's finding with what is known of the supply as read beside it, which is named first. */
export const besideSkewed = (finding: Finding, { spread }: SkewedSupply): Finding =>
  renamed(finding, finding.names, () => [...marginalsOf(finding), { ...spread, fault: 0 }]);

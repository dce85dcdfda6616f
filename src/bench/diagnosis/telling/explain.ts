/** Findings turned into the explanations that people and programs read. */
import { largestFirst } from "../../../numeric/index.ts";
import type { Stretch } from "../faults/atom.ts";
import { degreesOfFreedomOf, pValueOf } from "../inference/judged.ts";
import type { Posterior, Ranked } from "../inference/posterior.ts";
import { weightsOf } from "../numbers/linear.ts";
import { type Bounds, quantiles } from "../numbers/quantiles.ts";
import { filled } from "../numbers/room.ts";
import type { Explanation, ExplanationGroup, FaultEstimate } from "../question/types.ts";
import type { Finding, Parameter } from "../weighing/findings.ts";
import type { Unseen } from "../weighing/names.ts";

/** Where a parameter can lie: its stretches rise, and between two of them there may be a gap. */
function boundsOf(stretches: readonly Stretch[]): Bounds {
  const { low, logarithmic } = stretches[0] as Stretch;
  let { high } = stretches[0] as Stretch;
  let gap: Bounds["gap"];
  for (const next of stretches) {
    if (gap === undefined && next.low > high) gap = [high, next.low];
    high = next.high;
  }
  return { low, high, logarithmic, gap };
}

/** Median, and the ends of the 95 % interval. */
const PARTS = [0.5, 0.025, 0.975] as const;

/** Median and 95 % interval of a parameter, from values with the weight of each. */
function estimateOf(
  { of, stretches, fault }: Parameter,
  values: Float64Array,
  weights: Float64Array,
): FaultEstimate {
  const parts = quantiles(values, weights, PARTS, boundsOf(stretches));
  const [value, low, high] = parts as [number, number, number];
  return { of, fault, value, low, high, unit: of.endsWith("resistance") ? "Ω" : "1" };
}

const listOf = (values: readonly number[]): Float64Array => filled(values.length, (i) => values[i] as number);

/** What is known of each parameter. */
function estimatesOf({ completed, parameters, points }: Finding, weights: Float64Array): FaultEstimate[] {
  if (completed !== undefined)
    return completed().map((own) => estimateOf(own, listOf(own.values), weightsOf(own.logTerms)));
  return parameters.map((own, k) => {
    const values = filled(points.length, (i) => (points[i] as readonly number[])[k] as number);
    return estimateOf(own, values, weights);
  });
}

/** Parameters of unseen faults, which come last among the faults. */
function unseenEstimates(count: number, unseen: readonly Unseen[]): FaultEstimate[] {
  return unseen.flatMap(({ estimates }, k) =>
    estimates.map((one) => ({ ...one, fault: count - unseen.length + k })),
  );
}

const NONE: readonly Unseen[] = [];

/** Adds a finding under each of its names. */
function explain(
  { finding, wiring, logPrior, judged, weights }: Ranked,
  { total, priorTotal }: Posterior,
  into: Explanation[],
): void {
  const { chiSquare, predicted } = judged;
  const degreesOfFreedom = degreesOfFreedomOf(finding, judged);
  const pValue = pValueOf(finding, judged);
  const estimates = estimatesOf(finding, weights);
  for (const { faults, logOdds, unseen = NONE } of finding.names.list()) {
    into.push({
      faults,
      unseen: unseen.length === 0 ? [] : unseen.map(({ fault }) => fault),
      wiring,
      probability: Math.exp(finding.log + logOdds + logPrior - total),
      prior: Math.exp(logOdds + logPrior - priorTotal),
      estimates: unseen.length === 0 ? estimates : [...estimates, ...unseenEstimates(faults.length, unseen)],
      logLikelihood: finding.log,
      chiSquare,
      degreesOfFreedom,
      pValue,
      predicted,
    });
  }
}

/** All groups, with every explanation under each of its names. */
export function explanationGroups(posterior: Posterior): ExplanationGroup[] {
  return posterior.groups.map(({ probability, members }) => {
    const explanations: Explanation[] = [];
    for (const one of members) explain(one, posterior, explanations);
    return { probability, explanations: largestFirst(explanations, (one) => one.probability) };
  });
}

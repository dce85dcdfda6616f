/** Findings turned into the explanations that people and programs read. */
import { largestFirst } from "../../../numeric/index.ts";
import type { Stretch } from "../faults/atom.ts";
import { degreesOfFreedomOf, pValueOf } from "../inference/judged.ts";
import type { Posterior, Ranked } from "../inference/posterior.ts";
import { type Bounds, quantiles } from "../numbers/quantiles.ts";
import type { Explanation, ExplanationGroup, FaultEstimate } from "../question/types.ts";
import { type Finding, marginalsOf } from "../weighing/findings.ts";
import type { Unseen } from "../weighing/names.ts";

/** Where a parameter can lie: its stretches rise, and between two of them there may be a gap. */
function boundsOf(stretches: readonly Stretch[]): Bounds {
  const [first, last] = [stretches[0] as Stretch, stretches.at(-1) as Stretch];
  const bounds = { low: first.low, high: last.high, logarithmic: first.logarithmic };
  const before = stretches.find(({ high }, k) => high < (stretches[k + 1]?.low ?? high));
  const after = stretches[stretches.indexOf(before as Stretch) + 1] as Stretch;
  return before === undefined ? bounds : { ...bounds, gap: [before.high, after.low] };
}

/** Median and 95 % interval of each parameter. */
function estimatesOf(finding: Finding): FaultEstimate[] {
  return (finding.completed?.() ?? marginalsOf(finding)).map(({ of, stretches, fault, values, logTerms }) => {
    const parts = quantiles(values, logTerms, [0.5, 0.025, 0.975], boundsOf(stretches));
    const [value, low, high] = parts as [number, number, number];
    return { of, fault, value, low, high, unit: of.endsWith("resistance") ? "Ω" : "1" };
  });
}

/** Parameters of unseen faults, which come last among the faults. */
function unseenEstimates(count: number, unseen: readonly Unseen[]): FaultEstimate[] {
  return unseen.flatMap(({ estimates }, k) =>
    estimates.map((one) => ({ ...one, fault: count - unseen.length + k })),
  );
}

function explanationsOf(
  { finding, wiring, logPrior, judged }: Ranked,
  { total, priorTotal }: Posterior,
): Explanation[] {
  const { chiSquare, predicted } = judged;
  const degreesOfFreedom = degreesOfFreedomOf(finding, judged);
  const pValue = pValueOf(finding, judged);
  const estimates = estimatesOf(finding);
  return finding.names.list().map(({ faults, logOdds, unseen = [] }) => ({
    faults,
    unseen: unseen.map(({ fault }) => fault),
    wiring,
    probability: Math.exp(finding.log + logOdds + logPrior - total),
    prior: Math.exp(logOdds + logPrior - priorTotal),
    estimates: unseen.length === 0 ? estimates : [...estimates, ...unseenEstimates(faults.length, unseen)],
    logLikelihood: finding.log,
    chiSquare,
    degreesOfFreedom,
    pValue,
    predicted,
  }));
}

/** All groups, with every explanation under each of its names. */
export function explanationGroups(posterior: Posterior): ExplanationGroup[] {
  return posterior.groups.map((members) => {
    const explanations = largestFirst(
      members.flatMap((one) => explanationsOf(one, posterior)),
      ({ probability }) => probability,
    );
    return { probability: members.reduce((sum, { probability }) => sum + probability, 0), explanations };
  });
}

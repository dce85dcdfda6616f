/** Findings turned into the explanations that people and programs read. */
import { largestFirst } from "../../numeric/index.ts";
import { type Finding, marginalsOf } from "./findings.ts";
import { degreesOfFreedomOf, pValueOf } from "./judged.ts";
import type { Posterior, Ranked } from "./posterior.ts";
import { type Bounds, quantiles } from "./quantiles.ts";
import { RANGE } from "./settings.ts";
import type { Explanation, ExplanationGroup, FaultEstimate } from "./types.ts";
import type { Unseen } from "./unseen.ts";

const bounds = ([low, high]: readonly [number, number], logarithmic: boolean): Bounds => ({
  low,
  high,
  logarithmic,
});

/** Where each parameter can lie beforehand. */
const BOUNDS: Readonly<Record<FaultEstimate["of"], Bounds>> = {
  "turns shorted": bounds(RANGE.turns, false),
  "resistance ratio": {
    ...bounds([RANGE.low[0], RANGE.high[1]], true),
    gap: [RANGE.low[1], RANGE.high[0]],
  },
  "joint resistance": bounds(RANGE.joint, true),
  position: bounds([0, 1], false),
  "fault resistance": bounds(RANGE.earth, true),
  unbalance: bounds(RANGE.unbalance, false),
};

/** Of a joint: further down where a drop was read across it, further up where a path was read longer than common joints make it. */
function jointBounds(values: readonly number[]): Bounds {
  const [least, most] = RANGE.joint;
  const low = values.some((one) => one < least) ? RANGE.jointWithDrop : least;
  return bounds([low, values.some((one) => one > most) ? RANGE.charredJoint : most], true);
}

/** Median and 95 % interval of each parameter. */
function estimatesOf(finding: Finding): FaultEstimate[] {
  return (finding.completed?.() ?? marginalsOf(finding)).map(({ of, fault, values, logTerms }) => {
    const within = of === "joint resistance" ? jointBounds(values) : BOUNDS[of];
    const [value, low, high] = quantiles(values, logTerms, [0.5, 0.025, 0.975], within) as [
      number,
      number,
      number,
    ];
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

/** Which fault explains these readings, and how sure are we. */
import { chiSquareSurvival } from "../../numeric/index.ts";
import { given, type Open } from "../../quantity/index.ts";
import { infer, type Weighed } from "./infer.ts";
import { logSumExp } from "./linear.ts";
import { questionOf } from "./model.ts";
import { quantiles } from "./quadrature.ts";
import { GATE } from "./settings.ts";
import type { Diagnosis, DiagnosisInput, Explanation, FaultEstimate, PredictedReading } from "./types.ts";

/**
 * Which faults explain field readings of a heating module, each with its probability.
 *
 * Every hypothesis h (sound, each fault, two opens; all pairs on request) predicts the readings through the network:
 * y ~ N(f_h, D + N·Nᵀ), with D the readings' own variances and one column of N for each nuisance that is not a fault:
 * element tolerance in common and one by one, hot over cold, leads, the supply's voltages, each instrument's gain. The
 * marginal likelihood integrates nuisances in closed form and fault parameters by quadrature; times prior odds, normalised
 * over all hypotheses, it is the posterior probability.
 * @param input - module as drawn, readings, instruments; supply, spread, priors and depth as needed
 * @returns groups of explanations, most probable first
 * @throws ElectroheatError as {@link buildModule}; `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `unknown-field`
 * @source Gaussian marginal likelihood and Bayes' theorem; sensitivity of a reading to a resistance as in
 *   {@link terminalReading}; rank-one updates: J. Sherman and W. J. Morrison, Annals of Mathematical Statistics 21 (1950) 124
 * @example
 * ```ts
 * const found = diagnose({
 *   module: { banks: [{ id: "A", connection: "star", elementResistance: ohms(12) }] },
 *   instruments: { ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" } },
 *   readings: [
 *     { kind: "resistance", from: "L1", to: "L2", reads: "open" },
 *     { kind: "resistance", from: "L2", to: "L3", reads: ohms(24.1) },
 *     { kind: "resistance", from: "L3", to: "L1", reads: "open" },
 *   ],
 * });
 * found.groups[0]?.explanations[0]?.faults // => [{ kind: "element open", element: "A-L1" }]
 * ```
 * @since 0.1.0
 */
export function diagnose(input: DiagnosisInput): Diagnosis {
  const question = questionOf(given(input));
  const weighed = infer(question);
  const logs = weighed.map(({ finding, logPrior }) =>
    finding.names.map(({ logOdds }) => finding.log + logOdds + logPrior),
  );
  const total = logSumExp(logs.map((list) => logSumExp(list)));
  const priors = logSumExp(
    weighed.flatMap(({ finding, logPrior }) => finding.names.map(({ logOdds }) => logOdds + logPrior)),
  );
  const groups = weighed
    .map((one, i) => ({ one, probability: Math.exp(logSumExp(logs[i] as number[]) - total) }))
    .sort((a, b) => b.probability - a.probability)
    .filter(({ probability }, i) => i < 3 || probability > 1e-7)
    .map(({ one, probability }) => ({ probability, explanations: explanationsOf(one, total, priors) }));
  const top = groups[0]?.explanations[0] as Explanation;
  const outcome = top.pValue === null ? "too few readings" : top.pValue < GATE ? "nothing fits" : "explained";
  return { outcome, groups, notDetermined: [], warnings: [], cautions: [] };
}

function explanationsOf(
  { finding, wiring, logPrior }: Weighed,
  total: number,
  priors: number,
): Explanation[] {
  const { model, parameters, points, logTerms } = finding;
  finding.visit(finding.best);
  const { evaluation, prediction, question } = model;
  const { chiSquare, count, contradictions } = evaluation;
  const degreesOfFreedom = Math.max(0, count - parameters.length);
  const predicted = question.input.readings.map((reading, r): PredictedReading => {
    const reads = reading.reads as number | Open;
    const mean = prediction.mean[r] as number;
    if (prediction.adrift[r] !== 0) return { reads, predicted: null, deviation: null };
    if (mean === Number.POSITIVE_INFINITY) return { reads, predicted: "open", deviation: null };
    let variance = (question.seen.own[r] as number) + (prediction.extra[r] as number);
    for (let c = 0; c < prediction.count; c += 1)
      variance += (prediction.columns[c * prediction.rows + r] as number) ** 2;
    return {
      reads,
      predicted: mean,
      deviation: reads === "open" ? null : (reads - mean) / Math.sqrt(variance),
    };
  });
  const estimates = parameters.map(({ of, fault }, k): FaultEstimate => {
    const values = points.map((point) => point[k] as number);
    const [value, low, high] = quantiles(values, logTerms, [0.5, 0.025, 0.975]) as [number, number, number];
    return { of, fault, value, low, high, unit: of.endsWith("resistance") ? "Ω" : "1" };
  });
  const pValue =
    contradictions > 0
      ? 0
      : degreesOfFreedom === 0
        ? null
        : chiSquareSurvival({ chiSquare, degreesOfFreedom });
  return finding.names
    .map(({ faults, logOdds }) => ({
      faults,
      wiring,
      probability: Math.exp(finding.log + logOdds + logPrior - total),
      prior: Math.exp(logOdds + logPrior - priors),
      estimates,
      logLikelihood: finding.log,
      chiSquare,
      degreesOfFreedom,
      pValue,
      predicted,
    }))
    .sort((a, b) => b.probability - a.probability);
}

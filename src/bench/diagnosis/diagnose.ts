/** Which fault explains these readings, and how sure are we. */
import { largestFirst } from "../../numeric/index.ts";
import { given, type Warning } from "../../quantity/index.ts";
import { CAUTIONS } from "../cautions.ts";
import { checkQuestion } from "./check.ts";
import { neutralSlip, neutralWarnings } from "./hypotheses/neutralSlip.ts";
import { posteriorOf } from "./inference/posterior.ts";
import { questionOf } from "./likelihood/model.ts";
import { GATE, RANGE } from "./question/settings.ts";
import type { Diagnosis, DiagnosisInput, Explanation, ExplanationGroup } from "./question/types.ts";
import { acrossLinesWarnings } from "./telling/acrossLines.ts";
import { burntJointWarnings } from "./telling/burntJoint.ts";
import { explanationGroups } from "./telling/explain.ts";
import { insulationWarnings } from "./telling/insulationWarnings.ts";
import { isMisread, misreadWarnings } from "./telling/misreadWarnings.ts";
import { slipWarnings } from "./telling/slips.ts";
import { statedVoltageWarnings } from "./telling/statedVoltage.ts";
import { notDetermined } from "./telling/undetermined.ts";

/** Standard deviations within which an explanation accounts for a reading. */
const ACCOUNTED = 4;

/** The outcome, by the most probable explanation that takes every reading at its word. */
function outcomeOf(groups: readonly ExplanationGroup[]): Diagnosis["outcome"] {
  const firsts: Explanation[] = [];
  for (const { explanations } of groups) {
    const first = explanations.find(({ faults }) => !isMisread(faults));
    if (first !== undefined) firsts.push(first);
  }
  const [best] = largestFirst(firsts, ({ probability }) => probability);
  if (best === undefined) return "nothing fits";
  return best.pValue === null ? "too few readings" : best.pValue < GATE ? "nothing fits" : "explained";
}

/**
 * Which faults explain field readings of a heating module, each with its probability.
 *
 * Every hypothesis h (sound, each fault, two opens; pairs on request, `notDetermined` saying which are left out) predicts the readings through the network:
 * y ~ N(f_h, D + N·Nᵀ), with D the readings' own variances and one column of N for each nuisance that is not a fault:
 * element tolerance in common and one by one, hot over cold, leads, the supply's voltages, each instrument's gain. The
 * marginal likelihood integrates nuisances in closed form and fault parameters by quadrature; times prior odds, normalised
 * over all hypotheses, it is the posterior probability.
 * @param input - module as drawn, readings, instruments; supply, spread, priors and depth as needed
 * @returns groups of explanations, most probable first
 * @throws ElectroheatError as `buildModule` of `circuit`; `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `unknown-field`
 * @source Gaussian marginal likelihood and Bayes' theorem; sensitivity of a reading to a resistance as in
 *   `terminalReading` of `circuit`; rank-one updates: J. Sherman and W. J. Morrison, Annals of Mathematical Statistics 21 (1950) 124
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
  const question = questionOf(input, [], checkQuestion(given(input)));
  const posterior = posteriorOf(question);
  const { sound, expected } = posterior;
  const groups = explanationGroups(posterior);
  const top = groups[0]?.explanations[0] as Explanation;
  const outcome = outcomeOf(groups);
  // Windings across the lines read like kilohms typed as ohms: that explains a slip of the unit, it does not exclude it.
  const feed = top.faults.some(({ kind }) => kind === "feed connected");
  // Neither does a joint burnt to kilohms, which one reading in another unit looks like.
  const charred = top.estimates.some(({ of, value }) => of === "joint resistance" && value > RANGE.joint[1]);
  const excludes = outcome !== "nothing fits" && !feed && !charred;
  const accounted = top.predicted.flatMap(({ deviation }, r) =>
    excludes && deviation !== null && Math.abs(deviation) < ACCOUNTED ? [r] : [],
  );
  const slips = slipWarnings(question, expected, accounted);
  const neutral = neutralSlip(question);
  const misread = misreadWarnings(input.readings, groups, neutral).filter(({ path }) =>
    slips.every((one) => one.path !== path),
  );
  // A supply so unequal that the amps speak for it needs no slip.
  const unsaid = (one: Warning): boolean =>
    !accounted.includes(neutral?.row as number) && misread.every(({ path }) => path !== one.path);
  const warnings = [
    ...slips,
    // Ohms of a thousandth are a slip of the unit before they are a winding, and a winding that explains them has been named.
    ...(slips.length > 0 || (feed && outcome !== "nothing fits")
      ? []
      : acrossLinesWarnings(question, expected)),
    ...misread,
    ...neutralWarnings(question, neutral).filter(unsaid),
    ...(outcome === "explained" ? burntJointWarnings(question, top) : []),
    ...(outcome === "nothing fits" && slips.length === 0 ? statedVoltageWarnings(question) : []),
    ...insulationWarnings(question),
  ];
  return {
    outcome,
    groups,
    notDetermined: notDetermined(sound.finding.model, groups),
    warnings,
    cautions: CAUTIONS,
  };
}

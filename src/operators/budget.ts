/** Uncertainty budget of any calculation, to first order (GUM). */
import type { DegreesOfFreedom } from "../numeric/index.ts";
import { checkFinite, checkOneOf, given, type Warning } from "../quantity/index.ts";
import type { BudgetLine, OutputBudget, UncertaintyBudget } from "./budgetTypes.ts";
import {
  argumentFrom,
  type Calculation,
  checkCalculation,
  type NumericField,
  numberFrom,
  outputNames,
  outputReader,
} from "./calculation.ts";
import { type Correlation, correlatedGroups, fullCorrelation } from "./correlation.ts";
import { checkCoverage, coverageFactor, effectiveDegreesOfFreedom } from "./coverage.ts";
import { type PreparedInput, prepareInputs, type UncertainInput } from "./inputs.ts";
import { slopesAt } from "./partials.ts";
import { propagateUncertainty } from "./propagate.ts";

/** Second-order effect of one standard uncertainty, over the combined one, from which first order is called rough. */
const ROUGH = 0.1;

/** Everything that the parts below share. */
interface Problem {
  readonly inputs: readonly PreparedInput[];
  readonly names: readonly string[];
  readonly estimates: readonly number[];
  /** All outputs with one input moved, or undefined where the calculation refuses. */
  readonly probe: (input: number, x: number) => readonly number[] | undefined;
}

function sensitivitiesOf(
  problem: Problem,
  exact: Readonly<Record<string, Readonly<Record<string, number | undefined>>>>,
): { readonly slopes: readonly (readonly number[])[]; readonly errors: readonly (readonly number[])[] } {
  const { inputs, names, probe } = problem;
  const known = (output: string, input: string): number | undefined =>
    Object.hasOwn(exact, output) ? exact[output]?.[input] : undefined;
  for (const [output, row] of Object.entries(exact)) {
    checkOneOf("sensitivities", output, names);
    for (const [input, value] of Object.entries(given(row, `sensitivities.${output}`))) {
      checkOneOf(
        `sensitivities.${output}`,
        input,
        inputs.map(({ name }) => name),
      );
      if (value !== undefined) checkFinite(`sensitivities.${output}.${input}`, value);
    }
  }
  const columns = inputs.map((input, i) =>
    names.every((output) => known(output, input.name) !== undefined)
      ? undefined
      : slopesAt((x) => probe(i, x), input.estimate, input.standardUncertainty, `inputs.${input.name}`),
  );
  return {
    slopes: names.map((output, k) =>
      inputs.map(({ name }, i) => known(output, name) ?? (columns[i]?.slopes[k] as number)),
    ),
    errors: names.map((output, k) =>
      inputs.map(({ name }, i) =>
        known(output, name) === undefined ? (columns[i]?.errors[k] as number) : 0,
      ),
    ),
  };
}

/** Degrees of freedom of a set of correlated inputs: those of their readings, or the fewest where they differ. */
function groupDegrees(members: readonly PreparedInput[], warnings: Warning[]): DegreesOfFreedom {
  const all = members.map(({ degreesOfFreedom }) => degreesOfFreedom);
  const finite = all.filter((nu) => nu !== "infinite");
  if (finite.length === 0) return "infinite";
  const fewest = Math.min(...finite);
  if (members.length > 1) {
    const who = members.map(({ name }) => name).join(", ");
    const same = finite.length === all.length && finite.every((nu) => nu === fewest);
    warnings.push({
      code: same ? "assumed" : "approximate",
      path: "correlation",
      message: same
        ? `${who} are correlated and taken as read together: one part with ${fewest} degrees of freedom`
        : `${who} are correlated and their degrees of freedom differ; the fewest, ${fewest}, are taken for all of them`,
    });
  }
  return fewest;
}

/** Says where a step of one standard uncertainty bends away from the straight line that first order stands on. */
function bendings(problem: Problem, combined: readonly number[]): readonly Warning[] {
  return problem.inputs.flatMap(({ name, estimate, standardUncertainty: u }, i): readonly Warning[] => {
    if (u === 0) return [];
    const [up, down] = [problem.probe(i, estimate + u), problem.probe(i, estimate - u)];
    const path = `inputs.${name}`;
    if (up === undefined || down === undefined) {
      const message = `the calculation refuses ${name} one standard uncertainty from its estimate: first order is rough; use monteCarlo`;
      return [{ code: "approximate", path, message }];
    }
    const rough = problem.names.filter((_, k) => {
      const bend = Math.abs(
        (up[k] as number) / 2 + (down[k] as number) / 2 - (problem.estimates[k] as number),
      );
      return (
        bend > ROUGH * (combined[k] as number) && bend > 1e-12 * Math.abs(problem.estimates[k] as number)
      );
    });
    if (rough.length === 0) return [];
    const message = `${rough.join(", ")} bends over the uncertainty of ${name} by more than a tenth of the combined standard uncertainty: first order is rough; use monteCarlo`;
    return [{ code: "approximate", path, message }];
  });
}

/**
 * Uncertainty budget of a measurement result, to first order: u²(y) = Σᵢ Σⱼ cᵢ·cⱼ·u(xᵢ)·u(xⱼ)·r(xᵢ, xⱼ), U = k·u(y).
 *
 * The measurement model is any function of one object; its sensitivity coefficients c are taken by differences unless
 * given. Step rule: the first step is the larger of |x|/32 and u(x), cut to a quarter until the function takes x ± h (one
 * side at the edge of its domain), then halved twelve times and extrapolated to zero; where rounding drowns the slope,
 * longer steps are tried too. Smooth functions come out to about
 * 1e-10, and `sensitivityError` says how far off each may be. Effective degrees of freedom by Welch-Satterthwaite,
 * correlated inputs as one part. First order is exact for models linear in their inputs; a warning says where it is rough.
 * @param input.calculation - the measurement model
 * @param input.inputs - the uncertain inputs, by the name of their field
 * @param input.fixed - the other fields of the argument, taken as exact
 * @param input.outputs - names of outputs, dots leading into records; left out, the bare number or every field that is one
 * @param input.correlation - correlation coefficients of inputs; left out, independent
 * @param input.sensitivities - exact sensitivity coefficients, by output and input; the others are taken by differences
 * @param input.coverageProbability - level of confidence of the interval, above 0 and below 1; 0.95 if left out
 * @param input.degreesOfFreedom - `"truncated"` (down to a whole number before Student's t is taken, as the GUM does in its
 *   tables; the default) or `"exact"`
 * @returns budget of each output, covariance and correlation of the outputs, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `unknown-field`, `duplicate`,
 *   `inconsistent`, `wrong-type`; whatever the calculation throws at the estimates
 * @source JCGM 100:2008 (GUM), 5.1.2, 5.1.3, 5.2.2, 6.2, G.4.1; C. J. F. Ridders, Accurate computation of F'(x) and
 *   F'(x)F''(x), Advances in Engineering Software 4 (1982) 75
 * @example
 * ```ts
 * uncertaintyBudget({
 *   calculation: ({ voltage, current }: { voltage: number; current: number }) => voltage * current,
 *   inputs: {
 *     voltage: { distribution: "rectangular", estimate: 480, halfWidth: 2.4 },
 *     current: { distribution: "rectangular", estimate: 37.5, halfWidth: 0.75 },
 *   },
 * }).outputs[0]?.standardUncertainty // => 214.2
 * ```
 * @since 0.1.0
 */
export function uncertaintyBudget<I extends object>(input: {
  readonly calculation: Calculation<I>;
  readonly inputs: { readonly [K in NumericField<NoInfer<I>>]?: UncertainInput };
  readonly fixed?: Partial<NoInfer<I>>;
  readonly outputs?: readonly string[];
  readonly correlation?: Correlation;
  readonly sensitivities?: Readonly<Record<string, Readonly<Record<string, number | undefined>>>>;
  readonly coverageProbability?: number;
  readonly degreesOfFreedom?: "truncated" | "exact";
}): UncertaintyBudget {
  const { calculation, coverageProbability = 0.95, degreesOfFreedom = "truncated" } = given(input);
  checkCalculation(calculation);
  checkCoverage(coverageProbability);
  checkOneOf("degreesOfFreedom", degreesOfFreedom, ["truncated", "exact"]);
  const inputs = prepareInputs(input.inputs);
  const inputNames = inputs.map(({ name }) => name);
  const full = fullCorrelation(input.correlation, inputNames);
  const base = argumentFrom(input.fixed, inputNames, "inputs");
  for (const { name, estimate } of inputs) base[name] = estimate;
  const atEstimates = calculation({ ...base } as I);
  const names = outputNames(atEstimates, input.outputs);
  const readers = names.map(outputReader);
  const estimates = names.map((name, k) => numberFrom(readers[k]?.(atEstimates), name));
  const probe = (i: number, x: number): readonly number[] | undefined => {
    let result: unknown;
    try {
      result = calculation({ ...base, [inputNames[i] as string]: x } as I);
    } catch {
      return undefined;
    }
    const values = readers.map((read) => read(result));
    return values.every((value): value is number => Number.isFinite(value)) ? values : undefined;
  };
  const problem: Problem = { inputs, names, estimates, probe };
  const { slopes, errors } = sensitivitiesOf(problem, input.sensitivities ?? {});
  const uncertainties = inputs.map(({ standardUncertainty }) => standardUncertainty);
  const propagated = propagateUncertainty({
    sensitivities: slopes,
    standardUncertainties: uncertainties,
    correlation: full,
  });
  const warnings: Warning[] = [];
  const groups = correlatedGroups(full).map((members) => ({
    members,
    degrees: groupDegrees(
      members.map((i) => inputs[i] as PreparedInput),
      warnings,
    ),
  }));
  const outputs = names.map((output, k): OutputBudget => {
    const row = slopes[k] as readonly number[];
    const combined = propagated.standardUncertainties[k] as number;
    const parts = groups.map(({ members, degrees }) => ({
      contribution: propagateUncertainty({
        sensitivities: [members.map((i) => row[i] as number)],
        standardUncertainties: members.map((i) => uncertainties[i] as number),
        correlation: members.map((i) => members.map((j) => (full[i] as readonly number[])[j] as number)),
      }).standardUncertainties[0] as number,
      degreesOfFreedom: degrees,
    }));
    const effective = effectiveDegreesOfFreedom({ parts });
    const used = effective === "infinite" || degreesOfFreedom === "exact" ? effective : wholeBelow(effective);
    const factor = coverageFactor({ coverageProbability, degreesOfFreedom: used });
    const expanded = factor * combined;
    const estimate = estimates[k] as number;
    const lines = inputs.map(({ name }, i): BudgetLine => {
      const contribution = Math.abs((row[i] as number) * (uncertainties[i] as number));
      return {
        input: name,
        sensitivity: row[i] as number,
        sensitivityError: errors[k]?.[i] as number,
        contribution,
        share: combined === 0 ? 0 : (contribution / combined) ** 2,
      };
    });
    return {
      output,
      estimate,
      standardUncertainty: combined,
      effectiveDegreesOfFreedom: effective,
      coverageProbability,
      coverageFactor: factor,
      expandedUncertainty: expanded,
      low: estimate - expanded,
      high: estimate + expanded,
      lines,
    };
  });
  warnings.push(...bendings(problem, propagated.standardUncertainties));
  return {
    inputs,
    outputs,
    covariance: propagated.covariance,
    correlation: propagated.correlation,
    warnings,
  };
}

/** Next whole number below, but not below 1; a hair above for rounding, so that 5 parts of ν = 1 make 5 and not 4. */
function wholeBelow(nu: number): number {
  return Math.max(1, Math.floor(nu * (1 + 1e-9)));
}

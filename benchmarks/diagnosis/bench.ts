/** Runs a stretch of the simulated bench and marks it. */
import type { Diagnosis, DiagnosisInput } from "./contract.ts";
import { monteCarlo } from "./monteCarlo.ts";
import { keyOf, type Mark, mark } from "./score.ts";
import { type Population, simulate } from "./simulate.ts";

export interface Stretch {
  readonly seed: number;
  readonly population: Population;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Elements of the largest module; any if left out. */
  readonly mostElements?: number;
}

/** A small module judged twice: stated probability of each kind of fault and that of brute force. */
export interface Refereed {
  readonly index: number;
  readonly faults: string;
  readonly stated: number;
  readonly referee: number;
  readonly standardError: number;
}

export function refereed(
  { seed, from, to, step }: Stretch,
  worlds: number,
  diagnose: (input: DiagnosisInput) => Diagnosis,
): Refereed[] {
  const found: Refereed[] = [];
  for (let index = from; index < to; index += step) {
    const { input } = simulate(seed, index, "referee");
    const explanations = diagnose(input).groups.flatMap((group) => group.explanations);
    const stated = new Map(explanations.map((one) => [keyOf(one.faults), one.probability]));
    for (const { faults, probability, standardError } of monteCarlo(input, worlds, seed)) {
      const key = keyOf(faults);
      found.push({ index, faults: key, stated: stated.get(key) ?? 0, referee: probability, standardError });
    }
  }
  return found;
}

const NO_ANSWER: Diagnosis = {
  outcome: "too few readings",
  groups: [],
  notDetermined: [],
  warnings: [],
  cautions: [],
};

export function benchStretch(
  { seed, population, from, to, step, ...limits }: Stretch,
  diagnose: (input: DiagnosisInput) => Diagnosis,
  now: () => number,
): Mark[] {
  const marks: Mark[] = [];
  for (let index = from; index < to; index += step) {
    const simulated = simulate(seed, index, population, limits);
    const start = now();
    try {
      const diagnosis = diagnose(simulated.input);
      marks.push(mark(simulated, diagnosis, now() - start));
    } catch (error) {
      // A legal question refused is a mark of its own, and must not end a long run.
      const refused = String(error).slice(0, 200);
      marks.push({ ...mark(simulated, NO_ANSWER, now() - start), refused });
    }
  }
  return marks;
}

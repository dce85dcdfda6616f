/** Runs a stretch of the simulated bench and marks it. */
import type { Diagnosis, DiagnosisInput } from "./contract.ts";
import { type Mark, mark } from "./score.ts";
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

/** The independent integrator: Hairer and Wanner's extrapolation code ODEX, as an npm package. */
import { createRequire } from "node:module";

interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(
    derivative: (x: number, y: number[]) => number[],
    from: number,
    initial: number[],
    to: number,
  ): { readonly y: number[]; readonly outcome: number };
}

// Loaded this way because its TypeScript source, which an import would pull in, does not pass our compiler settings.
const { Solver } = createRequire(import.meta.url)("odex") as { Solver: new (size: number) => OdexSolver };

/** State at `to`, by ODEX. */
export function odexState(
  derivative: (x: number, y: readonly number[]) => readonly number[],
  from: number,
  initial: readonly number[],
  to: number,
  tolerance = 1e-12,
): readonly number[] {
  const solver = new Solver(initial.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 100_000;
  const { y, outcome } = solver.solve((x, s) => [...derivative(x, s)], from, [...initial], to);
  if (outcome !== 0) throw new Error(`odex stopped with outcome ${outcome}`);
  return y;
}

export * from "./budget.ts";
export * from "./budgetTypes.ts";
export type { Calculation, NumericField } from "./calculation.ts";
export * from "./columns.ts";
export type { Correlation } from "./correlation.ts";
export { coverageFactor, effectiveDegreesOfFreedom, type UncertaintyPart } from "./coverage.ts";
export * from "./description.ts";
export {
  type BoundedInput,
  inputFromCertificate,
  inputFromReadings,
  inputsFromSimultaneousReadings,
  type SimultaneousInputs,
  type SpreadInput,
  type UncertainInput,
} from "./inputs.ts";
export type { MonteCarloOutput } from "./interval.ts";
export * from "./monteCarlo.ts";
export * from "./propagate.ts";
export type { RowStatus } from "./rowStatus.ts";
export * from "./showWorking.ts";
export * from "./solveFor.ts";
export * from "./validate.ts";

export * from "./bracketedRoot.ts";
export * from "./chiSquare.ts";
export * from "./complex.ts";
export * from "./conductanceGraph.ts";
export { regularizedIncompleteBeta } from "./incompleteBeta.ts";
export * from "./integrateOde.ts";
export * from "./leastSquares.ts";
export * from "./normal.ts";
export * from "./student.ts";

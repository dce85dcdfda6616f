export { connectionDiagram } from "./connectionDiagram.ts";
export { curveChart } from "./curveChart.ts";
export type { BandPoint, CurveAxis, CurveInput, CurveSeries } from "./curveTypes.ts";
export { diagramLayout } from "./diagramLayout.ts";
export * from "./diagramTypes.ts";
export type { Box, Point } from "./geometry.ts";
export * from "./ownCurves.ts";
export type { PlacedText } from "./svg.ts";
export type { Theme } from "./theme.ts";

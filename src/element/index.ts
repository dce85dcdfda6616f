export * from "./change.ts";
export * from "./coil.ts";
export {
  type InsideDiameter,
  insideDiameterFromMean,
  type MeanDiameter,
  meanDiameterFromInside,
  meanDiameterFromOutside,
  type OutsideDiameter,
  outsideDiameterFromMean,
} from "./coilDiameter.ts";
export { type CoilGuidance, type CoilLimit, coilGuidance } from "./coilGuidance.ts";
export * from "./current.ts";
export type { Cooling, ElementShape, HeatBalance } from "./heatBalance.ts";
export * from "./hotCold.ts";
export * from "./inside.ts";
export * from "./loadGuidance.ts";
export {
  type ForcedCorrelation,
  type FreeCorrelation,
  type NusseltNumber,
  nusseltChurchillBernstein,
  nusseltChurchillChu,
  nusseltHilpert,
  nusseltMorgan,
  nusseltZukauskas,
} from "./nusselt.ts";
export * from "./onVoltage.ts";
export * from "./operatingPoint.ts";
export * from "./power.ts";
export * from "./printedCurrent.ts";
export * from "./radiantSizing.ts";
export {
  radiantSurfaceLoad,
  radiantTemperature,
  radiantTemperatureAtVoltage,
} from "./radiation.ts";
export * from "./strings.ts";
export * from "./strip.ts";
export {
  heatBalance,
  type SurfaceTemperature,
  surfaceTemperature,
} from "./surfaceTemperature.ts";
export * from "./swaging.ts";
export type { OtherCorrelation, TemperatureBand } from "./temperatureBand.ts";
export * from "./tolerance.ts";
export * from "./whatIf.ts";
export * from "./wire.ts";

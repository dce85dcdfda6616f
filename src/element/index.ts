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
export * from "./hotCold.ts";
export * from "./loadGuidance.ts";
export * from "./operatingPoint.ts";
export * from "./power.ts";
export * from "./strings.ts";
export * from "./strip.ts";
export * from "./swaging.ts";
export * from "./tolerance.ts";
export * from "./wire.ts";

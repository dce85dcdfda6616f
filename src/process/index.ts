export * from "./airConstant.ts";
export * from "./airFlow.ts";
export { airHeatContent, airMeanSpecificHeat } from "./airHeat.ts";
export * from "./airHeating.ts";
export * from "./airWhatIf.ts";
export * from "./cost.ts";
export * from "./drying.ts";
export * from "./ductGuidance.ts";
export * from "./exhaust.ts";
export * from "./identify.ts";
export {
  coolDownTime,
  type HeatUpTime,
  heatUpTime,
  heatUpTimeFromMeanLoss,
  holdingPower,
  type LumpedOven,
  ovenTemperature,
} from "./lumped.ts";
export type { OvenHeat, OvenLoad, OvenPlan } from "./oven.ts";
export * from "./ovenHeatUp.ts";
export * from "./ovenOptions.ts";
export * from "./piece.ts";
export * from "./radiantExchange.ts";
export * from "./radiantSurface.ts";
export * from "./radiationThermometer.ts";
export * from "./sizing.ts";
export { steelHeatContent, steelSpecificHeat } from "./steel.ts";
export * from "./twoNode.ts";
export * from "./ventilation.ts";
export * from "./wall.ts";

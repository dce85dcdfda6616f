export * from "./alike.ts";
export * from "./ampacityTable.ts";
export { barResistance, holeExcessSquares, netSection, skinDepth } from "./bar.ts";
export { JOINT_DEFERRAL } from "./basis.ts";
export * from "./contact.ts";
export * from "./contactVoltage.ts";
export * from "./discSpring.ts";
export {
  type FinBar,
  finSpreadLength,
  jointThermalResistance,
  type ResistanceFromRise,
  resistanceFromRise,
} from "./fin.ts";
export * from "./hardware.ts";
export * from "./heatBalance.ts";
export * from "./hotCold.ts";
export * from "./jumper.ts";
export * from "./lap.ts";
export * from "./measured.ts";
export * from "./nutFactor.ts";
export * from "./preload.ts";
export * from "./pressure.ts";
export * from "./printedSizes.ts";
export * from "./runaway.ts";
export * from "./scan.ts";
export { type Severity, type SeverityLevel, type SeverityScale, scanSeverity } from "./severity.ts";
export * from "./stiffness.ts";
export * from "./stock.ts";
export * from "./strength.ts";
export * from "./thread.ts";
export * from "./threadSize.ts";
export * from "./tightening.ts";
export * from "./torqueTable.ts";
export * from "./wrench.ts";

export * from "./acceptanceTable.ts";
export * from "./ambientForCable.ts";
export * from "./ambientForConductor.ts";
export * from "./applianceDevice.ts";
export {
  type CableCapacity,
  type CableRun,
  cableCapacity,
} from "./cableCapacity.ts";
export * from "./cableForLoad.ts";
export {
  type AmpacityConstraint,
  type ConductorAmpacity,
  type ConductorRun,
  conductorAmpacity,
} from "./conductorAmpacity.ts";
export { type ConductorChoice, conductorForLoad, type SizingConstraint } from "./conductorForLoad.ts";
export {
  type DesignCurrent,
  designCurrent,
  type EquipmentClass,
  type HeatingLoad,
} from "./designCurrent.ts";
export * from "./earthFault.ts";
export * from "./edition.ts";
export { editionIssues } from "./editionGate.ts";
export { editionJsonSchema } from "./editionJsonSchema.ts";
export * from "./faultCurrent.ts";
export * from "./groundingConductor.ts";
export type { DeviceKind } from "./iecDevice.ts";
export { cableAmbientFactor, groupingFactor } from "./iecFactors.ts";
export type { IecEditionName } from "./iecNames.ts";
export type { Iec } from "./iecTables.ts";
export * from "./insulation.ts";
export type { InsulationCriterion, OwnInsulationCriterion } from "./insulationCriteria.ts";
export * from "./insulationTemperature.ts";
export * from "./insulationType.ts";
export * from "./interruptingRating.ts";
export * from "./leakageLimit.ts";
export * from "./loadForConductor.ts";
export * from "./lug.ts";
export * from "./namedWire.ts";
export { ambientFactor, conductorCountFactor, type FactorRoute } from "./necFactors.ts";
export type { NecEdition, NorthAmerican } from "./necTables.ts";
export * from "./resistancePerLength.ts";
export {
  type CodeResult,
  type CodeSystem,
  DEFERRAL,
  type Provenance,
  type TableCell,
  type TableKind,
} from "./result.ts";
export type { LabelledTable, SharedTable } from "./sharedTable.ts";
export * from "./shortCircuit.ts";
export { type DeviceRule, largestDevice, standardDevice } from "./standardDevice.ts";
export * from "./subdivision.ts";
export { ampacityEditions, type TabledConductor, tableAmpacity } from "./tableAmpacity.ts";
export * from "./terminalTorque.ts";
export { terminationTemperature } from "./termination.ts";
export * from "./voltageDrop.ts";

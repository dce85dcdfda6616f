export * from "./balanced.ts";
export * from "./closedForms.ts";
export type { Connection } from "./connection.ts";
export * from "./controlBurst.ts";
export * from "./controlFault.ts";
export * from "./controlNeutral.ts";
export * from "./controlPhaseAngle.ts";
export * from "./controlStaging.ts";
export * from "./controlThreePhase.ts";
export {
  type BranchState,
  type EnergisedNetwork,
  energise,
  type LineState,
  type NodeState,
} from "./energise.ts";
export * from "./faults.ts";
export * from "./faultTypes.ts";
export * from "./fromLineCurrents.ts";
export { withJoint } from "./joint.ts";
export * from "./module.ts";
export * from "./network.ts";
export * from "./responses.ts";
export * from "./starDelta.ts";
export * from "./supply.ts";
export * from "./terminalResistance.ts";
export * from "./unbalance.ts";
export * from "./unbalanceNamed.ts";

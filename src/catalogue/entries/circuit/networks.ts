/** Entries of the room `circuit`: modules as networks, supplies, what is energised, what an ohmmeter reads, faults. */
import {
  balancedSupply,
  buildModule,
  energise,
  faultEffect,
  faultScan,
  reconnected,
  supplyFromLineVoltages,
  supplyFromNeutralVoltages,
  terminalReading,
  terminalResistance,
  withJoint,
  withoutLines,
  withResistance,
} from "../../../circuit/index.ts";
import { DEAD_WORK, LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const nodal = "nodal analysis: Σ (V_node − V_other)/R = 0 at every node that no supply line holds";

export const networksEntries = (): readonly Entry[] =>
  describeRoom(
    "circuit",
    {
      buildModule,
      reconnected,
      withJoint,
      withResistance,
      balancedSupply,
      supplyFromLineVoltages,
      supplyFromNeutralVoltages,
      withoutLines,
      energise,
      terminalReading,
      terminalResistance,
      faultEffect,
      faultScan,
    },
    {
      buildModule: {
        kind: "transform",
        inputs: {
          banks: { least: 1 },
          starPoints: {},
          neutral: { default: "floating" },
          elements: {},
          joints: {},
        },
      },
      reconnected: {
        kind: "transform",
        inputs: { plan: {}, connection: {}, bank: {} },
        cautions: ["Star to delta puts √3 times the voltage and three times the power on every element."],
      },
      withJoint: {
        kind: "transform",
        inputs: {
          network: {},
          at: {},
          id: {},
          resistance: { symbol: "R", min: 0 },
          behind: {},
          fed: {},
          role: { default: "joint" },
        },
      },
      withResistance: {
        kind: "transform",
        inputs: { network: {}, id: {}, resistance: { symbol: "R", min: 0 } },
      },
      balancedSupply: {
        kind: "transform",
        tex: "|V_k| = \\frac{V}{\\sqrt{3}} \\text{ at } 0°, -120°, 120°",
        text: "V/√3 at 0°, −120° and 120°",
        inputs: {
          lineVoltage: { symbol: "V", above: 0 },
          rotation: { default: "L1-L2-L3" },
          sourceResistance: { symbol: "R_s", min: 0 },
        },
      },
      supplyFromLineVoltages: {
        kind: "transform",
        tex: "\\cos\\gamma = \\frac{V_{12}^2 + V_{31}^2 - V_{23}^2}{2 V_{12} V_{31}}",
        text: "law of cosines on the triangle of the line voltages",
        inputs: {
          v12: { symbol: "V_{12}", above: 0 },
          v23: { symbol: "V_{23}", above: 0 },
          v31: { symbol: "V_{31}", above: 0 },
          rotation: { default: "L1-L2-L3" },
        },
      },
      supplyFromNeutralVoltages: {
        kind: "transform",
        inputs: {
          voltages: { each: { symbol: "V_k", min: 0 } },
          degrees: { each: { symbol: "\\varphi_k", is: "degrees" } },
        },
      },
      withoutLines: { kind: "transform", inputs: { supply: {}, lines: {} } },
      energise: {
        kind: "physics",
        method: nodal,
        inputs: { network: {}, supply: {} },
        output: { fields: { totalPower: { symbol: "P" } } },
        cautions: [LIVE_WORK],
      },
      terminalReading: {
        kind: "physics",
        method: `${nodal}, one ampere sent in at one probe and taken out at the other`,
        inputs: { network: {}, from: {}, to: {} },
        output: { fields: { resistance: { symbol: "R" } } },
        cautions: [DEAD_WORK],
      },
      terminalResistance: {
        kind: "physics",
        method: `${nodal}, one ampere sent in at one probe and taken out at the other`,
        inputs: { network: {}, from: {}, to: {} },
        output: { symbol: "R" },
        cautions: [DEAD_WORK],
      },
      faultEffect: {
        kind: "physics",
        method: nodal,
        inputs: { network: {}, supply: {}, faults: { least: 1 } },
        cautions: [LIVE_WORK],
      },
      faultScan: {
        kind: "physics",
        method: `${nodal}, with rank-one updates for each fault`,
        inputs: {
          network: {},
          supply: {},
          kinds: {},
          depth: { symbol: "d", is: "count", default: 1 },
          survivors: { default: "all" },
        },
        cautions: [LIVE_WORK],
      },
    },
  );

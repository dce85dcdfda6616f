/** Entries of the room `circuit`: balanced modules, closed forms, star and delta, unbalance. */
import {
  branchCurrent,
  branchResistance,
  branchVoltage,
  deltaFromStar,
  deltaFromStarImpedance,
  deltaWithOpenElements,
  healthyLineToLineResistance,
  lineCurrent,
  negativeSequenceRatio,
  powerAtVoltage,
  starFromDelta,
  starFromDeltaImpedance,
  starWithOpenElements,
  symmetricalComponents,
  threePhasePower,
  unbalance,
} from "../../../circuit/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const power = { symbol: "P", above: 0 } as const;
const lineVoltage = { symbol: "V", above: 0 } as const;
const lineCurrentNote = { symbol: "I", above: 0 } as const;
const elementsInParallel = { symbol: "n", is: "count", min: 1, max: 10_000 } as const;
const open = { symbol: "k", is: "count", min: 0 } as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const arm = (symbol: string) => ({ symbol, min: 0 }) as const;

const openedRatios = {
  fields: {
    survivorVoltage: ratio("v_s"),
    survivorPower: ratio("p_s"),
    otherVoltage: ratio("v_o"),
    otherPower: ratio("p_o"),
    totalPower: ratio("p"),
    faultedLine: ratio("i_f"),
    otherLine: ratio("i_o"),
  },
} as const;

export const balancedEntries = (): readonly Entry[] =>
  describeRoom(
    "circuit",
    {
      lineCurrent,
      threePhasePower,
      powerAtVoltage,
      branchResistance,
      branchVoltage,
      branchCurrent,
      healthyLineToLineResistance,
      starWithOpenElements,
      deltaWithOpenElements,
      deltaFromStar,
      starFromDelta,
      starFromDeltaImpedance,
      deltaFromStarImpedance,
      symmetricalComponents,
      unbalance,
      negativeSequenceRatio,
    },
    {
      lineCurrent: {
        kind: "physics",
        tex: "I = \\frac{P}{\\sqrt{3}\\,V}",
        inputs: { power, lineVoltage },
        output: { symbol: "I" },
      },
      threePhasePower: {
        kind: "physics",
        tex: "P = \\sqrt{3}\\,V I",
        inputs: { lineCurrent: lineCurrentNote, lineVoltage },
        output: { symbol: "P" },
      },
      powerAtVoltage: {
        kind: "physics",
        tex: "P_2 = P_1 \\left(\\frac{V_2}{V_1}\\right)^2",
        inputs: {
          power: { symbol: "P_1", above: 0 },
          ratedVoltage: { symbol: "V_1", above: 0 },
          voltage: { symbol: "V_2", above: 0 },
        },
        output: { symbol: "P_2" },
      },
      branchResistance: {
        kind: "physics",
        tex: "R_\\mathrm{star} = \\frac{V^2}{P}, \\quad R_\\mathrm{delta} = \\frac{3 V^2}{P}",
        inputs: { connection: {}, power, lineVoltage },
        output: { symbol: "R" },
      },
      branchVoltage: {
        kind: "physics",
        tex: "V_\\mathrm{star} = \\frac{V}{\\sqrt{3}}, \\quad V_\\mathrm{delta} = V",
        text: "star V/√3, delta V",
        inputs: { connection: {}, lineVoltage },
        output: { symbol: "V_b" },
      },
      branchCurrent: {
        kind: "physics",
        tex: "I_\\mathrm{star} = I, \\quad I_\\mathrm{delta} = \\frac{I}{\\sqrt{3}}",
        text: "star I, delta I/√3",
        inputs: { connection: {}, lineCurrent: lineCurrentNote },
        output: { symbol: "I_b" },
      },
      healthyLineToLineResistance: {
        kind: "physics",
        tex: "R = \\frac{2 V^2}{P}",
        inputs: { power, lineVoltage },
        output: { symbol: "R" },
      },
      starWithOpenElements: {
        kind: "physics",
        tex: "m = \\frac{n-k}{n}, \\quad v_s = \\frac{3}{2+m}, \\quad v_o = i_o = \\frac{\\sqrt{3(1+m+m^2)}}{2+m}, \\quad p = \\frac{1+2m}{2+m}, \\quad i_f = \\frac{3m}{2+m}",
        inputs: { elementsInParallel, open },
        output: openedRatios,
      },
      deltaWithOpenElements: {
        kind: "physics",
        tex: "m = \\frac{n-k}{n}, \\quad v_s = v_o = i_o = 1, \\quad p = \\frac{2+m}{3}, \\quad i_f = \\sqrt{\\frac{1+m+m^2}{3}}",
        inputs: { elementsInParallel, open },
        output: openedRatios,
      },
      deltaFromStar: {
        kind: "transform",
        tex: "R_{12} = R_1 + R_2 + \\frac{R_1 R_2}{R_3}",
        inputs: { r1: arm("R_1"), r2: arm("R_2"), r3: arm("R_3") },
        output: {
          fields: { r12: { symbol: "R_{12}" }, r23: { symbol: "R_{23}" }, r31: { symbol: "R_{31}" } },
        },
      },
      starFromDelta: {
        kind: "transform",
        tex: "R_1 = \\frac{R_{12} R_{31}}{R_{12} + R_{23} + R_{31}}",
        inputs: { r12: arm("R_{12}"), r23: arm("R_{23}"), r31: arm("R_{31}") },
        output: { fields: { r1: { symbol: "R_1" }, r2: { symbol: "R_2" }, r3: { symbol: "R_3" } } },
      },
      starFromDeltaImpedance: {
        kind: "transform",
        tex: "Z_1 = \\frac{Z_{12} Z_{31}}{Z_{12} + Z_{23} + Z_{31}}",
        inputs: { r12: {}, r23: {}, r31: {} },
      },
      deltaFromStarImpedance: {
        kind: "transform",
        tex: "Z_{12} = \\frac{Z_1 Z_2 + Z_2 Z_3 + Z_3 Z_1}{Z_3}",
        inputs: { r1: {}, r2: {}, r3: {} },
      },
      symmetricalComponents: {
        kind: "transform",
        tex: "X_0 = \\frac{X_1 + X_2 + X_3}{3}, \\quad X^+ = \\frac{X_1 + a X_2 + a^2 X_3}{3}, \\quad X^- = \\frac{X_1 + a^2 X_2 + a X_3}{3}",
        inputs: { phasors: {} },
      },
      unbalance: {
        kind: "physics",
        tex: "u_\\mathrm{dev} = \\frac{\\max_i |X_i - \\bar X|}{\\bar X}, \\quad u_- = \\sqrt{\\frac{1-s}{1+s}}, \\quad s = \\sqrt{3 - 6\\beta}, \\quad \\beta = \\frac{\\sum X_i^4}{\\left(\\sum X_i^2\\right)^2}",
        inputs: {
          l1: { symbol: "X_1", is: "number", min: 0 },
          l2: { symbol: "X_2", is: "number", min: 0 },
          l3: { symbol: "X_3", is: "number", min: 0 },
        },
        output: {
          fields: {
            mean: { symbol: "\\bar X", is: "number" },
            maxDeviation: ratio("u_\\mathrm{dev}"),
            spread: ratio("u_\\mathrm{spread}"),
            negativeSequence: ratio("u_-"),
          },
        },
      },
      negativeSequenceRatio: {
        kind: "physics",
        tex: "u_- = \\frac{|X^-|}{|X^+|}",
        text: "|X⁻|/|X⁺|",
        inputs: { phasors: {} },
        output: { symbol: "u_-", is: "ratio" },
      },
    },
  );

/** Entries of the room `joint`: joints as measured and as a camera saw them. */
import * as joint from "../../../joint/index.ts";
import { LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const resistance = { symbol: "R_j", min: 0 } as const;
const rise = { symbol: "\\Delta T", min: 0 } as const;
const current = { symbol: "I", above: 0 } as const;
const loadFraction = { symbol: "x", is: "ratio", above: 0, max: 2 } as const;
const exponent = (symbol: string) => ({ symbol, is: "number", min: 1, max: 2 }) as const;

export const measuredEntries = (): readonly Entry[] =>
  describeRoom(
    "joint",
    {
      jointPower: joint.jointPower,
      measuredJoint: joint.measuredJoint,
      judgeJoint: joint.judgeJoint,
      riseAtCurrent: joint.riseAtCurrent,
      riseAtFullLoad: joint.riseAtFullLoad,
      compareRises: joint.compareRises,
      scanSeverity: joint.scanSeverity,
    },
    {
      jointPower: {
        kind: "physics",
        tex: "P = I^2 R_j",
        inputs: { current: { symbol: "I", min: 0 }, resistance },
        output: { symbol: "P" },
      },
      measuredJoint: {
        kind: "physics",
        tex: "R_j = \\frac{V}{I} - R_b, \\quad P = I^2 R_j, \\quad U_R = \\frac{V + U_V}{I - U_I} - \\frac{V}{I}, \\quad V = \\frac{V_+ - V_-}{2}, \\quad V_\\mathrm{th} = \\frac{V_+ + V_-}{2}",
        inputs: {
          drop: { symbol: "V_+", min: 0 },
          current,
          dropHalfWidth: { symbol: "U_V", min: 0 },
          currentHalfWidth: { symbol: "U_I", min: 0 },
          // No default: left out, the result is the joint with its bar, and a warning says so.
          barResistance: { symbol: "R_b", min: 0 },
          // No default: left out, the drop is taken as it was read.
          reversedDrop: { symbol: "V_-", max: 0 },
        },
        output: {
          fields: {
            resistance: { symbol: "R_j" },
            halfWidth: { symbol: "U_R" },
            grossResistance: { symbol: "V/I" },
            power: { symbol: "P" },
            thermalEmf: { symbol: "V_\\mathrm{th}" },
          },
        },
        cautions: [LIVE_WORK],
      },
      judgeJoint: {
        kind: "judgement",
        tex: "q = \\frac{R_j}{R_{\\min}}, \\quad q + U_q = \\frac{R_j + U_R}{R_{\\min} - U_{\\min}}",
        text: "ratio = resistance/lowest similar resistance, with the worst case of both half-widths, held against the rule's limit",
        inputs: {
          resistance,
          halfWidth: { symbol: "U_R", min: 0 },
          similar: { least: 1, each: { symbol: "R_i", min: 0 } },
          similarHalfWidth: { symbol: "U_{\\min}", min: 0 },
          rule: { fields: { limit: { symbol: "q_{\\max}", is: "ratio", min: 1 } } },
        },
        output: { fields: { ratio: { symbol: "q", is: "ratio" }, lowest: { symbol: "R_{\\min}" } } },
      },
      riseAtCurrent: {
        kind: "physics",
        tex: "\\Delta T_2 = \\Delta T_1 \\left(\\frac{I_2}{I_1}\\right)^n",
        inputs: {
          rise: { symbol: "\\Delta T_1", min: 0 },
          current: { symbol: "I_1", above: 0 },
          otherCurrent: { symbol: "I_2", above: 0 },
          exponent: exponent("n"),
        },
        output: { symbol: "\\Delta T_2" },
        cautions: [LIVE_WORK],
      },
      riseAtFullLoad: {
        kind: "physics",
        tex: "\\Delta T_\\mathrm{full} = \\frac{\\Delta T}{x^n}, \\quad n_1 \\le n \\le n_2",
        inputs: {
          rise,
          loadFraction,
          exponentLow: { ...exponent("n_1"), default: 1.6 },
          exponentHigh: { ...exponent("n_2"), default: 2 },
        },
        output: {
          fields: {
            low: { symbol: "\\Delta T_\\mathrm{low}" },
            copperBar: { symbol: "\\Delta T_{1.83}" },
            high: { symbol: "\\Delta T_\\mathrm{high}" },
          },
        },
        cautions: [LIVE_WORK],
      },
      compareRises: {
        kind: "judgement",
        tex: "\\Delta T_k(I_0) = \\Delta T_k \\left(\\frac{I_0}{I_k}\\right)^n, \\quad 1.6 \\le n \\le 2",
        text: "both rises at one current: rise × (referenceCurrent/current)^n for n from 1.6 to 2; the joint whose whole band lies higher is worse",
        inputs: {
          first: {},
          second: {},
          referenceCurrent: { symbol: "I_0", above: 0 },
          fullLoadCurrent: { symbol: "I_\\mathrm{full}", above: 0 },
        },
      },
      scanSeverity: {
        kind: "judgement",
        method:
          "the row of the scale on which both ends of the rise fall, as measured or referred to full load by rise/loadFraction^n for n from 1.6 to 2",
        inputs: {
          rise,
          riseHalfWidth: { symbol: "U", min: 0 },
          comparison: {},
          loadFraction,
          load: {},
          scale: {},
          emissivity: { symbol: "\\varepsilon", is: "ratio", min: 0, max: 1 },
        },
        output: {
          fields: {
            level: { symbol: "k", is: "count" },
            atLeast: { symbol: "k_{\\min}", is: "count" },
          },
        },
      },
    },
  );

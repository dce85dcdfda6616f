/** Entries of the room `bench`: what a reading is worth, and from readings to resistances. */
import {
  correctedReading,
  deltaFromLineReadings,
  fitTerminalReadings,
  readingWorth,
} from "../../../bench/index.ts";
import { DEAD_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const side = (at: string) =>
  ({
    fields: {
      resistance: { symbol: `R_{${at}}` },
      standardUncertainty: { symbol: `u_{${at}}` },
      atLeast: { symbol: `R_{${at},\\min}` },
    },
  }) as const;

const fitted = {
  fields: {
    resistance: { symbol: "R_b" },
    standardUncertainty: { symbol: "u_b" },
    atLeast: { symbol: "R_{b,\\min}" },
  },
} as const;

export const readingsEntries = (): readonly Entry[] =>
  describeRoom(
    "bench",
    { readingWorth, correctedReading, deltaFromLineReadings, fitTerminalReadings },
    {
      readingWorth: {
        kind: "physics",
        tex: "a = \\max\\left(p\\,|x| + n d,\\; \\frac{d}{2}\\right), \\quad u = \\frac{a}{\\sqrt{3}}",
        inputs: {
          reading: { symbol: "x", is: "number" },
          resolution: { symbol: "d", is: "number", above: 0 },
          accuracy: {},
        },
        output: {
          fields: {
            limit: { symbol: "a", is: "number" },
            standardUncertainty: { symbol: "u", is: "number" },
          },
        },
      },
      correctedReading: {
        kind: "physics",
        tex: "R = R_x - R_0, \\quad a = a(R_x) + a(R_0), \\quad u = \\sqrt{u(R_x)^2 + u(R_0)^2}",
        inputs: {
          reading: { symbol: "R_x", min: 0 },
          leads: { symbol: "R_0", min: 0 },
          resolution: { symbol: "d", above: 0 },
          accuracy: {},
        },
        output: {
          fields: {
            resistance: { symbol: "R" },
            limit: { symbol: "a" },
            standardUncertainty: { symbol: "u" },
          },
        },
        cautions: [DEAD_WORK],
      },
      deltaFromLineReadings: {
        kind: "physics",
        tex: "s_1 = \\frac{y_{12} + y_{31} - y_{23}}{2}, \\quad s_2 = \\frac{y_{12} + y_{23} - y_{31}}{2}, \\quad s_3 = \\frac{y_{23} + y_{31} - y_{12}}{2}, \\quad R_{12} = \\frac{s_1 s_2 + s_2 s_3 + s_3 s_1}{s_3} \\text{ and cyclic}",
        text: "s1 = (y12 + y31 − y23)/2 and cyclic; R12 = (s1·s2 + s2·s3 + s3·s1)/s3 and cyclic",
        inputs: {
          y12: { symbol: "y_{12}", min: 0 },
          y23: { symbol: "y_{23}", min: 0 },
          y31: { symbol: "y_{31}", min: 0 },
          standardUncertainty: { symbol: "u", min: 0 },
        },
        output: { fields: { r12: side("12"), r23: side("23"), r31: side("31") } },
        cautions: [DEAD_WORK],
      },
      fitTerminalReadings: {
        kind: "physics",
        tex: "\\min_{R_b, R_0} \\chi^2 = \\sum_i \\left(\\frac{y_i - R_{\\mathrm{net},i}(R_b) - R_0}{u_i}\\right)^2",
        text: "least Σ ((reading − resistance of the network between its probes − leads) / standard uncertainty)²",
        inputs: {
          network: {},
          readings: { least: 1 },
          leads: {
            fields: {
              shorted: { symbol: "R_0", min: 0 },
              standardUncertainty: { symbol: "u_0", above: 0 },
            },
          },
          unknown: {},
          significance: { symbol: "\\alpha", is: "ratio", min: 0, max: 1, default: 0.01 },
        },
        output: {
          fields: {
            branches: { each: fitted },
            leads: {
              fields: { resistance: { symbol: "R_0" }, standardUncertainty: { symbol: "u_0" } },
            },
            chiSquare: { symbol: "\\chi^2", is: "number" },
            degreesOfFreedom: { symbol: "\\nu", is: "count" },
            pValue: { symbol: "p", is: "ratio" },
          },
        },
        cautions: [DEAD_WORK],
      },
    },
  );

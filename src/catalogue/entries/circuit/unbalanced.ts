/** Entries of the room `circuit`: the neutral of a star under firing, unbalance by each definition, branches from line currents. */
import {
  branchesFromLineCurrents,
  neutralCurrentFired,
  unbalanceByDefinition,
} from "../../../circuit/index.ts";
import { LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const volts = (symbol: string) => ({ symbol, above: 0 }) as const;
const amps = (symbol: string) => ({ symbol, min: 0 }) as const;
const magnitude = (symbol: string) => ({ symbol, is: "number", min: 0 }) as const;

export const unbalancedEntries = (): readonly Entry[] =>
  describeRoom(
    "circuit",
    { branchesFromLineCurrents, neutralCurrentFired, unbalanceByDefinition },
    {
      branchesFromLineCurrents: {
        kind: "physics",
        tex: "G_{12} = \\frac{I_1^2 + I_2^2 - I_3^2 + \\left(V_{23}^2 + V_{31}^2 - V_{12}^2\\right) A}{2P}, \\quad R_1 = \\frac{G_{23}}{A}, \\quad A = \\frac{\\Delta(I_1, I_2, I_3)}{\\Delta(V_{12}, V_{23}, V_{31})}, \\quad 2P^2 = \\sum I_1^2 \\left(V_{12}^2 + V_{31}^2 - V_{23}^2\\right) + 16 \\, \\Delta_V \\Delta_I",
        text: "G12 = (I1² + I2² − I3² + (V23² + V31² − V12²)·A)/(2·P), R1 = G23/A; A = area of the triangle of currents over that of the voltages, 2·P² = ΣI1²·(V12² + V31² − V23²) + 16 times the product of the two areas",
        inputs: {
          connection: {},
          v12: volts("V_{12}"),
          v23: volts("V_{23}"),
          v31: volts("V_{31}"),
          l1: amps("I_1"),
          l2: amps("I_2"),
          l3: amps("I_3"),
          accuracy: { symbol: "u", is: "ratio", min: 0, max: 0.2, default: 0 },
        },
        output: {
          fields: {
            power: { symbol: "P" },
            branches: {
              each: {
                fields: {
                  resistance: { symbol: "R" },
                  low: { symbol: "R_\\mathrm{low}" },
                  high: { symbol: "R_\\mathrm{high}" },
                },
              },
            },
          },
        },
        cautions: [LIVE_WORK],
      },
      neutralCurrentFired: {
        kind: "physics",
        tex: "I_N = \\frac{V}{R} \\sqrt{\\frac{3}{\\pi} S}, \\quad S = \\begin{cases} F(\\alpha) & \\alpha < 60° \\\\ F(\\alpha + 60°) - F(120°) + F(60°) - F(\\alpha - 60°) & 60° \\le \\alpha < 120° \\\\ \\pi - F(\\alpha) & 120° \\le \\alpha \\le 180° \\end{cases}, \\quad F(x) = x - \\frac{\\sin 2x}{2}, \\quad I = \\frac{V}{R} \\sqrt{\\frac{\\pi - F(\\alpha)}{\\pi}}",
        text: "neutral = V/R·√(3/π·S); S = F(α) below 60°, F(α + 60°) − F(120°) + F(60°) − F(α − 60°) below 120°, π − F(α) to 180°, with F(x) = x − sin(2x)/2; line = V/R·√(1 − F(α)/π)",
        inputs: {
          branchVoltage: { symbol: "V", above: 0 },
          branchResistance: { symbol: "R", above: 0 },
          firingDegrees: { symbol: "\\alpha", is: "degrees", min: 0, max: 180 },
        },
        output: {
          fields: {
            neutralCurrent: { symbol: "I_N" },
            lineCurrent: { symbol: "I" },
            ratio: { symbol: "I_N/I", is: "ratio" },
            ratioToFull: { symbol: "I_N/I_0", is: "ratio" },
          },
        },
        cautions: [LIVE_WORK],
      },
      unbalanceByDefinition: {
        kind: "physics",
        tex: "u_\\mathrm{dev} = \\frac{\\max_i |X_i - \\bar X|}{\\bar X}, \\quad u_- = \\sqrt{\\frac{1-s}{1+s}}, \\quad s = \\sqrt{3 - 6\\beta}, \\quad \\beta = \\frac{\\sum X_i^4}{\\left(\\sum X_i^2\\right)^2}, \\quad u_\\mathrm{spread} = \\frac{\\max_i X_i - \\min_i X_i}{\\bar X}",
        text: "largest deviation from the mean over the mean; √((1 − s)/(1 + s)) with s = √(3 − 6β), β = ΣX⁴/(ΣX²)²; (largest − smallest) over the mean",
        inputs: {
          l1: magnitude("X_1"),
          l2: magnitude("X_2"),
          l3: magnitude("X_3"),
          measured: {},
        },
        output: { each: { fields: { value: { symbol: "u", is: "ratio" } } } },
      },
    },
  );

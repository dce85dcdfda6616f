/** Entries of the room `process`: what work and steel take up, and the power of an oven by the short method. */
import {
  chargeHeat,
  chargePower,
  dryingPower,
  meanLossShare,
  ovenSizing,
  steelHeatContent,
  steelSpecificHeat,
  throughputPower,
} from "../../../process/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

/** Nothing is colder. */
const min = -273.15;
const from = { symbol: "\\vartheta_1", min } as const;
const to = { symbol: "\\vartheta_2", min } as const;
const specificHeat = { symbol: "c", above: 0 } as const;

export const chargeEntries = (): readonly Entry[] =>
  describeRoom(
    "process",
    {
      meanLossShare,
      ovenSizing,
      chargeHeat,
      chargePower,
      throughputPower,
      dryingPower,
      steelSpecificHeat,
      steelHeatContent,
    },
    {
      meanLossShare: {
        kind: "physics",
        tex: "s = \\frac{1}{r} + \\frac{1}{\\ln(1 - r)}",
        inputs: { lossShare: { symbol: "r", is: "ratio", min: 0, below: 1 } },
        output: { symbol: "s", is: "ratio" },
      },
      ovenSizing: {
        kind: "physics",
        tex: "P_1 = \\left(\\frac{Q}{t} + s L\\right)(1 + m), \\quad P_2 = (W + L)(1 + m), \\quad P = \\max(P_1, P_2), \\quad s = \\tfrac{2}{3} \\text{ or } \\tfrac{1}{2}",
        inputs: {
          heat: { symbol: "Q", above: 0 },
          time: { symbol: "t", above: 0 },
          loss: { symbol: "L", min: 0 },
          lossRule: {},
          margin: { symbol: "m", is: "ratio", min: 0 },
          throughput: { symbol: "W", min: 0, default: 0 },
        },
        output: {
          fields: {
            startUp: { symbol: "P_1" },
            operating: { symbol: "P_2" },
            connected: { symbol: "P" },
            lossShare: { symbol: "s", is: "ratio" },
            margin: { symbol: "m", is: "ratio" },
          },
        },
      },
      chargeHeat: {
        kind: "physics",
        tex: "Q = m\\,c\\,(\\vartheta_2 - \\vartheta_1)",
        text: "heat = mass × specificHeat × (to − from)",
        inputs: { mass: { symbol: "m", above: 0 }, specificHeat, from, to },
        output: { symbol: "Q" },
      },
      chargePower: {
        kind: "physics",
        tex: "P = \\frac{Q}{t\\,\\eta}",
        text: "power = heat / (time × efficiency)",
        inputs: {
          heat: { symbol: "Q", above: 0 },
          time: { symbol: "t", above: 0 },
          efficiency: { symbol: "\\eta", is: "ratio", above: 0, max: 1, default: 1 },
        },
        output: { symbol: "P" },
      },
      throughputPower: {
        kind: "physics",
        tex: "P = \\dot m\\,c\\,(\\vartheta_2 - \\vartheta_1)",
        text: "power = massFlow × specificHeat × (to − from)",
        inputs: { massFlow: { symbol: "\\dot m", above: 0 }, specificHeat, from, to },
        output: { symbol: "P" },
      },
      dryingPower: {
        kind: "physics",
        tex: "P = \\dot m\\,(2501 + 1.86\\,\\vartheta_v - 4.186\\,\\vartheta_w) \\cdot 10^3",
        text: "power = waterFlow × (2501 + 1.86 × vapor − 4.186 × water) × 1000, temperatures in °C",
        inputs: {
          waterFlow: { symbol: "\\dot m", above: 0 },
          water: { symbol: "\\vartheta_w", min: 0, max: 100 },
          vapor: { symbol: "\\vartheta_v", min: 0, max: 600 },
        },
        output: { fields: { power: { symbol: "P" }, heatPerMass: { symbol: "h" } } },
      },
      steelSpecificHeat: {
        kind: "physics",
        tex: "c = \\begin{cases} 425 + 0.773\\,\\vartheta - 1.69 \\cdot 10^{-3}\\,\\vartheta^2 + 2.22 \\cdot 10^{-6}\\,\\vartheta^3 & \\vartheta < 600 \\\\ 666 + \\frac{13002}{738 - \\vartheta} & 600 \\le \\vartheta < 735 \\\\ 545 + \\frac{17820}{\\vartheta - 731} & 735 \\le \\vartheta < 900 \\\\ 650 & 900 \\le \\vartheta \\le 1200 \\end{cases}",
        text: "425 + 0.773 T − 1.69e-3 T² + 2.22e-6 T³ below 600 °C; 666 + 13002/(738 − T) below 735 °C; 545 + 17820/(T − 731) below 900 °C; 650 J/(kg·K) to 1200 °C",
        inputs: { temperature: { symbol: "\\vartheta" }, beyondTable: { default: "refuse" } },
        output: { symbol: "c" },
      },
      steelHeatContent: {
        kind: "physics",
        tex: "\\Delta h = \\int_{\\vartheta_1}^{\\vartheta_2} c(\\vartheta)\\,d\\vartheta",
        text: "Δh = ∫ c dϑ from `from` to `to`, with c of steelSpecificHeat",
        inputs: {
          from: { symbol: "\\vartheta_1" },
          to: { symbol: "\\vartheta_2" },
          beyondTable: { default: "refuse" },
        },
        output: { symbol: "\\Delta h" },
      },
    },
  );

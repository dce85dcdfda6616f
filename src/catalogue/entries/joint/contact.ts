/** Entries of the room `joint`: where two metals touch, and what the millivolts across them say. */
import * as joint from "../../../joint/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const resistivity = { symbol: "\\rho", above: 0 } as const;
const hardness = { symbol: "H", above: 0 } as const;
const spotRadius = { symbol: "a", above: 0 } as const;
const bulk = { symbol: "\\vartheta_b", min: -273.15, max: 1500 } as const;
const spot = { symbol: "\\vartheta_s" } as const;
const SPOTS =
  "T_s^2 = T_b^2 + \\frac{V^2}{4 L}, \\quad L = 2.44 \\cdot 10^{-8}\\,\\mathrm{V^2/K^2}, \\quad T = \\vartheta + 273.15";

export const contactEntries = (): readonly Entry[] =>
  describeRoom(
    "joint",
    {
      constrictionResistance: joint.constrictionResistance,
      latticeResistance: joint.latticeResistance,
      cleanContactResistance: joint.cleanContactResistance,
      roughPlaneContactResistance: joint.roughPlaneContactResistance,
      filmedContactResistance: joint.filmedContactResistance,
      contactSpotTemperature: joint.contactSpotTemperature,
      contactVoltageAt: joint.contactVoltageAt,
      contactVoltageScreen: joint.contactVoltageScreen,
      dropTrend: joint.dropTrend,
    },
    {
      constrictionResistance: {
        kind: "physics",
        tex: "R = \\frac{\\rho_1 + \\rho_2}{4 n a}",
        inputs: {
          resistivity: { symbol: "\\rho_1", above: 0 },
          spotRadius,
          otherResistivity: { symbol: "\\rho_2", above: 0 },
          spots: { symbol: "n", is: "count", min: 1, max: 1_000_000, default: 1 },
        },
        output: { symbol: "R" },
      },
      latticeResistance: {
        kind: "physics",
        tex: "R = \\frac{\\rho}{2 N a} + \\begin{cases} \\frac{\\rho}{\\pi N^2} \\sum_i \\sum_{j \\ne i} \\frac{1}{s_{ij}} & \\text{greenwood} \\\\ \\frac{3\\pi}{32} \\frac{\\rho}{N^2} \\sum_i \\sum_{j \\ne i} \\frac{1}{s_{ij}} & \\text{holm-interaction} \\\\ \\frac{\\rho}{2\\alpha}, \\; \\pi\\alpha^2 = N s^2 & \\text{holm-radius} \\end{cases}, \\quad N = m^2",
        text: "R = ρ/(2Na) + ρ/(πN²)·ΣΣ 1/s (greenwood); with 3π/32 for 1/π (holm-interaction); R = ρ/(2Na) + ρ/(2α) (holm-radius); N = spotsPerSide²",
        inputs: {
          resistivity,
          spotsPerSide: { symbol: "m", is: "count", min: 1, max: 100 },
          pitch: { symbol: "s", above: 0 },
          spotRadius,
          method: {},
        },
        output: { symbol: "R" },
      },
      cleanContactResistance: {
        kind: "physics",
        tex: "R = \\frac{\\rho}{2} \\sqrt{\\frac{\\pi H}{F}}",
        inputs: { resistivity, hardness, force: { symbol: "F", above: 0 } },
        output: { symbol: "R" },
      },
      roughPlaneContactResistance: {
        kind: "physics",
        tex: "Y = \\frac{1}{1.25\\,\\sigma \\frac{m}{\\sigma_r} \\left(\\frac{p}{H}\\right)^{0.95}}",
        inputs: {
          conductivity: { symbol: "\\sigma", above: 0 },
          slope: { symbol: "m", is: "ratio", above: 0 },
          roughness: { symbol: "\\sigma_r", above: 0 },
          pressure: { symbol: "p", above: 0 },
          hardness,
        },
        output: { symbol: "Y" },
      },
      filmedContactResistance: {
        kind: "physics",
        tex: "R = R_c + \\frac{\\sigma_f}{A}",
        inputs: {
          constriction: { symbol: "R_c", min: 0 },
          film: { symbol: "\\sigma_f", min: 0 },
          area: { symbol: "A", above: 0 },
        },
        output: { symbol: "R" },
      },
      contactSpotTemperature: {
        kind: "physics",
        tex: SPOTS,
        inputs: { voltage: { symbol: "V", min: 0 }, bulk },
        output: spot,
      },
      contactVoltageAt: {
        kind: "physics",
        tex: "V = \\sqrt{4 L \\left(T_s^2 - T_b^2\\right)}, \\quad L = 2.44 \\cdot 10^{-8}\\,\\mathrm{V^2/K^2}, \\quad T = \\vartheta + 273.15",
        inputs: { spot: { symbol: "\\vartheta_s", max: 4000 }, bulk },
        output: { symbol: "V" },
      },
      contactVoltageScreen: {
        kind: "judgement",
        tex: `${SPOTS}, \\quad V = \\hat V \\pm 0.03\\,\\mathrm{V}, \\quad \\hat V = \\sqrt{2}\\,V_\\mathrm{rms}`,
        text: "T² = bulk² + V²/(4·2.44e-8), kelvins, at the peak ± 0.03 V; the peak is √2 times an r.m.s. reading",
        inputs: { voltage: { symbol: "V", min: 0 }, reading: {}, bulk, metal: {} },
        output: {
          fields: {
            spot,
            excess: { symbol: "\\Delta T" },
            peak: { symbol: "\\hat V" },
            softeningVoltage: { symbol: "V_\\mathrm{soft}" },
            meltingVoltage: { symbol: "V_\\mathrm{melt}" },
          },
        },
      },
      dropTrend: {
        kind: "judgement",
        tex: "\\Delta V = V - V_0",
        text: "growth = drop − asLeftDrop, held against 10 mV and 30 mV",
        inputs: {
          drop: { symbol: "V", min: 0 },
          asLeftDrop: { symbol: "V_0", min: 0 },
          halfWidth: { symbol: "U", min: 0 },
        },
        output: { fields: { growth: { symbol: "\\Delta V" } } },
      },
    },
  );

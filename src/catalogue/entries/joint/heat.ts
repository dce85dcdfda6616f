/** Entries of the room `joint`: heat that bar and joint give off, and how hot a current makes them. */
import * as joint from "../../../joint/index.ts";
import { LIVE_WORK, NO_AMPACITY } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const air = { symbol: "\\vartheta_a", min: -50, max: 500 } as const;
const current = { symbol: "I", above: 0 } as const;
const resistivity20 = { symbol: "\\rho_{20}", above: 0 } as const;
const thermalResistance = { symbol: "R_\\mathrm{th}", above: 0 } as const;
const uncertainty = { symbol: "u", is: "ratio", min: 0, max: 0.9, default: 0.3 } as const;
const filmCoefficient = { symbol: "h" } as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;

const balance = {
  fields: {
    current: { symbol: "I" },
    temperature: { symbol: "\\vartheta" },
    convection: { symbol: "\\Phi_c'" },
    radiation: { symbol: "\\Phi_r'" },
    filmCoefficient,
    resistancePerLength: { symbol: "R'" },
  },
} as const;
const BAR_BALANCE =
  "I = \\sqrt{\\frac{\\Phi_c' + \\Phi_r'}{R'}}, \\quad \\Phi_c' = h\\,2(w+b)\\,(\\vartheta - \\vartheta_a), \\quad \\Phi_r' = \\varepsilon \\sigma\\,2(w+b) \\left(T^4 - T_a^4\\right), \\quad R' = \\frac{s\\,\\rho_{20} \\left[1 + \\alpha_{20} (\\vartheta - 20)\\right]}{w b}";

export const heatEntries = (): readonly Entry[] =>
  describeRoom(
    "joint",
    {
      finSpreadLength: joint.finSpreadLength,
      jointThermalResistance: joint.jointThermalResistance,
      resistanceFromRise: joint.resistanceFromRise,
      plateFilmCoefficient: joint.plateFilmCoefficient,
      barAmpacity: joint.barAmpacity,
      barTemperature: joint.barTemperature,
      jumperProfile: joint.jumperProfile,
      profileAsSeen: joint.profileAsSeen,
      jointBalance: joint.jointBalance,
      barCriticalCurrent: joint.barCriticalCurrent,
    },
    {
      finSpreadLength: {
        kind: "physics",
        tex: "\\frac{1}{m} = \\sqrt{\\frac{k A}{h P}}",
        inputs: {
          section: { symbol: "A", above: 0 },
          perimeter: { symbol: "P", above: 0 },
          conductivity: { symbol: "k", above: 0 },
          filmCoefficient: { symbol: "h", above: 0 },
        },
        output: { symbol: "1/m" },
      },
      jointThermalResistance: {
        kind: "physics",
        tex: "R_\\mathrm{th} = \\frac{1}{2 \\sqrt{h P k A} \\tanh(m l)}, \\quad m = \\sqrt{\\frac{h P}{k A}}",
        inputs: { bar: {}, arm: { symbol: "l", above: 0 } },
        output: { symbol: "R_\\mathrm{th}" },
      },
      resistanceFromRise: {
        kind: "physics",
        tex: "R_j = \\frac{\\Delta T}{R_\\mathrm{th} I^2}, \\quad R_\\mathrm{low} = \\frac{R_j}{1 + u}, \\quad R_\\mathrm{high} = \\frac{R_j}{1 - u}",
        inputs: { rise: { symbol: "\\Delta T", min: 0 }, thermalResistance, current, uncertainty },
        output: {
          fields: {
            resistance: { symbol: "R_j" },
            low: { symbol: "R_\\mathrm{low}" },
            high: { symbol: "R_\\mathrm{high}" },
          },
        },
        cautions: [LIVE_WORK],
      },
      plateFilmCoefficient: {
        kind: "physics",
        tex: "h = \\frac{\\mathrm{Nu}\\,\\lambda}{H}, \\quad \\mathrm{Nu} = 0.68 + \\frac{0.670\\,\\mathrm{Ra}^{1/4}}{\\left[1 + (0.492/\\mathrm{Pr})^{9/16}\\right]^{4/9}}, \\quad \\mathrm{Ra} = \\frac{g (\\vartheta_s - \\vartheta_a) H^3 \\mathrm{Pr}}{T_f \\nu^2}",
        inputs: {
          height: { symbol: "H", above: 0 },
          surface: { symbol: "\\vartheta_s", min: -50, max: 1000 },
          air,
        },
        output: filmCoefficient,
      },
      barAmpacity: {
        kind: "physics",
        tex: BAR_BALANCE,
        inputs: { bar: {}, temperature: { symbol: "\\vartheta", min: -50, max: 1000 } },
        output: balance,
      },
      barTemperature: {
        kind: "physics",
        method: "bracketed root: the temperature at which barAmpacity equals the current",
        inputs: { bar: {}, current },
        output: balance,
      },
      jumperProfile: {
        kind: "physics",
        tex: "k A\\,\\vartheta'' = h P (\\vartheta - \\vartheta_a) - \\frac{I^2 \\rho_{20}}{A} \\left[1 + \\alpha_{20} (\\vartheta - 20)\\right], \\quad k A \\left(\\vartheta'_{0-} - \\vartheta'_{0+}\\right) = P_j, \\quad k A\\,\\vartheta'_1 = G_1 (\\vartheta_1 - \\vartheta_{\\infty,1}), \\quad -k A\\,\\vartheta'_2 = G_2 (\\vartheta_2 - \\vartheta_{\\infty,2})",
        inputs: {
          bar: {},
          air,
          leftArm: { symbol: "l_1", above: 0 },
          rightArm: { symbol: "l_2", above: 0 },
          jointPower: { symbol: "P_j", min: 0 },
          left: {},
          right: {},
          current: { symbol: "I", min: 0, default: 0 },
          resistivity20,
          coefficient20: { symbol: "\\alpha_{20}", min: 0, default: 0 },
          points: { symbol: "n", is: "count", min: 3, max: 2001, default: 41 },
        },
        output: {
          fields: {
            joint: { symbol: "\\vartheta_j" },
            leftEnd: { symbol: "\\vartheta_1" },
            rightEnd: { symbol: "\\vartheta_2" },
            barPower: { symbol: "P_b" },
            surfaceLoss: { symbol: "\\Phi_a" },
            leftLoss: { symbol: "\\Phi_1" },
            rightLoss: { symbol: "\\Phi_2" },
          },
        },
      },
      profileAsSeen: {
        kind: "transform",
        method: "mean of the profile's points under the spot, for every point whose spot stays on the bar",
        inputs: { profile: { least: 3 }, spot: { symbol: "d", min: 0 } },
        cautions: [LIVE_WORK],
      },
      jointBalance: {
        kind: "physics",
        tex: "g = I^2 R_j \\alpha R_\\mathrm{th}, \\quad \\Delta T = \\frac{I^2 R_j R_\\mathrm{th}}{1 - g}, \\quad P = \\frac{\\Delta T}{R_\\mathrm{th}}, \\quad I_\\mathrm{run} = \\frac{1}{\\sqrt{R_j \\alpha R_\\mathrm{th}}}",
        inputs: {
          current,
          resistance: { symbol: "R_j", above: 0 },
          coefficient: { symbol: "\\alpha", min: 0 },
          thermalResistance,
          uncertainty,
        },
        output: {
          fields: {
            loopGain: ratio("g"),
            rise: { symbol: "\\Delta T" },
            riseLow: { symbol: "\\Delta T_\\mathrm{low}" },
            riseHigh: { symbol: "\\Delta T_\\mathrm{high}" },
            power: { symbol: "P" },
            runawayCurrent: { symbol: "I_\\mathrm{run}" },
            margin: ratio("I_\\mathrm{run}/I - 1"),
          },
        },
      },
      barCriticalCurrent: {
        kind: "physics",
        tex: "I_\\mathrm{crit} = \\sqrt{\\frac{h P A}{\\rho_{20} \\alpha_{20}}}",
        inputs: { bar: {}, resistivity20, coefficient20: { symbol: "\\alpha_{20}", above: 0 } },
        output: { symbol: "I_\\mathrm{crit}" },
        cautions: [NO_AMPACITY],
      },
    },
  );

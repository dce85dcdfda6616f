/** Entries of the room `circuit`: burst and phase-angle firing, stages, controllers with failed switches. */
import {
  burstDuty,
  burstDutyFromCycles,
  burstFiring,
  burstReadings,
  firingAngleForPower,
  firingAngleForVoltage,
  oneSidedFiring,
  phaseAngleFiring,
  singlePhasing,
  stageBanks,
  switchFault,
  threePhaseAngleFiring,
} from "../../../circuit/index.ts";
import { LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const voltage = { symbol: "V", above: 0 } as const;
const resistance = { symbol: "R", above: 0 } as const;
const duty = { symbol: "d", is: "ratio", min: 0, max: 1 } as const;
const fullPower = { symbol: "P_0", above: 0 } as const;
const firingDegrees = { symbol: "\\alpha", is: "degrees", min: 0, max: 180 } as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;

const clamps = {
  trueRmsClamp: { symbol: "I_\\mathrm{rms}" },
  averageClamp: { symbol: "I_\\mathrm{avg}" },
  powerRatio: ratio("p"),
} as const;

export const controlEntries = (): readonly Entry[] =>
  describeRoom(
    "circuit",
    {
      burstReadings,
      burstFiring,
      burstDutyFromCycles,
      burstDuty,
      singlePhasing,
      switchFault,
      phaseAngleFiring,
      firingAngleForPower,
      firingAngleForVoltage,
      oneSidedFiring,
      threePhaseAngleFiring,
      stageBanks,
    },
    {
      burstReadings: {
        kind: "physics",
        tex: "I_\\mathrm{rms} = I \\sqrt{d}, \\quad I_\\mathrm{avg} = I d, \\quad p = d",
        text: "true RMS = onCurrent × √duty, average-responding = onCurrent × duty",
        inputs: { onCurrent: { symbol: "I", above: 0 }, duty },
        output: { fields: clamps },
        cautions: [LIVE_WORK],
      },
      burstFiring: {
        kind: "physics",
        tex: "P = d \\frac{V^2}{R}, \\quad V_\\mathrm{rms} = V \\sqrt{d}",
        inputs: { voltage, resistance, duty },
        output: {
          fields: {
            ...clamps,
            rmsVoltage: { symbol: "V_\\mathrm{rms}" },
            meanPower: { symbol: "P" },
            fullPower: { symbol: "P_0" },
            onCurrent: { symbol: "I" },
            powerFactor: ratio("\\lambda"),
            thyristorMean: { symbol: "I_{T,\\mathrm{mean}}" },
            thyristorRms: { symbol: "I_{T,\\mathrm{rms}}" },
          },
        },
      },
      burstDutyFromCycles: {
        kind: "transform",
        tex: "d = \\frac{n_\\mathrm{on}}{n_\\mathrm{on} + n_\\mathrm{off}}",
        text: "duty = onCycles / (onCycles + offCycles)",
        inputs: {
          onCycles: { symbol: "n_\\mathrm{on}", is: "count", min: 0, max: 1_000_000 },
          offCycles: { symbol: "n_\\mathrm{off}", is: "count", min: 0, max: 1_000_000 },
        },
        output: ratio("d"),
      },
      burstDuty: {
        kind: "transform",
        tex: "d = \\frac{P}{P_0}",
        text: "duty = meanPower / fullPower",
        inputs: { meanPower: { symbol: "P", min: 0 }, fullPower },
        output: ratio("d"),
      },
      singlePhasing: {
        kind: "physics",
        method: "Kirchhoff's laws on a balanced module with one line, two lines or none conducting",
        inputs: {
          connection: {},
          neutral: {},
          conductingLines: { symbol: "n", is: "count", min: 0, max: 3 },
        },
        cautions: [LIVE_WORK],
      },
      switchFault: {
        kind: "physics",
        method:
          "Kirchhoff's laws on a balanced module with the lines that the failed switches leave conducting",
        inputs: {
          connection: {},
          neutral: {},
          switchedLines: { symbol: "n", is: "count" },
          failure: {},
          failed: { symbol: "k", is: "count", min: 0, max: 3 },
        },
        cautions: [LIVE_WORK],
      },
      phaseAngleFiring: {
        kind: "physics",
        tex: "V_\\mathrm{rms} = V \\sqrt{1 - \\frac{\\alpha}{\\pi} + \\frac{\\sin 2\\alpha}{2\\pi}}",
        inputs: { voltage, resistance, firingDegrees },
        output: {
          fields: {
            rmsVoltage: { symbol: "V_\\mathrm{rms}" },
            rmsCurrent: { symbol: "I_\\mathrm{rms}" },
            averageClamp: { symbol: "I_\\mathrm{avg}" },
            meanVoltage: { symbol: "V_\\mathrm{mean}" },
            power: { symbol: "P" },
            powerRatio: ratio("p"),
            powerFactor: ratio("\\lambda"),
            fundamental: { symbol: "I_1" },
            lagDegrees: { symbol: "\\varphi_1", is: "degrees" },
            distortion: ratio("\\mathrm{THD}"),
            thyristorMean: { symbol: "I_{T,\\mathrm{mean}}" },
            thyristorRms: { symbol: "I_{T,\\mathrm{rms}}" },
          },
        },
      },
      firingAngleForPower: {
        kind: "physics",
        tex: "1 - \\frac{\\alpha}{\\pi} + \\frac{\\sin 2\\alpha}{2\\pi} = \\frac{P}{P_0}",
        text: "1 − α/π + sin 2α/(2π) = power/fullPower",
        inputs: { power: { symbol: "P", min: 0 }, fullPower },
        output: { symbol: "\\alpha", is: "degrees" },
      },
      firingAngleForVoltage: {
        kind: "physics",
        tex: "1 - \\frac{\\alpha}{\\pi} + \\frac{\\sin 2\\alpha}{2\\pi} = \\left(\\frac{V_\\mathrm{rms}}{V}\\right)^2",
        text: "1 − α/π + sin 2α/(2π) = (rmsVoltage/voltage)²",
        inputs: { rmsVoltage: { symbol: "V_\\mathrm{rms}", min: 0 }, voltage },
        output: { symbol: "\\alpha", is: "degrees" },
      },
      oneSidedFiring: {
        kind: "physics",
        tex: "V_\\mathrm{rms}^2 = \\frac{V^2}{2} \\left(2 - \\frac{\\alpha}{\\pi} + \\frac{\\sin 2\\alpha}{2\\pi}\\right), \\quad V_\\mathrm{dc} = \\frac{\\sqrt{2}\\,V (1 - \\cos\\alpha)}{2\\pi}",
        inputs: { voltage, resistance, firingDegrees },
        output: {
          fields: {
            rmsVoltage: { symbol: "V_\\mathrm{rms}" },
            directVoltage: { symbol: "V_\\mathrm{dc}" },
            power: { symbol: "P" },
            powerFactor: ratio("\\lambda"),
          },
        },
      },
      threePhaseAngleFiring: {
        kind: "physics",
        tex: "\\frac{P}{P_0} = \\begin{cases} \\frac{6}{\\pi}\\left(\\frac{\\pi}{6} - \\frac{\\alpha}{4} + \\frac{\\sin 2\\alpha}{8}\\right) & \\alpha < 60° \\\\ \\frac{6}{\\pi}\\left(\\frac{\\pi}{12} + \\frac{3 \\sin 2\\alpha}{16} + \\frac{\\sqrt{3} \\cos 2\\alpha}{16}\\right) & 60° \\le \\alpha < 90° \\\\ \\frac{6}{\\pi}\\left(\\frac{5\\pi}{24} - \\frac{\\alpha}{4} + \\frac{\\sin 2\\alpha}{16} + \\frac{\\sqrt{3} \\cos 2\\alpha}{16}\\right) & 90° \\le \\alpha \\le 150° \\end{cases}",
        text: "below 60°: 6/π·(π/6 − α/4 + sin 2α/8); below 90°: 6/π·(π/12 + 3 sin 2α/16 + √3 cos 2α/16); to 150°: 6/π·(5π/24 − α/4 + sin 2α/16 + √3 cos 2α/16)",
        inputs: {
          lineVoltage: voltage,
          branchResistance: resistance,
          firingDegrees: { symbol: "\\alpha", is: "degrees", min: 0, max: 150 },
        },
        output: {
          fields: {
            branchVoltage: { symbol: "V_b" },
            lineCurrent: { symbol: "I" },
            power: { symbol: "P" },
            powerRatio: ratio("p"),
            powerFactor: ratio("\\lambda"),
          },
        },
      },
      stageBanks: {
        kind: "transform",
        inputs: { stages: {}, demand: { symbol: "P", min: 0 }, trimmed: {} },
        output: {
          fields: {
            trimDuty: ratio("d"),
            delivered: { symbol: "P_d" },
            shortfall: { symbol: "\\Delta P_-" },
            excess: { symbol: "\\Delta P_+" },
          },
        },
      },
    },
  );

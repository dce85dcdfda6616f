/** Entries of the room `wiring`: short circuits, earth faults, and the devices that must break them. */
import * as wiring from "../../../wiring/index.ts";
import { LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";
import * as run from "./run.ts";

const NAMES = run.NAMES;
const factor = { symbol: "c", is: "ratio", min: 0.8, max: 1.2, default: 1 } as const;
const halfWidth = (symbol: string) => ({ symbol: `u(${symbol})`, min: 0, default: 0 }) as const;

export const faultEntries = (): readonly Entry[] =>
  describeRoom(
    "wiring",
    {
      faultCurrent: wiring.faultCurrent,
      interruptingVerdict: wiring.interruptingVerdict,
      earthFaultLoop: wiring.earthFaultLoop,
      disconnectionTime: wiring.disconnectionTime,
      earthFaultVerdict: wiring.earthFaultVerdict,
    },
    {
      faultCurrent: {
        kind: "physics",
        tex: "I_k = \\frac{c\\,U}{\\sqrt{3}\\sqrt{R^2 + X^2}}, \\quad R = R_Q + R_T + \\frac{r l}{p}, \\quad X = X_Q + X_T + \\frac{x l}{p}, \\quad Z_T = f z \\frac{U_r^2}{S_r}, \\quad Z_Q = \\frac{U_r^2}{S_k}, \\quad I_{k2} = \\frac{\\sqrt{3}}{2} I_k",
        inputs: {
          lineVoltage: { symbol: "U", above: 0 },
          transformerRating: { symbol: "S_r", is: "number", unit: "VA", above: 0 },
          transformerImpedance: { symbol: "z", is: "ratio", min: 0.001, max: 0.5 },
          length: { symbol: "l", min: 0, default: 0 },
          resistancePerLength: { symbol: "r", min: 0 },
          reactancePerLength: { symbol: "x", min: 0, default: 0 },
          conductorsPerLine: run.PER_LINE,
          transformerResistance: { symbol: "z_R", is: "ratio", min: 0, max: 0.5, default: 0 },
          networkFaultPower: { symbol: "S_k", is: "number", unit: "VA", above: 0 },
          transformerVoltage: { symbol: "U_r", above: 0 },
          impedanceFactor: { symbol: "f", is: "ratio", min: 0.5, max: 1.5, default: 1 },
          voltageFactor: factor,
        },
        output: {
          fields: {
            threePhase: { symbol: "I_k" },
            lineToLine: { symbol: "I_{k2}" },
            atTransformer: { symbol: "I_{k,T}" },
            resistance: { symbol: "R" },
            reactance: { symbol: "X" },
          },
        },
      },
      interruptingVerdict: {
        kind: "judgement",
        tex: "I_{cu} \\ge I_k \\pm u(I_k), \\quad U_m \\ge U",
        text: "interrupting rating ≥ available current with its uncertainty, marked for at least the circuit's voltage",
        inputs: {
          edition: NAMES,
          availableCurrent: { symbol: "I_k", above: 0 },
          interruptingRating: { symbol: "I_{cu}", above: 0 },
          markedVoltage: { symbol: "U_m", above: 0 },
          circuitVoltage: { symbol: "U", above: 0 },
          halfWidth: halfWidth("I_k"),
        },
        output: { fields: { margin: { symbol: "I_{cu} - I_k" } } },
      },
      earthFaultLoop: {
        kind: "physics",
        tex: "Z_s = \\sqrt{R^2 + X^2}, \\quad R = R_e + l\\left(\\frac{r_1}{p} + \\frac{r_2}{q}\\right), \\quad X = X_e + l\\left(\\frac{x_1}{p} + \\frac{x_2}{q}\\right), \\quad I = \\frac{c\\,U_0}{Z_s}",
        inputs: {
          voltageToEarth: { symbol: "U_0", above: 0 },
          sourceResistance: { symbol: "R_e", min: 0 },
          length: { symbol: "l", min: 0 },
          lineResistancePerLength: { symbol: "r_1", min: 0 },
          protectiveResistancePerLength: { symbol: "r_2", min: 0 },
          sourceReactance: { symbol: "X_e", min: 0, default: 0 },
          lineReactancePerLength: { symbol: "x_1", min: 0, default: 0 },
          protectiveReactancePerLength: { symbol: "x_2", min: 0, default: 0 },
          conductorsPerLine: run.PER_LINE,
          protectiveConductors: { ...run.PER_LINE, symbol: "q" },
          voltageFactor: factor,
        },
        output: {
          fields: {
            impedance: { symbol: "Z_s" },
            current: { symbol: "I" },
            resistance: { symbol: "R" },
            reactance: { symbol: "X" },
          },
        },
        cautions: [LIVE_WORK],
      },
      disconnectionTime: {
        kind: "lookup",
        inputs: { system: NAMES, voltageToEarth: { symbol: "U_0", above: 0 }, circuit: NAMES },
        output: { fields: { value: { symbol: "t" } } },
      },
      earthFaultVerdict: {
        kind: "judgement",
        tex: "\\left(Z_s \\pm u(Z_s)\\right) I_a \\le c\\,U_0",
        text: "impedance with its uncertainty · tripping current ≤ voltage factor · voltage to earth",
        inputs: {
          impedance: { symbol: "Z_s", above: 0 },
          trippingCurrent: { symbol: "I_a", above: 0 },
          voltageToEarth: { symbol: "U_0", above: 0 },
          halfWidth: halfWidth("Z_s"),
          voltageFactor: factor,
        },
        output: {
          fields: { largestImpedance: { symbol: "c\\,U_0/I_a" }, margin: { symbol: "c\\,U_0/I_a - Z_s" } },
        },
        cautions: [LIVE_WORK],
      },
    },
  );

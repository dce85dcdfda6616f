/** Entries of the room `element`: voltage, current, resistance and power of one element, and groups of elements on one voltage. */
import * as element from "../../../element/index.ts";
import { LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const power = { symbol: "P", above: 0 } as const;
const powerOrNone = { symbol: "P", min: 0 } as const;
const voltage = { symbol: "V", above: 0 } as const;
const voltageOrNone = { symbol: "V", min: 0 } as const;
const current = { symbol: "I", above: 0 } as const;
const currentOrNone = { symbol: "I", min: 0 } as const;
const resistance = { symbol: "R", above: 0 } as const;
/** A short is refused where it lies on a voltage, as `short-circuit`; by itself 0 Ω is a value. */
const resistanceOrShort = { symbol: "R", min: 0 } as const;

const group = {
  fields: {
    resistance: { symbol: "R" },
    current: { symbol: "I" },
    power: { symbol: "P" },
    elements: {
      each: {
        fields: {
          resistance: { symbol: "R_i" },
          voltage: { symbol: "V_i" },
          current: { symbol: "I_i" },
          power: { symbol: "P_i" },
        },
      },
    },
  },
} as const;

export const oneEntries = (): readonly Entry[] =>
  describeRoom(
    "element",
    {
      operatingPoint: element.operatingPoint,
      powerFromVoltageAndCurrent: element.powerFromVoltageAndCurrent,
      powerFromVoltageAndResistance: element.powerFromVoltageAndResistance,
      powerFromCurrentAndResistance: element.powerFromCurrentAndResistance,
      currentFromPowerAndVoltage: element.currentFromPowerAndVoltage,
      currentFromPowerAndResistance: element.currentFromPowerAndResistance,
      currentFromVoltageAndResistance: element.currentFromVoltageAndResistance,
      resistanceFromVoltageAndCurrent: element.resistanceFromVoltageAndCurrent,
      resistanceFromVoltageAndPower: element.resistanceFromVoltageAndPower,
      resistanceFromPowerAndCurrent: element.resistanceFromPowerAndCurrent,
      voltageFromPowerAndCurrent: element.voltageFromPowerAndCurrent,
      voltageFromPowerAndResistance: element.voltageFromPowerAndResistance,
      voltageFromCurrentAndResistance: element.voltageFromCurrentAndResistance,
      groupResistance: element.groupResistance,
      seriesString: element.seriesString,
      parallelGroup: element.parallelGroup,
    },
    {
      operatingPoint: {
        kind: "physics",
        tex: "P = V I, \\quad V = I R",
        text: "P = V·I, V = I·R, from any two of the four",
        // Exactly two may be given, so the range of a third cannot be told apart from one too many.
        inputs: {
          voltage: voltageOrNone,
          current: { symbol: "I" },
          resistance: { symbol: "R" },
          power: powerOrNone,
        },
        output: {
          fields: {
            voltage: { symbol: "V" },
            current: { symbol: "I" },
            resistance: { symbol: "R" },
            power: { symbol: "P" },
          },
        },
        cautions: [LIVE_WORK],
      },
      powerFromVoltageAndCurrent: {
        kind: "physics",
        tex: "P = V I",
        inputs: { voltage: voltageOrNone, current: currentOrNone },
        output: { symbol: "P" },
        cautions: [LIVE_WORK],
      },
      powerFromVoltageAndResistance: {
        kind: "physics",
        tex: "P = \\frac{V^2}{R}",
        inputs: { voltage: voltageOrNone, resistance: resistanceOrShort },
        output: { symbol: "P" },
      },
      powerFromCurrentAndResistance: {
        kind: "physics",
        tex: "P = I^2 R",
        inputs: { current: currentOrNone, resistance: resistanceOrShort },
        output: { symbol: "P" },
      },
      currentFromPowerAndVoltage: {
        kind: "physics",
        tex: "I = \\frac{P}{V}",
        inputs: { power: powerOrNone, voltage },
        output: { symbol: "I" },
      },
      currentFromPowerAndResistance: {
        kind: "physics",
        tex: "I = \\sqrt{\\frac{P}{R}}",
        inputs: { power: powerOrNone, resistance },
        output: { symbol: "I" },
      },
      currentFromVoltageAndResistance: {
        kind: "physics",
        tex: "I = \\frac{V}{R}",
        inputs: { voltage: voltageOrNone, resistance: resistanceOrShort },
        output: { symbol: "I" },
      },
      resistanceFromVoltageAndCurrent: {
        kind: "physics",
        tex: "R = \\frac{V}{I}",
        inputs: { voltage, current },
        output: { symbol: "R" },
        cautions: [LIVE_WORK],
      },
      resistanceFromVoltageAndPower: {
        kind: "physics",
        tex: "R = \\frac{V^2}{P}",
        inputs: { voltage, power },
        output: { symbol: "R" },
      },
      resistanceFromPowerAndCurrent: {
        kind: "physics",
        tex: "R = \\frac{P}{I^2}",
        inputs: { power, current },
        output: { symbol: "R" },
      },
      voltageFromPowerAndCurrent: {
        kind: "physics",
        tex: "V = \\frac{P}{I}",
        inputs: { power: powerOrNone, current },
        output: { symbol: "V" },
      },
      voltageFromPowerAndResistance: {
        kind: "physics",
        tex: "V = \\sqrt{P R}",
        inputs: { power: powerOrNone, resistance },
        output: { symbol: "V" },
      },
      voltageFromCurrentAndResistance: {
        kind: "physics",
        tex: "V = I R",
        inputs: { current: currentOrNone, resistance: resistanceOrShort },
        output: { symbol: "V" },
      },
      groupResistance: {
        kind: "physics",
        tex: "R = \\frac{n_s}{n_p} R_1",
        inputs: {
          resistance: { symbol: "R_1", min: 0 },
          inSeries: { symbol: "n_s", is: "count", min: 1, max: 10_000 },
          inParallel: { symbol: "n_p", is: "count", min: 1, max: 10_000 },
        },
        output: { symbol: "R" },
      },
      seriesString: {
        kind: "physics",
        tex: "I = \\frac{V}{\\sum_i R_i}, \\quad V_i = I R_i, \\quad P_i = I^2 R_i",
        inputs: {
          voltage: voltageOrNone,
          resistances: { least: 1, most: 10_000, each: { symbol: "R_i", min: 0 } },
        },
        output: group,
      },
      parallelGroup: {
        kind: "physics",
        tex: "I_i = \\frac{V}{R_i}, \\quad P_i = \\frac{V^2}{R_i}, \\quad \\frac{1}{R} = \\sum_i \\frac{1}{R_i}",
        inputs: {
          voltage: voltageOrNone,
          resistances: { least: 1, most: 10_000, each: { symbol: "R_i", above: 0 } },
        },
        output: group,
      },
    },
  );

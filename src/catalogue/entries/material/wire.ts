/** Entries of the room `material`: round wire, gauges and sizes, resistance of a length. */
import {
  awgFromArea,
  awgFromDiameter,
  awgNumber,
  kcmilFromArea,
  lengthOfResistance,
  metricSizeFromArea,
  resistanceOfLength,
  resistancePerLength,
  roundWireArea,
  roundWireDiameter,
  swgFromDiameter,
  swgSize,
  wireSize,
} from "../../../material/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const diameter = { symbol: "d", above: 0 } as const;
const area = { symbol: "A", above: 0 } as const;
const perLength = { symbol: "R'", above: 0 } as const;
const size = { fields: { area: { symbol: "A" }, diameter: { symbol: "d" } } } as const;
/** The size found, and how far its diameter is from the one asked for. */
const chosen = {
  fields: {
    area: { symbol: "A_s" },
    diameter: { symbol: "d_s" },
    deviation: { symbol: "\\Delta", is: "ratio" },
  },
} as const;
const deviation = "\\Delta = \\frac{d_s}{d} - 1";
const deviationText = "deviation = diameter of the size / diameter asked for − 1";
const ofArea = `${deviation}, \\quad d = \\sqrt{\\frac{4 A}{\\pi}}`;

export const wireEntries = (): readonly Entry[] =>
  describeRoom(
    "material",
    {
      roundWireArea,
      roundWireDiameter,
      resistancePerLength,
      resistanceOfLength,
      lengthOfResistance,
      wireSize,
      awgNumber,
      awgFromDiameter,
      awgFromArea,
      kcmilFromArea,
      metricSizeFromArea,
      swgSize,
      swgFromDiameter,
    },
    {
      roundWireArea: {
        kind: "physics",
        tex: "A = \\frac{\\pi}{4} d^2",
        text: "A = π/4 × d²",
        inputs: { diameter },
        output: { symbol: "A" },
      },
      roundWireDiameter: {
        kind: "physics",
        tex: "d = \\sqrt{\\frac{4 A}{\\pi}}",
        text: "d = √(4 × A / π)",
        inputs: { area },
        output: { symbol: "d" },
      },
      resistancePerLength: {
        kind: "physics",
        tex: "R' = \\frac{\\rho}{A}",
        text: "R′ = ρ / A",
        inputs: { resistivity: { symbol: "\\rho", above: 0 }, area },
        output: { symbol: "R'" },
      },
      resistanceOfLength: {
        kind: "physics",
        tex: "R = R'\\,l",
        text: "R = R′ × l",
        inputs: { resistancePerLength: perLength, length: { symbol: "l", min: 0 } },
        output: { symbol: "R" },
      },
      lengthOfResistance: {
        kind: "physics",
        tex: "l = \\frac{R}{R'}",
        text: "l = R / R′",
        inputs: { resistance: { symbol: "R", min: 0 }, resistancePerLength: perLength },
        output: { symbol: "l" },
      },
      wireSize: { kind: "transform", inputs: { text: {} }, output: size },
      awgNumber: {
        kind: "transform",
        tex: "n = 36 - 39\\,\\frac{\\ln\\left(d / 0.005\\,\\mathrm{in}\\right)}{\\ln 92}",
        text: "n = 36 − 39 × ln(d / 0.005 in) / ln 92",
        inputs: { diameter },
        output: { symbol: "n", is: "number" },
      },
      awgFromDiameter: {
        kind: "lookup",
        tex: deviation,
        text: deviationText,
        inputs: { diameter, rounding: {} },
        output: chosen,
      },
      awgFromArea: {
        kind: "lookup",
        tex: ofArea,
        text: deviationText,
        inputs: { area, rounding: {} },
        output: chosen,
      },
      kcmilFromArea: {
        kind: "lookup",
        tex: ofArea,
        text: deviationText,
        inputs: { area, rounding: {} },
        output: chosen,
      },
      metricSizeFromArea: {
        kind: "lookup",
        tex: ofArea,
        text: deviationText,
        inputs: { area, rounding: {} },
        output: chosen,
      },
      swgSize: { kind: "lookup", inputs: { size: {} }, output: size },
      swgFromDiameter: {
        kind: "lookup",
        tex: deviation,
        text: deviationText,
        inputs: { diameter, rounding: {} },
        output: chosen,
      },
    },
  );

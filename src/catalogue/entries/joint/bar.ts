/** Entries of the room `joint`: bars as conductors, overlaps, stock for a new bar. */
import * as joint from "../../../joint/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const resistivity = { symbol: "\\rho", above: 0 } as const;
const resistivity20 = { symbol: "\\rho_{20}", above: 0 } as const;
const width = { symbol: "w", above: 0 } as const;
const thickness = { symbol: "b", above: 0 } as const;
const length = { symbol: "l", above: 0 } as const;
const overlap = { symbol: "l", above: 0 } as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const squares = { symbol: "n_\\square", is: "number" } as const;

export const barEntries = (): readonly Entry[] =>
  describeRoom(
    "joint",
    {
      barResistance: joint.barResistance,
      holeExcessSquares: joint.holeExcessSquares,
      netSection: joint.netSection,
      skinDepth: joint.skinDepth,
      equivalentBarLength: joint.equivalentBarLength,
      streamlineFactor: joint.streamlineFactor,
      stepExcessSquares: joint.stepExcessSquares,
      lapJointResistance: joint.lapJointResistance,
      publishedBarAmpacity: joint.publishedBarAmpacity,
      barBolting: joint.barBolting,
      compareStock: joint.compareStock,
      cutList: joint.cutList,
    },
    {
      barResistance: {
        kind: "physics",
        tex: "R = \\frac{\\rho_{20} \\left[1 + \\alpha_{20} (\\vartheta - 20)\\right]}{b} \\left(\\frac{l}{w} + \\sum n_\\square(d_i)\\right)",
        inputs: {
          resistivity20,
          coefficient20: { symbol: "\\alpha_{20}" },
          temperature: { symbol: "\\vartheta", min: -273.15, max: 2000 },
          length,
          width,
          thickness,
          holeDiameters: { each: { symbol: "d_i", min: 0 } },
        },
        output: { symbol: "R" },
      },
      holeExcessSquares: {
        kind: "physics",
        method:
          "a table of solutions of Laplace's equation, straight in (d/w)² between its rows; π·d²/(2·w²) for small holes",
        inputs: { holeDiameter: { symbol: "d", min: 0 }, width },
        output: squares,
      },
      netSection: {
        kind: "physics",
        tex: "A = (w - d)(b - t)",
        inputs: {
          width,
          thickness,
          holeDiameter: { symbol: "d", min: 0, default: 0 },
          pitDepth: { symbol: "t", min: 0, default: 0 },
        },
        output: { symbol: "A" },
      },
      skinDepth: {
        kind: "physics",
        tex: "\\delta = \\sqrt{\\frac{\\rho}{\\pi f \\mu_0}}, \\quad \\mu_0 = 4\\pi \\cdot 10^{-7}\\,\\mathrm{H/m}",
        inputs: { resistivity, frequency: { symbol: "f", above: 0 } },
        output: { symbol: "\\delta" },
      },
      equivalentBarLength: {
        kind: "physics",
        tex: "l = \\frac{R_j A}{\\rho}",
        inputs: { resistance: { symbol: "R_j", min: 0 }, resistivity, section: { symbol: "A", above: 0 } },
        output: { symbol: "l" },
      },
      streamlineFactor: {
        kind: "physics",
        method:
          "a table of solutions of Laplace's equation; 0.5 + 0.4997·thickness/overlap from 5 thicknesses of overlap on",
        inputs: { overlap, thickness },
        output: ratio("e"),
      },
      stepExcessSquares: {
        kind: "physics",
        tex: "n_\\square = \\frac{1}{\\pi} \\left[\\frac{a^2 + 1}{a} \\ln\\frac{1 + a}{1 - a} - 2 \\ln\\frac{4a}{1 - a^2}\\right]",
        inputs: { widthRatio: { symbol: "a", is: "ratio", above: 0, below: 1 } },
        output: squares,
      },
      lapJointResistance: {
        kind: "physics",
        tex: "R = \\frac{\\rho l}{2 w b} \\left[1 + \\frac{2\\lambda}{l} \\coth\\frac{l}{2\\lambda}\\right], \\quad \\lambda = \\sqrt{\\frac{Y b}{2\\rho}}",
        inputs: {
          resistivity,
          overlap,
          width,
          thickness,
          specificContactResistance: { symbol: "Y", min: 0 },
        },
        output: { symbol: "R" },
      },
      publishedBarAmpacity: {
        kind: "lookup",
        inputs: { table: {}, width, thickness, column: {} },
        output: { fields: { current: { symbol: "I" } } },
      },
      barBolting: {
        kind: "lookup",
        inputs: { width },
        output: { fields: { holeDiameter: { symbol: "d" } } },
      },
      compareStock: {
        kind: "physics",
        tex: "A = w b, \\quad A_n = (w - d)\\,b, \\quad U = 2(w + b)",
        text: "section = width·thickness, net section = (width − holeDiameter)·thickness, perimeter = 2·(width + thickness); ratios are new over old",
        inputs: { old: {}, stock: {}, holeDiameter: { symbol: "d", min: 0, default: 0 } },
        output: {
          fields: {
            oldSection: { symbol: "A_1" },
            newSection: { symbol: "A_2" },
            ratio: ratio("A_2/A_1"),
            oldNet: { symbol: "A_{n1}" },
            newNet: { symbol: "A_{n2}" },
            netRatio: ratio("A_{n2}/A_{n1}"),
            perimeterRatio: ratio("U_2/U_1"),
          },
        },
      },
      cutList: {
        kind: "physics",
        tex: "l = (n - 1)\\,s + 2 u, \\quad l_\\mathrm{stock} = N (l + c), \\quad m = N l w b\\,\\varrho",
        inputs: {
          studs: { symbol: "n", is: "count", min: 2, max: 100 },
          pitch: { symbol: "s", above: 0 },
          overhang: { symbol: "u", min: 0 },
          bars: { symbol: "N", is: "count", min: 1, max: 1000 },
          kerf: { symbol: "c", min: 0 },
          width,
          thickness,
          density: { symbol: "\\varrho", above: 0 },
        },
        output: {
          fields: { length: { symbol: "l" }, stock: { symbol: "l_\\mathrm{stock}" }, mass: { symbol: "m" } },
        },
      },
    },
  );

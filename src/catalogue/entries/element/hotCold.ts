/** Entries of the room `element`: hot and cold resistance, tolerances, and what an old or wrongly replaced element does. */
import * as element from "../../../element/index.ts";
import { DEAD_WORK, LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const power = { symbol: "P", above: 0 } as const;
const voltage = { symbol: "V", above: 0 } as const;
const resistance = { symbol: "R", above: 0 } as const;
const cold = { symbol: "R_{20}", above: 0 } as const;
const hot = { symbol: "R", above: 0 } as const;
const number = (symbol: string) => ({ symbol, is: "number", above: 0 }) as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const temperatureFactor = number("C_t");
const upperTolerance = { symbol: "t_u", is: "ratio", min: 0, max: 1 } as const;
const lowerTolerance = { symbol: "t_l", is: "ratio", min: 0, below: 1 } as const;

const tolerance = { fields: { upperTolerance: ratio("t_u"), lowerTolerance: ratio("t_l") } } as const;
const aged = {
  fields: {
    diameterLoss: ratio("x"),
    sectionLoss: ratio("1 - A/A_0"),
    resistanceRatio: ratio("R/R_0"),
    powerRatio: ratio("P/P_0"),
    surfaceLoadRatio: ratio("p/p_0"),
  },
} as const;
const AGED =
  "\\frac{R}{R_0} = \\frac{1}{(1 - x)^2}, \\quad \\frac{P}{P_0} = (1 - x)^2, \\quad \\frac{p}{p_0} = 1 - x";

export const hotColdEntries = (): readonly Entry[] =>
  describeRoom(
    "element",
    {
      hotResistance: element.hotResistance,
      coldResistance: element.coldResistance,
      coldTarget: element.coldTarget,
      coldStart: element.coldStart,
      coldInrushCurrent: element.coldInrushCurrent,
      toleranceBand: element.toleranceBand,
      tubularElementTolerance: element.tubularElementTolerance,
      wireTolerance: element.wireTolerance,
      swappedAlloyResistance: element.swappedAlloyResistance,
      shortedTurns: element.shortedTurns,
      ageingFromDiameter: element.ageingFromDiameter,
      ageingFromResistance: element.ageingFromResistance,
    },
    {
      hotResistance: {
        kind: "physics",
        tex: "R = R_{20} C_t",
        inputs: { coldResistance: cold, temperatureFactor },
        output: { symbol: "R" },
      },
      coldResistance: {
        kind: "physics",
        tex: "R_{20} = \\frac{R}{C_t}",
        inputs: { hotResistance: hot, temperatureFactor },
        output: { symbol: "R_{20}" },
        cautions: [DEAD_WORK],
      },
      coldTarget: {
        kind: "physics",
        tex: "R = \\frac{V^2}{P}, \\quad R_{20} = \\frac{R}{C_{t,1}}, \\quad R_\\mathrm{low} = \\frac{R\\,(1 - t_l)}{\\max_i C_{t,i}}, \\quad R_\\mathrm{high} = \\frac{R\\,(1 + t_u)}{\\min_i C_{t,i}}",
        inputs: {
          power,
          voltage,
          temperatureFactors: { least: 1, each: number("C_{t,i}") },
          upperTolerance,
          lowerTolerance,
        },
        output: {
          fields: {
            hotResistance: { symbol: "R" },
            coldResistance: { symbol: "R_{20}" },
            low: { symbol: "R_\\mathrm{low}" },
            high: { symbol: "R_\\mathrm{high}" },
          },
        },
        cautions: [DEAD_WORK],
      },
      coldStart: {
        kind: "physics",
        tex: "P_c = P C_t",
        inputs: { power, temperatureFactor },
        output: {
          fields: {
            power: { symbol: "P_c" },
            powerRatio: ratio("P_c/P"),
            threshold: { fields: { ratio: ratio("s") } },
          },
        },
      },
      coldInrushCurrent: {
        kind: "physics",
        tex: "I_c = I C_t",
        inputs: { current: { symbol: "I", above: 0 }, temperatureFactor },
        output: { symbol: "I_c" },
        cautions: [LIVE_WORK],
      },
      toleranceBand: {
        kind: "physics",
        tex: "R_\\mathrm{low} = R\\,(1 - t_l), \\quad R_\\mathrm{high} = R\\,(1 + t_u), \\quad P = \\frac{V^2}{R}, \\quad P_\\mathrm{low} = \\frac{P}{1 + t_u}, \\quad P_\\mathrm{high} = \\frac{P}{1 - t_l}",
        inputs: { resistance, voltage, upperTolerance, lowerTolerance },
        output: {
          fields: {
            resistance: {
              fields: {
                low: { symbol: "R_\\mathrm{low}" },
                nominal: { symbol: "R" },
                high: { symbol: "R_\\mathrm{high}" },
              },
            },
            power: {
              fields: {
                low: { symbol: "P_\\mathrm{low}" },
                nominal: { symbol: "P" },
                high: { symbol: "P_\\mathrm{high}" },
              },
            },
            powerAbove: ratio("P_\\mathrm{high}/P - 1"),
            powerBelow: ratio("1 - P_\\mathrm{low}/P"),
          },
        },
      },
      tubularElementTolerance: { kind: "lookup", inputs: {}, output: tolerance },
      wireTolerance: {
        kind: "lookup",
        inputs: { diameter: { symbol: "d", above: 0 } },
        output: tolerance,
      },
      swappedAlloyResistance: {
        kind: "physics",
        tex: "R_2 = R_1 \\frac{\\rho_2 C_{t,2}}{\\rho_1 C_{t,1}}",
        text: "new resistance = resistance·(newResistivity·newTemperatureFactor)/(oldResistivity·oldTemperatureFactor)",
        inputs: {
          resistance: { symbol: "R_1", above: 0 },
          oldResistivity: { symbol: "\\rho_1", above: 0 },
          newResistivity: { symbol: "\\rho_2", above: 0 },
          oldTemperatureFactor: number("C_{t,1}"),
          newTemperatureFactor: number("C_{t,2}"),
        },
        output: { symbol: "R_2" },
      },
      shortedTurns: {
        kind: "physics",
        tex: "x = \\frac{R}{R_0}, \\quad P = \\frac{V^2}{R}, \\quad \\frac{P}{P_0} = \\frac{1}{x}, \\quad \\frac{p}{p_0} = \\frac{1}{x^2}",
        inputs: { soundResistance: { symbol: "R_0", above: 0 }, resistance, voltage },
        output: {
          fields: {
            shortedFraction: ratio("1 - x"),
            power: { symbol: "P" },
            powerRatio: ratio("P/P_0"),
            surfaceLoadRatio: ratio("p/p_0"),
          },
        },
        cautions: [DEAD_WORK],
      },
      ageingFromDiameter: {
        kind: "physics",
        tex: `x = \\frac{d_0 - d}{d_0}, \\quad ${AGED}`,
        inputs: { newDiameter: { symbol: "d_0", above: 0 }, diameter: { symbol: "d", above: 0 } },
        output: aged,
        cautions: [DEAD_WORK],
      },
      ageingFromResistance: {
        kind: "physics",
        tex: `x = 1 - \\sqrt{\\frac{R_0}{R}}, \\quad ${AGED}`,
        inputs: { newResistance: { symbol: "R_0", above: 0 }, resistance },
        output: aged,
        cautions: [DEAD_WORK],
      },
    },
  );

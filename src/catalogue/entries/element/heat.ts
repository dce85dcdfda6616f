/** Entries of the room `element`: what cools an element, how hot its surface and its core run, and printed currents. */
import * as element from "../../../element/index.ts";
import { ZERO_CELSIUS } from "../../../quantity/index.ts";
import { HOT_EQUIPMENT, LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const diameter = { symbol: "d", above: 0 } as const;
const length = { symbol: "l", above: 0 } as const;
const power = { symbol: "P", above: 0 } as const;
const conductivity = (symbol: string) => ({ symbol, above: 0 }) as const;
const number = (symbol: string) => ({ symbol, is: "number" }) as const;
const positive = (symbol: string) => ({ symbol, is: "number", above: 0 }) as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;

const reynolds = positive("\\mathrm{Re}");
const prandtl = positive("\\mathrm{Pr}");
const nusselt = { fields: { nusselt: number("\\mathrm{Nu}") } } as const;

/** Fields that every heat balance takes; what may be left out stands last in a cell's arguments. */
const cooled = {
  shape: {},
  diameter,
  airTemperature: { symbol: "\\vartheta_a" },
  airSpeed: { symbol: "v", min: 0 },
  pressure: { symbol: "p_a", above: 0 },
  surroundingsTemperature: { symbol: "\\vartheta_w", min: -ZERO_CELSIUS },
  emissivity: { symbol: "\\varepsilon", is: "ratio", above: 0, max: 1 },
  radiatingEfficiency: { symbol: "K", is: "ratio", above: 0, max: 1 },
} as const;
const correlations = {
  forcedCorrelation: { default: "churchill-bernstein" },
  freeCorrelation: { default: "morgan" },
} as const;
const BALANCE =
  "h\\,(\\vartheta_s - \\vartheta_a) + \\sigma K \\varepsilon\\,(T_s^4 - T_w^4), \\quad h = \\frac{\\mathrm{Nu}\\,k}{d}, \\quad T = \\vartheta + 273.15";

const balance = {
  surfaceTemperature: { symbol: "\\vartheta_s" },
  surfaceLoad: { symbol: "p" },
  convection: { symbol: "p_c" },
  radiation: { symbol: "p_r" },
  filmTemperature: { symbol: "\\vartheta_f" },
  reynolds: number("\\mathrm{Re}"),
  rayleigh: number("\\mathrm{Ra}"),
  buoyancyRatio: ratio("\\mathrm{Gr}/\\mathrm{Re}^2"),
  filmCoefficient: { symbol: "h" },
  forcedCoefficient: { symbol: "h_\\mathrm{forced}" },
  freeCoefficient: { symbol: "h_\\mathrm{free}" },
} as const;
const solved = {
  fields: {
    ...balance,
    radiationShare: ratio("p_r/p"),
    band: {
      fields: {
        low: { symbol: "\\vartheta_\\mathrm{low}" },
        high: { symbol: "\\vartheta_\\mathrm{high}" },
        convectionTolerance: ratio("t_h"),
        others: { each: { fields: { surfaceTemperature: { symbol: "\\vartheta_{s,i}" } } } },
      },
    },
  },
} as const;
const change = { powerRatio: ratio("k_P"), airSpeedRatio: ratio("k_v") } as const;
const printed = {
  fields: {
    current: { symbol: "I" },
    diameter: { symbol: "d" },
    resistancePerLength: { symbol: "r" },
  },
} as const;
const density = { symbol: "\\varrho", above: 0 } as const;
const specificHeat = { symbol: "c", above: 0 } as const;

export const heatOfElementEntries = (): readonly Entry[] =>
  describeRoom(
    "element",
    {
      nusseltChurchillBernstein: element.nusseltChurchillBernstein,
      nusseltHilpert: element.nusseltHilpert,
      nusseltZukauskas: element.nusseltZukauskas,
      nusseltChurchillChu: element.nusseltChurchillChu,
      nusseltMorgan: element.nusseltMorgan,
      heatBalance: element.heatBalance,
      surfaceTemperature: element.surfaceTemperature,
      standardWhatIfs: element.standardWhatIfs,
      surfaceTemperatureWhatIfs: element.surfaceTemperatureWhatIfs,
      elementOnVoltage: element.elementOnVoltage,
      wireCoreTemperature: element.wireCoreTemperature,
      sheathedWireTemperatures: element.sheathedWireTemperatures,
      wireHeatingRate: element.wireHeatingRate,
      wireTimeConstant: element.wireTimeConstant,
      printedCurrentAtTemperature: element.printedCurrentAtTemperature,
      printedCurrentForRise: element.printedCurrentForRise,
      coilCurrentFromStraight: element.coilCurrentFromStraight,
    },
    {
      nusseltChurchillBernstein: {
        kind: "physics",
        tex: "\\mathrm{Nu} = 0.3 + \\frac{0.62\\,\\mathrm{Re}^{1/2}\\,\\mathrm{Pr}^{1/3}}{\\left[1 + (0.4/\\mathrm{Pr})^{2/3}\\right]^{1/4}} \\left[1 + \\left(\\frac{\\mathrm{Re}}{282000}\\right)^{5/8}\\right]^{4/5}",
        inputs: { reynolds, prandtl },
        output: nusselt,
      },
      nusseltHilpert: {
        kind: "physics",
        tex: "\\mathrm{Nu} = C\\,\\mathrm{Re}^m\\,\\mathrm{Pr}^{1/3}",
        inputs: { reynolds, prandtl },
        output: nusselt,
      },
      nusseltZukauskas: {
        kind: "physics",
        tex: "\\mathrm{Nu} = C\\,\\mathrm{Re}^m\\,\\mathrm{Pr}^{0.37} \\left(\\frac{\\mathrm{Pr}}{\\mathrm{Pr}_s}\\right)^{1/4}",
        inputs: { reynolds, prandtl, surfacePrandtl: positive("\\mathrm{Pr}_s") },
        output: nusselt,
      },
      nusseltChurchillChu: {
        kind: "physics",
        tex: "\\mathrm{Nu} = \\left\\{0.60 + \\frac{0.387\\,\\mathrm{Ra}^{1/6}}{\\left[1 + (0.559/\\mathrm{Pr})^{9/16}\\right]^{8/27}}\\right\\}^2",
        inputs: { rayleigh: { symbol: "\\mathrm{Ra}", is: "number", min: 0 }, prandtl },
        output: nusselt,
      },
      nusseltMorgan: {
        kind: "physics",
        tex: "\\mathrm{Nu} = C\\,\\mathrm{Ra}^n",
        inputs: { rayleigh: positive("\\mathrm{Ra}") },
        output: nusselt,
      },
      heatBalance: {
        kind: "physics",
        tex: `p = ${BALANCE}`,
        text: "surfaceLoad = h·(surfaceTemperature − airTemperature) + σ·radiatingEfficiency·emissivity·(Tₛ⁴ − surroundings⁴), temperatures of the second part absolute",
        inputs: { surfaceTemperature: { symbol: "\\vartheta_s" }, ...cooled, ...correlations },
        output: { fields: balance },
        cautions: [HOT_EQUIPMENT],
      },
      surfaceTemperature: {
        kind: "physics",
        tex: `p = ${BALANCE}`,
        inputs: { surfaceLoad: { symbol: "p", min: 0 }, ...cooled, ...correlations },
        output: solved,
        cautions: [HOT_EQUIPMENT],
      },
      standardWhatIfs: { kind: "lookup", inputs: {}, output: { each: { fields: change } } },
      surfaceTemperatureWhatIfs: {
        kind: "physics",
        tex: `k_P\\,p = ${BALANCE}, \\quad \\mathrm{Nu} \\text{ at } k_v\\,v`,
        text: "powerRatio·surfaceLoad = h·(Tₛ − airTemperature) + σ·radiatingEfficiency·emissivity·(Tₛ⁴ − surroundings⁴), h at airSpeedRatio·airSpeed",
        inputs: { cases: {}, surfaceLoad: { symbol: "p", above: 0 }, ...cooled, ...correlations },
        output: { each: { fields: { ...change, balance: solved } } },
        cautions: [HOT_EQUIPMENT],
      },
      elementOnVoltage: {
        kind: "physics",
        tex: `P = \\frac{V^2}{R_{20}\\,C_t(\\vartheta)}, \\quad \\vartheta = \\vartheta_s + \\Delta\\vartheta, \\quad \\frac{P}{\\pi d l} = ${BALANCE}`,
        inputs: {
          voltage: { symbol: "V", above: 0 },
          coldResistance: { symbol: "R_{20}", above: 0 },
          dataset: {},
          heatedLength: length,
          ...cooled,
          wireExcess: { symbol: "\\Delta\\vartheta", min: 0 },
          ...correlations,
        },
        output: {
          fields: {
            power: { symbol: "P" },
            current: { symbol: "I" },
            hotResistance: { symbol: "R" },
            temperatureFactor: number("C_t"),
            wireTemperature: { symbol: "\\vartheta" },
            powerRatio: ratio("1/C_t"),
            balance: solved,
          },
        },
        cautions: [HOT_EQUIPMENT, LIVE_WORK],
      },
      wireCoreTemperature: {
        kind: "physics",
        tex: "\\vartheta_0 = \\vartheta_s + \\frac{P}{4 \\pi k l}",
        inputs: {
          surfaceTemperature: { symbol: "\\vartheta_s" },
          power,
          length,
          conductivity: conductivity("k"),
        },
        output: { symbol: "\\vartheta_0" },
        cautions: [HOT_EQUIPMENT],
      },
      sheathedWireTemperatures: {
        kind: "physics",
        tex: "\\vartheta_s = \\vartheta_D + \\frac{P}{2 \\pi k_f l} \\ln\\frac{D}{d}, \\quad \\vartheta_0 = \\vartheta_s + \\frac{P}{4 \\pi k_w l}",
        inputs: {
          outerTemperature: { symbol: "\\vartheta_D" },
          power,
          length,
          wireDiameter: diameter,
          outerDiameter: { symbol: "D", above: 0 },
          wireConductivity: conductivity("k_w"),
          fillingConductivity: conductivity("k_f"),
        },
        output: {
          fields: {
            wireSurfaceTemperature: { symbol: "\\vartheta_s" },
            wireCoreTemperature: { symbol: "\\vartheta_0" },
          },
        },
        cautions: [HOT_EQUIPMENT],
      },
      wireHeatingRate: {
        kind: "physics",
        tex: "\\frac{d\\vartheta}{dt} = \\frac{4 p}{\\varrho\\,c\\,d}",
        inputs: { surfaceLoad: { symbol: "p", above: 0 }, diameter, density, specificHeat },
        output: { symbol: "d\\vartheta/dt" },
      },
      wireTimeConstant: {
        kind: "physics",
        tex: "\\tau = \\frac{\\varrho\\,c\\,d}{4 h}",
        text: "time constant = density·specificHeat·diameter/(4·filmCoefficient)",
        inputs: { filmCoefficient: { symbol: "h", above: 0 }, diameter, density, specificHeat },
        output: { symbol: "\\tau" },
      },
      // A size or a temperature that is not printed lies outside the table: there is no range to be outside of.
      printedCurrentAtTemperature: {
        kind: "lookup",
        inputs: { size: number("n"), temperature: { symbol: "\\vartheta" } },
        output: printed,
      },
      printedCurrentForRise: {
        kind: "lookup",
        inputs: { size: number("n"), rise: { symbol: "\\Delta\\vartheta" } },
        output: printed,
      },
      coilCurrentFromStraight: {
        kind: "lookup",
        inputs: { straightCurrent: { symbol: "I", above: 0 } },
        output: { fields: { low: { symbol: "I_1" }, high: { symbol: "I_2" } } },
      },
    },
  );

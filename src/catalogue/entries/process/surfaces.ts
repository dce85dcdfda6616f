/** Entries of the room `process`: pieces of work, radiation, radiation thermometers, walls, solvents, cost. */
import {
  airBehindProbe,
  biotNumber,
  energyCost,
  irradiatedTemperature,
  ovenSkinCheck,
  ovenWallGuidance,
  pieceHeatingTime,
  radiantHeat,
  radiantOven,
  readingOfSurface,
  reflectorHeating,
  runningCost,
  safetyVentilation,
  solventVaporRatio,
  surfaceBehindReading,
  wallHeat,
  wallLoss,
} from "../../../process/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

/** Nothing is colder. */
const min = -273.15;
const filmCoefficient = { symbol: "h", above: 0 } as const;
const characteristicLength = { symbol: "L_c", above: 0 } as const;
const emissivity = { symbol: "\\varepsilon", is: "ratio", above: 0, max: 1 } as const;
const emissivitySet = { symbol: "\\varepsilon_s", is: "ratio", above: 0, max: 1 } as const;
const reflected = { symbol: "\\vartheta_u", min } as const;
const walls = { symbol: "\\vartheta_w", min } as const;
const air = { symbol: "\\vartheta_\\mathrm{air}", min } as const;
const inside = { symbol: "\\vartheta_i", min } as const;
const outside = { symbol: "\\vartheta_o", min } as const;
const tariff = { symbol: "k", is: "number", unit: "per kWh", min: 0 } as const;
const cost = { fields: { energy: { symbol: "E" }, cost: { symbol: "K", is: "number" } } } as const;

const thermometer =
  "\\varepsilon E(T) + (1 - \\varepsilon) E(T_u) = \\varepsilon_s E(T_r) + (1 - \\varepsilon_s) E(T_u), \\quad E(T) \\propto T^4 \\text{ or } E(T) \\propto \\int_{8\\,\\mathrm{\\mu m}}^{14\\,\\mathrm{\\mu m}} \\frac{d\\lambda}{\\lambda^5 \\left(e^{c_2/(\\lambda T)} - 1\\right)}";
const radiationTemperature = (mark: string) =>
  ({
    fields: {
      totalRadiation: { symbol: `\\vartheta_{${mark}}` },
      band8To14: { symbol: `\\vartheta_{${mark},8-14}` },
      spread: { symbol: "\\Delta\\vartheta" },
    },
  }) as const;

export const surfacesEntries = (): readonly Entry[] =>
  describeRoom(
    "process",
    {
      biotNumber,
      pieceHeatingTime,
      radiantHeat,
      radiantOven,
      reflectorHeating,
      irradiatedTemperature,
      airBehindProbe,
      surfaceBehindReading,
      readingOfSurface,
      wallHeat,
      wallLoss,
      ovenWallGuidance,
      ovenSkinCheck,
      solventVaporRatio,
      safetyVentilation,
      energyCost,
      runningCost,
    },
    {
      biotNumber: {
        kind: "physics",
        tex: "\\mathrm{Bi} = \\frac{h L_c}{\\lambda}",
        text: "Bi = filmCoefficient × characteristicLength / thermalConductivity",
        inputs: {
          filmCoefficient,
          characteristicLength,
          thermalConductivity: { symbol: "\\lambda", above: 0 },
        },
        output: { fields: { biot: { symbol: "\\mathrm{Bi}", is: "number" } } },
      },
      pieceHeatingTime: {
        kind: "physics",
        tex: "\\rho\\,c\\,L_c \\frac{d\\vartheta}{dt} = h (\\vartheta_\\mathrm{air} - \\vartheta) + \\varepsilon \\sigma (T_w^4 - T^4), \\quad T = \\vartheta + 273.15",
        inputs: {
          characteristicLength,
          density: { symbol: "\\rho", above: 0 },
          specificHeat: { symbol: "c", above: 0 },
          filmCoefficient: { symbol: "h", min: 0 },
          air,
          emissivity: { symbol: "\\varepsilon", is: "ratio", min: 0, max: 1 },
          walls,
          start: { symbol: "\\vartheta_0", min },
          target: { symbol: "\\vartheta_\\mathrm{set}", min },
        },
        output: { fields: { time: { symbol: "t" }, steady: { symbol: "\\vartheta_\\infty" } } },
      },
      radiantHeat: {
        kind: "physics",
        tex: "P = \\frac{\\sigma A_1 (T_1^4 - T_2^4)}{\\frac{1}{\\varepsilon_1} + \\frac{A_1}{A_2} \\left(\\frac{1}{\\varepsilon_2} - 1\\right)}",
        text: "power = σ × area × (inner⁴ − outer⁴) / [1/ε + (area/outer area)(1/outer ε − 1)], temperatures in kelvins",
        inputs: { inner: {}, outer: {} },
        output: { symbol: "P" },
      },
      radiantOven: {
        kind: "physics",
        tex: "P = \\frac{\\sigma (T_1^4 - T_2^4)}{\\frac{1 - \\varepsilon_1}{\\varepsilon_1 A_1} + \\frac{1}{A_1 F + \\left[\\frac{1}{A_1 (1 - F)} + \\frac{1}{A_2 - A_1 F}\\right]^{-1}} + \\frac{1 - \\varepsilon_2}{\\varepsilon_2 A_2}}, \\quad \\sigma T_w^4 = \\frac{A_1 (1 - F) J_1 + (A_2 - A_1 F) J_2}{A_1 (1 - F) + A_2 - A_1 F}, \\quad J_1 = \\sigma T_1^4 - P \\frac{1 - \\varepsilon_1}{\\varepsilon_1 A_1}, \\quad J_2 = \\sigma T_2^4 + P \\frac{1 - \\varepsilon_2}{\\varepsilon_2 A_2}",
        text: "power = σ(T1⁴ − T2⁴) / [(1 − ε1)/(ε1 A1) + 1/(A1 F + 1/[1/(A1 (1 − F)) + 1/(A2 − A1 F)]) + (1 − ε2)/(ε2 A2)]",
        inputs: {
          heater: {},
          work: {},
          viewFactor: { symbol: "F", is: "ratio", above: 0, below: 1 },
        },
        output: { fields: { power: { symbol: "P" }, wall: { symbol: "\\vartheta_w" } } },
      },
      reflectorHeating: {
        kind: "physics",
        tex: "\\frac{\\sigma (T_1^4 - T_R^4)}{\\frac{1 - \\varepsilon_1}{\\varepsilon_1 A_1} + \\frac{1}{A_1} + \\frac{1 - \\varepsilon_R}{\\varepsilon_R A_R}} = h A_R (\\vartheta_R - \\vartheta_\\mathrm{air}), \\quad P = h A_R (\\vartheta_R - \\vartheta_\\mathrm{air}) + h A_1 (\\vartheta_1 - \\vartheta_\\mathrm{air})",
        text: "σ(T1⁴ − TR⁴) / [(1 − ε1)/(ε1 A1) + 1/A1 + (1 − εR)/(εR AR)] = h AR (TR − air), power = h AR (TR − air) + h A1 (T1 − air)",
        inputs: {
          panel: {},
          reflectorArea: { symbol: "A_R", above: 0 },
          reflectorEmissivity: { symbol: "\\varepsilon_R", is: "ratio", above: 0, max: 1 },
          filmCoefficient,
          air,
        },
        output: {
          fields: {
            power: { symbol: "P" },
            reflectorShare: { symbol: "s", is: "ratio" },
            reflector: { symbol: "\\vartheta_R" },
          },
        },
      },
      irradiatedTemperature: {
        kind: "physics",
        tex: "\\alpha E = h (\\vartheta - \\vartheta_\\mathrm{air}) + \\varepsilon \\sigma (T^4 - T_u^4)",
        inputs: {
          irradiation: { symbol: "E", min: 0 },
          absorptivity: { symbol: "\\alpha", is: "ratio", min: 0, max: 1 },
          emissivity: { symbol: "\\varepsilon", is: "ratio", min: 0, max: 1 },
          filmCoefficient,
          air,
          surroundings: { symbol: "\\vartheta_u", min },
        },
        output: { symbol: "\\vartheta" },
      },
      airBehindProbe: {
        kind: "physics",
        tex: "\\vartheta_\\mathrm{air} = \\vartheta_r + \\frac{\\varepsilon \\sigma (T_r^4 - T_w^4)}{h}",
        text: "air = reading + emissivity × σ × (reading⁴ − walls⁴)/filmCoefficient, fourth powers in kelvins",
        inputs: { reading: { symbol: "\\vartheta_r", min }, walls, emissivity, filmCoefficient },
        output: { symbol: "\\vartheta_\\mathrm{air}" },
      },
      surfaceBehindReading: {
        kind: "physics",
        tex: thermometer,
        inputs: {
          reading: { symbol: "\\vartheta_r", min },
          emissivitySet,
          emissivity: { symbol: "\\varepsilon", is: "ratio", min: 0.1, max: 1 },
          reflected,
        },
        output: radiationTemperature("s"),
      },
      readingOfSurface: {
        kind: "physics",
        tex: thermometer,
        text: "εset·E(reading) = ε·E(T) + (1 − ε)·E(reflected) − (1 − εset)·E(reflected)",
        inputs: { temperature: { symbol: "\\vartheta", min }, emissivity, emissivitySet, reflected },
        output: radiationTemperature("r"),
      },
      wallHeat: {
        kind: "physics",
        tex: "q = U (\\vartheta_i - \\vartheta_o), \\quad \\frac{1}{U} = \\frac{1}{h_i} + \\sum_k \\frac{d_k}{\\lambda_k} + \\frac{1}{h_o}",
        inputs: {
          layers: { least: 1 },
          inside,
          outside,
          insideFilm: { symbol: "h_i", above: 0 },
          outsideFilm: { symbol: "h_o", above: 0 },
        },
        output: {
          fields: {
            uValue: { symbol: "U" },
            heatFlux: { symbol: "q" },
            surfaces: { each: { symbol: "\\vartheta_k" } },
            skin: { symbol: "\\vartheta_s" },
          },
        },
      },
      wallLoss: {
        kind: "physics",
        tex: "P = U A (\\vartheta_i - \\vartheta_o), \\quad G = U A",
        text: "loss = uValue × area × (inside − outside)",
        inputs: { uValue: { symbol: "U", above: 0 }, area: { symbol: "A", above: 0 }, inside, outside },
        output: { fields: { loss: { symbol: "P" }, lossConductance: { symbol: "G" } } },
      },
      ovenWallGuidance: {
        kind: "lookup",
        inputs: {},
        output: {
          each: {
            fields: {
              thickness: { symbol: "d" },
              panelFactor: { symbol: "U" },
              upTo: { symbol: "\\vartheta_{\\max}" },
            },
          },
        },
      },
      ovenSkinCheck: {
        kind: "judgement",
        inputs: { skin: { symbol: "\\vartheta_s", min }, rule: {} },
        output: { fields: { limit: { symbol: "\\vartheta_{\\max}" } } },
      },
      solventVaporRatio: {
        kind: "physics",
        tex: "v = \\frac{\\rho}{M} \\cdot \\frac{R T}{p}, \\quad R = 8.314463, \\quad T = 294.261\\,\\mathrm{K}, \\quad p = 101325\\,\\mathrm{Pa}",
        text: "vapor ratio = liquidDensity / molarMass × R·T/p at 70 °F and 101325 Pa",
        inputs: {
          liquidDensity: { symbol: "\\rho", above: 0 },
          molarMass: { symbol: "M", is: "number", unit: "kg/mol", min: 0.01, max: 1 },
        },
        output: { symbol: "v", is: "ratio" },
      },
      safetyVentilation: {
        kind: "lookup",
        tex: "a = v \\left(\\frac{1}{s\\,\\mathrm{LFL}} - 1\\right) \\text{ or } a = \\frac{10000\\,\\mathrm{ft^3}}{1\\,\\mathrm{gal}}, \\quad \\dot V = a\\,\\dot V_\\mathrm{liq}",
        text: "airPerSolvent = vaporRatio × (1/(shareOfLimit × lowerFlammableLimit) − 1), or 10000 ft³ for each US gallon; flow = solventRate × airPerSolvent",
        inputs: { solventRate: { symbol: "\\dot V_\\mathrm{liq}", above: 0 }, by: {} },
        output: { fields: { airPerSolvent: { symbol: "a", is: "ratio" } } },
      },
      energyCost: {
        kind: "physics",
        tex: "K = k \\cdot \\frac{E}{1\\,\\mathrm{kWh}}",
        text: "cost = energy in kWh × tariff",
        inputs: { energy: { symbol: "E", min: 0 }, tariff },
        output: cost,
      },
      runningCost: {
        kind: "physics",
        tex: "E = \\frac{P\\,t\\,d}{\\eta}, \\quad K = k \\cdot \\frac{E}{1\\,\\mathrm{kWh}}",
        text: "energy = power × time × duty / efficiency, cost = energy in kWh × tariff",
        inputs: {
          power: { symbol: "P", min: 0 },
          time: { symbol: "t", min: 0 },
          tariff,
          duty: { symbol: "d", is: "ratio", min: 0, max: 1, default: 1 },
          efficiency: { symbol: "\\eta", is: "ratio", above: 0, max: 1, default: 1 },
        },
        output: cost,
      },
    },
  );

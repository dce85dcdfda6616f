/** Entries of the room `material`: conductor metals, straight-line resistance, resistances that codes list. */
import {
  coatedCopperResistivity,
  conductorDataset,
  conductorDatasetIds,
  conductorResistance,
  conductorResistivity,
  copperOfConductivity,
  highestResistance,
  listedResistance,
  namedConductorResistance,
  referenceFactor,
  resistanceAtTemperature,
  temperatureCoefficientAt,
  temperatureFromResistance,
  zeroResistanceTemperature,
} from "../../../material/index.ts";
import { DEAD_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const temperature = { symbol: "\\vartheta", above: -273.15 } as const;
const beyondTable = { default: "refuse" } as const;
const area = { symbol: "A", above: 0 } as const;
const length = { symbol: "l", min: 0 } as const;
const coefficient = { symbol: "\\alpha" } as const;
const reference = { symbol: "\\vartheta_0" } as const;
const from = { symbol: "\\vartheta_1" } as const;
const perLength = { fields: { value: { symbol: "R'" } } } as const;
const resistance = { fields: { value: { symbol: "R" } } } as const;
const resistivity = { fields: { value: { symbol: "\\rho" } } } as const;
const resistanceLaw = "R = \\frac{\\rho(\\vartheta)\\,l}{A}";
const resistanceText = "R = ρ(ϑ) × l / A";

export const conductorsEntries = (): readonly Entry[] =>
  describeRoom(
    "material",
    {
      namedConductorResistance,
      conductorResistance,
      conductorResistivity,
      conductorDatasetIds,
      conductorDataset,
      copperOfConductivity,
      coatedCopperResistivity,
      resistanceAtTemperature,
      temperatureFromResistance,
      temperatureCoefficientAt,
      zeroResistanceTemperature,
      referenceFactor,
      highestResistance,
      listedResistance,
    },
    {
      namedConductorResistance: {
        kind: "physics",
        tex: resistanceLaw,
        text: resistanceText,
        inputs: { conductor: {}, size: {}, length, temperature, beyondTable },
        output: resistance,
      },
      conductorResistance: {
        kind: "physics",
        tex: resistanceLaw,
        text: resistanceText,
        inputs: { conductor: {}, area, length, temperature, beyondTable },
        output: resistance,
      },
      conductorResistivity: {
        kind: "physics",
        tex: "\\rho = \\rho_0 \\left[1 + \\alpha (\\vartheta - \\vartheta_0)\\right]",
        text: "ρ = ρ0 × (1 + α × (ϑ − ϑ0)), or between the rows of the metal's table",
        inputs: { conductor: {}, temperature, beyondTable },
        output: resistivity,
      },
      conductorDatasetIds: { kind: "lookup", inputs: {} },
      conductorDataset: { kind: "lookup", inputs: { id: {} } },
      copperOfConductivity: {
        kind: "physics",
        tex: "\\rho_{20} = \\frac{1}{58\\,\\frac{\\mathrm{MS}}{\\mathrm{m}}\\,s}, \\quad \\alpha_{20} = 0.00393\\,\\frac{1}{\\mathrm{K}}\\,s",
        inputs: { conductivity: { symbol: "s", is: "ratio", min: 0.5, max: 1.1 } },
      },
      coatedCopperResistivity: {
        kind: "physics",
        tex: "\\rho = \\begin{cases} \\left[\\frac{1 - a}{\\rho_\\mathrm{Cu}(\\vartheta)} + \\frac{a}{\\rho_\\mathrm{Ni}(\\vartheta)}\\right]^{-1} & \\text{nickel counted} \\\\ \\frac{\\rho_\\mathrm{Cu}(\\vartheta)}{1 - a} & \\text{nickel ignored} \\end{cases}, \\quad a = \\frac{w/\\varrho_\\mathrm{Ni}}{w/\\varrho_\\mathrm{Ni} + (1 - w)/\\varrho_\\mathrm{Cu}}, \\quad w = \\frac{n}{100}",
        text: "ρ = 1 / ((1 − a)/ρCu + a/ρNi), a = (w/8900) / (w/8900 + (1 − w)/8890), w = class/100; without the second term when the nickel is ignored",
        inputs: {
          class: { symbol: "n", is: "number" },
          nickel: {},
          temperature: { symbol: "\\vartheta", above: -273.15 },
        },
        output: resistivity,
      },
      resistanceAtTemperature: {
        kind: "physics",
        tex: "R_2 = R_1\\,\\frac{1 + \\alpha (\\vartheta_2 - \\vartheta_0)}{1 + \\alpha (\\vartheta_1 - \\vartheta_0)}",
        text: "R2 = R1 × (1 + α × (ϑ2 − ϑ0)) / (1 + α × (ϑ1 − ϑ0))",
        inputs: {
          resistance: { symbol: "R_1", min: 0 },
          from,
          to: { symbol: "\\vartheta_2" },
          coefficient,
          reference,
        },
        output: { symbol: "R_2" },
        cautions: [DEAD_WORK],
      },
      temperatureFromResistance: {
        kind: "physics",
        tex: "\\vartheta_2 = \\vartheta_0 + \\frac{1}{\\alpha} \\left\\{\\frac{R_2}{R_1} \\left[1 + \\alpha (\\vartheta_1 - \\vartheta_0)\\right] - 1\\right\\}",
        text: "ϑ2 = ϑ0 + (R2/R1 × (1 + α × (ϑ1 − ϑ0)) − 1) / α",
        inputs: {
          resistance: { symbol: "R_1", above: 0 },
          from,
          hotResistance: { symbol: "R_2", above: 0 },
          coefficient,
          reference,
        },
        output: { symbol: "\\vartheta_2" },
        cautions: [DEAD_WORK],
      },
      temperatureCoefficientAt: {
        kind: "transform",
        tex: "\\alpha_1 = \\frac{\\alpha}{1 + \\alpha (\\vartheta_1 - \\vartheta_0)}",
        text: "α1 = α / (1 + α × (ϑ1 − ϑ0))",
        inputs: { coefficient, reference, at: { symbol: "\\vartheta_1" } },
        output: { symbol: "\\alpha_1" },
      },
      zeroResistanceTemperature: {
        kind: "physics",
        tex: "\\vartheta_z = \\vartheta_0 - \\frac{1}{\\alpha}",
        text: "ϑz = ϑ0 − 1/α",
        inputs: { coefficient: { symbol: "\\alpha", above: 0 }, reference },
        output: { symbol: "\\vartheta_z" },
      },
      referenceFactor: {
        kind: "lookup",
        tex: "k = \\frac{R_{20}}{R(\\vartheta)} = \\frac{1}{1 + \\alpha_{20} (\\vartheta - 20)}",
        text: "k = 1 / (1 + α20 × (ϑ − 20))",
        inputs: { temperature: { symbol: "\\vartheta", min: -50, max: 200 }, law: {} },
        output: { fields: { value: { symbol: "k", is: "ratio" } } },
      },
      highestResistance: {
        kind: "lookup",
        inputs: { area, class: { symbol: "n", is: "number" }, metal: {} },
        output: perLength,
      },
      listedResistance: { kind: "lookup", inputs: { size: {}, build: {}, metal: {} }, output: perLength },
    },
  );

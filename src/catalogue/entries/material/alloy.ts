/** Entries of the room `material`: heating alloys by source, their hot resistance, classes, limits, surfaces. */
import {
  alloyDataset,
  alloyDatasetIds,
  alloyDatasetsOf,
  alloyFactorSpread,
  alloyNames,
  alloyResistivity,
  alloyTemperatureFactor,
  classesOfResistivity,
  emissivity,
  highestElementTemperatures,
  propertyAt,
  resistivityClasses,
  temperatureFactor,
  temperatureFactorSpread,
  temperatureFromFactor,
  temperaturesFromFactor,
} from "../../../material/index.ts";
import { DEAD_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const temperature = { symbol: "\\vartheta" } as const;
const beyondTable = { default: "refuse" } as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const factor = { symbol: "C_t", is: "ratio", above: 0 } as const;
const factorFound = { fields: { value: ratio("C_t") } } as const;
const factorLaw = "C_t = \\frac{R(\\vartheta)}{R(20\\,°\\mathrm{C})}";
const spread = {
  fields: {
    lowest: ratio("C_{t,\\min}"),
    highest: ratio("C_{t,\\max}"),
    spread: ratio("s"),
    rows: { each: { fields: { value: ratio("C_t") } } },
  },
} as const;
const spreadLaw = "s = \\frac{C_{t,\\max}}{C_{t,\\min}} - 1";
const spreadText = "spread = highest / lowest − 1";
const classes = {
  each: { fields: { lowest: { symbol: "\\rho_{\\min}" }, highest: { symbol: "\\rho_{\\max}" } } },
} as const;

export const alloysEntries = (): readonly Entry[] =>
  describeRoom(
    "material",
    {
      alloyTemperatureFactor,
      temperatureFactor,
      alloyResistivity,
      alloyFactorSpread,
      temperatureFactorSpread,
      temperaturesFromFactor,
      temperatureFromFactor,
      propertyAt,
      alloyDatasetIds,
      alloyNames,
      alloyDataset,
      alloyDatasetsOf,
      resistivityClasses,
      classesOfResistivity,
      highestElementTemperatures,
      emissivity,
    },
    {
      alloyTemperatureFactor: {
        kind: "lookup",
        tex: factorLaw,
        text: "Ct = R(temperature) / R(20 °C)",
        inputs: { dataset: {}, temperature, beyondTable },
        output: factorFound,
      },
      temperatureFactor: {
        kind: "lookup",
        tex: factorLaw,
        inputs: { dataset: {}, temperature, beyondTable },
        output: factorFound,
      },
      alloyResistivity: {
        kind: "physics",
        tex: "\\rho(\\vartheta) = \\rho_{20}\\,C_t(\\vartheta)",
        text: "ρ = ρ20 × Ct(ϑ)",
        inputs: { dataset: {}, temperature, beyondTable },
        output: { fields: { value: { symbol: "\\rho" } } },
      },
      alloyFactorSpread: {
        kind: "lookup",
        tex: spreadLaw,
        text: spreadText,
        inputs: { alloy: {}, temperature },
        output: spread,
      },
      temperatureFactorSpread: {
        kind: "lookup",
        tex: spreadLaw,
        text: spreadText,
        inputs: { datasets: { least: 1 }, temperature },
        output: spread,
      },
      temperaturesFromFactor: {
        kind: "lookup",
        method: "every crossing of Ct with the straight lines between the rows of the table",
        inputs: { dataset: {}, factor },
        output: {
          fields: {
            solutions: {
              each: { fields: { from: { symbol: "\\vartheta_1" }, to: { symbol: "\\vartheta_2" } } },
            },
            lowest: ratio("C_{t,\\min}"),
            highest: ratio("C_{t,\\max}"),
          },
        },
        cautions: [DEAD_WORK],
      },
      temperatureFromFactor: {
        kind: "lookup",
        method: "the one crossing of Ct with the straight lines between the rows of the table",
        inputs: { dataset: {}, factor },
        output: { symbol: "\\vartheta" },
        cautions: [DEAD_WORK],
      },
      propertyAt: {
        kind: "lookup",
        method: "straight lines between the rows of the source's table, or the one figure it gives",
        inputs: {
          property: {
            fields: {
              value: { symbol: "x", is: "number" },
              temperature,
              temperatures: { each: temperature },
              values: { each: { symbol: "x", is: "number" } },
            },
          },
          temperature,
          beyondTable,
        },
        output: { fields: { value: { symbol: "x", is: "number" } } },
      },
      alloyDatasetIds: { kind: "lookup", inputs: {} },
      alloyNames: { kind: "lookup", inputs: {} },
      alloyDataset: { kind: "lookup", inputs: { id: {} } },
      alloyDatasetsOf: { kind: "lookup", inputs: { alloy: {} } },
      resistivityClasses: { kind: "lookup", inputs: {}, output: classes },
      classesOfResistivity: {
        kind: "lookup",
        tex: "\\rho_{\\min} \\le \\rho \\le \\rho_{\\max}, \\quad \\rho = \\frac{R A}{l}",
        inputs: { resistivity: { symbol: "\\rho", above: 0 } },
        output: classes,
      },
      highestElementTemperatures: {
        kind: "lookup",
        inputs: { alloy: {} },
        output: { each: { fields: { value: { symbol: "\\vartheta_{\\max}" } } } },
        cautions: [
          "Opinions for thick wire in clean dry air, of the element itself: stay 50 to 100 K below the lowest, thin wire cooler still; the wire's own data sheet comes first.",
        ],
      },
      emissivity: {
        kind: "lookup",
        inputs: { words: {} },
        output: {
          fields: { lowest: ratio("\\varepsilon_{\\min}"), highest: ratio("\\varepsilon_{\\max}") },
        },
      },
    },
  );

/** Entries of the room `process`: heat of air, air flows, heating an air stream, exhaust, duct heaters. */
import {
  actualAirFlow,
  airChangeHeat,
  airFlowForRise,
  airHeatConstant,
  airHeatContent,
  airHeatingPower,
  airHeatShortcut,
  airHeatShortcutNames,
  airMassFlow,
  airMeanSpecificHeat,
  airOutlet,
  airWhatIf,
  ductHeaterCheck,
  ductHeaterFace,
  exhaustHeat,
  standardAirDensity,
  standardAirFlow,
} from "../../../process/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

/** Nothing is colder. */
const min = -273.15;
const power = { symbol: "P", above: 0 } as const;
const inlet = { symbol: "\\vartheta_1", min } as const;
const outlet = { symbol: "\\vartheta_2", min } as const;
const makeUp = { symbol: "\\vartheta_1", min } as const;
const oven = { symbol: "\\vartheta_2", min } as const;
const pressure = { symbol: "p", above: 0 } as const;
const specificHeat = { symbol: "\\bar c_p", above: 0 } as const;
const factor = (symbol: string) => ({ symbol, is: "ratio", above: 0, default: 1 }) as const;

const density = "\\rho = \\frac{p}{287.055\\,(\\vartheta + 273.15)}";

const heating = {
  fields: {
    power: { symbol: "P" },
    massFlow: { symbol: "\\dot m" },
    inlet: { symbol: "\\vartheta_1" },
    outlet: { symbol: "\\vartheta_2" },
    rise: { symbol: "\\Delta\\vartheta" },
    specificHeat: { symbol: "\\bar c_p" },
  },
} as const;

const exhaust = {
  fields: {
    power: { symbol: "P" },
    lossConductance: { symbol: "G" },
    massFlow: { symbol: "\\dot m" },
    standardFlow: { symbol: "\\dot V_n" },
    specificHeat: { symbol: "\\bar c_p" },
  },
} as const;

export const airEntries = (): readonly Entry[] =>
  describeRoom(
    "process",
    {
      airHeatContent,
      airMeanSpecificHeat,
      airHeatConstant,
      airHeatShortcutNames,
      airHeatShortcut,
      standardAirDensity,
      airMassFlow,
      actualAirFlow,
      standardAirFlow,
      airOutlet,
      airHeatingPower,
      airFlowForRise,
      airWhatIf,
      ductHeaterFace,
      ductHeaterCheck,
      exhaustHeat,
      airChangeHeat,
    },
    {
      airHeatContent: {
        kind: "physics",
        tex: "\\Delta h = \\int_{\\vartheta_1}^{\\vartheta_2} c_p(\\vartheta)\\,d\\vartheta",
        text: "Δh = ∫ c_p dϑ from `from` to `to`",
        inputs: { from: { symbol: "\\vartheta_1" }, to: { symbol: "\\vartheta_2" } },
        output: { symbol: "\\Delta h" },
      },
      airMeanSpecificHeat: {
        kind: "physics",
        tex: "\\bar c_p = \\frac{1}{\\vartheta_2 - \\vartheta_1} \\int_{\\vartheta_1}^{\\vartheta_2} c_p(\\vartheta)\\,d\\vartheta",
        text: "mean c_p = Δh / (to − from)",
        inputs: { from: { symbol: "\\vartheta_1" }, to: { symbol: "\\vartheta_2" } },
        output: { symbol: "\\bar c_p" },
      },
      airHeatConstant: {
        kind: "physics",
        tex: "s = \\rho\\,c_p",
        text: "volumetricHeat = density × specificHeat",
        inputs: { density: { symbol: "\\rho", above: 0 }, specificHeat: { symbol: "c_p", above: 0 } },
        output: {
          fields: {
            volumetricHeat: { symbol: "s", is: "number", unit: "J/(m³·K)" },
            btuPerHourCfmFahrenheit: { symbol: "k_1", is: "number", unit: "Btu/(h·cfm·Δ°F)" },
            cfmFahrenheitPerKilowatt: { symbol: "k_2", is: "number", unit: "cfm·Δ°F/kW" },
            litersPerSecondKelvinPerKilowatt: { symbol: "k_3", is: "number", unit: "L/s·K/kW" },
            cubicMetersPerHourKelvinPerKilowatt: { symbol: "k_4", is: "number", unit: "m³/h·K/kW" },
          },
        },
      },
      airHeatShortcutNames: { kind: "lookup", inputs: {} },
      airHeatShortcut: {
        kind: "lookup",
        inputs: { name: {} },
        output: {
          fields: {
            constant: { symbol: "k", is: "number" },
            statedMargin: { symbol: "m", is: "ratio" },
            volumetricHeat: { symbol: "s", is: "number", unit: "J/(m³·K)" },
            hiddenDensity: { symbol: "\\rho" },
            hiddenMargin: { symbol: "m_h", is: "ratio" },
          },
        },
      },
      standardAirDensity: {
        kind: "physics",
        tex: "\\rho_n = \\begin{cases} 0.075\\,\\mathrm{lb/ft^3} & \\text{by its name} \\\\ \\frac{101325}{287.055\\,(\\vartheta_n + 273.15)} & \\vartheta_n = 0\\,°\\mathrm{C} \\text{ or } 20\\,°\\mathrm{C} \\end{cases}",
        text: "0.075 lb/ft³ by its name; otherwise 101325 Pa / (287.055 × (0 or 20 + 273.15))",
        inputs: { standard: {} },
        output: { symbol: "\\rho_n" },
      },
      airMassFlow: {
        kind: "transform",
        tex: `\\dot m = \\dot V \\rho, \\quad ${density}`,
        text: "massFlow = volumeFlow × density",
        inputs: { flow: {} },
        output: { symbol: "\\dot m" },
      },
      actualAirFlow: {
        kind: "transform",
        tex: `\\dot V = \\frac{\\dot m}{\\rho}, \\quad ${density}`,
        text: "volumeFlow = massFlow / density",
        inputs: { flow: {}, temperature: { symbol: "\\vartheta", above: min }, pressure },
        output: { symbol: "\\dot V" },
      },
      standardAirFlow: {
        kind: "transform",
        tex: "\\dot V_n = \\frac{\\dot m}{\\rho_n}",
        text: "volumeFlow = massFlow / density of the standard",
        inputs: { flow: {}, standard: {} },
        output: { symbol: "\\dot V_n" },
      },
      airOutlet: {
        kind: "physics",
        tex: "\\vartheta_2 = \\vartheta_1 + \\frac{P}{\\dot m\\,\\bar c_p}",
        inputs: { power, flow: {}, inlet, specificHeat },
        output: heating,
      },
      airHeatingPower: {
        kind: "physics",
        tex: "P = \\dot m\\,\\bar c_p (\\vartheta_2 - \\vartheta_1)",
        text: "power = massFlow × specificHeat × (outlet − inlet)",
        inputs: { flow: {}, inlet, outlet, specificHeat },
        output: heating,
      },
      airFlowForRise: {
        kind: "physics",
        tex: "\\dot m = \\frac{P}{\\bar c_p (\\vartheta_2 - \\vartheta_1)}",
        inputs: { power, inlet, outlet, specificHeat },
        output: heating,
      },
      airWhatIf: {
        kind: "physics",
        tex: "\\vartheta_2' = \\vartheta_1 + \\frac{k_P\\,k_V^2\\,P}{k_m\\,\\dot m\\,\\bar c_p}",
        text: "outlet after = inlet + powerRatio × voltageRatio² × power / (flowRatio × massFlow × specificHeat)",
        inputs: {
          power,
          flow: {},
          inlet,
          flowRatio: factor("k_m"),
          voltageRatio: factor("k_V"),
          powerRatio: factor("k_P"),
          specificHeat,
        },
        output: {
          fields: { before: heating, after: heating, riseRatio: { symbol: "r", is: "ratio" } },
        },
      },
      ductHeaterFace: {
        kind: "physics",
        tex: "A = (h - 2.5\\,\\mathrm{in})\\,(w - 0.5\\,\\mathrm{in})",
        text: "(height − 2.5 in) × (width − 0.5 in)",
        inputs: { height: { symbol: "h", above: 0.0635 }, width: { symbol: "w", above: 0.0127 } },
        output: { symbol: "A" },
      },
      ductHeaterCheck: {
        kind: "judgement",
        tex: "v = \\frac{\\dot V}{A}, \\quad q = \\frac{P}{A}",
        text: "velocity = volumeFlow / faceArea, faceLoad = power / faceArea",
        inputs: { power, faceArea: { symbol: "A", above: 0 }, flow: {}, inlet, pressure, element: {} },
        output: { fields: { velocity: { symbol: "v" }, faceLoad: { symbol: "q" } } },
      },
      exhaustHeat: {
        kind: "physics",
        tex: "P = \\dot m\\,\\bar c_p (\\vartheta_2 - \\vartheta_1), \\quad G = \\dot m\\,\\bar c_p",
        text: "power = massFlow × specificHeat × (oven − makeUp)",
        inputs: { flow: {}, makeUp, oven, specificHeat },
        output: exhaust,
      },
      airChangeHeat: {
        kind: "physics",
        tex: `P = \\frac{n V}{3600} \\rho\\,\\bar c_p (\\vartheta_2 - \\vartheta_1), \\quad ${density}`,
        text: "power = changesPerHour/3600 × volume × density × specificHeat × (oven − makeUp)",
        inputs: {
          changesPerHour: { symbol: "n", is: "number", unit: "1/h", above: 0 },
          volume: { symbol: "V", above: 0 },
          countedAs: {},
          makeUp,
          oven,
          pressure,
          specificHeat,
        },
        output: exhaust,
      },
    },
  );

/** Entries of the room `material`: dry air, by table and by formula, and the pressure at an altitude. */
import {
  airConductivityFormula,
  airDensity,
  airProperties,
  airSpecificHeatFormula,
  airTextbooks,
  airViscosityFormula,
  pressureAtAltitude,
} from "../../../material/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const temperature = { symbol: "\\vartheta", above: -273.15 } as const;
const pressure = { symbol: "p", above: 0 } as const;
/** Where the formulas were compared with the table. */
const formulaTemperature = { symbol: "\\vartheta", min: -23.15, max: 1226.85 } as const;
const kelvins = "T = \\frac{\\vartheta}{°\\mathrm{C}} + 273.15";
const relativeError = { symbol: "\\epsilon", is: "ratio" } as const;
const difference = { symbol: "\\Delta", is: "ratio" } as const;

export const airPropertiesEntries = (): readonly Entry[] =>
  describeRoom(
    "material",
    {
      airDensity,
      airProperties,
      airViscosityFormula,
      airConductivityFormula,
      airSpecificHeatFormula,
      airTextbooks,
      pressureAtAltitude,
    },
    {
      airDensity: {
        kind: "physics",
        tex: "\\rho = \\frac{p}{R_a (\\vartheta + 273.15)}, \\quad R_a = 287.055\\,\\frac{\\mathrm{J}}{\\mathrm{kg\\,K}}",
        text: "ρ = p / (287.055 × (ϑ + 273.15))",
        inputs: { temperature, pressure },
        output: { symbol: "\\rho" },
      },
      airProperties: {
        kind: "lookup",
        tex: "\\rho = \\frac{p}{R_a (\\vartheta + 273.15)}, \\quad \\nu = \\frac{\\mu}{\\rho}, \\quad a = \\frac{k}{\\rho c_p}",
        text: "density = pressure / (287.055 × (temperature + 273.15)), kinematic viscosity = viscosity / density, diffusivity = conductivity / (density × specific heat)",
        method: "straight lines between the rows of the table; density by the gas law",
        inputs: { temperature, pressure, beyondTable: { default: "refuse" } },
        output: {
          fields: {
            density: { symbol: "\\rho" },
            specificHeat: { symbol: "c_p" },
            viscosity: { symbol: "\\mu" },
            kinematicViscosity: { symbol: "\\nu" },
            thermalConductivity: { symbol: "k" },
            thermalDiffusivity: { symbol: "a" },
            prandtl: { symbol: "\\mathrm{Pr}", is: "number" },
          },
        },
      },
      airViscosityFormula: {
        kind: "physics",
        tex: `\\frac{\\mu}{\\mathrm{Pa\\,s}} = \\frac{1.458 \\cdot 10^{-6}\\,T^{1.5}}{T + 110.4}, \\quad ${kelvins}`,
        text: "μ = 1.458e-6 × T^1.5 / (T + 110.4), T = ϑ + 273.15",
        inputs: { temperature: formulaTemperature },
        output: { fields: { value: { symbol: "\\mu" }, relativeError } },
      },
      airConductivityFormula: {
        kind: "physics",
        tex: `\\frac{k}{\\mathrm{W/(m\\,K)}} = \\frac{2.64638 \\cdot 10^{-3}\\,T^{1.5}}{T + 245.4 \\cdot 10^{-12/T}}, \\quad ${kelvins}`,
        text: "k = 2.64638e-3 × T^1.5 / (T + 245.4 × 10^(−12/T)), T = ϑ + 273.15",
        inputs: { temperature: formulaTemperature },
        output: { fields: { value: { symbol: "k" }, relativeError } },
      },
      airSpecificHeatFormula: {
        kind: "physics",
        tex: `\\frac{c_p}{\\mathrm{J/(kg\\,K)}} = 287.055 \\left(3.653 - 1.337 \\cdot 10^{-3}\\,T + 3.294 \\cdot 10^{-6}\\,T^2 - 1.913 \\cdot 10^{-9}\\,T^3 + 0.2763 \\cdot 10^{-12}\\,T^4\\right), \\quad ${kelvins}`,
        text: "cp = 287.055 × (3.653 − 1.337e-3 T + 3.294e-6 T² − 1.913e-9 T³ + 0.2763e-12 T⁴), T = ϑ + 273.15",
        inputs: { temperature: formulaTemperature },
        output: { fields: { value: { symbol: "c_p" }, relativeError } },
      },
      airTextbooks: {
        kind: "lookup",
        method: "straight lines between the rows of each table; difference = first / second − 1",
        inputs: { temperature },
        output: {
          fields: {
            specificHeat: {
              fields: {
                first: { fields: { value: { symbol: "c_{p1}" } } },
                second: { fields: { value: { symbol: "c_{p2}" } } },
                difference,
              },
            },
            thermalConductivity: {
              fields: {
                first: { fields: { value: { symbol: "k_1" } } },
                second: { fields: { value: { symbol: "k_2" } } },
                difference,
              },
            },
          },
        },
      },
      pressureAtAltitude: {
        kind: "physics",
        tex: "p = 101325\\,\\mathrm{Pa} \\left(1 - 2.25577 \\cdot 10^{-5}\\,\\frac{h}{\\mathrm{m}}\\right)^{5.25588}",
        text: "p = 101325 × (1 − 2.25577e-5 × h)^5.25588",
        inputs: { altitude: { symbol: "h", min: -500, max: 11000 } },
        output: { symbol: "p" },
      },
    },
  );

/** Entries of the room `bench`: targets of the plate, assessment of a record, running on with a fault. */
import {
  assessModule,
  assessmentText,
  degradedHeatUp,
  degradedOptions,
  nameplateTargets,
} from "../../../bench/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const count = (symbol: string) => ({ symbol, is: "count", min: 1, max: 10_000 }) as const;
const temperatureFactor = { symbol: "C_t", is: "ratio", min: 0.5, max: 10 } as const;
/** Nothing is colder. */
const min = -273.15;
const target = { symbol: "\\vartheta_\\mathrm{set}", min } as const;
const start = { symbol: "\\vartheta_0", min } as const;
const share = (symbol: string) => ({ symbol, is: "ratio", above: 0, max: 1 }) as const;

const RUNNING_ON =
  "An element that opened leaves a break that stands live, and survivors may run hotter than before: see degradedOptions for both before running on. The maker, the local code and a licensed electrician decide.";

export const modulesEntries = (): readonly Entry[] =>
  describeRoom(
    "bench",
    { nameplateTargets, assessModule, assessmentText, degradedHeatUp, degradedOptions },
    {
      nameplateTargets: {
        kind: "physics",
        tex: "I = \\frac{P}{\\sqrt{3}\\,V}, \\quad R_\\mathrm{star} = \\frac{n V^2}{P}, \\quad R_\\mathrm{delta} = \\frac{3 n V^2}{P}, \\quad R_e = R \\frac{p}{s}, \\quad P_e = \\frac{P}{3 n p s}, \\quad R_{LL} = \\frac{2 V^2}{P}, \\quad R_{20} = \\frac{R_\\mathrm{hot}}{C_t}, \\quad I_{20} = I C_t",
        inputs: {
          power: { symbol: "P", above: 0 },
          lineVoltage: { symbol: "V", above: 0 },
          connection: {},
          banks: count("n"),
          elementsInParallel: { ...count("p"), default: 1 },
          elementsInSeries: { ...count("s"), default: 1 },
          temperatureFactor,
        },
        output: {
          fields: {
            lineCurrent: { symbol: "I" },
            bankLineCurrent: { symbol: "I/n" },
            branchVoltage: { symbol: "V_b" },
            branchCurrent: { symbol: "I_b" },
            branchResistanceHot: { symbol: "R" },
            branchResistanceCold: { symbol: "R_{20}" },
            elementResistanceHot: { symbol: "R_e" },
            elementResistanceCold: { symbol: "R_{e,20}" },
            elementPower: { symbol: "P_e" },
            lineToLineHot: { symbol: "R_{LL}" },
            lineToLineCold: { symbol: "R_{LL,20}" },
            coldLineCurrent: { symbol: "I_{20}" },
          },
        },
      },
      assessModule: {
        kind: "judgement",
        method:
          "readings fitted to the network by least squares (fitTerminalReadings) and held against the plate (nameplateTargets) or each other; faults ranked by Bayes (diagnose); draw, amps and what-if by nodal analysis (energise, faultScan); joints, torque, ampacity and insulation by the tables named beside each figure",
        inputs: {
          title: {},
          wiring: {},
          nameplate: {},
          instruments: {},
          asFound: {},
          asLeft: {},
          tolerance: {
            fields: {
              low: { symbol: "\\delta_{\\min}", is: "ratio", min: -1, max: 0 },
              high: { symbol: "\\delta_{\\max}", is: "ratio", min: 0, max: 1 },
            },
          },
          temperatureFactor,
          supply: {},
          hardware: { most: 1000 },
          bars: { most: 1000 },
          feed: {},
          ambient: { symbol: "\\vartheta_a", is: "number", unit: "°C", min, max: 3000 },
          process: {},
          identity: {},
        },
      },
      assessmentText: {
        kind: "transform",
        inputs: {
          title: {},
          identity: {},
          module: {},
          answer: {},
          assumptions: {},
          targets: {},
          asFound: {},
          asLeft: {},
          diagnosis: {},
          draw: {},
          whatIf: {},
          degraded: {},
          hardware: {},
          feed: {},
          commissioning: {},
          nextSteps: {},
          checklist: {},
          parts: {},
          cuts: {},
          notTested: {},
          warnings: {},
          cautions: {},
        },
      },
      degradedHeatUp: {
        kind: "physics",
        method:
          "nodal analysis for the power that the faults leave (faultEffect), which then heats the oven (ovenHeatUp)",
        inputs: { module: {}, supply: {}, faults: { least: 1 }, oven: {}, target, start },
        cautions: [RUNNING_ON],
      },
      degradedOptions: {
        kind: "physics",
        method:
          "nodal analysis of each way for its power, which heats the oven (ovenHeatUp); energy of a shift = power × heat-up time + holding power × the rest of it; surface of the hardest element by its heat balance (surfaceTemperature)",
        inputs: {
          module: {},
          supply: {},
          faults: { least: 1 },
          oven: {},
          target,
          shift: { symbol: "t", above: 0 },
          shifts: { symbol: "n", is: "number", min: 0, default: 1 },
          tariff: { symbol: "k", is: "number", unit: "per kWh", min: 0 },
          element: {
            fields: {
              surfaceLoad: { symbol: "p", above: 0 },
              diameter: { symbol: "d", above: 0 },
              airTemperature: { symbol: "\\vartheta_\\mathrm{air}" },
              airSpeed: { symbol: "v", min: 0 },
              pressure: { symbol: "p_\\mathrm{air}", above: 0 },
              surroundingsTemperature: { symbol: "\\vartheta_u", above: min },
              emissivity: share("\\varepsilon"),
              radiatingEfficiency: share("K"),
              forcedCorrelation: { default: "churchill-bernstein" },
              freeCorrelation: { default: "morgan" },
            },
          },
          start,
        },
      },
    },
  );

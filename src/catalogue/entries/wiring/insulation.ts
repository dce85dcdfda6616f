/** Entries of the room `wiring`: insulation resistance, leakage, drying out. */
import * as wiring from "../../../wiring/index.ts";
import { INSULATION_TEST } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const resistance = { symbol: "R", above: 0 } as const;
const together = { symbol: "n", is: "count", min: 1, max: 100_000 } as const;

export const insulationEntries = (): readonly Entry[] =>
  describeRoom(
    "wiring",
    {
      insulationInParallel: wiring.insulationInParallel,
      insulationOfGroup: wiring.insulationOfGroup,
      insulationLeakage: wiring.insulationLeakage,
      insulationVerdicts: wiring.insulationVerdicts,
      insulationAt20: wiring.insulationAt20,
      leakageLimit: wiring.leakageLimit,
      polarizationIndex: wiring.polarizationIndex,
      dryOutGuidance: wiring.dryOutGuidance,
    },
    {
      insulationInParallel: {
        kind: "physics",
        tex: "\\frac{1}{R} = \\sum_i \\frac{1}{R_i}",
        inputs: { resistances: { least: 1, each: { symbol: "R_i", above: 0 } } },
        output: { symbol: "R" },
        cautions: [INSULATION_TEST],
      },
      insulationOfGroup: {
        kind: "physics",
        tex: "R = \\frac{R_1}{n}",
        inputs: { each: { symbol: "R_1", above: 0 }, count: together },
        output: { symbol: "R" },
        cautions: [INSULATION_TEST],
      },
      insulationLeakage: {
        kind: "physics",
        tex: "I_\\Delta = \\frac{V}{R}",
        inputs: { voltage: { symbol: "V", min: 0 }, resistance },
        output: { fields: { leakage: { symbol: "I_\\Delta" } } },
      },
      insulationVerdicts: {
        kind: "judgement",
        tex: "R \\ge \\frac{R_{\\min}}{n} \\text{ for a limit of one element}, \\quad R \\ge R_{\\min} \\text{ otherwise}",
        text: "the reading, give or take its half-width, against each limit; a limit of one element is divided by the number measured together",
        inputs: {
          resistance,
          nominalVoltage: { symbol: "V_n", above: 0 },
          testVoltage: { symbol: "V_t", above: 0 },
          temperature: { symbol: "\\vartheta", min: -273.15, max: 3000 },
          criteria: { least: 1 },
          halfWidth: { symbol: "U", min: 0, default: 0 },
          elementsInParallel: { ...together, default: 1 },
        },
        output: {
          each: { fields: { minimum: { symbol: "R_{\\min}" }, margin: { symbol: "R - R_{\\min}" } } },
        },
      },
      insulationAt20: {
        kind: "lookup",
        tex: "R_{20} = k R; \\quad \\text{by law: } k_\\mathrm{oil} = 2^{(\\vartheta - 20)/10}, \\quad k_\\mathrm{solid} = 10^{(\\vartheta - 20)/50}",
        inputs: {
          resistance,
          temperature: { symbol: "\\vartheta", min: 0, max: 80 },
          insulation: {},
          by: { default: "table" },
        },
        output: { fields: { value: { symbol: "R_{20}" } } },
      },
      leakageLimit: {
        kind: "lookup",
        inputs: { appliance: {}, power: { symbol: "P", above: 0 } },
        output: { fields: { value: { symbol: "I_{\\Delta,\\max}" } } },
      },
      polarizationIndex: {
        kind: "lookup",
        tex: "\\mathrm{PI} = \\frac{R_{10}}{R_1}",
        inputs: { oneMinute: { symbol: "R_1", above: 0 }, tenMinutes: { symbol: "R_{10}", above: 0 } },
        output: { fields: { value: { symbol: "\\mathrm{PI}", is: "ratio" } } },
      },
      dryOutGuidance: { kind: "lookup", inputs: {} },
    },
  );

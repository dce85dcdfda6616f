/** Entries of the room `wiring`: conductors, terminals and devices of the North American editions. */
import * as wiring from "../../../wiring/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";
import * as run from "./run.ts";

const NAMES = run.NAMES;
const insulationTemperature = run.INSULATION_TEMPERATURE;
const terminalTemperature = run.TERMINAL_TEMPERATURE;
const currentCarryingConductors = run.CONDUCTORS;
const listedForFullLoad = { default: false } as const;
const factor = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const current = (symbol: string) => ({ symbol, above: 0 }) as const;
const amperes = (symbol: string) => ({ symbol }) as const;

export const americaEntries = (): readonly Entry[] =>
  describeRoom(
    "wiring",
    {
      designCurrent: wiring.designCurrent,
      tableAmpacity: wiring.tableAmpacity,
      ampacityEditions: wiring.ampacityEditions,
      ambientFactor: wiring.ambientFactor,
      conductorCountFactor: wiring.conductorCountFactor,
      conductorAmpacity: wiring.conductorAmpacity,
      conductorForLoad: wiring.conductorForLoad,
      loadForConductor: wiring.loadForConductor,
      ambientForConductor: wiring.ambientForConductor,
      standardDevice: wiring.standardDevice,
      largestDevice: wiring.largestDevice,
      largestApplianceDevice: wiring.largestApplianceDevice,
      groundingConductor: wiring.groundingConductor,
      subdivision: wiring.subdivision,
      terminationTemperature: wiring.terminationTemperature,
      lugFit: wiring.lugFit,
      terminalTorque: wiring.terminalTorque,
      insulationType: wiring.insulationType,
      conductorResistancePerLength: wiring.conductorResistancePerLength,
    },
    {
      designCurrent: {
        kind: "lookup",
        tex: "I_d = f \\left(\\sum I_h + \\sum I_m\\right) + \\sum I_{nc}; \\quad \\text{IEC: } f = 1",
        inputs: {
          edition: NAMES,
          heaterCurrent: run.HEATER_CURRENT,
          equipment: NAMES,
          motorCurrent: run.MOTOR_CURRENT,
          noncontinuousCurrent: run.NONCONTINUOUS_CURRENT,
          listedForFullLoad,
        },
        output: { fields: { value: amperes("I_d"), load: amperes("I"), factor: factor("f") } },
      },
      tableAmpacity: {
        kind: "lookup",
        inputs: { edition: NAMES, installation: NAMES, size: NAMES, material: NAMES, insulationTemperature },
        output: { fields: { value: amperes("I_t") } },
      },
      ampacityEditions: {
        kind: "lookup",
        inputs: {
          installation: NAMES,
          size: NAMES,
          material: NAMES,
          insulationTemperature,
          ampacity: current("I_t"),
        },
      },
      ambientFactor: {
        kind: "lookup",
        method:
          "the factor of the band the ambient falls in; by the equation, when asked for, √((Tc − T)/(Tc − base))",
        inputs: {
          edition: NAMES,
          baseAmbient: run.AMBIENT_BASE,
          insulationTemperature,
          ambient: run.AMBIENT,
          by: run.ROUTE,
        },
        output: { fields: { value: factor("k_a") } },
      },
      conductorCountFactor: {
        kind: "lookup",
        inputs: { edition: NAMES, currentCarryingConductors },
        output: { fields: { value: factor("k_n") } },
      },
      conductorAmpacity: {
        kind: "lookup",
        tex: "I_z = p\\min(I_t k_a k_n,\\ I_{tt})",
        inputs: {
          edition: NAMES,
          installation: NAMES,
          size: NAMES,
          material: NAMES,
          insulationTemperature,
          ambient: run.AMBIENT,
          currentCarryingConductors,
          terminalTemperature,
          circuitRating: current("I_n"),
          ambientBy: run.ROUTE,
          ambientBase: run.AMBIENT_BASE,
          conductorsPerLine: run.PER_LINE,
        },
        output: {
          fields: {
            value: amperes("I_z"),
            tableAmpacity: amperes("I_t"),
            ambientFactor: factor("k_a"),
            countFactor: factor("k_n"),
            correctedAmpacity: amperes("I_t k_a k_n"),
            terminationAmpacity: amperes("I_{tt}"),
            conductorsPerLine: { symbol: "p", is: "count" },
          },
        },
      },
      conductorForLoad: {
        kind: "lookup",
        tex: "I_d \\le p I_{tt}, \\quad I \\le p I_t k_a k_n, \\quad I_d \\le I_n \\le I_{n,\\max}",
        text: "the smallest size with design current ≤ value in the terminal's column, load ≤ corrected ampacity (of all conductors in parallel), and the device (next standard rating to the design current) within what the size permits",
        inputs: {
          edition: NAMES,
          equipment: NAMES,
          heaterCurrent: run.HEATER_CURRENT,
          installation: NAMES,
          material: NAMES,
          insulationTemperature,
          ambient: run.AMBIENT,
          currentCarryingConductors,
          terminalTemperature,
          motorCurrent: run.MOTOR_CURRENT,
          noncontinuousCurrent: run.NONCONTINUOUS_CURRENT,
          listedForFullLoad,
          ambientBy: run.ROUTE,
          ambientBase: run.AMBIENT_BASE,
          conductorsPerLine: run.PER_LINE,
        },
        output: {
          fields: {
            conductorsPerLine: { symbol: "p", is: "count" },
            load: amperes("I"),
            designCurrent: amperes("I_d"),
            device: amperes("I_n"),
          },
        },
      },
      loadForConductor: {
        kind: "lookup",
        tex: "I = \\min\\left(\\frac{p I_{tt}}{f},\\ p I_t k_a k_n,\\ \\frac{I_n}{f},\\ I_\\mathrm{sub}\\right)",
        text: "load = the smallest of terminal's column/factor and corrected ampacity, of all conductors in parallel, device/factor and, of a split heater, the class's largest subdivided load",
        inputs: {
          edition: NAMES,
          equipment: NAMES,
          installation: NAMES,
          size: NAMES,
          material: NAMES,
          insulationTemperature,
          ambient: run.AMBIENT,
          currentCarryingConductors,
          terminalTemperature,
          device: run.DEVICE,
          subdivided: { default: false },
          listedForFullLoad,
          ambientBy: run.ROUTE,
          ambientBase: run.AMBIENT_BASE,
          conductorsPerLine: run.PER_LINE,
        },
        output: { fields: { value: amperes("I"), device: amperes("I_n") } },
      },
      ambientForConductor: {
        kind: "lookup",
        method:
          "the hot edge of the last band of the ambient factors in which the size passes every test of conductorForLoad",
        inputs: {
          edition: NAMES,
          equipment: NAMES,
          heaterCurrent: run.HEATER_CURRENT,
          installation: NAMES,
          size: NAMES,
          material: NAMES,
          insulationTemperature,
          currentCarryingConductors,
          terminalTemperature,
          motorCurrent: run.MOTOR_CURRENT,
          noncontinuousCurrent: run.NONCONTINUOUS_CURRENT,
          device: run.DEVICE,
          listedForFullLoad,
          conductorsPerLine: run.PER_LINE,
        },
        output: {
          fields: {
            value: amperes("\\vartheta_a"),
            load: amperes("I"),
            designCurrent: amperes("I_d"),
            device: amperes("I_n"),
          },
        },
      },
      standardDevice: {
        kind: "lookup",
        inputs: { edition: NAMES, current: current("I"), direction: NAMES },
        output: { fields: { value: amperes("I_n") } },
      },
      largestDevice: {
        kind: "lookup",
        inputs: { edition: NAMES, size: NAMES, material: NAMES, ampacity: current("I_z") },
        output: { fields: { value: amperes("I_n") } },
      },
      largestApplianceDevice: {
        kind: "lookup",
        inputs: { edition: NAMES, current: { symbol: "I", above: 13.3 } },
        output: { fields: { value: amperes("I_n") } },
      },
      groundingConductor: {
        kind: "lookup",
        inputs: {
          edition: NAMES,
          device: { symbol: "I_n", above: 0 },
          material: NAMES,
          installed: NAMES,
          needed: NAMES,
        },
        output: { fields: { area: { symbol: "A" } } },
      },
      subdivision: {
        kind: "lookup",
        tex: "n = \\left\\lceil \\frac{I}{I_\\mathrm{sub}} \\right\\rceil, \\quad I_1 = \\frac{I}{n}, \\quad I_{d1} = f I_1",
        text: "circuits = current/largest subdivided load, rounded up; each carries current/circuits, its design current is factor times that",
        inputs: {
          edition: NAMES,
          equipment: NAMES,
          current: current("I"),
          circuits: { symbol: "n", is: "count", min: 1, max: 10_000 },
        },
        output: {
          fields: {
            value: { symbol: "n", is: "count" },
            fewest: { symbol: "n_{\\min}", is: "count" },
            largestLoad: amperes("I_\\mathrm{sub}"),
            circuitCurrent: amperes("I_1"),
            circuitDesignCurrent: amperes("I_{d1}"),
            device: amperes("I_n"),
          },
        },
      },
      terminationTemperature: {
        kind: "lookup",
        inputs: { edition: NAMES, circuitRating: current("I_n") },
        output: { fields: { value: amperes("\\vartheta_t") } },
      },
      lugFit: {
        kind: "judgement",
        inputs: {
          edition: NAMES,
          lug: NAMES,
          size: NAMES,
          material: NAMES,
          insulationTemperature,
          designCurrent: current("I_d"),
        },
        output: { fields: { terminationAmpacity: amperes("I_{tt}") } },
      },
      terminalTorque: {
        kind: "lookup",
        inputs: {
          drive: {
            fields: {
              slotWidth: { symbol: "b", min: 0.0001, max: 0.01 },
              slotLength: { symbol: "l", min: 0.001, max: 0.05 },
              acrossFlats: { symbol: "s", min: 0.001, max: 0.05 },
            },
          },
          size: NAMES,
          maker: { fields: { torque: { symbol: "T", above: 0 } } },
        },
        output: { fields: { value: { symbol: "T" } } },
      },
      insulationType: {
        kind: "lookup",
        inputs: { edition: NAMES, type: NAMES },
        output: { fields: { value: { symbol: "\\vartheta_c" } } },
      },
      conductorResistancePerLength: {
        kind: "lookup",
        tex: "R' = R'_{75} \\left[1 + a (\\vartheta - 75)\\right], \\quad a_\\mathrm{Cu} = 0.00323\\,\\mathrm{K^{-1}}, \\quad a_\\mathrm{Al} = 0.00330\\,\\mathrm{K^{-1}}",
        inputs: {
          edition: NAMES,
          size: NAMES,
          build: NAMES,
          metal: NAMES,
          temperature: { symbol: "\\vartheta", min: -50, max: 150 },
        },
        output: { fields: { value: { symbol: "R'" } } },
      },
    },
  );

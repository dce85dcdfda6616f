/** Entries of the room `wiring`: cables of the IEC family, named wires, voltage drop, editions and tables as data. */
import * as wiring from "../../../wiring/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";
import * as run from "./run.ts";

const NAMES = run.NAMES;
const factor = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const circuits = run.CIRCUITS;
const loadedConductors = run.LOADED_CONDUCTORS;
const device = run.DEVICE_IEC;

export const iecEntries = (): readonly Entry[] =>
  describeRoom(
    "wiring",
    {
      cableAmbientFactor: wiring.cableAmbientFactor,
      groupingFactor: wiring.groupingFactor,
      cableCapacity: wiring.cableCapacity,
      cableForLoad: wiring.cableForLoad,
      loadForCable: wiring.loadForCable,
      ambientForCable: wiring.ambientForCable,
      namedWireAmpacity: wiring.namedWireAmpacity,
      voltageDrop: wiring.voltageDrop,
      shortCircuitSection: wiring.shortCircuitSection,
      protectiveConductor: wiring.protectiveConductor,
      acceptanceTable: wiring.acceptanceTable,
      editionJsonSchema: wiring.editionJsonSchema,
    },
    {
      cableAmbientFactor: {
        kind: "lookup",
        method:
          "the factor of the ambient's own or next hotter row; by the equation, when asked for, √((Tc − T)/(Tc − base))",
        inputs: {
          edition: NAMES,
          insulation: NAMES,
          ambient: run.AMBIENT,
          baseAmbient: run.AMBIENT_BASE,
          by: run.ROUTE,
        },
        output: { fields: { value: factor("k_1") } },
      },
      groupingFactor: {
        kind: "lookup",
        inputs: { edition: NAMES, arrangement: NAMES, circuits, grouping: NAMES },
        output: { fields: { value: factor("k_2") } },
      },
      cableCapacity: {
        kind: "lookup",
        tex: "I_z = p I_t k_1 k_2",
        inputs: {
          edition: NAMES,
          method: NAMES,
          loadedConductors,
          insulation: NAMES,
          material: NAMES,
          size: NAMES,
          ambient: run.AMBIENT,
          circuits,
          arrangement: NAMES,
          grouping: NAMES,
          ambientBy: run.ROUTE,
          ambientBase: run.AMBIENT_BASE,
          conductorsPerLine: run.PER_LINE,
        },
        output: {
          fields: {
            value: { symbol: "I_z" },
            tableCapacity: { symbol: "I_t" },
            ambientFactor: factor("k_1"),
            groupingFactor: factor("k_2"),
            conductorsPerLine: { symbol: "p", is: "count" },
          },
        },
      },
      cableForLoad: {
        kind: "lookup",
        tex: "I_B \\le I_n, \\quad k_3 I_n \\le I_z, \\quad I_z = p I_t k_1 k_2",
        text: "IB ≤ In, k3·In ≤ Iz, Iz = p·It·k1·k2",
        inputs: {
          edition: NAMES,
          method: NAMES,
          loadedConductors,
          insulation: NAMES,
          material: NAMES,
          ambient: run.AMBIENT,
          circuits,
          designCurrent: run.DESIGN_CURRENT_IEC,
          deviceKind: NAMES,
          device,
          arrangement: NAMES,
          grouping: NAMES,
          ambientBy: run.ROUTE,
          ambientBase: run.AMBIENT_BASE,
          conductorsPerLine: run.PER_LINE,
        },
        output: {
          fields: {
            conductorsPerLine: { symbol: "p", is: "count" },
            designCurrent: { symbol: "I_B" },
            device: { symbol: "I_n" },
            requiredCapacity: { symbol: "k_3 I_n" },
            requiredTableCapacity: { symbol: "k_3 I_n/(p k_1 k_2)" },
          },
        },
      },
      loadForCable: {
        kind: "lookup",
        tex: "I_B = I_n, \\quad k_3 I_n \\le I_z, \\quad I_z = p I_t k_1 k_2",
        text: "IB = In, the largest preferred rating with k3·In ≤ Iz, or the device found",
        inputs: {
          edition: NAMES,
          method: NAMES,
          loadedConductors,
          insulation: NAMES,
          material: NAMES,
          size: NAMES,
          ambient: run.AMBIENT,
          circuits,
          deviceKind: NAMES,
          device,
          arrangement: NAMES,
          grouping: NAMES,
          ambientBy: run.ROUTE,
          ambientBase: run.AMBIENT_BASE,
          conductorsPerLine: run.PER_LINE,
        },
        output: { fields: { value: { symbol: "I_B" }, device: { symbol: "I_n" } } },
      },
      ambientForCable: {
        kind: "lookup",
        method: "the last row of the ambient factors at which IB ≤ In and k3·In ≤ Iz",
        inputs: {
          edition: NAMES,
          method: NAMES,
          loadedConductors,
          insulation: NAMES,
          material: NAMES,
          size: NAMES,
          circuits,
          designCurrent: run.DESIGN_CURRENT_IEC,
          deviceKind: NAMES,
          device,
          arrangement: NAMES,
          grouping: NAMES,
          conductorsPerLine: run.PER_LINE,
        },
        output: {
          fields: {
            value: { symbol: "\\vartheta_a" },
            device: { symbol: "I_n" },
            requiredCapacity: { symbol: "k_3 I_n" },
          },
        },
      },
      namedWireAmpacity: {
        kind: "lookup",
        tex: "I_z = I_t k_1",
        text: "current = table value × the table's own ambient factor",
        inputs: {
          table: NAMES,
          column: NAMES,
          size: NAMES,
          ambient: { ...run.AMBIENT, max: 3000 },
          insulation: NAMES,
        },
        output: { fields: { value: { symbol: "I_z" } } },
      },
      voltageDrop: {
        kind: "physics",
        tex: "\\Delta V = \\frac{c\\,I l}{p} \\left(r \\cos\\varphi + x \\sin\\varphi\\right), \\quad c_\\text{two-wire} = 2, \\quad c_\\text{three-phase} = \\sqrt{3}, \\quad \\frac{P}{P_0} = \\left(1 - \\frac{\\Delta V}{V}\\right)^2",
        inputs: {
          circuit: NAMES,
          current: { symbol: "I", min: 0 },
          length: { symbol: "l", min: 0 },
          resistancePerLength: { symbol: "r", min: 0 },
          supplyVoltage: { symbol: "V", above: 0 },
          reactancePerLength: { symbol: "x", min: 0, default: 0 },
          powerFactor: { symbol: "\\cos\\varphi", is: "ratio", min: 0, max: 1, default: 1 },
          conductorsPerLine: run.PER_LINE,
        },
        output: {
          fields: {
            drop: { symbol: "\\Delta V" },
            ratio: factor("\\Delta V/V"),
            loadVoltage: { symbol: "V - \\Delta V" },
            powerRatio: factor("P/P_0"),
          },
        },
      },
      shortCircuitSection: {
        kind: "physics",
        tex: "S = \\frac{I \\sqrt{t}}{k}, \\quad k = K \\sqrt{\\ln\\frac{\\beta + \\vartheta_f}{\\beta + \\vartheta_i}}",
        text: "section = current × √time/k, k = K × √ln[(β + finalTemperature)/(β + initialTemperature)]",
        inputs: {
          current: { symbol: "I", above: 0 },
          time: { symbol: "t", above: 0 },
          material: NAMES,
          initialTemperature: { symbol: "\\vartheta_i", min: -60, max: 500 },
          finalTemperature: { symbol: "\\vartheta_f", min: -60, max: 500 },
        },
        output: { fields: { section: { symbol: "S" }, factor: { symbol: "k", is: "number" } } },
      },
      protectiveConductor: {
        kind: "lookup",
        tex: "S_{PE} = S \\;(S \\le 16), \\; 16 \\;(S \\le 35), \\; S/2",
        text: "line section up to 16 mm², 16 mm² up to 35 mm², half above",
        inputs: { lineSection: { symbol: "S", above: 0 }, laid: NAMES },
        output: { fields: { value: { symbol: "S_{PE}" } } },
      },
      acceptanceTable: { kind: "lookup", inputs: { table: NAMES } },
      editionJsonSchema: { kind: "transform", inputs: { system: NAMES } },
    },
  );
